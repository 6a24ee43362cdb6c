package sheets

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
)

const detailTitle = "Joint details"

// detailSheets lays out the joint details, in the order of their numbers, as
// many to a sheet as there is room for. Where a smaller scale saves a sheet it
// is used, for as few details as possible.
func (m *maker) detailSheets() []draft {
	var blocks, small []*detailBlock // small: those that may be drawn smaller
	for _, d := range m.details {
		parts := m.newDetailBlock(d).parts(m.hand, m.room(detailTitle))
		blocks = append(blocks, parts...)
		if d.spec.least != 0 && len(parts) == 1 {
			small = append(small, parts...)
		}
	}
	var best shelves
	for choice := range 1 << len(small) {
		for k, b := range small {
			b.wanted = b.scale
			if choice&(1<<(len(small)-1-k)) != 0 { // the last ones first
				b.wanted = b.least
			}
		}
		for _, loose := range []bool{false, true} {
			if s := m.shelve(blocks, loose); best.sheets == nil || s.better(best) {
				best = s
			}
		}
	}
	return best.drafts()
}

// shelve puts the details on shelves at the scales wanted.
func (m *maker) shelve(blocks []*detailBlock, loose bool) shelves {
	s := shelves{hand: m.hand, space: m.room(detailTitle), loose: loose}
	for _, b := range blocks {
		b.settle(m.hand, s.space)
		s.add(b)
	}
	return s
}

// muchFuller is how much more of its room a sheet must use to count as better
// filled.
const muchFuller = 0.1

// better reports whether s takes fewer sheets than t, or as many with larger
// drawings, or with no sheet so empty.
func (s shelves) better(t shelves) bool {
	if len(s.sheets) != len(t.sheets) {
		return len(s.sheets) < len(t.sheets)
	}
	sum := func(all []settled) (total float64) {
		for _, b := range all {
			total += math.Log(b.laidOut.scale)
		}
		return total
	}
	if a, b := sum(s.all), sum(t.all); a != b {
		return a > b
	}
	return s.emptiest() > t.emptiest()+muchFuller
}

// emptiest is the part of its room that the emptiest sheet uses.
func (s shelves) emptiest() float64 {
	free := freeOf(s.space)
	least := 1.0
	for _, sheet := range s.sheets {
		used := 0.0
		for _, row := range sheet {
			used += row.w * row.h()
		}
		least = min(least, used/(free.W()*free.H()))
	}
	return least
}

// drafts makes sheets of the shelves.
func (s shelves) drafts() []draft {
	for _, b := range s.all {
		b.lay(b.laidOut)
	}
	var out []draft
	for _, sheet := range s.sheets {
		var topics []string
		for _, row := range sheet {
			for _, b := range row.blocks {
				if b.numbered() {
					topics = append(topics, detailTopic(b.number))
				}
			}
		}
		out = append(out, draft{detailTitle, topics, s.spread(sheet)})
	}
	return out
}

// numbered reports whether the block carries the number of its detail, to which
// the marks lead.
func (b *detailBlock) numbered() bool { return b.views[0].title.Label != "" }

// smallestDetail is the scale under which a detail is none.
const smallestDetail = 1. / 20

// fits reports whether a detail fits an empty sheet.
func (b *detailBlock) fits(h draw.Hand, sp draw.Space) bool {
	free, e := freeOf(sp), b.extent(h, 1)
	return e.W() <= free.W() && e.H() <= sp.Above.H() || e.W() <= sp.Beside.W() && e.H() <= free.H()
}

// settle gives a detail the scale wanted, or the largest smaller one at which it
// fits an empty sheet with its views in one line or in several; a single view
// that fits none is closed up.
func (b *detailBlock) settle(h draw.Hand, sp draw.Space) bool {
	if b.trySettle(h, sp) {
		return true
	}
	if len(b.views) > 1 {
		return false
	}
	b.views[0].close()
	clear(b.laid)
	return b.trySettle(h, sp)
}

func (b *detailBlock) trySettle(h draw.Hand, sp draw.Space) bool {
	for _, scale := range scalesFrom(b.wanted) {
		for _, width := range []float64{0, freeOf(sp).W()} {
			if b.lay(laidOut{scale, width}); b.fits(h, sp) {
				return true
			}
		}
		if scale <= smallestDetail {
			break
		}
	}
	return false
}

// parts is the detail itself or, where the paper is too small for that at a
// scale of use, a detail for each of its views, at the smaller of its scales so
// that they share sheets. Marks lead to the first of
// them; the others say what they go on from.
func (b *detailBlock) parts(h draw.Hand, sp draw.Space) []*detailBlock {
	const ofUse = 2.5 // times smaller than wanted, at most
	if b.settle(h, sp) && b.now.scale*ofUse >= b.least || len(b.views) == 1 {
		return []*detailBlock{b}
	}
	var out []*detailBlock
	for i, v := range b.views {
		part := *b
		part.views, part.wanted = []*viewBlock{v}, b.least
		part.laid = map[laidOut][]detailCell{}
		if i > 0 {
			v.title.Note = v.title.Name
			v.title.Name = fmt.Sprintf("Detail %d, continued", b.number)
			v.title.NoBar = false
		}
		out = append(out, &part)
	}
	return out
}

// shelf is a row of blocks on a sheet.
type shelf struct {
	blocks []*detailBlock
	rooms  []draw.Rect // of each block, from its reference point
	w      float64     // of the blocks with the gaps between them
	up     float64     // from the line of the reference points to the top
	down   float64     // and to the bottom
}

func (s shelf) h() float64 { return s.up + s.down }

