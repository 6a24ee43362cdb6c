package frame

import (
	"math"

	"plumbcut/geom"
)

// housingFloors returns the housings that plate and beam get for a rafter, but
// for their place along. A floor that follows the fall lies along the rafter's
// underside. A level floor stands at the height that the underside has at the
// house-side end of its housing, the highest within it, so that the level seat
// cut under the rafter bears over the whole depth of the housing.
func housingFloors(j *Job, s Setout) (plate, beam Housing) {
	under := func(y float64) float64 { return s.RafterTop(y) - s.plumb(j.Rafters.Section.Depth) }
	wide := j.Rafters.Section.Width + j.Rafters.Clearance
	angle := math.Atan(s.tan)
	plate = Housing{
		Face: FaceOuter, Width: wide, Depth: j.Plate.Housing, Slope: angle,
		Floor: under(s.PlateOuter) - (j.Plate.Top - j.Plate.Section.Depth),
	}
	beamBottom := s.RafterTop(s.BeamInner) + j.Beam.Drop - j.Beam.Section.Depth
	beam = Housing{
		Face: FaceHouse, Width: wide, Depth: j.Beam.Housing, Slope: -angle,
		Floor: under(s.BeamInner) - beamBottom,
	}
	if j.Rafters.Seat == SeatLevel {
		plate.Floor, plate.Slope = plate.FloorInside(), 0
		beam.Slope = 0
	}
	return plate, beam
}

// rafterLine is the length of a rafter's top edge, from plumb cut to plumb cut.
func rafterLine(j *Job, s Setout) float64 {
	return (s.PlateOuter - s.BeamInner + j.Plate.Housing + j.Beam.Housing) / s.cos
}

// house lets an end of rafter r into the timber t, which gets the housing h at
// the rafter's centre line: end cut and seat go to the one, the housing to the
// other.
func (b *builder) house(kind JointKind, end Face, h Housing, r, t int) {
	s := b.set
	rafter, timber := &b.members[r], &b.members[t]
	centre := rafter.Place.O.X + rafter.Section.Width/2
	h.At = centre - timber.Place.O.X

	angle := b.slope.Angle
	level := b.job.Rafters.Seat == SeatLevel
	down := rafter.Section.Depth * s.tan // a plumb cut's run along the stick
	line := rafterLine(b.job, s)
	cut := EndCut{End: end, Cut: CutPlumb, Slope: angle}
	seat := SeatCut{End: end, At: h.Depth/s.cos + down, Run: h.Depth, Angle: angle}
	if end == FaceEnd {
		cut.At = line
		seat.At = line - h.Depth/s.cos + down
	}
	if angle > 0 {
		rafter.Features = append(rafter.Features, cut)
		if level {
			rafter.Features = append(rafter.Features, seat)
		}
	}
	timber.Features = append(timber.Features, h)

	mouth := timber.Place.Point(timber.OnFace(h.Face, h.At, h.Floor))
	bearing, along := geom.PlaneAt(mouth, geom.V(0, -s.sin, s.cos)), h.Depth/s.cos
	if level {
		bearing, along = geom.PlaneAt(mouth, geom.V(0, 0, 1)), h.Depth
	}
	x0, x1 := timber.Place.O.X, timber.Place.O.X+timber.Length
	half := rafter.Section.Width / 2
	b.joints = append(b.joints, Joint{
		Kind: kind, A: r, B: t,
		At:        mouth.Add(geom.V(0, 0, s.plumb(rafter.Section.Depth)/2)),
		Bearing:   bearing,
		Area:      along * (min(centre+half, x1) - max(centre-half, x0)),
		Clearance: b.job.Rafters.Clearance,
	})
}
