package sheets_test

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/draw/pdf"
	"plumbcut/geom/frame"
)

// The completeness proof reads a finished PDF as its reader does, who knows
// how such drawings are made and nothing about this frame, and writes down
// where every member is and how large. Only then is the list held against the
// model: what the model has and the list lacks is not on the drawings.
//
// Along is measured to the right from the left end of the wall plate, out from
// the face of the cladding, levels from the datum.

// facts are figures by what they say, e.g. "rafter 3: centre along".
type facts map[string]float64

// fact names a figure of a member.
func fact(kind frame.Kind, no int, what string) string {
	return fmt.Sprintf("%s %d: %s", kind, no, what)
}

// Where a reader looks. Titles of rows and heads of tables are what the
// drawings say; a change there is a change here.
var (
	rafterRow  = row{"rafter centres", draw.Top, planName}
	screwRow   = row{"screws, packers", draw.Top, ""}
	battenRow  = row{"battens", draw.Right, ""}
	memberHead = []string{"Mark", "No.", "Member", "Actual size", "Length"}
	seatHead   = []string{"Post", "Mark", "Seat"}
	holeHead   = []string{"Post", "Hole", "Size", "Depth", "Ground", "Bottom", "Post foot", "Concrete"}

	overRafter = regexp.MustCompile(`battens run past the end rafters by (.+?) at the left and (.+?) at the right`)
	overLeft   = regexp.MustCompile(`battens end flush with the right end rafter and run past the left one by ([\d' /]+\d"?)`)
	overRight  = regexp.MustCompile(`battens end flush with the left end rafter and run past the right one by ([\d' /]+\d"?)`)
	overNone   = regexp.MustCompile(`battens (end flush) with the end rafters`)
	packerSize = regexp.MustCompile(`Packer \S+ at each screw, ([^×]+) × ([^:]+): water drains`)
)

// carried is a timber that carries the rafters, as the words have it.
type carried struct {
	kind frame.Kind
	no   int
	name string // "plate", "rear beam"
	free string // its face away from the frame or its wall, past which rafters run over it
	face string // and the one that they come to
	top  string // name of its top
	low  string // and of its underside
}

func (c carried) fact(what string) string { return fact(c.kind, c.no, what) }

// letIn, over and butts are how the words say that rafters end at it.
func (c carried) letIn() *regexp.Regexp {
	return regexp.MustCompile(`let into the ` + c.name + ` by (.+?)[;.] `)
}

func (c carried) over() *regexp.Regexp {
	return regexp.MustCompile(`over the ` + c.name + ` with a heel height of .+?, its end (.+?) past the ` + c.name + `'s ` + c.free + ` face`)
}

func (c carried) butts() *regexp.Regexp {
	return regexp.MustCompile(`butted (against) the ` + c.name + ` in a hanger`)
}

// topAt is the name of the level of the rafters' tops there.
func (c carried) topAt() string { return "top of rafters at the " + c.name + "'s " + c.face + " face" }

// form is how the drawings of a frame speak of it: against a house, or free.
type form struct {
	rear, front     carried
	outRow, beamRow row
	postHead        []string
	edge            string
	arrises         map[string]string // what a drawing calls the rafters' tops there, by the model's name
}

// formOf tells the form by a level that only one of them has.
func formOf(levels map[string][]float64) form {
	f := form{
		rear:     carried{frame.KindPlate, 1, "plate", "inner", "outer", "top of plate at its outer arris", "underside of plate"},
		front:    carried{frame.KindBeam, 1, "beam", "outer", "inner", "top of beam", "underside of beam, seat on posts"},
		outRow:   row{"out from the cladding", draw.Left, planName},
		postHead: []string{"Post", "Mark", "Along from L", "Out from cladding", "Tape from L", "Tape from R"}, edge: "House-side edge",
	}
	arris := "plate outer arris"
	if _, ok := levels["top of rear beam"]; ok {
		f.rear = carried{frame.KindBeam, 1, "rear beam", "outer", "inner", "top of rear beam", "underside of rear beam, seat on posts"}
		f.front = carried{frame.KindBeam, 2, "front beam", "outer", "inner", "top of front beam", "underside of front beam, seat on posts"}
		f.outRow.title, f.postHead[3], f.edge, arris = "out", "Out from base line", "Rear edge", "rear beam inner arris"
	}
	f.beamRow = row{f.front.name, draw.Bottom, frontName}
	f.arrises = map[string]string{f.rear.topAt(): "top of rafters over the " + arris, f.front.topAt(): "top of rafters over the beam inner arris"}
	return f
}

