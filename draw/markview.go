package draw

import (
	"fmt"
	"math"
	"strconv"

	"plumbcut/geom"
)

// Section marks on one view where another is cut. The line runs from A to B,
// points of the model in the view plane, which lie outside the view; only its
// ends are drawn, so that the view stays clear. Around.Cut finds the ends by
// itself.
type Section struct {
	View   *View
	A, B   geom.Vec
	Look   geom.Vec // direction of the world in which the section looks
	Letter string   // repeated under the section
	Sheet  string   // where the section is
}

// The look of section and detail marks, mm on paper (own).
const (
	sectionEnd   = 6.0 // of the wide line at each end of the cut
	sectionTail  = 7.0 // of the arrow of look
	bubbleRadius = 5.5 // of a detail or section bubble
)

// Draw puts the mark on the sheet: at each end a wide stroke, an arrow in the
// way of looking, and the letter over the number of the sheet. The stroke
// starts at the point and runs away from the other one.
func (c Section) Draw(s *Sheet) {
	cutLine{c, c.View.Pt(c.A), c.View.Pt(c.B)}.draw(s)
}

// cutLine is a section mark with its ends on the paper.
type cutLine struct {
	Section
	a, b geom.Pt
}

// look is the way of looking on the paper, exactly square to the cut.
func (c cutLine) look() geom.Pt {
	square := c.b.Sub(c.a).Unit().Left()
	if c.View.Axes.Project(c.Look).Dot(square) < 0 {
		return square.Mul(-1)
	}
	return square
}

// middles are the middles of the bubbles.
func (c cutLine) middles() [2]geom.Pt {
	out := c.b.Sub(c.a).Unit().Mul(sectionEnd + bubbleRadius)
	return [2]geom.Pt{c.a.Sub(out), c.b.Add(out)}
}

// extent is the room that the mark takes outside its ends.
func (c cutLine) extent() Rect {
	r := EmptyRect()
	for _, b := range c.boxes() {
		r = r.Union(b)
	}
	return r
}

// boxes are the rooms that the two ends take.
func (c cutLine) boxes() []Rect {
	var out []Rect
	for i, mid := range c.middles() {
		reach := mid.Add(c.look().Mul(bubbleRadius + sectionTail))
		out = append(out, around(mid, bubbleRadius).Union(Bounds(reach, [2]geom.Pt{c.a, c.b}[i])))
	}
	return out
}

func (c cutLine) draw(s *Sheet) {
	look := c.look()
	for i, mid := range c.middles() {
		end := c.a
		if i == 1 {
			end = c.b
		}
		s.Line(Style{Layer: Centre, Pen: Wide}, end, end.Add(mid.Sub(end).Unit().Mul(sectionEnd)))
		s.bubble(mid, c.Letter, c.Sheet)
		foot := mid.Add(look.Mul(bubbleRadius))
		head := foot.Add(look.Mul(sectionTail))
		s.Line(Style{Layer: Centre, Pen: Middle}, foot, head)
		s.arrowhead(Centre, head, look)
		s.Marks = append(s.Marks, Mark{Kind: SectionMark, Label: c.Letter, Sheet: c.Sheet, Box: around(mid, bubbleRadius)})
	}
}

func around(c geom.Pt, r float64) Rect { return Rect{c.X - r, c.Y - r, c.X + r, c.Y + r} }

// bubble draws a circle with a label over the number of the sheet that it
// leads to; without a sheet the label stands alone in the middle.
func (s *Sheet) bubble(c geom.Pt, label, sheet string) {
	s.Circle(narrow(Centre), c, bubbleRadius)
	t := Text{Layer: Notes, Align: Centred, Height: TitleHeight, Bold: true, String: label, Link: sheet}
	if sheet == "" {
		t.At = geom.P(c.X, c.Y-t.Height/2)
		s.AddText(t)
		return
	}
	s.Line(narrow(Centre), geom.P(c.X-bubbleRadius, c.Y), geom.P(c.X+bubbleRadius, c.Y))
	t.Height, t.At = NoteHeight, geom.P(c.X, c.Y+figureGap)
	s.AddText(t)
	t.Bold, t.String, t.At = false, sheet, geom.P(c.X, c.Y-figureGap-NoteHeight)
	s.AddText(t)
}

