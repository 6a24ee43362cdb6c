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

// holds reports whether a fragment that looks against the table's normal (or,
// if not minus, along it) runs across the middle of the stretch a→b.
func (c *cover) holds(a, b int32, minus bool) bool {
	if c == nil {
		return false
	}
	p := c.v[a].Lerp(c.v[b], 0.5)
	for _, i := range c.strips[c.place(p.Dot(c.axis))] {
		if f := c.frags[i]; f.face.flipped() == minus && c.across(f, p) {
			return true
		}
	}
	return false
}

// across reports whether p, in the fragment's plane, lies within it.
func (c *cover) across(f fragment, p Vec) bool {
	n := c.n
	if f.face.flipped() {
		n = n.Neg()
	}
	for i, k := range f.loop {
		a, b := c.v[k], c.v[f.loop[(i+1)%len(f.loop)]]
		if b.Sub(a).Cross(p.Sub(a)).Dot(n) < 0 {
			return false
		}
	}
	return true
}
