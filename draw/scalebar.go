package draw

import (
	"math"
	"strconv"

	"plumbcut/geom"
)

// bar is a scale bar: cells of alternate tone with figures under their ends,
// true on any copy of the sheet, whatever its size.
//
//	▄▄▄▄▀▀▀▀▄▄▄▄▀▀▀▀
//	0       1       2 m
type bar struct {
	cell  float64 // of one cell on paper, mm
	cells int
	step  float64 // of one cell, in the unit lettered
	unit  string
}

// The size of a scale bar, mm on paper (own).
const (
	barWanted = 50.0 // its length, about
	barDepth  = 2.0
	barGap    = 1.0 // from the bar to its figures
)

// newBar chooses cells of 1, 2 or 5 times a power of ten so that four of them
// are about as long as wanted.
func newBar(scale float64, feet bool) bar {
	const cells = 4
	unit, name := 1000.0, "m"
	switch cellModel := barWanted / cells / scale; {
	case feet && cellModel < mmPerFoot:
		unit, name = mmPerInch, "in"
	case feet:
		unit, name = mmPerFoot, "ft"
	case cellModel < 250: // cells under a quarter of a metre read in millimetres
		unit, name = 1, "mm"
	}
	step := niceStep(barWanted / cells / scale / unit)
	return bar{cell: step * unit * scale, cells: cells, step: step, unit: name}
}

const mmPerFoot = 12 * mmPerInch

// niceStep is the 1, 2 or 5 times a power of ten nearest to x by ratio.
func niceStep(x float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(x)))
	best := power
	for _, k := range []float64{2, 5, 10} {
		if math.Abs(math.Log(k*power/x)) < math.Abs(math.Log(best/x)) {
			best = k * power
		}
	}
	return best
}

// label is the figure under the end of cell i; only every second is lettered.
func (b bar) label(i int) string {
	const digits = 1e6 // clears the noise of float64
	s := strconv.FormatFloat(math.Round(float64(i)*b.step*digits)/digits, 'f', -1, 64)
	if i == b.cells {
		s += " " + b.unit
	}
	return s
}

// width includes the figures that stand out at both ends.
func (b bar) width() float64 {
	return b.left() + float64(b.cells)*b.cell + TextWidth(b.label(b.cells), NoteHeight, false)
}

// left is how far the first figure stands out.
func (b bar) left() float64 { return TextWidth(b.label(0), NoteHeight, false) / 2 }

func (b bar) height() float64 { return barDepth + barGap + NoteHeight }

// draw puts the bar with its top left at the point.
func (b bar) draw(s *Sheet, at geom.Pt) {
	x0 := at.X + b.left()
	y := at.Y - barDepth
	for i := range b.cells {
		x := x0 + float64(i)*b.cell
		lower := y
		if i%2 == 1 {
			lower = y + barDepth/2
		}
		s.FillPolygon(Notes, 1, Rect{x, lower, x + b.cell, lower + barDepth/2}.Corners())
	}
	s.Rect(narrow(Notes), Rect{x0, y, x0 + float64(b.cells)*b.cell, at.Y})
	for i := 0; i <= b.cells; i += 2 {
		t := Text{Layer: Notes, Align: Centred, Height: NoteHeight, String: b.label(i)}
		t.At = geom.P(x0+float64(i)*b.cell, y-barGap-NoteHeight)
		if i == b.cells {
			// The figure stands under the end, its unit beyond.
			t.Align = Start
			t.At.X -= TextWidth(b.label(i)[:len(b.label(i))-len(b.unit)-1], NoteHeight, false) / 2
		}
		s.AddText(t)
	}
}

// ScaleBar draws a scale bar with its top left at the point and returns the
// room that it takes.
func (s *Sheet) ScaleBar(scale float64, h Hand, at geom.Pt) Rect {
	b := newBar(scale, h.Feet)
	b.draw(s, at)
	return Rect{at.X, at.Y - b.height(), at.X + b.width(), at.Y}
}
