package sheets

import (
	"fmt"
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func beamPostDetail() detailSpec {
	return detailSpec{
		kind: frame.JointBeamPost, scale: 1. / 5, plain: clearPost, same: beamSize, views: beamPostViews,
		ring: 200, on: []string{onSection, onElevations}, other: []string{onSection},
	}
}

// onTopMeeting is what the sheets say of a beam on top of its posts.
func onTopMeeting() meeting {
	return meeting{
		marks: "the seat of the beam",
		tops: func(m *maker, k frame.Carrier) []string {
			j := m.job
			wide := "Square the line round the post and cut it level."
			if c, ok := chamferOf(m.frame.Of(frame.KindPost)[k.Posts[0]]); ok {
				wide = fmt.Sprintf("Square the line round the post. The seat is %s wide from the outer face; behind it cut the top down to the %s at %s.",
					m.said(c.Seat), m.downTo(), m.figures.Angle(c.Angle))
			}
			rod := ""
			if r := j.Posts.Rod; r.Diameter > 0 && r.IntoPost > 0 {
				rod = fmt.Sprintf("Bore for the rod Ø%s, %s deep, in the middle of the post's width and %s from its outer face.",
					m.saidTape(r.Hole), m.saidTape(r.IntoPost), m.saidTape(k.Section.Width/2))
			}
			return sentences(wide, rod)
		},
		up: func(m *maker, _ frame.Carrier) string {
			return fmt.Sprintf("Lift it on to the seats, its outer face flush with the posts and its left end %s.", m.leftEndWords(m.front()))
		},
		fix: func(m *maker, _ frame.Carrier) string {
			if r := m.job.Posts.Rod; r.Diameter > 0 {
				return fmt.Sprintf("Set a rod Ø%s down through it into each post.", m.saidFine(r.Diameter))
			}
			return "Fix it to every post as the designer states."
		},
		top: func(s *timber) string {
			return fmt.Sprintf("Hold the top until the post stands, plumb and braced: transfer the level of the underside of the beam, %s, to the post and cut there. Leave the stick long till then.", s.figures.Level(s.topLevel()))
		},
		note: func(*maker) []string { return nil },
	}
}

// beamPostViews are a section through the middle of the post and the top of the
// post with the beam taken off.
func beamPostViews(m *maker, d detail) []*viewBlock {
	beam, post := m.frame.Members[d.joint.A], m.frame.Members[d.joint.B]
	return []*viewBlock{m.beamOnPost(beam, post), m.postTop(beam, post)}
}

// clearPost reports whether no rafter is housed over the middle of a post.
func clearPost(m *maker, j frame.Joint) bool {
	if m.frame.Members[j.B].Place.W.Y < 0 {
		return false // those at the front are drawn
	}
	for _, o := range m.frame.Joints {
		if o.Hold == frame.Housed && o.B == j.A {
			if h := m.housed(o); math.Abs(h.x-j.At.X) < h.housing.Width/2 {
				return false
			}
		}
	}
	return true
}

// beamSize tells beams apart that are not of one size.
func beamSize(m *maker, j frame.Joint) string {
	s := m.frame.Members[j.A].Section
	return sizeKey(s.Depth, s.Width)
}

// chamferOf is the chamfer of a post's top; false if it is level.
func chamferOf(post frame.Member) (frame.Chamfer, bool) {
	for _, f := range post.Features {
		if c, ok := f.(frame.Chamfer); ok {
			return c, true
		}
	}
	return frame.Chamfer{}, false
}

// rodHole is the hole for the rod in a post; false if there is none.
func rodHole(post frame.Member) (frame.Hole, bool) {
	for _, f := range post.Features {
		if h, ok := f.(frame.Hole); ok && h.Use == frame.UseRod {
			return h, true
		}
	}
	return frame.Hole{}, false
}

func (m *maker) beamOnPost(beam, post frame.Member) *viewBlock {
	x, in := post.Solid().Bounds().Centre().X, post.Place.W.Y // which way is inwards
	outer, inner := post.Place.O.Y, post.Place.O.Y+in*post.Section.Depth
	seat := post.Place.O.Z + post.Length
	top := seat + beam.Section.Depth
	beamInner := outer + in*beam.Section.Width
	high, notes := draw.Right, draw.Left
	if in < 0 {
		high, notes = notes, high
	}
	at := func(y, z float64) geom.Vec { return geom.V(x, y, z) }
	hole, rod := rodHole(post)
	chamfer, weathered := chamferOf(post)

	crop := everywhere()
	crop.Min.Z = seat - max(hole.Depth*1.25, post.Section.Depth*1.2)
	b := m.closeUp(closeUp{
		name: "section through the middle of the post", axes: geom.LeftEnd(), cut: true,
		at: at((outer+inner)/2, seat), show: only(beam, post), crop: crop,
	})
	heights := []geom.Vec{at(outer, seat), at(outer, top)}
	foot := at(inner, seat-(post.Section.Depth-chamfer.Seat)*math.Tan(chamfer.Angle))
	middle := post.Place.Point(hole.Mouth).Y
	if rod {
		heights = append(heights, at(outer, seat-hole.Depth))
		b.row(draw.Top).Chain("", at(beamInner, top), at(middle, top), at(outer, top))
		b.over = func(p *page, v *draw.View) { crossLine(p, v, at(middle, top), at(middle, seat-hole.Depth)) }
	}
	b.row(high).Chain("from the seat", heights...)
	b.row(draw.Bottom).Chain("", at(beamInner, seat), at(outer, seat), at(inner, seat)).
		Overall("", at(inner, seat), at(outer, seat))
	n := b.note(notes)
	n.Width = detailWords
	inBeam := func(up float64) geom.Vec {
		return at(beamInner-in*beam.Section.Width*0.2, seat+beam.Section.Depth*up)
	}
	named := inBeam(0.75)
	if !isTimber(beam, named) { // a rafter is housed there
		named = inBeam(0.2)
	}
	n.AddInside(m.stick("Beam", beam), named)
	n.AddInside(m.stick("Post", post)+", its outer face flush with the beam's", at(inner-in*post.Section.Depth*0.25, crop.Min.Z+closeMargin))
	n.Add("Bearing: level seat, as wide as the beam", at(beamInner-in*beam.Section.Width*0.2, seat))
	if rod {
		n.Add("Rod Ø"+m.fine(m.job.Posts.Rod.Diameter)+" in a hole Ø"+m.fine(hole.Diameter)+", upright through the beam and "+m.tape(hole.Depth)+" into the post. Glue, nut and washer as its designer states.",
			at(middle+hole.Diameter/2, seat+beam.Section.Depth*0.35))
	}
	if weathered {
		n.Add("Chamfer "+m.figures.Angle(chamfer.Angle)+" sheds water to the "+m.frame.FaceWord(post.Kind, frame.FaceHouse)+": "+m.tape(seat-foot.Z)+" down at the post's face. Treat the cut end before assembly.", at(beamInner, seat).Lerp(foot, 0.6))
	}
	return b
}

// isTimber reports whether a member is whole round a point.
func isTimber(mb frame.Member, at geom.Vec) bool {
	const half = 1.0 // mm, of what is looked at
	left := mb.Solid()
	for _, way := range []geom.Vec{geom.V(1, 0, 0), geom.V(0, 1, 0), geom.V(0, 0, 1)} {
		for _, w := range []geom.Vec{way, way.Neg()} {
			left = left.Cut(geom.PlaneAt(at.Add(w.Mul(half)), w))
		}
	}
	const whole, rounding = 8 * half * half * half, 1e-3 // mm³
	return left.Volume() > whole-rounding
}

// postTop is the top of a post seen from above.
func (m *maker) postTop(beam, post frame.Member) *viewBlock {
	box := post.Solid().Bounds()
	x0, x1 := box.Min.X, box.Max.X
	y0, in := post.Place.O.Y, post.Place.W.Y // from the outer side inwards
	y1 := y0 + in*post.Section.Depth
	top := post.Place.O.Z + post.Length
	crop := everywhere()
	b := m.closeUp(closeUp{
		name: "Top of the post", axes: geom.Plan(), at: geom.V((x0+x1)/2, (y0+y1)/2, top), show: only(post), crop: crop,
	})
	b.title.Note = "beam taken off; " + m.setting().behind + " at the top"
	at := func(x, y float64) geom.Vec { return geom.V(x, y, top) }
	hole, rod := rodHole(post)
	chamfer, weathered := chamferOf(post)
	deep := []geom.Vec{at(x0, y0), at(x0, y1)}
	if weathered {
		b.row(draw.Right).Chain("seat", at(x1, y0), at(x1, y0+in*chamfer.Seat), at(x1, y1))
	}
	if rod {
		c := post.Place.Point(hole.Mouth)
		b.row(draw.Bottom).Chain("", at(x0, y0), at(c.X, y0), at(x1, y0))
		deep = append(deep, at(x0, c.Y))
		b.over = func(p *page, v *draw.View) {
			r := hole.Diameter
			crossLine(p, v, c.Sub(geom.V(r, 0, 0)), c.Add(geom.V(r, 0, 0)))
			crossLine(p, v, c.Sub(geom.V(0, r, 0)), c.Add(geom.V(0, r, 0)))
		}
		b.marks = func(p *page, v *draw.View) {
			const turn = math.Pi / 4
			p.placer.Arc(v, c, c.Add(geom.V(math.Cos(turn), math.Sin(turn), 0).Mul(hole.Diameter/2)), true)
		}
	}
	b.row(draw.Left).Chain("rod", deep...).Overall("", at(x0, y0), at(x0, y1))
	b.row(draw.Bottom).Overall("", at(x0, y0), at(x1, y0))
	return b
}
