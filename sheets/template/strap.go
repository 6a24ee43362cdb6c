package template

import (
	"fmt"
	"math"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// strapsOn are the straps that lie on the top of a member.
func (m *maker) strapsOn(t frame.Member) []frame.Spot {
	if m.job.Rafters.Strap.Width == 0 {
		return nil
	}
	var out []frame.Spot
	for _, h := range m.hardware {
		for _, s := range h.Spots {
			on := m.frame.Members[s.Member]
			if h.Kind == frame.StrapTie && on.Kind == t.Kind && on.No == t.No && s.Face == frame.FaceTop {
				out = append(out, s)
			}
		}
	}
	return out
}

// strapMarks marks where straps lie across the top of a timber that holds rafters.
func (m *maker) strapMarks(p *plan, w work, box geom.Box3) {
	t := w.member
	var lines [][2]geom.Vec
	for _, s := range m.strapsOn(t) {
		for _, u := range []float64{s.At - s.Span/2, s.At + s.Span/2} {
			if u > box.Min.X+same && u < box.Max.X-same {
				lines = append(lines, [2]geom.Vec{geom.V(u, 0, t.Section.Depth), geom.V(u, t.Section.Width, t.Section.Depth)})
			}
		}
	}
	if len(lines) == 0 {
		return
	}
	p.notes = append(p.notes, fmt.Sprintf("Long dashes on the top: where the strap lies, %s wide.", m.fine.Length(m.job.Rafters.Strap.Width)))
	p.extra = func(p *piece) { p.mark(lines) }
}

// mark draws mark lines on the faces that they lie on, as far as those are shown.
func (p *piece) mark(lines [][2]geom.Vec) {
	for _, f := range p.flaps {
		for _, l := range lines {
			if math.Abs(f.plane.Dist(l[0])) > same || math.Abs(f.plane.Dist(l[1])) > same {
				continue
			}
			if a, b, ok := within(f.paper(l[0]), f.paper(l[1]), f.area); ok {
				p.ink.line(markLine, a, b)
			}
		}
	}
}

// strapPieces show where straps lie on a rafter: along the middle of its top edge
// at an end, or bent over it where it lies over what it is tied to.
func (m *maker) strapPieces(t frame.Member) []*piece {
	if t.Kind != frame.KindRafter {
		return nil
	}
	var out []*piece
	known := map[string]*piece{}
	all := m.strapsOn(t)
	plain := beside // as much as there is at every strap, so that alike ones share a template
	for _, s := range all {
		plain = min(plain, s.At-s.Span/2, t.Length-s.At-s.Span/2)
	}
	for _, s := range all {
		p := m.strapPiece(t, s, max(0, plain))
		if old := known[p.key]; old != nil {
			old.join(p.uses[0])
			continue
		}
		known[p.key] = p
		out = append(out, p)
	}
	return out
}

// strapPiece shows one strap, with so much of plain timber beside it.
func (m *maker) strapPiece(t frame.Member, s frame.Spot, plain float64) *piece {
	strap := m.job.Rafters.Strap
	long := max(plain, (stripLeast-s.Span)/2)
	box := whole(t, max(0, s.At-s.Span/2-long), min(t.Length, s.At+s.Span/2+long))
	over := m.bentOver(s)
	side := lipOf(box, geom.V(0, 0, 1), beside)
	f := t.Faces()
	p := &piece{work: work{member: t}, uses: []use{m.useOf(t, s.At)}, plan: plan{
		title:   "Strap of the " + plural(t.Kind),
		options: [][]part{{{frame.FaceTop, base, box}, {f[0], 0, side}, {f[1], 0, side}}},
		cross:   geom.V(s.At, 0, t.Section.Depth),
		datum:   "on the top left arris, in the middle of the strap",
		through: true,
	}}
	if over {
		p.plan.notes = []string{fmt.Sprintf("Long dashes: where the strap lies, %s wide, bent over the top edge and down both sides.", m.fine.Length(strap.Width))}
	} else {
		p.plan.notes = []string{fmt.Sprintf("Long dashes: where the strap lies, %s wide, on the middle of the top edge; of its %s half is on the rafter.", m.fine.Length(strap.Width), m.fine.Length(strap.Length))}
	}
	lines := strapOutline(t, s, strap.Width, over)
	p.plan.extra = func(p *piece) { p.mark(lines) }
	p.title = p.plan.title
	p.show(m, p.plan.options[0])
	p.key = p.shape()
	return p
}

// bentOver reports whether a strap is bent over the rafter, which lies over what
// it is tied to.
func (m *maker) bentOver(s frame.Spot) bool {
	for _, j := range m.frame.Joints {
		if j.A == s.Member && j.Hold == frame.Over && math.Abs(m.frame.Members[j.A].Place.Local(j.At).X-s.At) < same {
			return true
		}
	}
	return false
}

// strapOutline is the outline of a strap on a rafter.
func strapOutline(t frame.Member, s frame.Spot, wide float64, over bool) [][2]geom.Vec {
	a, b, top := s.At-s.Span/2, s.At+s.Span/2, t.Section.Depth
	var out [][2]geom.Vec
	if over {
		for _, u := range []float64{a, b} {
			out = append(out, [2]geom.Vec{geom.V(u, 0, top), geom.V(u, t.Section.Width, top)})
			for _, v := range []float64{0, t.Section.Width} {
				out = append(out, [2]geom.Vec{geom.V(u, v, 0), geom.V(u, v, top)})
			}
		}
		return out
	}
	v0, v1 := (t.Section.Width-wide)/2, (t.Section.Width+wide)/2
	for _, u := range []float64{a, b} {
		out = append(out, [2]geom.Vec{geom.V(u, v0, top), geom.V(u, v1, top)})
	}
	for _, v := range []float64{v0, v1} {
		out = append(out, [2]geom.Vec{geom.V(a, v, top), geom.V(b, v, top)})
	}
	return out
}
