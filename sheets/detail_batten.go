package sheets

import (
	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func battenRafterDetail() detailSpec {
	return detailSpec{
		kind: frame.JointBattenRafter, scale: 1. / 5, views: battenViews,
		ring: 150, on: []string{onSection},
	}
}

// battenViews look along the battens, beside a rafter: the first battens with
// the plate's face, and the last with the beam's.
func battenViews(m *maker, d detail) []*viewBlock {
	r := m.frame.Members[d.joint.B]
	s := m.frame.Setout
	all := m.frame.Of(frame.KindBatten)
	x := r.Place.O.X - 1 // beside the rafter
	onLine := func(y float64) geom.Vec { return geom.V(x, y, s.RafterTop(y)) }
	edges := func(b frame.Member) (near, far geom.Vec) { // on the rafter's top edge
		return onLine(b.Place.Point(geom.V(0, b.Section.Width, 0)).Y), onLine(b.Place.O.Y)
	}
	first := []geom.Vec{onLine(s.PlateOuter)}
	for _, b := range all[:min(2, len(all))] {
		near, far := edges(b)
		first = append(first, near, far)
	}
	_, lastFar := edges(all[len(all)-1])
	lastNear, _ := edges(all[len(all)-1])
	last := []geom.Vec{lastNear, lastFar, onLine(s.BeamInner)}

	up := all[0].Place.W.Mul(all[0].Section.Depth)
	view := func(name, note string, chain []geom.Vec, timber frame.Kind, shown []frame.Member, y0, y1 float64) *viewBlock {
		t, _ := m.frame.Member(timber, 1)
		crop := everywhere()
		crop.Min.Y, crop.Max.Y = y0, y1
		low := min(s.RafterTop(y0), s.RafterTop(y1)) - r.Section.Depth*1.2
		crop.Min.Z = low
		c := closeUp{
			name: name, axes: geom.LeftEnd(), cut: true, at: geom.V(x, (y0+y1)/2, s.RafterTop((y0+y1)/2)), crop: crop,
			show: only(append([]frame.Member{r, t}, shown...)...),
		}
		b := m.closeUp(c)
		b.title.Note = note
		rows := draw.NewSlopedRows(b.view, chain[0].Add(up), chain[len(chain)-1].Add(up))
		b.Sloped = append(b.Sloped, rows)
		rows.Chain("", chain...)
		return b
	}
	firstEnd := first[len(first)-1].Y - r.Section.Depth*0.4
	a := view("along the slope, from the plate", "", first, frame.KindPlate, all[:min(2, len(all))], firstEnd, s.PlateInner+closeMargin)
	z := view("At the beam", "the last batten", last, frame.KindBeam, all[len(all)-1:], s.BeamOuter-closeMargin, lastNear.Y+r.Section.Depth*0.6)
	a.marks = func(p *page, v *draw.View) {
		b := all[min(1, len(all)-1)]
		p.placer.Label(draw.Label{
			View: v, At: b.Place.Point(geom.V(0, b.Section.Width/2, b.Section.Depth/2)), Inside: true,
			Text: m.stick("Batten", b) + ", laid flat; drill for the screws near the ends", Width: detailWords, Toward: geom.P(-1, -2),
		})
	}
	return []*viewBlock{a, z}
}
