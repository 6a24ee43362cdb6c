package frame

import "plumbcut/geom"

// Check is a recess square across a face, over its whole width, in which a
// timber that crosses the member lies.
//
//	      ┌── Width ──┐
//	──────┐           ┌──────  Face
//	      │           │ Depth
//	      └─────┬─────┘
//	            At
type Check struct {
	Face  Face    // FaceTop or FaceBottom
	At    float64 // of its middle, along the member
	Width float64 // along the member
	Depth float64 // into the face
}

// Cutters implements Feature.
func (c Check) Cutters(m Member) []geom.Convex {
	face, ok := m.FacePlane(c.Face)
	if !ok {
		return nil
	}
	u, in := geom.V(1, 0, 0), face.N.Neg()
	floor := m.OnFace(c.Face, c.At, 0).Add(in.Mul(c.Depth))
	return []geom.Convex{{
		geom.PlaneAt(geom.V(c.At-c.Width/2, 0, 0), u.Neg()),
		geom.PlaneAt(geom.V(c.At+c.Width/2, 0, 0), u),
		geom.PlaneAt(floor, in),
	}}
}

// Bores implements Feature.
func (Check) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (c Check) Mirrored(m Member) Feature {
	c.Face, c.At = m.mirrorFace(c.Face), m.mirrorAt(c.At)
	return c
}

// Figures implements Feature.
func (c Check) Figures() FeatureFigures {
	return FeatureFigures{
		Kind: "check", Face: c.Face, At: c.At,
		Sizes: map[string]float64{"width": c.Width, "depth": c.Depth},
	}
}
