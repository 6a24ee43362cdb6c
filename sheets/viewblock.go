package sheets

import (
	"plumbcut/draw"
	"plumbcut/geom"
)

// viewBlock is a view of the model with everything round it. Make one with
// newView, hang rows, levels and notes on it, and hand it to arrange.
type viewBlock struct {
	pic    picture
	view   *draw.View
	bounds draw.Rect // what the rows stand off from, in the view plane, mm of the model
	fixed  float64   // scale of its own, e.g. of a detail; 0: that of the sheet
	title  draw.Title
	rows   []*draw.Rows
	levels []*draw.LevelStack
	notes  []*draw.NoteColumn
	pad    draw.Rect                   // more room, mm on paper at each side: for marks that stand out
	under  func(p *page, v *draw.View) // drawn before the picture, may be nil
	over   func(p *page, v *draw.View) // drawn after the picture and its rows, may be nil
	marks  func(p *page, v *draw.View) // words that look for a free place, may be nil
}

// newView starts a view of a picture. The reference point of the block is the
// view of the model point ref, so views that share it line up.
func newView(name string, pic picture, ref geom.Vec) *viewBlock {
	v := &draw.View{Name: name, Axes: pic.axes, Base: pic.axes.Project(ref), Scale: 1}
	b := &viewBlock{pic: pic, view: v, bounds: pic.bounds}
	b.title = draw.Title{View: v, Name: name}
	return b
}

// row starts the dimension rows at a side.
func (b *viewBlock) row(side draw.Side) *draw.Rows {
	for _, r := range b.rows {
		if r.Side == side {
			return r
		}
	}
	r := draw.NewRows(b.view, b.bounds, side)
	b.rows = append(b.rows, r)
	return r
}

// level starts the stack of level marks at a side; it stands outside the rows.
func (b *viewBlock) level(side draw.Side) *draw.LevelStack {
	for _, l := range b.levels {
		if l.Side == side {
			return l
		}
	}
	l := draw.NewLevelStack(b.view, b.bounds, side)
	b.levels = append(b.levels, l)
	return l
}

// note starts the column of notes at a side; it stands outside the rows.
func (b *viewBlock) note(side draw.Side) *draw.NoteColumn {
	for _, n := range b.notes {
		if n.Side == side {
			return n
		}
	}
	n := draw.NewNoteColumn(b.view, b.bounds, side)
	b.notes = append(b.notes, n)
	return n
}

// set brings the view to a scale and a place, and the columns clear of the
// rows.
func (b *viewBlock) set(h draw.Hand, at geom.Pt, scale float64) {
	if b.fixed != 0 {
		scale = b.fixed
	}
	b.view.Scale, b.view.At = scale, at
	for _, l := range b.levels {
		l.Offset = b.rowDepth(h, l.Side)
	}
	for _, n := range b.notes {
		n.Offset = 0
		if d := b.rowDepth(h, n.Side); d > 0 {
			n.Offset = d + leaderRoom
		}
		for _, l := range b.levels {
			if l.Side == n.Side {
				n.Offset = l.Width(h) + leaderRoom
			}
		}
	}
}

// leaderRoom is the room for leaders between rows and a column of notes, mm
// on paper.
const leaderRoom = 10.0

func (b *viewBlock) rowDepth(h draw.Hand, side draw.Side) float64 {
	for _, r := range b.rows {
		if r.Side == side {
			return r.Depth(h)
		}
	}
	return 0
}

// body is the room of all but the title where the view now stands.
func (b *viewBlock) body(h draw.Hand) draw.Rect {
	e := b.outline(b.pic.all).Union(b.outline(b.bounds))
	for _, r := range b.rows {
		e = e.Union(r.Extent(h))
	}
	for _, l := range b.levels {
		e = e.Union(l.Extent(h))
	}
	for _, n := range b.notes {
		e = e.Union(n.Extent())
	}
	return draw.Rect{X0: e.X0 - b.pad.X0, Y0: e.Y0 - b.pad.Y0, X1: e.X1 + b.pad.X1, Y1: e.Y1 + b.pad.Y1}
}

func (b *viewBlock) outline(r draw.Rect) draw.Rect {
	if r.Empty() {
		return r
	}
	return draw.Bounds(b.view.Flat(geom.P(r.X0, r.Y0)), b.view.Flat(geom.P(r.X1, r.Y1)))
}

// titleAt is where the title stands: under the view, in its middle.
func (b *viewBlock) titleAt(h draw.Hand, body draw.Rect) (geom.Pt, draw.Rect) {
	w, d := b.title.Size(h)
	mid := b.outline(b.bounds).Centre().X
	x0 := mid - w/2
	at := geom.P(x0, body.Y0-titleGap)
	return at, draw.Rect{X0: x0, Y0: at.Y - d, X1: x0 + w, Y1: at.Y}
}

func (b *viewBlock) extent(h draw.Hand, scale float64) draw.Rect {
	b.set(h, geom.Pt{}, scale)
	body := b.body(h)
	_, title := b.titleAt(h, body)
	return body.Union(title)
}

func (b *viewBlock) draw(p *page, at geom.Pt, scale float64) {
	b.set(p.hand, at, scale)
	p.sheet.Views = append(p.sheet.Views, b.view)
	if b.under != nil {
		b.under(p, b.view)
	}
	b.pic.paint(p.sheet, b.view)
	for _, r := range b.rows {
		r.Draw(p.sheet, p.hand)
	}
	for _, l := range b.levels {
		l.Draw(p.sheet, p.hand)
	}
	if b.over != nil {
		b.over(p, b.view)
	}
	at, _ = b.titleAt(p.hand, b.body(p.hand))
	b.title.Draw(p.sheet, p.hand, at)
}

func (b *viewBlock) finish(p *page) {
	for _, n := range b.notes {
		n.Draw(p.placer)
	}
	if b.marks != nil {
		b.marks(p, b.view)
	}
}
