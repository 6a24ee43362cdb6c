package sheets

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// pass is one round of marking: the tape is hooked on once and everything of
// that kind is marked along it.
type pass int

// The passes, in the order in which a builder marks.
const (
	cutPass    pass = iota // ends and shoulders
	jointPass              // edges and centres of joints
	fixingPass             // holes
)

// work is one piece of work on a member, as it is marked.
type work struct {
	pass  pass
	name  string     // e.g. "housing 3"
	face  frame.Face // to mark and cut on
	stops []stop     // along the member, in rising order
	open  string     // the stop that is none because the work runs out to the end of the stick there
	how   string     // what is done there
	hold  string     // key of the hold that it waits for; empty: none
	spot  geom.Vec   // a point of it, on the face, for the hold's flag
	last  bool       // it is done after what is cut at its far side
}

// stop is a place along the member that is marked.
type stop struct {
	name string // "first edge", "centre", "second edge"
	at   float64
}

// The names of stops.
const (
	firstEdge  = "first edge"
	centreLine = "centre"
	secondEdge = "second edge"
)

// find returns the place of a stop; false if there is none.
func (w work) find(name string) (float64, bool) {
	for _, s := range w.stops {
		if s.name == name {
			return s.at, true
		}
	}
	return 0, false
}

// works lists the work on a member in the order in which it is marked.
func (s *timber) works() []work {
	out := []work{s.endWork(frame.FaceStart), s.endWork(frame.FaceEnd)}
	for _, f := range s.Features {
		switch f := f.(type) {
		case frame.Housing:
			out = append(out, s.housingWork(f))
		case frame.BraceHousing:
			out = append(out, s.braceHousingWork(f))
		case frame.Hole:
			out = append(out, s.holeWork(f))
		case frame.Chamfer:
			out = append(out, s.chamferWork(f))
		case frame.SeatCut:
			out = append(out, s.seatWork(f))
		case frame.Check:
			out = append(out, s.checkWork(f))
		case frame.Birdsmouth:
			out = append(out, s.birdsmouthWork(f))
		case frame.TailBevel:
			out = append(out, s.bevelWork(f))
		case frame.Shape:
			out = append(out, s.shapeWork(f))
		case frame.CheckOut:
			out = append(out, s.checkOutWork(f))
		}
	}
	out = append(out, s.strapWorks()...)
	for _, l := range s.lines() {
		switch l.row {
		case rafterRow:
			out = append(out, work{
				pass: fixingPass, name: "crossing", face: s.mainFace(), stops: []stop{{centreLine, l.at}},
				how: s.crossingWords(), spot: s.OnFace(s.mainFace(), l.at, s.across(s.mainFace())/2),
			})
		case landRow:
			out = append(out, work{
				pass: jointPass, name: "rafter", face: s.mainFace(), stops: []stop{{firstEdge, l.at - l.half}, {centreLine, l.at}, {secondEdge, l.at + l.half}},
				how: l.of, spot: s.OnFace(s.mainFace(), l.at, s.across(s.mainFace())),
			})
		case joinRow:
			out = append(out, work{
				pass: cutPass, name: "join", face: s.mainFace(), stops: []stop{{centreLine, l.at}},
				how: "square, " + s.joinPlace(), spot: s.OnFace(s.mainFace(), l.at, s.across(s.mainFace())),
			})
		case postRow:
			out = append(out, work{
				pass: fixingPass, name: "post", face: s.mainFace(), stops: []stop{{centreLine, l.at}},
				how: "line only: centre of " + l.of, spot: s.OnFace(s.mainFace(), l.at, s.across(s.mainFace())),
			})
		case groundRow:
			out = append(out, work{
				pass: cutPass, name: l.name, face: s.mainFace(), stops: []stop{{centreLine, l.at}},
				how: "line only" + l.of, spot: s.OnFace(s.mainFace(), l.at, s.across(s.mainFace())),
			})
		}
	}
	slices.SortStableFunc(out, func(a, b work) int {
		return cmp.Or(cmp.Compare(a.pass, b.pass), cmp.Compare(a.first(), b.first()))
	})
	for _, name := range []string{"housing", "birdsmouth", "check", "rafter", "crossing", "join", "post", "strap", braceWork, frame.UseScrew, frame.UseAnchor, frame.UseRod, frame.UseBolt} {
		numberOff(out, name)
	}
	return out
}

