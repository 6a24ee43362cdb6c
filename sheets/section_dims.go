package sheets

import (
	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// rows hangs the dimension rows on the section.
func (c *cross) rows() {
	s := c.frame.Setout
	low := c.footing.Place.O.Z
	out := func(y float64) geom.Vec { return c.at(y, low) }
	c.Bottom.Within = true
	c.Bottom.Running("out from the face of the cladding", out(0), out(s.PlateInner), out(s.PlateOuter), out(s.BeamInner), out(s.BeamOuter))
	c.battenRow()
}

// battenRow dimensions the battens along the slope, above them.
func (c *cross) battenRow() {
	bt := c.frame.Of(frame.KindBatten)
	if len(bt) == 0 {
		return
	}
	s := c.frame.Setout
	up := bt[0].Place.W.Mul(bt[0].Section.Depth)
	from, to := c.top(s.PlateOuter), c.top(s.BeamInner)
	rows := draw.NewSlopedRows(c.view, from.Add(up), to.Add(up))
	stops := []geom.Vec{}
	for _, mb := range bt {
		edge := houseEdge(mb)
		edge.X = c.x
		stops = append(stops, edge.Add(up))
	}
	rows.Running("batten edges", from, append(stops, to)...)
	c.Sloped = append(c.Sloped, rows)
}

// over draws what stands in the section itself.
func (c *cross) over(p *page, v *draw.View) {
	c.groundCut(p, v)
	c.drop(p, v)
	c.heights(p, v)
	c.inGround(p, v)
	c.sight(p, v)
	c.howToFall(p, v)
}

// groundCut draws the ground line with the earth below it.
func (c *cross) groundCut(p *page, v *draw.View) {
	a, b := v.Pt(c.at(0, c.ground())), v.Pt(c.at(c.front()-groundPast, c.ground()))
	p.sheet.Hatch(draw.Earth, [][]geom.Pt{{a, b}}, 0)
	p.sheet.Line(draw.Style{Layer: draw.Context, Pen: draw.Wide}, a, b)
}

// Where the dimensions in the view stand, mm on paper.
const (
	dropOff   = 14.0  // the drop, in front of the beam
	fallOff   = 7.0   // the arrow of the fall, under the rafter
	fallShare = 110.0 // in which the arrow of the fall leaves half to leaders
	clearOff  = 12.0  // the clear span, under the beam
	sightRoom = 26.0  // above the eye, in which the clear span finds room over the line of sight
	eyeUnder  = 5.0   // the clear span, under the eye
	headOff   = 12.0  // the head height, behind the beam
	plateOff  = 14.0  // the same, in front of the plate
	eyeOff    = 7.0   // the eye's height, in front of the wall
	footOff   = 7.0   // the depths in the ground, behind the footing
)

// most is the part of a dimension line that its figure may take.
const most = 0.8

// words is the longest of the prefixes with which a figure takes no more than
// the given length of its line, mm of the model; the last one if none does.
func (c *cross) words(length, room float64, prefixes ...string) string {
	for _, w := range prefixes[:len(prefixes)-1] {
		if draw.TextWidth(w+c.figures.Length(length), draw.NoteHeight, false) < room*c.view.Scale {
			return w
		}
	}
	return prefixes[len(prefixes)-1]
}

// drop dimensions the fall between its two arrises.
func (c *cross) drop(p *page, v *draw.View) {
	s, sl := c.frame.Setout, c.frame.Slope
	from, to := c.top(s.Arris(sl.From)), c.top(s.Arris(sl.To))
	before := (s.Arris(sl.To) - s.BeamOuter) * v.Scale
	draw.Span{View: v, A: to, B: from, Dir: draw.Upright, Offset: before + c.dropOff, Beside: true, Prefix: "drop "}.Draw(p.sheet, p.hand)
	const dot = 0.7 // mm on paper
	for _, q := range []geom.Vec{from, to} {
		p.sheet.Dot(draw.Dimension, v.Pt(q), dot)
	}
	depth := c.plumbDepth() * v.Scale
	// Between the two head heights, in the half near the house if it has room.
	a, b := s.PlateOuter-plateOff/v.Scale, s.BeamInner+headOff/v.Scale
	if (a-b)*v.Scale > fallShare {
		b = (a + b) / 2
	}
	draw.Fall{View: v, A: c.top(a), B: c.top(b), Offset: -depth - fallOff, Prefix: "fall "}.Draw(p.sheet, p.hand)
	if !c.runIsClear() {
		low := min(to.Z, from.Z) - (depth+fallOff+2*clearOff)/v.Scale
		draw.Span{View: v, A: from, B: to, Dir: draw.Across, Share: c.besideSight(low), Offset: (low - from.Z) * v.Scale, Prefix: c.words(sl.Run, most*sl.Run, "run of the fall ", "run ")}.Draw(p.sheet, p.hand)
	}
}

// runIsClear reports whether the run of the fall is the clear span.
func (c *cross) runIsClear() bool {
	return c.frame.Slope.From == frame.PlateOuter && c.frame.Slope.To == frame.BeamInner
}

// heights dimensions head heights and the clear span.
func (c *cross) heights(p *page, v *draw.View) {
	s := c.frame.Setout
	beam := c.frame.Of(frame.KindBeam)[0].Place.O.Z
	plate := c.frame.Of(frame.KindPlate)[0].Place.O.Z
	const upper, lower = 0.45, 0.75 // the figure stands low, clear of leaders and sight
	head := func(top geom.Vec, height, off float64) {
		low := top.Sub(geom.V(0, 0, height))
		draw.Span{View: v, A: top, B: low, Dir: draw.Upright, Offset: off, Share: lower, Prefix: c.words(height, upper*height, "head height ", "head ", "")}.Draw(p.sheet, p.hand)
	}
	head(c.at(s.BeamInner, beam), s.HeadBeam, -headOff)
	head(c.at(s.PlateOuter, c.frame.RafterTop(s.PlateOuter)-c.plumbDepth()), s.HeadPlate, plateOff)
	span := s.PlateOuter - s.BeamInner
	words := c.words(span, most*span, "clear span ", "clear ")
	if c.runIsClear() {
		words = c.words(span, most*span, "clear span, and the run of the fall, ", "clear span = run ", "clear ")
	}
	low := min(beam, plate) - clearOff/v.Scale
	if (beam-c.eye().Z)*v.Scale < sightRoom {
		low = min(beam, c.eye().Z) - eyeUnder/v.Scale
	}
	draw.Span{View: v, A: c.at(s.PlateOuter, plate), B: c.at(s.BeamInner, beam), Dir: draw.Across, Share: c.besideSight(low), Offset: (low - plate) * v.Scale, Prefix: words}.Draw(p.sheet, p.hand)
}

// besideSight is where a figure on the clear span at a level stands clear of
// the line of sight: in the middle of the longer part.
func (c *cross) besideSight(level float64) float64 {
	s, eye, arris := c.frame.Setout, c.eye(), c.sightArris()
	y := eye.Y + (level-eye.Z)/(arris.Z-eye.Z)*(arris.Y-eye.Y)
	part := (s.PlateOuter - y) / (s.PlateOuter - s.BeamInner)
	switch {
	case !(part > 0 && part < 1):
		return 0.5
	case part > 0.5:
		return part / 2
	}
	return (1 + part) / 2
}

// plumbDepth is the upright measure of the rafter.
func (c *cross) plumbDepth() float64 { return c.rafter.Section.Depth / c.rafter.Place.W.Z }

// inGround dimensions the post and the hole in the ground.
func (c *cross) inGround(p *page, v *draw.View) {
	f := c.footing.Solid().Bounds()
	low, end, ground := c.footing.Place.O.Z, c.post.Place.O.Z, c.spec.Ground
	edge := func(z float64) geom.Vec { return c.at(f.Max.Y, z) }
	depth := func(z, off float64, words ...string) {
		draw.Span{View: v, A: edge(z), B: edge(ground), Dir: draw.Upright, Offset: off, Prefix: c.words(ground-z, most*(ground-z), words...)}.Draw(p.sheet, p.hand)
	}
	if end < ground {
		depth(end, -footOff, "post in ground ", "in ground ", "")
	}
	depth(low, -2*footOff, "hole ", "")
}

// sight draws the line of sight from the wall that just passes under the beam.
func (c *cross) sight(p *page, v *draw.View) {
	eye, arris := c.eye(), c.sightArris()
	way := arris.Sub(eye)
	end := eye.Add(way.Mul((c.front() - groundPast) / way.Y))
	p.sheet.Line(draw.Style{Layer: draw.Centre, Pen: draw.Narrow, Dash: draw.Chain}, v.Pt(eye), v.Pt(end))
	const eyeSize, sightArc = 1.2, 30 // mm on paper
	p.sheet.Circle(draw.Style{Layer: draw.Centre, Pen: draw.Narrow}, v.Pt(eye), eyeSize)
	draw.Span{View: v, A: c.at(0, c.floor()), B: eye, Dir: draw.Upright, Offset: eyeOff, Share: 0.3, Prefix: "eye "}.Draw(p.sheet, p.hand)
	draw.Angle{View: v, Apex: eye, A: c.at(way.Y, eye.Z), B: arris, Radius: sightArc}.Draw(p.sheet, p.hand)
}

// sightArris is the arris of the beam that ends the view from the eye at the
// wall: looking up, its lower outer one, looking down, its lower inner one.
func (c *cross) sightArris() geom.Vec {
	s, under := c.frame.Setout, c.frame.Of(frame.KindBeam)[0].Place.O.Z
	if under < c.eye().Z {
		return c.at(s.BeamInner, under)
	}
	return c.at(s.BeamOuter, under)
}
