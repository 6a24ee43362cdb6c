package sheets

import (
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// rows hangs the dimension rows on the section. Under a narrow span stand also
// the dimensions that have no room in it.
func (c *cross) rows() {
	s, sl := c.frame.Setout, c.frame.Slope
	low := c.footOf(c.post).Min.Z
	out := func(y float64) geom.Vec { return c.at(y, low) }
	c.wideRow = c.Bottom
	c.narrowRow = draw.NewRows(c.view, c.Bounds, draw.Bottom)
	for _, r := range []*draw.Rows{c.wideRow, c.narrowRow} {
		r.Within = true
		stops := c.outTo(out)
		if c.form.round() { // no room beside the title block for what is beyond the beam
			stops = stops[:len(stops)-len(c.outToTails(out))]
		}
		r.Running(c.from(), out(0), stops...)
	}
	c.narrowRow.Chain("clear span", out(s.Rear().Outer), out(s.Front().Inner))
	if !c.runIsClear() {
		c.narrowRow.Chain("run of the fall", out(s.Arris(sl.From)), out(s.Arris(sl.To)))
	}
	c.battenRow()
}

// narrow reports whether the span has no room for figures between the head
// heights.
func (c *cross) narrow() bool {
	const least = 26 // mm on paper
	s := c.frame.Setout
	return (s.Rear().Outer-s.Front().Inner)*c.view.Scale < plateOff+headOff+least
}

// battenRow dimensions the battens along the slope, above them.
func (c *cross) battenRow() {
	r, ok := c.rowOnSlope()
	if !ok {
		return
	}
	s := c.frame.Setout
	up, stops, title := r.up, r.stops, r.name+" edges"
	from, to := c.top(s.Rear().Outer), c.top(r.end)
	last := stops[len(stops)-1]
	c.fullRow = draw.NewSlopedRows(c.view, from.Add(up), to.Add(up))
	c.fullRow.Running(title, from, append(slices.Clone(stops), to)...)
	c.shortRow = draw.NewSlopedRows(c.view, from.Add(up), to.Add(up))
	if len(stops) > 1 {
		c.shortRow.Equal(r.name+" centres", len(stops)-1, stops[0], last)
	}
	c.shortRow.Running(title, from, stops[0], last, to)
}

// slopeRow is what the row above the section gives the places of.
type slopeRow struct {
	name  string
	stops []geom.Vec
	up    geom.Vec // from the rafters' top edges to where the row stands off from
	end   float64  // world y of the end of the row
	high  float64  // level of the highest of them
}

// rowOnSlope is what the row on the slope gives the places of, if there is one.
func (c *cross) rowOnSlope() (slopeRow, bool) {
	if c.bare {
		return slopeRow{}, false
	}
	return c.spacedOnSlope()
}

// spacedOnSlope are the battens, or the slats of one bay; false without either.
func (c *cross) spacedOnSlope() (slopeRow, bool) {
	s := c.frame.Setout
	if bt := c.frame.Of(frame.KindBatten); len(bt) > 0 {
		r := slopeRow{name: "batten", up: bt[0].Place.W.Mul(bt[0].Section.Depth), end: s.BattenEnd, high: bt[0].Solid().Bounds().Max.Z}
		for _, mb := range bt {
			if mb.Place.O.X > c.x || mb.Place.O.X+mb.Length < c.x {
				continue // the beam cuts it short
			}
			edge := houseEdge(mb)
			edge.X = c.x
			r.stops = append(r.stops, edge.Add(r.up))
		}
		return r, true
	}
	layer, ok := c.slats()
	r := slopeRow{name: "slat", end: s.Front().Inner, high: c.frame.RafterTop(s.RafterStart)}
	for _, u := range layer.At {
		r.stops = append(r.stops, c.onRoof(c.x, u))
	}
	return r, ok
}

// over draws what stands in the section itself: first the lines that have their
// place, then the dimensions whose figures keep clear of them.
func (c *cross) over(p *page, v *draw.View) {
	c.groundCut(p, v)
	c.ringDetails(p, v, onSection)
	c.deep.Draw(p.sheet, p.hand)
	c.howToFall(p, v)
	if c.sighted() {
		c.sight(p, v)
	}
	c.clearSpan(p, v)
	c.heights(p, v)
	c.drop(p, v)
	c.slope(p, v)
	c.inGround(p, v)
}

// groundCut draws the ground line with the earth below it; the earth leaves
// room for the depths beside the footing.
func (c *cross) groundCut(p *page, v *draw.View) {
	const figures = 6.0 // mm on paper: of the outer one, left of its line
	from := 0.0
	if len(c.behind) > 0 {
		from = c.rearmost()
	}
	a, b := v.Pt(c.at(from, c.ground())), v.Pt(c.at(c.foremost()-groundPast, c.ground()))
	foot := v.Outline(projectBox(v.Axes, c.footOf(c.post)))
	left, right := geom.P(foot.X0-2*footOff-figures, a.Y), geom.P(foot.X1, a.Y)
	stretches := [][]geom.Pt{{a, left}, {right, b}}
	if !c.spec.Dug() {
		stretches = [][]geom.Pt{{a, b}}
	}
	if len(c.behind) > 1 { // a footing stands in the first
		rear := v.Outline(projectBox(v.Axes, c.behind[1].Solid().Bounds()))
		stretches = [][]geom.Pt{{a, geom.P(rear.X0, a.Y)}, {geom.P(rear.X1, a.Y), left}, {right, b}}
	}
	for _, earth := range stretches {
		if earth[0].X < earth[1].X {
			p.sheet.Hatch(draw.Earth, [][]geom.Pt{earth}, 0)
		}
	}
	p.sheet.Line(draw.Style{Layer: draw.Context, Pen: draw.Wide}, a, b)
}

// Where the dimensions in the view stand, mm on paper.
const (
	dropOff    = 14.0  // the drop, in front of the beam
	fallOff    = 7.0   // the arrow of the fall, under the rafter
	fallShare  = 110.0 // in which the arrow of the fall leaves half to leaders
	leastSight = 45.0  // a span narrower than this has no room for the line of sight
	steepOff   = 5.0   // the drop of a steep fall, in front of the plate
	steepDrop  = 25.0  // a drop of so much on paper is steep
	fallEnds   = 8.0   // the arrow of the fall is so much longer than its figure
	clearOff   = 12.0  // the clear span, under the beam
	runOff     = 8.0   // the run of the fall, under the clear span
	sightRoom  = 26.0  // above the eye, in which the clear span finds room over the line of sight
	eyeUnder   = 5.0   // the clear span, under the eye
	leastHead  = 32.0  // a span narrower than this has no room for the head height at the plate
	headOff    = 12.0  // the head height, behind the beam
	plateOff   = 14.0  // the same, in front of the plate
	eyeOff     = 7.0   // the eye's height, in front of the wall
	footOff    = 8.0   // the depths in the ground, behind the footing
)

// figureWidth is the room that the figure of a dimension takes along its line.
func (c *cross) figureWidth(figure string) float64 {
	return draw.TextWidth(figure, c.hand.FigureHeight(), false)
}

// strokes is the room that the strokes at both ends of a dimension line take
// from its figure, mm on paper.
const strokes = 4.5

// most is the part of a dimension line that its figure may take.
const most = 0.75

// span dimensions a length with the first of the prefixes with which its figure
// finds room, mm of the model, and touches nothing; the last one need not fit.
func (c *cross) span(p *page, length, room float64, d draw.Span, prefixes ...string) {
	const least = 1e-3 // of its line: as good as fixed
	var tries []draw.Span
	reach := d.Reach
	for i, w := range prefixes {
		d.Prefix = w
		width := c.figureWidth(w+c.figures.Length(length)) / c.view.Scale
		if i < len(prefixes)-1 && width > room {
			continue
		}
		if reach > 0 {
			d.Reach = max(reach-width/length/2, least)
		}
		tries = append(tries, d)
	}
	p.placer.Span(tries...)
}

// drop dimensions the fall between its two arrises: in front of the beam, or,
// if it is so steep that the battens' row stands there, before the plate.
func (c *cross) drop(p *page, v *draw.View) {
	s, sl := c.frame.Setout, c.frame.Slope
	from, to := c.top(s.Arris(sl.From)), c.top(s.Arris(sl.To))
	if !c.falls() {
		return
	}
	span := draw.Span{View: v, A: to, B: from, Dir: draw.Upright, Offset: (s.Arris(sl.To)-s.FrontOut())*v.Scale + c.dropOff, Beside: true, Prefix: "drop "}
	if c.steep() {
		span.A, span.B = from, to
		span.Offset = (s.Arris(sl.From)-s.Rear().Outer)*v.Scale + steepOff + c.nudge
		span.Share = (c.steepFigure() + c.nudge*math.Tan(sl.Angle)) / (sl.Drop * v.Scale)
	}
	p.placer.Span(span)
	const dot = 0.7 // mm on paper
	for _, q := range []geom.Vec{from, to} {
		p.sheet.Dot(draw.Dimension, v.Pt(q), dot)
	}
}

// steep reports whether the drop is so great on the paper that it stands before
// the plate, with its figure below the rafter.
func (c *cross) steep() bool {
	drop := c.frame.Slope.Drop
	half := c.figureWidth("drop "+c.figures.Length(drop)) / 2
	return c.falls() && drop*c.view.Scale > max(steepDrop, c.steepFigure()+half)
}

// steepFigure is from the upper end of a steep drop down to the middle of its
// figure, mm on paper: below the rafter, through which the line passes.
func (c *cross) steepFigure() float64 {
	sl := c.frame.Slope
	half := c.figureWidth("drop "+c.figures.Length(sl.Drop)) / 2
	return c.plumbDepth()*c.view.Scale + 2*steepOff*math.Tan(sl.Angle) + half + fallOff/2
}

// slope draws the arrow of the fall under the rafter: between the two head
// heights, in the half near the house if that has room.
func (c *cross) slope(p *page, v *draw.View) {
	if !c.falls() {
		return
	}
	s := c.frame.Setout
	a, b := s.Rear().Outer-plateOff/v.Scale, s.Front().Inner+headOff/v.Scale
	if (a-b)*v.Scale > fallShare {
		b = (a + b) / 2
	}
	under := draw.Fall{View: v, A: c.top(a), B: c.top(b), Offset: -c.plumbDepth()*v.Scale - fallOff, Prefix: "fall "}
	over := draw.Fall{View: v, A: c.top(s.Rear().Outer), B: c.top(s.Front().Inner), Offset: fallOff, Prefix: "fall "}
	for _, rows := range c.Sloped {
		over.Offset += rows.Depth(p.hand) + c.job.Battens.Section.Depth*v.Scale
	}
	with := func(f draw.Fall) []draw.Fall { // its word or, where there is no room for that, without
		short := f
		short.Prefix = ""
		return []draw.Fall{f, short}
	}
	if c.slopeAbove() {
		p.placer.Fall(with(over)...)
		return
	}
	p.placer.FallOr(with(under), with(over)...)
}

// slopeAbove reports whether the arrow of the fall has no room between the
// head heights: it then stands over the row of the battens.
func (c *cross) slopeAbove() bool {
	s, sl := c.frame.Setout, c.frame.Slope
	width := c.figureWidth("fall "+c.figures.Angle(sl.Angle)+" ("+c.figures.Slope(sl.Angle)+")") + fallEnds
	k := c.view.Scale
	room := (s.Rear().Outer-s.Front().Inner)*k - plateOff - headOff
	const sightPart, arrow = 12, 2.0 // mm on paper: near the beam the line of sight comes up
	if room-sightPart < width*math.Cos(sl.Angle) {
		return true
	}
	eye, arris := c.eye(), c.sightArris()
	y := s.Rear().Outer - (plateOff+width)/k
	under := c.frame.RafterTop(y) - c.plumbDepth() - (eye.Z + y/arris.Y*(arris.Z-eye.Z))
	return c.sighted() && under*k < fallOff/math.Cos(sl.Angle)+arrow
}

// runIsClear reports whether the run of the fall is the clear span.
func (c *cross) runIsClear() bool {
	s := c.frame.Setout
	return s.Arris(c.frame.Slope.From) == s.Rear().Outer && s.Arris(c.frame.Slope.To) == s.Front().Inner
}

// heights dimensions the head heights and the height of the eye.
func (c *cross) heights(p *page, v *draw.View) {
	s := c.frame.Setout
	beam := c.front().Bottom
	// The figures stand low, clear of leaders, clear span and line of sight.
	low, high := c.floor(), c.eye().Z
	if !c.narrow() {
		high = min(high, c.spanLevel())
	}
	head := func(top geom.Vec, height, off float64) {
		if c.figureWidth(c.figures.Length(height)) > height*v.Scale-strokes {
			return // the figure would stand outside the line; the key sizes on the cover give it
		}
		share := (top.Z - (low+high)/2) / height
		c.span(p, height, high-low-strokes/v.Scale, draw.Span{View: v, A: top, B: top.Sub(geom.V(0, 0, height)), Dir: draw.Upright, Offset: off, Share: share}, "head height ", "head ", "")
	}
	behind := -headOff
	if c.narrow() {
		behind = (s.Front().Inner-s.Front().Outer)*v.Scale + headOff // there it stands in front
	}
	eyeAt := eyeOff
	if len(c.behind) > 0 { // clear of the post there
		eyeAt = max(eyeAt, eyeOff-c.behind[0].Solid().Bounds().Min.Y*v.Scale)
	}
	before := plateOff + eyeAt - eyeOff
	if c.narrow() && (s.Rear().Outer-s.Front().Inner)*v.Scale < leastHead {
		before = -(s.Rear().Outer+c.job.Wall.Core()+wallBehind)*v.Scale - fallOff // no room but behind the wall
	}
	rear := c.frame.RafterTop(s.Rear().Outer) - c.plumbDepth()
	if s.Rear().Back {
		rear = s.Rear().Bottom
	}
	head(c.at(s.Rear().Outer, rear), s.HeadPlate, before)
	head(c.at(s.Front().Inner, beam), s.HeadBeam, behind)
	if c.sighted() {
		high := c.job.Levels.Eye
		c.span(p, high, most*high, draw.Span{View: v, A: c.at(0, c.floor()), B: c.eye(), Dir: draw.Upright, Offset: eyeAt, Share: lowShare}, "eye ", "")
	}
}

// clearSpan dimensions the span between plate and beam, and the run of the
// fall where it is another.
func (c *cross) clearSpan(p *page, v *draw.View) {
	if c.narrow() {
		return // they stand below the section
	}
	s, sl := c.frame.Setout, c.frame.Slope
	across := func(from, to geom.Vec, level float64, prefixes ...string) {
		share, room := c.clearZone(level, from.Y, to.Y)
		d := draw.Span{View: v, A: from, B: to, Dir: draw.Across, Share: share, Reach: room / (from.Y - to.Y) / 2, Offset: (level - from.Z) * v.Scale}
		c.span(p, from.Y-to.Y, room, d, prefixes...)
	}
	plate, beam := c.at(s.Rear().Outer, c.rear().Bottom), c.at(s.Front().Inner, c.front().Bottom)
	if c.runIsClear() {
		across(plate, beam, c.clearLevel(), "clear span, and the run of the fall, ", "clear span = run ", "clear ", "")
		return
	}
	across(plate, beam, c.clearLevel(), "clear span ", "clear ", "")
	if c.falls() {
		across(c.top(s.Arris(sl.From)), c.top(s.Arris(sl.To)), c.runLevel(), "run of the fall ", "run ", "")
	}
}

// clearLevel is the level of the dimension line of the clear span: over the
// line of sight if there is room, else under the eye.
func (c *cross) clearLevel() float64 {
	k := c.view.Scale
	beam := c.front().Bottom
	plate := c.rear().Bottom
	if (beam-c.eye().Z)*k < sightRoom {
		return min(beam, c.eye().Z) - eyeUnder/k
	}
	return min(beam, plate) - clearOff/k
}

// runLevel is the level of the dimension line of the run of the fall.
func (c *cross) runLevel() float64 { return c.clearLevel() - runOff/c.view.Scale }

// spanLevel is the lowest level of a dimension of the span.
func (c *cross) spanLevel() float64 {
	if c.runIsClear() || !c.falls() {
		return c.clearLevel()
	}
	return c.runLevel()
}

// arc is the radius of the arc at the eye, mm on paper; 0 if the line of sight
// lies too flat for one or the span is narrow: then words give the angle. The
// figure stands between the legs, which must have parted by its height there.
func (c *cross) arc() float64 {
	const most, part, parted, limit = 30, 0.35, 4.5, 0.6 // mm on paper; of the span
	span := -c.front().Inner * c.view.Scale
	way := c.sightArris().Sub(c.eye())
	r := max(min(most, part*span), parted*way.Len()/max(math.Abs(way.Z), 1))
	if r > limit*span || c.narrow() {
		return 0
	}
	return r
}

// clearZone is where a figure over a level line from the world y from to to
// meets neither the head heights nor the line of sight: its share of the line,
// and its room, mm of the model.
func (c *cross) clearZone(level, from, to float64) (share, room float64) {
	s, eye, arris := c.frame.Setout, c.eye(), c.sightArris()
	const clear = 3.5 // mm on paper, from those lines
	k := c.view.Scale
	near, far := s.Rear().Outer-(plateOff+clear)/k, s.Front().Inner+(headOff+clear)/k
	if c.aside {
		near = s.Rear().Outer - (roomOff+roomNotes+spanGap)/k
	}
	if arris.Z != eye.Z {
		y := eye.Y + (level-eye.Z)/(arris.Z-eye.Z)*(arris.Y-eye.Y)
		switch {
		case y > near || y < far:
		case near-y > y-far:
			far = y + 2*clear/k
		default:
			near = y - 2*clear/k
		}
	}
	return (from - (near+far)/2) / (from - to), max(near-far, 0)
}

// plumbDepth is the upright measure of the rafter.
func (c *cross) plumbDepth() float64 { return c.rafter.Section.Depth / c.rafter.Place.W.Z }

// inGround dimensions the post and the hole in the ground.
func (c *cross) inGround(p *page, v *draw.View) {
	if !c.spec.Dug() {
		return
	}
	f := c.footing.Solid().Bounds()
	low, end, ground := c.footing.Place.O.Z, c.post.Place.O.Z, c.spec.Ground
	edge := func(z float64) geom.Vec { return c.at(f.Max.Y, z) }
	if deep := ground - end; end < ground && c.figureWidth(c.figures.Length(deep)) < min(most*deep*v.Scale, deep*v.Scale-strokes) {
		c.span(p, deep, most*deep, draw.Span{View: v, A: edge(end), B: edge(ground), Dir: draw.Upright, Offset: -footOff, Share: lowShare}, "post in ground ", "in ground ", "")
	}
	hole, prefixes := ground-low, []string{"hole ", ""}
	if c.nudge > 0 { // the shorter, the more room for the leader over it
		prefixes = prefixes[1:]
	}
	c.span(p, hole, most*hole, draw.Span{View: v, A: edge(low), B: edge(ground), Dir: draw.Upright, Offset: -2 * footOff, Share: lowShare, Beside: true}, prefixes...)
}

// lowShare is where the figure stands on an upright line, in parts of its length
// from below: low, clear of the leaders from above.
const lowShare = 0.3

// sighted reports whether the section shows the line of sight.
func (c *cross) sighted() bool {
	s := c.frame.Setout
	return c.form != keyed || (s.Rear().Outer-s.Front().Inner)*c.view.Scale > leastSight
}

// sight draws the line of sight from the wall that just passes under the beam.
func (c *cross) sight(p *page, v *draw.View) {
	eye, arris := c.eye(), c.sightArris()
	way := arris.Sub(eye)
	end := arris.Add(way.Unit().Mul(sightPast))
	p.sheet.Line(draw.Style{Layer: draw.Centre, Pen: draw.Narrow, Dash: draw.Chain}, v.Pt(eye), v.Pt(end))
	const eyeSize = 1.2 // mm on paper
	p.sheet.Circle(draw.Style{Layer: draw.Centre, Pen: draw.Narrow}, v.Pt(eye), eyeSize)
	if r := c.arc(); r > 0 {
		p.placer.Angle(draw.Angle{View: v, Apex: eye, A: c.at(arris.Y, eye.Z), B: arris, Radius: r})
	}
}

// sightPast is how far the line of sight goes on beyond the beam, mm of the
// model: at the largest scale not as far as the drop.
const sightPast = 200.0

// sightArris is the arris of the beam that ends the view from the eye at the
// wall: looking up, its lower outer one, looking down, its lower inner one.
func (c *cross) sightArris() geom.Vec {
	s, under := c.frame.Setout, c.front().Bottom
	if under < c.eye().Z {
		return c.at(s.Front().Inner, under)
	}
	return c.lowestSeen(c.at(s.Front().Outer, under))
}

// lowestSeen is the lower, seen from the eye, of an arris and what hangs down
// farther out: the corners of the rafters' tails.
func (c *cross) lowestSeen(arris geom.Vec) geom.Vec {
	eye := c.eye()
	rise := func(q geom.Vec) float64 { return (q.Z - eye.Z) / (eye.Y - q.Y) }
	best := arris
	for _, f := range c.rafter.Solid().Faces() {
		for _, q := range f.Loops[0] {
			if q.Y < arris.Y && rise(q) < rise(best) {
				best = c.at(q.Y, q.Z)
			}
		}
	}
	return best
}
