package frame

import (
	"math"

	"plumbcut/geom"
)

// BraceHousing is a recess that takes the end of a brace. Its two ends run into
// the timber with the brace, aslant; its back is parallel to the face.
//
//	   face
//	────┐     ┌────     At and Width: of its mouth, along the member
//	     ╲     ╲        Lean: off square, towards the far end
//	      └─────┘       Depth
type BraceHousing struct {
	Face     Face
	At       float64 // of the middle of its mouth
	Width    float64 // of its mouth, along the member
	Depth    float64
	Lean     float64 // radians; negative towards the datum end
	From, To float64 // across the face, as Member.OnFace counts
}

// Cutters implements Feature.
func (h BraceHousing) Cutters(m Member) []geom.Convex {
	face, ok := m.FacePlane(h.Face)
	if !ok {
		return nil
	}
	in, u := face.N.Neg(), geom.V(1, 0, 0)
	side := u.Sub(in.Mul(math.Tan(h.Lean)))
	at := func(along, across float64) geom.Vec { return m.OnFace(h.Face, along, across) }
	across := at(0, 1).Sub(at(0, 0))
	return []geom.Convex{{
		geom.PlaneAt(at(h.At-h.Width/2, 0), side.Neg()),
		geom.PlaneAt(at(h.At+h.Width/2, 0), side),
		geom.PlaneAt(at(0, 0).Add(in.Mul(h.Depth)), in),
		geom.PlaneAt(at(0, h.From), across.Neg()),
		geom.PlaneAt(at(0, h.To), across),
	}}
}

// Bores implements Feature.
func (BraceHousing) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (h BraceHousing) Mirrored(m Member) Feature {
	plane, _ := m.FacePlane(h.Face)
	h.Face, h.At = m.mirrorFace(h.Face), m.mirrorAt(h.At)
	if m.Kind.mirrorsAlong() {
		h.Lean = -h.Lean
	} else if plane.N.Y == 0 { // across it runs V
		h.From, h.To = m.mirrorV(h.To), m.mirrorV(h.From)
	}
	return h
}

// Figures implements Feature.
func (h BraceHousing) Figures() FeatureFigures {
	return FeatureFigures{
		Kind:   "brace housing",
		Face:   h.Face,
		At:     h.At,
		Sizes:  map[string]float64{"width": h.Width, "depth": h.Depth, "from": h.From, "to": h.To},
		Angles: map[string]float64{"lean": degrees(h.Lean)},
	}
}
