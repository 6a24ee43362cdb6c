package template

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// Measures of marking strips, mm (own).
const (
	stripBeside = 33.0  // of plain timber beside the marks, for words
	stripLeast  = 110.0 // of a strip at the end of a timber, for words
	stripNear   = 30.0  // marks nearer to each other share a strip
	stripFace   = 46.0  // of the upright face: the longest figure below the crossed-out place
	stripTop    = 28.0  // of the top
	figureLift  = 0.9   // from a mark to its figure
	figureStep  = 3.0   // from one place for a figure that is tried to the next
	figureFar   = 1.7   // from a figure to another's mark: more, so that it is seen whose it is
	figureRoom  = 24.0  // that the figure of a hole takes
)

// stripWork is what one marking strip carries: a rafter's place on the timber,
// and what lies close by.
type stripWork struct {
	at    float64 // of the first rafter's middle: there the cross goes
	a, b  float64 // what it takes up along the timber
	face  frame.Face
	marks []stripMark
	lands [][2]float64 // from and to of each rafter
	onTop bool         // the rafters lie over the timber
	holes []frame.Hole
}

// stripMark is a mark across a strip.
type stripMark struct {
	style draw.Style
	at    float64 // along the member
	name  string  // what is there, on a strip that serves many places
	use   string  // of a hole
}

// strips makes the marking strips of a timber that carries rafters. Each has the
// marks of one rafter, and of what is closer to it than paper could part, round a
// datum cross on the rafter's middle; so one strip serves wherever these lie
// alike, laid by the tape each time. Strips joined end to end would add up the
// paper's errors. A hole that stands alone has its own template, which is laid
// by the same tape.
func (m *maker) strips(i int) []*piece {
	t := m.frame.Members[i]
	known := map[string]*piece{}
	var out []*piece
	for _, w := range m.stripWorks(i) {
		p := m.strip(t, w)
		if old := known[p.key]; old != nil {
			old.join(p.uses[0])
			continue
		}
		known[p.key] = p
		out = append(out, p)
	}
	return out
}

// stripWorks gathers what is marked on the strips of a member, in order along it.
func (m *maker) stripWorks(i int) []stripWork {
	t := m.frame.Members[i]
	all := m.landings(i)
	if len(all) == 0 {
		return nil
	}
	for _, f := range t.Features {
		if h, ok := f.(frame.Hole); ok && h.Use != frame.UseBolt { // those have a pattern of their own
			r := h.Diameter / 2
			all = append(all, stripWork{
				a: h.Mouth.X - r, b: h.Mouth.X + r, holes: []frame.Hole{h},
				marks: []stripMark{{axisLine, h.Mouth.X, h.Use, " " + h.Use}},
			})
		}
	}
	slices.SortStableFunc(all, func(x, y stripWork) int { return cmp.Compare(x.a, y.a) })
	var out []stripWork
	for _, w := range all {
		if n := len(out); n > 0 && w.a < out[n-1].b+stripNear {
			out[n-1] = out[n-1].with(w)
			continue
		}
		out = append(out, w)
	}
	return slices.DeleteFunc(out, func(w stripWork) bool { return len(w.lands) == 0 })
}

// with is both works on one strip.
func (w stripWork) with(o stripWork) stripWork {
	if len(w.lands) == 0 {
		w.at, w.face, w.onTop = o.at, o.face, o.onTop
	}
	w.b = max(w.b, o.b)
	w.marks = slices.Clone(w.marks)
	for _, k := range o.marks {
		if i := slices.IndexFunc(w.marks, func(x stripMark) bool { return math.Abs(x.at-k.at) < same }); i >= 0 {
			w.marks[i].name += k.use
			w.marks[i].use += k.use
			continue
		}
		w.marks = append(w.marks, k)
	}
	w.lands = append(slices.Clip(w.lands), o.lands...)
	w.holes = append(slices.Clip(w.holes), o.holes...)
	slices.SortStableFunc(w.marks, func(x, y stripMark) int { return cmp.Compare(x.at, y.at) })
	return w
}

// landings are where rafters come to a member: as wide as their housings or,
// where nothing is let in, as they are themselves.
func (m *maker) landings(i int) []stripWork {
	t := m.frame.Members[i]
	var out []stripWork
	for _, j := range m.frame.Joints {
		if j.B != i || m.frame.Members[j.A].Kind != frame.KindRafter {
			continue
		}
		r := m.frame.Members[j.A]
		mid := t.Place.Local(r.Place.Point(geom.V(r.Length/2, r.Section.Width/2, r.Section.Depth/2)))
		w := stripWork{at: t.Place.Local(j.At).X, face: frame.FaceOuter, onTop: true}
		if house, ok := t.FacePlane(frame.FaceHouse); ok && house.Dist(mid) > 0 {
			w.face = frame.FaceHouse
		}
		half := r.Section.Width / 2 / t.Place.U.X // more along one that is not square to them
		for _, f := range t.Features {
			if h, ok := f.(frame.Housing); ok && math.Abs(h.At-w.at) < same {
				half, w.face, w.onTop = h.Width/2, h.Face, false
			}
		}
		w.a, w.b = max(0, w.at-half), min(t.Length, w.at+half)
		w.lands = [][2]float64{{w.a, w.b}}
		for _, k := range []stripMark{
			{markLine, w.at - half, "left side", ""}, {axisLine, w.at, "middle", ""}, {markLine, w.at + half, "right side", ""},
		} {
			if k.at > same && k.at < t.Length-same {
				w.marks = append(w.marks, k)
			}
		}
		out = append(out, w)
	}
	return out
}

