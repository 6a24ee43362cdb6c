package geom

import (
	"math"
	"slices"
)

// Face is a flat outer face of a solid. Loops[0] is its outline, anticlockwise
// seen from outside; any others are holes, clockwise. Smooth says that the
// face is a facet of a curve. Mouths of bores are not cut out of it.
type Face struct {
	Plane  Plane
	Loops  [][]Vec
	Smooth bool
}

// Area returns the face's area.
func (f Face) Area() float64 {
	var sum float64
	for _, l := range f.Loops {
		sum += loopArea(l, f.Plane.N)
	}
	return sum
}

// loopArea returns the area of a flat loop, negative if it runs clockwise
// seen against n.
func loopArea(l []Vec, n Vec) float64 {
	var sum Vec
	for i := 2; i < len(l); i++ {
		sum = sum.Add(l[i-1].Sub(l[0]).Cross(l[i].Sub(l[0])))
	}
	return sum.Dot(n) / 2
}

// Faces returns the real outer faces of s. Pieces that lie side by side in one
// plane are one face.
func (s Solid) Faces() []Face {
	if s.Empty() {
		return nil
	}
	k := s.boundary()
	loops, _ := k.loops(s.d.planes)
	var out []Face
	for i := 0; i < len(loops); {
		j := i + 1
		for j < len(loops) && loops[j].face == loops[i].face {
			j++
		}
		r := loops[i].face
		for _, nest := range k.nest(loops[i:j], r.of(s.d.planes).N) {
			f := Face{Plane: r.of(s.d.planes), Smooth: s.d.curve.run[r.index()] != 0}
			for _, l := range nest {
				f.Loops = append(f.Loops, k.points(l))
			}
			out = append(out, f)
		}
		i = j
	}
	return out
}

// rimLoop is a closed rim of faces that have one plane and side.
type rimLoop struct {
	face ref
	v    []int32
}

// loops joins the rims to closed loops, sorted by face. It returns how many
// could not be closed, which is 0 for every proper solid.
func (k *skin) loops(planes []Plane) (out []rimLoop, open int) {
	segs := slices.Clone(k.segs)
	slices.SortStableFunc(segs, func(a, b seg) int {
		if a.face != b.face {
			return int(a.face - b.face)
		}
		return int(a.a - b.a)
	})
	used := make([]bool, len(segs))
	for i := range segs {
		if used[i] {
			continue
		}
		l, ok := k.walk(segs, used, i, segs[i].face.of(planes).N)
		if !ok {
			open++
			continue
		}
		if len(l.v) >= 3 {
			out = append(out, l)
		}
	}
	return out, open
}

// walk follows one loop from segment i, turning as far left as it can so that
// faces that touch in a corner stay apart. Corners on a straight run are left
// out.
func (k *skin) walk(segs []seg, used []bool, i int, n Vec) (rimLoop, bool) {
	start := i
	l := rimLoop{face: segs[i].face}
	for {
		used[i] = true
		next := k.leftmost(segs, used, i, start, n)
		if next < 0 {
			return l, false
		}
		if segs[next].line != segs[i].line {
			l.v = append(l.v, segs[i].b)
		}
		if next == start {
			return l, true
		}
		i = next
	}
}

// leftmost returns the free segment that leaves the end of segment i most to
// the left; the start counts as free.
func (k *skin) leftmost(segs []seg, used []bool, i, start int, n Vec) int {
	s := segs[i]
	from, _ := slices.BinarySearchFunc(segs, s, func(t, s seg) int {
		if t.face != s.face {
			return int(t.face - s.face)
		}
		return int(t.a - s.b)
	})
	d := k.v[s.b].Sub(k.v[s.a])
	best, turn := -1, math.Inf(-1)
	for j := from; j < len(segs) && segs[j].face == s.face && segs[j].a == s.b; j++ {
		if used[j] && j != start {
			continue
		}
		e := k.v[segs[j].b].Sub(k.v[segs[j].a])
		if a := math.Atan2(d.Cross(e).Dot(n), d.Dot(e)); a > turn {
			best, turn = j, a
		}
	}
	return best
}

func (k *skin) points(l rimLoop) []Vec {
	out := make([]Vec, len(l.v))
	for i, v := range l.v {
		out[i] = k.v[v]
	}
	return out
}

// nest sorts the loops of one plane and side into faces: each outline followed
// by the holes in it.
func (k *skin) nest(loops []rimLoop, n Vec) [][]rimLoop {
	var out [][]rimLoop
	var holes []rimLoop
	var areas []float64
	for _, l := range loops {
		if a := loopArea(k.points(l), n); a > 0 {
			out = append(out, []rimLoop{l})
			areas = append(areas, a)
		} else {
			holes = append(holes, l)
		}
	}
	for _, h := range holes {
		p := k.v[h.v[0]].Lerp(k.v[h.v[1]], 0.5)
		best := -1
		for i, o := range out {
			if (best < 0 || areas[i] < areas[best]) && (len(out) == 1 || inside(k.points(o[0]), p, n)) {
				best = i
			}
		}
		if best >= 0 {
			out[best] = append(out[best], h)
		}
	}
	return out
}

// inside reports whether p lies within the flat loop, by counting how often
// the loop winds round it.
func inside(l []Vec, p, n Vec) bool {
	u, v := square(n)
	wind := 0
	for i, a := range l {
		b := l[(i+1)%len(l)]
		ay, by := a.Sub(p).Dot(v), b.Sub(p).Dot(v)
		if (ay <= 0) == (by <= 0) {
			continue
		}
		ax, bx := a.Sub(p).Dot(u), b.Sub(p).Dot(u)
		if ax+(bx-ax)*(-ay)/(by-ay) > 0 {
			if by > ay {
				wind++
			} else {
				wind--
			}
		}
	}
	return wind != 0
}
