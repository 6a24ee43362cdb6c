package frame

import (
	"math"

	"plumbcut/geom"
)

// EndCut is a plane cut across a member's end. Measured along the member it
// passes through At on the arris V=0, W=Depth (top left of a rafter seen from
// the house) and runs on by tan Plan per millimetre of V and by tan Slope per
// millimetre down from W=Depth:
//
//	u = At + v·tan Plan + (Depth − w)·tan Slope
//
// A member without an EndCut at an end is cut square there.
type EndCut struct {
	End         Face // FaceStart or FaceEnd
	Cut         string
	At          float64
	Plan, Slope float64 // radians
}

// The names of end cuts.
const (
	CutSquare = "square"
	CutPlumb  = "plumb"
)

// plane returns the cut in the member's axes, outward.
func (c EndCut) plane(m Member) geom.Plane {
	n := geom.V(1, -math.Tan(c.Plan), math.Tan(c.Slope))
	if c.End == FaceStart {
		n = n.Neg()
	}
	return geom.PlaneAt(geom.V(c.At, 0, m.Section.Depth), n)
}

// Cutters implements Feature.
func (c EndCut) Cutters(m Member) []geom.Convex {
	return []geom.Convex{{c.plane(m).Flip()}}
}

// Bores implements Feature.
func (EndCut) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (c EndCut) Mirrored(m Member) Feature {
	c.End = m.mirrorFace(c.End)
	c.Plan = -c.Plan
	if m.Kind.mirrorsAlong() {
		c.At, c.Slope = m.Length-c.At, -c.Slope
		return c
	}
	c.At -= m.Section.Width * math.Tan(c.Plan)
	return c
}

// Figures implements Feature.
func (c EndCut) Figures() FeatureFigures {
	return FeatureFigures{
		Kind:   c.Cut + " cut",
		Face:   c.End,
		At:     c.At,
		Angles: map[string]float64{"plan": degrees(c.Plan), "slope": degrees(c.Slope)},
	}
}

func degrees(rad float64) float64 { return rad * 180 / math.Pi }