// recover reads all that the drawings say of the members.
func (p printed) recover() facts {
	out := facts{}
	levels := p.levels()
	for name, v := range levels {
		out["level: "+name] = v[0]
		for _, other := range v[1:] {
			if other != v[0] {
				delete(out, "level: "+name) // two sheets disagree
			}
		}
	}
	f := formOf(levels)
	for name, w := range f.arrises {
		for said, v := range levels {
			if strings.HasPrefix(said, w) {
				out["level: "+name] = v[0]
			}
		}
	}
	marks := p.members(out)
	p.carriers(out, f)
	p.rafters(out, f)
	p.posts(out, marks, f)
	p.battens(out, f)
	p.packers(out)
	return out
}

// members reads the list of members: the sizes of each. Posts of different
// marks stand apart; their marks are returned with their sizes.
func (p printed) members(out facts) map[string][]float64 {
	marks := map[string][]float64{}
	count := map[frame.Kind]int{}
	for _, r := range p.table(memberHead...) {
		kind, _, _ := strings.Cut(r[2], ",")
		size := figuresIn(append(strings.Split(r[3], "×"), r[4])...)
		n, _ := strconv.Atoi(r[1])
		if len(size) != 3 {
			continue
		}
		marks[r[0]] = size
		for range n {
			count[frame.Kind(kind)]++
			if k := frame.Kind(kind); k != frame.KindPost {
				out.sizes(k, count[k], size)
			}
		}
	}
	return marks
}

func (out facts) sizes(kind frame.Kind, no int, size []float64) {
	for i, what := range []string{"depth", "width", "length"} {
		out[fact(kind, no, what)] = size[i]
	}
}

// carriers reads where the plate or rear beam and the beam lie.
func (p printed) carriers(out facts, f form) {
	plate := func(what string, v float64) { out[f.rear.fact(what)] = v }
	_, second := out[fact(frame.KindBeam, 2, "depth")]
	twin := second && f.front.no == 1
	beam := func(what string, v float64) {
		out[f.front.fact(what)] = v
		if twin { // they lie alike but for their faces
			out[fact(frame.KindBeam, 2, what)] = v
		}
	}
	length, ok := out[f.rear.fact("length")]
	if ok {
		plate("left end along", 0)
		plate("right end along", length)
		beam("left end along", 0)
		beam("right end along", length)
	}
	if ends, ok := p.running(f.beamRow); ok {
		// Its own row is there only where it does not end with the plate. An end
		// that does, at the left, is the 0.
		ends = slices.DeleteFunc(ends, func(v float64) bool { return v == 0 && len(ends) == 3 })
		if len(ends) == 2 {
			beam("left end along", ends[0])
			beam("right end along", ends[1])
		}
	}
	if v, ok := p.running(f.outRow); ok && len(v) >= 4 {
		faces := 5
		if twin {
			faces += 2
		}
		if tail := figuresIn(p.said(f.front.over())...); len(tail) == 1 && tail[0] > 0 {
			faces++ // the row goes on to the tails
		}
		if len(v) < faces { // no packers: the plate lies on the wall, or behind its face
			v = append([]float64{0}, v...)
			v[1] = v[2] - out[f.rear.fact("width")]
		}
		plate("inner face out", v[1])
		plate("outer face out", v[2])
		beam("inner face out", v[3])
		beam("outer face out", v[4])
		if twin {
			out[fact(frame.KindBeam, 2, "inner face out")] = v[5]
			out[fact(frame.KindBeam, 2, "outer face out")] = v[6]
		}
	}
	for what, level := range map[string]string{
		f.rear.fact("top"): f.rear.top, f.rear.fact("underside"): f.rear.low,
	} {
		if z, ok := out["level: "+level]; ok {
			out[what] = z
		}
	}
	if z, ok := out["level: "+f.front.top]; ok {
		beam("top", z)
	}
	if z, ok := out.underBeam(); ok {
		beam("underside", z)
	}
}

