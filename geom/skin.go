package geom

import "slices"

// The cells of a solid meet each other in faces that are not there in the
// timber. skin finds what is there: in every plane it adds up the directed
// edges of the cell faces that look one way and of those that look the other
// way. Where two cells lie against each other, or side by side in one plane,
// the edges run in opposite directions and cancel, stretch by stretch; what is
// left is the rim of the real faces.
//
//	┌──→──┐┌──→──┐      ┌─────→─────┐
//	↑  1  ↓↑  2  ↓  =   ↑           ↓
//	└──←──┘└──←──┘      └─────←─────┘
type skin struct {
	v    []Vec  // welded corners
	line []line // lines on which edges run
	w    *weld  // while it is made: the corners
	segs []seg  // rims of the real faces, sorted by line and place
}

// seg is a straight piece of the rim of a real face, which lies to the left
// of a→b seen from outside.
type seg struct {
	a, b int32
	line int32
	face ref
}

// fragment is a convex piece of a face, cut up or not.
type fragment struct {
	face ref
	loop []int32 // welded corners, anticlockwise from outside
	next []int32 // per edge, the plane beyond it
}

// side is an edge of a fragment, laid along its line.
type side struct {
	plane, line int32
	from, to    int32 // corners in the direction of the line
	count       tally // what this edge adds between from and to
}

// tally counts the fragments that have an edge along a stretch of a line, by
// whether they look along the table's normal (plus) or against it, and by
// whether they lie left or right of the line seen against that normal.
type tally struct{ plusL, plusR, minusL, minusR int8 }

func (t tally) add(o tally, k int8) tally {
	return tally{t.plusL + k*o.plusL, t.plusR + k*o.plusR, t.minusL + k*o.minusL, t.minusR + k*o.minusR}
}

// boundary returns the skin of s, worked out once.
func (s Solid) boundary() *skin {
	s.d.once.Do(func() {
		w := weld{}
		s.d.skin = newSkin(s.d.planes, fragments(s.d.cells, &w), &w, s.d.box.Centre())
	})
	return s.d.skin
}

// fragments lists the faces of the cells.
func fragments(cells []*cell, w *weld) []fragment {
	var out []fragment
	var beyond []int32 // plane at the left of the edge from corner i to j
	for _, c := range cells {
		n := len(c.v)
		ids := make([]int32, n)
		for i, v := range c.v {
			ids[i] = w.id(v)
		}
		if len(beyond) < n*n {
			beyond = make([]int32, n*n)
		}
		edges := 0
		for _, f := range c.f {
			edges += len(f.loop)
			for i, a := range f.loop {
				beyond[int(a)*n+int(f.loop[(i+1)%len(f.loop)])] = f.ref.index()
			}
		}
		store := make([]int32, 0, 2*edges)
		for _, f := range c.f {
			m := len(f.loop)
			k := len(store)
			for _, a := range f.loop {
				store = append(store, ids[a])
			}
			for i, a := range f.loop {
				store = append(store, beyond[int(f.loop[(i+1)%m])*n+int(a)])
			}
			out = append(out, fragment{f.ref, store[k : k+m : k+m], store[k+m : k+2*m : k+2*m]})
		}
	}
	return out
}

// newSkin cancels what cells have in common.
func newSkin(planes []Plane, frags []fragment, w *weld, o Vec) *skin {
	lines := lineTable{o: o}
	var sides []side
	for _, f := range frags {
		for i, a := range f.loop {
			if a != f.loop[(i+1)%len(f.loop)] {
				sides = append(sides, newSide(planes, f, i, w.v, &lines))
			}
		}
	}
	sides = byNumber(sides, len(lines.lines), func(s *side) int32 { return s.line })
	sides = byNumber(sides, len(planes), func(s *side) int32 { return s.plane })
	k := &skin{w: w, v: w.v, line: lines.lines}
	byPlane := newCovers(frags, len(planes))
	for i := 0; i < len(sides); {
		j := i + 1
		for j < len(sides) && sides[j].plane == sides[i].plane && sides[j].line == sides[i].line {
			j++
		}
		k.cancel(sides[i:j], byPlane.of(sides[i].plane, planes, w.v))
		i = j
	}
	k.segs = byNumber(k.segs, len(k.line), func(s *seg) int32 { return s.line })
	k.v, k.w = w.v, nil
	return k
}

// byNumber sorts things by a number under n of theirs; those with the same one
// keep their order.
func byNumber[T any](things []T, n int, number func(*T) int32) []T {
	at := make([]int32, n+1)
	for i := range things {
		at[number(&things[i])+1]++
	}
	for i := range n {
		at[i+1] += at[i]
	}
	out := make([]T, len(things))
	for i := range things {
		k := number(&things[i])
		out[at[k]] = things[i]
		at[k]++
	}
	return out
}

