package draw

import (
	"math"
	"math/rand/v2"
	"testing"

	"plumbcut/geom"
)

// The lines of a hatch, times their pitch, come to the area: exactly for a
// rectangle along the lines, nearly for the rest.
func TestHatchLinesCoverTheArea(t *testing.T) {
	square, hole := Rect{0, 0, 40, 30}.Corners(), Rect{10, 10, 20, 25}.Corners()
	for _, c := range []struct {
		name  string
		loops [][]geom.Pt
		angle float64
		want  float64
	}{
		{"along", [][]geom.Pt{square}, 0, 1200},
		{"at 45°", [][]geom.Pt{square}, math.Pi / 4, 1200},
		{"with a hole", [][]geom.Pt{square, hole}, 1, 1050},
		{"a triangle", [][]geom.Pt{{geom.P(0, 0), geom.P(40, 0), geom.P(0, 30)}}, 0.3, 600},
	} {
		const pitch = 0.5
		total := 0.0
		for _, l := range HatchLines(c.loops, c.angle, pitch) {
			total += l[1].Sub(l[0]).Len() * pitch
		}
		if math.Abs(total-c.want) > c.want*0.01 {
			t.Errorf("%s: the lines cover %.1f mm², want %.1f", c.name, total, c.want)
		}
	}
}

func TestHatchLinesStayInside(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		var loops [][]geom.Pt
		for range 1 + rng.IntN(2) {
			var loop []geom.Pt
			for range 3 + rng.IntN(6) {
				// Whole numbers bring corners to lie on the lines.
				loop = append(loop, geom.P(float64(rng.IntN(20)), float64(rng.IntN(20))))
			}
			loops = append(loops, loop)
		}
		angle := float64(rng.IntN(8)) * math.Pi / 8
		for _, l := range HatchLines(loops, angle, 1) {
			if mid := l[0].Lerp(l[1], 0.5); !Inside(mid, loops) && edgeDistance(mid, loops) > 1e-6 {
				t.Fatalf("line %v lies outside %v", l, loops)
			}
			for _, end := range l {
				if d := edgeDistance(end, loops); d > 1e-6 {
					t.Fatalf("line %v ends %g mm off the edge of %v", l, d, loops)
				}
			}
		}
	}
}

// 0.7 mm between parallel lines, hatching too: IS/ISO 128 as quoted at
// educationdiscussion.com/lines-used-in-graphical-representation-of-objects.
func TestHatchKeepsItsLinesApart(t *testing.T) {
	for _, size := range []float64{0.9, 3, 10, 500} {
		loops := [][]geom.Pt{Rect{0, 0, size, 3 * size}.Corners()}
		if p := hatchPitch(loops); p < 0.7 {
			t.Errorf("section %g mm wide: pitch %g", size, p)
		}
		if len(HatchLines(loops, math.Pi/4, hatchPitch(loops))) == 0 {
			t.Errorf("section %g mm wide has no hatch", size)
		}
	}
}

func TestHatchOfNonsenseIsNothing(t *testing.T) {
	huge := [][]geom.Pt{Rect{0, 0, 1e9, 1e9}.Corners()}
	nan := [][]geom.Pt{{geom.P(0, 0), geom.P(math.NaN(), 1), geom.P(2, 2)}}
	for _, loops := range [][][]geom.Pt{nil, {{}}, huge, nan} {
		for _, pitch := range []float64{1, 0, -1, math.NaN()} {
			if got := HatchLines(loops, 0, pitch); got != nil {
				t.Errorf("HatchLines(%v, %g) has %d lines", loops, pitch, len(got))
			}
		}
	}
}

func TestMaterials(t *testing.T) {
	loops := [][]geom.Pt{Rect{10, 10, 50, 50}.Corners(), Rect{20, 20, 30, 30}.Corners()}
	for _, m := range []Material{EndGrain, LongGrain, Concrete} {
		var s Sheet
		s.Hatch(m, loops, 0)
		marks := 0
		for _, item := range s.Items {
			for _, line := range item.Path.Flatten() {
				marks++
				if mid := line[0].Lerp(line[1], 0.5); !Inside(mid, loops) {
					t.Errorf("material %d: a mark at %v is outside", m, mid)
				}
			}
		}
		if marks < 10 {
			t.Errorf("material %d: %d marks", m, marks)
		}
	}
}

func TestEarthLiesOnTheRight(t *testing.T) {
	var s Sheet
	s.Hatch(Earth, [][]geom.Pt{{geom.P(0, 10), geom.P(50, 10), geom.P(100, 10)}}, 0)
	lines := s.Items[0].Path.Flatten()
	if len(lines) < 30 {
		t.Fatalf("%d strokes over 100 mm", len(lines))
	}
	for _, l := range lines {
		if l[0].Y != 10 || l[1].Y >= 10 || l[0].X > 100 {
			t.Errorf("stroke %v does not hang from the line", l)
		}
	}
}
