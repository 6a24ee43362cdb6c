package sheets

import (
	"fmt"
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// framingMarks marks the members, the fall and the house on the framing plan.
func (m *maker) framingMarks(p *page, plan *planView) {
	v := plan.view
	m.keepRings(p, v, onPlan)
	m.fallArrow(p, v, max(plan.wall.all.X1, m.planReach().x1-wallMore))
	m.wallWords(p, plan)
	m.markDetails(p, v, onPlan)
	m.markOnce(p, v, frame.KindPlate)
	m.markOnce(p, v, frame.KindBeam)
	m.markEach(p, v, frame.KindPost)
	m.markEach(p, v, frame.KindRafter)
}

// keepRings keeps words out of the rings of the details that are marked later.
func (m *maker) keepRings(p *page, v *draw.View, view string) {
	const least = 4.0 // mm on paper: no ring is drawn smaller
	for _, d := range m.details {
		if slices.Contains(d.on, view) {
			c, r := v.Pt(d.at), max(d.radius*v.Scale, least)
			p.placer.Reserve(draw.Rect{X0: c.X - r, Y0: c.Y - r, X1: c.X + r, Y1: c.Y + r})
		}
	}
}

// fallArrow shows the fall in a bay that nothing else is in; where the bays are
// too narrow on the paper, beside the frame.
func (m *maker) fallArrow(p *page, v *draw.View, right float64) {
	const bay, beside, long = 7.0, 5.5, 36.0 // mm on paper
	s := m.frame.Setout
	x := m.clearBay()
	if s.Centres*v.Scale < bay {
		x = right + beside/v.Scale
	}
	if (s.PlateOuter-s.BeamInner)*v.Scale < long {
		return // the section gives it
	}
	p.placer.Fall(draw.Fall{
		View: v, Prefix: "fall ",
		A: geom.V(x, s.PlateOuter, m.frame.RafterTop(s.PlateOuter)),
		B: geom.V(x, s.BeamInner, m.frame.RafterTop(s.BeamInner)),
	})
}

// clearBay is the middle of a bay near the left quarter of the frame that the
// section does not pass through.
func (m *maker) clearBay() float64 {
	at := m.frame.Setout.Rafters
	quarter := at[0] + (at[len(at)-1]-at[0])/4
	best, found := 0.0, math.Inf(1)
	for i := 1; i < len(at); i++ {
		x := (at[i-1] + at[i]) / 2
		far := math.Abs(x - quarter)
		if cut := m.sectionX(); cut > at[i-1] && cut < at[i] {
			far += at[len(at)-1] // only if there is no other
		}
		if far < found {
			best, found = x, far
		}
	}
	return best
}

// middle is the middle of a member's upper side.
func middle(mb frame.Member) geom.Vec {
	return mb.Place.Point(geom.V(mb.Length/2, mb.Section.Width/2, mb.Section.Depth))
}

// id names a member in the files.
func memberID(mb frame.Member) string { return fmt.Sprintf("%s-%d", mb.Mark, mb.No) }

// markOnce marks the one member of a kind, a third along it.
func (m *maker) markOnce(p *page, v *draw.View, k frame.Kind) {
	for _, mb := range m.frame.Of(k) {
		at := mb.Place.Point(geom.V(mb.Length/3, mb.Section.Width/2, mb.Section.Depth/2))
		p.placer.Part(draw.Part{View: v, At: at, Mark: mb.Mark, ID: memberID(mb)})
	}
}

// markEach marks every member of a kind; alike ones in a row once, with their
// number.
func (m *maker) markEach(p *page, v *draw.View, k frame.Kind) {
	all := m.frame.Of(k)
	const alike = 3 // so many in a row are marked once
	if len(all) >= alike && all[0].Mark == all[len(all)-1].Mark {
		mb := all[len(all)*2/3]
		p.placer.Part(draw.Part{View: v, At: m.markPoint(mb), Mark: fmt.Sprintf("%s × %d", mb.Mark, len(all)), ID: memberID(mb)})
		return
	}
	for _, mb := range all {
		p.placer.Part(draw.Part{View: v, At: m.markPoint(mb), Mark: mb.Mark, ID: memberID(mb)})
	}
}

// markPoint is the point of a member at which its mark points.
func (m *maker) markPoint(mb frame.Member) geom.Vec {
	const nearBeam = 0.9 // of a rafter: its mark then stands before the beam
	switch mb.Kind {
	case frame.KindPost:
		return mb.Place.Point(geom.V(mb.Length, mb.Section.Width/2, mb.Section.Depth*3/4))
	case frame.KindFooting:
		return mb.Place.Point(geom.V(mb.Length, mb.Section.Width/6, mb.Section.Depth/2))
	case frame.KindRafter:
		return mb.Place.Point(geom.V(mb.Length*nearBeam, mb.Section.Width/2, mb.Section.Depth))
	}
	return middle(mb)
}

// wallWords letters the openings and the house behind the wall.
func (m *maker) wallWords(p *page, plan *planView) {
	v, w := plan.view, plan.wall
	left, right := v.Flat(geom.P(w.all.X0, w.back)), v.Flat(geom.P(w.all.X1, w.back))
	for _, o := range m.job.Wall.Openings {
		name := o.Name
		if name == "" {
			name = o.Kind
		}
		middle := (max(o.From, w.all.X0) + min(o.To, w.all.X1)) / 2
		if middle < o.From || middle > o.To {
			continue // out of the picture
		}
		t := draw.Text{Layer: draw.Notes, Align: draw.Centred, Height: draw.NoteHeight, String: name}
		t.At.Y = left.Y + wordStrip/2
		if x, ok := freeAlong(p, t.At.Y, t.Width(), v.Flat(geom.P(middle, 0)).X, left.X, right.X); ok {
			t.At = geom.P(x, t.At.Y-draw.NoteHeight/2)
			p.sheet.AddText(t)
		}
	}
	plan.houseWords(p)
}

// houseWords says where the house is: as near behind the wall as there is room.
func (b *planView) houseWords(p *page) {
	const words, arrows = "house this side", 12 // mm on paper: both arrows
	width := draw.TextWidth(words, draw.NoteHeight, false) + arrows
	wall := b.view.Flat(geom.P(b.wall.all.X1, b.wall.back))
	for y := wall.Y + wordStrip/2; y < b.room.Y1; y += draw.NoteHeight {
		if x, ok := freeAlong(p, y, width, wall.X-width/2, b.room.X0, b.room.X1); ok {
			p.sheet.Toward(words, geom.P(x, y), geom.P(0, 1))
			return
		}
	}
}

// freeAlong finds a place for words of a width, their middle at the height y
// and as near as possible to x = want, between x0 and x1.
func freeAlong(p *page, y, width, want, x0, x1 float64) (float64, bool) {
	const step, gap = 2.0, 1.0 // mm on paper
	lo, hi := x0+width/2, x1-width/2
	if lo > hi {
		return 0, false
	}
	want = min(max(want, lo), hi)
	for d := 0.0; d <= x1-x0; d += step {
		for _, x := range []float64{want - d, want + d} {
			r := draw.Rect{X0: x - width/2, Y0: y - draw.NoteHeight, X1: x + width/2, Y1: y + draw.NoteHeight}
			if x >= lo && x <= hi && p.placer.Free(r, gap) {
				return x, true
			}
		}
	}
	return 0, false
}
