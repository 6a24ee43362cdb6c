package sheets

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// groundReach is how far the ground line goes on beyond the frame, mm on
// paper.
const groundReach = 6.0

// groundLine draws the finished ground as one wide line: as it runs along the
// frame in the front elevation, level at the given post in an end elevation.
func (m *maker) groundLine(p *page, v *draw.View, post *frame.Post) {
	bounds := draw.EmptyRect()
	if !m.rear().OnWall { // no house gives the reach
		for _, mb := range m.frame.Members {
			bounds = bounds.Union(projectBox(v.Axes, mb.Solid().Bounds()))
		}
	}
	out := v.Outline(m.elevationBounds(picture{scene: m.scene, axes: v.Axes, bounds: bounds}))
	st := draw.Style{Layer: draw.Context, Pen: draw.Wide}
	x0, x1 := out.X0-groundReach, out.X1+groundReach
	if post != nil {
		y := v.Pt(geom.V(post.Along, 0, post.Ground)).Y
		p.sheet.Line(st, geom.P(x0, y), geom.P(x1, y))
		return
	}
	var line []geom.Pt
	at := func(along, z float64) geom.Pt { return v.Pt(m.front().Point(along, m.front().Outer, z)) }
	zero, one := at(0, 0).X, at(1, 0).X
	for _, q := range frame.GroundLine(m.job, (x0-zero)/(one-zero), (x1-zero)/(one-zero)) {
		line = append(line, at(q.X, q.Y))
	}
	p.sheet.Line(st, line...)
}

