package sheets

import (
	"fmt"
	"strconv"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom/frame"
)

// room to write a figure by hand, mm on paper.
const handWidth = 26.0

// foundTable is a table of what is drawn, with room for what is found.
func foundTable(title string) draw.Table {
	return draw.Table{Title: title, Columns: []draw.Column{
		{Head: "What", Width: 82}, {Head: "Drawn", Align: draw.End}, {Head: "Found", Width: handWidth},
	}}
}

func addRow(t *draw.Table, what, drawn string) {
	t.Rows = append(t.Rows, draw.TableRow{Cells: []string{what, drawn, ""}})
}

// mostGround is the greatest number of posts whose ground is asked for one by
// one.
const mostGround = 3

// siteTable asks for what is measured before anything is cut.
func (m *maker) siteTable() draw.Table {
	t := foundTable("Measure first, and write down")
	j := m.job
	for _, k := range []struct {
		what string
		s    frame.Section
	}{
		{upperFirst(m.rear().Name) + " as delivered", m.rear().Section}, {upperFirst(m.front().Name) + " as delivered", m.front().Section}, {"Posts as delivered", j.Posts.Section},
		{"Rafters as delivered", j.Rafters.Section}, {"Battens as delivered", j.Battens.Section}, {"Laths as delivered", j.Laths.Section}, {"Slats as delivered", j.Slats.Section},
	} {
		if k.s.Depth > 0 {
			addRow(&t, k.what, m.figures.Size(k.s.Depth, k.s.Width))
		}
	}
	if s := j.Wall.Studs; len(s) > 0 {
		addRow(&t, "First "+m.job.Wall.StudName()+" from the plate's left end", m.figures.Length(m.firstStud()-m.rear().From))
	}
	if m.rear().OnWall {
		addRow(&t, "Bow of the wall at the plate's level line", m.figures.Length(0))
	}
	for _, r := range j.Site.References {
		addRow(&t, upperFirst(strings.TrimSuffix(m.awayFrom(r.Side), ",")+" "+r.What), m.figures.Length(r.Distance))
	}
	if j.Wall.SoffitOut > 0 {
		addRow(&t, "Soffit above the plate's level line", m.figures.Length(j.Wall.Soffit-m.rear().Top))
	}
	if n := len(j.Posts.At); n <= mostGround {
		for i := range n {
			what, drawn := m.foundAt(i)
			addRow(&t, what, drawn)
		}
	} else {
		for _, i := range []int{0, n - 1} {
			what, drawn := m.foundAt(i)
			addRow(&t, what, drawn)
		}
	}
	return t
}

// firstStud is the first stud right of the plate's left end.
func (m *maker) firstStud() float64 {
	for _, x := range m.job.Wall.Studs {
		if x >= m.rear().From {
			return x
		}
	}
	return m.job.Wall.Studs[len(m.job.Wall.Studs)-1]
}

// clearTable asks for the clear distance from plate to beam at each rafter.
func (m *maker) clearTable() draw.Table {
	s := m.frame.Setout
	if s.Front().Skewed() {
		return m.skewClearTable()
	}
	t := draw.Table{Title: fmt.Sprintf("Clear from %s to %s, drawn %s", m.rear().Short, m.front().Short, m.figures.Length(s.Rear().Outer-s.Front().Inner))}
	n, groups := len(s.Rafters), 3
	for range groups {
		t.Columns = append(t.Columns, draw.Column{Head: "Rafter"}, draw.Column{Head: "Found", Width: handWidth})
	}
	deep := (n + groups - 1) / groups
	for r := range deep {
		var row draw.TableRow
		for g := range groups {
			if i := g*deep + r; i < n {
				row.Cells = append(row.Cells, strconv.Itoa(i+1), "")
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// endsOf are the first and the last of a row.
func endsOf(row []int) []int {
	if len(row) == 0 {
		return nil
	}
	return []int{row[0], row[len(row)-1]}
}

// checkTable asks for what is measured at the end.
func (m *maker) checkTable() draw.Table {
	t := foundTable("Check at the end, and write down")
	s, sl, f := m.frame.Setout, m.frame.Slope, m.figures
	a, b := m.diagonals()
	addRow(&t, "Top of "+m.rear().Short+" at its left end", f.Level(m.rear().Top))
	addRow(&t, "Top of "+m.rear().Short+" at its right end", f.Level(m.rear().Top))
	for _, k := range []frame.Carrier{m.front(), m.rear()} {
		for _, i := range endsOf(k.Posts) {
			addRow(&t, fmt.Sprintf("Underside of %s at post %d", k.Short, i+1), f.Level(k.Bottom))
		}
	}
	addRow(&t, "Head height under the "+m.front().Short, f.Length(s.HeadBeam))
	addRow(&t, "Diagonal from the "+m.rear().Short+"'s left end", m.tape(a))
	addRow(&t, "Diagonal from the "+m.rear().Short+"'s right end", m.tape(b))
	if m.front().Skewed() {
		addRow(&t, "Fall of the first and the last rafter", f.Slope(sl.Angle))
	} else {
		addRow(&t, fmt.Sprintf("Drop of the rafters, over a level run of %s", f.Length(sl.Run)), f.Length(sl.Drop))
	}
	for _, l := range s.Layers {
		if l.Kind == frame.KindSlat && len(l.At) > 1 {
			addRow(&t, "Slats, from centre to centre", f.Length(l.Centres()))
		} else if len(l.At) > 1 {
			addRow(&t, "Clear gap between "+string(l.Kind)+"s", f.Length(l.Gap))
		}
	}
	return t
}