// strip makes one piece.
func (m *maker) strip(t frame.Member, w stripWork) *piece {
	from, to := max(0, w.a-stripBeside), min(t.Length, w.b+stripBeside)
	if from == 0 {
		to = min(t.Length, max(to, stripLeast))
	}
	if to == t.Length {
		from = max(0, min(from, to-stripLeast))
	}
	box := whole(t, from, to)
	plane, _ := t.FacePlane(w.face)
	side := lipOf(box, geom.V(0, 0, 1), stripFace)
	top := lipOf(box, plane.N, max(stripTop, w.holeReach(plane)))
	p := &piece{work: work{member: t}, uses: []use{m.useOf(t, w.at)}, plan: plan{
		options: [][]part{{{w.face, base, side}, {frame.FaceTop, 0, top}}},
		cross:   t.OnFace(w.face, w.at, t.Section.Depth),
		through: true,
		notes:   []string{"Lay it by its own reading each time; never join strips end to end."},
	}}
	p.title = "Marking strip: " + string(t.Kind)
	for _, h := range w.holes {
		p.title += " and " + h.Use
	}
	switch {
	case w.a < same:
		p.title += ", " + m.say().end(t.Kind, true)
	case w.b > t.Length-same:
		p.title += ", " + m.say().end(t.Kind, false)
	}
	p.plan.extra = func(p *piece) { m.stripMarks(p, w) }
	p.show(m, p.plan.options[0])
	p.key = p.shape()
	return p
}

// holeReach is how wide the top of a strip must be to hold the holes in it.
func (w stripWork) holeReach(side geom.Plane) float64 {
	reach := 0.0
	for _, h := range w.holes {
		if h.Face == frame.FaceTop {
			reach = max(reach, -side.Dist(h.Mouth)+h.Diameter/2+2*targetReach+figureRoom)
		}
	}
	return reach
}

// stripMarks draws what a strip marks, then letters along each mark its running
// figure; or, where the strip serves many places, what it is, and the figures of
// all places are listed.
func (m *maker) stripMarks(p *piece, w stripWork) {
	side, top := p.flaps[0], p.flaps[1]
	for _, l := range w.lands {
		p.lands(side, l[0], l[1], side.area.Y1)
		if w.onTop {
			p.lands(top, l[0], l[1], top.area.Y0+landsHigh+2*landsClear)
		}
	}
	for _, h := range w.holes {
		if h.Face == frame.FaceTop {
			r := ring{top.paper(h.Mouth), h.Diameter / 2}
			p.ink.ring(markLine, r.c, r.r)
			p.ink.target(r)
		}
	}
	for _, k := range w.marks {
		if math.Abs(k.at-w.at) < same { // the line through the cross
			continue
		}
		x := side.paper(geom.V(k.at, 0, 0)).X
		for _, f := range []flap{side, top} {
			p.ink.line(k.style, geom.P(x, f.area.Y0), geom.P(x, f.area.Y1))
		}
	}
	single := len(p.uses) == 1 && len(p.uses[0].readings) == 1
	p.plan.reading, p.runs = "", nil
	if single {
		p.plan.reading = m.figures.Length(w.at)
	} else {
		p.runs = m.runs(p.uses, w)
	}
	for _, k := range w.marks {
		words := k.name
		if single {
			words = m.figures.Length(k.at) + k.use
		}
		p.figure(side.paper(geom.V(k.at, 0, 0)).X, words)
	}
}

// runs lists, for each place that a strip serves, the running figures of its
// marks.
func (m *maker) runs(uses []use, w stripWork) []string {
	var out []string
	for _, u := range uses {
		for _, r := range u.readings {
			var at []string
			for _, k := range w.marks {
				at = append(at, m.figures.Length(r+k.at-w.at)+k.use)
			}
			run := strings.Join(at, " – ")
			if len(uses) > 1 {
				run = u.mark + ": " + run
			}
			out = append(out, run)
		}
	}
	return out
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

// The look of the crossed-out place of another timber, mm (own).
const (
	landsHigh  = 8.0
	landsClear = 10.0 // from the arris, beyond the datum cross
)

// lands crosses out the place of another timber, with an X as builders do, below
// a height on the paper.
func (p *piece) lands(f flap, a, b, below float64) {
	x0, x1 := f.paper(geom.V(a, 0, 0)).X, f.paper(geom.V(b, 0, 0)).X
	y1 := below - landsClear
	y0 := y1 - landsHigh
	p.ink.line(barLine, geom.P(x0, y0), geom.P(x1, y1))
	p.ink.line(barLine, geom.P(x0, y1), geom.P(x1, y0))
}
