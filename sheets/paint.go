package sheets

import (
	"cmp"
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// paint draws a picture where the view stands. Lines that the scale would
// bring closer together than minGap are thinned, the more important kept.
func (p picture) paint(s *draw.Sheet, v *draw.View) {
	th := newThinner(minGap)
	drawn := newThinner(sameLine)
	for _, c := range p.cuts {
		p.paintCut(s, v, c, drawn)
		for _, l := range append([][]geom.Pt{c.region.Outer}, c.region.Holes...) {
			for i, a := range l {
				th.keep(v.Flat(a), v.Flat(l[(i+1)%len(l)]))
			}
		}
	}
	var lines []inkLine
	for _, st := range p.strokes {
		if st.Arc != nil {
			if len(v.Whole(st.A, st.A)) == 0 {
				continue // of a hole that a break leaves out
			}
			if p.onCut(st) {
				continue
			}
			l := p.ink(v, st)
			s.Add(draw.Path{Style: l.style, Stroke: true, ID: p.scene.id(st.Body), Segs: arcSegs(l)})
			continue
		}
		for _, piece := range v.Whole(st.A, st.B) {
			st.A, st.B = piece[0], piece[1]
			lines = append(lines, p.ink(v, st))
		}
	}
	slices.SortStableFunc(lines, func(a, b inkLine) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(b.length(), a.length()))
	})
	var kept []inkLine
	for _, l := range lines {
		kept = append(kept, th.take(l)...)
	}
	p.strokeBodies(s, kept)
	p.paintTears(s, v)
}

// ofRoof reports whether a body is a part of the roof.
func (p picture) ofRoof(body int) bool {
	_, ok := p.scene.roof(body)
	return ok
}

// sameLine is the distance, mm on paper, within which two lines are one: a tenth
// of the narrowest pen.
const sameLine = 0.013

// inkLine is a stroke as it will stand on the paper.
type inkLine struct {
	a, b  geom.Pt
	arc   *geom.Arc
	style draw.Style
	body  int
	rank  int // the lower is drawn first and kept
}

func (l inkLine) length() float64 { return l.b.Sub(l.a).Len() }

// ink is how a stroke is drawn.
func (p picture) ink(v *draw.View, st geom.Stroke) inkLine {
	l := inkLine{a: v.Flat(st.A), b: v.Flat(st.B), body: st.Body}
	if st.Arc != nil {
		a := *st.Arc
		a.Centre = v.Flat(st.A).Add(a.Centre.Sub(st.A).Mul(v.Scale)) // a break may lie between
		a.Major = a.Major.Mul(v.Scale)
		l.arc = &a
	}
	m, timber := p.scene.member(st.Body)
	switch {
	case st.Hidden:
		l.style, l.rank = draw.Style{Layer: draw.Hidden, Pen: draw.Narrow, Dash: draw.Dashed}, 3
	case timber && p.faint != nil && p.faint(m):
		l.style, l.rank = draw.Style{Layer: draw.Outline, Pen: draw.Narrow}, 1
	case timber:
		l.style, l.rank = draw.Style{Layer: draw.Outline, Pen: draw.Middle}, 0
	case p.ofRoof(st.Body):
		l.style, l.rank = draw.Style{Layer: draw.Outline, Pen: draw.Narrow}, 1
	default:
		l.style, l.rank = draw.Style{Layer: draw.Context, Pen: draw.Narrow}, 2
	}
	return l
}

// onCut reports whether an arc lies on the outline of a cut face, which is drawn
// already.
func (p picture) onCut(st geom.Stroke) bool {
	for _, c := range p.cuts {
		if c.body == st.Body && onLoop(c.region.Outer, st.A) && onLoop(c.region.Outer, st.B) && onLoop(c.region.Outer, st.Arc.At((st.Arc.Start+st.Arc.End)/2)) {
			return true
		}
	}
	return false
}

// onLoop reports whether a point lies on a loop, but for what facets stray from
// the arc that they stand for.
func onLoop(loop []geom.Pt, p geom.Pt) bool {
	const near = 0.05 // mm of the model
	for i, a := range loop {
		d := loop[(i+1)%len(loop)].Sub(a)
		t := min(1, max(0, p.Sub(a).Dot(d)/d.Dot(d)))
		if a.Add(d.Mul(t)).Sub(p).Len() < near {
			return true
		}
	}
	return false
}

