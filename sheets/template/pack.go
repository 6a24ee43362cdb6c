package template

import (
	"cmp"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
)

// leaf is a page in the making.
type leaf struct {
	free   []draw.Rect // the largest rectangles that are left; they overlap
	placed []placed
	tile   *tile // it carries one tile of a template that fits no page
	pieces []*piece
}

// placed is ink in its place on a page.
type placed struct {
	ink  ink
	lie  lie
	clip draw.Rect
	tile bool // of a template, some of which is on other pages
}

// The look of a block of words over a template, mm (own).
const (
	packGap    = 5.0  // between templates that share a page
	headOver   = 84.0 // least width of words over a template
	headBeside = 70.0 // of words beside it
	headLeast  = 45.0 // and of those where there is less room
	titleStep  = 6.0  // from line to line of a title
	titleGap   = 0.8  // between title and words, beyond the step of the words
	headGap    = 2.5  // from words to template
)

// block is a template with its words, ready to be packed: over it, or beside it
// if only that fits a page, or over it with one sentence after the other. It
// reports whether it fits.
func (m *maker) block(p *piece) (ink, bool) {
	fits := func(k ink) bool { box := k.bounds(); return m.page.fits(box.W(), box.H()) }
	over := p.under(p.headWidth(), p.head)
	if fits(over) {
		return over, true
	}
	for _, width := range []float64{headBeside, headLeast} {
		k := p.headInk(width, p.head)
		area := p.ink.bounds()
		k.add(p.ink, geom.P(-area.X1-packGap, -area.Y1))
		if fits(k) {
			return k, true
		}
	}
	if k := p.under(p.headWidth(), []string{strings.Join(p.head, " ")}); fits(k) {
		return k, true
	}
	return over, false
}

// under is a template under its words.
func (p *piece) under(width float64, head []string) ink {
	k := p.headInk(width, head)
	area := p.ink.bounds()
	k.add(p.ink, geom.P(-area.X0, k.bounds().Y0-headGap-area.Y1))
	return k
}

// headInk is the words that stand over a template, down from the zero.
func (p *piece) headInk(width float64, head []string) ink {
	var k ink
	y := -draw.TitleHeight
	for i, line := range draw.Wrap(p.number+" "+p.title, draw.TitleHeight, true, width) {
		if i > 0 {
			y -= titleStep
		}
		k.words = append(k.words, draw.Text{Layer: draw.Notes, At: geom.P(0, y), Height: draw.TitleHeight, Bold: true, String: line})
	}
	y -= titleGap
	for _, para := range head {
		for _, line := range draw.Wrap(para, draw.NoteHeight, false, width) {
			y -= lineStep
			k.text(geom.P(0, y), draw.Start, draw.NoteHeight, line)
		}
	}
	for _, line := range filled(p.runs, width) {
		y -= lineStep
		k.text(geom.P(0, y), draw.Start, draw.NoteHeight, line)
	}
	return k
}

// filled sets items on as few lines of a width as hold them, none broken.
func filled(items []string, width float64) []string {
	var out []string
	for _, s := range items {
		if n := len(out); n > 0 {
			if longer := out[n-1] + "   ·   " + s; draw.TextWidth(longer, draw.NoteHeight, false) <= width {
				out[n-1] = longer
				continue
			}
		}
		out = append(out, s)
	}
	return out
}

// headWidth is how wide the words over a template run.
func (p *piece) headWidth() float64 { return max(headOver, p.ink.bounds().W()) }

// block is a template with its words, ready to be packed.
type block struct {
	piece *piece
	ink   ink
}

