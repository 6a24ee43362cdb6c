package draw

import (
	"math"
	"slices"

	"plumbcut/geom"
)

// SpanDir is the direction in which a Span measures.
type SpanDir int

// The directions of a Span.
const (
	Aligned SpanDir = iota // along the line from A to B, which lies in the view plane
	Across                 // level on the paper
	Upright                // plumb on the paper: heights and drops
)

// Span is a single dimension that stands by itself in or beside a view.
type Span struct {
	View   *View
	A, B   geom.Vec
	Dir    SpanDir
	Offset float64 // of the dimension line from A, mm on paper: Aligned: to the left going from A to B; Across: up; Upright: to the right
	Share  float64 // where along the line the figure stands, 0 at A to 1 at B; 0: in the middle
	Reach  float64 // how far from Share a Placer may move the figure, in parts of the line; 0: anywhere
	Beside bool    // Upright: a figure that does not fit along the line lies level beside it, away from the things measured
	level  bool    // Upright: the figure lies so though it fits
	Prefix string  // set before the figure, e.g. "drop "
	AName  string  // Upright: the surface at A, lettered at the end of its extension line
	BName  string  // Upright: the surface at B
}

// spanPlan is a span laid out on the paper.
type spanPlan struct {
	p, q   geom.Pt // the terminators
	pa, pb geom.Pt // the points measured
	lo, hi geom.Pt // the ends of the dimension line, in the direction of reading
	text   Text
	dim    Dim
}

// Draw puts the dimension on the sheet.
func (d Span) Draw(s *Sheet, h Hand) {
	l := d.plan(h)
	for _, e := range l.extensions(h) {
		s.Line(narrow(Dimension), e[:]...)
	}
	s.Line(narrow(Dimension), l.lo, l.hi)
	s.terminator(l.p, l.q.Sub(l.p))
	s.terminator(l.q, l.q.Sub(l.p))
	s.AddText(l.text)
	s.Dims = append(s.Dims, Placed{
		Dim: l.dim, Kind: SingleDim, Figure: l.text.String, P: l.p, Q: l.q, Box: l.text.Box(), Row: -1,
	})
	for _, n := range d.names(h, l) {
		s.Line(narrow(Dimension), n.lead[:]...)
		s.AddText(n.text)
	}
}

// Figure is the figure, with its prefix, where Draw puts it.
func (d Span) Figure(h Hand) Text { return d.plan(h).text }

func (d Span) plan(h Hand) spanPlan {
	l := spanPlan{pa: d.View.Pt(d.A), pb: d.View.Pt(d.B)}
	l.dim = Dim{View: d.View, A: d.A, B: d.B, Prefix: d.Prefix}
	switch d.Dir {
	case Across:
		l.dim.Along = d.View.Axes.Right
		l.p, l.q = geom.P(l.pa.X, l.pa.Y+d.Offset), geom.P(l.pb.X, l.pa.Y+d.Offset)
	case Upright:
		l.dim.Along = d.View.Axes.Up
		l.p, l.q = geom.P(l.pa.X+d.Offset, l.pa.Y), geom.P(l.pa.X+d.Offset, l.pb.Y)
	default:
		l.dim.Along = d.B.Sub(d.A).Unit()
		out := l.pb.Sub(l.pa).Unit().Left().Mul(d.Offset)
		l.p, l.q = l.pa.Add(out), l.pb.Add(out)
	}
	d.figure(h, &l)
	return l
}

// side is the side of an upright line where the things measured are not: 1 is
// the right.
func (l spanPlan) side() float64 {
	if l.pa.X+l.pb.X > l.p.X+l.q.X {
		return -1
	}
	return 1
}

