package sheets

import (
	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// planScale is the largest scale tried for the plans: 1:10 shows every edge of
// a timber, and a larger one only fills paper.
const planScale = 1.0 / 10

// planSheets lays out the framing plan and the plan of the battens: on one
// sheet if that costs no size, else on two.
func (m *maker) planSheets() []draft {
	const title = "Framing plan"
	framing, column := m.framingView(), m.planColumn()
	topics := []string{"plan", "battens"}
	alone := []grid{{{framing, hung{column, framing}}}, {{framing}, {column}}}
	if len(m.frame.Of(frame.KindBatten)) == 0 {
		return m.lay(title, topics[:1], m.scales(planScale), alone...)
	}
	battens := m.battenView()
	together := []grid{
		{{framing, hung{stackBlock{battens, column}, framing}}},
		{{framing, hung{battens, framing}, hung{column, framing}}},
		{{stackBlock{framing, battens}, column}},
		{{framing, battens}, {column}},
	}
	for _, scale := range m.scales(planScale) {
		one := []float64{scale}
		if a, ok := arrange(m.hand, m.room(title), one, together...); ok {
			return []draft{{title, topics, a}}
		}
		if _, ok := arrange(m.hand, m.room(title), one, alone...); ok {
			break
		}
	}
	return append(m.lay(title, topics[:1], m.scales(planScale), alone...),
		m.lay("Batten plan", topics[1:], m.scales(planScale), grid{{battens}})...)
}

// planView is a plan with the house at the top, a strip for words between the
// house and its dimension rows, and a north point beside its title.
type planView struct {
	*viewBlock
	wall  wallPlan
	north float64   // clockwise from the top of the paper
	given bool      // north is known
	room  draw.Rect // where the block stands, on the paper
}

// wordStrip is the height of the strip for words behind the wall, mm on paper:
// the arrows of 'house this side' and their gaps.
const wordStrip = 8.0

func (b *planView) extent(h draw.Hand, scale float64) draw.Rect {
	b.strip(scale)
	e := b.viewBlock.extent(h, scale)
	if b.given {
		e = e.Union(b.northBox(h, e, scale))
	}
	return e
}

func (b *planView) draw(p *page, at geom.Pt, scale float64) {
	b.strip(scale)
	e := b.viewBlock.extent(p.hand, scale)
	b.room = e.Move(at)
	b.viewBlock.draw(p, at, scale)
	if b.given {
		p.sheet.North(b.northBox(p.hand, e, scale).Move(at).Centre(), -b.north)
	}
}

func (b *planView) finish(p *page) {
	b.houseWords(p)
	b.viewBlock.finish(p)
}

// strip moves the upper edge, from which the rows stand off, so that the strip
// is as high on the paper at every scale.
func (b *planView) strip(scale float64) {
	b.Bounds.Y1 = b.wall.back + wordStrip/scale
	for _, r := range []*draw.Rows{b.Top, b.Left, b.Right, b.Bottom} {
		r.Bounds = b.Bounds
	}
}

// northBox is the place of the north point beside a view that covers e with
// its reference point at the origin: left of the title, under the rows.
func (b *planView) northBox(h draw.Hand, e draw.Rect, scale float64) draw.Rect {
	was := *b.view
	defer func() { *b.view = was }()
	b.set(geom.Pt{}, scale)
	x := b.view.Outline(b.Bounds).X0 - titleToNorth
	y := e.Y0 + draw.NorthSize
	if rows := b.Bottom.Extent(h); !rows.Empty() {
		y = min(y, rows.Y0-titleToNorth)
	}
	return draw.Rect{X0: x - draw.NorthSize, Y0: y - draw.NorthSize, X1: x, Y1: y}
}

// titleToNorth is the distance from a title to the north point, mm on paper.
const titleToNorth = 2.0

// framingView is the plan of the frame without battens.
func (m *maker) framingView() block {
	wall := m.wallPlan(m.planReach())
	pic := m.scene.see(look{
		axes: geom.Plan(),
		show: func(s *scene, body int) bool {
			mb, ok := s.member(body)
			return ok && mb.Kind != frame.KindBatten && mb.Kind != frame.KindFooting
		},
		hidden: func(s *scene, body int) bool {
			mb, _ := s.member(body)
			return mb.Kind == frame.KindPost
		},
	}).with(wall.picture)
	bounds := pic.bounds
	bounds.X0, bounds.X1 = max(wall.x0, wall.all.X0), min(wall.x1, wall.all.X1)
	b := newViewIn("Framing plan", pic, m.origin(), bounds)
	b.title.Note = "seen from above, battens left off; the wall is cut at window height"
	m.framingRows(b.Around)
	b.over = func(p *page, v *draw.View) { m.drawWall(p, v, wall) }
	b.marks = func(p *page, v *draw.View) { m.framingMarks(p, v, wall) }
	return m.planView(b, wall)
}

// planView gives a view of the plan its strip and its north point.
func (m *maker) planView(b *viewBlock, w wallPlan) *planView {
	return &planView{viewBlock: b, wall: w, north: m.job.Site.North, given: m.job.Site.NorthGiven}
}

// origin is the point that all plans share: the left end of the plate on the
// face of the cladding.
func (m *maker) origin() geom.Vec { return geom.V(m.job.Plate.From, 0, 0) }

// framingRows hangs the dimension rows on the framing plan.
func (m *maker) framingRows(a *draw.Around) {
	j, s := m.job, m.frame.Setout
	plate := func(x float64) geom.Vec { return geom.V(x, s.PlateOuter, j.Plate.Top) }
	beam := func(x float64) geom.Vec { return geom.V(x, s.BeamOuter, 0) }
	from, to := plate(j.Plate.From), plate(j.Plate.To)

	var studs, screws []geom.Vec
	for _, x := range j.Wall.Studs {
		if x >= j.Plate.From && x <= j.Plate.To {
			studs = append(studs, plate(x))
		}
	}
	for _, f := range s.PlateFixings {
		screws = append(screws, plate(f.Along))
	}
	rafters := alongOf(s.Rafters, plate)
	a.Top.Running("studs", from, studs...)
	a.Top.Running("screws, packers", from, screws...)
	a.Top.Running("rafter centres", from, append(rafters, to)...)
	a.Top.Equal("rafter spaces", len(rafters)-1, rafters[0], rafters[len(rafters)-1])
	a.Top.Overall("wall plate", from, to)

	var posts []geom.Vec
	for _, p := range j.Posts.At {
		posts = append(posts, beam(p.Along))
	}
	a.Bottom.Running("post centres", beam(j.Plate.From), append(posts, beam(j.Plate.To))...)
	if j.Beam.From != j.Plate.From {
		a.Bottom.Running("rafter centres on the beam", beam(j.Beam.From), alongOf(s.Rafters, beam)...)
	}
	if j.Beam.From != j.Plate.From || j.Beam.To != j.Plate.To {
		a.Bottom.Chain("ends of beam and plate", beam(j.Plate.From), beam(j.Beam.From), beam(j.Beam.To), beam(j.Plate.To))
	}
	a.Bottom.Overall("beam", beam(j.Beam.From), beam(j.Beam.To))

	out := func(y float64) geom.Vec { return geom.V(0, y, 0) }
	a.Left.Running("out from the cladding", out(0), out(s.PlateInner), out(s.PlateOuter), out(s.BeamInner), out(s.BeamOuter))
	a.Right.Chain("packer, plate, clear, beam", out(0), out(s.PlateInner), out(s.PlateOuter), out(s.BeamInner), out(s.BeamOuter))
	a.Cut(draw.Section{
		A: geom.V(m.sectionX(), 0, 0), B: geom.V(m.sectionX(), s.BeamOuter, 0),
		Look: geom.V(1, 0, 0), Letter: "A",
	})
}

// alongOf places a list of distances along the wall.
func alongOf(xs []float64, at func(float64) geom.Vec) []geom.Vec {
	out := make([]geom.Vec, len(xs))
	for i, x := range xs {
		out[i] = at(x)
	}
	return out
}
