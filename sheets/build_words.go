package sheets

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"plumbcut/geom/frame"
)

// saidLevel is a level as it stands in a sentence, kept on one line.
func (m *maker) saidLevel(mm float64) string {
	return strings.ReplaceAll(m.figures.Level(mm), " ", "\u00a0")
}

// saidFine is a length that whole millimetres are too coarse for, kept on one
// line.
func (m *maker) saidFine(mm float64) string {
	return strings.ReplaceAll(m.fine(mm), " ", "\u00a0")
}

// saidTape is a length that is marked on a timber, as its own drawing prints it,
// kept on one line.
func (m *maker) saidTape(mm float64) string {
	return strings.ReplaceAll(m.tapeFigures().Length(mm), " ", "\u00a0")
}

// saidSize is a section, kept on one line.
func (m *maker) saidSize(depth, width float64) string {
	return strings.ReplaceAll(m.figures.Size(depth, width), " ", "\u00a0")
}

// mostListed is the greatest number of figures that a sentence lists.
const mostListed = 8

// saidList lists running lengths, or the first and the last of many.
func (m *maker) saidList(from float64, at []float64) string {
	var all []string
	for _, x := range at {
		all = append(all, m.saidTape(x-from))
	}
	if len(all) > mostListed {
		return all[0] + " to " + all[len(all)-1]
	}
	return joined(all)
}

// count is a number with its noun: "1 post", "3 posts".
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return strconv.Itoa(n) + " " + noun + "s"
}

// sentences are the words that apply.
func sentences(all ...string) []string {
	var out []string
	for _, s := range all {
		if s != "" {
			out = append(out, s)
		}
	}
	return out
}

// fixedWords are the same words for every job.
func fixedWords(s string) func(*maker) string { return func(*maker) string { return s } }

func (m *maker) sayMeasure() []string {
	r := m.job.Rafters.Section
	return []string{
		fmt.Sprintf("Mark the datum, %s = ±0, where it will last. All levels are measured from it.", stated(m.job.Levels.Datum)),
		fmt.Sprintf("At %s, the plate's level line, hold a straight edge along the %s. Note how far it bows and leans, and what is in the way.", m.saidLevel(m.rear().Top), m.walling().face),
		m.walling().find(m),
		fmt.Sprintf("Measure every timber as delivered. The drawings take the rafters as %s.", m.saidSize(r.Depth, r.Width)),
	}
}

func (m *maker) holdMeasure() string {
	return "No timber is cut before house and timber are measured and the drawings agree with them."
}

// housingOf is the first housing of a member.
func housingOf(b frame.Member) frame.Housing {
	for _, f := range b.Features {
		if h, ok := f.(frame.Housing); ok {
			return h
		}
	}
	return frame.Housing{}
}

func (m *maker) sayPlate() []string {
	plate, at := m.frame.Timber(m.rear()), m.frame.Setout.Rafters
	from := plate.Place.O.X
	k := m.rear()
	return []string{
		fmt.Sprintf("Cut %s to %s%s. Hook the tape on its left end and mark everything from there; do not step from mark to mark.", plate.Mark, m.said(plate.Length), m.joinWords(frame.KindPlate)),
		fmt.Sprintf("Mark the centres of %d rafters, the first at %s, the last at %s. The drawing of %s has them all.", len(at), m.saidTape(at[0]-from), m.saidTape(at[len(at)-1]-from), plate.Mark),
		ofCarrier(k).mark(m, k),
		fmt.Sprintf("Bore %s Ø%s for the %ss%s.", count(len(m.frame.Setout.PlateFixings), "hole"), m.saidFine(m.job.Plate.Fixing.Hole), m.fixer(), m.rowWords()),
	}
}

// joinWords say where the first member of a kind is joined, if it is longer
// than any stick.
func (m *maker) joinWords(k frame.Kind) string {
	i := slices.IndexFunc(m.frame.Members, func(b frame.Member) bool { return b.Kind == k })
	joins := m.frame.Splices(i)
	if len(joins) == 0 {
		return ""
	}
	return fmt.Sprintf(" in %d parts, joined at %s as the designer states", len(joins)+1, m.saidList(0, joins))
}

// floorWords says how the floor of a housing lies.
func floorWords(h frame.Housing) string {
	switch {
	case h.Slope > 0:
		return " It rises inwards with the fall."
	case h.Slope < 0:
		return " It drops inwards with the fall."
	}
	return " It is level."
}