// namedLevels are the levels of the frame that want says, with the datum.
func (m *maker) namedLevels(want func(frame.Level) bool) []frame.Level {
	out := []frame.Level{{Name: "datum: " + stated(m.job.Levels.Datum), At: geom.V(m.rear().From, 0, 0)}}
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
func (m *maker) frontMarks(p *page, v *draw.View) {
	posts := m.job.Posts.At
	words := append(m.detailBubbles(p, v, onElevations), func() { m.nameOpenings(p, v) })
	for _, mb := range m.frame.Of(frame.KindBeam) {
		words = append(words, func() {
			m.partMark(p, v, mb, mb.Mark, mb.Place.Point(geom.V(mb.Length/3, 0, mb.Section.Depth/2)))
		})
	}
	words = append(words, m.marksAlong(p, v, m.row(m.front()), func(mb frame.Member) geom.Vec {
		ground := posts[mb.No-1].Ground
		at := mb.Solid().Bounds().Centre()
		at.Z = ground + (mb.Place.O.Z+mb.Length-ground)*0.6
		return at
	})...)
	words = append(words, m.marksAlong(p, v, m.footings(m.front()), func(mb frame.Member) geom.Vec {
		post := posts[mb.No-1]
		at := mb.Solid().Bounds().Centre()
		at.Z = post.Ground - 0.6*post.Footing.Depth
		at.X -= 0.3 * mb.Section.Width
		return at
	})...)
	words = append(append(words, m.braceMarks(p, v)...), m.trimMarks(p, v)...)
	p.cleanestOrder(append(words, func() { m.battenWords(p, v) }, func() { m.roofOnFront(p, v) })...)
}

// partMark marks a member at the point, or where the view draws it nearest to
// that.
func (m *maker) partMark(p *page, v *draw.View, mb frame.Member, mark string, at geom.Vec) {
	on, edge, ok := p.onDrawn(v, mb, at)
	if !ok {
		return
	}
	// Of a small member the scale may have left single lines.
	if edge || !p.enclosed(v, mb, on) {
		on, edge = p.onLine(v, mb, on), true
	}
	part := draw.Part{View: v, At: on, Mark: mark, ID: memberID(mb), Edge: edge}
	if mb.Kind == frame.KindFooting {
		part.Toward = geom.P(-0.6, -1) // away from the marks of the posts
	}
	p.placer.Part(part)
}

// marksAlong marks members in a row; many alike in a row once, with their
// number.
func (m *maker) marksAlong(p *page, v *draw.View, all []frame.Member, at func(mb frame.Member) geom.Vec) []func() {
	const many = 3
	var out []func()
	for _, run := range alikeRuns(all) {
		if len(run) >= many {
			out = append(out, func() { m.partMark(p, v, run[0], fmt.Sprintf("%s × %d", run[0].Mark, len(run)), at(run[0])) })
			continue
		}
		for _, mb := range run {
			out = append(out, func() { m.partMark(p, v, mb, mb.Mark, at(mb)) })
		}
	}
	return out
}

// footings are those of the posts under a carrier.
func (m *maker) footings(k frame.Carrier) []frame.Member {
	var out []frame.Member
	for _, i := range k.Posts {
		if f, ok := m.frame.FootingOf(i); ok {
			out = append(out, f)
		}
	}
	return out
}

// alikeRuns are the members in runs of one mark.
func alikeRuns(all []frame.Member) [][]frame.Member {
	var out [][]frame.Member
	for i, mb := range all {
		if i > 0 && mb.Mark == all[i-1].Mark {
			out[len(out)-1] = append(out[len(out)-1], mb)
		} else {
			out = append(out, []frame.Member{mb})
		}
	}
	return out
}

// battenWords says how far the battens run past the end rafters.
func (m *maker) battenWords(p *page, v *draw.View) {
	words := m.battenReach()
	if words == "" {
		return
	}
	at, ok := p.highestEdge(v, m.frame.Of(frame.KindBatten))
	if !ok { // at this scale their lines are one with those of others
		at, ok = p.highestEdge(v, m.frame.Members)
	}
	if ok {
		p.placer.Label(draw.Label{View: v, At: at, Text: words, Toward: geom.P(0.5, 1)})
	}
}

// battenReach is how far the battens run past the end rafters, in words; none
// without battens.
func (m *maker) battenReach() string {
	bt, rs := m.frame.Of(frame.KindBatten), m.frame.Of(frame.KindRafter)
	if len(bt) == 0 {
		return ""
	}
	last := bt[0].Solid().Bounds() // one on the skew cuts the last ones short
	left := rs[0].Solid().Bounds().Min.X - last.Min.X
	right := last.Max.X - rs[len(rs)-1].Solid().Bounds().Max.X
	f := m.figures
	switch {
	case f.Round(left) == 0 && f.Round(right) == 0:
		return "battens end flush with the end rafters"
	case f.Round(left) == 0:
		return fmt.Sprintf("battens end flush with the left end rafter and run past the right one by %s", f.Length(right))
	case f.Round(right) == 0:
		return fmt.Sprintf("battens end flush with the right end rafter and run past the left one by %s", f.Length(left))
	}
	return fmt.Sprintf("battens run past the end rafters by %s at the left and %s at the right", f.Length(left), f.Length(right))
}

// highestEdge is a point on the highest level edge that a view draws of some
// members; false if it draws none.
func (p *page) highestEdge(v *draw.View, of []frame.Member) (at geom.Vec, ok bool) {
	const along, level = 0.8, 0.01 // of the edge, where nothing else points at it; mm on paper
	var best geom.Pt
	for _, mb := range of {
		for _, line := range p.linesOf(v, mb) {
			for i := 1; i < len(line); i++ {
				a, b := line[i-1], line[i]
				if math.Abs(a.Y-b.Y) > level || a.X == b.X || ok && a.Y <= best.Y {
					continue
				}
				best, ok = geom.P(min(a.X, b.X)+along*math.Abs(b.X-a.X), a.Y), true
				at = moved(v, mb.Place.O, best.Sub(v.Pt(mb.Place.O)))
			}
		}
	}
	return at, ok
}

// onLine is the point of what a view draws of a member that is nearest to at.
func (p *page) onLine(v *draw.View, mb frame.Member, at geom.Vec) geom.Vec {
	return nearestPoint(v, at, p.linesOf(v, mb))
}

// nearestPoint is the point of some lines on the paper that is nearest to a point of
// the model; that point itself where there are none.
func nearestPoint(v *draw.View, at geom.Vec, lines [][]geom.Pt) geom.Vec {
	q := v.Pt(at)
	best, least := q, math.Inf(1)
	for _, line := range lines {
		for i := 1; i < len(line); i++ {
			d := line[i].Sub(line[i-1])
			t := min(max(q.Sub(line[i-1]).Dot(d)/max(d.Dot(d), 1e-9), 0), 1)
			if c := line[i-1].Add(d.Mul(t)); c.Sub(q).Len() < least {
				best, least = c, c.Sub(q).Len()
			}
		}
	}
	return moved(v, at, best.Sub(q))
}

// moved is a point of the model moved in the view plane by so much on paper.
func moved(v *draw.View, at geom.Vec, by geom.Pt) geom.Vec {
	d := by.Mul(1 / v.Scale)
	return at.Add(v.Axes.Right.Mul(d.X)).Add(v.Axes.Up.Mul(d.Y))
}

// enclosed reports whether a point lies between two lines that a view draws of a
// member and has some lines on all sides.
func (p *page) enclosed(v *draw.View, mb frame.Member, at geom.Vec) bool {
	q := v.Pt(at)
	var left, right, over, under bool
	for _, line := range p.linesOf(v, mb) {
		for i := 1; i < len(line); i++ {
			a, b := line[i-1], line[i]
			if (a.Y > q.Y) != (b.Y > q.Y) {
				x := a.X + (q.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X)
				left, right = left || x < q.X, right || x > q.X
			}
			if (a.X > q.X) != (b.X > q.X) {
				y := a.Y + (q.X-a.X)/(b.X-a.X)*(b.Y-a.Y)
				over, under = over || y > q.Y, under || y < q.Y
			}
		}
	}
	return (left && right || over && under) && p.placer.Enclosed(q)
}

// linesOf are the lines that a view draws of a member.
func (p *page) linesOf(v *draw.View, mb frame.Member) [][]geom.Pt {
	return p.linesNamed(v, memberID(mb), mb.Solid())
}

// linesNamed are the lines that a view draws of a body.
func (p *page) linesNamed(v *draw.View, id string, solid geom.Solid) [][]geom.Pt {
	within := v.Outline(projectBox(v.Axes, solid.Bounds())).Expand(1) // other views show it elsewhere
	var out [][]geom.Pt
	for _, it := range p.sheet.Items {
		if it.Path != nil && it.Path.ID == id && it.Path.Stroke && within.Encloses(it.Path.Bounds()) {
			out = append(out, it.Path.Flatten()...)
		}
	}
	return out
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
func (m *maker) endMarks(p *page, v *draw.View, ends []int) {
	s, end := m.frame.Setout, ends[0]-1
	rafters, post := m.frame.Of(frame.KindRafter), m.frame.Of(frame.KindPost)[end]
	rafter := rafters[0]
	if end > 0 {
		rafter = rafters[len(rafters)-1]
	}
	from, to := geom.V(0, s.Rear().Outer, m.frame.RafterTop(s.Rear().Outer)), geom.V(0, s.Front().Inner, m.frame.RafterTop(s.Front().Inner))
	const under = 7 // mm on paper, below the rafter
	depth := rafter.Section.Depth / rafter.Place.W.Z * v.Scale
	const room = 46 // mm on paper that the arrow and its figure take
	fall := func() {
		if (s.Rear().Outer-s.Front().Inner)*v.Scale > room {
			p.placer.Fall(draw.Fall{View: v, A: from, B: to, Offset: -depth - under, Prefix: "fall "})
		}
	}
	ground := m.job.Posts.At[end].Ground
	pb := post.Solid().Bounds()
	part := func(mb frame.Member, at geom.Vec) func() {
		return func() { m.partMark(p, v, mb, mb.Mark, at) }
	}
	plate, beam := m.frame.Timber(m.rear()), m.frame.Timber(m.front())
	marks := []func(){
		fall,
		part(rafter, rafter.Place.Point(geom.V(rafter.Length/2, 0, rafter.Section.Depth/2))),
		part(post, geom.V(0, (pb.Min.Y+pb.Max.Y)/2, ground+0.5*(pb.Max.Z-ground))),
		part(plate, plate.Solid().Bounds().Centre()),
		part(beam, beam.Solid().Bounds().Centre()),
	}
	if f, ok := m.frame.FootingOf(end); ok {
		at := geom.V(0, f.Solid().Bounds().Min.Y+0.2*f.Section.Width, ground-0.6*m.job.Posts.At[end].Footing.Depth)
		marks = slices.Insert(marks, 3, part(f, at))
	}
	for _, no := range ends[1:] {
		rear, _ := m.frame.Member(frame.KindPost, no)
		rb := rear.Solid().Bounds()
		marks = append(marks, part(rear, geom.V(0, (rb.Min.Y+rb.Max.Y)/2, ground+0.5*(rb.Max.Z-ground))))
		if f, ok := m.frame.FootingOf(no - 1); ok {
			marks = append(marks, part(f, geom.V(0, f.Solid().Bounds().Max.Y-0.2*f.Section.Width, ground-0.6*m.job.Posts.At[no-1].Footing.Depth)))
		}
	}
	p.cleanestOrder(marks...)
}

// ringDetails draws the rings of those marks, for words to keep clear of.
func (m *maker) ringDetails(p *page, v *draw.View, topic string) {
	for _, d := range m.details {
		if slices.Contains(d.on, topic) {
			draw.Detail{View: v, At: d.at, Radius: d.radius}.Ring(p.sheet)
		}
	}
}

// detailBubbles add the bubbles to the rings.
func (m *maker) detailBubbles(p *page, v *draw.View, topic string) []func() {
	var out []func()
	for _, d := range m.details {
		if slices.Contains(d.on, topic) {
			out = append(out, func() {
				p.placer.Detail(draw.Detail{
					View: v, At: d.at, Radius: d.radius, Number: strconv.Itoa(d.number), Sheet: p.refs[detailTopic(d.number)], Ringed: true,
				})
			})
		}
	}
	return out
}
