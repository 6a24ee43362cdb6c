package sheets

import (
	"fmt"
	"math"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func housedDetail() detailSpec {
	return detailSpec{
		scale: 1. / 2, least: 1. / 5, plain: clearHousing, views: housingViews,
		ring: 150, on: []string{onSection},
	}
}

// clearHousing reports whether a housing shows by itself: away from the ends of
// its timber and from bores.
func clearHousing(m *maker, j frame.Joint) bool {
	if left, right := m.beside(j); min(left, right) < openEnd {
		return false
	}
	h := m.housed(j)
	for _, b := range h.timber.Solid().Bores() {
		if math.Abs(h.timber.Place.Local(b.At).X-h.housing.At) < h.housing.Width/2+b.Radius {
			return false
		}
	}
	return true
}

// openEnd is the width of timber beside a housing, mm, from which its end is
// as far away as any: it is then not shown.
const openEnd = 60

// beside is how much of the timber that holds a rafter is left at either side
// of the housing; 0 where the housing runs out at the end.
func (m *maker) beside(j frame.Joint) (left, right float64) {
	r, t := m.frame.Members[j.A], m.frame.Members[j.B]
	k, _ := m.frame.Setout.CarrierOf(j.B)
	middle := t.Place.Local(j.At).X
	half := (r.Section.Width + j.Clearance) / 2 / math.Cos(k.Turn)
	return max(0, middle-half), max(0, t.Length-middle-half)
}

// housed is a rafter in its housing, with the points that its drawing needs.
type housed struct {
	*maker
	joint          frame.Joint
	carrier        frame.Carrier
	rafter, timber frame.Member
	housing        frame.Housing
	x              float64  // middle of the rafter
	face, back     float64  // world y of the timber's face and of the far face
	in             float64  // +1 where the housing goes towards the house, −1 where away
	low, high      float64  // of the timber
	mouth, inside  geom.Vec // middle of the floor, at the face and at its far end
	top            float64  // of the rafter at the face
}

func (m *maker) housed(j frame.Joint) housed {
	r, t := m.frame.Members[j.A], m.frame.Members[j.B]
	h := housed{maker: m, joint: j, rafter: r, timber: t}
	h.carrier, _ = m.frame.Setout.CarrierOf(j.B)
	along := t.Place.Local(j.At).X
	for _, f := range t.Features {
		if g, ok := f.(frame.Housing); ok && (h.housing.Width == 0 || math.Abs(g.At-along) < math.Abs(h.housing.At-along)) {
			h.housing = g
		}
	}
	g := h.housing
	h.mouth = t.Place.Point(t.OnFace(g.Face, g.At, g.Floor))
	plane, _ := t.FacePlane(g.Face)
	inward := t.Place.Dir(plane.N).Neg()
	h.in = math.Copysign(1, inward.Y)
	h.inside = t.Place.Point(t.OnFace(g.Face, g.Back(), g.FloorInside())).Add(inward.Mul(g.Depth))
	h.x = h.mouth.X
	h.face, h.back = h.mouth.Y, h.mouth.Y+t.Section.Width/inward.Y
	h.low, h.high = t.Place.O.Z, t.Place.O.Z+t.Section.Depth
	h.top = m.frame.RafterTop(h.face)
	return h
}

// square is the same seen square to a carrier on the skew.
func (h housed) square() housed {
	if !h.carrier.Skewed() {
		return h
	}
	n := h.squareTo()
	for i, j := range h.frame.Joints {
		if j == h.joint {
			s := n.housed(n.frame.Joints[i])
			s.top = h.top
			return s
		}
	}
	return h
}

// at is a point in the plane of the rafter's middle.
func (h housed) at(y, z float64) geom.Vec { return geom.V(h.x, y, z) }

// housingViews are a section along the rafter, the timber's face with the rafter
// taken out, and the same at each kind of end that housings run out at.
func housingViews(m *maker, d detail) []*viewBlock {
	h := m.housed(d.joint)
	views := []*viewBlock{h.section()}
	if h.carrier.Skewed() {
		views = append(views, h.fromAbove())
	}
	views = append(views, h.square().faceView("rafter taken out, waste hatched"))
	last := h // in the last view, which has room for notes beside it
	done := map[string]bool{}
	for _, j := range d.alike {
		left, right := m.beside(j)
		if j.At == d.joint.At || min(left, right) >= openEnd || done[sizeKey(min(left, right))] {
			continue
		}
		done[sizeKey(min(left, right))] = true
		note := "the other end is its mirror image"
		if m.endsLike(d, min(left, right)) < 2 {
			note = "at the right end"
			if left < right {
				note = "at the left end"
			}
		}
		last = m.housed(j)
		v := last.square().faceView(note)
		v.title.Name = "At the end"
		views = append(views, v)
	}
	last.square().cutNotes(views[len(views)-1])
	return views
}

// endsLike counts the housings of a detail that leave so much timber beside
// them.
func (m *maker) endsLike(d detail, rest float64) int {
	n := 0
	for _, j := range d.alike {
		left, right := m.beside(j)
		if sizeKey(min(left, right)) == sizeKey(rest) {
			n++
		}
	}
	return n
}

// The size of close-ups of housings.
const (
	rafterStub  = 0.6  // of the rafter beyond the face, in depths of the rafter
	closeMargin = 12   // beyond what is shown, mm
	besideIt    = 0.65 // of the timber at each side of the housing, in widths of it
)

func (h housed) section() *viewBlock {
	out := h.face - h.in*rafterStub*h.rafter.Section.Depth // where the rafter is torn off
	under := h.frame.RafterTop(out) - (h.top - h.mouth.Z)  // its underside there
	crop := everywhere()
	crop.Min.Y, crop.Max.Y = min(out, h.back), max(out, h.back)+closeMargin
	crop.Min.Z = min(h.low, under) - closeMargin
	crop.Max.Z = max(h.high, h.top, h.frame.RafterTop(out)) + closeMargin
	c := closeUp{
		name: "section through the middle of the rafter", axes: geom.LeftEnd(), cut: true,
		at: h.at(h.face, (h.low+h.high)/2), show: only(h.rafter, h.timber),
	}
	rows, notes := draw.Right, draw.Left
	if h.in > 0 {
		crop.Max.Y = h.back + closeMargin
	}
	if h.carrier.OnWall {
		crop.Max.Y = h.job.Wall.Grip() + 2*closeMargin
		c.house = wallPieces()
		c.show = func(b frame.Member) bool {
			return only(h.rafter, h.timber)(b) || b.Kind == frame.KindPacker && b.Place.V.X > 0
		}
	}
	if h.in > 0 {
		rows, notes = draw.Left, draw.Right
	} else {
		crop.Min.Y, crop.Max.Y = h.back-closeMargin, out
	}
	c.crop = crop
	b := h.closeUp(c)
	b.row(rows).Chain("heights at the face", h.at(h.face, h.low), h.mouth, h.at(h.face, h.top), h.at(h.face, h.high)).
		Overall("", h.at(h.face, h.low), h.at(h.face, h.high))
	b.row(draw.Top).Chain("housing", h.at(h.face, h.high), h.at(h.inside.Y, h.high), h.at(h.back, h.high))
	if h.carrier.OnWall && h.back < 0 {
		b.row(draw.Bottom).Chain("from the "+h.setting().from, h.at(0, h.low), h.at(h.back, h.low), h.at(h.face, h.low))
	}
	h.words(b.note(notes))
	b.marks = func(p *page, v *draw.View) {
		if math.Abs(h.face-out)*v.Scale < fallRoom {
			return // the cross-section shows it
		}
		a, z := h.face, out
		p.placer.Fall(draw.Fall{View: v, A: h.at(a, h.frame.RafterTop(a)), B: h.at(z, h.frame.RafterTop(z)), Offset: fallOver})
	}
	return b
}

// The place of a fall's arrow, mm on paper.
const (
	fallOver = 3  // over its line
	fallRoom = 32 // along it: for less there is no arrow
)

// words are the notes of the section.
func (h housed) words(n *draw.NoteColumn) {
	n.Width = detailWords
	depth := h.rafter.Section.Depth
	middle := h.face - h.in*depth*rafterStub/2 // of the rafter shown
	n.AddInside(h.stick("Rafter", h.rafter)+". "+h.tieDown(), h.at(middle, h.frame.RafterTop(middle)-depth*0.25))
	n.AddInside(h.stick(upperFirst(h.carrier.Name), h.timber), h.at((h.face+h.back)/2, h.low+h.timber.Section.Depth*0.1))
	seat := "Bearing: the seat follows the fall; the rafter's underside lies on all of it."
	if h.housing.Slope == 0 {
		seat = "Bearing: the seat is level; the rafter's underside lies on all of it."
	}
	if h.shoulder() > 0 {
		seat = "Bearing: the seat is level; the rafter's end is cut level to lie on all of it, " + h.tape(h.shoulder()) + " off its deep end."
	}
	n.Add(seat, h.mouth.Lerp(h.inside, 0.5), h.mouth, h.mouth.Lerp(h.inside, 0.8))
	n.Add(h.endCutWords(h.carrier)+". Treat the cut end before assembly.", h.at(h.inside.Y, h.top-depth*0.7))
}

// shoulder is how much a level seat takes off the rafter's end.
func (h housed) shoulder() float64 {
	end := frame.FaceStart
	if h.in < 0 {
		end = frame.FaceEnd
	}
	for _, f := range h.rafter.Features {
		if s, ok := f.(frame.SeatCut); ok && s.End == end {
			return s.Shoulder()
		}
	}
	return 0
}

// faceView is the face of the timber with the rafter taken out.
func (h housed) faceView(note string) *viewBlock {
	w := h.housing.Width
	crop := everywhere()
	crop.Min.X, crop.Max.X = h.x-w*(0.5+besideIt), h.x+w*(0.5+besideIt)
	c := closeUp{
		name: h.setting().outside, axes: geom.Front(),
		at: h.at(h.face, (h.low+h.high)/2), show: only(h.timber), crop: crop,
	}
	if h.in < 0 {
		c.name, c.axes = h.setting().inside, geom.Back()
	}
	b := h.closeUp(c)
	b.title.Note = note
	from, to := h.ends()
	x0, x1 := h.sides()
	left, right := geom.V(x0, h.face, h.low), geom.V(x1, h.face, h.low)
	for _, end := range []float64{from, to} {
		if math.Abs(end-h.x)-w/2 < openEnd {
			b.row(draw.Bottom).Running("", geom.V(end, h.face, h.low), left, geom.V(h.x, h.face, h.low), right)
		}
	}
	if x0 != from && x1 != to { // else the width is there already
		b.row(draw.Bottom).Overall("", left, right)
	}
	b.under = func(p *page, v *draw.View) {
		waste(p, v, h.onFloor(x0), h.onFloor(x1), geom.V(x1, h.face, h.high), geom.V(x0, h.face, h.high))
	}
	b.over = func(p *page, v *draw.View) {
		crossLine(p, v, h.at(h.face, h.low), h.at(h.face, h.high))
	}
	return b
}

// onFloor is the floor's edge at the face, at a place along.
func (h housed) onFloor(x float64) geom.Vec {
	return geom.V(x, h.face, h.mouth.Z+(x-h.x)*math.Tan(h.housing.Rise))
}

// sides are the sides of the housing, or the end of the timber that it runs out
// at.
func (h housed) sides() (x0, x1 float64) {
	half := h.housing.Width / 2
	from, to := h.ends()
	return max(from, h.x-half), min(to, h.x+half)
}

// ends are those of the timber, on the face.
func (h housed) ends() (from, to float64) {
	at := h.timber.Place.Local(h.mouth)
	end := func(f frame.Face) float64 {
		return h.timber.Place.O.X + h.timber.EndCut(f).Meets(h.timber, at.Y, at.Z)
	}
	return end(frame.FaceStart), end(frame.FaceEnd)
}

// cutNotes say how the housing is cut, beside a view of the face.
func (h housed) cutNotes(b *viewBlock) {
	n := b.note(draw.Right)
	n.Width = detailWords
	const right = 0.3 // of the width from the middle, where the notes stand
	x0, x1 := h.sides()
	x := (x0+x1)/2 + right*(x1-x0)*b.view.Axes.Right.X
	at := func(z float64) geom.Vec { return geom.V(x, h.face, z) }
	tall := h.high - h.mouth.Z
	size := fmt.Sprintf("Housing %s deep, %s wide: the rafter and %s in all, so that it drops in. Its middle is on the rafter's centre line.",
		h.tape(h.housing.Depth), h.tape(h.housing.Width), h.fine(h.joint.Clearance))
	if h.housing.Skew != 0 {
		size = fmt.Sprintf("Housing %s deep square to the face and %s wide along it, its sides along the rafter's: the rafter and %s in all, so that it drops in. Its middle is on the rafter's centre line.",
			h.tape(h.housing.Depth), h.tape(h.housing.Width), h.fine(h.joint.Clearance))
	}
	n.AddInside(size, at(h.high-tall*0.25))
	n.AddInside("Hold until the rafters are delivered: cut each housing to the actual width of its own rafter. Treat the cut faces.", at(h.high-tall*0.55))
	floor := fmt.Sprintf("Floor above the underside: %s at the face, %s at the back.", h.tape(h.housing.Floor), h.tape(h.housing.FloorInside()))
	if h.housing.Slope == 0 {
		floor = "Floor level, " + h.tape(h.housing.Floor) + " above the underside."
	}
	if h.housing.Rise != 0 {
		floor = strings.TrimSuffix(floor, ".") + fmt.Sprintf(", on the centre line, and at each rafter another: the drawing of %s has them.", h.timber.Mark)
	}
	n.Add(floor, at(h.mouth.Z))
}
