package draw

import (
	"fmt"

	"plumbcut/geom"
)

// TitleBlock is what the block at the bottom right of a sheet says: the fields
// of ISO 7200 and those that a reviewer of building work asks for. An empty
// field leaves room to write by hand.
type TitleBlock struct {
	Owner          string // legal owner (ISO 7200)
	Identification string // identification number of the drawing, e.g. "2417-A02" (ISO 7200)
	Revision       string // letter of the revision; empty before the first
	Date           string // date of issue (ISO 7200)
	Sheet, Sheets  int    // sheet n of N (ISO 7200)
	Title          string // of the sheet (ISO 7200)
	Subtitle       string // may be empty
	Approved       string // approval person (ISO 7200)
	Creator        string // who drew it (ISO 7200)
	Type           string // document type, e.g. "Construction drawing" (ISO 7200)
	Status         string // e.g. "For approval"
	Scale          string // e.g. "1:50", or "as shown"
	Units          string // e.g. "millimetres"
	Job            string // the project
	Client         string
	Site           string
	Revisions      []Revision // oldest first; the block shows the last three, on a small sheet the last
}

// Revision is a line of the revision table.
type Revision struct{ Mark, Date, Words, By string }

// The size of the title block, mm on paper.
const (
	blockWidth   = 180.0 // ISO 7200: at most
	blockSide    = 44.0  // of the part at the right with the number of the sheet (own)
	blockPadX    = 1.5
	blockPadY    = 1.2
	blockLabel   = 2.0 // from the label to the value
	blockShown   = 3   // revisions in the block; the rest are on the cover
	blockDeep    = 3   // lines of a value at most
	revisionDeep = 2   // lines of a revision at most
	blockDetail  = 3.2 // from the title to the subtitle
)

// figuredDimensions stands on every sheet. A note not to scale the drawing is
// refused by some authorities; this says the same and stays true.
const figuredDimensions = "Figured dimensions govern."

// field is a cell of the title block.
type field struct {
	label string
	width float64 // as part of its row
	value block
	under block // smaller lines below the value
}

// newField wraps a value to its cell. Very long values end with "…".
func newField(label, value string, width, height float64) field {
	b := block{height: height, bold: height > NoteHeight}
	if value != "" {
		b.lines = shorten(Wrap(value, height, b.bold, width-2*blockPadX), blockDeep)
	}
	return field{label: label, width: width, value: b}
}

// shorten keeps the first n lines and marks what is cut.
func shorten(lines []string, n int) []string {
	if len(lines) <= n {
		return lines
	}
	lines = append([]string(nil), lines[:n]...)
	if r := []rune(lines[n-1]); len(r) > 2 {
		lines[n-1] = string(r[:len(r)-2]) + "…"
	}
	return lines
}

// depth is the height that the cell needs.
func (f field) depth() float64 {
	value := max(f.value.height, f.value.depth())
	d := blockPadY + NoteHeight + blockLabel + value + NoteHeight*descent + blockPadY
	if len(f.under.lines) > 0 {
		d += blockDetail + f.under.depth()
	}
	return d
}

// draw letters the cell.
func (f field) draw(s *Sheet, box Rect) {
	at := geom.P(box.X0+blockPadX, box.Y1-blockPadY)
	label := block{lines: []string{f.label}, height: NoteHeight}
	label.draw(s, Border, at, Start)
	at.Y -= NoteHeight + blockLabel
	f.value.draw(s, Border, at, Start)
	at.Y -= max(f.value.height, f.value.depth()) + blockDetail
	f.under.draw(s, Border, at, Start)
}

// fieldRows are the rows of the left part of the block, which is w wide.
func (b TitleBlock) fieldRows(w float64) [][]field {
	note := func(label, value string, part float64) field { return newField(label, value, part*w, NoteHeight) }
	title := newField("Title", b.Title, 0.66*w, SheetHeight)
	if b.Subtitle != "" {
		title.under = block{height: NoteHeight, lines: shorten(Wrap(b.Subtitle, NoteHeight, false, title.width-2*blockPadX), blockDeep)}
	}
	units := b.Units
	if units != "" {
		units += ". "
	}
	return [][]field{
		{note("Legal owner", b.Owner, 0.34), note("Client", b.Client, 0.33), note("Site", b.Site, 0.33)},
		{note("Project", b.Job, 0.34), title},
		{note("Drawn by", b.Creator, 0.25), note("Approved by", b.Approved, 0.25), note("Date of issue", b.Date, 0.2), note("Scale", b.Scale, 0.3)},
		{note("Document type", b.Type, 0.25), note("Status", b.Status, 0.25), note("Paper", "", 0.2), note("Units", units+figuredDimensions, 0.3)},
	}
}

// sideFields are the cells of the right part, from the top.
func (b TitleBlock) sideFields() []field {
	return []field{
		newField("Identification number", b.Identification, blockSide, NoteHeight),
		newField("Revision", b.Revision, blockSide, NoteHeight),
	}
}

// numberDepth is the least height of the cell with the number of the sheet.
func numberDepth() float64 {
	f := field{value: block{lines: []string{""}, height: NumberHeight}}
	return f.depth()
}

