package sheets

import (
	"fmt"
	"strings"

	"plumbcut/geom/cutting"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
	"plumbcut/sheets/csv"
)

// ListNames are the names of the lists that Lists gives, in its order.
func ListNames() []string { return []string{"cutting", "stock", "hardware"} }

// Lists are the lists of the set for a spreadsheet: the cutting list with a row
// for each piece that differs, the stock list with a row for each stick that is
// cut differently, and the list of hardware and concrete. Lengths are numbers
// in millimetres, or in inches where the job is in feet and inches.
func Lists(f *frame.Frame) ([]csv.Table, error) {
	m, err := newMaker(f)
	if err != nil {
		return nil, err
	}
	names := ListNames()
	lists := []csv.Table{m.cuttingCSV(), m.stockCSV(), m.hardwareCSV()}
	for i := range lists {
		lists[i].Name = names[i]
	}
	return lists, nil
}

// plainWords is a cell of words in letters that every spreadsheet reads rightly,
// whatever it takes the file to be written in. What the job file says stays.
func plainWords(s string) csv.Cell {
	return csv.Words(strings.NewReplacer("Ø", "diameter", "×", "x", "\u00a0", " ").Replace(s))
}

// inUnit names a column of lengths with its unit.
func (m *maker) inUnit(head string) string {
	if m.job.Units == frame.FeetInches {
		return head + " (in)"
	}
	return head + " (mm)"
}

// length is a length as a number in the job's unit. Lengths are exact to a
// thousandth of a millimetre.
func (m *maker) length(mm float64) csv.Cell {
	if m.job.Units == frame.FeetInches {
		return csv.Number(mm/measure.Inch, 4)
	}
	return csv.Number(mm, 3)
}

func (m *maker) cutLength(l cutting.Length) csv.Cell { return m.length(l.Millimetres()) }

// timberHeads head the columns that timberCells fills.
func (m *maker) timberHeads() []string {
	return []string{m.inUnit("Depth"), m.inUnit("Width"), "Nominal", "Species", "Grade", "Treatment"}
}

func (m *maker) timberCells(s frame.Section, t frame.Timber) []csv.Cell {
	return []csv.Cell{m.length(s.Depth), m.length(s.Width), csv.Words(t.Nominal), csv.Words(stated(t.Species)), csv.Words(stated(t.Grade)), csv.Words(stated(t.Treatment))}
}

func (m *maker) cuttingCSV() csv.Table {
	t := csv.Table{Head: append([]string{"Mark", "Hand", "Count", "Member", m.inUnit("Finished"), m.inUnit("Cut to"), "Finished, as drawn", "Cut to, as drawn", "Where used", "Bought"}, m.timberHeads()...)}
	for _, b := range m.batches {
		for _, c := range b.Cuts {
			bought := "from stock"
			if c.Order {
				bought = "by its length"
			}
			t.Rows = append(t.Rows, append([]csv.Cell{
				csv.Words(c.Mark), csv.Words(string(c.Hand)), csv.Count(c.Count()), csv.Words(string(c.Kind)),
				m.length(c.Length()), m.length(c.Cut()), plainWords(m.tapeFigures().Length(c.Length())), plainWords(m.tapeFigures().Length(c.Cut())),
				csv.Words(m.whereUsed(c)), csv.Words(bought),
			}, m.timberCells(b.Section, b.Timber)...))
		}
	}
	return t
}

