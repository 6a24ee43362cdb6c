package template

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
)

// maker makes the templates of one job.
type maker struct {
	frame   *frame.Frame
	job     *frame.Job
	figures measure.Format // of what is marked with a tape, as on the member drawings: to half a division
	fine    measure.Format // of shapes
	page    layout
	pieces  []*piece

	hardware []frame.Hardware
}

// piece is one template: a flat drawing at full size, with the words that
// stand over it.
type piece struct {
	number string // "T01"
	title  string
	plan   plan
	work   work
	flaps  []flap
	ink    ink
	head   []string // paragraphs over the drawing
	runs   []string // and, after them, lists that are never broken within an item
	uses   []use
	key    string // alike templates share it
	say    naming
	ticked bool   // it has ticks beside a cut
	mute   bool   // a face has no name, or the first has no arrow
	bare   [3]int // how many words, lines and fills there are before letter sets its words
}

// use is where a template is used: on sticks of one mark and hand.
type use struct {
	mark     string
	quantity int
	from     string // the end that the readings are from
	readings []float64
}

// tolerance of the key by which templates are alike, mm: far below what can be
// cut, far above rounding.
const alike = 1e-3

// alikeShift keeps round figures off the edges between steps, so that rounding
// does not part templates that are alike.
const alikeShift = 0.137

// workPiece makes the template of a work as it is best shown. Whether it is new
// is for the caller to find out.
func (m *maker) workPiece(w work) *piece {
	p := &piece{plan: m.planOf(w), work: w}
	p.title = p.plan.title
	p.uses = []use{m.useOf(w.member, p.plan.cross.X)}
	p.show(m, p.plan.options[0])
	p.key = p.shape()
	return p
}

// show draws a work by some of its faces.
func (p *piece) show(m *maker, parts []part) {
	p.ink, p.say = ink{}, m.say()
	p.flaps = unfold(p.work.member, parts, p.plan.cross)
	p.geometry(m)
}

func (m *maker) useOf(t frame.Member, readings ...float64) use {
	mark := t.Mark
	if t.Hand != frame.NoHand {
		mark += " " + string(t.Hand) + "-hand"
	}
	return use{mark: mark, quantity: t.Quantity, from: m.say().end(t.Kind, true), readings: readings}
}

func areaOf(flaps []flap) draw.Rect {
	r := draw.EmptyRect()
	for _, f := range flaps {
		r = r.Union(f.area)
	}
	return r
}

// shape is a text that two templates share if they are alike: same lines, in
// whatever order, and same words.
func (p *piece) shape() string {
	parts := []string{p.title + strings.Join(p.plan.notes, "")}
	add := func(what string, vs ...float64) {
		for _, v := range vs {
			what += fmt.Sprintf(" %d", int64(math.Floor(v/alike+0.5+alikeShift)))
		}
		parts = append(parts, what)
	}
	for _, f := range p.flaps {
		add(string(f.face), f.area.X0, f.area.Y0, f.area.X1, f.area.Y1)
	}
	for _, s := range p.ink.lines {
		mid, half := s.a.Lerp(s.b, 0.5), s.b.Sub(s.a).Mul(0.5)
		add("line", mid.X, mid.Y, math.Abs(half.X), math.Abs(half.Y), math.Copysign(1, half.X*half.Y+same))
	}
	for _, c := range p.ink.circles {
		add("circle", c.c.X, c.c.Y, c.r)
	}
	slices.Sort(parts)
	return strings.Join(parts, "|")
}

// geometry draws everything but words and what is particular to the piece.
func (p *piece) geometry(m *maker) {
	k := &p.ink
	for _, f := range p.flaps {
		c := p.work.on(f)
		for _, s := range draw.HatchLines(append([][]geom.Pt{c.near.Corners()}, c.kept...), c.hatch(), hatchPitch) {
			if a, b, ok := within(s[0], s[1], c.near); ok {
				k.line(waste, a, b)
			}
		}
		p.outline(f)
		for _, s := range c.lines {
			k.line(cutLine, s[0], s[1])
		}
		for _, r := range c.rings {
			k.ring(cutLine, r.c, r.r)
			k.target(r)
		}
	}
	p.folds()
	p.centreLines()
	p.ticked = false
	for _, b := range p.plan.bands {
		for _, f := range p.flaps {
			if b.face == f.face && m.ticks(k, f, b) {
				p.ticked = true
			}
		}
	}
	p.ink.datum(p.crossAt(), crossReach)
	if p.plan.extra != nil {
		p.plan.extra(p)
	}
}