// first is the place by which a work stands in the list.
func (w work) first() float64 {
	if len(w.stops) == 0 {
		return math.Inf(1)
	}
	if w.last {
		return w.stops[len(w.stops)-1].at
	}
	return w.stops[0].at
}

// numberOff numbers works of one name from the datum end, if there are several.
func numberOff(ws []work, name string) {
	n := 0
	for _, w := range ws {
		if w.name == name {
			n++
		}
	}
	k := 0
	for i := range ws {
		if n > 1 && ws[i].name == name {
			k++
			ws[i].name = fmt.Sprintf("%s %d", name, k)
		}
	}
}

// crossingWords say what is drilled where a batten crosses a rafter. Where two
// screws stand across a batten is the project's own choice.
func (s *timber) crossingWords() string {
	x := s.job.Battens.Screws
	if s.Kind == frame.KindLath {
		x = s.job.Laths.Screws
	}
	screw := "screw"
	if x.Diameter > 0 {
		screw = "Ø" + s.fine.Length(x.Diameter) + " screw"
	}
	switch x.Each {
	case 0:
		return "fix as stated"
	case 1:
		return "drill for 1 " + screw + ", mid-width"
	case 2:
		return fmt.Sprintf("drill for 2 %ss, %s in from each edge", screw, s.fine.Length(s.across(s.mainFace())/4))
	}
	return fmt.Sprintf("drill for %d %ss, spread over the width", x.Each, screw)
}

// joinPlace says where the parts of a member meet.
func (s *timber) joinPlace() string {
	switch s.Kind {
	case frame.KindBeam:
		return "over a post"
	case frame.KindBatten:
		return "over a rafter"
	case frame.KindLath:
		return "over a batten"
	}
	return "clear of housings"
}

// endName is what an end of the member is called on its drawing.
func (s *timber) endName(end frame.Face) string { return s.frame.EndWord(s.Kind, end) }

// endWork is the cut of an end.
func (s *timber) endWork(end frame.Face) work {
	c := s.EndCut(end)
	w := work{pass: cutPass, name: s.endName(end), face: s.mainFace(), how: "square", hold: s.endHold(end)}
	w.spot = s.OnFace(w.face, c.At, s.across(w.face))
	if c.Slope == 0 && c.Plan == 0 {
		w.stops = []stop{{firstEdge, c.At}}
		return w
	}
	d := s.Section.Depth
	if c.Plan == 0 {
		low := 0.0 // where the cut ends, across the depth
		if b, ok := s.bevel(); ok && end == frame.FaceEnd {
			low = d - b.Nose*math.Cos(b.Angle)
		}
		top, bottom := c.Meets(s.Member, 0, d), c.Meets(s.Member, 0, low)
		w.stops = []stop{{firstEdge, min(top, bottom)}, {secondEdge, max(top, bottom)}}
		w.how = fmt.Sprintf("%s, long point %s", c.Cut, s.longPoint(c))
		return w
	}
	return s.skewWork(w, c)
}

// longPoint names the edge on which an end reaches furthest.
func (s *timber) longPoint(c frame.EndCut) frame.Face {
	if (c.End == frame.FaceStart) == (c.Slope > 0) {
		return s.Faces()[3]
	}
	return s.Faces()[2]
}

// across is how wide a long face is.
func (s *timber) across(face frame.Face) float64 {
	if p, _ := s.FacePlane(face); p.N.Y != 0 {
		return s.Section.Depth
	}
	return s.Section.Width
}

