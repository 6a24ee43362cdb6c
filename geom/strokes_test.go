package geom

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
)

// list writes strokes as lines of text: body, v or h, ends; sorted, with each
// stroke running left to right or upwards.
func list(ss []Stroke) string {
	var out []string
	for _, s := range ss {
		a, b := s.A, s.B
		if a.X > b.X+1e-6 || math.Abs(a.X-b.X) <= 1e-6 && a.Y > b.Y {
			a, b = b, a
		}
		k := "v"
		if s.Hidden {
			k = "h"
		}
		line := fmt.Sprintf("%d%s %s %s", s.Body, k, r3(a), r3(b))
		if s.Arc != nil {
			line = fmt.Sprintf("%d%s arc %s %s %.3f %.0f..%.0f", s.Body, k, r3(s.Arc.Centre), r3(s.Arc.Major), s.Arc.Ratio,
				s.Arc.Start*180/math.Pi, s.Arc.End*180/math.Pi)
		}
		out = append(out, line)
	}
	slices.Sort(out)
	return strings.Join(out, "\n")
}

func r3(p Pt) string {
	r := func(x float64) float64 { return math.Round(x*1e3)/1e3 + 0 }
	return fmt.Sprintf("%g,%g", r(p.X), r(p.Y))
}

func lines(s string) string {
	var out []string
	for _, l := range strings.Split(s, ";") {
		out = append(out, strings.TrimSpace(l))
	}
	slices.Sort(out)
	return strings.Join(out, "\n")
}

func bodies(ss ...Solid) []Body {
	var out []Body
	for i, s := range ss {
		out = append(out, Body{ID: i + 1, Solid: s})
	}
	return out
}

func TestStrokes(t *testing.T) {
	bar := Box(V(0, 0, 0), V(100, 10, 20))
	post := Box(V(40, 10, -50), V(60, 30, 50)) // stands against the bar's back
	outline := "1v 0,0 100,0; 1v 0,20 100,20; 1v 0,0 0,20; 1v 100,0 100,20"
	notched := bar.Minus(box(40, -1, 10, 60, 11, 21))
	recess := bar.Minus(box(40, 5, 10, 60, 11, 21)) // in the back, open at the top
	tongue := Box(V(40, 5, 10), V(60, 40, 30))      // fills it, and sticks out above
	for _, c := range []struct {
		name string
		v    View
		b    []Body
		opt  Options
		want string
	}{
		{"one bar", Front(), bodies(bar), Options{}, outline},
		{"bar and post behind", Front(), bodies(bar, post), Options{}, outline +
			"; 2v 40,-50 40,0; 2v 60,-50 60,0; 2v 40,-50 60,-50; 2v 40,20 40,50; 2v 60,20 60,50; 2v 40,50 60,50" +
			"; 2h 40,0 40,20; 2h 60,0 60,20"},
		{"visible only", Front(), bodies(bar, post), Options{VisibleOnly: true}, outline +
			"; 2v 40,-50 40,0; 2v 60,-50 60,0; 2v 40,-50 60,-50; 2v 40,20 40,50; 2v 60,20 60,50; 2v 40,50 60,50"},
		{"glass bar", Front(), []Body{{1, bar, true}, {2, post, false}}, Options{}, outline +
			"; 2v 40,-50 40,50; 2v 60,-50 60,50; 2v 40,-50 60,-50; 2v 40,50 60,50"},
		// What the glass hides of itself does not take away what is seen through it.
		{"glass bar with a recess", Front(), []Body{{1, recess, true}, {2, post, false}}, Options{}, outline +
			"; 1h 40,10 60,10; 2v 40,-50 40,50; 2v 60,-50 60,50; 2v 40,-50 60,-50; 2v 40,50 60,50"},
		{"bar seen from behind", Back(), bodies(bar, post), Options{}, "" +
			"1v -100,0 -60,0; 1v -40,0 0,0; 1h -60,0 -40,0; 1v -100,20 -60,20; 1v -40,20 0,20; 1h -60,20 -40,20; 1v 0,0 0,20; 1v -100,0 -100,20" +
			"; 2v -60,-50 -60,50; 2v -40,-50 -40,50; 2v -60,-50 -40,-50; 2v -60,50 -40,50"},
		// The notch's floor runs to the front: nothing of it is hidden.
		{"through notch", Front(), bodies(notched), Options{}, "1v 0,0 100,0; 1v 0,0 0,20; 1v 100,0 100,20" +
			"; 1v 0,20 40,20; 1v 60,20 100,20; 1v 40,10 40,20; 1v 60,10 60,20; 1v 40,10 60,10"},
		{"recess in the back", Front(), bodies(recess), Options{}, outline +
			"; 1h 40,10 40,20; 1h 60,10 60,20; 1h 40,10 60,10"},
		// The tongue is flush with the recess's walls; both lines are hidden as
		// one, and drawn for the nearer body where they come out.
		{"filled recess", Front(), bodies(recess, tongue), Options{}, outline +
			"; 1h 40,10 40,20; 1h 60,10 60,20; 1h 40,10 60,10; 2v 40,20 40,30; 2v 60,20 60,30; 2v 40,30 60,30"},
		{"filled recess from above", Plan(), bodies(recess, tongue), Options{}, "" +
			"1v 0,0 100,0; 1v 0,0 0,10; 1v 100,0 100,10; 1v 0,10 40,10; 1v 60,10 100,10" +
			"; 2v 40,5 40,40; 2v 60,5 60,40; 2v 40,5 60,5; 2v 40,40 60,40" +
			"; 1h 40,10 60,10"},
		{"nothing", Front(), nil, Options{}, ""},
		{"empty solid", Front(), bodies(Solid{}), Options{}, ""},
	} {
		if got, want := list(Strokes(c.v, c.b, c.opt)), lines(c.want); got != want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, want)
		}
	}
}

