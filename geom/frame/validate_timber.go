package frame

import "math"

const (
	// headLeast is the height under a beam below which a frame is refused.
	headLeast = 1800

	// housingMost and housingDoubt are shares of a timber's width: deeper
	// housings are refused, or warned of. Own limits, not a code's.
	housingMost  = 1.0 / 2
	housingDoubt = 1.0 / 3

	// belowLeast and belowDoubt are shares of a timber's depth that must be
	// left below a housing's floor, where the rafter's load goes in.
	belowLeast = 1.0 / 6
	belowDoubt = 1.0 / 3
)

// checkHead works out head heights and checks the one under the beam. It
// reports whether one can stand there.
func (c *checker) checkHead() bool {
	s := &c.set
	s.HeadBeam = s.Front().Bottom - c.standing(s.nearest())
	if r := s.Rear(); r.Back && r.Bottom-c.standing(r.Outer) < headLeast {
		c.errorf(RuleHeadHeight, "rear_beam", "under the rear beam there is %s; it must be at least %s: raise it", c.mm(r.Bottom-c.standing(r.Outer)), c.mm(headLeast))
		return false
	}
	s.HeadPlate = s.RafterTop(s.Rear().Outer) - s.plumb(c.job.Rafters.Section.Depth) - c.standing(s.Rear().Outer)
	if s.Rear().Back {
		s.HeadPlate = s.Rear().Bottom - c.standing(s.Rear().Outer)
	}
	switch {
	case s.HeadBeam < headLeast:
		c.errorf(RuleHeadHeight, "fall", "the fall leaves %s under the beam; it must be at least %s: reduce the fall, raise the %s or bring the beam in",
			c.mm(s.HeadBeam), c.mm(headLeast), s.Rear().Short)
		return false
	case c.job.Format().Round(s.HeadBeam) < c.job.Levels.HeadRoom:
		c.warnf(RuleHeadHeight, "fall", "only %s under the beam, less than the head room of %s", c.figure(s.HeadBeam), c.figure(c.job.Levels.HeadRoom))
	}
	return true
}

// standing is the level that one stands on at a world y: the deck as far as it
// runs, then the ground.
func (c *checker) standing(y float64) float64 {
	if l := c.job.Levels; l.DeckOut > 0 && -y <= l.DeckOut {
		return l.Deck
	}
	return c.job.Levels.Ground
}

// housingDepth checks how much of a timber's width a housing takes.
func (c *checker) housingDepth(path string, deep, width float64) {
	switch {
	case deep > width*housingMost+slack:
		c.errorf(RuleHousing, path, "a housing %s deep leaves only %s of %s; make it at most %s",
			c.mm(deep), c.mm(width-deep), c.mm(width), c.mm(width*housingMost))
	case deep > width*housingDoubt+slack:
		c.warnf(RuleHousing, path, "housings %s deep take more than a third of a timber %s wide", c.figure(deep), c.figure(width))
	}
}

// belowSeat checks what is left of a carrier below what is cut for the
// rafters.
func (c *checker) belowSeat(k Carrier, what string, left float64) {
	name, depth := k.Key, k.Section.Depth
	switch {
	case left < depth*belowLeast-slack:
		c.errorf(RuleBelowSeat, k.Key+".section", "%s leave %s of the %s below their seats; at least %s must be left: use a deeper %s or shallower rafters",
			what, c.mm(math.Max(0, left)), name, c.mm(depth*belowLeast), name)
	case left < depth*belowDoubt-slack:
		c.warnf(RuleBelowSeat, k.Key+".section", "%s leave only %s of the %s below their seats, less than a third of its depth", what, c.figure(left), name)
	}
}
