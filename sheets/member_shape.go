package sheets

import (
	"fmt"
	"strconv"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// shapes are the member's shaped ends.
func (s *timber) shapes() []frame.Shape {
	var out []frame.Shape
	for _, f := range s.Features {
		if f, ok := f.(frame.Shape); ok {
			out = append(out, f)
		}
	}
	return out
}

// onOutline is the point of the member's side so far back and down.
func (s *timber) onOutline(sh frame.Shape, back, down float64) geom.Vec {
	return s.OnFace(s.mainFace(), sh.Along(back), s.Section.Depth-down)
}

// shapeWork is the outline of an end: how far along its marks lie.
func (s *timber) shapeWork(sh frame.Shape) work {
	back, past := sh.Reach()
	lo, hi := sh.Along(back), sh.Along(-past)
	return work{
		pass: cutPass, name: sh.Name, face: s.mainFace(), hold: s.endHold(sh.End), last: true,
		stops: []stop{{firstEdge, min(lo, hi)}, {secondEdge, max(lo, hi)}},
		how:   "by its outline, once the end is square",
		spot:  s.onOutline(sh, sh.Points[len(sh.Points)-1].Back, s.Section.Depth),
	}
}

// The scales of an outline, and the most of it, mm of the model, that is drawn
// at the larger.
const (
	shapeScale = 1. / 2
	shapeSmall = 1. / 5
	shapeMost  = 260.0
)

// shapeViews show each shaped end from the side, with the figures to mark it by:
// points and centres, both from the end of the top edge.
func (s *timber) shapeViews() []block {
	var out []block
	for _, sh := range s.shapes() {
		out = append(out, s.shapeView(sh))
	}
	return out
}

func (s *timber) shapeView(sh frame.Shape) block {
	depth := s.Section.Depth
	back, past := sh.Reach()
	beside := depth / 2 // of plain timber
	crop := everywhere()
	if sh.End == frame.FaceEnd {
		crop.Min.X = sh.At - back - beside
	} else {
		crop.Max.X = sh.At + back + beside
	}
	pic := s.scene().see(look{axes: s.facing(s.mainFace()), crop: &crop, torn: true, hidden: func(*scene, int) bool { return true }})
	bounds := pic.bounds // the rows stand off from the centres too
	for i := range sh.Points {
		if back, down, ok := sh.Centre(i); ok {
			bounds = bounds.Union(draw.Bounds(pic.axes.Project(s.onOutline(sh, back, down))))
		}
	}
	b := newViewIn("Outline of the "+s.endName(sh.End), pic, s.onOutline(sh, 0, 0), bounds)
	b.fixed = shapeScale
	if s.smallPaper() || max(back+past+beside, depth) > shapeMost {
		b.fixed = shapeSmall
	}
	b.view.Scale = b.fixed
	b.view.Figures = s.fineFigures()
	b.view.Name = s.Mark + ", outline of the " + s.endName(sh.End)
	b.Title = nil
	b.title.Under = true
	b.title.NoBar = true
	corner := s.onOutline(sh, 0, 0)
	var points, centres []geom.Vec
	for i, p := range sh.Points {
		points = append(points, s.onOutline(sh, p.Back, p.Down))
		if back, down, ok := sh.Centre(i); ok {
			centres = append(centres, s.onOutline(sh, back, down))
		}
	}
	outer := draw.Right
	if axes := b.view.Axes; axes.Right.X > 0 != (sh.End == frame.FaceEnd) {
		outer = draw.Left
	}
	from := func(r *draw.Rows, out float64) { // the extension lines start where they would without the centres
		r.Reach, r.Deep = out*b.fixed, out*b.fixed
	}
	from(b.Top, bounds.Y1-pic.bounds.Y1)
	from(b.Bottom, pic.bounds.Y0-bounds.Y0)
	from(b.Left, pic.bounds.X0-bounds.X0)
	from(b.Right, bounds.X1-pic.bounds.X1)
	b.row(draw.Top).Running("points", corner, points...)
	b.row(outer).Running("points", corner, points...)
	if len(centres) > 0 {
		b.row(draw.Bottom).Running("centres", corner, centres...)
		b.row(outer).Running("centres", corner, centres...)
	}
	b.under = func(p *page, v *draw.View) { s.wasteOf(p, v, sh) }
	b.over = func(p *page, v *draw.View) { s.overShape(p, v, sh) }
	b.marks = func(p *page, v *draw.View) { s.shapeMarks(p, v, sh) }
	return &titledView{b}
}

// overShape marks the centres of the arcs.
func (s *timber) overShape(p *page, v *draw.View, sh frame.Shape) {
	const arm = 2.0 // mm on paper
	st := draw.Style{Layer: draw.Centre, Pen: draw.Narrow}
	for i := range sh.Points {
		if back, down, ok := sh.Centre(i); ok {
			c := v.Pt(s.onOutline(sh, back, down))
			p.sheet.Line(st, c.Sub(geom.P(arm, 0)), c.Add(geom.P(arm, 0)))
			p.sheet.Line(st, c.Sub(geom.P(0, arm)), c.Add(geom.P(0, arm)))
		}
	}
}

// shapeMarks write the radii on the arcs.
func (s *timber) shapeMarks(p *page, v *draw.View, sh frame.Shape) {
	for i := range sh.Points {
		if back, down, ok := sh.Centre(i); ok {
			b, d := sh.Middle(i)
			p.placer.Arc(v, s.onOutline(sh, back, down), s.onOutline(sh, b, d), false)
		}
	}
}

// shapeTables give the outlines in figures, point after point.
func (s *timber) shapeTables() []draw.Table {
	var out []draw.Table
	f := s.fineFigures()
	for _, sh := range s.shapes() {
		t := draw.Table{Title: fmt.Sprintf("%s: outline of the %s", s.Mark, s.endName(sh.End)), Columns: []draw.Column{
			{Head: "point"}, {Head: "back", Align: draw.End}, {Head: "down", Align: draw.End}, {Head: "line to it"},
			{Head: "radius", Align: draw.End}, {Head: "centre back", Align: draw.End}, {Head: "and down", Align: draw.End},
		}}
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{"corner", f.Length(0), f.Length(0), "", "", "", ""}})
		for i, p := range sh.Points {
			cells := []string{strconv.Itoa(i + 1), f.Length(p.Back), f.Length(p.Down), "straight", "", "", ""}
			if back, down, ok := sh.Centre(i); ok {
				cells[3] = "round"
				if p.Hollow > 0 {
					cells[3] = "hollow"
				}
				cells[4], cells[5], cells[6] = f.Length(p.Radius()), f.Length(back), f.Length(down)
			}
			t.Rows = append(t.Rows, draw.TableRow{Cells: cells})
		}
		out = append(out, t)
	}
	return out
}

// shapeNote says how the outlines are measured.
func (s *timber) shapeNote() []string {
	if len(s.shapes()) == 0 {
		return nil
	}
	return []string{"Outline: measure back along the top edge from the corner where the square end meets it, and down square to that edge. Make one pattern of ply or board, mark every end by it, and saw and sand to the line."}
}
