package sheets

import (
	"fmt"
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// strapsOn are the straps that lie on the member, where they lie along it.
func (s *timber) strapsOn() []frame.Spot {
	var out []frame.Spot
	for _, h := range s.frame.Hardware() {
		for _, spot := range h.Spots {
			if h.Kind == frame.StrapTie && spot.Member == s.index {
				out = append(out, spot)
			}
		}
	}
	return out
}

// strapWorks are the places of the straps on a rafter. On a plate or a beam
// they lie on the centre lines of the housings, which are marked already.
func (s *timber) strapWorks() []work {
	if s.Kind != frame.KindRafter {
		return nil
	}
	var out []work
	for _, spot := range s.straps {
		how := s.fine.Length(s.job.Rafters.Strap.Width) + " wide, on the centre"
		if s.bentOver(spot) {
			how = "bent over the top edge"
		}
		w := work{
			pass: fixingPass, name: "strap", face: spot.Face,
			stops: []stop{{firstEdge, spot.At - spot.Span/2}, {secondEdge, spot.At + spot.Span/2}},
			how:   how,
			spot:  s.OnFace(spot.Face, spot.At, s.across(spot.Face)/2),
		}
		if spot.At > s.Length/2 {
			w.hold = s.endHold(frame.FaceEnd)
		}
		out = append(out, w)
	}
	return out
}

// strapFact says which straps lie on the member; empty for none. A strap lies
// on the rafter with half its length and half its nails. Its size is on the
// rafter's drawing.
func (s *timber) strapFact() string {
	t := s.job.Rafters.Strap
	switch {
	case len(s.straps) == 0:
		return ""
	case s.Kind != frame.KindRafter:
		return "at each rafter, " + count(t.Nails/2, "nail")
	}
	where, over := "over each end", 0
	for _, spot := range s.straps {
		if s.bentOver(spot) {
			over++
		}
	}
	switch over {
	case 0:
	case len(s.straps):
		where = "bent over the top edge"
	default:
		where = "over one end, and bent over the top edge"
	}
	return fmt.Sprintf("%s, %s long, %s, %s here",
		s.maker.strapSection(), s.fine.Length(t.Length), where, count((t.Nails+1)/2, "nail"))
}

// bentOver reports whether a strap crosses the rafter, which lies over what it is
// tied to, rather than running along its end.
func (s *timber) bentOver(spot frame.Spot) bool {
	const sameSpot = 1e-3 // mm: rounding of one place that is worked out twice
	for _, j := range s.frame.Joints {
		if j.A == s.index && j.Hold == frame.Over && math.Abs(s.where.Local(j.At).X-spot.At) < sameSpot {
			return true
		}
	}
	return false
}

// paintStraps draws the straps of a rafter on its top edge, as its side shows
// them. They are thinner than a line, so they are drawn as thick as reads.
func (s *timber) paintStraps(p *page, v *draw.View, face frame.Face, shown stretches) {
	const thick = 0.8 // mm on paper
	if plane, _ := s.FacePlane(face); s.Kind != frame.KindRafter || plane.N.Y == 0 {
		return
	}
	for _, spot := range s.straps {
		if !shown.shows(spot.At) {
			continue
		}
		a := v.Pt(s.OnFace(face, spot.At-spot.Span/2, s.Section.Depth))
		b := v.Pt(s.OnFace(face, spot.At+spot.Span/2, s.Section.Depth))
		up := geom.P(0, thick)
		st := draw.Style{Layer: draw.Outline, Pen: draw.Narrow}
		p.sheet.Line(st, a, a.Add(up))
		p.sheet.Line(st, a.Add(up), b.Add(up))
		p.sheet.Line(st, b.Add(up), b)
	}
}

// weight is about what the finished member weighs, and of what density that is.
func (s *timber) weight() string {
	const cubicMetre, pound, perCubicFoot = 1e9, 0.45359237, 35.3146667
	density := s.Timber.Density
	kg := s.solid.Volume() / cubicMetre * density
	words := fmt.Sprintf("about %s kg at %.0f kg/m³", roughly(kg), density)
	if s.job.Units == frame.FeetInches {
		words = fmt.Sprintf("about %s lb at %.0f lb/ft³", roughly(kg/pound), density/pound/perCubicFoot)
	}
	if !s.Timber.DensityGiven {
		words += ", assumed"
	}
	return words
}

// roughly is a number to two figures, as far as it is small.
func roughly(x float64) string {
	if x < 10 {
		return fmt.Sprintf("%.1f", x)
	}
	return fmt.Sprintf("%.0f", math.Round(x))
}
