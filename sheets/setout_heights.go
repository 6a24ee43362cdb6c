package sheets

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// postTable gives the heights at which each post is set and cut.
func (m *maker) postTable() draw.Table {
	t := draw.Table{Title: "Post heights", Columns: []draw.Column{
		{Head: "Post"}, {Head: "Mark"}, {Head: "Seat", Align: draw.End}, {Head: "Below level line", Align: draw.End},
		{Head: "Above " + m.floorWords(), Align: draw.End}, {Head: "Foot", Align: draw.End}, {Head: "Length", Align: draw.End},
	}}
	f := m.figures
	for i, b := range m.frame.Of(frame.KindPost) {
		seat := b.Place.O.Z + b.Length
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{
			strconv.Itoa(b.No), b.Mark, f.Level(seat), f.Length(m.rear().Top - seat),
			f.Length(seat - m.job.Floor(m.job.Posts.At[i])), f.Level(b.Place.O.Z), f.Length(b.Length),
		}})
	}
	return t
}

// wallNotes say how the wall and the posts are marked.
func (m *maker) wallNotes() []string {
	j := m.job
	if !m.rear().OnWall {
		return []string{
			fmt.Sprintf("The level line is the top of the rear beam, %s above %s. Carry it from the datum to every post with a laser or a water level, twice; never measure it up from the ground.",
				m.said(m.rear().Top), stated(j.Levels.Datum)),
			fmt.Sprintf("The seat of the front beam is %s below it, that of the rear beam %s. Cut no post before the beams are measured: they are taken as %s and %s deep.",
				m.said(m.rear().Top-m.front().Bottom), m.said(m.rear().Top-m.rear().Bottom), m.said(m.front().Section.Depth), m.said(m.rear().Section.Depth)),
		}
	}
	return []string{
		fmt.Sprintf("The plate's level line is its top edge, %s above %s. Carry it from the datum to both ends, then strike it; never measure it up from boards or ground.",
			m.said(m.rear().Top), stated(j.Levels.Datum)),
		m.screwNote(m.frame.Timber(m.rear())),
		m.walling().marked(m),
		fmt.Sprintf("Carry the line out to every post: the seat of the beam is %s below it. Cut no post before the beam is measured; it is taken as %s deep.",
			m.said(m.rear().Top-m.seatLevel()), m.said(m.front().Section.Depth)),
	}
}

// screwNote says where on the line screws and packers stand.
func (m *maker) screwNote(plate frame.Member) string {
	k := m.job.Plate.Packer
	var down []string
	for _, up := range m.rowsUp() {
		down = append(down, m.said(plate.Section.Depth-up))
	}
	rows := ", in the middle of the plate"
	if len(down) > 1 {
		rows = " by turns, beginning at the left end"
	}
	words := fmt.Sprintf("The %ss stand %s under the line", m.fixer(), joined(down))
	if k.Thickness == 0 {
		return words + rows + "."
	}
	if len(down) == 1 {
		rows = ""
	}
	return words + rows + fmt.Sprintf(". A packer %s, %s thick, is centred on each.", m.saidSize(k.Height, k.Width), m.said(k.Thickness))
}

// postHeights is the front of the posts under a carrier with the level line over
// them, with a scale bar or without.
func (m *maker) postHeights(k frame.Carrier, bar bool) *viewBlock {
	r := m.planReach()
	pic := m.scene.see(look{
		axes: geom.Front(),
		show: func(s *scene, body int) bool {
			b, ok := s.member(body)
			return ok && b.Kind == frame.KindPost && slices.Contains(k.Posts, b.No-1)
		},
	})
	pic.strokes = m.dashedBelow(pic.strokes)
	bounds := pic.bounds.Union(draw.Rect{X0: r.x0, Y0: m.lowest(), X1: r.x1, Y1: m.rear().Top})
	name := "Posts and the level line"
	if m.rear().Back {
		name = upperFirst(strings.TrimSuffix(k.Name, " beam")) + " posts and the level line"
	}
	b := newViewIn(name, pic, m.origin(), bounds)
	b.title.Note = m.setting().seen + "; beam left off"
	b.title.NoBar = !bar
	b.pad.X1 = m.farHeight(k) + strokeRoom
	b.over = func(p *page, v *draw.View) {
		m.holesBelow(p, v, k)
		m.groundThrough(p, v, r)
		m.chainLevel(p, v, r, m.rear().Top)
	}
	b.marks = func(p *page, v *draw.View) { m.heightMarks(p, v, k) }
	return b
}

// dashedBelow turns what the ground hides of the posts into hidden lines.
func (m *maker) dashedBelow(strokes []geom.Stroke) []geom.Stroke {
	var out []geom.Stroke
	for _, st := range strokes {
		if st.A.Y > st.B.Y {
			st.A, st.B = st.B, st.A
		}
		ground := frame.GroundAt(m.job, (st.A.X+st.B.X)/2)
		below := st
		below.Hidden = true
		switch {
		case st.Arc != nil || st.A.Y >= ground:
			out = append(out, st)
		case st.B.Y <= ground:
			out = append(out, below)
		default:
			cut := st.A.Lerp(st.B, (ground-st.A.Y)/(st.B.Y-st.A.Y))
			below.B, st.A = cut, cut
			out = append(out, below, st)
		}
	}
	return out
}

