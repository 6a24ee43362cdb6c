package sheets

import (
	"fmt"
	"strconv"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// battenPlan is the plan of the battens; if there are more than a dimension
// row takes on this paper, a table gives their places. There is none without
// battens.
func (m *maker) battenPlan() []block {
	bs := m.frame.Of(frame.KindBatten)
	if len(bs) == 0 {
		return nil
	}
	high := 0.0
	for _, r := range rooms(m.room(battenTitle)) {
		high = max(high, r.H())
	}
	if pitch := m.hand.FigureHeight() + figureGap; float64(len(bs)+2)*pitch <= high-roundRow {
		view := m.battenView(true)
		if _, ok := arrange(m.hand, m.room(battenTitle), m.scales(planScale), grid{{view}}); ok {
			return []block{view}
		}
	}
	var tables besideBlock
	for _, t := range m.battenTable().Split(high - 2*blockGap) {
		tables = append(tables, &tableBlock{t})
	}
	return []block{m.battenView(false), tables}
}

// What a row of crowded figures takes, mm on paper.
const (
	figureGap = 1.4  // from one to the next
	roundRow  = 35.0 // the title under the view, the row of overhangs
)

// battenTable gives the places of the battens.
func (m *maker) battenTable() draw.Table {
	t := draw.Table{Title: "Battens", Columns: []draw.Column{{Head: "Batten"}, {Head: "House-side edge", Align: draw.End}}}
	for i, at := range m.frame.Setout.Battens {
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{strconv.Itoa(i + 1), m.figures.Length(at)}})
	}
	return t
}

// battenView looks square on to the slope of the rafters, so that lengths down
// the slope are true; with a row of the battens' places or without.
func (m *maker) battenView(row bool) *viewBlock {
	rafter := m.frame.Of(frame.KindRafter)[0]
	axes := geom.View{Right: geom.V(1, 0, 0), Up: rafter.Place.U.Neg(), Toward: rafter.Place.W}
	if axes.Up.Y < 0 {
		axes.Up = axes.Up.Neg()
	}
	pic := m.scene.see(look{axes: axes, show: func(s *scene, body int) bool {
		mb, ok := s.member(body)
		return ok && (mb.Kind == frame.KindBatten || mb.Kind == frame.KindRafter || mb.Kind == frame.KindPlate || mb.Kind == frame.KindBeam)
	}})
	b := newView(battenTitle, pic, m.origin())
	b.title.Note = "seen square on to the slope; figures run to the house-side edges"
	if !row {
		b.title.Note = "seen square on to the slope; the table runs from the plate's outer face down it"
	}
	m.battenRows(b.Around, row)
	b.marks = func(p *page, v *draw.View) {
		all := m.frame.Of(frame.KindBatten)
		m.markMember(p, v, all[len(all)-1], fmt.Sprintf("%s × %d", all[0].Mark, len(all)))
	}
	return b
}

// battenRows dimensions the battens down the slope from the plate's outer
// face.
func (m *maker) battenRows(a *draw.Around, row bool) {
	s := m.frame.Setout
	x := m.rear().From
	top := func(y float64) geom.Vec { return geom.V(x, y, m.frame.RafterTop(y)) }
	datum, end := top(s.Rear().Outer), top(s.BattenEnd)
	var edges []geom.Vec
	bs := m.frame.Of(frame.KindBatten)
	for _, b := range bs {
		edges = append(edges, houseEdge(b))
	}
	if row {
		a.Right.Running("battens", datum, append(edges, end)...)
	}
	a.Left.Equal("batten spaces", len(bs)-1, edges[0], edges[len(edges)-1])
	first, last := s.Rafters[0]-m.job.Rafters.Section.Width/2, s.Rafters[len(s.Rafters)-1]+m.job.Rafters.Section.Width/2
	box := bs[0].Solid().Bounds()
	at := func(x float64) geom.Vec { return geom.V(x, s.Front().Outer, 0) }
	a.Bottom.Chain("overhang", at(box.Min.X), at(first), at(last), at(box.Max.X))
}

// houseEdge is the lower arris of a batten on its house side: the one that is
// set to a line on the rafters.
func houseEdge(b frame.Member) geom.Vec { return b.Place.Point(geom.V(0, b.Section.Width, 0)) }