func (m *maker) holdPlate() string { return m.holdUntil(m.rear()) }

func (m *maker) sayFixPlate() []string {
	s, j := m.frame.Setout, m.job
	var screws []float64
	for _, f := range s.PlateFixings {
		screws = append(screws, f.Along)
	}
	w := m.walling()
	off := fmt.Sprintf("The plate lies on the %s; its outer face is %s from the %s.", w.face, m.said(-s.Rear().Outer), w.face)
	if k := j.Plate.Packer; k.Thickness > 0 {
		off = fmt.Sprintf("Set a packer %s, %s thick, behind each %s, so that water drains. The plate's outer face is then %s from the %s.",
			m.saidSize(k.Height, k.Width), m.said(k.Thickness), m.fixer(), m.said(-s.Rear().Outer), w.face)
	}
	where := fmt.Sprintf("The %ss stand at %s from the left end.", m.fixer(), m.saidList(m.rear().From, screws))
	if len(screws) > mostListed {
		where = fmt.Sprintf("The %d %ss stand at %s from the left end; the framing plan has them all.", len(screws), m.fixer(), m.saidList(m.rear().From, screws))
	}
	return sentences(
		fmt.Sprintf("Strike the plate's level line at %s and prove it at both ends. The plate's top edge goes to it.", m.saidLevel(m.rear().Top)),
		where, off,
		w.drive(m),
		m.blockingWords(),
	)
}

// blockingWords says where there is no stud for a screw.
func (m *maker) blockingWords() string {
	if len(m.job.Wall.Studs) == 0 {
		return ""
	}
	if b := m.blocked(); len(b) > 0 && len(b) <= mostListed {
		return fmt.Sprintf("No %s stands at %s: fix blocking there first.", m.job.Wall.StudName(), joined(b))
	} else if len(b) > 0 {
		return fmt.Sprintf("At %d of them no %s stands: fix blocking there first.", len(b), m.job.Wall.StudName())
	}
	return ""
}

func (m *maker) holdFixPlate() string {
	return m.walling().prove
}

func (m *maker) saySetOut() []string {
	l, r := m.fixedPoints()
	along, out := m.triangle()
	var centres []float64
	posts := m.centresOf(m.front())
	for _, c := range posts {
		centres = append(centres, c.X)
	}
	if k := m.front(); k.Skewed() {
		return sentences(append([]string{
			m.pegWords(m.saidTape(r.X - l.X)),
			fmt.Sprintf("Square off %s at L: %s along, %s out, and %s across.", m.setting().base, m.saidTape(along), m.saidTape(out), m.saidTape(math.Hypot(along, out))),
		}, append(m.saySkewString(k), m.rearSetOut())...)...)
	}
	return sentences(
		m.pegWords(m.saidTape(r.X-l.X)),
		fmt.Sprintf("Square off %s at L: %s along, %s out, and %s across.", m.setting().base, m.saidTape(along), m.saidTape(out), m.saidTape(math.Hypot(along, out))),
		fmt.Sprintf("Stretch a string %s from %s, along the outer faces of the %s, on profiles well clear of the "+m.digs()+".", m.saidTape(-m.postLine()), m.setting().stringFrom, m.frontPosts()),
		fmt.Sprintf("From the square line mark the post centres along it: %s. The centres lie %s inside the string.",
			m.saidList(l.X, centres), m.saidTape(posts[0].Y-m.postLine())),
		m.rearSetOut(),
	)
}

func (m *maker) holdTapes() string {
	l, r := m.fixedPoints()
	posts := m.centresOf(m.front())
	last := posts[len(posts)-1]
	digs := "digs"
	if !m.dug() {
		digs = "drills"
	}
	return fmt.Sprintf("Nobody %s before two tapes agree: %s from L to the centre of post %d, %s from R to that of post 1.", digs,
		m.saidTape(last.Sub(l).Len()), len(posts), m.saidTape(posts[0].Sub(r).Len()))
}

// byPost says something of each post, those that are alike together:
// "−1080 at posts 1 and 2, −1140 at post 3".
func (m *maker) byPost(say func(i int) string) string {
	var order []string
	posts := map[string][]string{}
	for i := range m.job.Posts.At {
		s := say(i)
		if s == "" {
			continue // it has none
		}
		if posts[s] == nil {
			order = append(order, s)
		}
		posts[s] = append(posts[s], strconv.Itoa(i+1))
	}
	if len(order) == 1 {
		return order[0]
	}
	var out []string
	for _, s := range order {
		noun := " at post "
		if len(posts[s]) > 1 {
			noun = " at posts "
		}
		out = append(out, s+noun+joined(posts[s]))
	}
	return strings.Join(out, "; ")
}

