package sheets

import (
	"fmt"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func hungDetail() detailSpec {
	return detailSpec{
		scale: 1. / 5, plain: awayFromEnds, views: hungViews,
		ring: 150, on: []string{onSection},
	}
}

// hungHolding is what the sheets say of rafters that hang between.
func hungHolding() holding {
	return holding{
		detail: hungDetail(),
		land:   "hanger; nothing is cut",
		ties:   "The hanger carries it once every hole that its maker says is nailed.",
		how: func(_ *maker, k frame.Carrier) string {
			return fmt.Sprintf("butted against the %s in a hanger", k.Short)
		},
		mark: func(m *maker, k frame.Carrier) string {
			return fmt.Sprintf("Square the marks down its face: there the hangers go, with the bottom of each rafter %s above the lower edge. Nothing is cut into it.",
				m.saidTape(m.underside(k)-k.Bottom))
		},
		hold: func(*maker, frame.Carrier) string {
			return "Fix the hangers only when one stands in hand: its seat is set to the rafter's measured depth."
		},
		cut: func(m *maker, k frame.Carrier) string { return atWhere(k) + " cut " + m.endCut(k) },
		end: func(_ *maker, k frame.Carrier) string { return "the face of the " + k.Short },
		note: func(m *maker) []string {
			return []string{"Rafters between " + m.rear().Short + " and " + m.front().Short + " butt tight against the face in hangers. Hangers and their nails as their maker states, for the slope, the treatment of the timber and the place; every hole filled that its maker says."}
		},
	}
}

// underside is the level of the rafters' underside at a carrier's face.
func (m *maker) underside(k frame.Carrier) float64 {
	r := m.frame.Of(frame.KindRafter)[0]
	return m.frame.RafterTop(k.Face()) - r.Section.Depth/r.Place.W.Z
}

// hungViews are a section along the rafter and the face that it butts against.
func hungViews(m *maker, d detail) []*viewBlock {
	o := m.laidOver(d.joint)
	if k := o.carrier; k.Skewed() {
		face := o.hungOnSkew(d.joint)
		o.carrier = k.Cut(o.x)
		section := o.hungSection()
		return []*viewBlock{section, face}
	}
	return []*viewBlock{o.hungSection(), o.hungFace()}
}

func (o laidOver) hungSection() *viewBlock {
	k, face := o.carrier, o.carrier.Face()
	depth := o.rafter.Section.Depth
	crop := everywhere()
	c := closeUp{
		name: "section through the middle of the rafter", axes: geom.LeftEnd(), cut: true,
		at: o.at(face, k.Top), show: only(o.rafter, o.timber),
	}
	rows, notes, torn := draw.Left, draw.Right, face-overStub*depth
	if k.End == frame.FaceStart {
		crop.Min.Y, crop.Max.Y = torn, k.Inner+closeMargin
	}
	switch {
	case k.OnWall:
		crop.Max.Y = o.job.Wall.Grip() + 2*closeMargin
		c.house = wallPieces()
		c.show = func(b frame.Member) bool {
			return only(o.rafter, o.timber)(b) || b.Kind == frame.KindPacker && b.Place.V.X > 0
		}
	case k.End == frame.FaceEnd:
		rows, notes, torn = draw.Right, draw.Left, face+overStub*depth
		crop.Min.Y, crop.Max.Y = holdingPly(k)-closeMargin, torn
	}
	crop.Min.Z = min(k.Bottom, o.frame.RafterTop(torn)-o.plumb()) - closeMargin
	crop.Max.Z = max(k.Top, o.frame.RafterTop(torn), o.frame.RafterTop(face)) + closeMargin
	c.crop = crop
	b := o.closeUp(c)
	b.row(rows).Chain("heights at the face", o.at(face, k.Bottom), o.at(face, o.underside(k)), o.top(face), o.at(face, k.Top)).
		Overall("", o.at(face, k.Bottom), o.at(face, k.Top))
	n := b.note(notes)
	n.Width = detailWords
	middle := o.top((face + torn) / 2)
	middle.Z -= o.plumb() * 0.3
	n.AddInside(o.stick("Rafter", o.rafter)+". "+o.tieDown(), middle)
	n.AddInside(o.stick(upperFirst(k.Name), o.timber), o.at((k.Inner+holdingPly(k))/2, k.Bottom+(k.Top-k.Bottom)*0.12))
	n.Add(o.endCutWords(k)+", tight against the face. Treat the cut end before assembly.", o.at(face, o.top(face).Z-o.plumb()*0.55))
	n.Add(fmt.Sprintf("Hanger for %s, not drawn: it carries the rafter. Kind, nails and slope as its maker and the designer state.", o.figures.Size(o.rafter.Section.Depth, o.rafter.Section.Width)),
		o.at(face, o.underside(k)))
	return b
}

// holdingPly is the outer face of the timber of a carrier that the rafters hang
// on: the inner one of a twin beam.
func holdingPly(k frame.Carrier) float64 {
	if len(k.Members) > 1 {
		return k.Inner - k.Section.Width
	}
	return k.Outer
}

// hungFace is the carrier's face with the rafter taken away.
func (o laidOver) hungFace() *viewBlock {
	return o.hungFaceAt(o.underside(o.carrier), o.top(o.carrier.Face()).Z, o.rafter.Section.Width)
}

// hungFaceAt is that of a rafter whose underside and top meet the face at two
// levels, and which is so wide along it.
func (o laidOver) hungFaceAt(under, top, w float64) *viewBlock {
	k, face := o.carrier, o.carrier.Face()
	crop := everywhere()
	crop.Min.X, crop.Max.X = o.x-w*(0.5+besideIt), o.x+w*(0.5+besideIt)
	c := closeUp{name: o.setting().outside, axes: geom.Front(), at: o.at(face, k.Top), show: only(o.timber), crop: crop}
	if k.End == frame.FaceEnd {
		c.name, c.axes = o.setting().inside, geom.Back()
	}
	b := o.closeUp(c)
	b.title.Note = "where the rafter butts"
	low, high := max(k.Bottom, under), min(k.Top, top)
	x0, x1 := max(o.timber.Place.O.X, o.x-w/2), min(o.timber.Place.O.X+o.timber.Length, o.x+w/2)
	at := func(x, z float64) geom.Vec { return geom.V(x, face, z) }
	b.row(draw.Bottom).Overall("", at(x0, k.Bottom), at(x1, k.Bottom))
	b.over = func(p *page, v *draw.View) {
		st := draw.Style{Layer: draw.Notes, Pen: draw.Narrow, Dash: draw.Dashed}
		corners := []geom.Vec{at(x0, low), at(x1, low), at(x1, high), at(x0, high), at(x0, low)}
		for i := 1; i < len(corners); i++ {
			p.sheet.Line(st, v.Pt(corners[i-1]), v.Pt(corners[i]))
		}
		crossLine(p, v, at(o.x, k.Bottom), at(o.x, k.Top))
	}
	return b
}
