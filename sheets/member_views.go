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

// unfolded is a member's faces, unfolded in third-angle arrangement: the main
// face in its middle, the face over it above, the one under it below, the end
// beside it. Every face is seen from outside the timber. The reference point
// is that of the main face: the datum end's corner.
//
//	           ┌────────────────────────┐
//	           │ face over it           │
//	           └────────────────────────┘
//	datum end  ┌────────────────────────┐  ┌───┐
//	     ──────┤ main face              │  │end│
//	           └────────────────────────┘  └───┘
//	           ──o──────>──>──>─────────>  running dimensions
type unfolded struct {
	stick *timber
	faces []*viewBlock // from the top
	main  int
	end   *viewBlock // beside the main face or, on small paper, under the far end; nil: none
	title draw.Title
	shown stretches

	standings map[fitKey]standing
}

// faceGap is the distance between two unfolded faces with everything round
// them, mm on paper (own): small, so that they read as one stick rolled over.
const (
	faceGap = 3.0
	endGap  = 10.0 // to the end view
)

// mainFace is the face that carries most of the work.
func (s *timber) mainFace() frame.Face {
	f := s.Faces()
	if s.Kind == frame.KindBatten || s.Kind == frame.KindLath || s.Kind == frame.KindSlat {
		return f[3] // where they are screwed through
	}
	best := map[frame.Kind]frame.Face{frame.KindPacker: f[2]}[s.Kind]
	if best == "" {
		best = f[0]
	}
	most := 0
	for _, face := range f {
		if s.Kind == frame.KindPost && (face == f[2] || face == f[3]) {
			continue // a post is laid out on its side, where the shape of its top shows
		}
		if n := s.workOn(face); n > most {
			best, most = face, n
		}
	}
	return best
}

// workOn counts the pieces of work that are marked on a face, housings double,
// since their shape shows there alone.
func (s *timber) workOn(face frame.Face) int {
	n := 0
	for _, f := range s.Features {
		switch f := f.(type) {
		case frame.Housing:
			if f.Face == face {
				n += 2
			}
		case frame.BraceHousing:
			switch face {
			case f.Face:
				n++
			case s.openSide(f):
				n += 2
			}
		case frame.Hole:
			if f.Face == face {
				n++
			}
		case frame.SeatCut:
			if face == s.Faces()[2] {
				n++
			}
		case frame.Check:
			if face == s.Faces()[0] {
				n++ // its side view shows how deep it is
			}
		case frame.CheckOut:
			if f.Face == face {
				n++
			}
		}
	}
	if s.Kind == frame.KindRafter && face == s.Faces()[2] {
		return min(n, 1) - 1 // a rafter is laid out on its side
	}
	return n
}

// right is the way along the paper: from the datum end, unless the main face
// would then stand on its head.
func (s *timber) right() geom.Vec {
	u := geom.V(1, 0, 0)
	if s.Kind != frame.KindPost && s.Kind != frame.KindPacker && s.mainFace() == s.Faces()[1] {
		return u.Neg()
	}
	return u
}

// facing are the axes in which a long face is seen from outside.
func (s *timber) facing(face frame.Face) geom.View {
	p, _ := s.FacePlane(face)
	right := s.right()
	return geom.View{Right: right, Up: p.N.Cross(right), Toward: p.N}
}

// beside names the face whose outward normal is n.
func (s *timber) towards(n geom.Vec) frame.Face {
	for _, f := range s.Faces() {
		if p, _ := s.FacePlane(f); p.N.Dot(n) > 0.5 {
			return f
		}
	}
	return ""
}

// unfold makes the drawing in n parts, each with both ends of the member and a
// stretch of what is between.
func (s *timber) unfold(ws []work, n int) []*unfolded {
	busy := s.busy()
	if n > len(busy)/2 {
		return nil
	}
	var out []*unfolded
	lo := 0.0
	for i, hi := range append(cutUp(busy, n), s.Length) {
		u := s.unfoldPart(ws, within(busy, lo, hi))
		if n > 1 {
			u.title.Name += fmt.Sprintf(", part %d of %d", i+1, n)
			u.faces[u.main].view.Name = u.title.Name
		}
		out = append(out, u)
		lo = hi
	}
	return out
}

