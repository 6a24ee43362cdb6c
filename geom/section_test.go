package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// across is the plane square to the beam at x, seen from its far end.
func across(x float64) Axes {
	return Axes{O: V(x, 0, 0), U: V(0, 1, 0), V: V(0, 0, 1), W: V(1, 0, 0)}
}

// lengthwise is the plane along the beam at y, seen from the front.
func lengthwise(y float64) Axes {
	return Axes{O: V(0, y, 0), U: V(1, 0, 0), V: V(0, 0, 1), W: V(0, -1, 0)}
}

func areas(rs []Region) (sum float64, holes int) {
	for _, r := range rs {
		sum += r.Area()
		holes += len(r.Holes)
	}
	return sum, holes
}

func TestSection(t *testing.T) {
	notched := beam().Minus(box(300, -9, 150, 350, 99, 999))
	holed := beam().Minus(box(300, -9, 50, 350, 99, 100), box(500, -9, 60, 600, 99, 100))
	for _, c := range []struct {
		name           string
		s              Solid
		a              Axes
		regions, holes int
		area           float64
	}{
		{"across", beam(), across(500), 1, 0, 50 * 200},
		{"across a pocket", beam().Minus(pocket(100)), across(120), 1, 0, 50*200 - 12*99.4},
		{"beside a pocket", beam().Minus(pocket(100)), across(99), 1, 0, 50 * 200},
		{"past the end", beam(), across(1001), 0, 0, 0},
		{"along a notch", notched, lengthwise(25), 1, 0, 1000*200 - 50*50},
		{"holes", holed, lengthwise(25), 1, 2, 1000*200 - 50*50 - 100*40},
		{"in two", beam().Minus(box(300, -9, -9, 350, 99, 999)), lengthwise(25), 2, 0, 950 * 200},
		{"empty", Solid{}, across(0), 0, 0, 0},
		// Planes in a face: what lies behind counts. W points at the viewer.
		{"in the far end", beam(), across(1000), 1, 0, 50 * 200},
		{"in the near end", beam(), across(0), 0, 0, 0},
		{"in the notch's left wall", notched, across(300), 1, 0, 50 * 200},
		{"in the notch's right wall", notched, across(350), 1, 0, 50 * 150},
		{"in the back", notched, lengthwise(50), 0, 0, 0},
		{"in the front", notched, lengthwise(0), 1, 0, 1000*200 - 50*50},
		{"in a seam", notched, Axes{O: V(0, 0, 150), U: V(1, 0, 0), V: V(0, 1, 0), W: V(0, 0, 1)}, 1, 0, 1000 * 50},
	} {
		rs := c.s.Section(c.a)
		area, holes := areas(rs)
		if len(rs) != c.regions || holes != c.holes || !near64(area, c.area, 1e-6) {
			t.Errorf("%s: %d regions, %d holes, area %.6f; want %d, %d, %.6f", c.name, len(rs), holes, area, c.regions, c.holes, c.area)
		}
	}
}

func TestSectionLoopsAreTight(t *testing.T) {
	got := beam().Minus(pocket(100)).Section(across(120))
	if len(got) != 1 {
		t.Fatalf("%d regions, want 1", len(got))
	}
	want := map[Pt]bool{{0, 0}: true, {50, 0}: true, {50, 100}: true, {38, 101.2}: true, {38, 200}: true, {0, 200}: true}
	if len(got[0].Outer) != len(want) {
		t.Errorf("outline %v, want 6 corners", got[0].Outer)
	}
	for _, p := range got[0].Outer {
		if !want[Pt{math.Round(p.X*1e6) / 1e6, math.Round(p.Y*1e6) / 1e6}] {
			t.Errorf("corner %v is not wanted", p)
		}
	}
}

