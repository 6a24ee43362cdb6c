package sheets

import (
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// mostTaped is the greatest number of posts whose tapes are all drawn; of more,
// only those of the two outer posts are, and the table gives the rest.
const mostTaped = 4

// tape is a tape drawn from a fixed point to a post.
type tape struct{ from, to geom.Vec }

// steepest is the least share of its length that a drawn tape runs along the
// wall. One that goes all but straight out would lie on other lines; the table
// gives it.
const steepest = 0.2

// steepestOnSkew is the same where posts may stand much nearer to the wall at one
// end: short tapes have no room for their figures.
const steepestOnSkew = 0.4

// tapes are the tapes that the plan draws.
func (m *maker) tapes() []tape {
	left, right := m.fixedPoints()
	posts := m.centresOf(m.front())
	if n := len(posts); n > mostTaped {
		posts = []geom.Vec{posts[0], posts[n-1]}
	}
	var out []tape
	least := steepest
	if m.front().Skewed() {
		least = steepestOnSkew
	}
	for _, p := range posts {
		for _, from := range []geom.Vec{left, right} {
			if d := p.Sub(from); math.Abs(d.X) > least*d.Len() {
				out = append(out, tape{from, p})
			}
		}
	}
	return out
}

// drawTapes draws each tape as a dimension along it, its figure where no other
// tape and no other figure is.
func (m *maker) drawTapes(p *page, v *draw.View, w wallPlan) {
	all := m.tapes()
	lines := append(all[:len(all):len(all)], m.otherLines(w)...)
	var figures []draw.Rect // and feet
	for _, post := range m.frame.Of(frame.KindPost) {
		figures = append(figures, v.Outline(projectBox(geom.Plan(), m.footOf(post))).Expand(pastHole))
	}
	for i, t := range all {
		share, ok := tapeShare(p, v, lines, i, figures)
		if !ok {
			continue // the table gives it
		}
		d := draw.Span{View: v, A: t.from, B: t.to, Share: share}
		first := len(p.sheet.Dims)
		d.Draw(p.sheet, p.hand)
		for _, dim := range p.sheet.Dims[first:] {
			figures = append(figures, dim.Box)
		}
	}
}

// otherLines are the lines of the house that a tape's figure keeps clear of.
func (m *maker) otherLines(w wallPlan) []tape {
	out := []tape{{geom.V(w.all.X0, 0, 0), geom.V(w.all.X1, 0, 0)}}
	if k := m.front(); k.Skewed() {
		out = append(out, tape{m.beamAt(k.From), m.beamAt(k.To)})
	}
	for _, y := range []float64{m.front().Outer, -m.job.Levels.DeckOut} {
		out = append(out, tape{geom.V(w.all.X0, y, 0), geom.V(w.all.X1, y, 0)})
	}
	for _, r := range m.keepOuts(w) {
		c := r.Corners()
		for i, a := range c {
			b := c[(i+1)%len(c)]
			out = append(out, tape{geom.V(a.X, a.Y, 0), geom.V(b.X, b.Y, 0)})
		}
	}
	for _, r := range m.job.Wall.Returns {
		out = append(out, tape{geom.V(r.At, 0, 0), geom.V(r.At, max(w.y0, -r.Length), 0)})
	}
	return out
}

// tapeShare is where along a tape its figure is clear of the other lines and
// of the figures that are there already, as near to the middle as it goes. It
// reports false if there is no such place.
func tapeShare(p *page, v *draw.View, lines []tape, i int, figures []draw.Rect) (float64, bool) {
	const first, last, steps = 0.15, 0.85, 36
	const samples = 5     // in half the figure
	const enough = 4.0    // mm on paper: beyond it nearer to the middle is better
	const clearance = 0.8 // mm on paper, of the ink
	a, b := v.Pt(lines[i].from), v.Pt(lines[i].to)
	ink := draw.Span{View: v, A: lines[i].from, B: lines[i].to}.Figure(p.hand).Quad()
	along, half := ink[1].Sub(ink[0]).Unit(), ink[1].Sub(ink[0]).Len()/2
	up, least := ink[0].Lerp(ink[2], 0.5).Sub(a.Lerp(b, 0.5)), ink[3].Sub(ink[0]).Len()/2+clearance
	if 2*half+strokes > b.Sub(a).Len() {
		return 0, false // it would stand beyond the tape's end
	}
	best, most := 0.5, math.Inf(-1)
	for k := range steps {
		t := first + (last-first)*float64(k)/(steps-1)
		mid := a.Lerp(b, t).Add(up)
		var text []geom.Pt
		for n := -samples; n <= samples; n++ {
			text = append(text, mid.Add(along.Mul(half*float64(n)/samples)))
		}
		clear := enough
		for j, o := range lines {
			for _, q := range text {
				if j != i {
					clear = min(clear, distance(q, v.Pt(o.from), v.Pt(o.to)))
				}
			}
		}
		for _, f := range figures {
			for _, q := range text {
				clear = min(clear, outside(q, f)-draw.NoteHeight)
			}
		}
		if clear -= math.Abs(t - 0.5); clear > most {
			best, most = t, clear
		}
	}
	return best, most >= least
}

// outside is how far q is from a rectangle, 0 within it.
func outside(q geom.Pt, r draw.Rect) float64 {
	return math.Hypot(max(r.X0-q.X, 0, q.X-r.X1), max(r.Y0-q.Y, 0, q.Y-r.Y1))
}

// distance is how far q is from the line between a and b.
func distance(q, a, b geom.Pt) float64 {
	d := b.Sub(a)
	l2 := d.Dot(d)
	if l2 == 0 {
		return q.Sub(a).Len()
	}
	return q.Sub(a.Lerp(b, min(max(q.Sub(a).Dot(d)/l2, 0), 1))).Len()
}