// The look of a template, mm (own).
const (
	hatchAngle  = math.Pi / 4
	hatchPitch  = 2.5
	crossReach  = 9.0 // of the datum cross, each way
	crossRadius = 4.0
	targetReach = 3.0 // of the cross at the middle of a hole, beyond its edge
)

// hatch is the angle of the hatch on a face: that of the two which is farther from
// the directions of the cut lines, so that none of it is taken for one.
func (c cut) hatch() float64 {
	clear := func(angle float64) float64 {
		sin, cos := math.Sincos(angle)
		least := 1.0
		for _, l := range c.lines {
			least = min(least, math.Abs(l[1].Sub(l[0]).Unit().Cross(geom.P(cos, sin))))
		}
		return least
	}
	if clear(-hatchAngle) > clear(hatchAngle)+same {
		return -hatchAngle
	}
	return hatchAngle
}

// target marks the middle of a hole.
func (k *ink) target(r ring) {
	d := r.r + targetReach
	k.line(axisLine, r.c.Sub(geom.P(d, 0)), r.c.Add(geom.P(d, 0)))
	k.line(axisLine, r.c.Sub(geom.P(0, d)), r.c.Add(geom.P(0, d)))
}

// outline draws the sides of a flap that are no folds: an arris where the
// timber ends, a thin line where only the paper does.
func (p *piece) outline(f flap) {
	t := p.work.member
	solid := whole(t, 0, t.Length)
	for _, s := range sides(f.area) {
		mid := s[0].Lerp(s[1], 0.5)
		if p.folded(mid) {
			continue
		}
		st := trimLine
		if onEdge(f.timber(mid), solid) {
			st = edgeLine
		}
		p.ink.line(st, s[0], s[1])
	}
}

// timber is the point of the face that lies at a place of the paper.
func (f flap) timber(q geom.Pt) geom.Vec {
	d := q.Sub(f.on)
	return f.at.Add(f.right.Mul(d.X)).Add(f.up.Mul(d.Y))
}

// onEdge reports whether a point of a box's face lies on one of its edges.
func onEdge(p geom.Vec, b geom.Box3) bool {
	n := 0
	for _, d := range []float64{p.X - b.Min.X, p.X - b.Max.X, p.Y - b.Min.Y, p.Y - b.Max.Y, p.Z - b.Min.Z, p.Z - b.Max.Z} {
		if math.Abs(d) < same {
			n++
		}
	}
	return n >= 2
}

// folded reports whether a place lies on a fold.
func (p *piece) folded(q geom.Pt) bool {
	for _, f := range p.flaps {
		a, b := f.fold[0], f.fold[1]
		d := b.Sub(a)
		if d.Len() < same {
			continue
		}
		along, off := q.Sub(a).Dot(d.Unit()), q.Sub(a).Cross(d.Unit())
		if math.Abs(off) < same && along > -same && along < d.Len()+same {
			return true
		}
	}
	return false
}

func (p *piece) folds() {
	for _, f := range p.flaps {
		if f.fold[0] != f.fold[1] {
			p.ink.line(foldLine, f.fold[0], f.fold[1])
		}
	}
}

