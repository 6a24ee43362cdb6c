package cutting

import "slices"

// greedy returns a plan made stick by stick: the longest piece left and the
// pieces that fill up its stick best, on the stick that costs least for the
// weight it takes. It returns nil, and notes the piece, if no stick is left for it.
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
			s.short = first
			return nil
		}
		uses = s.take(uses, use{best, s.repeats(best, left, limits)}, left, limits)
	}
	return uses
}

// firstFit returns a plan on sticks of one bin alone: each piece, longest first, on
// the first stick on which it fits. It returns nil if the bin does not do.
func (s *solver) firstFit(b int) []use {
	var uses []use
	var rooms []int64
	for i, z := range s.sizes {
		for range z.demand {
			k := slices.IndexFunc(rooms, func(room int64) bool { return room >= z.weight })
			if k < 0 {
				if len(uses) == s.bins[b].limit || s.bins[b].capacity < z.weight {
					return nil
				}
				k = len(uses)
				rooms = append(rooms, s.bins[b].capacity)
				uses = append(uses, use{pattern{bin: b}, 1})
			}
			rooms[k] -= z.weight
			uses[k].parts = addPiece(uses[k].parts, i)
		}
	}
	return uses
}

// addPiece returns the parts with one more piece of the size, which none is
// lighter than.
func addPiece(parts []part, size int) []part {
	if n := len(parts); n > 0 && parts[n-1].size == size {
		parts[n-1].count++
		return parts
	}
	return append(parts, part{size, 1})
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
