package template

import (
	"fmt"
	"math"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
)

// layout is how every page is divided, in true millimetres: what they measure
// once the printer has printed them.
type layout struct {
	paper   draw.Paper // upright, so that across and up mean the same on every page
	stretch geom.Pt    // what the file is drawn larger by, across and up
	printer frame.Printer
	print   draw.Rect // what the printer reaches
	origin  geom.Pt   // where the two check bars start
	far     geom.Pt   // the cross opposite, for the diagonals
	free    draw.Rect // for templates
	overlap float64
}

// The division of a page, mm (own).
const (
	penRoom   = 0.5  // half of the widest pen, and a little
	barLeft   = 8.0  // from the edge of the print to the upright bar
	barBelow  = 23.8 // from the edge of the print to the level bar
	barRoom   = 7.0  // from the bars to the templates
	headDepth = 13.0 // of the head of the page
	crossStep = 5.0  // the sides of the rectangle of check crosses are whole such steps
	crossHalf = 2.0  // of a check cross
)

// newLayout divides the pages of a job. On a roll a page is as long as asked.
func newLayout(j *frame.Job, long float64) (layout, error) {
	t := j.Templates
	paper := draw.Paper{Name: "roll", Width: t.Roll, Height: max(long, rollLeast), Fine: true}
	if t.Paper != "" {
		var ok bool
		if paper, ok = draw.PaperByName(t.Paper); !ok {
			return layout{}, fmt.Errorf("no paper is called %q; there are %v", t.Paper, draw.PaperNames())
		}
		paper = paper.Portrait()
		paper.Fine = true
	}
	p := j.Printer
	l := layout{
		paper: paper, printer: p, overlap: t.Overlap,
		stretch: geom.P(frame.CheckBar/p.X, frame.CheckBar/p.Y),
	}
	half := geom.P((paper.Width/2-t.Margin-penRoom)/l.stretch.X, (paper.Height/2-t.Margin-penRoom)/l.stretch.Y)
	m := l.middle()
	l.print = draw.Rect{X0: m.X - half.X, Y0: m.Y - half.Y, X1: m.X + half.X, Y1: m.Y + half.Y}
	l.origin = geom.P(l.print.X0+barLeft, l.print.Y0+barBelow)
	whole := func(d float64) float64 { return math.Floor(d/crossStep) * crossStep }
	l.far = l.origin.Add(geom.P(whole(l.print.X1-crossHalf-l.origin.X), whole(l.print.Y1-crossHalf-l.origin.Y)))
	l.free = draw.Rect{X0: l.origin.X + barRoom, Y0: l.origin.Y + barRoom, X1: l.print.X1, Y1: l.print.Y1 - headDepth}
	return l, nil
}

// rollLeast is the least length of a page from a roll, mm: that of the check
// bar, and room.
const rollLeast = 300

func (l layout) middle() geom.Pt { return geom.P(l.paper.Width/2, l.paper.Height/2) }

// fits reports whether a thing of a size fits a page, turned or not.
func (l layout) fits(w, h float64) bool {
	fw, fh := l.free.W()+same, l.free.H()+same
	return w <= fw && h <= fh || h <= fw && w <= fh
}

// bars draws what a page is checked by.
func (l layout) bars() ink {
	var k ink
	up := ink{}
	up.bar()
	k.bar()
	// The upright bar is the level one turned, and seen in the mirror so that
	// its millimetres are at the left edge, too.
	for _, s := range up.lines {
		k.line(s.style, swapped(s.a), swapped(s.b))
	}
	for _, f := range up.fills {
		var pts []geom.Pt
		for _, p := range f.pts {
			pts = append(pts, swapped(p))
		}
		k.fill(f.layer, f.tone, pts...)
	}
	for _, t := range up.words {
		b := t.Box()
		t.At, t.Turn = geom.P((b.Y0+b.Y1)/2+t.Height/2, (b.X0+b.X1)/2), math.Pi/2
		t.Align = draw.Centred
		k.words = append(k.words, t)
	}
	var out ink
	out.add(k, l.origin)
	for _, c := range []geom.Pt{l.origin, geom.P(l.far.X, l.origin.Y), l.far, geom.P(l.origin.X, l.far.Y)} {
		out.line(barLine, c.Sub(geom.P(crossHalf, 0)), c.Add(geom.P(crossHalf, 0)))
		out.line(barLine, c.Sub(geom.P(0, crossHalf)), c.Add(geom.P(0, crossHalf)))
	}
	return out
}

func swapped(p geom.Pt) geom.Pt { return geom.P(p.Y, p.X) }

// The look of a check bar, mm (own), and the parts of its length within which a
// print is good, and good enough for a short cut.
const (
	tick       = 2.0
	endTick    = 4.2
	bandDepth  = 3.0
	barFigure  = 5.3 // from the bar to the foot of its figures
	passPart   = 0.0025
	warnPart   = 0.005
	barInches  = 6
	warnTone   = 0.35
	barAcross  = 10.0 // between ticks
	barFigures = 50   // between figures
)