// stockCSV gives for each stick where its length goes: cuts, kerfs, trims, the
// allowance for defects and what is left over add up to the stick.
func (m *maker) stockCSV() csv.Table {
	t := csv.Table{Head: append([]string{
		"Count", m.inUnit("Stick"), "Stick, as sold", "Cut from each", m.inUnit("Cuts"), m.inUnit("Kerfs"), m.inUnit("Trims"), m.inUnit("Defects"), m.inUnit("Left over"),
		"Price each", "Price", "Proven least",
	}, m.timberHeads()...)}
	for _, b := range m.batches {
		for _, s := range b.Sticks() {
			sums := b.Plan.Sticks[s.Stick].Sums
			cells := []csv.Cell{
				csv.Count(s.Count), m.cutLength(sums.Bought), plainWords(m.figures.Length(s.Length.Length)), plainWords(strings.Join(m.barCuts(b, s), ", ")),
				m.cutLength(sums.Cuts), m.cutLength(sums.Kerfs), m.cutLength(sums.Trims), m.cutLength(sums.Defects), m.cutLength(sums.Offcuts), {}, {}, csv.Words(yes(b.Plan.Proven)),
			}
			if s.Length.Priced {
				const decimals = 2
				each := frame.Coins(s.Length.Price)
				cells[9], cells[10] = csv.Number(frame.Money(each), decimals), csv.Number(frame.Money(each*int64(s.Count)), decimals)
			}
			t.Rows = append(t.Rows, append(cells, m.timberCells(b.Section, b.Timber)...))
		}
		for _, c := range b.Cuts {
			if c.Order {
				cells := []csv.Cell{
					csv.Count(c.Count()), m.length(c.Cut()), plainWords(m.tapeFigures().Length(c.Cut())), csv.Words("1 " + handed(c) + ", ordered by its length"),
					m.length(c.Cut()), csv.Count(0), csv.Count(0), csv.Count(0), csv.Count(0), {}, {}, {},
				}
				t.Rows = append(t.Rows, append(cells, m.timberCells(b.Section, b.Timber)...))
			}
		}
	}
	return t
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

func (m *maker) hardwareCSV() csv.Table {
	t := csv.Table{Head: []string{"Item", "Size", "Use", "In the frame", "Unit", "Added (%)", "Order", "Order unit"}}
	add := func(cells ...csv.Cell) { t.Rows = append(t.Rows, cells) }
	const percents, fine = 100, 3
	for _, h := range m.frame.HardwareTotals() {
		add(csv.Words(string(h.Kind)), plainWords(m.hardwareSize(h.Kind, h.Size)), csv.Words(uses(h)), csv.Count(h.Count), csv.Words("pieces"),
			csv.Number(h.Spares*percents, 1), csv.Count(h.Order), csv.Words("pieces"))
	}
	const cubicMetre = 1e9
	for _, mb := range m.frame.Of(frame.KindFooting) {
		add(csv.Words("concrete, footing "+mb.Mark), plainWords(holeSize(m.figures, m.job.Posts.At[mb.No-1].Footing)), csv.Words(fmt.Sprintf("post %d", mb.No)),
			csv.Number(m.frame.ConcreteVolume(mb)/cubicMetre, fine+1), csv.Words("m3"))
	}
	if c := m.frame.Concrete(); m.dug() {
		add(csv.Words("concrete, all footings"), csv.Words(bags(m.job.Supplies.Bag)), csv.Words("footings"), csv.Number(c.Net/cubicMetre, fine+1), csv.Words("m3"),
			csv.Number(c.Waste*percents, 1), csv.Count(c.Packs()), csv.Words("bags"))
	}
	if a := m.frame.Adhesive(); a.Net > 0 {
		add(csv.Words("adhesive"), plainWords("cartridges of "+m.figures.SmallVolume(a.Pack)), csv.Words("round the rods"), csv.Number(a.Net/measure.Millilitre, 1), csv.Words("ml"),
			csv.Number(a.Waste*percents, 1), csv.Count(a.Packs()), csv.Words("cartridges"))
	}
	if n := m.frame.RodBars(); n > 0 {
		add(csv.Words("bars for threaded rods"), plainWords(m.figures.Length(m.job.Posts.Rod.Bar)+" long"), csv.Words(frame.UseBeamPost), csv.Count(len(m.job.Posts.At)), csv.Words("rods"),
			csv.Cell{}, csv.Count(n), csv.Words("bars"))
	}
	area := m.frame.CutFaces().Total()
	add(csv.Words("primer"), csv.Words(fmt.Sprintf("%g %s", m.job.Supplies.Coats, coats(m.job.Supplies.Coats))), csv.Words("cut ends, housings, seats and chamfers"),
		csv.Number(area/squareMetre, fine), csv.Words("m2"), csv.Cell{}, csv.Number(m.frame.Primer(area)/measure.Litre, fine), csv.Words("litres"))
	return t
}
