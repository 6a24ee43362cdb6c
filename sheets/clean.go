package sheets

import (
	"iter"
	"math"

	"plumbcut/draw"
)

// cleanest is the first of several layouts of the same sheets that has no
// fault when it is drawn, or else the one with the fewest, and how bad those
// are; nil if there is no layout. It draws each, looks at it as the audit does,
// and tries no more than it must.
func (m *maker) cleanest(tries iter.Seq[[]draft]) (best []draft, faults int) {
	faults = math.MaxInt
	for try := range tries {
		if n := m.faults(try); n < faults {
			best, faults = try, n
		}
		if faults == 0 {
			break
		}
	}
	return best, faults
}

// faults is how bad the faults of some sheets are in sum.
func (m *maker) faults(drafts []draft) int {
	sum := 0
	for _, d := range drafts {
		for _, f := range m.trial(d).Audit(m.figures) {
			sum += faultWeight(f.Rule)
		}
	}
	return sum
}

// trial draws a sheet whose place in the set is not known yet. Its marks lead
// to sheets with numbers as long as those that they will get.
func (m *maker) trial(d draft) *draw.Sheet {
	s := &draw.Sheet{Number: sheetNumber(0), Title: d.title, Paper: m.hand.Paper}
	s.DrawFrame(m.titleBlock(d, 0, 1))
	where := refs{}
	for _, det := range m.details {
		where[detailTopic(det.number)] = sheetNumber(0)
	}
	d.lay.draw(&page{sheet: s, hand: m.hand, placer: draw.NewPlacer(s, m.hand), refs: where})
	return s
}

// The weight of a fault: what cannot be read is worse than what is merely not
// fine.
const (
	unreadable = 9
	poor       = 3
	plain      = 1
)

func faultWeight(r draw.Rule) int {
	switch r {
	case draw.RuleTextOnText, draw.RuleOutside:
		return unreadable
	case draw.RuleTextOnLine:
		return poor
	}
	return plain
}
