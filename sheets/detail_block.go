package sheets

import (
	"strconv"

	"plumbcut/draw"
	"plumbcut/geom"
)

// detailBlock is a detail: its views side by side, lined up and at one scale,
// with their titles in one line; the first carries the number. The reference
// point is the left end of the line of titles.
type detailBlock struct {
	number int
	views  []*viewBlock
	wanted float64      // scale
	fine   draw.Figures // details are figured finer than the rest of the set
}

// viewGap is the distance between the views of one detail with everything
// round them, mm on paper (own): with their rows they stand 25 mm apart.
const viewGap = 10.0

// titleAbove is the distance from the lowest part of the views to the titles.
const titleAbove = 5.0

// newDetailBlock numbers the views and takes their titles in hand.
func (m *maker) newDetailBlock(d detail) *detailBlock {
	b := &detailBlock{number: d.number, views: d.spec.views(m, d), wanted: d.spec.scale, fine: m.fineFigures()}
	for i, v := range b.views {
		v.Title = nil
		v.title.NoBar = i > 0
		if i == 0 {
			v.title.Label = strconv.Itoa(d.number)
			v.title.Note = v.title.Name
			v.title.Name = d.title
		}
		v.view.Name = strconv.Itoa(d.number) + " " + v.title.Name
		v.view.Figures = b.fine
	}
	return b
}

// rescale sets the scale of all views.
func (b *detailBlock) rescale(scale float64) {
	for _, v := range b.views {
		v.fixed = scale
	}
}

// detailCell is a view in its place, relative to the block's reference point.
type detailCell struct {
	at    geom.Pt // of the view
	title geom.Pt // top left of its title
	room  draw.Rect
}

// cells lays the views out from left to right.
func (b *detailBlock) cells(h draw.Hand) []detailCell {
	out := make([]detailCell, len(b.views))
	rooms := make([]draw.Rect, len(b.views))
	low := 0.0
	for i, v := range b.views {
		rooms[i] = v.extent(h, v.fixed)
		low = min(low, rooms[i].Y0)
	}
	up := titleAbove - low // of the views over the titles
	x := 0.0
	for i, v := range b.views {
		r := rooms[i]
		width, height := v.title.Size(h)
		c := detailCell{room: r.Move(geom.P(x-r.X0, up))}
		c.at = geom.P(x-r.X0, up)
		edge := v.view.Outline(v.Bounds).X0 // of the view, seen from its own reference point
		left := max(r.X0, min(edge, r.X1-width))
		c.title = geom.P(x-r.X0+left, 0)
		c.room = c.room.Union(draw.Rect{X0: c.title.X, Y0: -height, X1: c.title.X + width, Y1: 0})
		out[i] = c
		x = c.room.X1 + viewGap
	}
	return out
}

func (b *detailBlock) extent(h draw.Hand, _ float64) draw.Rect {
	r := draw.EmptyRect()
	for _, c := range b.cells(h) {
		r = r.Union(c.room)
	}
	return r
}

func (b *detailBlock) draw(p *page, at geom.Pt, _ float64) {
	cells := b.cells(p.hand)
	for i, v := range b.views {
		v.draw(p, at.Add(cells[i].at), v.fixed)
		v.title.Draw(p.sheet, p.hand, at.Add(cells[i].title))
	}
}

func (b *detailBlock) finish(p *page) {
	for _, v := range b.views {
		v.finish(p)
	}
}
