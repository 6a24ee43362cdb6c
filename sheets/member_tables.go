package sheets

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom/frame"
)

// measuredBy measures a block once.
func measuredBy(h draw.Hand, b block) sized { return sized{b, b.extent(h, 1)} }

// lists are what stands beside a member's drawing: tables, sections and notes.
type lists struct {
	marks    draw.Table
	wide     float64 // of the marking list
	sections []block
	tables   []block
	notes    []block             // the notes in several widths, of which one is taken
	split    map[float64][]block // the marking list in parts
}

func (s *timber) lists(ws []work) lists {
	l := lists{marks: s.markTable(ws), split: map[float64][]block{}}
	l.wide, _ = l.marks.Size()
	for _, b := range s.housingSections() {
		l.sections = append(l.sections, measuredBy(s.hand, b))
	}
	for _, b := range s.shapeViews() {
		l.sections = append(l.sections, measuredBy(s.hand, b))
	}
	for _, t := range append([]draw.Table{s.factTable(), s.cutTable(), s.housingTable(), s.holeTable()}, s.shapeTables()...) {
		if len(t.Rows) > 0 {
			l.tables = append(l.tables, measuredBy(s.hand, &tableBlock{t}))
		}
	}
	if n := s.battenEdges(); len(n.Notes) > 0 {
		n.Width = holdWidths()[0]
		l.tables = append(l.tables, measuredBy(s.hand, &wordBlock{n}))
	}
	if n := s.notes(ws); len(n.Notes) > 0 {
		for _, width := range holdWidths() {
			n.Width = width
			l.notes = append(l.notes, measuredBy(s.hand, &wordBlock{n}))
		}
	}
	return l
}

// listHeights are those to which a marking list is split, mm on paper, the
// first tried first.
func listHeights() []float64 { return []float64{180, 120, 90, 70, 55} }

// orders are the ways in which the lists are dealt: the marking list whole or
// in parts, sections before or after the tables.
func (l lists) orders(h draw.Hand) [][]block {
	var out [][]block
	parts := 0
	for _, height := range listHeights() {
		marks, ok := l.split[height]
		if !ok {
			for _, t := range l.marks.Split(height) {
				marks = append(marks, measuredBy(h, &tableBlock{t}))
			}
			l.split[height] = marks
		}
		if len(marks) == parts {
			continue
		}
		parts = len(marks)
		for i := range max(1, len(l.notes)) {
			notes := l.notes[min(i, len(l.notes)):min(i+1, len(l.notes))]
			out = append(out, slices.Concat(marks, l.tables, notes, l.sections))
			if len(l.sections) > 0 {
				out = append(out, slices.Concat(marks, l.sections, l.tables, notes), slices.Concat(l.sections, marks, l.tables, notes))
			}
		}
	}
	return out
}

// factTable says what the stick is.
func (s *timber) factTable() draw.Table {
	t := draw.Table{Title: s.Mark + ": " + string(s.Kind), Columns: []draw.Column{{Width: 32}, {Width: 44}}}
	add := func(name, value string) {
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{name, value}})
	}
	section := s.figures.Size(s.Section.Depth, s.Section.Width) + " actual"
	if n := s.Timber.Nominal; n != "" && s.Kind != frame.KindPacker {
		section += ", sold as " + n
	}
	add("Section", section)
	s.lengthFacts(add)
	s.stickFacts(add)
	if brace := s.braceFact(); brace != "" {
		add("Brace housings", brace)
	}
	add("Species, grade", stated(join(s.Timber.Species, s.Timber.Grade)))
	add("Treatment", stated(s.Timber.Treatment))
	add("Weight", s.weight())
	if straps := s.strapFact(); straps != "" {
		add("Straps, centred", straps)
	}
	return t
}

// lengthFacts gives the lengths from point to point; of a square stick there is
// one.
func (s *timber) lengthFacts(add func(name, value string)) {
	a, b := s.EndCut(frame.FaceStart), s.EndCut(frame.FaceEnd)
	if a.Slope == 0 && a.Plan == 0 && b.Slope == 0 && b.Plan == 0 && len(s.shapes()) == 0 {
		add("Length over all", s.fine.Length(s.Length))
		return
	}
	from, to := math.Inf(-1), math.Inf(1)
	for _, v := range []float64{0, s.Section.Width} {
		for _, w := range []float64{0, s.Section.Depth} {
			p, q := a.Meets(s.Member, v, w), b.Meets(s.Member, v, w)
			from, to = max(from, p), min(to, q)
		}
	}
	if b, ok := s.bevel(); ok {
		to = min(to, b.Foot(s.Section.Depth))
	}
	for _, sh := range s.shapes() {
		back, _ := sh.Reach()
		if sh.End == frame.FaceEnd {
			to = min(to, sh.At-back)
		} else {
			from = max(from, sh.At+back)
		}
	}
	add("Long to long point", s.fine.Length(s.Length))
	add("Short to short point", s.fine.Length(to-from))
	add(upperFirst(string(s.Faces()[3]))+" edge", s.fine.Length(s.topEdge()))
}

// stickFacts say what is cut from the stick that is bought.
func (s *timber) stickFacts(add func(name, value string)) {
	var parts []frame.Piece
	for _, p := range s.frame.Pieces() {
		if p.Member == s.index {
			parts = append(parts, p)
		}
	}
	for _, p := range parts {
		name := "Cut from the stick"
		if len(parts) > 1 {
			name = fmt.Sprintf("Part %d from the stick", p.Part)
		}
		value := s.fine.Length(p.Cut())
		if p.Extra > 0 {
			value += ", of which " + s.fine.Length(p.Extra) + " for the cut that waits"
		}
		add(name, value)
	}
}

