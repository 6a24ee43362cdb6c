package template

import (
	"fmt"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// checkPlan shows a check on the face that it is cut across and on both sides,
// which show how deep it is.
func (m *maker) checkPlan(w work, c frame.Check) plan {
	t := w.member
	box := whole(t, max(0, w.a-beside), min(t.Length, w.b+beside))
	plane, _ := t.FacePlane(c.Face)
	f := t.Faces()
	side := lipOf(box, plane.N, c.Depth+lip)
	p := plan{
		title:   "Check in the " + plural(t.Kind),
		options: [][]part{{{c.Face, base, box}, {f[0], 0, side}, {f[1], 0, side}}},
		cross:   t.OnFace(c.Face, c.At, t.Section.Width/2),
		through: true,
		along:   []frame.Face{c.Face},
	}
	what, in := "batten", c.Width-m.job.Battens.Check.Clearance
	if t.Kind == frame.KindBatten {
		what = "rafter"
	}
	p.notes = []string{fmt.Sprintf("Cut %s deep. Width %s for a %s of %s: measure the %s and keep the same play.",
		m.fine.Length(c.Depth), m.fine.Length(c.Width), what, m.fine.Length(in), what)}
	for _, s := range []float64{-1, 1} {
		p.bands = append(p.bands, band{
			what: what, face: f[0], at: t.OnFace(f[0], c.At+s*c.Width/2, -plane.Dist(geom.Vec{})-c.Depth*plane.N.Z),
			grow: geom.V(s, 0, 0), run: plane.N.Neg(), size: in, share: 0.5,
		})
	}
	return p
}
