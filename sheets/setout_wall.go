package sheets

import (
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// setoutWallTitle is the title of the sheets of the wall and the levels.
const (
	setoutWallTitle   = "Set-out: wall and levels"
	setoutLevelsTitle = "Set-out: levels"
)

// setoutWallTitle is the title where there is a wall or not.
func (m *maker) setoutWallTitle() string {
	if m.rear().OnWall {
		return setoutWallTitle
	}
	return setoutLevelsTitle
}

// setoutWallSheets lays out what is marked on the wall, the heights of the
// posts, and what the tapes show when the frame is square.
func (m *maker) setoutWallSheets() []draft {
	topics, title := []string{"setout wall"}, m.setoutWallTitle()
	beam := m.squareTo()
	full := linedUp{m.levelView(false), beam.postHeights(beam.front(), false)}
	lean := linedUp{m.levelView(true), beam.postHeights(beam.front(), true)}
	heights, slip := m.inWidth(m.postTable()), m.inWidth(m.slipTable())
	wide := min(heights.extent(m.hand, 1).W(), freeOf(m.room(title)).W())
	how := &wordBlock{draw.NoteBlock{Title: "How to mark", Numbered: true, Width: max(wide, wordWidth), Notes: m.wallNotes()}}
	square := &wordBlock{draw.NoteBlock{Title: "How to prove it square", Numbered: true, Width: max(wide, wordWidth), Notes: m.squareNotes()}}
	all := stackBlock{heights, how, slip, square}
	apart := besideBlock{stackBlock{heights, how}, stackBlock{slip, square}}
	words := func() []draft {
		if a, ok := arrange(m.hand, m.room(title), []float64{1}, grid{{apart}}); ok {
			return []draft{{title, topics, a}}
		}
		return m.lay(title, topics, []float64{1}, grid{{heights}, {how}, {slip}, {square}})
	}
	for _, scale := range m.scales(setoutWallScale) {
		for _, views := range []linedUp{full, lean} {
			together := []grid{{{views, hung{all, views}}}, {{views}, {apart}}}
			if a, ok := arrange(m.hand, m.room(title), []float64{scale}, together...); ok {
				return []draft{{title, topics, a}}
			}
		}
		if scale > setoutScale+minScaleStep {
			continue
		}
		for _, views := range []linedUp{full, lean} {
			if a, ok := arrange(m.hand, m.room(title), []float64{scale}, grid{{views}}); ok {
				return append([]draft{{title, topics, a}}, words()...)
			}
		}
	}
	return append(m.lay(title, topics, m.scales(setoutWallScale), grid{{lean[0]}, {lean[1]}}), words()...)
}

// levelView is what the level line comes from: the wall, or the posts under a
// rear beam; with fewer dimension rows and a scale bar or without.
func (m *maker) levelView(lean bool) *viewBlock {
	if m.rear().OnWall {
		return m.wallView(lean)
	}
	return m.postHeights(m.rear(), lean)
}

// inWidth cuts a table that is wider than a sheet into several, each with the
// first column.
func (m *maker) inWidth(t draw.Table) stackBlock {
	room := freeOf(m.room("")).W()
	take := func(from, to int) draw.Table {
		part := draw.Table{Title: t.Title, Columns: append([]draw.Column{t.Columns[0]}, t.Columns[from:to]...)}
		if from > 1 {
			part.Title += " (continued)"
		}
		for _, r := range t.Rows {
			part.Rows = append(part.Rows, draw.TableRow{Cells: append([]string{r.Cells[0]}, r.Cells[from:to]...)})
		}
		return part
	}
	var out stackBlock
	for from := 1; from < len(t.Columns); {
		to := len(t.Columns)
		for w, _ := take(from, to).Size(); w > room && to > from+1; w, _ = take(from, to).Size() {
			to--
		}
		out = append(out, &tableBlock{take(from, to)})
		from = to
	}
	return out
}

// setoutWallScale is the largest scale tried for the wall.
const setoutWallScale = 1.0 / 20

// linedUp is several views one under the other, their reference points in one
// upright line.
type linedUp []*viewBlock

func (b linedUp) extent(h draw.Hand, scale float64) draw.Rect {
	r := draw.EmptyRect()
	y := 0.0
	for i, v := range b {
		e := v.extent(h, scale)
		if i > 0 {
			y -= blockGap
		}
		r = r.Union(draw.Rect{X0: e.X0, Y0: y - e.H(), X1: e.X1, Y1: y})
		y -= e.H()
	}
	return r
}

// pieces are the rooms of the views: the last one is often the narrowest, and
// leaves a corner to the title block.
func (b linedUp) pieces(h draw.Hand, scale float64) []draw.Rect {
	var out []draw.Rect
	y := 0.0
	for _, v := range b {
		e := v.extent(h, scale)
		out = append(out, e.Move(geom.P(0, y-e.Y1)))
		y -= e.H() + blockGap
	}
	return out
}

func (b linedUp) draw(p *page, at geom.Pt, scale float64) {
	y := at.Y
	for _, v := range b {
		e := v.extent(p.hand, scale)
		v.draw(p, geom.P(at.X, y-e.Y1), scale)
		y -= e.H() + blockGap
	}
}

func (b linedUp) finish(p *page) {
	for _, v := range b {
		v.finish(p)
	}
}

// wallView is the wall as it is marked before the plate goes up. Lean, it has a
// row of heights at its right end in place of named levels.
func (m *maker) wallView(lean bool) *viewBlock {
	r := m.wallReach()
	crop := everywhere()
	crop.Min.X, crop.Max.X, crop.Max.Z = r.x0, r.x1, m.houseTop()
	pic := m.scene.see(look{
		axes: geom.Front(), crop: &crop, torn: true,
		show: func(s *scene, body int) bool {
			h, _ := s.house(body)
			return slices.Contains(m.frontPieces(), h.Name)
		},
	})
	bounds := pic.all.Union(draw.Rect{X0: m.rear().From, Y0: min(0, m.job.Levels.Ground), X1: m.rear().To, Y1: max(0, m.rear().Top)})
	b := newViewIn("Marks on the wall", pic, m.origin(), bounds)
	b.view.Figures = m.tapeFigures()
	b.title.Note = "seen standing outside, facing the house; dashed: the wall plate"
	if lean {
		b.title.NoBar = true // the view of the posts has it
	}
	m.wallRows(b, r)
	m.wallHeights(b, lean)
	b.over = func(p *page, v *draw.View) { m.drawWallMarks(p, v, r) }
	b.marks = func(p *page, v *draw.View) { m.wallMarks(p, v) }
	return b
}

// wallReach is how far along the views of the wall show it: the frame and a
// little more, but no more than there is.
func (m *maker) wallReach() reach {
	r := m.planReach()
	r.x0 = max(r.x0, min(m.job.Wall.From, m.rear().From, m.front().From))
	r.x1 = min(r.x1, max(m.job.Wall.To, m.rear().To, m.front().To))
	return r
}

// wallRows hangs the rows along the wall on its view.
func (m *maker) wallRows(b *viewBlock, r reach) {
	j := m.job
	high := m.rear().Top
	at := func(x, z float64) geom.Vec { return geom.V(x, 0, z) }
	along := func(xs []float64, z float64) (out []geom.Vec) {
		for _, x := range xs {
			if x > r.x0 && x < r.x1 {
				out = append(out, at(x, z))
			}
		}
		return out
	}
	start := at(m.rear().From, high)
	b.Top.Running(m.studs(), start, along(j.Wall.Studs, high)...)
	b.Top.Running(m.screwsTitle(), start, along(m.screws(), high)...)
	b.Top.Overall("L to R", start, at(m.rear().To, high))
	var edges []float64
	for _, o := range j.Wall.Openings {
		edges = append(edges, o.From, o.To)
	}
	for _, w := range j.Wall.Returns {
		edges = append(edges, w.At)
	}
	ground := j.Levels.Ground
	b.Bottom.Running("openings", at(m.rear().From, ground), along(edges, ground)...)
}

// wallHeights hangs the heights on the view of the wall, at both its ends.
func (m *maker) wallHeights(b *viewBlock, lean bool) {
	j := m.job
	plate := m.frame.Timber(m.rear())
	low, high := plate.Place.O.Z, m.rear().Top
	at := func(x, z float64) geom.Vec { return geom.V(x, 0, z) }
	b.Left.Running("at the left end", at(m.rear().From, 0), at(m.rear().From, low), at(m.rear().From, high))
	if lean {
		b.Right.Running("at the right end", at(m.rear().To, 0), at(m.rear().To, low), at(m.rear().To, high))
		return
	}
	right := func(z float64) geom.Vec { return at(m.rear().To, z) }
	levels := b.level(draw.Right)
	levels.Add("plate's level line", right(high)).Add("underside of plate", right(low)).
		Add("datum", right(0))
	for _, up := range m.rowsUp() {
		levels.Add(m.fixer()+"s", right(low+up))
	}
	if j.Wall.SoffitOut > 0 {
		levels.Add("underside of soffit", right(j.Wall.Soffit))
	}
	for _, h := range m.heads() {
		levels.Add(h.name, right(h.z))
	}
}

// head is the height of the heads of one or more openings.
type head struct {
	z    float64
	name string
}

// heads are the heights of the openings' heads, those alike together.
func (m *maker) heads() []head {
	var out []head
	for _, o := range m.job.Wall.Openings {
		i := slices.IndexFunc(out, func(h head) bool { return h.z == o.Head })
		switch {
		case i < 0:
			out = append(out, head{o.Head, "head of " + o.Kind})
		case !strings.Contains(out[i].name, o.Kind):
			out[i].name += " and " + o.Kind
		}
	}
	return out
}

// screwsTitle names the row of the screws.
func (m *maker) screwsTitle() string {
	if m.job.Plate.Packer.Thickness > 0 {
		return m.fixer() + "s, packers"
	}
	return m.fixer() + "s"
}

// screws are the places of the plate's screws along the wall.
func (m *maker) screws() []float64 {
	var out []float64
	for _, f := range m.frame.Setout.PlateFixings {
		out = append(out, f.Along)
	}
	return out
}

// drawWallMarks draws what is struck on the wall: the level line, the plate's
// outline, studs, packers and screws, the datum, and the plumb lines down to L
// and R.
func (m *maker) drawWallMarks(p *page, v *draw.View, r reach) {
	j, s := m.job, p.sheet
	plate := m.frame.Timber(m.rear())
	low, high := plate.Place.O.Z, m.rear().Top
	at := func(x, z float64) geom.Pt { return v.Pt(geom.V(x, 0, z)) }
	m.drawPackers(p, v)
	s.Line(draw.Style{Layer: draw.Hidden, Dash: draw.Dashed}, at(m.rear().From, low), at(m.rear().To, low))
	s.Line(draw.Style{Layer: draw.Centre, Pen: draw.Middle, Dash: draw.Chain}, at(m.rear().From, high), at(m.rear().To, high))
	m.drawDatum(p, v, r)
	for _, x := range []float64{m.rear().From, m.rear().To} {
		foot := at(x, j.Levels.Ground)
		if (min(x-r.x0, r.x1-x))*v.Scale >= minGap { // else the wall's own edge stands for it
			s.Line(draw.Style{Layer: draw.Centre, Dash: draw.Chain}, at(x, high), foot)
		}
		s.Dot(draw.Notes, foot, 0.8)
	}
	const under = 6.0 // mm on paper, of a stud's line below the plate
	for _, x := range j.Wall.Studs {
		if x > r.x0 && x < r.x1 {
			s.Line(draw.Style{Layer: draw.Centre}, at(x, low).Sub(geom.P(0, minGap)), at(x, low).Sub(geom.P(0, under)))
		}
	}
}

// drawPackers draws the packers, light, and the crosses of the screws on them.
func (m *maker) drawPackers(p *page, v *draw.View) {
	const tone = 0.2
	const arm = 1.1 // mm on paper, of a cross
	for _, b := range m.frame.Of(frame.KindPacker) {
		if m.packs(b, frame.JointPlateWall) {
			r := v.Outline(projectBox(v.Axes, b.Solid().Bounds()))
			p.sheet.FillPolygon(draw.Hatch, tone, r.Corners())
		}
	}
	pen := draw.Style{Layer: draw.Outline, Pen: draw.Middle}
	for _, f := range m.frame.Setout.PlateFixings {
		c := v.Pt(geom.V(f.Along, 0, m.rear().Top-m.rear().Section.Depth+f.Up))
		p.sheet.Line(pen, c.Sub(geom.P(arm, arm)), c.Add(geom.P(arm, arm)))
		p.sheet.Line(pen, c.Sub(geom.P(arm, -arm)), c.Add(geom.P(arm, -arm)))
	}
}

// drawDatum draws the datum across the wall, but not over openings that reach
// to it.
func (m *maker) drawDatum(p *page, v *draw.View, r reach) {
	free := []span{{r.x0, r.x1}}
	for _, o := range m.job.Wall.Openings {
		if o.Sill <= 0 && o.Head >= 0 {
			free = without(free, o.From, o.To)
		}
	}
	for _, f := range free {
		p.sheet.Line(draw.Style{Layer: draw.Centre, Dash: draw.Chain}, v.Pt(geom.V(f.lo, 0, 0)), v.Pt(geom.V(f.hi, 0, 0)))
	}
}

// wallMarks names what is marked on the wall.
func (m *maker) wallMarks(p *page, v *draw.View) {
	l, r := m.fixedPoints()
	for _, f := range []struct {
		at   geom.Vec
		name string
	}{{l, leftPoint}, {r, rightPoint}} {
		p.placer.Label(draw.Label{View: v, At: f.at, Text: f.name})
	}
	m.nameOpenings(p, v)
	var shown []float64
	for _, st := range m.job.Wall.Studs {
		if st > m.rear().From && st < m.rear().To {
			shown = append(shown, st)
		}
	}
	if n := len(shown); n > 0 {
		const low = 4.0 // mm on paper, under the plate
		x := shown[n*2/3]
		p.placer.Label(draw.Label{View: v, At: geom.V(x, 0, m.rear().Bottom-low/v.Scale), Text: m.job.Wall.StudName(), Toward: geom.P(0.6, -1)})
	}
	const dense = 8.0 // mm on paper, from screw to screw: the title of their row names them
	if sc := m.screws(); len(sc) > 0 && (sc[len(sc)-1]-sc[0])*v.Scale >= dense*float64(len(sc)-1) {
		words := m.fixer()
		if m.job.Plate.Packer.Thickness > 0 {
			words += " and packer"
		}
		p.placer.Label(draw.Label{View: v, At: geom.V(sc[len(sc)/2], 0, m.rear().Top-m.rear().Section.Depth+m.frame.Setout.PlateFixings[len(sc)/2].Up), Text: words, Inside: true, Toward: geom.P(-0.6, -1)})
	}
}
