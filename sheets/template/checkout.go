package template

import (
	"fmt"
	"slices"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// checkOutPlan shows a check-out of a post in profile on the left side, with what
// is cut and drilled on the side that it is checked out from. The cross is at the
// seat, on the arris between the two.
func (m *maker) checkOutPlan(w work, c frame.CheckOut) plan {
	t := w.member
	faces := t.Faces()
	left, outer, house := faces[0], faces[2], faces[3]
	box := whole(t, max(0, w.a-beside), min(t.Length, w.b+beside))
	near := whole(t, max(0, w.a-lip/2), min(t.Length, w.b+lip/2)) // less plain timber, where that spares a tile
	least := whole(t, max(0, w.a-lip/4), min(t.Length, w.b+lip/4))
	p := plan{
		title: "Check-out of the " + plural(t.Kind),
		options: [][]part{
			{{left, base, box}, {outer, 0, box}, {house, 0, box}},
			{{left, base, box}, {outer, 0, box}},
			{{left, base, near}, {outer, 0, near}},
		},
		cross:   geom.V(c.From, 0, 0),
		through: true,
		datum:   "at the seat of the beam, on the arris of the left and the outer side",
	}
	sides, holes := 0, 0
	for _, f := range w.features {
		switch f := f.(type) {
		case frame.CheckOut:
			sides++
			up := "to the top"
			if !f.Open(t) {
				up = m.fine.Length(f.To-f.From) + " high"
			}
			if sides == 1 {
				p.notes = append(p.notes, fmt.Sprintf("Check it out from the %s, %s deep, %s.", m.say().face(t.Kind, f.Face), m.fine.Length(f.Depth), up))
			} else {
				p.notes = append(p.notes, fmt.Sprintf("The same from the %s.", m.say().face(t.Kind, f.Face)))
			}
		case frame.Chamfer:
			p.notes = append(p.notes, fmt.Sprintf("Slope the top %s down to the house side.", m.figures.Angle(f.Angle)))
		case frame.Hole:
			if holes++; holes == 1 {
				p.notes = append(p.notes, m.holeNotes(w)...)
			}
		}
	}
	flat := func(f, other frame.Face) share {
		q := p
		q.title += ", " + m.faceTitle(t.Kind, f)
		beside := part{other, 0, lipOf(box, outward(t, other), lip)}
		q.options = [][]part{{{f, base, box}, beside}, {{f, base, box}}, {{f, base, near}}, {{f, base, least}}}
		q.all = q.options[1]
		q.notes = append(slices.Clone(p.notes), fmt.Sprintf("The %s has a template of its own. Square the lines of both round on to the other sides.", m.faceTitle(t.Kind, other)))
		return share{q, w}
	}
	p.splits = [][]share{{flat(left, outer), flat(outer, left)}}
	p.notes = append(p.notes, "Square the lines round on to the right.")
	return p
}

// slopePlan shows the slope of a post's whole top in profile on the left side. The
// cross is at its low line, on the arris of the left and the house side.
func (m *maker) slopePlan(w work, c frame.Chamfer) plan {
	t := w.member
	left, right, house := t.Faces()[0], t.Faces()[1], t.Faces()[3]
	box := whole(t, max(0, w.a-beside), t.Length)
	return plan{
		title:   "Top of the " + plural(t.Kind),
		options: [][]part{{{left, base, box}, {house, 0, box}, {right, 1, box}}, {{left, base, box}, {house, 0, lipOf(box, geom.V(0, -1, 0), lip)}}},
		cross:   geom.V(w.a, 0, t.Section.Depth),
		through: true,
		notes: append([]string{
			fmt.Sprintf("Slope the whole top %s from the outer side down to the house side. The datum cross is at the low line, on the arris of the left and the house side.", m.figures.Angle(c.Angle)),
		}, m.holeNotes(w)...),
	}
}

// holeNotes say how the holes of a work are drilled, those that are alike once.
func (m *maker) holeNotes(w work) []string {
	var out []string
	seen := map[string]bool{}
	for _, f := range w.features {
		if h, ok := f.(frame.Hole); ok {
			if note := m.holeNote(h, w.member); !seen[note] {
				seen[note] = true
				out = append(out, note)
			}
		}
	}
	return out
}

// patternReach is the greatest distance between bolts of one joint, one beside or
// over the next, mm (own): what is farther off has a template of its own.
const patternReach = 200

// onePattern reports whether two works are bolts of one joint, which share a
// template so that they keep their distance.
func onePattern(a, b work) bool { return a.bolts() && b.bolts() && b.a < a.b+patternReach }

// bolts reports whether a work is bolt holes alone.
func (w work) bolts() bool {
	for _, f := range w.features {
		if h, ok := f.(frame.Hole); !ok || h.Use != frame.UseBolt {
			return false
		}
	}
	return true
}

// outward is the direction that a face of a timber looks in.
func outward(t frame.Member, f frame.Face) geom.Vec {
	p, _ := t.FacePlane(f)
	return p.N
}
