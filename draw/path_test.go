package draw

import (
	"math"
	"testing"

	"plumbcut/geom"
)

func TestBuilders(t *testing.T) {
	var s Sheet
	st := Style{Layer: Outline, Pen: Middle}
	s.Line(st, geom.P(0, 0), geom.P(1, 2), geom.P(3, 0))
	s.Polygon(st, []geom.Pt{geom.P(0, 0), geom.P(4, 0), geom.P(0, 3)})
	s.Circle(st, geom.P(5, 5), 2)
	s.FillPolygon(Hatch, 0.5, Rect{0, 0, 9, 9}.Corners(), Rect{1, 1, 2, 2}.Corners())
	s.Dot(Notes, geom.P(1, 1), 1)
	s.AddText(Text{})
	want := []Rect{{0, 0, 3, 2}, {0, 0, 4, 3}, {3, 3, 7, 7}, {0, 0, 9, 9}, {0, 0, 2, 2}}
	if len(s.Items) != len(want) {
		t.Fatalf("%d marks, want %d: an empty text draws nothing", len(s.Items), len(want))
	}
	for i, item := range s.Items {
		if got := item.Path.Bounds(); !got.Expand(flatness).Encloses(want[i]) || !want[i].Expand(1e-9).Encloses(got) {
			t.Errorf("mark %d: bounds %v, want %v", i, got, want[i])
		}
	}
	if !(Path{}).Bounds().Empty() {
		t.Error("the zero path has bounds")
	}
	loops := s.Items[3].Path.Flatten()
	if len(loops) != 2 || loops[1][0] != loops[1][4] {
		t.Errorf("Flatten of two squares = %v, want two closed loops", loops)
	}
}

// arcs are circles and ellipses from small to as large as a template.
func arcs() []geom.Arc {
	return []geom.Arc{
		{Centre: geom.P(1, 2), Major: geom.P(0.5, 0), Ratio: 1, End: 2 * math.Pi},
		{Major: geom.P(18, 0), Ratio: 1, Start: 1, End: 2},
		{Major: geom.P(300, 400), Ratio: 1, End: math.Pi},
		{Major: geom.P(30, 40), Ratio: 0.2, Start: 3, End: -2},
		{Major: geom.P(5, 1), Ratio: 3, End: 6},
	}
}

// Every point of the curves must lie on the ellipse, which is checked by its
// equation, not by the code that made it.
func TestBeziersLieOnTheArc(t *testing.T) {
	for _, a := range arcs() {
		from := a.At(a.Start)
		for _, c := range Beziers(a) {
			for i := range 21 {
				u := float64(i) / 20
				v := 1 - u
				p := from.Mul(v * v * v).Add(c[0].Mul(3 * v * v * u)).Add(c[1].Mul(3 * v * u * u)).Add(c[2].Mul(u * u * u))
				if d := offEllipse(a, p); d > bezierError {
					t.Fatalf("arc %+v: a point of the curve is %.4f mm off", a, d)
				}
			}
			from = c[2]
		}
		if end := a.At(a.End); from.Sub(end).Len() > 1e-9 {
			t.Errorf("arc %+v ends at %v, want %v", a, from, end)
		}
	}
}

// offEllipse bounds the distance of p from the ellipse: the radial distance,
// which is never less than the true one.
func offEllipse(a geom.Arc, p geom.Pt) float64 {
	d := p.Sub(a.Centre)
	l := a.Major.Len()
	x, y := d.Dot(a.Major)/l/l, d.Dot(a.Major.Left())/l/l/a.Ratio
	return math.Abs(1-1/math.Hypot(x, y)) * d.Len()
}

func TestFlattenedArcIsWithinFlatness(t *testing.T) {
	for _, a := range arcs() {
		if a.Ratio > 1 {
			continue // the check below holds for the flat side only
		}
		line := ArcPath(Style{}, a).Flatten()[0]
		for i := 1; i < len(line); i++ {
			if d := offEllipse(a, line[i-1].Lerp(line[i], 0.5)); d > flatness+1e-9 {
				t.Errorf("arc %+v: a chord is %.4f mm off", a, d)
				break
			}
		}
	}
}

func TestArcOfNonsenseStaysSmall(t *testing.T) {
	for _, a := range []geom.Arc{{Major: geom.P(1, 0), End: math.NaN()}, {Major: geom.P(1, 0), End: 1e300}, {}} {
		if n := len(Beziers(a)); n < 1 || n > maxPieces {
			t.Errorf("Beziers(%+v) has %d curves", a, n)
		}
	}
}
