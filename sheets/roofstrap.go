package sheets

import (
	"fmt"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// hasRoofStraps reports whether straps cross the rafters.
func (m *maker) hasRoofStraps() bool { return len(m.frame.Setout.RoofStraps) > 0 }

// drawRoofStraps draws the middle lines of the straps in a view from above.
func (m *maker) drawRoofStraps(p *page, v *draw.View) {
	for _, run := range m.frame.Setout.RoofStraps {
		p.sheet.Line(draw.Style{Layer: draw.Centre, Dash: draw.Chain}, v.Pt(run.From), v.Pt(run.To))
	}
}

// roofStrapMarks name each strap on the framing plan; alike ones once.
func (m *maker) roofStrapMarks(p *page, v *draw.View) []func() {
	var out []func()
	var order []string
	alike := map[string][]frame.StrapRun{}
	for _, run := range m.frame.Setout.RoofStraps {
		words := m.figures.Length(run.Length)
		if alike[words] == nil {
			order = append(order, words)
		}
		alike[words] = append(alike[words], run)
	}
	for _, words := range order {
		runs := alike[words]
		at := runs[0].From.Lerp(runs[0].To, 0.3) // clear of where the pair crosses
		text := fmt.Sprintf("%s, %s long", count(len(runs), "strap"), words)
		out = append(out, func() {
			p.placer.Label(draw.Label{View: v, At: at, Text: text, Width: detailWords, Toward: geom.P(1, 1)})
		})
	}
	return out
}

// strapSize is a strap's width and thickness.
func (m *maker) strapSize() string {
	r := m.job.RoofStraps
	if r.Thickness == 0 {
		return m.fine(r.Width) + " wide, thickness " + toBeStated
	}
	return m.fine(r.Width) + " × " + m.fine(r.Thickness)
}

// strapEdges names the edges of the rafters that the straps lie on.
func (m *maker) strapEdges() string {
	if m.job.RoofStraps.Under {
		return "undersides"
	}
	return "top edges"
}

// strapPairs say which rafters each pair runs between.
func (m *maker) strapPairs() string {
	runs := m.frame.Setout.RoofStraps
	var out []string
	for i := 0; i < len(runs); i += 2 {
		x := runs[i].Crosses
		out = append(out, fmt.Sprintf("rafters %d and %d", x[0].Rafter, x[len(x)-1].Rafter))
	}
	return joined(out)
}

// strapPlace says where the straps lie.
func (m *maker) strapPlace() string {
	return fmt.Sprintf("crosswise between %s, on the rafters' %s; there their middle lines stand %s from the faces of %s and %s, along the slope",
		m.strapPairs(), m.strapEdges(), m.said(m.job.RoofStraps.Inset), m.rear().Short, m.front().Short)
}

// strapNails says how many nails hold a strap.
func (m *maker) strapNails() string {
	r := m.job.RoofStraps
	return fmt.Sprintf("%s into each of its end rafters and %d into each that it crosses", count(r.EndNails, "nail"), r.Nails)
}

// strapNote says of the straps what the plan does not show.
func (m *maker) strapNote() []string {
	if !m.hasRoofStraps() {
		return nil
	}
	bent := "; its length is along the slope"
	if r := m.job.RoofStraps; r.Past > 0 {
		bent += fmt.Sprintf(", and %s more at each end to bend down the rafter's side", m.said(r.Past))
	}
	return []string{
		fmt.Sprintf("Chain lines across the rafters are flat steel straps, %s: %s. Each has %s%s. Drawn tight by: %s. Straps, nails and what draws them tight are for the designer.",
			m.strapSize(), m.strapPlace(), m.strapNails(), bent, stated(m.job.RoofStraps.Tension)),
	}
}

// strapCaution says what the straps are not.
func (m *maker) strapCaution() []string {
	if !m.hasRoofStraps() {
		return nil
	}
	return []string{"Diagonal straps hold the frame square only in the plane of its slope, and only as their designer has reckoned them with their nails and whatever they pull on. They hold no post upright."}
}

func (m *maker) sayRoofStraps() []string {
	r := m.job.RoofStraps
	runs := m.frame.Setout.RoofStraps
	var lengths []string
	seen := map[string]bool{}
	for _, run := range runs {
		if l := m.said(run.Length); !seen[l] {
			seen[l] = true
			lengths = append(lengths, l)
		}
	}
	bend := "Drive "
	if r.Past > 0 {
		bend = fmt.Sprintf("Bend each down the end rafters' sides by %s, and drive ", m.said(r.Past))
	}
	return []string{
		fmt.Sprintf("Tape both diagonals again; then lay the straps %s.", m.strapPlace()),
		fmt.Sprintf("Cut %s of %s, %s long.", count(len(runs), "strap"), m.fine(r.Width), joined(lengths)),
		bend + m.strapNails() + ".",
		fmt.Sprintf("Draw them tight by: %s; both of a pair alike, and only until neither sags.", stated(r.Tension)),
	}
}

var (
	holdRoofStraps = fixedWords("Both diagonals still measure what they did before the straps: a strap that is drawn too tight pulls the frame out of square.")
	careRoofStraps = fixedWords("The straps' edges cut: gloves. A cut end springs back: hold both parts.")
)

// strapStep pictures the straps on the rafters.
func strapStep() stepView {
	s := pictorialStep(false)
	s.over = func(c *buildCell, p *page) {
		for _, run := range c.frame.Setout.RoofStraps {
			p.sheet.Line(draw.Style{Layer: draw.Outline, Pen: draw.Wide}, c.view.Pt(run.From), c.view.Pt(run.To))
		}
	}
	return s
}