// An arris exactly behind the seam between two cells of the body in front is
// hidden, though neither cell covers both its sides.
func TestBehindASeam(t *testing.T) {
	front := Box(V(0, 0, 0), V(100, 10, 100)).Minus(box(40, 5, 50, 60, 11, 101))
	if len(front.d.cells) < 3 {
		t.Fatal("the body in front has no seams")
	}
	for _, x := range []float64{40, 60} {
		behind := Box(V(x, 20, 10), V(70, 30, 90))
		for _, s := range Strokes(Front(), bodies(front, behind), Options{}) {
			if s.Body == 2 && !s.Hidden {
				t.Errorf("at x = %g: %v–%v is visible", x, s.A, s.B)
			}
		}
	}
}

// Lines of different bodies that fall together are drawn once, for the
// nearest; on request for each.
func TestLinesThatFallTogether(t *testing.T) {
	a, b := Box(V(0, 0, 0), V(100, 10, 20)), Box(V(0, 50, 0), V(100, 60, 20))
	for _, order := range [][]Body{{{1, a, false}, {2, b, false}}, {{2, b, false}, {1, a, false}}} {
		for _, s := range Strokes(Front(), order, Options{}) {
			if s.Body != 1 || s.Hidden {
				t.Errorf("stroke %v–%v of body %d", s.A, s.B, s.Body)
			}
		}
	}
	n := map[int]int{}
	for _, s := range Strokes(Front(), bodies(a, b), Options{PerBody: true}) {
		n[s.Body]++
	}
	if n[1] != 4 || n[2] != 4 {
		t.Errorf("%d and %d strokes, want 4 each", n[1], n[2])
	}
}

func TestStrokesCarryModelPoints(t *testing.T) {
	v := Axonometric(0.7, 0.4)
	for _, s := range Strokes(v, bodies(beam().Minus(pocket(100))), Options{}) {
		for _, e := range []struct {
			p Pt
			q Vec
		}{{s.A, s.From}, {s.B, s.To}} {
			if d := v.Project(e.q).Sub(e.p).Len(); d > 1e-9 {
				t.Errorf("%v is drawn %g off %v", e.q, d, e.p)
			}
		}
	}
}

func TestSmoothEdgesAreOutlinesOnly(t *testing.T) {
	pts, soft := round(32)
	at := Axes{U: V(1, 0, 0), V: V(0, 0, 1), W: V(0, -1, 0)} // profile upright
	s := Prism(pts, soft, -50, 0).Placed(at)
	got := list(Strokes(Plan(), bodies(s), Options{}))
	if want := lines("1v 0,0 0,50; 1v 0,0 120,0; 1v 0,50 120,50; 1v 120,0 120,50"); !strings.HasPrefix(got, want[:20]) || strings.Count(got, "\n") != 4 {
		t.Errorf("from above:\n%s", got)
	}
	// From the front the facets of the round end are its outline.
	n := 0
	for _, x := range Strokes(Front(), bodies(s), Options{}) {
		if x.A.X > 100+1e-6 || x.B.X > 100+1e-6 {
			n++
		}
	}
	if n != 32 {
		t.Errorf("%d strokes round the end, want 32", n)
	}
}

func TestViews(t *testing.T) {
	p := V(3, -2, 7) // to the right, before the wall, up
	for _, c := range []struct {
		name  string
		v     View
		at    Pt
		depth float64
	}{
		{"plan", Plan(), Pt{3, -2}, 7},
		{"front", Front(), Pt{3, 7}, 2},
		{"back", Back(), Pt{-3, 7}, -2},
		{"left end", LeftEnd(), Pt{2, 7}, -3},
		{"right end", RightEnd(), Pt{-2, 7}, 3},
		{"pictorial from the front", Axonometric(0, 0), Pt{3, 7}, 2},
		{"pictorial from the right", Axonometric(math.Pi/2, 0), Pt{-2, 7}, 3},
		{"pictorial from above", Axonometric(0, math.Pi/2), Pt{3, -2}, 7},
		{"of axes", ViewOf(World()), Pt{3, -2}, 7},
	} {
		if got := c.v.Project(p); got.Sub(c.at).Len() > 1e-12 {
			t.Errorf("%s: at %v, want %v", c.name, got, c.at)
		}
		if d := c.v.Depth(p); !near64(d, c.depth, 1e-12) {
			t.Errorf("%s: depth %g, want %g", c.name, d, c.depth)
		}
		if d := c.v.Right.Cross(c.v.Up).Sub(c.v.Toward).Len(); d > 1e-12 {
			t.Errorf("%s: Right × Up is not Toward", c.name)
		}
	}
}
