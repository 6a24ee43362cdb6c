package sheets

import (
	"fmt"

	"plumbcut/draw"
	"plumbcut/geom"
)

// cutBackWalling is cladding that is cut back to the frame behind the plate.
func cutBackWalling() walling {
	w := studWalling()
	w.find = func(m *maker) string {
		c := m.job.Wall.CutBack
		return fmt.Sprintf("Cut the cladding back to the frame from %s above the plate to %s below it and %s beyond its ends. Look at what is behind: the studs, the wrap, any rot. Keep it dry from now on.",
			m.said(c.Above), m.said(c.Below), m.said(c.Ends))
	}
	w.drive = func(m *maker) string {
		return fmt.Sprintf("Drive a screw Ø%s at each, into the stud. Flash over the plate and seal the frame as stated (flashing: %s) before the next rain.", m.saidFine(m.job.Plate.Fixing.Screw), stated(m.job.Wall.Flashing))
	}
	w.care = "Into confirmed studs only, no nails. Who answers for keeping the weather out of the wall sees it before it is closed."
	w.caution = "The cladding is cut back and the plate fixed to the frame of the house, with screws or bolts into confirmed studs, never with nails. How the wall is flashed, wrapped and sealed again is for a licensed person to state and see."
	w.clad = "Cladding cut back to the frame; its cut edges sealed as stated"
	w.beyond = func(f plateFixed) (below, above float64) {
		c := f.job.Wall.CutBack
		return c.Below, c.Above + 2*closeMargin
	}
	w.over = plateFixed.flashing
	w.first = func(f plateFixed, n *draw.NoteColumn) {
		n.Add("Flashing, its place only: "+stated(f.job.Wall.Flashing), f.flashed()[2])
	}
	w.asks = []string{
		"Is the cladding to be cut back, or does local practice take a plate fixed through it?",
		"Who states the flashing, the wrap behind the plate and how the cladding ends above and below it?",
	}
	return w
}

// flashing draws the flashing over a plate behind which the cladding is cut
// back: up behind the cladding, out over the plate, down before its face. It
// shows the place, not the shape.
func (f plateFixed) flashing(p *page, v *draw.View) {
	s := draw.Style{Layer: draw.Outline, Pen: draw.Middle}
	var line []geom.Pt
	for _, q := range f.flashed() {
		line = append(line, v.Pt(q))
	}
	p.sheet.Line(s, line...)
}

// flashed are the corners of the flashing.
func (f plateFixed) flashed() []geom.Vec {
	const over, off, lap, drip = 6, 5, 60, 25 // mm of the model
	clad := f.clad()
	top := f.high + f.job.Wall.CutBack.Above + lap
	return []geom.Vec{
		f.at(clad-off, top), f.at(clad-off, f.high+2*over), f.at(f.outer-off, f.high+over), f.at(f.outer-off, f.high-drip),
	}
}
