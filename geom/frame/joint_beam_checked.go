package frame

import "plumbcut/geom"

// checkedWay seats the beam in a check-out of each post's outer side. The rest
// of the post runs up behind the beam and is bolted through it.
type checkedWay struct{ oneBeam }

// deep is as stated, or the beam's whole width as far as half of the post
// allows.
func (checkedWay) deep(j *Job) float64 {
	if d := j.Posts.Meet.CheckOut; d > 0 {
		return d
	}
	return min(j.Beam.Section.Width, j.Posts.Section.Depth/2)
}

func (w checkedWay) outer(j *Job, k Carrier) float64 {
	return k.Outer + j.Beam.Section.Width - w.deep(j)
}

func (checkedWay) top(c *checker, k Carrier) float64 { return besideTop(c, k) }

func (checkedWay) under() string { return "underside of beam, seat on posts" }

func (checkedWay) runsUp() bool { return true }

func (w checkedWay) check(c *checker, k Carrier) {
	c.notDeeperThanBeam(w.deep(c.job))
	c.checkBeside(k, w.deep(c.job))
}

// notDeeperThanBeam checks that no check-out swallows the beam.
func (c *checker) notDeeperThanBeam(deep float64) {
	if wide := c.job.Beam.Section.Width; deep > wide+slack {
		c.errorf(RuleCheckOut, "posts.check_out", "a check-out %s deep is deeper than the beam is wide, %s; make it at most that", c.mm(deep), c.mm(wide))
	}
}

func (w checkedWay) join(b *builder, k Carrier, post int) {
	deep := w.deep(b.job)
	b.checkOut(k, post, FaceOuter, deep)
	b.chamferFrom(post, deep)
	b.bolt(k, post)
	p := b.members[post]
	at := geom.V(p.Place.O.X+p.Section.Width/2, k.PostOuter+deep/2, k.Bottom)
	b.joints = append(b.joints, Joint{
		Kind: JointBeamChecked, A: k.Members[0], B: post, At: at,
		Bearing: geom.PlaneAt(at, geom.V(0, 0, 1)), Area: deep * p.Section.Width,
	})
}

// checkOut cuts the notch for the beam into a face of a post: from its seat to
// the post's top, or to just over the beam where the post runs on above that.
func (b *builder) checkOut(k Carrier, post int, face Face, deep float64) {
	p := &b.members[post]
	c := CheckOut{Face: face, Depth: deep, From: k.Bottom - p.Place.O.Z, To: p.Length}
	if over := k.Top + b.job.Posts.Meet.Clearance - p.Place.O.Z; over < p.Length-slack {
		c.To = over
	}
	p.Features = append(p.Features, c)
}
