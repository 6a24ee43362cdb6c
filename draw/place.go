package draw

import (
	"math"
	"slices"

	"plumbcut/geom"
)

// spread moves things along a line so that none overlaps its neighbour: want
// holds where the middle of each would like to be, in rising order, and size
// how long each is. The answer keeps the order, leaves at least gap between
// neighbours and moves them as little as possible (least squares). They are
// kept within lo to hi as far as they fit there; lo wins.
//
// Because the order is kept, straight leaders from the wanted places to the
// found ones never cross.
func spread(want, size []float64, gap, lo, hi float64) []float64 {
	n := len(want)
	if n == 0 {
		return nil
	}
	// With the room that the ones before need taken off, "no overlap" becomes
	// "not falling", and the nearest rising sequence is found by pooling.
	offset := make([]float64, n)
	for i := 1; i < n; i++ {
		offset[i] = offset[i-1] + (size[i-1]+size[i])/2 + gap
	}
	type pool struct {
		sum   float64
		count int
	}
	var pools []pool
	for i := range want {
		pools = append(pools, pool{want[i] - offset[i], 1})
		for k := len(pools) - 1; k > 0; k-- {
			a, b := pools[k-1], pools[k]
			if a.sum*float64(b.count) <= b.sum*float64(a.count) {
				break
			}
			pools = append(pools[:k-1], pool{a.sum + b.sum, a.count + b.count})
		}
	}
	least := lo + size[0]/2
	most := max(least, hi-size[n-1]/2-offset[n-1])
	out := make([]float64, 0, n)
	for _, p := range pools {
		at := min(max(p.sum/float64(p.count), least), most)
		for range p.count {
			out = append(out, at+offset[len(out)])
		}
	}
	return out
}

// cell is the side, mm, of the squares in which a Placer sorts what is on the
// sheet: about the size of a label, so that a query looks at few of them.
const cell = 12.0

// segment is a straight piece of a line on the paper.
type segment struct {
	a, b  geom.Pt
	half  float64 // half the width of the pen
	item  int     // index into Sheet.Items; −1 for one reserved by hand
	layer Layer
	pen   Pen
}

// grid sorts boxes and segments by place.
type grid struct {
	cols, rows int
	segs       []segment
	boxes      []inkBox
	inSegs     chains
	inBoxes    chains
	seen       []int32 // for each segment, the last query that met it
	query      int32
}

func newGrid(p Paper) *grid {
	g := &grid{}
	g.cols, g.rows = cellsOf(p)
	g.inSegs, g.inBoxes = newChains(g.cols*g.rows), newChains(g.cols*g.rows)
	return g
}

// cellsOf are the columns and rows of cells on a paper and round it.
func cellsOf(p Paper) (cols, rows int) { return int(p.Width/cell) + 3, int(p.Height/cell) + 3 }

// covers reports whether the grid is one for the paper.
func (g *grid) covers(p Paper) bool {
	cols, rows := cellsOf(p)
	return cols == g.cols && rows == g.rows
}

// chains are a list for each cell of what is in it, in the order of entry. All
// of them share one array: thousands of short lists would each be grown apart.
type chains struct {
	first, last []int32 // of each cell, an index into links; 0 for none
	links       []link
}

// link is one thing in a cell and where the next one is; 0 ends the list.
type link struct{ id, next int32 }

func newChains(cells int) chains {
	ends := make([]int32, 2*cells)
	return chains{ends[:cells:cells], ends[cells:], make([]link, 1, cells)}
}

// add enters a thing in a cell.
func (c *chains) add(k int, id int32) {
	at := int32(len(c.links))
	c.links = append(c.links, link{id: id})
	if last := c.last[k]; last == 0 {
		c.first[k] = at
	} else {
		c.links[last].next = at
	}
	c.last[k] = at
}

// cut forgets what was entered from the n-th thing on. Things are entered one
// after the other, so theirs are the last links.
func (c *chains) cut(n int32) {
	keep := int32(len(c.links))
	for keep > 1 && c.links[keep-1].id >= n {
		keep--
	}
	for k, last := range c.last {
		switch {
		case last < keep:
		case c.first[k] >= keep:
			c.first[k], c.last[k] = 0, 0
		default:
			at := c.first[k]
			for c.links[at].next < keep {
				at = c.links[at].next
			}
			c.links[at].next, c.last[k] = 0, at
		}
	}
	c.links = c.links[:keep]
}

// grow makes room for so many segments more, each of which lies in a cell or two.
func (g *grid) grow(n int) {
	g.segs, g.seen = slices.Grow(g.segs, n), slices.Grow(g.seen, n)
	g.inSegs.links = slices.Grow(g.inSegs.links, 2*n)
}

// span is the range of cells that r touches; what lies off the paper falls in
// the outermost cells.
func (g *grid) span(r Rect) (c0, r0, c1, r1 int) {
	at := func(x float64, n int) int { return min(max(int(math.Floor(x/cell))+1, 0), n-1) }
	return at(r.X0, g.cols), at(r.Y0, g.rows), at(r.X1, g.cols), at(r.Y1, g.rows)
}

