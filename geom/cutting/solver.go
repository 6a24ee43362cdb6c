package cutting

// A solver holds the state of a search: the best plan so far and the bound.
type solver struct {
	problem
	work    work
	totals  totals
	relaxer *relaxer
	best    []use
	cost    int64 // of best, in units of bin cost; beyond any plan's while there is none
	length  Length
	goal    int64 // a better plan costs at most this
	bound   int64 // no plan costs less
	short   int   // the size that the greedy plan had no stick for, if there is no plan
}

// newSolver returns a solver that has found nothing yet. No plan that is worth a
// look costs more than the dearest stick for each piece.
func newSolver(p problem, effort int64) *solver {
	s := &solver{problem: p, work: work{effort}}
	s.relaxer = newRelaxer(&s.problem, &s.work)
	s.goal = s.relaxer.dearest * int64(pieces(p.demand()))
	s.cost = s.goal + 1
	return s
}

// run searches until the best plan is proven or the work is used up. It reports
// whether the search ended by itself.
func (s *solver) run() bool {
	demand, limits := s.demand(), s.limits()
	if plan := s.greedy(demand, limits); plan != nil {
		s.offer(plan)
	}
	for b := range s.bins {
		if plan := s.firstFit(b); plan != nil {
			s.offer(plan)
		}
	}
	root := s.relaxer.relax(demand, limits, s.goal+1)
	s.bound = s.totals.atLeast(max(root.bound, s.material()))
	for skips := 0; skips < dives && !s.proven() && !s.work.done(); skips++ {
		s.dive(demand, limits, skips)
	}
	if s.proven() {
		return true
	}
	if !s.search(demand, limits, nil, s.work.left) {
		return false
	}
	s.bound = s.cost
	return true
}

// proven reports whether no plan can be better than the best.
func (s *solver) proven() bool { return s.bound > s.goal }

// offer takes the plan if it is better than the best: cheaper, or as cheap and
// of less length.
func (s *solver) offer(plan []use) {
	plan = s.shorten(plan)
	var cost int64
	var length Length
	for _, u := range plan {
		cost += s.bins[u.bin].cost * int64(u.count)
		length += s.bins[u.bin].length * Length(u.count)
	}
	if cost < s.cost || cost == s.cost && length < s.length {
		if s.best == nil {
			s.totals = newTotals(s.bins, cost)
		}
		s.best, s.cost, s.length = plan, cost, length
		s.goal = s.totals.below(cost)
	}
}

// shorten moves patterns to the cheapest sticks that hold them.
func (s *solver) shorten(plan []use) []use {
	limits := s.limits()
	for _, u := range plan {
		limits[u.bin] -= u.count
	}
	var short []use
	for _, u := range plan {
		weight := s.weight(u.parts)
		for b := 0; b < u.bin && u.count > 0; b++ { // the bins stand in order of cost
			if n := min(limits[b], u.count); n > 0 && s.bins[b].capacity >= weight {
				short = append(short, use{pattern{b, u.parts}, n})
				limits[b] -= n
				limits[u.bin] += n
				u.count -= n
			}
		}
		if u.count > 0 {
			short = append(short, u)
		}
	}
	return short
}
