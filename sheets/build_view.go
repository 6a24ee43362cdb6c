package sheets

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// housePieces names the pieces of the house that the pictures of the steps show.
func housePieces(more ...string) []string {
	return append(wallPieces(), more...)
}

// aboveGround is the stage without the holes.
func (s stage) aboveGround() stage {
	return stage{roof: s.roof, fresh: s.fresh, stands: func(b frame.Member) bool { return b.Kind != frame.KindFooting && s.stands(b) }}
}

// seeStage looks at what stands after a step, and at the named pieces of the
// house.
func (m *maker) seeStage(s stage, l look, house ...string) picture {
	l.show = func(sc *scene, body int) bool {
		if b, ok := sc.member(body); ok {
			return s.stands(b)
		}
		if _, ok := sc.roof(body); ok {
			return s.roof
		}
		h, _ := sc.house(body)
		return slices.Contains(house, h.Name)
	}
	return m.scene.see(l)
}

// withHoles is the scene for the pictures of the steps: each footing is the hole
// that is dug for it, and the ground a thin sheet round the frame.
func (m *maker) withHoles() *scene {
	const (
		proud = 1  // mm: the rim of a hole shows on the ground
		thick = 30 // mm, of the sheet
	)
	s := *m.scene
	s.solids = slices.Clone(s.solids)
	crop := m.stepCrop()
	crop.Min.Z, crop.Max.Y, crop.Max.Z = m.lowestGround()-thick, m.groundEnd(), far
	for i := range s.solids {
		if b, ok := s.member(i); ok && b.Kind == frame.KindFooting {
			s.solids[i] = holeSolid(b, m.job.Posts.At[b.No-1].Ground-b.Place.O.Z+proud)
		} else if h, _ := s.house(i); !ok && h.Name == frame.HouseGround {
			s.solids[i] = look{crop: &crop}.trim(h.Shape)
		}
	}
	return &s
}

// holeSolid is the hole for a footing, of the depth given.
func holeSolid(b frame.Member, deep float64) geom.Solid {
	if !b.Round {
		return geom.Box(geom.Vec{}, geom.V(deep, b.Section.Width, b.Section.Depth)).Placed(b.Place)
	}
	const flats = 24 // enough for a circle a few millimetres wide on the paper
	r := b.Section.Width / 2
	ring, smooth := make([]geom.Pt, flats), make([]bool, flats)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / flats)
		ring[i], smooth[i] = geom.P(r+r*cos, r+r*sin), true
	}
	onEnd := geom.Axes{U: geom.V(0, 1, 0), V: geom.V(0, 0, 1), W: geom.V(1, 0, 0)}
	return geom.Prism(ring, smooth, 0, deep).Placed(onEnd).Placed(b.Place)
}

// stepCrop is the box that the pictures of the steps show: the frame and a
// little of the house round it.
func (m *maker) stepCrop() geom.Box3 {
	r := m.planReach()
	return geom.Box3{Min: geom.V(r.x0, r.y0, m.lowest()), Max: geom.V(r.x1, far, m.houseTop())}
}

// groundEnd is the world y to which the pictures of the steps show the ground:
// up to the wall, or past the rear of the frame.
func (m *maker) groundEnd() float64 {
	if m.rear().OnWall {
		return 0
	}
	return m.frame.Setout.BackIn() + wallMore
}

// lowestGround is the lowest finished ground along the posts.
func (m *maker) lowestGround() float64 {
	low := math.Inf(1)
	for _, p := range m.job.Posts.At {
		low = min(low, p.Ground)
	}
	for _, p := range m.job.Levels.Line {
		low = min(low, p.Level)
	}
	return low
}

// lowerStep is how thick the ground below its steps is pictured, mm: without
// any it would not show.
const lowerStep = 30

