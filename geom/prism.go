package geom

import "math"

// smoothTurn is the sharpest turn, in radians (30°), between two facets of
// one curve; a sharper one is an arris between two curves.
const smoothTurn = math.Pi / 6

// Prism returns the solid that a profile in the X-Y plane sweeps along Z from
// from to to. The profile is simple and may be concave; one given clockwise
// is turned round. smooth[i] says that the edge from profile[i] to the next
// point is a facet of a curve; smooth may be nil. A profile that crosses
// itself, has no area or leaves the cube of Bound gives the empty solid.
func Prism(profile []Pt, smooth []bool, from, to float64) Solid {
	arc := make([]int32, len(profile))
	for i := range arc {
		if i < len(smooth) && smooth[i] {
			arc[i] = 1
		}
	}
	return prism(profile, arc, from, to, []barrel{{}})
}

// prism is Prism of a profile whose edges are facets of the arcs numbered from
// 1, or 0 if flat. An arc whose barrel has no radius stays a row of facets.
func prism(profile []Pt, arc []int32, from, to float64, barrels []barrel) Solid {
	for _, p := range profile {
		if v := V(p.X, p.Y, 0); v != v.clamp() {
			return Solid{}
		}
	}
	from, to = max(from, -Bound), min(to, Bound)
	pts, arc := tidyProfile(profile, arc)
	parts, ok := convexParts(pts)
	if !ok || !(to-from > onTol) {
		return Solid{}
	}
	planes := make([]Plane, len(pts), len(pts)+2)
	for i, a := range pts {
		planes[i] = wall(a, pts[(i+1)%len(pts)])
	}
	planes = append(planes, Plane{V(0, 0, -1), -from}, Plane{V(0, 0, 1), to})
	t, refs := (&table{}).extendCurved(0, planes, curvingOf(pts, arc, barrels))
	cells := make([]*cell, len(parts))
	for i, part := range parts {
		cells[i] = prismCell(t, pts, part, refs, [2]float64{from, to})
	}
	return t.solid(cells, nil)
}

// wall returns the upright plane through the edge a→b with the inside on its
// left.
func wall(a, b Pt) Plane {
	n := b.Sub(a).Unit().Left().Mul(-1)
	return Plane{V(n.X, n.Y, 0), n.Dot(a)}
}

// prismCell builds the prism over one convex part of the profile, between the
// two heights.
func prismCell(t *table, pts []Pt, part []int, refs []ref, z [2]float64) *cell {
	n := len(part)
	c := &cell{v: make([]Vec, 2*n)}
	low, high := make([]int32, n), make([]int32, n)
	for i, k := range part {
		c.v[i] = V(pts[k].X, pts[k].Y, z[0])
		c.v[n+i] = V(pts[k].X, pts[k].Y, z[1])
		low[n-1-i], high[i] = int32(i), int32(n+i)
		next := part[(i+1)%n]
		r := refs[k]
		if next != (k+1)%len(pts) { // an inner cut, not an edge of the profile
			var rs []ref
			t, rs = t.extend(len(t.planes), []Plane{wall(pts[k], pts[next])})
			r = rs[0]
		}
		j := (i + 1) % n
		c.f = append(c.f, facet{r, []int32{int32(i), int32(j), int32(n + j), int32(n + i)}})
	}
	c.f = append(c.f, facet{refs[len(pts)], low}, facet{refs[len(pts)+1], high})
	c.box = boxOf(c.v)
	return c
}

// tidyProfile drops repeated points and points in the middle of a straight
// edge, and turns the profile anticlockwise. arc goes with the edge from each
// point to the next.
func tidyProfile(profile []Pt, arc []int32) ([]Pt, []int32) {
	type edge struct {
		p   Pt
		arc int32
	}
	var es []edge
	n := len(profile)
	for i, p := range profile {
		if p.Sub(profile[(i+1)%n]).Len() > onTol {
			es = append(es, edge{p, arc[i]})
		}
	}
	var area float64
	for i, e := range es {
		area += e.p.Cross(es[(i+1)%len(es)].p)
	}
	if area < 0 {
		rev := make([]edge, len(es))
		for i := range es {
			rev[i] = edge{es[len(es)-1-i].p, es[(2*len(es)-2-i)%len(es)].arc}
		}
		es = rev
	}
	for i := 0; i < len(es) && len(es) > 3; {
		a, b, c := es[(i+len(es)-1)%len(es)], es[i], es[(i+1)%len(es)]
		off := math.Abs(c.p.Sub(a.p).Unit().Cross(b.p.Sub(a.p)))
		if off <= onTol && b.p.Sub(a.p).Dot(c.p.Sub(b.p)) > 0 {
			es = append(es[:i], es[i+1:]...)
			continue
		}
		i++
	}
	pts, arcs := make([]Pt, len(es)), make([]int32, len(es))
	for i, e := range es {
		pts[i], arcs[i] = e.p, e.arc
	}
	return pts, arcs
}

