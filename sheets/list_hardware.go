package sheets

import (
	"fmt"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom/frame"
)

// looseLists are the lists of what is bought in boxes, bags and tins.
type looseLists struct {
	hardware, concrete tabled
	packs              block
	notes              []string
}

func (m *maker) looseLists() looseLists {
	faces := m.frame.CutFaces()
	head := func(title string) draw.NoteBlock { return draw.NoteBlock{Title: title, Width: cuttingWidth} }
	return looseLists{
		newTabled(head("Hardware"), m.hardwareTable()), newTabled(head("Concrete"), m.concreteTable()),
		under(head("To order by the pack"), &tableBlock{m.packTable(faces)}), m.hardwareNotes(faces),
	}
}

// fill puts the lists into columns, each part into one of its own if asked.
func (l looseLists) fill(f *listFlow, apart bool) {
	beside := func() {
		if apart {
			f.nextBeside()
		}
	}
	if len(l.hardware.table.Rows) > 0 {
		f.addTabled(l.hardware)
		beside()
	}
	if len(l.concrete.table.Rows) > 0 {
		f.addTabled(l.concrete)
	}
	f.add(l.packs)
	beside()
	f.add(&wordBlock{draw.NoteBlock{Title: "How hardware and concrete are reckoned", Numbered: true, Notes: l.notes, Width: min(f.across(), buyWidth)}})
}

// hardwareTable has a row for each kind, size and use.
func (m *maker) hardwareTable() draw.Table {
	t := draw.Table{Columns: []draw.Column{
		{Head: "Item"}, {Head: "Size", Width: 30}, {Head: "Use", Width: 34}, figureColumn("In frame"), figureColumn("Order"),
	}}
	for _, h := range m.frame.HardwareTotals() {
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{
			string(h.Kind), m.hardwareSize(h.Kind, h.Size), uses(h), fmt.Sprint(h.Count), fmt.Sprint(h.Order),
		}})
	}
	return t
}

// uses says what hardware does, with the number of each use where there are
// several.
func uses(h frame.HardwareTotal) string {
	var parts []string
	for _, u := range h.Uses {
		if len(h.Uses) == 1 {
			return u.Use
		}
		parts = append(parts, fmt.Sprintf("%d %s", u.Count, u.Use))
	}
	return strings.Join(parts, ", ")
}

// hardwareSize is a size in words; what the job does not say is asked for.
func (m *maker) hardwareSize(kind frame.HardwareKind, s frame.HardwareSize) string {
	switch kind {
	case frame.Washer, frame.Nut:
		return "for Ø " + m.fine(s.Diameter)
	case frame.ThreadedRod:
		return "Ø " + m.fine(s.Diameter) + ", " + m.figures.Length(s.Length) + " long"
	case frame.StrapTie, frame.DiagonalStrap:
		if s.Thickness == 0 {
			return m.fine(s.Width) + " wide, " + m.figures.Length(s.Length) + " long, thickness " + toBeStated
		}
		return m.fine(s.Width) + " × " + m.fine(s.Thickness) + " × " + m.figures.Length(s.Length)
	case frame.StrapNail:
		return toBeStated
	case frame.Tensioner:
		return stated(m.job.RoofStraps.Tension)
	case frame.SheetOfRoof:
		thick := "thickness " + toBeStated
		if s.Thickness > 0 {
			thick = m.fine(s.Thickness) + " thick"
		}
		return m.figures.Length(s.Width) + " wide, " + m.figures.Length(s.Length) + " long, " + thick
	case frame.GutterLength:
		return m.figures.Size(s.Thickness, s.Width) + ", " + m.figures.Length(s.Length) + " long"
	case frame.DownpipeLength:
		return "Ø " + m.fine(s.Diameter) + ", " + m.figures.Length(s.Length) + " long"
	case frame.FlashingLength:
		return m.figures.Length(s.Width) + " girth, " + m.figures.Length(s.Length) + " long"
	case frame.Stirrup, frame.Shoes:
		return "for a post " + m.figures.Length(s.Width) + " wide"
	}
	switch {
	case s.Diameter == 0 && s.Length == 0:
		return toBeStated
	case s.Length == 0:
		return "Ø " + m.fine(s.Diameter) + ", length " + toBeStated
	case s.Diameter == 0:
		return m.figures.Length(s.Length) + " long, Ø " + toBeStated
	}
	return "Ø " + m.fine(s.Diameter) + " × " + m.figures.Length(s.Length)
}

// concreteTable has a row for each footing, and the bags.
func (m *maker) concreteTable() draw.Table {
	t := draw.Table{Columns: []draw.Column{
		{Head: "Footing"}, {Head: "Post"}, figureColumn("Hole"), figureColumn("Depth"), figureColumn("Concrete"),
	}}
	for _, mb := range m.frame.Of(frame.KindFooting) {
		g := m.job.Posts.At[mb.No-1].Footing
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{
			mb.Mark, fmt.Sprint(mb.No), holeSize(m.figures, g), m.figures.Length(g.Depth), m.figures.FineVolume(m.frame.ConcreteVolume(mb)),
		}})
	}
	if !m.dug() {
		return t
	}
	t.Rows = append(t.Rows, draw.TableRow{Bold: true, Cells: []string{"all", "", "", "", m.concreteSum()}})
	return t
}

