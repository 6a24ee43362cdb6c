package draw

import (
	"strconv"

	"plumbcut/geom"
)

// Table is a list with columns: members, levels, revisions, drawings. Its size
// is known before it is drawn.
type Table struct {
	Title   string // over the table; may be empty
	Columns []Column
	Rows    []TableRow
	open    bool // without its outer rules: something else frames it
	deep    int  // lines of a cell at most; 0: any number
}

// Column is a column of a table.
type Column struct {
	Head  string  // may be empty
	Width float64 // of the column, mm on paper; longer cells wrap. 0: as wide as its longest cell
	Align Align   // of the cells
}

// TableRow is a line of a table: one cell for each column.
type TableRow struct {
	Cells []string
	Link  string // number of the sheet that a click on the first cell leads to; may be empty
	Bold  bool
}

// The look of tables, mm on paper (own).
const (
	cellPadX     = 1.5
	cellPadY     = 1.2
	titleToTable = 2.0
)

// tablePlan is a table measured.
type tablePlan struct {
	widths []float64
	heads  []block
	headH  float64
	rows   [][]block
	rowH   []float64
	titleH float64
}

func (t Table) plan() tablePlan {
	p := tablePlan{widths: make([]float64, len(t.Columns))}
	if t.Title != "" {
		p.titleH = TitleHeight + titleToTable
	}
	hasHead := false
	for i, c := range t.Columns {
		p.widths[i] = c.Width
		if c.Width == 0 {
			p.widths[i] = t.natural(i)
		}
		hasHead = hasHead || c.Head != ""
		p.heads = append(p.heads, t.cell(c.Head, p.widths[i], true))
	}
	if hasHead {
		p.headH = rowHeight(p.heads)
	}
	for _, r := range t.Rows {
		row := make([]block, len(t.Columns))
		for i := range t.Columns {
			row[i] = t.cell(cellOf(r, i), p.widths[i], r.Bold)
		}
		p.rows = append(p.rows, row)
		p.rowH = append(p.rowH, rowHeight(row))
	}
	return p
}

// natural is the width of a column that takes every cell on one line.
func (t Table) natural(i int) float64 {
	w := TextWidth(t.Columns[i].Head, NoteHeight, true)
	for _, r := range t.Rows {
		w = max(w, TextWidth(cellOf(r, i), NoteHeight, r.Bold))
	}
	const slack = 1e-6 // mm: taking the pads off again must not break a line
	return w + 2*cellPadX + slack
}

// cellOf is a cell of a row; a row that is too short ends in empty ones.
func cellOf(r TableRow, i int) string {
	if i >= len(r.Cells) {
		return ""
	}
	return r.Cells[i]
}

func (t Table) cell(s string, width float64, bold bool) block {
	lines := Wrap(s, NoteHeight, bold, width-2*cellPadX)
	if t.deep > 0 {
		lines = shorten(lines, t.deep)
	}
	return block{lines: lines, height: NoteHeight, bold: bold}
}

// descent is the part of a letter height that hangs below the baseline.
const descent = 0.3

func rowHeight(cells []block) float64 {
	h := 0.0
	for _, c := range cells {
		h = max(h, c.depth())
	}
	return h + NoteHeight*descent + 2*cellPadY
}

func sum(xs []float64) float64 {
	total := 0.0
	for _, x := range xs {
		total += x
	}
	return total
}

// Size is the room that the table takes, with its title, mm on paper.
func (t Table) Size() (width, height float64) {
	p := t.plan()
	width = max(sum(p.widths), TextWidth(t.Title, TitleHeight, true))
	return width, p.titleH + p.headH + sum(p.rowH)
}

// Split cuts a table into parts no higher than height, each with the title and
// the heads; those after the first say "continued". A row that is too high by
// itself stands alone.
func (t Table) Split(height float64) []Table {
	p := t.plan()
	var parts []Table
	part, used := t, 0.0
	part.Rows = nil
	for i, r := range t.Rows {
		if len(part.Rows) > 0 && p.titleH+p.headH+used+p.rowH[i] > height {
			parts = append(parts, part)
			part, used = t, 0
			part.Rows = nil
			if t.Title != "" {
				part.Title = t.Title + " (continued)"
			}
		}
		part.Rows = append(part.Rows, r)
		used += p.rowH[i]
	}
	// The parts keep the widths of the whole, so that they look alike.
	parts = append(parts, part)
	for k := range parts {
		parts[k].Columns = append([]Column(nil), t.Columns...)
		for i := range p.widths {
			parts[k].Columns[i].Width = p.widths[i]
		}
	}
	return parts
}

// Draw puts the table on the sheet with its top left at the point and returns
// the room that it takes.
func (t Table) Draw(s *Sheet, at geom.Pt) Rect {
	p := t.plan()
	s.AddText(Text{Layer: Notes, At: geom.P(at.X, at.Y-TitleHeight), Height: TitleHeight, Bold: true, String: t.Title})
	y := at.Y - p.titleH
	right := at.X + sum(p.widths)
	bottom := y - p.headH - sum(p.rowH)
	t.rules(s, p, Rect{at.X, bottom, right, y})
	if p.headH > 0 {
		t.drawRow(s, p, p.heads, geom.P(at.X, y), "")
		y -= p.headH
	}
	for i, row := range p.rows {
		t.drawRow(s, p, row, geom.P(at.X, y), t.Rows[i].Link)
		y -= p.rowH[i]
	}
	return Rect{at.X, bottom, max(right, at.X+TextWidth(t.Title, TitleHeight, true)), at.Y}
}

