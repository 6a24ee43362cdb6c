package sheets

import (
	"cmp"
	"math"
	"slices"

	"plumbcut/geom/frame"
)

// sectionScale is the largest scale tried for the cross-section.
const sectionScale = 1.0 / 10

// sectionTitle is the title of its sheet.
const sectionTitle = "Cross-section"

// sectionSheets lays out the cross-section, with its words round it or, on a
// small sheet, in lists.
func (m *maker) sectionSheets() []draft {
	c := m.newCross()
	pic := c.see()
	section := c.laidOut(pic, keyed)
	topics := []string{onSection}
	for _, scale := range m.scales(sectionScale) {
		one := []float64{scale}
		if a, ok := arrange(m.hand, m.room(sectionTitle), one, grid{{c.laidOut(pic, wide)}}, grid{{c.laidOut(pic, high)}}, grid{{c.laidOut(pic, tight)}}); ok {
			return []draft{{sectionTitle, topics, a}}
		}
		if scale > oneSheetScale && m.job.Paper.Scale == 0 {
			continue
		}
		if a, ok := arrange(m.hand, m.room(sectionTitle), one, grid{{section, hung{section.lists(), section}}}, grid{{section}, {section.lists()}}); ok {
			return []draft{{sectionTitle, topics, a}}
		}
		if a, ok := arrange(m.hand, m.room(sectionTitle), one, grid{{section}}); ok {
			return append([]draft{{sectionTitle, topics, a}}, section.listSheets()...)
		}
	}
	return m.lay(sectionTitle, topics, m.scales(sectionScale), grid{{section}, {section.lists()}})
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
	for step := range places {
		off := half * float64(step) / places
		for _, x := range bays {
			for _, at := range []float64{x - off, x + off} {
				if !m.cutsStick(at) {
					return at
				}
			}
		}
	}
	return bays[0]
}

// cutsStick reports whether the plane at x meets a stick that the section is to
// show whole, or all but touches it.
func (m *maker) cutsStick(x float64) bool {
	const beside = 5 // mm: a plane this close to a face reads as a slip
	for _, b := range m.frame.Members {
		switch b.Kind {
		case frame.KindPost, frame.KindRafter, frame.KindPacker:
			box := b.Solid().Bounds()
			if x > box.Min.X-beside && x < box.Max.X+beside {
				return true
			}
		}
	}
	return false
}
