package draw

import (
	"fmt"
	"math"

	"plumbcut/geom"
)

// Figures writes the figures of dimensions. It is the only place where a
// number is rounded, so that two sheets of a set cannot round differently.
type Figures interface {
	Round(mm float64) float64 // the length that Length prints, mm
	Length(mm float64) string // a length
	Level(mm float64) string  // a height against the datum, with its sign
	Angle(rad float64) string // degrees
	Slope(rad float64) string // 1:n
}

// Hand is the draughtsman's hand: how the sheets of a set are figured and
// lettered. The same Hand measures a piece of drawing before it is placed and
// draws it afterwards, so both agree.
type Hand struct {
	Paper   Paper
	Figures Figures
	Feet    bool // scale bars in feet rather than metres
}

// Letter heights, mm on paper (ISO 3098 series).
const (
	NoteHeight   = 2.5 // notes, labels, tables, figures
	TitleHeight  = 3.5 // view titles
	SheetHeight  = 5.0 // the title of the sheet
	NumberHeight = 7.0 // the number of the sheet
)

// bigSheet is the short side, mm, from which figures are 3.5 mm high: the
// sheet is read standing. It lies between A2 (420) and A1 (594).
const bigSheet = 550

// FigureHeight is the height of the figures of dimensions, mm on paper.
func (h Hand) FigureHeight() float64 {
	if min(h.Paper.Width, h.Paper.Height) >= bigSheet {
		return TitleHeight
	}
	return NoteHeight
}

// extension is the gap before an extension line and its overshoot beyond the
// dimension line: 8 times the width of the line (ISO 129-1).
func (h Hand) extension() float64 { return 8 * h.Paper.LineWidth(Narrow) }

// The look of a dimension, mm on paper. The project's own choice except where
// a standard is named.
const (
	firstRow     = 10.0 // from the outline of the view to the first row
	rowPitch     = 8.0  // from row to row
	strokeLength = 3.0  // of the 45° stroke that ends a dimension line (ISO 129-1)
	arrowLength  = 3.0  // of an arrowhead
	arrowHalf    = 0.5  // half its width: a head of 19°, within the 15° to 90° of ISO 129-1
	originRadius = 1.5  // of the circle at the datum of a running row (ISO 129-1: about 3 across)
	dotRadius    = 0.5  // of the dot that takes the place of an arrowhead where there is no room
	figureGap    = 1.0  // from a dimension line up to its figure
	nearStroke   = 1.9  // from an extension line to a figure at its right: clears the stroke
	nearLine     = 0.8  // from a figure to an extension line at its right
	textGap      = 1.2  // between two texts; the audit asks for 1
)

// sameSpot is the distance, mm on paper, within which two points are drawn as
// one: a third of the narrowest pen.
const sameSpot = 0.05

// DimKind is the kind of a dimension.
type DimKind int

// The kinds of dimension.
const (
	SingleDim   DimKind = iota // between two points
	ChainDim                   // one space of a chain
	RunningDim                 // from the datum of its row
	EqualDim                   // Spaces equal spaces and their total
	AngleDim                   // between two directions, in degrees
	FallDim                    // a fall: degrees and 1:n
	LevelDim                   // a height against the datum of the job
	RadiusDim                  // of an arc
	DiameterDim                // of a hole
)

// Dim is what a dimension measures. Its figure is computed from the model, so
// nobody can type a wrong one.
type Dim struct {
	View   *View
	A, B   geom.Vec // the points of the model that it measures between
	Along  geom.Vec // the direction, of length 1, in which it is measured
	From   geom.Vec // ChainDim: where its chain starts. AngleDim: the apex
	Spaces int      // EqualDim: how many
	Prefix string   // set before the figure, e.g. "fall "
	Suffix string   // set after it
}

// Placed is a dimension as it stands on the sheet.
type Placed struct {
	Dim
	Kind   DimKind
	Figure string  // as printed
	P, Q   geom.Pt // the ends of the dimension line that stand for A and B
	Box    Rect    // of the figure
	Row    int     // of the rows on its side of the view, from 0; −1 outside rows
}

// Value is the length measured, mm of the model: the distance from A to B in
// the direction Along, never negative.
func (d Dim) Value() float64 { return math.Abs(d.Along.Dot(d.B.Sub(d.A))) }

// figure is what is printed for a dimension of the given kind.
func (d Dim) figure(kind DimKind, f Figures) string {
	if d.View != nil && d.View.Figures != nil {
		f = d.View.Figures
	}
	return d.Prefix + d.number(kind, f) + d.Suffix
}

