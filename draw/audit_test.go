package draw

import (
	"strings"
	"testing"

	"plumbcut/geom"
)

// note is a text of the notes at a place.
func note(s string, x, y float64) Text {
	return Text{Layer: Notes, At: geom.P(x, y), Height: 2.5, String: s}
}

// picture draws a box that marks can name, 40 mm square, its bottom left at
// 100, 100.
func picture(s *Sheet) {
	p := PolygonPath(Style{Layer: Outline, Pen: Middle}, Rect{100, 100, 140, 140}.Corners())
	p.ID = "P1"
	s.Add(p)
}

// dim records a dimension over the lower edge of the picture, 400 mm of the
// model at 1:10, and letters its figure.
func dim(s *Sheet, change func(*Placed)) {
	v := front(0.1, geom.P(100, 100))
	d := Placed{
		Dim:  Dim{View: v, A: geom.V(0, 0, 0), B: geom.V(400, 0, 0), Along: geom.V(1, 0, 0)},
		Kind: SingleDim, Figure: "400", P: geom.P(100, 90), Q: geom.P(140, 90),
		Box: Rect{118, 91, 122, 93.5},
	}
	s.AddText(Text{Layer: Dimension, At: geom.P(120, 91), Align: Centred, Height: 2.5, String: "400"})
	change(&d)
	s.Dims = append(s.Dims, d)
}