// figure places the figure over the middle of the line, or beyond its end in
// the direction of reading if it does not fit.
func (d Span) figure(h Hand, l *spanPlan) {
	dir := readable(l.q.Sub(l.p))
	l.lo, l.hi = l.p, l.q
	if l.q.Sub(l.p).Dot(dir) < 0 {
		l.lo, l.hi = l.q, l.p
	}
	l.text = Text{
		Layer: Dimension, Align: Centred, Height: h.FigureHeight(), Turn: turnOf(dir),
		String: l.dim.figure(SingleDim, h.Figures),
	}
	up := dir.Left().Mul(overLine(l.text.String, l.text.Height))
	fits := l.text.Width()+2*nearStroke <= l.hi.Sub(l.lo).Len()
	at := l.p.Lerp(l.q, 0.5)
	if d.Share != 0 && (fits || d.level) {
		at = l.p.Lerp(l.q, d.Share)
	}
	if fits && !d.level {
		l.text.At = at.Add(up)
		return
	}
	l.text.Align = Start
	if d.Dir == Upright && (d.Beside || d.level) {
		side := l.side()
		if side < 0 {
			l.text.Align = End
		}
		l.text.Turn = 0
		l.text.At = at.Add(geom.P(side*(h.extension()+nearLine), -l.text.Height/2))
		return
	}
	l.text.At = l.hi.Add(dir.Mul(nearStroke)).Add(up)
	l.hi = l.hi.Add(dir.Mul(nearStroke + l.text.Width()))
}

// extensions are the extension lines from the points to their terminators, with
// what they run past those; one that would be no longer than its gap is none.
func (l spanPlan) extensions(h Hand) [][2]geom.Pt {
	var out [][2]geom.Pt
	for _, e := range [][2]geom.Pt{{l.pa, l.p}, {l.pb, l.q}} {
		if way := e[1].Sub(e[0]); way.Len() > h.extension() {
			gap := way.Unit().Mul(h.extension())
			out = append(out, [2]geom.Pt{e[0].Add(gap), e[1].Add(gap)})
		}
	}
	return out
}

// spanName is the name of a surface at the end of an extension line, and the
// piece of line that leads to it.
type spanName struct {
	lead [2]geom.Pt
	text Text
}

// names places the names of the surfaces at the outer ends of the extension
// lines; if they lie close together they move apart.
func (d Span) names(h Hand, l spanPlan) []spanName {
	if d.Dir != Upright || d.AName == "" && d.BName == "" {
		return nil
	}
	side, align := l.side(), Start
	if side < 0 {
		align = End
	}
	ends, names := [2]geom.Pt{l.p, l.q}, [2]string{d.AName, d.BName}
	if ends[0].Y > ends[1].Y {
		ends[0], ends[1] = ends[1], ends[0]
		names[0], names[1] = names[1], names[0]
	}
	size := []float64{NoteHeight, NoteHeight}
	places := spread([]float64{ends[0].Y, ends[1].Y}, size, textGap+NoteHeight*descent, math.Inf(-1), math.Inf(1))
	var out []spanName
	for i, name := range names {
		if name == "" {
			continue
		}
		from := geom.P(ends[i].X+side*h.extension(), ends[i].Y)
		at := geom.P(from.X+side*minJog, places[i])
		out = append(out, spanName{[2]geom.Pt{from, at}, Text{
			Layer: Dimension, At: geom.P(at.X+side*textGap, at.Y-NoteHeight/2), Align: align,
			Height: NoteHeight, String: name,
		}})
	}
	return out
}

// Span draws the dimension at the first free place: at its own offset, with the
// figure where it stands best or elsewhere along the line, or further out in
// steps, or else nearer. More spans are other ways to dimension the same, e.g. with fewer
// words, tried at each offset in their order. If no place is free for the figure
// of an upright one, it may lie level beside its line. If none is at all, the
// span takes the place that disturbs least.
func (p *Placer) Span(tries ...Span) {
	const far, near, step = 3.5 * rowPitch, 0.75 * rowPitch, rowPitch / 2
	out, in := steps(0, far, step), steps(step/2, near, step/2)
	for i := range in {
		in[i] = -in[i]
	}
	best, cost := p.span(tries, out)
	if cost > 0 {
		if d, less := p.span(tries, in); less < cost {
			best, cost = d, less
		}
	}
	if cost > 0 && tries[0].Dir == Upright {
		lying := slices.Clone(tries)
		for i := range lying {
			lying[i].level = true
		}
		if d, less := p.span(lying, out); less < cost {
			best = d
		}
	}
	best.Draw(p.Sheet, p.Hand)
}

