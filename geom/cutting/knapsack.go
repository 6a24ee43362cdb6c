package cutting

import (
	"cmp"
	"slices"
)

// A knapsack finds the fillings of a bin that are worth most. It is exact as long
// as its nodes last, and then still knows a value that no filling exceeds.
//
// It goes through the sizes in order of worth by weight, takes as many as fit,
// then fewer; and turns back where even the best sizes to come, cut
// up to fill the bin to the brim, would not lift the value over the best known.
type knapsack struct {
	items []item
	taken []int
	best  []int // the filling of value bestValue; nil while nothing beats the floor
	value int64
	upper int64 // no filling is worth more, nor more than value
	nodes int   // still allowed
}

// An item is a size with a worth. Weights stay under 2^31 and values at most at
// valueScale, so their products fit in 64 bits.
type item struct {
	size          int
	weight, value int64
	most          int
}

// newKnapsack returns a knapsack of the sizes of which some are left.
func newKnapsack(p *problem, left []int, values []int64) *knapsack {
	k := &knapsack{items: make([]item, 0, len(left))}
	for i, n := range left {
		if n > 0 && values[i] > 0 {
			k.items = append(k.items, item{i, p.sizes[i].weight, values[i], n})
		}
	}
	slices.SortFunc(k.items, byDensity)
	k.taken = make([]int, len(k.items))
	return k
}

// byDensity puts the most worth by weight first, and of two alike the heavier.
func byDensity(a, b item) int {
	return cmp.Or(cmp.Compare(b.value*a.weight, a.value*b.weight), cmp.Compare(a.size, b.size))
}

// solve looks for the filling of the capacity that is worth most and more than
// floor. Afterwards best holds it, or nil; and no filling is worth more than the
// larger of value and upper.
func (k *knapsack) solve(capacity, floor int64, nodes int) {
	k.best, k.value, k.upper, k.nodes = nil, floor, floor, nodes
	k.fill(0, capacity, 0)
	k.upper = max(k.upper, k.value)
}

func (k *knapsack) fill(at int, room, value int64) {
	k.nodes--
	if value > k.value {
		k.value = value
		k.best = append(k.best[:0], k.taken...)
	}
	for at < len(k.items) && k.items[at].weight > room {
		at++
	}
	if at == len(k.items) {
		return
	}
	it := k.items[at]
	for n := min(int64(it.most), room/it.weight); n >= 0; n-- {
		room, value := room-n*it.weight, value+n*it.value
		bound := value
		if at+1 < len(k.items) {
			bound += room * k.items[at+1].value / k.items[at+1].weight
		}
		if bound <= k.value {
			break // fewer of the densest item bound lower still
		}
		if k.nodes <= 0 {
			k.upper = max(k.upper, bound)
			break
		}
		k.taken[at] = int(n)
		k.fill(at+1, room, value)
	}
	k.taken[at] = 0
}

// parts returns the best filling, heaviest size first.
func (k *knapsack) parts() []part {
	var parts []part
	for i, n := range k.best {
		if n > 0 {
			parts = append(parts, part{k.items[i].size, n})
		}
	}
	slices.SortFunc(parts, func(a, b part) int { return cmp.Compare(a.size, b.size) })
	return parts
}
