package sheets

import (
	"cmp"
	"iter"
	"math"
	"slices"

	"plumbcut/geom/frame"
)

// sectionScale is the largest scale tried for the cross-section.
const sectionScale = 1.0 / 10

// sectionTitle is the title of its sheet.
const sectionTitle = "Cross-section"

// sectionSheets lays out the cross-section at the largest scale that fits, with
// its words round it or, on a small sheet or where that is crowded, in lists.
func (m *maker) sectionSheets() []draft {
	c := m.newCross()
	pic := c.see()
	for _, scale := range m.scales(sectionScale) {
		out, faults := m.cleanest(c.layouts(pic, scale, wide, high, tight))
		if out == nil && scale > oneSheetScale && m.job.Paper.Scale == 0 {
			if lists, n := m.cleanest(c.layouts(pic, scale, keyed)); len(lists) == 1 && n < poor {
				return lists
			}
			continue // rather smaller than with lists on another sheet
		}
		if faults >= poor {
			if lists, n := m.cleanest(c.layouts(pic, scale, keyed)); n < faults {
				out, faults = lists, n
			}
		}
		if faults >= poor && out != nil {
			if moved, n := m.cleanest(c.nudged(pic, scale)); n < faults {
				out = moved
			}
		}
		if out != nil {
			return out
		}
	}
	section := c.laidOut(pic, keyed)
	if _, ok := arrange(m.hand, m.room(sectionTitle), m.scales(sectionScale), grid{{section}}); !ok {
		c.bare = true // nothing else can be left to another sheet
		section = c.laidOut(pic, keyed)
	}
	return append(m.layAlone(sectionTitle, []string{onSection}, m.scales(sectionScale), section), section.listSheets()...)
}

// layouts are the ways to lay the section out at a scale that fit the sheet,
// that of the first form first.
func (c cross) layouts(pic picture, scale float64, forms ...crossForm) iter.Seq[[]draft] {
	return func(yield func([]draft) bool) {
		for _, form := range forms {
			for _, c.aside = range []bool{false, true} {
				if c.aside && form != tight {
					break
				}
				if out := c.placed(c.laidOut(pic, form), scale); out != nil && !yield(out) {
					return
				}
			}
		}
	}
}

// nudged are the same ways with the row of the battens and the drop farther out,
// where rings and other figures may leave them room.
func (c cross) nudged(pic picture, scale float64) iter.Seq[[]draft] {
	const step, most = 3.0, 12.0 // mm on paper
	return func(yield func([]draft) bool) {
		for c.nudge = step; c.nudge <= most; c.nudge += step {
			for out := range c.layouts(pic, scale, wide, high, tight, keyed) {
				if !yield(out) {
					return
				}
			}
		}
	}
}

// placed puts a section on its sheet at a scale, with its lists if it has any,
// beside it or on further sheets; nil if it does not fit.
func (m *maker) placed(section *cross, scale float64) []draft {
	room, one, topics := m.room(sectionTitle), []float64{scale}, []string{onSection}
	var further []draft
	if section.form == keyed {
		lists := section.lists()
		levels, rest := hung{lists[:1], section}, hung{lists[1:], section}
		if a, ok := arrange(m.hand, room, one, grid{{section, hung{lists, section}}}, grid{{section}, {lists}}, grid{{section, levels, rest}}); ok {
			return []draft{{sectionTitle, topics, a}}
		}
		further = section.listSheets()
	}
	a, ok := arrange(m.hand, room, one, grid{{section}})
	if !ok {
		return nil
	}
	return append([]draft{{sectionTitle, topics, a}}, further...)
}

// sectionX is where along the wall the section plane stands: in the bay nearest
// to the middle of the frame, and there at the place nearest to the middle of
// the bay that cuts no post, no rafter and no packer.
func (m *maker) sectionX() float64 {
	const places = 16 // tried in half a bay
	at := m.frame.Setout.Rafters
	middle := (at[0] + at[len(at)-1]) / 2
	half := m.frame.Setout.Centres / 2
	bays := make([]float64, 0, len(at))
	for i := 1; i < len(at); i++ {
		bays = append(bays, (at[i-1]+at[i])/2)
	}
	slices.SortStableFunc(bays, func(a, b float64) int {
		return cmp.Compare(math.Abs(a-middle), math.Abs(b-middle))
	})
	last := m.centre(len(m.job.Posts.At) - 1).X // the section looks at a post
	if m.frame.Setout.Skewed() {
		return m.besideRafter(middle, last)
	}
	for _, clear := range [][]frame.Kind{append(wholeInSection(), frame.KindLath), wholeInSection()} {
		for step := range places {
			off := half * float64(step) / places
			for _, x := range bays {
				for _, at := range []float64{x - off, x + off} {
					if !m.cutsStick(at, clear) && (at < last || bays[0] >= last) {
						return at
					}
				}
			}
		}
	}
	return bays[0]
}

// wholeInSection are the kinds of stick that the section is to show whole.
// Laths are too many to be clear of at any price.
func wholeInSection() []frame.Kind {
	return []frame.Kind{frame.KindPost, frame.KindRafter, frame.KindPacker}
}

// cutsStick reports whether the plane at x meets a stick of some kinds, or all but
// touches it.
func (m *maker) cutsStick(x float64, kinds []frame.Kind) bool {
	const beside = 5 // mm: a plane this close to a face reads as a slip
	for _, b := range m.frame.Members {
		if box := b.Solid().Bounds(); slices.Contains(kinds, b.Kind) && x > box.Min.X-beside && x < box.Max.X+beside {
			return true
		}
	}
	return false
}