// span is the first free place of some spans, so much further out than they
// would stand, or the one that disturbs least, with its cost.
func (p *Placer) span(tries []Span, further []float64) (best Span, least float64) {
	const closest = 4.0 // mm on paper, of a dimension line to what it measures
	least = math.Inf(1)
	for _, more := range further {
		for _, d := range tries {
			if more < 0 && math.Abs(d.Offset)+more < closest {
				continue
			}
			d.Offset += math.Copysign(more, d.Offset*more)
			for _, at := range d.slid(p.Hand) {
				cost := p.spanCost(at)
				if cost < least {
					best, least = at, cost
				}
				if cost == 0 {
					return best, 0
				}
			}
		}
	}
	return best, least
}

// slid is the span with its figure at its own place, as far as it stands clear
// of the ends there, and at others along the line, the nearest first. A figure
// that does not stand over the line has one place.
func (d Span) slid(h Hand) []Span {
	const places = 20 // in the length of the line
	l := d.plan(h)
	length, half := l.q.Sub(l.p).Len(), l.text.Width()/2+nearStroke
	if d.level {
		half = l.text.Height/2 + nearStroke
	}
	if 2*half > length {
		return []Span{d} // beside the line or beyond its end
	}
	least := half / length
	own := 0.5
	if d.Share != 0 {
		own = min(max(d.Share, least), 1-least)
	}
	d.Share = own
	reach := d.Reach
	if reach == 0 {
		reach = 1
	}
	out := []Span{d}
	for i := 1.0; i < places && i/places <= reach; i++ {
		for _, share := range []float64{own - i/places, own + i/places} {
			if share >= least && share <= 1-least {
				d.Share = share
				out = append(out, d)
			}
		}
	}
	return out
}

// spanCost is how much a span disturbs what is on the sheet: 0 if its words
// touch nothing and its lines no words.
func (p *Placer) spanCost(d Span) float64 {
	l := d.plan(p.Hand)
	lines := append(l.extensions(p.Hand), [2]geom.Pt{l.lo, l.hi}, stroke45(l.p, l.q.Sub(l.p)), stroke45(l.q, l.q.Sub(l.p)))
	cost := p.textCost(l.text)
	for _, n := range d.names(p.Hand, l) {
		cost += p.textCost(n.text)
		lines = append(lines, n.lead)
	}
	for _, ab := range lines {
		cost += costText * float64(p.textsUnder(ab[0], ab[1]))
	}
	return cost
}

// textCost is how much a text, which may be turned, disturbs what is on the
// sheet: 0 if it touches nothing.
func (p *Placer) textCost(t Text) float64 {
	p.sync()
	cost, quad, box := 0.0, t.Quad(), t.Box()
	if !p.Sheet.Paper.Inner().Encloses(box.Expand(nearLine)) {
		cost += costBox
	}
	if !p.freeOfText(quad, textGap) {
		cost += costBox
	}
	p.grid.segsNear(box.Expand(nearLine), func(s *segment) bool {
		if quadSegmentGap(quad, s.a, s.b) < max(nearLine, textToLine+s.half) {
			cost += costText
		}
		return true
	})
	return cost
}

// Angle dimensions the angle at Apex between the directions to A and B with an
// arc. All three lie in the view plane.
type Angle struct {
	View       *View
	Apex, A, B geom.Vec
	Radius     float64 // of the arc, mm on paper; 0 is 18
	Slope      bool    // A lies level with the apex: give 1:n too
}

// defaultArc is the radius of the arc of an angle, mm on paper: wide enough
// that a common fall shows.
const defaultArc = 18.0

// Draw puts the angle on the sheet.
func (a Angle) Draw(s *Sheet, h Hand) {
	r := a.radius()
	o, pa, pb := a.View.Pt(a.Apex), a.View.Pt(a.A), a.View.Pt(a.B)
	for _, leg := range []geom.Pt{pa, pb} {
		if l := leg.Sub(o).Len(); l < r {
			dir := leg.Sub(o).Unit()
			s.Line(narrow(Dimension), o.Add(dir.Mul(l+h.extension())), o.Add(dir.Mul(r+h.extension())))
		}
	}
	from, sweep := a.sweep()
	a.arc(s, o, r, from, sweep)
	t, dim, kind := a.text(h)
	s.AddText(t)
	s.Dims = append(s.Dims, Placed{Dim: dim, Kind: kind, Figure: t.String, P: pa, Q: pb, Box: t.Box(), Row: -1})
}

func (a Angle) radius() float64 {
	if a.Radius == 0 {
		return defaultArc
	}
	return a.Radius
}

