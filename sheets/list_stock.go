package sheets

import (
	"fmt"
	"strconv"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom/cutting"
	"plumbcut/geom/frame"
)

// The titles of the sheets of lists.
const (
	timberTitle   = "Cutting and stock lists"
	hardwareTitle = "Hardware and concrete"
	allListsTitle = "Cutting and order lists"
)

// listSheets lay out the lists that a builder orders and loads by: of the
// timber, what to buy, and by section the pieces and the sticks that they are
// cut from, drawn as bars; of the rest, numbers and packs. All go on the same
// sheets where that saves one.
func (m *maker) listSheets() []draft {
	long, loose := m.longestStick(), m.looseLists()
	made := map[[2]float64]timberLists{} // by width and scale
	lists := func(f *listFlow, scale float64) timberLists {
		key := [2]float64{f.across(), scale}
		if _, ok := made[key]; !ok {
			made[key] = m.timberLists(f.across(), scale)
		}
		return made[key]
	}
	timber := m.laidList(list{timberTitle, []string{"cutting list", "stock list"}, long, func(f *listFlow, scale float64) { lists(f, scale).fill(f) }})
	hardware := m.laidList(list{hardwareTitle, []string{"hardware list"}, 0, func(f *listFlow, _ float64) { loose.fill(f, true) }})
	all := m.laidList(list{allListsTitle, []string{"cutting list", "stock list", "hardware list"}, long, func(f *listFlow, scale float64) {
		lists(f, scale).fill(f)
		loose.fill(f, false)
	}})
	if len(all) < len(timber)+len(hardware) {
		return all
	}
	return append(timber, hardware...)
}

// list is what one run of sheets holds.
type list struct {
	title  string
	topics []string
	long   float64 // the longest bar in it, mm of the stick; 0: there are none
	fill   func(f *listFlow, scale float64)
}

// laidList lays a list out. Of the scales for its bars it uses the one that takes
// the fewest sheets, and of those the largest; of the height of the columns no
// more than that number of sheets needs.
func (m *maker) laidList(l list) []draft {
	lay := func(scale, share float64) []draft {
		f := m.newList(l.title, max(cuttingWidth, l.long*scale), share)
		if l.long*scale > f.across() {
			return nil
		}
		l.fill(f, scale)
		return f.drafts(l.title, l.topics...)
	}
	var best []draft
	at := 0.0
	for _, scale := range barScales() {
		if len(best) == 1 || best != nil && l.long == 0 || best != nil && scale < smallestBar {
			break
		}
		if d := lay(scale, 1); d != nil && (best == nil || len(d) < len(best)) {
			best, at = d, scale
		}
	}
	// The least share of the height that takes no more sheets.
	lo, hi := 0, len(shares())-1
	for lo < hi {
		mid := (lo + hi) / 2
		if d := lay(at, shares()[mid]); len(d) == len(best) {
			best, hi = d, mid
		} else {
			lo = mid + 1
		}
	}
	return best
}

// barScales are those to try for the bars, the largest first.
func barScales() []float64 { return []float64{1. / 20, 1. / 50, 1. / 100, 1. / 200, 1. / 500} }

// smallestBar is the scale under which bars are drawn only if they do not fit
// otherwise: names would no longer stand in them.
const smallestBar = 1. / 101

// longestStick is the longest that is bought.
func (m *maker) longestStick() float64 {
	longest := 0.0
	for _, b := range m.batches {
		for _, s := range b.Sticks() {
			longest = max(longest, s.Length.Length)
		}
	}
	return longest
}

// timberLists are the lists of the timber for columns of one width, measured.
type timberLists struct {
	buy     tabled
	notes   block
	batches []batchLists
}

// batchLists are the lists of one section.
type batchLists struct {
	pieces tabled
	bars   []block
	whole  barStack // all of it
}

// timberLists makes the lists of the timber with bars at a scale.
func (m *maker) timberLists(wide, scale float64) timberLists {
	l := timberLists{
		buy:   newTabled(draw.NoteBlock{Title: "Timber to buy", Width: wide}, m.buyTable(min(wide, buyWidth))),
		notes: measured(&wordBlock{draw.NoteBlock{Title: "How to read these lists", Numbered: true, Notes: m.timberNotes(scale), Width: min(wide, buyWidth)}}),
	}
	for _, b := range m.batches {
		heading := draw.NoteBlock{Title: m.section(b.Section), Notes: batchWords(b), Width: wide}
		part := batchLists{pieces: newTabled(heading, m.cuttingTable(b, wide))}
		for i, s := range b.Sticks() {
			bar := block(m.newBar(b, s, scale, wide))
			if i == 0 {
				bar = under(draw.NoteBlock{Notes: m.stickNotes(b), Width: wide}, bar)
			}
			part.bars = append(part.bars, bar)
		}
		part.whole = newBarStack(append([]block{part.pieces.whole}, part.bars...))
		l.batches = append(l.batches, part)
	}
	return l
}

// fill puts the lists into columns. Those of a section stand in one if they fit
// in one.
func (l timberLists) fill(f *listFlow) {
	f.addTabled(l.buy)
	f.add(l.notes)
	for _, b := range l.batches {
		if f.fits(b.whole) {
			f.add(b.whole)
			continue
		}
		f.addTabled(b.pieces)
		for _, bar := range b.bars {
			f.add(bar)
		}
	}
}

// buyWidth is the greatest width of the table of what to buy, and of the notes,
// mm on paper: lines that are longer are hard to follow.
const buyWidth = 172.0

