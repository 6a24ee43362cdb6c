package frame

import "plumbcut/geom"

// CheckOut is a notch across the whole of one long face of a member, square at
// its ends: what a post gives way to let a beam in. One that reaches the
// member's end is open there.
//
//	 To ┌──┐        ┌─┐ To: the end
//	  ┌─┘▒▒│        │ │▒▒▒
//	  │ ▒▒▒│        │ │▒▒▒
//	  └─┐▒▒│        │ └──┐ From
//	From└──┘        │    │
//	    closed      open
type CheckOut struct {
	Face     Face // one of the long ones
	Depth    float64
	From, To float64 // along the member
}

// Cutters implements Feature.
func (c CheckOut) Cutters(m Member) []geom.Convex {
	face, ok := m.FacePlane(c.Face)
	if !ok {
		return nil
	}
	cut := geom.Convex{
		geom.PlaneAt(m.OnFace(c.Face, c.From, 0).Sub(face.N.Mul(c.Depth)), face.N.Neg()),
	}
	if c.From > slack {
		cut = append(cut, geom.Plane{N: geom.V(-1, 0, 0), D: -c.From})
	}
	if !c.Open(m) {
		cut = append(cut, geom.Plane{N: geom.V(1, 0, 0), D: c.To})
	}
	return []geom.Convex{cut}
}

// Open reports whether the notch reaches the far end of its member.
func (c CheckOut) Open(m Member) bool { return c.To > m.Length-slack }

// Bores implements Feature.
func (CheckOut) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (c CheckOut) Mirrored(m Member) Feature {
	c.Face = m.mirrorFace(c.Face)
	if m.Kind.mirrorsAlong() {
		c.From, c.To = m.Length-c.To, m.Length-c.From
	}
	return c
}

// Figures implements Feature.
func (c CheckOut) Figures() FeatureFigures {
	return FeatureFigures{
		Kind:  "check-out",
		Face:  c.Face,
		At:    c.From,
		Sizes: map[string]float64{"depth": c.Depth, "to": c.To},
	}
}
