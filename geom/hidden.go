package geom

import (
	"math"
	"slices"
)

// Hidden lines are found exactly. Seen without perspective, a convex cell
// hides of a straight line one stretch: that which lies within the cell's
// outline and behind its front faces, and each of those conditions cuts the
// line at one computed place.
//
//	viewer          A line that lies on a front face, or before it, is not
//	  ↓             hidden by that cell. A line that runs exactly along the
//	┌───┬───┐       outline (as the seam between two cells does, and as every
//	│ 1 │ 2 │       arris of the cell itself) is judged twice, shifted to
//	└───┴───┘       either side: it is hidden where both are. So the line
//	    ×           × behind the seam is hidden, and an outer arris is not.

const (
	// depthTol is how far behind a front face a line must be to be hidden by
	// it: a hundred times onTol, so that a line on the face never is.
	depthTol = 1e-4

	// edgeOn is the least sine of a face to the line of sight for it to count
	// as seen from the front.
	edgeOn = 1e-6

	// shift is how far a line along an outline is moved to either side. Like
	// depthTol it is a hundred times onTol; it moves no end of any stroke.
	shift = 1e-4

	// minStroke is the shortest piece that is drawn. It is what remains of
	// rounding where many cells meet, and 0.001 mm on paper at 1:10.
	minStroke = 0.01
)

// half is the half-plane x·X + y·Y ≤ d of the view.
type half struct{ x, y, d float64 }

func (h half) dist(p Vec) float64 { return h.x*p.X + h.y*p.Y - h.d }

// occluder is a cell as it stands in the way. Everything is in the axes of the
// view: across, up, near.
type occluder struct {
	body     int32
	box      Box3
	outline  []half
	fronts   []Plane
	sequence int32 // order of making, to sort the same way every time
}

// scene is all that can hide, ordered for quick answers.
type scene struct {
	view View
	own  []bool     // per body: hides only itself
	occ  []occluder // nearest first
	grid grid
	seen []int32 // per occluder, the query that met it last
	turn int32
	hits []int32
}

// newScene sets up the cells of the bodies.
func newScene(v View, bodies []Body) *scene {
	s := &scene{view: v}
	var front []bool
	for i, b := range bodies {
		s.own = append(s.own, b.SeeThrough)
		if b.Solid.Empty() {
			continue
		}
		turned := make([]Plane, len(b.Solid.d.planes))
		for j, p := range b.Solid.d.planes {
			turned[j] = Plane{v.local(p.N), p.D}
		}
		for _, c := range b.Solid.d.cells {
			var o occluder
			o, front = newOccluder(v, c, turned, front)
			if len(o.fronts) == 0 || len(o.outline) == 0 {
				continue
			}
			o.body, o.sequence = int32(i), int32(len(s.occ))
			s.occ = append(s.occ, o)
		}
	}
	slices.SortFunc(s.occ, func(a, b occluder) int {
		switch {
		case a.box.Max.Z > b.box.Max.Z:
			return -1
		case a.box.Max.Z < b.box.Max.Z:
			return 1
		}
		return int(a.sequence - b.sequence)
	})
	s.grid = newGrid(s.occ)
	s.seen = make([]int32, len(s.occ))
	return s
}

// newOccluder works out the outline and the front faces of a cell. front is
// scratch space that is handed on from call to call.
func newOccluder(v View, c *cell, planes []Plane, front []bool) (occluder, []bool) {
	n := len(c.v)
	pts := make([]Vec, n)
	for i, p := range c.v {
		pts[i] = v.local(p)
	}
	o := occluder{box: boxOf(pts)}
	front = slices.Grow(front[:0], n*n)[:n*n]
	clear(front)
	edges := 0
	for _, f := range c.f {
		p := f.ref.of(planes)
		if p.N.Z <= edgeOn {
			continue
		}
		o.fronts = append(o.fronts, p)
		edges += len(f.loop)
		for i, a := range f.loop {
			front[int(a)*n+int(f.loop[(i+1)%len(f.loop)])] = true
		}
	}
	o.outline = make([]half, 0, edges)
	for a := range n {
		for b := range n {
			if !front[a*n+b] || front[b*n+a] {
				continue
			}
			d := Pt{pts[b].X - pts[a].X, pts[b].Y - pts[a].Y}
			l := d.Len()
			if l <= onTol {
				continue
			}
			h := half{x: d.Y / l, y: -d.X / l}
			h.d = h.x*pts[a].X + h.y*pts[a].Y
			o.outline = append(o.outline, h)
		}
	}
	return o, front
}

