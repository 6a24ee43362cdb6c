package sheets

import (
	"fmt"
	"iter"
	"math"
	"math/rand/v2"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
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

// cleanestOrder places words in the order given. If that has faults, those that
// are part of one go to the front, where they find the room that they need, and
// all is placed again, a few times over; the order with the fewest faults stays.
func (p *page) cleanestOrder(words ...func()) {
	before := p.placer.State()
	o := orders{page: p, words: words, before: before, tried: map[string]bool{}}
	order := make([]int, len(words))
	for i := range order {
		order[i] = i
	}
	faults, guilty := o.place(order)
	if faults == 0 {
		return
	}
	p.placer.Back(before)
	there := faultsOf(p.sheet, p.hand.Figures) + strained(p.sheet.Marks) // whatever the order
	best, fewest := order, faults
	var stands []int // the order in which the words now stand on the sheet
	for range mostOrders {
		next := o.promoted(order, guilty)
		if fewest <= there || next == nil {
			break
		}
		order, stands = next, next
		if faults, guilty = o.place(order); faults < fewest {
			best, fewest = order, faults
		}
	}
	const same = 1 // every run shuffles alike
	shuffle := rand.New(rand.NewPCG(same, same))
	for range moreOrders {
		if fewest-there < poor {
			break
		}
		next := shuffle.Perm(len(words))
		stands = next
		if faults, _ = o.place(next); faults < fewest {
			best, fewest = next, faults
		}
	}
	if !slices.Equal(stands, best) {
		o.place(best)
	}
}

// mostOrders bounds the search: words that a dozen orders cannot part lack room,
// and moreOrders what is spent on the few sheets that would else mislead.
const (
	mostOrders = 12
	moreOrders = 150
)

// orders is a search for the order in which to place words.
type orders struct {
	page   *page
	words  []func()
	before draw.State
	tried  map[string]bool
}

// place places the words in an order and tells how bad the faults then are, and
// which words are part of them, the last placed of each fault first.
func (o *orders) place(order []int) (faults int, guilty []int) {
	o.tried[fmt.Sprint(order)] = true
	p := o.page
	p.placer.Back(o.before)
	owner := make([]int, len(p.sheet.Marks)) // of each mark; what was there before has none
	for i := range owner {
		owner[i] = -1
	}
	for _, w := range order {
		o.words[w]()
		for len(owner) < len(p.sheet.Marks) {
			owner = append(owner, w)
		}
	}
	found := p.sheet.Audit(p.hand.Figures)
	for _, f := range found {
		faults += faultWeight(f.Rule)
	}
	for _, i := range blamed(p.sheet.Marks, found) {
		if w := owner[i]; w >= 0 && !slices.Contains(guilty, w) {
			guilty = append(guilty, w)
		}
	}
	return faults + strained(p.sheet.Marks), guilty
}

// promoted is an order not tried yet, with some guilty words in front; nil if
// there is none.
func (o *orders) promoted(order, guilty []int) []int {
	for _, w := range guilty {
		next := append([]int{w}, slices.DeleteFunc(slices.Clone(order), func(x int) bool { return x == w })...)
		if !o.tried[fmt.Sprint(next)] {
			return next
		}
	}
	return nil
}

// blamed are the marks that are part of a fault, the last ones first: those whose
// leaders cross or are too long, and those whose words or leader a finding is
// about.
func blamed(marks []draw.Mark, found []draw.Finding) []int {
	const about = 1.0 // mm on paper, from words to the place of a finding
	var out []int
	for i := len(marks) - 1; i >= 0; i-- {
		m := marks[i]
		bad := strained(marks[i:i+1]) > 0 || slices.ContainsFunc(found, func(f draw.Finding) bool {
			return f.Rule != draw.RuleLeaderCross && (m.Box.Expand(about).Contains(f.At) || passes(m.Leader, f.At))
		})
		for k := 0; k < len(marks) && !bad; k++ {
			bad = k != i && m.Crosses(marks[k])
		}
		if bad {
			out = append(out, i)
		}
	}
	return out
}

// passes reports whether a leader, the dot at its end included, leads through a
// point or past it closer than words may stand.
func passes(line []geom.Pt, at geom.Pt) bool {
	const on = 1.2 // mm on paper
	for i := 1; i < len(line); i++ {
		if nearest(at, line[i-1], line[i]).Sub(at).Len() < on {
			return true
		}
	}
	return false
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
// fine, and a leader that misleads is as bad as a line through words.
const (
	unreadable = 9
	poor       = 3
	plain      = 1
)

func faultWeight(r draw.Rule) int {
	switch r {
	case draw.RuleTextOnText, draw.RuleTextOnEdge, draw.RuleOutside:
		return unreadable
	case draw.RuleTextOnLine, draw.RuleLeaderCross, draw.RuleLeaderEnd:
		return poor
	}
	return plain
}
