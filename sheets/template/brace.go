package template

import (
	"fmt"
	"math"
	"slices"

	"plumbcut/geom/frame"
)

// bracePlan shows the housing of a brace on the face to which it is open at the
// side, folded over on to the face that it is let into.
func (m *maker) bracePlan(w work, h frame.BraceHousing) plan {
	t := w.member
	side := openSide(t, h)
	over, _ := t.FacePlane(side)
	into, _ := t.FacePlane(h.Face)
	option := func(along, across float64) []part { // of plain timber beside the housing
		box := whole(t, max(0, w.a-along), min(t.Length, w.b+along))
		return []part{
			{side, base, lipOf(box, into.N, h.Depth+lip)},
			{h.Face, 0, lipOf(box, over.N, h.To-h.From+across)},
		}
	}
	return plan{
		title:   fmt.Sprintf("Brace housing in the %s, %s", plural(t.Kind), m.bracePlace(t, h)),
		options: [][]part{option(beside, math.Inf(1)), option(beside, lip), option(lip, lip/2)},
		cross:   t.OnFace(h.Face, h.At, h.From),
		datum:   "in the middle of the housing's mouth",
		through: true,
		notes: []string{
			fmt.Sprintf("Cut %s deep and %s from the %s. Both ends lean %s off square going in, with the brace: the lines on that side show it.",
				m.fine.Length(h.Depth), m.fine.Length(h.To-h.From), m.say().face(t.Kind, side), m.figures.Angle(math.Abs(h.Lean))),
			"Lay the brace itself in its place before cutting: its lines govern.",
		},
	}
}

// bracePlace tells the housings of a kind of timber apart: by the side of a post,
// and by the end that the brace rises to under a beam.
func (m *maker) bracePlace(t frame.Member, h frame.BraceHousing) string {
	if upright(t.Kind) {
		return m.faceTitle(t.Kind, h.Face)
	}
	return "brace rising to its " + m.say().end(t.Kind, h.Lean < 0)
}

// openSide is the face to which the housing of a brace is open at its side.
func openSide(t frame.Member, h frame.BraceHousing) frame.Face {
	n := t.OnFace(h.Face, 0, 0).Sub(t.OnFace(h.Face, 0, 1))
	faces := t.Faces()
	i := slices.IndexFunc(faces[:], func(f frame.Face) bool {
		p, _ := t.FacePlane(f)
		return p.N.Dot(n) > 0
	})
	return faces[max(i, 0)]
}
