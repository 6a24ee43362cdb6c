package frame

import "plumbcut/geom"

// The shares of a timber's depth that a check may take: more is refused, or
// warned of. Own limits, not a code's.
const (
	checkMost  = 1.0 / 2
	checkDoubt = 1.0 / 4
)

// checkEnd is the least length of timber between a check and the end of a rafter,
// mm: shorter grain splits off (own).
const checkEnd = 10

// checkedLay lets the battens into checks across the rafters' top edges, and
// the rafters into checks across the battens' undersides, if the job has those.
type checkedLay struct{}

func (checkedLay) sunk(b Battens) float64 { return b.Check.Rafter + b.Check.Batten }

func (checkedLay) check(c *checker) {
	j, s := c.job, c.set
	b, k := j.Battens, j.Battens.Check
	if k.Rafter <= 0 && k.Batten <= 0 {
		c.errorf(RuleCheck, "battens.check", "checks of no depth are none; give the depth of those in the rafters or in the battens, or lay the battens over the rafters")
		return
	}
	c.checkDepth("battens.check.rafters", "rafters", k.Rafter, j.Rafters.Section.Depth)
	c.checkDepth("battens.check.battens", "battens", k.Batten, b.Section.Depth)
	if wide := b.Section.Width + k.Clearance; k.Rafter > 0 && len(s.Battens) > 1 && s.BattenGap < k.Clearance+checkEnd-slack {
		c.errorf(RuleCheck, "battens", "checks %s wide leave only %s of the rafter between them; use fewer battens", c.mm(wide), c.mm(max(0, s.BattenGap-k.Clearance)))
		return
	}
	if k.Rafter > 0 {
		c.checkRafterEnds()
		c.checkOverSeats()
	}
}

// checkDepth checks how much of a timber's depth its checks take.
func (c *checker) checkDepth(path, what string, deep, depth float64) {
	switch {
	case deep > depth*checkMost+slack:
		c.errorf(RuleCheck, path, "checks %s deep leave only %s of the %s, which are %s deep; make them at most %s",
			c.mm(deep), c.mm(max(0, depth-deep)), what, c.mm(depth), c.mm(depth*checkMost))
	case deep > depth*checkDoubt+slack:
		c.warnf(RuleCheck, path, "the checks for the battens take %s, more than a quarter of the depth of the %s, %s: they are to be sized for what is left", c.figure(deep), what, c.figure(depth))
	}
}

// checkRafterEnds checks that timber stands between the end checks and the ends
// of the rafters, down to the checks' floors.
func (c *checker) checkRafterEnds() {
	j, s := c.job, c.set
	b, k := j.Battens, j.Battens.Check
	up := b.First - k.Clearance/2 + (s.RafterStart-s.Rear().Outer)/s.cos - k.Rafter*s.tan
	if up < checkEnd-slack {
		c.errorf(RuleCheck, "battens.first", "the first check leaves %s of the rafter at its upper end; make first at least %s", c.mm(max(0, up)), c.mm(b.First+checkEnd-up))
	}
	down := b.Last - k.Clearance/2 + (s.BattenEnd-s.RafterEnd)/s.cos
	if down < checkEnd-slack {
		c.errorf(RuleCheck, "battens.last", "the last check leaves %s of the rafter at its lower end; make last at least %s", c.mm(max(0, down)), c.mm(b.Last+checkEnd-down))
	}
}

// checkOverSeats checks what is left of a rafter where a check lies over a
// birdsmouth.
func (c *checker) checkOverSeats() {
	j, s := c.job, c.set
	depth := j.Rafters.Section.Depth
	k, plumb := j.Battens.Check, s.plumb(depth)
	half := (j.Battens.Section.Width + k.Clearance) / 2
	for _, on := range s.Carriers {
		if on.Hold != Over {
			continue
		}
		n := on.birdsmouth(s)
		deep := n.Deep(depth)
		if deep <= slack {
			continue
		}
		// The notch reaches from the heel's foot up to its shoulder, as seen
		// square to the rafter.
		heel := (s.Rear().Outer-on.Outer)/s.cos + n.Heel*s.sin
		from, to := heel-n.Over*s.cos, heel+deep*s.sin
		for i, u := range s.Battens {
			mid := u + j.Battens.Section.Width/2
			if mid+half < from || mid-half > to {
				continue
			}
			left := plumb - deep - k.Rafter/s.cos
			switch {
			case left < plumb*(1-notchMost)-slack:
				c.errorf(RuleCheck, "battens.check", "the check for batten %d lies over the birdsmouth at the %s and leaves %s of the rafter there; move the battens, or make check or birdsmouth shallower",
					i+1, on.Key, c.mm(max(0, left)))
			case left < plumb*(1-notchDoubt)-slack:
				c.warnf(RuleCheck, "battens.check", "the check for batten %d lies over the birdsmouth at the %s: only %s of the rafter is left there, measured plumb", i+1, on.Key, c.figure(left))
			}
			return
		}
	}
}

// join lets a batten and a rafter into each other, both from the same figures:
// each check is wider than what lies in it by the clearance, in all.
func (checkedLay) join(b *builder, batten, rafter int) {
	k := b.job.Battens.Check
	t, r := &b.members[batten], &b.members[rafter]
	if k.Rafter > 0 {
		mid := t.Place.Point(geom.V(0, t.Section.Width/2, 0))
		r.Features = append(r.Features, Check{Face: FaceTop, At: r.Place.Local(mid).X, Width: t.Section.Width + k.Clearance, Depth: k.Rafter})
	}
	if k.Batten > 0 {
		at := r.Place.O.X + r.Section.Width/2 - t.Place.O.X
		t.Features = append(t.Features, Check{Face: FaceBottom, At: at, Width: r.Section.Width + k.Clearance, Depth: k.Batten})
	}
	b.layBatten(batten, rafter, k.Batten)
}