// stretch is what a cell hides of a line: from lo to hi, for the line shifted
// to its left and to its right.
type stretch struct {
	span
	left, right bool
}

// hides returns what the cell hides of the line p→q, as fractions of it. side
// is the unit direction to the left of the line in the image.
func (o *occluder) hides(p, q Vec, side Pt) stretch {
	st := stretch{span{0, 1}, true, true}
	for _, f := range o.fronts {
		a, b := f.Dist(p), f.Dist(q)
		if a >= -depthTol && b >= -depthTol {
			return stretch{}
		}
		if !st.clip(a, b) {
			return stretch{}
		}
	}
	for _, h := range o.outline {
		a, b := h.dist(p), h.dist(q)
		if math.Abs(a-b) > 4*shift {
			if !st.clip(a, b) {
				return stretch{}
			}
			continue
		}
		m, s := (a+b)/2, shift*(h.x*side.X+h.y*side.Y)
		st.left = st.left && m+s < 0
		st.right = st.right && m-s < 0
		if !st.left && !st.right {
			return stretch{}
		}
	}
	return st
}

// clip keeps the part where a distance running evenly from a to b is
// negative. It reports false when nothing is left.
func (s *span) clip(a, b float64) bool {
	switch {
	case a < 0 && b > 0:
		s.hi = min(s.hi, a/(a-b))
	case a > 0 && b < 0:
		s.lo = max(s.lo, a/(a-b))
	case a >= 0 && b >= 0:
		return false
	}
	return s.lo < s.hi
}

// hidden returns the stretches of the line p→q of a body that are hidden, as
// fractions of it.
func (s *scene) hidden(p, q Vec, body int32) []span {
	d := Pt{q.X - p.X, q.Y - p.Y}
	length := d.Len()
	side := d.Mul(1 / length).Left()
	var left, right []span
	for _, i := range s.candidates(p, q) {
		o := &s.occ[i]
		if s.own[o.body] && o.body != body {
			continue
		}
		st := o.hides(p, q, side)
		if st.left {
			left = append(left, st.span)
		}
		if st.right {
			right = append(right, st.span)
		}
	}
	gap := minStroke / length
	both := meet(unite(left, gap), unite(right, gap))
	return longer(unite(both, gap), gap)
}

// candidates returns the cells that may hide something of the line p→q.
func (s *scene) candidates(p, q Vec) []int32 {
	s.turn++
	s.hits = s.hits[:0]
	far := min(p.Z, q.Z) + depthTol
	lo := Pt{min(p.X, q.X) - shift, min(p.Y, q.Y) - shift}
	hi := Pt{max(p.X, q.X) + shift, max(p.Y, q.Y) + shift}
	s.grid.walk(p, q, func(list []int32) {
		for _, i := range list {
			b := &s.occ[i].box
			if b.Max.Z <= far {
				return // the list goes on with cells farther back
			}
			if s.seen[i] == s.turn || b.Min.X > hi.X || b.Max.X < lo.X || b.Min.Y > hi.Y || b.Max.Y < lo.Y {
				continue
			}
			s.seen[i] = s.turn
			s.hits = append(s.hits, i)
		}
	})
	return s.hits
}

// hiddenPoint reports whether one of the cells hides the point.
func (s *scene) hiddenPoint(p Vec, body int32, among []int32) bool {
	for _, i := range among {
		if o := &s.occ[i]; (!s.own[o.body] || o.body == body) && o.hidesPoint(p) {
			return true
		}
	}
	return false
}

func (o *occluder) hidesPoint(p Vec) bool {
	for _, f := range o.fronts {
		if f.Dist(p) >= -depthTol {
			return false
		}
	}
	for _, h := range o.outline {
		if h.dist(p) >= 0 {
			return false
		}
	}
	return true
}
