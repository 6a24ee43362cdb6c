package template

import (
	"fmt"
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
)

// Measures of marking strips, mm (own).
const (
	stripLong   = 250.0 // at the most
	stripLeast  = 150.0 // room for the words
	stripBefore = 30.0  // of plain timber before the first cut, for the cross
	stripAfter  = 52.0  // and after the last, for the words
	stripFace   = 36.0  // of the upright face
	stripTop    = 32.0  // of the top
	crossClear  = 14.0  // from the datum cross to a cut, or to the end of the strip
	figureLift  = 0.9   // from a mark to its figure
	figureStep  = 3.0   // from one place for a figure that is tried to the next
	figureFar   = 1.7   // from a figure to another's mark: more, so that it is seen whose it is
	figureRoom  = 24.0  // that the figure of a hole takes
)

// strips makes the marking strips of a plate or beam: pieces that each carry
// the marks of a few cuts, to be laid by the tape at the reading of their own
// datum cross. Joined end to end they would add up the paper's errors, so they
// do not meet.
func (m *maker) strips(t frame.Member) []*piece {
	works := worksOf(t)
	long := min(stripLong, max(m.page.free.W(), m.page.free.H()))
	var out []*piece
	for i := 0; i < len(works); {
		from := max(0, works[i].a-stripBefore)
		j := i + 1
		for j < len(works) && works[j].b+stripAfter <= from+long {
			j++
		}
		to := works[j-1].b + stripAfter
		if to > t.Length { // the words stand before the first cut
			to = t.Length
			from = max(0, to-long, min(from, works[i].a-stripAfter-stripBefore))
		}
		if to-from < stripLeast {
			to = min(t.Length, from+stripLeast)
			from = max(0, to-stripLeast)
		}
		out = append(out, m.strip(t, works[i:j], from, to))
		i = j
	}
	for i, p := range out {
		p.title = fmt.Sprintf("Marking strip %d of %d of the %s", i+1, len(out), t.Kind)
	}
	return out
}

// strip makes one piece.
func (m *maker) strip(t frame.Member, works []work, from, to float64) *piece {
	face := frame.FaceOuter
	for _, w := range works {
		for _, f := range w.features {
			if h, ok := f.(frame.Housing); ok {
				face = h.Face
			}
		}
	}
	box := whole(t, from, to)
	plane, _ := t.FacePlane(face)
	side := lipOf(box, geom.V(0, 0, 1), stripFace)
	top := lipOf(box, plane.N, max(stripTop, holeReach(works, plane)))
	at := m.stripCross(works, from, to)
	p := &piece{work: work{member: t}, uses: []use{useOf(t, at)}, plan: plan{
		options: [][]part{{{face, base, side}, {frame.FaceTop, 0, top}}},
		cross:   t.OnFace(face, at, t.Section.Depth),
		reading: m.figures.Length(at),
		through: true,
		strip:   true,
		notes:   []string{"Lay it by its own reading; never join strips end to end. Figures run from the " + endName(t.Kind, true) + "."},
	}}
	p.plan.extra = func(p *piece) {
		m.stripMarks(p, works)
	}
	return p
}

// holeReach is how wide the top of a strip must be to hold the holes in it.
func holeReach(works []work, side geom.Plane) float64 {
	reach := 0.0
	for _, w := range works {
		for _, f := range w.features {
			if h, ok := f.(frame.Hole); ok && h.Face == frame.FaceTop {
				reach = max(reach, -side.Dist(h.Mouth)+h.Diameter/2+2*targetReach+figureRoom)
			}
		}
	}
	return reach
}

// stripCross is a whole reading on a strip, clear of its cuts: the first that
// there is.
func (m *maker) stripCross(works []work, from, to float64) float64 {
	step := 10.0
	if m.job.Units == measure.FeetInches {
		step = measure.Inch / 2
	}
	clear := func(u float64) bool {
		for _, w := range works {
			if u > w.a-crossClear && u < w.b+crossClear {
				return false
			}
		}
		return u >= from+crossReach && u <= to-crossReach
	}
	first := math.Ceil((from + crossReach) / step)
	for n := first; n*step <= to; n++ {
		if clear(n * step) {
			return n * step
		}
	}
	return first * step
}

