package frame

// TemplateChoice says what the full-size templates are printed on.
type TemplateChoice struct {
	Paper   string  // a name that draw.PaperByName knows; empty: a roll
	Roll    float64 // its width; 0: sheets
	Margin  float64 // that the printer cannot print on, along each edge
	Overlap float64 // of two pages of one template
}

// CheckBar is the true length of the check bars on each page of templates.
const CheckBar = 150

// Printer is what the check bars of a first print measured, across the page and
// up it. CheckBar means that nothing is to be corrected.
type Printer struct{ X, Y float64 }

// Corrects reports whether the templates are drawn for one printer alone.
func (p Printer) Corrects() bool { return p.X != CheckBar || p.Y != CheckBar }
