package frame

import (
	"fmt"
	"math"
	"slices"

	"plumbcut/geom"
)

const (
	// braceFoot is the least height of a brace's foot above what is at the
	// foot of its post (own): lower, it is no knee brace.
	braceFoot = 300

	// lapPlay is left between two braces that lap one post from both sides, and
	// below the tails of rafters, mm (own).
	lapPlay = 4

	// boltEdge is the usual least distance of a bolt from the edge of a timber,
	// in diameters. From memory, as the NDS has it for bolts loaded along the
	// grain.
	boltEdge = 1.5

	// bayShare is the share of a bay that braces may take before it is warned
	// of, both together. Common practice, no source.
	bayShare = 2.0 / 3
)

// layOutBraces places the braces and checks them.
func (c *checker) layOutBraces() {
	b := c.job.Braces
	if !b.There() {
		return
	}
	if !c.beamOnTop() {
		c.errorf(RuleBrace, "braces", "knee braces stand under a beam that lies on its posts; say posts.beam: on top, or take the braces out")
		return
	}
	c.checkBraceShape()
	if len(c.errs) > 0 {
		return
	}
	c.set.Braces = c.bracePlaces()
	for _, p := range c.set.Braces {
		c.checkBrace(p)
	}
	c.checkBays()
	if len(c.errs) == 0 {
		c.warnBraceHead()
	}
}

// beamOnTop reports whether the beam lies on its posts, in line with them, as
// what is fitted below both needs.
func (c *checker) beamOnTop() bool {
	m := c.job.Posts.Meet.Meeting
	return m == OnTop || m == ""
}

// checkBraceShape checks what is the same for all braces.
func (c *checker) checkBraceShape() {
	j := c.job
	b := j.Braces
	if b.OnPost() > b.Down-slack || b.OnBeam() > b.Along-slack {
		c.errorf(RuleBrace, bracePath(j, "section"), "braces %s deep fill the corner whose legs are %s down and %s along; make them at least %s down and %s along, or the braces shallower",
			c.mm(b.Section.Depth), c.mm(b.Down), c.mm(b.Along), c.mm(b.OnPost()), c.mm(b.OnBeam()))
	}
	for _, k := range c.set.Carriers {
		if len(k.Posts) == 0 {
			continue
		}
		if w := b.Section.Width; b.Joint != BraceLapped && w > k.Section.Width+slack {
			c.errorf(RuleBrace, "braces.section", "the braces are %s wide and the %s %s; make them at most as wide as that, or lapped", c.mm(w), k.Short, c.mm(k.Section.Width))
		}
		if b.Joint == BraceHoused {
			c.housingDepth("braces.housing", b.Housing, min(j.Posts.Section.Width, k.Section.Depth))
		}
	}
	if b.Joint == BraceLapped && b.Section.Depth < 2*boltEdge*b.Bolt.Diameter {
		c.warnf(RuleBrace, "braces.bolt", "a bolt of %s stands nearer to the edge of a brace %s deep than the usual %g diameters", c.figure(b.Bolt.Diameter), c.figure(b.Section.Depth), boltEdge)
	}
}

// bracePath is the path of a key of the braces, or of the braces themselves
// where the file leaves it out.
func bracePath(j *Job, key string) string {
	if path := "braces." + key; j.Given(path) {
		return path
	}
	return "braces"
}