// underBeam is the level of the beam's underside.
func (out facts) underBeam() (float64, bool) {
	for _, name := range []string{"underside of front beam, seat on posts", "underside of beam, seat on posts", "underside of beam", "underside of beams, seat on posts", "underside of beams"} {
		if z, ok := out["level: "+name]; ok {
			return z, true
		}
	}
	return 0, false
}

// rafters reads where the rafters lie: their centres, the ends let into plate
// and beam, and the line of their tops.
func (p printed) rafters(out facts, f form) {
	centres, ok := p.running(rafterRow)
	if !ok {
		return
	}
	n := 0
	for ; ; n++ {
		if _, listed := out[fact(frame.KindRafter, n+1, "depth")]; !listed {
			break
		}
	}
	// The row begins at the left end of the plate and ends at its right end,
	// unless rafters stand there.
	if len(centres) > n {
		centres = centres[:len(centres)-1]
	}
	if len(centres) > n {
		centres = centres[1:]
	}
	house, ok1 := p.endOut(out, f.rear, -1, "outer face out", "inner face out")
	front, ok2 := p.endOut(out, f.front, 1, "inner face out", "outer face out")
	for i, c := range centres {
		out[fact(frame.KindRafter, i+1, "centre along")] = c
		if ok1 && ok2 {
			out[fact(frame.KindRafter, i+1, "house end out")] = house
			out[fact(frame.KindRafter, i+1, "front end out")] = front
		}
		for at, level := range map[string]string{"rear": f.rear.topAt(), "front": f.front.topAt()} {
			if z, ok := out["level: "+level]; ok {
				out[fact(frame.KindRafter, i+1, "top at the "+at)] = z
			}
		}
	}
}

// endOut reads how far out the rafters end at a timber: so far past the face
// that they come to, or, over it, past the other. The way past a face is way.
func (p printed) endOut(out facts, at carried, way float64, near, over string) (float64, bool) {
	for _, e := range []struct {
		words   *regexp.Regexp
		face    string
		figures int // in the words
	}{{at.letIn(), near, 1}, {at.over(), over, 1}, {at.butts(), near, 0}} {
		said := p.said(e.words)
		no := at.no
		if _, twin := out[fact(at.kind, 2, e.face)]; twin && no == 1 && at.name == "beam" && e.face == "outer face out" {
			no = 2
		}
		face, ok := out[fact(at.kind, no, e.face)]
		if len(said) == 0 || !ok {
			continue
		}
		if e.figures == 0 {
			return face, true
		}
		if past := figuresIn(said...); len(past) == e.figures {
			return face + way*past[0], true
		}
	}
	return 0, false
}

