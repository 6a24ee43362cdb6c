package template

import (
	"fmt"
	"math"
	"slices"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// bracesOf are the housings of braces among the features of a work.
func (w work) bracesOf() []frame.BraceHousing {
	var out []frame.BraceHousing
	for _, f := range w.features {
		if h, ok := f.(frame.BraceHousing); ok {
			out = append(out, h)
		}
	}
	return out
}

// bracePlan shows the housings of braces on the face to which they are open at
// the side, folded over on to the faces that they are let into.
func (m *maker) bracePlan(w work, all []frame.BraceHousing) plan {
	t, h := w.member, all[0]
	u0, u1 := max(0, w.a-beside), min(t.Length, w.b+beside)
	side := openSide(t, h)
	box := whole(t, u0, u1)
	plane, _ := t.FacePlane(side)
	narrow := lipOf(box, plane.N, h.To-h.From+lip)
	shallow := box
	if len(all) == 1 { // nothing of the side beyond the housing is needed
		into, _ := t.FacePlane(h.Face)
		shallow = lipOf(box, into.N, h.Depth+lip)
	}
	option := func(over, into geom.Box3) []part {
		parts := []part{{side, base, over}}
		for _, b := range all {
			parts = append(parts, part{b.Face, 0, into})
		}
		return parts
	}
	p := plan{
		title:   "Brace housing in the " + plural(t.Kind),
		options: [][]part{option(box, box), option(box, narrow), option(shallow, narrow)},
		cross:   t.OnFace(h.Face, h.At, h.From),
		through: true,
	}
	if len(all) > 1 {
		p.title = "Brace housings in the " + plural(t.Kind)
	}
	p.notes = []string{
		fmt.Sprintf("Cut %s deep and %s from the %s. Both ends lean %s off square going in, with the brace: the lines on that side show it.",
			m.fine.Length(h.Depth), m.fine.Length(h.To-h.From), side, m.figures.Angle(math.Abs(h.Lean))),
		"The datum cross is in the middle of the housing's mouth. Lay the brace itself in its place before cutting: its lines govern.",
	}
	return p
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
