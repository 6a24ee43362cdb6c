package template

import (
	"fmt"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// straps are those that lie on the top of the work's member within what the
// template shows.
func (m *maker) straps(w work, box geom.Box3) []frame.Spot {
	t := w.member
	if m.job.Rafters.Strap.Width == 0 {
		return nil
	}
	var out []frame.Spot
	for _, h := range m.hardware {
		for _, s := range h.Spots {
			on := m.frame.Members[s.Member]
			if h.Kind == frame.StrapTie && on.Kind == t.Kind && on.No == t.No && s.Face == frame.FaceTop &&
				s.At+s.Span/2 > box.Min.X && s.At-s.Span/2 < box.Max.X {
				out = append(out, s)
			}
		}
	}
	return out
}

// strapMarks marks where a strap lies: along the rafter's top edge, and across
// the top of the timber that holds it.
func (m *maker) strapMarks(p *plan, w work, box geom.Box3) {
	t, strap := w.member, m.job.Rafters.Strap
	var sides [][2]geom.Vec
	top := t.Section.Depth
	for _, s := range m.straps(w, box) {
		a, b := s.At-s.Span/2, s.At+s.Span/2
		v0, v1 := 0.0, t.Section.Width
		if t.Kind == frame.KindRafter {
			v0, v1 = v1/2-strap.Width/2, v1/2+strap.Width/2
		}
		for _, v := range []float64{v0, v1} {
			if t.Kind == frame.KindRafter {
				sides = append(sides, [2]geom.Vec{geom.V(max(a, box.Min.X), v, top), geom.V(min(b, box.Max.X), v, top)})
			}
		}
		for _, u := range []float64{a, b} {
			if u > box.Min.X+same && u < box.Max.X-same {
				sides = append(sides, [2]geom.Vec{geom.V(u, v0, top), geom.V(u, v1, top)})
			}
		}
	}
	if len(sides) == 0 {
		return
	}
	p.notes = append(p.notes, fmt.Sprintf("Long dashes on the top: where the strap lies, %s wide; of its %s half is on the rafter.", m.fine.Length(strap.Width), m.fine.Length(strap.Length)))
	p.extra = func(p *piece) {
		for _, f := range p.flaps {
			if f.face != frame.FaceTop {
				continue
			}
			for _, s := range sides {
				if a, b, ok := within(f.paper(s[0]), f.paper(s[1]), f.area); ok {
					p.ink.line(markLine, a, b)
				}
			}
		}
	}
}