// posts reads the tables of posts and holes.
func (p printed) posts(out facts, marks map[string][]float64, f form) {
	for _, r := range p.table(f.postHead...) {
		no, _ := strconv.Atoi(r[0])
		if v := figuresIn(r[2:]...); len(v) == 4 {
			out[fact(frame.KindPost, no, "centre along")] = v[0]
			out[fact(frame.KindPost, no, "centre out")] = v[1]
			out[fact(frame.KindFooting, no, "centre along")] = v[0]
			out[fact(frame.KindFooting, no, "centre out")] = v[1]
		}
		if size := marks[r[1]]; size != nil {
			out.sizes(frame.KindPost, no, size)
		}
		if z, ok := out.underBeam(); ok {
			out[fact(frame.KindPost, no, "top")] = z
		}
		if z, ok := out["level: top of posts"]; ok {
			out[fact(frame.KindPost, no, "top")] = z
		}
	}
	for _, r := range p.table(seatHead...) {
		no, _ := strconv.Atoi(r[0])
		if f.front.no == 1 {
			break // one row, whose level is named
		}
		if v := figuresIn(r[2]); len(v) == 1 {
			out[fact(frame.KindPost, no, "top")] = v[0]
		}
	}
	for _, r := range p.table(holeHead...) {
		no, _ := strconv.Atoi(r[0])
		size := strings.TrimSuffix(strings.TrimPrefix(r[2], "Ø "), " square")
		v := figuresIn(append([]string{size}, r[3:7]...)...)
		if len(v) != 5 {
			continue
		}
		for i, what := range []string{"size", "depth", "ground", "bottom"} {
			out[fact(frame.KindFooting, no, what)] = v[i]
		}
		out[fact(frame.KindPost, no, "foot")] = v[4]
	}
	for _, r := range p.table("Post", "Mark", "Seat", "Foot") { // of those that have no hole, too
		no, err := strconv.Atoi(r[0])
		if v := figuresIn(r[3]); err == nil && len(v) == 1 {
			out[fact(frame.KindPost, no, "foot")] = v[0]
		}
	}
	p.levelsByPost(out)
}

// levelsByPost takes the levels that the table gives by post for those that
// the views name.
func (p printed) levelsByPost(out facts) {
	for surface, what := range map[string]string{"finished ground": "ground", "bottom of footing": "bottom"} {
		same := true
		for no := 1; ; no++ {
			z, ok := out[fact(frame.KindFooting, no, what)]
			if !ok {
				break
			}
			same = same && z == out[fact(frame.KindFooting, 1, what)]
			out[fmt.Sprintf("level: %s at post %d", surface, no)] = z
		}
	}
}

// battens reads where the battens lie down the slope, and their ends.
func (p printed) battens(out facts, f form) {
	edges, ok := p.running(battenRow)
	if !ok { // too many for a row
		for _, r := range p.table("Batten", f.edge) {
			edges = append(edges, figuresIn(r[1])...)
		}
	}
	if len(edges) == 0 {
		return
	}
	n := 0
	for ; ; n++ {
		if _, listed := out[fact(frame.KindBatten, n+1, "depth")]; !listed {
			break
		}
	}
	if len(edges) > n { // the row ends at the beam's inner face
		edges = edges[:len(edges)-1]
	}
	if i := slices.Index(edges, 0); len(edges) > n && i >= 0 { // the row's own
		edges = slices.Delete(edges, i, i+1)
	}
	last := 0
	for out[fact(frame.KindRafter, last+1, "depth")] > 0 {
		last++
	}
	left, ok1 := out[fact(frame.KindRafter, 1, "centre along")]
	right, ok2 := out[fact(frame.KindRafter, last, "centre along")]
	half := out[fact(frame.KindRafter, 1, "width")] / 2
	past := p.pastRafters()
	for i, e := range edges {
		out[fact(frame.KindBatten, i+1, "house edge down the slope")] = e
		if len(past) == 2 && ok1 && ok2 {
			out[fact(frame.KindBatten, i+1, "left end along")] = left - half - past[0]
			out[fact(frame.KindBatten, i+1, "right end along")] = right + half + past[1]
		}
	}
}

// pastRafters reads how far the battens run past the end rafters.
func (p printed) pastRafters() []float64 {
	if v := figuresIn(p.said(overRafter)...); len(v) == 2 {
		return v
	}
	if v := figuresIn(p.said(overLeft)...); len(v) == 1 {
		return []float64{v[0], 0}
	}
	if v := figuresIn(p.said(overRight)...); len(v) == 1 {
		return []float64{0, v[0]}
	}
	if p.said(overNone) != nil {
		return []float64{0, 0}
	}
	return nil
}

