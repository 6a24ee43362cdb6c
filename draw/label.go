package draw

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"plumbcut/geom"
)

// Wrap breaks s into lines no wider than width, mm, between words; a word that
// is wider by itself is broken between letters. A figure stays in one piece and
// with its unit: 5' 4 3/8" in two lines would be misread. Line breaks in s are
// kept. A width of 0 or less breaks only there.
func Wrap(s string, height float64, bold bool, width float64) []string {
	const noise = 1e-9 // mm: of sums of float64
	if tidy(s) && (width <= 0 || TextWidth(s, height, bold) <= width) {
		return []string{s}
	}
	var lines []string
	space := TextWidth(" ", height, bold)
	fits := func(w string) bool { return width <= 0 || TextWidth(w, height, bold) <= width+noise }
	for _, para := range strings.Split(s, "\n") {
		line, run := "", 0.0 // the line so far, and how far it runs
		for _, word := range unbroken(para, fits) {
			longer, wide := word, TextWidth(word, height, bold)
			if line != "" {
				longer, wide = line+" "+word, run+space+wide
			}
			if width <= 0 || wide <= width+noise {
				line, run = longer, wide
				continue
			}
			if line != "" {
				lines = append(lines, line)
			}
			var whole []string
			whole, line = breakWord(word, height, bold, width)
			run = TextWidth(line, height, bold)
			lines = append(lines, whole...)
		}
		lines = append(lines, line)
	}
	return lines
}

// tidy reports whether a text is one line with single spaces between its words:
// then it is what its words make when they are joined again.
func tidy(s string) bool {
	before := ' '
	for _, r := range s {
		if breaks(r) && (r != ' ' || before == ' ') {
			return false
		}
		before = r
	}
	return before != ' '
}

// unbroken are the words of a line of text, a figure of several counting as one
// if it fits.
func unbroken(para string, fits func(string) bool) []string {
	all := strings.FieldsFunc(para, breaks)
	out := all[:0]
	for i, w := range all {
		if i > 0 && oneFigure(all[i-1], w) {
			if whole := out[len(out)-1] + " " + w; fits(whole) {
				out[len(out)-1] = whole
				continue
			}
		}
		out = append(out, w)
	}
	return out
}

// oneFigure reports whether two neighbouring words belong to one figure: feet
// and inches, inches and their fraction, a number and its unit.
func oneFigure(before, w string) bool {
	last, first := before[len(before)-1], w[0]
	number := '0' <= last && last <= '9'
	switch {
	case '0' <= first && first <= '9':
		return last == '\'' || number && strings.Contains(w, "/")
	case number:
		unit := strings.TrimRight(w, ".,;:)")
		return unit == "mm" || unit == "m"
	}
	return false
}

// breaks reports whether a line may end at a character: at white space, but not
// at a no-break space, which keeps a figure together.
func breaks(r rune) bool { return unicode.IsSpace(r) && r != '\u00a0' }

// breakWord cuts a word into lines that fit and the rest, which fits too. A
// line takes at least one letter.
func breakWord(word string, height float64, bold bool, width float64) (lines []string, rest string) {
	from := 0
	for i := range word {
		_, size := utf8.DecodeRuneInString(word[i:])
		if i > from && TextWidth(word[from:i+size], height, bold) > width {
			lines = append(lines, word[from:i])
			from = i
		}
	}
	return lines, word[from:]
}

// From baseline to baseline, in letter heights (ISO 3098): of notes, for
// lettering with accents; of titles, which are few and large, without.
const (
	lineSpacing  = 1.9
	titleSpacing = 1.7
)

// block is a few lines of text, measured.
type block struct {
	lines  []string
	height float64 // of a letter
	bold   bool
}

// width is that of the longest line.
func (b block) width() float64 {
	w := 0.0
	for _, l := range b.lines {
		w = max(w, TextWidth(l, b.height, b.bold))
	}
	return w
}

// depth is from the top of the first line's capitals to the last baseline.
func (b block) depth() float64 {
	return b.height + float64(len(b.lines)-1)*b.spacing()
}

// spacing is from baseline to baseline.
func (b block) spacing() float64 {
	if b.bold && b.height > NoteHeight {
		return titleSpacing * b.height
	}
	return lineSpacing * b.height
}

// ink is the depth with the letters that hang below the last baseline.
func (b block) ink() float64 {
	return b.depth() + hang(b.lines[len(b.lines)-1], b.height)
}

// draw letters the block with its top left (Start), top middle or top right
// (End) at the point.
func (b block) draw(s *Sheet, layer Layer, at geom.Pt, align Align) {
	for i, line := range b.lines {
		y := at.Y - b.height - float64(i)*b.spacing()
		s.AddText(Text{Layer: layer, At: geom.P(at.X, y), Align: align, Height: b.height, Bold: b.bold, String: line})
	}
}

