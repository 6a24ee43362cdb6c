package geom

import "math"

// Box3 is a box along the axes. A box whose Min exceeds its Max holds nothing.
type Box3 struct{ Min, Max Vec }

// noBox holds nothing; adding a point to it gives that point.
func noBox() Box3 {
	inf := math.Inf(1)
	return Box3{V(inf, inf, inf), V(-inf, -inf, -inf)}
}

// boxOf returns the least box that holds the points.
func boxOf(ps []Vec) Box3 {
	b := noBox()
	for i := range ps {
		b.grow(&Box3{ps[i], ps[i]})
	}
	return b
}

// grow takes o into b. It is on the hot path of every cut, hence the plain
// comparisons; an empty o changes nothing.
func (b *Box3) grow(o *Box3) {
	if o.Min.X < b.Min.X {
		b.Min.X = o.Min.X
	}
	if o.Min.Y < b.Min.Y {
		b.Min.Y = o.Min.Y
	}
	if o.Min.Z < b.Min.Z {
		b.Min.Z = o.Min.Z
	}
	if o.Max.X > b.Max.X {
		b.Max.X = o.Max.X
	}
	if o.Max.Y > b.Max.Y {
		b.Max.Y = o.Max.Y
	}
	if o.Max.Z > b.Max.Z {
		b.Max.Z = o.Max.Z
	}
}

func (b Box3) with(p Vec) Box3 {
	return Box3{
		Vec{min(b.Min.X, p.X), min(b.Min.Y, p.Y), min(b.Min.Z, p.Z)},
		Vec{max(b.Max.X, p.X), max(b.Max.Y, p.Y), max(b.Max.Z, p.Z)},
	}
}

// Union returns the least box that holds both.
func (b Box3) Union(o Box3) Box3 {
	if o.Empty() {
		return b
	}
	return b.with(o.Min).with(o.Max)
}

// Empty reports whether the box holds nothing.
func (b Box3) Empty() bool {
	return b.Min.X > b.Max.X || b.Min.Y > b.Max.Y || b.Min.Z > b.Max.Z
}

// Size returns the three side lengths; zero for an empty box.
func (b Box3) Size() Vec {
	if b.Empty() {
		return Vec{}
	}
	return b.Max.Sub(b.Min)
}

// Centre returns the middle of the box; the origin for an empty box.
func (b Box3) Centre() Vec {
	if b.Empty() {
		return Vec{}
	}
	return b.Min.Lerp(b.Max, 0.5)
}

// meets reports whether the boxes come within gap of each other.
func (b *Box3) meets(o *Box3, gap float64) bool {
	return b.Min.X <= o.Max.X+gap && o.Min.X <= b.Max.X+gap &&
		b.Min.Y <= o.Max.Y+gap && o.Min.Y <= b.Max.Y+gap &&
		b.Min.Z <= o.Max.Z+gap && o.Min.Z <= b.Max.Z+gap
}

// Convex returns the box as half-spaces.
func (b Box3) Convex() Convex {
	return Convex{
		{V(-1, 0, 0), -b.Min.X}, {V(1, 0, 0), b.Max.X},
		{V(0, -1, 0), -b.Min.Y}, {V(0, 1, 0), b.Max.Y},
		{V(0, 0, -1), -b.Min.Z}, {V(0, 0, 1), b.Max.Z},
	}
}

// holds reports whether a box lies inside the plane, to the last digit.
func (pl Plane) holds(b Box3) bool {
	far := pick(pl.N.X, b.Min.X, b.Max.X) + pick(pl.N.Y, b.Min.Y, b.Max.Y) + pick(pl.N.Z, b.Min.Z, b.Max.Z)
	return far <= pl.D
}

// pick is the product of n with lo or hi, whichever is greater.
func pick(n, lo, hi float64) float64 {
	if n > 0 {
		return n * hi
	}
	return n * lo
}
