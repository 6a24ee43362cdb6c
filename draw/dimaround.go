package draw

import (
	"math"

	"plumbcut/geom"
)

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
	Sloped                   []*SlopedRows
	Title                    *Title // under everything; nil: none

	// Close saves room, where a view fits no sheet otherwise: the title moves left
	// rather than stand out past the parts over it, and long titles of rows
	// are folded.
	Close bool

	cuts   []Section
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

// Cut adds a section mark. Its line passes through A and B in the view, across
// or upright on the paper; the ends stand outside the dimension rows.
func (a *Around) Cut(c Section) {
	c.View = a.View
	a.cuts = append(a.cuts, c)
}

// Refer says on which sheet the section of each letter is, once that is known.
func (a *Around) Refer(sheetOf func(letter string) string) {
	for i := range a.cuts {
		a.cuts[i].Sheet = sheetOf(a.cuts[i].Letter)
	}
}

// arrange sets each part clear of those nearer to the view: rows, then levels,
// then notes.
func (a *Around) arrange(h Hand) {
	// Titles of lying rows stand at the left, unless something else does.
	left, right := !a.notes[0].Empty(), !a.notes[1].Empty()
	a.Top.swap = !left && (right || !a.Left.titled())
	a.Bottom.swap = left
	for _, rows := range []*Rows{a.Top, a.Bottom, a.Left, a.Right} {
		rows.folds = a.Close
	}
	over, under := a.Top.Extent(h), a.Bottom.Extent(h)
	a.clearCorners(h, over.Union(under))
	for i, rows := range []*Rows{a.Left, a.Right} {
		depth := rows.Depth(h)
		if l := a.levels[i]; !l.Empty() {
			l.Offset, l.Stub = 0, 0
			if depth > 0 {
				l.Offset = depth + beyond - h.extension()
			}
			l.Stub = levelStub + max(a.inWay(i, l.Extent(h), over), a.inWay(i, l.Extent(h), under))
			depth = l.Width(h)
		}
		if n := a.notes[i]; !n.Empty() {
			n.Offset = columnOffset
			if depth > 0 {
				n.Offset = depth + beyond + shoulder + shoulderGap
			}
			n.Offset += max(a.inWay(i, n.Extent(), over), a.inWay(i, n.Extent(), under))
		}
	}
}

// clearCorners moves the rows at the sides out past those above and below where
// figures that reach past a corner of the view would touch.
func (a *Around) clearCorners(h Hand, lying Rect) {
	words, lines := a.Top.ink(h)
	w, l := a.Bottom.ink(h)
	words, lines = append(words, w...), append(lines, l...)
	out := a.View.Outline(a.Bounds)
	for i, rows := range []*Rows{a.Left, a.Right} {
		rows.shift = 0
		w, l := rows.ink(h)
		if touch(w, words) || touch(w, lines) || touch(l, words) {
			rows.shift = [2]float64{out.X0 - lying.X0, lying.X1 - out.X1}[i]
		}
	}
}

// touch reports whether a rectangle of one list comes near one of the other.
func touch(as, bs []Rect) bool {
	for _, a := range as {
		for _, b := range bs {
			if a.Expand(textGap).Overlaps(b) {
				return true
			}
		}
	}
	return false
}

// inWay is how far a part at the Left (0) or Right (1) must move out so that
// rows that reach past the corner of the view are not in its way.
func (a *Around) inWay(side int, part, rows Rect) float64 {
	out := a.View.Outline(a.Bounds)
	if rows.Empty() || !rows.Expand(textGap).Overlaps(part) {
		return 0
	}
	if side == 0 {
		return max(0, out.X0-rows.X0+textGap)
	}
	return max(0, rows.X1-out.X1+textGap)
}