// revisionTable shows the last few revisions, newest lowest; on a small sheet
// only the last, so that the drawing keeps its room.
func (b TitleBlock) revisionTable(p Paper, w float64) Table {
	const mark, date, by = 12.0, 24.0, 26.0
	t := Table{open: true, deep: revisionDeep, Columns: []Column{
		{Head: "Rev", Width: mark}, {Head: "Date", Width: date},
		{Head: "Change", Width: w - mark - date - by}, {Head: "By", Width: by},
	}}
	shown := blockShown
	if p.small() {
		shown = 1
	}
	for _, r := range b.Revisions[max(0, len(b.Revisions)-shown):] {
		t.Rows = append(t.Rows, TableRow{Cells: []string{r.Mark, r.Date, r.Words, r.By}})
	}
	return t
}

func depthOf(row []field) float64 {
	d := 0.0
	for _, f := range row {
		d = max(d, f.depth())
	}
	return d
}

// size is the room that the block takes on a sheet.
func (b TitleBlock) size(p Paper) (w, h float64) {
	w = min(blockWidth, p.Inner().W())
	for _, row := range b.fieldRows(w - blockSide) {
		h += depthOf(row)
	}
	side := numberDepth()
	for _, f := range b.sideFields() {
		side += f.depth()
	}
	h = max(h, side)
	if len(b.Revisions) > 0 {
		_, rev := b.revisionTable(p, w).Size()
		h += rev
	}
	return w, h
}

// draw puts the block into its rectangle.
func (b TitleBlock) draw(s *Sheet, box Rect) {
	top := box.Y1
	if len(b.Revisions) > 0 {
		t := b.revisionTable(s.Paper, box.W())
		top = drawnOn(s, Border, func() Rect { return t.Draw(s, geom.P(box.X0, box.Y1)) }).Y0
	}
	split := box.X1 - blockSide
	rows := b.fieldRows(split - box.X0)
	total := 0.0
	for _, row := range rows {
		total += depthOf(row)
	}
	spare := (top - box.Y0 - total) / float64(len(rows)) // when the right part is the deeper
	y := top
	for _, row := range rows {
		d := depthOf(row) + spare
		x := box.X0
		if y < top {
			s.Line(narrow(Border), geom.P(x, y), geom.P(split, y))
		}
		for _, f := range row {
			if f.label == "Paper" {
				f = newField(f.label, s.Paper.Name, f.width, NoteHeight)
			}
			f.draw(s, Rect{x, y - d, x + f.width, y})
			x += f.width
			s.Line(narrow(Border), geom.P(x, y), geom.P(x, y-d))
		}
		y -= d
	}
	b.drawSide(s, Rect{split, box.Y0, box.X1, top})
	// Two sides of the block lie on the frame, which is drawn already, and on a
	// small sheet the third.
	wide := Style{Layer: Border, Pen: Wide}
	edge := []geom.Pt{geom.P(box.X0, box.Y0), geom.P(box.X0, box.Y1), geom.P(box.X1, box.Y1)}
	if box.X0 <= s.Paper.Inner().X0+slack {
		edge = edge[1:]
	}
	s.Line(wide, edge...)
	if top < box.Y1 {
		s.Line(wide, geom.P(box.X0, top), geom.P(box.X1, top))
	}
}

// drawSide draws the right part: the number of the sheet between the
// identification and the revision.
func (b TitleBlock) drawSide(s *Sheet, box Rect) {
	side := b.sideFields()
	up, down := side[0].depth(), side[1].depth()
	side[0].draw(s, Rect{box.X0, box.Y1 - up, box.X1, box.Y1})
	side[1].draw(s, Rect{box.X0, box.Y0, box.X1, box.Y0 + down})
	mid := Rect{box.X0, box.Y0 + down, box.X1, box.Y1 - up}
	s.Line(narrow(Border), geom.P(mid.X0, mid.Y0), geom.P(mid.X1, mid.Y0))
	s.Line(narrow(Border), geom.P(mid.X0, mid.Y1), geom.P(mid.X1, mid.Y1))
	label := block{lines: []string{"Sheet"}, height: NoteHeight}
	label.draw(s, Border, geom.P(mid.X0+blockPadX, mid.Y1-blockPadY), Start)
	base := mid.Y0 + blockPadY + NoteHeight*descent
	s.AddText(Text{Layer: Border, At: geom.P(mid.X0+blockPadX, base), Height: NumberHeight, Bold: true, String: s.Number})
	if b.Sheets > 0 {
		s.AddText(Text{
			Layer: Border, At: geom.P(mid.X1-blockPadX, base), Align: End, Height: NoteHeight,
			String: fmt.Sprintf("%d of %d", b.Sheet, b.Sheets),
		})
	}
}

// drawnOn moves what f draws to another layer.
func drawnOn[T any](s *Sheet, layer Layer, f func() T) T {
	first := len(s.Items)
	out := f()
	for _, it := range s.Items[first:] {
		if it.Text != nil {
			it.Text.Layer = layer
		} else {
			it.Path.Style.Layer = layer
		}
	}
	return out
}
