package sheets

import (
	"fmt"

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

// drawKeepOuts outlines the places where no post may stand, light and dashed:
// they are found on site, not made.
func (m *maker) drawKeepOuts(p *page, v *draw.View, w wallPlan) {
	for _, k := range m.job.Site.KeepOuts {
		r, ok := keepOutShown(k, w)
		if !ok {
			continue
		}
		at := func(x, y float64) geom.Pt { return v.Flat(geom.P(x, y)) }
		p.sheet.Line(light(draw.Dashed), at(r.X0, r.Y0), at(r.X1, r.Y0), at(r.X1, r.Y1), at(r.X0, r.Y1), at(r.X0, r.Y0))
	}
}

// markKeepOuts names them, with where they lie.
func (m *maker) markKeepOuts(p *page, v *draw.View, w wallPlan) {
	for _, k := range m.job.Site.KeepOuts {
		r, ok := keepOutShown(k, w)
		if !ok {
			continue
		}
		what := "no hole here"
		if k.Of == frame.KeepPost {
			what = "no post here"
		}
		words := fmt.Sprintf("%s: %s, from %s to %s along from L", k.Name, what, m.said(k.From-m.rear().From), m.said(k.To-m.rear().From))
		p.placer.Label(draw.Label{View: v, At: geom.V((r.X0+r.X1)/2, r.Y0+0.3*r.H(), 0), Text: words, Inside: true, Width: detailWords})
	}
}
