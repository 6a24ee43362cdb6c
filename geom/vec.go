package geom

import (
	"fmt"
	"math"
)

// Vec is a point or a direction in space, in millimetres.
type Vec struct{ X, Y, Z float64 }

// V is short for Vec{x, y, z}.
func V(x, y, z float64) Vec { return Vec{x, y, z} }

// Add returns a + b.
func (a Vec) Add(b Vec) Vec { return Vec{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub returns a − b.
func (a Vec) Sub(b Vec) Vec { return Vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Mul returns a scaled by k.
func (a Vec) Mul(k float64) Vec { return Vec{a.X * k, a.Y * k, a.Z * k} }

// Neg returns −a.
func (a Vec) Neg() Vec { return Vec{-a.X, -a.Y, -a.Z} }

// Dot returns the scalar product.
func (a Vec) Dot(b Vec) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

// Cross returns the vector product a × b.
func (a Vec) Cross(b Vec) Vec {
	return Vec{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// Len returns the length.
func (a Vec) Len() float64 { return math.Sqrt(a.Dot(a)) }

// Unit returns a at length 1; the zero vector stays zero.
func (a Vec) Unit() Vec {
	l := a.Len()
	if l == 0 {
		return Vec{}
	}
	return a.Mul(1 / l)
}

// Lerp returns the point a fraction t of the way from a to b.
func (a Vec) Lerp(b Vec, t float64) Vec { return a.Add(b.Sub(a).Mul(t)) }

// String gives the form used in test failures, "(x y z)".
func (a Vec) String() string { return fmt.Sprintf("(%.6g %.6g %.6g)", a.X, a.Y, a.Z) }

// Pt is a point or a direction in a plane: of a face, of a view, or of a
// sheet of paper. Millimetres, y upwards.
type Pt struct{ X, Y float64 }

// P is short for Pt{x, y}.
func P(x, y float64) Pt { return Pt{x, y} }

// Add returns a + b.
func (a Pt) Add(b Pt) Pt { return Pt{a.X + b.X, a.Y + b.Y} }

// Sub returns a − b.
func (a Pt) Sub(b Pt) Pt { return Pt{a.X - b.X, a.Y - b.Y} }

// Mul returns a scaled by k.
func (a Pt) Mul(k float64) Pt { return Pt{a.X * k, a.Y * k} }

// Dot returns the scalar product.
func (a Pt) Dot(b Pt) float64 { return a.X*b.X + a.Y*b.Y }

// Cross returns the z of the vector product: positive when b lies to the left
// of a.
func (a Pt) Cross(b Pt) float64 { return a.X*b.Y - a.Y*b.X }

// Len returns the length.
func (a Pt) Len() float64 { return math.Sqrt(a.Dot(a)) }

// Unit returns a at length 1; the zero point stays zero.
func (a Pt) Unit() Pt {
	l := a.Len()
	if l == 0 {
		return Pt{}
	}
	return a.Mul(1 / l)
}

// Left returns a turned a quarter turn anticlockwise.
func (a Pt) Left() Pt { return Pt{-a.Y, a.X} }

// Lerp returns the point a fraction t of the way from a to b.
func (a Pt) Lerp(b Pt, t float64) Pt { return a.Add(b.Sub(a).Mul(t)) }

// String gives the form used in test failures, "(x y)".
func (a Pt) String() string { return fmt.Sprintf("(%.6g %.6g)", a.X, a.Y) }

// Plane is the set of points p with N·p = D. N has length 1 and points out of
// the material: a point is inside when N·p ≤ D.
type Plane struct {
	N Vec
	D float64
}

// PlaneAt returns the plane through p whose outward normal is n, which need
// not be of length 1.
func PlaneAt(p, n Vec) Plane {
	n = n.Unit()
	return Plane{n, n.Dot(p)}
}

// Dist returns how far p lies outside the plane; negative is inside.
func (pl Plane) Dist(p Vec) float64 { return pl.N.Dot(p) - pl.D }

// Flip returns the same plane with inside and outside exchanged.
func (pl Plane) Flip() Plane { return Plane{pl.N.Neg(), -pl.D} }

// Axes is a right-handed place in the world: an origin and three unit
// directions at right angles. A timber's U runs along it from the datum end,
// V across its width and W through its depth. The zero value is not valid;
// World is the identity.
type Axes struct{ O, U, V, W Vec }

// World is the place whose own axes are the world's.
func World() Axes { return Axes{U: V(1, 0, 0), V: V(0, 1, 0), W: V(0, 0, 1)} }

// Point carries a point from these axes to the world.
func (a Axes) Point(p Vec) Vec { return a.O.Add(a.Dir(p)) }

// Dir carries a direction from these axes to the world.
func (a Axes) Dir(d Vec) Vec { return a.U.Mul(d.X).Add(a.V.Mul(d.Y)).Add(a.W.Mul(d.Z)) }

// Local carries a world point into these axes.
func (a Axes) Local(p Vec) Vec { return a.LocalDir(p.Sub(a.O)) }

// LocalDir carries a world direction into these axes.
func (a Axes) LocalDir(d Vec) Vec { return Vec{a.U.Dot(d), a.V.Dot(d), a.W.Dot(d)} }

// Plane carries a plane from these axes to the world.
func (a Axes) Plane(p Plane) Plane {
	n := a.Dir(p.N)
	return Plane{n, p.D + n.Dot(a.O)}
}

// LocalPlane carries a world plane into these axes.
func (a Axes) LocalPlane(p Plane) Plane {
	return Plane{a.LocalDir(p.N), p.D - p.N.Dot(a.O)}
}
