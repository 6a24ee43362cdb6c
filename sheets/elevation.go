package sheets

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// The scales of the elevations: they show where things stand, and no more of
// it at a scale over the largest. Below the scale for one sheet they rather
// take several.
const (
	elevationScale = 1.0 / 20
	oneSheetScale  = 1.0 / 50
)

// elevationSheets lays out the front and both end elevations. The right end
// stands to the right of the front, its levels in line with it.
func (m *maker) elevationSheets() []draft {
	const title, ends = "Elevations", "End elevations"
	pic := m.frontPicture()
	front, left, right := m.frontElevation(pic, false), m.endElevation(frame.Left), m.endElevation(frame.Right)
	alone := []grid{{{front}}}
	if m.smallPaper() { // the names of the levels take half the width
		alone = append(alone, grid{{m.frontElevation(pic, true)}, {&tableBlock{m.frontLevels()}}})
	}
	for _, scale := range m.scales(elevationScale) {
		left.title.NoBar, right.title.NoBar = true, true // one scale bar a sheet
		if all, ok := m.fitted(title, scale, grid{{left, front, right}}, grid{{front, right}, {left, nil}},
			grid{{front, nil}, {left, right}}, grid{{front}, {left}, {right}}); ok {
			return []draft{all}
		}
		if scale > oneSheetScale && m.job.Paper.Scale == 0 {
			continue
		}
		a, fits := m.fitted("Front elevation", scale, alone...)
		if !fits {
			continue
		}
		left.title.NoBar = false
		if b, ok := m.fitted(ends, scale, grid{{left, right}}, grid{{left}, {right}}); ok {
			return []draft{a, b}
		}
		b, fitsLeft := m.fitted("Left end elevation", scale, grid{{left}})
		right.title.NoBar = false
		c, fitsRight := m.fitted("Right end elevation", scale, grid{{right}})
		if fitsLeft && fitsRight {
			return []draft{a, b, c}
		}
	}
	return m.lay(title, []string{onElevations}, m.scales(elevationScale), grid{{front}, {left}, {right}})
}

// fitted is a sheet of the elevations at a scale, if one of the grids fits.
func (m *maker) fitted(title string, scale float64, grids ...grid) (draft, bool) {
	a, ok := arrange(m.hand, m.room(title), []float64{scale}, grids...)
	return draft{title, []string{onElevations}, a}, ok
}

// frontPicture is the frame and the house seen from outside.
func (m *maker) frontPicture() picture {
	return m.elevation(geom.Front(), func(int) bool { return true })
}

// frontElevation is the view of that picture, its levels named or, keyed, with
// the letters of frontLevels.
func (m *maker) frontElevation(pic picture, keyed bool) *viewBlock {
	j, s := m.job, m.frame.Setout
	b := newViewIn("Front elevation", pic, geom.V(m.rear().From, 0, 0), m.elevationBounds(pic))
	b.title.Note = m.setting().seen
	if m.front().Skewed() {
		b.title.Note += "; lengths along the beam are on the plan"
	}

	at := func(x, z float64) geom.Vec { return geom.V(x, s.Front().Outer, z) }
	low := at(m.rear().From, m.lowest())
	stops := []geom.Vec{}
	for _, i := range m.front().Posts {
		stops = append(stops, at(j.Posts.At[i].Along, low.Z))
	}
	stops = append(stops, at(m.rear().To, low.Z))
	b.Bottom.Within, b.Top.Within = true, true
	skew := m.front().Skewed()
	if !skew { // else lengths along the beam are not seen true
		b.Bottom.Running("post centres", low, stops...)
	}
	if !skew && (m.front().From != m.rear().From || m.front().To != m.rear().To) {
		b.Bottom.Running(m.front().Name, low, at(m.front().From, low.Z), at(m.front().To, low.Z))
	}
	if steps := m.job.GroundSteps(); !skew && len(steps) > 0 {
		var at []geom.Vec
		for _, g := range steps {
			at = append(at, geom.V(g.Along, s.Front().Outer, low.Z))
		}
		b.Bottom.Running("ground steps", low, at...)
	}
	from, to := m.reachAlong()
	high := m.frame.RafterTop(s.Rear().Outer)
	b.Top.Overall("overall", at(from, high), at(to, high))
	for i, l := range m.levelsInFront() {
		if keyed {
			l.Name = levelKey(i)
		}
		b.level(draw.Right).Add(l.Name, l.At)
	}
	b.over = func(p *page, v *draw.View) {
		m.groundLine(p, v, nil)
		m.ringDetails(p, v, onElevations)
	}
	b.marks = m.frontMarks
	return b
}

