package sheets

import (
	"fmt"
	"slices"
	"strconv"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// groundReach is how far the ground line goes on beyond the frame, mm on
// paper.
const groundReach = 6.0

// groundLine draws the finished ground as one wide line: from post to post in
// the front elevation, level at the given post in an end elevation.
func (m *maker) groundLine(p *page, v *draw.View, post *frame.Post) {
	out := v.Outline(m.elevationBounds(picture{scene: m.scene, axes: v.Axes, bounds: draw.EmptyRect()}))
	st := draw.Style{Layer: draw.Context, Pen: draw.Wide}
	x0, x1 := out.X0-groundReach, out.X1+groundReach
	if post != nil {
		y := v.Pt(geom.V(post.Along, 0, post.Ground)).Y
		p.sheet.Line(st, geom.P(x0, y), geom.P(x1, y))
		return
	}
	posts := m.job.Posts.At
	first, last := posts[0], posts[len(posts)-1]
	line := []geom.Pt{geom.P(x0, v.Pt(geom.V(0, 0, first.Ground)).Y)}
	for _, q := range posts {
		line = append(line, v.Pt(geom.V(q.Along, 0, q.Ground)))
	}
	line = append(line, geom.P(x1, v.Pt(geom.V(0, 0, last.Ground)).Y))
	p.sheet.Line(st, line...)
}

// namedLevels are the levels of the frame that want says, with the datum.
func (m *maker) namedLevels(want func(frame.Level) bool) []frame.Level {
	out := []frame.Level{{Name: "datum: " + stated(m.job.Levels.Datum), At: geom.V(m.job.Plate.From, 0, 0)}}
	for _, l := range m.frame.Levels {
		if want(l) {
			out = append(out, l)
		}
	}
	return out
}

// nameOpenings letters doors and windows where there is room in them.
func (m *maker) nameOpenings(p *page, v *draw.View) {
	for _, o := range m.job.Wall.Openings {
		name := o.Name
		if name == "" {
			name = o.Kind
		}
		w := draw.TextWidth(name, draw.NoteHeight, false)
		var tries []draw.Rect
		for _, part := range []float64{0.5, 0.4, 0.6, 0.3, 0.7} {
			c := v.Pt(geom.V((o.From+o.To)/2, 0, o.Sill+part*(o.Head-o.Sill)))
			tries = append(tries, draw.Rect{X0: c.X - w/2, Y0: c.Y - draw.NoteHeight/2, X1: c.X + w/2, Y1: c.Y + draw.NoteHeight/2})
		}
		if r, ok := p.placer.FreeBox(tries, 1); ok {
			p.sheet.AddText(draw.Text{Layer: draw.Context, Align: draw.Centred, At: geom.P(r.Centre().X, r.Y0), Height: draw.NoteHeight, String: name})
		}
	}
}

// frontMarks marks what the front elevation shows.
func (m *maker) frontMarks(p *page, v *draw.View, pic picture) {
	part := func(mb frame.Member, at geom.Vec) {
		p.placer.Part(draw.Part{View: v, At: at, Mark: mb.Mark, ID: memberID(mb)})
	}
	for _, mb := range m.frame.Of(frame.KindBeam) {
		part(mb, mb.Place.Point(geom.V(mb.Length/3, 0, mb.Section.Depth/2)))
	}
	posts := m.job.Posts.At
	m.marksAlong(p, v, frame.KindPost, func(i int, mb frame.Member) geom.Vec {
		at := mb.Solid().Bounds().Centre()
		at.Z = posts[i].Ground + (mb.Place.O.Z+mb.Length-posts[i].Ground)*0.6
		return at
	})
	m.marksAlong(p, v, frame.KindFooting, func(i int, mb frame.Member) geom.Vec {
		at := mb.Solid().Bounds().Centre()
		at.Z = posts[i].Ground - 0.6*posts[i].Footing.Depth
		at.X -= 0.3 * mb.Section.Width
		return at
	})
	m.battenWords(p, v, pic)
}

// marksAlong marks the members of a kind; many alike once, with their number.
func (m *maker) marksAlong(p *page, v *draw.View, k frame.Kind, at func(i int, mb frame.Member) geom.Vec) {
	const many = 3
	all := m.frame.Of(k)
	alike := len(all) >= many && !slices.ContainsFunc(all, func(mb frame.Member) bool { return mb.Mark != all[0].Mark })
	for i, mb := range all {
		mark := mb.Mark
		if alike {
			mark = fmt.Sprintf("%s × %d", mb.Mark, len(all))
		}
		way := geom.Pt{}
		if k == frame.KindFooting {
			way = geom.P(-0.6, -1) // away from the marks of the posts
		}
		p.placer.Part(draw.Part{View: v, At: at(i, mb), Mark: mark, ID: memberID(mb), Toward: way})
		if alike {
			return
		}
	}
}

// battenWords says how far the battens run past the end rafters.
func (m *maker) battenWords(p *page, v *draw.View, pic picture) {
	bt, rs := m.frame.Of(frame.KindBatten), m.frame.Of(frame.KindRafter)
	if len(bt) == 0 {
		return
	}
	last := bt[len(bt)-1].Solid().Bounds()
	left := rs[0].Solid().Bounds().Min.X - last.Min.X
	right := last.Max.X - rs[len(rs)-1].Solid().Bounds().Max.X
	words := fmt.Sprintf("battens run past the end rafters by %s at the left and %s at the right", m.figures.Length(left), m.figures.Length(right))
	at, ok := highestEdge(pic, frame.KindBatten)
	if !ok {
		return
	}
	p.placer.Label(draw.Label{View: v, At: at, Text: words, Toward: geom.P(0.5, 1)})
}

// highestEdge is a point on the highest level edge of a kind that a front view
// shows; false if it shows none.
func highestEdge(pic picture, k frame.Kind) (at geom.Vec, ok bool) {
	const along = 0.8 // of the edge, where nothing else points at it
	for _, st := range pic.strokes {
		mb, _ := pic.scene.member(st.Body)
		level := st.A.Y == st.B.Y && st.A.X != st.B.X
		if mb.Kind == k && !st.Hidden && level && (!ok || st.A.Y > at.Z) {
			q := st.A.Lerp(st.B, along)
			at, ok = geom.V(q.X, 0, q.Y), true
		}
	}
	return at, ok
}

// battenEnds fills the ends of battens that are too thin on the paper for two
// lines: of their edges the thinner would keep some and drop others.
func (m *maker) battenEnds(p *page, v *draw.View) {
	const enough = 1.3 // times the least gap between lines
	for _, mb := range m.frame.Of(frame.KindBatten) {
		if mb.Section.Depth*v.Scale > enough*minGap {
			return
		}
		var end []geom.Pt
		for _, q := range []geom.Vec{{}, {Y: mb.Section.Width}, {Y: mb.Section.Width, Z: mb.Section.Depth}, {Z: mb.Section.Depth}} {
			end = append(end, v.Pt(mb.Place.Point(q)))
		}
		p.sheet.FillPolygon(draw.Outline, 1, end)
	}
}

// endMarks marks what an end elevation shows and gives the fall.
func (m *maker) endMarks(p *page, v *draw.View, end int) {
	s := m.frame.Setout
	rafters, posts, footings := m.frame.Of(frame.KindRafter), m.frame.Of(frame.KindPost), m.frame.Of(frame.KindFooting)
	rafter := rafters[0]
	if end > 0 {
		rafter = rafters[len(rafters)-1]
	}
	post, footing := posts[end], footings[end]
	from, to := geom.V(0, s.PlateOuter, m.frame.RafterTop(s.PlateOuter)), geom.V(0, s.BeamInner, m.frame.RafterTop(s.BeamInner))
	const under = 7 // mm on paper, below the rafter
	depth := rafter.Section.Depth / rafter.Place.W.Z * v.Scale
	const room = 46 // mm on paper that the arrow and its figure take
	if (s.PlateOuter-s.BeamInner)*v.Scale > room {
		draw.Fall{View: v, A: from, B: to, Offset: -depth - under, Prefix: "fall "}.Draw(p.sheet, p.hand)
	}
	part := func(mb frame.Member, at geom.Vec) {
		p.placer.Part(draw.Part{View: v, At: at, Mark: mb.Mark, ID: memberID(mb)})
	}
	ground := m.job.Posts.At[end].Ground
	pb, fb := post.Solid().Bounds(), footing.Solid().Bounds()
	part(rafter, rafter.Place.Point(geom.V(rafter.Length/2, 0, rafter.Section.Depth/2)))
	part(post, geom.V(0, (pb.Min.Y+pb.Max.Y)/2, ground+0.5*(pb.Max.Z-ground)))
	part(footing, geom.V(0, fb.Min.Y+0.2*footing.Section.Width, ground-0.6*m.job.Posts.At[end].Footing.Depth))
	plate, beam := m.frame.Of(frame.KindPlate)[0], m.frame.Of(frame.KindBeam)[0]
	for _, mb := range []frame.Member{plate, beam} {
		c := mb.Solid().Bounds().Centre()
		part(mb, geom.V(0, c.Y, c.Z))
	}
}

// markDetails puts the marks of the details on a view that carries them.
func (m *maker) markDetails(p *page, v *draw.View, topic string) {
	m.ringDetails(p, v, topic)
	m.bubbleDetails(p, v, topic)
}

// ringDetails draws the rings of those marks, for words to keep clear of.
func (m *maker) ringDetails(p *page, v *draw.View, topic string) {
	for _, d := range m.details {
		if slices.Contains(d.on, topic) {
			draw.Detail{View: v, At: d.at, Radius: d.radius}.Ring(p.sheet)
		}
	}
}

// bubbleDetails adds the bubbles to the rings.
func (m *maker) bubbleDetails(p *page, v *draw.View, topic string) {
	for _, d := range m.details {
		if slices.Contains(d.on, topic) {
			p.placer.Detail(draw.Detail{
				View: v, At: d.at, Radius: d.radius, Number: strconv.Itoa(d.number), Sheet: p.refs[detailTopic(d.number)], Ringed: true,
			})
		}
	}
}
