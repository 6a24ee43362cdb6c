package geom

import "math"

// Overlap returns the volume that a and b have in common, bores not deducted.
// It is 0 for bodies that only touch.
func Overlap(a, b Solid) float64 {
	if a.Empty() || b.Empty() || !a.d.box.meets(&b.d.box, -onTol) {
		return 0
	}
	near := reaching(b.d.cells, a.d.box, -onTol)
	var sum float64
	for _, c := range reaching(a.d.cells, b.d.box, -onTol) {
		for _, o := range near {
			if c.box.meets(&o.box, -onTol) {
				sum += common(c, o, b.d.planes)
			}
		}
	}
	return sum
}

// reaching returns the cells that come within gap of the box.
func reaching(cells []*cell, b Box3, gap float64) []*cell {
	var out []*cell
	for _, c := range cells {
		if c.box.meets(&b, gap) {
			out = append(out, c)
		}
	}
	return out
}

// common returns the volume of c inside o.
func common(c, o *cell, planes []Plane) float64 {
	for _, f := range o.f {
		if c, _ = c.split(f.ref.of(planes), 0); c == nil {
			return 0
		}
	}
	return c.volume()
}

const (
	// contactTol is how far apart two faces may lie and still bear on each
	// other: the smallest size that is ever stated.
	contactTol = 0.01

	// contactTilt is the same for their directions: contactTol over 10 m.
	contactTilt = 1e-6
)

// Contact returns the area over which faces of a and b lie against each
// other.
func Contact(a, b Solid) float64 {
	if a.Empty() || b.Empty() || !a.d.box.meets(&b.d.box, contactTol) {
		return 0
	}
	var sum float64
	done := make(map[int32]bool)
	for _, c := range reaching(a.d.cells, b.d.box, contactTol) {
		for _, f := range c.f {
			if i := f.ref.index(); !done[i] {
				done[i] = true
				sum += ContactOn(a, b, a.d.planes[i])
			}
		}
	}
	return sum
}

// ContactOn returns the area over which faces of a and b lie against each
// other in the plane p, whichever way it looks.
func ContactOn(a, b Solid, p Plane) float64 {
	if a.Empty() || b.Empty() || !a.d.box.meets(&b.d.box, contactTol) {
		return 0
	}
	meet := a.d.box
	meet.Min = Vec{max(meet.Min.X, b.d.box.Min.X), max(meet.Min.Y, b.d.box.Min.Y), max(meet.Min.Z, b.d.box.Min.Z)}
	meet.Max = Vec{min(meet.Max.X, b.d.box.Max.X), min(meet.Max.Y, b.d.box.Max.Y), min(meet.Max.Z, b.d.box.Max.Z)}
	var sum float64
	for _, q := range [2]Plane{p, p.Flip()} {
		theirs := b.patches(q.Flip(), meet)
		for _, f := range a.patches(q, meet) {
			for _, g := range theirs {
				sum += loopArea(f.within(g, q.N), q.N)
			}
		}
	}
	return sum
}

// patch is a convex polygon in space.
type patch []Vec

// patches returns, as convex pieces, what of the real faces of s lies in the
// plane p and looks along its normal, near the box.
func (s Solid) patches(p Plane, near Box3) []patch {
	var out, hidden []patch
	for _, c := range reaching(s.d.cells, near, contactTol) {
		for _, f := range c.f {
			n := f.ref.of(s.d.planes).N
			if math.Abs(p.Dist(c.v[f.loop[0]])) > contactTol || n.Cross(p.N).Len() > contactTilt {
				continue
			}
			pts := make(patch, len(f.loop))
			for i, k := range f.loop {
				pts[i] = c.v[k]
			}
			if n.Dot(p.N) > 0 {
				out = append(out, pts)
			} else {
				hidden = append(hidden, pts)
			}
		}
	}
	for _, h := range hidden {
		var rest []patch
		for _, f := range out {
			rest = f.without(rest, h, p.N)
		}
		out = rest
	}
	return out
}

// within returns the part of f inside g. Both lie in planes across n; which
// way round g runs does not matter.
func (f patch) within(g patch, n Vec) patch {
	for i := 0; i < len(g) && len(f) > 0; i++ {
		f, _ = f.split(g.edgePlane(i, n))
	}
	return f
}

// without appends to dst convex pieces of the part of f outside g.
func (f patch) without(dst []patch, g patch, n Vec) []patch {
	if len(f.within(g, n)) == 0 {
		return append(dst, f)
	}
	for i := 0; i < len(g) && len(f) > 0; i++ {
		var out patch
		if f, out = f.split(g.edgePlane(i, n)); len(out) > 0 {
			dst = append(dst, out)
		}
	}
	return dst
}

// edgePlane returns the plane across the patch through its edge i, with the
// patch inside.
func (f patch) edgePlane(i int, n Vec) Plane {
	if loopArea(f, n) < 0 {
		n = n.Neg()
	}
	a, b := f[i], f[(i+1)%len(f)]
	return PlaneAt(a, b.Sub(a).Cross(n))
}

// split divides a patch by a plane.
func (f patch) split(p Plane) (in, out patch) {
	var deep, high float64
	for _, v := range f {
		d := p.Dist(v)
		deep, high = min(deep, d), max(high, d)
	}
	if high <= onTol {
		return f, nil
	}
	if deep >= -onTol {
		return nil, f
	}
	for i, a := range f {
		b := f[(i+1)%len(f)]
		da, db := p.Dist(a), p.Dist(b)
		if da <= onTol {
			in = append(in, a)
		}
		if da >= -onTol {
			out = append(out, a)
		}
		if da < -onTol && db > onTol || da > onTol && db < -onTol {
			x := a.Lerp(b, da/(da-db))
			in, out = append(in, x), append(out, x)
		}
	}
	return in, out
}
