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

// siteLine is a line on the site that the job states: a boundary, or what the
// pegs are measured from. It is square to x, at along the frame's side, or to y.
type siteLine struct {
	side     frame.Side
	from, at float64 // of the frame's side, and of the line
	words    string
}

// siteLines are those of the job, and the frame's outline. Boundaries are
// measured from everything that is above ground, pegs from the lines between
// them.
func (m *maker) siteLines() (lines []siteLine, foot draw.Rect) {
	r, s := m.planReach(), m.frame.Setout
	foot = draw.Rect{X0: r.x0 + wallMore, Y0: r.y0 + wallMore, X1: r.x1 - wallMore, Y1: s.BackIn()}
	pegs := draw.Rect{X0: m.rear().From, Y0: m.front().Outer, X1: m.rear().To}
	add := func(side frame.Side, of draw.Rect, distance float64, words string) {
		l := siteLine{side: side, words: words}
		switch side {
		case frame.Left:
			l.from, l.at = of.X0, of.X0-distance
		case frame.Right:
			l.from, l.at = of.X1, of.X1+distance
		case frame.Rear:
			l.from, l.at = of.Y1, of.Y1+distance
		default:
			l.from, l.at = of.Y0, of.Y0-distance
		}
		lines = append(lines, l)
	}
	for _, b := range m.job.Site.Boundaries {
		add(b.Side, foot, b.Distance, "boundary")
	}
	for _, b := range m.job.Site.References {
		add(b.Side, pegs, b.Distance, b.What)
	}
	return lines, foot
}

// siteView shows how far the frame is from what the job states round it; it is
// empty if that is nothing.
func (m *maker) siteView() block {
	lines, foot := m.siteLines()
	if len(lines) == 0 {
		return spacer(0)
	}
	all := foot
	at := func(x, y float64) geom.Vec { return geom.V(x, y, 0) }
	for _, l := range lines {
		switch l.side {
		case frame.Left:
			all.X0 = min(all.X0, l.at)
		case frame.Right:
			all.X1 = max(all.X1, l.at)
		case frame.Rear:
			all.Y1 = max(all.Y1, l.at)
		default:
			all.Y0 = min(all.Y0, l.at)
		}
	}
	name := "Boundaries"
	if len(m.job.Site.References) > 0 {
		name = "Where it stands"
	}
	b := m.diagram(name, m.origin(), all)
	b.fixed = fitting(smallView, all.W(), all.H())
	b.pad.Y1 = 2 * draw.NoteHeight
	for _, l := range lines {
		switch l.side {
		case frame.Left:
			b.Bottom.Overall("", at(l.at, 0), at(l.from, 0))
		case frame.Right:
			b.Bottom.Overall("", at(l.from, 0), at(l.at, 0))
		case frame.Rear:
			b.Right.Overall("", at(0, l.from), at(0, l.at))
		default:
			b.Left.Overall("", at(0, l.from), at(0, l.at))
		}
	}
	b.over = func(p *page, v *draw.View) { m.drawSite(p, v, foot, all) }
	return b
}

// drawSite draws the frame as a rectangle, the wall if there is one, and what
// the job states round it.
func (m *maker) drawSite(p *page, v *draw.View, foot, all draw.Rect) {
	s := p.sheet
	box := v.Outline(foot)
	pen := draw.Style{Layer: draw.Outline, Pen: draw.Middle}
	word := func(at geom.Pt, words string) {
		s.AddText(draw.Text{Layer: draw.Notes, At: at, Align: draw.Centred, Height: draw.NoteHeight, String: words})
	}
	word(v.Flat(foot.Centre()), "frame")
	if m.rear().OnWall {
		left, right := geom.P(box.X0, box.Y0), geom.P(box.X1, box.Y0)
		if k := m.front(); k.Skewed() {
			left, right = v.Pt(m.beamAt(k.From)), v.Pt(m.beamAt(k.To))
			box.X0, box.X1 = left.X, right.X
		}
		s.Line(pen, geom.P(box.X0, box.Y1), left, right, geom.P(box.X1, box.Y1))
		s.Line(light(draw.Solid), v.Flat(geom.P(all.X0, 0)), v.Flat(geom.P(all.X1, 0)))
		word(v.Flat(geom.P(foot.Centre().X, 0)).Add(geom.P(0, 1.5)), "house")
	} else {
		s.Line(pen, append(box.Corners(), geom.P(box.X0, box.Y0))...)
	}
	style := draw.Style{Layer: draw.Context, Pen: draw.Middle, Dash: draw.Chain}
	const clear = 1.5 // mm on paper, from the words to the line that they name
	lines, _ := m.siteLines()
	for _, l := range lines {
		p0, p1 := v.Flat(geom.P(l.at, all.Y0)), v.Flat(geom.P(l.at, all.Y1))
		t := draw.Text{Layer: draw.Notes, Align: draw.Centred, Height: draw.NoteHeight, String: l.words}
		switch l.side {
		case frame.Left, frame.Right:
			if l.side == frame.Right {
				p0, p1 = p1, p0
			}
			t.Turn, t.At = math.Pi/2, p0.Lerp(p1, 0.5).Sub(geom.P(clear, 0))
		default:
			p0, p1 = v.Flat(geom.P(all.X0, l.at)), v.Flat(geom.P(all.X1, l.at))
			t.At = p0.Lerp(p1, 0.5).Add(geom.P(0, clear))
		}
		s.Line(style, p0, p1)
		if p1.Sub(p0).Len() > roomForWord*t.Width() || l.words != "boundary" && p1.Sub(p0).Len() > t.Width() {
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
	end := geom.V(x1, m.postLine(), 0)
	if k := m.front(); k.Skewed() {
		_, end = m.skewString(k)
	}
	words := []func(){
		label(draw.Label{At: l, Text: leftPoint}),
		label(draw.Label{At: r, Text: rightPoint}),
		label(draw.Label{At: end, Text: "string line on the outer faces of the posts", Width: stringWords}),
	}
	if m.rear().Back {
		words = append(words, label(draw.Label{At: geom.V(x1, m.rear().Inner, 0), Text: "base line, on the outer faces of the rear posts", Width: stringWords}))
	}
	if deck := -m.job.Levels.DeckOut; deck < 0 && deck > w.y0 {
		c := m.centresOf(m.front())
		mid := (c[max(0, len(c)-2)].X + c[len(c)-1].X) / 2
		words = append(words, label(draw.Label{At: geom.V(mid, deck, 0), Text: "edge of " + m.job.FloorName()}))
	}
	words = append(words, m.eachMark(p, v, frame.KindPost, frame.KindFooting)...)
	p.cleanestOrder(append(words, m.keepOutMarks(p, v, w)...)...)
}