func arcSegs(l inkLine) []draw.Seg {
	return draw.ArcPath(l.style, *l.arc).Segs
}

// strokeBodies draws the lines, those of one body and style in one path. Each
// dashed line is a path of its own, so that its dashes are fitted to it.
func (p picture) strokeBodies(s *draw.Sheet, lines []inkLine) {
	slices.SortStableFunc(lines, func(a, b inkLine) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(a.body, b.body))
	})
	for i := 0; i < len(lines); {
		j := i + 1
		for j < len(lines) && lines[i].style.Dash == draw.Solid && lines[j].body == lines[i].body && lines[j].style == lines[i].style {
			j++
		}
		path := draw.Path{Style: lines[i].style, Stroke: true, ID: p.scene.id(lines[i].body)}
		for _, l := range lines[i:j] {
			path.Segs = append(path.Segs, draw.Seg{Op: draw.Move, To: l.a}, draw.Seg{Op: draw.Line, To: l.b})
		}
		s.Add(path)
		i = j
	}
}

// paintCut draws a face that the section plane makes: heavy outline and light
// hatch for the frame, light for the house.
func (p picture) paintCut(s *draw.Sheet, v *draw.View, c cutFace, drawn *thinner) {
	loops := append([][]geom.Pt{c.region.Outer}, c.region.Holes...)
	flat := make([][]geom.Pt, len(loops))
	for i, l := range loops {
		flat[i] = flatten(v, l)
	}
	st := draw.Style{Layer: draw.Outline, Pen: draw.Wide}
	m, timber := p.scene.member(c.body)
	switch {
	case timber:
		hatchMember(s, p.axes, m, flat)
	case p.ofRoof(c.body):
		s.FillPolygon(draw.Outline, 1, flat...) // too thin for an outline of its own
		return
	default:
		st = draw.Style{Layer: draw.Context, Pen: draw.Narrow}
		p.hatchHouse(s, c.body, flat)
	}
	p.outline(s, v, st, c, drawn)
}

// alongView is the cosine above which a timber counts as cut across: at 45°
// end grain and long grain look alike.
const alongView = math.Sqrt2 / 2

// hatchMember hatches a cut member by what it is made of and how it is cut.
func hatchMember(s *draw.Sheet, axes geom.View, m frame.Member, loops [][]geom.Pt) {
	if m.Kind == frame.KindFooting {
		s.Hatch(draw.Concrete, loops, 0)
		return
	}
	if math.Abs(m.Place.U.Dot(axes.Toward)) > alongView {
		s.Hatch(draw.EndGrain, loops, angleOf(axes, m.Place.V))
		return
	}
	s.Hatch(draw.LongGrain, loops, angleOf(axes, m.Place.U))
}

// angleOf is the direction of a world direction in a view.
func angleOf(axes geom.View, d geom.Vec) float64 {
	q := axes.Project(d)
	return math.Atan2(q.Y, q.X)
}

// hatchHouse hatches a cut piece of the house, light: the ground along its
// upper edge only, masonry and concrete all over, the rest not at all.
func (p picture) hatchHouse(s *draw.Sheet, body int, loops [][]geom.Pt) {
	h, ok := p.scene.house(body)
	if !ok {
		return
	}
	if h.Name == frame.HouseGround {
		s.Hatch(draw.Earth, upperEdges(loops), 0)
	}
	if mat, ok := wallHatch(h.Of); ok {
		s.Hatch(mat, loops, 0)
	}
}

// wallHatch is how a piece of the house shows what it is made of; false for what
// shows nothing.
func wallHatch(of frame.Material) (draw.Material, bool) {
	switch of {
	case frame.Brick:
		return draw.Brickwork, true
	case frame.Block:
		return draw.Blockwork, true
	case frame.Cast:
		return draw.Concrete, true
	}
	return 0, false
}

// upperEdges are the level edges of the outlines that have the material below
// them, each running to the right, so that the ground is on its right.
func upperEdges(loops [][]geom.Pt) [][]geom.Pt {
	const level = 1e-6 // mm on paper
	var out [][]geom.Pt
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			if math.Abs(a.Y-b.Y) < level && b.X < a.X {
				out = append(out, []geom.Pt{b, a})
			}
		}
	}
	return out
}
