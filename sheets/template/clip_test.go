package template

import (
	"math"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
)

func TestWithin(t *testing.T) {
	r := draw.Rect{X0: 0, Y0: 0, X1: 10, Y1: 10}
	for _, c := range []struct {
		a, b geom.Pt
		p, q geom.Pt
		ok   bool
	}{
		{geom.P(1, 1), geom.P(9, 9), geom.P(1, 1), geom.P(9, 9), true},
		{geom.P(-5, 5), geom.P(15, 5), geom.P(0, 5), geom.P(10, 5), true},
		{geom.P(-5, 0), geom.P(5, 0), geom.P(0, 0), geom.P(5, 0), true},
		{geom.P(5, -5), geom.P(5, 25), geom.P(5, 0), geom.P(5, 10), true},
		{geom.P(-5, 5), geom.P(5, 15), geom.P(0, 10), geom.P(0, 10), false}, // touches a corner
		{geom.P(11, 0), geom.P(11, 10), geom.Pt{}, geom.Pt{}, false},
		{geom.P(3, 3), geom.P(3, 3), geom.Pt{}, geom.Pt{}, false},
	} {
		p, q, ok := within(c.a, c.b, r)
		if ok != c.ok || ok && (p.Sub(c.p).Len() > 1e-9 || q.Sub(c.q).Len() > 1e-9) {
			t.Errorf("within(%v, %v) = %v, %v, %v, want %v, %v, %v", c.a, c.b, p, q, ok, c.p, c.q, c.ok)
		}
	}
}

func TestCropped(t *testing.T) {
	r := draw.Rect{X0: 0, Y0: 0, X1: 10, Y1: 10}
	got := cropped([]geom.Pt{{X: -5, Y: 5}, {X: 5, Y: -5}, {X: 5, Y: 5}}, r)
	area := 0.0
	for i, p := range got {
		area += p.Cross(got[(i+1)%len(got)]) / 2
	}
	// The triangle's half beyond x = 0 and y = 0 is cut off on two sides: 50 − 12.5 − 12.5.
	if math.Abs(area-25) > 1e-9 {
		t.Errorf("area %.3f, want 25", area)
	}
	if got := cropped([]geom.Pt{{X: 20, Y: 0}, {X: 30, Y: 0}, {X: 30, Y: 10}}, r); len(got) > 0 {
		t.Errorf("something is left of what lies outside: %v", got)
	}
}

// TestCircleSpans: a circle of 5 about a corner of a rectangle keeps a quarter,
// about the middle of a side a half.
func TestCircleSpans(t *testing.T) {
	r := draw.Rect{X0: 0, Y0: 0, X1: 20, Y1: 20}
	for _, c := range []struct {
		at   geom.Pt
		want float64 // of the whole turn
	}{{geom.P(0, 0), 0.25}, {geom.P(20, 10), 0.5}, {geom.P(10, 0), 0.5}, {geom.P(-6, 3), 0}} {
		sum := 0.0
		for _, s := range (ring{c.at, 5}).spans(r) {
			sum += s[1] - s[0]
		}
		if math.Abs(sum/(2*math.Pi)-c.want) > 1e-9 {
			t.Errorf("of a circle about %v %.4f is kept, want %.4f", c.at, sum/(2*math.Pi), c.want)
		}
	}
}

func TestTileSpans(t *testing.T) {
	for _, c := range []struct {
		long, room, overlap float64
		keep                [][2]float64
		want                int
	}{
		{100, 100, 10, nil, 1}, {101, 100, 10, nil, 2}, {190, 100, 10, nil, 2}, {191, 100, 10, nil, 3},
		{150, 100, 10, [][2]float64{{70, 80}}, 2}, {500, 120, 12, [][2]float64{{100, 110}, {240, 260}}, 5},
	} {
		got := spans([2]float64{0, c.long}, c.room, c.overlap, c.keep)
		if len(got) != c.want {
			t.Errorf("%+v: %d tiles", c, len(got))
		}
		for i, s := range got {
			if s[1]-s[0] > c.room+same {
				t.Errorf("%+v: tile %d is %.1f long", c, i, s[1]-s[0])
			}
			if i == 0 {
				continue
			}
			if lap := got[i-1][1] - s[0]; math.Abs(lap-c.overlap) > same {
				t.Errorf("%+v: tiles %d and %d overlap by %.1f", c, i-1, i, lap)
			}
			for _, k := range c.keep {
				if s[0] < k[1] && got[i-1][1] > k[0] {
					t.Errorf("%+v: the overlap from %.1f cuts through what is to be whole", c, s[0])
				}
			}
		}
		if got[0][0] != 0 || got[len(got)-1][1] != c.long {
			t.Errorf("%+v: the tiles do not cover it: %v", c, got)
		}
	}
}

// TestEmptyTiles: a tile without ink is left out, but not one that the others
// hang together by.
func TestEmptyTiles(t *testing.T) {
	var k ink
	k.line(trimLine, geom.P(0, 0), geom.P(300, 0))
	k.line(cutLine, geom.P(0, 0), geom.P(0, 50))
	g := divide(k, lie{}, geom.P(110, 110), 10)
	if g.cols != 3 || g.count() != 1 {
		t.Errorf("%d of %d tiles are drawn, want the first alone", g.count(), g.cols)
	}
	k.line(cutLine, geom.P(300, 0), geom.P(300, 50))
	if g = divide(k, lie{}, geom.P(110, 110), 10); g.count() != 3 {
		t.Errorf("%d tiles are drawn, want 3: the middle one joins the others", g.count())
	}
}
