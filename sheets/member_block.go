package sheets

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// card is a member's drawing with its tables, or a further part of the tables.
// The reference point is its top left.
type card struct {
	hand  draw.Hand
	parts []flowPlace // relative to the reference point
}

// cardGap is the distance between two parts of a card, mm on paper.
const cardGap = 6.0

func (c *card) pieces(draw.Hand, float64) []draw.Rect {
	out := make([]draw.Rect, len(c.parts))
	for i, p := range c.parts {
		out[i] = p.block.extent(c.hand, 1).Move(p.at) // measured once
	}
	return out
}

func (c *card) extent(h draw.Hand, scale float64) draw.Rect {
	r := draw.Rect{}
	for _, p := range c.pieces(h, scale) {
		r = r.Union(p)
	}
	return r
}

func (c *card) draw(p *page, at geom.Pt, _ float64) {
	for _, part := range c.parts {
		part.block.draw(p, at.Add(part.at), 1)
	}
}

func (c *card) finish(p *page) {
	for _, part := range c.parts {
		part.block.finish(p)
	}
}

// put places a part as high, then as far to the left, as it finds room in the
// card's region: within r, both in the sheet's coordinates, clear of the title
// block.
func (c *card) put(b block, r region) bool {
	e := b.extent(c.hand, 1)
	taken := c.pieces(c.hand, 1)
	xs, ys := []float64{0}, []float64{0}
	for _, t := range taken {
		xs, ys = append(xs, t.X1+cardGap), append(ys, t.Y0-cardGap)
	}
	slices.Sort(xs)
	slices.SortFunc(ys, func(a, b float64) int { return cmp.Compare(b, a) })
	for _, y := range ys {
		for _, x := range xs {
			at := draw.Rect{X0: x, Y0: y - e.H(), X1: x + e.W(), Y1: y}
			if !r.holds(at) || slices.ContainsFunc(taken, func(t draw.Rect) bool { return t.Expand(cardGap - slackGap).Overlaps(at) }) {
				continue
			}
			c.parts = append(c.parts, flowPlace{b, geom.P(x-e.X0, y-e.Y1), 1})
			return true
		}
	}
	return false
}

// slackGap keeps parts that stand exactly a gap apart from counting as nearer.
const slackGap = 1e-3

// region is where a card may stand on a sheet: a rectangle, less what is taken
// of it by the title block and by other cards.
type region struct {
	room  draw.Rect
	taken []draw.Rect
}

// holds reports whether there is room for r, which is given from the top left
// of the region.
func (g region) holds(r draw.Rect) bool {
	r = r.Move(geom.P(g.room.X0, g.room.Y1))
	return g.room.Expand(slackGap).Encloses(r) && !overlapsAny(r.Expand(blockGap/2), g.taken)
}

// place puts the drawing of a member with its lists on the sheets: at the
// largest scale at which all find room together, on a sheet that is there
// already if it can be; else with the lists that find none on further sheets,
// and a long member in parts. It returns the index of the sheet with the
// drawing.
func (s *timber) place(b *binder) int {
	ws := s.works()
	l := s.lists(ws)
	whole := s.unfold(ws, 1)
	for _, scale := range s.scales(leastFull) {
		for _, at := range append(b.open(), b.fresh()) {
			if c := s.least(whole[0], l, scale, at); c != nil {
				b.add(at, c)
				return at.sheet
			}
		}
	}
	at := b.fresh()
	deal := func(parts []*unfolded, scale float64) bool {
		views := make([]block, len(parts))
		for i, u := range parts {
			f := u.fit(s.hand, scale, at.room.W())
			if !f.ok {
				return false
			}
			views[i] = sized{u, f.room}
		}
		cards, ok := s.deal(views, l, at.region)
		if ok {
			b.addAll(at, cards)
		}
		return ok
	}
	for n := 1; n <= mostParts; n++ {
		parts := s.unfold(ws, n)
		for _, scale := range s.scales(leastPart) {
			if len(parts) > 0 && deal(parts, scale) {
				return at.sheet
			}
		}
	}
	for _, scale := range s.scales(0) {
		if deal(whole, scale) {
			return at.sheet
		}
	}
	cards, _ := s.deal([]block{measuredBy(s.hand, whole[0])}, l, at.region) // for the audit to report
	b.addAll(at, cards)
	return at.sheet
}

