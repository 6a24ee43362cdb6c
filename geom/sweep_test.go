package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

// sideways are the axes of a cut across a bar along X: U along it, V up it.
func sideways() Axes { return Axes{U: V(1, 0, 0), V: V(0, 0, 1), W: V(0, -1, 0)} }

// cutBar is a bar 1000 long, 50 wide and 100 high, less the outline.
func cutBar(o Outline) Solid {
	return Box(V(0, 0, 0), V(1000, 50, 100)).MinusSweep(Sweep{o, sideways(), -60, 10})
}

const quarter = math.Pi / 2

// ends are outlines of what is cut off the end of a bar, with the area that it
// takes, by hand from the circle's formulas.
var ends = []struct {
	name string
	o    Outline
	area float64
	arcs int // true arcs in a view from the side
}{
	{"square", Outline{{To: P(900, -10)}, {To: P(1100, -10)}, {To: P(1100, 110)}, {To: P(900, 110)}}, 100 * 100, 0},
	{"splay", Outline{{To: P(950, 0)}, {To: P(1000, 50)}, {To: P(1000, 0)}}, 50 * 50 / 2, 0},
	// A nose of 40 and a quarter round of 60 below it.
	{"quarter round", Outline{{To: P(1000, 0)}, {To: P(1000, 60)}, {P(940, 0), -quarter}}, 60*60 - math.Pi*60*60/4, 1},
	{"cove", Outline{{To: P(1000, 0)}, {To: P(1000, 60)}, {P(940, 0), quarter}}, math.Pi * 60 * 60 / 4, 1},
	// Hollow under the nose, then round: what one arc takes the other leaves.
	{"ogee", Outline{{To: P(1000, 0)}, {To: P(1000, 80)}, {P(960, 40), quarter}, {P(920, 0), -quarter}}, 40 * 80, 2},
	{"whole round", Outline{{To: P(1010, -10)}, {To: P(1010, 110)}, {To: P(950, 110)}, {To: P(950, 100)}, {P(950, 0), -math.Pi}, {To: P(950, -10)}}, 50*100 - math.Pi*50*50/2, 1},
	{"beak", Outline{{To: P(1010, -10)}, {To: P(1010, 110)}, {To: P(1000, 110)}, {To: P(1000, 70)}, {To: P(960, 50)}, {To: P(990, 40)}, {To: P(990, -10)}},
		1050, 0},
	{"hole", Outline{{P(500, 40), math.Pi}, {P(500, 60), math.Pi}}, math.Pi * 100, 2},
}

func TestMinusSweep(t *testing.T) {
	for _, c := range ends {
		s := cutBar(c.o)
		if err := s.Check(); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		facets := 0.0 // an arc's facets may be off by so much
		for i := range c.o {
			if a, ok := c.o.Arc(i); ok {
				facets += arcTol * a.Major.Len() * (a.End - a.Start)
			}
		}
		if got, want := s.Volume(), 50*(1000*100-c.area); math.Abs(got-want) > 50*facets+1e-3 {
			t.Errorf("%s: %.3f mm³, want %.3f", c.name, got, want)
		}
		arcs, lines := 0, 0
		for _, st := range Strokes(fromFront(), []Body{{Solid: s}}, Options{}) {
			if st.Hidden {
				t.Errorf("%s: a hidden line from %v to %v", c.name, st.A, st.B)
			}
			if st.Arc != nil {
				arcs++
			} else {
				lines++
			}
		}
		if arcs != c.arcs || lines > 4+len(c.o) {
			t.Errorf("%s: %d arcs and %d lines from the side, want %d arcs", c.name, arcs, lines, c.arcs)
		}
	}
}

