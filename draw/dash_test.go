package draw

import (
	"math"
	"testing"

	"plumbcut/geom"
)

func a3() Paper {
	p, _ := PaperByName("A3")
	return p
}

// ISO 128-21 fits a dashed line by n = round((l−12d)/15d) and dash =
// (l−3dn)/(n+1) (formula from memory). By arithmetic a line of 125 mm with
// d = 0.35 has n = 23 and a dash of 4.202 mm.
func TestDashFit(t *testing.T) {
	got := Dashes(Style{Pen: Middle, Dash: Dashed}, a3(), 125)
	if len(got) != 2 || math.Abs(got[0]-4.202) > 5e-4 || math.Abs(got[1]-1.05) > 1e-9 {
		t.Errorf("Dashes = %v, want 4.202 and 1.05", got)
	}
}

func TestDashesEndOnInk(t *testing.T) {
	for _, dash := range []Dash{Dashed, Chain} {
		for _, pen := range []Pen{Narrow, Middle, Wide} {
			for length := 0.0; length < 300; length += 0.37 {
				pattern := Dashes(Style{Pen: pen, Dash: dash}, a3(), length)
				if pattern == nil {
					continue
				}
				period := 0.0
				for _, v := range pattern {
					if v <= 0 {
						t.Fatalf("dash %d, %g mm: pattern %v", dash, length, pattern)
					}
					period += v
				}
				// Whole periods and one more stroke of ink make up the length.
				n := (length - pattern[0]) / period
				if math.Abs(n-math.Round(n)) > 1e-6 {
					t.Fatalf("dash %d, %g mm: pattern %v does not end on ink", dash, length, pattern)
				}
			}
		}
	}
}

func TestShortBrokenLineIsSolid(t *testing.T) {
	d := a3().LineWidth(Narrow)
	for _, c := range []struct {
		dash   Dash
		length float64 // in line widths
		solid  bool
	}{{Solid, 1000, true}, {Dashed, 11, true}, {Dashed, 30, false}, {Chain, 23, true}, {Chain, 60, false}, {Dashed, math.NaN(), true}} {
		got := Dashes(Style{Dash: c.dash}, a3(), c.length*d)
		if (got == nil) != c.solid {
			t.Errorf("dash %d over %g widths: %v, solid should be %v", c.dash, c.length, got, c.solid)
		}
	}
}

func TestBrokenLineIsCutAtCorners(t *testing.T) {
	st := Style{Dash: Dashed}
	square := PolygonPath(st, Rect{0, 0, 30, 20}.Corners())
	strokes := square.Strokes(a3())
	if len(strokes) != 4 {
		t.Fatalf("a square has %d strokes, want 4", len(strokes))
	}
	for i, want := range []float64{30, 20, 30, 20} {
		got := strokes[i]
		if got.Closed || len(got.Segs) != 2 || got.Segs[1].To.Sub(got.Segs[0].To).Len() != want || got.Pattern == nil {
			t.Errorf("side %d: %+v, want one dashed line of %g mm", i, got, want)
		}
	}
	circle := CirclePath(st, geom.P(0, 0), 10)
	if got := circle.Strokes(a3()); len(got) != 1 {
		t.Errorf("a circle has %d strokes, want 1", len(got))
	}
	if got := LinePath(st, geom.P(0, 0), geom.P(9, 0), geom.P(18, 1)).Strokes(a3()); len(got) != 1 {
		t.Errorf("a slight bend cuts the line into %d", len(got))
	}
	solid := PolygonPath(Style{}, Rect{0, 0, 30, 20}.Corners())
	if got := solid.Strokes(a3()); len(got) != 1 || !got[0].Closed {
		t.Errorf("a solid square has strokes %+v, want one closed", got)
	}
}