// shows reports whether a place along the member is drawn.
func (s stretches) shows(u float64) bool {
	return slices.ContainsFunc(s.busy, func(b span) bool { return u >= b.lo-onTear && u <= b.hi+onTear })
}

// unfoldPart makes the views of one part.
func (s *timber) unfoldPart(ws []work, shown stretches) *unfolded {
	u := &unfolded{stick: s, shown: shown, standings: map[fitKey]standing{}}
	main := s.facing(s.mainFace())
	over, under := s.towards(main.Up), s.towards(main.Up.Neg())
	if s.workOn(over) > 0 || s.opensTo(over) {
		u.faces = append(u.faces, s.faceView(over, ws, shown))
	}
	u.main = len(u.faces)
	u.faces = append(u.faces, s.faceView(s.mainFace(), ws, shown))
	if s.workOn(under) > 0 || s.opensTo(under) {
		u.faces = append(u.faces, s.faceView(under, ws, shown))
	}
	s.hangRows(u, ws)
	if s.workOnEnd() {
		u.end = s.endView(main)
		if u.end.title.NoBar = true; s.smallPaper() { // it stands by itself
			u.end.title.Name = upperFirst(s.endName(frame.FaceEnd))
			u.end.Title = &u.end.title
		}
	}
	v := u.faces[u.main].view
	u.title = draw.Title{View: v, Name: s.Mark + " " + string(s.Kind), Note: s.titleNote(), Under: s.smallPaper()}
	v.Name = u.title.Name
	return u
}

// opensTo reports whether a housing opens to a face.
func (s *timber) opensTo(face frame.Face) bool {
	for _, f := range s.Features {
		if _, ok := f.(frame.Housing); ok && face == s.Faces()[3] {
			return true
		}
	}
	return false
}

// workOnEnd reports whether the far end has work that no long face shows.
func (s *timber) workOnEnd() bool {
	for _, f := range s.Features {
		if h, ok := f.(frame.Hole); ok && h.Face == frame.FaceEnd {
			return true
		}
	}
	return false
}

// faceView is one long face with what is marked on it.
func (s *timber) faceView(face frame.Face, ws []work, shown stretches) *viewBlock {
	axes := s.facing(face)
	pic := s.scene().see(look{axes: axes, hidden: func(*scene, int) bool { return true }})
	stick := geom.Box3{Max: geom.V(s.Length, s.Section.Width, s.Section.Depth)} // its waste is drawn too
	b := newViewIn(s.frame.FaceWord(s.Kind, face), pic, geom.Vec{}, pic.bounds.Union(projectBox(axes, stick)))
	b.Title = nil
	b.view.Name = s.Mark + ", " + s.frame.FaceWord(s.Kind, face)
	b.view.Figures = s.fine
	near := draw.Left
	if s.right().X < 0 {
		near = draw.Right
	}
	across := s.across(face)
	n := b.note(near)
	n.Width, n.Offset = s.faceWidth(), faceOffset
	name := fmt.Sprintf("%s\n(%s up)", s.sideName(face), s.sideName(s.towards(axes.Up)))
	if face != s.mainFace() {
		n.Width, name = 0, strings.ReplaceAll(name, "\n", " ")
	}
	n.Add(name, s.datumPoint(pic, face, across*nameUp, across*(datumUp+nameUp)/2))
	b.under = func(p *page, v *draw.View) { s.underFace(p, v, face, shown) }
	b.over = func(p *page, v *draw.View) { s.overFace(p, v, face, shown) }
	if face == s.mainFace() {
		n.Add(fmt.Sprintf("Datum end (%s): hook the tape here", s.endName(frame.FaceStart)), s.datumPoint(pic, face, across*datumUp, across*nameUp))
		b.marks = func(p *page, v *draw.View) { s.flags(p, v, ws, shown) }
	}
	return b
}

