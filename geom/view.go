package geom

import "math"

// View is a direction of looking without perspective. Right and Up are the
// directions of the paper and Toward points at the viewer; all three are unit
// and Right × Up = Toward.
type View struct{ Right, Up, Toward Vec }

// Plan looks down, with the house at the top of the paper.
func Plan() View { return View{V(1, 0, 0), V(0, 1, 0), V(0, 0, 1)} }

// Front looks at the house from outside.
func Front() View { return View{V(1, 0, 0), V(0, 0, 1), V(0, -1, 0)} }

// Back looks out from the house.
func Back() View { return View{V(-1, 0, 0), V(0, 0, 1), V(0, 1, 0)} }

// LeftEnd looks along the wall from its left end; the house is on the left.
func LeftEnd() View { return View{V(0, -1, 0), V(0, 0, 1), V(-1, 0, 0)} }

// RightEnd looks along the wall from its right end; the house is on the right.
func RightEnd() View { return View{V(0, 1, 0), V(0, 0, 1), V(1, 0, 0)} }

// ViewOf looks against W of the axes, with U to the right and V up.
func ViewOf(a Axes) View { return View{a.U, a.V, a.W} }

// Axonometric looks at the front from azimuth radians round to the right and
// elevation radians above the level.
func Axonometric(azimuth, elevation float64) View {
	sa, ca := math.Sincos(azimuth)
	se, ce := math.Sincos(elevation)
	right, toward := V(ca, sa, 0), V(sa*ce, -ca*ce, se)
	return View{right, toward.Cross(right), toward}
}

// Project returns where p appears on the paper.
func (v View) Project(p Vec) Pt { return Pt{v.Right.Dot(p), v.Up.Dot(p)} }

// Depth returns how near p is to the viewer: greater is nearer.
func (v View) Depth(p Vec) float64 { return v.Toward.Dot(p) }

// Axes returns the plane of the view through o as a place, as Section takes
// it.
func (v View) Axes(o Vec) Axes { return Axes{o, v.Right, v.Up, v.Toward} }

// local carries a point into the view: across, up, near.
func (v View) local(p Vec) Vec { return Vec{v.Right.Dot(p), v.Up.Dot(p), v.Toward.Dot(p)} }
