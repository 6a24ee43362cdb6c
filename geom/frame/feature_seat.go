package frame

import (
	"math"

	"plumbcut/geom"
)

// SeatCut is a level cut under the end of a sloping member, so that it bears
// on a level seat over its whole housed length. Both kinds take away a
// right-angled triangle under the end; its level side, the seat, is Run long.
//
//	  house end: FaceStart             outer end: FaceEnd
//	│╲                                    ╲
//	│ ╲   rafter                  rafter   │
//	│  ╲                               ╲   │
//	└──┐ ╲     seat, then a plumb       ╲──┘  seat: the end's lower corner
//	 At └─     shoulder at At          At ╲   comes off
type SeatCut struct {
	End   Face    // FaceStart or FaceEnd
	At    float64 // along the bottom: of the shoulder's foot, or where the seat begins
	Run   float64 // level length of the seat
	Angle float64 // between the member and the level, radians
}

// Cutters implements Feature.
func (s SeatCut) Cutters(Member) []geom.Convex {
	sin, cos := math.Sincos(s.Angle)
	up, out := geom.V(-sin, 0, cos), geom.V(cos, 0, sin)
	foot := geom.V(s.At, 0, 0)
	if s.End == FaceStart {
		return []geom.Convex{{
			geom.PlaneAt(foot.Add(up.Mul(s.Shoulder())), up),
			geom.PlaneAt(foot, out),
		}}
	}
	return []geom.Convex{{geom.PlaneAt(foot, up), geom.PlaneAt(foot, out.Neg())}}
}

// Shoulder is the plumb height that the cut takes off, at its deep end.
func (s SeatCut) Shoulder() float64 { return s.Run * math.Tan(s.Angle) }

// Bores implements Feature.
func (SeatCut) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (s SeatCut) Mirrored(Member) Feature { return s }

// Figures implements Feature.
func (s SeatCut) Figures() FeatureFigures {
	f := FeatureFigures{
		Kind:   "level seat",
		Face:   FaceBottom,
		At:     s.At,
		Sizes:  map[string]float64{"run": s.Run, "shoulder": s.Shoulder()},
		Angles: map[string]float64{"to member": degrees(s.Angle)},
	}
	if s.End == FaceStart {
		f.Kind = "level seat with shoulder"
	}
	return f
}
