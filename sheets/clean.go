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
		s := m.trial(d)
		sum += faultsOf(s, m.figures) + strained(s.Marks)
	}
	return sum
}

// faultsOf is how bad the faults of a sheet are, as the audit finds them.
func faultsOf(s *draw.Sheet, f draw.Figures) int {
	sum := 0
	for _, found := range s.Audit(f) {
		sum += faultWeight(found.Rule)
	}
	return sum
}

// strained counts the leaders that are so long that one loses them on the way.
func strained(marks []draw.Mark) int {
	const short, long = 60, 110 // mm on paper: of marks; of notes, whose column stands off
	n := 0
	for _, m := range marks {
		length := 0.0
		for i := 1; i < len(m.Leader); i++ {
			length += m.Leader[i].Sub(m.Leader[i-1]).Len()
		}
		if length > long || length > short && m.Kind != draw.NoteMark {
			n++
		}
	}
	return n
}

// cleanestOrder places words group by group, in the order given or, if that
// has faults, in the turned order that has the fewest.
func (p *page) cleanestOrder(groups []func()) {
	before := p.placer.State()
	placeFrom := func(first int) int {
		p.placer.Back(before)
		for i := range groups {
			groups[(first+i)%len(groups)]()
		}
		return faultsOf(p.sheet, p.hand.Figures) + strained(p.sheet.Marks)
	}
	best, fewest := 0, math.MaxInt
	for first := range groups {
		n := placeFrom(first)
		if n == 0 {
			return
		}
		if n < fewest {
			best, fewest = first, n
		}
	}
	placeFrom(best)
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
