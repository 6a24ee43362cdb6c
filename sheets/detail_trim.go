package sheets

import (
	"fmt"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// trimMargin is how much is shown round a board, mm.
const trimMargin = 120

func blockDetail() detailSpec {
	return detailSpec{
		kind: frame.JointBlockRafter, scale: 1. / 5, ring: 110, on: []string{onPlan}, other: []string{onPlan}, views: trimViews,
		same: func(m *maker, j frame.Joint) string { // over which timber, if any
			k, over := m.trimCarrier(m.frame.Members[j.A])
			return fmt.Sprint(over, k.Short)
		},
	}
}

func fasciaDetail() detailSpec {
	return detailSpec{kind: frame.JointFasciaRafter, scale: 1. / 5, ring: 130, on: []string{onSection}, plain: awayFromEnds, views: trimViews}
}

func valanceFaceDetail() detailSpec {
	return detailSpec{kind: frame.JointValanceBeam, scale: 1. / 5, ring: 150, on: []string{onElevations}, views: trimViews}
}

func valanceBetweenDetail() detailSpec {
	return detailSpec{
		kind: frame.JointValancePost, title: "Valance between posts", scale: 1. / 5, ring: 150, on: []string{onElevations}, views: trimViews,
		when: func(m *maker) bool { return m.job.Valance.Set != frame.ValanceFace },
	}
}

// trimViews are a section across the middle of a board's bay.
func trimViews(m *maker, d detail) []*viewBlock {
	t := m.frame.Members[d.joint.A]
	x := t.Place.O.X + t.Length/2
	if t.Kind == frame.KindFascia {
		x = d.joint.At.X - m.job.Rafters.Section.Width // beside a rafter
	}
	b := t.Solid().Bounds()
	crop := everywhere()
	crop.Min.Y, crop.Max.Y = b.Min.Y-trimMargin, b.Max.Y+trimMargin
	crop.Min.Z, crop.Max.Z = b.Min.Z-trimMargin, b.Max.Z+trimMargin
	k, near := m.trimCarrier(t)
	if near {
		crop.Min.Y, crop.Max.Y = min(crop.Min.Y, k.Outer-closeMargin), max(crop.Max.Y, k.Inner+closeMargin)
		crop.Min.Z, crop.Max.Z = min(crop.Min.Z, k.Bottom-closeMargin), max(crop.Max.Z, k.Top+closeMargin)
	}
	rafter, post := d.joint.B, -1
	if t.Kind == frame.KindValance {
		rafter, post = -1, d.joint.B
	}
	v := m.closeUp(closeUp{
		name: "section across the bay", axes: geom.LeftEnd(), cut: true, at: geom.V(x, b.Max.Y, b.Max.Z), crop: crop,
		show: func(o frame.Member) bool {
			is := func(i int) bool {
				return i >= 0 && m.frame.Members[i].Kind == o.Kind && m.frame.Members[i].No == o.No
			}
			return o.Kind == t.Kind && o.No == t.No || near && is(k.Members[0]) || is(rafter) || post >= 0 && m.frame.Members[post].Kind == frame.KindPost && is(post)
		},
	})
	m.trimRows(v, t, x, b)
	n := v.note(draw.Right)
	n.Width = detailWords
	n.AddInside(m.stick(upperFirst(string(t.Kind)), t)+". "+m.trimWords(t), geom.V(x, (b.Min.Y+b.Max.Y)/2, (b.Min.Z+b.Max.Z)/2))
	if near {
		c := m.frame.Timber(k)
		n.AddInside(m.stick(upperFirst(k.Short), c), geom.V(x, (k.Inner+k.Outer)/2, k.Bottom+(k.Top-k.Bottom)*0.3))
	}
	return []*viewBlock{v}
}

// trimCarrier is the timber that a board stands over or hangs on; false if there
// is none near.
func (m *maker) trimCarrier(t frame.Member) (frame.Carrier, bool) {
	if t.Kind == frame.KindFascia {
		return frame.Carrier{}, false
	}
	b := t.Solid().Bounds()
	for _, k := range m.frame.Setout.Carriers {
		if t.Kind == frame.KindValance && k.Kind != frame.KindBeam {
			continue
		}
		if b.Min.Y < k.Inner+closeMargin && b.Max.Y > k.Outer-closeMargin {
			return k, true
		}
	}
	return frame.Carrier{}, false
}

// trimRows hangs the dimensions on a board's section, where it stands plumb.
func (m *maker) trimRows(v *viewBlock, t frame.Member, x float64, b geom.Box3) {
	if t.Place.W.Z < 1 {
		return // its words give its size
	}
	at := func(y, z float64) geom.Vec { return geom.V(x, y, z) }
	heights := []geom.Vec{at(b.Min.Y, b.Min.Z), at(b.Min.Y, b.Max.Z)}
	wide := []geom.Vec{at(b.Min.Y, b.Min.Z), at(b.Max.Y, b.Min.Z)}
	if k, ok := m.trimCarrier(t); ok {
		for _, z := range []float64{k.Bottom, k.Top} {
			if z > b.Max.Z+onTear || z > b.Min.Z+onTear && z < b.Max.Z-onTear {
				heights = append(heights, at(k.Outer, z))
			} else if z < b.Min.Z-onTear && t.Kind == frame.KindBlock && z == k.Top {
				heights = append(heights, at(k.Outer, z))
			}
		}
		wide = append(wide, at(k.Outer, k.Bottom), at(k.Inner, k.Bottom))
	}
	v.row(draw.Left).Chain("", heights...)
	v.row(draw.Bottom).Chain("", wide...)
}

// trimWords say how a board is fixed.
func (m *maker) trimWords(t frame.Member) string {
	j := m.job
	switch t.Kind {
	case frame.KindBlock:
		how := "square to the rafters, its top in line with their top edges"
		if j.Blocking.Set == frame.BlockPlumb {
			how = "plumb, its upper outer arris in line with the rafters' top edges"
		}
		return fmt.Sprintf("It stands %s; %s at each end.", how, m.screwCount(j.Blocking.Screws))
	case frame.KindFascia:
		how := "Plumb"
		if j.Rafters.Tail.Shape == frame.TailSquare {
			how = "Square to the rafters"
		}
		return fmt.Sprintf("%s across the rafters' ends, its top in line with their top edges; %s into each.", how, m.screwCount(j.Fascia.Screws))
	}
	if j.Valance.Set == frame.ValanceFace {
		return fmt.Sprintf("On the outer faces of beam and posts, %s below the beam; %s into each post.", m.fine(j.Valance.Below), m.screwCount(j.Valance.Screws))
	}
	return fmt.Sprintf("Up under the beam between the posts; %s at each end.", m.screwCount(j.Valance.Screws))
}

// screwCount is how many screws there are, and of what size.
func (m *maker) screwCount(s frame.EndScrews) string {
	words := count(s.Each, "screw")
	switch {
	case s.Diameter > 0 && s.Length > 0:
		words += " Ø" + m.fine(s.Diameter) + " × " + m.figures.Length(s.Length)
	case s.Diameter > 0:
		words += " Ø" + m.fine(s.Diameter)
	}
	return words
}
