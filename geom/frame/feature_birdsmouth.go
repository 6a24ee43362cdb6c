package frame

import (
	"math"

	"plumbcut/geom"
)

// Birdsmouth is the notch with which a sloping timber lies over a level one: a
// level seat and, at its outer side, a plumb heel. Where the notch is deeper
// than the seat needs, a plumb shoulder stands at its inner side too.
//
//	     At ╲
//	   ╲     │╲           Heel is the plumb height from the seat to the top
//	    ╲    │Heel        edge, at the heel's plumb line
//	     ╲   │  ╲
//	──────┐__│   ╲        Over is the width of what lies below: from the
//	shoulder  │   ╲       heel's plumb line to the shoulder's
//	       Over
type Birdsmouth struct {
	At    float64 // of the heel's plumb line, along the top edge
	Heel  float64
	Over  float64
	Angle float64 // between the member and the level, radians
}

// Cutters implements Feature.
func (n Birdsmouth) Cutters(m Member) []geom.Convex {
	sin, cos := math.Sincos(n.Angle)
	up, out := geom.V(-sin, 0, cos), geom.V(cos, 0, sin)
	corner := geom.V(n.At, 0, m.Section.Depth).Sub(up.Mul(n.Heel))
	return []geom.Convex{{
		geom.PlaneAt(corner, up),
		geom.PlaneAt(corner, out),
		geom.PlaneAt(corner.Sub(out.Mul(n.Over)), out.Neg()),
	}}
}

// Bores implements Feature.
func (Birdsmouth) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (n Birdsmouth) Mirrored(Member) Feature { return n }

// Deep is the plumb depth of the notch at its heel, for a member of a depth.
func (n Birdsmouth) Deep(depth float64) float64 { return depth/math.Cos(n.Angle) - n.Heel }

// Seat is the level length that bears, for a member of a depth.
func (n Birdsmouth) Seat(depth float64) float64 {
	if n.Angle <= 0 {
		return n.Over
	}
	return max(0, min(n.Over, n.Deep(depth)/math.Tan(n.Angle)))
}

// Shoulder is the plumb height of the notch at its inner side; 0 where the seat
// runs out at the underside.
func (n Birdsmouth) Shoulder(depth float64) float64 {
	return max(0, n.Deep(depth)-n.Over*math.Tan(n.Angle))
}

// Figures implements Feature.
func (n Birdsmouth) Figures() FeatureFigures {
	return FeatureFigures{
		Kind:   "birdsmouth",
		Face:   FaceBottom,
		At:     n.At,
		Sizes:  map[string]float64{"heel": n.Heel, "over": n.Over},
		Angles: map[string]float64{"to member": degrees(n.Angle)},
	}
}
