package sheets_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
)

// rebuilder makes a member of the words of its drawing.
type rebuilder struct {
	card  cardText
	kind  frame.Kind
	units measure.Units
	m     frame.Member
	errs  []string
}

func (r *rebuilder) fail(format string, args ...any) {
	r.errs = append(r.errs, fmt.Sprintf(format, args...))
}

// length reads a figure.
func (r *rebuilder) length(s string) float64 {
	v, err := measure.ParseLength(strings.TrimSpace(s), r.units)
	if err != nil {
		r.fail("%q is no length", s)
	}
	return v
}

// first returns the table of which there must be one row.
func (r *rebuilder) first(table string) cells {
	if len(r.card[table]) == 0 {
		r.fail("there is no table of %s", table)
		return cells{}
	}
	return r.card[table][0]
}

// member makes the member as drawn.
func (r *rebuilder) member() frame.Member {
	r.card = r.card.asOfHouse()
	facts := r.first("facts")
	r.m = frame.Member{Kind: r.kind, Place: geom.World()}
	sides, _, _ := strings.Cut(facts["Section"], " actual")
	depth, width, _ := strings.Cut(sides, "×")
	r.m.Section = frame.Section{Depth: r.length(depth), Width: r.length(width)}
	long := facts["Length over all"]
	if long == "" {
		long = facts["Long to long point"]
	}
	r.m.Length = r.length(long)
	if len(r.errs) > 0 {
		return r.m
	}
	for _, row := range r.card["marking list"] {
		r.work(row)
	}
	return r.m
}

// asOfHouse is the card with the names of faces and ends that one has of a frame
// against a house: a free-standing frame has a front and a rear, and a post's
// inner side looks into it.
func (c cardText) asOfHouse() cardText {
	as := strings.NewReplacer("rear end", "house end", "front end", "outer end", "rear side", "house side", "front side", "outer side", "inner side", "house side")
	out := cardText{}
	for name, rows := range c {
		for _, row := range rows {
			read := cells{}
			for k, v := range row {
				read[k] = as.Replace(v)
			}
			out[name] = append(out[name], read)
		}
	}
	return out
}

// work makes the feature of one row of the marking list.
func (r *rebuilder) work(row cells) {
	name, faceWords, _ := strings.Cut(row["mark"], ", ")
	if faceWords == "" {
		_, faceWords, _ = strings.Cut(strings.TrimSuffix(row["title"], " (continued)"), ", ")
	}
	switch word, _, _ := strings.Cut(name, " "); {
	case word == "brace":
		r.braceHousing(row, faceWords)
	case word == "housing":
		r.housing(row)
	case word == "check-out":
		r.checkOut(row, faceWords)
	case word == frame.UseScrew || word == frame.UseAnchor || word == frame.UseRod || word == frame.UseBolt:
		r.hole(word, row, faceWords)
	case word == "check":
		r.check(row)
	case word == "birdsmouth":
		r.birdsmouth(row)
	case word == "bevel":
		r.bevel(row)
	case word == "chamfer":
		r.chamfer(row)
	case strings.HasPrefix(row["work"], "by its outline"):
		r.shape(name)
	case name == "level seat":
		r.seat(row)
	case strings.HasPrefix(row["work"], frame.CutSkew), strings.HasPrefix(row["work"], frame.CutCompound):
		r.skewCut(name, row)
	case strings.HasPrefix(row["work"], frame.CutPlumb), strings.HasPrefix(row["work"], frame.CutLevel):
		r.endCut(row)
	}
}

// face is the face of a name on a drawing.
func (r *rebuilder) face(name string) frame.Face {
	switch name {
	case "left side":
		return frame.FaceLeft
	case "right side":
		return frame.FaceRight
	case "top end", "right end end", "outer end end":
		return frame.FaceEnd
	}
	return frame.Face(name)
}

func (r *rebuilder) housing(row cells) {
	for _, of := range r.card["housings on the skew"] {
		if name, _, _ := strings.Cut(row["mark"], ", "); of["no."] == "all" || "housing "+of["no."] == name {
			r.skewHousing(row, of)
			return
		}
	}
	shape := r.first("housings")
	lo, hi := -1.0, r.m.Length+1 // beyond the ends
	if row["from"] != "end" {
		lo = r.length(row["from"])
	}
	if row["to"] != "end" {
		hi = r.length(row["to"])
	}
	floor, back, deep := r.length(shape["floor up"]), r.length(shape["up at"]), r.length(shape["deep"])
	r.m.Features = append(r.m.Features, frame.Housing{
		Face: r.face(shape["face"]), At: (lo + hi) / 2, Width: hi - lo, Depth: deep,
		Floor: floor, Slope: math.Atan((back - floor) / deep),
	})
}

