package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// ss reads spans written as "0-2 5-7".
func ss(text string) []span {
	var out []span
	var lo, hi float64
	for len(text) > 0 {
		n, _ := fmt.Sscanf(text, "%g-%g", &lo, &hi)
		if n < 2 {
			break
		}
		out = append(out, span{lo, hi})
		k := 0
		for k < len(text) && text[k] != ' ' {
			k++
		}
		text = text[min(len(text), k+1):]
	}
	return out
}

func text(s []span) string {
	out := ""
	for i, x := range s {
		if i > 0 {
			out += " "
		}
		out += fmt.Sprintf("%g-%g", x.lo, x.hi)
	}
	return out
}

func TestSpans(t *testing.T) {
	for _, c := range []struct{ op, a, b, want string }{
		{"unite", "5-7 0-2", "", "0-2 5-7"},
		{"unite", "1-3 0-2", "", "0-3"},
		{"unite", "0-9 1-2", "", "0-9"},
		{"unite", "0-2 2.5-4", "", "0-4"}, // within the gap of 0.5
		{"unite", "0-2 2.6-4", "", "0-2 2.6-4"},
		{"unite", "", "", ""},
		{"meet", "0-4 6-9", "1-7", "1-4 6-7"},
		{"meet", "0-4", "4-5", ""},
		{"without", "0-9", "2-3 5-6", "0-2 3-5 6-9"},
		{"without", "0-9", "0-3 8-12", "3-8"},
		{"without", "0-2 4-6", "1-5", "0-1 5-6"},
		{"without", "0-2", "0-2", ""},
		{"without", "0-2", "", "0-2"},
		{"without", "5-6", "0-1 2-3 4-5", "5-6"},
		{"insert", "0-2 5-7", "3-4", "0-2 3-4 5-7"},
		{"insert", "0-2 5-7", "1-6", "0-7"},
		{"insert", "0-2 5-7", "2.5-3", "0-3 5-7"},
		{"insert", "", "2-3", "2-3"},
		{"longer", "0-0.4 1-2 3-3.5", "", "1-2"}, // than 0.5
	} {
		a, b := ss(c.a), ss(c.b)
		var got []span
		switch c.op {
		case "unite":
			got = unite(a, 0.5)
		case "meet":
			got = meet(a, b)
		case "without":
			got = without(a, b)
		case "insert":
			got = insert(a, b[0], 0.5)
		case "longer":
			got = longer(a, 0.5)
		}
		if text(got) != c.want {
			t.Errorf("%s %q, %q = %q, want %q", c.op, c.a, c.b, text(got), c.want)
		}
	}
}

// What is put in must be found again from anywhere within the tolerance, in a
// small set and in a large one, whichever buckets are involved.
func TestNear(t *testing.T) {
	for _, n := range []int{5, 500} {
		r := rand.New(rand.NewPCG(23, uint64(n)))
		var set near
		at := make([]float64, n)
		for i := range at {
			at[i] = float64(i-n/2)*nearCell/2 + 0.001*r.Float64()
			set.add(at[i])
		}
		for i, x := range at {
			for _, d := range []float64{0, 0.01, -0.01} {
				got := set.find(x+d, 0.0101, func(k int32) bool { return math.Abs(at[k]-x) < 1e-9 })
				if int(got) != i {
					t.Errorf("%d entries: %g found as %d, want %d", n, x+d, got, i)
				}
			}
			if got := set.find(x, 0.01, func(int32) bool { return false }); got != -1 {
				t.Errorf("%d entries: found %d, which is not the same", n, got)
			}
		}
	}
}

// A plane is known again from either side, after a placement and back.
func TestPlanesAreKnownAgain(t *testing.T) {
	r := rand.New(rand.NewPCG(29, 1))
	sin, cos := math.Sincos(0.3)
	a := Axes{O: V(48000, -9000, 2400), U: V(cos, sin, 0), V: V(-sin*cos, cos*cos, sin), W: V(sin*sin, -cos*sin, cos)}
	tab := &table{}
	for i := range 200 {
		p := PlaneAt(V(1000*r.Float64(), 1000*r.Float64(), 1000*r.Float64()), V(r.NormFloat64(), r.NormFloat64(), r.NormFloat64()))
		back := a.LocalPlane(a.Plane(p))
		var refs []ref
		tab, refs = tab.extend(len(tab.planes), []Plane{p, back, p.Flip(), back.Flip()})
		if want := ref(2 * i); refs[0] != want || refs[1] != want || refs[2] != want+1 || refs[3] != want+1 {
			t.Errorf("plane %d is known as %v", i, refs)
		}
	}
}

func TestAxes(t *testing.T) {
	a := Axes{O: V(10, 20, 30), U: V(0, 1, 0), V: V(-1, 0, 0), W: V(0, 0, 1)}
	if got, want := a.Point(V(1, 2, 3)), V(8, 21, 33); got != want {
		t.Errorf("Point = %v, want %v", got, want)
	}
	if got, want := a.Local(V(8, 21, 33)), V(1, 2, 3); got != want {
		t.Errorf("Local = %v, want %v", got, want)
	}
	p := a.Plane(Plane{V(1, 0, 0), 5})
	if d := p.Dist(a.Point(V(7, -3, 4))); !near64(d, 2, 1e-12) {
		t.Errorf("the carried plane is at distance %g, want 2", d)
	}
	if got := a.LocalPlane(p); got != (Plane{V(1, 0, 0), 5}) {
		t.Errorf("LocalPlane = %v", got)
	}
}

// The work grows with the number of pockets, not with its square.
func TestCellsGrowWithPockets(t *testing.T) {
	count := func(n int) (cells, strokes int) {
		bs := lean(n)
		for _, b := range bs {
			cells += len(b.Solid.d.cells)
		}
		return cells, len(Strokes(Axonometric(0.6, 0.5), bs, Options{}))
	}
	c1, s1 := count(20)
	c2, s2 := count(40)
	c3, s3 := count(60)
	if c3-c2 != c2-c1 || c2 > 45*10 {
		t.Errorf("cells: %d, %d, %d", c1, c2, c3)
	}
	if s3-s2 > s2-s1+20 {
		t.Errorf("strokes: %d, %d, %d", s1, s2, s3)
	}
}
