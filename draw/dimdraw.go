package draw

import (
	"math"
	"sort"

	"plumbcut/geom"
)

// Draw puts the rows on the sheet where the view now stands and records every
// dimension.
func (r *Rows) Draw(s *Sheet, h Hand) {
	if r.Empty() {
		return
	}
	p := r.plan(h)
	p.drawExts(s)
	for i := range p.rows {
		w := &p.rows[i]
		s.Line(narrow(Dimension), p.pt(w.line[0], w.v), p.pt(w.line[1], w.v))
		if w.kind == runningRow {
			p.runningEnds(s, w)
		} else {
			for _, st := range w.stops {
				s.terminator(p.pt(st.u, w.v), p.dir())
			}
		}
		for _, f := range w.figs {
			p.drawFigure(s, w, f)
		}
	}
}

// dir is the direction of the rows on the paper.
func (p *rowsPlan) dir() geom.Pt { return p.pt(1, 0).Sub(p.pt(0, 0)) }

// drawExts strokes the extension lines, broken where a figure stands in the
// way.
func (p *rowsPlan) drawExts(s *Sheet) {
	for _, e := range p.exts {
		for _, piece := range p.clear(e) {
			s.Line(narrow(Dimension), p.pt(e.u, piece.v0), p.pt(e.u, piece.v1))
		}
	}
}

// clear cuts out of an extension line the lengths where it would run through
// or too near a figure. Pieces too short to read as a line are dropped.
func (p *rowsPlan) clear(e extLine) []extLine {
	var holes [][2]float64
	for _, w := range p.rows {
		for _, f := range w.figs {
			across, ink := nearLine-sameSpot, nearLine
			if reach := f.reach(p.h); f.along {
				ink += reach
			} else {
				across += reach
			}
			if f.hasOwn(e.u) {
				continue
			}
			if e.u > f.box.X0-across && e.u < f.box.X1+across && e.v0 < f.box.Y1+ink && e.v1 > f.box.Y0-ink {
				holes = append(holes, [2]float64{f.box.Y0 - ink, f.box.Y1 + ink})
			}
		}
	}
	sort.Slice(holes, func(i, j int) bool { return holes[i][0] < holes[j][0] })
	var out []extLine
	at := e.v0
	for _, hole := range append(holes, [2]float64{e.v1, math.Inf(1)}) {
		if hole[0]-at > shortest {
			out = append(out, extLine{u: e.u, v0: at, v1: min(hole[0], e.v1)})
		}
		at = max(at, hole[1])
	}
	return out
}

// reach is how far the ink of a figure passes the box of its capitals.
func (f figPlan) reach(h Hand) float64 {
	return max(hang(f.text, h.FigureHeight()), rise(f.text, h.FigureHeight()))
}

// hasOwn reports whether the extension line at u carries the figure of a
// running dimension: it runs beside it.
func (f figPlan) hasOwn(u float64) bool {
	return f.kind == RunningDim && !f.title && len(f.leader) == 0 && !isFar(u, f.u[1])
}

// shortest piece of line that is worth drawing, mm.
const shortest = 0.4

// runningEnds draws the origin circle and the arrowheads, or dots where the
// arrows would run into each other.
func (p *rowsPlan) runningEnds(s *Sheet, w *rowPlan) {
	for i, st := range w.stops {
		at := p.pt(st.u, w.v)
		if !isFar(st.u, w.datum) {
			s.Circle(narrow(Dimension), at, originRadius)
			continue
		}
		before := w.stops[max(i-1, 0)].u
		toward := 1.0
		if st.u < w.datum {
			before, toward = w.stops[min(i+1, len(w.stops)-1)].u, -1
		}
		room := math.Abs(st.u - before)
		if !isFar(before, w.datum) {
			room -= originRadius
		}
		if room < arrowLength+nearLine {
			s.Dot(Dimension, at, dotRadius)
			continue
		}
		s.arrowhead(Dimension, at, p.dir().Mul(toward))
	}
}

// drawFigure letters one figure or title and records the dimension.
func (p *rowsPlan) drawFigure(s *Sheet, w *rowPlan, f figPlan) {
	if len(f.leader) > 0 {
		s.Line(narrow(Dimension), p.pts(f.leader)...)
	}
	box := p.rect(f.box)
	height := p.h.FigureHeight()
	if f.title {
		height = NoteHeight
	}
	t := Text{Layer: Dimension, Align: Centred, Height: height, String: f.text}
	if f.along == p.r.Side.lying() {
		t.At = geom.P((box.X0+box.X1)/2, box.Y0)
	} else {
		t.At, t.Turn = geom.P(box.X1, (box.Y0+box.Y1)/2), math.Pi/2
	}
	s.AddText(t)
	if f.title {
		return
	}
	s.Dims = append(s.Dims, Placed{
		Dim: f.dim, Kind: f.kind, Figure: f.text, Box: box, Row: w.index,
		P: p.pt(f.u[0], w.v), Q: p.pt(f.u[1], w.v),
	})
}

func (p *rowsPlan) pts(uv []geom.Pt) []geom.Pt {
	out := make([]geom.Pt, len(uv))
	for i, q := range uv {
		out[i] = p.pt(q.X, q.Y)
	}
	return out
}

// pts makes points of pairs of coordinates.
func pts(xy ...float64) []geom.Pt {
	out := make([]geom.Pt, len(xy)/2)
	for i := range out {
		out[i] = geom.P(xy[2*i], xy[2*i+1])
	}
	return out
}
