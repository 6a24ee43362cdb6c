package frame

import (
	"math"

	"plumbcut/geom"
)

// theHouse stands for the house as the B of a joint.
const theHouse = -1

// screw bores a timber and its packer, if it has one, for a screw into the
// wall. The screw starts on the timber's given face at a world point; the
// packer's hole goes on along the same axis.
func (b *builder) screw(timber, packer int, face Face, at geom.Vec, diameter float64) {
	t := &b.members[timber]
	use := UseScrew
	if b.job.Wall.Fixing() == Anchor {
		use = UseAnchor
	}
	plane, _ := t.FacePlane(face)
	mouth := t.Place.Local(at)
	mouth = mouth.Sub(plane.N.Mul(plane.Dist(mouth)))
	through := t.Section.Width
	if math.Abs(plane.N.Z) > 0 {
		through = t.Section.Depth
	}
	t.Features = append(t.Features, Hole{Face: face, Mouth: mouth, Diameter: diameter, Depth: through, Through: true, Use: use})
	if packer == theHouse {
		return
	}
	p := &b.members[packer]
	local := p.Place.Local(at)
	local.Z = 0
	p.Features = append(p.Features, Hole{
		Face: FaceOuter, Mouth: local, Diameter: diameter, Depth: p.Section.Depth, Through: true, Use: use,
	})
}

// fixPlate holds the plate to the wall at one screw. packer is the packer
// behind it, or theHouse when the plate lies on the wall itself.
func (b *builder) fixPlate(plate, packer int, f FixingPoint) {
	p := &b.members[plate]
	at := geom.V(f.Along, b.set.Rear().Outer, p.Place.O.Z+f.Up)
	b.screw(plate, packer, FaceOuter, at, b.job.Plate.Fixing.Hole)
	at.Y = b.set.Rear().Inner
	j := Joint{Kind: JointPlateWall, A: plate, B: packer, At: at}
	if packer != theHouse {
		j.Bearing = geom.PlaneAt(at, geom.V(0, -1, 0))
		j.Area = b.members[packer].Section.Width * min(b.members[packer].Length, p.Section.Depth)
	}
	b.joints = append(b.joints, j)
}

// fixPost holds a post to a return at one level.
func (b *builder) fixPost(post, packer int, spec Post, level float64) {
	p := &b.members[post]
	drill, n := FaceRight, geom.V(1, 0, 0) // the free side, and the way to it
	if spec.Wall == Right {
		drill, n = FaceLeft, geom.V(-1, 0, 0)
	}
	middle := p.Place.Point(geom.V(level-p.Place.O.Z, p.Section.Width/2, p.Section.Depth/2))
	b.screw(post, packer, drill, middle, spec.Fixing.Hole)
	at := middle.Sub(n.Mul(p.Section.Width / 2))
	j := Joint{Kind: JointPostWall, A: post, B: packer, At: at}
	if packer != theHouse {
		k := b.members[packer]
		j.Bearing = geom.PlaneAt(at, n)
		j.Area = min(k.Section.Width, p.Section.Depth) * k.Length
	}
	b.joints = append(b.joints, j)
}
