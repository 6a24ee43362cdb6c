package sheets

import (
	"fmt"
	"slices"
	"strconv"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// battenPlan is the plan of the battens and that of the laths over them, if there
// are any of either.
func (m *maker) battenPlan() []block {
	out := m.battensAlone()
	if m.hasLaths() {
		out = append(out, m.lathView())
	}
	return append(out, m.slatPlan()...)
}

// onSlope are the kinds of what lies on the rafters or between them.
func onSlope() []frame.Kind {
	return []frame.Kind{frame.KindBatten, frame.KindLath, frame.KindSlat, frame.KindCleat}
}

// battensAlone is the plan of the battens; if there are more than a dimension
// row takes on this paper, a table gives their places.
func (m *maker) battensAlone() []block {
	if !m.hasBattens() {
		return nil
	}
	return m.withPlaces(m.battenView, "Battens", "Batten", m.frame.Setout.Battens)
}

// withPlaces is a view with a row of places down the slope or, if there are more
// than a row takes on this paper, the view and a table of them.
func (m *maker) withPlaces(view func(row bool) *viewBlock, title, head string, at []float64) []block {
	high := 0.0
	for _, r := range rooms(m.room(battenTitle)) {
		high = max(high, r.H())
	}
	if pitch := m.hand.FigureHeight() + figureGap; float64(len(at)+2)*pitch <= high-roundRow {
		v := view(true)
		if _, ok := arrange(m.hand, m.room(battenTitle), m.scales(planScale), grid{{v}}); ok {
			return []block{v}
		}
	}
	var tables besideBlock
	for _, t := range m.placeTable(title, head, at).Split(high - 2*blockGap) {
		tables = append(tables, &tableBlock{t})
	}
	return []block{view(false), tables}
}

// What a row of crowded figures takes, mm on paper.
const (
	figureGap = 1.4  // from one to the next
	roundRow  = 35.0 // the title under the view, the row of overhangs
)

// placeTable gives places down the slope.
func (m *maker) placeTable(title, head string, at []float64) draw.Table {
	t := draw.Table{Title: title, Columns: []draw.Column{{Head: head}, {Head: upperFirst(m.setting().edge), Align: draw.End}}}
	for i, u := range at {
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{strconv.Itoa(i + 1), m.figures.Length(u)}})
	}
	return t
}

// battenView looks square on to the slope of the rafters, so that lengths down
// the slope are true; with a row of the battens' places or without.
func (m *maker) battenView(row bool) *viewBlock {
	b := m.onSlope(battenTitle, frame.KindBatten, frame.KindRafter, frame.KindPlate, frame.KindBeam)
	b.title.Note = "seen square on to the slope; figures run to the " + m.setting().edge + "s"
	if !row {
		b.title.Note = "seen square on to the slope; the table runs from " + m.battenDatum() + " down it"
	}
	m.battenRows(b.Around, row)
	b.marks = func(p *page, v *draw.View) {
		all := m.frame.Of(frame.KindBatten)
		if m.frame.Setout.Skewed() {
			m.battenRuns(p, v, all)
			return
		}
		last := all[len(all)-1]
		m.partMark(p, v, last, fmt.Sprintf("%s × %d", last.Mark, len(all)), m.markPoint(last))
	}
	return b
}

// onSlope looks square on to the slope of the rafters at the members of some
// kinds.
func (m *maker) onSlope(title string, kinds ...frame.Kind) *viewBlock {
	rafter := m.frame.Of(frame.KindRafter)[0]
	axes := geom.View{Right: geom.V(1, 0, 0), Up: rafter.Place.U.Neg(), Toward: rafter.Place.W}
	if axes.Up.Y < 0 {
		axes.Up = axes.Up.Neg()
	}
	pic := m.scene.see(look{axes: axes, show: func(s *scene, body int) bool {
		mb, ok := s.member(body)
		return ok && slices.Contains(kinds, mb.Kind)
	}})
	return newView(title, pic, m.origin())
}

// lathView is the plan of the laths, square on to the slope like that of the
// battens.
func (m *maker) lathView() *viewBlock {
	b := m.onSlope("Lath plan", frame.KindLath, frame.KindBatten, frame.KindPlate, frame.KindBeam)
	b.title.Note = "seen square on to the slope; figures run to left edges"
	laths, battens := m.frame.Of(frame.KindLath), m.frame.Of(frame.KindBatten)
	top := battens[0].Place.Point(geom.V(0, battens[0].Section.Width, 0))
	edge := func(x float64) geom.Vec { return geom.V(x, top.Y, top.Z) }
	var edges []geom.Vec
	for _, l := range laths {
		edges = append(edges, edge(l.Place.O.X))
	}
	end := edge(top.X + battens[0].Length)
	stops := append(slices.Clone(edges), end)
	if pitch := m.hand.FigureHeight() + figureGap; float64(len(edges))*pitch > battens[0].Length*oneSheetScale {
		stops = []geom.Vec{edges[0], edges[len(edges)-1], end} // they would be crowded: their spaces are equal
	}
	b.Top.Running("laths", edge(top.X), stops...)
	b.Top.Equal("lath spaces", len(edges)-1, edges[0], edges[len(edges)-1])
	first, last := houseEdge(battens[0]), battens[len(battens)-1].Place.O
	from, to := laths[0].Place.O, laths[0].Place.Point(geom.V(laths[0].Length, 0, 0))
	b.Right.Chain("overhang", from, first, last, to)
	b.marks = func(p *page, v *draw.View) {
		last := laths[len(laths)-1]
		m.partMark(p, v, last, fmt.Sprintf("%s × %d", last.Mark, len(laths)), last.Place.Point(geom.V(last.Length*0.4, last.Section.Width/2, last.Section.Depth)))
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
	if m.frame.Setout.Skewed() { // the beam is as far off nowhere else
		end = edges[len(edges)-1]
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