// sideName is what a face is called on a member's drawing.
func (s *timber) sideName(f frame.Face) string {
	if f == frame.FaceLeft || f == frame.FaceRight {
		return string(f) + " side"
	}
	return s.frame.FaceWord(s.Kind, f)
}

// flags sets the flag of each hold on the first cut that waits for it; the
// marking list has them all.
func (s *timber) flags(p *page, v *draw.View, ws []work, shown stretches) {
	holds := s.holdsOf(ws)
	for i, h := range holds {
		for _, w := range ws {
			if w.hold == h.key && shown.shows(w.spot.X) {
				p.placer.Part(draw.Part{View: v, At: w.spot, Mark: "H" + strconv.Itoa(i+1), Edge: true, Flag: true})
				break
			}
		}
	}
}

// Sizes of the words beside the faces, mm on paper, and at which part of the
// height of the face their leaders end.
const (
	faceOffset = 12.0
	nameUp     = 0.35
	datumUp    = 0.75
)

// faceWidth is the width of the words beside the faces, mm on paper.
func (s *timber) faceWidth() float64 {
	const usual, narrow = 26, 19
	if s.smallPaper() {
		return narrow
	}
	return usual
}

// endView is the far end, seen from outside, beside the main face.
func (s *timber) endView(main geom.View) *viewBlock {
	toward := geom.V(1, 0, 0)
	axes := geom.View{Right: main.Up.Cross(toward), Up: main.Up, Toward: toward}
	b := newView(s.endName(frame.FaceEnd), s.scene().see(look{axes: axes}), geom.Vec{})
	b.Title = nil
	b.view.Figures = s.fine
	b.view.Name = s.Mark + ", " + s.endName(frame.FaceEnd)
	var us, vs []geom.Vec
	for _, f := range s.Features {
		switch f := f.(type) {
		case frame.Hole:
			if f.Face == frame.FaceEnd {
				us = append(us, f.Mouth)
			}
		case frame.Chamfer:
			us = append(us, geom.V(s.Length, 0, f.Seat))
		}
	}
	vs = us
	o := s.OnFace(frame.FaceEnd, 0, 0)
	w := s.OnFace(frame.FaceEnd, s.Section.Width, 0)
	d := s.OnFace(frame.FaceEnd, 0, s.Section.Depth)
	dims := func(r *draw.Rows, to geom.Vec) {
		var in []geom.Vec
		dir := to.Sub(o).Unit()
		for _, q := range vs {
			if x := q.Sub(o).Dot(dir); x > onTear {
				in = append(in, q)
			}
		}
		if len(in) > 0 {
			r.Running("", o, append(in, to)...)
			return
		}
		r.Overall("", o, to)
	}
	if math.Abs(axes.Right.Y) > 0.5 {
		dims(b.row(draw.Bottom), w)
		dims(b.row(draw.Right), d)
	} else {
		dims(b.row(draw.Bottom), d)
		dims(b.row(draw.Right), w)
	}
	return b
}

// hangRows hangs the running dimensions on the outermost faces: one row for
// joints, one for cuts, one for fixings, all from the datum end.
func (s *timber) hangRows(u *unfolded, ws []work) {
	low, high := u.faces[len(u.faces)-1].row(draw.Bottom), u.faces[0].row(draw.Top)
	low.Within, high.Within = s.smallPaper(), s.smallPaper()
	at := func(row *draw.Rows, title string, us ...float64) {
		if len(us) == 0 {
			return
		}
		pts := make([]geom.Vec, len(us))
		for i, x := range us {
			pts[i] = geom.V(x, 0, 0)
		}
		row.Running(title, geom.Vec{}, pts...)
	}
	places := func(p pass) []float64 {
		var out []float64
		for _, w := range ws {
			if w.pass != p {
				continue
			}
			for _, st := range w.stops {
				if u.shown.shows(st.at) {
					out = append(out, st.at)
				}
			}
		}
		return out
	}
	at(low, "joints", places(jointPass)...)
	title := "cuts"
	if s.Kind == frame.KindPost {
		title = "cuts, ground"
	}
	at(low, title, places(cutPass)...)
	title = "fixings"
	switch s.Kind {
	case frame.KindBatten:
		title = "rafters"
	case frame.KindLath:
		title = "battens"
	case frame.KindBeam:
		if len(s.postLines()) > 0 {
			title = postRow
		}
	}
	at(high, title, places(fixingPass)...)
	for _, row := range []string{studRow} {
		var us []float64
		for _, l := range s.lines() {
			if l.row == row && u.shown.shows(l.at) {
				us = append(us, l.at)
			}
		}
		at(high, row, us...)
	}
	s.crossDims(u)
}

