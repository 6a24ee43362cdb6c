package draw

import (
	"math"

	"plumbcut/geom"
)

// MarkKind is what a mark is for.
type MarkKind int

// The kinds of mark.
const (
	NoteMark    MarkKind = iota // words with a leader to what they speak of
	PartMark                    // the mark of a member
	SectionMark                 // where a section is cut, and which way it looks
	DetailMark                  // round a place that is drawn larger elsewhere
	TitleMark                   // the title under a view
)

// Mark is a record of a leader, a part mark, a section or detail mark or a
// view title, kept for the audits.
type Mark struct {
	Kind   MarkKind
	Label  string    // the words; of a section its letter, of a detail its number
	Sheet  string    // number of the sheet that it leads to; empty: none
	Box    Rect      // of the words
	Leader []geom.Pt // from the words to the target; empty: it stands on the thing
	Inside bool      // the leader ends with a dot inside the thing rather than an arrow on its edge
	ID     string    // of the member it points at, as Path.ID; may be empty
}

// Target is the point that the mark points at: the end of its leader, or the
// middle of the mark if it stands on the thing.
func (m Mark) Target() geom.Pt {
	if n := len(m.Leader); n > 0 {
		return m.Leader[n-1]
	}
	return m.Box.Centre()
}

// The size of a part mark, mm on paper (own): a box with round ends.
const (
	partHeight = 5.0
	partWidth  = 10.0 // of marks of up to three characters
	partPad    = 1.8  // from the text to the end of the box
)

// Part is a part mark: the same shape, size and way of reading everywhere.
type Part struct {
	View   *View
	At     geom.Vec // a point of the member, well inside it as drawn
	Mark   string   // e.g. "R1"
	ID     string   // of the member, as Path.ID
	Toward geom.Pt  // direction on the paper in which the mark should stand; zero: anywhere
	Edge   bool     // At lies on an edge: end the leader with an arrow instead of a dot
	Flag   bool     // a flag and no member's mark: its box is square
}

// partSize is the size of the box of a part mark.
func partSize(mark string) (w, h float64) {
	return max(partWidth, TextWidth(mark, NoteHeight, false)+2*partPad), partHeight
}

// Part places a part mark where it touches nothing: on the member if there is
// room, else beside it with a leader.
func (p *Placer) Part(m Part) Mark {
	w, h := partSize(m.Mark)
	at := m.View.Pt(m.At)
	on := Rect{at.X - w/2, at.Y - h/2, at.X + w/2, at.Y + h/2}
	mark := Mark{Kind: PartMark, Label: m.Mark, ID: m.ID, Inside: !m.Edge}
	if !m.Edge && m.Toward == (geom.Pt{}) && p.Free(on, nearLine) {
		mark.Box = on
	} else {
		best := p.search(leadSearch{target: at, w: w, h: h, toward: m.Toward, round: true})
		mark.Box, mark.Leader = best.box, best.leader
	}
	p.Sheet.drawPart(mark, m.Flag)
	p.Sheet.Marks = append(p.Sheet.Marks, mark)
	return mark
}

// drawPart draws the box, its text and its leader.
func (s *Sheet) drawPart(m Mark, flag bool) {
	s.drawLeader(m.Leader, m.Inside)
	if flag {
		s.Rect(Style{Layer: Notes, Pen: Middle}, m.Box)
	} else {
		s.roundBox(narrow(Notes), m.Box)
	}
	c := m.Box.Centre()
	s.AddText(Text{Layer: Notes, Align: Centred, At: geom.P(c.X, c.Y-NoteHeight/2), Height: NoteHeight, String: m.Label, ID: m.ID})
}

// roundBox strokes a box whose ends are half circles.
func (s *Sheet) roundBox(st Style, b Rect) {
	r := b.H() / 2
	y := (b.Y0 + b.Y1) / 2
	right := geom.Arc{Centre: geom.P(b.X1-r, y), Major: geom.P(r, 0), Ratio: 1, Start: -math.Pi / 2, End: math.Pi / 2}
	left := geom.Arc{Centre: geom.P(b.X0+r, y), Major: geom.P(r, 0), Ratio: 1, Start: math.Pi / 2, End: 3 * math.Pi / 2}
	s.Add(Path{Style: st, Stroke: true, Closed: true, Segs: []Seg{
		{Op: Move, To: geom.P(b.X0+r, b.Y0)},
		{Op: Line, To: geom.P(b.X1-r, b.Y0)},
		{Op: Curve, To: geom.P(b.X1-r, b.Y1), Arc: right},
		{Op: Line, To: geom.P(b.X0+r, b.Y1)},
		{Op: Curve, To: geom.P(b.X0+r, b.Y0), Arc: left},
	}})
}

// drawLeader draws a leader and its end: a dot inside the thing or an arrow on
// its edge.
func (s *Sheet) drawLeader(line []geom.Pt, inside bool) {
	n := len(line)
	if n < 2 {
		return
	}
	s.Line(narrow(Notes), line...)
	if inside {
		s.Dot(Notes, line[n-1], leaderDot)
		return
	}
	s.arrowhead(Notes, line[n-1], line[n-1].Sub(line[n-2]))
}

const (
	leaderDot   = 0.6 // radius of the dot at the end of a leader, mm on paper
	leaderClear = 0.7 // from a leader to a text that is not its own
)