// stripMark is a mark across a strip.
type stripMark struct {
	style draw.Style
	at    float64 // along the member
	use   string  // of a hole
}

// marks lists the marks of a feature.
func marks(t frame.Member, f frame.Feature) []stripMark {
	var out []stripMark
	switch f := f.(type) {
	case frame.Housing:
		for _, u := range []float64{f.At - f.Width/2, f.At + f.Width/2} {
			if u > same && u < t.Length-same {
				out = append(out, stripMark{style: markLine, at: u})
			}
		}
		out = append(out, stripMark{style: axisLine, at: f.At})
	case frame.Hole:
		out = append(out, stripMark{axisLine, f.Mouth.X, " " + f.Use})
	}
	return out
}

// stripMarks marks the cuts of some works across the strip, then writes their
// running figures where there is room.
func (m *maker) stripMarks(p *piece, works []work) {
	side, top := p.flaps[0], p.flaps[1]
	t := p.work.member
	var all []stripMark
	for _, w := range works {
		for _, f := range w.features {
			all = append(all, marks(t, f)...)
			switch f := f.(type) {
			case frame.Housing:
				p.lands(side, max(0, f.At-f.Width/2), min(t.Length, f.At+f.Width/2))
			case frame.Hole:
				if f.Face == frame.FaceTop {
					r := ring{top.paper(f.Mouth), f.Diameter / 2}
					p.ink.ring(markLine, r.c, r.r)
					p.ink.target(r)
				}
			}
		}
	}
	for _, k := range all {
		x := side.paper(geom.V(k.at, 0, 0)).X
		for _, f := range []flap{side, top} {
			p.ink.line(k.style, geom.P(x, f.area.Y0), geom.P(x, f.area.Y1))
		}
	}
	for _, k := range all {
		p.figure(side.paper(geom.V(k.at, 0, 0)).X, m.figures.Length(k.at)+k.use)
	}
}

// figure letters a running figure along its mark, as near to its foot as there is
// room, on its left or else on its right.
func (p *piece) figure(x float64, words string) {
	side, top := p.flaps[0].area, p.flaps[1].area
	l := newLetterer(&p.ink, nil)
	first := draw.Text{}
	long := draw.TextWidth(words, draw.NoteHeight, false)
	for y := side.Y0 + 2; y+long < top.Y1; y += figureStep {
		for _, right := range []bool{false, true} {
			t := draw.Text{Layer: draw.Notes, At: geom.P(x-figureLift, y), Height: draw.NoteHeight, Turn: math.Pi / 2, String: words}
			if right {
				t.At.X = x + figureLift + t.Height
			}
			if first.String == "" {
				first = t
			}
			own, other := figureLift/2, figureFar
			if right {
				own, other = other, own
			}
			box := t.Box()
			box.X0, box.X1, box.Y0, box.Y1 = box.X0-other, box.X1+own, box.Y0-figureLift/2, box.Y1+figureLift/2
			if side.Union(top).Encloses(t.Box()) && l.blocked(box, false) < box.X0 {
				p.ink.words = append(p.ink.words, t)
				return
			}
		}
	}
	p.ink.words = append(p.ink.words, first)
}

// lands crosses out the place of another timber, with an X as builders do.
func (p *piece) lands(f flap, a, b float64) {
	x0, x1 := f.paper(geom.V(a, 0, 0)).X, f.paper(geom.V(b, 0, 0)).X
	y1 := f.area.Y1 - 2
	y0 := y1 - 10
	p.ink.line(barLine, geom.P(x0, y0), geom.P(x1, y1))
	p.ink.line(barLine, geom.P(x0, y1), geom.P(x1, y0))
}
