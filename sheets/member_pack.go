package sheets

import (
	"cmp"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
)

// binder fills sheets with cards, in order, in rows from the top.
type binder struct {
	hand   draw.Hand
	space  draw.Space
	sheets []bound
}

// bound is a sheet in the making.
type bound struct {
	cards flowed
	taken []draw.Rect // by the cards
}

// place is a region of a sheet.
type place struct {
	region
	sheet int
}

// open are the places on the sheets that there are, in the order in which they
// are tried: the corners beside and under the cards, the highest first.
func (b *binder) open() []place {
	var out []place
	for i, s := range b.sheets {
		free := b.fresh().room
		xs, ys := []float64{free.X0}, []float64{free.Y1}
		for _, t := range s.taken {
			xs, ys = append(xs, t.X1+blockGap), append(ys, t.Y0-blockGap)
		}
		slices.Sort(xs)
		slices.SortFunc(ys, func(a, b float64) int { return cmp.Compare(b, a) })
		xs, ys = slices.Compact(xs), slices.Compact(ys)
		for _, y := range ys {
			for _, x := range xs {
				r := draw.Rect{X0: x, Y0: free.Y0, X1: free.X1, Y1: y}
				corner := draw.Rect{X0: x, Y0: y - 1, X1: x + 1, Y1: y}
				if r.W() > leastCard && r.H() > leastCard && !overlapsAny(corner, s.taken) {
					out = append(out, place{region{r, append(s.taken[:len(s.taken):len(s.taken)], b.space.Block)}, i})
				}
			}
		}
	}
	return out
}

// leastCard is less than the width and height of any card, mm on paper.
const leastCard = 50

func overlapsAny(r draw.Rect, others []draw.Rect) bool {
	return slices.ContainsFunc(others, func(o draw.Rect) bool { return r.Overlaps(o) })
}

// half is the left half of a place.
func (p place) half() place {
	p.room.X1 = (p.room.X0+p.room.X1)/2 - blockGap/2
	return p
}

// fresh is the whole of a new sheet.
func (b *binder) fresh() place {
	free := freeOf(b.space)
	free.Y1-- // titles rise over their capitals
	return place{region{free, []draw.Rect{b.space.Block}}, len(b.sheets)}
}

// add puts a card at the top left of a place.
func (b *binder) add(at place, c *card) {
	for len(b.sheets) <= at.sheet {
		b.sheets = append(b.sheets, bound{})
	}
	s := &b.sheets[at.sheet]
	corner := geom.P(at.room.X0, at.room.Y1)
	s.cards = append(s.cards, flowPlace{c, corner, 1})
	for _, r := range c.pieces(b.hand, 1) {
		s.taken = append(s.taken, r.Move(corner))
	}
}

// addAll puts the cards on sheets of their own, the first at the place.
func (b *binder) addAll(at place, cards []*card) {
	for i, c := range cards {
		b.add(place{at.region, at.sheet + i}, c)
	}
}
