package frame

import "plumbcut/geom"

// fixFascia lays the fascia against the end of a rafter.
func (b *builder) fixFascia(fascia, rafter int) {
	f, r := &b.members[fascia], &b.members[rafter]
	high := b.set.tailHeight(b.job)
	met := min(f.Section.Depth, high)
	at := f.Place.Point(geom.V(0, f.Section.Width, f.Section.Depth-met/2))
	at.X = r.Place.O.X + r.Section.Width/2
	b.joints = append(b.joints, Joint{
		Kind: JointFasciaRafter, A: fascia, B: rafter, At: at,
		Bearing: geom.PlaneAt(at, f.Place.V.Neg()), Area: met * r.Section.Width,
	})
}

// tailHeight is how high the flat end of a rafter's tail is.
func (s Setout) tailHeight(j *Job) float64 {
	depth := j.Rafters.Section.Depth
	switch j.Rafters.Tail.Shape {
	case TailSquare:
		return depth
	case TailBevelled:
		return s.nose(j)
	}
	return s.plumb(depth)
}

// layOutFascia checks that there are rafter ends for a fascia.
func (c *checker) layOutFascia() {
	j, s := c.job, &c.set
	f, k := j.Fascia, s.Front()
	if f.Section.Depth == 0 {
		return
	}
	if k.Hold != Over {
		c.errorf(RuleFascia, "fascia", "the rafters end against the beam, so there is nothing to fix a fascia to; let them lie over it (beam.rafters: over) or take it out")
		return
	}
	switch j.Rafters.Tail.Shape {
	case "", TailPlumb, TailSquare, TailBevelled:
	default:
		c.errorf(RuleFascia, "fascia", "a fascia hides the rafters' %s tails and has nothing flat to lie on; cut the tails plumb, square or bevelled, or leave the fascia out", j.Rafters.Tail.Shape)
		return
	}
	inner := s.fasciaAxes(j).Point(geom.V(0, f.Section.Width, 0)) // its lower arris at the house
	if inner.Y > k.Outer+slack && inner.Z < k.Top-slack {
		c.errorf(RuleFascia, "fascia", "the fascia, square to the rafters, leans into the beam; give the tails a longer overhang, or cut them plumb")
	}
	if b := j.Braces; b.There() && b.Joint == BraceLapped && inner.Y > k.Outer-b.Section.Width+slack && inner.Z < k.Bottom+c.lapOn(k) {
		c.errorf(RuleFascia, "fascia", "the fascia stands where the braces lap the beam's face; let the braces in, or give the tails a longer overhang")
	}
	if v := j.Valance; v.Section.Depth > 0 && v.Set == ValanceFace && inner.Y > k.Outer-v.Section.Width+slack && inner.Z < k.Bottom+v.Section.Depth-v.Below {
		c.errorf(RuleFascia, "fascia", "fascia and valance stand in the same place before the beam; give the tails a longer overhang, or set the valance between the posts")
	}
	for _, r := range j.Wall.Returns {
		from, to := s.Rafters[0]-j.Rafters.Section.Width/2-f.Over, s.Rafters[len(s.Rafters)-1]+j.Rafters.Section.Width/2+f.Over
		if into := map[Side]float64{Left: r.At - from, Right: to - r.At}[r.Side]; into > slack && r.Length > -s.RafterEnd {
			c.errorf(RuleReturnClash, "fascia", "the fascia runs %s into the %s return; shorten its overhang", c.mm(into), r.Side)
		}
	}
	if f.Section.Depth < s.tailHeight(j)-slack {
		c.warnf(RuleFascia, "fascia", "the fascia is %s deep and the rafters' ends are %s high: they show below it", c.figure(f.Section.Depth), c.figure(s.tailHeight(j)))
	}
}
