package sheets_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
)

// The draughting of a finished sheet, measured with a ruler: from the lines and
// letters of the PDF alone. The numbers are those of the points by which this
// project judges a sheet; what has no source beside it is its own choice.
//
//	 1 pens             measured   three of ISO 128, each where it belongs
//	 2 dashes           measured   fitted, beginning and ending on ink
//	 3 lines too close  told by TestAudits -long: a small scale can force it
//	 4 ends and corners measured   butt and mitred; no line twice
//	 5 heaviest first   by eye
//	 6 extension lines  by eye
//	 7 terminators      measured   3 mm, at 45° to their line, the middle pen
//	 8 rows             measured   as far apart as agreed
//	 9 figures          measured   above their line, clear of it, never upside down
//	10 room             measured   nothing overlaps; none shrinks
//	11 chains           TestAudits: the figures of a row add up
//	12 holes            TestMembersRebuiltFromTheFile
//	13 levels           TestWholeSetSaysEverything reads them
//	14 units            measured   said once, not after each figure
//	15 heights          measured   of the series of ISO 3098
//	16 words            by eye
//	17 leaders          TestAudits: none cross
//	18 part marks       TestAudits; whether each member has one, by eye
//	19 nothing touches  measured   1 mm from words to words, 0.5 mm to lines
//	20 frame            measured   ISO 5457, with centring marks, fields and block
//	21 views line up    by eye
//	22 scales           measured   of ISO 5455, stated and true
//	23 spread of ink    by eye
//	24 way of looking   measured   said under plans and elevations
//	25 marks            TestFiveReadersTakeTheFiles clicks on them
//	26 hatches          by eye
//	27 breaks           by eye; figures across them TestAudits
//	28 what is there    measured   context in the narrow pen, but for the ground
//	29 title block      measured   the fields of ISO 7200 and what sheets need
//	30 a stranger       by eye
func TestDraughting(t *testing.T) {
	var found ledger
	n := each(t, examples(t), func(d *drawn) {
		f, ok := d.inFile(&found)
		if !ok {
			return
		}
		measured := 0
		pages := f.pages()
		for i, ref := range pages {
			p := newBoard(f, ref)
			p.find = func(rule, format string, args ...any) {
				found.add(rule, d.name, "page %d: %s", i+1, fmt.Sprintf(format, args...))
			}
			p.pens()
			p.dashes()
			p.doubled()
			p.rows()
			measured += p.figures()
			p.letters()
			p.touching()
			p.border()
			p.block(i+1, len(pages))
			p.ways()
		}
		// Fewer means that the test has lost sight of the dimensions.
		if least := 2 * len(pages); measured < least {
			found.add("22 scales", d.name, "only %d figures were held against their lines, want %d", measured, least)
		}
	})
	if n == 0 {
		t.Error("no jobs")
	}
	found.report(t)
}

// board is a page to be measured.
type board struct {
	*painter
	wide, tall float64 // of the paper, mm
	dims       []dimLine
	find       func(rule, format string, args ...any)
}

// dimLine is a line between terminators, or through more of them, with their
// places along it.
type dimLine struct {
	ink
	stops []float64
}

func newBoard(f *pdfFile, page pdfRef) *board {
	size := numbers(f.array(f.dict(page)["MediaBox"]))
	p := &board{painter: f.paint(page), wide: size[2] * mmPerPoint, tall: size[3] * mmPerPoint}
	p.dims = p.dimLines()
	return p
}

// Pens of ISO 128-20 in the ratio 1:2:4 of ISO 128-23, on A4 and on what is
// larger.
func (p *board) series() [3]float64 {
	const a4 = 297 + 1 // mm, its long side
	if max(p.wide, p.tall) < a4 {
		return [3]float64{0.13, 0.25, 0.5}
	}
	return [3]float64{0.18, 0.35, 0.7}
}

const hair = 0.005 // mm: widths and places are written to a thousandth or a hundredth

