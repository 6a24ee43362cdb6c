package sheets

import (
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// setoutScale is the scale of a set-out plan that everybody reads: rather than
// go under it, the tables go to a sheet of their own.
const setoutScale = 1.0 / 50

// setoutSheets lays out the post set-out plan: what a builder holds in the
// paddock with a tape.
func (m *maker) setoutSheets() []draft {
	const title = "Post set-out plan"
	topics := []string{"setout"}
	plan := m.setoutView()
	tables := m.setoutTables()
	notes := &wordBlock{draw.NoteBlock{Title: "How to set out", Numbered: true, Width: 90, Notes: m.setoutNotes()}}
	square, site := block(m.squareView()), block(m.siteView())
	small := besideBlock{square, site}
	together := []grid{
		{{stackBlock{plan, spacer(siteGap), small}, stackBlock{tables, notes}}},
		{{stackBlock{plan, spacer(siteGap), site}, stackBlock{tables, besideBlock{notes, square}}}},
		{{plan, hung{stackBlock{tables, besideBlock{notes, stackBlock{square, site}}}, plan}}},
		{{plan, hung{stackBlock{tables, notes}, plan}}, {small, nil}},
		{{plan}, {besideBlock{tables, notes, small}}},
	}
	rest := []grid{
		{{stackBlock{tables, small}, notes}},
		{{stackBlock{besideBlock{tables, notes}, small}}},
		{{stackBlock{tables, notes}}, {small}},
		{{stackBlock{tables, besideBlock{notes, small}}}},
	}
	if len(m.job.Site.KeepOuts) > 0 { // one table more: with nothing under them they fit small paper too
		rest = append([]grid{{{tables, stackBlock{notes, small}}}}, rest...)
	}
	tablesFrom := func(scale float64) []draft {
		const title = "Post set-out tables"
		if a, ok := arrange(m.hand, m.room(title), scalesFrom(scale), rest...); ok {
			return []draft{{title, topics, a}}
		}
		apart := grid{{tables}, {notes}, {small}}
		if _, ok := arrange(m.hand, m.room(title), scalesFrom(scale), grid{{tables}}); !ok { // the last of them goes with the notes
			last := len(tables) - 1
			apart = grid{{tables[:last]}, {stackBlock{tables[last], notes}}, {small}}
		}
		return m.lay(title, topics, scalesFrom(scale), apart)
	}
	for _, scale := range m.scales(planScale) {
		one := []float64{scale}
		if a, ok := arrange(m.hand, m.room(title), one, together...); ok {
			return []draft{{title, topics, a}}
		}
		if a, ok := arrange(m.hand, m.room(title), one, grid{{plan}}); ok && scale < setoutScale+minScaleStep {
			return append([]draft{{title, topics, a}}, tablesFrom(scale)...)
		}
	}
	return append(m.lay(title, topics, m.scales(planScale), grid{{plan}}), tablesFrom(setoutScale)...)
}

// siteGap is the room between two views in a stack, besides its own gaps, mm on
// paper.
const siteGap = 1.5

// minScaleStep tells two scales of the series apart: the nearest are 1:500 and
// 1:1000.
const minScaleStep = 1e-4

// The two fixed points of the set-out stand on the face of the cladding, plumb
// under the ends of the plate.
const (
	leftPoint  = "L"
	rightPoint = "R"
)

func (m *maker) fixedPoints() (left, right geom.Vec) {
	return geom.V(m.rear().From, 0, m.job.Levels.Ground), geom.V(m.rear().To, 0, m.job.Levels.Ground)
}

// centresOf are the centres on the ground of the posts under a carrier, left to
// right.
func (m *maker) centresOf(k frame.Carrier) []geom.Vec {
	var out []geom.Vec
	all := m.postCentres()
	for _, i := range k.Posts {
		out = append(out, all[i])
	}
	return out
}

// postCentres are the centres of the posts on the ground, in their order.
func (m *maker) postCentres() []geom.Vec {
	posts := m.frame.Of(frame.KindPost)
	out := make([]geom.Vec, len(posts))
	for i, p := range posts {
		c := p.Place.Point(geom.V(0, p.Section.Width/2, p.Section.Depth/2))
		out[i] = geom.V(c.X, c.Y, m.job.Levels.Ground)
	}
	return out
}

// setoutView is the plan of posts and holes. It is figured as the drawings of the
// members are, so that a place is the same number on both.
func (m *maker) setoutView() *planView {
	reach := m.planReach()
	holes := draw.EmptyRect()
	for _, post := range m.frame.Of(frame.KindPost) {
		holes = holes.Union(projectBox(geom.Plan(), m.footOf(post)))
	}
	reach.y0 = min(reach.y0, holes.Y0-wallMore)
	if y := -m.job.Levels.DeckOut; y > reach.y0-wallMore {
		reach.y0 = min(reach.y0, y-wallMore/2)
	}
	wall := m.wallPlan(reach)
	cut := geom.V(0, 0, m.aboveFootings())
	pic := m.scene.see(look{
		axes: geom.Plan(), cut: &cut,
		show: func(s *scene, body int) bool {
			mb, ok := s.member(body)
			return ok && mb.Kind == frame.KindPost
		},
	}).with(wall.picture)
	bounds := holes.Union(wall.all)
	if y := -m.job.Levels.DeckOut; y > reach.y0 {
		bounds.Y0 = min(bounds.Y0, y)
	}
	for _, r := range m.keepOuts(wall) {
		bounds.Y0 = min(bounds.Y0, r.Y0)
	}
	b := newViewIn("Post set-out plan", pic, m.origin(), bounds)
	b.view.Figures = m.tapeFigures()
	b.title.Note = "seen from above; posts cut above their feet"
	b.pad.X1 = stringWords
	m.setoutRows(b.Around)
	b.over = func(p *page, v *draw.View) { m.drawSetout(p, v, wall, bounds.X0) }
	plan := m.planView(b, wall)
	b.marks = func(p *page, _ *draw.View) { m.setoutMarks(p, plan) }
	return plan
}

// stringWords is the width of the words at the end of the string line, and the
// room that they need, mm on paper.
const stringWords = 26.0

// aboveFootings is a level just above every footing and every foot of a post.
func (m *maker) aboveFootings() float64 {
	const above = 20 // mm: clear of any collar's top
	z := m.job.Levels.Ground
	for _, mb := range m.frame.Members {
		if b := mb.Solid().Bounds(); mb.Kind == frame.KindFooting {
			z = max(z, b.Max.Z)
		} else if mb.Kind == frame.KindPost {
			z = max(z, b.Min.Z)
		}
	}
	return z + above
}

// setoutRows hangs the dimension rows on the set-out plan.
func (m *maker) setoutRows(a *draw.Around) {
	left, right := m.fixedPoints()
	posts := m.centresOf(m.front())
	if m.front().Skewed() {
		m.skewSetoutRows(a)
		return
	}
	string0 := geom.V(left.X, m.postLine(), left.Z)
	a.Bottom.Running("post centres", string0, posts...)
	a.Bottom.Chain("post to post", posts...)

	a.Left.Running("from "+m.setting().from, left, append(rearFirst(m.centresOf(m.rear())), posts[0], string0)...)
	if rear := m.centresOf(m.rear()); len(rear) > 0 {
		a.Top.Running("rear post centres", left, append(rear, right)...)
	}
	var corner []geom.Vec
	for _, r := range m.job.Wall.Returns {
		corner = append(corner, geom.V(r.At, 0, left.Z))
	}
	a.Top.Chain("fixed points", append(corner, left, right)...)
}

// rearFirst is the first of a row of posts, if there is one.
func rearFirst(posts []geom.Vec) []geom.Vec { return posts[:min(1, len(posts)):min(1, len(posts))] }

// drawSetout draws the wall, the string line, the tapes and the deck; x0 is the
// left edge, from which the rows stand off.
func (m *maker) drawSetout(p *page, v *draw.View, w wallPlan, x0 float64) {
	m.drawWall(p, v, w)
	m.drawDeck(p, v, w)
	m.drawKeepOuts(p, v, w)
	m.drawHoles(p, v)
	m.drawStringFrom(p, v, m.front(), x0)
	if m.rear().Back {
		m.drawStringFrom(p, v, m.rear(), x0)
	}
	m.drawTapes(p, v, w)
}

// drawDeck draws the edge of the deck, light.
func (m *maker) drawDeck(p *page, v *draw.View, w wallPlan) {
	y := -m.job.Levels.DeckOut
	if y == 0 || y < w.y0 {
		return
	}
	x0, x1 := m.between(w.all.X0, w.all.X1, y)
	p.sheet.Line(light(draw.Solid), v.Flat(geom.P(x0, y)), v.Flat(geom.P(x1, y)))
}

// between shortens a line along the wall, at y, to what lies between the
// returns.
func (m *maker) between(x0, x1, y float64) (float64, float64) {
	for _, r := range m.job.Wall.Returns {
		switch {
		case r.Length < -y:
		case r.Side == frame.Right:
			x1 = min(x1, r.At)
		default:
			x0 = max(x0, r.At)
		}
	}
	return x0, x1
}

// drawHoles draws the holes, which lie under the ground, and the centre lines
// of the posts in them.
func (m *maker) drawHoles(p *page, v *draw.View) {
	dashed := draw.Style{Layer: draw.Hidden, Pen: draw.Narrow, Dash: draw.Dashed}
	centre := draw.Style{Layer: draw.Centre, Pen: draw.Narrow}
	for _, mb := range m.frame.Of(frame.KindFooting) {
		b := projectBox(geom.Plan(), mb.Solid().Bounds())
		r := v.Outline(b)
		path := draw.PolygonPath(dashed, r.Corners())
		if mb.Place.V.Y != 0 {
			path = draw.PolygonPath(dashed, turnedHole(v, mb))
		}
		if mb.Round {
			path = draw.CirclePath(dashed, r.Centre(), r.W()/2)
		}
		path.ID = memberID(mb)
		p.sheet.Add(path)
	}
	for i, c := range m.postCentres() {
		post := m.frame.Of(frame.KindPost)[i]
		across := []geom.Pt{geom.P(1, 0), geom.P(0, 1)}
		if post.Place.V.Y != 0 {
			across = []geom.Pt{v.Axes.Project(post.Place.V), v.Axes.Project(post.Place.W)}
		}
		for _, d := range across {
			d = d.Mul(v.Outline(projectBox(geom.Plan(), m.footOf(post))).W()/2 + pastHole)
			p.sheet.Line(centre, v.Pt(c).Sub(d), v.Pt(c).Add(d))
		}
	}
}

// pastHole is how far a centre line goes on beyond the hole, mm on paper.
const pastHole = 1.5

// The string line stands out beyond the outer posts so far, mm, to its
// profiles.
const stringBeyond = 600

// drawStringFrom is drawString with a line that ends before the rows which
// stand left of x0.
func (m *maker) drawStringFrom(p *page, v *draw.View, k frame.Carrier, x0 float64) {
	const beforeRows = 5.0 // mm on paper; the rows stand 10 off
	m.drawString(p, v, k, [2]float64{x0 - beforeRows/v.Scale, math.Inf(1)})
}

// drawString draws the string line from post to post, as far as it lies within
// two places along the wall: at a post it lies on its outer face, which is drawn
// already.
func (m *maker) drawString(p *page, v *draw.View, k frame.Carrier, within [2]float64) {
	y := m.postFace(k)
	x, end := m.stringEnds()
	if k.Skewed() {
		m.drawSkewString(p, v, k, within[0])
		return
	}
	x, end = max(x, within[0]), min(end, within[1])
	style := draw.Style{Layer: draw.Centre, Pen: draw.Narrow, Dash: draw.Chain}
	half := m.job.Posts.Section.Width / 2
	for _, c := range append(m.centresOf(k), geom.V(end+half, 0, 0)) {
		if to := c.X - half; to > x {
			p.sheet.Line(style, v.Flat(geom.P(x, y)), v.Flat(geom.P(to, y)))
		}
		x = c.X + half
	}
}

// postFace is the world y of the outer faces of the posts under a carrier.
func (m *maker) postFace(k frame.Carrier) float64 {
	if k.Back {
		return k.Inner
	}
	return k.PostOuter
}

// stringEnds are the ends of the string line: beyond the outer posts, or at a
// return that stands in the way.
func (m *maker) stringEnds() (x0, x1 float64) {
	posts := m.centresOf(m.front())
	left, right := m.fixedPoints()
	first, last := min(posts[0].X, left.X), posts[len(posts)-1].X
	if rear := m.centresOf(m.rear()); len(rear) > 0 { // the base line goes on to R
		first, last = min(first, rear[0].X), max(last, rear[len(rear)-1].X, right.X)
	}
	x0, x1 = first-stringBeyond, last+stringBeyond
	return m.between(x0, x1, m.postLine())
}
