package frame

import "math"

const (
	// standLeast is the usual least clearance of a post's end above its
	// footing on a stirrup. Common practice, no source.
	standLeast = 75

	// coverLeast is the usual least concrete around a post.
	coverLeast = 75

	// footingUsual is the usual least depth of a post's footing. Common
	// practice, no source.
	footingUsual = 600

	// gapTol is how far a stated post position may miss the packer's
	// thickness: more is a slip, less is rounding of stated figures.
	gapTol = 0.05
)

// checkPosts checks the posts in plan, and their footings.
func (c *checker) checkPosts() {
	j := c.job
	half := j.Posts.Section.Width / 2
	for i, p := range j.Posts.At {
		k := c.set.Under(i)
		if from, to := k.wholly(); p.Along-half < from-slack || p.Along+half > to+slack {
			c.errorf(RulePostOffBeam, c.postPath(i), "post %d stands at %s, not wholly under the %s; its centre must be between %s and %s",
				i+1, c.mm(p.Along), k.Short, c.mm(from+half), c.mm(to-half))
		}
		if b, ok := c.beside(i, -1); ok && p.Along-b.Along < 2*half-slack {
			c.errorf(RulePostsOverlap, c.postPath(i), "posts %d and %d are %s apart and would overlap; the least is their width, %s",
				i, i+1, c.mm(p.Along-b.Along), c.mm(2*half))
		}
		c.checkPostWall(i, p)
		c.checkFooting(i, p)
		p.Base.of().check(c, i)
		for _, o := range j.Wall.Openings {
			if x := c.set.postMiddle(j, i).X; o.Kind == "door" && p.Wall == "" && x+half > o.From && x-half < o.To {
				c.warnf(RulePostDoor, c.postPath(i), "post %d stands before the %s", i+1, openingName(o))
			}
		}
	}
}

// beside is the next post to the left (way −1) or right (+1) in a post's row.
func (c *checker) beside(i, way int) (Post, bool) {
	k := i + way
	if k < 0 || k >= len(c.job.Posts.At) || c.set.Under(k).Key != c.set.Under(i).Key {
		return Post{}, false
	}
	return c.job.Posts.At[k], true
}

// checkPostWall checks a post against the return that it is fixed to, or
// stands clear of.
func (c *checker) checkPostWall(i int, p Post) {
	j := c.job
	half, out := j.Posts.Section.Width/2, -c.set.Front().PostOuter
	off := p.Packer.Thickness - j.Wall.Kind.of().sunk(j.Wall) // of the post from the return's face
	for _, r := range j.Wall.Returns {
		gap := c.set.postMiddle(j, i).X - c.postBox(i).Width/2 - r.At
		if r.Side == Right {
			gap = r.At - c.set.postMiddle(j, i).X - c.postBox(i).Width/2
		}
		switch {
		case p.Wall == r.Side && math.Abs(gap-off) > gapTol:
			want := r.At + half + off
			if r.Side == Right {
				want = r.At - half - off
			}
			c.errorf(RulePostWall, c.postPath(i), "post %d is %s from the %s return and its packers are %s thick; with them its centre is at %s",
				i+1, c.mm(gap), r.Side, c.mm(p.Packer.Thickness), c.mm(want))
		case p.Wall == r.Side && r.Length < out-slack:
			c.errorf(RulePostWall, c.postPath(i), "post %d is fixed to the %s return, which comes out %s; it must reach the post's outer face at %s",
				i+1, r.Side, c.mm(r.Length), c.mm(out))
		case p.Wall == "" && gap < -slack && r.Length > out-j.Posts.Section.Depth:
			c.errorf(RuleReturnClash, c.postPath(i), "post %d runs %s into the %s return; move it away from it", i+1, c.mm(-gap), r.Side)
		}
		if p.Wall == r.Side {
			return
		}
	}
	if p.Wall != "" {
		c.errorf(RulePostWall, c.postPath(i), "post %d is fixed to the %s return, but the wall has none; add it under wall or take it away here", i+1, p.Wall)
	}
}

