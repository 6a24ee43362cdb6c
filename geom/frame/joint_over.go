package frame

import (
	"math"

	"plumbcut/geom"
)

const (
	// seatLeast is the least level bearing of a rafter on what it lies over, or
	// the whole width of a narrower timber. From memory, as the residential
	// codes have it for rafters on wood: 1½ in.
	seatLeast = 38

	// notchMost and notchDoubt are shares of a rafter's depth: a birdsmouth that
	// takes more is refused, or warned of. Own limits, not a code's.
	notchMost  = 1.0 / 2
	notchDoubt = 1.0 / 3

	// washerWide is the width kept clear for a rod's washer and nut, in
	// diameters of the rod. Common practice, no source.
	washerWide = 3
)

// overWay lays the rafters over their carrier. Nothing is cut into that; the
// rafter gets a birdsmouth and, beyond the last carrier, its tail.
type overWay struct{}

func (overWay) above(_ *Job, s Setout, k Carrier) float64 {
	if k.End == FaceStart {
		return -s.Heel
	}
	return -s.Heel - k.Wide()*s.tan // the heel is at the far face
}

func (overWay) reach(j *Job, _ Setout, k Carrier) float64 {
	if k.End == FaceStart {
		return k.Inner + j.Rafters.Head
	}
	return k.Outer - j.Rafters.Tail.Overhang
}

func (overWay) fouls() bool { return false }

// birdsmouth is the rafters' notch over a carrier. At a wall it goes on to
// the rafter's end, so that nothing hangs down behind the plate, where its
// packers are.
func (k Carrier) birdsmouth(s Setout) Birdsmouth {
	n := Birdsmouth{At: (s.RafterStart - k.Outer) / s.cos, Heel: s.Heel, Over: k.Wide(), Angle: math.Atan(s.tan)}
	if k.OnWall {
		n.Over = s.RafterStart - k.Outer
	}
	return n
}

// seat is the level length over which a rafter bears on a carrier.
func (k Carrier) seat(n Birdsmouth, depth float64) float64 {
	return min(n.Seat(depth), k.Wide())
}

func (overWay) check(c *checker, k Carrier) {
	j, s := c.job, c.set
	depth := j.Rafters.Section.Depth
	n := k.birdsmouth(s)
	least := k.seatLeast()
	if k.plies() > 1 && least*s.tan > notchMost*s.plumb(depth)+slack {
		c.errorf(RuleSeat, "fall", "with this fall no birdsmouth bears on both of the twin beams without taking more than half of the rafter; use less fall or deeper rafters, or let the inner beam hold them: %s.rafters housed or between", k.Key)
		return
	}
	deep := n.Deep(depth)
	path := "rafters.heel"
	if !j.Given(path) {
		path = "rafters.section"
	}
	switch seat := k.seat(n, depth); {
	case deep < -slack || seat < least-slack:
		c.errorf(RuleSeat, path, "with a heel height of %s the rafters bear on only %s of the %s; make the heel height at most %s",
			c.mm(s.Heel), c.mm(seat), k.Short, c.mm(s.plumb(depth)-least*s.tan))
	case deep > notchMost*s.plumb(depth)+slack:
		c.errorf(RuleNotch, path, "the birdsmouth over the %s takes %s of the rafter's plumb depth of %s; make the heel height at least %s",
			k.Short, c.mm(deep), c.mm(s.plumb(depth)), c.mm((1-notchMost)*s.plumb(depth)))
	case deep > notchDoubt*s.plumb(depth)+slack:
		c.warnf(RuleNotch, path, "the birdsmouth over the %s takes %s, more than a third of the rafter's plumb depth of %s", k.Short, c.figure(deep), c.figure(s.plumb(depth)))
	}
	c.checkRodsUnder(k)
	switch {
	case k.End != FaceStart:
		c.checkTail()
	case k.OnWall:
		c.checkUpperEnd(k)
	case j.Rafters.Head > (s.Rear().Outer-s.Front().Inner)*tailDoubt:
		c.warnf(RuleHead, "rafters.head", "the rafters run %s past the rear beam, more than a third of the clear span of %s", c.figure(j.Rafters.Head), c.figure(s.Rear().Outer-s.Front().Inner))
	}
}

// checkUpperEnd checks the rafters' upper ends against the house.
func (c *checker) checkUpperEnd(k Carrier) {
	j, s := c.job, c.set
	if s.RafterStart > slack {
		c.errorf(RuleHead, "rafters.head", "the rafters' upper ends would stand %s in the cladding; make head at most %s", c.mm(s.RafterStart), c.mm(-k.Inner))
		return
	}
	if top := s.RafterTop(s.RafterStart); j.Wall.hasSoffit() && top > j.Wall.Soffit+slack && -s.RafterStart < j.Wall.SoffitOut {
		c.errorf(RuleSoffit, "plate", "the rafters stand %s into the soffit; lower the plate", c.mm(top-j.Wall.Soffit))
	}
}

// checkRodsUnder checks that no rafter lies on the nut of a post's rod.
func (c *checker) checkRodsUnder(k Carrier) {
	j := c.job
	rod := j.Posts.Rod
	if rod.Diameter == 0 {
		return
	}
	reach := (j.Rafters.Section.Width + washerWide*rod.Diameter) / 2
	for _, i := range k.Posts {
		p := j.Posts.At[i]
		for r, x := range c.set.Rafters {
			if math.Abs(x-p.Along) < reach-slack {
				c.errorf(RuleRod, c.postPath(i), "rafter %d lies over the rod of post %d, where its nut stands; move the post by at least %s, or leave the rod out",
					r+1, i+1, c.mm(reach-math.Abs(x-p.Along)))
			}
		}
	}
}

// join notches a rafter over its carrier and, at an end, cuts it off.
func (overWay) join(b *builder, k Carrier, r, t int) {
	s := b.set
	rafter, timber := &b.members[r], &b.members[t]
	n := k.birdsmouth(s)
	if k.End == FaceStart {
		b.endPlumb(r, k)
	}
	if n.Deep(rafter.Section.Depth) > slack {
		rafter.Features = append(rafter.Features, n)
	}
	if k.End == FaceEnd {
		b.cutTail(r)
	}
	seat := k.seat(n, rafter.Section.Depth)
	for _, ply := range k.Members[1:] {
		outer := geom.V(rafter.Place.O.X+rafter.Section.Width/2, k.Outer, k.Top)
		b.joints = append(b.joints, Joint{
			Kind: JointRafterOverPly, A: r, B: ply, At: outer, Bearing: geom.PlaneAt(outer, geom.V(0, 0, 1)),
			Area: k.Section.Width * k.shares(*rafter, b.members[ply]),
		})
	}
	centre := rafter.Place.O.X + rafter.Section.Width/2
	at := geom.V(centre, k.Outer, k.Top)
	b.joints = append(b.joints, Joint{
		Kind: RafterJoint(k), Hold: Over, A: r, B: t, At: at.Add(geom.V(0, seat/2, s.Heel/2)),
		Bearing: geom.PlaneAt(at, geom.V(0, 0, 1)), Area: (seat - (k.Wide() - k.Section.Width)) * k.shares(*rafter, *timber),
	})
}
