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
	CutLevel  = "level"

	CutSkew     = "skew"     // square to the width's faces, not to the length
	CutCompound = "compound" // skew and plumb at once
)

// plane returns the cut in the member's axes, outward.
func (c EndCut) plane(m Member) geom.Plane {
	n := geom.V(1, -math.Tan(c.Plan), math.Tan(c.Slope))
	if c.End == FaceStart {
		n = n.Neg()
	}
	return geom.PlaneAt(geom.V(c.At, 0, m.Section.Depth), n)
}

// Meets is how far along the member the cut meets the line at v across the
// width and w through the depth.
func (c EndCut) Meets(m Member, v, w float64) float64 {
	return c.At + v*math.Tan(c.Plan) + (m.Section.Depth-w)*math.Tan(c.Slope)
}

// Saw returns how a saw is set for the cut, radians off square, when a side
// face (V=0 or V=Width) lies on the table: the mitre is the angle across that
// face, the tilt that of the blade. Both are 0 for a square cut.
func (c EndCut) Saw() (mitre, tilt float64) {
	return math.Abs(c.Slope), math.Atan(math.Abs(math.Tan(c.Plan)) * math.Cos(c.Slope))
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
