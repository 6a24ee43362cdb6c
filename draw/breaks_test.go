package draw

import (
	"fmt"
	"math"
	"testing"

	"plumbcut/geom"
)

// TestBreaks reckons places by hand: at 1:10, with 1000 to 3000 and 4000 to
// 4500 left out, x = 3500 lies at 100 + 3 + 50, x = 5000 at 100 + 3 + 100 + 3 +
// 50 from the start.
func TestBreaks(t *testing.T) {
	v := &View{Scale: 0.1, At: geom.P(20, 50), Axes: geom.Front(), Breaks: []Break{{1000, 3000}, {4000, 4500}}}
	for _, c := range []struct{ x, base, want float64 }{
		{0, 0, 20}, {1000, 0, 120}, {2000, 0, 121.5}, {3000, 0, 123}, {3500, 0, 173}, {5000, 0, 276},
		{-100, 0, 10}, {0, 5000, -236}, {5000, 5000, 20},
	} {
		v.Base = geom.P(c.base, 0)
		if got := v.Flat(geom.P(c.x, 0)).X; math.Abs(got-c.want) > 1e-9 {
			t.Errorf("x = %g with the base at %g lies at %g, want %g", c.x, c.base, got, c.want)
		}
	}
	for _, c := range []struct {
		a, b   float64
		broken bool
		want   string
	}{
		{0, 500, false, "[[(0 0) (500 0)]]"},
		{0, 5000, true, "[[(0 0) (1000 0)] [(3000 0) (4000 0)] [(4500 0) (5000 0)]]"},
		{5000, 3500, true, "[[(5000 0) (4500 0)] [(4000 0) (3500 0)]]"},
		{1500, 2500, true, "[]"},
		{1000, 3000, true, "[]"},
		{2000, 3500, true, "[[(3000 0) (3500 0)]]"},
		{3000, 4000, false, "[[(3000 0) (4000 0)]]"},
	} {
		if got := fmt.Sprint(v.Whole(geom.P(c.a, 0), geom.P(c.b, 0))); got != c.want {
			t.Errorf("of %g to %g there is %s, want %s", c.a, c.b, got, c.want)
		}
		d := Dim{View: v, A: geom.V(c.a, 0, 0), B: geom.V(c.b, 0, 100), Along: geom.V(1, 0, 0)}
		if d.Broken() != c.broken {
			t.Errorf("the dimension from %g to %g: broken is %t", c.a, c.b, d.Broken())
		}
		if d.Along = geom.V(0, 0, 1); d.Broken() {
			t.Errorf("a height from %g to %g counts as broken", c.a, c.b)
		}
	}
}

// TestUprightLineInBreak: a line in a break is not drawn, one at its side is.
func TestUprightLineInBreak(t *testing.T) {
	v := &View{Scale: 0.1, Breaks: []Break{{1000, 3000}}}
	if got := v.Whole(geom.P(2000, 0), geom.P(2000, 90)); len(got) != 0 {
		t.Errorf("%v is drawn", got)
	}
	for _, x := range []float64{1000, 3000} {
		if got := v.Whole(geom.P(x, 0), geom.P(x, 90)); len(got) != 1 {
			t.Errorf("at %g %v is drawn", x, got)
		}
	}
}
