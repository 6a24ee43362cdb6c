package template

import (
	"fmt"
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
)

// tile is one page's share of a template that fits no page.
type tile struct {
	grid     grid
	col, row int
}

func (t tile) name() string {
	return fmt.Sprintf("tile %d of %d", t.grid.number(t.col, t.row), t.grid.count())
}

// grid divides flat paper, as it lies on the pages, into tiles that overlap.
type grid struct {
	cols, rows int
	area       draw.Rect
	step       geom.Pt // from tile to tile
	size       geom.Pt // of a tile, overlap included
	overlap    float64
	empty      map[[2]int]bool // tiles that nothing is drawn on
}

func (g grid) box(col, row int) draw.Rect {
	x, y := g.area.X0+float64(col)*g.step.X, g.area.Y1-float64(row)*g.step.Y
	return draw.Rect{X0: x, Y0: y - g.size.Y, X1: x + g.size.X, Y1: y}
}

// number counts the tiles that are drawn, row by row, from 1.
func (g grid) number(col, row int) int {
	n := 1
	for r := range g.rows {
		for c := range g.cols {
			if r == row && c == col {
				return n
			}
			if !g.empty[[2]int{c, r}] {
				n++
			}
		}
	}
	return n
}

func (g grid) count() int { return g.number(-1, -1) - 1 }

// divide makes the coarsest grid of tiles, no larger than the room, over an
// area.
func divide(area draw.Rect, room geom.Pt, overlap float64) grid {
	count := func(long, room float64) int {
		return 1 + max(0, int(math.Ceil((long-room)/(room-overlap)-same)))
	}
	g := grid{area: area, overlap: overlap, empty: map[[2]int]bool{}}
	g.cols, g.rows = count(area.W(), room.X), count(area.H(), room.Y)
	even := func(long float64, n int) (step, size float64) {
		size = (long + float64(n-1)*overlap) / float64(n)
		return size - overlap, size
	}
	g.step.X, g.size.X = even(area.W(), g.cols)
	g.step.Y, g.size.Y = even(area.H(), g.rows)
	return g
}

// The look of tiles, mm (own).
const (
	tilePad   = 6.0 // round a tile, for the words on its edges
	mapCell   = 7.0
	mapRoom   = 34.0 // right of the words over a tile
	regReach  = 4.0
	regRadius = 1.5
	regInset  = 15.0 // of registration crosses from the ends of an overlap
)

// tiled cuts a template that fits no page into tiles. The paper is turned if
// that needs fewer of them.
func (m *maker) tiled(p *piece) []*leaf {
	free := m.page.free
	head := p.headInk(free.W() - mapRoom)
	deep := max(-head.bounds().Y0, mapDepth) + headGap
	room := geom.P(free.W()-2*tilePad, free.H()-deep-2*tilePad)
	area := p.ink.bounds()
	turned := draw.Rect{X0: -area.Y1, Y0: area.X0, X1: -area.Y0, Y1: area.X1}
	g, l := divide(area, room, m.page.overlap), lie{}
	if h := divide(turned, room, m.page.overlap); h.cols*h.rows < g.cols*g.rows {
		g, l = h, lie{turned: true}
	}
	for c := range g.cols {
		for r := range g.rows {
			if !inked(p.ink, l, g.box(c, r)) {
				g.empty[[2]int{c, r}] = true
			}
		}
	}
	p.unletter()
	p.register(g, l)
	p.letter(g.flat(l))
	var leaves []*leaf
	for r := range g.rows {
		for c := range g.cols {
			if !g.empty[[2]int{c, r}] {
				leaves = append(leaves, m.tileLeaf(p, tile{g, c, r}, l, deep))
			}
		}
	}
	return leaves
}

// mapDepth is what the map of the tiles takes, with its words.
const mapDepth = 22.0

// inked reports whether a tile has anything on it that a builder needs: more
// than the edge of the paper.
func inked(k ink, l lie, box draw.Rect) bool {
	for _, s := range k.lines {
		if s.style == trimLine || s.style == axisLine {
			continue
		}
		if _, _, ok := within(l.pt(s.a), l.pt(s.b), box.Inset(same)); ok {
			return true
		}
	}
	for _, c := range k.circles {
		if (ring{l.pt(c.c), c.r}).box().Overlaps(box) {
			return true
		}
	}
	return false
}

// flat lists the tiles on the paper as it was before it was turned.
func (g grid) flat(l lie) []draw.Rect {
	var out []draw.Rect
	for r := range g.rows {
		for c := range g.cols {
			b := g.box(c, r)
			if l.turned {
				b = draw.Rect{X0: b.Y0, Y0: -b.X1, X1: b.Y1, Y1: -b.X0}
			}
			if !g.empty[[2]int{c, r}] {
				out = append(out, b)
			}
		}
	}
	return out
}

