package sheets

import (
	"plumbcut/draw"
	"plumbcut/geom"
)

// tableBlock is a table as a block; its reference point is its top left.
type tableBlock struct{ table draw.Table }

func (b *tableBlock) extent(draw.Hand, float64) draw.Rect {
	w, h := b.table.Size()
	return draw.Rect{X0: 0, Y0: -h, X1: w, Y1: 0}
}

func (b *tableBlock) draw(p *page, at geom.Pt, _ float64) { b.table.Draw(p.sheet, at) }

func (b *tableBlock) finish(*page) {}

func (b *tableBlock) split(height float64) []block {
	var out []block
	for _, t := range b.table.Split(height) {
		out = append(out, &tableBlock{t})
	}
	return out
}

// wordBlock is a block of notes; its reference point is its top left.
type wordBlock struct{ notes draw.NoteBlock }

func (b *wordBlock) extent(draw.Hand, float64) draw.Rect {
	w, h := b.notes.Size()
	return draw.Rect{X0: 0, Y0: -h, X1: w, Y1: 0}
}

func (b *wordBlock) draw(p *page, at geom.Pt, _ float64) { b.notes.Draw(p.sheet, at) }

func (b *wordBlock) finish(*page) {}

func (b *wordBlock) split(height float64) []block {
	var out []block
	for _, n := range b.notes.Split(height) {
		out = append(out, &wordBlock{n})
	}
	return out
}

// stackBlock is several blocks one under the other, their left edges in line,
// so that they share a cell of a grid.
type stackBlock []block

// stackGap is the distance between two blocks of a stack, mm on paper.
const stackGap = 7.0

func (b stackBlock) extent(h draw.Hand, scale float64) draw.Rect {
	r := draw.Rect{}
	for i, part := range b {
		e := part.extent(h, scale)
		if i > 0 {
			r.Y0 -= stackGap
		}
		r.Y0 -= e.H()
		r.X1 = max(r.X1, e.W())
	}
	return r
}

func (b stackBlock) draw(p *page, at geom.Pt, scale float64) {
	y := at.Y
	for _, part := range b {
		e := part.extent(p.hand, scale)
		part.draw(p, geom.P(at.X-e.X0, y-e.Y1), scale)
		y -= e.H() + stackGap
	}
}

func (b stackBlock) pieces(h draw.Hand, scale float64) []draw.Rect {
	var out []draw.Rect
	y := 0.0
	for _, part := range b {
		e := part.extent(h, scale)
		for _, r := range piecesOf(part, h, scale) {
			out = append(out, r.Move(geom.P(-e.X0, y-e.Y1)))
		}
		y -= e.H() + stackGap
	}
	return out
}

func (b stackBlock) finish(p *page) {
	for _, part := range b {
		part.finish(p)
	}
}

// besideBlock is several blocks side by side, their tops in line, so that they
// share a cell of a grid.
type besideBlock []block

func (b besideBlock) extent(h draw.Hand, scale float64) draw.Rect {
	r := draw.Rect{}
	for i, part := range b {
		e := part.extent(h, scale)
		if i > 0 {
			r.X1 += columnGap
		}
		r.X1 += e.W()
		r.Y0 = min(r.Y0, -e.H())
	}
	return r
}

func (b besideBlock) draw(p *page, at geom.Pt, scale float64) {
	x := at.X
	for _, part := range b {
		e := part.extent(p.hand, scale)
		part.draw(p, geom.P(x-e.X0, at.Y-e.Y1), scale)
		x += e.W() + columnGap
	}
}

func (b besideBlock) pieces(h draw.Hand, scale float64) []draw.Rect {
	var out []draw.Rect
	x := 0.0
	for _, part := range b {
		e := part.extent(h, scale)
		for _, r := range piecesOf(part, h, scale) {
			out = append(out, r.Move(geom.P(x-e.X0, -e.Y1)))
		}
		x += e.W() + columnGap
	}
	return out
}

func (b besideBlock) finish(p *page) {
	for _, part := range b {
		part.finish(p)
	}
}

// wordsOf are the tables and words of which a block is made; none if there is
// anything else in it.
func wordsOf(b block) []block {
	var out, parts []block
	switch b := b.(type) {
	case splitter:
		return []block{b.(block)}
	case stackBlock:
		parts = b
	case besideBlock:
		parts = b
	}
	for _, part := range parts {
		words := wordsOf(part)
		if len(words) == 0 {
			return nil
		}
		out = append(out, words...)
	}
	return out
}

// hung is a block whose top stands level with that of another one in the same
// row of a grid.
type hung struct {
	block
	beside block
}

func (b hung) drop(h draw.Hand, scale float64) geom.Pt {
	return geom.P(0, b.beside.extent(h, scale).Y1-b.block.extent(h, scale).Y1)
}

func (b hung) extent(h draw.Hand, scale float64) draw.Rect {
	return b.block.extent(h, scale).Move(b.drop(h, scale))
}

func (b hung) pieces(h draw.Hand, scale float64) []draw.Rect {
	out, drop := piecesOf(b.block, h, scale), b.drop(h, scale)
	for i := range out {
		out[i] = out[i].Move(drop)
	}
	return out
}

func (b hung) draw(p *page, at geom.Pt, scale float64) {
	b.block.draw(p, at.Add(b.drop(p.hand, scale)), scale)
}

// spacer is a block of a height, mm on paper, with nothing in it.
type spacer float64

func (b spacer) extent(draw.Hand, float64) draw.Rect { return draw.Rect{Y0: -float64(b)} }

func (b spacer) draw(*page, geom.Pt, float64) {}

func (b spacer) finish(*page) {}
