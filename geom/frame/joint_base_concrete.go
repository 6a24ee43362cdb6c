package frame

import "plumbcut/geom"

// concreteBase sets a post in its concrete, on a pad of it or on the bottom of
// the hole.
type concreteBase struct{}

func (concreteBase) dug() bool { return true }

func (concreteBase) foot(_ *Job, p Post) float64 { return p.Ground - p.Footing.Depth + p.Footing.Pad }

func (concreteBase) check(c *checker, i int) {
	p := c.job.Posts.At[i]
	f := p.Footing
	if across := c.across(f); f.Size > across && f.Size < across+2*coverLeast {
		c.warnf(RuleFooting, c.postPath(i), "less than %s of concrete around post %d", c.figure(coverLeast), i+1)
	}
	if f.Pad >= f.Depth {
		c.errorf(RuleFooting, c.postPath(i), "the pad of %s fills the %s deep hole of post %d; make the hole deeper", c.mm(f.Pad), c.mm(f.Depth), i+1)
	}
}

func (concreteBase) join(b *builder, post, footing int, spec Post) {
	p, f := &b.members[post], &b.members[footing]
	foot := b.weather(post, footing, spec)
	f.Features = append(f.Features, Socket{At: spec.Footing.Pad, Foot: foot})
	at := p.Place.Point(p.middle())
	j := Joint{Kind: JointPostConcrete, A: post, B: footing, At: at}
	j.At.Z = spec.Ground
	if spec.Footing.Pad > 0 {
		j.Bearing = geom.PlaneAt(at, geom.V(0, 0, 1))
		j.Area = p.Section.Width * p.Section.Depth
	}
	b.joints = append(b.joints, j)
}

// weather slopes the top of a footing away from its post, and gives the post's
// place in it.
func (b *builder) weather(post, footing int, spec Post) Foot {
	p, f := &b.members[post], &b.members[footing]
	o := f.Place.Local(p.Place.O)
	foot := Foot{V0: o.Y, V1: o.Y + p.Section.Width, W0: o.Z, W1: o.Z + p.Section.Depth}
	if c := spec.Footing.Collar; c > 0 {
		f.Features = append(f.Features, Weathering{At: f.Length, Collar: c, Foot: foot})
	}
	return foot
}

// middle is the middle of a member's datum end, in its own axes.
func (m Member) middle() geom.Vec { return geom.V(0, m.Section.Width/2, m.Section.Depth/2) }
