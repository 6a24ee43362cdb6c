package frame

import "plumbcut/geom"

func openingName(o Opening) string {
	if o.Name != "" {
		return o.Kind + " “" + o.Name + "”"
	}
	return o.Kind
}

// checkHouse checks the frame against the house that it leans on.
func (c *checker) checkHouse() {
	j := c.job
	p, w := j.Plate, j.Wall
	bottom := p.Top - p.Section.Depth
	if w.To > w.From && (p.From < w.From-slack || p.To > w.To+slack) {
		c.errorf(RulePlateWall, "plate", "the plate runs from %s to %s, beyond the wall, which runs from %s to %s; shorten it or state the wall's extent",
			c.mm(p.From), c.mm(p.To), c.mm(w.From), c.mm(w.To))
	}
	for _, o := range w.Openings {
		if p.To > o.From+slack && p.From < o.To-slack && p.Top > o.Sill+slack && bottom < o.Head-slack {
			c.errorf(RuleOpening, "plate", "the plate crosses the %s, whose head is at %s; put its underside at or above that, or end it clear of the opening",
				openingName(o), c.mm(o.Head))
		}
	}
	c.checkSoffit()
	for _, r := range w.Returns {
		c.checkReturn(r)
	}
}

// hasSoffit reports whether the job states a soffit.
func (w Wall) hasSoffit() bool { return w.SoffitOut > 0 }

func (c *checker) checkSoffit() {
	j, s := c.job, c.set
	if !j.Wall.hasSoffit() {
		return
	}
	if j.Plate.Top > j.Wall.Soffit+slack {
		c.errorf(RuleSoffit, "plate", "the top of the plate is at %s, above the soffit at %s; lower the plate", c.mm(j.Plate.Top), c.mm(j.Wall.Soffit))
		return
	}
	if len(s.Battens) == 0 {
		return
	}
	// The highest point of the first batten: its top arris on the house side.
	a := s.onSlope()
	top := a.Point(geom.V(s.Battens[0], 0, j.Battens.Section.Depth))
	if top.Z > j.Wall.Soffit+slack && -top.Y < j.Wall.SoffitOut {
		c.errorf(RuleSoffit, "battens", "the first batten stands %s above the soffit; lower the plate or begin the battens farther out", c.mm(top.Z-j.Wall.Soffit))
	}
}

// checkReturn checks that plate, beam and battens stay clear of a wall that
// comes out beside them.
func (c *checker) checkReturn(r Return) {
	j, s := c.job, c.set
	into := func(from, to float64) float64 { // how far a timber runs into it
		if r.Side == Right {
			return to - r.At
		}
		return r.At - from
	}
	if d := into(j.Plate.From, j.Plate.To); d > slack {
		c.errorf(RuleReturnClash, "plate", "the plate runs %s into the %s return; end it at %s", c.mm(d), r.Side, c.mm(r.At))
	}
	if d := into(s.Front().Reach()); d > slack && r.Length > -s.Front().Cut(r.At).Inner+slack {
		c.errorf(RuleReturnClash, "beam", "the beam runs %s into the %s return; end it at %s", c.mm(d), r.Side, c.mm(r.At))
	}
	if n := len(s.Rafters); n > 0 {
		half := j.Rafters.Section.Width / 2
		if d := into(s.Rafters[0]-half, s.Rafters[n-1]+half); d > slack {
			c.errorf(RuleReturnClash, "rafters", "the end rafter stands %s in the %s return; use another end rule or a shorter plate", c.mm(d), r.Side)
		}
		if len(s.Battens) > 0 {
			from, to := battenExtent(j, s, 0)
			if d := into(from, to); d > slack {
				c.errorf(RuleReturnClash, "battens", "the battens run %s into the %s return; shorten their overhang", c.mm(d), r.Side)
			}
		}
	}
}

// battenExtent is where a batten begins and ends along the wall. One that a beam
// cuts short ends flush with the last rafter that carries it.
func battenExtent(j *Job, s Setout, batten int) (from, to float64) {
	half := j.Rafters.Section.Width / 2
	run := s.BattenRuns[batten]
	from, to = s.Rafters[run[0]]-half, s.Rafters[run[1]]+half
	if run[0] == 0 {
		from -= j.Battens.OverLeft
	}
	if run[1] == len(s.Rafters)-1 {
		to += j.Battens.OverRight
	}
	return from, to
}
