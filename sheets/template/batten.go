package template

import (
	"fmt"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// battenBeside is how far the template of a batten's screws reaches beyond the
// rafter, mm.
const battenBeside = 40

// battenPieces show where a batten is drilled at each rafter. The screws stand
// on the middle of the rafter, spread evenly over the batten's width: common
// practice, no source.
func (m *maker) battenPieces() []*piece {
	rafter := m.job.Rafters.Section.Width
	var out []*piece
	for i, t := range m.frame.Members {
		if t.Kind != frame.KindBatten || t.No > 1 && m.frame.Members[i-1].Mark == t.Mark && m.frame.Members[i-1].Hand == t.Hand {
			continue
		}
		var at []float64
		for _, j := range m.frame.Joints {
			if j.Kind == frame.JointBattenRafter && j.A == i {
				at = append(at, t.Place.Local(j.At).X)
			}
		}
		if len(at) == 0 {
			continue
		}
		box := whole(t, at[0]-rafter/2-battenBeside, at[0]+rafter/2+battenBeside)
		up := geom.V(0, 0, 1)
		p := &piece{title: "Screws of the battens", work: work{member: t}, uses: []use{useOf(t, at...)}}
		p.plan = plan{
			title: p.title,
			options: [][]part{{
				{frame.FaceTop, base, box}, {frame.FaceOuter, 0, lipOf(box, up, lip)}, {frame.FaceHouse, 0, lipOf(box, up, lip)},
			}},
			cross: geom.V(at[0], 0, t.Section.Depth), through: true, along: []frame.Face{frame.FaceTop},
			notes: []string{m.battenNote()},
			extra: func(p *piece) { m.battenMarks(p, at[0]) },
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

func (m *maker) battenNote() string {
	s := m.job.Battens.Screws
	what := "screw"
	if s.Diameter > 0 {
		what = m.fine.Length(s.Diameter) + " screw"
	}
	n := fmt.Sprintf("%d %s at each rafter", s.Each, what)
	if s.Each > 1 {
		n = fmt.Sprintf("%d %ss at each rafter", s.Each, what)
	}
	return n + ", on its middle: common practice, confirm. Drill before screwing near the ends. The long dashes are the rafter's sides."
}

// battenMarks draws the screws and the rafter below.
func (m *maker) battenMarks(p *piece, u float64) {
	t, s := p.work.member, m.job.Battens.Screws
	top := p.flaps[0]
	for i := range s.Each {
		v := t.Section.Width * (float64(i) + 0.5) / float64(s.Each)
		r := ring{top.paper(geom.V(u, v, t.Section.Depth)), s.Diameter / 2}
		if r.r > 0 {
			p.ink.ring(markLine, r.c, r.r)
		}
		p.ink.target(r)
	}
	half := m.job.Rafters.Section.Width / 2
	for _, f := range p.flaps {
		for _, side := range []float64{u - half, u + half} {
			c := f.paper(geom.V(side, f.at.Y, f.at.Z))
			p.ink.line(markLine, geom.P(c.X, f.area.Y0), geom.P(c.X, f.area.Y1))
		}
	}
}
