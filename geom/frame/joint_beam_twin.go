package frame

import "plumbcut/geom"

// twinWay holds a post between two beams, bolted through all three. They lie
// against its faces and hang on their bolts, or each is seated in a check-out.
type twinWay struct{ checked bool }

func (twinWay) plies() int { return 2 }

// deep is as stated, or half of a beam's width as far as a quarter of the post
// allows.
func (w twinWay) deep(j *Job) float64 {
	switch d := j.Posts.Meet.CheckOut; {
	case !w.checked:
		return 0
	case d > 0:
		return d
	}
	return min(j.Beam.Section.Width/2, j.Posts.Section.Depth/4)
}

func (w twinWay) wide(j *Job) float64 {
	return 2*(j.Beam.Section.Width-w.deep(j)) + j.Posts.Section.Depth
}

func (w twinWay) outer(j *Job, k Carrier) float64 {
	return k.Outer + j.Beam.Section.Width - w.deep(j)
}

func (twinWay) top(c *checker, k Carrier) float64 { return besideTop(c, k) }

func (w twinWay) under() string {
	if w.checked {
		return "underside of beams, seat on posts"
	}
	return "underside of beams"
}

func (twinWay) runsUp() bool { return true }

func (w twinWay) check(c *checker, k Carrier) {
	c.notDeeperThanBeam(w.deep(c.job))
	c.checkBeside(k, 2*w.deep(c.job))
	if !w.checked {
		c.warnNoSeat()
	}
}

func (w twinWay) join(b *builder, k Carrier, post int) {
	deep := w.deep(b.job)
	if w.checked {
		b.checkOut(k, post, FaceOuter, deep)
		b.checkOut(k, post, FaceHouse, deep)
	}
	b.chamferFrom(post, deep)
	b.bolt(k, post)
	p := b.members[post]
	x := p.Place.O.X + p.Section.Width/2
	inner := k.PostOuter + p.Section.Depth
	kind := JointBeamTwin
	if w.checked {
		kind = JointBeamTwinChecked
	}
	for i, beam := range k.Members {
		y, n := inner, geom.V(0, 1, 0)
		if i > 0 {
			y, n, kind = k.PostOuter, geom.V(0, -1, 0), JointBeamPly
		}
		if !w.checked {
			b.beside(kind, beam, post, geom.V(x, y, (k.Bottom+k.Top)/2), n)
			continue
		}
		at := geom.V(x, y-n.Y*deep/2, k.Bottom)
		b.joints = append(b.joints, Joint{
			Kind: kind, A: beam, B: post, At: at, Bearing: geom.PlaneAt(at, geom.V(0, 0, 1)), Area: deep * p.Section.Width,
		})
	}
}