// packers reads where the packers of the plate are: at its screws, between the
// cladding and the plate.
func (p printed) packers(out facts) {
	screws, ok := p.running(screwRow)
	thick, ok2 := out[fact(frame.KindPlate, 1, "inner face out")]
	if !ok || !ok2 || thick == 0 {
		return
	}
	size := figuresIn(p.said(packerSize)...)
	for i, x := range screws[1:] {
		out[fact(frame.KindPacker, i+1, "centre along")] = x
		if len(size) == 2 {
			out[fact(frame.KindPacker, i+1, "depth")], out[fact(frame.KindPacker, i+1, "width")] = size[0], size[1]
		}
	}
}

// truth lists the same of the model.
func truth(f *frame.Frame) facts {
	out := facts{}
	figures := f.Figures()
	for _, l := range figures.Levels {
		out["level: "+l.Name] = l.Z
	}
	left := figures.Members[0].Place.Origin[0] // the plate or rear beam is first
	for _, m := range listed(figures.Members) {
		out.member(m, left, figures)
	}
	return out
}

// listed numbers the braces in the order of their marks, as the list of members
// counts them: where each stands is marked on the elevation.
func listed(all []frame.MemberFigures) []frame.MemberFigures {
	out := slices.Clone(all)
	var braces []int
	for i, m := range out {
		if m.Kind == frame.KindBrace {
			braces = append(braces, i)
		}
	}
	order := slices.Clone(braces)
	slices.SortStableFunc(order, func(a, b int) int { return strings.Compare(out[a].Mark, out[b].Mark) })
	for no, i := range order {
		out[i].No = no + 1
	}
	return out
}

// member lists what the drawings must say of one member.
func (out facts) member(m frame.MemberFigures, left float64, f frame.Figures) {
	say := func(what string, v float64) { out[fact(m.Kind, m.No, what)] = v }
	o := m.Place.Origin
	along, outside := o[0]-left, -o[1]
	if m.Kind != frame.KindFooting && m.Kind != frame.KindPacker {
		out.sizes(m.Kind, m.No, []float64{m.Depth, m.Width, m.Length})
	}
	switch m.Kind {
	case frame.KindPlate, frame.KindBeam:
		say("outer face out", outside)
		say("inner face out", outside-m.Width)
		say("right end along", along+m.Length)
		say("top", o[2]+m.Depth)
		say("underside", o[2])
		if m.Kind == frame.KindBeam {
			say("left end along", along)
		}
	case frame.KindRafter:
		say("centre along", f.Setout.Rafters.At[m.No-1]-left)
		house, front := corner(m, m.Ends[0].At, 0, m.Depth), corner(m, m.Ends[1].At, 0, m.Depth)
		say("house end out", -house[1])
		say("front end out", -front[1])
		drop := (house[2] - front[2]) / (house[1] - front[1])
		say("top at the rear", house[2]-drop*(house[1]+f.Setout.PlateOuterOut))
		say("top at the front", house[2]-drop*(house[1]+f.Setout.BeamInnerOut))
	case frame.KindPost:
		post := f.Setout.Posts[m.No-1]
		say("centre along", post.Along-left)
		say("centre out", post.OutCentre)
		say("top", o[2]+m.Length)
		say("foot", o[2])
	case frame.KindBatten:
		say("house edge down the slope", f.Setout.Battens.At[m.No-1])
		say("left end along", along)
		say("right end along", along+m.Length)
	case frame.KindFooting:
		post := f.Setout.Posts[m.No-1]
		say("centre along", post.Along-left)
		say("centre out", post.OutCentre)
		say("size", post.FootingSize)
		say("depth", post.Ground-post.HoleBottom)
		say("ground", post.Ground)
		say("bottom", post.HoleBottom)
	case frame.KindPacker:
		if m.No <= len(f.Setout.PlateScrews) { // those of the plate come first
			say("centre along", f.Setout.PlateScrews[m.No-1].Along-left)
			say("depth", m.Depth)
			say("width", m.Width)
		}
	}
}