// pens checks the widths of all lines.
func (p *board) pens() {
	three := p.series()
	may := map[string][]float64{
		draw.Hatch.String():   three[:1],
		draw.Hidden.String():  three[:1],
		draw.Context.String(): three[:],
	}
	for _, l := range p.out {
		allowed, ok := may[l.layer]
		if !ok {
			allowed = three[:]
		}
		in := slices.ContainsFunc(allowed, func(w float64) bool { return math.Abs(w-l.width) < hair })
		if l.width > 0 && !in {
			p.find("1 pens", "a line %.2f wide on the layer %s", l.width, l.layer)
		}
	}
	if p.rounded > 0 {
		p.find("4 ends and corners", "%d lines with round ends or corners", p.rounded)
	}
}

// dashes checks the patterns of straight lines: 12d–3d, and 24d–3d–dot–3d of
// ISO 128-20, the dashes drawn out or in until the last ends with the line.
func (p *board) dashes() {
	for _, l := range p.out {
		if len(l.dashes) == 0 || !l.alone || l.curved || l.width == 0 {
			continue
		}
		usual := map[int]float64{2: 12, 4: 24}[len(l.dashes)]
		period := 0.0
		for _, d := range l.dashes {
			period += d
		}
		dash, gap, long := l.dashes[0]/l.width, l.dashes[1]/l.width, l.b.Sub(l.a).Len()
		n := (long - l.dashes[0]) / period
		const near = 0.05 // mm: the last dash ends no farther from the line's end
		switch {
		case math.Abs(gap-3) > 0.1:
			p.find("2 dashes", "gaps of %.1f widths on the layer %s", gap, l.layer)
		case dash < usual*2/3 || dash > usual*3/2:
			p.find("2 dashes", "dashes of %.1f widths on the layer %s, want about %g", dash, l.layer, usual)
		case math.Abs(n-math.Round(n))*period > near:
			p.find("2 dashes", "a line on the layer %s ends %.2f mm from a dash", l.layer, math.Abs(n-math.Round(n))*period)
		}
	}
}

// doubled checks that no straight line is drawn twice on a layer.
func (p *board) doubled() {
	seen := map[string]bool{}
	for _, l := range p.out {
		a, b := l.a, l.b
		const speck = 1 // mm: shorter ones may be taken for one that lies a hair otherwise
		if l.curved || l.width == 0 || b.Sub(a).Len() < speck {
			continue
		}
		if a.X > b.X || a.X == b.X && a.Y > b.Y {
			a, b = b, a
		}
		key := fmt.Sprintf("%s from %.2f, %.2f to %.2f, %.2f", l.layer, a.X, a.Y, b.X, b.Y)
		if seen[key] {
			p.find("4 no line twice", "%s", key)
		}
		seen[key] = true
	}
}

// dimLines finds the dimension lines, and checks their terminators: oblique
// strokes at 45° (ISO 129), here 3 mm long and of the middle pen.
func (p *board) dimLines() []dimLine {
	const stroke, near = 3, 0.02
	var lines, strokes []ink
	for _, l := range p.out {
		switch {
		case l.layer != draw.Dimension.String() || l.curved || l.width == 0 || len(l.dashes) > 0:
		case math.Abs(l.width-p.series()[1]) < hair && math.Abs(l.b.Sub(l.a).Len()-stroke) < near:
			strokes = append(strokes, l)
		default:
			lines = append(lines, l)
		}
	}
	var out []dimLine
	for _, l := range lines {
		along := l.b.Sub(l.a).Unit()
		d := dimLine{ink: l}
		for _, s := range strokes {
			middle, way := s.a.Add(s.b).Mul(0.5), s.b.Sub(s.a).Unit()
			if fromLine(middle, l.a, l.b) < near && math.Abs(math.Abs(way.Dot(along))-math.Sqrt2/2) < 0.01 {
				d.stops = append(d.stops, along.Dot(middle.Sub(l.a)))
			}
		}
		if len(d.stops) > 1 {
			slices.Sort(d.stops)
			out = append(out, d)
		}
	}
	return out
}

