package sheets

import (
	"cmp"
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// Lengths of plain timber on the paper, mm (own).
const (
	plainStub  = 3.5 // left standing at each side of a break, at least
	plainLeast = 2*plainStub + draw.BreakGap

	wantedPlain = 40.0  // of a stretch between two features, at most
	wantedWhole = 100.0 // a member no longer than this is not broken without need
)

// busy lists the stretches along the member where there is something: features
// and the other lines that are drawn on it. They are in order and apart.
func (s *timber) busy() []span {
	out := []span{{0, 0}, {s.Length, s.Length}}
	for _, f := range s.Features {
		for _, c := range s.Taken(f) {
			b := c.Bounds()
			out = append(out, span{b.Min.X, b.Max.X})
		}
		for _, b := range f.Bores(s.Member) {
			reach := b.Dir.X * b.Depth
			r := b.Radius * math.Sqrt(1-b.Dir.X*b.Dir.X)
			out = append(out, span{b.At.X + min(0, reach) - r, b.At.X + max(0, reach) + r})
		}
	}
	for _, l := range s.lines() {
		out = append(out, span{l.at - l.half, l.at + l.half})
	}
	for _, r := range s.behind() {
		out = append(out, span{r.X0, r.X1})
	}
	for _, w := range s.strapWorks() {
		out = append(out, span{w.stops[0].at, w.stops[1].at})
	}
	for i := range out {
		out[i].lo, out[i].hi = max(0, out[i].lo), min(s.Length, out[i].hi)
	}
	slices.SortFunc(out, func(a, b span) int { return cmp.Or(cmp.Compare(a.lo, b.lo), cmp.Compare(a.hi, b.hi)) })
	joined := out[:1]
	for _, b := range out[1:] {
		last := &joined[len(joined)-1]
		if b.lo <= last.hi {
			last.hi = max(last.hi, b.hi)
			continue
		}
		joined = append(joined, b)
	}
	return joined
}

// stretches are what a drawing shows of a member: the busy stretches, and
// between each two of them plain timber, of which some must be left out because
// another part of the drawing shows what is on it.
type stretches struct {
	busy []span
	omit []bool // between busy[i] and busy[i+1]
}

// within are the stretches that the part of a drawing from lo to hi shows; both
// ends of the member are in every part.
func within(busy []span, lo, hi float64) stretches {
	var out stretches
	left := false // something was left out since the last one
	for i, b := range busy {
		if i > 0 && i < len(busy)-1 && (b.hi < lo || b.lo > hi) {
			left = true
			continue
		}
		if len(out.busy) > 0 {
			out.omit = append(out.omit, left)
		}
		out.busy, left = append(out.busy, b), false
	}
	return out
}

// breaks leaves out of the plain stretches what makes the member longer than
// width on the paper. It reports false if even the least leaves no room.
func (s stretches) breaks(scale, width float64) ([]draw.Break, bool) {
	room := width
	var plain, free []float64 // on the paper; all, and those that need not be broken
	for i, b := range s.busy {
		room -= (b.hi - b.lo) * scale
		if i == 0 {
			continue
		}
		plain = append(plain, (b.lo-s.busy[i-1].hi)*scale)
		if s.omit[i-1] {
			room -= plainLeast
		} else {
			free = append(free, plain[i-1])
		}
	}
	longest, keep, ok := shorten(free, room)
	if !ok {
		return nil, false
	}
	var out []draw.Break
	for i, p := range plain {
		left := keep
		switch {
		case s.omit[i]:
			left = plainLeast
		case p < longest:
			continue
		}
		stub := (left - draw.BreakGap) / 2 / scale
		from, to := s.busy[i].hi+stub, s.busy[i+1].lo-stub
		if from < to { // else the stretch is shorter than what a break leaves of it
			out = append(out, draw.Break{From: from, To: to})
		}
	}
	return out, true
}

// wanted is the length on the paper at which the member reads well.
func (s stretches) wanted(scale float64) float64 {
	sum := 0.0
	for i, b := range s.busy {
		sum += (b.hi - b.lo) * scale
		if i > 0 {
			sum += min((b.lo-s.busy[i-1].hi)*scale, wantedPlain)
		}
	}
	return max(sum, wantedWhole)
}

// cutUp divides a member into n parts with about as many busy stretches each,
// and returns the places between them.
func cutUp(busy []span, n int) []float64 {
	var out []float64
	for k := 1; k < n; k++ {
		i := len(busy) * k / n
		out = append(out, (busy[i-1].hi+busy[i].lo)/2)
	}
	return out
}

// shorten finds which of the stretches to break so that all fit in room: those
// of at least the length from, all to the length keep. It breaks as few as may
// be, and those of about one length alike.
func shorten(plain []float64, room float64) (from, keep float64, ok bool) {
	sorted := slices.Clone(plain)
	slices.SortFunc(sorted, func(a, b float64) int { return cmp.Compare(b, a) })
	rest := 0.0
	for _, p := range sorted {
		rest += p
	}
	if rest <= room {
		return math.Inf(1), 0, true
	}
	for i, p := range sorted {
		rest -= p
		if i+1 < len(sorted) && sorted[i+1] > alikePart*p {
			continue
		}
		if keep = (room - rest) / float64(i+1); keep >= plainLeast && keep <= p {
			return p, keep, true
		}
	}
	return 0, 0, false
}

// alikePart is the ratio above which two plain stretches read as equally long.
const alikePart = 0.97

// markLine is a line on the member that is no cut: a stud behind it, the ground.
type markLine struct {
	at, half float64
	name     string
	row      string // the dimension row that it stands in
	of       string // which of those alike it is for; empty: all
}

// The rows of lines.
const (
	studRow   = "studs"
	joinRow   = "joints"
	groundRow = "ground"
	rafterRow = "rafters"
	landRow   = "rafters here"
	postRow   = "posts"
)

// The names of the lines round a post.
const (
	groundLine   = "ground line"
	concreteLine = "top of concrete"
)

// lines are the lines to be marked or shown on the member.
func (s *timber) lines() []markLine {
	joins := s.joinLines()
	switch s.Kind {
	case frame.KindPlate:
		return append(append(joins, s.studLines()...), s.landLines()...)
	case frame.KindBeam:
		return append(append(joins, s.landLines()...), s.postLines()...)
	case frame.KindPost:
		return append(joins, s.groundLines()...)
	case frame.KindBatten:
		return append(joins, s.rafterLines()...)
	case frame.KindLath:
		return append(joins, s.battenLines()...)
	}
	return joins
}

// joinLines are where the parts of a member meet that is longer than any stick.
func (s *timber) joinLines() []markLine {
	var out []markLine
	for _, u := range s.frame.Splices(s.index) {
		out = append(out, markLine{at: u, name: "join", row: joinRow})
	}
	return out
}

// behind are the packers behind the main face, along the member and across the
// face.
func (s *timber) behind() []draw.Rect {
	var out []draw.Rect
	for _, j := range s.frame.Joints {
		if j.A != s.index || j.B < 0 || s.frame.Members[j.B].Kind != frame.KindPacker {
			continue
		}
		k := s.frame.Members[j.B]
		face, _ := s.FacePlane(s.mainFace())
		corner := func(u, v float64) geom.Pt {
			p := s.where.Local(k.Place.Point(geom.V(u, v, 0)))
			if face.N.Y != 0 {
				return geom.P(p.X, p.Z)
			}
			return geom.P(p.X, p.Y)
		}
		out = append(out, draw.Bounds(corner(0, 0), corner(k.Length, k.Section.Width)))
	}
	return out
}

// studLines are the centres of the studs behind a plate.
func (s *timber) studLines() []markLine {
	var out []markLine
	for _, x := range s.job.Wall.Studs {
		if u := s.where.Local(geom.V(x, 0, 0)).X; u >= 0 && u <= s.Length {
			out = append(out, markLine{at: u, name: s.job.Wall.StudName(), row: studRow})
		}
	}
	return out
}

// groundLines are where the posts that are alike leave the ground, and to where
// they stand in concrete.
func (s *timber) groundLines() []markLine {
	out := s.uprightLines(groundLine, func(p frame.Post) (float64, bool) { return p.Ground, true })
	return append(out, s.uprightLines(concreteLine, func(p frame.Post) (float64, bool) {
		return p.Ground + p.Footing.Collar, p.Base == frame.InConcrete && p.Footing.Collar > 0
	})...)
}

// uprightLines are lines at a level that each post has for itself, if it has it.
func (s *timber) uprightLines(name string, level func(frame.Post) (float64, bool)) []markLine {
	var out []markLine
	var posts [][]frame.Member
	for _, p := range s.alike {
		g, ok := level(s.job.Posts.At[p.No-1])
		if !ok {
			continue
		}
		u := p.Place.Local(geom.V(0, 0, g)).X
		if u <= 0 || u >= s.Length {
			continue
		}
		i := slices.IndexFunc(out, func(l markLine) bool { return math.Abs(l.at-u) < onTear })
		if i < 0 {
			i = len(out)
			out = append(out, markLine{at: u, name: name, row: groundRow})
			posts = append(posts, nil)
		}
		posts[i] = append(posts[i], p)
	}
	for i := range out {
		if len(out) > 1 {
			out[i].of = ", number " + numbers(posts[i])
		}
	}
	return out
}

// landLines are the centres of the rafters on a carrier whose own shape does
// not show them.
func (s *timber) landLines() []markLine {
	var out []markLine
	for _, k := range s.frame.Setout.Carriers {
		if k.Kind != s.Kind || ofCarrier(k).land == "" {
			continue
		}
		for _, x := range s.frame.Setout.Rafters {
			if u := s.where.Local(geom.V(x, 0, 0)).X; u >= 0 && u <= s.Length {
				out = append(out, markLine{at: u, half: s.job.Rafters.Section.Width / 2, name: "rafter", row: landRow, of: ofCarrier(k).land})
			}
		}
	}
	return out
}

// postLines are the centres of the posts under a beam that no rod holds to them:
// the holes of rods show where the others stand.
func (s *timber) postLines() []markLine {
	if s.Kind != frame.KindBeam || slices.ContainsFunc(s.Features, func(f frame.Feature) bool {
		h, ok := f.(frame.Hole)
		return ok && h.Use == frame.UseRod
	}) {
		return nil
	}
	var out []markLine
	for _, b := range s.frame.Of(frame.KindPost) {
		middle := b.Place.Point(geom.V(b.Length, b.Section.Width/2, b.Section.Depth/2))
		if u := s.where.Local(middle).X; u >= 0 && u <= s.Length {
			out = append(out, markLine{at: u, name: "post", row: postRow, of: b.Mark})
		}
	}
	return out
}

// rafterLines are the centres of the rafters under a batten.
func (s *timber) rafterLines() []markLine {
	var out []markLine
	for _, x := range s.frame.Setout.Rafters {
		u := s.where.Local(geom.V(x, 0, 0)).X
		if u < 0 || u > s.Length { // a beam on the skew cuts it short
			continue
		}
		out = append(out, markLine{at: u, half: s.job.Rafters.Section.Width / 2, name: "rafter", row: rafterRow})
	}
	return out
}

// battenLines are the centres of the battens under a lath.
func (s *timber) battenLines() []markLine {
	var out []markLine
	for _, j := range s.frame.Joints {
		if j.A == s.index && j.Kind == frame.JointLathBatten {
			out = append(out, markLine{at: s.where.Local(j.At).X, half: s.job.Battens.Section.Width / 2, name: "batten", row: rafterRow})
		}
	}
	return out
}
