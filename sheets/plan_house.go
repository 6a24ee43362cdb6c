package sheets

import (
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// wallPlan is the house as a plan shows it: its walls cut at window height,
// light, and only as far as the frame needs them.
type wallPlan struct {
	picture
	reach
	back  float64   // world y of the back of the wall
	solid []cutFace // where the cut meets the walls
}

// wallMore is how far a plan shows the house beyond the frame, mm.
const wallMore = 300

// reach is how far a plan shows the house: along the wall, and out (y0 < 0).
// Walls that go on are broken off there.
type reach struct{ x0, x1, y0 float64 }

// planReach is what the plans show: all members above the ground, and a little
// more.
func (m *maker) planReach() reach {
	b := geom.Box3{Min: geom.V(math.Inf(1), math.Inf(1), math.Inf(1)), Max: geom.V(math.Inf(-1), math.Inf(-1), math.Inf(-1))}
	for _, k := range m.frame.Members {
		if k.Kind != frame.KindFooting {
			b = b.Union(k.Solid().Bounds())
		}
	}
	return reach{b.Min.X - wallMore, b.Max.X + wallMore, b.Min.Y - wallMore}
}

// wallPlan looks at the walls of the house within the reach.
func (m *maker) wallPlan(r reach) wallPlan {
	cut := geom.V(0, 0, m.cutHeight())
	crop := &geom.Box3{Min: geom.V(r.x0, r.y0, m.job.Levels.Ground-1), Max: geom.V(r.x1, math.MaxInt32, math.MaxInt32)}
	p := m.scene.see(look{
		axes: geom.Plan(), cut: &cut, crop: crop,
		show: func(s *scene, body int) bool {
			h, ok := s.house(body)
			return ok && (h.Name == frame.HouseCladding || h.Name == frame.HouseWall || h.Name == frame.HouseLeft || h.Name == frame.HouseRight)
		},
	})
	w := wallPlan{picture: p, reach: r, back: p.all.Y1}
	if !m.rear().OnWall { // there is only the frame
		w.back = m.frame.Setout.BackIn()
		w.all = draw.Rect{X0: r.x0 + wallMore, Y0: r.y0 + wallMore, X1: r.x1 - wallMore, Y1: w.back}
		return w
	}
	w.outline()
	w.all = w.all.Intersect(draw.Rect{X0: r.x0, Y0: r.y0, X1: r.x1, Y1: w.back})
	return w
}

// cutHeight is the level at which the walls are cut: through every window and
// door if there is such a level, else as a person looks.
func (m *maker) cutHeight() float64 {
	const breast = 1200
	low, high := math.Inf(-1), math.Inf(1)
	for _, o := range m.job.Wall.Openings {
		low, high = max(low, o.Sill), min(high, o.Head)
	}
	if at := m.job.Levels.Deck + breast; !(low < high) || at > low && at < high {
		return at
	}
	return (low + high) / 2
}

// outline turns the cut faces into light lines, so that the frame's own lines
// come first where the scale brings both together, and leaves out the edges
// where the walls are broken off.
func (w *wallPlan) outline() {
	for _, c := range w.cuts {
		for _, loop := range append([][]geom.Pt{c.region.Outer}, c.region.Holes...) {
			for i, a := range loop {
				w.strokes = append(w.strokes, geom.Stroke{Body: c.body, A: a, B: loop[(i+1)%len(loop)]})
			}
		}
	}
	w.solid, w.cuts = w.cuts, nil
	kept := w.strokes[:0]
	for _, s := range w.strokes {
		if !w.atBreak(s) {
			kept = append(kept, s)
		}
	}
	w.strokes = kept
}

// atBreak reports whether a line lies where a wall is broken off.
func (w *wallPlan) atBreak(s geom.Stroke) bool {
	const near = 0.01 // mm: the crop is exact
	on := func(a, b, at float64) bool { return math.Abs(a-at) < near && math.Abs(b-at) < near }
	return on(s.A.X, s.B.X, w.x0) || on(s.A.X, s.B.X, w.x1) || on(s.A.Y, s.B.Y, w.y0)
}

// with is a picture of both what p and what q shows; the bounds are those of p.
func (p picture) with(q picture) picture {
	p.strokes = append(p.strokes[:len(p.strokes):len(p.strokes)], q.strokes...)
	p.cuts = append(p.cuts[:len(p.cuts):len(p.cuts)], q.cuts...)
	p.all = p.all.Union(q.all)
	return p
}

// light is the style of the house.
func light(dash draw.Dash) draw.Style {
	return draw.Style{Layer: draw.Context, Pen: draw.Narrow, Dash: dash}
}

// drawWall adds to the house what is not a body of the model: studs, break
// lines, the edge of the soffit, and the words.
func (m *maker) drawWall(p *page, v *draw.View, w wallPlan) {
	m.hatchWall(p, v, w)
	m.drawStuds(p, v, w)
	m.drawFascia(p, v, w)
	wallBreak := func(a, b geom.Pt) { breakLine(p.sheet, light(draw.Solid), a, b, [2]float64{breakOver, breakOver}) }
	for _, x := range []float64{w.x0, w.x1} {
		if w.all.X0 <= x && w.all.X1 >= x {
			wallBreak(v.Flat(geom.P(x, m.job.Wall.Fascia.Eave)), v.Flat(geom.P(x, w.back)))
		}
	}
	for _, r := range m.job.Wall.Returns {
		if r.Length > -w.y0 {
			thick := w.back
			x0, x1 := r.At-thick, r.At
			if r.Side == frame.Right {
				x0, x1 = r.At, r.At+thick
			}
			wallBreak(v.Flat(geom.P(x0, w.y0)), v.Flat(geom.P(x1, w.y0)))
		}
	}
}

// hatchWall hatches the walls where they are cut, if they show what they are made
// of and are wide enough on the paper to show it.
func (m *maker) hatchWall(p *page, v *draw.View, w wallPlan) {
	const least = 1.4 // mm on paper: in a thinner wall a hatch is a blot
	for _, c := range w.solid {
		flat := [][]geom.Pt{flatten(v, c.region.Outer)}
		for _, hole := range c.region.Holes {
			flat = append(flat, flatten(v, hole))
		}
		if b := draw.Bounds(flat[0]...); min(b.W(), b.H()) >= least {
			w.hatchHouse(p.sheet, c.body, flat)
		}
	}
}

// drawFascia draws the fascia that the plate is fixed to, above the cut.
func (m *maker) drawFascia(p *page, v *draw.View, w wallPlan) {
	f := m.job.Wall.Fascia
	if f.Depth == 0 {
		return
	}
	x0, x1 := max(w.x0, m.job.Wall.From), min(w.x1, m.job.Wall.To)
	for _, y := range []float64{0, f.Thickness} {
		if y == 0 || f.Thickness*v.Scale >= minGap {
			p.sheet.Line(light(draw.Dashed), v.Flat(geom.P(x0, y)), v.Flat(geom.P(x1, y)))
		}
	}
}

// drawStuds draws the studs in the wall, as ticks where the scale is too small
// for their two sides; dashed over openings, where the cut does not meet them.
func (m *maker) drawStuds(p *page, v *draw.View, w wallPlan) {
	j := m.job
	half := j.Wall.StudWidth / 2
	if half*2*v.Scale < minGap {
		half = 0
	}
	for _, x := range j.Wall.Studs {
		if x-half < max(w.x0, j.Wall.From) || x+half > min(w.x1, j.Wall.To) {
			continue
		}
		style, y0, y1 := light(draw.Solid), j.Wall.Grip(), w.back
		if e := j.Wall.Fascia.Eave; e > 0 { // the house's rafters, above the cut
			style, y1 = light(draw.Dashed), e
		}
		for _, o := range j.Wall.Openings {
			if x > o.From && x < o.To {
				style = light(draw.Dashed)
			}
		}
		for _, side := range []float64{-half, half} {
			p.sheet.Line(style, v.Flat(geom.P(x+side, y0)), v.Flat(geom.P(x+side, y1)))
			if half == 0 {
				break
			}
		}
	}
}