// bracePlaces lists the braces from left to right.
func (c *checker) bracePlaces() []BracePlace {
	j := c.job
	want := map[BraceAt]int{} // by post and side, the item of braces.at from 1
	for i, a := range j.Braces.At {
		path := fmt.Sprintf("braces.at[%d]", i)
		if a.Post > len(j.Posts.At) {
			c.errorf(RuleBrace, path, "there is no post %d; posts are numbered from 1 at the left to %d", a.Post, len(j.Posts.At))
			continue
		}
		sides := []Side{a.Side}
		if a.Side == "" {
			sides = c.braceSides(a.Post - 1)
		}
		for _, s := range sides {
			at := BraceAt{a.Post, s}
			if want[at] > 0 {
				c.errorf(RuleBrace, path, "the %s side of post %d has its brace already; take one out", s, a.Post)
			}
			want[at] = i + 1
		}
	}
	var out []BracePlace
	for i := range j.Posts.At {
		if (j.Braces.Joint == BraceHoused || j.Braces.Joint == BraceLapped) && c.set.Under(i).Back {
			if len(j.Braces.At) == 0 || want[BraceAt{i + 1, Left}]+want[BraceAt{i + 1, Right}] > 0 {
				c.errorf(RuleBrace, bracePath(j, "joint"), "post %d stands under the rear beam, where braces are butted; say joint: butted, or list posts of the front row alone under braces.at", i+1)
			}
			continue
		}
		sides := c.braceSides(i)
		if len(j.Braces.At) > 0 {
			sides = nil
			for _, s := range []Side{Left, Right} {
				if want[BraceAt{i + 1, s}] > 0 {
					sides = append(sides, s)
				}
			}
		}
		for _, s := range sides {
			out = append(out, c.bracePlace(i, s, len(sides)))
		}
	}
	return out
}

// braceSides are the sides of a post on which another stands under the same
// beam.
func (c *checker) braceSides(post int) []Side {
	var out []Side
	for _, side := range []Side{Left, Right} {
		if _, ok := c.postBeside(post, side); ok {
			out = append(out, side)
		}
	}
	return out
}

// postBeside is the next post on a side, under the same beam; false if there is
// none.
func (c *checker) postBeside(post int, side Side) (next int, ok bool) {
	row := c.set.Under(post).Posts
	i := slices.Index(row, post) + 1
	if side == Left {
		i -= 2
	}
	if i < 0 || i >= len(row) {
		return 0, false
	}
	return row[i], true
}

// bracePlace sets out one brace of so many at its post.
func (c *checker) bracePlace(post int, side Side, sides int) BracePlace {
	j, k := c.job, c.set.Under(post)
	b := j.Braces
	p := BracePlace{Post: post, Side: side}
	p.Knee = geom.V(j.Posts.At[post].Along+p.Way()*j.Posts.Section.Width/2, k.Outer, k.Bottom)
	switch b.Joint {
	case BraceHoused:
		p.Foot, p.Head = b.Housing, b.Housing
	case BraceLapped:
		p.Knee.Y -= b.Section.Width
		p.Foot, p.Head = j.Posts.Section.Width, c.lapOn(k)
		if sides > 1 {
			p.Foot = (p.Foot - lapPlay) / 2
		}
	default:
		p.Knee.Y += (k.Section.Width - b.Section.Width) / 2
	}
	return p
}

// lapOn is how high braces lap a beam: to its top, or as far as rafters that lie
// over it and run on leave room.
func (c *checker) lapOn(k Carrier) float64 {
	j, s := c.job, c.set
	if k.Hold != Over || s.RafterEnd > k.Outer-slack {
		return k.Section.Depth
	}
	y := max(s.RafterEnd, k.Outer-j.Braces.Section.Width)
	return min(k.Section.Depth, s.RafterTop(y)-s.plumb(j.Rafters.Section.Depth)-k.Bottom-lapPlay)
}

