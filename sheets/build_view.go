package sheets

import (
	"fmt"
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// around names the pieces of the house that the pictures of the steps show.
func housePieces(more ...string) []string {
	return append([]string{frame.HouseCladding, frame.HouseWall, frame.HouseSoffit}, more...)
}

// seeStage looks at what stands after a step, and at the named pieces of the
// house.
func (m *maker) seeStage(s stage, l look, house ...string) picture {
	l.show = func(sc *scene, body int) bool {
		if b, ok := sc.member(body); ok {
			return s.stands(b)
		}
		h, _ := sc.house(body)
		return slices.Contains(house, h.Name)
	}
	return m.scene.see(l)
}

// stepCrop is the box that the pictures of the steps show: the frame and a
// little of the house round it.
func (m *maker) stepCrop() geom.Box3 {
	r := m.planReach()
	return geom.Box3{Min: geom.V(r.x0, r.y0, m.lowest()), Max: geom.V(r.x1, far, m.houseTop())}
}

// lowestGround is the lowest finished ground at a post.
func (m *maker) lowestGround() float64 {
	low := math.Inf(1)
	for _, p := range m.job.Posts.At {
		low = min(low, p.Ground)
	}
	return low
}

// pictorialStep pictures a step from outside and above; those below ground
// without the deck, so that the holes show.
func pictorialStep(below bool) stepView {
	return stepView{
		alike: true,
		marks: (*buildCell).markFresh,
		see: func(m *maker, s stage) picture {
			crop, house := m.stepCrop(), housePieces(frame.HouseLeft, frame.HouseRight)
			if !below {
				crop.Min.Z = m.lowestGround()
				house = append(house, frame.HouseDeck)
			}
			return m.seeStage(s, look{axes: m.pictorial(), crop: &crop}, house...)
		},
	}
}

// frontStep pictures a step from the front.
func frontStep(over, marks func(c *buildCell, p *page)) stepView {
	return stepView{
		over: over, marks: marks,
		see: func(m *maker, s stage) picture {
			crop := m.stepCrop()
			pic := m.seeStage(s, look{axes: geom.Front(), crop: &crop}, housePieces()...)
			pic.all = pic.all.Union(draw.Rect{X0: crop.Min.X, Y0: m.lowestGround(), X1: crop.Max.X, Y1: crop.Max.Z})
			return pic
		},
	}
}

// stepGround draws the finished ground in a picture from the front.
func (c *buildCell) stepGround(p *page) {
	r := c.planReach()
	at := func(x float64) geom.Pt { return c.view.Pt(geom.V(x, 0, frame.GroundAt(c.job, x))) }
	line := []geom.Pt{at(r.x0)}
	for _, q := range c.job.Posts.At {
		line = append(line, at(q.Along))
	}
	p.sheet.Line(draw.Style{Layer: draw.Context, Pen: draw.Middle}, append(line, at(r.x1))...)
}

// levelLine draws the plate's level line on the wall or out to the posts.
func (c *buildCell) levelLine(p *page, x0, x1 float64) {
	at := func(x float64) geom.Pt { return c.view.Pt(geom.V(x, 0, c.job.Plate.Top)) }
	p.sheet.Line(draw.Style{Layer: draw.Centre, Pen: draw.Middle, Dash: draw.Chain}, at(x0), at(x1))
}

// markFresh marks what the step puts up: alike ones once, with their number.
func (c *buildCell) markFresh(p *page) {
	seen := map[string]bool{}
	for _, k := range frame.Kinds() {
		all := c.frame.Of(k)
		if k == frame.KindPacker {
			continue // the plate hides them
		}
		for i := range all {
			b := all[len(all)-1-i] // the nearest to the viewer first
			if !c.stage.fresh(b) || seen[b.Mark] {
				continue
			}
			seen[b.Mark] = true
			words := b.Mark
			if n := c.countFresh(b); n > 1 {
				words = fmt.Sprintf("%s × %d", b.Mark, n)
			}
			p.placer.Part(draw.Part{View: c.view, At: outerPoint(b), Mark: words, ID: memberID(b)})
		}
	}
}

// countFresh is the number of timbers with the mark of b that the step puts up.
func (c *buildCell) countFresh(b frame.Member) int {
	n := 0
	for _, o := range c.frame.Of(b.Kind) {
		if o.Mark == b.Mark && c.stage.fresh(o) {
			n++
		}
	}
	return n
}

// outerPoint is a point of a member that a viewer in front of the frame and
// above it sees.
func outerPoint(b frame.Member) geom.Vec {
	switch b.Kind {
	case frame.KindRafter, frame.KindBatten:
		return b.Place.Point(geom.V(b.Length*0.6, b.Section.Width/2, b.Section.Depth))
	case frame.KindPost:
		return b.Place.Point(geom.V(b.Length*0.6, b.Section.Width/2, 0))
	case frame.KindFooting:
		return b.Place.Point(geom.V(b.Length*0.4, b.Section.Width/2, 0))
	}
	return b.Place.Point(geom.V(b.Length*0.6, 0, b.Section.Depth*0.6))
}

// wallStep pictures the wall before anything is fixed to it.
func wallStep() stepView {
	over := func(c *buildCell, p *page) {
		c.stepGround(p)
		c.levelLine(p, c.job.Plate.From, c.job.Plate.To)
		const reach = 130 // mm of the model, of a stud's mark below and above the line
		for _, x := range c.job.Wall.Studs {
			if x > c.planReach().x0 && x < c.planReach().x1 {
				z := c.job.Plate.Top
				p.sheet.Line(draw.Style{Layer: draw.Centre}, c.view.Pt(geom.V(x, 0, z-reach)), c.view.Pt(geom.V(x, 0, z+reach)))
			}
		}
	}
	marks := func(c *buildCell, p *page) {
		at := geom.V(c.job.Plate.From+(c.job.Plate.To-c.job.Plate.From)*0.8, 0, c.job.Plate.Top)
		datum := geom.V(c.planReach().x0, 0, 0)
		line := datum
		line.Z = at.Z
		p.placer.Span(draw.Span{View: c.view, A: datum, B: line, Dir: draw.Upright, Offset: -3})
		p.placer.Label(draw.Label{View: c.view, At: at, Text: "plate's level line"})
	}
	return frontStep(over, marks)
}

// plateStep pictures the left end of the wall plate, from where it is marked.
func plateStep() stepView {
	return stepView{
		marks: (*buildCell).markFresh,
		see: func(m *maker, s stage) picture {
			plate := m.frame.Of(frame.KindPlate)[0]
			crop := everywhere()
			crop.Max.X = m.plateShown(plate)
			axes := geom.Axonometric(-pictureTurn, pictureRise)
			pic := m.seeStage(s, look{axes: axes, crop: &crop})
			if crop.Max.X < plate.Place.O.X+plate.Length {
				pic.openEnd(plate, crop.Max.X)
			}
			return pic
		},
	}
}

// plateShown is where the picture of the plate's left end breaks off: in the
// middle of the second bay.
func (m *maker) plateShown(plate frame.Member) float64 {
	at := m.frame.Setout.Rafters
	if len(at) < 4 {
		return plate.Place.O.X + plate.Length
	}
	return (at[1] + at[2]) / 2
}

// openEnd takes the lines away at which a level timber was cropped, so that it
// reads as going on.
func (p *picture) openEnd(b frame.Member, x float64) {
	var ring []geom.Pt
	for _, c := range [][2]float64{{0, 0}, {1, 0}, {1, 1}, {0, 1}} {
		ring = append(ring, p.axes.Project(b.Place.Point(geom.V(x-b.Place.O.X, c[0]*b.Section.Width, c[1]*b.Section.Depth))))
	}
	p.strokes = slices.DeleteFunc(p.strokes, func(st geom.Stroke) bool {
		for i, a := range ring {
			e := ring[(i+1)%len(ring)]
			if distance(st.A, a, e) < onTear && distance(st.B, a, e) < onTear {
				return true
			}
		}
		return false
	})
}

// setoutStep pictures the set-out of the posts, from above.
func setoutStep() stepView {
	return stepView{
		see: func(m *maker, s stage) picture {
			r := m.planReach()
			wall := m.wallPlan(r)
			pic := m.seeStage(s, look{axes: geom.Plan()}).with(wall.picture)
			pic.all = wall.all.Union(draw.Rect{X0: r.x0, Y0: m.frame.Setout.BeamOuter, X1: r.x1, Y1: 0})
			return pic
		},
		over: func(c *buildCell, p *page) {
			c.drawString(p, c.view)
			cross := draw.Style{Layer: draw.Outline, Pen: draw.Middle}
			const arm = 1.2 // mm on paper
			for _, q := range c.postCentres() {
				at := c.view.Pt(q)
				p.sheet.Line(cross, at.Sub(geom.P(arm, 0)), at.Add(geom.P(arm, 0)))
				p.sheet.Line(cross, at.Sub(geom.P(0, arm)), at.Add(geom.P(0, arm)))
			}
			l, r := c.fixedPoints()
			for _, q := range []geom.Vec{l, r} {
				p.sheet.Dot(draw.Notes, c.view.Pt(q), 0.8)
			}
		},
		marks: func(c *buildCell, p *page) {
			l, r := c.fixedPoints()
			posts := c.postCentres()
			string0 := geom.V(l.X, c.frame.Setout.BeamOuter, l.Z)
			draw.Span{View: c.view, A: l, B: posts[len(posts)-1], Share: 0.3}.Draw(p.sheet, p.hand)
			draw.Span{View: c.view, A: r, B: posts[0], Share: 0.3}.Draw(p.sheet, p.hand)
			p.placer.Span(draw.Span{View: c.view, A: l, B: string0, Dir: draw.Upright, Offset: -4})
			p.placer.Label(draw.Label{View: c.view, At: l, Text: leftPoint})
			p.placer.Label(draw.Label{View: c.view, At: r, Text: rightPoint})
			x0, x1 := c.stringEnds()
			p.placer.Label(draw.Label{View: c.view, At: geom.V(x0+(x1-x0)*0.6, string0.Y, 0), Text: "string line"})
		},
	}
}

// topsStep pictures the posts with the plate's level line carried to them.
func topsStep() stepView {
	over := func(c *buildCell, p *page) {
		c.stepGround(p)
		r := c.planReach()
		c.levelLine(p, r.x0, r.x1)
	}
	marks := func(c *buildCell, p *page) {
		posts := c.frame.Of(frame.KindPost)
		side := -4.0 // mm on paper
		for _, i := range []int{0, len(posts) - 1} {
			b := posts[i]
			box := b.Solid().Bounds()
			x := box.Min.X
			if side > 0 {
				x = box.Max.X
			}
			seat := geom.V(x, box.Min.Y, b.Place.O.Z+b.Length)
			line := seat
			line.Z = c.job.Plate.Top
			p.placer.Span(draw.Span{View: c.view, A: seat, B: line, Dir: draw.Upright, Offset: side, Beside: true})
			side = -side
			if len(posts) == 1 {
				break
			}
		}
		p.placer.Label(draw.Label{View: c.view, At: geom.V((c.job.Plate.From+c.job.Plate.To)/2, 0, c.job.Plate.Top), Text: "plate's level line"})
	}
	return frontStep(over, marks)
}

// patternStep pictures the pattern rafter from the left end.
func patternStep() stepView {
	return stepView{
		see: func(m *maker, s stage) picture {
			const below = 300 // mm of post under the beam
			crop := m.stepCrop()
			crop.Min.Z = m.frame.Of(frame.KindBeam)[0].Place.O.Z - below
			crop.Max.Y = m.job.Wall.Cladding + wallBehind
			return m.seeStage(s, look{axes: geom.LeftEnd(), crop: &crop, torn: true}, housePieces()...)
		},
		marks: func(c *buildCell, p *page) {
			s := c.frame.Setout
			rafter := c.frame.Of(frame.KindRafter)[0]
			depth := rafter.Section.Depth / rafter.Place.W.Z
			at := func(y, z float64) geom.Vec { return geom.V(0, y, z) }
			low := c.frame.RafterTop(s.BeamInner) - depth
			p.placer.Span(draw.Span{View: c.view, A: at(s.PlateOuter, low), B: at(s.BeamInner, low), Dir: draw.Across, Offset: -6, Prefix: "clear "})
			a, b := at(s.PlateOuter, c.frame.RafterTop(s.PlateOuter)), at(s.BeamInner, c.frame.RafterTop(s.BeamInner))
			p.placer.Fall(draw.Fall{View: c.view, A: a, B: b, Offset: 3, Prefix: "fall "})
			p.placer.Part(draw.Part{View: c.view, At: rafter.Place.Point(geom.V(rafter.Length*0.7, 0, rafter.Section.Depth/2)), Mark: rafter.Mark, ID: memberID(rafter)})
		},
	}
}

// checkStep pictures the finished frame from the left end, with what to check.
func checkStep() stepView {
	return stepView{
		see: func(m *maker, s stage) picture {
			crop := m.stepCrop()
			crop.Min.Z = m.lowestGround()
			crop.Max.Y = m.job.Wall.Cladding + wallBehind
			return m.seeStage(s, look{axes: geom.LeftEnd(), crop: &crop, torn: true}, housePieces(frame.HouseDeck)...)
		},
		marks: func(c *buildCell, p *page) {
			s := c.frame.Setout
			at := func(y, z float64) geom.Vec { return geom.V(0, y, z) }
			under := c.frame.Of(frame.KindBeam)[0].Place.O.Z
			p.placer.Span(draw.Span{View: c.view, A: at(s.BeamInner, under-s.HeadBeam), B: at(s.BeamInner, under), Dir: draw.Upright, Offset: -6, Prefix: "head "})
			p.placer.Span(draw.Span{View: c.view, A: at(s.PlateOuter, 0), B: at(s.PlateOuter, c.job.Plate.Top), Dir: draw.Upright, Offset: 6})
			rafter := c.frame.Of(frame.KindRafter)[0]
			depth := rafter.Section.Depth / rafter.Place.W.Z * c.view.Scale
			a, b := at(s.PlateOuter, c.frame.RafterTop(s.PlateOuter)), at(s.BeamInner, c.frame.RafterTop(s.BeamInner))
			p.placer.Fall(draw.Fall{View: c.view, A: a, B: b, Offset: -depth - 4, Prefix: "fall "})
		},
	}
}