// housingWork is a housing: both edges and its centre line.
func (s *timber) housingWork(h frame.Housing) work {
	w := work{pass: jointPass, name: "housing", face: h.Face, hold: holdHousing}
	from, to := h.At-h.Width/2, h.At+h.Width/2
	if from > 0 {
		w.stops = append(w.stops, stop{firstEdge, from})
	} else {
		w.open = firstEdge
	}
	if h.At >= 0 && h.At <= s.Length {
		w.stops = append(w.stops, stop{centreLine, h.At})
	}
	if to < s.Length {
		w.stops = append(w.stops, stop{secondEdge, to})
	} else {
		w.open = secondEdge
	}
	w.how = s.fine.Length(h.Depth) + " deep"
	w.spot = s.OnFace(h.Face, min(max(h.At, 0), s.Length), h.Floor)
	return w
}

// holeWork is a hole: its centre, how large it is and how deep.
func (s *timber) holeWork(h frame.Hole) work {
	w := work{pass: fixingPass, name: h.Use, face: h.Face, spot: h.Mouth, hold: s.holeHold(h)}
	w.how = fmt.Sprintf("Ø%s %s", s.fine.Length(h.Diameter), s.holeDepth(h))
	if s.needsBlocking(h) {
		w.how += ", no " + s.job.Wall.StudName()
	}
	if s.inRows(h) {
		w.how += ", " + s.acrossOf(h)
		if h.Use == frame.UseBolt { // the table of holes says how deep
			w.how = fmt.Sprintf("Ø%s, %s", s.fine.Length(h.Diameter), s.acrossOf(h))
		}
	}
	if deep := s.notchedAt(h); deep > 0 {
		p, _ := s.FacePlane(h.Face)
		w.spot = h.Mouth.Sub(p.N.Mul(deep))
	}
	if h.Face != frame.FaceStart && h.Face != frame.FaceEnd {
		w.stops = []stop{{centreLine, h.Mouth.X}}
	}
	return w
}

// notchedAt is how deep the timber is checked out where a hole is drilled.
func (s *timber) notchedAt(h frame.Hole) float64 {
	for _, f := range s.Features {
		if c, ok := f.(frame.CheckOut); ok && c.Face == h.Face && h.Mouth.X > c.From && h.Mouth.X < c.To {
			return c.Depth
		}
	}
	return 0
}

// inRows reports whether holes for the same use stand elsewhere across the same
// face.
func (s *timber) inRows(h frame.Hole) bool {
	return slices.ContainsFunc(s.Features, func(f frame.Feature) bool {
		o, ok := f.(frame.Hole)
		return ok && o.Use == h.Use && o.Face == h.Face && math.Hypot(o.Mouth.Y-h.Mouth.Y, o.Mouth.Z-h.Mouth.Z) > onTear
	})
}

func (s *timber) holeDepth(h frame.Hole) string {
	if h.Through {
		return "through"
	}
	return s.fine.Length(h.Depth) + " deep"
}

// needsBlocking reports whether the screw through a hole in the plate finds no
// stud.
func (s *timber) needsBlocking(h frame.Hole) bool {
	if s.Kind != frame.KindPlate || !h.ToWall() {
		return false
	}
	x := s.where.Point(h.Mouth).X
	return slices.ContainsFunc(s.frame.Setout.PlateFixings, func(f frame.FixingPoint) bool {
		return f.Blocking && math.Abs(f.Along-x) < onTear
	})
}

// chamferWork is the weathering of a post's top.
func (s *timber) chamferWork(c frame.Chamfer) work {
	f := s.Faces()
	drop := func(to float64) float64 { return c.At - (to-c.Seat)*math.Tan(c.Angle) }
	low, left := drop(s.Section.Depth), s.leftAtTop()
	side := f[0]
	if s.mainFace() == f[1] {
		side = f[1]
	}
	how := fmt.Sprintf("starts %s from %s", s.fine.Length(c.Seat), f[2])
	if c.Seat <= onTear {
		how = fmt.Sprintf("whole top, down to %s", f[3])
	}
	return work{
		pass: cutPass, name: "chamfer", face: side, hold: holdPostTop,
		stops: []stop{{firstEdge, low}, {secondEdge, c.At}},
		how:   how,
		spot:  s.OnFace(side, drop(left), left),
	}
}

