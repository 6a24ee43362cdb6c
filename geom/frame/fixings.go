package frame

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// endShare is the greatest distance of the first and last screw from the
// plate's ends, as a share of the greatest spacing.
const endShare = 0.5

// packerHeadroom is the least distance of a post's screw from the post's top
// and from the ground.
const packerHeadroom = 150

// rodClear is the least distance of a screw's centre below the end of a rod.
const rodClear = 50

// studEdge is the least distance of a screw's centre from a stud's side, in
// screw diameters. Common practice, no source.
const studEdge = 1.5

// layOutFixings chooses the screws of the plate and of wall posts.
func layOutFixings(c *checker) {
	if !c.job.Freestanding() {
		c.set.PlateFixings = plateFixings(c)
	}
	for i, p := range c.job.Posts.At {
		var at []float64
		if p.Wall != "" {
			// A whole packer bears on the post, above the ground and above
			// the end of a post on a stirrup; the highest screw passes below
			// the rod that stands in the post.
			margin := max(packerHeadroom, p.Packer.Height/2)
			top := c.seat(i) - max(margin, c.job.Posts.Rod.IntoPost+rodClear)
			low := max(p.Ground, c.postBottom(p)) + margin
			n := 1 + max(1, ceilCount((top-low)/p.Fixing.Spacing))
			at = spaced(low, top, min(n, maxSticks))
			if n > maxSticks || at[1]-at[0] < p.Packer.Height {
				c.errorf(RuleFixing, c.postPath(i), "screws at most %s apart do not suit post %d and its packers; give a greater spacing", c.mm(p.Fixing.Spacing), i+1)
			}
		}
		c.set.PostFixings = append(c.set.PostFixings, at)
	}
}

// span is a stretch along the wall.
type span struct{ lo, hi float64 }

// fixer chooses the plate's fixings: clear of every rafter and of the edges of
// masonry, on studs where there are any, never over the stated spacing.
type fixer struct {
	stud     string // what studs are called; empty: the fixings hold anywhere
	studs    []span // where a fixing's centre may stand; ascending
	rafters  []span // where it may not; ascending, apart from one another
	edges    []span // the same, near the edges of openings in masonry
	avoid    []span // both together
	spacing  float64
	least    float64 // between fixings, so that packers do not overlap
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
	f := fixer{
		stud: j.Wall.StudName(), spacing: fix.Spacing, least: max(fix.Spacing/4, j.Plate.Packer.Width),
		from: j.Plate.From + end, to: j.Plate.To - end,
	}
	if f.spacing < 2*f.least {
		c.errorf(RuleFixing, "plate.fixing.spacing", "screws at most %s apart leave no room for packers %s wide; give a spacing of at least %s",
			c.mm(f.spacing), c.mm(f.least), c.mm(2*f.least))
		return nil
	}
	// Nearer than a hole's width, a screw would break into the housing.
	clear := (j.Rafters.Section.Width+j.Rafters.Clearance)/2 + max(fix.FromRafter, fix.Hole)
	for _, x := range c.set.foulingPlate() {
		f.rafters = joined(f.rafters, span{x - clear, x + clear})
	}
	f.edges = j.openingEdges()
	for _, s := range slices.SortedFunc(slices.Values(slices.Concat(f.rafters, f.edges)), byLow) {
		f.avoid = joined(f.avoid, s)
	}
	off := max(0, j.Wall.StudWidth/2-studEdge*fix.Screw)
	for _, x := range j.Wall.Studs {
		f.studs = append(f.studs, span{x - off, x + off})
	}
	if len(f.studs) == 0 && f.stud != "" {
		c.warnf(RuleStudsUnknown, "wall", "%s positions are to be found on site: move each screw of the wall plate on to a %s, still clear of the rafters", f.stud, f.stud)
	}
	if f.to < f.from {
		c.errorf(RuleFixing, "plate", "the plate is too short for a screw and its packer; make it at least %s", c.mm(2*end))
		return nil
	}
	points := f.choose(end)
	setRows(c, points)
	f.report(c, points)
	return points
}

