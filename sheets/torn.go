package sheets

import (
	"cmp"
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// tear is a plane of a crop box seen edge on: what it cuts goes on in truth,
// so that edges along it are no outlines but stand for a break.
//
//	─────────┐             ─────────╮
//	         │  outline             ⚡  break line
//	─────────┘             ─────────╯
type tear struct {
	n     geom.Pt // square to the line, of length 1
	d     float64 // n·p of its points
	spans []span  // where a break line is drawn, mm from the foot of the normal
}

// onTear is the distance, in mm of the model, up to which a point counts as on
// a crop plane: cuts are exact to far below it, and no timber is so thin.
const onTear = 1e-3

// holds reports whether the line from a to b lies along the tear.
func (t tear) holds(a, b geom.Pt) bool {
	return math.Abs(t.n.Dot(a)-t.d) < onTear && math.Abs(t.n.Dot(b)-t.d) < onTear
}

// along is the place of a point along the tear.
func (t tear) along(p geom.Pt) float64 { return t.n.Left().Dot(p) }

// at is the point of the tear at a place along it.
func (t tear) at(s float64) geom.Pt { return t.n.Mul(t.d).Add(t.n.Left().Mul(s)) }

// planes are the six sides of a crop box.
func planes(b geom.Box3) []geom.Plane {
	return []geom.Plane{
		{N: geom.V(1, 0, 0), D: b.Max.X}, {N: geom.V(-1, 0, 0), D: -b.Min.X},
		{N: geom.V(0, 1, 0), D: b.Max.Y}, {N: geom.V(0, -1, 0), D: -b.Min.Y},
		{N: geom.V(0, 0, 1), D: b.Max.Z}, {N: geom.V(0, 0, -1), D: -b.Min.Z},
	}
}

// tears are the sides of the crop box that the view shows edge on.
func (l look) tears() []tear {
	if l.crop == nil || !l.torn {
		return nil
	}
	const edgeOn = 1e-9 // cosine
	var out []tear
	for _, pl := range planes(*l.crop) {
		if math.Abs(pl.N.Dot(l.axes.Toward)) < edgeOn && !math.IsInf(pl.D, 0) {
			out = append(out, tear{n: l.axes.Project(pl.N), d: pl.D})
		}
	}
	return out
}

// tear takes a line of a body that lies along a tear, and remembers where a
// break line must stand for it. It reports false for any other line.
func (p *picture) tear(body int, a, b geom.Pt) bool {
	for i := range p.tears {
		t := &p.tears[i]
		if !t.holds(a, b) {
			continue
		}
		if h, house := p.scene.house(body); !house || h.Name != frame.HouseGround {
			lo, hi := t.along(a), t.along(b)
			t.spans = append(t.spans, span{min(lo, hi), max(lo, hi)})
		}
		return true
	}
	return false
}

// tearCuts remembers the break lines that cut faces need.
func (p *picture) tearCuts(faces []cutFace) {
	for _, c := range faces {
		for i, a := range c.region.Outer {
			p.tear(c.body, a, c.region.Outer[(i+1)%len(c.region.Outer)])
		}
	}
}

// torn reports whether the line from a to b of the view plane lies along a tear.
func (p picture) torn(a, b geom.Pt) bool {
	return slices.ContainsFunc(p.tears, func(t tear) bool { return t.holds(a, b) })
}

// joinSpans makes one of those that touch.
func joinSpans(spans []span) []span {
	slices.SortFunc(spans, func(a, b span) int { return cmp.Or(cmp.Compare(a.lo, b.lo), cmp.Compare(a.hi, b.hi)) })
	var out []span
	for _, s := range spans {
		if n := len(out); n > 0 && s.lo <= out[n-1].hi+onTear {
			out[n-1].hi = max(out[n-1].hi, s.hi)
			continue
		}
		out = append(out, s)
	}
	return out
}

// The look of a break line, mm on paper (own; the line is type 01.1 of ISO
// 128-2, narrow with a zigzag).
const (
	breakOver  = 1.5 // beyond the edges of what is broken
	breakHigh  = 2.0 // of the zigzag to each side
	breakWide  = 2.0 // of the zigzag along the line
	breakShare = 0.4 // but no more of the line than this
)

// paintTears draws the break lines.
func (p picture) paintTears(s *draw.Sheet, v *draw.View) {
	for _, t := range p.tears {
		for _, sp := range joinSpans(t.spans) {
			a, b := t.at(sp.lo), t.at(sp.hi)
			over := [2]float64{breakOver, breakOver}
			for i, end := range []geom.Pt{a, b} {
				for _, o := range p.tears {
					if o.n.Cross(t.n) != 0 && o.holds(end, end) {
						over[i] = 0 // the next break line takes over there
					}
				}
			}
			zigzag(s, v.Flat(a), v.Flat(b), over)
		}
	}
}

// zigzag ends a timber that goes on: a narrow line with a zigzag in its middle,
// a little over both ends.
func zigzag(s *draw.Sheet, a, b geom.Pt, over [2]float64) {
	breakLine(s, draw.Style{Layer: draw.Outline, Pen: draw.Narrow}, a, b, over)
}

// breakLine is zigzag in a style.
func breakLine(s *draw.Sheet, style draw.Style, a, b geom.Pt, over [2]float64) {
	dir := b.Sub(a).Unit()
	length := b.Sub(a).Len()
	wide := min(breakWide, breakShare*length)
	up := dir.Left().Mul(breakHigh * wide / breakWide)
	mid := a.Lerp(b, 0.5)
	s.Line(style,
		a.Sub(dir.Mul(over[0])), mid.Sub(dir.Mul(wide/2)),
		mid.Sub(dir.Mul(wide/4)).Add(up), mid.Add(dir.Mul(wide/4)).Sub(up),
		mid.Add(dir.Mul(wide/2)), b.Add(dir.Mul(over[1])))
}

// outline draws the loops of a cut face but for what lies along a tear and for
// what the outline of another has drawn.
func (p picture) outline(s *draw.Sheet, v *draw.View, st draw.Style, c cutFace, drawn *thinner) {
	path := draw.Path{Style: st, Stroke: true, ID: p.scene.id(c.body)}
	for _, loop := range append([][]geom.Pt{c.region.Outer}, c.region.Holes...) {
		pieces := p.pieces(v, loop, drawn)
		if len(pieces) == len(loop) && closes(pieces) {
			whole := draw.PolygonPath(st, flatten(v, loop))
			whole.ID = path.ID
			s.Add(whole)
			continue
		}
		for i, l := range pieces {
			if i == 0 || pieces[i-1].b != l.a {
				path.Segs = append(path.Segs, draw.Seg{Op: draw.Move, To: l.a})
			}
			path.Segs = append(path.Segs, draw.Seg{Op: draw.Line, To: l.b})
		}
	}
	if len(path.Segs) > 0 {
		s.Add(path)
	}
}

// pieces is what is to be drawn of a loop, on the paper. It starts after a gap
// if there is one, so that lines that meet at a corner follow each other.
func (p picture) pieces(v *draw.View, loop []geom.Pt, drawn *thinner) []inkLine {
	var out []inkLine
	gap := 0
	flat := flatten(v, loop)
	for i, a := range loop {
		k := (i + 1) % len(loop)
		before := len(out)
		l := inkLine{a: flat[i], b: flat[k]}
		switch {
		case p.torn(a, loop[k]):
		case l.length() < shortest:
			out = append(out, l) // rest would leave a gap in the outline
		default:
			out = append(out, drawn.rest(l)...)
		}
		if len(out) != before+1 || out[before].a != flat[i] || out[before].b != flat[k] {
			gap = len(out)
		}
	}
	for i, a := range flat {
		drawn.keep(a, flat[(i+1)%len(flat)])
	}
	return append(out[gap:len(out):len(out)], out[:gap]...)
}

// closes reports whether each line starts where the one before ends.
func closes(lines []inkLine) bool {
	for i, l := range lines {
		if lines[(i+len(lines)-1)%len(lines)].b != l.a {
			return false
		}
	}
	return true
}

// flatten carries a loop of the view plane to the paper.
func flatten(v *draw.View, loop []geom.Pt) []geom.Pt {
	out := make([]geom.Pt, len(loop))
	for i, q := range loop {
		out[i] = v.Flat(q)
	}
	return out
}
