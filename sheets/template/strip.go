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
		for _, w := range works {
			for _, f := range w.features {
				m.stripMark(p, f)
			}
		}
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

// stripMark marks a feature across the strip, with its running figures.
func (m *maker) stripMark(p *piece, f frame.Feature) {
	side, top := p.flaps[0], p.flaps[1]
	across := func(st draw.Style, u float64) float64 {
		x := side.paper(geom.V(u, 0, 0)).X
		for _, f := range []flap{side, top} {
			p.ink.line(st, geom.P(x, f.area.Y0), geom.P(x, f.area.Y1))
		}
		return x
	}
	low, high := side.area.Y0+2, top.area.Y1-2
	// A figure stands at the foot of its mark, or where that is taken at the head.
	figure := func(x float64, words string) {
		t := draw.Text{Layer: draw.Notes, At: geom.P(x-figureLift, low), Height: draw.NoteHeight, Turn: math.Pi / 2, String: words}
		if box := t.Box(); newLetterer(&p.ink, nil).blocked(box, false) > box.X0 {
			t.At.Y, t.Align = high, draw.End
		}
		p.ink.words = append(p.ink.words, t)
	}
	switch f := f.(type) {
	case frame.Housing:
		a, b := f.At-f.Width/2, f.At+f.Width/2
		t := p.work.member
		for _, u := range []float64{a, b} {
			if u > same && u < t.Length-same {
				figure(across(markLine, u), m.figures.Length(u))
			}
		}
		figure(across(axisLine, f.At), m.figures.Length(f.At))
		p.lands(side, max(0, a), min(t.Length, b))
	case frame.Hole:
		if f.Face == frame.FaceTop {
			r := ring{top.paper(f.Mouth), f.Diameter / 2}
			p.ink.ring(markLine, r.c, r.r)
			p.ink.target(r)
		}
		figure(across(axisLine, f.Mouth.X), m.figures.Length(f.Mouth.X)+" "+f.Use)
	}
}

// lands crosses out the place of another timber, with an X as builders do.
func (p *piece) lands(f flap, a, b float64) {
	x0, x1 := f.paper(geom.V(a, 0, 0)).X, f.paper(geom.V(b, 0, 0)).X
	y1 := f.area.Y1 - 2
	y0 := y1 - 10
	p.ink.line(barLine, geom.P(x0, y0), geom.P(x1, y1))
	p.ink.line(barLine, geom.P(x0, y1), geom.P(x1, y0))
}