// crossDims dimensions the main face across, at its far end.
func (s *timber) crossDims(u *unfolded) {
	side := draw.Right
	if s.right().X < 0 {
		side = draw.Left
	}
	for _, b := range u.faces {
		face := s.towards(b.view.Axes.Toward)
		base := geom.V(s.Length, 0, 0)
		whole := base.Add(geom.V(0, s.Section.Width, 0))
		if math.Abs(b.view.Axes.Up.Z) > 0.5 {
			whole = base.Add(geom.V(0, 0, s.Section.Depth))
		}
		var in []geom.Vec
		seen := map[geom.Vec]bool{}
		for _, f := range s.Features {
			if h, ok := f.(frame.Hole); ok && h.Face == face {
				q := base.Add(geom.V(0, h.Mouth.Y, h.Mouth.Z))
				if !seen[q] {
					seen[q] = true
					in = append(in, q)
				}
			}
			if c, ok := f.(frame.CheckOut); ok && math.Abs(b.view.Axes.Up.Z) > 0.5 {
				plane, _ := s.FacePlane(c.Face)
				in = append(in, base.Add(geom.V(0, 0, max(0, plane.D)-plane.N.Z*c.Depth)))
			}
		}
		if len(in) > 0 {
			b.row(side).Running("", base, append(in, whole)...)
			continue
		}
		b.row(side).Overall("", base, whole)
	}
}

// rescale sets the scale of all views and the breaks that bring the member to
// the given length on the paper; false if that cannot be.
func (u *unfolded) rescale(scale, length float64) bool {
	ks, ok := u.shown.breaks(scale, length)
	if !ok {
		return false
	}
	if u.stick.right().X < 0 {
		flipped := make([]draw.Break, len(ks))
		for i, k := range ks {
			flipped[len(ks)-1-i] = draw.Break{From: -k.To, To: -k.From}
		}
		ks = flipped
	}
	for _, b := range u.faces {
		b.fixed, b.view.Scale = scale, scale
		b.view.Breaks = ks
	}
	if u.end != nil {
		u.end.fixed, u.end.view.Scale = scale, scale
	}
	return true
}

// standing is how a drawing stands in a width at a scale.
type standing struct {
	ok     bool
	length float64   // of the member on the paper
	room   draw.Rect // of the whole
}

// fitKey is what a standing depends on.
type fitKey struct{ scale, width float64 }

// widthStep is that to which widths are rounded down before a drawing is fitted
// in, mm on paper, so that one standing does for all places of about that width.
const widthStep = 4

// leastBeside is the least that stands beside a member, mm on paper.
const leastBeside = 45

// fit gives the views a scale and the member the length at which the whole is
// no wider than width; ok is false if that cannot be.
func (u *unfolded) fit(h draw.Hand, scale, width float64) standing {
	key := fitKey{scale, math.Floor(width/widthStep) * widthStep}
	f, known := u.standings[key]
	if !known {
		f = u.try(h, key)
		u.standings[key] = f
	}
	if f.ok {
		u.rescale(scale, f.length)
	}
	return f
}

