package geom

import (
	"math"
	"slices"
)

// Edge is a real arris of a solid. Smooth says that both faces beside it are
// facets of one curve, so that it is seen only as an outline.
type Edge struct {
	A, B   Vec
	Smooth bool
}

// edge is an Edge by its corners. One that is smooth has the two faces beside
// it; one that stands for a stretch of an arc has its barrel's number, the
// facet f and the flat face g; for any other these are 0.
type edge struct {
	a, b   int32
	smooth bool
	barrel int32
	f, g   ref
}

// beside sets what an edge between two faces is.
func (e *edge) beside(planes []Plane, c curving, f, g ref) {
	run, other := c.run[f.index()], c.run[g.index()]
	if run != 0 && run == other {
		e.smooth, e.f, e.g = true, min(f, g), max(f, g)
		return
	}
	if c.of[f.index()] == 0 {
		f, g, other = g, f, run
	}
	k := c.of[f.index()]
	if k == 0 || other != 0 || math.Abs(planes[g.index()].N.Dot(c.barrels[k-1].dir)) < minSlope {
		return // neither is a facet, or it is the curve's end
	}
	e.barrel, e.f, e.g = k, f, g
}

// Edges returns the real edges of s, each once and as long as it runs
// straight. Rims of bores are not among them.
func (s Solid) Edges() []Edge {
	if s.Empty() {
		return nil
	}
	k := s.boundary()
	es := k.edges(s.d.planes, s.d.curve)
	out := make([]Edge, len(es))
	for i, e := range es {
		out[i] = Edge{k.v[e.a], k.v[e.b], e.smooth}
	}
	return out
}

// arrises returns the edges of s, those that stand for arcs by themselves, worked
// out once: a solid is seen in many pictures.
func (s Solid) arrises() (straight []edge, rims []arcRim) {
	s.d.parted.Do(func() {
		s.d.straight, s.d.rims = arcRims(s.boundary().edges(s.d.planes, s.d.curve))
	})
	return s.d.straight, s.d.rims
}

// edges puts the rims of all faces together: along every line, the stretches
// on which there is any.
func (k *skin) edges(planes []Plane, curve curving) []edge {
	var out []edge
	for i := 0; i < len(k.segs); {
		j := i + 1
		for j < len(k.segs) && k.segs[j].line == k.segs[i].line {
			j++
		}
		out = k.alongLine(out, k.segs[i:j], planes, curve)
		i = j
	}
	return out
}

// alongLine appends the edges on one line. A smooth edge does not run on into
// one between other faces; a sharp one does, as it is drawn all the same.
func (k *skin) alongLine(out []edge, segs []seg, planes []Plane, curve curving) []edge {
	type end struct {
		at    float64
		v     int32
		begin bool
		face  ref
	}
	l := k.line[segs[0].line]
	ends := make([]end, 0, 2*len(segs))
	for _, s := range segs {
		a, b := s.a, s.b
		if l.pos(k.v[a]) > l.pos(k.v[b]) {
			a, b = b, a
		}
		ends = append(ends, end{l.pos(k.v[a]), a, true, s.face}, end{l.pos(k.v[b]), b, false, s.face})
	}
	slices.SortStableFunc(ends, func(a, b end) int {
		switch {
		case a.at < b.at:
			return -1
		case a.at > b.at:
			return 1
		}
		return int(a.v - b.v)
	})
	first := len(out)
	var here []ref // faces beside the present stretch
	for i, e := range ends {
		if e.begin {
			here = append(here, e.face)
		} else if j := slices.Index(here, e.face); j >= 0 {
			here = slices.Delete(here, j, j+1)
		}
		if i+1 == len(ends) || ends[i+1].v == e.v || len(here) == 0 {
			continue
		}
		n := edge{a: e.v, b: ends[i+1].v}
		if len(here) == 2 {
			n.beside(planes, curve, here[0], here[1])
		}
		if m := len(out) - 1; m >= first && out[m].b == n.a && out[m].f == n.f && out[m].g == n.g {
			out[m].b = n.b
			continue
		}
		out = append(out, n)
	}
	return out
}