// pictorialStep pictures a step from outside and above. What is below ground
// is dashed, and the deck left off, if that is what the step is about.
func pictorialStep(below bool) stepView {
	return stepView{
		alike: true,
		marks: (*buildCell).markFresh,
		see: func(m *maker, s stage) picture {
			crop, house := m.stepCrop(), housePieces(frame.HouseLeft, frame.HouseRight)
			if below || m.job.Levels.DeckOut == 0 {
				house = append(house, frame.HouseGround)
			} else {
				house = append(house, frame.HouseDeck)
			}
			l := look{axes: m.pictorial(), crop: &crop}
			if !below {
				s = s.aboveGround()
				crop.Min.Z = m.lowestGround()
				if len(m.job.GroundSteps()) > 0 {
					crop.Min.Z -= lowerStep
				}
			} else {
				l.hidden = func(sc *scene, body int) bool {
					b, ok := sc.member(body)
					return ok && (b.Kind == frame.KindFooting || b.Kind == frame.KindPost)
				}
			}
			return m.seeStage(s, l, house...)
		},
	}
}

// frontStep pictures a step from the front.
func frontStep(over, marks func(c *buildCell, p *page)) stepView {
	return stepView{
		over: over, marks: marks,
		see: func(m *maker, s stage) picture {
			crop := m.stepCrop()
			pic := m.seeStage(s, look{axes: geom.Front(), crop: &crop}, m.frontPieces()...)
			pic.all = pic.all.Union(draw.Rect{X0: crop.Min.X, Y0: m.lowestGround(), X1: crop.Max.X, Y1: crop.Max.Z})
			pic.strokes = slices.DeleteFunc(pic.strokes, func(st geom.Stroke) bool {
				return st.A.Y == st.B.Y && st.A.Y <= m.job.Levels.Ground // the ground line stands for the foot of the wall
			})
			return pic
		},
	}
}

// stepGround draws the finished ground in a picture from the front.
func (c *buildCell) stepGround(p *page) {
	r := c.planReach()
	p.sheet.Line(draw.Style{Layer: draw.Context, Pen: draw.Middle}, c.ground(c.view, r)...)
}

// levelLine draws the plate's level line on the wall or out to the posts.
func (c *buildCell) levelLine(p *page, x0, x1 float64) {
	at := func(x float64) geom.Pt { return c.view.Pt(geom.V(x, 0, c.rear().Top)) }
	p.sheet.Line(draw.Style{Layer: draw.Centre, Pen: draw.Middle, Dash: draw.Chain}, at(x0), at(x1))
}

// markFresh marks what the step puts up: alike ones once, with their number.
func (c *buildCell) markFresh(p *page) {
	const mostMarks = 4 // of a kind: of more, the first and the last are marked; of battens those that run all along
	for _, k := range frame.Kinds() {
		if k == frame.KindPacker || k == frame.KindCleat {
			continue // the plate, or the slats, hide them
		}
		marked := c.freshMarks(k)
		for i, b := range marked {
			if len(marked) > mostMarks && i > 0 && i < len(marked)-1 || k == frame.KindBatten && i < len(marked)-1 {
				continue
			}
			words := b.Mark
			if n := c.countFresh(b); n > 1 {
				words = fmt.Sprintf("%s × %d", b.Mark, n)
			}
			// No ID: the lines of the very stick may be thinned out here.
			part := draw.Part{View: c.view, At: c.outerPoint(b), Mark: words}
			if b.Kind == frame.KindPost || len(marked) > mostMarks && !p.placer.Enclosed(c.view.Pt(part.At)) {
				part.At, part.Edge = onInk(p, c.view, memberID(b), part.At)
			}
			p.placer.Part(part)
		}
	}
}

// freshMarks are the timbers of a kind that the step puts up, one of each mark,
// the nearest to the viewer first.
func (c *buildCell) freshMarks(k frame.Kind) []frame.Member {
	var out []frame.Member
	seen := map[string]bool{}
	for _, b := range slices.Backward(c.frame.Of(k)) {
		if c.stage.fresh(b) && !seen[b.Mark] {
			seen[b.Mark] = true
			out = append(out, b)
		}
	}
	return out
}