func (m *maker) sayDig() []string {
	posts := m.job.Posts.At
	dug := func(say func(i int) string) func(i int) string {
		return func(i int) string {
			if !posts[i].Dug() {
				return ""
			}
			return say(i)
		}
	}
	size := m.byPost(dug(func(i int) string { return strings.ReplaceAll(holeSize(m.figures, posts[i].Footing), " ", "\u00a0") }))
	deep := m.byPost(dug(func(i int) string { return m.said(posts[i].Footing.Depth) }))
	bottom := m.byPost(dug(func(i int) string { return m.saidLevel(posts[i].Ground - posts[i].Footing.Depth) }))
	holes := m.frame.Of(frame.KindFooting)
	whose := ""
	if len(holes) < len(posts) {
		var nos []string
		for _, h := range holes {
			nos = append(nos, strconv.Itoa(h.No))
		}
		whose = " for " + plural("post", len(nos)) + " " + joined(nos)
	}
	return sentences(
		fmt.Sprintf("Dig %s%s, %s, %s deep below finished ground.", count(len(holes), "hole"), whose, size, deep),
		fmt.Sprintf("Check each bottom from the datum: %s.", bottom),
		"Keep the sides plumb and the bottom firm and level; take all loose earth out.",
		m.inDeck(), m.underHouse(),
	)
}

// overTop is how much longer than finished every post is cut at least, mm.
func (m *maker) overTop() float64 {
	least := math.Inf(1)
	for _, p := range m.frame.Pieces() {
		if m.frame.Members[p.Member].Kind == frame.KindPost {
			least = min(least, p.Extra)
		}
	}
	return least
}

func (m *maker) sayPosts() []string {
	posts := m.frame.Of(frame.KindPost)
	spec := m.job.Posts.At
	lengths := m.byPost(func(i int) string { return m.said(posts[i].Length) })
	concrete := ""
	if m.dug() {
		concrete = fmt.Sprintf("Fill the holes with concrete, %s in all", m.figures.Volume(m.frame.Concrete().Net))
		if slices.ContainsFunc(spec, func(p frame.Post) bool { return p.Footing.Collar > 0 }) {
			concrete += fmt.Sprintf(", and slope its top away from the post from %s above the ground", m.byPost(func(i int) string {
				if !spec[i].Dug() {
					return ""
				}
				return m.said(spec[i].Footing.Collar)
			}))
		}
		concrete += "."
	}
	over := "Their tops are cut later: buy them longer."
	if m.overTop() > 0 {
		over = fmt.Sprintf("Leave %s more at the top for now.", m.said(m.overTop()))
	}
	return sentences(
		fmt.Sprintf("Finished lengths: %s. %s", lengths, over),
		strings.TrimSpace(m.fixWords()+" "+m.footWords()),
		"Set the outer faces to the string and the centres to their marks. Plumb them both ways and brace them.",
		concrete,
		m.wallPostWords(),
	)
}

// footWords say what the posts stand on, and where their feet are.
func (m *maker) footWords() string {
	posts, spec := m.frame.Of(frame.KindPost), m.job.Posts.At
	on := m.byPost(func(i int) string { return basings(spec[i].Base).on(m, spec[i]) })
	foot := m.byPost(func(i int) string { return m.saidLevel(posts[i].Place.O.Z) })
	return fmt.Sprintf("Stand the posts %s. Level of the feet: %s.", on, foot)
}

// wallPostWords says how posts are fixed to the walls that come out.
func (m *maker) wallPostWords() string {
	var out []string
	for i, p := range m.job.Posts.At {
		if p.Wall == "" {
			continue
		}
		var up []string
		for _, f := range m.frame.Of(frame.KindPost)[i].Features {
			if h, ok := f.(frame.Hole); ok && h.ToWall() {
				up = append(up, m.saidTape(h.Mouth.X))
			}
		}
		w := fmt.Sprintf("Fix post %d to the side wall with %s", i+1, count(len(m.frame.Setout.PostFixings[i]), m.fixer()))
		if len(up) > 0 && len(up) <= mostListed {
			w += ", " + joined(up) + " up from its foot"
		}
		if p.Packer.Thickness > 0 {
			w += fmt.Sprintf(", a packer %s thick behind each", m.said(p.Packer.Thickness))
		}
		out = append(out, w+".")
	}
	return strings.Join(out, " ")
}

