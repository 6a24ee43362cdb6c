package sheets

import (
	"fmt"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func (m *maker) hasSlats() bool { return len(m.frame.Of(frame.KindSlat)) > 0 }

// slats is the layer of the slats; false without any.
func (m *maker) slats() (frame.Layer, bool) { return m.frame.Setout.Layer(frame.KindSlat) }

// turnWords say how the slats are turned.
func (m *maker) turnWords() string {
	l := m.job.Slats
	side := "house"
	if l.OuterUp {
		side = "outer"
	}
	return fmt.Sprintf("turned %s out of the slope, %s side up", m.figures.Angle(l.Angle), side)
}

// slatPlan is the plan of the slats with the places of those in a bay.
func (m *maker) slatPlan() []block {
	layer, ok := m.slats()
	if !ok {
		return nil
	}
	return m.withPlaces(m.slatView, "Slats of a bay", "Slat", layer.At)
}

// slatView looks square on to the slope, with a row of the slats' places or
// without.
func (m *maker) slatView(row bool) *viewBlock {
	layer, _ := m.slats()
	b := m.onSlope("Slat plan", frame.KindSlat, frame.KindRafter, frame.KindPlate, frame.KindBeam)
	b.title.Note = "seen square on to the slope; figures run down it to the slats' house-side edges"
	s := m.frame.Setout
	x := m.rear().From
	var stops []geom.Vec
	for _, u := range layer.At {
		stops = append(stops, m.onRoof(x, u))
	}
	if row {
		end := geom.V(x, s.Front().Inner, m.frame.RafterTop(s.Front().Inner))
		b.Right.Running("slats", m.onRoof(x, 0), append(slices.Clone(stops), end)...)
	} else {
		b.title.Note = "seen square on to the slope; the table runs from the plate's outer face down it"
	}
	b.Left.Equal("slat spaces", len(stops)-1, stops[0], stops[len(stops)-1])
	all := m.frame.Of(frame.KindSlat)
	b.marks = func(p *page, v *draw.View) {
		for _, run := range alikeRuns(all) {
			mb := run[len(run)-1]
			m.partMark(p, v, mb, fmt.Sprintf("%s × %d", mb.Mark, len(run)), mb.Place.Point(geom.V(mb.Length*0.5, mb.Section.Width/2, mb.Section.Depth)))
		}
	}
	return b
}

// slatSaid are the words of their step of work.
func (m *maker) slatSaid() []string {
	layer, _ := m.slats()
	l, all := m.job.Slats, m.frame.Of(frame.KindSlat)
	n := len(layer.At)
	c := l.Cleats.Section
	return []string{
		fmt.Sprintf("On the side of every rafter mark the slats' house-side edges, square down from its top edge: down the slope from the plate's outer face the first at %s, the last at %s. The slat plan has them.", m.said(layer.At[0]), m.said(layer.At[n-1])),
		fmt.Sprintf("Set a bevel to %s from the top edge and draw each slat's underside with it, its highest edge %s below the rafter's top. The detail has the figures.", m.figures.Angle(l.Angle), m.said(l.Down)),
		fmt.Sprintf("Screw a cleat %s, %s long, below each line, on both sides of a bay.", m.saidSize(c.Depth, c.Width), m.said(l.Section.Width)),
		fmt.Sprintf("Cut %d slats %s, each %s shorter than its bay is wide, and screw them down on the cleats.", len(all), m.saidSize(l.Section.Depth, l.Section.Width), m.saidFine(l.Clearance)),
	}
}

// slatHold is what waits until the bays are measured.
func (m *maker) slatHold() string {
	return "Measure every bay at its upper and its lower end before its slats are cut: rafters bow."
}

// slatNote names them in the section.
func (c *cross) slatNote() {
	layer, ok := c.slats()
	if !ok {
		return
	}
	all := c.frame.Of(frame.KindSlat)
	var at []geom.Vec
	for _, mb := range all[:min(len(layer.At), 4)] {
		q := mb.Place.Point(geom.V(0, mb.Section.Width/2, mb.Section.Depth/2))
		q.X = c.x
		at = append(at, q)
	}
	words := fmt.Sprintf("%s, %s. %d in each bay, on cleats %s. ", c.stick("slat", all[0]), c.turnWords(), len(layer.At), c.frame.Of(frame.KindCleat)[0].Mark)
	if c.bare {
		words += "Their places are on the slat plan"
	} else {
		words += "The row runs to their edges nearest the house"
	}
	named := all[0]
	if c.form != keyed {
		named = frame.Member{}
	}
	c.say(c.inner, named, draw.ColumnNote{Text: words, At: at, Inside: true})
}

func slatCleatDetail() detailSpec {
	return detailSpec{
		kind: frame.JointSlatCleat, scale: 1. / 5, views: slatViews,
		ring: 150, on: []string{onSection},
	}
}

// slatViews are the first slats of the bay, cut across, on the side of the rafter
// beyond, and the cleat under one seen along the slope.
func slatViews(m *maker, d detail) []*viewBlock {
	slat := m.frame.Members[d.joint.A]
	rafter := m.frame.Of(frame.KindRafter)[0]
	for _, r := range m.frame.Of(frame.KindRafter) {
		if r.Place.O.X > slat.Place.O.X {
			rafter = r
			break
		}
	}
	layer, _ := m.slats()
	all := m.frame.Of(frame.KindSlat)
	first := (slat.No - 1) / len(layer.At) * len(layer.At)
	shown := slices.Clone(all[first : first+min(2, len(layer.At))])
	x := rafter.Place.O.X - m.job.Slats.Cleats.Section.Width/2
	u1 := layer.At[min(1, len(layer.At)-1)] + 1.3*layer.Wide
	members := append([]frame.Member{rafter, m.frame.Timber(m.rear())}, shown...)
	for _, c := range m.frame.Of(frame.KindCleat) {
		if i := (c.No - 1) / 2; i >= first && i < first+len(shown) && (c.No-1)%2 == 1 {
			members = append(members, c)
		}
	}
	crop := everywhere()
	far := m.onRoof(x, u1)
	crop.Min.Y, crop.Max.Y = far.Y, max(m.rear().Inner, m.frame.Setout.RafterStart)+closeMargin
	crop.Min.Z = far.Z - 1.4*rafter.Section.Depth
	v := m.closeUp(closeUp{
		name: "cut through the cleats", axes: geom.LeftEnd(), cut: true, at: m.onRoof(x, u1/2), crop: crop, show: only(members...),
	})
	at := func(u float64) geom.Vec { return m.onRoof(x, u) }
	chain := []geom.Vec{at(0)}
	for i := range shown {
		u := layer.At[i]
		chain = append(chain, at(u), at(u+layer.Wide))
	}
	slices.SortStableFunc(chain, func(p, q geom.Vec) int {
		switch {
		case p.Y > q.Y:
			return -1
		case p.Y < q.Y:
			return 1
		}
		return 0
	})
	rows := draw.NewSlopedRows(v.view, at(-0.3*layer.Wide), at(u1))
	rows.Chain("", chain...)
	v.Sloped = append(v.Sloped, rows)
	last, cleat, l := shown[len(shown)-1], members[len(members)-1], m.job.Slats
	n := v.note(draw.Right)
	n.Width = detailWords
	n.AddInside(fmt.Sprintf("%s, %s, its highest edge %s below the rafter's top; %d %s at each end", m.stick("Slat", last), m.turnWords(), m.fine(l.Down), l.Screws.Each, m.screwName(l.Screws)),
		last.Place.Point(geom.V(0, last.Section.Width*0.4, last.Section.Depth/2)))
	n.AddInside(fmt.Sprintf("%s; %d %s into the rafter", m.stick("Cleat", cleat), l.Cleats.Screws.Each, m.screwName(l.Cleats.Screws)),
		cleat.Place.Point(geom.V(cleat.Length*0.8, 0, cleat.Section.Depth/2)))
	return []*viewBlock{v}
}