// onInk moves a point on to the nearest line that is drawn of a thing; false if
// none is.
func onInk(p *page, v *draw.View, id string, at geom.Vec) (geom.Vec, bool) {
	from := v.Pt(at)
	best, found := geom.Pt{}, math.Inf(1)
	for _, it := range p.sheet.Items {
		if it.Path == nil || it.Path.ID != id {
			continue
		}
		for _, line := range it.Path.Flatten() {
			for i := 1; i < len(line); i++ {
				q := nearest(from, line[i-1], line[i])
				if d := q.Sub(from).Len(); d < found {
					best, found = q, d
				}
			}
		}
	}
	if math.IsInf(found, 1) {
		return at, false
	}
	d := best.Sub(from).Mul(1 / v.Scale)
	return at.Add(v.Axes.Right.Mul(d.X)).Add(v.Axes.Up.Mul(d.Y)), true
}

// nearest is the point of the line from a to b that is nearest to q.
func nearest(q, a, b geom.Pt) geom.Pt {
	d := b.Sub(a)
	if l2 := d.Dot(d); l2 > 0 {
		return a.Lerp(b, min(max(q.Sub(a).Dot(d)/l2, 0), 1))
	}
	return a
}

// plateArris is a point of the plate's top arris at the house in the first bay:
// the plate's own picture shows no more of it.
func (c *buildCell) plateArris(b frame.Member) geom.Vec {
	at := c.frame.Setout.Rafters
	return b.Place.Point(geom.V((at[0]+at[1])/2-b.Place.O.X, b.Section.Width, b.Section.Depth))
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
func (c *buildCell) outerPoint(b frame.Member) geom.Vec {
	switch b.Kind {
	case frame.KindRafter, frame.KindBatten, frame.KindLath:
		return b.Place.Point(geom.V(b.Length*0.6, b.Section.Width/2, b.Section.Depth))
	case frame.KindPost:
		return b.Place.Point(geom.V(b.Length*0.6, b.Section.Width/2, 0))
	case frame.KindFooting:
		return b.Place.Point(geom.V(c.job.Posts.At[b.No-1].Ground-b.Place.O.Z, b.Section.Width/2, b.Section.Depth/2))
	}
	return b.Place.Point(geom.V(b.Length*0.6, 0, b.Section.Depth*0.6))
}

// wallStep pictures the wall before anything is fixed to it.
func wallStep() stepView {
	over := func(c *buildCell, p *page) {
		c.stepGround(p)
		c.levelLine(p, c.rear().From, c.rear().To)
		const reach = 130 // mm of the model, of a stud's mark below and above the line
		for _, x := range c.job.Wall.Studs {
			if x > c.planReach().x0 && x < c.planReach().x1 {
				z := c.rear().Top
				p.sheet.Line(draw.Style{Layer: draw.Centre}, c.view.Pt(geom.V(x, 0, z-reach)), c.view.Pt(geom.V(x, 0, z+reach)))
			}
		}
	}
	marks := func(c *buildCell, p *page) {
		at := geom.V(c.rear().From+(c.rear().To-c.rear().From)*0.8, 0, c.rear().Top)
		datum := geom.V(c.planReach().x0, 0, 0)
		line := datum
		line.Z = at.Z
		c.upright(p, datum, line, -3, "")
		p.placer.Label(draw.Label{View: c.view, At: at, Text: "plate's level line"})
	}
	v := frontStep(over, marks)
	v.pad = func(*maker) draw.Rect { return draw.Rect{X0: 5, Y1: 4} }
	return v
}

// plateStep pictures the left end of the wall plate, from where it is marked.
func plateStep() stepView {
	return stepView{
		marks: func(c *buildCell, p *page) {
			plate := c.frame.Timber(c.rear())
			arris, edge := onInk(p, c.view, memberID(plate), c.plateArris(plate)) // a thin plate shows one of its two
			p.placer.Part(draw.Part{View: c.view, At: arris, Edge: edge, Toward: geom.P(0.3, 1), Mark: plate.Mark})
			p.placer.Label(draw.Label{View: c.view, At: plate.Place.O, Text: "hook the tape here", Width: 30})
		},
		see: func(m *maker, s stage) picture {
			plate := m.frame.Timber(m.rear())
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
		pad: func(*maker) draw.Rect { return draw.Rect{X0: 5, X1: 4, Y1: 4} },
		see: func(m *maker, s stage) picture {
			r := m.planReach()
			wall := m.wallPlan(r)
			pic := m.seeStage(s, look{axes: geom.Plan()}).with(wall.picture)
			front := m.front().Outer
			if m.front().Skewed() {
				front = m.frame.Setout.FrontOut()
			}
			pic.all = wall.all.Union(draw.Rect{X0: r.x0, Y0: front, X1: r.x1, Y1: 0})
			return pic
		},
		over: func(c *buildCell, p *page) {
			reach := c.planReach()
			shown := [2]float64{reach.x0, reach.x1} // beside the picture stand the words
			c.drawFascia(p, c.view, wallPlan{reach: reach})
			c.drawString(p, c.view, c.front(), shown)
			if c.rear().Back {
				c.drawString(p, c.view, c.rear(), shown)
			}
			const half = 2.0 // mm on paper, of a mark across the string
			for i, q := range c.postCentres() {
				k := c.frame.Setout.Under(i)
				at := c.view.Pt(k.Point(c.job.Posts.At[i].Along, c.postFace(k), q.Z))
				across := c.view.Axes.Project(k.Lies.V).Mul(half)
				p.sheet.Line(draw.Style{Layer: draw.Outline, Pen: draw.Middle}, at.Sub(across), at.Add(across))
			}
			l, r := c.fixedPoints()
			for _, q := range []geom.Vec{l, r} {
				p.sheet.Dot(draw.Notes, c.view.Pt(q), 0.8)
			}
		},
		marks: func(c *buildCell, p *page) {
			c.view.Figures = c.tapeFigures() // as on the set-out plan
			l, r := c.fixedPoints()
			string0 := geom.V(l.X, c.postLine(), l.Z)
			if k := c.front(); k.Skewed() {
				string0, _ = c.stringMeets(k)
			}
			c.upright(p, l, string0, -4, "")
			c.crossTapes(p)
			p.placer.Label(draw.Label{View: c.view, At: l, Text: leftPoint})
			p.placer.Label(draw.Label{View: c.view, At: r, Text: rightPoint})
			p.placer.Label(draw.Label{View: c.view, At: c.onString(), Text: "string line", Toward: geom.P(0.4, -1)})
		},
	}
}

// onString is a point of the string line clear of the posts: in the last bay, or
// beyond the only post.
func (c *buildCell) onString() geom.Vec {
	posts := c.centresOf(c.front())
	_, x := c.stringEnds()
	last := posts[len(posts)-1].X
	if n := len(posts); n > 1 {
		x = posts[n-2].X
	}
	if k := c.front(); k.Skewed() {
		end := k.Point(c.postsAlong(k)[len(posts)-1], k.PostOuter, 0)
		if len(posts) > 1 {
			return end.Lerp(k.Point(c.postsAlong(k)[len(posts)-2], k.PostOuter, 0), 0.5)
		}
		_, x := c.skewString(k)
		return end.Lerp(x, 0.5)
	}
	return geom.V((x+last)/2, c.postLine(), 0)
}

// crossTapes draws the two tapes that prove the outer posts, with their figures
// on them where there is room, else led out.
func (c *buildCell) crossTapes(p *page) {
	const (
		share = 0.3  // of a tape, from its start to its figure
		deep  = 24.0 // mm on paper from wall to string, for figures on the tapes
	)
	t := c.postTapes()
	a, b := c.view.Pt(t.a), c.view.Pt(t.p)
	la, lb := t.lengths(0)
	width := func(mm float64) float64 { return draw.TextWidth(c.tape(mm), p.hand.FigureHeight(), false) }
	wide := max(width(la), width(lb))
	roomy := math.Abs(a.Y-b.Y) >= deep && math.Abs(a.X-b.X)*(1-2*share) > 2*wide
	tapes := [][2]geom.Vec{{t.a, t.p}, {t.b, t.q}}
	for _, e := range tapes {
		if roomy {
			draw.Span{View: c.view, A: e[0], B: e[1], Share: share}.Draw(p.sheet, p.hand)
		} else {
			p.sheet.Line(draw.Style{Layer: draw.Centre}, c.view.Pt(e[0]), c.view.Pt(e[1]))
		}
	}
	if roomy {
		return
	}
	for _, e := range tapes {
		p.placer.Label(draw.Label{View: c.view, At: e[0].Add(e[1].Sub(e[0]).Mul(share)), Text: c.tape(e[1].Sub(e[0]).Len())})
	}
}

// figureWidth is the width of a length's figure, mm on paper.
func (c *buildCell) figureWidth(p *page, mm float64) float64 {
	return draw.TextWidth(c.figures.Length(mm), p.hand.FigureHeight(), false)
}

// upright dimensions a height beside what it measures, if its figure fits along
// it; the words give it too.
func (c *buildCell) upright(p *page, a, b geom.Vec, offset float64, prefix string) {
	const strokes = 4.0 // mm on paper, of a dimension line beyond its figure
	long := math.Abs(c.view.Pt(b).Y - c.view.Pt(a).Y)
	for _, w := range []string{prefix, ""} {
		if draw.TextWidth(w, p.hand.FigureHeight(), false)+c.figureWidth(p, c.view.Axes.Up.Dot(b.Sub(a)))+strokes <= long {
			p.placer.Span(draw.Span{View: c.view, A: a, B: b, Dir: draw.Upright, Offset: offset, Prefix: w})
			return
		}
	}
}

// fromLeft pictures a step from the left end, cut short at a level.
func fromLeft(low func(m *maker) float64, marks func(c *buildCell, p *page), over func(c *buildCell, p *page), house ...string) stepView {
	return stepView{
		over: over, marks: marks,
		see: func(m *maker, s stage) picture {
			crop := m.stepCrop()
			crop.Min.Z, crop.Max.Y = low(m), max(m.job.Wall.Core()+wallBehind, m.groundEnd())
			return m.seeStage(s.aboveGround(), look{axes: geom.LeftEnd(), crop: &crop, torn: true}, housePieces(house...)...)
		},
	}
}

// underBeam is how much of the posts a picture of the beam's height shows, mm.
const underBeam = 500

func underSeat(m *maker) float64 { return m.seatLevel() - underBeam }

// topsStep pictures the plate's level line, carried out to the posts.
func topsStep() stepView {
	const (
		past  = 250.0 // mm, of the line beyond the posts
		most  = 0.8   // of that, out to the height that is measured down
		apart = 5.5   // mm on paper, from the posts to it: its figure stands between
	)
	beyond := func(c *buildCell) float64 { return max(past, apart/most/c.view.Scale) }
	over := func(c *buildCell, p *page) {
		s := c.frame.Setout
		at := func(y float64) geom.Pt { return c.view.Pt(geom.V(0, y, c.rear().Top)) }
		p.sheet.Line(draw.Style{Layer: draw.Centre, Pen: draw.Middle, Dash: draw.Chain}, at(s.Rear().Outer), at(s.Front().Outer-beyond(c)))
	}
	marks := func(c *buildCell, p *page) {
		s := c.frame.Setout
		out := s.Front().Outer - beyond(c)*most
		seat, line := geom.V(0, s.Front().Outer, c.seatLevel()), geom.V(0, out, c.rear().Top)
		const least = 5.0 // mm on paper, for a figure beside the line
		if (line.Z-seat.Z)*c.view.Scale >= least {
			draw.Span{View: c.view, A: seat, B: line, Dir: draw.Upright, Offset: (s.Front().Outer - out) * c.view.Scale, Beside: true}.Draw(p.sheet, p.hand)
		}
		p.placer.Label(draw.Label{View: c.view, At: geom.V(0, (s.Rear().Outer+s.Front().Outer)/2, c.rear().Top), Text: strings.TrimPrefix(c.setting().lineOf, "the ")})
	}
	v := fromLeft(underSeat, marks, over)
	see := v.see
	v.see = func(m *maker, s stage) picture {
		pic := see(m, s)
		pic.all.X1 = max(pic.all.X1, past-m.front().Outer)
		pic.all.Y1 = max(pic.all.Y1, m.rear().Top) // the line, over posts alone
		return pic
	}
	v.pad = func(m *maker) draw.Rect {
		const clear = 5 // mm on paper, round the figure
		return draw.Rect{X1: draw.TextWidth(m.figures.Length(m.rear().Top-m.seatLevel()), m.hand.FigureHeight(), false) + clear}
	}
	return v
}

// patternStep pictures the pattern rafter from the left end.
func patternStep() stepView {
	return fromLeft(underSeat, func(c *buildCell, p *page) {
		rafter := c.frame.Of(frame.KindRafter)[0]
		s := c.frame.Setout.Cut(rafter.Place.O.X + rafter.Section.Width/2)
		at := func(y, z float64) geom.Vec { return geom.V(0, y, z) }
		low := c.frame.RafterTop(s.Front().Inner) - rafter.Section.Depth/rafter.Place.W.Z
		p.placer.Span(draw.Span{View: c.view, A: at(s.Rear().Outer, low), B: at(s.Front().Inner, low), Dir: draw.Across, Offset: -6, Prefix: "clear "})
		c.markFall(p, false)
		part := draw.Part{View: c.view, At: rafter.Place.Point(geom.V(rafter.Length*0.25, 0, rafter.Section.Depth/2)), Mark: rafter.Mark, Toward: geom.P(-0.5, 1)}
		if !p.placer.Enclosed(c.view.Pt(part.At)) { // of a thin rafter one edge is left
			part.At, part.Edge = onInk(p, c.view, memberID(rafter), part.At)
		}
		p.placer.Part(part)
	}, nil)
}

// markFall gives the fall of the rafters, at their top edge or, where battens
// cover that, at their underside.
func (c *buildCell) markFall(p *page, under bool) {
	s, angle := c.frame.Setout, c.frame.Slope.Angle
	y := s.Rear().Outer + 0.7*(s.Front().Inner-s.Rear().Outer)
	at, way := geom.V(0, y, c.frame.RafterTop(y)), geom.P(0.5, 1)
	if under {
		at.Z -= c.job.Rafters.Section.Depth / math.Cos(angle)
		way = geom.P(-0.5, -1)
	}
	at, _ = onInk(p, c.view, memberID(c.frame.Of(frame.KindRafter)[0]), at) // the edge may be thinned out here
	words := fmt.Sprintf("fall %s (%s)", c.figures.Angle(angle), c.figures.Slope(angle))
	p.placer.Label(draw.Label{View: c.view, At: at, Text: words, Toward: way})
}

// checkStep pictures the finished frame from the left end, with what to check.
func checkStep() stepView {
	const off = 6.0 // mm on paper, of the heights from what they measure
	marks := func(c *buildCell, p *page) {
		s := c.frame.Setout
		// From the datum or the floor up to a point; side is 1 towards the house.
		height := func(low, y, high, side float64, prefix string) {
			from, line := geom.V(0, y, low), -side*off
			if c.job.Levels.DeckOut > 0 && c.figures.Round(low-c.job.Levels.Deck) == 0 { // no extension line along the deck's edge
				from.Y += side * off / c.view.Scale
				line = 0
			}
			c.upright(p, from, geom.V(0, y, high), line, prefix)
		}
		height(c.seatLevel()-s.HeadBeam, s.Front().Inner, c.seatLevel(), 1, "head ")
		height(0, s.Rear().Outer, c.rear().Top, -1, "")
		c.markFall(p, true)
	}
	return fromLeft((*maker).lowestGround, marks, nil, frame.HouseDeck)
}
