package frame

import (
	"cmp"
	"math"
	"slices"
)

// endShare is the greatest distance of the first and last screw from the
// plate's ends, as a share of the greatest spacing.
const endShare = 0.5

// packerHeadroom is the least distance of a post's screw from the post's top
// and from the ground.
const packerHeadroom = 150

// studEdge is the least distance of a screw's centre from a stud's side, in
// screw diameters. Common practice, no source.
const studEdge = 1.5

// layOutFixings chooses the screws of the plate and of wall posts.
func layOutFixings(c *checker) {
	c.set.PlateFixings = plateFixings(c)
	for i, p := range c.job.Posts.At {
		var at []float64
		if p.Wall != "" {
			top := c.beamBottom() - packerHeadroom
			low := p.Ground + packerHeadroom
			if n := 1 + max(1, ceilCount((top-low)/p.Fixing.Spacing)); top > low && n <= maxSticks {
				at = spaced(low, top, n)
			} else {
				c.errorf(RuleFixing, postPath(i), "no screws fit between the ground and the top of this post; give a spacing that suits its height")
			}
		}
		c.set.PostFixings = append(c.set.PostFixings, at)
	}
}

// span is a stretch along the wall.
type span struct{ lo, hi float64 }

// fixer chooses the plate's screws: clear of every rafter, on studs where
// there are any, never over the stated spacing.
type fixer struct {
	studs    []span // where a screw's centre may stand; ascending
	rafters  []span // where it may not; ascending, apart from one another
	spacing  float64
	from, to float64 // of the plate, less the end distance
}

func plateFixings(c *checker) []FixingPoint {
	j := c.job
	fix := j.Plate.Fixing
	if !(fix.Spacing > 0) || (j.Plate.To-j.Plate.From)/fix.Spacing > maxSticks {
		c.errorf(RuleFixing, "plate.fixing.spacing", "screws every %s are too many; give a greater spacing", c.mm(fix.Spacing))
		return nil
	}
	end := max(j.Plate.Packer.Width/2, 3*fix.Hole)
	f := fixer{spacing: fix.Spacing, from: j.Plate.From + end, to: j.Plate.To - end}
	clear := (j.Rafters.Section.Width+j.Rafters.Clearance)/2 + fix.FromRafter
	for _, x := range c.set.Rafters {
		if n := len(f.rafters); n > 0 && x-clear <= f.rafters[n-1].hi {
			f.rafters[n-1].hi = x + clear
			continue
		}
		f.rafters = append(f.rafters, span{x - clear, x + clear})
	}
	off := max(0, j.Wall.StudWidth/2-studEdge*fix.Screw)
	for _, x := range j.Wall.Studs {
		f.studs = append(f.studs, span{x - off, x + off})
	}
	if len(f.studs) == 0 {
		c.warnf(RuleStudsUnknown, "wall", "stud positions are to be found on site: move each screw of the wall plate on to a stud, still clear of the rafters")
	}
	if f.to < f.from {
		c.errorf(RuleFixing, "plate", "the plate is too short for a screw and its packer; make it at least %s", c.mm(2*end))
		return nil
	}
	points := f.choose(end)
	f.report(c, points)
	return points
}

// choose walks from the left end to the right end. The last screw is placed
// first, so that the ends are held whatever happens between.
func (f fixer) choose(end float64) []FixingPoint {
	reach := min(max(0, endShare*f.spacing-end), (f.to-f.from)/2)
	first := f.pick(f.from, f.from+reach, f.from)
	last := f.pick(f.to-reach, f.to, f.to)
	if last.Along-first.Along < slack {
		return []FixingPoint{first}
	}
	out := []FixingPoint{first}
	for at := first.Along; last.Along-at > f.spacing+slack; at = out[len(out)-1].Along {
		lo := at + f.spacing/4
		hi := min(at+f.spacing, last.Along-f.spacing/4)
		out = append(out, f.pick(lo, hi, min(at+f.step(at, last.Along), hi)))
	}
	return append(out, last)
}

// step is the greatest spacing where studs decide, else the even one from at
// to the last screw.
func (f fixer) step(at, last float64) float64 {
	if len(f.studs) > 0 {
		return f.spacing
	}
	return (last - at) / float64(ceilCount((last-at)/f.spacing))
}

// pick returns the place between lo and hi nearest to want: on a stud and
// clear of rafters, else clear of rafters, else simply want.
func (f fixer) pick(lo, hi, want float64) FixingPoint {
	best, found := 0.0, false
	from, _ := slices.BinarySearchFunc(f.studs, lo, func(s span, x float64) int { return cmp.Compare(s.hi, x) })
	for _, s := range f.studs[from:] {
		if s.lo > hi {
			break
		}
		x := (s.lo + s.hi) / 2
		ok := x >= lo && x <= hi && !f.fouls(x)
		if !ok {
			x, ok = f.clearIn(max(s.lo, lo), min(s.hi, hi), x)
		}
		if ok && (!found || math.Abs(x-want) < math.Abs(best-want)) {
			best, found = x, true
		}
	}
	if found {
		return FixingPoint{Along: best}
	}
	blocking := len(f.studs) > 0
	if x, ok := f.clearIn(lo, hi, want); ok {
		return FixingPoint{x, blocking}
	}
	return FixingPoint{want, blocking}
}

// clearIn returns the place in lo…hi nearest to want that is clear of the
// rafters.
func (f fixer) clearIn(lo, hi, want float64) (float64, bool) {
	want = min(max(want, lo), hi)
	k := f.over(want)
	if k < 0 {
		return want, true
	}
	// The spans stand apart, so the sides of the one that covers want are
	// themselves clear.
	left, right := f.rafters[k].lo, f.rafters[k].hi
	okLeft, okRight := left >= lo, right <= hi
	if okLeft && (!okRight || want-left <= right-want) {
		return left, true
	}
	return right, okRight
}

// over returns the rafter's span that x lies within, or −1.
func (f fixer) over(x float64) int {
	k, _ := slices.BinarySearchFunc(f.rafters, x+slack, func(s span, x float64) int { return cmp.Compare(s.hi, x) })
	if k < len(f.rafters) && x > f.rafters[k].lo+slack && x < f.rafters[k].hi-slack {
		return k
	}
	return -1
}

func (f fixer) fouls(x float64) bool { return f.over(x) >= 0 }

// report warns of what a builder must add or move.
func (f fixer) report(c *checker, points []FixingPoint) {
	for _, p := range points {
		if f.fouls(p.Along) {
			c.warnf(RuleFixing, "plate.fixing", "the screw of the wall plate at %s is nearer to a rafter than stated: the rafters stand too close for a clear place within the spacing", c.mm(p.Along))
		}
		if !p.Blocking {
			continue
		}
		k, _ := slices.BinarySearchFunc(c.job.Wall.Studs, p.Along, cmp.Compare[float64])
		where := "beyond the last stud"
		switch {
		case k == 0:
			where = "before the first stud"
		case k < len(c.job.Wall.Studs):
			where = "between the studs at " + c.mm(c.job.Wall.Studs[k-1]) + " and " + c.mm(c.job.Wall.Studs[k])
		}
		c.warnf(RuleBlocking, "plate.fixing", "no stud suits the wall plate's screw at %s: add blocking in the wall there, %s", c.mm(p.Along), where)
	}
}