// Detail marks a place that is drawn larger elsewhere: a ring round it and a
// bubble with the number of the detail over that of its sheet.
type Detail struct {
	View   *View
	At     geom.Vec
	Radius float64 // of the ring, mm of the model
	Number string
	Sheet  string  // where the detail is
	Toward geom.Pt // direction on the paper in which the bubble should stand; zero: anywhere
	Ringed bool    // the ring is drawn already
}

// Ring draws the ring alone. Where there are several, draw all before the
// words and bubbles that are to keep clear of them.
func (d Detail) Ring(s *Sheet) {
	s.Circle(Style{Layer: Centre, Pen: Narrow, Dash: Dashed}, d.View.Pt(d.At), d.ring())
}

// ring is the radius of the ring, mm on paper.
func (d Detail) ring() float64 { return max(d.Radius*d.View.Scale, leastRing) }

// Detail places a detail mark; its bubble finds a free place.
func (p *Placer) Detail(d Detail) Mark {
	s := p.Sheet
	c := d.View.Pt(d.At)
	r := d.ring()
	if !d.Ringed {
		d.Ring(s)
	}
	best := p.search(leadSearch{target: c, from: r, w: 2 * bubbleRadius, h: 2 * bubbleRadius, toward: d.Toward, round: true})
	mid := best.box.Centre()
	out := mid.Sub(c).Unit()
	m := Mark{Kind: DetailMark, Label: d.Number, Sheet: d.Sheet, Box: best.box}
	m.Leader = []geom.Pt{mid.Sub(out.Mul(bubbleRadius)), c.Add(out.Mul(r))}
	s.Line(narrow(Centre), m.Leader...)
	s.bubble(mid, d.Number, d.Sheet)
	s.Marks = append(s.Marks, m)
	return m
}

// RingRoom is the side of the greatest square in a detail's ring, whose radius
// on the paper is given, that a leader from the ring keeps clear of.
func RingRoom(radius float64) float64 {
	const noise = 1e-3 // mm: the leader stands at the limit
	return math.Sqrt2 * (max(radius, leastRing) - leaderClear - noise)
}

// leastRing is the radius, mm on paper, under which a ring reads as a hole.
const leastRing = 4.0

// Title is what stands under a view: its name with the scale, a line, what it
// shows, and a scale bar.
type Title struct {
	View  *View
	Label string // letter of a section or number of a detail; empty for others
	Name  string // e.g. "Front elevation"
	Note  string // e.g. "seen standing outside, facing the house"; may be empty
	NoBar bool   // leave the scale bar out: for further details of one scale in a row
	Under bool   // the scale bar stands under the words rather than beside them
}

// The look of a view title, mm on paper (own).
const (
	titleBar   = 10.0 // from the words to the scale bar
	titleUnder = 1.8  // from the baseline of the name to the line
	titleNote  = 1.6  // from the line to the note
	barUnder   = 3.0  // from the words to the scale bar under them
)

// Size is the room that the title takes, at the present scale of the view.
func (t Title) Size(h Hand) (width, height float64) {
	width, height = t.words(h)
	if b := newBar(t.View.Scale, h.Feet); t.Under && !t.NoBar {
		width = max(width, b.width())
		height += barUnder + b.height()
	} else if !t.NoBar {
		width += titleBar + b.width()
		height = max(height, b.height())
	}
	if t.Label != "" {
		width += 2*bubbleRadius + 2*textGap
		height = max(height, 2*bubbleRadius)
	}
	return width, height
}

// heading is the name with the scale, "Front elevation  1:50".
func (t Title) heading() string { return t.Name + "  " + ScaleName(t.View.Scale) }

// words is the size of the lettered part.
func (t Title) words(h Hand) (width, height float64) {
	width = max(TextWidth(t.heading(), TitleHeight, true), TextWidth(t.Note, NoteHeight, false))
	height = TitleHeight + titleUnder
	if t.Note != "" {
		height += titleNote + NoteHeight + titleUnder/2
	}
	return width, height
}