func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}

// cutTable gives the saw settings of every cut that is not square.
func (s *timber) cutTable() draw.Table {
	t := draw.Table{Title: s.Mark + ": saw settings", Columns: []draw.Column{
		{Head: "cut"}, {Head: "off square"}, {Head: "rise on " + s.figures.Length(s.base())}, {Head: "mitre"}, {Head: "blade tilt"},
	}}
	add := func(name string, mitre, tilt float64) {
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{
			name, s.fine.Angle(mitre), s.fine.Length(s.base() * math.Tan(mitre)), s.setting(mitre), s.setting(tilt),
		}})
	}
	notched := false // all birdsmouths of a rafter are cut alike
	for _, f := range s.Features {
		switch f := f.(type) {
		case frame.EndCut:
			mitre, tilt := f.Saw()
			add(s.endName(f.End), mitre, tilt)
		case frame.SeatCut:
			add("seat, "+s.endName(f.End), f.Angle, 0)
		case frame.Birdsmouth:
			if !notched {
				add("birdsmouth", f.Angle, 0)
			}
			notched = true
		case frame.TailBevel:
			add("bevel", math.Abs(math.Pi/2-f.Angle-f.Splay), 0)
		case frame.Chamfer:
			add("chamfer", f.Angle, 0)
		}
	}
	return t
}

// base is the base on which the rise of an angle is given, mm.
func (s *timber) base() float64 {
	if s.job.Units == frame.FeetInches {
		const foot = 304.8
		return foot
	}
	return 100
}

// setting is a saw's setting in words.
func (s *timber) setting(a float64) string {
	if a == 0 {
		return "square"
	}
	return s.fine.Angle(a)
}

// doneWidth is that of the column to tick off in, mm on paper.
const doneWidth = 12

// howColumn is the column of a marking list that says what is done.
const howColumn = 5

// markTable is the marking list: the running figures to tick off, on the main
// face unless a mark names another.
func (s *timber) markTable(ws []work) draw.Table {
	t := draw.Table{Title: s.Mark + ": marking list, " + s.sideName(s.mainFace()), Columns: []draw.Column{
		{Head: "no."}, {Head: "mark"},
		{Head: "from", Align: draw.End}, {Head: "centre", Align: draw.End}, {Head: "to", Align: draw.End},
		{Head: "work"}, {Head: "hold"}, {Head: "done", Width: doneWidth},
	}}
	holds := s.holdsOf(ws)
	for i, w := range ws {
		name := w.name
		if w.face != s.mainFace() {
			name += ", " + s.faceName(w.face)
		}
		cells := []string{strconv.Itoa(i + 1), name}
		for _, stop := range []string{firstEdge, centreLine, secondEdge} {
			c := ""
			if at, ok := w.find(stop); ok {
				c = s.fine.Length(at)
			} else if stop == w.open {
				c = "end"
			}
			cells = append(cells, c)
		}
		t.Rows = append(t.Rows, draw.TableRow{Cells: append(cells, w.how, holdLabel(holds, w.hold), "")})
	}
	// On small paper what is done may take several lines.
	room := freeOf(s.room(memberTitle)).W()
	for _, width := range []float64{60, 50, 42, 34} {
		if w, _ := t.Size(); w <= room {
			break
		}
		t.Columns[howColumn].Width = width
	}
	return t
}

// battenEdges gives the places of the battens that lie on a rafter: a row of
// figures of its own would leave no stretch to break. Checks for battens are in
// the marking list.
func (s *timber) battenEdges() draw.NoteBlock {
	n := draw.NoteBlock{Title: s.Mark + ": battens on its top edge"}
	checked := slices.ContainsFunc(s.Features, func(f frame.Feature) bool {
		_, ok := f.(frame.Check)
		return ok
	})
	if s.Kind != frame.KindRafter || checked {
		return n
	}
	var at []string
	for i, b := range s.frame.Of(frame.KindBatten) {
		if run := s.frame.Setout.BattenRuns[i]; s.No-1 < run[0] || s.No-1 > run[1] {
			continue
		}
		at = append(at, strings.ReplaceAll(s.fine.Length(s.where.Local(houseEdge(b)).X), " ", "\u00a0"))
	}
	if len(at) > 0 {
		n.Notes = append(n.Notes, "House-side edge of each batten, from the datum end along the top edge: "+joined(at)+".")
	}
	return n
}

// holdLabel is the flag of a hold, "H1"; empty for none.
func holdLabel(holds []hold, key string) string {
	for i, h := range holds {
		if h.key == key {
			return "H" + strconv.Itoa(i+1)
		}
	}
	return ""
}

// holdWidths are those that the notes may have, mm on paper, the one that reads
// best first.
func holdWidths() []float64 { return []float64{78, 66, 110} }

// notes are the holds and what else must be known.
func (s *timber) notes(ws []work) draw.NoteBlock {
	n := draw.NoteBlock{Title: s.Mark + ": hold until measured"}
	for i, h := range s.holdsOf(ws) {
		n.Notes = append(n.Notes, fmt.Sprintf("H%d  %s", i+1, h.words))
	}
	n.Notes = append(n.Notes, s.shapeNote()...)
	return n
}