// rows checks how far dimension lines beside each other are apart, and that
// every middle stroke of the layer stands on one.
func (p *board) rows() {
	const apart = 8 // mm
	strokes, stops := 0, 0
	for _, l := range p.out {
		if l.layer == draw.Dimension.String() && math.Abs(l.width-p.series()[1]) < hair && !l.curved {
			strokes++
		}
	}
	for i, a := range p.dims {
		stops += len(a.stops)
		along := a.b.Sub(a.a).Unit()
		for _, b := range p.dims[i+1:] {
			gap := math.Abs(along.Cross(b.a.Sub(a.a)))
			if math.Abs(along.Cross(b.b.Sub(b.a).Unit())) > 0.001 || gap < hair {
				continue
			}
			from, to := along.Dot(b.a.Sub(a.a)), along.Dot(b.b.Sub(a.a))
			beside := min(max(from, to), a.b.Sub(a.a).Len()) - max(min(from, to), 0)
			if beside > 0 && gap < apart-hair {
				p.find("8 rows", "two of them are %.2f mm apart at %.0f, %.0f", gap, a.a.X, a.a.Y)
			}
		}
	}
	if stops < strokes {
		p.find("7 terminators", "%d strokes, but only %d stand 3 mm long at 45° on a line", strokes, stops)
	}
}

// titleScale is the scale at the end of the title of a view.
var titleScale = regexp.MustCompile(`(?:^|\s)1:(\d+)$`)

// isTitle reports whether words have the height of titles.
func (w lettering) isTitle() bool { return math.Abs(w.tall-draw.TitleHeight) < 0.02 }

// inside reports whether a point lies in the frame.
func (p *board) inside(q geom.Pt) bool {
	return draw.Rect{X0: 20, Y0: 10, X1: p.wide - 10, Y1: p.tall - 10}.Contains(q)
}

// scales are those that the page states under its views, n of 1:n.
func (p *board) scales() []float64 {
	var out []float64
	for _, w := range p.words {
		if m := titleScale.FindStringSubmatch(w.text); m != nil && w.isTitle() {
			n, _ := strconv.ParseFloat(m[1], 64)
			out = append(out, n)
			if !slices.Contains(iso5455, n) {
				p.find("22 scales", "%q is outside ISO 5455", w.text)
			}
		}
	}
	return out
}

// figures lays the ruler on every figure that stands over the line between two
// terminators: it must be the length between these at a scale that the page
// states. It returns how many were measured.
func (p *board) figures() int {
	scales, n := p.scales(), 0
	said := map[bool]string{true: "as shown", false: "not to scale"}[len(scales) > 0]
	if !slices.ContainsFunc(p.words, func(w lettering) bool { return w.layer == draw.Border.String() && w.text == said }) {
		p.find("22 scales", "the title block of %q does not say %q", p.sheetTitle(), said)
	}
	if len(scales) == 0 {
		return 0 // figures on pictures
	}
	for _, w := range p.words {
		value, ok := figure(w.text)
		if w.layer != draw.Dimension.String() || !ok {
			continue
		}
		long := p.under(w)
		if long == 0 {
			continue
		}
		n++
		const rounding, place = 0.5 + 1e-9, 0.02 // of a figure, mm; of two ends on paper
		if !slices.ContainsFunc(scales, func(s float64) bool { return math.Abs(value-long*s) < rounding+place*s }) {
			p.find("22 scales", "%q stands over %.2f mm of paper, at none of the scales %v", w.text, long, scales)
		}
	}
	return n
}

// sheetTitle is what the sheet is called.
func (p *board) sheetTitle() string {
	for _, w := range p.words {
		if w.layer == draw.Border.String() && math.Abs(w.tall-draw.SheetHeight) < 0.02 {
			return w.text
		}
	}
	return ""
}

