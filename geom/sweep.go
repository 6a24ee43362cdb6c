package geom

import "math"

// MinusSweep returns s without the swept body. Only the part of s within the
// outline's box is divided, so a long timber stays whole but for its end:
//
//	┌─────────────┬───┐         pockets: what of the outline's box is not
//	│             │ a ╰╮        the outline, in convex parts; each of them
//	│   whole     ├────╯        is a cell of what is left
//	│             │ b ╱
//	└─────────────┴──╯
func (s Solid) MinusSweep(w Sweep) Solid {
	if _, _, crossed := w.Outline.Crossing(); s.Empty() || crossed || !(w.To-w.From > onTol) {
		return s
	}
	pts, arc := tidyProfile(w.Outline.flat())
	pockets, ok := pocketsOf(pts)
	if !ok {
		return s
	}
	planes, c := make([]Plane, len(pts)), curvingOf(pts, arc, w.barrels())
	for i, a := range pts {
		planes[i] = w.Place.Plane(wall(a, pts[(i+1)%len(pts)]))
	}
	for i, b := range c.barrels {
		c.barrels[i] = b.placed(w.Place)
	}
	box := w.Place.convex(boundsOf(pts), w.From, w.To)
	if _, ok := reachOf(box, s.d.box); !ok {
		return s
	}
	t, refs := s.d.tab.extendCurved(len(s.d.planes), planes, c)
	t, boxRefs := t.extend(len(t.planes), box)
	parts := make([]recess, 0, len(pockets.convex))
	seams := make([]Plane, len(pockets.seams))
	for i, e := range pockets.seams {
		seams[i] = w.Place.Plane(wall(e[0], e[1]))
	}
	t, seamRefs := t.extend(len(t.planes), seams)
	for _, h := range pockets.convex {
		parts = append(parts, h.recess(refs, seamRefs))
	}
	var cells []*cell
	for _, c := range s.d.cells {
		outside, within := c.parted(t.planes, boxRefs)
		cells = append(cells, outside...)
		for _, p := range parts {
			if in := within.clipped(t.planes, p); in != nil {
				cells = append(cells, in)
			}
		}
	}
	return t.solid(cells, s.d.bores)
}

// convex is the box over a rectangle of the axes' U and V between two heights.
func (a Axes) convex(b [2]Pt, from, to float64) Convex {
	lo, hi := V(b[0].X, b[0].Y, from), V(b[1].X, b[1].Y, to)
	c := Convex(Box3{lo, hi}.Convex())
	for i, p := range c {
		c[i] = a.Plane(p)
	}
	return c
}

// boundsOf is the rectangle round the points, by its lower left and upper right
// corner.
func boundsOf(pts []Pt) [2]Pt {
	lo, hi := pts[0], pts[0]
	for _, p := range pts {
		lo, hi = P(min(lo.X, p.X), min(lo.Y, p.Y)), P(max(hi.X, p.X), max(hi.Y, p.Y))
	}
	return [2]Pt{lo, hi}
}

// parted divides the cell by the sides of a box. within is nil if the cell does
// not reach into it; then outside is the cell itself.
func (c *cell) parted(planes []Plane, box []ref) (outside []*cell, within *cell) {
	within = c
	for _, r := range box {
		in, out := within.split(r.of(planes), r)
		if in == nil {
			return []*cell{c}, nil
		}
		if out != nil {
			outside = append(outside, out)
		}
		within = in
	}
	return outside, within
}

// clipped is what of the cell, which may be nil, lies inside all the planes.
func (c *cell) clipped(planes []Plane, p recess) *cell {
	for _, r := range p {
		if c == nil {
			return nil
		}
		c, _ = c.split(r.of(planes), r)
	}
	return c
}

// recess is a convex part of what is left of a box, by the planes that bound it
// within the box.
type recess []ref

// pocketsOf parts what a simple anticlockwise profile leaves of its box: each
// stretch of the profile between two points on the box's sides, with the corners
// of the box that lie between these, bounds one. It reports false for a profile
// that has no area.
func pocketsOf(pts []Pt) (*shards, bool) {
	if len(pts) < 3 {
		return nil, false
	}
	out := &shards{}
	box := boundsOf(pts)
	var on []int
	for i, p := range pts {
		if _, ok := roundBox(box, p); ok {
			on = append(on, i)
		}
	}
	n := len(pts)
	for k, i := range on {
		j := on[(k+1)%len(on)]
		var h shard
		for v := j; v != i; v = (v + n - 1) % n {
			h.pts, h.edge = append(h.pts, pts[v]), append(h.edge, (v+n-1)%n)
		}
		h.pts, h.edge = append(h.pts, pts[i]), append(h.edge, boxSide)
		from, _ := roundBox(box, pts[i])
		to, _ := roundBox(box, pts[j])
		if to <= from {
			to += 4
		}
		for c := math.Floor(from) + 1; c < to; c++ {
			h.pts, h.edge = append(h.pts, cornerOf(box, int(c)%4)), append(h.edge, boxSide)
		}
		if len(h.pts) < 3 {
			continue
		}
		if !out.part(h) {
			return nil, false
		}
	}
	return out, true
}

// roundBox is how far round the box, anticlockwise from its lower left corner
// and in sides, a point on it lies. Two facets of an arc may reach the box at
// points that rounding alone parts from each other or from it.
func roundBox(b [2]Pt, p Pt) (float64, bool) {
	w, h := b[1].X-b[0].X, b[1].Y-b[0].Y
	on := func(v, side float64) bool { return math.Abs(v-side) <= onTol }
	switch {
	case on(p.Y, b[0].Y) && !on(p.X, b[1].X):
		return (p.X - b[0].X) / w, true
	case on(p.X, b[1].X) && !on(p.Y, b[1].Y):
		return 1 + (p.Y-b[0].Y)/h, true
	case on(p.Y, b[1].Y) && !on(p.X, b[0].X):
		return 2 + (b[1].X-p.X)/w, true
	case on(p.X, b[0].X):
		return 3 + (b[1].Y-p.Y)/h, true
	}
	return 0, false
}

func cornerOf(b [2]Pt, k int) Pt {
	return [4]Pt{b[0], {b[1].X, b[0].Y}, b[1], {b[0].X, b[1].Y}}[k]
}
