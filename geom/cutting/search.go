package cutting

import (
	"cmp"
	"encoding/binary"
	"slices"
)

// A search tries every plan that could be better than the best: on which stick
// goes the longest piece left, together with what? Each answer leaves a smaller
// problem of the same kind, whose relaxation bounds what it will cost.
type search struct {
	*solver
	most     int64            // the search ends when the work left is down to this
	path     []use            // cut so far
	seen     map[string]int64 // what is left, to the least already spent on the way there
	complete bool
}

// search looks for plans that begin with the given uses. It reports
// whether it tried all that could be better, within the given work.
func (s *solver) search(left, limits []int, begun []use, effort int64) bool {
	var spent int64
	for _, u := range begun {
		spent += s.bins[u.bin].cost * int64(u.count)
	}
	t := &search{solver: s, most: s.work.left - effort, path: slices.Clone(begun), seen: map[string]int64{}, complete: true}
	t.explore(clone(left), clone(limits), spent)
	return t.complete
}

func (t *search) explore(left, limits []int, spent int64) {
	if firstLeft(left) < 0 {
		t.offer(t.path)
		return
	}
	key := t.stateKey(left, limits)
	if before, seen := t.seen[key]; seen && before <= spent {
		return
	}
	t.seen[key] = spent
	r := t.relaxer.relax(left, limits, t.goal+1-spent)
	if spent+r.bound > t.goal {
		return
	}
	if plan := t.whole(r.used, left, limits); plan != nil {
		t.offer(append(slices.Clone(t.path), plan...))
	}
	depth := len(t.path)
	for _, c := range t.children(left, limits, spent, r) {
		if t.work.left <= t.most {
			t.complete = false
			return
		}
		if t.tooDear(r, c.loss, spent) {
			continue
		}
		t.path = t.take(t.path, use{c.pattern, 1}, left, limits)
		t.explore(left, limits, spent+t.bins[c.bin].cost)
		t.path = t.path[:depth]
		t.giveBack(c.pattern, left, limits)
	}
}

func (t *search) giveBack(p pattern, left, limits []int) {
	for _, q := range p.parts {
		left[q.size] += q.count
	}
	limits[p.bin]++
}

// stateKey tells apart what is left. The bins that cannot run out do not count.
func (t *search) stateKey(left, limits []int) string {
	key := make([]byte, 0, len(left)+len(limits))
	for _, n := range left {
		key = binary.AppendUvarint(key, uint64(n))
	}
	for b, n := range limits {
		if t.bins[b].limited {
			key = binary.AppendUvarint(key, uint64(n))
		}
	}
	return string(key)
}

// whole returns the relaxation as a plan if all its patterns are cut a whole number of times.
func (t *search) whole(used []fraction, left, limits []int) []use {
	left, limits = clone(left), clone(limits)
	uses := t.cutWhole(nil, used, left, limits)
	if firstLeft(left) >= 0 {
		return nil
	}
	return uses
}

// A child is a pattern for the longest piece left.
type child struct {
	pattern
	loss  int64   // times scale: by how much it lifts the bound
	times float64 // how often the relaxation cuts it
}

// tooDear reports whether a pattern that loses so much cannot be part of a better plan.
func (t *search) tooDear(r relaxation, loss, spent int64) bool {
	return r.scaled+loss > (t.goal-spent)*t.relaxer.scale
}

// children returns the patterns worth trying, the most promising first.
func (t *search) children(left, limits []int, spent int64, r relaxation) []child {
	var all []child
	for b := range t.bins {
		if limits[b] == 0 {
			continue
		}
		all = append(all, t.enumerate(left, limits, b, spent, r)...)
	}
	for _, f := range r.used {
		for i := range all {
			if comparePatterns(f.pattern, all[i].pattern) == 0 {
				all[i].times = f.times
			}
		}
	}
	slices.SortFunc(all, func(a, b child) int {
		return cmp.Or(cmp.Compare(b.times, a.times), cmp.Compare(a.loss, b.loss), comparePatterns(a.pattern, b.pattern))
	})
	return all
}
