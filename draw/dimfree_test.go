package draw

import (
	"math"
	"testing"

	"plumbcut/geom"
)

func TestFreeDimensions(t *testing.T) {
	h := hand("A3")
	v := front(0.1, geom.P(100, 100))
	o := geom.V(0, 0, 0)
	tests := []struct {
		name, want string
		draw       func(*Sheet)
	}{
		{"aligned", "500", func(s *Sheet) { Span{View: v, A: o, B: geom.V(300, 0, 400), Offset: 10}.Draw(s, h) }},
		{"aligned, read upside down", "500", func(s *Sheet) { Span{View: v, A: geom.V(300, 0, 400), B: o, Offset: -10}.Draw(s, h) }},
		{"across", "clear 300", func(s *Sheet) {
			Span{View: v, A: o, B: geom.V(300, 0, 400), Dir: Across, Offset: -10, Prefix: "clear "}.Draw(s, h)
		}},
		{"upright", "400", func(s *Sheet) {
			Span{View: v, A: o, B: geom.V(300, 0, 400), Dir: Upright, Offset: 40, AName: "top of post", BName: "top of beam"}.Draw(s, h)
		}},
		{"too narrow", "20", func(s *Sheet) {
			Span{View: v, A: o, B: geom.V(0, 0, 20), Dir: Upright, Offset: -10, AName: "top of plate", BName: "top of beam"}.Draw(s, h)
		}},
		// 3-4-5: the angle at the foot is atan 4/3.
		{"angle", "53.1°", func(s *Sheet) { Angle{View: v, Apex: o, A: geom.V(300, 0, 0), B: geom.V(300, 0, 400)}.Draw(s, h) }},
		{"angle the other way round", "53.1°", func(s *Sheet) { Angle{View: v, Apex: o, A: geom.V(300, 0, 400), B: geom.V(300, 0, 0)}.Draw(s, h) }},
		{"obtuse angle", "126.9°", func(s *Sheet) { Angle{View: v, Apex: o, A: geom.V(-300, 0, 0), B: geom.V(300, 0, 400)}.Draw(s, h) }},
		{"fall as an angle", "2.9° (1:20)", func(s *Sheet) {
			Angle{View: v, Apex: o, A: geom.V(400, 0, 0), B: geom.V(400, 0, -20), Radius: 30, Slope: true}.Draw(s, h)
		}},
		{"fall", "fall 2.9° (1:20)", func(s *Sheet) { Fall{View: v, A: o, B: geom.V(600, 0, 30), Offset: 4, Prefix: "fall "}.Draw(s, h) }},
		{"radius", "R60", func(s *Sheet) { NewPlacer(s, h).Arc(v, o, geom.V(60, 0, 0), false) }},
		{"hole", "Ø24", func(s *Sheet) { NewPlacer(s, h).Arc(v, o, geom.V(0, 0, 12), true) }},
		{"level", "+400  top of beam", func(s *Sheet) { NewPlacer(s, h).Level(v, geom.V(300, 0, 400), "top of beam") }},
	}
	for _, test := range tests {
		s := &Sheet{Number: "T", Paper: h.Paper}
		test.draw(s)
		if len(s.Dims) != 1 || s.Dims[0].Figure != test.want {
			t.Errorf("%s: %+v, want %q", test.name, s.Dims, test.want)
			continue
		}
		for _, f := range s.Audit(h.Figures) {
			if f.Rule != RuleLeaderEnd { // there is no picture
				t.Errorf("%s: %v", test.name, f)
			}
		}
		for _, it := range s.Items {
			if it.Text != nil && (it.Text.Turn <= -math.Pi/2 || it.Text.Turn > math.Pi/2) {
				t.Errorf("%s: %q is turned by %g, read from above or from the left", test.name, it.Text.String, it.Text.Turn)
			}
		}
	}
}

// Figures read from below and from the right (ISO 129-1:2018, as seen at
// ulstandardspdf.com/iso-129-1-2018-pdf-free.html).
func TestReadable(t *testing.T) {
	tests := []struct {
		dir  geom.Pt
		want float64 // degrees
	}{
		{geom.P(1, 0), 0}, {geom.P(-1, 0), 0}, {geom.P(0, 1), 90}, {geom.P(0, -1), 90},
		{geom.P(1, 1), 45}, {geom.P(-1, -1), 45}, {geom.P(1, -1), -45}, {geom.P(-1, 1), -45},
		{geom.P(1e-7, -1), 90}, {geom.P(-1, 1e-7), 0}, // as good as plumb and level
	}
	for _, test := range tests {
		if got := turnOf(readable(test.dir)) * 180 / math.Pi; math.Abs(got-test.want) > 1e-9 {
			t.Errorf("a text along %v is turned by %g°, want %g°", test.dir, got, test.want)
		}
	}
}

