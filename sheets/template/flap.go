package template

import (
	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// same is how far apart two places may be and still be the same, mm. It is that
// of the kernel: far above rounding, far below what anybody states.
const same = 1e-6

// part asks for a face of a timber, or some of it, on a template.
type part struct {
	face frame.Face
	from int       // the part that it is folded over from; base: it is the first
	box  geom.Box3 // what of the face, in the member's axes
}

const base = -1

// flap is a part, unrolled: the map between the face of the timber, in the
// member's axes, and the flat paper. Right and up on the paper are directions
// on the timber, and right × up points out of it: so every face is seen from
// outside and none is mirrored.
type flap struct {
	face         frame.Face
	plane        geom.Plane // of the face, outward
	right, up    geom.Vec
	at           geom.Vec // the point of the face that lies at …
	on           geom.Pt  // … this place of the paper
	area         draw.Rect
	from         int
	fold         [2]geom.Pt // where it is folded; both the same: nowhere
	u0, u1       float64    // along the member, what it covers; equal for an end
	acrossMember bool       // it is an end
}

// paper is where a point of the face lies on the paper.
func (f flap) paper(p geom.Vec) geom.Pt {
	d := p.Sub(f.at)
	return f.on.Add(geom.P(d.Dot(f.right), d.Dot(f.up)))
}

// dir is a direction on the face as it runs on the paper.
func (f flap) dir(d geom.Vec) geom.Pt { return geom.P(d.Dot(f.right), d.Dot(f.up)) }

// unfold unrolls parts of a member about its arrises. The origin, a point of
// the member, lies at the zero of the paper, or beside it.
func unfold(m frame.Member, parts []part, origin geom.Vec) []flap {
	flaps := make([]flap, len(parts))
	for i, p := range parts {
		plane, _ := m.FacePlane(p.face)
		var f flap
		if p.from == base {
			up := upOn(m.Kind, plane.N)
			f = flap{right: up.Cross(plane.N), up: up, at: origin.Sub(plane.N.Mul(plane.Dist(origin)))}
		} else {
			f = flaps[p.from].folded(plane)
		}
		f.face, f.plane, f.from = p.face, plane, p.from
		f.acrossMember = plane.N.X != 0
		f.u0, f.u1 = p.box.Min.X, p.box.Max.X
		f.area = draw.Bounds(f.paper(p.box.Min), f.paper(p.box.Max))
		if p.from != base {
			f.fold = f.foldLine(flaps[p.from])
		}
		flaps[i] = f
	}
	return flaps
}

// folded is the flap of a face that meets f's at a right angle, unrolled about
// the arris between them. Beyond the arris the paper goes on as it ran; on the
// timber that way bends from the new face's outward direction to the inward
// direction of the old one.
func (f flap) folded(to geom.Plane) flap {
	bend := func(d geom.Vec) geom.Vec {
		k := d.Dot(to.N)
		return d.Sub(to.N.Mul(k)).Sub(f.plane.N.Mul(k))
	}
	arris := f.at.Sub(to.N.Mul(to.Dist(f.at)))
	return flap{right: bend(f.right), up: bend(f.up), at: arris, on: f.paper(arris)}
}

// foldLine is the part of the arris between f and the flap that it is folded
// over from which both of them reach.
func (f flap) foldLine(from flap) [2]geom.Pt {
	along := f.dir(f.plane.N.Cross(from.plane.N))
	reach := func(area draw.Rect) (lo, hi float64) {
		a, b := geom.P(area.X0, area.Y0).Sub(f.on).Dot(along), geom.P(area.X1, area.Y1).Sub(f.on).Dot(along)
		return min(a, b), max(a, b)
	}
	lo, hi := reach(f.area)
	lo2, hi2 := reach(from.area)
	lo, hi = max(lo, lo2), min(hi, hi2)
	if lo >= hi {
		return [2]geom.Pt{f.on, f.on}
	}
	return [2]geom.Pt{f.on.Add(along.Mul(lo)), f.on.Add(along.Mul(hi))}
}

// upright reports whether a kind of member stands, so that its length runs up
// the paper rather than to the right.
func upright(k frame.Kind) bool { return k.Stands() }

// upOn is the direction on a face that runs up the paper: up for what lies,
// towards the house on its top; along for what stands, and on its end again
// towards the house.
func upOn(k frame.Kind, n geom.Vec) geom.Vec {
	along, house, up := geom.V(1, 0, 0), geom.V(0, 1, 0), geom.V(0, 0, 1)
	if upright(k) {
		if n.X != 0 {
			return up // W runs to the house
		}
		return along
	}
	switch {
	case n.Z > 0:
		return house
	case n.Z < 0:
		return house.Neg()
	}
	return up
}

// sides are the four sides of a flap, each from left to right or from bottom
// to top.
func sides(r draw.Rect) [4][2]geom.Pt {
	c := r.Corners()
	return [4][2]geom.Pt{{c[0], c[1]}, {c[1], c[2]}, {c[3], c[2]}, {c[0], c[3]}}
}
