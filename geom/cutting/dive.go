package cutting

// dives is how many times dive is tried, each time with another choice early on.
const dives = 12

// smallRest is how few pieces must be left for the search to finish a dive.
const smallRest = 16

// dive makes a plan from relaxations: cut each pattern as often as the relaxation
// cuts it wholly and the most used of the others once, relax what is left, and so
// on. It passes over the first skips patterns that it would have cut once, in
// favour of the next.
func (s *solver) dive(left, limits []int, skips int) {
	left, limits = clone(left), clone(limits)
	var uses []use
	var spent int64
	for firstLeft(left) >= 0 {
		if pieces(left) <= smallRest {
			const share = 40 // a dive's end may use this part of the work left
			s.search(left, limits, uses, s.work.left/share)
			return
		}
		r := s.relaxer.relax(left, limits, s.goal+1-spent)
		if spent+r.bound > s.goal || s.work.done() {
			return
		}
		before := len(uses)
		uses = s.cutWhole(uses, r.used, left, limits)
		uses, skips = s.cutOnce(uses, r.used, left, limits, skips)
		if len(uses) == before {
			return
		}
		for _, u := range uses[before:] {
			spent += s.bins[u.bin].cost * int64(u.count)
		}
	}
	s.offer(uses)
}

func pieces(left []int) int {
	total := 0
	for _, n := range left {
		total += n
	}
	return total
}

// cutWhole cuts each pattern the whole number of times in its fraction, as far
// as pieces are left for it.
func (s *solver) cutWhole(uses []use, used []fraction, left, limits []int) []use {
	const nearly = 1e-6 // a fraction this close below a whole number is one
	for _, f := range used {
		n := min(int(f.times+nearly), s.repeats(f.pattern, left, limits))
		if n > 0 {
			uses = s.take(uses, use{f.pattern, n}, left, limits)
		}
	}
	return uses
}

// cutOnce cuts the pattern with the largest fractional part once. If that is one to
// skip, it takes the next.
func (s *solver) cutOnce(uses []use, used []fraction, left, limits []int, skips int) ([]use, int) {
	best, second := -1, -1
	part := func(i int) float64 {
		if i < 0 {
			return 0
		}
		return used[i].times - float64(int(used[i].times))
	}
	for i, f := range used {
		switch {
		case s.repeats(f.pattern, left, limits) == 0:
		case part(i) > part(best):
			best, second = i, best
		case part(i) > part(second):
			second = i
		}
	}
	if skips > 0 && second >= 0 {
		best, skips = second, skips-1
	}
	if best >= 0 {
		uses = s.take(uses, use{used[best].pattern, 1}, left, limits)
	}
	return uses, skips
}