// under is the length on paper between the terminators on either side of a
// figure; 0 if it does not stand over a dimension line.
func (p *board) under(w lettering) float64 {
	const least, most = 0.5, 2.5 // mm above its line
	middle := w.at.Add(w.dir.Mul(w.long / 2))
	for _, d := range p.dims {
		along := d.b.Sub(d.a).Unit()
		up := w.dir.Cross(middle.Sub(d.a))
		if math.Abs(along.Cross(w.dir)) > 0.001 || up < least || up > most {
			continue
		}
		at := along.Dot(middle.Sub(d.a))
		for i := 1; i < len(d.stops); i++ {
			if d.stops[i-1] < at && at < d.stops[i] {
				return d.stops[i] - d.stops[i-1]
			}
		}
	}
	return 0
}

// letters checks heights and the way words read.
func (p *board) letters() {
	series := []float64{2.5, 3.5, 5, 7} // ISO 3098, from the least that is used here
	for _, w := range p.words {
		const near = 0.02 // mm: the file gives the height of capitals to a thousandth of the size
		if !slices.ContainsFunc(series, func(h float64) bool { return math.Abs(h-w.tall) < near }) {
			p.find("15 heights", "%q is %.2f high", w.text, w.tall)
		}
		if w.layer == draw.Dimension.String() && (math.Abs(w.tall-2.5) > near || w.bold) {
			p.find("10 room", "the figure %q is %.2f high, bold %v", w.text, w.tall, w.bold)
		}
		// Read from below or from the right (ISO 129): never over the head.
		if s := w.slope(); s < -90+0.5 || s > 90+0.5 {
			p.find("9 figures", "%q reads at %.0f°", w.text, s)
		}
		if w.layer == draw.Dimension.String() && strings.HasSuffix(w.text, " mm") {
			p.find("14 units", "%q has its unit with it", w.text)
		}
	}
}

// touching checks what is clear round words: to the middle of lines, as these
// are measured from everywhere.
func (p *board) touching() {
	const toWords, toLines = 1 - hair, 0.5 - hair // mm
	lines := p.flattened()
	for i, w := range p.words {
		if !p.inside(w.at) {
			continue // letters of 3.5 mm in the strip of 5 mm are ISO 5457's
		}
		for _, v := range p.words[i+1:] {
			if w.away(v.at, v.long+v.tall) {
				continue
			}
			if gap := w.gap(v); gap < toWords {
				p.find("19 nothing touches", "%q and %q are %.2f mm apart at %.0f, %.0f", w.text, v.text, gap, w.at.X, w.at.Y)
			}
		}
		for _, l := range lines {
			if w.away(l.a, l.b.Sub(l.a).Len()) {
				continue
			}
			if gap := w.toLine(l.a, l.b); gap < toLines {
				p.find("19 nothing touches", "%q is %.2f mm from a line of the layer %s at %.0f, %.0f", w.text, gap, l.layer, w.at.X, w.at.Y)
			}
		}
	}
}

// away reports whether what lies within reach of a point is far from the words.
func (w lettering) away(p geom.Pt, reach float64) bool {
	const near = 2 // mm
	return p.Sub(w.at).Len() > reach+w.long+w.tall+near
}

// flattened are the lines with their curves in straight pieces.
func (p *board) flattened() []ink {
	const pieces = 12
	var out []ink
	for _, l := range p.out {
		if !l.curved {
			out = append(out, l)
			continue
		}
		from := l.a
		for i := range pieces {
			s := float64(i+1) / pieces
			r := 1 - s
			to := l.a.Mul(r * r * r).Add(l.bend[0].Mul(3 * r * r * s)).Add(l.bend[1].Mul(3 * r * s * s)).Add(l.b.Mul(s * s * s))
			piece := l
			piece.a, piece.b = from, to
			out = append(out, piece)
			from = to
		}
	}
	return out
}
