package geom

import (
	"math"
	"sort"
)

// run is a stretch of a bore's axis inside the material, from and to measured
// from the mouth. The rims lie in the planes where it begins and ends.
type run struct {
	from, to       float64
	fromAt, toward Plane // planes of the two rims
}

// runs returns the stretches of the bore's axis that lie in the material, in
// order. There is one, unless the bore crosses a pocket on its way.
func (s Solid) runs(b Bore) []run {
	var found []run
	axis := boxOf([]Vec{b.At, b.At.Add(b.Dir.Mul(b.Depth))})
	for _, c := range reaching(s.d.cells, axis, mouthTol) {
		if r, ok := c.along(s.d.planes, b); ok {
			found = append(found, r)
		}
	}
	sort.SliceStable(found, func(i, j int) bool { return found[i].from < found[j].from })
	var out []run
	for _, r := range found {
		if n := len(out); n > 0 && r.from <= out[n-1].to+onTol {
			if r.to > out[n-1].to {
				out[n-1].to, out[n-1].toward = r.to, r.toward
			}
			continue
		}
		out = append(out, r)
	}
	return out
}

// mouthTol is how far off the surface a bore's mouth or end may be given and
// still be on it: the smallest size that is ever stated.
const mouthTol = 0.01

// along returns the stretch of the bore's axis inside the cell.
func (c *cell) along(planes []Plane, b Bore) (run, bool) {
	r := run{from: math.Inf(-1), to: math.Inf(1)}
	for _, f := range c.f {
		p := f.ref.of(planes)
		d, step := p.Dist(b.At), p.N.Dot(b.Dir)
		switch t := -d / step; {
		case math.Abs(step) < minSlope:
			if d > onTol {
				return r, false
			}
		case step < 0 && t > r.from:
			r.from, r.fromAt = t, p
		case step > 0 && t < r.to:
			r.to, r.toward = t, p
		}
	}
	if r.from < -mouthTol {
		r.from, r.fromAt = 0, PlaneAt(b.At, b.Dir.Neg())
	}
	if r.to > b.Depth+mouthTol {
		r.to, r.toward = b.Depth, PlaneAt(b.At.Add(b.Dir.Mul(b.Depth)), b.Dir)
	}
	return r, r.to-r.from > onTol
}

// minSlope is the least sine between an axis and a plane for which their
// meeting is worked out; below it they are parallel.
const minSlope = 1e-9

// rim is the closed curve Centre + A·cos t + B·sin t: a circle of a bore or,
// where the bore meets a sloping face, an ellipse.
type rim struct{ c, a, b Vec }

// at returns the point of the rim at parameter t.
func (r rim) at(t float64) Vec {
	sin, cos := math.Sincos(t)
	return r.c.Add(r.a.Mul(cos)).Add(r.b.Mul(sin))
}

// rimOn returns the curve in which the bore's cylinder meets the plane.
func (b Bore) rimOn(p Plane) (rim, bool) {
	step := p.N.Dot(b.Dir)
	if math.Abs(step) < 0.05 { // nearer than 3° to its own axis it is no mouth
		return rim{}, false
	}
	u, v := square(b.Dir)
	onto := func(q Vec) Vec { return q.Sub(b.Dir.Mul(p.N.Dot(q) / step)) }
	c := b.At.Sub(b.Dir.Mul(p.Dist(b.At) / step))
	return rim{c, onto(u.Mul(b.Radius)), onto(v.Mul(b.Radius))}, true
}

// square returns two unit directions that make a right-handed set with the
// unit direction w.
func square(w Vec) (u, v Vec) {
	u = V(1, 0, 0)
	if math.Abs(w.X) > 0.6 {
		u = V(0, 1, 0)
	}
	v = w.Cross(u).Unit()
	return v.Cross(w), v
}