// try finds the length by trial: what stands beside the member depends on how
// crowded its figures are. The first guess leaves the least room there.
func (u *unfolded) try(h draw.Hand, key fitKey) standing {
	const tries, slack = 7, 0.3
	length := min(u.shown.wanted(key.scale), key.width-leastBeside)
	for range tries {
		if !u.rescale(key.scale, length) {
			break
		}
		room := u.extent(h, 1)
		over := room.W() - key.width
		if over <= 0 {
			return standing{true, length, room}
		}
		length = min(length, u.length()) - over - slack
	}
	return standing{}
}

// length is how long the member now is on the paper.
func (u *unfolded) length() float64 {
	b := u.faces[u.main]
	return b.view.Outline(b.pic.all).W()
}

// cells are the places of the views, those of the faces first, and of the
// title, relative to the block's reference point.
func (u *unfolded) cells(h draw.Hand) (at []geom.Pt, title geom.Pt, room draw.Rect) {
	at = make([]geom.Pt, len(u.faces), len(u.faces)+1)
	rooms := make([]draw.Rect, len(u.faces))
	for i, b := range u.faces {
		rooms[i] = b.measure(h, b.fixed) // anew: its breaks may have changed
	}
	for i := u.main - 1; i >= 0; i-- {
		at[i].Y = at[i+1].Y + rooms[i+1].Y1 + faceGap - rooms[i].Y0
	}
	for i := u.main + 1; i < len(u.faces); i++ {
		at[i].Y = at[i-1].Y + rooms[i-1].Y0 - faceGap - rooms[i].Y1
	}
	room = draw.EmptyRect()
	for i, r := range rooms {
		room = room.Union(r.Move(at[i]))
	}
	w, d := u.title.Size(h)
	title = geom.P(room.X0, room.Y0-titleAbove)
	if u.end != nil {
		r := u.end.measure(h, u.end.fixed)
		e := geom.P(room.X1+endGap-r.X0, 0)
		if u.stick.smallPaper() {
			e = geom.P(max(room.X1-r.X1, title.X+w+endGap-r.X0), room.Y0-endGap-r.Y1)
		}
		at = append(at, e)
		room = room.Union(r.Move(e))
		if !u.stick.smallPaper() {
			title.Y = room.Y0 - titleAbove
		}
	}
	room = room.Union(draw.Rect{X0: title.X, Y0: title.Y - d, X1: title.X + w, Y1: title.Y})
	return at, title, room
}

func (u *unfolded) extent(h draw.Hand, _ float64) draw.Rect {
	_, _, room := u.cells(h)
	return room
}

func (u *unfolded) views() []*viewBlock {
	if u.end != nil {
		return append(u.faces[:len(u.faces):len(u.faces)], u.end)
	}
	return u.faces
}

func (u *unfolded) draw(p *page, at geom.Pt, _ float64) {
	cells, title, _ := u.cells(p.hand)
	for i, v := range u.views() {
		v.draw(p, at.Add(cells[i]), v.fixed)
		paintBreaks(p, v)
	}
	u.title.Draw(p.sheet, p.hand, at.Add(title))
}

func (u *unfolded) finish(p *page) {
	for _, v := range u.views() {
		v.finish(p)
	}
}

// paintBreaks draws the two break lines of every break of a view.
func paintBreaks(p *page, b *viewBlock) {
	for _, k := range b.view.Breaks {
		for _, x := range []float64{k.From, k.To} {
			lo, hi := b.view.Flat(geom.P(x, b.pic.all.Y0)), b.view.Flat(geom.P(x, b.pic.all.Y1))
			zigzag(p.sheet, lo, hi, [2]float64{breakOver, breakOver})
		}
	}
}

