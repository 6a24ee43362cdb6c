package frame

import "plumbcut/geom/frame/keys"

func (d *draft) templateFields() keys.Group {
	t := &d.Templates
	return keys.Group{
		Choices: []keys.Choice{{Keys: []string{"paper", "roll"}}},
		Fields: []keys.Field{
			{Key: "paper", Is: keys.Word(&t.Paper, "A4", "A3", "A2", "A1", "Letter", "Tabloid", ansiB), Also: []string{"size"},
				Else: "A4, or Letter where the drawings are on paper of that family", Doc: "Paper that the printer takes; it prints upright."},
			{Key: "roll", Is: keys.Length(&t.Roll, keys.Between(250, 1600)), Doc: "Or the width of a roll, from which pages are cut as long as they need be."},
			{Key: "margin", Is: keys.Length(&t.Margin, keys.Between(0, 15)), Def: "6 mm", Habit: true, Also: []string{"border"},
				Doc: "What the printer cannot print on along each edge."},
			{Key: "overlap", Is: keys.Length(&t.Overlap, keys.Between(5, 40)), Def: "12 mm", Habit: true, Also: []string{"glue"},
				Doc: "How far two pages overlap where a template does not fit one page."},
		}}
}

func (d *draft) printerFields() keys.Group {
	p := &d.Printer
	return keys.Group{Fields: []keys.Field{
		{Key: "x", Is: keys.Length(&p.X, barSpan()), Def: "150 mm", Doc: "Measured length of the 150 mm check bar across the page."},
		{Key: "y", Is: keys.Length(&p.Y, barSpan()), Def: "150 mm", Doc: "Measured length of the 150 mm check bar up the page."},
	}}
}

// barSpan is what a check bar may measure. A printer farther off is not
// printing at 100 %, and a correction would only hide that.
func barSpan() keys.Span { return keys.Between(145, 155) }
