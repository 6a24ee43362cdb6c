package sheets

import (
	"fmt"
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// The keys of what waits on members with braces.
const (
	holdBrace     = "brace"
	holdBraceBolt = "bolt of a brace"
)

// braceWork is what the housing of a brace is called in the marking list.
const braceWork = "brace"

// braceHousingWork is the housing of a brace: both ends of its mouth.
func (s *timber) braceHousingWork(h frame.BraceHousing) work {
	return work{
		pass: jointPass, name: braceWork, face: h.Face, hold: holdBrace,
		stops: []stop{{firstEdge, h.At - h.Width/2}, {secondEdge, h.At + h.Width/2}},
		how:   fmt.Sprintf("%s deep, leans %s to %s", s.fine.Length(h.Depth), s.fine.Angle(math.Abs(h.Lean)), s.leansTo(h)),
		spot:  s.OnFace(h.Face, h.At-h.Width/2, h.From),
	}
}

// braceFact says how wide the housings of braces are, and to which side they are
// open; empty: there are none.
func (s *timber) braceFact() string {
	for _, f := range s.Features {
		if h, ok := f.(frame.BraceHousing); ok {
			return fmt.Sprintf("%s from %s", s.fine.Length(h.To-h.From), s.openSide(h))
		}
	}
	return ""
}

// openSide is the face to which the housing of a brace is open at its side.
func (s *timber) openSide(h frame.BraceHousing) frame.Face {
	return s.towards(s.OnFace(h.Face, 0, 0).Sub(s.OnFace(h.Face, 0, 1)))
}

// leansTo is the end of the member to which the ends of a housing run, going in.
func (s *timber) leansTo(h frame.BraceHousing) string {
	if h.Lean < 0 {
		return s.endName(frame.FaceStart)
	}
	return s.endName(frame.FaceEnd)
}

// braceWaste hatches the housings of braces on the faces to which they open.
func (s *timber) braceWaste(p *page, v *draw.View, face frame.Face, h frame.BraceHousing) {
	lo, hi := h.At-h.Width/2, h.At+h.Width/2
	switch face {
	case h.Face:
		waste(p, v, s.OnFace(face, lo, h.From), s.OnFace(face, hi, h.From), s.OnFace(face, hi, h.To), s.OnFace(face, lo, h.To))
	case s.openSide(h):
		plane, _ := s.FacePlane(h.Face)
		in := plane.N.Mul(-h.Depth)
		run := geom.V(h.Depth*math.Tan(h.Lean), 0, 0)
		a, b := s.OnFace(h.Face, lo, h.From), s.OnFace(h.Face, hi, h.From)
		waste(p, v, a, b, b.Add(in).Add(run), a.Add(in).Add(run))
	}
}

// braceHoldWords say what waits for the braces.
func (s *timber) braceHoldWords(key string) string {
	if key == holdBraceBolt {
		return "Hold the holes for the braces' bolts until each brace is clamped in its place: drill on through its own hole."
	}
	if s.Kind == frame.KindPost {
		return "Hold the housings of the braces until the post's top is marked: they are measured down from there. Lay each brace in its place and knife round it."
	}
	return "Hold the housings of the braces until the posts stand: they are measured from the posts' sides. Lay each brace in its place and knife round it."
}

// ofBrace reports whether a bolt through a hole goes through a brace, too.
func (s *timber) ofBrace(h frame.Hole) bool {
	plane, _ := s.FacePlane(h.Face)
	axis, at := s.where.Dir(plane.N), s.where.Point(h.Mouth)
	return slices.ContainsFunc(s.frame.Of(frame.KindBrace), func(b frame.Member) bool {
		return slices.ContainsFunc(b.Features, func(f frame.Feature) bool {
			o, ok := f.(frame.Hole)
			off := b.Place.Point(o.Mouth).Sub(at)
			return ok && o.Use == frame.UseBolt && off.Sub(axis.Mul(off.Dot(axis))).Len() < onTear
		})
	})
}