// with is the shelf with one more block.
func (s shelf) with(b *detailBlock, room draw.Rect) shelf {
	if len(s.blocks) > 0 {
		s.w += blockGap
	}
	s.blocks = append(s.blocks[:len(s.blocks):len(s.blocks)], b)
	s.rooms = append(s.rooms[:len(s.rooms):len(s.rooms)], room)
	s.w += room.W()
	s.up, s.down = max(s.up, room.Y1), max(s.down, -room.Y0)
	return s
}

// shelves fills sheets with blocks in rows from the top.
type shelves struct {
	hand   draw.Hand
	space  draw.Space
	loose  bool // a block may stand on an earlier sheet than the one before it
	all    []settled
	blocks [][]*detailBlock // of each sheet
	sheets [][]shelf
}

// settled is a detail with the way in which it was laid out.
type settled struct {
	*detailBlock
	laidOut
}

// add puts a block on a sheet if its blocks can be arranged so that all fit:
// the last one or, if it may, the first. If none takes it it stands on a new
// one, and if it fits no sheet alone, for the audit to report.
func (s *shelves) add(b *detailBlock) {
	s.all = append(s.all, settled{b, b.now})
	from := max(0, len(s.sheets)-1)
	if s.loose {
		from = 0
	}
	for i := from; i < len(s.sheets); i++ {
		more := append(slices.Clone(s.blocks[i]), b)
		if sheet, ok := s.arrange(more); ok {
			s.blocks[i], s.sheets[i] = more, sheet
			return
		}
	}
	s.blocks = append(s.blocks, []*detailBlock{b})
	s.sheets = append(s.sheets, []shelf{shelf{}.with(b, b.extent(s.hand, 1))})
}

// arrange finds rows for the blocks: in their order, or the highest first, which
// leaves the room beside the title block to the small ones.
func (s *shelves) arrange(blocks []*detailBlock) ([]shelf, bool) {
	byHeight := slices.Clone(blocks)
	slices.SortStableFunc(byHeight, func(a, b *detailBlock) int {
		return cmp.Compare(b.extent(s.hand, 1).H(), a.extent(s.hand, 1).H())
	})
	for _, order := range [][]*detailBlock{blocks, byHeight} {
		sheet := []shelf{}
		for _, b := range order {
			sheet = s.place(sheet, b)
			if sheet == nil {
				break
			}
		}
		if sheet != nil {
			return s.inOrder(sheet, blocks), true
		}
	}
	return nil, false
}

// inOrder sorts the blocks of each shelf, and the shelves if they then fit too,
// as they are given.
func (s *shelves) inOrder(sheet []shelf, blocks []*detailBlock) []shelf {
	rank := func(b *detailBlock) int { return slices.Index(blocks, b) }
	for i, row := range sheet {
		sorted := slices.SortedFunc(slices.Values(row.blocks), func(a, b *detailBlock) int { return cmp.Compare(rank(a), rank(b)) })
		sheet[i] = shelf{}
		for _, b := range sorted {
			sheet[i] = sheet[i].with(b, b.extent(s.hand, 1))
		}
	}
	rows := slices.Clone(sheet)
	slices.SortStableFunc(rows, func(a, b shelf) int { return cmp.Compare(rank(a.blocks[0]), rank(b.blocks[0])) })
	if s.fits(rows) {
		return rows
	}
	return sheet
}

// place puts a block on the first shelf that takes it or on a new one; nil if
// the sheet has no room.
func (s *shelves) place(sheet []shelf, b *detailBlock) []shelf {
	room := b.extent(s.hand, 1)
	for i := range sheet {
		longer := slices.Clone(sheet)
		longer[i] = sheet[i].with(b, room)
		if s.fits(longer) {
			return longer
		}
	}
	if more := append(slices.Clone(sheet), shelf{}.with(b, room)); s.fits(more) {
		return more
	}
	return nil
}

// fits reports whether a sheet has room for the shelves.
func (s *shelves) fits(sheet []shelf) bool {
	free := freeOf(s.space)
	y := free.Y1
	for _, row := range sheet {
		y -= row.h()
		if row.w > s.right(y)-free.X0 {
			return false
		}
		y -= blockGap
	}
	return y+blockGap >= free.Y0
}

// right is how far a row may reach whose bottom is at y.
func (s *shelves) right(y float64) float64 {
	if y < s.space.Above.Y0 {
		return s.space.Beside.X1
	}
	return s.space.Above.X1
}

// spread places the shelves of a sheet and shares out the spare room.
func (s *shelves) spread(sheet []shelf) flowed {
	free := freeOf(s.space)
	spare := free.H() - blockGap*float64(len(sheet)-1)
	for _, row := range sheet {
		spare -= row.h()
	}
	extra := min(mostSpread, spare/float64(len(sheet)+1))
	for ; extra > 0; extra /= 2 { // rows moved down must not run into the title block
		if s.clear(sheet, extra) {
			break
		}
	}
	var out flowed
	y := free.Y1 - extra
	for _, row := range sheet {
		y -= row.h()
		more := (s.right(y) - free.X0 - row.w) / float64(len(row.blocks)+1)
		x := free.X0 + min(more, mostSpread)
		for i, b := range row.blocks {
			r := row.rooms[i]
			out = append(out, flowPlace{b, geom.P(x-r.X0, y+row.down), 1})
			x += r.W() + blockGap + min(more, mostSpread)
		}
		y -= blockGap + extra
	}
	return out
}

// clear reports whether the shelves fit with extra room over and between them.
func (s *shelves) clear(sheet []shelf, extra float64) bool {
	taller := make([]shelf, len(sheet))
	for i, row := range sheet {
		row.up += extra
		taller[i] = row
	}
	return s.fits(taller)
}