// rules draws the lines between the cells and, unless the table is open, round
// them.
func (t Table) rules(s *Sheet, p tablePlan, box Rect) {
	middle, y := Style{Layer: Notes, Pen: Middle}, box.Y1
	if !t.open {
		s.Rect(middle, box)
	}
	across := func(st Style) { s.Line(st, geom.P(box.X0, y), geom.P(box.X1, y)) }
	if p.headH > 0 {
		y -= p.headH
		across(middle)
	}
	for i := 0; i+1 < len(p.rowH); i++ {
		y -= p.rowH[i]
		across(narrow(Notes))
	}
	x := box.X0
	for i := 0; i+1 < len(p.widths); i++ {
		x += p.widths[i]
		s.Line(narrow(Notes), geom.P(x, box.Y0), geom.P(x, box.Y1))
	}
}

// drawRow letters the cells of a row whose top left is at the point.
func (t Table) drawRow(s *Sheet, p tablePlan, row []block, at geom.Pt, link string) {
	x := at.X
	for i, c := range row {
		anchor := geom.P(x+cellPadX, at.Y-cellPadY)
		switch t.Columns[i].Align {
		case Centred:
			anchor.X = x + p.widths[i]/2
		case End:
			anchor.X = x + p.widths[i] - cellPadX
		}
		first := len(s.Items)
		c.draw(s, Notes, anchor, t.Columns[i].Align)
		if i == 0 && link != "" {
			for _, it := range s.Items[first:] {
				it.Text.Link = link
			}
		}
		x += p.widths[i]
	}
}

// NoteBlock is a block of paragraphs under a title, e.g. the general notes.
type NoteBlock struct {
	Title    string   // may be empty
	Notes    []string // one paragraph each
	Numbered bool     // 1, 2, 3 …
	First    int      // number of the first one; 0 is 1
	Width    float64  // of the block, mm on paper; 0 is 85
}

// The look of a block of notes, mm on paper (own).
const (
	noteWidth  = 85.0
	noteIndent = 7.0 // from the number to the words
	noteGap    = 2.2 // from paragraph to paragraph, beyond the line spacing
)

func (n NoteBlock) width() float64 {
	if n.Width == 0 {
		return noteWidth
	}
	return n.Width
}

// indent is how far the words stand in.
func (n NoteBlock) indent() float64 {
	if n.Numbered {
		return noteIndent
	}
	return 0
}

func (n NoteBlock) paragraph(s string) block {
	return block{lines: Wrap(s, NoteHeight, false, n.width()-n.indent()), height: NoteHeight}
}

func (n NoteBlock) titleDepth() float64 {
	if n.Title == "" {
		return 0
	}
	return TitleHeight + NoteHeight
}

// Size is the room that the block takes, mm on paper.
func (n NoteBlock) Size() (width, height float64) {
	height = n.titleDepth()
	for i, s := range n.Notes {
		if i > 0 {
			height += noteGap
		}
		height += n.paragraph(s).depth() + NoteHeight*descent
	}
	return max(n.width(), TextWidth(n.Title, TitleHeight, true)), height
}

// Split cuts the block into parts no higher than height; the numbers run on
// and later parts say "continued". A paragraph that is too high by itself
// stands alone.
func (n NoteBlock) Split(height float64) []NoteBlock {
	var parts []NoteBlock
	part, used := n, 0.0
	part.Notes, part.First = nil, max(n.First, 1)
	for i, s := range n.Notes {
		deep := n.paragraph(s).depth() + NoteHeight*descent
		switch {
		case len(part.Notes) == 0:
			used = n.titleDepth() + deep
		case used+noteGap+deep <= height:
			used += noteGap + deep
		default:
			parts = append(parts, part)
			part.Notes, part.First = nil, max(n.First, 1)+i
			if n.Title != "" {
				part.Title = n.Title + " (continued)"
			}
			used = n.titleDepth() + deep
		}
		part.Notes = append(part.Notes, s)
	}
	return append(parts, part)
}

// Draw puts the block on the sheet with its top left at the point and returns
// the room that it takes.
func (n NoteBlock) Draw(s *Sheet, at geom.Pt) Rect {
	width, height := n.Size()
	s.AddText(Text{Layer: Notes, At: geom.P(at.X, at.Y-TitleHeight), Height: TitleHeight, Bold: true, String: n.Title})
	y := at.Y - n.titleDepth()
	for i, words := range n.Notes {
		b := n.paragraph(words)
		if n.Numbered {
			s.AddText(Text{Layer: Notes, At: geom.P(at.X, y-NoteHeight), Height: NoteHeight, String: strconv.Itoa(max(n.First, 1)+i) + "."})
		}
		b.draw(s, Notes, geom.P(at.X+n.indent(), y), Start)
		y -= b.depth() + NoteHeight*descent + noteGap
	}
	return Rect{at.X, at.Y - height, at.X + width, at.Y}
}