func TestSectionOfBores(t *testing.T) {
	through := beam().WithBore(Bore{V(200, 0, 100), V(0, 1, 0), 6, 1e4})
	blind := beam().WithBore(Bore{V(200, 0, 100), V(0, 1, 0), 6, 30})
	skew := beam().WithBore(Bore{V(200, 0, 100), V(0.6, 0.8, 0), 6, 1e4})
	pocketed := beam().Minus(box(150, 20, -9, 250, 30, 999)).WithBore(Bore{V(200, 0, 100), V(0, 1, 0), 6, 1e4})
	level := Axes{O: V(0, 0, 100), U: V(1, 0, 0), V: V(0, 1, 0), W: V(0, 0, 1)}
	low := Axes{O: V(0, 0, 96.4), U: V(1, 0, 0), V: V(0, 1, 0), W: V(0, 0, 1)}
	for _, c := range []struct {
		name           string
		s              Solid
		a              Axes
		regions, holes int
		area, tol      float64
	}{
		{"along its axis", through, level, 2, 0, 50000 - 12*50, 1e-6},
		{"beside its axis", through, low, 2, 0, 50000 - 9.6*50, 1e-6},
		{"clear of it", through, Axes{O: V(0, 0, 94), U: V(1, 0, 0), V: V(0, 1, 0), W: V(0, 0, 1)}, 1, 0, 50000, 1e-6},
		{"blind along", blind, level, 1, 0, 50000 - 12*30, 1e-6},
		{"across its axis", through, lengthwise(25), 1, 1, 200000 - math.Pi*36, 0.2},
		{"beyond its bottom", blind, lengthwise(31), 1, 0, 200000, 1e-6},
		{"skew along", skew, level, 2, 0, 50000 - 12*50/0.8, 1e-6},
		{"skew across", skew, lengthwise(25), 1, 1, 200000 - math.Pi*36/0.8, 0.3},
		{"through a slot", pocketed, level, 2, 0, 50000 - 100*10 - 12*40, 1e-6},
	} {
		rs := c.s.Section(c.a)
		area, holes := areas(rs)
		if len(rs) != c.regions || holes != c.holes || !near64(area, c.area, c.tol) {
			t.Errorf("%s: %d regions, %d holes, area %.6f; want %d, %d, %.6f", c.name, len(rs), holes, area, c.regions, c.holes, c.area)
		}
	}
}

func TestSectionKnowsItsRoundHoles(t *testing.T) {
	s := beam().Minus(box(300, -9, 50, 350, 99, 100)).
		WithBore(Bore{V(200, 0, 100), V(0, 1, 0), 6, 1e4}).
		WithBore(Bore{V(600, 0, 100), V(0.6, 0.8, 0), 6, 1e4})
	rs := s.Section(lengthwise(25))
	if len(rs) != 1 || len(rs[0].Holes) != 3 || len(rs[0].Round) != 3 {
		t.Fatalf("regions %v, want one with three holes", rs)
	}
	for i, h := range rs[0].Holes {
		got := "square"
		if a := rs[0].Round[i]; a != nil {
			got = fmt.Sprintf("%v %v %.3f", r3(a.Centre), r3(a.Major), a.Ratio)
			for _, p := range h {
				if d := p.Sub(a.Centre).Len(); d > a.Major.Len()+1e-6 {
					t.Errorf("%v lies off its curve", p)
				}
			}
		}
		if want := map[string]bool{"square": true, "200,100 6,0 1.000": true, "618.75,100 7.5,0 0.800": true}; !want[got] {
			t.Errorf("hole %d is %s", i, got)
		}
	}
}

// Random sections: a point of the plane is in a region exactly when material
// lies just behind it.
func TestSectionsOfCarvings(t *testing.T) {
	carvings(t, 150, func(t *testing.T, r *rand.Rand, c carving, s Solid) {
		ways := []Axes{across(0), lengthwise(0), {U: V(0.6, 0, 0.8), V: V(0, 1, 0), W: V(-0.8, 0, 0.6)}, {U: V(1, 0, 0), V: V(0, 1, 0), W: V(0, 0, 1)}}
		a := ways[r.IntN(len(ways))]
		a.O = V(10*float64(r.IntN(12)), 10*float64(r.IntN(6)), 10*float64(r.IntN(6))) // often in a face
		rs := s.Section(a)
		for range 300 {
			p := a.Local(randomIn(r, s.Bounds()))
			x := a.Point(V(p.X, p.Y, -1e-4))
			if c.close(x, 5e-5) {
				continue
			}
			in := 0
			for _, g := range rs {
				if g.holds(Pt{p.X, p.Y}) {
					in++
				}
			}
			if want := c.holds(x); (in == 1) != want || in > 1 {
				t.Errorf("%v lies in %d regions, material there: %v", x, in, want)
			}
		}
	})
}

// holds counts crossings of a ray to the right.
func (r Region) holds(p Pt) bool {
	in := false
	for _, l := range append([][]Pt{r.Outer}, r.Holes...) {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
				in = !in
			}
		}
	}
	return in
}
