package sheets

import (
	"math"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// planScale is the largest scale tried for the plans: 1:10 shows every edge of
// a timber, and a larger one only fills paper.
const planScale = 1.0 / 10

// plans are the views and words that show the frame from above.
type plans struct {
	full    block   // the frame with all its dimension rows
	lean    block   // with fewer
	more    []block // views with the others
	battens []block // the plan of the battens and their table; none without battens
	column  block   // the members and the notes
}

// The titles of their sheets.
const (
	planTitle     = "Framing plan"
	planMoreTitle = "Framing plan, continued"
	battenTitle   = "Batten plan"
)

// planSheets lays out the framing plan and the plan of the battens: on one
// sheet if that costs no size, else on two. Where the paper is too small for
// all its dimension rows, those of studs and screws go to a plan of the plate.
func (m *maker) planSheets() []draft {
	v := plans{m.framingView(true), m.framingView(false), m.rowViews(), m.battenPlan(), m.planColumn()}
	for _, scale := range m.scales(planScale) {
		if a, ok := m.allPlans(v, scale); ok {
			return []draft{{planTitle, []string{"plan", "battens"}, a}}
		}
		for _, o := range []struct {
			grids []grid
			rest  []block
		}{
			{beside(v.full, v.column), nil},
			{beside(v.lean, append(stackBlock(v.more), v.column))[:1], nil},
			{beside(v.lean, v.column), v.more},
			{[]grid{{{v.lean}}}, append(v.more[:len(v.more):len(v.more)], v.column)},
		} {
			if a, ok := arrange(m.hand, m.room(planTitle), []float64{scale}, o.grids...); ok {
				return append([]draft{{planTitle, []string{"plan"}, a}}, m.restOfPlans(v, o.rest)...)
			}
		}
	}
	return append(m.lay(planTitle, []string{"plan"}, m.scales(planScale), grid{{v.lean}}),
		m.restOfPlans(v, append(v.more[:len(v.more):len(v.more)], v.column))...)
}

// beside are the arrangements of a view and what stands right of it or under
// it.
func beside(view, column block) []grid {
	return []grid{{{view, hung{column, view}}}, {{view}, {column}}}
}

// allPlans sets everything on one sheet at a scale, if it fits.
func (m *maker) allPlans(v plans, scale float64) (arrangement, bool) {
	grids := beside(v.full, v.column)
	if len(v.battens) > 1 {
		return arrangement{}, false // with so many battens they need their own sheet
	}
	if len(v.battens) > 0 {
		battens := v.battens[0].(*viewBlock)
		battens.bar(false) // the framing plan has it
		grids = []grid{
			{{v.full, hung{stackBlock{battens, v.column}, v.full}}},
			{{v.full, hung{battens, v.full}, hung{v.column, v.full}}},
			{{stackBlock{v.full, battens}, v.column}},
			{{v.full, battens}, {v.column}},
		}
	}
	a, ok := arrange(m.hand, m.room(planTitle), []float64{scale}, grids...)
	if len(v.battens) > 0 && !ok {
		v.battens[0].(*viewBlock).bar(true)
	}
	return a, ok
}

// restOfPlans lays out the battens and what else did not go on the sheet of
// the framing plan, together where that fits.
func (m *maker) restOfPlans(v plans, rest []block) []draft {
	title := planMoreTitle
	if len(rest) == 0 {
		title = battenTitle
		if m.hasSlats() {
			title = "Slat plan"
		}
	}
	rest = append(rest[:len(rest):len(rest)], v.battens...)
	if len(rest) == 0 {
		return nil
	}
	var stack grid
	for _, b := range rest {
		stack = append(stack, []block{b})
	}
	return m.lay(title, []string{"battens"}, m.scales(planScale), stack, grid{rest})
}

// planView is a plan with the house at the top, a strip for words between the
// house and its dimension rows, and a north point beside its title.
type planView struct {
	*viewBlock
	wall   wallPlan
	north  float64   // clockwise from the top of the paper
	given  bool      // north is known
	deep   float64   // height of the strip, mm on paper
	foot   float64   // height of a strip for marks before the frame, mm on paper
	front  float64   // world y of the front of everything
	room   draw.Rect // where the block stands, on the paper
	toward string    // words for what is beyond the top
}

// wordStrip is the height of the strip for words behind the wall, mm on paper:
// the arrows of 'house this side' and their gaps.
const wordStrip = 8.0

// markStrip is the height of the strip where the bubble of a detail at the
// wall is to stand in it too.
const markStrip = 20.0

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

// strip moves the edges from which the rows stand off, so that the strips are
// as high on the paper at every scale.
func (b *planView) strip(scale float64) {
	b.Bounds.Y1 = b.wall.back + b.deep/scale
	b.Bounds.Y0 = b.front - b.foot/scale
	for _, r := range []*draw.Rows{b.Top, b.Left, b.Right, b.Bottom} {
		r.Bounds = b.Bounds
	}
	for _, r := range b.Sloped {
		r.Bounds.Y0 = r.Bounds.Y1 - b.foot/scale
		r.First, r.Reach = stripToRow, b.foot+stripToRow
	}
	if b.foot > 0 {
		b.Bottom.First, b.Bottom.Reach = stripToRow, b.foot+stripToRow
	}
}

// markFoot is the height of the strip for part marks before the frame, mm on
// paper, and stripToRow the distance from it to the first row.
const (
	markFoot   = 8.0
	stripToRow = 3.0
)

// northBox is the place of the north point beside a view that covers e with
// its reference point at the origin: at the foot, left of the title or right
// of it, wherever it takes less room.
func (b *planView) northBox(h draw.Hand, e draw.Rect, scale float64) draw.Rect {
	was := *b.view
	defer func() { *b.view = was }()
	b.set(geom.Pt{}, scale)
	rows := b.Bottom.Extent(h)
	for _, r := range b.Sloped {
		rows = rows.Union(r.Extent(h))
	}
	outline := b.view.Outline(b.Bounds)
	left := draw.Rect{X0: outline.X0 - titleToNorth - draw.NorthSize, X1: outline.X0 - titleToNorth, Y0: e.Y0, Y1: e.Y0 + draw.NorthSize}
	if !rows.Empty() && left.Y1 > rows.Y0-titleToNorth {
		left = left.Move(geom.P(0, rows.Y0-titleToNorth-left.Y1))
	}
	title, _ := b.title.Size(h)
	moved := b.Close && outline.X0+title > e.X1 // left, to where the point stands else
	x := min(outline.X0+title, e.X1)
	for _, r := range []draw.Rect{rows, b.Right.Extent(h)} {
		if !r.Empty() {
			x = max(x, r.X1)
		}
	}
	x += titleToNorth
	right := draw.Rect{X0: x, X1: x + draw.NorthSize, Y0: e.Y0, Y1: e.Y0 + draw.NorthSize}
	if l, r := e.Union(left), e.Union(right); moved || r.H() < l.H() || r.H() == l.H() && r.W() < l.W() {
		return right
	}
	return left
}

// titleToNorth is the distance from a title to the north point, mm on paper.
const titleToNorth = 2.0

// framingView is the plan of the frame without battens, with all its dimension
// rows or with fewer.
func (m *maker) framingView(full bool) block {
	wall := m.wallPlan(m.planReach())
	pic := m.scene.see(look{
		axes: geom.Plan(),
		show: func(s *scene, body int) bool {
			mb, ok := s.member(body)
			return ok && !slices.Contains(onSlope(), mb.Kind) && mb.Kind != frame.KindFooting
		},
		hidden: func(s *scene, body int) bool {
			mb, _ := s.member(body)
			return mb.Kind == frame.KindPost
		},
	}).with(wall.picture)
	b := newViewIn("Framing plan", pic, m.origin(), pic.bounds.Union(wall.all))
	b.view.Figures = m.tapeFigures()
	b.title.Note = m.planNote()
	if full {
		m.plateRows(b.Around)
	}
	m.framingRows(b.Around, full)
	if full {
		m.beamRows(b.Around)
	}
	if m.front().Skewed() {
		m.skewRows(b, b.Around)
	} else {
		b.Bottom.Overall(m.front().Name, m.beamPoint(m.front().From), m.beamPoint(m.front().To))
	}
	b.over = func(p *page, v *draw.View) {
		m.drawWall(p, v, wall)
		m.drawRoofStraps(p, v)
	}
	plan := m.planView(b, wall)
	plan.foot = markFoot
	for _, d := range m.details {
		if slices.Contains(d.on, onPlan) && d.at.Y > m.rear().Outer-d.radius {
			plan.deep = markStrip
		}
	}
	b.marks = func(p *page, _ *draw.View) { m.framingMarks(p, plan) }
	return plan
}

// planNote says how the framing plan is seen.
func (m *maker) planNote() string {
	if !m.rear().OnWall {
		return "seen from above, without battens"
	}
	return "seen from above, without battens; wall cut at window height"
}

// planView gives a view of the plan its strip and its north point.
func (m *maker) planView(b *viewBlock, w wallPlan) *planView {
	return &planView{viewBlock: b, wall: w, deep: wordStrip, front: b.Bounds.Y0, toward: m.setting().toward, north: m.job.Site.North, given: m.job.Site.NorthGiven}
}

// origin is the point that all plans share: the left end of the plate on the
// face of the cladding.
func (m *maker) origin() geom.Vec { return geom.V(m.rear().From, 0, 0) }

// rowViews are the views with the rows that a lean framing plan leaves out:
// of the plate and, if it does not end with the plate, of the beam.
func (m *maker) rowViews() []block {
	if m.rear().Back {
		return m.beamViews()
	}
	reach := m.planReach()
	reach.y0 = m.rear().Outer - wallMore
	wall := m.wallPlan(reach)
	b := m.partView("Wall plate", wall, frame.KindPlate)
	b.title.Note = m.rowNote()
	m.plateRows(b.Around)
	b.over = func(p *page, v *draw.View) { m.drawWall(p, v, wall) }
	plan := m.planView(b, wall)
	plan.given = false // the framing plan has the north point
	b.marks = func(p *page, _ *draw.View) { m.wallWords(p, plan) }
	return append([]block{plan}, m.beamViews()...)
}

// beamViews are the view of the beam, if it does not end with the plate, or of
// both beams, if those of a free-standing frame or their posts do not line up.
func (m *maker) beamViews() []block {
	if m.front().Skewed() || m.beamEndsWithPlate() && !m.rearApart() {
		return nil
	}
	beam := m.partView("Beam", wallPlan{picture: picture{scene: m.scene, all: draw.EmptyRect()}}, frame.KindBeam, frame.KindPost)
	beam.title.Note = "seen from above, the rafters on it"
	if m.rear().Back {
		beam.title.Name, beam.view.Name = "Beams", "Beams"
		m.plateRows(beam.Around)
	}
	m.beamRows(beam.Around)
	return []block{beam}
}

// partView is the plan of the members of some kinds and of a wall.
func (m *maker) partView(name string, wall wallPlan, kinds ...frame.Kind) *viewBlock {
	pic := m.scene.see(look{axes: geom.Plan(), show: func(s *scene, body int) bool {
		mb, ok := s.member(body)
		return ok && slices.Contains(kinds, mb.Kind)
	}}).with(wall.picture)
	bounds := pic.bounds
	if !wall.all.Empty() {
		bounds = bounds.Union(wall.all)
	}
	b := newViewIn(name, pic, m.origin(), bounds)
	b.view.Figures = m.tapeFigures()
	return b
}

// beamEndsWithPlate reports whether beam and plate have their ends in line.
func (m *maker) beamEndsWithPlate() bool {
	from, to := m.front().Reach()
	return math.Abs(from-m.rear().From) < sameStick && math.Abs(to-m.rear().To) < sameStick
}

// beamPoint is a point of the beam's outer face.
func (m *maker) beamPoint(x float64) geom.Vec { return geom.V(x, m.front().Outer, 0) }

// beamRows hangs the rows under a plan that are only there if the beam does
// not end with the plate. The rafters' lines start outside the strip of marks.
func (m *maker) beamRows(a *draw.Around) {
	s := m.frame.Setout
	if m.front().Skewed() {
		if from, to := m.beamAt(m.front().From), m.beamAt(m.front().To); !m.beamEndsWithPlate() {
			a.Top.Chain("beam and plate", m.beamPoint(m.rear().From), from, to, m.beamPoint(m.rear().To))
		}
		return
	}
	if m.front().From != m.rear().From {
		deep := func(x float64) geom.Vec { return geom.V(x, s.Rear().Outer, 0) }
		a.Bottom.Running("rafters on beam", deep(m.front().From), alongOf(s.Rafters, deep)...)
	}
	if !m.beamEndsWithPlate() {
		a.Bottom.Chain("beam and plate", m.beamPoint(m.rear().From), m.beamPoint(m.front().From), m.beamPoint(m.front().To), m.beamPoint(m.rear().To))
	}
}

// plateRows hangs the rows of studs and screws over a plan, or of the posts of a
// rear row.
func (m *maker) plateRows(a *draw.Around) {
	j := m.job
	plate := func(x float64) geom.Vec { return geom.V(x, m.rear().Outer, m.rear().Top) }
	if m.rearApart() {
		a.Top.Running("rear post centres", plate(m.rear().From), append(alongOf(m.postsAlong(m.rear()), plate), plate(m.rear().To))...)
	}
	if !m.rear().OnWall {
		return
	}
	var studs, screws []geom.Vec
	for _, x := range j.Wall.Studs {
		if x >= m.rear().From && x <= m.rear().To {
			studs = append(studs, plate(x))
		}
	}
	for _, f := range m.frame.Setout.PlateFixings {
		screws = append(screws, plate(f.Along))
	}
	a.Top.Running(m.studs(), plate(m.rear().From), studs...)
	a.Top.Running(m.screwsTitle(), plate(m.rear().From), screws...)
}

// rearApart reports whether the posts of a rear row do not stand opposite those
// in front.
func (m *maker) rearApart() bool {
	return m.rear().Back && !slices.Equal(m.postsAlong(m.rear()), m.postsAlong(m.front()))
}

// postsAlong are the centres, along, of the posts under a carrier.
func (m *maker) postsAlong(k frame.Carrier) []float64 {
	var out []float64
	for _, i := range k.Posts {
		out = append(out, m.job.Posts.At[i].Along)
	}
	return out
}

// framingRows hangs the other dimension rows on the framing plan; in full, with
// the rafters' upper ends.
func (m *maker) framingRows(a *draw.Around, full bool) {
	s := m.frame.Setout
	plate := func(x float64) geom.Vec { return geom.V(x, s.Rear().Outer, m.rear().Top) }
	from, to := plate(m.rear().From), plate(m.rear().To)
	rafters := alongOf(s.Rafters, plate)
	a.Top.Running("rafter centres", from, append(rafters, to)...)
	a.Top.Equal("rafter spaces", len(rafters)-1, rafters[0], rafters[len(rafters)-1])
	a.Top.Overall(m.rear().Name, from, to)

	if k := m.front(); k.Skewed() {
		left, right := k.Reach()
		a.Left.Running("out, left end", geom.V(left, 0, 0), m.skewOut(left)...)
		a.Right.Running("out, right end", geom.V(right, 0, 0), m.skewOut(right)...)
		m.sectionCut(a)
		return
	}
	posts := alongOf(m.postsAlong(m.front()), m.beamPoint)
	a.Bottom.Running("post centres", m.beamPoint(m.rear().From), append(posts, m.beamPoint(m.rear().To))...)
	out := func(y float64) geom.Vec { return geom.V(0, y, 0) }
	a.Left.Running(m.setting().outRow, out(0), m.outTo(out)...)
	name := "plate, clear, beam"
	if len(m.front().Members) > 1 {
		name = "plate, clear, beam, post, beam"
		if m.job.Posts.Meet.Meeting == frame.TwinChecked {
			name = "plate, clear, beam, gap, beam"
		}
	}
	if m.rear().Inner < 0 {
		name = "packer, " + name
	}
	chain := []geom.Vec{out(0)}
	if rear := m.rear(); rear.Back {
		chain = nil
		name = strings.Replace(name, "plate", "beam", 1)
		if full && s.RafterStart > rear.Inner {
			name, chain = "head, "+name, []geom.Vec{out(s.RafterStart)}
		}
	}
	if s.RafterEnd < s.Front().Outer {
		name += ", tail"
	}
	a.Right.Chain(name, append(chain, m.outTo(out)...)...)
	m.sectionCut(a)
}

// sectionCut marks the plane of the cross-section.
func (m *maker) sectionCut(a *draw.Around) {
	a.Cut(draw.Section{
		A: geom.V(m.sectionX(), 0, 0), B: geom.V(m.sectionX(), m.front().Outer, 0),
		Look: geom.V(1, 0, 0), Letter: "A",
	})
}

// outTo are the distances out that are set out: of the faces of plate and beam,
// and of the rafters' ends if those come farther. The plate's inner face is left
// out where it lies behind the face that they are measured from.
func (m *maker) outTo(at func(y float64) geom.Vec) []geom.Vec {
	out := m.outFrom(at)
	if y := m.rear().Inner; y <= 0 {
		out = append([]geom.Vec{at(y)}, out...)
	}
	return out
}

// beamFaces are the faces of the timbers of a carrier, from the house outwards.
func beamFaces(k frame.Carrier) []float64 {
	if w := k.Section.Width; len(k.Members) > 1 {
		return []float64{k.Inner, k.Inner - w, k.Outer + w, k.Outer}
	}
	return []float64{k.Inner, k.Outer}
}

// outFrom are those but for the plate's inner face.
func (m *maker) outFrom(at func(y float64) geom.Vec) []geom.Vec {
	return append(m.outToBeam(at), m.outToTails(at)...)
}

// outToBeam are those from the plate's outer face to the beam's.
func (m *maker) outToBeam(at func(y float64) geom.Vec) []geom.Vec {
	out := []geom.Vec{at(m.rear().Outer)}
	for _, y := range beamFaces(m.front()) {
		out = append(out, at(y))
	}
	return out
}

// outToTails is that of the rafters' ends beyond the beam, if there.
func (m *maker) outToTails(at func(y float64) geom.Vec) []geom.Vec {
	if y := m.frame.Setout.RafterEnd; y < m.front().Outer {
		return []geom.Vec{at(y)}
	}
	return nil
}

// alongOf places a list of distances along the wall.
func alongOf(xs []float64, at func(float64) geom.Vec) []geom.Vec {
	out := make([]geom.Vec, len(xs))
	for i, x := range xs {
		out[i] = at(x)
	}
	return out
}
