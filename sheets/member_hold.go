package sheets

import (
	"fmt"

	"plumbcut/geom/frame"
)

// The keys of what waits for the site.
const (
	holdHousing = "housing"
	holdScrew   = "screw"
	holdFront   = "front"
	holdPostTop = "post top"
	holdRod     = "rod"
	holdBolt    = "bolt"
	holdPacker  = "packer"
	holdBatten  = "batten"
	holdGap     = "gap"
	holdChecks  = "check"
)

// hold is a cut that waits for a measurement on site.
type hold struct {
	key, words string
}

// holdsOf lists what waits on a member, in the order of its work.
func (s *timber) holdsOf(ws []work) []hold {
	var out []hold
	seen := map[string]bool{}
	add := func(key string) {
		if key != "" && !seen[key] {
			seen[key] = true
			out = append(out, hold{key, s.holdWords(key)})
		}
	}
	for _, w := range ws {
		add(w.hold)
	}
	if s.Kind == frame.KindPacker {
		add(holdPacker)
	}
	if s.Kind == frame.KindBatten || s.Kind == frame.KindLath {
		add(holdBatten)
	}
	return out
}

// endHold is what the cut of an end waits for.
func (s *timber) endHold(end frame.Face) string {
	switch {
	case s.Kind == frame.KindRafter && end == frame.FaceEnd:
		return holdFront
	case s.Kind == frame.KindPost && end == frame.FaceEnd:
		return holdPostTop
	case s.fitsBetween() && end == frame.FaceEnd:
		return holdGap
	}
	return ""
}

// holeHold is what a hole waits for.
func (s *timber) holeHold(h frame.Hole) string {
	switch {
	case h.ToWall() && s.Kind == frame.KindPlate:
		return holdScrew
	case h.Use == frame.UseRod:
		return holdRod
	case h.Use == frame.UseBolt && s.Kind == frame.KindBrace:
		return ""
	case h.Use == frame.UseBolt && s.ofBrace(h):
		return holdBraceBolt
	case h.Use == frame.UseBolt:
		return holdBolt
	}
	return ""
}

// holdWords say what waits and which measurement releases it.
func (s *timber) holdWords(key string) string {
	switch key {
	case holdHousing:
		return fmt.Sprintf("Mark the centre lines. Hold the edges of the housings until the rafters are delivered: make each housing %s wider than its own rafter.", s.fineLength(s.job.Rafters.Clearance))
	case holdScrew:
		x := s.job.Plate.Fixing
		words := s.walling().hold
		if x.FromRafter > 0 {
			words += fmt.Sprintf(", %s or more from a rafter", s.fine.Length(x.FromRafter))
		} else {
			words += ", clear of the rafters"
		}
		if x.Spacing > 0 {
			words += fmt.Sprintf(", %s at most apart", s.fine.Length(x.Spacing))
		}
		return words + "."
	case holdFront:
		edge := "the top edge"
		if s.front().Skewed() {
			edge = "its top left arris"
		}
		return fmt.Sprintf("Cut the %s. Hold the %s until %s and %s are fixed: measure along %s from %s to %s, at every rafter. Expected: %s.",
			s.endName(frame.FaceStart), s.endName(frame.FaceEnd), s.rear().Short, s.front().Short, edge,
			s.whereEnds(s.rear()), s.whereEnds(s.front()), s.fine.Length(s.topEdge()))
	case holdPostTop:
		return s.meeting(s.frame.Setout.Under(s.No - 1)).top(s)
	case holdRod:
		if s.Kind == frame.KindPost {
			return "Hold the rod hole until the beam lies in its place: drill down through its hole."
		}
		return "Hold the rod holes until the posts stand: measure their centres from the left end of the beam."
	case holdBolt:
		return "Hold the bolt holes until beam and posts stand clamped together in their places: drill square through both at once, from the marks on one of them."
	case holdGap:
		return "Hold the length until what it stands between is fixed: measure the gap at top and bottom, at every place."
	case holdBrace, holdBraceBolt:
		return s.braceHoldWords(key)
	case holdPacker:
		return "Hold the thickness until the wall is measured: how far it bows at every " + s.fixer() + ". Rip each packer to suit, so that the timber is straight."
	case holdChecks:
		what := "battens"
		if s.Kind == frame.KindBatten {
			what = "rafters"
		}
		return fmt.Sprintf("Mark the centre lines. Hold the edges of the checks until the %s are delivered: make each check %s wider than what lies in it, in all.", what, s.fineLength(s.job.Battens.Check.Clearance))
	case holdBatten:
		return "Hold the last two " + string(s.Kind) + "s until the others are fixed: measure the room that is left and share it out."
	}
	return ""
}

// fineLength writes a length that half a millimetre is too coarse for.
func (s *timber) fineLength(mm float64) string { return s.maker.fine(mm) }

// topEdge is the length of the top edge, from cut to cut.
func (s *timber) topEdge() float64 {
	d := s.Section.Depth
	return s.EndCut(frame.FaceEnd).Meets(s.Member, 0, d) - s.EndCut(frame.FaceStart).Meets(s.Member, 0, d)
}

// topLevel is the level of the top of an upright member.
func (s *timber) topLevel() float64 { return s.where.Point(s.OnFace(frame.FaceEnd, 0, 0)).Z }
