package geom

import "math"

// Leg is a piece of an outline: from the end of the leg before to To, straight
// or along an arc that turns by Turn radians, to the left where that is
// positive. Turn is more than −2π and less than 2π.
type Leg struct {
	To   Pt
	Turn float64
}

// Outline is a closed line of straight pieces and arcs. The first leg starts
// where the last one ends.
type Outline []Leg

// arcTol is the furthest that a facet of a swept outline may lie from the true
// arc, mm. Timber is marked and cut to 0.1 mm at the very best; a template is to
// be true to 0.02 mm, and the file that it is printed from rounds, too.
const arcTol = 0.015

// mostFacets bounds the work for one arc, however large it is.
const mostFacets = 720

// from is where leg i starts.
func (o Outline) from(i int) Pt { return o[(i+len(o)-1)%len(o)].To }

// Arc returns the true curve of leg i, as Arc.At runs it: anticlockwise,
// whichever way the leg goes. It reports false for a straight leg.
func (o Outline) Arc(i int) (Arc, bool) {
	return ArcBetween(o.from(i), o[i].To, o[i].Turn)
}

// ArcBetween returns the arc from a to b that turns by turn radians, to the
// left where that is positive, as Arc.At runs it: anticlockwise, from b to a
// where it turns to the right. It reports false if there is no such arc.
func ArcBetween(a, b Pt, turn float64) (Arc, bool) {
	half := b.Sub(a).Mul(0.5)
	if half.Len() <= onTol || math.Abs(turn) < normalTol || !(math.Abs(turn) < 2*math.Pi) {
		return Arc{}, false
	}
	centre := a.Add(half).Add(half.Left().Mul(1 / math.Tan(turn/2)))
	if turn < 0 {
		a, turn = b, -turn
	}
	d := a.Sub(centre)
	start := math.Atan2(d.Y, d.X)
	return Arc{Centre: centre, Major: P(d.Len(), 0), Ratio: 1, Start: start, End: start + turn}, true
}

// flat returns the outline in straight edges: its corners, and for the edge
// from each to the next the number, from 1, of the leg whose arc it is a facet
// of, or 0. The corners of facets lie on the arc.
func (o Outline) flat() (pts []Pt, arc []int32) {
	for i, l := range o {
		a, ok := o.Arc(i)
		pts = append(pts, o.from(i))
		if !ok {
			arc = append(arc, 0)
			continue
		}
		n := facets(a)
		for k := 1; k < n; k++ {
			at := float64(k) / float64(n)
			if l.Turn < 0 {
				at = 1 - at
			}
			pts, arc = append(pts, a.At(a.Start+(a.End-a.Start)*at)), append(arc, int32(i+1))
		}
		arc = append(arc, int32(i+1))
	}
	return pts, arc
}

// Flat returns the corners of the outline in straight edges, every one of which
// is within 0.02 mm of it.
func (o Outline) Flat() []Pt {
	pts, _ := o.flat()
	return pts
}

// Crossing returns two legs that cross or touch where they do not follow each
// other, the first of them as early as can be; false if there are none. A leg
// may cross the next one, or itself come back to where it started.
func (o Outline) Crossing() (i, j int, crossed bool) {
	pts, leg := o.legged()
	n := len(pts)
	for a := range n {
		for b := a + 1; b < n; b++ {
			p, q, r, s := pts[a], pts[(a+1)%n], pts[b], pts[(b+1)%n]
			switch {
			case b == a+1 && turnsBack(p, q, s), b == n-1 && a == 0 && turnsBack(r, s, q):
				return leg[a], leg[b], true
			case b == a+1 || b == n-1 && a == 0:
			case meets(p, q, r, s):
				return leg[a], leg[b], true
			}
		}
	}
	return 0, 0, false
}

// legged is flat without edges that have no length, and with the number of the
// leg that each edge is of.
func (o Outline) legged() (pts []Pt, leg []int) {
	all, _ := o.flat()
	of := make([]int, 0, len(all))
	for i := range o {
		n := 1
		if a, ok := o.Arc(i); ok {
			n = facets(a)
		}
		for range n {
			of = append(of, i)
		}
	}
	for i, p := range all {
		if all[(i+1)%len(all)].Sub(p).Len() > onTol {
			pts, leg = append(pts, p), append(leg, of[i])
		}
	}
	return pts, leg
}

// turnsBack reports whether the edge from q to r lies on the edge from p to q.
func turnsBack(p, q, r Pt) bool {
	return turn(p, q, r) == 0 && q.Sub(p).Dot(r.Sub(q)) < 0
}

// meets reports whether the edges p–q and r–s have a point in common.
func meets(p, q, r, s Pt) bool {
	if max(p.X, q.X) < min(r.X, s.X)-onTol || max(r.X, s.X) < min(p.X, q.X)-onTol ||
		max(p.Y, q.Y) < min(r.Y, s.Y)-onTol || max(r.Y, s.Y) < min(p.Y, q.Y)-onTol {
		return false
	}
	a, b := turn(p, q, r), turn(p, q, s)
	c, d := turn(r, s, p), turn(r, s, q)
	return !(a > 0 && b > 0 || a < 0 && b < 0 || c > 0 && d > 0 || c < 0 && d < 0)
}

// facets is how many flats stand for an arc.
func facets(a Arc) int {
	step := 2 * math.Acos(1-min(0.5, arcTol/a.Major.Len()))
	return int(min(mostFacets, max(1, math.Ceil((a.End-a.Start)/step))))
}

// Sweep is the body that an outline in the plane of Place's U and V sweeps
// along W from From to To. The outline is simple and may be concave; one that
// crosses itself or has no area sweeps nothing. Its arcs stay one smooth face
// each, drawn as true arcs.
type Sweep struct {
	Outline  Outline
	Place    Axes
	From, To float64
}

// Solid returns the swept body.
func (w Sweep) Solid() Solid {
	pts, arc := w.Outline.flat()
	return prism(pts, arc, w.From, w.To, w.barrels()).Placed(w.Place)
}

// barrels are the cylinders of the outline's arcs by leg, in its own axes; one
// without a radius stands for a straight leg.
func (w Sweep) barrels() []barrel {
	out := make([]barrel, len(w.Outline))
	for i := range w.Outline {
		if a, ok := w.Outline.Arc(i); ok {
			out[i] = barrel{at: V(a.Centre.X, a.Centre.Y, 0), dir: V(0, 0, 1), radius: a.Major.Len()}
		}
	}
	return out
}
