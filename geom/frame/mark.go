package frame

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// mark gives alike sticks one part mark and counts them. A stick and its
// mirror image share the mark and differ by hand.
func (b *builder) mark() {
	type group struct {
		mark string
		key  string // of the first stick met
	}
	groups := map[string]*group{} // by key and by the mirror image's key
	count := map[Kind]int{}
	quantity := map[string]int{}
	both := map[string]bool{} // marks of which both hands were met
	keys := make([]string, len(b.members))
	for i := range b.members {
		m := &b.members[i]
		keys[i] = alike(*m, false)
		g, ok := groups[keys[i]]
		if !ok {
			count[m.Kind]++
			g = &group{mark: fmt.Sprintf("%s%d", m.Kind.traits().letters, count[m.Kind]), key: keys[i]}
			groups[g.key] = g
			if mirror := alike(*m, true); groups[mirror] == nil {
				groups[mirror] = g
			}
		}
		m.Mark = g.mark
		quantity[keys[i]]++
		both[g.mark] = both[g.mark] || keys[i] != g.key
	}
	for i := range b.members {
		m := &b.members[i]
		m.Quantity = quantity[keys[i]]
		switch {
		case !both[m.Mark]:
		case groups[keys[i]].key == keys[i]:
			m.Hand = LeftHand
		default:
			m.Hand = RightHand
		}
	}
}

// alikeStep and alikeShift decide which sizes count as the same: to the
// micrometre. The shift keeps round figures off the edges between steps, so
// that rounding errors do not part sticks that are alike.
const (
	alikeStep  = 1e-3
	alikeShift = 0.137
)

func quantised(v float64) int64 { return int64(math.Floor(v/alikeStep + 0.5 + alikeShift)) }

// alike returns a text that two members of a kind share exactly when they are
// alike; of the member's mirror image if asked.
func alike(m Member, mirrored bool) string {
	fs := make([]string, len(m.Features))
	for i, f := range m.Features {
		if mirrored {
			f = f.Mirrored(m)
		}
		fs[i] = figureKey(f.Figures())
	}
	slices.Sort(fs) // in a mirror the same work is met in another order
	return fmt.Sprintf("%s|%d|%d|%d|%t|%+v|%s", m.Kind, quantised(m.Length), quantised(m.Section.Depth),
		quantised(m.Section.Width), m.Round, m.Timber, strings.Join(fs, ";"))
}

func figureKey(f FeatureFigures) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s,%s,%d", f.Kind, f.Face, quantised(f.At))
	for _, sizes := range []map[string]float64{f.Sizes, f.Angles} {
		names := make([]string, 0, len(sizes))
		for name := range sizes {
			names = append(names, name)
		}
		slices.Sort(names)
		for _, name := range names {
			fmt.Fprintf(&b, ",%s=%d", name, quantised(sizes[name]))
		}
	}
	return b.String()
}
