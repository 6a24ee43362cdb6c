package sheets

import (
	"fmt"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/cutting"
	"plumbcut/geom/frame"
)

// barBlock is one stick drawn to scale with what is cut from it, and the same
// in words. Its reference point is its top left.
type barBlock struct {
	stick cutting.Stick
	names []string // of the cuts, with their lengths
	short []string // marks alone
	scale float64
	words draw.NoteBlock
	below bool // the words stand under the bar; else beside it
	size  draw.Rect
}

// The look of a bar, mm on paper (own).
const (
	barHeight = 6.0
	barGap    = 3.0  // from the bar to its words
	barBeside = 48.0 // least width of words that stand beside it
	barPad    = 0.8  // from a name to the saw cuts
)

// newBar draws a run of sticks that are cut alike. The width is that of the
// column.
func (m *maker) newBar(b frame.Batch, s frame.CutStick, scale, width float64) *barBlock {
	stick := b.Plan.Sticks[s.Stick]
	bar := &barBlock{stick: stick, scale: scale}
	for _, c := range stick.Cuts {
		cut := b.Cuts[c.Piece]
		bar.short = append(bar.short, cut.Mark+initial(cut.Hand))
		bar.names = append(bar.names, cut.Mark+initial(cut.Hand)+" "+m.tapeFigures().Length(cut.Cut()))
	}
	w := bar.length(stick.Sums.Bought)
	beside := width - w - barGap
	bar.below = beside < barBeside
	if bar.below {
		beside = width
	}
	bar.words = draw.NoteBlock{Notes: []string{m.barWords(b, s)}, Width: beside}
	bar.measure()
	return bar
}

// initial is the hand in one letter, for the bars.
func initial(h frame.Hand) string {
	if h == frame.NoHand {
		return ""
	}
	return " " + strings.ToUpper(string(h[:1]))
}

// barCuts are the cuts of a stick in words, alike ones counted.
func (m *maker) barCuts(b frame.Batch, s frame.CutStick) []string {
	cuts := b.Plan.Sticks[s.Stick].Cuts
	var parts []string
	for i := 0; i < len(cuts); {
		k := i
		for k < len(cuts) && cuts[k].Piece == cuts[i].Piece {
			k++
		}
		cut := b.Cuts[cuts[i].Piece]
		parts = append(parts, fmt.Sprintf("%d %s of %s", k-i, handed(cut), m.tapeFigures().Length(cut.Cut())))
		i = k
	}
	return parts
}

// barWords say how many sticks there are and what is cut from each.
func (m *maker) barWords(b frame.Batch, s frame.CutStick) string {
	length := m.unbroken(s.Length.Length)
	words := "1 stick of " + length + ": "
	if s.Count > 1 {
		words = fmt.Sprintf("%d sticks of %s, each: ", s.Count, length)
	}
	for i, c := range m.barCuts(b, s) {
		if i > 0 {
			words += ", "
		}
		words += noBreaks(c)
	}
	if left := b.Plan.Sticks[s.Stick].Sums.Offcuts.Millimetres(); m.figures.Round(left) > 0 {
		words += "; left over " + noBreaks(m.tapeFigures().Length(left))
	}
	if s.Whole {
		words += "; take it as it comes, there is nothing to trim"
	}
	return words + "."
}

// unbroken is a length that stays on one line.
func (m *maker) unbroken(mm float64) string { return noBreaks(m.figures.Length(mm)) }

func noBreaks(s string) string { return strings.ReplaceAll(s, " ", "\u00a0") }

// length is a length on the paper.
func (b *barBlock) length(l cutting.Length) float64 { return l.Millimetres() * b.scale }

func (b *barBlock) extent(draw.Hand, float64) draw.Rect { return b.size }

// measure works out the room that the bar and its words take.
func (b *barBlock) measure() {
	w, h := b.words.Size()
	bar := b.length(b.stick.Sums.Bought)
	b.size = draw.Rect{X0: 0, Y0: -max(barHeight, h), X1: bar + barGap + w, Y1: 0}
	if b.below {
		b.size = draw.Rect{X0: 0, Y0: -barHeight - barGap - h, X1: max(bar, w), Y1: 0}
	}
}

func (b *barBlock) draw(p *page, at geom.Pt, _ float64) {
	s := p.sheet
	sums := b.stick.Sums
	box := func(from, to cutting.Length) draw.Rect {
		return draw.Rect{X0: at.X + b.length(from), Y0: at.Y - barHeight, X1: at.X + b.length(to), Y1: at.Y}
	}
	trim := sums.Trims / 2
	end := trim
	last := 0.0 // place of the last line
	line := func(l cutting.Length) {
		x := b.length(l)
		if x-last >= leastApart && b.length(sums.Bought)-x >= leastApart {
			s.Line(draw.Style{Layer: draw.Outline, Pen: draw.Narrow}, geom.P(at.X+x, at.Y), geom.P(at.X+x, at.Y-barHeight))
			last = x
		}
	}
	line(trim)
	for i, c := range b.stick.Cuts {
		b.name(s, box(c.Start, c.Start+c.Length), i)
		end = c.Start + c.Length
		line(end)
	}
	if left := box(end, sums.Bought-trim); left.W() > leastHatch {
		s.Hatch(draw.EndGrain, [][]geom.Pt{left.Corners()}, 0)
		line(sums.Bought - trim)
	}
	s.Rect(draw.Style{Layer: draw.Outline, Pen: draw.Middle}, box(0, sums.Bought))
	words := geom.P(at.X, at.Y-barHeight-barGap)
	if !b.below {
		words = geom.P(at.X+b.length(sums.Bought)+barGap, at.Y)
	}
	b.words.Draw(s, words)
}

// leastHatch is the width under which an offcut is left white, mm on paper.
const leastHatch = 1.5

// leastApart is how far a saw cut is drawn from the one before it and from the
// ends of the bar, mm on paper: nearer ones would run together.
const leastApart = 0.9

// name writes what a piece is into it, as far as there is room.
func (b *barBlock) name(s *draw.Sheet, piece draw.Rect, i int) {
	for _, words := range []string{b.names[i], b.short[i]} {
		if draw.TextWidth(words, draw.NoteHeight, false)+2*barPad <= piece.W() {
			c := piece.Centre()
			s.AddText(draw.Text{Layer: draw.Notes, At: geom.P(c.X, c.Y-draw.NoteHeight/2), Align: draw.Centred, Height: draw.NoteHeight, String: words})
			return
		}
	}
}

func (b *barBlock) finish(*page) {}