// TestHollowReachesItsDeepest: a hollow between two points one over the other is
// deepest midway, where with an odd number of facets two corners are equally
// deep but for rounding. Whatever the radius, and so the number of facets, it is
// cut.
func TestHollowReachesItsDeepest(t *testing.T) {
	place := sideways()
	place.O = V(1000, 0, 100)
	for r := 28.7; r < 120; r += 0.1 {
		half := math.Asin(57.1 / 2 / r)
		end := Outline{{To: P(1, 0)}, {To: P(0, 0)}, {To: P(-21.8, -21.9)}, {P(-21.8, -79), 2 * half}, {To: P(-21.8, -101)}, {To: P(1, -101)}}
		s := Box(V(0, 0, 0), V(1000, 50, 100)).MinusSweep(Sweep{end, place, -60, 10})
		area := 21.8*(21.9/2+100-21.9) + r*r*(half-math.Sin(2*half)/2)
		if got, want := s.Volume(), 50*(1000*100-area); math.Abs(got-want) > 50*arcTol*2*r*half {
			t.Errorf("radius %.1f: %.1f mm³, want %.1f", r, got, want)
		}
	}
}

// fromFront looks at the bar from its front, along Y.
func fromFront() View { return View{V(1, 0, 0), V(0, 0, 1), V(0, -1, 0)} }

// TestSweptFacetsAreOneFace: no edge between two facets is sharp, even where
// one arc goes over into the next.
func TestSweptFacetsAreOneFace(t *testing.T) {
	for _, c := range ends[2:5] {
		smooth := 0
		for _, e := range cutBar(c.o).Edges() {
			across := e.A.X == e.B.X && e.A.Z == e.B.Z && e.A.Y != e.B.Y
			if e.Smooth {
				smooth++
			}
			if inner := across && e.A.Z > 1 && e.A.Z < 59 && e.A.X < 999; inner && !e.Smooth {
				t.Errorf("%s: a sharp edge at %v", c.name, e.A)
			}
		}
		if smooth < 10 {
			t.Errorf("%s: %d smooth edges", c.name, smooth)
		}
	}
}

// TestSweptArcIsTrue: the arc that is drawn is that of the outline, and all
// corners of the solid's facets lie on it.
func TestSweptArcIsTrue(t *testing.T) {
	s := cutBar(ends[3].o) // the cove, about the corner of the bar
	for _, v := range []View{fromFront(), Axonometric(0.5, 0.4)} {
		n := 0
		for _, st := range Strokes(v, []Body{{Solid: s}}, Options{VisibleOnly: true}) {
			if st.Arc == nil {
				continue
			}
			n++
			if c := v.Project(V(1000, 0, 0)); st.From.Y == 0 && st.Arc.Centre.Sub(c).Len() > 1e-9 {
				t.Errorf("centre %v, want %v", st.Arc.Centre, c)
			}
			for _, p := range []Vec{st.From, st.To} {
				if r := math.Hypot(p.X-1000, p.Z); math.Abs(r-60) > 1e-9 {
					t.Errorf("an end of the arc is %v from its centre, want 60", r)
				}
			}
		}
		if n == 0 {
			t.Error("no arc is seen")
		}
	}
}

// TestSweptHollowSeenAskew: both rims of a hollow that opens towards the viewer
// are seen whole, though the true arc lies between the facets' edges.
func TestSweptHollowSeenAskew(t *testing.T) {
	// A hollow in the top, seen from above.
	o := Outline{{To: P(440, 100)}, {P(560, 100), 2.0}}
	s := Box(V(0, 0, 0), V(1000, 50, 100)).MinusSweep(Sweep{o, sideways(), -60, 10})
	if err := s.Check(); err != nil {
		t.Fatal(err)
	}
	v := Axonometric(0.1, 1.2)
	var seen float64
	for _, st := range Strokes(v, []Body{{Solid: s}}, Options{VisibleOnly: true}) {
		if st.Arc != nil {
			seen += st.Arc.End - st.Arc.Start
		}
	}
	if math.Abs(seen-4) > 0.01 {
		t.Errorf("%.3f rad of the rims are seen, want 2 of each", seen)
	}
}