// checkBrace checks one brace against what is near it.
func (c *checker) checkBrace(p BracePlace) {
	j := c.job
	b := j.Braces
	tan, seat := math.Tan(b.Angle()), c.seat(p.Post)
	post := j.Posts.At[p.Post]
	name := fmt.Sprintf("the brace %s of post %d", p.Side, p.Post+1)
	if post.Wall == p.Side {
		c.errorf(RuleBrace, bracePath(j, "at"), "%s would run into the %s return that the post is fixed to; leave it out", name, p.Side)
		return
	}
	under := max(post.Ground+post.Footing.Collar, c.postBottom(post))
	if foot := seat - b.Down - p.Foot*tan; foot < under+braceFoot {
		c.errorf(RuleBrace, bracePath(j, "down"), "%s comes down to %s above the foot of its post, less than %s; make down at most %s",
			name, c.mm(foot-under), c.mm(braceFoot), c.mm(b.Down-(under+braceFoot-foot)))
	}
	for k, z := range c.set.PostFixings[p.Post] {
		low, high := seat-b.Down-p.Foot*tan, seat-b.Down+b.OnPost()
		if wide := 2 * post.Fixing.Screw; b.Joint != BraceLapped && z > low-wide && z < high+wide {
			c.errorf(RuleBrace, bracePath(j, "down"), "%s covers screw %d of its post, at %s; make down at least %s", name, k+1, c.mm(z), c.mm(seat-z+b.OnPost()+wide))
		}
	}
	switch b.Joint {
	case BraceHoused:
		c.checkHousedBrace(p, name)
	case BraceLapped:
		c.checkLappedBrace(p, name)
	}
}

// rodReach is how far a post's rod comes down from the underside of the beam, and
// half its hole; 0 where there is none.
func (c *checker) rodReach() (down, half float64) {
	rod := c.job.Posts.Rod
	if rod.Diameter == 0 {
		return 0, 0
	}
	return rod.IntoPost, rod.Hole / 2
}

func (c *checker) checkHousedBrace(p BracePlace, name string) {
	j, s := c.job, c.set
	b := j.Braces
	rod, half := c.rodReach()
	if left := j.Posts.Section.Width/2 - half - b.Housing; rod > 0 && left <= 0 && b.Down-b.OnPost() < rod {
		c.errorf(RuleBrace, "braces.housing", "the housing of %s breaks into the hole of the post's rod; make it at most %s deep", name, c.mm(b.Housing+left))
	}
	k := s.Under(p.Post)
	if !k.Hold.housed() {
		return
	}
	h := k.housing(j, s, k.From)
	inner := p.Knee.Y + b.Section.Width + b.Clearance
	if min(h.Floor, h.FloorInside()) > b.Housing+slack || k.End == FaceEnd && inner <= k.Inner-h.Depth {
		return
	}
	from, to := p.OnBeam(b, 0).X-b.OnBeam()/2, p.OnBeam(b, p.Head).X+b.OnBeam()/2
	if p.Side == Left {
		from, to = p.OnBeam(b, p.Head).X-b.OnBeam()/2, p.OnBeam(b, 0).X+b.OnBeam()/2
	}
	for i, x := range s.Rafters {
		if x+h.Width/2 > from && x-h.Width/2 < to {
			c.errorf(RuleBrace, "braces.housing", "%s meets the housing of rafter %d in the beam; make the braces' housings at most %s deep, or move the brace", name, i+1, c.mm(min(h.Floor, h.FloorInside())))
		}
	}
}

