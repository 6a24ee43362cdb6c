package geom

import "slices"

// span is a stretch from lo to hi of some parameter.
type span struct{ lo, hi float64 }

// unite sorts the spans and joins those that overlap or come within gap of
// each other. It works in place.
func unite(s []span, gap float64) []span {
	if len(s) < 2 {
		return s
	}
	slices.SortFunc(s, func(a, b span) int {
		switch {
		case a.lo < b.lo:
			return -1
		case a.lo > b.lo:
			return 1
		}
		return 0
	})
	out := s[:1]
	for _, x := range s[1:] {
		if last := &out[len(out)-1]; x.lo <= last.hi+gap {
			last.hi = max(last.hi, x.hi)
			continue
		}
		out = append(out, x)
	}
	return out
}

// meet returns what two united lists have in common.
func meet(a, b []span) []span {
	var out []span
	for i, j := 0, 0; i < len(a) && j < len(b); {
		if x := (span{max(a[i].lo, b[j].lo), min(a[i].hi, b[j].hi)}); x.lo < x.hi {
			out = append(out, x)
		}
		if a[i].hi < b[j].hi {
			i++
		} else {
			j++
		}
	}
	return out
}

// without returns what of the united list a lies outside the united list b.
func without(a, b []span) []span {
	var out []span
	for _, x := range a {
		// Skip at once to the first span that can matter.
		j, _ := slices.BinarySearchFunc(b, x.lo, func(s span, at float64) int {
			if s.hi <= at {
				return -1
			}
			return 1
		})
		for ; j < len(b) && b[j].lo < x.hi; j++ {
			if b[j].lo > x.lo {
				out = append(out, span{x.lo, b[j].lo})
			}
			x.lo = b[j].hi
		}
		if x.lo < x.hi {
			out = append(out, x)
		}
	}
	return out
}

// insert adds x to a united list and keeps it united.
func insert(list []span, x span, gap float64) []span {
	i, _ := slices.BinarySearchFunc(list, x.lo-gap, func(s span, at float64) int {
		if s.hi < at {
			return -1
		}
		return 1
	})
	j := i
	for ; j < len(list) && list[j].lo <= x.hi+gap; j++ {
		x.lo, x.hi = min(x.lo, list[j].lo), max(x.hi, list[j].hi)
	}
	return slices.Replace(list, i, j, x)
}

// longer drops the spans that are not longer than least. It works in place.
func longer(s []span, least float64) []span {
	return slices.DeleteFunc(s, func(x span) bool { return x.hi-x.lo <= least })
}
