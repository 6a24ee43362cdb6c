package template

import (
	"fmt"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// battenBeside is how far the template of a stick's screws reaches beyond what it
// crosses, mm.
const battenBeside = 40

// spotRadius is that of the ring round a screw whose size is not stated, mm (own).
const spotRadius = 2.0

// crossing is how sticks of one kind lie across others.
type crossing struct {
	kind   frame.Kind // of the stick that is drilled
	joint  frame.JointKind
	over   string  // what it lies on
	wide   float64 // of that
	screws frame.BattenScrews
}

func (m *maker) crossings() []crossing {
	j := m.job
	return []crossing{
		{frame.KindBatten, frame.JointBattenRafter, "rafter", j.Rafters.Section.Width, j.Battens.Screws},
		{frame.KindLath, frame.JointLathBatten, "batten", j.Battens.Section.Width, j.Laths.Screws},
	}
}

// crossingPieces show where a stick is drilled at each one that it crosses. The
// screws stand on the middle of that, spread evenly over the stick's width:
// common practice, no source.
func (m *maker) crossingPieces(x crossing) []*piece {
	var out []*piece
	for i, t := range m.frame.Members {
		if t.Kind != x.kind || t.No > 1 && m.frame.Members[i-1].Mark == t.Mark && m.frame.Members[i-1].Hand == t.Hand {
			continue
		}
		var at []float64
		for _, j := range m.frame.Joints {
			if j.Kind == x.joint && j.A == i {
				at = append(at, t.Place.Local(j.At).X)
			}
		}
		if len(at) == 0 {
			continue
		}
		box := whole(t, at[0]-x.wide/2-battenBeside, at[0]+x.wide/2+battenBeside)
		up := geom.V(0, 0, 1)
		p := &piece{title: "Screws of the " + plural(x.kind), work: work{member: t}, uses: []use{m.useOf(t, at...)}}
		p.plan = plan{
			title: p.title,
			options: [][]part{{
				{frame.FaceTop, base, box}, {t.Faces()[0], 0, lipOf(box, up, lip)}, {t.Faces()[1], 0, lipOf(box, up, lip)},
			}},
			cross: geom.V(at[0], 0, t.Section.Depth), through: true, along: []frame.Face{frame.FaceTop},
			notes: []string{m.crossingNote(x)},
			extra: func(p *piece) { m.crossingMarks(p, x, at[0]) },
		}
		p.show(m, p.plan.options[0])
		p.key = p.shape()
		if n := len(out); n > 0 && out[n-1].key == p.key {
			out[n-1].join(p.uses[0])
			continue
		}
		out = append(out, p)
	}
	return out
}

func (m *maker) crossingNote(x crossing) string {
	s := x.screws
	n := fmt.Sprintf("%d screw", s.Each)
	if s.Each > 1 {
		n += "s"
	}
	if s.Diameter > 0 {
		n += ", " + m.fine.Length(s.Diameter) + " thick,"
	}
	n += " at each " + x.over
	return n + ", on its middle: common practice, confirm. Drill before screwing near the ends. The long dashes are the " + x.over + "'s sides."
}

// crossingMarks draws the screws and what lies below.
func (m *maker) crossingMarks(p *piece, x crossing, u float64) {
	t, s := p.work.member, x.screws
	top := p.flaps[0]
	for i := range s.Each {
		v := t.Section.Width * (float64(i) + 0.5) / float64(s.Each)
		r := ring{top.paper(geom.V(u, v, t.Section.Depth)), s.Diameter / 2}
		if r.r == 0 { // not stated: a small one, to be seen where centre lines cross
			p.ink.ring(axisLine, r.c, spotRadius)
		} else {
			p.ink.ring(markLine, r.c, r.r)
		}
		p.ink.target(r)
	}
	half := x.wide / 2
	for _, f := range p.flaps {
		for _, side := range []float64{u - half, u + half} {
			c := f.paper(geom.V(side, f.at.Y, f.at.Z))
			p.ink.line(markLine, geom.P(c.X, f.area.Y0), geom.P(c.X, f.area.Y1))
		}
	}
}
