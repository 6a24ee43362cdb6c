package cutting

// greedy returns a plan made stick by stick: the longest piece left and the
// pieces that fill up its stick best, on the stick that costs least for the
// weight it takes. It returns nil if the limited bins run out.
func (s *solver) greedy(left, limits []int) []use {
	left, limits = clone(left), clone(limits)
	weights := make([]int64, len(s.sizes))
	for i, z := range s.sizes {
		weights[i] = z.weight
	}
	var uses []use
	for first := firstLeft(left); first >= 0; first = firstLeft(left) {
		best, found := pattern{}, false
		var bestWeight int64
		for b, bin := range s.bins {
			if limits[b] == 0 || bin.capacity < weights[first] {
				continue
			}
			p := pattern{b, s.fullest(first, left, weights, bin.capacity)}
			w := s.weight(p.parts)
			if !found || bin.cost*bestWeight < s.bins[best.bin].cost*w {
				best, bestWeight, found = p, w, true
			}
		}
		if !found {
			return nil
		}
		uses = s.take(uses, use{best, s.repeats(best, left, limits)}, left, limits)
	}
	return uses
}

// fullest returns the parts that fill the capacity best, one of size first among them.
func (s *solver) fullest(first int, left []int, weights []int64, capacity int64) []part {
	const nodes = 2000 // the fullest filling shows early
	left[first]--
	k := newKnapsack(&s.problem, left, weights)
	k.solve(capacity-weights[first], 0, nodes)
	s.work.spend(int64(nodes - k.nodes))
	left[first]++
	return withPiece(k.parts(), first)
}

// withPiece returns the parts with one more piece of the size, which none is
// heavier than.
func withPiece(parts []part, size int) []part {
	if len(parts) > 0 && parts[0].size == size {
		parts[0].count++
		return parts
	}
	return append([]part{{size, 1}}, parts...)
}

// repeats returns how often the pattern can be cut from what is left.
func (s *solver) repeats(p pattern, left, limits []int) int {
	n := limits[p.bin]
	for _, t := range p.parts {
		n = min(n, left[t.size]/t.count)
	}
	return n
}

// take adds a use to the uses and takes its pieces and sticks from those left.
func (s *solver) take(uses []use, u use, left, limits []int) []use {
	for _, t := range u.parts {
		left[t.size] -= t.count * u.count
	}
	limits[u.bin] -= u.count
	return append(uses, u)
}

// firstLeft returns the heaviest size of which some are left, or -1.
func firstLeft(left []int) int {
	for i, n := range left {
		if n > 0 {
			return i
		}
	}
	return -1
}

func clone(n []int) []int { return append([]int(nil), n...) }