// setRows sets the fixings high and low by turns, or in the middle, and sees
// that plate and packers have timber round them.
func setRows(c *checker, points []FixingPoint) {
	p := c.job.Plate
	fix, half := p.Fixing, p.Section.Depth/2
	for i := range points {
		points[i].Up = half
		if fix.Rows == Staggered {
			points[i].Up = p.Section.Depth - fix.RowEdge
			if i%2 == 1 {
				points[i].Up = fix.RowEdge
			}
		}
	}
	if fix.Rows != Staggered {
		return
	}
	if fix.RowEdge > half-fix.Hole+slack {
		c.errorf(RuleFixing, "plate.fixing", "two rows %s from the edges of a plate %s deep are one; give a row_edge of at most %s, or one row", c.mm(fix.RowEdge), c.mm(2*half), c.mm(half-fix.Hole))
	} else if fix.RowEdge < fix.Hole-slack {
		c.errorf(RuleFixing, "plate.fixing", "a row %s from the plate's edge leaves too little beside a hole of %s; give a row_edge of at least %s", c.mm(fix.RowEdge), c.mm(fix.Hole), c.mm(fix.Hole))
	}
	if need := 2 * (half - fix.RowEdge + fix.Hole); p.Packer.Thickness > 0 && p.Packer.Height < need-slack {
		c.errorf(RuleFixing, "plate.packers", "packers %s high do not reach behind both rows; make them at least %s", c.mm(p.Packer.Height), c.mm(need))
	}
}

// openingEdges are the stretches along the wall where the plate's anchors
// would be nearer to an opening than stated.
func (j *Job) openingEdges() []span {
	fix := j.Plate.Fixing
	if fix.FromEdge == 0 || j.Wall.StudName() != "" {
		return nil
	}
	up := [2]float64{j.Plate.Section.Depth / 2, j.Plate.Section.Depth / 2}
	if fix.Rows == Staggered {
		up = [2]float64{fix.RowEdge, j.Plate.Section.Depth - fix.RowEdge}
	}
	low := j.Plate.Top - j.Plate.Section.Depth
	var out []span
	for _, o := range j.Wall.Openings {
		if low+up[0] < o.Head+fix.FromEdge-slack && low+up[1] > o.Sill-fix.FromEdge+slack {
			out = append(out, span{o.From - fix.FromEdge, o.To + fix.FromEdge})
		}
	}
	return slices.SortedFunc(slices.Values(out), byLow)
}

func byLow(a, b span) int { return cmp.Compare(a.lo, b.lo) }

// joined adds a span to ascending ones that stand apart.
func joined(to []span, s span) []span {
	if n := len(to); n > 0 && s.lo <= to[n-1].hi {
		to[n-1].hi = max(to[n-1].hi, s.hi)
		return to
	}
	return append(to, s)
}

// foulingPlate are the rafters that screws through the plate keep clear of.
func (s Setout) foulingPlate() []float64 {
	if s.Rear().Hold.way().fouls() {
		return s.Rafters
	}
	return nil
}

// choose walks from the left end to the right end. The last screw is placed
// first, so that the ends are held whatever happens between.
func (f fixer) choose(end float64) []FixingPoint {
	reach := min(max(0, endShare*f.spacing-end), (f.to-f.from)/2)
	first := f.pick(f.from, f.from+reach, f.from)
	last := f.pick(f.to-reach, f.to, f.to)
	if last.Along-first.Along < f.least {
		return []FixingPoint{first}
	}
	out := []FixingPoint{first}
	for at := first.Along; last.Along-at > f.spacing+slack; at = out[len(out)-1].Along {
		lo := at + f.least
		hi := min(at+f.spacing, last.Along-f.least)
		out = append(out, f.pick(lo, hi, min(at+f.step(at, last.Along), hi)))
	}
	return append(out, last)
}