// register puts crosses into the overlaps; both neighbours show them.
func (p *piece) register(g grid, l lie) {
	back := func(q geom.Pt) geom.Pt { // from the pages to the flat paper
		if l.turned {
			return geom.P(q.Y, -q.X)
		}
		return q
	}
	name := 'a'
	put := func(q geom.Pt) {
		c := back(q)
		p.ink.ring(register, c, regRadius)
		p.ink.line(register, c.Sub(geom.P(regReach, 0)), c.Add(geom.P(regReach, 0)))
		p.ink.line(register, c.Sub(geom.P(0, regReach)), c.Add(geom.P(0, regReach)))
		p.ink.text(c.Add(geom.P(regRadius+0.5, regRadius)), draw.Start, draw.NoteHeight, string(name))
		name++
	}
	for r := range g.rows {
		for c := range g.cols {
			b := g.box(c, r)
			if c+1 < g.cols && !g.empty[[2]int{c, r}] && !g.empty[[2]int{c + 1, r}] {
				x := b.X1 - g.overlap/2
				put(geom.P(x, b.Y1-regInset))
				put(geom.P(x, b.Y0+regInset))
			}
			if r+1 < g.rows && !g.empty[[2]int{c, r}] && !g.empty[[2]int{c, r + 1}] {
				y := b.Y0 + g.overlap/2
				put(geom.P(b.X0+regInset, y))
				put(geom.P(b.X1-regInset, y))
			}
		}
	}
}

// tileLeaf is the page of one tile: words and the map at the top, the tile
// under them.
func (m *maker) tileLeaf(p *piece, t tile, l lie, deep float64) *leaf {
	free := m.page.free
	box := t.grid.box(t.col, t.row)
	move := geom.P(free.X0+tilePad-box.X0, free.Y1-deep-tilePad-box.Y1)
	on := box.Move(move)
	l.move = l.move.Add(move)
	head := p.headInk(free.W() - mapRoom)
	edges := t.edges(on)
	edges.add(t.chart(), geom.P(free.X1, free.Y1))
	return &leaf{tile: &t, pieces: []*piece{p}, placed: []placed{
		{p.ink, l, on},
		{head, lie{move: geom.P(free.X0, free.Y1)}, m.page.print},
		{edges, lie{}, m.page.print},
	}}
}

// edges are the trim and glue lines of a tile: the later tile is trimmed and
// lies over the glue strip of the one before it.
func (t tile) edges(on draw.Rect) ink {
	var k ink
	g := t.grid
	there := func(c, r int) bool {
		return c >= 0 && r >= 0 && c < g.cols && r < g.rows && !g.empty[[2]int{c, r}]
	}
	word := func(at geom.Pt, turn float64, s string) {
		k.words = append(k.words, draw.Text{Layer: draw.Notes, At: at, Align: draw.Centred, Height: draw.NoteHeight, Turn: turn, String: s})
	}
	const up = math.Pi / 2
	c := on.Centre()
	over := func(col, row int) string {
		return fmt.Sprintf("glue: tile %d lies over this, up to the dashes", g.number(col, row))
	}
	if there(t.col-1, t.row) {
		k.line(trimLine, geom.P(on.X0, on.Y0), geom.P(on.X0, on.Y1))
		word(geom.P(on.X0-1.5, c.Y), up, fmt.Sprintf("trim here, lay over tile %d", g.number(t.col-1, t.row)))
	}
	if there(t.col+1, t.row) {
		k.line(foldLine, geom.P(on.X1-g.overlap, on.Y0), geom.P(on.X1-g.overlap, on.Y1))
		word(geom.P(on.X1+1.5+draw.NoteHeight, c.Y), up, over(t.col+1, t.row))
	}
	if there(t.col, t.row-1) {
		k.line(trimLine, geom.P(on.X0, on.Y1), geom.P(on.X1, on.Y1))
		word(geom.P(c.X, on.Y1+1.5), 0, fmt.Sprintf("trim here, lay over tile %d", g.number(t.col, t.row-1)))
	}
	if there(t.col, t.row+1) {
		k.line(foldLine, geom.P(on.X0, on.Y0+g.overlap), geom.P(on.X1, on.Y0+g.overlap))
		word(geom.P(c.X, on.Y0-1.5-draw.NoteHeight), 0, over(t.col, t.row+1))
	}
	return k
}

// chart is the map of the tiles, left and down from the zero, the tile at hand
// dark.
func (t tile) chart() ink {
	var k ink
	g := t.grid
	k.text(geom.P(0, -draw.NoteHeight), draw.End, draw.NoteHeight, t.name())
	cell := min(mapCell, (mapDepth-lineStep-1)/float64(g.rows))
	left, top := -cell*float64(g.cols), -lineStep
	for r := range g.rows {
		for c := range g.cols {
			if g.empty[[2]int{c, r}] {
				continue
			}
			box := draw.Rect{X0: left + cell*float64(c), Y1: top - cell*float64(r)}
			box.X1, box.Y0 = box.X0+cell, box.Y1-cell
			k.rect(edgeLine, box)
			if c == t.col && r == t.row {
				k.fill(draw.Outline, 1, box.Inset(cell/4).Corners()...)
			}
		}
	}
	return k
}