// levelsInFront are the levels that the front elevation marks, from the top.
func (m *maker) levelsInFront() []frame.Level {
	levels := m.namedLevels(m.seenInFront)
	slices.SortStableFunc(levels, func(a, b frame.Level) int { return cmp.Compare(b.Z, a.Z) })
	return levels
}

// frontLevels are the levels of a keyed front elevation by their letters.
func (m *maker) frontLevels() draw.Table {
	const width = 110 // mm on paper: it stands by itself
	return m.levelTable("Levels of the front elevation", m.levelsInFront(), width)
}

// seenInFront reports whether a level is of a surface that the front elevation
// shows, or of the plate, from which all others are set out.
func (m *maker) seenInFront(l frame.Level) bool {
	return l.At.Y <= m.front().Cut(l.At.X).Outer || l.Z == m.rear().Top && !strings.Contains(l.Name, "rafter") || l.Z == m.job.Wall.Soffit
}

// lowest is the level of the deepest footing or, without any, of the ground.
func (m *maker) lowest() float64 {
	low := min(m.job.Levels.Ground, m.lowestGround())
	for _, f := range m.frame.Of(frame.KindFooting) {
		low = min(low, f.Place.O.Z)
	}
	return low
}

// reachAlong is the stretch along the wall that the frame takes, battens and
// all.
func (m *maker) reachAlong() (from, to float64) {
	from, to = m.rear().From, m.rear().To
	for _, k := range []frame.Kind{frame.KindPlate, frame.KindBeam, frame.KindRafter, frame.KindBatten, frame.KindFascia} {
		for _, mb := range m.frame.Of(k) {
			b := mb.Solid().Bounds()
			from, to = min(from, b.Min.X), max(to, b.Max.X)
		}
	}
	return from, to
}

// endElevation is the frame seen along the wall from one end. The wall that
// comes out at that end stands in the way and is left off.
func (m *maker) endElevation(side frame.Side) *viewBlock {
	x, right := m.front().Reach()
	if side == frame.Right {
		x = right
	}
	m = m.cutAt(x)
	j, s := m.job, m.frame.Setout
	axes, name, inTheWay, end := geom.LeftEnd(), "Left end elevation", frame.HouseLeft, 0
	if side == frame.Right {
		axes, name, inTheWay, end = geom.RightEnd(), "Right end elevation", frame.HouseRight, len(m.front().Posts)-1
	}
	show := func(body int) bool {
		h, ok := m.scene.house(body)
		return !ok || h.Name != inTheWay
	}
	ends := []int{end + 1}
	if rear := m.rear().Posts; len(rear) > 0 {
		ends = append(ends, rear[0]+1)
		if side == frame.Right {
			ends[1] = rear[len(rear)-1] + 1
		}
	}
	pic := m.elevation(axes, show, ends...)
	b := newViewIn(name, pic, geom.Vec{}, m.elevationBounds(pic))
	b.title.Note = fmt.Sprintf(m.setting().endOn, side)
	for _, r := range j.Wall.Returns {
		if r.Side == side {
			b.title.Note += ", the side wall left off"
		}
	}
	post := j.Posts.At[end]
	at := func(y, z float64) geom.Vec { return geom.V(post.Along, y, z) }
	low := m.footOf(m.frame.Of(frame.KindPost)[end]).Min.Z
	outside := b.Right
	if side == frame.Right {
		outside = b.Left
		b.Bottom.Within = true
		b.Bottom.Running("out "+m.from(), at(0, low), m.outFrom(func(y float64) geom.Vec { return at(y, low) })...)
	}
	beam := m.frame.Timber(m.front())
	under := beam.Place.O.Z
	heights := []geom.Vec{at(s.Front().Outer, j.Floor(post)), at(s.Front().Outer, under), at(s.Front().Outer, under+beam.Section.Depth)}
	if post.Dug() {
		heights = slices.Insert(heights, 0, at(s.Front().Outer, low))
	}
	outside.Chain(fmt.Sprintf("post %d", end+1), heights...)
	b.over = func(p *page, v *draw.View) {
		m.groundLine(p, v, &post)
		m.battenEnds(p, v)
	}
	if len(ends) > 1 {
		m.rearHeights(b, side, ends[1]-1)
	}
	b.marks = func(p *page, v *draw.View) { m.endMarks(p, v, ends) }
	return b
}

