package draw

import (
	"math"
	"strconv"

	"plumbcut/geom"
)

// Space is what a sheet has room for once its frame and title block stand.
type Space struct {
	Frame  Rect // the drawing space of ISO 5457, up to the frame
	Block  Rect // the title block with its revisions, at the bottom right
	Above  Rect // free: the whole width above the block
	Beside Rect // free: left of the block, no higher than it
}

// The frame and its grid, mm on paper (ISO 5457).
const (
	gridBorder = 5.0  // width of the border that holds the grid letters and figures
	gridField  = 50.0 // of the fields, counted from the centring marks
	gridLetter = 3.5  // height of the letters and figures
	centring   = 10.0 // of a centring mark inside the frame
)

// smallCentring is the length of a centring mark inside the frame of a small
// sheet, mm: half the standard's, so that it does not eat the drawing (own).
const smallCentring = 5.0

// frameClear is kept free between a centring mark and the drawing, mm on paper:
// letters of a title reach above its capitals, and the mark is wide.
const frameClear = 1.2

// small reports whether the sheet takes the finer line group.
func (p Paper) small() bool { return min(p.Width, p.Height) < smallSheet }

// mark is the length of a centring mark inside the frame.
func (p Paper) mark() float64 {
	if p.small() {
		return smallCentring
	}
	return centring
}

// GridFields is the number of grid fields along an edge of the given length,
// mm: an even number of about 50 mm each, so that a centring mark stands in
// the middle.
func GridFields(edge float64) int { return 2 * int(math.Round(edge/(2*gridField))) }

// gridLines are the places of the lines between the fields of an edge.
func gridLines(edge float64) []float64 {
	half := GridFields(edge)/2 - 1
	var at []float64
	for k := -half; k <= half; k++ {
		at = append(at, edge/2+float64(k)*gridField)
	}
	return at
}

// gridName is the letter of field i, from 0; I and O are left out, and after Z
// the letters double (ISO 5457).
func gridName(i int) string {
	const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"
	s := letters[i%len(letters) : i%len(letters)+1]
	if i >= len(letters) {
		return s + s
	}
	return s
}

// FrameSpace measures the frame and the title block of a sheet without
// drawing them.
func FrameSpace(p Paper, b TitleBlock) Space {
	frame := p.Inner()
	w, h := b.size(p)
	clear := p.mark() + frameClear
	free := frame.Inset(clear)
	block := Rect{frame.X1 - w, frame.Y0, frame.X1, frame.Y0 + h}
	sp := Space{Frame: frame, Block: block, Above: free, Beside: free}
	sp.Above.Y0 = block.Y1 + clear/2
	sp.Beside.X1 = block.X0 - clear/2
	sp.Beside.Y1 = block.Y1
	return sp
}

// DrawFrame draws the frame with its centring marks and grid, and the title
// block, and returns the room that is left.
func (s *Sheet) DrawFrame(b TitleBlock) Space {
	sp := FrameSpace(s.Paper, b)
	s.Rect(Style{Layer: Border, Pen: Wide}, sp.Frame)
	s.Rect(Style{Layer: Border, Pen: Middle}, sp.Frame.Expand(gridBorder))
	s.grid(sp.Frame)
	s.centring(sp)
	b.draw(s, sp.Block)
	return sp
}

// centring draws the four centring marks, from the outer border into the
// drawing; where the title block stands in the way only up to the frame.
func (s *Sheet) centring(sp Space) {
	in, f := s.Paper.mark(), sp.Frame
	cx, cy := s.Paper.Width/2, s.Paper.Height/2
	mark := func(from, dir geom.Pt) {
		tip := from.Add(dir.Mul(gridBorder + in))
		if segmentMeets(from, tip, sp.Block.Expand(frameClear)) {
			tip = from.Add(dir.Mul(gridBorder))
		}
		s.Line(Style{Layer: Border, Pen: Wide}, from, tip)
	}
	mark(geom.P(cx, f.Y0-gridBorder), geom.P(0, 1))
	mark(geom.P(cx, f.Y1+gridBorder), geom.P(0, -1))
	mark(geom.P(f.X0-gridBorder, cy), geom.P(1, 0))
	mark(geom.P(f.X1+gridBorder, cy), geom.P(-1, 0))
}

// grid draws the lines between the fields and their names: figures from the
// left, letters from the top. Small sheets have names at the top and the left
// only (ISO 5457 for A4).
func (s *Sheet) grid(f Rect) {
	st := Style{Layer: Border, Pen: Middle}
	name := func(c geom.Pt, text string) {
		s.AddText(Text{Layer: Border, At: geom.P(c.X, c.Y-gridLetter/2), Align: Centred, Height: gridLetter, String: text})
	}
	mid := gridBorder / 2
	xs := gridLines(s.Paper.Width)
	for _, x := range xs {
		if x != s.Paper.Width/2 {
			s.Line(st, geom.P(x, f.Y1), geom.P(x, f.Y1+gridBorder))
			s.Line(st, geom.P(x, f.Y0-gridBorder), geom.P(x, f.Y0))
		}
	}
	ends := append(append([]float64{f.X0}, xs...), f.X1)
	for i := 1; i < len(ends); i++ {
		x := (ends[i-1] + ends[i]) / 2
		name(geom.P(x, f.Y1+mid), strconv.Itoa(i))
		if !s.Paper.small() {
			name(geom.P(x, f.Y0-mid), strconv.Itoa(i))
		}
	}
	ys := gridLines(s.Paper.Height)
	for _, y := range ys {
		if y != s.Paper.Height/2 {
			s.Line(st, geom.P(f.X0-gridBorder, y), geom.P(f.X0, y))
			s.Line(st, geom.P(f.X1, y), geom.P(f.X1+gridBorder, y))
		}
	}
	ends = append(append([]float64{f.Y0}, ys...), f.Y1)
	for i := 1; i < len(ends); i++ {
		y := (ends[i-1] + ends[i]) / 2
		letter := gridName(len(ends) - 1 - i)
		name(geom.P(f.X0-mid, y), letter)
		if !s.Paper.small() {
			name(geom.P(f.X1+mid, y), letter)
		}
	}
}
