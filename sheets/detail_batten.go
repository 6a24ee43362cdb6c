package sheets

import (
	"cmp"
	"slices"

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

// battened is a stretch of a rafter with some battens on it.
type battened struct {
	*maker
	rafter, timber frame.Member   // the latter is the plate or the beam
	battens        []frame.Member // those shown
	x              float64        // of the plane that cuts, beside the rafter
}

// battenViews look along the battens: at the first ones, with the plate's face,
// and at the last with the beam's.
func battenViews(m *maker, d detail) []*viewBlock {
	r := m.frame.Members[d.joint.B]
	m = m.cutAt(r.Place.O.X)
	s := m.frame.Setout
	plate := m.frame.Timber(m.rear())
	beam := m.frame.Timber(m.front())
	all := m.frame.Of(frame.KindBatten)
	shown := all[:min(2, len(all))]
	if s.BattenGap > widestGap*all[0].Section.Width {
		shown = all[:1] // the cross-section shows the next
	}
	b := battened{maker: m, rafter: r, x: r.Place.O.X - 1, timber: plate, battens: shown}
	var chain []geom.Vec
	for _, t := range shown {
		near, far := b.edges(t)
		chain = append(chain, near, far)
	}
	chain = append(chain, b.onTop(s.Rear().Outer))
	slices.SortStableFunc(chain, func(p, q geom.Vec) int { return cmp.Compare(q.Y, p.Y) })
	low := min(b.lowest(shown).Y, s.Rear().Outer)
	first := b.view("along the slope, from the "+m.rear().Short, chain, low-r.Section.Depth*0.3, max(s.Rear().Inner, s.RafterStart)+closeMargin)
	first.marks = func(p *page, v *draw.View) {
		t := shown[len(shown)-1]
		p.placer.Label(draw.Label{
			View: v, At: t.Place.Point(geom.V(0, t.Section.Width/2, t.Section.Depth/2)), Inside: true,
			Text: m.stick("Batten", t) + m.laying().words(m), Width: detailWords, Toward: geom.P(-1, -2),
		})
	}

	b.timber, b.battens = beam, m.lastOn(d.joint.B)
	near, far := b.edges(b.battens[0])
	end := b.onTop(s.BattenEnd)
	name := "At the " + m.front().Short
	if s.BattenEnd < s.Front().Outer {
		name = "At the tail"
	}
	last := b.view(name, []geom.Vec{near, far, end}, min(s.Front().Outer, end.Y)-closeMargin, near.Y+r.Section.Depth*0.45)
	last.title.Note = "the last batten"
	if m.frame.Setout.BattenRuns[len(all)-1] != m.frame.Setout.BattenRuns[0] {
		last.title.Note = "the last batten on this rafter, " + r.Mark
	}
	return append([]*viewBlock{first, last}, b.layerViews()...)
}

// lastOn is the last batten that lies on a rafter, given by its index.
func (m *maker) lastOn(rafter int) []frame.Member {
	var out []frame.Member
	for _, j := range m.frame.Joints {
		if j.Kind == frame.JointBattenRafter && j.B == rafter {
			out = []frame.Member{m.frame.Members[j.A]}
		}
	}
	return out
}

// widestGap is the gap, in widths of a batten, beyond which the second batten is
// too far away to be in the view of the first.
const widestGap = 6

// onTop is the point of the rafter's top edge at a world y.
func (b battened) onTop(y float64) geom.Vec { return geom.V(b.x, y, b.frame.RafterTop(y)) }

// edges are where a batten's near and far lower edges lie on the rafter.
func (b battened) edges(t frame.Member) (near, far geom.Vec) {
	return b.onTop(t.Place.Point(geom.V(0, t.Section.Width, 0)).Y), b.onTop(t.Place.O.Y)
}

// lowest is the far edge of the last of the battens.
func (b battened) lowest(battens []frame.Member) geom.Vec {
	_, far := b.edges(battens[len(battens)-1])
	return far
}

// view shows the rafter from y0 to y1, dimensioned along the slope.
func (b battened) view(name string, chain []geom.Vec, y0, y1 float64) *viewBlock {
	const under = 1.2 // depths of the rafter shown below its top
	crop := everywhere()
	crop.Min.Y, crop.Max.Y = y0, y1
	crop.Min.Z = min(b.onTop(y0).Z, b.onTop(y1).Z) - b.rafter.Section.Depth*under
	v := b.closeUp(closeUp{
		name: name, axes: geom.LeftEnd(), cut: true, at: b.onTop((y0 + y1) / 2), crop: crop,
		show: only(append([]frame.Member{b.rafter, b.timber}, b.battens...)...),
	})
	over := b.battens[0].Place.W.Mul(b.battens[0].Section.Depth)
	from, to := b.onTop(y1), b.onTop(y0)
	rows := draw.NewSlopedRows(v.view, from.Add(over), to.Add(over))
	rows.Chain("", chain...)
	v.Sloped = append(v.Sloped, rows)
	return v
}
