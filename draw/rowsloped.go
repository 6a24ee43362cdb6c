package draw

import "plumbcut/geom"

// SlopedRows are dimension rows over a line of the view that slopes, e.g. the
// top edge of a rafter; they measure along it. Hang rows on Rows as on those at
// the Top of a view. The paper is turned until the line lies level, the rows
// are drawn, and what was drawn is turned back.
type SlopedRows struct {
	*Rows
	Before bool // titles stand before the rows rather than after them

	view *View // in which the line slopes; Rows.View is the turned one
	turn geom.Pt
}

// NewSlopedRows starts the rows over the line from a to b, which rises or
// falls to the right on the paper.
func NewSlopedRows(v *View, a, b geom.Vec) *SlopedRows {
	p, q := v.Axes.Project(a), v.Axes.Project(b)
	turn := q.Sub(p).Unit()
	axes := geom.View{
		Right:  v.Axes.Right.Mul(turn.X).Add(v.Axes.Up.Mul(turn.Y)),
		Up:     v.Axes.Up.Mul(turn.X).Sub(v.Axes.Right.Mul(turn.Y)),
		Toward: v.Axes.Toward,
	}
	level := &View{Name: v.Name, Axes: axes}
	from, to := axes.Project(a), axes.Project(b)
	bounds := Rect{from.X, from.Y, to.X, from.Y}
	return &SlopedRows{Rows: NewRows(level, bounds, Top), view: v, turn: turn}
}

// NewSlopedRowsUnder starts rows under the line from a to b, which runs to the
// right on the paper: as those at the Bottom of a view.
func NewSlopedRowsUnder(v *View, a, b geom.Vec) *SlopedRows {
	r := NewSlopedRows(v, a, b)
	r.Rows = NewRows(r.Rows.View, r.Rows.Bounds, Bottom)
	return r
}

// follow brings the turned view to where the view itself now stands.
func (r *SlopedRows) follow() {
	v := r.Rows.View
	v.Scale, v.At, v.Figures = r.view.Scale, r.view.At, r.view.Figures
	v.Base = rotate(r.view.Base, geom.P(r.turn.X, -r.turn.Y))
	r.swap = r.Before
}

// rotate turns p about the origin by the angle whose cosine and sine are given.
func rotate(p, by geom.Pt) geom.Pt { return geom.P(p.X*by.X-p.Y*by.Y, p.X*by.Y+p.Y*by.X) }

// back carries a point of the turned paper to the sheet.
func (r *SlopedRows) back(p geom.Pt) geom.Pt {
	return r.view.At.Add(rotate(p.Sub(r.view.At), r.turn))
}

func (r *SlopedRows) backBox(b Rect) Rect {
	if b.Empty() {
		return b
	}
	c := b.Corners()
	for i := range c {
		c[i] = r.back(c[i])
	}
	return Bounds(c...)
}

// Extent is the rectangle of paper that the rows need where the view now
// stands; empty without rows.
func (r *SlopedRows) Extent(h Hand) Rect {
	r.follow()
	return r.backBox(r.Rows.Extent(h))
}

// Draw puts the rows on the sheet where the view now stands and records every
// dimension.
func (r *SlopedRows) Draw(s *Sheet, h Hand) {
	r.follow()
	level := &Sheet{Paper: s.Paper}
	r.Rows.Draw(level, h)
	for _, it := range level.Items {
		if it.Text != nil {
			t := *it.Text
			t.At = r.back(t.At)
			t.Turn += turnOf(r.turn)
			s.AddText(t)
			continue
		}
		p := *it.Path
		for i := range p.Segs {
			sg := &p.Segs[i]
			sg.To = r.back(sg.To)
			sg.Arc.Centre, sg.Arc.Major = r.back(sg.Arc.Centre), rotate(sg.Arc.Major, r.turn)
		}
		s.Add(p)
	}
	for _, d := range level.Dims {
		d.View, d.P, d.Q, d.Box = r.view, r.back(d.P), r.back(d.Q), r.backBox(d.Box)
		s.Dims = append(s.Dims, d)
	}
}