// sweep is the direction to A on the paper and the turn from there to B,
// radians anticlockwise.
func (a Angle) sweep() (from, sweep float64) {
	o := a.View.Pt(a.Apex)
	pa, pb := a.View.Pt(a.A).Sub(o), a.View.Pt(a.B).Sub(o)
	return math.Atan2(pa.Y, pa.X), math.Atan2(pa.Cross(pb), pa.Dot(pb))
}

// text is the figure in its place and what it says.
func (a Angle) text(h Hand) (Text, Dim, DimKind) {
	dim, kind := Dim{View: a.View, From: a.Apex, A: a.A, B: a.B}, AngleDim
	if a.Slope {
		dim, kind = Dim{View: a.View, A: a.Apex, B: a.B}, FallDim
	}
	t := Text{Layer: Dimension, Align: Centred, Height: h.FigureHeight(), String: dim.figure(kind, h.Figures)}
	from, sweep := a.sweep()
	t.At = besideArc(a.View.Pt(a.Apex), a.radius(), from+sweep/2, t)
	return t, dim, kind
}

// Angle draws the angle with the first radius, from its own upwards, at which
// its figure is free.
func (p *Placer) Angle(a Angle) {
	const steps = 10
	for i := range steps {
		try := a
		try.Radius = a.radius() + float64(i)*rowPitch/2
		if t, _, _ := try.text(p.Hand); p.textFree(t) && p.arcFree(try) {
			try.Draw(p.Sheet, p.Hand)
			return
		}
	}
	a.Draw(p.Sheet, p.Hand)
}

// arcFree reports whether the arc, with heads that point in from outside,
// passes over no text.
func (p *Placer) arcFree(a Angle) bool {
	const pieces = 12 // chords within a tenth of a millimetre of a common arc
	r := a.radius()
	from, sweep := a.sweep()
	beyond := math.Copysign(2*arrowLength/r, sweep)
	from, sweep = from-beyond, sweep+2*beyond
	at := func(i int) geom.Pt {
		sin, cos := math.Sincos(from + sweep*float64(i)/pieces)
		return a.View.Pt(a.Apex).Add(geom.P(cos, sin).Mul(r))
	}
	for i := range pieces {
		if p.textsUnder(at(i), at(i+1)) > 0 {
			return false
		}
	}
	return true
}

// arc draws the dimension arc with its arrowheads, which point in from outside
// where there is no room between the legs.
func (a Angle) arc(s *Sheet, o geom.Pt, r, from, sweep float64) {
	at := func(t float64) geom.Pt { return o.Add(geom.P(math.Cos(t), math.Sin(t)).Mul(r)) }
	tangent := func(t float64) geom.Pt { return geom.P(-math.Sin(t), math.Cos(t)) }
	turn := math.Copysign(1, sweep)
	head := arrowLength / r // as an angle
	inside, start, end := 1.0, from, from+sweep
	if math.Abs(sweep) < 2.5*head {
		inside = -1
		start, end = from-turn*2*head, from+sweep+turn*2*head
	}
	s.Arc(narrow(Dimension), geom.Arc{Centre: o, Major: geom.P(r, 0), Ratio: 1, Start: min(start, end), End: max(start, end)})
	// The head is a chord of the arc, so it points along the middle of its own
	// length.
	s.arrowhead(Dimension, at(from), tangent(from+inside*turn*head/2).Mul(-turn*inside))
	s.arrowhead(Dimension, at(from+sweep), tangent(from+sweep-inside*turn*head/2).Mul(turn*inside))
}

// besideArc is where the baseline of a lying text has its middle so that the
// text stands outside an arc at the angle t, clear of it and of its arrowheads.
func besideArc(o geom.Pt, r, t float64, text Text) geom.Pt {
	dir := geom.P(math.Cos(t), math.Sin(t))
	reach := math.Abs(dir.X)*text.Width()/2 + math.Abs(dir.Y)*text.Height/2
	middle := o.Add(dir.Mul(r + reach + 2*figureGap))
	return geom.P(middle.X, middle.Y-text.Height/2)
}

// textFree reports whether a text, which may be turned, touches nothing.
func (p *Placer) textFree(t Text) bool { return p.textCost(t) == 0 }