// TestPlacedSweepKeepsItsArcs carries a swept solid to another place.
func TestPlacedSweepKeepsItsArcs(t *testing.T) {
	a := Axes{O: V(5, -7, 3), U: V(0, 1, 0), V: V(-1, 0, 0), W: V(0, 0, 1)}
	s := cutBar(ends[2].o).Placed(a).Cut(Plane{V(0, 0, 1), 2000})
	arcs := 0
	for _, st := range Strokes(View{V(0, 1, 0), V(0, 0, 1), V(1, 0, 0)}, []Body{{Solid: s}}, Options{}) {
		if st.Arc != nil {
			arcs++
			if want := P(-7+940, 3+60); st.Arc.Centre.Sub(want).Len() > 1e-9 {
				t.Errorf("centre %v, want %v", st.Arc.Centre, want)
			}
		}
	}
	if arcs != 1 {
		t.Errorf("%d arcs, want 1", arcs)
	}
}

func TestOutlineCrossing(t *testing.T) {
	for _, c := range []struct {
		name string
		o    Outline
		i, j int
		want bool
	}{
		{"square", Outline{{To: P(0, 0)}, {To: P(1, 0)}, {To: P(1, 1)}, {To: P(0, 1)}}, 0, 0, false},
		{"bow tie", Outline{{To: P(0, 0)}, {To: P(1, 1)}, {To: P(1, 0)}, {To: P(0, 1)}}, 1, 3, true},
		{"there and back", Outline{{To: P(0, 0)}, {To: P(4, 0)}, {To: P(2, 0)}, {To: P(2, 3)}}, 1, 2, true},
		{"arc through a side", Outline{{To: P(0, 0)}, {To: P(10, 0)}, {To: P(10, 3)}, {P(0, 3), 3}}, 1, 3, false},
		{"arc across the foot", Outline{{To: P(0, 0)}, {To: P(10, 0)}, {To: P(10, 3)}, {P(0, 3), -3}}, 1, 3, true},
	} {
		i, j, got := c.o.Crossing()
		if got != c.want || got && (i != c.i || j != c.j) {
			t.Errorf("%s: %d, %d, %v; want %d, %d, %v", c.name, i, j, got, c.i, c.j, c.want)
		}
	}
}

// TestMinusSweepOfRandomOutlines: what is left and what is taken make the whole
// bar, for outlines that go in and out between its top and its underside.
func TestMinusSweepOfRandomOutlines(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	done := 0
	for range 200 {
		o := Outline{{To: P(1100, 0)}, {To: P(1100, 100)}, {To: P(1000, 100)}}
		for z := 100.0; z > 0; {
			z = max(0, z-5-40*r.Float64())
			turn := 0.0
			if r.Float64() < 0.6 {
				turn = 4*r.Float64() - 2
			}
			o = append(o, Leg{P(900+100*r.Float64(), z), turn})
		}
		if _, _, crossed := o.Crossing(); crossed {
			continue
		}
		done++
		whole := Box(V(0, 0, 0), V(1000, 50, 100))
		w := Sweep{o, sideways(), -60, 10}
		left, taken := whole.MinusSweep(w), Overlap(whole, w.Solid())
		if err := left.Check(); err != nil {
			t.Errorf("%v: %v", o, err)
		}
		sin, cos := math.Sincos(r.Float64())
		sloping := Axes{O: V(1000*r.Float64(), -17, 2600), U: V(0, -cos, -sin), V: V(1, 0, 0), W: V(0, -sin, cos)}
		if err := left.Placed(sloping).Check(); err != nil {
			t.Errorf("%v, laid on a slope: %v", o, err)
		}
		if got := left.Volume() + taken; math.Abs(got-whole.Volume()) > 1e-6*whole.Volume() {
			t.Errorf("%v: left and taken are %.3f mm³ together, want %.3f", o, got, whole.Volume())
		}
	}
	if done < 50 {
		t.Errorf("only %d outlines did not cross themselves", done)
	}
}