func (r *rebuilder) hole(use string, row cells, faceWords string) {
	h := frame.Hole{Use: use, Face: r.face(faceWords)}
	for _, shape := range r.card["holes"] {
		if !strings.HasPrefix(shape["holes"], use) || shape["drill from"] != faceWords {
			continue
		}
		if strings.Contains(row["work"], " from ") && !strings.HasSuffix(row["work"], ", "+shape["centre across"]) {
			continue // of those that stand elsewhere across the face
		}
		h.Diameter = r.length(shape["Ø"])
		h.Through = shape["deep"] == "through"
		at := map[frame.Face]float64{}
		for _, c := range strings.Split(shape["centre across"], ", ") {
			figure, from, _ := strings.Cut(c, " from ")
			at[r.face(from)] = r.length(figure)
		}
		f := r.m.Faces()
		p, ok := r.m.FacePlane(h.Face)
		if !ok {
			r.fail("no face is called %q", faceWords)
			return
		}
		h.Mouth = geom.V(0, at[f[0]], at[f[2]])
		h.Mouth = h.Mouth.Sub(p.N.Mul(p.N.Dot(h.Mouth) - p.D)) // on to the face
		switch {
		case !h.Through:
			h.Depth = r.length(shape["deep"])
		case p.N.Y != 0:
			h.Depth = r.m.Section.Width
		default:
			h.Depth = r.m.Section.Depth
		}
	}
	if h.Diameter == 0 {
		r.fail("the table of holes has no %s from %q", use, faceWords)
		return
	}
	if row["centre"] != "" {
		h.Mouth.X = r.length(row["centre"])
	}
	r.m.Features = append(r.m.Features, h)
}

func (r *rebuilder) checkOut(row cells, faceWords string) {
	figure, _, _ := strings.Cut(row["work"], " deep")
	c := frame.CheckOut{Face: r.face(faceWords), Depth: r.length(figure), From: r.length(row["from"]), To: r.m.Length}
	if row["to"] != "" {
		c.To = r.length(row["to"])
	}
	r.m.Features = append(r.m.Features, c)
}

func (r *rebuilder) chamfer(row cells) {
	figure := strings.TrimPrefix(row["work"], "starts ")
	figure, from, _ := strings.Cut(figure, " from ")
	if strings.HasPrefix(figure, "whole top") {
		figure, from = "0", string(frame.FaceOuter)
	}
	if r.face(from) != frame.FaceOuter {
		r.fail("the chamfer starts from %q", from)
	}
	seat, low, high := r.length(figure), r.length(row["from"]), r.length(row["to"])
	c := frame.Chamfer{At: high, Seat: seat, Angle: r.angle("chamfer")}
	if off := high - (r.m.Section.Depth-seat)*math.Tan(c.Angle) - low; math.Abs(off) > 1 {
		r.fail("the chamfer's angle and its lower line disagree by %.2f mm", off)
	}
	r.m.Features = append(r.m.Features, c)
}

// leanWords are what the marking list says of the housing of a brace.
var leanWords = regexp.MustCompile(`^(.+?) deep, leans (.+?) to (.+)$`)

// braceHousing makes the housing of a brace.
func (r *rebuilder) braceHousing(row cells, faceWords string) {
	said := leanWords.FindStringSubmatch(row["work"])
	if said == nil {
		r.fail("%q does not say how the brace is let in", row["work"])
		return
	}
	lean, err := measure.ParseAngle(said[2])
	if err != nil {
		r.fail("%q is no angle", said[2])
	}
	if said[3] == r.m.Kind.EndName(frame.FaceStart) {
		lean = -lean
	}
	lo, hi := r.length(row["from"]), r.length(row["to"])
	wide, side, _ := strings.Cut(r.first("facts")["Brace housings"], " from ")
	h := frame.BraceHousing{Face: r.face(faceWords), At: (lo + hi) / 2, Width: hi - lo, Depth: r.length(said[1]), Lean: lean, To: r.length(wide)}
	if r.face(side) != frame.FaceOuter {
		r.fail("the housing of a brace opens to the %s", side)
	}
	r.m.Features = append(r.m.Features, h)
}

// angle is the angle off square of a cut in the table of saw settings, radians.
func (r *rebuilder) angle(cut string) float64 {
	for _, row := range r.card["saw settings"] {
		if row["cut"] != cut {
			continue
		}
		a, err := measure.ParseAngle(row["off square"])
		if err != nil {
			r.fail("%q is no angle", row["off square"])
		}
		return a
	}
	r.fail("no saw setting for the %s", cut)
	return 0
}

