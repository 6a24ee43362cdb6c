package sheets

import (
	"fmt"
	"strconv"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// keepOutShown is the part of a zone that a plan within a reach shows; false
// for none.
func keepOutShown(k frame.KeepOut, w wallPlan) (draw.Rect, bool) {
	a, b := k.Box()
	r := draw.Rect{X0: a.X, Y0: a.Y, X1: b.X, Y1: b.Y}.Intersect(draw.Rect{X0: w.x0, Y0: w.y0, X1: w.x1, Y1: 0})
	return r, !r.Empty() && r.W() > 0 && r.H() > 0
}

// keepOuts are all zones that a plan within a reach shows.
func (m *maker) keepOuts(w wallPlan) []draw.Rect {
	var out []draw.Rect
	for _, k := range m.job.Site.KeepOuts {
		for _, one := range k.Each() {
			if r, ok := keepOutShown(one, w); ok {
				out = append(out, r)
			}
		}
	}
	return out
}

// drawKeepOuts outlines the places where no post may stand, light and dashed:
// they are found on site, not made.
func (m *maker) drawKeepOuts(p *page, v *draw.View, w wallPlan) {
	for _, r := range m.keepOuts(w) {
		at := func(x, y float64) geom.Pt { return v.Flat(geom.P(x, y)) }
		p.sheet.Line(light(draw.Dashed), at(r.X0, r.Y0), at(r.X1, r.Y0), at(r.X1, r.Y1), at(r.X0, r.Y1), at(r.X0, r.Y0))
	}
}

// keepOutKey is what a zone is called on the plan.
func keepOutKey(i int) string { return "K" + strconv.Itoa(i+1) }

// keepOutMarks put its key on each zone; the table says what it is.
func (m *maker) keepOutMarks(p *page, v *draw.View, w wallPlan) []func() {
	var out []func()
	for i, k := range m.job.Site.KeepOuts {
		if r, ok := keepOutShown(k, w); ok {
			out = append(out, func() {
				p.placer.Part(draw.Part{View: v, At: clearSpot(p, v, r), Mark: keepOutKey(i), Flag: true})
			})
		}
	}
	return out
}

// keepOutTable says what is kept clear, and where it lies.
func (m *maker) keepOutTable() draw.Table {
	t := draw.Table{Title: "Keep clear", Columns: append([]draw.Column{{Head: "Key"}, {Head: "What is there", Width: 38}, {Head: "None of"}},
		figureColumns("Left, from L", "Right, from L", "From wall", "To")...)}
	left, _ := m.fixedPoints()
	f := m.figures.Length
	for i, k := range m.job.Site.KeepOuts {
		what, end := "posts, holes", "on"
		if k.Of == frame.KeepPost {
			what = "posts"
		}
		if k.Far > 0 {
			end = f(k.Far)
		}
		name := k.Name
		if k.Number > 1 {
			name += fmt.Sprintf(": %d, every %s from the first", k.Number, f(k.Every))
		}
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{keepOutKey(i), name, what, f(k.From - left.X), f(k.To - left.X), f(k.Near), end}})
	}
	return t
}

// clearSpot is a point in a rectangle of the plan at which a dot covers nothing;
// near its middle, where nothing in it is clear.
func clearSpot(p *page, v *draw.View, r draw.Rect) geom.Vec {
	const clear = 1.5 // mm on paper
	spots := [][2]float64{{0.5, 0.3}, {0.5, 0.7}, {0.3, 0.3}, {0.7, 0.3}, {0.3, 0.7}, {0.7, 0.7}, {0.15, 0.5}, {0.85, 0.5}, {0.5, 0.12}, {0.5, 0.88},
		{0.15, 0.2}, {0.85, 0.2}, {0.15, 0.8}, {0.85, 0.8}, {0.3, 0.1}, {0.7, 0.1}, {0.3, 0.9}, {0.7, 0.9}}
	at := func(s [2]float64) geom.Vec { return geom.V(r.X0+s[0]*r.W(), r.Y0+s[1]*r.H(), 0) }
	for _, s := range spots {
		q := v.Pt(at(s))
		if p.placer.Free(draw.Rect{X0: q.X, Y0: q.Y, X1: q.X, Y1: q.Y}, clear) {
			return at(s)
		}
	}
	return at(spots[0])
}
