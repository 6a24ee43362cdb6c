package frame

import (
	"math"

	"plumbcut/geom"
)

// Housing is a recess in an upright face that takes another timber's end. It
// is open at the top; its sides are plumb; its floor may slope.
//
//	      ┌──────┐ top          section at the housing
//	  open│▒▒▒┌──┤
//	      │▒▒▒│  │              Depth is how far in it goes
//	Floor ├───┘  │ ← rises inwards by Slope (here 0)
//	      │      │
//	      └──────┘
type Housing struct {
	Face  Face    // FaceOuter or FaceHouse
	At    float64 // of its centre line, along the member
	Width float64 // along the member
	Depth float64 // into the face
	Floor float64 // height of the floor at the face, above the member's bottom
	Slope float64 // by which the floor rises going in, radians; negative: falls
	Skew  float64 // by which the sides lean towards the far end going in, radians
	Rise  float64 // by which the floor rises towards the far end, radians
}

// Cutters implements Feature.
func (h Housing) Cutters(m Member) []geom.Convex {
	face, ok := m.FacePlane(h.Face)
	if !ok {
		return nil
	}
	in := face.N.Neg()
	u := geom.V(1, 0, 0)
	side := u.Sub(in.Mul(math.Tan(h.Skew)))
	back := m.OnFace(h.Face, h.At, h.Floor).Add(in.Mul(h.Depth))
	floor := geom.V(0, 0, -1).Add(in.Mul(math.Tan(h.Slope))).Add(u.Mul(math.Tan(h.Rise)))
	return []geom.Convex{{
		geom.PlaneAt(m.OnFace(h.Face, h.At-h.Width/2, 0), side.Neg()),
		geom.PlaneAt(m.OnFace(h.Face, h.At+h.Width/2, 0), side),
		geom.PlaneAt(back, in),
		geom.PlaneAt(m.OnFace(h.Face, h.At, h.Floor), floor),
	}}
}

// Bores implements Feature.
func (Housing) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (h Housing) Mirrored(m Member) Feature {
	h.Face, h.At = m.mirrorFace(h.Face), m.mirrorAt(h.At)
	h.Skew, h.Rise = -h.Skew, -h.Rise
	return h
}

// FloorInside is the height of the floor at the back of the housing, midway
// between its sides.
func (h Housing) FloorInside() float64 {
	return h.Floor + h.Depth*(math.Tan(h.Slope)+math.Tan(h.Skew)*math.Tan(h.Rise))
}

// Lowest is the height of the floor's lowest corner.
func (h Housing) Lowest() float64 {
	return min(h.Floor, h.FloorInside()) - h.Width/2*math.Abs(math.Tan(h.Rise))
}

// Back is how far along the member the housing's centre line comes to its back.
func (h Housing) Back() float64 { return h.At + h.Depth*math.Tan(h.Skew) }

// Figures implements Feature.
func (h Housing) Figures() FeatureFigures {
	f := FeatureFigures{
		Kind:   "housing",
		Face:   h.Face,
		At:     h.At,
		Sizes:  map[string]float64{"width": h.Width, "depth": h.Depth, "floor": h.Floor},
		Angles: map[string]float64{"floor": degrees(h.Slope)},
	}
	if h.Skew != 0 {
		f.Angles["skew"], f.Angles["floor along"] = degrees(h.Skew), degrees(h.Rise)
	}
	return f
}