// seatLevel is the level of the posts' seats, the underside of the beam.
func (m *maker) seatLevel() float64 { return m.front().Bottom }

func (m *maker) sayTops() []string {
	k := m.front()
	at := m.meeting(k)
	if m.freestanding() {
		return append([]string{m.lineWords(), m.seatWords()}, at.tops(m, k)...)
	}
	down := m.rear().Top - m.seatOf(k)
	return sentences(append([]string{
		"Carry the plate's level line to every post with a laser or a water level. Check it a second time from the house.",
		fmt.Sprintf("Measure down %s from it: that is %s, at %s, the same at every post.", m.said(down), at.marks, m.saidLevel(m.seatOf(k))),
	}, append(at.tops(m, k), m.braceCutWords(frame.KindPost))...)...)
}

func (m *maker) holdTops() string {
	if m.freestanding() {
		return "Measure both beams before the first post is cut: where one is not as deep as drawn, move its seats by the difference."
	}
	b := m.front().Section.Depth
	return fmt.Sprintf("Measure the beam before the first post is cut: where it is not %s deep, move the seat by the difference.", m.said(b))
}

func (m *maker) sayBeam() []string {
	beam, at := m.frame.Timber(m.front()), m.frame.Setout.Rafters
	k := m.front()
	from := beam.Place.O.X
	names, from0, under := m.beamMarks(k), "its left end", "its underside"
	if len(k.Members) > 1 {
		from0, under = "the left end of the inner one, "+beam.Mark+",", "both undersides"
	}
	if len(k.Members) > 1 && k.Hold == frame.Over {
		from0 = "the left end of each"
	}
	marks := fmt.Sprintf("Cut %s to %s%s and mark the rafters from %s with the plate's own figures.", names, m.said(beam.Length), m.joinWords(frame.KindBeam), from0)
	if k.Skewed() {
		marks = m.skewBeam(k)
	} else if from != m.rear().From {
		marks = fmt.Sprintf("Cut %s to %s%s and mark the rafters from %s: the first at %s, the last at %s.",
			names, m.said(beam.Length), m.joinWords(frame.KindBeam), strings.TrimSuffix(from0, ","), m.saidTape(at[0]-from), m.saidTape(at[len(at)-1]-from))
	}
	return sentences(
		marks,
		ofCarrier(k).mark(m, k),
		m.braceCutWords(frame.KindBeam),
		m.meeting(k).up(m, k)+" "+m.meeting(k).fix(m, k),
		fmt.Sprintf("Check %s: %s all along.", under, m.saidLevel(m.seatLevel())),
	)
}

// beamMarks are the marks of the timbers of a carrier: "B1", "B1 and B2", or of
// two that are alike "both B1".
func (m *maker) beamMarks(k frame.Carrier) string {
	first := m.frame.Members[k.Members[0]].Mark
	switch last := m.frame.Members[k.Members[len(k.Members)-1]].Mark; {
	case len(k.Members) == 1:
		return first
	case first == last:
		return "both " + first
	default:
		return first + " and " + last
	}
}

// rodFix says what holds a beam to its posts.
func (m *maker) rodFix() string {
	if r := m.job.Posts.Rod; r.Diameter > 0 {
		return fmt.Sprintf(" Set a rod Ø%s down through it into each post.", m.saidFine(r.Diameter))
	}
	return " Fix it to every post as the designer states."
}

// leftEndWords says where a beam's left end stands against the first post under
// it.
func (m *maker) leftEndWords(k frame.Carrier) string {
	over := m.job.Posts.At[k.Posts[0]].Along - k.From
	side := "left"
	if over < 0 {
		side = "right"
	}
	return fmt.Sprintf("%s to the %s of the centre of post %d", m.saidTape(math.Abs(over)), side, k.Posts[0]+1)
}

