package sheets

import (
	"plumbcut/draw"
	"plumbcut/geom"
)

// viewBlock is a view of the model with everything round it. Make one with
// newView, hang rows, levels and notes on it, and hand it to arrange; after that
// nothing more can be hung on it.
type viewBlock struct {
	*draw.Around
	title draw.Title // under the view
	pic   picture
	view  *draw.View
	fixed float64                     // scale of its own, e.g. of a detail; 0: that of the sheet
	pad   draw.Rect                   // more room, mm on paper at each side: for marks that stand out
	under func(p *page, v *draw.View) // drawn before the picture, may be nil
	over  func(p *page, v *draw.View) // drawn after the picture and its rows, may be nil
	marks func(p *page, v *draw.View) // words that look for a free place, may be nil
	sizes []sizedAt                   // measured already: a grid asks for the same again and again
}

// newView starts a view of a picture. The reference point of the block is the
// view of the model point ref, so views that share it line up. The rows stand
// off from the members shown; set Bounds of the rows' views before hanging
// anything on them to stand off from more.
func newView(name string, pic picture, ref geom.Vec) *viewBlock {
	return newViewIn(name, pic, ref, pic.bounds)
}

// newViewIn is newView with rows that stand off from the given bounds, in the
// view plane, mm of the model.
func newViewIn(name string, pic picture, ref geom.Vec, bounds draw.Rect) *viewBlock {
	v := &draw.View{Name: name, Axes: pic.axes, Base: pic.axes.Project(ref), Scale: 1}
	b := &viewBlock{Around: draw.NewAround(v, bounds), pic: pic, view: v, title: draw.Title{View: v, Name: name}}
	b.Title = &b.title
	return b
}

// row is the dimension rows at a side.
func (b *viewBlock) row(side draw.Side) *draw.Rows {
	switch side {
	case draw.Top:
		return b.Top
	case draw.Left:
		return b.Left
	case draw.Right:
		return b.Right
	}
	return b.Bottom
}

// level is the stack of level marks at a side; it stands outside the rows.
func (b *viewBlock) level(side draw.Side) *draw.LevelStack { return b.Levels(side) }

// note is the column of notes at a side; it stands outside rows and levels.
func (b *viewBlock) note(side draw.Side) *draw.NoteColumn { return b.Notes(side) }

// set brings the view to a scale and a place.
func (b *viewBlock) set(at geom.Pt, scale float64) {
	if b.fixed != 0 {
		scale = b.fixed
	}
	b.view.Scale, b.view.At = scale, at
}

func (b *viewBlock) extent(h draw.Hand, scale float64) draw.Rect {
	for _, s := range b.sizes {
		if s.scale == scale {
			return s.room
		}
	}
	r := b.measure(h, scale)
	b.sizes = append(b.sizes, sizedAt{scale, r})
	return r
}

// bar gives the title a scale bar or leaves it out.
func (b *viewBlock) bar(on bool) {
	b.title.NoBar = !on
	b.sizes = nil
}

// close brings the view to where it takes least room: see [draw.Around.Close].
func (b *viewBlock) close() {
	b.Close = true
	b.sizes = nil
}

// sizedAt is the room that a view was found to take at a scale.
type sizedAt struct {
	scale float64
	room  draw.Rect
}

func (b *viewBlock) measure(h draw.Hand, scale float64) draw.Rect {
	was := *b.view
	defer func() { *b.view = was }() // a view that is drawn stays where it is
	b.set(geom.Pt{}, scale)
	e := b.Extent(h).Union(b.view.Outline(b.pic.all))
	return draw.Rect{X0: e.X0 - b.pad.X0, Y0: e.Y0 - b.pad.Y0, X1: e.X1 + b.pad.X1, Y1: e.Y1 + b.pad.Y1}
}

func (b *viewBlock) draw(p *page, at geom.Pt, scale float64) {
	b.set(at, scale)
	p.sheet.Views = append(p.sheet.Views, b.view)
	if b.under != nil {
		b.under(p, b.view)
	}
	b.pic.paint(p.sheet, b.view)
	b.Refer(func(letter string) string { return p.refs[sectionTopic(letter)] })
	b.DrawParts(p.sheet, p.hand)
	if b.over != nil {
		b.over(p, b.view)
	}
}

func (b *viewBlock) finish(p *page) {
	b.DrawNotes(p.placer)
	if b.marks != nil {
		b.marks(p, b.view)
	}
}