func (r *rebuilder) endCut(row cells) {
	near, far := r.length(row["from"]), r.length(row["to"])
	c := frame.EndCut{End: frame.FaceStart, Cut: frame.CutPlumb}
	top, bottom := near, far
	if near > r.m.Length/2 {
		c.End = frame.FaceEnd
	}
	if strings.HasPrefix(row["work"], frame.CutLevel) {
		c.Cut = frame.CutLevel
	}
	// The long point at the datum end is the nearer one, at the far end the
	// farther.
	if longTop := strings.HasSuffix(row["work"], "top"); longTop != (c.End == frame.FaceStart) {
		top, bottom = far, near
	}
	c.At, c.Slope = top, math.Atan((bottom-top)/r.m.Section.Depth)
	if _, bevelled := r.row("bevel"); bevelled && c.End == frame.FaceEnd {
		c.Slope = r.angle("outer end") // the cut does not go all the way down
	}
	r.m.Features = append(r.m.Features, c)
}

// skewHousing makes a housing on the skew of its centre line and its row in the
// table of housings.
func (r *rebuilder) skewHousing(row, shape cells) {
	lean := func(words string) float64 {
		figure, side, ok := strings.Cut(words, " to the ")
		if !ok {
			return 0 // level
		}
		a, err := measure.ParseAngle(figure)
		if err != nil {
			r.fail("%q is no angle", figure)
		}
		if side == "left" {
			return -a
		}
		return a
	}
	floor, back, deep := r.length(shape["floor up"]), r.length(shape["up at"]), r.length(shape["deep"])
	h := frame.Housing{
		Face: r.face(shape["face"]), At: r.length(row["centre"]), Width: r.length(shape["wide"]), Depth: deep, Floor: floor,
		Skew: lean(shape["sides"]), Rise: -lean(shape["floor falls"]),
	}
	h.Slope = math.Atan((back-floor)/deep - math.Tan(h.Skew)*math.Tan(h.Rise))
	r.m.Features = append(r.m.Features, h)
}

// skewWords are what the marking list says of a cut that is turned across the
// width.
var skewWords = regexp.MustCompile(`^(skew|compound)(?:, long point (.+?))?; (.+?) (longer|shorter) on the (.+)$`)

// skewCut makes such a cut: its line on the main face as that of any other, its
// turn of what it is longer or shorter by on the other side.
func (r *rebuilder) skewCut(name string, row cells) {
	said := skewWords.FindStringSubmatch(row["work"])
	if said == nil {
		r.fail("%q does not say how the end is cut", row["work"])
		return
	}
	c := frame.EndCut{End: frame.FaceStart, Cut: said[1], At: r.length(row["from"])}
	if strings.HasPrefix(name, "right") || strings.HasPrefix(name, "outer") {
		c.End = frame.FaceEnd
		r.m.Length++ // the cut makes the long point: its rounding must not leave a flat there
	}
	if said[2] != "" {
		near, far := r.length(row["from"]), r.length(row["to"])
		if (said[2] == "top") != (c.End == frame.FaceStart) {
			near, far = far, near
		}
		c.At, c.Slope = near, math.Atan((far-near)/r.m.Section.Depth)
	}
	more := r.length(said[3])
	if (said[4] == "shorter") != (c.End == frame.FaceStart) {
		more = -more
	}
	if r.face(said[5]) == r.m.Faces()[0] { // the list is of the other side
		c.At, more = c.At+more, -more
	}
	// The tilt of the blade is the finer figure.
	for _, saw := range r.card["saw settings"] {
		if tilt, err := measure.ParseAngle(saw["blade tilt"]); err == nil && (c.End == frame.FaceStart) == (saw["cut"] == "left end" || saw["cut"] == "house end") {
			more = math.Copysign(r.m.Section.Width*math.Tan(tilt)/math.Cos(c.Slope), more)
		}
	}
	c.Plan = math.Atan(more / r.m.Section.Width)
	if c.End == frame.FaceStart { // the tape is hooked on the long point
		c.At -= min(c.Meets(r.m, 0, 0), c.Meets(r.m, 0, r.m.Section.Depth), c.Meets(r.m, r.m.Section.Width, 0), c.Meets(r.m, r.m.Section.Width, r.m.Section.Depth))
	}
	r.m.Features = append(r.m.Features, c)
}