// Each rule fires on the fault that it is for, once, and on nothing else.
func TestAuditRules(t *testing.T) {
	tests := []struct {
		name string
		rule Rule // empty: no finding
		draw func(*Sheet)
	}{
		{"nothing", "", func(s *Sheet) {}},
		{"texts 1 mm apart", "", func(s *Sheet) {
			s.AddText(note("ABC", 50, 50))
			s.AddText(note("DEF", 50, 53.6))
		}},
		{"texts too near", RuleTextOnText, func(s *Sheet) {
			s.AddText(note("ABC", 50, 50))
			s.AddText(note("DEF", 50, 53.3))
		}},
		{"one text within another", RuleTextOnText, func(s *Sheet) {
			s.AddText(Text{Layer: Notes, At: geom.P(50, 50), Height: 7, String: "WWW"})
			s.AddText(note("a", 55, 52))
		}},
		{"sloped texts whose boxes overlap but whose ink does not", "", func(s *Sheet) {
			a, b := note("ABCDEFGH", 50, 50), note("ABCDEFGH", 50, 56)
			a.Turn, b.Turn = 0.7, 0.7
			s.AddText(a)
			s.AddText(b)
		}},
		{"sloped texts too near", RuleTextOnText, func(s *Sheet) {
			a, b := note("ABCDEFGH", 50, 50), note("ABCDEFGH", 50, 54)
			a.Turn, b.Turn = 0.7, 0.7
			s.AddText(a)
			s.AddText(b)
		}},
		{"an edge through a text", RuleTextOnEdge, func(s *Sheet) {
			s.AddText(note("ABC", 50, 50))
			s.Line(Style{Layer: Outline, Pen: Wide}, geom.P(40, 51), geom.P(70, 51))
		}},
		{"a line too near a text", RuleTextOnLine, func(s *Sheet) {
			s.AddText(note("ABC", 50, 50))
			s.Line(narrow(Outline), geom.P(40, 49.5), geom.P(70, 49.5))
		}},
		{"a narrow line and an edge through a text", RuleTextOnEdge, func(s *Sheet) {
			s.AddText(note("ABC", 50, 50))
			s.Line(narrow(Outline), geom.P(40, 51), geom.P(70, 51))
			s.Line(Style{Layer: Outline, Pen: Middle}, geom.P(52, 40), geom.P(52, 60))
		}},
		{"a line near enough", "", func(s *Sheet) {
			s.AddText(note("ABC", 50, 50))
			s.Line(narrow(Outline), geom.P(40, 49.3), geom.P(70, 49.3))
		}},
		{"a curve through a text", RuleTextOnLine, func(s *Sheet) {
			s.AddText(note("ABC", 50, 50))
			s.Circle(narrow(Outline), geom.P(52, 31), 20)
		}},
		{"a dark fill over a text", RuleTextOnEdge, func(s *Sheet) {
			s.AddText(note("ABC", 50, 50))
			s.arrowhead(Notes, geom.P(52, 51), geom.P(1, 0))
		}},
		{"a line that a white ground hides", "", func(s *Sheet) {
			s.Line(narrow(Hatch), geom.P(40, 51), geom.P(70, 51))
			s.FillPolygon(Notes, 0, Rect{48, 48, 60, 54}.Corners())
			s.AddText(note("ABC", 50, 50))
		}},
		{"a line over a white ground", RuleTextOnLine, func(s *Sheet) {
			s.FillPolygon(Notes, 0, Rect{48, 48, 60, 54}.Corners())
			s.Line(narrow(Notes), geom.P(40, 51), geom.P(70, 51))
			s.AddText(note("ABC", 50, 50))
		}},
		{"a text over the frame", RuleOutside, func(s *Sheet) { s.AddText(note("ABC", 18, 50)) }},
		{"a line past the frame", RuleOutside, func(s *Sheet) {
			s.Line(narrow(Outline), geom.P(50, 50), geom.P(50, 5))
		}},
		{"a small text", RuleSmallText, func(s *Sheet) {
			s.AddText(Text{Layer: Notes, At: geom.P(50, 50), Height: 2, String: "ABC"})
		}},
		{"a dimension", "", func(s *Sheet) { dim(s, func(*Placed) {}) }},
		{"a typed figure", RuleDimFigure, func(s *Sheet) {
			dim(s, func(d *Placed) { d.B.X = 401; d.Q.X = 140.1 })
		}},
		{"a dimension not to scale", RuleDimLength, func(s *Sheet) {
			dim(s, func(d *Placed) { d.Q.X = 140.02 })
		}},
		{"a dimension over a break", "", func(s *Sheet) {
			dim(s, func(d *Placed) { breakView(d); d.Q.X = d.View.Pt(d.B).X })
		}},
		{"a dimension over a break that ends elsewhere", RuleDimPlace, func(s *Sheet) {
			dim(s, func(d *Placed) { breakView(d); d.Q.X = d.View.Pt(d.B).X + 1 })
		}},
		{"a dimension that overlooks a break", RuleDimPlace, func(s *Sheet) {
			dim(s, breakView)
		}},
		{"a dimension beside its points", RuleDimPlace, func(s *Sheet) {
			dim(s, func(d *Placed) { d.P.X += 5; d.Q.X += 5 })
		}},
		{"a dimension without a figure", RuleDimUnwritten, func(s *Sheet) {
			dim(s, func(d *Placed) { d.Box = d.Box.Move(geom.P(30, 0)) })
		}},
		{"an arrow on an edge", "", func(s *Sheet) {
			picture(s)
			s.Marks = append(s.Marks, Mark{Kind: NoteMark, Label: "post", Leader: pts(160, 130, 140.3, 120)})
		}},
		{"an arrow that stops short", RuleLeaderEnd, func(s *Sheet) {
			picture(s)
			s.Marks = append(s.Marks, Mark{Kind: NoteMark, Label: "post", Leader: pts(160, 130, 141, 120)})
		}},
		{"a dot inside", "", func(s *Sheet) {
			picture(s)
			s.Marks = append(s.Marks, Mark{Kind: PartMark, Label: "P1", Inside: true, ID: "P1", Leader: pts(160, 130, 120, 120)})
		}},
		{"a dot beside", RuleLeaderEnd, func(s *Sheet) {
			picture(s)
			s.Marks = append(s.Marks, Mark{Kind: PartMark, Label: "P1", Inside: true, Leader: pts(160, 130, 150, 120)})
		}},
		{"a dot in another member", RuleLeaderEnd, func(s *Sheet) {
			picture(s)
			s.Add(Path{ID: "B1", Stroke: true, Segs: LinePath(narrow(Outline), geom.P(200, 100), geom.P(210, 100)).Segs})
			s.Marks = append(s.Marks, Mark{Kind: PartMark, Label: "B1", Inside: true, ID: "B1", Leader: pts(160, 130, 120, 120)})
		}},
		{"leaders that cross", RuleLeaderCross, func(s *Sheet) {
			picture(s)
			s.Marks = append(s.Marks,
				Mark{Kind: NoteMark, Label: "a", Leader: pts(160, 130, 140, 110)},
				Mark{Kind: NoteMark, Label: "b", Leader: pts(160, 110, 140, 130)})
		}},
		{"leaders to one point", "", func(s *Sheet) {
			picture(s)
			s.Marks = append(s.Marks,
				Mark{Kind: NoteMark, Label: "a", Leader: pts(160, 130, 140, 110)},
				Mark{Kind: NoteMark, Label: "b", Leader: pts(160, 110, 140, 110)})
		}},
	}
	h := hand("A3")
	for _, test := range tests {
		s := &Sheet{Number: "A07", Paper: h.Paper}
		test.draw(s)
		found := s.Audit(h.Figures)
		want := 1
		if test.rule == "" {
			want = 0
		}
		if len(found) != want || want == 1 && found[0].Rule != test.rule {
			t.Errorf("%s: found %v, want %q", test.name, found, test.rule)
		}
	}
}

