package sheets

import (
	"plumbcut/draw"
	"plumbcut/geom"
)

// Distances on the paper, mm (own).
const (
	blockGap = 10.0 // between two blocks with everything round them; with the rows, views stand 25 mm apart
	titleGap = 7.0  // from whatever is below a view to its title
)

// block is a thing that takes room on a sheet and is drawn round a reference
// point: a view with its dimensions, a table, a column of notes. Blocks in one
// row of a grid share the height of their reference points, blocks in one
// column their distance across, so views line up.
type block interface {
	// extent is the room taken, mm on paper from the reference point.
	extent(h draw.Hand, scale float64) draw.Rect
	// draw puts the block on the page; words that look for a free place are
	// left to later.
	draw(p *page, at geom.Pt, scale float64)
	// finish adds what needs to know everything else that is on the page.
	finish(p *page)
}

// shaped is a block that leaves a corner of its extent free, which the title
// block of the sheet may take.
type shaped interface {
	// pieces are rectangles that cover the block, as extent gives one.
	pieces(h draw.Hand, scale float64) []draw.Rect
}

func piecesOf(b block, h draw.Hand, scale float64) []draw.Rect {
	if s, ok := b.(shaped); ok {
		return s.pieces(h, scale)
	}
	return []draw.Rect{b.extent(h, scale)}
}

// page is a sheet being drawn.
type page struct {
	sheet  *draw.Sheet
	hand   draw.Hand
	placer *draw.Placer
	refs   refs
}

// grid is an arrangement of blocks, rows from the top; nil leaves a cell free.
type grid [][]block

// placing is a grid measured at a scale.
type placing struct {
	grid       grid
	scale      float64
	cols, rows []band
	w, h       float64
}

// band is a column or a row of a grid: how far it reaches from its reference
// line, to the left or down (lo ≤ 0) and to the right or up.
type band struct{ lo, hi float64 }

func (b band) size() float64 { return b.hi - b.lo }

func (b *band) take(lo, hi float64) { b.lo, b.hi = min(b.lo, lo), max(b.hi, hi) }

// measure finds the room that a grid takes at a scale.
func (g grid) measure(h draw.Hand, scale float64) placing {
	p := placing{grid: g, scale: scale, rows: make([]band, len(g))}
	for r, row := range g {
		for c, b := range row {
			for len(p.cols) <= c {
				p.cols = append(p.cols, band{})
			}
			if b == nil {
				continue
			}
			e := b.extent(h, scale)
			p.cols[c].take(e.X0, e.X1)
			p.rows[r].take(e.Y0, e.Y1)
		}
	}
	p.w, p.h = total(p.cols), total(p.rows)
	return p
}

func total(bands []band) float64 {
	sum := blockGap * float64(len(bands)-1)
	for _, b := range bands {
		sum += b.size()
	}
	return sum
}

// places returns the reference points of the cells when the grid's top left
// corner is at the given point and extra room is left between bands.
func (p placing) places(topLeft geom.Pt, extra geom.Pt) [][]geom.Pt {
	out := make([][]geom.Pt, len(p.grid))
	y := topLeft.Y
	for r := range p.grid {
		y -= p.rows[r].hi
		x := topLeft.X
		for c := range p.grid[r] {
			x -= p.cols[c].lo
			out[r] = append(out[r], geom.P(x, y))
			x += p.cols[c].hi + blockGap + extra.X
		}
		y += p.rows[r].lo - blockGap - extra.Y
	}
	return out
}