// bar is the level check bar from the zero to the right: millimetres below
// it, inches above.
func (k *ink) bar() {
	const long = frame.CheckBar
	inches := barInches * measure.Inch
	k.line(barLine, geom.P(0, 0), geom.P(inches, 0))
	band := func(at, y0, y1 float64) {
		box := func(part float64) []geom.Pt {
			return draw.Rect{X0: at * (1 - part), Y0: y0, X1: at * (1 + part), Y1: y1}.Corners()
		}
		k.fill(draw.Dimension, warnTone, box(warnPart)...)
		k.fill(draw.Dimension, 1, box(passPart)...)
	}
	for x := 0.0; x < long; x += barAcross {
		k.line(barLine, geom.P(x, 0), geom.P(x, -tick))
	}
	for i := range barInches {
		k.line(barLine, geom.P(float64(i)*measure.Inch, 0), geom.P(float64(i)*measure.Inch, tick))
	}
	// The last ticks stand out of the bands.
	k.line(barLine, geom.P(long, 0), geom.P(long, -endTick))
	k.line(barLine, geom.P(inches, 0), geom.P(inches, endTick))
	band(long, -bandDepth, 0)
	band(inches, 0, bandDepth)
	for n := barFigures; n <= long; n += barFigures {
		words := fmt.Sprint(n)
		if n == long {
			words += " mm"
		}
		k.text(geom.P(float64(n), -barFigure-draw.NoteHeight), draw.Centred, draw.NoteHeight, words)
	}
	k.text(geom.P(inches+1.5*bandDepth, 1), draw.Start, draw.NoteHeight, "6 in")
}

// advice is what stands under the bars.
func (m *maker) advice() []string {
	l := m.page
	d := l.far.Sub(l.origin)
	diagonal := m.fine.Length(d.Len())
	out := []string{
		fmt.Sprintf("Print at 100 %%, then measure: both bars, and corner to corner both ways between the crosses, %s each.", diagonal),
		fmt.Sprintf("Black (0.25 %%): pass. Grey (0.5 %%): warn, short cuts only. Beyond it, or corners %s off: reject the page.", m.fine.Length(d.Len()*warnPart)),
	}
	if l.printer.Corrects() {
		return append(out, fmt.Sprintf("FOR ONE PRINTER ONLY: drawn for bars that measured %s across and %s up.", barWords(l.printer.X), barWords(l.printer.Y)))
	}
	return append(out, "Lines: thick = cut, long dashes = mark, short fine dashes = fold, chain = centre. The middle of a line is its place.")
}

// barWords writes a measured bar, in the units that it was measured in.
func barWords(mm float64) string { return measure.Format{Step: 0.1}.Length(mm) + " mm" }

// pageHead is what stands at the top of every page.
func (m *maker) pageHead(page, pages int) ink {
	var k ink
	l, p := m.page, m.job.Project
	left, right := l.origin.X+2*crossHalf, l.far.X-2*crossHalf
	count := draw.Text{
		Layer: draw.Notes, At: geom.P(right, l.print.Y1-draw.TitleHeight-1), Align: draw.End, Height: draw.TitleHeight,
		Bold: true, String: fmt.Sprintf("page %d of %d", page, pages),
	}
	title := draw.Text{Layer: draw.Notes, At: geom.P(left, count.At.Y), Height: draw.TitleHeight, Bold: true}
	title.String = draw.Wrap(p.Title+" · full-size templates", title.Height, true, right-left-count.Width()-5)[0]
	var words []string
	for _, w := range []string{number(p.Number), p.Status, revision(p), p.Date, l.paper.Name, "figured dimensions govern over paper"} {
		if w != "" {
			words = append(words, w)
		}
	}
	k.words = append(k.words, title, count)
	line := draw.Wrap(strings.Join(words, " · "), draw.NoteHeight, false, right-left)[0]
	k.text(geom.P(left, title.At.Y-2*draw.NoteHeight), draw.Start, draw.NoteHeight, line)
	for i, s := range m.advice() {
		y := l.origin.Y - barFigure - draw.NoteHeight - float64(i+1)*lineStep - 0.5
		k.text(geom.P(l.origin.X, y), draw.Start, draw.NoteHeight, draw.Wrap(s, draw.NoteHeight, false, l.print.X1-l.origin.X)[0])
	}
	return k
}

// lineStep is from line to line of notes, mm.
const lineStep = 4.5

func number(n string) string {
	if n == "" {
		return ""
	}
	return "job " + n
}

func revision(p frame.Project) string {
	if n := len(p.Revisions); n > 0 {
		return "revision " + p.Revisions[n-1].Rev
	}
	return "no revision"
}