// centreLines draws the lines through the datum cross that the plan asks for:
// across the timber on every long face, and along it on the faces that it names.
func (p *piece) centreLines() {
	t := p.work.member
	middle := geom.V(p.plan.cross.X, t.Section.Width/2, t.Section.Depth/2)
	for _, f := range p.flaps {
		c := f.paper(middle)
		alongPaper := f.dir(geom.V(1, 0, 0))
		upDown := [2]geom.Pt{geom.P(c.X, f.area.Y0), geom.P(c.X, f.area.Y1)}
		leftRight := [2]geom.Pt{geom.P(f.area.X0, c.Y), geom.P(f.area.X1, c.Y)}
		if f.acrossMember {
			if f.from != base {
				continue
			}
			p.axis(upDown) // through what is bored in the middle of its width
			continue
		}
		acrossIt, alongIt := upDown, leftRight
		if alongPaper.X == 0 {
			acrossIt, alongIt = leftRight, upDown
		}
		if p.plan.through && p.plan.cross.X > f.u0+same && p.plan.cross.X < f.u1-same {
			p.axis(acrossIt)
		}
		if slices.Contains(p.plan.along, f.face) && f.area.Contains(c) {
			p.axis(alongIt)
		}
	}
}

func (p *piece) axis(s [2]geom.Pt) { p.ink.line(axisLine, s[0], s[1]) }

// crossAt is where the datum cross lies on the paper.
func (p *piece) crossAt() geom.Pt {
	for _, f := range p.flaps {
		if q := f.paper(p.plan.cross); math.Abs(f.plane.Dist(p.plan.cross)) < same && f.area.Contains(q) {
			return q
		}
	}
	return p.flaps[0].paper(p.plan.cross)
}

// datum draws the datum cross: a disc in four quarters, two of them black, so that
// it is taken for no hole; its middle is where they meet. Its arms reach out.
func (k *ink) datum(c geom.Pt, reach float64) {
	const facets = 6 // of a quarter
	quarter := func(from int) []geom.Pt {
		pts := []geom.Pt{c}
		for i := range facets + 1 {
			sin, cos := math.Sincos(math.Pi / 2 * (float64(from) + float64(i)/facets))
			pts = append(pts, c.Add(geom.P(crossRadius*cos, crossRadius*sin)))
		}
		return pts
	}
	for i, tone := range []draw.Grey{1, 0, 1, 0} {
		k.fill(draw.Hatch, tone, quarter(i)...)
	}
	k.ring(crosses, c, crossRadius)
	k.line(crosses, c.Sub(geom.P(reach, 0)), c.Add(geom.P(reach, 0)))
	k.line(crosses, c.Sub(geom.P(0, reach)), c.Add(geom.P(0, reach)))
}

// letter sets the words on the flaps, the names smaller where there is no room for
// all that must be there. tiles are the stretches of paper that each end up on one
// page; none: all of it does.
func (p *piece) letter(tiles []draw.Rect) {
	p.bare = [3]int{len(p.ink.words), len(p.ink.lines), len(p.ink.fills)}
	if len(p.flaps) == 0 {
		return
	}
	for _, largest := range []float64{draw.SheetHeight, draw.TitleHeight, draw.NoteHeight} {
		if p.mute = !p.lettered(newLetterer(&p.ink, tiles), largest); !p.mute {
			return
		}
		if largest > draw.NoteHeight {
			p.unletter()
		}
	}
}

// lettered sets the words. It reports whether every face has its name and an arrow.
func (p *piece) lettered(l *letterer, largest float64) bool {
	first := p.flaps[0]
	whole := p.arrows(l, first)
	whole = p.nameFlap(l, first, largest) && whole
	for _, f := range p.flaps[1:] {
		whole = p.nameFlap(l, f, min(largest, draw.TitleHeight)) && whole
	}
	p.nameCross(l)
	for _, f := range p.flaps[1:] {
		p.arrows(l, f)
	}
	for _, f := range p.flaps {
		l.waste(p.work.on(f))
		p.foldWord(l, f)
	}
	return whole
}

// arrows say which way round a flap lies. It reports false if there is no room for
// the one along the timber.
func (p *piece) arrows(l *letterer, f flap) bool {
	set := true
	kind := p.work.member.Kind
	if !f.acrossMember {
		end := p.say.end(kind, true)
		set = l.setAny(f.area, p.towards(f, geom.V(-1, 0, 0), "to the "+end), p.towards(f, geom.V(-1, 0, 0), end))
	}
	if way, words := p.say.upWay(kind, f); words != "" {
		l.set(p.towards(f, way, words), f.area)
	}
	return set
}

