package draw

import (
	"fmt"
	"math"
	"math/rand"
	"sort"
	"testing"

	"plumbcut/geom"
)

func TestSpread(t *testing.T) {
	inf := math.Inf(1)
	tests := []struct {
		want, size  []float64
		gap, lo, hi float64
		out         string
	}{
		{nil, nil, 1, -inf, inf, "[]"},
		{[]float64{0, 10}, []float64{2, 2}, 1, -inf, inf, "[0 10]"},
		{[]float64{0, 0}, []float64{2, 2}, 1, -inf, inf, "[-1.5 1.5]"},
		{[]float64{0, 0, 0}, []float64{2, 4, 2}, 1, -inf, inf, "[-4 0 4]"},
		{[]float64{0, 1, 20}, []float64{4, 4, 4}, 0, -inf, inf, "[-1.5 2.5 20]"},
		{[]float64{0, 0}, []float64{2, 2}, 1, 0, inf, "[1 4]"},
		{[]float64{9, 9}, []float64{2, 2}, 1, 0, 10, "[6 9]"},
		{[]float64{5, 5}, []float64{4, 4}, 1, 4, 6, "[6 11]"}, // does not fit: the low end holds
	}
	for _, test := range tests {
		if got := fmt.Sprint(spread(test.want, test.size, test.gap, test.lo, test.hi)); got != test.out {
			t.Errorf("spread(%v, %v, %v, %v, %v) = %v, want %v", test.want, test.size, test.gap, test.lo, test.hi, got, test.out)
		}
	}
}

func TestSpreadNeverOverlaps(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 2000 {
		n := 1 + r.Intn(12)
		want, size := make([]float64, n), make([]float64, n)
		for i := range want {
			want[i], size[i] = 100*r.Float64(), 20*r.Float64()
		}
		sort.Float64s(want)
		gap := 3 * r.Float64()
		out := spread(want, size, gap, math.Inf(-1), math.Inf(1))
		for i := 1; i < n; i++ {
			if room := out[i] - out[i-1] - (size[i]+size[i-1])/2; room < gap-1e-9 {
				t.Fatalf("spread(%v, %v, %v) = %v: %v between %d and %d", want, size, gap, out, room, i-1, i)
			}
		}
		// Least squares: the moves of all cancel out.
		moved := 0.0
		for i := range out {
			moved += out[i] - want[i]
		}
		if math.Abs(moved) > 1e-6 {
			t.Fatalf("spread(%v, %v, %v) = %v: moved by %v in sum", want, size, gap, out, moved)
		}
	}
}

func TestSegmentMeets(t *testing.T) {
	box := Rect{0, 0, 10, 5}
	tests := []struct {
		a, b geom.Pt
		want bool
	}{
		{geom.P(-5, 2), geom.P(15, 2), true},
		{geom.P(-5, 6), geom.P(15, 6), false},
		{geom.P(2, 2), geom.P(3, 3), true},
		{geom.P(-1, 4.5), geom.P(2, 8), false},
		{geom.P(-1, 3), geom.P(3, 7), true},
		{geom.P(12, -1), geom.P(12, 9), false},
		{geom.P(10, -1), geom.P(10, 9), true}, // along the edge
	}
	for _, test := range tests {
		if got := segmentMeets(test.a, test.b, box); got != test.want {
			t.Errorf("segmentMeets(%v, %v) = %v, want %v", test.a, test.b, got, test.want)
		}
	}
}

// The grid must find every segment that a plain search finds.
func TestGridFindsAll(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	paper, _ := PaperByName("A4")
	g := newGrid(paper)
	pt := func() geom.Pt { return geom.P(r.Float64()*340-20, r.Float64()*250-20) }
	for range 400 {
		a := pt()
		b := a.Add(geom.P(r.NormFloat64()*30, r.NormFloat64()*30))
		if r.Intn(3) == 0 {
			b.X = a.X
		}
		g.addSegment(segment{a: a, b: b})
	}
	for range 300 {
		c := pt()
		q := Rect{c.X, c.Y, c.X + r.Float64()*40, c.Y + r.Float64()*10}
		want := 0
		for _, s := range g.segs {
			if segmentMeets(s.a, s.b, q) {
				want++
			}
		}
		got := 0
		g.segsNear(q, func(s *segment) bool {
			if segmentMeets(s.a, s.b, q) {
				got++
			}
			return true
		})
		if got != want {
			t.Fatalf("segments in %v: %d, want %d", q, got, want)
		}
	}
}

func TestPlacerFree(t *testing.T) {
	paper, _ := PaperByName("A4")
	s := &Sheet{Paper: paper}
	p := NewPlacer(s, Hand{Paper: paper})
	box := Rect{100, 100, 120, 103}
	if !p.Free(box, 1) {
		t.Error("an empty sheet is not free")
	}
	s.Line(narrow(Outline), geom.P(90, 101), geom.P(130, 101))
	if p.Free(box, 1) {
		t.Error("free on a line drawn after the placer was made")
	}
	if got, ok := p.FreeBox([]Rect{box, {100, 110, 120, 113}}, 1); !ok || got.Y0 != 110 {
		t.Errorf("FreeBox = %v, %v, want the second", got, ok)
	}
	p.Reserve(Rect{100, 105, 120, 120})
	if p.Free(Rect{100, 110, 120, 113}, 1) {
		t.Error("free in a reserved place")
	}
	if p.Free(Rect{0, 50, 15, 53}, 1) {
		t.Error("free outside the frame")
	}
}

// What is taken back leaves no trace: the next label finds the same place as
// the first time.
func TestPlacerBack(t *testing.T) {
	v := front(0.02, geom.P(100, 100))
	h := hand("A3")
	s := &Sheet{Paper: h.Paper}
	p := NewPlacer(s, h)
	p.Reserve(Rect{100, 100, 110, 110})
	s.Line(narrow(Outline), geom.P(90, 80), geom.P(130, 140))
	place := func() Mark { return p.Label(Label{View: v, Text: "rafter", Inside: true}) }
	before := p.State()
	first := place()
	if second := place(); second.Box.Overlaps(first.Box) {
		t.Errorf("the second label %v stands on the first %v", second.Box, first.Box)
	}
	p.Back(before)
	if len(s.Items) != 1 || len(s.Marks) != 0 {
		t.Errorf("%d items and %d marks are left, want 1 and 0", len(s.Items), len(s.Marks))
	}
	if again := place(); again.Box != first.Box {
		t.Errorf("placed again at %v, want %v", again.Box, first.Box)
	}
}
