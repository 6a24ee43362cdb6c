package sheets

import (
	"fmt"
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// hasRoof reports whether sheets cover the battens.
func (m *maker) hasRoof() bool { return len(m.frame.Roof.Parts) > 0 }

// roofPart is the first part of the roof with a name.
func (m *maker) roofPart(name string) (frame.Solid, bool) {
	for _, p := range m.frame.Roof.Parts {
		if p.Name == name {
			return p, true
		}
	}
	return frame.Solid{}, false
}

// sheetName names the sheet as its maker has it.
func (m *maker) sheetName() string {
	look := "solid"
	if m.job.Roof.Clear {
		look = "clear"
	}
	return fmt.Sprintf("%s (%s)", m.job.Roof.Sheet, look)
}

// leastFallWords say what the maker states of the fall.
func (m *maker) leastFallWords() string {
	r := m.job.Roof
	if r.LeastFall == 0 {
		return "least fall " + toBeStated
	}
	words := fmt.Sprintf("least fall %s (%s)", m.figures.Angle(r.LeastFall), m.figures.Slope(r.LeastFall))
	if r.StatedBy == "" {
		return words + ", stated by its maker where " + toBeStated
	}
	return words + ", stated in: " + r.StatedBy
}

// roofSheets is the plan of the roof with what it is made of.
func (m *maker) roofSheets() []draft {
	if !m.hasRoof() {
		return nil
	}
	const title = "Roof plan"
	view, table := m.roofPlan(), &tableBlock{m.roofTable()}
	return m.lay(title, []string{"roof"}, m.scales(planScale), grid{{view, hung{table, view}}}, grid{{view}, {table}})
}

// roofPlan looks down on the roof: its sheets, the gutter and what leads away
// from it.
func (m *maker) roofPlan() *viewBlock {
	r, roof := m.frame.Roof, m.job.Roof
	pic := m.scene.see(look{axes: geom.Plan(), show: func(s *scene, body int) bool {
		h, house := s.house(body)
		part, ok := s.roof(body)
		return ok && part.Name != frame.RoofDownpipe || house && slices.Contains(m.topPieces(), h.Name)
	}})
	pic.bounds = pic.bounds.Intersect(draw.Rect{X0: r.Left - wallMore, X1: r.Right + wallMore, Y0: -far, Y1: m.topBack()})
	pic.all = pic.bounds
	pic.strokes = roofStrokes(m.scene, pic)
	b := newViewIn("Roof plan", pic, m.origin(), pic.bounds)
	b.title.Note = "seen from above; figures run to the sheets' edges as they are seen"
	at := func(x, y float64) geom.Vec { return geom.V(x, y, 0) }
	first, stops := r.Edges[0], []geom.Vec{}
	for _, x := range r.Edges[1:] {
		stops = append(stops, at(x, r.Upper))
	}
	if pitch := m.hand.FigureHeight() + figureGap; float64(len(stops))*pitch > (r.Right-r.Left)*oneSheetScale {
		stops = []geom.Vec{stops[0], stops[len(stops)-2], stops[len(stops)-1]}
	}
	b.Top.Running("sheets", at(first, r.Upper), stops...)
	ys := []geom.Vec{at(r.Right, 0), at(r.Right, r.Upper)}
	name := "gap, sheets"
	if g := roof.Gutter.Section; g.Width > 0 {
		ys = append(ys, at(r.Right, r.Lower), at(r.Right, r.Back-g.Width))
		name += ", gutter beyond"
	} else {
		ys = append(ys, at(r.Right, r.Lower))
	}
	b.Right.Chain(name, ys...)
	var pipes []geom.Vec
	for _, p := range roof.Downpipes {
		pipes = append(pipes, at(p.Along, r.Back-roof.Gutter.Section.Width))
	}
	if len(pipes) > 0 {
		b.Bottom.Running("downpipes", at(r.Left, r.Back-roof.Gutter.Section.Width), pipes...)
	}
	b.Bottom.Overall("", at(r.Left, r.Lower), at(r.Right, r.Lower))
	b.over = func(p *page, v *draw.View) { m.pipeRings(p, v) }
	b.marks = func(p *page, v *draw.View) { m.roofWords(p, v) }
	return b
}

// roofStrokes leaves of the house what is near the roof.
func roofStrokes(s *scene, pic picture) []geom.Stroke {
	var out []geom.Stroke
	for _, st := range pic.strokes {
		if _, ok := s.house(st.Body); ok && st.Arc == nil {
			lo, hi := math.Min(st.A.X, st.B.X), math.Max(st.A.X, st.B.X)
			if st.A.Y != st.B.Y || lo >= pic.bounds.X1 || hi <= pic.bounds.X0 {
				continue
			}
			st.A.X, st.B.X = max(lo, pic.bounds.X0), min(hi, pic.bounds.X1)
		}
		out = append(out, st)
	}
	return out
}

// pipeRings draws the downpipes as they show in the gutter's floor.
func (m *maker) pipeRings(p *page, v *draw.View) {
	for _, d := range m.job.Roof.Downpipes {
		at := m.pipeAt(d)
		p.sheet.Circle(draw.Style{Layer: draw.Outline, Pen: draw.Narrow}, v.Pt(at), d.Size/2*v.Scale)
		crossLine(p, v, at.Sub(geom.V(d.Size/2, 0, 0)), at.Add(geom.V(d.Size/2, 0, 0)))
	}
}

// pipeAt is the middle of a downpipe at the gutter's floor.
func (m *maker) pipeAt(d frame.Downpipe) geom.Vec {
	r, g := m.frame.Roof, m.job.Roof.Gutter.Section
	return geom.V(d.Along, r.Back-g.Width/2, r.Rim-g.Depth)
}

// roofWords names what the plan shows.
func (m *maker) roofWords(p *page, v *draw.View) {
	r, roof := m.frame.Roof, m.job.Roof
	mid := (r.Edges[0] + r.Edges[1]) / 2
	p.placer.Fall(draw.Fall{View: v, A: m.onRoof(mid, r.Courses[len(r.Courses)-1].From), B: m.onRoof(mid, r.Courses[0].To), Prefix: "fall "})
	var words []func()
	label := func(text string, at geom.Vec, way geom.Pt) {
		words = append(words, func() {
			p.placer.Label(draw.Label{View: v, At: at, Text: text, Width: detailWords, Toward: way})
		})
	}
	if g := roof.Gutter.Section; g.Width > 0 {
		label(fmt.Sprintf("gutter %s as stated", m.figures.Size(g.Depth, g.Width)), geom.V(r.Left+(r.Right-r.Left)*0.35, r.Back-g.Width, 0), geom.P(-0.6, -1))
		for i, d := range roof.Downpipes {
			if i == 0 {
				label(fmt.Sprintf("downpipe Ø%s as stated", m.figures.Length(d.Size)), m.pipeAt(d).Sub(geom.V(0, d.Size/2, 0)), geom.P(0.7, -1))
			}
		}
	}
	for k := range r.Courses[:len(r.Courses)-1] {
		label(fmt.Sprintf("end lap of %s, over a batten", m.figures.Length(roof.EndLap)), m.onRoof(r.Edges[0]+(r.Edges[len(r.Edges)-1]-r.Edges[0])*0.7, r.Courses[k+1].To), geom.P(1, 1))
	}
	p.cleanestOrder(words...)
}

// onRoof is a point of the plane of the sheets' undersides, at a place along and
// so far down the slope.
func (m *maker) onRoof(x, down float64) geom.Vec {
	rafter := m.frame.Of(frame.KindRafter)[0]
	y := m.rear().Outer
	o := geom.V(x, y, m.frame.RafterTop(y))
	return o.Add(rafter.Place.U.Mul(down)).Add(rafter.Place.W.Mul(m.frame.BattenTop()))
}

// roofTable lists what the roof is made of.
func (m *maker) roofTable() draw.Table {
	r, roof, f := m.frame.Roof, m.job.Roof, m.figures
	t := draw.Table{Title: "Roof, at the sizes stated", Columns: []draw.Column{{Head: "What", Width: 34}, {Head: "Figure", Width: 56}}}
	add := func(what, figure string) { t.Rows = append(t.Rows, draw.TableRow{Cells: []string{what, figure}}) }
	add("Sheet", m.sheetName())
	thick := toBeStated
	if roof.Thickness > 0 {
		thick = m.fine(roof.Thickness)
	}
	add("Thickness, profile", fmt.Sprintf("%s, %s high over all", thick, m.fine(roof.Profile)))
	add("Width, side lap", fmt.Sprintf("%s, %s", f.Length(roof.Width), f.Length(roof.Lap)))
	for i, c := range r.Courses {
		name := "Sheets"
		if len(r.Courses) > 1 {
			name = fmt.Sprintf("Sheets, row %d from the eave", i+1)
		}
		add(name, fmt.Sprintf("%d, %s long", r.Rows(), f.Length(c.Length())))
	}
	add("Last sheet of a row", fmt.Sprintf("cut to %s wide, at the %s", f.Length(r.Last), opposite(roof.From)))
	add("Past the battens' ends", fmt.Sprintf("%s at the left, %s at the right", f.Length(roof.OverLeft), f.Length(roof.OverRight)))
	add("Past the frame, level", f.Length(roof.Eave))
	add("Fall", fmt.Sprintf("%s; %s", f.Angle(m.frame.Slope.Angle), m.leastFallWords()))
	if g := roof.Gutter.Section; g.Width > 0 {
		add("Gutter, depth × width", fmt.Sprintf("%s, %s long; its rim %s below the sheets' ends", f.Size(g.Depth, g.Width), f.Length(r.Right-r.Left), f.Length(roof.Gutter.Under)))
	}
	for i, d := range roof.Downpipes {
		add(fmt.Sprintf("Downpipe %d", i+1), fmt.Sprintf("Ø%s, foot at %s", f.Length(d.Size), f.Level(d.To)))
	}
	if fl := roof.Flashing; fl.Up > 0 {
		add("Flashing at the wall", fmt.Sprintf("%s up the wall, %s over the sheets", f.Length(fl.Up), f.Length(fl.Over)))
	}
	return t
}

func opposite(s frame.Side) frame.Side {
	if s == frame.Left {
		return frame.Right
	}
	return frame.Left
}

// roofSizes adds what an authority asks of a roof to the key sizes.
func (m *maker) roofSizes(add func(what, figure string)) {
	if !m.hasRoof() {
		return
	}
	r := m.frame.Roof
	add("Roof, area seen from above", m.figures.Area(r.PlanArea()))
	add("Roof, highest edge above ground", m.figures.Length(r.Highest-m.lowestGround()))
}

// roofCautions are said where there is a roof.
func (m *maker) roofCautions() []string {
	if !m.hasRoof() {
		return nil
	}
	return []string{
		"A roof changes what the authorities ask: area, height, distance to boundaries, stormwater, snow and wind loads. Ask before anything is bought; an exemption for an open frame may end here.",
		"Sheets, their fixings, laps and least fall, gutter, downpipe and flashing are as their makers state, and none is sized here. Nobody walks on the sheets.",
	}
}

// roofSaid are the words of its step of work.
func (m *maker) roofSaid() []string {
	r, roof := m.frame.Roof, m.job.Roof
	f := m.said
	out := []string{
		fmt.Sprintf("Check the fall before the first sheet: %s, with a %s.", m.figures.Angle(m.frame.Slope.Angle), m.leastFallWords()),
	}
	if roof.Gutter.Section.Width > 0 {
		out = append(out, fmt.Sprintf("Fix the gutter with its rim %s below where the sheets will end, falling to the downpipe as its maker states.", f(roof.Gutter.Under)))
	}
	out = append(out, fmt.Sprintf("Lay the sheets from the %s, %d side by side, each lapping the one before it by %s; their ends stand %s past the frame and %s clear of the cladding. Cut the last one to %s.",
		roof.From, r.Rows(), f(roof.Lap), f(roof.Eave), f(roof.Gap), f(r.Last)))
	if len(r.Courses) > 1 {
		out = append(out, fmt.Sprintf("Begin each row at the eave; the sheet above laps %s over it, over a batten.", f(roof.EndLap)))
	}
	fix := "Fix at every batten with the screws and washers that the sheet's maker states."
	if fl := roof.Flashing; fl.Up > 0 {
		fix += fmt.Sprintf(" Then the flashing: %s up the wall, behind the cladding or as the wall's maker states, and %s over the sheets.", f(fl.Up), f(fl.Over))
	}
	return append(out, fix)
}

// roofStep pictures the roof as it is laid.
func roofStep() stepView {
	v := pictorialStep(false)
	see := v.see
	v.see = func(m *maker, s stage) picture {
		s.roof = true
		return see(m, s)
	}
	v.marks = func(c *buildCell, p *page) {
		r := c.frame.Roof
		mid := r.Courses[0]
		p.placer.Label(draw.Label{View: c.view, At: c.onRoof((r.Left+r.Right)/2, mid.To-0.3*mid.Length()), Text: fmt.Sprintf("%d sheets", r.Rows()*len(r.Courses)), Toward: geom.P(0.4, 1), Inside: true})
	}
	return v
}

// roofNote names the roof in the section, and what takes its water: at the eave,
// where no detail's mark stands in the way.
func (c *cross) roofNote(out *draw.NoteColumn) {
	if !c.hasRoof() {
		return
	}
	r, roof := c.frame.Roof, c.job.Roof
	words := fmt.Sprintf("roof: %s, %s", c.sheetName(), c.leastFallWords())
	if fl := roof.Flashing; fl.Up > 0 {
		words += fmt.Sprintf("; flashing at the wall %s up and %s over", c.figures.Length(fl.Up), c.figures.Length(fl.Over))
	}
	if g := roof.Gutter.Section; g.Width > 0 {
		words += fmt.Sprintf("; gutter %s", c.figures.Size(g.Depth, g.Width))
		if d := roof.Downpipes; len(d) > 0 {
			words += fmt.Sprintf(", downpipe Ø%s", c.figures.Length(d[0].Size))
		}
	}
	var at []geom.Vec
	for _, part := range []float64{1, 0.99, 0.97, 0.95} {
		top := r.Courses[len(r.Courses)-1]
		q := c.onRoof(c.x, top.From+part*(r.Courses[0].To-top.From))
		at = append(at, q.Add(c.rafter.Place.W.Mul(roof.Profile/2)))
	}
	c.say(out, frame.Member{}, draw.ColumnNote{Text: words, At: at})
}

// roofOnFront names gutter and downpipes in the front elevation.
func (m *maker) roofOnFront(p *page, v *draw.View) {
	r, roof := m.frame.Roof, m.job.Roof
	g := roof.Gutter.Section
	if !m.hasRoof() || g.Width == 0 {
		return
	}
	y := r.Back - g.Width
	name := func(part, text string, at geom.Vec, way geom.Pt) {
		if b, ok := m.roofPart(part); ok {
			if lines := p.linesNamed(v, part, b.Shape); len(lines) > 0 {
				p.placer.Label(draw.Label{View: v, At: nearestPoint(v, at, lines), Text: text, Toward: way})
			}
		}
	}
	name(frame.RoofGutter, "gutter, size as stated", geom.V(r.Left+(r.Right-r.Left)*0.62, y, r.Rim-g.Depth), geom.P(0.5, -1))
	for i, d := range roof.Downpipes {
		if high := r.Rim - g.Depth; i == 0 {
			name(frame.RoofDownpipe, "downpipe Ø"+m.figures.Length(d.Size), geom.V(d.Along+d.Size/2, y, d.To+(high-d.To)*0.4), geom.P(1, 0.6))
		}
	}
}