func (m *maker) sayPattern() []string {
	s := m.frame.Setout
	tapes, slip := m.frameTapes(), m.slips()[1]
	a, b := tapes.lengths(0)
	diagonals := fmt.Sprintf("both diagonals are %s", m.saidTape(a))
	if f := m.tapeFigures(); f.Round(a) != f.Round(b) {
		diagonals = fmt.Sprintf("the diagonals are %s from the %s's left end and %s from its right", m.saidTape(a), m.rear().Short, m.saidTape(b))
	}
	rafter := m.frame.Of(frame.KindRafter)[0]
	line := rafter.EndCut(frame.FaceEnd).At - rafter.EndCut(frame.FaceStart).At
	cuts := ""
	for _, k := range s.Carriers {
		cuts += "; " + ofCarrier(k).cut(m, k)
	}
	square := fmt.Sprintf("Tape from %s to the %s's, end to end crosswise: %s. Shift the %s until it is so; %s of slip shows as %s.",
		m.tapeArris(), m.front().Short, diagonals, m.front().Short, m.said(slip), m.saidTape(math.Abs(tapes.differ(slip)-tapes.differ(0))))
	if s.Front().Skewed() {
		return append([]string{square}, m.skewPattern(line, cuts)...)
	}
	return []string{
		square,
		fmt.Sprintf("Measure the clear distance from %s to %s at every rafter. The drawings have %s.", m.rear().Short, m.front().Short, m.said(s.Rear().Outer-s.Front().Inner)),
		fmt.Sprintf("Cut the straightest rafter first, %s along its top%s.", m.saidTape(line), cuts),
		fmt.Sprintf("Try it at the first, the middle and the last place: it bears at both ends, and its top stands %s at the %s.", m.dropWords(m.rear().Top-m.frame.RafterTop(s.Rear().Outer)), m.rear().Short),
	}
}

// dropWords says how a rafter's top stands to the top of the plate.
func (m *maker) dropWords(drop float64) string {
	switch {
	case m.figures.Round(drop) == 0:
		return "level with the top"
	case drop < 0:
		return m.said(-drop) + " above the top"
	}
	return m.said(drop) + " below the top"
}

func (m *maker) sayRafters() []string {
	s, sl := m.frame.Setout, m.frame.Slope
	n := len(s.Rafters)
	fall := "Check that they lie level."
	if sl.Angle > 0 {
		fall = fmt.Sprintf("Check the fall on the first and the last: %s in %s, %s.", m.said(sl.Drop), m.said(sl.Run), m.figures.Slope(sl.Angle))
	}
	if s.Front().Skewed() && sl.Angle > 0 {
		fall = fmt.Sprintf("Check the fall on the first and the last: %s on both.", m.figures.Slope(sl.Angle))
	}
	cut := []string{fmt.Sprintf("Cut %d more to the pattern, each to the distance measured at its own place, and write its number on it.", n-1)}
	if s.Front().Skewed() {
		cut = []string{fmt.Sprintf("Cut the other %d, each to its own drawing and by the distance measured at its own place, and write its number on it.", n-1)}
	}
	return append(append(cut, m.cutForBattens()...),
		fmt.Sprintf("Sight along each and lay its crown up. The clear gap between two is %s.", m.said(s.Centres-m.job.Rafters.Section.Width)),
		m.tieWords(),
		fall,
	)
}

// cutForBattens is what is cut into the rafters for the battens, before they go
// up.
func (m *maker) cutForBattens() []string {
	if words := m.laying().cut(m); words != "" {
		return []string{words}
	}
	return nil
}

// tieWords say how a rafter is held down.
func (m *maker) tieWords() string {
	t := m.job.Rafters.Strap
	if t.Width == 0 {
		return "Tie each down at both ends as the designer states. " + m.heldBy()
	}
	return fmt.Sprintf("Tie each down with a strap %s, %s long, over each end: half its length and half its %s on the rafter. %s",
		m.strapSection(), m.said(t.Length), count(t.Nails, "nail"), m.heldBy())
}

// strapSection is the width and thickness of the straps, on one line.
func (m *maker) strapSection() string {
	t := m.job.Rafters.Strap
	size := m.fine(t.Width)
	if t.Thickness > 0 {
		size += " × " + m.fine(t.Thickness)
	} else {
		size += " wide"
	}
	return strings.ReplaceAll(size, " ", "\u00a0")
}

// tieDown says in a detail what holds a rafter down.
func (m *maker) tieDown() string {
	if m.job.Rafters.Strap.Width == 0 {
		return "Tie-down as its designer states."
	}
	return "Tie-down: a strap " + m.strapSection() + " over its end, as its designer confirms."
}

