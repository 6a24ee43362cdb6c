package frame

import (
	"fmt"
	"math"
	"strings"

	"plumbcut/geom"
)

// KeepOut is a place where no post may stand or no hole be dug: over a drain,
// on a step, through a joist of the deck.
type KeepOut struct {
	Name     string
	From, To float64 // along
	Near     float64 // out, from the cladding
	Far      float64 // out; 0: as far as the job goes
	Of       KeepOutOf
	Every    float64 // from one's left side to the next one's, to the right, where there are several
	Number   int     // of them; 0: one
}

// Each are the zones one by one.
func (k KeepOut) Each() []KeepOut {
	out := make([]KeepOut, max(1, k.Number))
	for i := range out {
		at := k
		at.From, at.To = k.From+float64(i)*k.Every, k.To+float64(i)*k.Every
		at.Every, at.Number = 0, 0
		out[i] = at
	}
	return out
}

// zones are all places where a post may not stand.
func (s Site) zones() []KeepOut {
	var out []KeepOut
	for _, k := range s.KeepOuts {
		out = append(out, k.Each()...)
	}
	return out
}

// KeepOutOf is what has to stay out.
type KeepOutOf string

// What keeps out. The zero value is KeepHole.
const (
	KeepHole KeepOutOf = "hole" // post and footing
	KeepPost KeepOutOf = "post" // the post alone
)

// RuleKeepOut is of a post where none may stand.
const RuleKeepOut Rule = "keep-out"

// RuleBeamEnd is of a beam that runs far past its end post.
const RuleBeamEnd Rule = "beam overhang"

// beamDoubt is the share of the next span beyond which a beam's overhang past
// its end post is warned of. Common practice, no source.
const beamDoubt = 1.0 / 3

// Box is the zone in plan: along from and to, world y from and to.
func (k KeepOut) Box() (from, to geom.Pt) {
	far := k.Far
	if far == 0 {
		far = math.Inf(1)
	}
	return geom.P(k.From, -far), geom.P(k.To, -k.Near)
}

// halves are how far what has to keep out reaches from a post's centre, along
// and out.
func (k KeepOut) halves(p Post, s Section) (along, out float64) {
	if k.Of == KeepPost {
		return s.Width / 2, s.Depth / 2
	}
	return max(s.Width, p.Footing.Size) / 2, max(s.Depth, p.Footing.Size) / 2
}

// blocks reports whether a post would be in the zone if its centre were at x
// along and y in the world.
func (k KeepOut) blocks(p Post, s Section, x, y float64) bool {
	along, out := k.halves(p, s)
	a, b := k.Box()
	return x+along > a.X+slack && x-along < b.X-slack && y+out > a.Y+slack && y-out < b.Y-slack
}

// checkKeepOuts checks every post against every zone, and says where else it
// could stand.
func (c *checker) checkKeepOuts() {
	j, zones := c.job, c.job.Site.zones()
	for i, p := range j.Posts.At {
		at := c.set.postMiddle(j, i)
		for _, k := range zones {
			if k.blocks(p, c.postBox(i), at.X, at.Y) {
				c.errorf(RuleKeepOut, c.postPath(i), "%s of post %d is in the way of the %s; %s", whatKeepsOut(k), i+1, k.Name, c.elsewhere(i))
			}
		}
	}
}

func whatKeepsOut(k KeepOut) string {
	if k.Of == KeepPost {
		return "the foot"
	}
	return "the hole"
}

// elsewhere words the nearest places to the left and the right of a post, under
// the beam and clear of its neighbours, where nothing keeps it out.
func (c *checker) elsewhere(i int) string {
	j := c.job
	half := j.Posts.Section.Width / 2
	under := c.set.Under(i)
	from, to := under.wholly()
	lo, hi := from+half, to-half
	if b, ok := c.beside(i, -1); ok {
		lo = max(lo, b.Along+max(2*half, (b.Footing.Size+j.Posts.At[i].Footing.Size)/2))
	}
	if b, ok := c.beside(i, 1); ok {
		hi = min(hi, b.Along-max(2*half, (b.Footing.Size+j.Posts.At[i].Footing.Size)/2))
	}
	var places []string
	for _, way := range []float64{-1, 1} {
		if x, ok := c.clearOf(i, way); ok && x >= lo-slack && x <= hi+slack {
			places = append(places, c.mm(x))
		}
	}
	if len(places) == 0 || j.Posts.At[i].Wall != "" {
		return "no place beside it is free under the beam: bring the beam in or out, or move the other posts"
	}
	return fmt.Sprintf("move its centre to %s", strings.Join(places, " or "))
}

// postBox is a post's section as the wall's directions measure it: what one
// under a beam that is not parallel with the wall takes up at most.
func (c *checker) postBox(post int) Section {
	size := c.job.Posts.Section
	if k := c.set.Under(post); k.Skewed() {
		sin, cos := math.Abs(k.Lies.U.Y), k.Lies.U.X
		return Section{Depth: size.Depth*cos + size.Width*sin, Width: size.Width*cos + size.Depth*sin}
	}
	return size
}

// clearOf is the nearest place of a post's centre to the left (way −1) or the
// right of where it is, on the line of its beam, that no zone blocks.
func (c *checker) clearOf(post int, way float64) (float64, bool) {
	p, at, box, under := c.job.Posts.At[post], c.set.postMiddle(c.job, post), c.postBox(post), c.set.Under(post)
	start := at.X
	to := func(x float64) float64 { return p.Along + (x-start)/under.Lies.U.X }
	zones := c.job.Site.zones()
	for range zones { // one zone may push it into the next
		moved := false
		for _, k := range zones {
			if !k.blocks(p, box, at.X, at.Y) {
				continue
			}
			along, _ := k.halves(p, box)
			x := k.To + along
			if way < 0 {
				x = k.From - along
			}
			at = at.Add(under.Lies.U.Mul((x - at.X) / under.Lies.U.X))
			moved = true
		}
		if !moved {
			return to(at.X), true
		}
	}
	for _, k := range zones {
		if k.blocks(p, box, at.X, at.Y) {
			return to(at.X), false
		}
	}
	return to(at.X), true
}

// checkBeamEnds warns of a beam that runs far past its end posts.
func (c *checker) checkBeamEnds() {
	for _, k := range c.set.Carriers {
		c.checkBeamEnd(k)
	}
}

func (c *checker) checkBeamEnd(k Carrier) {
	n := len(k.Posts)
	if n < 2 {
		return
	}
	at := c.job.Posts.At[k.Posts[0] : k.Posts[n-1]+1]
	for _, e := range []struct {
		side       Side
		past, span float64
	}{
		{Left, at[0].Along - k.From, at[1].Along - at[0].Along},
		{Right, k.To - at[n-1].Along, at[n-1].Along - at[n-2].Along},
	} {
		if e.past > e.span*beamDoubt+slack {
			c.warnf(RuleBeamEnd, k.Key, "the %s runs %s past the centre of the last post at the %s, more than a third of the span beside it", k.Short, c.figure(e.past), e.side)
		}
	}
}