// inkBox is the room of a text, which may be turned, or a reserved rectangle.
type inkBox struct {
	quad [4]geom.Pt
	box  Rect // round it
}

func (g *grid) addBox(quad [4]geom.Pt) {
	b := inkBox{quad, Bounds(quad[:]...)}
	g.boxes = append(g.boxes, b)
	id := int32(len(g.boxes) - 1)
	c0, r0, c1, r1 := g.span(b.box)
	for c := c0; c <= c1; c++ {
		for r := r0; r <= r1; r++ {
			g.inBoxes.add(r*g.cols+c, id)
		}
	}
}

func (g *grid) addSegment(s segment) {
	g.segs = append(g.segs, s)
	g.seen = append(g.seen, 0)
	id := int32(len(g.segs) - 1)
	c0, r0, c1, r1 := g.span(Bounds(s.a, s.b))
	if c0 == c1 || r0 == r1 {
		g.fillCells(id, c0, r0, c1, r1)
		return
	}
	// A sloped one: column by column, only the cells that it passes.
	for c := c0; c <= c1; c++ {
		lo, hi := g.rowsIn(s.a, s.b, c)
		g.fillCells(id, c, lo, c, hi)
	}
}

// rowsIn is the range of rows that the sloped line from a to b passes in a
// column.
func (g *grid) rowsIn(a, b geom.Pt, c int) (lo, hi int) {
	x0, x1 := float64(c-1)*cell, float64(c)*cell
	y0, y1 := heightsWithin(a, b, x0, x1)
	_, lo, _, hi = g.span(Rect{x0, y0, x0, y1})
	return lo, hi
}

func (g *grid) fillCells(id int32, c0, r0, c1, r1 int) {
	for c := c0; c <= c1; c++ {
		for r := r0; r <= r1; r++ {
			g.inSegs.add(r*g.cols+c, id)
		}
	}
}

// cut forgets all but the first segments and boxes.
func (g *grid) cut(segs, boxes int) {
	g.inSegs.cut(int32(segs))
	g.inBoxes.cut(int32(boxes))
	g.segs, g.seen, g.boxes = g.segs[:segs], g.seen[:segs], g.boxes[:boxes]
}

// heightsWithin is the range of y of the segment ab for x from x0 to x1.
func heightsWithin(a, b geom.Pt, x0, x1 float64) (lo, hi float64) {
	y := func(x float64) float64 {
		t := min(max((x-a.X)/(b.X-a.X), 0), 1)
		return a.Y + t*(b.Y-a.Y)
	}
	p, q := y(x0), y(x1)
	return min(p, q), max(p, q)
}

// boxesNear calls f for each box that comes within r; false stops. A box in
// several cells may be met more than once.
func (g *grid) boxesNear(r Rect, f func(*inkBox) bool) {
	c0, r0, c1, r1 := g.span(r)
	for row := r0; row <= r1; row++ {
		for c := c0; c <= c1; c++ {
			for at := g.inBoxes.first[row*g.cols+c]; at != 0; {
				l := g.inBoxes.links[at]
				if b := &g.boxes[l.id]; b.box.Overlaps(r) && !f(b) {
					return
				}
				at = l.next
			}
		}
	}
}

// segsNear calls f once for each segment in the cells of r; false stops.
func (g *grid) segsNear(r Rect, f func(*segment) bool) {
	g.query++
	c0, r0, c1, r1 := g.span(r)
	for row := r0; row <= r1; row++ {
		for c := c0; c <= c1; c++ {
			if !g.segsIn(row*g.cols+c, f) {
				return
			}
		}
	}
}

// segsAlong calls f once for each segment in the cells that the line from a to
// b passes; false stops.
func (g *grid) segsAlong(a, b geom.Pt, f func(*segment) bool) {
	g.query++
	c0, r0, c1, r1 := g.span(Bounds(a, b))
	for c := c0; c <= c1; c++ {
		lo, hi := r0, r1
		if c0 != c1 && r0 != r1 {
			lo, hi = g.rowsIn(a, b, c)
		}
		for row := lo; row <= hi; row++ {
			if !g.segsIn(row*g.cols+c, f) {
				return
			}
		}
	}
}

// segsIn calls f for each segment in a cell that this query has not met yet.
func (g *grid) segsIn(k int, f func(*segment) bool) bool {
	for at := g.inSegs.first[k]; at != 0; {
		l := g.inSegs.links[at]
		if g.seen[l.id] != g.query {
			g.seen[l.id] = g.query
			if !f(&g.segs[l.id]) {
				return false
			}
		}
		at = l.next
	}
	return true
}

// Placer knows what is on a sheet and finds free places for what comes next.
// It picks up by itself whatever is drawn on the sheet meanwhile. Draw the
// views and the dimension rows first, then the part marks and labels.
type Placer struct {
	Sheet *Sheet
	Hand  Hand
	grid  *grid
	read  int // how many items of the sheet are in the grid
}

// NewPlacer starts from what is on the sheet.
func NewPlacer(s *Sheet, h Hand) *Placer {
	return &Placer{Sheet: s, Hand: h, grid: newGrid(s.Paper)}
}

