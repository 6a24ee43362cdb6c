package sheets

import (
	"strconv"

	"plumbcut/draw"
	"plumbcut/geom"
)

// detailBlock is a detail: its views side by side, lined up and at one scale,
// with their titles in one line; the first carries the number. On narrow paper
// they take several lines. The reference point is the left end of the last line
// of titles.
type detailBlock struct {
	number int
	views  []*viewBlock
	scale  float64 // to draw it at
	least  float64 // where a smaller one saves a sheet
	wanted float64 // of the two
	now    laidOut
	fine   draw.Figures // details are figured as the drawings of the members are
	laid   map[laidOut][]detailCell
}

// detailGap is the distance between the views of one detail with everything
// round them, mm on paper (own): with their rows they stand 25 mm apart.
const detailGap = 10.0

// titleAbove is the distance from the lowest part of the views to the titles.
const titleAbove = 5.0

// newDetailBlock numbers the views and takes their titles in hand.
func (m *maker) newDetailBlock(d detail) *detailBlock {
	by, as := m.drawnBy(d)
	b := &detailBlock{
		number: d.number, views: d.spec.views(by, as), scale: d.spec.scale, least: d.spec.scale,
		wanted: d.spec.scale, fine: m.tapeFigures(), laid: map[laidOut][]detailCell{},
	}
	if d.spec.least != 0 {
		b.least = d.spec.least
	}
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

// laidOut is a way of laying out a detail.
type laidOut struct {
	scale float64
	width float64 // mm of paper beyond which the views go on in a further line; 0: they do not
}

// lay chooses how the detail is laid out.
func (b *detailBlock) lay(l laidOut) {
	b.now = l
	for _, v := range b.views {
		v.fixed = l.scale
	}
}

// detailCell is a view in its place, relative to the block's reference point.
type detailCell struct {
	at    geom.Pt // of the view
	title geom.Pt // top left of its title
	room  draw.Rect
}

// cells is the layout, measured once.
func (b *detailBlock) cells(h draw.Hand) []detailCell {
	if c, ok := b.laid[b.now]; ok {
		return c
	}
	c := b.lines(h)
	b.laid[b.now] = c
	return c
}

// lines lays the views out from left to right, in as many lines as the width
// of the paper asks for. The reference point is the left end of the last line
// of titles.
func (b *detailBlock) lines(h draw.Hand) []detailCell {
	var out []detailCell
	for from := 0; from < len(b.views); {
		line := b.line(h, from)
		r, e := roomOf(out), roomOf(line)
		for i := range out { // earlier lines move up
			out[i] = out[i].move(e.Y1 + detailGap - r.Y0)
		}
		out = append(out, line...)
		from += len(line)
	}
	return out
}

func (c detailCell) move(up float64) detailCell {
	d := geom.P(0, up)
	return detailCell{c.at.Add(d), c.title.Add(d), c.room.Move(d)}
}

func roomOf(cells []detailCell) draw.Rect {
	r := draw.EmptyRect()
	for _, c := range cells {
		r = r.Union(c.room)
	}
	return r
}

// line lays out the views from one on, as many as the width takes.
func (b *detailBlock) line(h draw.Hand, from int) []detailCell {
	var out []detailCell
	var rooms []draw.Rect
	x, low := 0.0, 0.0
	for _, v := range b.views[from:] {
		r := v.extent(h, v.fixed)
		v.set(geom.Pt{}, v.fixed) // the title says the scale, and its bar is as long as that asks
		v.title.Under = v.title.Under || v.Close
		width, height := v.title.Size(h)
		edge := v.view.Outline(v.Bounds).X0 // of the view, seen from its own reference point
		left := max(r.X0, min(edge, r.X1-width))
		c := detailCell{at: geom.P(x-r.X0, 0), title: geom.P(x-r.X0+left, 0)}
		c.room = draw.Rect{X0: x, Y0: -height, X1: max(x+r.W(), c.title.X+width), Y1: 0}
		if len(out) > 0 && b.now.width > 0 && c.room.X1 > b.now.width {
			break
		}
		out, rooms = append(out, c), append(rooms, r)
		low = min(low, r.Y0)
		x = c.room.X1 + detailGap
	}
	for i := range out {
		out[i].at.Y = titleAbove - low // views stand over the titles at one height
		out[i].room.Y1 = out[i].at.Y + rooms[i].Y1
	}
	return out
}

func (b *detailBlock) extent(h draw.Hand, _ float64) draw.Rect {
	return roomOf(b.cells(h))
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