// leftAtTop is where a post ends towards the house at its top: at a check-out of
// that side, or at the side.
func (s *timber) leftAtTop() float64 {
	left := s.Section.Depth
	for _, f := range s.Features {
		if c, ok := f.(frame.CheckOut); ok && c.Face == s.Faces()[3] && c.Open(s.Member) {
			left = min(left, s.Section.Depth-c.Depth)
		}
	}
	return left
}

// checkOutWork is a notch across a face, from its seat up.
func (s *timber) checkOutWork(c frame.CheckOut) work {
	w := work{
		pass: jointPass, name: "check-out", face: c.Face, hold: holdPostTop, stops: []stop{{firstEdge, c.From}},
		how: s.fine.Length(c.Depth) + " deep, to the top", spot: s.OnFace(c.Face, c.From, s.across(c.Face)/2),
	}
	if !c.Open(s.Member) {
		w.stops = append(w.stops, stop{secondEdge, c.To})
		w.how = s.fine.Length(c.Depth) + " deep"
	}
	return w
}

// seatWork is a level seat under a sloping end.
func (s *timber) seatWork(c frame.SeatCut) work {
	w := work{pass: cutPass, name: "level seat", face: s.Faces()[2], spot: geom.V(c.At, 0, 0)}
	w.stops = []stop{{firstEdge, c.At}}
	w.how = fmt.Sprintf("%s long to the end", s.fine.Length(c.Run))
	if c.End == frame.FaceStart {
		w.how += fmt.Sprintf(", shoulder %s", s.fine.Length(c.Shoulder()))
	}
	if h := s.endHold(c.End); h != "" {
		w.hold = h
	}
	return w
}

// birdsmouthWork is a notch over a timber: the plumb line of its heel, on the
// top edge, and what is measured from there.
func (s *timber) birdsmouthWork(n frame.Birdsmouth) work {
	d := s.Section.Depth
	w := work{
		pass: jointPass, name: "birdsmouth", face: s.Faces()[0], stops: []stop{{centreLine, n.At}},
		how:  fmt.Sprintf("heel %s, seat %s", s.fine.Length(n.Heel), s.fine.Length(n.Seat(d))),
		spot: s.OnFace(s.Faces()[0], n.At+n.Heel*math.Sin(n.Angle), d-n.Heel*math.Cos(n.Angle)),
	}
	if up := n.Shoulder(d); up > onTear {
		w.how += fmt.Sprintf(", shoulder %s", s.fine.Length(up))
	}
	return w
}

// checkWork is a check across the member: both edges and its centre line, on the
// side that shows how deep it is.
func (s *timber) checkWork(c frame.Check) work {
	side := s.Faces()[0]
	w := work{pass: jointPass, name: "check", face: side, hold: holdChecks}
	from, to := c.At-c.Width/2, c.At+c.Width/2
	if from > 0 {
		w.stops = append(w.stops, stop{firstEdge, from})
	}
	w.stops = append(w.stops, stop{centreLine, c.At})
	if to < s.Length {
		w.stops = append(w.stops, stop{secondEdge, to})
	}
	w.how = fmt.Sprintf("%s deep from the %s", s.fine.Length(c.Depth), c.Face)
	up := c.Depth
	if c.Face == s.Faces()[3] {
		up = s.Section.Depth - c.Depth
	}
	w.spot = s.OnFace(side, min(max(c.At, 0), s.Length), up)
	return w
}

// bevel is the bevel of the member's tail; false if it has none.
func (s *timber) bevel() (frame.TailBevel, bool) { return s.bevelOf(s.Member) }

// bevelWork is the splay under a tail.
func (s *timber) bevelWork(t frame.TailBevel) work {
	d := s.Section.Depth
	return work{
		pass: cutPass, name: "bevel", face: s.Faces()[2], stops: []stop{{firstEdge, t.Foot(d)}},
		how:  fmt.Sprintf("up to %s of plumb nose", s.fine.Length(t.Nose)),
		spot: geom.V(t.Foot(d), 0, 0), hold: s.endHold(frame.FaceEnd),
	}
}