func (m *maker) sayBattens() []string {
	s, b := m.frame.Setout, m.job.Battens
	all := m.frame.Of(frame.KindBatten)
	n := len(all)
	first := fmt.Sprintf("On both end rafters mark the battens' %ss, down the slope from %s: the first at %s, the last at %s. The batten plan has them all.",
		m.setting().edge, m.battenDatum(), m.said(s.Battens[0]), m.said(s.Battens[n-1]))
	gap := fmt.Sprintf("Fix %d battens %s, %s long%s, clear gaps of %s.", n, m.saidSize(b.Section.Depth, b.Section.Width), m.said(all[0].Length), m.crossJoin(frame.KindBatten, "rafter"), m.said(s.BattenGap))
	if n == 1 {
		first = fmt.Sprintf("On both end rafters mark the batten's %s, %s down the slope from %s.", m.setting().edge, m.said(s.Battens[0]), m.battenDatum())
		gap = fmt.Sprintf("Fix the batten %s, %s long%s.", m.saidSize(b.Section.Depth, b.Section.Width), m.said(all[0].Length), m.crossJoin(frame.KindBatten, "rafter"))
	}
	if long := countRuns(s); s.Skewed() {
		first = fmt.Sprintf("On every rafter mark the house-side edges of the battens that it carries, down the slope from %s: the first at %s, the last at %s. The batten plan has them all.", m.battenDatum(), m.said(s.Battens[0]), m.said(s.Battens[n-1]))
		gap = fmt.Sprintf("Fix %d battens %s, clear gaps of %s: %d are %s long, the others end flush with the last rafter that carries them.", n, m.saidSize(b.Section.Depth, b.Section.Width), m.said(s.BattenGap), long, m.said(all[0].Length))
	}
	return []string{
		first, gap,
		fmt.Sprintf("They run past the end rafters by %s at the left and %s at the right. Drill first, then fix at every rafter.", m.said(b.OverLeft), m.said(b.OverRight)),
	}
}

func (m *maker) holdBattens() string {
	return "Before the last battens, measure what is left and share the difference among their gaps."
}

func (m *maker) sayCheck() []string {
	s := m.frame.Setout
	a, b := m.diagonals()
	finish := m.frame.Timber(m.front()).Timber.Finish
	treat := "Treat every fresh cut. Finish: " + stated(finish) + "."
	return []string{
		treat,
		fmt.Sprintf("Check and write down: top of %s %s at both ends, underside of %s %s, head height under it %s, diagonals %s and %s.",
			m.rear().Short, m.saidLevel(m.rear().Top), m.front().Short, m.saidLevel(m.seatLevel()), m.said(s.HeadBeam), m.saidTape(a), m.saidTape(b)),
		"Draw every fixing tight once more. Slope the ground away from the posts.",
	}
}

// The cautions and hold points that are the same for every job.
var (
	careDrilling = fixedWords("Find cables and pipes before drilling. Have old cladding and old paint tested for asbestos and lead.")
	careTreated  = fixedWords("Treated timber: gloves, goggles and mask. Treat each fresh cut before it is covered.")
	careHoles    = fixedWords("Dig by hand near services. Cover open holes whenever you leave them.")
	carePlatform = fixedWords("Work from a proper platform, not from a plank on trestles.")
	careLifting  = fixedWords("Nobody stands under a beam that is being lifted. Brace it at once.")
	carePattern  = fixedWords("Mark which face is up and which side is left before you turn a timber over to saw it.")
	careFalls    = fixedWords("Most falls are from low heights. Nobody stands on a rafter that is not fixed at both ends.")
	careBattens  = fixedWords("Battens carry nobody. Work from below, on a platform.")
	careRoof     = fixedWords("Sheets carry nobody, and wind lifts them: work from below or from boards over the battens, and fix each sheet before the next is handed up.")
	careYearly   = fixedWords("Look every year at collars, screws and ties, and at any water that stands.")

	holdHoles    = fixedWords("Have the holes seen before concrete goes in, where local rules or the designer ask for it.")
	holdConcrete = fixedWords("Nothing is lifted on to the posts before the concrete is as hard as its maker states.")
	holdBeam     = fixedWords("The beam is straight, level and braced before a rafter is cut.")
	holdBeams    = fixedWords("Both beams are straight, level and braced before a rafter is cut.")
	holdPattern  = fixedWords("The front cut of every other rafter waits until the pattern fits.")
	holdRafters  = fixedWords("The temporary braces stay until every rafter is tied down at both ends.")
	holdRoof     = fixedWords("No sheet goes on before the authorities have answered and the frame is tied down and braced for a roof's wind.")
	holdCheck    = fixedWords("The temporary braces come off last, when all the figures are written down and agree.")
)
