package template

import (
	"fmt"
	"math"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// plan is how a work is to be shown and what is to be said of it.
type plan struct {
	title   string
	options [][]part     // ways to show it; the first that fits a page is taken
	all     []part       // what would show all of it; none: the first way does
	splits  [][]share    // where no way fits a page: ways to part it, of which the first is taken whose every share does
	cross   geom.Vec     // the datum cross, in the member's axes
	datum   string       // where that is, in words
	through bool         // a centre line runs across the timber through the cross
	along   []frame.Face // those with a centre line along the timber
	notes   []string
	bands   []band
	extra   func(*piece) // draws what the solid does not show
	reading string       // of the datum cross, where the piece has one only
}

// Measures of templates on the timber, mm (own).
const (
	beside     = 35.0 // of plain timber beside a cut, for words and tape
	plainEnd   = 60.0 // of plain timber before an end that is cut
	beyondEnd  = 15.0 // of waste beyond it
	lip        = 25.0 // of a face that is folded over only to hold the paper
	skirt      = 18.0 // of a post's faces below what is cut of its top, and
	skirtLeast = 30.0 // of them in all
)

// planOf says how a work is shown.
func (m *maker) planOf(w work) plan {
	var housing *frame.Housing
	var hole *frame.Hole
	var check *frame.Check
	var brace *frame.BraceHousing
	atEnd := false
	for _, f := range w.features {
		switch f := f.(type) {
		case frame.Housing:
			if housing == nil {
				housing = &f
			}
		case frame.Hole:
			if hole == nil {
				hole = &f
			}
			atEnd = atEnd || f.Face == frame.FaceEnd
		case frame.Chamfer:
			if f.Seat < same {
				return m.slopePlan(w, f)
			}
			atEnd = true
		case frame.Check:
			check = &f
		case frame.CheckOut:
			return m.checkOutPlan(w, f)
		case frame.BraceHousing:
			brace = &f
		}
	}
	switch {
	case w.start || w.end:
		return m.endPlan(w)
	case brace != nil:
		return m.bracePlan(w, *brace)
	case housing != nil:
		return m.housingPlan(w, *housing)
	case atEnd:
		return m.topPlan(w)
	case hole != nil:
		return m.holePlan(w, *hole)
	}
	if check != nil && len(w.features) == 1 {
		return m.checkPlan(w, *check)
	}
	return m.roundPlan(w)
}

// whole is the part of a member's box between two places along it.
func whole(t frame.Member, u0, u1 float64) geom.Box3 {
	return geom.Box3{Min: geom.V(u0, 0, 0), Max: geom.V(u1, t.Section.Width, t.Section.Depth)}
}

// housingPlan shows a housing on the face that it is let into and, since it
// runs out there, on the top; and on an end where it runs out, too.
func (m *maker) housingPlan(w work, h frame.Housing) plan {
	t := w.member
	u0, u1 := max(0, w.a-beside), min(t.Length, w.b+beside)
	place := ""
	var ends []frame.Face
	if u0 == 0 {
		place = ", at its " + m.say().end(t.Kind, true)
		if w.a < same {
			ends = append(ends, frame.FaceStart)
		}
	}
	if u1 == t.Length {
		place = ", at its " + m.say().end(t.Kind, false)
		if w.b > t.Length-same {
			ends = append(ends, frame.FaceEnd)
		}
	}
	option := func(box geom.Box3, top geom.Box3) []part {
		parts := []part{{h.Face, base, box}, {frame.FaceTop, 0, top}}
		for _, e := range ends {
			parts = append(parts, part{e, 0, box})
		}
		return parts
	}
	full := whole(t, u0, u1)
	low := full
	if rest := h.Floor - beside; rest > lip {
		low.Min.Z = rest
	}
	thin := full
	reach := h.Depth
	plane, _ := t.FacePlane(h.Face)
	for _, b := range w.bores {
		reach = max(reach, -plane.Dist(b.At)+b.Radius)
	}
	thin.Min.Y, thin.Max.Y = alongside(t, h.Face, reach+lip/2)
	p := plan{
		title:   fmt.Sprintf("Housing in the %s%s", t.Kind, place),
		options: [][]part{option(full, full), option(low, full), option(low, thin)},
		cross:   t.OnFace(h.Face, h.At, t.Section.Depth),
		through: true,
	}
	rafter := h.Width - m.job.Rafters.Clearance
	p.notes = []string{m.housingNote(h, rafter)}
	if len(ends) > 0 {
		p.notes = append(p.notes, "Here the fold over the end of the timber gives the place; the reading only checks it.")
	}
	for _, side := range []float64{-1, 1} {
		p.bands = append(p.bands, band{
			what: "rafter", face: h.Face, at: t.OnFace(h.Face, h.At+side*h.Width/2, h.Floor),
			grow: geom.V(side, 0, 0), run: geom.V(0, 0, -1), size: rafter, share: 0.5,
		})
	}
	m.strapMarks(&p, w, full)
	for _, f := range w.features {
		if hole, ok := f.(frame.Hole); ok {
			p.title = fmt.Sprintf("Housing and %s hole in the %s%s", hole.Use, t.Kind, place)
			p.notes = append(p.notes, m.holeNote(hole, t))
		}
	}
	return p
}

func (m *maker) housingNote(h frame.Housing, rafter float64) string {
	floor := "level to the back"
	switch rise := h.FloorInside() - h.Floor; {
	case m.fine.Round(rise) > 0:
		floor = "rising " + m.fine.Length(rise) + " to the back"
	case m.fine.Round(rise) < 0:
		floor = "falling " + m.fine.Length(-rise) + " to the back"
	}
	return fmt.Sprintf("Cut %s deep. Width %s for a rafter of %s: measure the rafter and keep the same play. Floor %s above the bottom edge at the face, %s.",
		m.fine.Length(h.Depth), m.fine.Length(h.Width), m.fine.Length(rafter), m.fine.Length(h.Floor), floor)
}

// alongside is the stretch across the width that lies within reach of a face.
func alongside(t frame.Member, f frame.Face, reach float64) (from, to float64) {
	if p, _ := t.FacePlane(f); p.N.Y > 0 {
		return max(0, t.Section.Width-reach), t.Section.Width
	}
	return 0, min(t.Section.Width, reach)
}

// wraps are the ways to wrap a work of a lying timber: left, top, right, bottom;
// or, on less paper, without the top or the bottom, or with no more of the right
// than is cut; or without the right, if the cut can be ruled there between the top
// and the bottom; or without both, if it can be squared across the bottom.
func wraps(w work, box geom.Box3) [][]part {
	f := w.member.Faces()
	left, right, bottom, top := f[0], f[1], f[2], f[3]
	all := []part{{left, base, box}, {top, 0, box}, {right, 1, box}, {bottom, 2, box}}
	if high := w.highest(); high < w.member.Section.Depth-same { // the top is not cut
		low := lipOf(box, geom.V(0, 0, -1), high+lip)
		return [][]part{
			all,
			{{left, base, box}, {bottom, 0, box}, {right, 1, box}},
			{{left, base, box}, {bottom, 0, box}, {right, 1, low}},
		}
	}
	out := [][]part{all, all[:3]}
	if w.ruled(part{right, base, box}) {
		out = append(out, []part{{left, base, box}, {top, 0, box}, {bottom, 0, box}})
		if w.square(part{top, base, box}) {
			out = append(out, []part{{left, base, box}, {top, 0, box}})
		}
	}
	return out
}

// square reports whether every cut line on the top or the bottom runs square
// across it.
func (w work) square(p part) bool {
	f := unfold(w.member, []part{p}, geom.Vec{})[0]
	for _, l := range w.on(f).lines {
		if math.Abs(f.timber(l[0]).X-f.timber(l[1]).X) > same {
			return false
		}
	}
	return true
}

// ruled reports whether every cut line on a side runs from its top arris to its
// bottom arris, so that the ends of the lines on the faces beside it give it.
func (w work) ruled(side part) bool {
	f := unfold(w.member, []part{side}, geom.Vec{})[0]
	for _, l := range w.on(f).lines {
		for _, q := range l {
			if z := f.timber(q).Z; z > same && z < w.member.Section.Depth-same {
				return false
			}
		}
	}
	return true
}

// endPlan wraps the end of a sloping timber.
func (m *maker) endPlan(w work) plan {
	t := w.member
	u0, u1 := -beyondEnd, w.b+plainEnd
	if w.end {
		u0, u1 = w.a-plainEnd, t.Length+beyondEnd
	}
	box := whole(t, u0, u1)
	p := plan{
		title:   fmt.Sprintf("%s of the %s", sentence(m.say().end(t.Kind, w.start)), plural(t.Kind)),
		options: wraps(w, box),
		along:   []frame.Face{frame.FaceTop, frame.FaceBottom},
	}
	for _, f := range w.features {
		switch f := f.(type) {
		case frame.EndCut:
			p.cross = geom.V(f.At, 0, t.Section.Depth)
			p.datum = "where the cut meets the top left arris"
			p.notes = append(p.notes, m.endNote(f, t))
		case frame.TailBevel:
			p.notes = append(p.notes, m.tailNote(f))
		case frame.Shape:
			p.cross = geom.V(f.At, 0, t.Section.Depth)
			p.datum = "the corner where the square end meets the top left arris"
			p.notes = append(p.notes, "Prick or trace the outline through on both sides, or cut a pattern by it.")
		case frame.SeatCut:
			p.notes = append(p.notes, fmt.Sprintf("Level seat %s long, %s taken off at its deep end.", m.fine.Length(f.Run), m.fine.Length(f.Shoulder())))
		case frame.Birdsmouth:
			p.notes = append(p.notes, m.birdsmouthNote(f, t))
		case frame.Hole:
			p.notes = append(p.notes, m.holeNote(f, t))
		}
	}
	switch {
	case t.Kind == frame.KindBrace:
		p.notes = append(p.notes, "Left and right braces are the same stick. Try the first in every corner before the others are cut.")
	case w.end:
		p.notes = append(p.notes, fmt.Sprintf("Hold this cut until the distance from %s to %s is measured at every rafter.", m.rearName(), m.frame.Setout.Front().Short))
	}
	p.splits = [][]share{m.bothSides(p, w, box, frame.FaceTop)}
	return p
}

// endNote says how an end is cut. How a brace leans is seen from its lines.
func (m *maker) endNote(f frame.EndCut, t frame.Member) string {
	angle := m.figures.Angle(math.Abs(f.Slope))
	if t.Kind != frame.KindBrace {
		angle += " from square on the sides, " + m.figures.Slope(f.Slope)
	} else {
		angle += " from square on the sides"
	}
	return fmt.Sprintf("%s cut: %s.", sentence(f.Cut), angle)
}

// topPlan is a cap over the end of a post: the end, with the four faces folded
// down.
func (m *maker) topPlan(w work) plan {
	t := w.member
	top := whole(t, t.Length-max(skirtLeast, t.Length-w.a+skirt), t.Length)
	faces := t.Faces()
	cap := func(names ...frame.Face) []part {
		parts := []part{{frame.FaceEnd, base, top}}
		for _, f := range names {
			parts = append(parts, part{f, 0, top})
		}
		return parts
	}
	left, right, outer, house := faces[0], faces[1], faces[2], faces[3]
	p := plan{
		title:   "Top of the " + plural(t.Kind),
		options: [][]part{cap(outer, left, house, right), cap(outer, left, house), cap(house, left)},
		cross:   geom.V(t.Length, t.Section.Width/2, 0),
		notes:   []string{fmt.Sprintf("First cut the post square at its top%s. Then set the cap over it, its arrow %s.", m.seated(), m.say().inwards(t.Kind))},
		through: true,
	}
	for _, f := range w.features {
		switch f := f.(type) {
		case frame.Chamfer:
			p.notes = append(p.notes, fmt.Sprintf("Level for %s from the outer side; behind that slope the top %s down to the %s.", m.fine.Length(f.Seat), m.figures.Angle(f.Angle), m.say().face(t.Kind, frame.FaceHouse)))
			if m.onPosts() && math.Abs(f.Seat-m.job.Beam.Section.Width) < same {
				p.bands = append(p.bands, band{
					what: "beam", face: frame.FaceEnd, at: geom.V(t.Length, tickStart, f.Seat),
					grow: geom.V(0, 0, 1), run: geom.V(0, 1, 0), size: f.Seat, share: 1, onCut: true,
				})
			}
		case frame.Hole:
			p.notes = append(p.notes, m.holeNote(f, t))
		}
	}
	return p
}

// onPosts reports whether the beam sits on the posts' tops.
func (m *maker) onPosts() bool {
	meet := m.job.Posts.Meet.Meeting
	return meet == frame.OnTop || meet == ""
}

// seated says what comes on the posts' tops, if anything does.
func (m *maker) seated() string {
	switch {
	case m.onPosts():
		return ", where the beam sits"
	case m.job.Posts.Meet.RunsUp():
		return ""
	}
	return ", where the bracket sits"
}

// holePlan shows holes on the face that they are drilled from, with lips over
// the arrises beside it.
func (m *maker) holePlan(w work, h frame.Hole) plan {
	t := w.member
	u0, u1 := w.a-beside, w.b+beside
	plane, _ := t.FacePlane(h.Face)
	p := plan{
		title: fmt.Sprintf("%s %s of the %s", sentence(h.Use), map[bool]string{true: "holes", false: "hole"}[t.Kind != frame.KindPacker], plural(t.Kind)),
		cross: h.Mouth, through: true, along: []frame.Face{h.Face},
	}
	p.notes = m.holeNotes(w)
	if t.Kind == frame.KindPacker {
		p.through, p.along = false, nil // the hole has a cross of its own
		p.options = [][]part{
			{{h.Face, base, whole(t, 0, t.Length)}},
			{{h.Face, base, whole(t, 0, u1)}}, // from the end that it is measured from
			{{h.Face, base, whole(t, max(0, u0), min(t.Length, u1))}},
		}
		p.notes = append(p.notes, fmt.Sprintf("The packer is %s.", m.figures.Size(t.Length, t.Section.Width)))
		return p
	}
	box := whole(t, u0, u1)
	parts := []part{{h.Face, base, box}}
	for _, f := range across(t, plane.N) {
		parts = append(parts, part{f, 0, lipOf(box, plane.N, lip)})
	}
	n, _ := t.FacePlane(parts[1].face)
	p.cross = onArris(h.Mouth, n)
	p.options = [][]part{parts, parts[:2]}
	if low := lipOf(box, n.N, w.reach(n)); low != box {
		p.options = append(p.options, []part{{h.Face, base, low}, parts[1]})
	}
	p.splits = [][]share{m.rowsOf(p, w, h, parts)}
	return p
}

// onArris moves a point of a face to the arris where it meets another.
func onArris(p geom.Vec, other geom.Plane) geom.Vec { return p.Sub(other.N.Mul(other.Dist(p))) }

// across lists the two long faces beside the one that points along n, the one
// that is first to locate by in front: the top, or the outer side.
func across(t frame.Member, n geom.Vec) []frame.Face {
	f := t.Faces()
	switch {
	case n.Y == 0: // top or bottom, or the outer or house side of what stands
		return []frame.Face{f[0], f[1]}
	case upright(t.Kind):
		return []frame.Face{f[2], f[3]}
	}
	return []frame.Face{f[3], f[2]}
}

// lipOf is what of a box lies within reach of one of its faces, whose outward
// direction is n.
func lipOf(box geom.Box3, n geom.Vec, reach float64) geom.Box3 {
	switch {
	case n.Y > 0:
		box.Min.Y = max(box.Min.Y, box.Max.Y-reach)
	case n.Y < 0:
		box.Max.Y = min(box.Max.Y, box.Min.Y+reach)
	case n.Z > 0:
		box.Min.Z = max(box.Min.Z, box.Max.Z-reach)
	case n.Z < 0:
		box.Max.Z = min(box.Max.Z, box.Min.Z+reach)
	}
	return box
}

func (m *maker) holeNote(h frame.Hole, t frame.Member) string {
	depth := "right through"
	if !h.Through {
		depth = m.fine.Length(h.Depth) + " deep"
	}
	return fmt.Sprintf("Drill %s for the %s, square to the face, %s.", m.fine.Length(h.Diameter), h.Use, depth)
}

// roundPlan wraps a work of any other kind.
func (m *maker) roundPlan(w work) plan {
	t := w.member
	title, at, end := "Cut in the ", w.a, w.b
	p := plan{through: true}
	for _, f := range w.features {
		switch f := f.(type) {
		case frame.Birdsmouth: // the tape gives its heel's plumb line, at the top edge
			title, at, end = "Birdsmouth of the ", f.At, max(w.b, f.At)
			p.datum = "where the heel's plumb line meets the top left arris"
			p.notes = append(p.notes, m.birdsmouthNote(f, t))
		case frame.TailBevel:
			title = "Tail of the "
			p.notes = append(p.notes, m.tailNote(f))
		}
	}
	box := whole(t, max(0, min(w.a, at)-beside), min(t.Length, end+beside))
	p.title = title + plural(t.Kind)
	p.options = wraps(w, box)
	p.cross = geom.V(at, 0, t.Section.Depth)
	over := frame.FaceTop
	if high := w.highest(); high < t.Section.Depth-same {
		over = frame.FaceBottom
		p.splits = append(p.splits, []share{low(p, w, box, high)})
	}
	p.splits = append(p.splits, m.bothSides(p, w, box, over))
	return p
}

// birdsmouthNote says how large a birdsmouth is.
func (m *maker) birdsmouthNote(n frame.Birdsmouth, t frame.Member) string {
	size := fmt.Sprintf("Heel %s, plumb from the seat to the top edge; level seat %s long", m.fine.Length(n.Heel), m.fine.Length(n.Seat(t.Section.Depth)))
	if s := n.Shoulder(t.Section.Depth); m.fine.Round(s) > 0 {
		size += fmt.Sprintf(", shoulder %s", m.fine.Length(s))
	}
	return size + "."
}

func (m *maker) tailNote(f frame.TailBevel) string {
	return fmt.Sprintf("Plumb nose %s high; below it the splay, %s from level.", m.fine.Length(f.Nose), m.figures.Angle(f.Splay))
}
