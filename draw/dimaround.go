package draw

import "plumbcut/geom"

// Around is everything that stands round a view: dimension rows at its four
// sides, level marks, columns of notes and the title. It is filled first, then
// measured for each scale that comes into question, then drawn where the view
// was placed:
//
//	a := draw.NewAround(view, bounds)     // bounds: of the view plane, mm of the model
//	a.Bottom.Chain("posts", p1, p2, p3).Overall("", p1, p3)
//	a.Levels(draw.Right).Add("top of beam", q)
//	a.Title = &draw.Title{View: view, Name: "Front elevation"}
//	view.Scale = 1.0 / 50
//	m := a.Margins(hand)                  // mm of paper beyond the outline
//	…                                     // choose the scale, set view.Base and view.At
//	a.Draw(placer)
type Around struct {
	View                     *View
	Bounds                   Rect // outline of the view, in the view plane, mm of the model
	Bottom, Top, Left, Right *Rows
	Title                    *Title // under everything; nil: none

	levels [2]*LevelStack // Left, Right
	notes  [2]*NoteColumn
}

// Margins is the room that the parts round a view take, mm of paper beyond its
// outline.
type Margins struct{ Left, Right, Top, Bottom float64 }

// NewAround starts the parts round a view whose outline in the view plane, in
// millimetres of the model, is bounds.
func NewAround(v *View, bounds Rect) *Around {
	return &Around{
		View: v, Bounds: bounds,
		Bottom: NewRows(v, bounds, Bottom), Top: NewRows(v, bounds, Top),
		Left: NewRows(v, bounds, Left), Right: NewRows(v, bounds, Right),
	}
}

// beyond is the gap from the parts nearer to the view to the next ones out, mm
// on paper (own).
const beyond = 5.0

func sideIndex(side Side) int {
	if side == Left {
		return 0
	}
	return 1
}

// Levels is the stack of level marks at the Left or the Right; it is empty
// until marks are added.
func (a *Around) Levels(side Side) *LevelStack {
	l := &a.levels[sideIndex(side)]
	if *l == nil {
		*l = NewLevelStack(a.View, a.Bounds, side)
	}
	return *l
}

// Notes is the column of notes at the Left or the Right; it is empty until
// notes are added.
func (a *Around) Notes(side Side) *NoteColumn {
	n := &a.notes[sideIndex(side)]
	if *n == nil {
		*n = NewNoteColumn(a.View, a.Bounds, side)
	}
	return *n
}

// arrange sets each part clear of those nearer to the view: rows, then levels,
// then notes.
func (a *Around) arrange(h Hand) {
	for i, rows := range []*Rows{a.Left, a.Right} {
		depth := rows.Depth(h)
		if l := a.levels[i]; !l.Empty() {
			l.Offset = 0
			if depth > 0 {
				l.Offset = depth + beyond - h.extension()
			}
			depth = l.Width(h)
		}
		if n := a.notes[i]; !n.Empty() {
			n.Offset = columnOffset
			if depth > 0 {
				n.Offset = depth + beyond + shoulder + shoulderGap
			}
		}
	}
}

// Extent is the rectangle of paper that the view and all parts round it need
// where the view now stands.
func (a *Around) Extent(h Hand) Rect {
	r := a.parts(h)
	if a.Title != nil {
		at := a.titleAt(r)
		w, d := a.Title.Size(h)
		r = r.Union(Rect{at.X, at.Y - d, at.X + w, at.Y})
	}
	return r
}

// parts arranges everything but the title and returns the room that it takes.
func (a *Around) parts(h Hand) Rect {
	a.arrange(h)
	r := a.View.outline(a.Bounds)
	for _, rows := range []*Rows{a.Bottom, a.Top, a.Left, a.Right} {
		r = r.Union(rows.Extent(h))
	}
	for i := range a.levels {
		r = r.Union(a.levels[i].Extent(h)).Union(a.notes[i].Extent())
	}
	return r
}

// titleAt is the top left of the title under parts that cover r.
func (a *Around) titleAt(r Rect) geom.Pt {
	return geom.P(a.View.outline(a.Bounds).X0, r.Y0-beyond)
}

// Margins measures the parts at the present scale of the view.
func (a *Around) Margins(h Hand) Margins {
	out, r := a.View.outline(a.Bounds), a.Extent(h)
	return Margins{Left: out.X0 - r.X0, Right: r.X1 - out.X1, Top: r.Y1 - out.Y1, Bottom: out.Y0 - r.Y0}
}

// Draw puts the parts on the sheet where the view now stands. Draw the view
// itself before: the leaders of the notes look for the clearest way.
func (a *Around) Draw(p *Placer) {
	s, h := p.Sheet, p.Hand
	r := a.parts(h)
	for _, rows := range []*Rows{a.Bottom, a.Top, a.Left, a.Right} {
		rows.Draw(s, h)
	}
	for _, l := range a.levels {
		l.Draw(s, h)
	}
	if a.Title != nil {
		a.Title.Draw(s, h, a.titleAt(r))
	}
	for _, n := range a.notes {
		n.Draw(p)
	}
}