// fit places the grid within the room that the sheet's frame and title block
// leave. Spare room is shared out evenly. It reports false if the grid does
// not fit.
func (p placing) fit(h draw.Hand, sp draw.Space) ([][]geom.Pt, bool) {
	free := freeOf(sp)
	if p.w > free.W() || p.h > free.H() {
		return nil, false
	}
	for _, room := range rooms(sp) {
		spare := geom.P(room.W()-p.w, room.H()-p.h)
		if spare.X < 0 || spare.Y < 0 {
			continue
		}
		extra := geom.P(spare.X/float64(len(p.cols)+1), spare.Y/float64(len(p.rows)+1))
		extra = geom.P(min(extra.X, mostSpread), min(extra.Y, mostSpread))
		left := geom.P(spare.X-extra.X*float64(len(p.cols)-1), spare.Y-extra.Y*float64(len(p.rows)-1))
		return p.places(geom.P(room.X0+left.X/2, room.Y1-left.Y/2), extra), true
	}
	// No clear rectangle holds it; perhaps it fits round the title block, as far
	// from the left edge as it can: its marks may need the room there.
	for _, part := range []float64{0.5, 0.3, 0.15, 0} {
		at := p.places(geom.P(free.X0+part*(free.W()-p.w), free.Y1), geom.Pt{})
		if p.clears(h, at, free, sp.Block) {
			return at, true
		}
	}
	return nil, false
}

// clears reports whether all pieces of a grid so placed lie in the free space
// and keep clear of the title block.
func (p placing) clears(h draw.Hand, at [][]geom.Pt, free, titleBlock draw.Rect) bool {
	const slack = 1e-6 // mm: rounding, where a piece touches the edge
	for r, row := range p.grid {
		for c, b := range row {
			if b == nil {
				continue
			}
			for _, e := range piecesOf(b, h, p.scale) {
				e = e.Move(at[r][c])
				if !free.Expand(slack).Encloses(e) || e.Expand(blockGap/2).Overlaps(titleBlock) {
					return false
				}
			}
		}
	}
	return true
}

// mostSpread is the greatest extra room between two bands: views that stand
// further apart no longer read together.
const mostSpread = 30.0

// smallPaper reports whether the sheets leave little room beside a view.
func (m *maker) smallPaper() bool {
	const wide = 250 // mm
	return m.hand.Paper.Inner().W() < wide
}

// freeOf is the drawing space with the title block's corner still in it.
func freeOf(sp draw.Space) draw.Rect {
	free := sp.Above
	free.Y0 = sp.Beside.Y0
	return free
}

// rooms are the clear rectangles beside the title block, the larger first.
// Where the block takes the whole width there is only the one above it.
func rooms(sp draw.Space) []draw.Rect {
	left := freeOf(sp)
	left.X1 = sp.Beside.X1
	if left.W() <= 0 {
		return []draw.Rect{sp.Above}
	}
	if above := sp.Above; left.W()*left.H() < above.W()*above.H() {
		return []draw.Rect{above, left}
	}
	return []draw.Rect{left, sp.Above}
}

// scales is the series of ISO 5455 for reductions and full size, largest
// first.
func scales() []float64 {
	return []float64{1, 1. / 2, 1. / 5, 1. / 10, 1. / 20, 1. / 50, 1. / 100, 1. / 200, 1. / 500, 1. / 1000}
}

// scalesFrom is the series from the given scale downwards.
func scalesFrom(largest float64) []float64 {
	const same = 1.001 // scales are 2 and more apart
	all := scales()
	for i, s := range all {
		if s <= largest*same {
			return all[i:]
		}
	}
	return all[len(all)-1:]
}

// arrangement is a grid placed on a sheet.
type arrangement struct {
	placing
	at [][]geom.Pt
}

// arrange finds the largest scale at which one of the grids fits, trying the
// grids in order.
func arrange(h draw.Hand, sp draw.Space, wanted []float64, grids ...grid) (arrangement, bool) {
	for _, scale := range wanted {
		for _, g := range grids {
			p := g.measure(h, scale)
			if at, ok := p.fit(h, sp); ok {
				return arrangement{p, at}, true
			}
		}
	}
	return arrangement{}, false
}

// draw draws all blocks: first everything that has its place, then the words
// that look for one.
func (a arrangement) draw(p *page) {
	a.each(func(b block, at geom.Pt) { b.draw(p, at, a.scale) })
	a.each(func(b block, _ geom.Pt) { b.finish(p) })
}

func (a arrangement) each(f func(block, geom.Pt)) {
	for r, row := range a.grid {
		for c, b := range row {
			if b != nil {
				f(b, a.at[r][c])
			}
		}
	}
}