// roundings is how many printed figures a fact is reckoned from, each rounded.
func roundings(name string) float64 {
	_, what, _ := strings.Cut(name, ": ")
	switch {
	case strings.HasPrefix(name, string(frame.KindRafter)) && strings.HasSuffix(what, " end out"):
		return 2 // face and depth of the housing
	case strings.HasPrefix(name, string(frame.KindBatten)) && strings.HasSuffix(what, "end along"):
		return 2.5 // centre of a rafter, half its width, overhang
	}
	return 1
}

// TestEverythingCanBeReadOffTheDrawings recovers the place and the section of
// every member, and every level, from the words of the finished PDF alone.
func TestEverythingCanBeReadOffTheDrawings(t *testing.T) {
	tool(t, "pdftotext")
	var found ledger
	each(t, parallel(t, written(t)), func(d *drawn) {
		var b bytes.Buffer
		if err := pdf.Write(&b, d.set, pdf.Options{}); err != nil {
			found.add("writing", d.name, "%v", err)
			return
		}
		p := readPrinted(wordsOf(t, b.Bytes()))
		d.compare(p.recover(), &found)
		d.fall(p, &found)
	})
	found.report(t)
}

// fall checks what the drawings say of the fall and of the seats: the drop
// between the two arrises that the job names, and how the housings are cut.
func (d *drawn) fall(p printed, found *ledger) {
	slope, half := d.frame.Slope, d.halfUnit()
	seat, other := "The seat of each housing follows the fall", "The seat of each housing is level"
	if d.frame.Job.Rafters.Seat == frame.SeatLevel {
		seat, other = other, seat
	}
	var must []string
	if d.frame.Setout.Holds(frame.Housed) {
		must = append(must, seat)
	}
	if slope.Drop > half {
		must = append(must, fmt.Sprintf("top of rafters over the %s: drop from here", slope.From),
			fmt.Sprintf("top of rafters over the %s: to here", slope.To))
	}
	section := p.about(sectionName)
	for _, words := range must {
		if !strings.Contains(section, words) {
			found.add("not said of the section: the fall or the seat", d.name, "%q", words)
		}
	}
	if strings.Contains(strings.Join(p.text, " "), other) {
		found.add("said of the seat, and wrong", d.name, "%q", other)
	}
	drops := 0
	for _, page := range p.pages {
		for _, q := range page {
			rest, ok := strings.CutPrefix(q.text, "drop ")
			if v, isFigure := figure(rest); ok && isFigure {
				drops++
				if math.Abs(v-slope.Drop) > half {
					found.add("drop is read wrong", d.name, "%.2f, is %.2f", v, slope.Drop)
				}
			}
		}
	}
	if drops == 0 && slope.Drop > half {
		found.add("drop cannot be read", d.name, "%.1f", slope.Drop)
	}
}

// halfUnit is half the last place printed, mm.
func (d *drawn) halfUnit() float64 {
	const roundingOff = 1e-4 // what float64 leaves
	if d.frame.Job.Units == frame.FeetInches {
		return 25.4/32 + roundingOff
	}
	return 0.5 + roundingOff
}

// compare holds what was read against the model.
func (d *drawn) compare(read facts, found *ledger) {
	want := truth(d.frame)
	half := d.halfUnit()
	for _, name := range sorted(want) {
		v, ok := read[name]
		rule := ruleOf(name)
		switch {
		case !ok:
			found.add(rule+" cannot be read", d.name, "%s (%.1f)", name, want[name])
		case math.Abs(v-want[name]) > roundings(name)*half:
			found.add(rule+" is read wrong", d.name, "%s is read as %.2f, is %.2f", name, v, want[name])
		}
	}
}

// ruleOf is a fact without its number.
func ruleOf(name string) string {
	who, what, _ := strings.Cut(name, ": ")
	if who == "level" {
		return name
	}
	return strings.TrimRight(who, "0123456789") + what
}