// Label is a note with a leader to what it speaks of.
type Label struct {
	View   *View
	At     geom.Vec // the point of the thing
	Text   string   // as a builder says it; wrapped to Width
	Width  float64  // of the longest line, mm on paper; 0 is 55
	Inside bool     // At lies inside the thing: end with a dot. Otherwise it lies on an edge: an arrow
	ID     string   // of the member, as Path.ID
	Toward geom.Pt  // direction on the paper in which the words should stand; zero: anywhere
}

// labelWidth is the longest line of a label unless told otherwise: about
// thirty characters, which the eye takes in at once.
const labelWidth = 55.0

// Label places the note where neither its words nor its leader touch anything.
//
// Words that touch something wherever they stand are wrapped wider.
func (p *Placer) Label(l Label) Mark {
	if l.Width == 0 {
		l.Width = labelWidth
	}
	wrapped := func(width float64) (block, leadPlace) {
		b := block{lines: Wrap(l.Text, NoteHeight, false, width), height: NoteHeight}
		return b, p.search(leadSearch{target: l.View.Pt(l.At), w: b.width(), h: b.ink(), toward: l.Toward})
	}
	b, best := wrapped(l.Width)
	if best.cost >= costBox && len(b.lines) > 1 { // no room for so many lines, perhaps for longer ones
		if wide, place := wrapped(l.Width * widerLabel); place.cost < best.cost {
			b, best = wide, place
		}
	}
	m := Mark{Kind: NoteMark, Label: l.Text, Box: best.box, Leader: best.leader, Inside: l.Inside, ID: l.ID}
	p.Sheet.drawLeader(m.Leader, m.Inside)
	b.draw(p.Sheet, Notes, geom.P(best.box.X0, best.box.Y1), Start)
	p.Sheet.Marks = append(p.Sheet.Marks, m)
	return m
}

// Arc dimensions the radius (or, for a hole, the diameter) of a circle with
// centre c through the point at, both of the model, with a leader.
func (p *Placer) Arc(v *View, c, at geom.Vec, diameter bool) {
	d, kind := Dim{View: v, A: c, B: at}, RadiusDim
	if diameter {
		kind = DiameterDim
	}
	text := d.figure(kind, p.Hand.Figures)
	h := p.Hand.FigureHeight()
	b := block{lines: []string{text}, height: h}
	best := p.search(leadSearch{target: v.Pt(at), w: b.width(), h: b.ink()})
	p.Sheet.drawLeader(best.leader, false)
	b.draw(p.Sheet, Dimension, geom.P(best.box.X0, best.box.Y1), Start)
	p.Sheet.Dims = append(p.Sheet.Dims, Placed{
		Dim: d, Kind: kind, Figure: text, P: v.Pt(c), Q: v.Pt(at), Box: best.box, Row: -1,
	})
	p.Sheet.Marks = append(p.Sheet.Marks, Mark{Kind: NoteMark, Label: text, Box: best.box, Leader: best.leader})
}

// leadSearch is the search for a place for a box with a leader to a target.
type leadSearch struct {
	target geom.Pt
	from   float64 // the leader starts this far from the target: a ring's radius
	w, h   float64
	toward geom.Pt
	round  bool // the box is a closed shape that the leader runs to from any side, not words
}

// leadPlace is a place found, and how bad it is.
type leadPlace struct {
	box    Rect
	leader []geom.Pt
	cost   float64
}

// widerLabel is how much wider words are wrapped that find no place.
const widerLabel = 1.6

// The shape of a leader, mm on paper.
const (
	shoulder    = 2.0 // level piece at the words
	shoulderGap = 1.0 // from there to the words
)

// What is bad about a place, in millimetres of leader that one would rather
// draw instead.
const (
	costLine   = 1.5    // the leader crosses a line
	costTurn   = 10.0   // it lies outside 30° to 60°
	costLevel  = 20.0   // it is level or plumb and could be taken for a line of the thing
	costAway   = 10.0   // it leads away from the wanted direction, at a right angle
	costText   = 300.0  // it crosses a text
	costLeader = 200.0  // it crosses another leader
	costBox    = 1000.0 // the box touches something
)

// search tries directions and lengths and keeps the cheapest place. Only where
// each of them would disturb something it looks for gaps between them.
func (p *Placer) search(q leadSearch) leadPlace {
	p.sync()
	best := p.sweep(q, leaderLengths(), leaderAngles(), math.Inf(1))
	if best.cost < costLeader {
		return best
	}
	if fine := p.sweep(q, fineLengths(), fineAngles(), best.cost); fine.cost < best.cost {
		return fine
	}
	return best
}

// sweep is the cheapest of some places, if one costs less than the limit.
func (p *Placer) sweep(q leadSearch, lengths, angles []float64, limit float64) leadPlace {
	best := leadPlace{cost: limit}
	for _, length := range lengths {
		if length > best.cost {
			break
		}
		for _, deg := range angles {
			c := q.place(length, deg*math.Pi/180)
			c.cost = length + q.angleCost(deg)
			if c.cost < best.cost {
				if c.cost += p.placeCost(c, best.cost-c.cost); c.cost < best.cost {
					best = c
				}
			}
		}
	}
	return best
}

