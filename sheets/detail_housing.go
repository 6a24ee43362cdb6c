package sheets

import (
	"math"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func rafterPlateDetail() detailSpec {
	return detailSpec{
		kind: frame.JointRafterPlate, same: housingKey, title: housingTitle,
		ring: 150, on: []string{onSection}, other: []string{onPlan},
	}
}

func rafterBeamDetail() detailSpec {
	return detailSpec{
		kind: frame.JointRafterBeam, same: housingKey, title: housingTitle,
		ring: 150, on: []string{onSection}, other: []string{onPlan},
	}
}

// housingKey tells apart the housings that run out at an end of the timber. A
// housing and its mirror image count as alike.
func housingKey(m *maker, j frame.Joint) string {
	left, right := m.beside(j)
	return sizeKey(min(left, right, openEnd), min(max(left, right), openEnd))
}

// openEnd is the width of timber beside a housing, mm, from which its end is
// as far away as any: it is then not shown.
const openEnd = 60

// beside is how much of the timber that holds a rafter is left at either side
// of the housing; 0 where the housing runs out at the end.
func (m *maker) beside(j frame.Joint) (left, right float64) {
	r, t := m.frame.Members[j.A], m.frame.Members[j.B]
	middle := r.Place.O.X + r.Section.Width/2
	half := (r.Section.Width + j.Clearance) / 2
	from, to := t.Place.O.X, t.Place.O.X+t.Length
	return max(0, middle-half-from), max(0, to-middle-half)
}

func housingTitle(m *maker, d detail) string {
	left, right := m.beside(d.joint)
	switch near := math.Min(left, right); {
	case near == 0:
		return string(d.kind) + ", at its end"
	case near < openEnd:
		return string(d.kind) + ", near its end"
	}
	return string(d.kind)
}

// rafterOf is the rafter of a joint and the middle of its width.
func (m *maker) rafterOf(j frame.Joint) (frame.Member, geom.Vec) {
	r := m.frame.Members[j.A]
	return r, geom.V(r.Place.O.X+r.Section.Width/2, j.At.Y, j.At.Z)
}
