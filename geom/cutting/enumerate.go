package cutting

import (
	"cmp"
	"slices"
)

// An enumeration lists the patterns of one bin that hold the longest piece left
// and could be part of a better plan, but for the superfluous: a pattern is so if
// exchanging one piece, or none, for a longer one that is left makes another.
// Whatever plan goes on from the first is matched by one that goes on from the
// second, by the same exchange.
type enumeration struct {
	*search
	bin     int
	left    []int
	limits  []int
	first   int // the longest piece left
	items   []item
	taken   []int // by size
	ceiling int64 // no pattern's pieces are worth more
	floor   int64 // a pattern whose pieces are worth less is too dear
	found   []child
}

// enumerate returns the patterns of the bin for the longest piece left.
func (t *search) enumerate(left, limits []int, bin int, spent int64, r relaxation) []child {
	e := &enumeration{search: t, bin: bin, left: left, limits: limits, first: firstLeft(left), taken: make([]int, len(left))}
	for i, n := range left {
		if i == e.first {
			n--
		}
		if n > 0 {
			e.items = append(e.items, item{i, t.sizes[i].weight, r.values[i], n})
		}
	}
	slices.SortFunc(e.items, byDensity)
	e.ceiling = t.bins[bin].cost*t.relaxer.scale + r.over[bin]
	e.floor = e.ceiling - ((t.goal-spent)*t.relaxer.scale - r.scaled)
	e.taken[e.first] = 1
	if room := t.bins[bin].capacity - t.sizes[e.first].weight; room >= 0 {
		e.fill(0, room, r.values[e.first])
	}
	return e.found
}

func (e *enumeration) fill(at int, room, value int64) {
	e.work.spend(1)
	if e.work.left <= e.most {
		e.complete = false
		return
	}
	for at < len(e.items) && e.items[at].weight > room {
		at++
	}
	if at == len(e.items) {
		e.end(room, value)
		return
	}
	it := e.items[at]
	for n := min(int64(it.most), room/it.weight); n >= 0; n-- {
		room, value := room-n*it.weight, value+n*it.value
		bound := value
		if at+1 < len(e.items) {
			bound += room * e.items[at+1].value / e.items[at+1].weight
		}
		if bound < e.floor {
			break // fewer of the densest item bound lower still
		}
		e.taken[it.size] += int(n)
		e.fill(at+1, room, value)
		e.taken[it.size] -= int(n)
	}
}

// end adds the pattern that is taken, if it is not superfluous.
func (e *enumeration) end(room, value int64) {
	if value < e.floor || e.superfluous(room) {
		return
	}
	p := pattern{bin: e.bin}
	for i, n := range e.taken {
		if n > 0 {
			p.parts = append(p.parts, part{i, n})
		}
	}
	e.found = append(e.found, child{pattern: p, loss: e.ceiling - value})
}

// superfluous reports whether the pattern that leaves so much room need not be tried.
func (e *enumeration) superfluous(room int64) bool {
	longer := int64(0) // weight of the lightest size left so far; 0 while there is none
	for i, n := range e.taken {
		weight := e.sizes[i].weight
		if n > 0 && i != e.first && longer > 0 && longer-weight <= room {
			return true
		}
		if e.left[i] > n {
			if weight <= room {
				return true
			}
			longer = weight
		}
	}
	filled := e.bins[e.bin].capacity - room
	for b, other := range e.bins[:e.bin] { // the bins stand in order of cost
		if !other.limited && other.capacity >= filled && e.limits[b] > 0 {
			return true
		}
	}
	return false
}

// comparePatterns puts patterns in a fixed order: the heavier pieces first.
func comparePatterns(a, b pattern) int {
	return cmp.Or(cmp.Compare(a.bin, b.bin), slices.CompareFunc(a.parts, b.parts, func(s, t part) int {
		return cmp.Or(cmp.Compare(s.size, t.size), cmp.Compare(t.count, s.count))
	}))
}
