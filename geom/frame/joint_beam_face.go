package frame

import "plumbcut/geom"

// faceWay bolts the beam against the posts' outer faces. No timber carries it:
// the bolts do, and the frame says so.
type faceWay struct{ oneBeam }

func (faceWay) deep(*Job) float64 { return 0 }

func (faceWay) outer(_ *Job, k Carrier) float64 { return k.Inner }

func (faceWay) top(c *checker, k Carrier) float64 { return besideTop(c, k) }

func (faceWay) under() string { return "underside of beam" }

func (faceWay) runsUp() bool { return true }

func (faceWay) check(c *checker, k Carrier) {
	c.checkBeside(k, 0)
	c.warnNoSeat()
}

// warnNoSeat says that a beam hangs on its bolts.
func (c *checker) warnNoSeat() {
	what, it := "the beam hangs on its", "it"
	if c.job.Posts.Meet.Meeting == TwinBolted {
		what, it = "the beams hang on their", "them"
	}
	c.warnf(RuleNoSeat, "posts.beam", "%s bolts alone, no timber seats %s; a designer confirms the bolts' size, number and place", what, it)
}

func (faceWay) join(b *builder, k Carrier, post int) {
	b.chamferFrom(post, 0)
	b.bolt(k, post)
	p := b.members[post]
	at := geom.V(p.Place.O.X+p.Section.Width/2, k.PostOuter, (k.Bottom+k.Top)/2)
	b.beside(JointBeamFace, k.Members[0], post, at, geom.V(0, -1, 0))
}