// holesBelow draws the holes, dashed.
func (m *maker) holesBelow(p *page, v *draw.View, k frame.Carrier) {
	for _, b := range m.frame.Of(frame.KindFooting) {
		if !slices.Contains(k.Posts, b.No-1) {
			continue
		}
		r := projectBox(v.Axes, b.Solid().Bounds())
		ground := m.job.Posts.At[b.No-1].Ground
		path := draw.LinePath(draw.Style{Layer: draw.Hidden, Dash: draw.Dashed},
			v.Flat(geom.P(r.X0, ground)), v.Flat(geom.P(r.X0, r.Y0)), v.Flat(geom.P(r.X1, r.Y0)), v.Flat(geom.P(r.X1, ground)))
		path.ID = memberID(b)
		p.sheet.Add(path)
	}
}

// row are the posts under a carrier, left to right.
func (m *maker) row(k frame.Carrier) []frame.Member {
	var out []frame.Member
	for _, i := range k.Posts {
		out = append(out, m.frame.Of(frame.KindPost)[i])
	}
	return out
}

// ground is the finished ground over a reach, in a view from the front.
func (m *maker) ground(v *draw.View, r reach) []geom.Pt {
	var line []geom.Pt
	for _, q := range frame.GroundLine(m.job, r.x0, r.x1) {
		line = append(line, v.Pt(geom.V(q.X, 0, q.Y)))
	}
	return line
}

// groundThrough draws the finished ground over a reach.
func (m *maker) groundThrough(p *page, v *draw.View, r reach) {
	p.sheet.Line(draw.Style{Layer: draw.Context, Pen: draw.Wide}, m.ground(v, r)...)
	m.floorThrough(p, v)
}

// floorThrough draws the slab or deck under the posts that stand on it.
func (m *maker) floorThrough(p *page, v *draw.View) {
	const past = 150 // mm beyond the outer ones
	from, to := math.Inf(1), math.Inf(-1)
	for _, q := range m.job.Posts.At {
		if !q.Dug() {
			from, to = min(from, q.Along-past), max(to, q.Along+past)
		}
	}
	if from < to {
		z := m.job.Levels.Deck
		p.sheet.Line(draw.Style{Layer: draw.Context, Pen: draw.Middle}, v.Pt(geom.V(from, 0, z)), v.Pt(geom.V(to, 0, z)))
	}
}

// chainLevel draws a level as a chain line across the reach.
func (m *maker) chainLevel(p *page, v *draw.View, r reach, z float64) {
	p.sheet.Line(draw.Style{Layer: draw.Centre, Dash: draw.Chain}, v.Pt(geom.V(r.x0, 0, z)), v.Pt(geom.V(r.x1, 0, z)))
}

// Where the heights of a post stand beside it, mm on paper.
const (
	nearHeight  = 5.0  // from the post to the first
	nextHeight  = 6.0  // from its figure to the second
	heightRoom  = 16.0 // beside the second, up to the next post; for a mark at each post
	heightClear = 6.0  // of a line beyond its figure
)

// strokeRoom is the room of a dimension's stroke, mm on paper.
const strokeRoom = 2.0

// farHeight is how far the second height of a post stands from it, mm on paper.
func (m *maker) farHeight(k frame.Carrier) float64 {
	return nearHeight + nextHeight + draw.TextWidth(m.figures.Length(m.rear().Top-k.Bottom), m.hand.FigureHeight(), false)
}

// heightMarks dimensions posts down from the level line and up from the ground:
// each where there is room, else the outer two; the table gives them all.
func (m *maker) heightMarks(p *page, v *draw.View, k frame.Carrier) {
	posts := m.row(k)
	top := m.rear().Top
	far := m.farHeight(k)
	for i, b := range posts {
		last := i == len(posts)-1
		if !last && (posts[i+1].Solid().Bounds().Min.X-b.Solid().Bounds().Min.X)*v.Scale < far+heightRoom {
			continue
		}
		box := b.Solid().Bounds()
		at := func(off, z float64) geom.Vec { return geom.V(box.Max.X+off/v.Scale, box.Min.Y, z) }
		seat, ground := b.Place.O.Z+b.Length, m.job.Floor(m.job.Posts.At[b.No-1])
		end := at(0, seat)
		if (top-seat)*v.Scale >= heightClear {
			draw.Span{View: v, A: end, B: at(nearHeight, top), Dir: draw.Upright, Offset: nearHeight, Beside: true}.Draw(p.sheet, p.hand)
			end = at(nearHeight, seat) // its extension line goes on from there
		}
		if draw.TextWidth(m.figures.Length(seat-ground), p.hand.FigureHeight(), false)+heightClear <= (seat-ground)*v.Scale {
			draw.Span{View: v, A: at(far, ground), B: end, Dir: draw.Upright}.Draw(p.sheet, p.hand)
		}
	}
	x := m.rear().From + (m.rear().To-m.rear().From)*0.35
	p.placer.Label(draw.Label{View: v, At: geom.V(x, 0, top), Text: strings.TrimPrefix(m.setting().lineOf, "the "), Toward: geom.P(0.3, 1)})
	for i, b := range posts {
		if (i > 0 && i < len(posts)-1) && (b.Solid().Bounds().Min.X-posts[i-1].Solid().Bounds().Min.X)*v.Scale < heightRoom {
			continue // the table counts them from the left
		}
		at, edge := onInk(p, v, memberID(b), b.Solid().Bounds().Min.Add(geom.V(b.Section.Width, 0, b.Length*0.55)))
		p.placer.Part(draw.Part{View: v, At: at, Edge: edge, Mark: b.Mark, Toward: geom.P(1, -0.4)})
	}
}
