package sheets

import (
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// squareView shows the 3-4-5 triangle that squares the set-out off the wall.
func (m *maker) squareView() *viewBlock {
	along, out := m.triangle()
	l, _ := m.fixedPoints()
	a, o := l.Add(geom.V(along, 0, 0)), l.Add(geom.V(0, -out, 0))
	b := m.diagram("Square at L", l, draw.Rect{X0: l.X, Y0: l.Y - out, X1: l.X + along, Y1: l.Y})
	b.fixed = fitting(smallView, along, out)
	b.Top.Overall("along", l, a)
	b.Left.Overall("out", l, o)
	b.over = func(p *page, v *draw.View) {
		s := p.sheet
		pen := draw.Style{Layer: draw.Outline, Pen: draw.Middle}
		s.Line(pen, v.Pt(o), v.Pt(l), v.Pt(a))
		draw.Span{View: v, A: o, B: a}.Draw(s, p.hand)
		const corner = 3.0 // mm on paper, of the mark of the right angle
		c := v.Pt(l)
		s.Line(draw.Style{Layer: draw.Notes}, c.Add(geom.P(corner, 0)), c.Add(geom.P(corner, -corner)), c.Add(geom.P(0, -corner)))
		s.AddText(draw.Text{Layer: draw.Notes, At: c.Add(geom.P(-corner/2, corner/2)), Align: draw.End, Height: draw.NoteHeight, String: leftPoint})
	}
	return b
}

// smallView is the greatest size of a small view, mm on paper.
const smallView = 55.0

// fitting is the largest scale at which something of the given size is no
// larger than most on the paper.
func fitting(most, w, h float64) float64 {
	all := scales()
	for _, s := range all {
		if max(w, h)*s <= most {
			return s
		}
	}
	return all[len(all)-1]
}

// diagram is a small plan without a picture of the model: lines are drawn over
// it.
func (m *maker) diagram(name string, ref geom.Vec, bounds draw.Rect) *viewBlock {
	b := newViewIn(name, picture{scene: m.scene, axes: geom.Plan(), all: bounds}, ref, bounds)
	b.title.NoBar = true
	return b
}

// siteView shows how far the boundaries are from the frame; it is empty if the
// job gives none.
func (m *maker) siteView() block {
	if len(m.job.Site.Boundaries) == 0 {
		return spacer(0)
	}
	r := m.planReach()
	foot := draw.Rect{X0: r.x0 + wallMore, Y0: r.y0 + wallMore, X1: r.x1 - wallMore, Y1: 0}
	all := foot
	at := func(x, y float64) geom.Vec { return geom.V(x, y, 0) }
	for _, s := range m.job.Site.Boundaries {
		switch s.Side {
		case frame.Left:
			all.X0 = foot.X0 - s.Distance
		case frame.Right:
			all.X1 = foot.X1 + s.Distance
		default:
			all.Y0 = foot.Y0 - s.Distance
		}
	}
	b := m.diagram("Boundaries", m.origin(), all)
	b.fixed = fitting(smallView, all.W(), all.H())
	b.pad.Y1 = 2 * draw.NoteHeight
	for _, s := range m.job.Site.Boundaries {
		switch s.Side {
		case frame.Left:
			b.Bottom.Overall("", at(all.X0, 0), at(foot.X0, 0))
		case frame.Right:
			b.Bottom.Overall("", at(foot.X1, 0), at(all.X1, 0))
		default:
			b.Left.Overall("", at(0, foot.Y0), at(0, all.Y0))
		}
	}
	b.over = func(p *page, v *draw.View) { m.drawSite(p, v, foot, all) }
	return b
}

// drawSite draws the frame as a rectangle, the wall and the boundaries.
func (m *maker) drawSite(p *page, v *draw.View, foot, all draw.Rect) {
	s := p.sheet
	box := v.Outline(foot)
	s.Line(draw.Style{Layer: draw.Outline, Pen: draw.Middle}, geom.P(box.X0, box.Y1), geom.P(box.X0, box.Y0), geom.P(box.X1, box.Y0), geom.P(box.X1, box.Y1))
	s.Line(light(draw.Solid), v.Flat(geom.P(all.X0, 0)), v.Flat(geom.P(all.X1, 0)))
	word := func(at geom.Pt, words string) {
		s.AddText(draw.Text{Layer: draw.Notes, At: at, Align: draw.Centred, Height: draw.NoteHeight, String: words})
	}
	word(v.Flat(foot.Centre()), "frame")
	word(v.Flat(geom.P(foot.Centre().X, 0)).Add(geom.P(0, 1.5)), "house")
	style := draw.Style{Layer: draw.Context, Pen: draw.Middle, Dash: draw.Chain}
	const clear = 1.5 // mm on paper, from the words to the line that they name
	for _, b := range m.job.Site.Boundaries {
		p0, p1 := v.Flat(geom.P(all.X0, all.Y0)), v.Flat(geom.P(all.X1, all.Y0))
		t := draw.Text{Layer: draw.Notes, Align: draw.Centred, Height: draw.NoteHeight, String: "boundary"}
		switch b.Side {
		case frame.Left:
			p1 = v.Flat(geom.P(all.X0, 0))
			t.Turn, t.At = math.Pi/2, p0.Lerp(p1, 0.5).Sub(geom.P(clear, 0))
		case frame.Right:
			p0 = v.Flat(geom.P(all.X1, 0))
			t.Turn, t.At = math.Pi/2, p0.Lerp(p1, 0.5).Sub(geom.P(clear, 0))
		default:
			t.At = p0.Lerp(p1, 0.5).Add(geom.P(0, clear))
		}
		s.Line(style, p0, p1)
		if p1.Sub(p0).Len() > roomForWord*t.Width() {
			s.AddText(t)
		}
	}
}

// roomForWord is how many times as long as the word a boundary must be drawn to
// be lettered: less, and two at a corner would touch.
const roomForWord = 2.2

// setoutMarks marks the posts, the holes, the fixed points and the string.
func (m *maker) setoutMarks(p *page, plan *planView) {
	v, w := plan.view, plan.wall
	m.wallWords(p, plan)
	label := func(l draw.Label) func() {
		l.View = v
		return func() { p.placer.Label(l) }
	}
	l, r := m.fixedPoints()
	for _, at := range []geom.Vec{l, r} {
		p.sheet.Dot(draw.Notes, v.Pt(at), 0.8)
	}
	_, x1 := m.stringEnds()
	y := m.postLine()
	words := []func(){
		label(draw.Label{At: l, Text: leftPoint}),
		label(draw.Label{At: r, Text: rightPoint}),
		label(draw.Label{At: geom.V(x1, y, 0), Text: "string line on the outer faces of the posts", Width: stringWords}),
	}
	if deck := -m.job.Levels.DeckOut; deck < 0 && deck > w.y0 {
		c := m.postCentres()
		mid := (c[max(0, len(c)-2)].X + c[len(c)-1].X) / 2
		words = append(words, label(draw.Label{At: geom.V(mid, deck, 0), Text: "edge of " + m.job.FloorName()}))
	}
	words = append(words, m.eachMark(p, v, frame.KindPost, frame.KindFooting)...)
	p.cleanestOrder(append(words, m.keepOutMarks(p, v, w)...)...)
}