// Reserve keeps a rectangle free of labels.
func (p *Placer) Reserve(r Rect) { p.grid.addBox([4]geom.Pt(r.Corners())) }

// State is how far a sheet was drawn at a moment, for Back.
type State struct{ items, dims, marks, segs, boxes int }

// State is how far the sheet has been drawn now.
func (p *Placer) State() State {
	p.sync()
	return State{len(p.Sheet.Items), len(p.Sheet.Dims), len(p.Sheet.Marks), len(p.grid.segs), len(p.grid.boxes)}
}

// Back takes off the sheet again what was drawn and reserved since, so that it
// can be placed in another way.
func (p *Placer) Back(to State) {
	s := p.Sheet
	s.Items, s.Dims, s.Marks = s.Items[:to.items], s.Dims[:to.dims], s.Marks[:to.marks]
	p.grid.cut(to.segs, to.boxes)
	p.read = min(p.read, to.items)
}

// Enclosed reports whether lines of the picture are at the left and the right
// of a point, over and under it: there a dot at the end of a leader lies inside
// something.
func (p *Placer) Enclosed(at geom.Pt) bool {
	p.sync()
	return p.grid.encloses(p.Sheet.Paper.Sheet(), at)
}

// sync reads the items that were drawn since the last question. Light fills do
// not count: black lettering reads well on them.
func (p *Placer) sync() {
	for ; p.read < len(p.Sheet.Items); p.read++ {
		it := p.Sheet.Items[p.read]
		if it.Text != nil {
			p.grid.addBox(it.Text.Quad())
			continue
		}
		addPath(p.grid, it.Path, p.read, p.Sheet.Paper)
	}
}

// addPath enters the strokes of a path, and the edges of a dark fill.
func addPath(g *grid, path *Path, item int, paper Paper) {
	if !path.Stroke && !dark(path.Fill) {
		return
	}
	half := 0.0
	if path.Stroke {
		half = paper.LineWidth(path.Style.Pen) / 2
	}
	for a, b := range path.segments() {
		g.addSegment(segment{a, b, half, item, path.Style.Layer, path.Style.Pen})
	}
}

// darkest tone on which black lettering reads well.
const darkTone = 0.3

func dark(tone *Grey) bool { return tone != nil && *tone > darkTone }

// Free reports whether r, with gap kept round it, touches no text, no line and
// lies within the frame.
func (p *Placer) Free(r Rect, gap float64) bool {
	p.sync()
	if !p.Sheet.Paper.Inner().Encloses(r.Expand(gap)) {
		return false
	}
	return p.freeOfText([4]geom.Pt(r.Corners()), gap) && p.freeOfLines(r.Expand(gap))
}

// freeOfText reports whether no text and no reserved box comes within the gap of
// a rectangle, which may be turned.
func (p *Placer) freeOfText(quad [4]geom.Pt, gap float64) bool {
	free := true
	gap = max(gap, textGap)
	p.grid.boxesNear(Bounds(quad[:]...).Expand(gap), func(b *inkBox) bool {
		free = quadGap(b.quad, quad) >= gap
		return free
	})
	return free
}

// freeOfLines reports whether no segment meets r.
func (p *Placer) freeOfLines(r Rect) bool {
	free := true
	p.grid.segsNear(r, func(s *segment) bool {
		free = !segmentMeets(s.a, s.b, r.Expand(s.half))
		return free
	})
	return free
}

// FreeBox returns the first of the candidates that is free, with gap kept
// round it; false if none is.
func (p *Placer) FreeBox(candidates []Rect, gap float64) (Rect, bool) {
	for _, r := range candidates {
		if p.Free(r, gap) {
			return r, true
		}
	}
	return Rect{}, false
}

// textsUnder counts the texts and reserved boxes that the line from a to b
// passes over or near.
func (p *Placer) textsUnder(a, b geom.Pt) int {
	p.sync()
	n := 0
	p.grid.boxesNear(Bounds(a, b).Expand(leaderClear), func(t *inkBox) bool {
		if quadSegmentGap(t.quad, a, b) <= leaderClear {
			n++
		}
		return true
	})
	return n
}

// segmentMeets reports whether the segment ab meets the closed rectangle.
func segmentMeets(a, b geom.Pt, r Rect) bool {
	t0, t1 := 0.0, 1.0
	clip := func(from, dir, lo, hi float64) bool {
		if dir == 0 {
			return from >= lo && from <= hi
		}
		u, v := (lo-from)/dir, (hi-from)/dir
		t0, t1 = max(t0, min(u, v)), min(t1, max(u, v))
		return t0 <= t1
	}
	return clip(a.X, b.X-a.X, r.X0, r.X1) && clip(a.Y, b.Y-a.Y, r.Y0, r.Y1)
}

// cross reports whether the segments ab and cd have a point in common that is
// not an end of both.
func cross(a, b, c, d geom.Pt) bool {
	side := func(p, q, r geom.Pt) float64 { return q.Sub(p).Cross(r.Sub(p)) }
	s1, s2 := side(a, b, c), side(a, b, d)
	t1, t2 := side(c, d, a), side(c, d, b)
	return s1*s2 < 0 && t1*t2 < 0
}
