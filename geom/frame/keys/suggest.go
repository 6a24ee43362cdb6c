package keys

import (
	"slices"
	"strings"
)

// mostHomes is how many groups a misplaced key may be said to belong to before
// the answer stops being one.
const mostHomes = 3

// instead says what to write for a key that a group does not have, and which
// of the group's keys was meant, if that is clear.
func (d *decoder) instead(g Group, key string) (say, meant string) {
	for _, f := range g.Fields {
		if slices.Contains(f.Also, key) {
			return "write " + f.Key, f.Key
		}
	}
	if homes := d.table.homes("", key); 0 < len(homes) && len(homes) <= mostHomes {
		return "it belongs in " + enumerate(homes), ""
	}
	if near := nearest(key, g.names()); near != "" {
		return "did you mean " + near + "?", near
	}
	return "it takes " + strings.Join(g.names(), ", "), ""
}

// homes are the groups of a table that have a key.
func (g Group) homes(path, key string) []string {
	var homes []string
	for _, f := range g.Fields {
		k := f.Is
		if f.Key == key {
			homes = append(homes, name(path))
		}
		if l, ok := k.(List); ok {
			k = l.item(-1)
		}
		if sub, ok := k.(Group); ok {
			homes = append(homes, sub.homes(join(path, f.Key), key)...)
		}
	}
	return homes
}

// meant says which of the words somebody meant: the nearest one if it is near
// enough, otherwise all of them.
func meant(s string, words []string) string {
	if near := nearest(s, words); near != "" {
		return near
	}
	return enumerate(words)
}

// enumerate gives "a", "a or b", "a, b or c".
func enumerate(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// nearest is the word that takes the fewest slips of the keyboard to become s;
// empty if even that takes more than about a quarter of its letters.
func nearest(s string, words []string) string {
	best, least := "", 0
	s = strings.ToLower(s)
	for _, w := range words {
		most := max(1, (len(w)+2)/4)
		if len(s) > len(w)+most {
			continue
		}
		if d := slips(s, strings.ToLower(w)); d <= most && d < len(w) && (best == "" || d < least) {
			best, least = w, d
		}
	}
	return best
}

// slips counts the letters left out, put in, mistaken or swapped with their
// neighbour between two words (the optimal string alignment distance).
func slips(a, b string) int {
	before, row, next := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		next[0] = i
		for j := 1; j <= len(b); j++ {
			swap := row[j-1]
			if a[i-1] != b[j-1] {
				swap++
			}
			next[j] = min(row[j]+1, next[j-1]+1, swap)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				next[j] = min(next[j], before[j-2]+1)
			}
		}
		before, row, next = row, next, before
	}
	return row[len(b)]
}