// pack puts the templates on pages, each in either rotation; one that fits no
// page is tiled. They go in the order of their numbers, or the largest first if
// that needs fewer pages.
func (m *maker) pack() []*leaf {
	var blocks []block
	var tiles []*leaf
	order := map[*piece]int{}
	for i, p := range m.pieces {
		order[p] = i
		if k, ok := m.block(p); ok {
			blocks = append(blocks, block{p, k})
			continue
		}
		tiles = append(tiles, m.tiled(p)...)
	}
	leaves := m.fill(blocks)
	slices.SortStableFunc(blocks, func(a, b block) int {
		return cmp.Compare(area(b.ink.bounds()), area(a.ink.bounds()))
	})
	if other := m.fill(blocks); len(other) < len(leaves) {
		leaves = other
	}
	leaves = append(leaves, tiles...)
	for _, l := range leaves {
		slices.SortFunc(l.pieces, func(a, b *piece) int { return cmp.Compare(order[a], order[b]) })
	}
	slices.SortStableFunc(leaves, func(a, b *leaf) int { return cmp.Compare(order[a.pieces[0]], order[b.pieces[0]]) })
	return leaves
}

func area(r draw.Rect) float64 { return r.W() * r.H() }

// fill puts blocks on pages, each on the first that has room for it.
func (m *maker) fill(blocks []block) []*leaf {
	var leaves []*leaf
	for _, b := range blocks {
		i := slices.IndexFunc(leaves, func(l *leaf) bool { return l.take(b.ink) })
		if i < 0 {
			i = len(leaves)
			leaves = append(leaves, &leaf{free: []draw.Rect{m.page.free}})
			leaves[i].take(b.ink)
		}
		leaves[i].pieces = append(leaves[i].pieces, b.piece)
	}
	return leaves
}

// take puts a block into the room of a page that it fits tightest.
func (l *leaf) take(k ink) bool {
	box := k.bounds()
	best, turn, slack := -1, false, 0.0
	for i, r := range l.free {
		for _, turned := range []bool{false, true} {
			w, h := box.W(), box.H()
			if turned {
				w, h = h, w
			}
			if w > r.W()+same || h > r.H()+same {
				continue
			}
			if s := min(r.W()-w, r.H()-h); best < 0 || s < slack-same {
				best, turn, slack = i, turned, s
			}
		}
	}
	if best < 0 {
		return false
	}
	r := l.free[best]
	at := lie{turned: turn}
	corner := geom.P(box.X0, box.Y1) // the top left corner of the block as it lies
	w, h := box.W(), box.H()
	if turn {
		corner = geom.P(box.X1, box.Y1)
		w, h = h, w
	}
	at.move = geom.P(r.X0, r.Y1).Sub(at.pt(corner))
	used := draw.Rect{X0: r.X0, Y0: r.Y1 - h, X1: r.X0 + w, Y1: r.Y1}.Expand(packGap)
	l.placed = append(l.placed, placed{k, at, used, false})
	l.free = without(l.free, used)
	return true
}

// without takes a place out of free rectangles: of each it leaves the largest that
// lie beside the place, and none that lies within another.
func without(free []draw.Rect, used draw.Rect) []draw.Rect {
	var rest []draw.Rect
	for _, r := range free {
		if !r.Overlaps(used) {
			rest = append(rest, r)
			continue
		}
		for _, n := range []draw.Rect{
			{X0: used.X1, Y0: r.Y0, X1: r.X1, Y1: r.Y1}, {X0: r.X0, Y0: r.Y0, X1: r.X1, Y1: used.Y0},
			{X0: r.X0, Y0: r.Y0, X1: used.X0, Y1: r.Y1}, {X0: r.X0, Y0: used.Y1, X1: r.X1, Y1: r.Y1},
		} {
			if n.W() > 0 && n.H() > 0 {
				rest = append(rest, n)
			}
		}
	}
	var out []draw.Rect
	for i, r := range rest {
		within := slices.ContainsFunc(rest[i+1:], func(o draw.Rect) bool { return o.Encloses(r) }) ||
			slices.ContainsFunc(out, func(o draw.Rect) bool { return o.Encloses(r) })
		if !within {
			out = append(out, r)
		}
	}
	return out
}

// title names the templates of a page.
func (l *leaf) title() string {
	if len(l.pieces) == 0 {
		return "Check the print first"
	}
	var names []string
	for _, p := range l.pieces {
		names = append(names, p.number)
	}
	s := strings.Join(names, ", ")
	if l.tile != nil {
		s += " " + l.tile.name()
	}
	return s
}