// buyTable is what the merchant is asked for.
func (m *maker) buyTable(width float64) draw.Table {
	priced := false
	for _, b := range m.batches {
		priced = priced || b.Plan.Priced && b.Plan.Cost > 0
	}
	t := draw.Table{Columns: []draw.Column{{Head: "Section"}, {Head: "Timber"}, figureColumn("Sticks"), figureColumn("Run")}}
	if priced {
		t.Columns = append(t.Columns, figureColumn("Price"))
	}
	run, cost := 0.0, int64(0)
	for _, b := range m.batches {
		lines := m.buyLines(b)
		for i, l := range lines {
			cells := []string{"", "", l.words, m.figures.Run(l.run)}
			if i == 0 {
				cells[0], cells[1] = m.section(b.Section), strings.Join(batchWords(b), " ")
			}
			if priced && l.priced {
				cells = append(cells, money(l.cost))
			}
			t.Rows = append(t.Rows, draw.TableRow{Cells: cells})
			run += l.run
			cost += l.cost
		}
	}
	total := []string{"all", "", "", m.figures.Run(run)}
	if priced {
		total = append(total, money(cost))
	}
	t.Rows = append(t.Rows, draw.TableRow{Bold: true, Cells: total})
	// The words of the timber take what the others leave.
	t.Columns[1].Width = 1
	w, _ := t.Size()
	t.Columns[1].Width = max(width-w, leastWords)
	return t
}

// leastWords is the least width of a column of words, mm on paper.
const leastWords = 30.0

// buyLine is one line of an order: so many sticks of one length.
type buyLine struct {
	words  string
	count  int
	length float64 // of each
	run    float64
	cost   int64
	priced bool
	made   bool // ordered by its length, not one of the lengths sold
}

// buyLines add up the sticks of a batch by length, the longest first, and what
// has to be ordered by its length.
func (m *maker) buyLines(b frame.Batch) []buyLine {
	counts := make([]int, len(b.Lengths))
	for _, s := range b.Plan.Sticks {
		counts[s.Stock]++
	}
	var out []buyLine
	for i := len(counts) - 1; i >= 0; i-- {
		if counts[i] == 0 {
			continue
		}
		l := b.Lengths[i]
		out = append(out, buyLine{
			words: fmt.Sprintf("%d × %s", counts[i], m.figures.Length(l.Length)), count: counts[i], length: l.Length,
			run: float64(counts[i]) * l.Length, cost: int64(counts[i]) * frame.Coins(l.Price), priced: l.Priced,
		})
	}
	for _, c := range b.Cuts {
		if c.Order {
			out = append(out, buyLine{
				words: fmt.Sprintf("%d × %s to order", c.Count(), m.tapeFigures().Length(c.Cut())), count: c.Count(), length: c.Cut(),
				run: float64(c.Count()) * c.Cut(), made: true,
			})
		}
	}
	return out
}

// money is a sum in coins as a price.
func money(coins int64) string { return strconv.FormatFloat(frame.Money(coins), 'f', 2, 64) }

// stickNotes say whether the plan of a batch is the best there is and what it
// leaves.
func (m *maker) stickNotes(b frame.Batch) []string {
	sums := b.Plan.Sums
	if sums.Bought == 0 {
		return nil
	}
	share := strconv.FormatFloat(100*float64(sums.Bought-sums.Cuts)/float64(sums.Bought), 'f', 0, 64)
	return []string{fmt.Sprintf("%s of pieces from %s bought; %s %% is sawn off or left over. %s", m.figures.Run(sums.Cuts.Millimetres()), m.figures.Run(sums.Bought.Millimetres()), share, m.proof(b.Plan))}
}

// proof says in words how good a plan is known to be.
func (m *maker) proof(p cutting.Plan) string {
	cost := p.Objective == cutting.LeastCost
	switch {
	case p.Proven && cost:
		return "Proven: no choice of these sticks costs less."
	case p.Proven:
		return "Proven: no choice of these sticks is less in length."
	case cost:
		return fmt.Sprintf("Not proven to cost least: it costs %s, and no choice of these sticks costs less than %s.", money(p.Value), money(p.Bound))
	}
	return fmt.Sprintf("Not proven to be least: it takes %s, and no choice of these sticks takes less than %s.",
		m.figures.Run(cutting.Length(p.Value).Millimetres()), m.figures.Run(cutting.Length(p.Bound).Millimetres()))
}

// timberNotes say how the lists are read and what they reckon with.
func (m *maker) timberNotes(scale float64) []string {
	s := m.job.Stock
	defects := "Nothing is set aside for knots and splits: look every stick over before it is cut."
	if s.Defects > 0 {
		defects = percent(s.Defects) + " of each stick is set aside for knots and splits; it is hatched with what is left over."
	}
	notes := []string{
		"Sections are actual sizes, depth × width. Measure what is delivered and put it into the job file before marking.",
		"Finished is from long point to long point. Cut to is what comes off the saw first: where it is longer, the last cut waits until the site is measured. Angles and housings are on the member drawings.",
		"Marks are those of the drawings. A left and a right hand of one mark are mirror images, not the same piece. Tick a row when it is cut, and write the mark on the end of every piece.",
		fmt.Sprintf("Each bar is a stick, drawn at 1:%.0f with its pieces in the order of cutting; what is left over is hatched. A saw cut takes %s, and %s is trimmed off each end. %s", 1/scale, m.fine(s.Kerf), m.fine(s.EndTrim), defects),
		"Lengths that are sold differ from yard to yard: put those of yours into the job file, with prices if you know them, and the lists are made anew. Nothing is added for spare sticks.",
	}
	for _, b := range m.batches {
		for _, c := range b.Cuts {
			if c.Part > 0 {
				return append(notes, "A letter after a mark, as in "+c.Mark+", is a part of a timber that is longer than any stick that is sold. How the parts are joined is for a licensed person to design.")
			}
		}
	}
	return notes
}
