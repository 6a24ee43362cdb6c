package geom

import "math"

// covers answers, plane by plane, whether a fragment runs across a point. It
// is needed only in planes in which fragments look both ways.
type covers struct {
	frags []fragment
	list  [][]int32 // fragments of each plane
	both  []bool
	last  int32
	cov   *cover
}

func newCovers(frags []fragment, planes int) *covers {
	c := &covers{frags: frags, list: make([][]int32, planes), both: make([]bool, planes), last: -1}
	for i, f := range frags {
		p := f.face.index()
		if l := c.list[p]; len(l) > 0 && frags[l[0]].face != f.face {
			c.both[p] = true
		}
		c.list[p] = append(c.list[p], int32(i))
	}
	return c
}

// of returns the cover of a plane; nil, which holds nothing, if all its
// fragments look one way. Planes are asked for in order.
func (c *covers) of(plane int32, planes []Plane, v []Vec) *cover {
	if plane != c.last {
		c.last, c.cov = plane, nil
		if c.both[plane] {
			c.cov = newCover(c.frags, c.list[plane], planes[plane].N, v)
		}
	}
	return c.cov
}

// cover holds the fragments of one plane in strips across their longest
// extent.
type cover struct {
	frags  []fragment
	v      []Vec
	n      Vec
	axis   Vec
	from   float64
	strip  float64
	strips [][]int32
}

func newCover(frags []fragment, list []int32, n Vec, v []Vec) *cover {
	box := noBox()
	for _, i := range list {
		for _, k := range frags[i].loop {
			box = box.with(v[k])
		}
	}
	c := &cover{frags: frags, v: v, n: n}
	switch s := box.Size(); {
	case s.X >= s.Y && s.X >= s.Z:
		c.axis, c.from, c.strip = V(1, 0, 0), box.Min.X, s.X
	case s.Y >= s.Z:
		c.axis, c.from, c.strip = V(0, 1, 0), box.Min.Y, s.Y
	default:
		c.axis, c.from, c.strip = V(0, 0, 1), box.Min.Z, s.Z
	}
	count := len(list)/2 + 1
	c.strip /= float64(count)
	c.strips = make([][]int32, count)
	for _, i := range list {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, k := range frags[i].loop {
			x := v[k].Dot(c.axis)
			lo, hi = min(lo, x), max(hi, x)
		}
		for k := c.place(lo); k <= c.place(hi); k++ {
			c.strips[k] = append(c.strips[k], i)
		}
	}
	return c
}

func (c *cover) place(x float64) int {
	return max(0, min(len(c.strips)-1, int((x-c.from)/c.strip)))
}

// spans returns over which parts of the stretch a→b, as fractions of it, a
// fragment runs that looks against the table's normal (or, if not minus,
// along it).
func (c *cover) spans(a, b int32, minus bool) []span {
	if c == nil {
		return nil
	}
	p, q := c.v[a], c.v[b]
	gap := weldTol / q.Sub(p).Len()
	from, to := c.place(p.Dot(c.axis)), c.place(q.Dot(c.axis))
	var out []span
	for k := min(from, to); k <= max(from, to); k++ {
		for _, i := range c.strips[k] {
			if c.frags[i].face.flipped() != minus {
				continue
			}
			if x, ok := c.across(c.frags[i], p, q); ok {
				out = append(out, x)
			}
		}
	}
	out = longer(unite(out, gap), gap)
	for i := range out { // ends that are the stretch's own are so exactly
		if out[i].lo < gap {
			out[i].lo = 0
		}
		if out[i].hi > 1-gap {
			out[i].hi = 1
		}
	}
	return out
}

// across returns the part of p→q that runs inside the fragment. Running along
// its edge is not inside.
func (c *cover) across(f fragment, p, q Vec) (span, bool) {
	n := c.n
	if !f.face.flipped() {
		n = n.Neg()
	}
	x := span{0, 1}
	for i, k := range f.loop {
		a, b := c.v[k], c.v[f.loop[(i+1)%len(f.loop)]]
		out := b.Sub(a).Cross(n).Unit().Neg()
		dp, dq := out.Dot(p.Sub(a)), out.Dot(q.Sub(a))
		if dp > -weldTol && dq > -weldTol || !x.clip(dp, dq) {
			return x, false
		}
	}
	return x, true
}
