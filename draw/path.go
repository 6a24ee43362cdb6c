package draw

import (
	"iter"
	"math"

	"plumbcut/geom"
)

// Add records a path.
func (s *Sheet) Add(p Path) { s.Items = append(s.Items, Item{Path: &p}) }

// AddText records a text. An empty one is left out.
func (s *Sheet) AddText(t Text) {
	if t.String != "" {
		s.Items = append(s.Items, Item{Text: &t})
	}
}

// Line strokes a straight or broken line through the points.
func (s *Sheet) Line(st Style, pts ...geom.Pt) { s.Add(LinePath(st, pts...)) }

// Polygon strokes the closed outline through the points.
func (s *Sheet) Polygon(st Style, pts []geom.Pt) { s.Add(PolygonPath(st, pts)) }

// Rect strokes a rectangle.
func (s *Sheet) Rect(st Style, r Rect) { s.Polygon(st, r.Corners()) }

// Circle strokes a full circle.
func (s *Sheet) Circle(st Style, centre geom.Pt, r float64) { s.Add(CirclePath(st, centre, r)) }

// Arc strokes an elliptical arc.
func (s *Sheet) Arc(st Style, a geom.Arc) { s.Add(ArcPath(st, a)) }

// FillPolygon fills the area that the loops bound under the even-odd rule:
// a loop within a loop is a hole.
func (s *Sheet) FillPolygon(layer Layer, tone Grey, loops ...[]geom.Pt) {
	s.Add(FillPath(layer, tone, loops...))
}

// Dot fills a small black circle.
func (s *Sheet) Dot(layer Layer, centre geom.Pt, r float64) {
	p := CirclePath(Style{Layer: layer}, centre, r)
	black := Grey(1)
	p.Fill, p.Stroke = &black, false
	s.Add(p)
}

// LinePath is a straight or broken line through the points; fewer than two
// draw nothing.
func LinePath(st Style, pts ...geom.Pt) Path {
	return Path{Style: st, Segs: appendLine(make([]Seg, 0, len(pts)), pts), Stroke: true}
}

// PolygonPath is the closed outlines through the points of each loop.
func PolygonPath(st Style, loops ...[]geom.Pt) Path {
	p := Path{Style: st, Closed: true, Stroke: true}
	for _, loop := range loops {
		p.Segs = appendLine(p.Segs, loop)
	}
	return p
}

// FillPath is the area within the loops, without an outline.
func FillPath(layer Layer, tone Grey, loops ...[]geom.Pt) Path {
	p := PolygonPath(Style{Layer: layer}, loops...)
	p.Fill, p.Stroke = &tone, false
	return p
}

// CirclePath is a full circle, starting and ending at its right.
func CirclePath(st Style, centre geom.Pt, r float64) Path {
	p := ArcPath(st, geom.Arc{Centre: centre, Major: geom.P(r, 0), Ratio: 1, End: 2 * math.Pi})
	p.Segs[1].To = p.Segs[0].To
	p.Closed = true
	return p
}

// ArcPath is one elliptical arc.
func ArcPath(st Style, a geom.Arc) Path {
	return Path{Style: st, Stroke: true, Segs: []Seg{
		{Op: Move, To: a.At(a.Start)},
		{Op: Curve, To: a.At(a.End), Arc: a},
	}}
}

func appendLine(segs []Seg, pts []geom.Pt) []Seg {
	if len(pts) < 2 {
		return segs
	}
	for i, p := range pts {
		op := Line
		if i == 0 {
			op = Move
		}
		segs = append(segs, Seg{Op: op, To: p})
	}
	return segs
}

// Bounds is the rectangle round the centre line of the path, not counting the
// width of the pen; empty for an empty path. A curve is within flatness of it.
func (p Path) Bounds() Rect {
	r := EmptyRect()
	for _, line := range p.Flatten() {
		r = r.Union(Bounds(line...))
	}
	return r
}

// segments are the straight pieces of the path one after the other, as Flatten
// has them.
func (p *Path) segments() iter.Seq2[geom.Pt, geom.Pt] {
	return func(yield func(a, b geom.Pt) bool) {
		var first, at geom.Pt
		var arc []geom.Pt
		to := func(b geom.Pt) bool {
			a := at
			at = b
			return yield(a, b)
		}
		closes := func() bool { return !p.Closed || at == first || to(first) }
		for i, seg := range p.Segs {
			switch seg.Op {
			case Move:
				if i > 0 && !closes() {
					return
				}
				first, at = seg.To, seg.To
			case Line:
				if !to(seg.To) {
					return
				}
			case Curve:
				arc = appendArc(arc[:0], seg.Arc)
				arc[len(arc)-1] = seg.To
				for _, b := range arc {
					if !to(b) {
						return
					}
				}
			}
		}
		if len(p.Segs) > 0 {
			closes()
		}
	}
}

// Flatten is the path as broken lines, one for each Move, the closed ones
// ending where they start. Curves are within flatness of the true ones.
func (p Path) Flatten() [][]geom.Pt {
	var out [][]geom.Pt
	for _, sub := range p.split() {
		line := make([]geom.Pt, 0, len(sub)+1)
		for _, seg := range sub {
			if seg.Op == Curve {
				line = appendArc(line, seg.Arc)
				line[len(line)-1] = seg.To
				continue
			}
			line = append(line, seg.To)
		}
		if p.Closed && line[0] != line[len(line)-1] {
			line = append(line, line[0])
		}
		out = append(out, line)
	}
	return out
}

// split cuts the pieces at each Move.
func (p Path) split() [][]Seg {
	var subs [][]Seg
	for i, start := 0, 0; i < len(p.Segs); i++ {
		if i+1 == len(p.Segs) || p.Segs[i+1].Op == Move {
			subs = append(subs, p.Segs[start:i+1])
			start = i + 1
		}
	}
	return subs
}