// curvingOf is what is known of the edges of a profile: runs of facets that go
// on from one another are one smooth face, even where one arc ends and the next
// begins.
func curvingOf(pts []Pt, arc []int32, barrels []barrel) curving {
	soft, of := make([]bool, len(arc)), make([]int32, len(arc))
	for i, a := range arc {
		soft[i] = a != 0
		if a != 0 && barrels[a-1].radius > 0 {
			of[i] = a
		}
	}
	return curving{curves(pts, soft), of, barrels}
}

// curves numbers the runs of soft edges. A run ends at a flat edge or at a
// sharp turn.
func curves(pts []Pt, soft []bool) []int32 {
	n := len(pts)
	ids := make([]int32, n)
	dir := func(i int) Pt { return pts[(i+1)%n].Sub(pts[i%n]).Unit() }
	joins := func(i int) bool { // edge i goes on from the edge before it
		j := (i + n - 1) % n
		return soft[i] && soft[j] && dir(j).Dot(dir(i)) >= math.Cos(smoothTurn)
	}
	start := 0
	for start < n && joins(start) {
		start++
	}
	var id int32
	for k := range n {
		i := (start + k) % n
		if !soft[i] {
			continue
		}
		if k == 0 || !joins(i) {
			id++
		}
		ids[i] = id
	}
	return ids
}

// convexParts divides a simple anticlockwise polygon into few convex ones,
// each a list of point numbers: ears are cut off, then put together again as
// far as the result stays convex.
func convexParts(pts []Pt) ([][]int, bool) {
	tris, ok := triangles(pts)
	if !ok {
		return nil, false
	}
	parts := tris
	for i := 0; i < len(parts); i++ {
		for j := i + 1; j < len(parts); j++ {
			if m, ok := joined(pts, parts[i], parts[j]); ok {
				parts[i] = m
				parts = append(parts[:j], parts[j+1:]...)
				j = i
			}
		}
	}
	return parts, true
}

// joined returns the union of two polygons that share an edge, if it is
// convex.
func joined(pts []Pt, a, b []int) ([]int, bool) {
	for i, p := range a {
		q := a[(i+1)%len(a)]
		for j, r := range b {
			if r != q || b[(j+1)%len(b)] != p {
				continue
			}
			out := make([]int, 0, len(a)+len(b)-2)
			for k := range a { // from q once round to p
				out = append(out, a[(i+1+k)%len(a)])
			}
			for k := 2; k < len(b); k++ { // from after p to before q
				out = append(out, b[(j+k)%len(b)])
			}
			return out, isConvex(pts, out)
		}
	}
	return nil, false
}

func isConvex(pts []Pt, loop []int) bool {
	n := len(loop)
	for i := range loop {
		a, b, c := pts[loop[i]], pts[loop[(i+1)%n]], pts[loop[(i+2)%n]]
		if turn(a, b, c) <= 0 {
			return false
		}
	}
	return true
}

// turn is how far c lies to the left of the line a→b, in millimetres; within
// onTol it is 0.
func turn(a, b, c Pt) float64 {
	off := b.Sub(a).Unit().Cross(c.Sub(a))
	if math.Abs(off) <= onTol {
		return 0
	}
	return off
}

// triangles cuts a simple polygon into triangles.
func triangles(pts []Pt) ([][]int, bool) {
	if len(pts) < 3 {
		return nil, false
	}
	left := make([]int, len(pts))
	for i := range left {
		left[i] = i
	}
	var out [][]int
	for len(left) > 3 {
		i := ear(pts, left)
		if i < 0 {
			return nil, false
		}
		n := len(left)
		out = append(out, []int{left[(i+n-1)%n], left[i], left[(i+1)%n]})
		left = append(left[:i], left[i+1:]...)
	}
	if turn(pts[left[0]], pts[left[1]], pts[left[2]]) <= 0 {
		return nil, false
	}
	return append(out, left), true
}

// ear returns a place in the loop whose triangle holds no other point, or −1.
// Of several it takes the one with the widest triangle, so that no needles
// are left for the end.
func ear(pts []Pt, loop []int) int {
	best, width := -1, 0.0
	n := len(loop)
	for i := range loop {
		a, b, c := pts[loop[(i+n-1)%n]], pts[loop[i]], pts[loop[(i+1)%n]]
		w := min(turn(a, b, c), turn(b, c, a), turn(c, a, b))
		if w <= width {
			continue
		}
		clear := true
		for k := 0; k < n && clear; k++ {
			p := pts[loop[k]]
			if p == a || p == b || p == c {
				continue
			}
			clear = turn(a, b, p) < 0 || turn(b, c, p) < 0 || turn(c, a, p) < 0
		}
		if clear {
			best, width = i, w
		}
	}
	return best
}