// concreteSum is the concrete of all footings as printed, so that it is the sum
// of the figures above it.
func (m *maker) concreteSum() string {
	sum := 0.0
	for _, mb := range m.frame.Of(frame.KindFooting) {
		sum += m.figures.RoundFineVolume(m.frame.ConcreteVolume(mb))
	}
	return m.figures.FineVolume(sum)
}

// packTable says how much of what is sold in packs to order.
func (m *maker) packTable(faces frame.CutFaces) draw.Table {
	t := draw.Table{Columns: []draw.Column{
		{Head: "What", Width: 42}, figureColumn("Takes"), figureColumn("With waste"), {Head: "Order", Width: 27},
	}}
	add := func(cells ...string) { t.Rows = append(t.Rows, draw.TableRow{Cells: cells}) }
	s := m.job.Supplies
	c := m.frame.Concrete()
	bag := bags(noBreaks(s.Bag))
	if m.dug() {
		add("Concrete, in "+bag+" that give "+noBreaks(m.yield(c.Pack))+" each", m.concreteSum(), m.figures.FineVolume(c.Gross()), fmt.Sprintf("%d %s", c.Packs(), bag))
	}
	if a := m.frame.Adhesive(); a.Net > 0 {
		add("Adhesive round the rods, in cartridges of "+m.figures.SmallVolume(a.Pack), m.figures.SmallVolume(a.Net), m.figures.SmallVolume(a.Gross()),
			fmt.Sprintf("%d %s", a.Packs(), plural("cartridge", a.Packs())))
	}
	if n := m.frame.RodBars(); n > 0 {
		rods := m.rodWords()
		for _, w := range rods[:len(rods)-1] {
			add("Rods", w, "", "as below")
		}
		add("Bars of "+m.figures.Length(m.job.Posts.Rod.Bar)+" for the rods", rods[len(rods)-1], "", fmt.Sprintf("%d %s", n, plural("bar", n)))
	}
	add(fmt.Sprintf("Primer on cut faces, %g %s", s.Coats, coats(s.Coats)), m.figures.FineArea(faces.Total()), "", litres(m.frame.Primer(faces.Total())))
	return t
}

// rodWords count the rods of each length.
func (m *maker) rodWords() []string {
	var order, out []string
	count := map[string]int{}
	for _, l := range m.frame.RodLengths() {
		w := m.figures.Length(l)
		if count[w] == 0 {
			order = append(order, w)
		}
		count[w]++
	}
	for _, w := range order {
		out = append(out, fmt.Sprintf("%d × %s", count[w], w))
	}
	return out
}

// bags are those of the concrete, by their name if the job gives one.
func bags(name string) string {
	if name == "" {
		return "bags"
	}
	return "bags of " + name
}

// yield is what a bag gives.
func (m *maker) yield(mm3 float64) string {
	if m.job.Units == frame.FeetInches {
		return m.figures.FineVolume(mm3)
	}
	return litres(mm3)
}

// squareMetre is one in square millimetres.
const squareMetre = 1e6

func coats(n float64) string {
	if n == 1 {
		return "coat"
	}
	return "coats"
}

// hardwareNotes say what was counted and what is left to others.
func (m *maker) hardwareNotes(faces frame.CutFaces) []string {
	s := m.job.Supplies
	notes := []string{
		"Numbers are counted from the model. Sizes, numbers and corrosion protection of fixings are for a licensed person to confirm before they are bought.",
		fmt.Sprintf("Order is the number in the frame and %s more of what is small enough to lose, rounded up. Rods, stirrups and shoes have no spares.", percent(s.HardwareSpares)),
	}
	if m.dug() {
		notes = append(notes, fmt.Sprintf("Concrete is the hole with its collar less the post in it, and %s more. A hole that is dug wider takes more: measure it.", percent(s.ConcreteWaste)))
	}
	if a := m.frame.Adhesive(); a.Net > 0 {
		notes = append(notes, fmt.Sprintf("Adhesive fills the hole in each post round its rod, and %s more. Follow its maker's sheet.", percent(s.AdhesiveWaste)))
	}
	notes = append(notes, fmt.Sprintf("Cut faces are both ends of every piece, %s, and housings, seats and chamfers, %s. Holes are not in it. A litre covers %s once.",
		noBreaks(m.figures.FineArea(faces.Ends)), noBreaks(m.figures.FineArea(faces.Joints)), noBreaks(m.figures.FineArea(s.Spread*squareMetre))))
	if len(m.frame.Of(frame.KindPacker)) > 0 {
		notes = append(notes, "Packers are cut from timber: see the cutting list.")
	}
	if m.hasRoof() {
		notes = append(notes, "Roof sheets, gutter, downpipes and flashing are counted at the sizes stated, without spares or the laps of what is sold shorter. Their screws, brackets, end pieces and closures are as their makers state, and not counted.")
	}
	if x := m.job.Plate.Fixing.Stated; x != "" {
		notes = append(notes, "Stated by others of the wall plate's "+m.fixer()+"s: "+x+".")
	}
	if asked := m.notStated(); asked != "" {
		notes = append(notes, "To be stated before ordering: "+asked+".")
	}
	return notes
}

// notStated names what the job does not say of its hardware.
func (m *maker) notStated() string {
	var out []string
	for _, h := range m.frame.HardwareTotals() {
		if strings.Contains(m.hardwareSize(h.Kind, h.Size), toBeStated) {
			out = append(out, "the size of each "+string(h.Kind)+", "+uses(h))
		}
	}
	return strings.Join(out, "; ")
}