// rearHeights dimensions the post of a rear row in an end elevation, on its own
// side.
func (m *maker) rearHeights(b *viewBlock, side frame.Side, post int) {
	k, spec := m.rear(), m.job.Posts.At[post]
	y := m.postFace(k)
	at := func(z float64) geom.Vec { return geom.V(spec.Along, y, z) }
	rows := b.Left
	if side == frame.Right {
		rows = b.Right
	}
	rows.Chain(fmt.Sprintf("post %d", post+1), at(spec.Ground-spec.Footing.Depth), at(spec.Ground), at(k.Bottom), at(k.Top))
}

// elevation looks at the frame and the house from outside. Posts and footings
// are dashed where ground or deck hides them: those numbered only, or all if none
// is.
func (m *maker) elevation(axes geom.View, show func(body int) bool, only ...int) picture {
	crop := everywhere()
	crop.Max.Z = m.houseTop()
	pic := m.scene.see(look{
		axes: axes,
		show: func(_ *scene, body int) bool { return show(body) },
		crop: &crop, torn: true,
		hidden: func(s *scene, body int) bool {
			mb, _ := s.member(body)
			return (mb.Kind == frame.KindPost || mb.Kind == frame.KindFooting) && (len(only) == 0 || slices.Contains(only, mb.No))
		},
	})
	floor := m.highestFloor()
	pic.strokes = slices.DeleteFunc(pic.strokes, func(st geom.Stroke) bool {
		h, ok := m.scene.house(st.Body)
		ground := ok && h.Name == frame.HouseGround
		return ground || st.Hidden && max(st.A.Y, st.B.Y) > floor
	})
	return pic
}

// highestFloor is the level above which nothing is below ground or deck.
func (m *maker) highestFloor() float64 {
	const slack = 1e-6 // mm: rounding of the hidden line search
	floor := m.job.Levels.Ground
	for _, p := range m.job.Posts.At {
		floor = max(floor, p.Ground)
	}
	if m.job.Levels.DeckOut > 0 {
		floor = max(floor, m.job.Levels.Deck)
	}
	return floor + slack
}

// elevationBounds is the outline of frame and house in an elevation: the
// ground is left out of it, so that the rows stand near, but for its line.
func (m *maker) elevationBounds(pic picture) draw.Rect {
	r := pic.bounds
	for _, h := range m.frame.House {
		if h.Name != frame.HouseGround {
			r = r.Union(projectBox(pic.axes, h.Shape.Bounds()))
		}
	}
	if !m.dug() { // else the rows stand off from the holes
		r.Y0 = min(r.Y0, m.lowest())
	}
	r.Y1 = min(r.Y1, max(pic.bounds.Y1, m.houseTop()))
	return r
}

// Where the house is cut short at its top, mm.
const (
	wallAbove = 150 // above the plate
	pastFrame = 60  // above the highest timber, where that is over the plate
	eaveAbove = 60  // above the soffit
)

// houseTop is the level at which the house is cut short.
func (m *maker) houseTop() float64 {
	top := m.rear().Top + wallAbove
	for _, mb := range m.frame.Members {
		top = max(top, mb.Solid().Bounds().Max.Z+pastFrame)
	}
	for _, p := range m.frame.Roof.Parts {
		top = max(top, p.Shape.Bounds().Max.Z+pastFrame)
	}
	if w := m.job.Wall; w.SoffitOut > 0 {
		top = max(top, w.Soffit+eaveAbove)
	}
	return top
}
