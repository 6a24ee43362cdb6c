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
	m.ringDetails(p, v, onPlan)
	m.keepRings(p, v, onPlan)
	m.fallArrow(p, v, max(plan.wall.all.X1, m.planReach().x1-wallMore))
	words := append([]func(){func() { m.wallWords(p, plan) }}, m.detailBubbles(p, v, onPlan)...) // what stands at one place alone comes first
	words = append(words, m.blockMarks(p, v)...)
	words = append(words, m.roofStrapMarks(p, v)...)
	p.cleanestOrder(append(words, m.eachMark(p, v, frame.KindPlate, frame.KindBeam, frame.KindPost, frame.KindRafter)...)...)
}

// keepRings keeps words out of the rings of the details that are marked later.
// The ring's own line keeps them off outside; what is reserved lies so far
// within that the leader that starts at the ring passes over none of it.
func (m *maker) keepRings(p *page, v *draw.View, view string) {
	for _, d := range m.details {
		if slices.Contains(d.on, view) {
			c, half := v.Pt(d.at), draw.RingRoom(d.radius*v.Scale)/2
			p.placer.Reserve(draw.Rect{X0: c.X - half, Y0: c.Y - half, X1: c.X + half, Y1: c.Y + half})
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
	from, to := m.cutAt(x).clearOfBlocks()
	if (from-to)*v.Scale < long {
		return // the section gives it
	}
	p.placer.Fall(draw.Fall{
		View: v, Prefix: "fall ", Offset: -figureHalf,
		A: geom.V(x, from, m.frame.RafterTop(from)),
		B: geom.V(x, to, m.frame.RafterTop(to)),
	})
}

// clearOfBlocks is the longest stretch of the bays, from and to as world y, that
// no row of blocks crosses.
func (m *maker) clearOfBlocks() (from, to float64) {
	s := m.frame.Setout
	edges := []float64{s.Rear().Outer}
	bays := max(1, len(s.Rafters)-1)
	for all := m.frame.Of(frame.KindBlock); len(all) >= bays; all = all[bays:] {
		b := all[0].Solid().Bounds()
		edges = append(edges, b.Max.Y, b.Min.Y)
	}
	edges = append(edges, s.Front().Inner)
	for i := 0; i+1 < len(edges); i += 2 {
		if edges[i]-edges[i+1] > from-to {
			from, to = edges[i], edges[i+1]
		}
	}
	return from, to
}

// figureHalf sets the arrow off so far, mm on paper, that it stands in the
// middle of the bay together with its figure.
const figureHalf = 1.75

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

// memberID names a member in the files.
func memberID(mb frame.Member) string { return fmt.Sprintf("%s-%d", mb.Mark, mb.No) }

// eachMark marks every member of some kinds; alike ones in a row once, with
// their number.
func (m *maker) eachMark(p *page, v *draw.View, kinds ...frame.Kind) []func() {
	const many = 3 // so many in a row are marked once
	var out []func()
	const mostRuns = 6 // of a kind: of more, as on the skew, the first and the last are marked
	for _, k := range kinds {
		runs := alikeRuns(m.frame.Of(k))
		for i, run := range runs {
			if k == frame.KindRafter && len(runs) > mostRuns && i > 0 && i < len(runs)-1 {
				continue
			}
			mark := run[0].Mark
			if n := len(run); n >= many {
				mark = fmt.Sprintf("%s × %d", mark, n)
				run = run[(n-1)*2/3:][:1] // one right of the middle, where the section is, and not at the end
			}
			for _, mb := range run {
				out = append(out, func() { m.partMark(p, v, mb, mark, m.markPoint(mb)) })
			}
		}
	}
	return out
}

// onDrawn is the point nearest to at where a view shows a member: small scales
// leave out some of its lines. It tells whether the point then lies on the edge
// of what is drawn, and reports false if the view shows nothing of the member.
func (p *page) onDrawn(v *draw.View, mb frame.Member, at geom.Vec) (on geom.Vec, edge, ok bool) {
	const least = 0.1 // mm on paper: a point nearer to the edge is on it
	id := memberID(mb)
	within := v.Outline(projectBox(v.Axes, mb.Solid().Bounds())).Expand(1) // other views show it elsewhere
	box := draw.EmptyRect()
	for _, it := range p.sheet.Items {
		if it.Path != nil && it.Path.ID == id {
			if b := it.Path.Bounds(); within.Encloses(b) {
				box = box.Union(b)
			}
		}
	}
	if box.Empty() {
		return at, false, false
	}
	q := v.Pt(at)
	to := geom.P(min(max(q.X, box.X0), box.X1), min(max(q.Y, box.Y0), box.Y1))
	d := to.Sub(q).Mul(1 / v.Scale)
	edge = min(to.X-box.X0, box.X1-to.X, to.Y-box.Y0, box.Y1-to.Y) < least
	return at.Add(v.Axes.Right.Mul(d.X)).Add(v.Axes.Up.Mul(d.Y)), edge, true
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
	return mb.Place.Point(geom.V(mb.Length/3, mb.Section.Width/2, mb.Section.Depth))
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
		from, to := v.Flat(geom.P(o.From, 0)).X, v.Flat(geom.P(o.To, 0)).X
		from, to = max(from, left.X), min(to, right.X)
		if from >= to {
			continue // out of the picture
		}
		t := draw.Text{Layer: draw.Notes, Align: draw.Centred, Height: draw.NoteHeight, String: name}
		t.At.Y = left.Y + wordStrip/2
		half := t.Width() / 2 // the word may stand out by so much, and still names its opening
		if x, ok := freeAlong(p, t.At.Y, t.Width(), stretch{max(from-half, left.X), (from + to) / 2, min(to+half, right.X)}); ok {
			t.At = geom.P(x, t.At.Y-draw.NoteHeight/2)
			p.sheet.AddText(t)
		}
	}
	plan.houseWords(p)
}

// houseWords says where the house is: as near behind the wall as there is room.
func (b *planView) houseWords(p *page) {
	const arrows = 12 // mm on paper: both
	words := b.toward
	width := draw.TextWidth(words, draw.NoteHeight, false) + arrows
	wall := b.view.Flat(geom.P(b.wall.all.X1, b.wall.back))
	for y := wall.Y + wordStrip/2; y < b.room.Y1; y += draw.NoteHeight {
		if x, ok := freeAlong(p, y, width, stretch{b.room.X0, wall.X - width/2, b.room.X1}); ok {
			p.sheet.Toward(words, geom.P(x, y), geom.P(0, 1))
			return
		}
	}
}

// stretch is where along the paper words may stand, and where best.
type stretch struct{ from, want, to float64 }

// freeAlong finds a place for words of a width within a stretch, their middle
// at the height y.
func freeAlong(p *page, y, width float64, s stretch) (float64, bool) {
	const step, gap = 2.0, 1.0 // mm on paper
	lo, hi := s.from+width/2, s.to-width/2
	if lo > hi {
		return 0, false
	}
	want := min(max(s.want, lo), hi)
	for d := 0.0; d <= s.to-s.from; d += step {
		for _, x := range []float64{want - d, want + d} {
			r := draw.Rect{X0: x - width/2, Y0: y - draw.NoteHeight, X1: x + width/2, Y1: y + draw.NoteHeight}
			if x >= lo && x <= hi && p.placer.Free(r, gap) {
				return x, true
			}
		}
	}
	return 0, false
}
