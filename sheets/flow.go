package sheets

import (
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
)

// flowed is a sheet of blocks that flow down columns, each with its place.
type flowed []flowPlace

type flowPlace struct {
	block block
	at    geom.Pt
	scale float64
}

func (f flowed) draw(p *page) {
	for _, b := range f {
		b.block.draw(p, b.at, b.scale)
	}
	for _, b := range f {
		b.block.finish(p)
	}
}

// flow fills the columns of sheets with blocks, in order.
type flow struct {
	space   draw.Space
	hand    draw.Hand
	width   float64       // of a column at least
	columns []draw.Rect   // the room left in each column of the present sheet
	earlier [][]draw.Rect // and of each sheet before it
	sheets  []flowed
}

// columnGap is the distance between two columns of words, mm on paper.
const columnGap = 9.0

// newFlow starts a flow of columns of words.
func newFlow(h draw.Hand, sp draw.Space) *flow { return newWideFlow(h, sp, wordWidth) }

// newWideFlow starts a flow of columns at least as wide as given, or as the
// sheet.
func newWideFlow(h draw.Hand, sp draw.Space, width float64) *flow {
	f := &flow{space: sp, hand: h, width: width}
	f.newSheet()
	return f
}

// newSheet starts a sheet with columns as high as the title block allows.
func (f *flow) newSheet() {
	if len(f.sheets) > 0 {
		f.earlier = append(f.earlier, f.columns)
	}
	f.sheets = append(f.sheets, nil)
	f.columns = nil
	free := freeOf(f.space)
	n := max(1, math.Floor((free.W()+columnGap)/(f.width+columnGap)))
	pitch := (free.W() + columnGap) / n
	for i := range int(n) {
		c := free
		c.X0 = free.X0 + pitch*float64(i)
		c.X1 = c.X0 + pitch - columnGap
		if c.X1 > f.space.Beside.X1 {
			c.Y0 = f.space.Above.Y0
		}
		f.columns = append(f.columns, c)
	}
}

// leastAcross is the number of columns that a block across them takes at least,
// if there are so many.
const leastAcross = 2

// across puts a block over the tops of the first columns, as high as a part of
// the sheet if it is not wider than all of them.
func (f *flow) across(b *pictureBlock, part float64) {
	e := b.extent(f.hand, 1)
	h := f.columns[0].H() * part
	x0, last := f.columns[0].X0, len(f.columns)-1
	n := min(leastAcross, len(f.columns)) - 1
	for n < last && f.columns[n].X1-x0 < e.W()*h/e.H() && f.columns[n+1].H() == f.columns[0].H() {
		n++
	}
	w := f.columns[n].X1 - x0
	k := min(w/e.W(), h/e.H())
	e = b.extent(f.hand, k)
	sheet := len(f.earlier)
	f.sheets[sheet] = append(f.sheets[sheet], flowPlace{b, geom.P(x0+(w-e.W())/2, f.columns[0].Y1), k})
	for i := range n + 1 {
		f.columns[i].Y1 -= e.H() + stackGap
	}
}

// splitter is a block that can go on in a further column.
type splitter interface {
	// split cuts the block into parts no higher than height, mm on paper, as
	// far as its lines allow.
	split(height float64) []block
}

// add puts a block in the first column with room for it, on a further sheet if
// none has. One higher than any column goes on from column to column; if it
// cannot, it stands there all the same and the audit reports it.
func (f *flow) add(b block) {
	for sheet, columns := range f.earlier {
		if f.fill(b, sheet, columns) {
			return
		}
	}
	f.addLast(b)
}

// addLast is add on the present sheet or after it.
func (f *flow) addLast(b block) {
	if f.fill(b, len(f.earlier), f.columns) {
		return
	}
	f.newSheet()
	if f.fill(b, len(f.earlier), f.columns) {
		return
	}
	if s, ok := b.(splitter); ok {
		if parts := s.split(f.highest()); len(parts) > 1 {
			for _, part := range parts {
				f.addLast(part) // never before the one that it continues
			}
			return
		}
	}
	f.put(b, 0, b.extent(f.hand, 1))
}

// fill puts a block in the first of the columns of a sheet with room for it, if
// there is one.
func (f *flow) fill(b block, sheet int, columns []draw.Rect) bool {
	e := b.extent(f.hand, 1)
	for i := range columns {
		if c := &columns[i]; e.H() <= c.H() && e.W() <= c.W()+columnGap/2 {
			f.putIn(b, sheet, c, e)
			return true
		}
	}
	return false
}

// highest is the height of the column with the most room.
func (f *flow) highest() float64 {
	h := 0.0
	for _, c := range f.columns {
		h = max(h, c.H())
	}
	return h
}

// put puts a block in a column of the present sheet.
func (f *flow) put(b block, column int, e draw.Rect) {
	f.putIn(b, len(f.earlier), &f.columns[column], e)
}

// putIn puts a block in a column. One a little wider than the last column
// stands out into the gap before it, not over the edge.
func (f *flow) putIn(b block, sheet int, c *draw.Rect, e draw.Rect) {
	x := min(c.X0-e.X0, freeOf(f.space).X1-e.X1)
	f.sheets[sheet] = append(f.sheets[sheet], flowPlace{b, geom.P(x, c.Y1-e.Y1), 1})
	c.Y1 -= e.H() + stackGap
}