// across is the width that a footing must be wider than, to take its post.
func (c *checker) across(f Footing) float64 {
	s := c.job.Posts.Section
	if f.Round {
		return math.Hypot(s.Depth, s.Width)
	}
	return math.Max(s.Depth, s.Width)
}

// checkFooting checks a footing against its post and its neighbour.
func (c *checker) checkFooting(i int, p Post) {
	if !p.Dug() {
		return
	}
	f, s := p.Footing, c.job.Posts.Section
	if across := c.across(f); f.Size <= across {
		c.errorf(RuleFooting, c.postPath(i), "the footing of post %d is %s and its post needs %s; make it larger", i+1, c.mm(f.Size), c.mm(across))
	}
	if f.Depth < footingUsual {
		c.warnf(RuleFooting, c.postPath(i), "the footing of post %d is %s deep, less than the usual %s (common practice); have the depth confirmed", i+1, c.figure(f.Depth), c.figure(footingUsual))
	}
	if under := f.Size/2 - s.Width/2 - p.Packer.Thickness; p.Wall != "" && under > slack {
		c.warnf(RuleFooting, c.postPath(i), "the footing of post %d runs %s under the %s return; look at what the house stands on there before digging", i+1, c.figure(under), p.Wall)
	}
	if b, ok := c.beside(i, -1); ok {
		if need := (f.Size + b.Footing.Size) / 2; b.Dug() && p.Along-b.Along < need-slack && p.Along-b.Along >= s.Width {
			c.errorf(RuleFooting, c.postPath(i), "the footings of posts %d and %d overlap; the posts must be at least %s apart", i, i+1, c.mm(need))
		}
	}
}

// checkPostTops checks the posts' lengths and how the beam meets them, once the
// levels are known.
func (c *checker) checkPostTops() {
	j := c.job
	for i, p := range j.Posts.At {
		k := c.set.Under(i)
		length := k.PostTop - c.postBottom(p)
		if length < j.Posts.Rod.IntoPost+slack || length <= 0 || min(k.PostTop, k.Bottom) <= j.Floor(p) {
			c.errorf(RuleRod, c.postPath(i), "post %d is only %s long; raise the beam or shorten the rod", i+1, c.mm(length))
		}
	}
	for _, k := range c.set.Carriers {
		if len(k.Posts) > 0 {
			j.Posts.Meet.Meeting.way().check(c, k)
		}
	}
}

// checkRods checks the rods that go down through a beam into its posts.
func (c *checker) checkRods(k Carrier) {
	j := c.job
	rod := j.Posts.Rod
	if rod.Diameter == 0 {
		return
	}
	if rod.Hole < rod.Diameter {
		c.errorf(RuleRod, "posts.rod.hole", "a hole of %s does not take a rod of %s; make it at least as wide", c.mm(rod.Hole), c.mm(rod.Diameter))
	}
	side := (k.Section.Width - rod.Hole) / 2
	if side <= 0 || rod.Hole >= j.Posts.Section.Width {
		c.errorf(RuleRod, "posts.rod.hole", "a hole of %s breaks out of the %s or the post; make it smaller", c.mm(rod.Hole), k.Short)
	}
	if !k.Hold.housed() || k.Housing <= side {
		return
	}
	reach := ((j.Rafters.Section.Width+j.Rafters.Clearance)/math.Cos(k.Turn) + rod.Hole) / 2
	for _, i := range k.Posts {
		for r, x := range c.set.Rafters {
			if math.Abs(k.Meets(x, k.Inner-k.Housing)-j.Posts.At[i].Along) < reach {
				c.errorf(RuleRod, c.postPath(i), "the rod of post %d would break into the housing of rafter %d; make the %s's housings at most %s deep, or move the post",
					i+1, r+1, k.Short, c.mm(side))
			}
		}
	}
}