func leaderLengths() []float64 {
	return []float64{7, 10, 13, 17, 22, 28, 35, 43, 52, 62, 75, 90, 110, 130}
}

// leaderAngles are the directions tried, degrees: 45° first, as it reads best.
func leaderAngles() []float64 {
	return []float64{45, 135, -45, -135, 60, 120, -60, -120, 30, 150, -30, -150, 90, -90, 75, 105, -75, -105, 15, 165, -15, -165, 0, 180}
}

// fineLengths and fineAngles are the same for a search between them.
func fineLengths() []float64 { return steps(7, 130, 3) }

func fineAngles() []float64 { return steps(-175, 180, 5) }

func steps(from, to, by float64) []float64 {
	var out []float64
	for v := from; v <= to; v += by {
		out = append(out, v)
	}
	return out
}

// angleCost prefers leaders between 30° and 60° and the wanted direction.
func (q leadSearch) angleCost(deg float64) float64 {
	cost := 0.0
	if q.toward != (geom.Pt{}) {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		cost += costAway * (1 - geom.P(cos, sin).Dot(q.toward.Unit()))
		return cost
	}
	steep := math.Abs(math.Mod(math.Abs(deg), 90) - 45)
	if steep > 16 {
		cost += costTurn
	}
	if steep == 45 {
		cost += costLevel
	}
	return cost
}

// place is the box and the leader for a leader of a length in a direction.
func (q leadSearch) place(length, turn float64) leadPlace {
	sin, cos := math.Sincos(turn)
	dir := geom.P(cos, sin)
	end := q.target.Add(dir.Mul(q.from + length))
	if q.round {
		reach := math.Abs(cos)*q.w/2 + math.Abs(sin)*q.h/2
		c := end.Add(dir.Mul(reach))
		box := Rect{c.X - q.w/2, c.Y - q.h/2, c.X + q.w/2, c.Y + q.h/2}
		return leadPlace{box: box, leader: []geom.Pt{roundEnd(box, q.target), q.target.Add(dir.Mul(q.from))}}
	}
	side := 1.0
	if cos < -level45 {
		side = -1
	}
	bend := end.Add(geom.P(side*shoulder, 0))
	top := end.Y + NoteHeight/2
	x0 := bend.X + side*shoulderGap
	box := Bounds(geom.P(x0, top), geom.P(x0+side*q.w, top-q.h))
	return leadPlace{box: box, leader: []geom.Pt{bend, end, q.target}}
}

// roundEnd is where the straight line from the middle of a box with round
// ends to a point outside leaves it.
func roundEnd(b Rect, to geom.Pt) geom.Pt {
	r, c := b.H()/2, b.Centre()
	d := to.Sub(c)
	half := b.W()/2 - r // from the middle to the centre of an end
	if d.Y != 0 {
		if x := d.X / math.Abs(d.Y) * r; math.Abs(x) <= half {
			return c.Add(geom.P(x, math.Copysign(r, d.Y)))
		}
	}
	// On the end circle: |t·d − e| = r.
	e, u := geom.P(math.Copysign(half, d.X), 0), d.Unit()
	along := u.Dot(e)
	return c.Add(u.Mul(along + math.Sqrt(max(r*r-e.Dot(e)+along*along, 0))))
}

// placeCost is how much the place disturbs what is on the sheet, exactly as
// far as it is under a limit. What is quickly told is asked first.
func (p *Placer) placeCost(c leadPlace, limit float64) float64 {
	cost := p.leaderCost(c.leader, limit)
	if cost < limit && !p.Free(c.box, nearLine) {
		cost += costBox
	}
	return cost
}

// leaderCost is how much a leader disturbs what is on the sheet, exactly as far
// as it is under a limit.
func (p *Placer) leaderCost(line []geom.Pt, limit float64) float64 {
	p.sync()
	cost := costLeader * float64(p.leadersCrossed(line))
	for i := 1; i < len(line) && cost < limit; i++ {
		cost += costText * float64(p.textsUnder(line[i-1], line[i]))
	}
	for i := 1; i < len(line) && cost < limit; i++ {
		cost += costLine * float64(p.linesCrossed(line[i-1], line[i]))
	}
	return cost
}

// leadersCrossed counts the pieces of other leaders that a leader crosses.
func (p *Placer) leadersCrossed(line []geom.Pt) int {
	n := 0
	for _, m := range p.Sheet.Marks {
		for k := 1; k < len(m.Leader); k++ {
			for i := 1; i < len(line); i++ {
				if cross(line[i-1], line[i], m.Leader[k-1], m.Leader[k]) {
					n++
				}
			}
		}
	}
	return n
}

// linesCrossed counts the segments that ab crosses, hatching apart.
func (p *Placer) linesCrossed(a, b geom.Pt) int {
	n := 0
	p.grid.segsAlong(a, b, func(s *segment) bool {
		if s.layer != Hatch && cross(a, b, s.a, s.b) {
			n++
		}
		return true
	})
	return n
}