func (d Dim) number(kind DimKind, f Figures) string {
	switch kind {
	case ChainDim:
		// The difference of two rounded running lengths: the printed chain then
		// adds up to its printed overall.
		a := f.Round(d.Along.Dot(d.A.Sub(d.From)))
		b := f.Round(d.Along.Dot(d.B.Sub(d.From)))
		return f.Length(math.Abs(b - a))
	case EqualDim:
		return equalFigure(d.Spaces, d.Value(), f)
	case AngleDim:
		return f.Angle(d.angle())
	case FallDim:
		return fmt.Sprintf("%s (%s)", f.Angle(d.fall()), f.Slope(d.fall()))
	case LevelDim:
		return f.Level(d.Along.Dot(d.B.Sub(d.A)))
	case RadiusDim:
		return "R" + f.Length(d.B.Sub(d.A).Len())
	case DiameterDim:
		return "Ø" + f.Length(2*d.B.Sub(d.A).Len())
	}
	return f.Length(d.Value())
}

// equalFigure is "8 × 655 = 5240" where that is true of the rounded figures;
// where rounding would print a false sum it is "5243 in 8 equal spaces".
func equalFigure(n int, total float64, f Figures) string {
	if n < 2 {
		return f.Length(total)
	}
	const nothing = 1e-6 // mm: float64 rounding of sums of printed figures
	each := total / float64(n)
	if math.Abs(float64(n)*f.Round(each)-f.Round(total)) < nothing {
		return fmt.Sprintf("%d × %s = %s", n, f.Length(each), f.Length(total))
	}
	return fmt.Sprintf("%s in %d equal spaces", f.Length(total), n)
}

// angle is the angle at From between the directions to A and B, 0 to π.
func (d Dim) angle() float64 {
	a, b := d.A.Sub(d.From), d.B.Sub(d.From)
	return math.Atan2(a.Cross(b).Len(), a.Dot(b))
}

// fall is how steeply the line from A down to B falls, 0 to π/2.
func (d Dim) fall() float64 {
	v := d.B.Sub(d.A)
	return math.Atan2(math.Abs(v.Z), math.Hypot(v.X, v.Y))
}

// overLine is how far the baseline of a text stands over a line that runs under
// it: figureGap, or more under letters that hang below the baseline.
func overLine(text string, height float64) float64 {
	return max(figureGap, nearLine+hang(text, height))
}

// rise is how far the letters of a text reach above its capitals.
func rise(text string, height float64) float64 {
	return Text{Height: height, String: text}.Box().Y1 - height
}

// hang is how far the letters of a text reach below its baseline.
func hang(text string, height float64) float64 {
	return -Text{Height: height, String: text}.Box().Y0
}

// narrow is the style of dimension and extension lines.
func narrow(layer Layer) Style { return Style{Layer: layer, Pen: Narrow} }

// terminator draws the end of a dimension line that runs along dir.
func (s *Sheet) terminator(at, dir geom.Pt) {
	ends := stroke45(at, dir)
	s.Line(Style{Layer: Dimension, Pen: Middle}, ends[:]...)
}

// stroke45 is the terminator of a dimension line that runs along dir: a stroke
// at 45° to it, rising to the right for who reads the figure.
func stroke45(at, dir geom.Pt) [2]geom.Pt {
	d := readable(dir)
	tip := d.Add(d.Left()).Unit().Mul(strokeLength / 2)
	return [2]geom.Pt{at.Sub(tip), at.Add(tip)}
}

// arrowhead fills an arrowhead whose tip is at tip and which points along dir.
func (s *Sheet) arrowhead(layer Layer, tip, dir geom.Pt) {
	d := dir.Unit()
	back := tip.Sub(d.Mul(arrowLength))
	side := d.Left().Mul(arrowHalf)
	s.FillPolygon(layer, 1, []geom.Pt{tip, back.Add(side), back.Sub(side)})
}

// level45 is the tolerance, as a sine, within which a direction counts as
// exactly level or plumb on the paper, so that its text is turned by exactly
// 0 or a quarter: a thousandth of a degree shows on no plot.
const level45 = 1e-5

// readable turns dir so that a text along it reads from below or from the
// right, never upside down.
func readable(dir geom.Pt) geom.Pt {
	d := dir.Unit()
	if math.Abs(d.X) < level45 {
		return geom.P(0, 1)
	}
	if d.X < 0 {
		d = d.Mul(-1)
	}
	if math.Abs(d.Y) < level45 {
		return geom.P(1, 0)
	}
	return d
}

// turnOf is the angle of a readable direction, exact for the two that a
// drawing uses.
func turnOf(d geom.Pt) float64 {
	switch {
	case d.Y == 0:
		return 0
	case d.X == 0:
		return math.Pi / 2
	}
	return math.Atan2(d.Y, d.X)
}

// Outline carries bounds of the view plane, mm of the model, to the paper.
func (v *View) Outline(b Rect) Rect {
	return Bounds(v.Flat(geom.P(b.X0, b.Y0)), v.Flat(geom.P(b.X1, b.Y1)))
}