// underFace draws what lies under the lines of a face: waste, and packers
// behind.
func (s *timber) underFace(p *page, v *draw.View, face frame.Face, shown stretches) {
	if face == s.mainFace() {
		for _, r := range s.behind() {
			if shown.shows(r.X0) {
				s.packerBehind(p, v, r)
			}
		}
	}
	s.endWaste(p, v, face)
	for _, f := range s.Features {
		if c, ok := f.(frame.CheckOut); ok && c.Face == face {
			across := s.across(face)
			waste(p, v, s.OnFace(face, c.From, 0), s.OnFace(face, c.To, 0), s.OnFace(face, c.To, across), s.OnFace(face, c.From, across))
		}
		if b, ok := f.(frame.BraceHousing); ok && shown.shows(b.At) {
			s.braceWaste(p, v, face, b)
		}
		h, ok := f.(frame.Housing)
		if !ok || !shown.shows(h.At) {
			continue
		}
		x0, x1 := max(0, h.At-h.Width/2), min(s.Length, h.At+h.Width/2)
		plane, _ := s.FacePlane(h.Face)
		back := plane.N.Mul(-h.Depth)
		d := s.Section.Depth
		switch face {
		case h.Face:
			waste(p, v, s.OnFace(face, x0, h.Floor), s.OnFace(face, x1, h.Floor), s.OnFace(face, x1, d), s.OnFace(face, x0, d))
		case s.Faces()[3]:
			a, b := s.OnFace(h.Face, x0, d), s.OnFace(h.Face, x1, d)
			waste(p, v, a, b, b.Add(back), a.Add(back))
		}
	}
}

// packerBehind draws the outline of a packer behind the main face, as far as it
// lies behind it.
func (s *timber) packerBehind(p *page, v *draw.View, r draw.Rect) {
	face := s.mainFace()
	hidden := draw.Style{Layer: draw.Hidden, Pen: draw.Narrow, Dash: draw.Dashed}
	across := s.across(face)
	lo, hi := max(0, r.Y0), min(across, r.Y1)
	at := func(u, w float64) geom.Pt { return v.Pt(s.OnFace(face, u, w)) }
	for _, u := range []float64{r.X0, r.X1} {
		if u > onTear && u < s.Length-onTear {
			p.sheet.Line(hidden, at(u, lo), at(u, hi))
		}
	}
	for _, w := range []float64{lo, hi} {
		if w > onTear && w < across-onTear {
			p.sheet.Line(hidden, at(r.X0, w), at(r.X1, w))
		}
	}
}

// overFace draws the centre lines and lines of a face.
func (s *timber) overFace(p *page, v *draw.View, face frame.Face, shown stretches) {
	d := s.Section.Depth
	for _, f := range s.Features {
		switch f := f.(type) {
		case frame.Housing:
			if f.Face == face && f.At > 0 && f.At < s.Length && shown.shows(f.At) {
				crossLine(p, v, s.OnFace(face, f.At, f.Floor), s.OnFace(face, f.At, d))
			}
		case frame.Hole:
			if f.Face == face && shown.shows(f.Mouth.X) {
				s.holeCross(p, v, f)
			}
		}
	}
	s.paintStraps(p, v, face, shown)
	if face != s.mainFace() {
		return
	}
	across := d
	if plane, _ := s.FacePlane(face); plane.N.Y == 0 {
		across = s.Section.Width
	}
	for _, l := range s.lines() {
		if !shown.shows(l.at) {
			continue
		}
		p.chainLine(v.Pt(s.OnFace(face, l.at, 0)), v.Pt(s.OnFace(face, l.at, across)))
	}
}

// holeCross marks the centre of a hole. Where a line runs through it already,
// that line is its upright.
func (s *timber) holeCross(p *page, v *draw.View, h frame.Hole) {
	const beyond = 1.5 // mm on paper
	c, r := v.Pt(h.Mouth), h.Diameter/2*v.Scale+beyond
	st := draw.Style{Layer: draw.Centre, Pen: draw.Narrow}
	p.sheet.Line(st, c.Sub(geom.P(r, 0)), c.Add(geom.P(r, 0)))
	lined := slices.ContainsFunc(s.lines(), func(l markLine) bool { return math.Abs(l.at-h.Mouth.X)*v.Scale < minGap })
	if !lined || h.Face != s.mainFace() {
		p.sheet.Line(st, c.Sub(geom.P(0, r)), c.Add(geom.P(0, r)))
	}
}