// Draw puts the title on the sheet with its top left at the point.
func (t Title) Draw(s *Sheet, h Hand, at geom.Pt) {
	width, height := t.Size(h)
	x := at.X
	if t.Label != "" {
		s.bubble(geom.P(x+bubbleRadius, at.Y-bubbleRadius), t.Label, "")
		x += 2*bubbleRadius + 2*textGap
	}
	base := at.Y - TitleHeight
	s.AddText(Text{Layer: Notes, At: geom.P(x, base), Height: TitleHeight, Bold: true, String: t.heading()})
	run, deep := t.words(h)
	s.Line(Style{Layer: Notes, Pen: Middle}, geom.P(x, base-titleUnder), geom.P(x+run, base-titleUnder))
	s.AddText(Text{Layer: Notes, At: geom.P(x, base-titleUnder-titleNote-NoteHeight), Height: NoteHeight, String: t.Note})
	if b := newBar(t.View.Scale, h.Feet); t.Under && !t.NoBar {
		b.draw(s, geom.P(x, at.Y-deep-barUnder))
	} else if !t.NoBar {
		b.draw(s, geom.P(x+run+titleBar, at.Y))
	}
	s.Marks = append(s.Marks, Mark{
		Kind: TitleMark, Label: t.Label, Sheet: s.Number,
		Box: Rect{at.X, at.Y - height, at.X + width, at.Y},
	})
}

// ScaleName writes a scale as it is spoken: "1:50", or "2:1" for an
// enlargement.
func ScaleName(scale float64) string {
	if scale >= 1 {
		return number(scale) + ":1"
	}
	return "1:" + number(1/scale)
}

// number writes a ratio without the noise of float64: to a hundredth.
func number(x float64) string {
	const hundredth = 100
	return strconv.FormatFloat(math.Round(x*hundredth)/hundredth, 'f', -1, 64)
}

// North draws a north point round c. The angle is that of north on the paper,
// radians anticlockwise from its upper edge.
func (s *Sheet) North(c geom.Pt, angle float64) Rect {
	sin, cos := math.Sincos(angle)
	up := geom.P(-sin, cos)
	side := up.Left()
	st := Style{Layer: Notes, Pen: Narrow}
	s.Circle(st, c, northRadius)
	tip, tail := c.Add(up.Mul(northRadius)), c.Sub(up.Mul(northRadius))
	half := side.Mul(northRadius / 3)
	s.FillPolygon(Notes, 1, []geom.Pt{tip, c.Add(half), c})
	s.Polygon(st, []geom.Pt{tip, c.Add(half), c.Sub(half)})
	s.Line(st, c, tail)
	letter := c.Add(up.Mul(northRadius + textGap + TitleHeight/2 + 0.5))
	t := Text{Layer: Notes, Align: Centred, At: geom.P(letter.X, letter.Y-TitleHeight/2), Height: TitleHeight, Bold: true, String: "N"}
	s.AddText(t)
	return around(c, northRadius).Union(t.Box())
}

// northRadius is that of the circle of a north point, mm on paper (own).
const northRadius = 7.0

// NorthSize is the side of a square, mm on paper, that holds a north point
// turned any way, its circle in the middle.
const NorthSize = 2 * (northRadius + textGap + TitleHeight + 1)

// Toward letters a direction, e.g. "house this side", with an arrow at each
// end. The words stand level with their middle at the point; dir points to
// the thing spoken of.
func (s *Sheet) Toward(words string, at, dir geom.Pt) Rect {
	t := Text{Layer: Notes, Align: Centred, At: geom.P(at.X, at.Y-NoteHeight/2), Height: NoteHeight, String: words}
	s.AddText(t)
	box := t.Box()
	d := dir.Unit()
	for _, x := range []float64{box.X0 - arrowLength, box.X1 + arrowLength} {
		tail, tip := geom.P(x, at.Y).Sub(d.Mul(arrowLength)), geom.P(x, at.Y).Add(d.Mul(arrowLength))
		s.Line(narrow(Notes), tail, tip)
		s.arrowhead(Notes, tip, d)
		box = box.Union(Bounds(tail, tip))
	}
	return box
}

// String names the kind of mark as a finding does.
func (k MarkKind) String() string {
	names := [...]string{"note", "part mark", "section mark", "detail mark", "view title"}
	if k < 0 || int(k) >= len(names) {
		return fmt.Sprintf("mark %d", int(k))
	}
	return names[k]
}