// nameFlap writes the number of the template and the name of the face, as large
// as there is room for up to a height; up the paper where there is none across it,
// and on the hatch if there is none beside it.
func (p *piece) nameFlap(l *letterer, f flap, largest float64) bool {
	face := p.say.capitals(p.work.member.Kind, f.face)
	var tries []label
	for _, over := range []bool{false, true} {
		for _, words := range []string{p.number + " " + face, face} {
			for _, h := range []float64{draw.SheetHeight, draw.TitleHeight, draw.NoteHeight} {
				if h <= largest {
					tries = append(tries, label{words: words, height: h, bold: true, over: over},
						label{words: words, height: h, bold: true, over: over, turned: true})
				}
			}
		}
	}
	return l.setAny(f.area, tries...)
}

// nameCross writes what the cross is, with its reading where the template has
// only one: as near to it as there is room, on the hatch rather than far off.
func (p *piece) nameCross(l *letterer) {
	b := label{words: strings.TrimSpace("datum cross " + p.plan.reading), height: draw.NoteHeight}
	c, all := p.crossAt(), areaOf(p.flaps)
	w, _ := b.size()
	for _, try := range []struct {
		near         float64
		over, turned bool
	}{{near: 10}, {near: 20}, {near: 20, over: true}, {near: 30, over: true, turned: true}, {near: 40}, {near: 400}} {
		near := try.near
		b.over, b.turned = try.over, try.turned
		by := draw.Rect{X0: c.X - w - near, Y0: c.Y - near, X1: c.X + w + near, Y1: c.Y + near}
		for _, f := range p.flaps {
			if l.set(b, f.area.Intersect(by).Intersect(all)) {
				return
			}
		}
	}
}

// towards is a label with an arrow along a direction of the timber.
func (p *piece) towards(f flap, d geom.Vec, words string) label {
	return label{words: words, height: draw.NoteHeight, arrow: f.dir(d)}
}

// upWay is the direction on a flap that a builder turns it by, and its name.
func (n naming) upWay(k frame.Kind, f flap) (geom.Vec, string) {
	switch {
	case f.acrossMember && upright(k):
		return geom.V(0, 0, 1), n.inwards(k)
	case upright(k):
		return geom.Vec{}, ""
	case f.plane.N.Z != 0 && !k.Slopes():
		return geom.V(0, 1, 0), n.inwards(k)
	case f.plane.N.Z != 0:
		return geom.Vec{}, ""
	}
	if f.dir(geom.V(0, 0, 1)) == geom.P(0, 1) {
		return geom.V(0, 0, 1), "this side up"
	}
	return geom.V(0, 0, 1), "to the top"
}

// waste writes the word where the hatch has room for it.
func (l *letterer) waste(c cut) {
	l.only = func(box draw.Rect) bool {
		for _, q := range append(box.Corners(), box.Centre()) {
			if c.keeps(q) {
				return false
			}
		}
		return true
	}
	l.set(label{words: "WASTE", height: draw.NoteHeight, over: true}, c.near)
	l.only = nil
}

// keeps reports whether a place is on timber that stays.
func (c cut) keeps(q geom.Pt) bool {
	in := false
	for _, loop := range c.kept {
		for i, a := range loop {
			b := loop[(i+1)%len(loop)]
			if (a.Y <= q.Y) != (b.Y <= q.Y) && a.X+(b.X-a.X)*(q.Y-a.Y)/(b.Y-a.Y) > q.X {
				in = !in
			}
		}
	}
	return in
}

// foldWord names a fold beside its line.
func (p *piece) foldWord(l *letterer, f flap) {
	if f.fold[0] == f.fold[1] {
		return
	}
	const room = 6.0
	box := draw.Bounds(f.fold[0], f.fold[1])
	l.set(label{words: "fold", height: draw.NoteHeight}, box.Expand(room).Intersect(areaOf(p.flaps)))
}
