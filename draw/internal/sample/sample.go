// Package sample holds the sheets that the writers' tests write, and what
// those tests share. Nothing in the program imports it.
package sample

import (
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
)

// Words are texts that each writer must carry unharmed: markup of all the file
// formats, macrons, fractions, and signs beyond ASCII. The first sheet has
// them.
func Words() []string {
	return []string{
		`Beam <b>&amp;</b> "B1" 'n' (a) \(b\) ]]> %PDF`,
		"Whare kōrero: tūturu ½ ± 3° Ø12 – 4 800",
		"read from the right",
		"on the slope, gjpqy",
	}
}

// Set has an A4 sheet with one of everything and an A3 sheet, in that order,
// which link to each other.
func Set() *draw.Set {
	return &draw.Set{
		Meta: draw.Meta{
			Title: "Kōwhai <arbour> (1)", Subject: "Shop drawings & notes", Author: "Invented Builders",
			Date: "2025-03-14", JobFile: "kōwhai.yaml", JobText: []byte("job: arbour\nposts: 4\n"),
		},
		Sheets: []*draw.Sheet{first(), second()},
	}
}

func style(l draw.Layer, p draw.Pen, d draw.Dash) draw.Style {
	return draw.Style{Layer: l, Pen: p, Dash: d}
}

func paper(name string) draw.Paper {
	p, _ := draw.PaperByName(name)
	return p
}

func rect(x, y, w, h float64) []geom.Pt {
	return draw.Rect{X0: x, Y0: y, X1: x + w, Y1: y + h}.Corners()
}

func first() *draw.Sheet {
	s := &draw.Sheet{Number: "A01", Title: "Plan & <notes>", Paper: paper("A4").Portrait()}
	s.Rect(style(draw.Border, draw.Wide, draw.Solid), s.Paper.Inner())
	lines(s)
	hatches(s)
	turns := []float64{0, 0, math.Pi / 2, 0.4}
	for i, w := range Words() {
		s.AddText(draw.Text{
			Layer: draw.Notes, At: geom.P(40+float64(i)*8, 250-float64(i)*12), Height: 3.5,
			Turn: turns[i], Bold: i == 1, Align: draw.Start, String: w, ID: "words",
		})
	}
	s.FillPolygon(draw.Border, 0.1, rect(30, 275, 45, 6)) // its tone must not run on into the words
	s.AddText(draw.Text{Layer: draw.Border, At: geom.P(190, 20), Align: draw.End, Height: 5, String: "see A02", Link: "A02"})
	return s
}

func lines(s *draw.Sheet) {
	outline := style(draw.Outline, draw.Middle, draw.Solid)
	p := draw.LinePath(outline, geom.P(100, 100), geom.P(180, 100), geom.P(180, 101))
	p.ID = "R 1/a"
	s.Add(p)
	s.Add(p)
	s.Line(style(draw.Hidden, draw.Narrow, draw.Dashed), geom.P(30, 30), geom.P(80, 30), geom.P(80, 70))
	s.Polygon(style(draw.Hidden, draw.Narrow, draw.Dashed), rect(35, 40, 20, 15))
	s.Line(style(draw.Centre, draw.Narrow, draw.Chain), geom.P(30, 90), geom.P(190, 90))
	s.Circle(outline, geom.P(150, 150), 30)
	s.Circle(style(draw.Hidden, draw.Narrow, draw.Dashed), geom.P(150, 150), 20)
	s.Arc(outline, geom.Arc{Centre: geom.P(150, 150), Major: geom.P(15, 15), Ratio: 0.5, End: 4})
	s.Arc(outline, geom.Arc{Centre: geom.P(60, 120), Major: geom.P(0, 12), Ratio: 0.25, Start: 1, End: -2})
	s.Dot(draw.Notes, geom.P(150, 150), 0.8)
}

func hatches(s *draw.Sheet) {
	wide := style(draw.Outline, draw.Wide, draw.Solid)
	for i, m := range []draw.Material{draw.EndGrain, draw.LongGrain, draw.Concrete} {
		loops := [][]geom.Pt{rect(95, 35+float64(i)*18, 30, 15), rect(100, 39+float64(i)*18, 8, 6)}
		s.Hatch(m, loops, 0)
		s.Add(draw.PolygonPath(wide, loops...))
	}
	ground := []geom.Pt{geom.P(130, 40), geom.P(160, 40), geom.P(195, 32)}
	s.Line(wide, ground...)
	s.Hatch(draw.Earth, [][]geom.Pt{ground}, 0)
	s.FillPolygon(draw.Hatch, 0.6, rect(135, 50, 25, 20), rect(140, 55, 8, 8))
}

func second() *draw.Sheet {
	s := &draw.Sheet{Number: "A02", Title: "Details", Paper: paper("A3")}
	s.Rect(style(draw.Border, draw.Wide, draw.Solid), s.Paper.Inner())
	s.AddText(draw.Text{Layer: draw.Notes, At: geom.P(100, 100), Height: 7, Bold: true, String: "Details", Link: "A01"})
	return s
}

// Busy is an A3 sheet with 5000 lines and 500 texts, half of them turned.
func Busy() *draw.Set {
	s := &draw.Sheet{Number: "A01", Title: "Busy", Paper: paper("A3")}
	for i := range 5000 {
		x, y := 25+float64(i%100)*3.8, 15+float64(i/100)*5.3
		st := style(draw.Layer(i%6), draw.Pen(i%3), draw.Dash(i%10/9))
		s.Line(st, geom.P(x, y), geom.P(x+3.1, y+float64(i%7)))
	}
	for i := range 500 {
		s.AddText(draw.Text{
			Layer: draw.Dimension, At: geom.P(25+float64(i%20)*18, 15+float64(i/20)*10.5), Height: 2.5,
			Turn: float64(i%2) * math.Pi / 2, Align: draw.Align(i % 3), String: "4 800 rafter R1",
		})
	}
	return &draw.Set{Sheets: []*draw.Sheet{s}}
}
