package frame

import (
	"math"

	"plumbcut/geom"
)

// TailBevel takes the lower corner off a rafter's tail: below a plumb nose the
// end is splayed back towards the house, at an angle from the level.
//
//	╲
//	 ╲ │ At
//	╲  │ Nose
//	 ╲╱  Splay
type TailBevel struct {
	At    float64 // of the nose's plumb line, along the top edge
	Nose  float64 // plumb height that is left
	Splay float64 // of the splay, from the level, radians
	Angle float64 // between the member and the level, radians
}

// Cutters implements Feature.
func (t TailBevel) Cutters(m Member) []geom.Convex {
	sin, cos := math.Sincos(t.Angle)
	up, out := geom.V(-sin, 0, cos), geom.V(cos, 0, sin)
	tip := geom.V(t.At, 0, m.Section.Depth).Sub(up.Mul(t.Nose))
	s, c := math.Sincos(t.Splay)
	return []geom.Convex{{geom.PlaneAt(tip, up.Mul(c).Sub(out.Mul(s)))}}
}

// Foot is where the splay runs out at the underside, along it, for a member of
// a depth.
func (t TailBevel) Foot(depth float64) float64 {
	sin, cos := math.Sincos(t.Angle)
	s, c := math.Sincos(t.Angle + t.Splay)
	return t.At + t.Nose*sin - (depth-t.Nose*cos)*c/s
}

// Bores implements Feature.
func (TailBevel) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (t TailBevel) Mirrored(Member) Feature { return t }

// Figures implements Feature.
func (t TailBevel) Figures() FeatureFigures {
	return FeatureFigures{
		Kind:   "bevelled tail",
		Face:   FaceBottom,
		At:     t.At,
		Sizes:  map[string]float64{"nose": t.Nose},
		Angles: map[string]float64{"splay": degrees(t.Splay), "to member": degrees(t.Angle)},
	}
}