// step is how far the next screw would best be from the one at at: as far as
// may be where a stud is in reach, else an even part of the way to the next
// stud, or to the last screw.
func (f fixer) step(at, last float64) float64 {
	to := last
	if k := f.studAfter(at + f.least); k < len(f.studs) {
		if f.studs[k].lo <= at+f.spacing {
			return f.spacing
		}
		to = min(to, (f.studs[k].lo+f.studs[k].hi)/2)
	}
	return (to - at) / float64(ceilCount((to-at)/f.spacing))
}

// studAfter is the first stud that reaches beyond x.
func (f fixer) studAfter(x float64) int {
	k, _ := slices.BinarySearchFunc(f.studs, x, func(s span, x float64) int { return cmp.Compare(s.hi, x) })
	return k
}

// pick returns the place between lo and hi nearest to want: on a stud and
// clear of rafters, else clear of rafters, else simply want.
func (f fixer) pick(lo, hi, want float64) FixingPoint {
	best, found := 0.0, false
	for _, s := range f.studs[f.studAfter(lo):] {
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
		return FixingPoint{Along: x, Blocking: blocking}
	}
	return FixingPoint{Along: want, Blocking: blocking}
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
	left, right := f.avoid[k].lo, f.avoid[k].hi
	okLeft, okRight := left >= lo, right <= hi
	if okLeft && (!okRight || want-left <= right-want) {
		return left, true
	}
	return right, okRight
}

// over returns the span to avoid that x lies within, or −1.
func (f fixer) over(x float64) int { return within(f.avoid, x) }

// within returns the span that x lies within, or −1.
func within(spans []span, x float64) int {
	k, _ := slices.BinarySearchFunc(spans, x+slack, func(s span, x float64) int { return cmp.Compare(s.hi, x) })
	if k < len(spans) && x > spans[k].lo+slack && x < spans[k].hi-slack {
		return k
	}
	return -1
}

func (f fixer) fouls(x float64) bool { return f.over(x) >= 0 }

// report warns of what a builder must add or move.
func (f fixer) report(c *checker, points []FixingPoint) {
	between := func(x float64) int {
		k, _ := slices.BinarySearch(c.job.Wall.Studs, x)
		return k
	}
	var tight, edge []string
	for _, p := range points {
		if within(f.rafters, p.Along) >= 0 {
			tight = append(tight, c.figure(p.Along))
		}
		if within(f.edges, p.Along) >= 0 {
			edge = append(edge, c.figure(p.Along))
		}
	}
	if len(edge) > 0 {
		c.warnf(RuleFixing, "plate.fixing", "the wall plate's anchors at %s are nearer to an opening than the %s stated: designer to confirm, or raise the plate", strings.Join(edge, ", "), c.figure(c.job.Plate.Fixing.FromEdge))
	}
	if len(tight) > 0 {
		c.warnf(RuleFixing, "plate.fixing", "the wall plate's screws at %s are nearer to a rafter than stated: the rafters leave no clear place within the spacing", strings.Join(tight, ", "))
	}
	for i := 0; i < len(points); i++ {
		if !points[i].Blocking {
			continue
		}
		k := between(points[i].Along)
		places := c.figure(points[i].Along)
		for i+1 < len(points) && points[i+1].Blocking && between(points[i+1].Along) == k {
			i++
			places += ", " + c.figure(points[i].Along)
		}
		c.warnf(RuleBlocking, "plate.fixing", "no %s suits the wall plate's screws at %s: add blocking there, %s", f.stud, places, c.whichStuds(k))
	}
}

// whichStuds says where the place before stud k is.
func (c *checker) whichStuds(k int) string {
	studs, name := c.job.Wall.Studs, c.job.Wall.StudName()
	switch {
	case k == 0:
		return "before the first " + name
	case k == len(studs):
		return "beyond the last " + name
	}
	return "between the " + name + "s at " + c.figure(studs[k-1]) + " and " + c.figure(studs[k])
}
