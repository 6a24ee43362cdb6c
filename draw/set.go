package draw

import "plumbcut/geom"

// Set is the finished drawings of one job, in order.
type Set struct {
	Meta   Meta
	Sheets []*Sheet
}

// Meta is what a file says of itself. It holds no clock: Date comes from the
// job file.
type Meta struct {
	Title, Subject, Author string
	Date                   string // ISO 8601 date, or empty
	JobFile                string // name of the job file
	JobText                []byte // the job file itself, carried inside the PDF
}

// Sheet is one sheet of paper: a list of marks in millimetres from the bottom
// left corner, and a record of what they claim, for the audits.
type Sheet struct {
	Number string // e.g. "A02"
	Title  string
	Paper  Paper
	Items  []Item
	Views  []*View
	Dims   []Placed // every dimension drawn
	Marks  []Mark   // every leader, part mark, section and detail mark
}

// View is a scaled orthographic picture of the model placed on a sheet.
type View struct {
	Name  string
	Axes  geom.View
	Scale float64 // paper ÷ model, 0.02 for 1:50
	Base  geom.Pt // the point of the view plane, model mm …
	At    geom.Pt // … that lies here on the paper
	// Figures writes the figures of the dimensions in this view where they are
	// to be finer than those of the set; nil: the set's.
	Figures Figures
	// Breaks leave plain stretches of long timbers out, in rising order and
	// apart from one another.
	Breaks []Break
}

// Pt is where a model point lies on the paper.
func (v *View) Pt(p geom.Vec) geom.Pt { return v.Flat(v.Axes.Project(p)) }

// Flat is where a point of the view plane, in model millimetres, lies on the
// paper.
func (v *View) Flat(p geom.Pt) geom.Pt {
	q := p.Sub(v.Base).Mul(v.Scale)
	if len(v.Breaks) > 0 {
		q.X = v.across(p.X) - v.across(v.Base.X)
	}
	return q.Add(v.At)
}
