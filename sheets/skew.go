package sheets

import (
	"fmt"
	"math"
	"strconv"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// What the sheets do for a beam that is not parallel with the wall. A section or
// an end elevation asks the frame as cut there; details of beam and posts are seen
// square to the beam; plans have rows along it.

// cutAt is the maker of a view square to the wall at x.
func (m *maker) cutAt(x float64) *maker {
	if !m.frame.Setout.Skewed() {
		return m
	}
	n := *m
	n.frame = m.frame.CutAt(x)
	return &n
}

// squareTo is the maker of views square to the front carrier.
func (m *maker) squareTo() *maker {
	if !m.front().Skewed() {
		return m
	}
	n := *m
	n.frame = m.frame.SquareTo()
	n.scene = newScene(n.frame)
	n.scene.watch = m.scene.watch
	return &n
}

// drawnBy is the maker that draws a detail, and the detail as it has it: what
// joins posts or beams to each other, under a beam on the skew, is seen square
// to that.
func (m *maker) drawnBy(d detail) (*maker, detail) {
	a := m.frame.Members[d.joint.A]
	post := a
	if a.Kind == frame.KindBeam && d.joint.B >= 0 {
		post = m.frame.Members[d.joint.B]
	}
	if post.Kind != frame.KindPost || !m.frame.Setout.Under(post.No-1).Skewed() {
		return m, d
	}
	n := m.squareTo()
	turned := map[frame.Joint]frame.Joint{}
	for i, j := range m.frame.Joints {
		turned[j] = n.frame.Joints[i]
	}
	d.joint = turned[d.joint]
	alike := d.alike
	d.alike = make([]frame.Joint, len(alike))
	for i, j := range alike {
		d.alike[i] = turned[j]
	}
	d.at = d.joint.At
	return n, d
}

// besideRafter is where the section of a frame on the skew stands: at the left
// face of a rafter, as near to the middle as it cuts no post, so that what it
// shows of that rafter is all but what the plane cuts.
func (m *maker) besideRafter(middle, last float64) float64 {
	const before = 6 // mm: cutsStick keeps nearly as much clear
	best, found := 0.0, math.Inf(1)
	for _, r := range m.frame.Of(frame.KindRafter)[1:] {
		x := r.Place.O.X - before
		if far := math.Abs(x - middle); far < found && x < last && !m.cutsStick(x, wholeInSection()) {
			best, found = x, far
		}
	}
	if math.IsInf(found, 1) {
		return m.frame.Of(frame.KindRafter)[1].Place.O.X - before
	}
	return best
}

// centre is the middle of a post in plan.
func (m *maker) centre(post int) geom.Vec { return m.postCentres()[post] }

// beamAt is a point of the beam's outer face at a place along it.
func (m *maker) beamAt(along float64) geom.Vec {
	k := m.front()
	return k.Point(along, k.Outer, 0)
}

// skewRows are the rows of the framing plan under a beam on the skew: its length
// and its posts along it, then how far out its ends are.
func (m *maker) skewRows(b *viewBlock, a *draw.Around) {
	k := m.front()
	from, to := m.beamAt(k.From), m.beamAt(k.To)
	rows := draw.NewSlopedRowsUnder(b.view, from, to)
	rows.Within = true // titles on the line, clear of the rows beside the plan
	rows.Chain("posts along beam", append(append([]geom.Vec{from}, alongOf(m.postsAlong(k), m.beamAt)...), to)...)
	rows.Overall(k.Name, from, to)
	a.Sloped = append(a.Sloped, rows)
}

// skewOut are, in the frame as cut at a place along the wall, the distances out
// to dimension there.
func (m *maker) skewOut(x float64) []geom.Vec {
	return m.cutAt(x).outTo(func(y float64) geom.Vec { return geom.V(x, y, 0) })
}

// skewNotes say how a frame with a beam on the skew is made.
func (m *maker) skewNotes() []string {
	k := m.front()
	if !k.Skewed() {
		return nil
	}
	from, to := k.Reach()
	side := "right"
	left, right := -k.Cut(from).Outer, -k.Cut(to).Outer
	if left < right {
		side = "left"
	}
	words := fmt.Sprintf("The %s is not parallel with %s: its outer face is %s out at the left end and %s at the right, turned by %s. The rafters are square to %s.",
		k.Short, m.setting().base, m.said(left), m.said(right), m.figures.Angle(math.Abs(k.Turn)), m.setting().base)
	out := []string{words}
	if m.frame.Slope.Angle > 0 {
		out = append(out, fmt.Sprintf("The fall is %s, %s, the same on every rafter. Their top edges lie in one plane and the %s is level: along it they lie lower the farther out they come to it, %s in all. At its %s end, which is nearest, their tops are %s below its own.",
			m.figures.Angle(m.frame.Slope.Angle), m.figures.Slope(m.frame.Slope.Angle), k.Short, m.said(m.frame.Setout.Steps(k)), side, m.said(k.Drop)))
	} else {
		out = append(out, fmt.Sprintf("Rafters and %s are level.", k.Short))
	}
	if rs := m.frame.Of(frame.KindRafter); rs[0].Mark != rs[len(rs)-1].Mark {
		out = append(out, fmt.Sprintf("The rafters are %s to %s from left to right: each has a length of its own.", rs[0].Mark, rs[len(rs)-1].Mark))
	}
	if m.hasBattens() {
		out = append(out, fmt.Sprintf("The battens are parallel with %s. Those that the %s cuts short end flush with the last rafter that carries them.", m.setting().base, k.Short))
	}
	return out
}

// stringMeets is where the string line of a row of posts on the skew meets the
// lines that are squared off at L and at R.
func (m *maker) stringMeets(k frame.Carrier) (atL, atR geom.Vec) {
	l, r := m.fixedPoints()
	at := func(x float64) geom.Vec { return k.Point(k.Meets(x, k.PostOuter), k.PostOuter, l.Z) }
	return at(l.X), at(r.X)
}

// deckNear is how near to the string, mm of the model, the edge of a deck would
// stand in the way of its rows.
const deckNear = 1000

// skewSetoutRows hangs the rows of the set-out plan where the string is not
// parallel with the wall: along it, and out at both its ends.
func (m *maker) skewSetoutRows(a *draw.Around) {
	k := m.front()
	left, right := m.fixedPoints()
	l, r := m.stringMeets(k)
	posts := m.centresOf(k)
	low := k.PostOuter // of the holes, before the string
	for _, i := range k.Posts {
		if f, ok := m.frame.FootingOf(i); ok {
			low = min(low, k.PostOuter+(m.job.Posts.Section.Depth-f.Section.Depth)/2)
		}
	}
	clear, deck := math.Inf(1), -m.job.Levels.DeckOut // y that the rows stay beyond
	if len(m.job.Site.KeepOuts) > 0 {
		clear = a.Bounds.Y0
	} else if deck < 0 && deck > min(l.Y, r.Y)-deckNear {
		clear = deck
	}
	if deck < 0 && deck < a.Bounds.Y0+deckNear {
		clear = min(clear, a.Bounds.Y0)
	}
	if high := max(l.Y, r.Y); clear < high+low-k.PostOuter {
		low = k.PostOuter + (clear-high)/k.Lies.U.X
	}
	down := func(p geom.Vec) geom.Vec { return p.Add(k.Lies.V.Mul(low - k.PostOuter)) }
	rows := draw.NewSlopedRowsUnder(a.View, down(l), down(r))
	rows.Within = true                                            // titles on the line, clear of the rows beside the plan
	rows.Chain("", append(append([]geom.Vec{l}, posts...), r)...) // the table has them running
	a.Sloped = append(a.Sloped, rows)

	a.Left.Running("out at L", left, append(rearFirst(m.centresOf(m.rear())), l)...)
	a.Right.Running("", right, r)
	var corner []geom.Vec
	for _, r := range m.job.Wall.Returns {
		corner = append(corner, geom.V(r.At, 0, left.Z))
	}
	if rear := m.centresOf(m.rear()); len(rear) > 0 {
		a.Top.Running("rear post centres", left, append(rear, right)...)
	}
	a.Top.Chain("fixed points", append(corner, left, right)...)
}

// skewString are the ends of that string, at its profiles.
func (m *maker) skewString(k frame.Carrier) (from, to geom.Vec) {
	const beyond = 250 // mm: less than the wall is drawn beyond the plate, so that rows stand clear
	at := m.postsAlong(k)
	l, r := m.fixedPoints()
	x0, x1 := min(at[0]-m.job.Posts.Section.Width/2, k.Meets(l.X, k.PostOuter)), max(at[len(at)-1]+m.job.Posts.Section.Width/2, k.Meets(r.X, k.PostOuter))
	return k.Point(x0-beyond, k.PostOuter, 0), k.Point(x1+beyond, k.PostOuter, 0)
}

// drawSkewString draws it: at a post it lies on its outer face, which is drawn
// already. It begins no farther left than x0 along the wall.
func (m *maker) drawSkewString(p *page, v *draw.View, k frame.Carrier, x0 float64) {
	style := draw.Style{Layer: draw.Centre, Pen: draw.Narrow, Dash: draw.Chain}
	half := m.job.Posts.Section.Width / 2
	from, end := m.skewString(k)
	if from.X < x0 {
		from = k.Point(k.Meets(x0, k.PostOuter), k.PostOuter, 0)
	}
	for _, x := range m.postsAlong(k) {
		p.sheet.Line(style, v.Pt(from), v.Pt(k.Point(x-half, k.PostOuter, 0)))
		from = k.Point(x+half, k.PostOuter, 0)
	}
	p.sheet.Line(style, v.Pt(from), v.Pt(end))
}

// endCutWords say how a rafter's end is cut along a carrier.
func (m *maker) endCutWords(k frame.Carrier) string {
	fall := m.frame.Slope.Angle
	switch {
	case k.Skewed() && fall > 0:
		return fmt.Sprintf("Compound end cut: plumb, %s off square on the sides, and skew, the blade tilted by %s", m.figures.Angle(fall), m.figures.Angle(math.Abs(k.Turn)))
	case k.Skewed():
		return "Skew end cut: " + m.figures.Angle(math.Abs(k.Turn)) + " off square across the top edge"
	case fall > 0:
		return "Plumb end cut: saw set " + m.figures.Angle(fall) + " off square"
	}
	return "Square end cut"
}

// fromAbove is a housing on the skew in plan, the rafter in it.
func (h housed) fromAbove() *viewBlock {
	k := h.carrier
	w := h.housing.Width
	crop := everywhere()
	crop.Min.X, crop.Max.X = h.x-w*(0.5+besideIt), h.x+w*(0.5+besideIt)
	crop.Max.Y = h.face - h.in*rafterStub*h.rafter.Section.Depth
	b := h.closeUp(closeUp{
		name: "From above", axes: geom.Plan(), cut: true,
		at: h.at(h.face, (h.top+h.mouth.Z)/2), show: only(h.rafter, h.timber), crop: crop,
	})
	b.title.Note = fmt.Sprintf("cut through the rafter, %s off square", h.figures.Angle(math.Abs(k.Turn)))
	along := k.Meets(h.x, k.Inner)
	inner := func(off float64) geom.Vec { return k.Point(along+off, k.Inner, h.mouth.Z) }
	outer := func(off float64) geom.Vec { return k.Point(along+off, k.Outer, h.mouth.Z) }
	rows := draw.NewSlopedRowsUnder(b.view, outer(-w), outer(w))
	rows.Chain("", inner(-w/2), inner(0), inner(w/2)).Overall("", inner(-w/2), inner(w/2))
	b.Sloped = append(b.Sloped, rows)
	return b
}

// hungOnSkew is the face of a carrier on the skew where a rafter butts against it.
func (o laidOver) hungOnSkew(joint frame.Joint) *viewBlock {
	k, x := o.carrier, o.x
	under, top := o.underside(k.Cut(x)), o.top(k.Cut(x).Inner).Z
	n := o.squareTo()
	for i, j := range o.frame.Joints {
		if j == joint {
			s := n.laidOver(n.frame.Joints[i])
			s.x = k.Meets(x, k.Inner)
			return s.hungFaceAt(under, top, s.rafter.Section.Width/math.Cos(k.Turn))
		}
	}
	return o.hungFace()
}

// battenRuns marks battens of several lengths, each run of alike ones once.
func (m *maker) battenRuns(p *page, v *draw.View, all []frame.Member) {
	var words []func()
	for _, run := range alikeRuns(all) {
		mark, mb := run[0].Mark, run[0]
		if len(run) > 1 {
			mark = fmt.Sprintf("%s × %d", mark, len(run))
		}
		words = append(words, func() { m.partMark(p, v, mb, mark, m.markPoint(mb)) })
	}
	p.cleanestOrder(words...)
}

// skewWork is the cut of an end that is turned across the width: where it meets
// the main face, and by how much the stick is longer or shorter on the other side.
func (s *timber) skewWork(w work, c frame.EndCut) work {
	d, here, there := s.Section.Depth, 0.0, s.Section.Width
	faces := s.Faces()
	other := faces[1]
	if w.face == faces[1] {
		here, there, other = there, here, faces[0]
	}
	top, bottom := c.Meets(s.Member, here, d), c.Meets(s.Member, here, 0)
	w.how = c.Cut
	if c.Slope == 0 {
		w.stops = []stop{{firstEdge, top}}
	} else {
		w.stops = []stop{{firstEdge, min(top, bottom)}, {secondEdge, max(top, bottom)}}
		w.how += ", long point " + string(s.longPoint(c))
	}
	w.spot = s.OnFace(w.face, top, s.across(w.face))
	more := c.Meets(s.Member, there, d) - top
	if c.End == frame.FaceStart {
		more = -more
	}
	than := "longer"
	if more < 0 {
		than = "shorter"
	}
	w.how += fmt.Sprintf("; %s %s on the %s", s.fine.Length(math.Abs(more)), than, s.sideName(other))
	return w
}

// skewSizes are what the table of housings says of those on the skew: which they
// are, how their sides lean and how their floors fall along the timber.
func (s *timber) skewSizes(h frame.Housing) []string {
	lean, falls := "left", "left"
	if h.Skew > 0 {
		lean = "right"
	}
	if h.Rise < 0 {
		falls = "right"
	}
	along := "level"
	if h.Rise != 0 {
		along = s.fine.Angle(math.Abs(h.Rise)) + " to the " + falls
	}
	return []string{s.fine.Angle(math.Abs(h.Skew)) + " to the " + lean, along}
}

// housingNumber is the number of a housing in the marking list.
func (s *timber) housingNumber(h frame.Housing) int {
	n := 1
	for _, f := range s.Features {
		if o, ok := f.(frame.Housing); ok && o.At < h.At {
			n++
		}
	}
	return n
}

// endCut says how a rafter's end is cut at a carrier, to follow "cut".
func (m *maker) endCut(k frame.Carrier) string {
	turn := m.figures.Angle(math.Abs(k.Turn))
	switch {
	case k.Skewed() && m.frame.Slope.Angle > 0:
		return "plumb and on the skew, with the saw at " + m.figures.Angle(m.frame.Slope.Angle) + " and its blade tilted by " + turn
	case k.Skewed():
		return "on the skew, with the saw at " + turn
	}
	return m.plumbOrSquare()
}

// skewHousings say what is cut into a carrier on the skew for the rafters.
func (m *maker) skewHousings(k frame.Carrier) string {
	t := m.carrier(k)
	h := housingOf(t)
	low, high := math.Inf(1), math.Inf(-1)
	for _, f := range t.Features {
		if g, ok := f.(frame.Housing); ok {
			low, high = min(low, g.Floor), max(high, g.Floor)
		}
	}
	floor := m.saidTape(low) + " above the lower edge"
	if m.figures.Round(high-low) != 0 {
		floor = fmt.Sprintf("from %s to %s above the lower edge, as the drawing of %s has them", m.saidTape(low), m.saidTape(high), t.Mark)
	}
	return fmt.Sprintf("Cut a housing at each in its %s: %s wide along the face, %s deep, its sides on the skew along the rafter's, the floors %s.",
		m.frame.FaceWord(k.Kind, frame.FaceHouse), m.saidTape(h.Width), m.saidTape(h.Depth), floor)
}

// skewBeam says how a beam on the skew is cut and marked.
func (m *maker) skewBeam(k frame.Carrier) string {
	t, at := m.carrier(k), m.frame.Setout.Rafters
	along := func(x float64) string {
		return m.saidTape(t.Place.Local(k.Point(k.Meets(x, k.Face()), k.Face(), 0)).X)
	}
	return fmt.Sprintf("Cut %s to %s from long point to long point%s, both ends %s on the skew, so that they lie along the end rafters. Mark the rafters along its %s from the long point of its left end: the first at %s, the last at %s. The plate's figures do not fit here: the drawing of %s has them all.",
		t.Mark, m.said(t.Length), m.joinWords(frame.KindBeam), m.figures.Angle(math.Abs(k.Turn)), m.frame.FaceWord(k.Kind, frame.FaceHouse), along(at[0]), along(at[len(at)-1]), t.Mark)
}

// saySkewString says how the string is stretched where it is not parallel with the
// wall, and what is marked along it.
func (m *maker) saySkewString(k frame.Carrier) []string {
	l, _ := m.fixedPoints()
	a, b := m.stringMeets(k)
	start := k.Meets(l.X, k.PostOuter)
	return []string{
		fmt.Sprintf("Square off at R in the same way. Stretch a string from %s out at L to %s out at R, along the outer faces of the %s, on profiles well clear of the "+m.digs()+".", m.saidTape(l.Y-a.Y), m.saidTape(l.Y-b.Y), m.frontPosts()),
		fmt.Sprintf("From the square line at L mark the post centres along the string: %s. The centres lie %s inside it, square to the string.", m.saidList(start, m.postsAlong(k)), m.saidTape(m.job.Posts.Section.Depth/2)),
	}
}

// skewPattern says how the first of rafters that all have lengths of their own is
// cut and tried.
func (m *maker) skewPattern(line float64, cuts string) []string {
	return []string{
		fmt.Sprintf("Measure the clear distance from %s to %s at every rafter, along its middle. The table has what the drawings have.", m.rear().Short, m.front().Short),
		fmt.Sprintf("Cut rafter 1 first, %s along its top left arris%s. Each of the others has a length of its own: its drawing has it.", m.saidTape(line), cuts),
		fmt.Sprintf("Try it at its place: it bears at both ends, and its top stands %s at the %s.", m.dropWords(m.rear().Top-m.frame.RafterTop(m.rear().Outer)), m.rear().Short),
	}
}

// clearAt is the clear distance from plate to beam at the middle of a rafter.
func (m *maker) clearAt(rafter int) float64 {
	s := m.frame.Setout
	return s.Rear().Outer - s.Front().Cut(s.Rafters[rafter]).Inner
}

// skewClearTable asks for that distance at each rafter; it is drawn as another at
// each.
func (m *maker) skewClearTable() draw.Table {
	t := draw.Table{Title: fmt.Sprintf("Clear from %s to %s", m.rear().Short, m.front().Short)}
	n, groups := len(m.frame.Setout.Rafters), 2
	for range groups {
		t.Columns = append(t.Columns, draw.Column{Head: "Rafter"}, draw.Column{Head: "Drawn", Align: draw.End}, draw.Column{Head: "Found", Width: handWidth})
	}
	deep := (n + groups - 1) / groups
	for r := range deep {
		var row draw.TableRow
		for g := range groups {
			if i := g*deep + r; i < n {
				row.Cells = append(row.Cells, strconv.Itoa(i+1), m.figures.Length(m.clearAt(i)), "")
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// countRuns is how many battens run over all rafters.
func countRuns(s frame.Setout) int {
	n := 0
	for _, r := range s.BattenRuns {
		if r == [2]int{0, len(s.Rafters) - 1} {
			n++
		}
	}
	return n
}

// turnedHole is the outline of a square hole that is turned with its post.
func turnedHole(v *draw.View, mb frame.Member) []geom.Pt {
	var out []geom.Pt
	for _, c := range []geom.Vec{{}, {Y: mb.Section.Width}, {Y: mb.Section.Width, Z: mb.Section.Depth}, {Z: mb.Section.Depth}} {
		out = append(out, v.Pt(mb.Place.Point(c)))
	}
	return out
}

// oneLine is how far apart, mm of the model, the edges of an end on the skew are
// that a member drawing shows as one line.
const oneLine = 12

// datumPoint is the point of a face on the cut of the datum end: at the first of
// some distances across the face where the picture has an edge there, since
// another cut may have taken a part of the end away.
func (s *timber) datumPoint(pic picture, face frame.Face, across ...float64) geom.Vec {
	var first geom.Vec
	cut := s.EndCut(frame.FaceStart)
	onFace := func(at float64) geom.Vec {
		p := s.OnFace(face, 0, at)
		p.X = cut.Meets(s.Member, p.Y, p.Z)
		return p
	}
	whole := true // the end's edge on the face, at all the places
	for _, at := range across {
		whole = whole && pic.hasEdge(onFace(at))
	}
	for i, at := range across {
		p := onFace(at)
		if plane, _ := s.FacePlane(face); plane.N.Y != 0 && cut.Plan != 0 && !whole {
			long := min(cut.Meets(s.Member, 0, p.Z), cut.Meets(s.Member, s.Section.Width, p.Z))
			if p.X-long < oneLine { // on the paper both edges are one, and that of the long point is whole
				p.X = long
			}
		}
		if pic.hasEdge(p) {
			return p
		}
		if i == 0 {
			first = p
		}
	}
	return first
}
