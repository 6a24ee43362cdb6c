package sheets

import (
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
)

// sheetCell is a cell of such a sheet.
type sheetCell interface {
	height(width float64) float64 // the least, at a width
	stand(box draw.Rect)          // puts it in its place
	draw(p *page)
	finish(p *page)
}

// tableCell is a table as a cell.
type tableCell struct {
	table draw.Table
	box   draw.Rect
}

func (c *tableCell) height(float64) float64 {
	_, h := c.table.Size()
	return h
}

func (c *tableCell) stand(box draw.Rect) { c.box = box }

func (c *tableCell) draw(p *page) { c.table.Draw(p.sheet, geom.P(c.box.X0, c.box.Y1)) }

func (c *tableCell) finish(*page) {}

// cellSheet is a sheet of cells, each in its box, in rows read from left to
// right.
type cellSheet struct {
	cells []sheetCell
	rules [][2]geom.Pt // lines between the rows
}

func (s cellSheet) draw(p *page) {
	for _, c := range s.cells {
		c.draw(p)
	}
	for _, l := range s.rules {
		p.sheet.Line(draw.Style{Layer: draw.Notes}, l[0], l[1])
	}
	for _, c := range s.cells {
		c.finish(p)
	}
}

// cellRow is a row of cells being laid out.
type cellRow struct {
	cells  []sheetCell
	height float64
	over   bool // it reaches over the title block
}

// cellSheets lays the cells out in rows on as few sheets as take them, about as
// many on each, in the fewest columns for which that is so: their pictures are
// then the largest.
func (m *maker) cellSheets(cells []sheetCell) []cellSheet {
	widest := m.cellGrid(1).free.W()
	most := int(max(1, math.Floor((widest+cellGap)/(cellLeast+cellGap))))
	g := m.cellGrid(most)
	sheets := g.fill(cells, len(cells))
	for n := most - 1; n > 0; n-- {
		fewer := m.cellGrid(n)
		s := fewer.fill(cells, len(cells))
		if len(s) > len(sheets) {
			break
		}
		g, sheets = fewer, s
	}
	if n := len(sheets); n > 1 { // share them out
		each := (len(cells) + n - 1) / n
		if even := g.fill(cells, each); len(even) == n {
			sheets = even
		}
	}
	out := make([]cellSheet, len(sheets))
	for i, rows := range sheets {
		out[i] = g.place(rows)
	}
	return out
}

// cellGrid is the room of a sheet divided into columns.
type cellGrid struct {
	free  draw.Rect // with the corner of the title block in it
	block draw.Rect // the title block with the gap round it
	cols  int
	width float64 // of a cell
}

func (m *maker) cellGrid(cols int) cellGrid {
	sp := m.room(buildTitle)
	g := cellGrid{free: freeOf(sp), block: sp.Block.Expand(cellGap / 2), cols: cols}
	g.width = (g.free.W()+cellGap)/float64(g.cols) - cellGap
	return g
}

// x is the left edge of a column.
func (g cellGrid) x(col int) float64 { return g.free.X0 + float64(col)*(g.width+cellGap) }

// beside is the number of columns that stand clear of the title block's left
// edge.
func (g cellGrid) beside() int {
	n := 0
	for n < g.cols && g.x(n)+g.width <= g.block.X0 {
		n++
	}
	return n
}

// fill puts the cells in rows, at most so many to a sheet.
func (g cellGrid) fill(cells []sheetCell, most int) [][]cellRow {
	var sheets [][]cellRow
	for len(cells) > 0 {
		rows, n := g.fillSheet(cells[:min(most, len(cells))])
		sheets, cells = append(sheets, rows), cells[n:]
	}
	return sheets
}

// fillSheet fills one sheet and returns its rows and how many cells they take:
// one at least, even if it stands out.
func (g cellGrid) fillSheet(cells []sheetCell) ([]cellRow, int) {
	var rows []cellRow
	y, taken := g.free.Y1, 0
	for taken < len(cells) {
		row := g.row(cells[taken:], g.cols)
		if y-row.height < g.block.Y1 && len(row.cells) > g.beside() {
			row = g.row(cells[taken:], g.beside())
		}
		row.over = len(row.cells) > g.beside()
		low := g.free.Y0
		if g.beside() == 0 {
			low = g.block.Y1
		}
		if len(row.cells) == 0 || y-row.height < low {
			if taken > 0 {
				break
			}
			row = g.row(cells, 1)
		}
		rows = append(rows, row)
		taken += len(row.cells)
		y -= row.height + cellGap
	}
	return rows, taken
}

// row takes the next cells as a row of at most n.
func (g cellGrid) row(cells []sheetCell, n int) cellRow {
	r := cellRow{cells: cells[:min(n, len(cells))]}
	for _, c := range r.cells {
		r.height = max(r.height, c.height(g.width))
	}
	return r
}

// mostHigher is how much higher than it must be a row may become, mm on paper,
// to fill the sheet.
const mostHigher = 40.0

// place gives the rows of a sheet their places and shares the spare height out
// among them.
func (g cellGrid) place(rows []cellRow) cellSheet {
	var s cellSheet
	more := g.spare(rows)
	y := g.free.Y1
	for i, r := range rows {
		h := r.height + more
		for k, c := range r.cells {
			c.stand(draw.Rect{X0: g.x(k), Y0: y - h, X1: g.x(k) + g.width, Y1: y})
			s.cells = append(s.cells, c)
		}
		if i > 0 {
			mid := y + cellGap/2
			s.rules = append(s.rules, [2]geom.Pt{geom.P(g.x(0), mid), geom.P(g.x(len(r.cells)-1)+g.width, mid)})
		}
		y -= h + cellGap
	}
	return s
}

// spare is how much higher every row may be: those that reach over the title
// block stay above it.
func (g cellGrid) spare(rows []cellRow) float64 {
	more, y := mostHigher, g.free.Y1
	for i, r := range rows {
		y -= r.height
		low := g.free.Y0
		if r.over {
			low = g.block.Y1
		}
		more = min(more, (y-low)/float64(i+1))
		y -= cellGap
	}
	return max(0, more)
}