// A span moves out until its words are free.
func TestPlacerSpan(t *testing.T) {
	h := hand("A3")
	s := &Sheet{Number: "T", Paper: h.Paper}
	v := front(0.1, geom.P(100, 100))
	s.AddText(note("IN THE WAY", 110, 111))
	NewPlacer(s, h).Span(Span{View: v, A: geom.V(0, 0, 0), B: geom.V(400, 0, 0), Dir: Across, Offset: 10})
	if got := s.Dims[0].P.Y; got <= 112 {
		t.Errorf("the span stands at %g, in the way of a text", got)
	}
	for _, f := range s.Audit(h.Figures) {
		t.Error(f)
	}
}

// A fall and an angle move to where their words touch nothing.
func TestPlacerFallAndAngle(t *testing.T) {
	h := hand("A3")
	s := &Sheet{Number: "T", Paper: h.Paper}
	v := front(0.1, geom.P(100, 100))
	a, b := geom.V(0, 0, 100), geom.V(1000, 0, 50)
	s.Line(narrow(Outline), v.Pt(a), v.Pt(b))
	s.AddText(note("IN THE WAY", 145, 113))
	p := NewPlacer(s, h)
	p.Fall(Fall{View: v, A: a, B: b, Offset: 4})
	p.Fall(Fall{View: v, A: a, B: b, Offset: 4})
	p.Angle(Angle{View: v, Apex: a, A: geom.V(1000, 0, 100), B: geom.V(0, 0, 1000)})
	p.Angle(Angle{View: v, Apex: a, A: geom.V(1000, 0, 100), B: geom.V(0, 0, 1000)})
	if len(s.Dims) != 4 {
		t.Fatalf("%d dimensions, want 4", len(s.Dims))
	}
	for _, f := range s.Audit(h.Figures) {
		t.Error(f)
	}
}

// A section mark looks the way that the section does, and its letter and sheet
// stand at both ends.
func TestSectionMark(t *testing.T) {
	h := hand("A3")
	plan := &View{Axes: geom.Plan(), Scale: 1.0 / 50, At: geom.P(150, 150)}
	for _, test := range []struct {
		look geom.Vec
		want geom.Pt
	}{
		{geom.V(1, 0, 0), geom.P(1, 0)}, {geom.V(-1, 0, 0), geom.P(-1, 0)},
	} {
		c := Section{View: plan, A: geom.V(0, -1000, 0), B: geom.V(0, 1000, 0), Look: test.look, Letter: "A", Sheet: "A04"}
		if got := (cutLine{c, plan.Pt(c.A), plan.Pt(c.B)}).look(); got != test.want {
			t.Errorf("looking along %v the arrow points along %v", test.look, got)
		}
		s := &Sheet{Number: "T", Paper: h.Paper}
		c.Draw(s)
		letters := 0
		for _, it := range s.Items {
			if it.Text != nil && it.Text.String == "A" && it.Text.Link == "A04" {
				letters++
			}
		}
		if letters != 2 || len(s.Marks) != 2 || s.Marks[0].Sheet != "A04" {
			t.Errorf("%d letters, marks %+v", letters, s.Marks)
		}
		for _, f := range s.Audit(h.Figures) {
			t.Error(f)
		}
	}
}

func TestViewTitle(t *testing.T) {
	h := hand("A3")
	v := front(1.0/50, geom.P(100, 100))
	for _, title := range []Title{
		{View: v, Name: "Front elevation", Note: "seen standing outside, facing the house"},
		{View: v, Label: "A", Name: "Section"}, {View: v, Label: "3", Name: "Joint", NoBar: true},
	} {
		s := &Sheet{Number: "T", Paper: h.Paper}
		title.Draw(s, h, geom.P(60, 200))
		w, d := title.Size(h)
		room := Rect{60, 200 - d, 60 + w, 200}
		for _, it := range s.Items {
			if it.Text != nil && !room.Expand(1).Encloses(it.Text.Box()) || it.Path != nil && !room.Expand(0.01).Encloses(it.Path.Bounds()) {
				t.Errorf("%s: something stands outside %v", title.Name, room)
			}
		}
		for _, f := range append(s.Audit(h.Figures), s.LineGaps()...) {
			if f.Rule != RuleLinesDouble { // the cells of the scale bar and its edge
				t.Errorf("%s: %v", title.Name, f)
			}
		}
		if s.Marks[0].Label != title.Label || s.Marks[0].Sheet != "T" {
			t.Errorf("recorded as %+v", s.Marks[0])
		}
	}
}

// A north point may be turned any way and keeps within its square.
func TestNorth(t *testing.T) {
	h := hand("A3")
	for deg := 0; deg < 360; deg += 15 {
		s := &Sheet{Number: "T", Paper: h.Paper}
		box := s.North(geom.P(100, 100), float64(deg)*math.Pi/180)
		if !around(geom.P(100, 100), NorthSize/2).Encloses(box) {
			t.Errorf("%d°: %v passes the square of %g", deg, box, NorthSize)
		}
		for _, f := range s.Audit(h.Figures) {
			t.Errorf("%d°: %v", deg, f)
		}
	}
}
