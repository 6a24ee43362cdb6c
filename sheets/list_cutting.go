package sheets

import (
	"fmt"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom/frame"
)

// cuttingWidth is that of a table of the lists, mm on paper: three stand side by
// side on A3, one on A4.
const cuttingWidth = 116.0

// The column that says where a piece is used takes what the others leave, between
// these widths, mm on paper.
const (
	leastWhere = 20.0
	mostWhere  = 51.0
)

// cuttingTable has a row for each piece that differs, and the sum. It is no wider
// than given.
func (m *maker) cuttingTable(b frame.Batch, width float64) draw.Table {
	hands := slices.ContainsFunc(b.Cuts, func(c frame.Cut) bool { return c.Hand != frame.NoHand })
	t := draw.Table{Columns: []draw.Column{
		{Head: "Mark"}, {Head: "Hand"}, figureColumn("Count"), figureColumn("Finished"), figureColumn("Cut to"), {Head: "Where used", Width: leastWhere}, {Head: "Done"},
	}}
	add := func(bold bool, cells ...string) {
		if !hands {
			cells = slices.Delete(cells, 1, 2)
		}
		t.Rows = append(t.Rows, draw.TableRow{Bold: bold, Cells: cells})
	}
	if !hands {
		t.Columns = slices.Delete(t.Columns, 1, 2)
	}
	n, tape := 0, m.tapeFigures() // the figures of the member drawings
	for _, c := range b.Cuts {
		where := m.whereUsed(c)
		if c.Order {
			where += "; longer than any stick: order by length"
		}
		add(false, c.Mark, string(c.Hand), fmt.Sprint(c.Count()), tape.Length(c.Length()), tape.Length(c.Cut()), where)
		n += c.Count()
	}
	if len(b.Cuts) > 1 {
		run, _ := b.Run()
		add(true, "all", "", fmt.Sprint(n), m.figures.Run(run))
	}
	w, _ := t.Size()
	where := &t.Columns[len(t.Columns)-2]
	where.Width = min(max(width-(w-where.Width), leastWhere), mostWhere)
	return t
}
