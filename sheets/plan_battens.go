package sheets

import (
	"fmt"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// battenView looks square on to the slope of the rafters, so that lengths down
// the slope are true. It is nil if there are no battens.
func (m *maker) battenView() *viewBlock {
	if len(m.frame.Of(frame.KindBatten)) == 0 {
		return nil
	}
	rafter := m.frame.Of(frame.KindRafter)[0]
	axes := geom.View{Right: geom.V(1, 0, 0), Up: rafter.Place.U.Neg(), Toward: rafter.Place.W}
	if axes.Up.Y < 0 {
		axes.Up = axes.Up.Neg()
	}
	pic := m.scene.see(look{axes: axes, show: func(s *scene, body int) bool {
		mb, ok := s.member(body)
		return ok && (mb.Kind == frame.KindBatten || mb.Kind == frame.KindRafter || mb.Kind == frame.KindPlate || mb.Kind == frame.KindBeam)
	}})
	b := newView("Batten plan", pic, m.origin())
	b.title.Note = "seen square on to the slope; figures run to the house-side edges"
	m.battenRows(b.Around)
	b.marks = func(p *page, v *draw.View) {
		all := m.frame.Of(frame.KindBatten)
		m.markMember(p, v, all[len(all)-1], fmt.Sprintf("%s × %d", all[0].Mark, len(all)))
	}
	return b
}

// battenRows dimensions the battens down the slope from the plate's outer
// face.
func (m *maker) battenRows(a *draw.Around) {
	s := m.frame.Setout
	x := m.job.Plate.From
	top := func(y float64) geom.Vec { return geom.V(x, y, m.frame.RafterTop(y)) }
	datum, end := top(s.PlateOuter), top(s.BeamInner)
	var edges []geom.Vec
	bs := m.frame.Of(frame.KindBatten)
	for _, b := range bs {
		edges = append(edges, houseEdge(b))
	}
	a.Right.Running("battens", datum, append(edges, end)...)
	a.Left.Equal("batten spaces", len(bs)-1, edges[0], edges[len(edges)-1])
	first, last := s.Rafters[0]-m.job.Rafters.Section.Width/2, s.Rafters[len(s.Rafters)-1]+m.job.Rafters.Section.Width/2
	box := bs[0].Solid().Bounds()
	at := func(x float64) geom.Vec { return geom.V(x, s.BeamOuter, 0) }
	a.Bottom.Chain("overhang", at(box.Min.X), at(first), at(last), at(box.Max.X))
}

// houseEdge is the lower arris of a batten on its house side: the one that is
// set to a line on the rafters.
func houseEdge(b frame.Member) geom.Vec { return b.Place.Point(geom.V(0, b.Section.Width, 0)) }