func (r *rebuilder) seat(row cells) {
	run, rest, _ := strings.Cut(row["work"], " long to the end")
	s := frame.SeatCut{End: frame.FaceEnd, At: r.length(row["from"]), Run: r.length(run)}
	if strings.Contains(rest, "shoulder") {
		s.End = frame.FaceStart
	}
	s.Angle = r.angle(map[frame.Face]string{frame.FaceStart: "seat, house end", frame.FaceEnd: "seat, outer end"}[s.End])
	r.m.Features = append(r.m.Features, s)
}

// row is the first row of the marking list whose mark begins with a name.
func (r *rebuilder) row(name string) (cells, bool) {
	for _, row := range r.card["marking list"] {
		if strings.HasPrefix(row["mark"], name) {
			return row, true
		}
	}
	return nil, false
}

// check makes a check across the member from its edges and its depth.
func (r *rebuilder) check(row cells) {
	deep, from, ok := strings.Cut(row["work"], " deep from the ")
	if !ok {
		r.fail("%q does not say how deep the check is", row["work"])
		return
	}
	lo, hi := -1.0, r.m.Length+1 // beyond the ends
	if row["from"] != "" {
		lo = r.length(row["from"])
	}
	if row["to"] != "" {
		hi = r.length(row["to"])
	}
	r.m.Features = append(r.m.Features, frame.Check{Face: r.face(from), At: (lo + hi) / 2, Width: hi - lo, Depth: r.length(deep)})
}

// notchWords are what the marking list says of a birdsmouth.
var notchWords = regexp.MustCompile(`^heel (.+?), seat (.+?)(?:, shoulder (.+))?$`)

// birdsmouth makes the notch. Where the seat runs out at the underside, its
// length is the finer figure: the heel height follows from it.
func (r *rebuilder) birdsmouth(row cells) {
	said := notchWords.FindStringSubmatch(row["work"])
	if said == nil {
		r.fail("%q does not say how the birdsmouth is cut", row["work"])
		return
	}
	n := frame.Birdsmouth{At: r.length(row["centre"]), Heel: r.length(said[1]), Over: r.length(said[2]), Angle: r.angle("birdsmouth")}
	if said[3] == "" && n.Angle > 0 {
		n.Heel = r.m.Section.Depth/math.Cos(n.Angle) - n.Over*math.Tan(n.Angle)
	}
	if end, ok := r.row("outer end"); ok && end["from"] == row["centre"] {
		// The rafter ends at the heel: the notch goes on past it, at the same level.
		n.At, n.Heel, n.Over = n.At+1, n.Heel-math.Sin(n.Angle), n.Over+math.Cos(n.Angle)
	}
	if math.Abs(n.At*math.Cos(n.Angle)-n.Over) < 1 {
		n.Over++ // the seat goes on to the house end, and rounding must leave nothing there
	}
	r.m.Features = append(r.m.Features, n)
}

// bevel makes the splay under a tail, from where it runs out to the nose.
func (r *rebuilder) bevel(row cells) {
	nose, _, _ := strings.Cut(strings.TrimPrefix(row["work"], "up to "), " of plumb nose")
	end, ok := r.row("outer end")
	if !ok {
		r.fail("the outer end is not in the list")
		return
	}
	t := frame.TailBevel{At: r.length(end["from"]), Nose: r.length(nose)}
	if strings.HasPrefix(end["work"], frame.CutPlumb) {
		t.Angle = r.angle("outer end")
		r.m.Length++ // plumb cut and splay meet at the long point: its rounding must not cut off their corner
	}
	sin, cos := math.Sincos(t.Angle)
	x, z := t.At+t.Nose*sin, r.m.Section.Depth-t.Nose*cos
	t.Splay = math.Atan2(z, x-r.length(row["from"])) - t.Angle
	r.m.Features = append(r.m.Features, t)
}

// shape makes a shaped end of the points of its outline.
func (r *rebuilder) shape(name string) {
	s := frame.Shape{End: frame.FaceEnd, Name: name}
	past := 0.0
	for _, row := range r.card["outline"] {
		if row["point"] == "corner" {
			if at := strings.TrimPrefix(row["title"], "outline of the "); at == "left end" || at == "house end" {
				s.End = frame.FaceStart
			}
			continue
		}
		p := frame.EndPoint{Back: r.length(row["back"]), Down: r.length(row["down"])}
		switch row["line to it"] {
		case "round":
			p.Round = r.length(row["radius"])
		case "hollow":
			p.Hollow = r.length(row["radius"])
		}
		past = max(past, -p.Back)
		s.Points = append(s.Points, p)
	}
	if len(s.Points) == 0 {
		r.fail("there is no outline of the %s", name)
		return
	}
	s.At = r.m.Length - past
	if s.End == frame.FaceStart {
		s.At = past
	}
	r.m.Features = append(r.m.Features, s)
}