func TestLineGaps(t *testing.T) {
	tests := []struct {
		name string
		rule Rule
		b    [4]float64 // a second line beside one from 50, 50 to 90, 50
	}{
		{"0.7 mm apart", "", [4]float64{50, 50.7, 90, 50.7}},
		{"too close", RuleLinesClose, [4]float64{90, 50.6, 50, 50.6}},
		{"not side by side", "", [4]float64{90, 50.6, 120, 50.6}},
		{"crossing", "", [4]float64{60, 40, 60, 60}},
		{"drawn twice", RuleLinesDouble, [4]float64{60, 50, 70, 50}},
		{"in one line", "", [4]float64{90, 50, 120, 50}},
	}
	h := hand("A3")
	for _, test := range tests {
		s := &Sheet{Number: "A07", Paper: h.Paper}
		s.Line(narrow(Outline), geom.P(50, 50), geom.P(90, 50))
		s.Line(narrow(Outline), pts(test.b[:]...)...)
		found := s.LineGaps()
		if test.rule == "" && len(found) > 0 || test.rule != "" && (len(found) != 1 || found[0].Rule != test.rule) {
			t.Errorf("%s: found %v, want %q", test.name, found, test.rule)
		}
	}
}

func TestAuditMarksAcrossSheets(t *testing.T) {
	h := hand("A3")
	mark := func(kind MarkKind, label, sheet string) Mark {
		return Mark{Kind: kind, Label: label, Sheet: sheet, Leader: pts(50, 50, 60, 60)}
	}
	tests := []struct {
		name         string
		first, other []Mark
		want         string
	}{
		{"both ways", []Mark{mark(SectionMark, "A", "A04")}, []Mark{mark(TitleMark, "A", "A04")}, ""},
		{"no such view", []Mark{mark(DetailMark, "2", "A04")}, nil, "mark leads nowhere: detail mark 2 to sheet A04"},
		{"no such sheet", []Mark{mark(DetailMark, "2", "A09")}, []Mark{mark(TitleMark, "", "A04")}, "mark leads nowhere: detail mark 2 to sheet A09"},
		{"nothing leads there", nil, []Mark{mark(TitleMark, "3", "A04")}, "no mark leads to the view: view title 3"},
		{"a view without a letter", nil, []Mark{mark(TitleMark, "", "A04")}, ""},
	}
	for _, test := range tests {
		set := &Set{Sheets: []*Sheet{
			{Number: "A02", Paper: h.Paper, Marks: test.first},
			{Number: "A04", Paper: h.Paper, Marks: test.other},
		}}
		var got []string
		for _, f := range set.Audit(h.Figures) {
			got = append(got, string(f.Rule)+": "+f.What)
		}
		if strings.Join(got, "; ") != test.want {
			t.Errorf("%s: %q, want %q", test.name, got, test.want)
		}
	}
}

func TestFindingString(t *testing.T) {
	f := Finding{RuleTextOnText, "A02", geom.P(123.4, 56.7), `"a" and "b"`}
	if got, want := f.String(), `sheet A02 at 123, 57: text nearer than 1 mm to text: "a" and "b"`; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// breakView leaves 200 mm out of the view of a dimension.
func breakView(d *Placed) {
	v := *d.View
	v.Breaks = []Break{{From: 100, To: 300}}
	d.View = &v
}