// cutLines sets the ends of the section marks outside the rows that stand over
// and under (or left and right of) the view, or outside all rows where the
// bubbles would touch those at the other sides.
func (a *Around) cutLines(h Hand) []cutLine {
	var out []cutLine
	outline := a.View.Outline(a.Bounds)
	for _, c := range a.cuts {
		p, q := a.View.Pt(c.A), a.View.Pt(c.B)
		d := q.Sub(p)
		across := math.Abs(d.X) > math.Abs(d.Y)
		r, others := outline.Union(a.Top.Extent(h)).Union(a.Bottom.Extent(h)), []*Rows{a.Left, a.Right}
		if across {
			r, others = outline.Union(a.Left.Extent(h)).Union(a.Right.Extent(h)), []*Rows{a.Top, a.Bottom}
		}
		for _, rows := range a.Sloped {
			r = r.Union(rows.Extent(h))
		}
		line := c.outside(r, across)
		for _, rows := range others {
			words, lines := rows.ink(h)
			if touch(line.boxes(), words) || touch(line.boxes(), lines) {
				line = c.outside(a.rowsExtent(h), across)
			}
		}
		out = append(out, line)
	}
	return out
}

// outside is the mark with its ends outside r.
func (c Section) outside(r Rect, across bool) cutLine {
	at := c.View.Pt(c.A)
	if across {
		return cutLine{c, geom.P(r.X0-textGap, at.Y), geom.P(r.X1+textGap, at.Y)}
	}
	return cutLine{c, geom.P(at.X, r.Y0-textGap), geom.P(at.X, r.Y1+textGap)}
}

// Extent is the rectangle of paper that the view and all parts round it need
// where the view now stands.
func (a *Around) Extent(h Hand) Rect {
	r := a.parts(h)
	if a.Title != nil {
		at := a.titleAt(h, r)
		w, d := a.Title.Size(h)
		r = r.Union(Rect{at.X, at.Y - d, at.X + w, at.Y})
	}
	return r
}

// parts arranges everything but the title and returns the room that it takes.
func (a *Around) parts(h Hand) Rect {
	a.arrange(h)
	r := a.rowsExtent(h)
	for _, c := range a.cutLines(h) {
		r = r.Union(c.extent())
	}
	for i := range a.levels {
		r = r.Union(a.levels[i].Extent(h)).Union(a.notes[i].Extent())
	}
	return r
}

// rowsExtent is the room of the view and its rows.
func (a *Around) rowsExtent(h Hand) Rect {
	r := a.View.Outline(a.Bounds)
	for _, rows := range []*Rows{a.Bottom, a.Top, a.Left, a.Right} {
		r = r.Union(rows.Extent(h))
	}
	for _, rows := range a.Sloped {
		r = r.Union(rows.Extent(h))
	}
	return r
}

// titleAt is the top left of the title under parts that cover r. Its scale bar
// goes under the words if beside them it would be wider than the view with all
// parts.
func (a *Around) titleAt(h Hand, r Rect) geom.Pt {
	a.Title.Under = false
	w, _ := a.Title.Size(h)
	a.Title.Under = w > r.W()
	x := a.View.Outline(a.Bounds).X0
	if a.Close {
		w, _ = a.Title.Size(h)
		x = min(x, max(r.X0, r.X1-w))
	}
	return geom.P(x, r.Y0-beyond)
}

// Margins measures the parts at the present scale of the view.
func (a *Around) Margins(h Hand) Margins {
	out, r := a.View.Outline(a.Bounds), a.Extent(h)
	return Margins{Left: out.X0 - r.X0, Right: r.X1 - out.X1, Top: r.Y1 - out.Y1, Bottom: out.Y0 - r.Y0}
}

// Draw puts the parts on the sheet where the view now stands. Draw the view
// itself before: the leaders of the notes look for the clearest way.
func (a *Around) Draw(p *Placer) {
	a.DrawParts(p.Sheet, p.Hand)
	a.DrawNotes(p)
}

// DrawParts draws all but the notes, for a sheet with several views: the notes
// of each then keep clear of the rows of all.
func (a *Around) DrawParts(s *Sheet, h Hand) {
	r := a.parts(h)
	for _, rows := range []*Rows{a.Bottom, a.Top, a.Left, a.Right} {
		rows.Draw(s, h)
	}
	for _, rows := range a.Sloped {
		rows.Draw(s, h)
	}
	for _, c := range a.cutLines(h) {
		c.draw(s)
	}
	for _, l := range a.levels {
		l.Draw(s, h)
	}
	if a.Title != nil {
		a.Title.Draw(s, h, a.titleAt(h, r))
	}
}

// DrawNotes draws the notes, after DrawParts.
func (a *Around) DrawNotes(p *Placer) {
	for _, n := range a.notes {
		n.Draw(p)
	}
}