// newSide lays edge i of the fragment, from its corner i to the next, along its
// line.
func newSide(planes []Plane, f fragment, i int, v []Vec, lines *lineTable) side {
	a, b := f.loop[i], f.loop[(i+1)%len(f.loop)]
	pi, qi := f.face.index(), f.next[i]
	// The pair in fixed order gives the same line to the last bit from both
	// faces.
	l := lines.of(planes[min(pi, qi)], planes[max(pi, qi)], v[a], v[b])
	s := side{plane: pi, line: l, from: a, to: b}
	ahead := lines.lines[l].pos(v[a]) < lines.lines[l].pos(v[b])
	if !ahead {
		s.from, s.to = b, a
	}
	switch {
	case !f.face.flipped() && ahead:
		s.count.plusL = 1
	case !f.face.flipped():
		s.count.plusR = 1
	case ahead: // left of the edge seen from its own, the other, side
		s.count.minusR = 1
	default:
		s.count.minusL = 1
	}
	return s
}

// mark is a place on a line where the tally changes.
type mark struct {
	at    float64
	v     int32
	sign  int8
	count tally
}

// marks returns the places where the sides begin and end, in order.
func (k *skin) marks(sides []side) []mark {
	l := k.line[sides[0].line]
	ms := make([]mark, 0, 2*len(sides))
	for _, s := range sides {
		ms = append(ms, mark{l.pos(k.v[s.from]), s.from, 1, s.count}, mark{l.pos(k.v[s.to]), s.to, -1, s.count})
	}
	slices.SortStableFunc(ms, func(a, b mark) int {
		switch {
		case a.at < b.at:
			return -1
		case a.at > b.at:
			return 1
		}
		return int(a.v - b.v)
	})
	return ms
}

// cancel adds up the sides on one line of one plane and keeps what is left.
func (k *skin) cancel(sides []side, cov *cover) {
	ms := k.marks(sides)
	var now tally
	for i, m := range ms {
		now = now.add(m.count, m.sign)
		if i+1 == len(ms) || ms[i+1].v == m.v || now == (tally{}) {
			continue
		}
		k.keep(now, m.v, ms[i+1].v, sides[0], cov)
	}
}

// keep adds the rims that a stretch from a to b carries. left and right of it
// hold 1 where a real face looks along the normal, −1 where one looks against
// it and 0 where there is none. A stretch tells only the difference of the
// two; if that leaves a doubt, cov settles it.
func (k *skin) keep(n tally, a, b int32, s side, cov *cover) {
	plus, minus := ref(2*s.plane), ref(2*s.plane+1)
	diff := n.plusL - n.minusL - n.plusR + n.minusR
	if diff < 0 {
		a, b = b, a
		diff = -diff
		n = tally{n.plusR, n.plusL, n.minusR, n.minusL}
	}
	switch {
	case diff == 2:
		k.segs = append(k.segs, seg{a, b, s.line, plus}, seg{a, b, s.line, minus})
	case diff == 1 && n.plusL > n.plusR:
		// Plus on the left only. Minus on both sides, if it is there, takes it
		// away and is left alone on the right.
		if n.minusL > 0 {
			k.segs = append(k.segs, seg{a, b, s.line, minus})
		} else {
			k.emit(a, b, s.line, plus, cov.spans(a, b, true))
		}
	case diff == 1:
		if n.plusL > 0 {
			k.segs = append(k.segs, seg{a, b, s.line, plus})
		} else {
			k.emit(a, b, s.line, minus, cov.spans(a, b, false))
		}
	}
}

// emit adds the stretch a→b as a rim of the given face, but of its other side
// where a fragment runs across. Where that changes, two bodies of material
// touch in a point, and a corner is added.
func (k *skin) emit(a, b, line int32, face ref, across []span) {
	p, q := k.w.v[a], k.w.v[b]
	corner := func(t float64) int32 {
		switch t {
		case 0:
			return a
		case 1:
			return b
		}
		return k.w.id(p.Lerp(q, t))
	}
	at := 0.0
	for _, x := range across {
		if x.lo > at {
			k.segs = append(k.segs, seg{corner(at), corner(x.lo), line, face})
		}
		k.segs = append(k.segs, seg{corner(x.lo), corner(x.hi), line, face.flip()})
		at = x.hi
	}
	if at < 1 {
		k.segs = append(k.segs, seg{corner(at), b, line, face})
	}
}
