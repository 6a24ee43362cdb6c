package frame

import "plumbcut/geom"

// Hole is a round hole, bored square from a face.
type Hole struct {
	Face     Face     // to drill from
	Mouth    geom.Vec // centre on that face, in the member's axes
	Diameter float64
	Depth    float64
	Through  bool
	Use      string // what goes through it: one of the Use constants
}

// The uses of holes.
const (
	UseScrew  = "screw"
	UseAnchor = "anchor" // a screw's place is taken by an anchor into masonry
	UseRod    = "rod"
	UseBolt   = "bolt"
)

// ToWall reports whether what goes through the hole holds a timber to the house.
func (h Hole) ToWall() bool { return h.Use == UseScrew || h.Use == UseAnchor }

// throughExtra makes a bore that goes through end beyond the far face, so
// that rounding cannot leave a skin.
const throughExtra = 1

// Cutters implements Feature.
func (Hole) Cutters(Member) []geom.Convex { return nil }

// Bores implements Feature.
func (h Hole) Bores(m Member) []geom.Bore {
	face, ok := m.FacePlane(h.Face)
	if !ok {
		return nil
	}
	depth := h.Depth
	if h.Through {
		depth += throughExtra
	}
	return []geom.Bore{{At: h.Mouth, Dir: face.N.Neg(), Radius: h.Diameter / 2, Depth: depth}}
}

// Mirrored implements Feature.
func (h Hole) Mirrored(m Member) Feature {
	if plane, _ := m.FacePlane(h.Face); h.Use == UseBolt && h.Through && plane.N.Y != 0 && !m.Kind.mirrorsAlong() {
		return h // as well drilled from the other side
	}
	h.Face = m.mirrorFace(h.Face)
	h.Mouth.X, h.Mouth.Y = m.mirrorAt(h.Mouth.X), m.mirrorV(h.Mouth.Y)
	return h
}

// Figures implements Feature. "v" and "w" are the mouth's, across the width and
// through the depth.
func (h Hole) Figures() FeatureFigures {
	f := FeatureFigures{
		Kind: h.Use + " hole",
		Face: h.Face,
		At:   h.Mouth.X,
		Sizes: map[string]float64{
			"diameter": h.Diameter, "depth": h.Depth, "v": h.Mouth.Y, "w": h.Mouth.Z,
		},
	}
	if h.Through {
		f.Kind += " through"
	}
	return f
}
