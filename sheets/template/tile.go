package template

import (
	"fmt"
	"math"
	"strings"

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
	x, y       [][2]float64 // from and to of each column from the left, of each row from the top
	overlap    float64
	empty      map[[2]int]bool // tiles that nothing is drawn on
}

func (g grid) box(col, row int) draw.Rect {
	return draw.Rect{X0: g.x[col][0], Y0: -g.y[row][1], X1: g.x[col][1], Y1: -g.y[row][0]}
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

// divide makes the coarsest grid of tiles, no larger than the room, over the
// ink as it lies on the pages.
func divide(k ink, l lie, room geom.Pt, overlap float64) grid {
	area := k.lying(l)
	var keepX, keepY [][2]float64 // what an overlap had better not cut through
	for _, c := range k.circles {
		b := (ring{l.pt(c.c), c.r}).box()
		keepX, keepY = append(keepX, [2]float64{b.X0, b.X1}), append(keepY, [2]float64{-b.Y1, -b.Y0})
	}
	g := grid{overlap: overlap, empty: map[[2]int]bool{}}
	g.x = spans([2]float64{area.X0, area.X1}, room.X, overlap, keepX)
	g.y = spans([2]float64{-area.Y1, -area.Y0}, room.Y, overlap, keepY)
	g.cols, g.rows = len(g.x), len(g.y)
	for g.drop(k, l) {
	}
	return g
}

// drop leaves out one tile that nothing is drawn on, unless the others hang
// together by it. It reports false when there is none.
func (g grid) drop(k ink, l lie) bool {
	for c := range g.cols {
		for r := range g.rows {
			at := [2]int{c, r}
			if g.empty[at] || inked(k, l, g.box(c, r)) {
				continue
			}
			if g.empty[at] = true; g.joined() {
				return true
			}
			g.empty[at] = false
		}
	}
	return false
}

// joined reports whether all tiles that are not empty hang together, side by
// side.
func (g grid) joined() bool {
	reached := map[[2]int]bool{}
	var walk func(at [2]int)
	walk = func(at [2]int) {
		if at[0] < 0 || at[1] < 0 || at[0] >= g.cols || at[1] >= g.rows || g.empty[at] || reached[at] {
			return
		}
		reached[at] = true
		for _, d := range [][2]int{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
			walk([2]int{at[0] + d[0], at[1] + d[1]})
		}
	}
	for c := range g.cols {
		for r := range g.rows {
			if at := [2]int{c, r}; !g.empty[at] {
				if len(reached) == 0 {
					walk(at)
				} else if !reached[at] {
					return false
				}
			}
		}
	}
	return true
}

// lying is the rectangle round the ink as it lies on the pages.
func (k *ink) lying(l lie) draw.Rect {
	r := k.bounds()
	return draw.Bounds(l.pt(geom.P(r.X0, r.Y0)), l.pt(geom.P(r.X1, r.Y1)))
}

// shiftStep is the step by which an overlap is moved until it cuts through no
// circle, mm.
const shiftStep = 1.0

// spans divides a length into the fewest parts that overlap and fit the room;
// the overlaps lie evenly, or as near to that as they cut through nothing that
// is to be kept whole.
func spans(whole [2]float64, room, overlap float64, keep [][2]float64) [][2]float64 {
	long := whole[1] - whole[0]
	n := 1 + max(0, int(math.Ceil((long-room)/(room-overlap)-same)))
	even := (long - overlap) / float64(n) // from one start to the next
	clear := func(s float64) bool {
		for _, k := range keep {
			if s < k[1]+regReach && s+overlap > k[0]-regReach {
				return false
			}
		}
		return true
	}
	out := [][2]float64{{whole[0], whole[1]}}
	for i := 1; i < n; i++ {
		before := out[i-1][0]
		lo := max(before+overlap, whole[1]-room-float64(n-1-i)*(room-overlap))
		hi := before + room - overlap
		want := min(max(whole[0]+float64(i)*even, lo), hi)
		at := want
		for d := 0.0; want-d >= lo || want+d <= hi; d += shiftStep {
			if want-d >= lo && clear(want-d) {
				at = want - d
				break
			}
			if want+d <= hi && clear(want+d) {
				at = want + d
				break
			}
		}
		out[i-1][1] = at + overlap
		out = append(out, [2]float64{at, whole[1]})
	}
	return out
}

// The look of tiles, mm (own).
const (
	tilePad   = 6.0 // round a tile, for the words on its edges
	mapCell   = 7.0
	mapRoom   = 34.0 // right of the words over a tile
	regReach  = 3.5
	regTries  = 8 // places for a cross, a reach apart
	regRadius = 1.5
	regInset  = 15.0 // of registration crosses from the ends of an overlap
)

// tiled cuts a template that fits no page into tiles.
func (m *maker) tiled(p *piece) []*leaf {
	p.unletter()
	g, l, deep := m.grid(p)
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

// grid is how a template, still without its words, is cut into tiles, how it
// lies on the pages, turned if that needs fewer of them, and how deep the words
// over each tile are.
func (m *maker) grid(p *piece) (grid, lie, float64) {
	free := m.page.free
	head := p.headInk(free.W()-mapRoom, p.head)
	deep := max(-head.bounds().Y0, mapDepth) + headGap
	room := geom.P(free.W()-2*tilePad, free.H()-deep-2*tilePad)
	g, l := divide(p.ink, lie{}, room, m.page.overlap), lie{}
	if h := divide(p.ink, lie{turned: true}, room, m.page.overlap); h.count() < g.count() {
		g, l = h, lie{turned: true}
	}
	return g, l, deep
}

// mapDepth is what the map of the tiles takes, with its words.
const mapDepth = 22.0

// inked reports whether a tile has anything on it that a builder needs: to cut,
// mark or fold by, or an arris. Hatch, ticks and centre lines alone are nothing.
func inked(k ink, l lie, box draw.Rect) bool {
	for _, s := range k.lines {
		tick := s.style == edgeLine && s.b.Sub(s.a).Len() <= tickLong+same
		if tick || s.style != cutLine && s.style != markLine && s.style != foldLine && s.style != edgeLine {
			continue
		}
		if _, _, ok := within(l.pt(s.a), l.pt(s.b), box.Inset(same)); ok {
			return true
		}
	}
	for _, c := range k.circles {
		if c.style != crosses && (ring{l.pt(c.c), c.r}).box().Overlaps(box) {
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

// registerNames are the names of registration crosses, each narrow enough to stand
// beside its cross in the narrowest overlap, and like no other.
var registerNames = strings.Split("abcdefghijknopqrstuvxyz23456789ABCEFHKLPRSTXYZ", "")

// register puts crosses into the overlaps, two in each; both neighbours show
// them.
func (p *piece) register(g grid, l lie) {
	edges := g.flat(l)
	name := 0
	put := func(from, step geom.Pt) {
		at := l.back(from)
		for i := range regTries {
			q := l.back(from.Add(step.Mul(float64(i) * regReach)))
			clear := newLetterer(&p.ink, edges)
			if box := (ring{q, regReach + wordClear/2}).box(); clear.blocked(box, true) < box.X0 {
				at = q
				break
			}
		}
		p.ink.ring(register, at, regRadius)
		p.ink.line(register, at.Sub(geom.P(regReach, 0)), at.Add(geom.P(regReach, 0)))
		p.ink.line(register, at.Sub(geom.P(0, regReach)), at.Add(geom.P(0, regReach)))
		p.ink.name(at, registerNames[name%len(registerNames)], edges)
		name++
	}
	there := func(c, r int) bool { return c < g.cols && r < g.rows && !g.empty[[2]int{c, r}] }
	for r := range g.rows {
		for c := range g.cols {
			b := g.box(c, r)
			if there(c, r) && there(c+1, r) {
				x := b.X1 - g.overlap/2
				put(geom.P(x, b.Y1-regInset), geom.P(0, -1))
				put(geom.P(x, b.Y0+regInset), geom.P(0, 1))
			}
			if there(c, r) && there(c, r+1) {
				y := b.Y0 + g.overlap/2
				put(geom.P(b.X0+regInset, y), geom.P(1, 0))
				put(geom.P(b.X1-regInset, y), geom.P(-1, 0))
			}
		}
	}
}

// back carries a place of the page to the flat paper.
func (l lie) back(q geom.Pt) geom.Pt {
	q = q.Sub(l.move)
	if l.turned {
		return geom.P(q.Y, -q.X)
	}
	return q
}

// name writes the letter of a registration cross in a quarter of it that is free.
func (k *ink) name(c geom.Pt, letter string, edges []draw.Rect) {
	l := newLetterer(k, edges)
	var t draw.Text
	for _, q := range []geom.Pt{{X: 1, Y: 1}, {X: -1, Y: 1}, {X: 1, Y: -1}, {X: -1, Y: -1}} {
		t = draw.Text{Layer: draw.Notes, At: c.Add(geom.P(q.X*(regRadius+wordClear), q.Y*wordClear)), Height: draw.NoteHeight, String: letter}
		if q.X < 0 {
			t.Align = draw.End
		}
		if q.Y < 0 {
			t.At.Y -= t.Height
		}
		if box := t.Box().Expand(wordClear * 0.8); l.blocked(box, true) < box.X0 {
			break
		}
	}
	k.fill(draw.Hatch, 0, t.Box().Expand(wordClear).Corners()...)
	k.words = append(k.words, t)
}

// tileLeaf is the page of one tile: words and the map at the top, the tile
// under them.
func (m *maker) tileLeaf(p *piece, t tile, l lie, deep float64) *leaf {
	free := m.page.free
	box := t.grid.box(t.col, t.row)
	move := geom.P(free.X0+tilePad-box.X0, free.Y1-deep-tilePad-box.Y1)
	on := box.Move(move)
	l.move = l.move.Add(move)
	head := p.headInk(free.W()-mapRoom, p.head)
	edges := t.edges(on)
	edges.add(t.chart(), geom.P(free.X1, free.Y1))
	return &leaf{tile: &t, pieces: []*piece{p}, placed: []placed{
		{p.ink, l, on, true},
		{head, lie{move: geom.P(free.X0, free.Y1)}, m.page.print, false},
		{edges, lie{}, m.page.print, false},
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
		return fmt.Sprintf("glue: tile %d lies over this, up to the thin line", g.number(col, row))
	}
	if there(t.col-1, t.row) {
		k.line(trimLine, geom.P(on.X0, on.Y0), geom.P(on.X0, on.Y1))
		word(geom.P(on.X0-1.5, c.Y), up, fmt.Sprintf("trim here, lay over tile %d", g.number(t.col-1, t.row)))
	}
	if there(t.col+1, t.row) {
		k.line(trimLine, geom.P(on.X1-g.overlap, on.Y0), geom.P(on.X1-g.overlap, on.Y1))
		word(geom.P(on.X1+1.5+draw.NoteHeight, c.Y), up, over(t.col+1, t.row))
	}
	if there(t.col, t.row-1) {
		k.line(trimLine, geom.P(on.X0, on.Y1), geom.P(on.X1, on.Y1))
		word(geom.P(c.X, on.Y1+1.5), 0, fmt.Sprintf("trim here, lay over tile %d", g.number(t.col, t.row-1)))
	}
	if there(t.col, t.row+1) {
		k.line(trimLine, geom.P(on.X0, on.Y0+g.overlap), geom.P(on.X1, on.Y0+g.overlap))
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
