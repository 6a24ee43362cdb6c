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
}

// Cutters implements Feature.
func (h Housing) Cutters(m Member) []geom.Convex {
	face, ok := m.FacePlane(h.Face)
	if !ok {
		return nil
	}
	in := face.N.Neg()
	u := geom.V(1, 0, 0)
	back := m.OnFace(h.Face, h.At, h.Floor).Add(in.Mul(h.Depth))
	floor := geom.V(0, 0, -1).Add(in.Mul(math.Tan(h.Slope)))
	return []geom.Convex{{
		geom.PlaneAt(geom.V(h.At-h.Width/2, 0, 0), u.Neg()),
		geom.PlaneAt(geom.V(h.At+h.Width/2, 0, 0), u),
		geom.PlaneAt(back, in),
		geom.PlaneAt(m.OnFace(h.Face, h.At, h.Floor), floor),
	}}
}

// Bores implements Feature.
func (Housing) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (h Housing) Mirrored(m Member) Feature {
	h.Face, h.At = m.mirrorFace(h.Face), m.mirrorAt(h.At)
	return h
}

// FloorInside is the height of the floor at the back of the housing.
func (h Housing) FloorInside() float64 { return h.Floor + h.Depth*math.Tan(h.Slope) }

// Figures implements Feature.
func (h Housing) Figures() FeatureFigures {
	return FeatureFigures{
		Kind:   "housing",
		Face:   h.Face,
		At:     h.At,
		Sizes:  map[string]float64{"width": h.Width, "depth": h.Depth, "floor": h.Floor},
		Angles: map[string]float64{"floor": degrees(h.Slope)},
	}
}