func (c *checker) checkLappedBrace(p BracePlace, name string) {
	j, s := c.job, c.set
	b := j.Braces
	least := 2 * boltEdge * b.Bolt.Diameter
	switch {
	case p.Head < least:
		c.errorf(RuleBrace, "braces.joint", "the rafters' tails leave %s of the beam's face for %s, and its bolt needs %s; let the brace in or butt it", c.mm(max(0, p.Head)), name, c.mm(least))
		return
	case p.Foot < least:
		c.warnf(RuleBrace, bracePath(j, "at"), "%s laps its post by %s alone, so that its bolt stands nearer to the post's edge than the usual %g diameters: leave out one of two at a post, or use a wider post", name, c.figure(p.Foot), boltEdge)
	}
	foot, head := p.OnPost(b, p.Foot/2), p.OnBeam(b, p.Head/2)
	r := b.Bolt.Hole / 2
	rod, half := c.rodReach()
	if rod > 0 && math.Abs(foot.X-j.Posts.At[p.Post].Along) < half+r && foot.Z+r > c.seat(p.Post)-rod {
		c.errorf(RuleBrace, bracePath(j, "down"), "the bolt of %s meets the post's rod; make down at least %s", name, c.mm(b.Down+foot.Z+r-c.seat(p.Post)+rod))
	}
	for k, z := range s.PostFixings[p.Post] {
		if d := r + j.Posts.At[p.Post].Fixing.Hole/2 - math.Abs(foot.Z-z); d > 0 {
			c.errorf(RuleBrace, bracePath(j, "down"), "the bolt of %s meets screw %d of its post, at %s; make down %s more or less", name, k+1, c.mm(z), c.mm(2*d))
		}
	}
	k := s.Under(p.Post)
	if !k.Hold.housed() {
		return
	}
	h := k.housing(j, s, k.From)
	for i, x := range s.Rafters {
		if d := (h.Width + b.Bolt.Hole) / 2; math.Abs(x-head.X) < d && head.Z+r > k.Bottom+min(h.Floor, h.FloorInside()) {
			c.errorf(RuleBrace, bracePath(j, "along"), "the bolt of %s comes out in the housing of rafter %d; make along %s more or less", name, i+1, c.mm(2*d))
		}
	}
}

// checkBays checks that braces have room along the beam.
func (c *checker) checkBays() {
	j := c.job
	b := j.Braces
	told := false
	for _, p := range c.set.Braces {
		reach := b.Along + p.Head/math.Tan(b.Angle())
		k := c.set.Under(p.Post)
		end := k.To
		if p.Side == Left {
			end = k.From
		}
		room, what := p.Way()*(end-p.Knee.X), "the end of the beam"
		if n, ok := c.postBeside(p.Post, p.Side); ok {
			room, what = p.Way()*(j.Posts.At[n].Along-p.Knee.X)-j.Posts.Section.Width/2, fmt.Sprintf("post %d", n+1)
		}
		if n, ok := c.postBeside(p.Post, p.Side); ok && c.braced(n, otherSide(p.Side)) {
			if whole := room; 2*reach > whole*bayShare && 2*reach <= whole && p.Side == Right && !told {
				told = true
				c.warnf(RuleBrace, bracePath(j, "along"), "the braces between posts %d and %d take %s of the %s between them", p.Post+1, n+1, c.figure(2*reach), c.figure(whole))
			}
			room, what = room/2, "the middle of the span, where it meets the next one"
		}
		if reach > room+slack {
			c.errorf(RuleBrace, bracePath(j, "along"), "the brace %s of post %d runs %s past %s; make along at most %s",
				p.Side, p.Post+1, c.mm(reach-room), what, c.mm(b.Along-reach+room))
		}
	}
}

// braced reports whether a post has a brace on a side.
func (c *checker) braced(post int, side Side) bool {
	return slices.ContainsFunc(c.set.Braces, func(p BracePlace) bool { return p.Post == post && p.Side == side })
}

// otherSide is the right of the left, and the left of the right.
func otherSide(s Side) Side {
	if s == Left {
		return Right
	}
	return Left
}

// warnBraceHead says how far from the posts braces are lower than the head
// room.
func (c *checker) warnBraceHead() {
	b := c.job.Braces
	if len(c.set.Braces) == 0 {
		return
	}
	past := 0.0
	for _, p := range c.set.Braces {
		head := c.standing(p.Knee.Y) + c.job.Levels.HeadRoom
		past = max(past, (head-p.Knee.Z+b.Down)/math.Tan(b.Angle()))
	}
	if past = min(past, b.Along); past > 0 {
		c.warnf(RuleHeadHeight, "braces", "the knee braces are lower than the head room of %s within %s of the posts: keep the way through clear of them", c.figure(c.job.Levels.HeadRoom), c.figure(past))
	}
}