// scales are those that a member may be drawn at, down to the least.
func (s *timber) scales(least float64) []float64 {
	var out []float64
	for _, scale := range scalesFrom(s.largest()) {
		if scale >= least {
			out = append(out, scale)
		}
	}
	return out
}

// least is the card that holds the drawing and all lists and takes the least
// paper at the top left of a place: in half its width or the whole of it, the
// drawing over the lists or beside the marking list. It is nil if none does.
func (s *timber) least(u *unfolded, l lists, scale float64, at place) *card {
	var best *card
	var bestFit standing
	area := math.Inf(1)
	for _, p := range []place{at.half(), at} {
		for _, width := range []float64{p.room.W(), p.room.W() - l.wide - cardGap} {
			f := u.fit(s.hand, scale, width)
			if !f.ok || f.room.H() > p.room.H() {
				continue
			}
			cards, ok := s.deal([]block{sized{u, f.room}}, l, p.region)
			if !ok || len(cards) > 1 {
				continue
			}
			a := cards[0].extent(s.hand, 1).H() * p.room.W()
			if s.Length*scale <= wantedWhole && f.length < s.Length*scale-onTear {
				a *= needless
			}
			if a < area {
				best, area, bestFit = cards[0], a, f
			}
		}
	}
	if best != nil {
		u.rescale(scale, bestFit.length)
	}
	return best
}

// needless is how many times as much paper a short member may take rather than
// be broken.
const needless = 1.6

// leastFull is the smallest scale to which a member is reduced only to keep its
// lists on its sheet, leastPart that to which it is reduced rather than drawn in
// more parts, of which there are no more than mostParts.
const (
	leastFull = 1. / 10
	leastPart = 1. / 20
	mostParts = 12
)

// largest is the scale that a member of its size is drawn at if there is room.
func (s *timber) largest() float64 {
	const small = 120 // mm of the model
	if s.Length <= small {
		return 1. / 2
	}
	return 1. / 5
}

// deal puts the parts of the drawing and its lists on cards for a region, as few
// as may be; false if a part finds no room.
func (s *timber) deal(views []block, l lists, g region) ([]*card, bool) {
	first, ok := s.dealAll(nil, views, g)
	var best []*card
	for _, rest := range l.orders(s.hand) {
		cards, _ := s.dealAll(first, rest, g)
		if best == nil || len(cards) < len(best) {
			best = cards
		}
		if len(best) == len(first) {
			break
		}
	}
	return best, ok
}

// dealAll puts blocks on copies of the cards, and on more of them as needed;
// false if a block is too large for a card.
func (s *timber) dealAll(cards []*card, blocks []block, g region) (out []*card, ok bool) {
	for _, c := range cards {
		out = append(out, &card{s.hand, slices.Clone(c.parts)})
	}
	ok = true
	for _, b := range blocks {
		if slices.ContainsFunc(out, func(c *card) bool { return c.put(b, g) }) {
			continue
		}
		c := &card{hand: s.hand}
		if !c.put(b, g) {
			ok = false
			e := b.extent(s.hand, 1)
			c.parts = []flowPlace{{b, geom.P(-e.X0, -e.Y1), 1}}
		}
		out = append(out, c)
	}
	return out, ok
}

// titleNote says how many there are, which they are, and how the drawing looks
// at them.
func (s *timber) titleNote() string {
	note := s.counted(s.alike, "as drawn")
	if s.opposite() {
		note += ", " + s.counted(s.other, "opposite hand")
	}
	if s.Kind == frame.KindPost {
		note += "; lying, top at the right"
	}
	return note
}

func (s *timber) counted(ms []frame.Member, hand string) string {
	if len(ms) == 1 && len(s.frame.Of(s.Kind)) == 1 {
		return "1 " + hand
	}
	return fmt.Sprintf("%d %s: number %s", len(ms), hand, numbers(ms))
}
