package frame

import (
	"math"

	"plumbcut/geom"
)

// Chamfer weathers a post's top: it leaves a level seat along the outer face
// and slopes what is behind it away to the house side.
type Chamfer struct {
	At    float64 // of the seat, along the post from its bottom
	Seat  float64 // level, from the outer face
	Angle float64 // below level, radians
}

// Cutters implements Feature.
func (c Chamfer) Cutters(Member) []geom.Convex {
	edge := geom.V(c.At, 0, c.Seat)
	sin, cos := math.Sincos(c.Angle)
	return []geom.Convex{{
		geom.PlaneAt(edge, geom.V(-cos, 0, -sin)),
		geom.PlaneAt(edge, geom.V(0, 0, -1)),
	}}
}

// Bores implements Feature.
func (Chamfer) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (c Chamfer) Mirrored(Member) Feature { return c }

// Figures implements Feature.
func (c Chamfer) Figures() FeatureFigures {
	return FeatureFigures{
		Kind:   "chamfer",
		Face:   FaceEnd,
		At:     c.At,
		Sizes:  map[string]float64{"seat": c.Seat},
		Angles: map[string]float64{"slope": degrees(c.Angle)},
	}
}
