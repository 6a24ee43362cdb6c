package template

import (
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
)

// The lines of a template. What tells them apart is weight and dash, never
// colour; the middle of each line is the true place.
var (
	cutLine  = draw.Style{Layer: draw.Outline, Pen: draw.Wide}
	markLine = draw.Style{Layer: draw.Outline, Pen: draw.Middle, Dash: draw.Dashed}
	edgeLine = draw.Style{Layer: draw.Outline, Pen: draw.Middle}
	trimLine = draw.Style{Layer: draw.Context, Pen: draw.Narrow}
	foldLine = draw.Style{Layer: draw.Hidden, Pen: draw.Narrow, Dash: draw.Dashed}
	axisLine = draw.Style{Layer: draw.Centre, Pen: draw.Narrow, Dash: draw.Chain}
	crosses  = draw.Style{Layer: draw.Centre, Pen: draw.Middle}
	register = draw.Style{Layer: draw.Border, Pen: draw.Narrow}
	waste    = draw.Style{Layer: draw.Hatch, Pen: draw.Narrow}
	barLine  = draw.Style{Layer: draw.Dimension, Pen: draw.Narrow}
)

// ink is the marks of a template on flat paper, in true millimetres.
type ink struct {
	lines   []stroke
	circles []circle
	fills   []fill
	words   []draw.Text
}

type stroke struct {
	style draw.Style
	a, b  geom.Pt
}

type circle struct {
	style draw.Style
	ring
}

// fill is a convex area.
type fill struct {
	layer draw.Layer
	tone  draw.Grey
	pts   []geom.Pt
}

func (k *ink) line(s draw.Style, a, b geom.Pt) { k.lines = append(k.lines, stroke{s, a, b}) }

func (k *ink) ring(s draw.Style, c geom.Pt, r float64) {
	k.circles = append(k.circles, circle{s, ring{c, r}})
}

func (k *ink) rect(s draw.Style, r draw.Rect) {
	for _, side := range sides(r) {
		k.line(s, side[0], side[1])
	}
}

func (k *ink) fill(l draw.Layer, tone draw.Grey, pts ...geom.Pt) {
	k.fills = append(k.fills, fill{l, tone, pts})
}

// text letters a line of words from a point on its baseline.
func (k *ink) text(at geom.Pt, align draw.Align, height float64, s string) {
	k.words = append(k.words, draw.Text{Layer: draw.Notes, At: at, Align: align, Height: height, String: s})
}

// add takes over the marks of another ink, moved.
func (k *ink) add(o ink, move geom.Pt) {
	for _, s := range o.lines {
		k.line(s.style, s.a.Add(move), s.b.Add(move))
	}
	for _, c := range o.circles {
		k.ring(c.style, c.c.Add(move), c.r)
	}
	for _, f := range o.fills {
		pts := make([]geom.Pt, len(f.pts))
		for i, p := range f.pts {
			pts[i] = p.Add(move)
		}
		k.fill(f.layer, f.tone, pts...)
	}
	for _, t := range o.words {
		t.At = t.At.Add(move)
		k.words = append(k.words, t)
	}
}

// bounds is the rectangle round all marks.
func (k *ink) bounds() draw.Rect {
	r := draw.EmptyRect()
	for _, s := range k.lines {
		r = r.Union(draw.Bounds(s.a, s.b))
	}
	for _, c := range k.circles {
		r = r.Union(c.box())
	}
	for _, f := range k.fills {
		r = r.Union(draw.Bounds(f.pts...))
	}
	for _, t := range k.words {
		r = r.Union(t.Box())
	}
	return r
}

func (r ring) box() draw.Rect {
	return draw.Rect{X0: r.c.X - r.r, Y0: r.c.Y - r.r, X1: r.c.X + r.r, Y1: r.c.Y + r.r}
}

// lie is how flat paper lies on a page: turned anticlockwise by a quarter, or
// not, and then moved.
type lie struct {
	turned bool
	move   geom.Pt
}

func (l lie) pt(p geom.Pt) geom.Pt {
	if l.turned {
		p = p.Left()
	}
	return p.Add(l.move)
}

