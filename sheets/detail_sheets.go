package sheets

import (
	"cmp"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
)

const detailTitle = "Joint details"

// detailSheets lays out the joint details, in the order of their numbers, as
// many to a sheet as there is room for.
func (m *maker) detailSheets() []draft {
	sp := m.room(detailTitle)
	s := shelves{hand: m.hand, space: sp}
	var topics [][]string
	for _, d := range m.details {
		if d.spec.views == nil {
			continue
		}
		b := m.newDetailBlock(d)
		m.scaleDetail(b, sp, d.spec.scale)
		sheet := s.add(b)
		for len(topics) <= sheet {
			topics = append(topics, nil)
		}
		topics[sheet] = append(topics[sheet], detailTopic(d.number))
	}
	var out []draft
	for i, sheet := range s.sheets {
		out = append(out, draft{detailTitle, topics[i], s.spread(sheet)})
	}
	return out
}

// scaleDetail gives a detail its own scale, or the largest smaller one at which
// it fits an empty sheet.
func (m *maker) scaleDetail(b *detailBlock, sp draw.Space, largest float64) {
	free := freeOf(sp)
	for _, scale := range scalesFrom(largest) {
		b.rescale(scale)
		e := b.extent(m.hand, scale)
		if e.W() <= free.W() && e.H() <= sp.Above.H() || e.W() <= sp.Beside.W() && e.H() <= free.H() {
			return
		}
	}
}

// shelf is a row of blocks on a sheet.
type shelf struct {
	blocks []block
	rooms  []draw.Rect // of each block, from its reference point
	w      float64     // of the blocks with the gaps between them
	up     float64     // from the line of the reference points to the top
	down   float64     // and to the bottom
}

func (s shelf) h() float64 { return s.up + s.down }

// with is the shelf with one more block.
func (s shelf) with(b block, room draw.Rect) shelf {
	if len(s.blocks) > 0 {
		s.w += blockGap
	}
	s.blocks = append(s.blocks[:len(s.blocks):len(s.blocks)], b)
	s.rooms = append(s.rooms[:len(s.rooms):len(s.rooms)], room)
	s.w += room.W()
	s.up, s.down = max(s.up, room.Y1), max(s.down, -room.Y0)
	return s
}

// shelves fills sheets with blocks, in order, in rows from the top.
type shelves struct {
	hand   draw.Hand
	space  draw.Space
	blocks []block // of the last sheet
	sheets [][]shelf
}

// add puts a block on the last sheet if its blocks can be arranged so that all
// fit, else on a new one, and returns the index of the sheet. A block that fits
// no sheet stands on one alone, for the audit to report.
func (s *shelves) add(b block) int {
	if all := append(s.blocks[:len(s.blocks):len(s.blocks)], b); len(s.sheets) > 0 {
		if sheet, ok := s.arrange(all); ok {
			s.blocks = all
			s.sheets[len(s.sheets)-1] = sheet
			return len(s.sheets) - 1
		}
	}
	s.blocks = []block{b}
	s.sheets = append(s.sheets, []shelf{shelf{}.with(b, b.extent(s.hand, 1))})
	return len(s.sheets) - 1
}

// arrange finds rows for the blocks: in their order, or the highest first, which
// leaves the room beside the title block to the small ones.
func (s *shelves) arrange(blocks []block) ([]shelf, bool) {
	byHeight := slices.Clone(blocks)
	slices.SortStableFunc(byHeight, func(a, b block) int {
		return cmp.Compare(b.extent(s.hand, 1).H(), a.extent(s.hand, 1).H())
	})
	for _, order := range [][]block{blocks, byHeight} {
		sheet := []shelf{}
		for _, b := range order {
			sheet = s.place(sheet, b)
			if sheet == nil {
				break
			}
		}
		if sheet != nil {
			return sheet, true
		}
	}
	return nil, false
}

// place puts a block on the first shelf that takes it or on a new one; nil if
// the sheet has no room.
func (s *shelves) place(sheet []shelf, b block) []shelf {
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
