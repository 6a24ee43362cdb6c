package geom

// cell is a convex lump of material: corners, and faces that run through them
// anticlockwise seen from outside. Cells are never changed once made, so
// solids share them freely.
type cell struct {
	v   []Vec
	f   []facet
	box Box3
}

// facet is one face of a cell.
type facet struct {
	ref  ref
	loop []int32
}

// onTol is how close to a plane a corner counts as lying on it, for the reasons
// of planeTol. A cell is cut only when it has corners farther out than this on
// both sides, so no cut makes a flake thinner than it.
const onTol = 1e-6

// boxCell returns the cell of a box. refs follow the order of Box3.Convex.
func boxCell(b Box3, refs []ref) *cell {
	lo, hi := b.Min, b.Max
	return &cell{
		v: []Vec{
			{lo.X, lo.Y, lo.Z}, {hi.X, lo.Y, lo.Z}, {hi.X, hi.Y, lo.Z}, {lo.X, hi.Y, lo.Z},
			{lo.X, lo.Y, hi.Z}, {hi.X, lo.Y, hi.Z}, {hi.X, hi.Y, hi.Z}, {lo.X, hi.Y, hi.Z},
		},
		f: []facet{
			{refs[0], []int32{0, 4, 7, 3}}, {refs[1], []int32{1, 2, 6, 5}},
			{refs[2], []int32{0, 1, 5, 4}}, {refs[3], []int32{3, 7, 6, 2}},
			{refs[4], []int32{0, 3, 2, 1}}, {refs[5], []int32{4, 5, 6, 7}},
		},
		box: b,
	}
}

// volume sums the pyramids from the first corner over every face.
func (c *cell) volume() float64 {
	var sum float64
	o := c.v[0]
	for _, f := range c.f {
		a := c.v[f.loop[0]].Sub(o)
		for i := 2; i < len(f.loop); i++ {
			b, d := c.v[f.loop[i-1]].Sub(o), c.v[f.loop[i]].Sub(o)
			sum += a.Dot(b.Cross(d))
		}
	}
	return sum / 6
}

// placed carries the cell to the place a.
func (c *cell) placed(a Axes) *cell {
	v := make([]Vec, len(c.v))
	for i, p := range c.v {
		v[i] = a.Point(p)
	}
	return &cell{v: v, f: c.f, box: boxOf(v)}
}

// split divides the cell by a plane into the part inside and the part
// outside. The new face is r on the inner part and r turned over on the outer
// one. A part that does not exist is nil; an uncut cell is returned itself.
func (c *cell) split(p Plane, r ref) (in, out *cell) {
	dist := make([]float64, len(c.v))
	var deep, high float64
	for i, v := range c.v {
		dist[i] = p.Dist(v)
		deep, high = min(deep, dist[i]), max(high, dist[i])
	}
	if high <= onTol {
		return c, nil
	}
	if deep >= -onTol {
		return nil, c
	}
	k := knife{c: c, dist: dist, v: c.v[:len(c.v):len(c.v)]}
	in, ok1 := k.part(-1, r)
	out, ok2 := k.part(1, r.flip())
	if ok1 && ok2 {
		return in, out
	}
	// Rounding left no proper cut face: the cell merely touches the plane.
	if -deep > high {
		return c, nil
	}
	return nil, c
}

// knife is the state of one cut. Both parts use the same new corners, so they
// fit each other to the last bit.
type knife struct {
	c    *cell
	dist []float64
	v    []Vec     // the cell's corners, then the new ones
	cut  []cutEdge // where the new ones come from
}

type cutEdge struct{ in, out, v int32 }

func (k *knife) side(i int32) int {
	switch d := k.dist[i]; {
	case d > onTol:
		return 1
	case d < -onTol:
		return -1
	}
	return 0
}

// corner returns the corner where the edge from in to out meets the plane.
func (k *knife) corner(in, out int32) int32 {
	for _, e := range k.cut {
		if e.in == in && e.out == out {
			return e.v
		}
	}
	t := k.dist[in] / (k.dist[in] - k.dist[out])
	k.v = append(k.v, k.c.v[in].Lerp(k.c.v[out], t))
	k.cut = append(k.cut, cutEdge{in, out, int32(len(k.v) - 1)})
	return int32(len(k.v) - 1)
}

// on reports whether corner i lies on the plane; new corners do.
func (k *knife) on(i int32) bool { return int(i) >= len(k.dist) || k.side(i) == 0 }

// part builds the part on one side (−1 inside, 1 outside) and closes it with
// a face r. It reports false when there is no face to close it with.
func (k *knife) part(side int, r ref) (*cell, bool) {
	faces := make([]facet, 0, len(k.c.f)+1)
	store := make([]int32, 0, 6*len(k.c.f)+8)
	var rim [][2]int32 // edges of the cut face
	for _, f := range k.c.f {
		start := len(store)
		store = k.clip(store, f.loop, side)
		loop := store[start:len(store):len(store)]
		if len(loop) < 3 || !k.leaves(loop) {
			store = store[:start]
			continue
		}
		faces = append(faces, facet{f.ref, loop})
		for i, a := range loop {
			b := loop[(i+1)%len(loop)]
			if k.on(a) && k.on(b) {
				rim = addRim(rim, b, a)
			}
		}
	}
	loop, ok := chain(rim)
	if !ok {
		return nil, false
	}
	return compact(k.v, append(faces, facet{r, loop})), true
}

// clip appends to dst the part of the loop on the wanted side.
func (k *knife) clip(dst, loop []int32, side int) []int32 {
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		sa, sb := k.side(a), k.side(b)
		if sa != -side {
			dst = append(dst, a)
		}
		switch {
		case sa == -1 && sb == 1:
			dst = append(dst, k.corner(a, b))
		case sa == 1 && sb == -1:
			dst = append(dst, k.corner(b, a))
		}
	}
	return dst
}

// leaves reports whether the loop has a corner off the cutting plane.
func (k *knife) leaves(loop []int32) bool {
	for _, i := range loop {
		if !k.on(i) {
			return true
		}
	}
	return false
}

// addRim adds a directed edge, or takes its opposite away if that is there.
func addRim(rim [][2]int32, a, b int32) [][2]int32 {
	for i, e := range rim {
		if e[0] == b && e[1] == a {
			return append(rim[:i], rim[i+1:]...)
		}
	}
	return append(rim, [2]int32{a, b})
}

// chain joins directed edges to the one loop that they make.
func chain(rim [][2]int32) ([]int32, bool) {
	if len(rim) < 3 {
		return nil, false
	}
	loop := make([]int32, 0, len(rim))
	at := rim[0][0]
	for range rim {
		loop = append(loop, at)
		found := false
		for _, e := range rim {
			if e[0] == at {
				at, found = e[1], true
				break
			}
		}
		if !found {
			return nil, false
		}
		if at == rim[0][0] {
			break
		}
	}
	return loop, at == rim[0][0] && len(loop) == len(rim)
}

// compact makes a cell of the corners that the faces use. It renumbers the
// loops in place.
func compact(v []Vec, faces []facet) *cell {
	renum := make([]int32, len(v))
	used := make([]Vec, 0, len(v))
	for _, f := range faces {
		for i, old := range f.loop {
			if renum[old] == 0 {
				used = append(used, v[old])
				renum[old] = int32(len(used))
			}
			f.loop[i] = renum[old] - 1
		}
	}
	return &cell{v: used, f: faces, box: boxOf(used)}
}
