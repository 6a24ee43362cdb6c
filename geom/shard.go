package geom

import "math"

// shard is a simple anticlockwise polygon. edge[i] says what leads from its
// point i to the next: the number of an edge of the profile, run backwards;
// boxSide; or a seam, below that.
type shard struct {
	pts  []Pt
	edge []int
}

// boxSide is a side of a profile's box.
const boxSide = -1

// seam k stands in a shard as −2 − 2k run forwards, and one less backwards.
func seam(k int, back bool) int {
	if back {
		return -3 - 2*k
	}
	return -2 - 2*k
}

// shards are polygons parted into convex ones, and the seams between these.
type shards struct {
	convex []shard
	seams  [][2]Pt
}

// snapTo is how near to a corner, in millimetres, a seam is led into it: slivers
// are no use to anybody.
const snapTo = 0.5

// mostSeams ends the parting of what is no simple polygon.
const mostSeams = 10_000

// part parts a polygon. Every corner that is not convex gets a seam that halves
// its angle, so that no seam lies nearly along an edge: such a pair of planes
// meets in a line that nobody can tell exactly.
func (s *shards) part(h shard) bool {
	todo := []shard{h}
	for len(todo) > 0 {
		h, todo = todo[len(todo)-1], todo[:len(todo)-1]
		i := h.reflex()
		if i < 0 {
			s.convex = append(s.convex, h)
			continue
		}
		j, at, ok := h.opposite(i)
		if !ok || len(s.seams) > mostSeams {
			return false
		}
		a, b := h.split(i, j, at, len(s.seams))
		s.seams = append(s.seams, [2]Pt{h.pts[i], at})
		todo = append(todo, a, b)
	}
	return true
}

// reflex is the corner that is farthest from convex; −1 if all are convex.
func (h shard) reflex() int {
	best, worst := -1, 0.0
	n := len(h.pts)
	for i, p := range h.pts {
		a, b := h.pts[(i+n-1)%n], h.pts[(i+1)%n]
		if turn(a, p, b) >= 0 {
			continue
		}
		if sin := p.Sub(a).Unit().Cross(b.Sub(p).Unit()); sin < worst {
			best, worst = i, sin
		}
	}
	return best
}

// opposite is where the line that halves the angle at corner i meets the
// outline: on edge j, at a point of it that is one of its ends if that is near.
func (h shard) opposite(i int) (j int, at Pt, ok bool) {
	n := len(h.pts)
	p := h.pts[i]
	before, after := h.pts[(i+n-1)%n].Sub(p).Unit(), h.pts[(i+1)%n].Sub(p).Unit()
	// Inwards: to the left of the direction in which the outline passes.
	dir := after.Sub(before).Unit().Left()
	best := math.Inf(1)
	for k := range h.pts {
		if k == i || k == (i+n-1)%n {
			continue
		}
		a, b := h.pts[k].Sub(p), h.pts[(k+1)%n].Sub(p)
		ca, cb := dir.Cross(a), dir.Cross(b)
		if (ca > 0) == (cb > 0) || ca == cb {
			continue
		}
		t := ca / (ca - cb)
		if d := a.Lerp(b, t).Dot(dir); d > onTol && d < best {
			best, j, at, ok = d, k, p.Add(dir.Mul(d)), true
		}
	}
	if !ok {
		return 0, Pt{}, false
	}
	for _, k := range [2]int{j, (j + 1) % n} {
		apart := k != (i+1)%n && k != (i+n-1)%n && k != i
		if apart && h.pts[k].Sub(at).Len() < snapTo && h.sees(i, k) {
			return k, h.pts[k], true
		}
	}
	return j, at, true
}

// sees reports whether the line from corner i to corner k runs within the
// polygon.
func (h shard) sees(i, k int) bool {
	n := len(h.pts)
	p, q := h.pts[i], h.pts[k]
	for e := range h.pts {
		f := (e + 1) % n
		if e == i || f == i || e == k || f == k {
			continue
		}
		if meets(p, q, h.pts[e], h.pts[f]) {
			return false
		}
	}
	return true
}

// split parts the polygon by seam k from corner i to a point of edge j.
func (h shard) split(i, j int, at Pt, k int) (a, b shard) {
	n := len(h.pts)
	// Once round from corner i to the point, and from the point back to corner i.
	for v := i; ; v = (v + 1) % n {
		if h.pts[v] == at {
			break
		}
		a.pts, a.edge = append(a.pts, h.pts[v]), append(a.edge, h.edge[v])
		if v == j {
			break
		}
	}
	a.pts, a.edge = append(a.pts, at), append(a.edge, seam(k, true))
	b.pts, b.edge = append(b.pts, h.pts[i]), append(b.edge, seam(k, false))
	if h.pts[j] != at {
		b.pts, b.edge = append(b.pts, at), append(b.edge, h.edge[j])
		j = (j + 1) % n
	}
	for v := j; v != i; v = (v + 1) % n {
		b.pts, b.edge = append(b.pts, h.pts[v]), append(b.edge, h.edge[v])
	}
	return a, b
}

// recess is the convex shard by its planes.
func (h shard) recess(edges, seams []ref) recess {
	var out recess
	for _, e := range h.edge {
		switch {
		case e >= 0:
			out = append(out, edges[e].flip())
		case e < boxSide:
			r := seams[(-e-2)/2]
			if e%2 != 0 {
				r = r.flip()
			}
			out = append(out, r)
		}
	}
	return out
}
