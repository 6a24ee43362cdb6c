package frame

import (
	"math"

	"plumbcut/geom"
)

// housedWay lets the ends of the rafters into the face of their carrier.
type housedWay struct{}

func (housedWay) above(_ *Job, _ Setout, k Carrier) float64 { return k.Drop }

func (housedWay) reach(_ *Job, _ Setout, k Carrier) float64 {
	if k.End == FaceStart {
		return k.Outer + k.Housing
	}
	return k.Inner - k.Housing
}

func (housedWay) past(j *Job, s Setout) float64 { return j.Rafters.Section.Depth * s.tan }

func (housedWay) fouls() bool { return true }

// housing returns the housing that a carrier gets for a rafter, but for its
// place along, where the line square to the wall at x meets it. A floor that follows the fall lies along the rafter's
// underside. A level floor stands at the height that the underside has at the
// house-side end of its housing, the highest within it, so that the level seat
// cut under the rafter bears over the whole depth of the housing.
func (k Carrier) housing(j *Job, s Setout, x float64) Housing {
	under := s.RafterTop(k.Cut(x).Face()) - s.plumb(j.Rafters.Section.Depth)
	sin, cos := math.Sincos(k.Turn)
	h := Housing{
		Face: FaceHouse, Width: (j.Rafters.Section.Width + j.Rafters.Clearance) / cos, Depth: k.Housing,
		Slope: -math.Atan(s.tan * cos), Floor: under - k.Bottom, Skew: -k.Turn, Rise: math.Atan(s.tan * sin),
	}
	if k.End == FaceStart {
		h.Face, h.Slope = FaceOuter, -h.Slope
	}
	if j.Rafters.Seat == SeatLevel {
		if k.End == FaceStart {
			h.Floor = h.FloorInside()
		}
		h.Slope = 0
	}
	return h
}

func (housedWay) check(c *checker, k Carrier) {
	c.housingDepth(k.Key+".housing", k.Housing, k.Section.Width)
	left := min(k.housing(c.job, c.set, c.set.From).Lowest(), k.housing(c.job, c.set, c.set.To).Lowest())
	c.belowSeat(k, "the rafters' housings", left)
}

// rafterLine is the length of a rafter's top edge, from end to end.
func rafterLine(s Setout) float64 { return (s.RafterStart - s.RafterEnd) / s.cos }

// join lets an end of a rafter into its carrier, which gets the housing at the
// rafter's centre line: end cut and seat go to the one, the housing to the
// other.
func (housedWay) join(b *builder, k Carrier, r, t int) {
	rafter, timber := &b.members[r], &b.members[t]
	centre := rafter.Place.O.X + rafter.Section.Width/2
	s, end := b.set.Cut(centre), k.End
	h := k.housing(b.job, b.set, centre)
	h.At = k.onMember(*timber, centre)

	angle := b.slope.Angle
	level := b.job.Rafters.Seat == SeatLevel
	down := rafter.Section.Depth * s.tan // a plumb cut's run along the stick
	line := rafterLine(s)
	seat := SeatCut{End: end, At: h.Depth/s.cos + down, Run: h.Depth, Angle: angle}
	if end == FaceEnd {
		seat.At = line - h.Depth/s.cos + down
	}
	b.endPlumb(r, k)
	if angle > 0 && level {
		rafter.Features = append(rafter.Features, seat)
	}
	timber.Features = append(timber.Features, h)

	mouth := timber.Place.Point(timber.OnFace(h.Face, h.At, h.Floor))
	bearing, along := geom.PlaneAt(mouth, geom.V(0, -s.sin, s.cos)), h.Depth/math.Cos(k.Turn)/s.cos
	if level {
		bearing, along = geom.PlaneAt(mouth, geom.V(0, 0, 1)), h.Depth
	}
	b.joints = append(b.joints, Joint{
		Kind: RafterJoint(k), Hold: Housed, A: r, B: t,
		At:        mouth.Add(geom.V(0, 0, s.plumb(rafter.Section.Depth)/2)),
		Bearing:   bearing,
		Area:      along * k.shares(*rafter, *timber),
		Clearance: b.job.Rafters.Clearance,
	})
}

// shares is how much of a rafter's width lies within the ends of a carrier's timber.
func (k Carrier) shares(rafter, timber Member) float64 {
	x0, x1 := timber.Place.O.X, timber.Place.O.X+timber.Length
	if k.Skewed() {
		x0, x1 = k.Reach()
	}
	r0, r1 := rafter.Place.O.X, rafter.Place.O.X+rafter.Section.Width
	return min(r1, x1) - max(r0, x0)
}

// onMember is how far along a carrier's timber the line square to the wall at x
// meets the face that the rafters come to.
func (k Carrier) onMember(timber Member, x float64) float64 {
	if !k.Skewed() {
		return x - timber.Place.O.X
	}
	return timber.Place.Local(geom.V(x, k.Cut(x).Face(), 0)).X
}

// endPlumb cuts a rafter's end along the face of its carrier: plumb where there is
// a fall, skew where that is not parallel with the wall, compound where both.
func (b *builder) endPlumb(r int, k Carrier) {
	rafter := &b.members[r]
	cut := EndCut{End: k.End, Cut: CutPlumb, Slope: b.slope.Angle, Plan: k.plan(b.set)}
	switch {
	case cut.Slope <= 0 && cut.Plan == 0:
		return
	case cut.Slope <= 0:
		cut.Cut = CutSkew
	case cut.Plan != 0:
		cut.Cut = CutCompound
	}
	if k.End == FaceEnd {
		cut.At = rafterLine(b.set.Cut(rafter.Place.O.X))
	}
	rafter.Features = append(rafter.Features, cut)
}