// board is a page that ink is put on. What is drawn true comes out true after
// the printer has stretched it: stretch undoes that, about the middle. Words are
// drawn no larger than fits both ways.
type board struct {
	sheet   *draw.Sheet
	middle  geom.Pt
	stretch geom.Pt
}

func (b board) at(p geom.Pt) geom.Pt {
	d := p.Sub(b.middle)
	return b.middle.Add(geom.P(d.X*b.stretch.X, d.Y*b.stretch.Y))
}

// put draws ink on the page, cut off at the edges of a rectangle of the page.
// Words are never cut; on a tile those that it does not hold whole are left to
// another.
func (b board) put(k ink, l lie, clip draw.Rect, tile bool) {
	for _, s := range k.lines {
		if p, q, ok := within(l.pt(s.a), l.pt(s.b), clip); ok {
			b.sheet.Line(s.style, b.at(p), b.at(q))
		}
	}
	for _, f := range k.fills {
		var pts []geom.Pt
		for _, p := range f.pts {
			pts = append(pts, l.pt(p))
		}
		if pts = cropped(pts, clip); len(pts) > 2 {
			for i := range pts {
				pts[i] = b.at(pts[i])
			}
			b.sheet.FillPolygon(f.layer, f.tone, pts)
		}
	}
	for _, c := range k.circles {
		b.circle(c.style, ring{l.pt(c.c), c.r}, clip)
	}
	for _, t := range k.words {
		t.At = l.pt(t.At)
		if l.turned {
			t = turned(t)
		}
		if !tile || clip.Encloses(t.Box()) {
			t.At = b.at(t.At)
			t.Height *= min(b.stretch.X, b.stretch.Y)
			b.sheet.AddText(t)
		}
	}
}

// turned is a text on paper that is turned by a quarter, its anchor turned
// already. One that would stand on its head is set upright in its place.
func turned(t draw.Text) draw.Text {
	if t.Turn == 0 {
		t.Turn = math.Pi / 2
		return t
	}
	t.Turn += math.Pi / 2
	b := t.Box()
	upright := t
	upright.Turn, upright.Align, upright.At = 0, draw.Start, geom.Pt{}
	upright.At = geom.P(b.X0, b.Y1-upright.Box().Y1)
	return upright
}

// circle draws what of a circle lies within a rectangle.
func (b board) circle(st draw.Style, r ring, clip draw.Rect) {
	full := geom.Arc{
		Centre: b.at(r.c), Major: geom.P(r.r*b.stretch.X, 0), Ratio: b.stretch.Y / b.stretch.X, End: 2 * math.Pi,
	}
	if clip.Encloses(r.box()) {
		p := draw.ArcPath(st, full)
		p.Segs[1].To = p.Segs[0].To
		p.Closed = true
		b.sheet.Add(p)
		return
	}
	for _, s := range r.spans(clip) {
		arc := full
		arc.Start, arc.End = s[0], s[1]
		b.sheet.Arc(st, arc)
	}
}

// spans are the angles between which a circle runs within a rectangle.
func (r ring) spans(in draw.Rect) [][2]float64 {
	at := func(t float64) geom.Pt { return r.c.Add(geom.P(r.r*math.Cos(t), r.r*math.Sin(t))) }
	turns := []float64{0, 2 * math.Pi}
	add := func(t float64) {
		if !math.IsNaN(t) {
			turns = append(turns, math.Mod(t+4*math.Pi, 2*math.Pi))
		}
	}
	for _, x := range []float64{in.X0, in.X1} {
		t := math.Acos((x - r.c.X) / r.r)
		add(t)
		add(-t)
	}
	for _, y := range []float64{in.Y0, in.Y1} {
		t := math.Asin((y - r.c.Y) / r.r)
		add(t)
		add(math.Pi - t)
	}
	sortFloats(turns)
	var out [][2]float64
	for i := 1; i < len(turns); i++ {
		from, to := turns[i-1], turns[i]
		if to-from < same || !in.Contains(at((from+to)/2)) {
			continue
		}
		if n := len(out); n > 0 && out[n-1][1] == from {
			out[n-1][1] = to
			continue
		}
		out = append(out, [2]float64{from, to})
	}
	return out
}
