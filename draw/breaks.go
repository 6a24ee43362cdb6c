package draw

import (
	"math"

	"plumbcut/geom"
)

// Break leaves a plain stretch out of a view, so that a long timber fits the
// sheet at a scale that shows its joints:
//
//	───────┐ ┌─────
//	       ⚡ ⚡
//	───────┘ └─────
//	    From To
//
// What lies between From and To, across the paper in the view plane in mm of
// the model, is pressed into BreakGap. Nothing that is to be measured on the
// paper may lie there; dimensions across it stay true, since their figures come
// from the model.
type Break struct{ From, To float64 }

// BreakGap is the distance on the paper between the two sides of a break, mm
// (own): two break lines with zigzags stand clear of each other in it.
const BreakGap = 3.0

// across is the distance on the paper from the view plane's x = 0 to x.
func (v *View) across(x float64) float64 {
	at := x * v.Scale
	for _, b := range v.Breaks {
		saved := (b.To-b.From)*v.Scale - BreakGap
		at -= saved * min(max((x-b.From)/(b.To-b.From), 0), 1)
	}
	return at
}

// Whole returns the pieces of the line from a to b, in the view plane, that lie
// outside the view's breaks, from a onwards.
func (v *View) Whole(a, b geom.Pt) [][2]geom.Pt {
	pieces := [][2]geom.Pt{{a, b}}
	for _, k := range v.Breaks {
		var rest [][2]geom.Pt
		for _, p := range pieces {
			rest = append(rest, k.outside(p[0], p[1])...)
		}
		pieces = rest
	}
	return pieces
}

// outside returns what of the line from a to b lies outside the break.
func (k Break) outside(a, b geom.Pt) [][2]geom.Pt {
	if max(a.X, b.X) <= k.From || min(a.X, b.X) >= k.To {
		return [][2]geom.Pt{{a, b}}
	}
	var out [][2]geom.Pt
	at := func(x float64) geom.Pt { return a.Lerp(b, (x-a.X)/(b.X-a.X)) }
	near, far := k.From, k.To // as met on the way from a to b
	if a.X > b.X {
		near, far = far, near
	}
	if (near-a.X)*(b.X-a.X) > 0 {
		out = append(out, [2]geom.Pt{a, at(near)})
	}
	if (b.X-far)*(b.X-a.X) > 0 {
		out = append(out, [2]geom.Pt{at(far), b})
	}
	return out
}

// Broken reports whether the view is broken between A and B, so that the length
// of the dimension on the paper is not to scale.
func (d Dim) Broken() bool {
	const upright = 1e-9 // cosine: a height is not shortened by a break
	if d.View == nil || math.Abs(d.Along.Dot(d.View.Axes.Right)) < upright {
		return false
	}
	a, b := d.View.Axes.Project(d.A).X, d.View.Axes.Project(d.B).X
	for _, k := range d.View.Breaks {
		if min(a, b) < k.To && max(a, b) > k.From {
			return true
		}
	}
	return false
}
