package geom

import (
	"fmt"
	"math"
	"testing"
)

// lean builds n rafters with a housing at both ends, let into two long
// timbers with n pockets each, at a fall.
func lean(n int) []Body {
	const thick, gap, fall = 45.0, 400.0, 5 * math.Pi / 180
	length := float64(n) * gap
	wall := Box(V(0, 2900, 2400), V(length, 2945, 2590))
	beam := Box(V(0, 0, 2150), V(length, 65, 2340))
	sin, cos := math.Sincos(fall)
	bodies := make([]Body, 0, n+2)
	for i := range n {
		x := float64(i)*gap + 100
		at := Axes{O: V(x, 20, 2200), U: V(0, cos, sin), V: V(-1, 0, 0), W: V(0, -sin, cos)}
		r := Box(V(-100, -thick, 0), V(3200, 0, 120)).Placed(at)
		r = r.Cut(PlaneAt(V(0, 53, 0), V(0, -1, 0))).Cut(PlaneAt(V(0, 2912, 0), V(0, 1, 0)))
		bodies = append(bodies, Body{ID: i, Solid: r})
		low, high := at.Plane(Plane{V(0, 0, -1), 0}), at.Plane(Plane{V(0, 0, 1), 120})
		left, right := Plane{V(-1, 0, 0), -x + 0.5}, Plane{V(1, 0, 0), x + thick + 0.5}
		beam = beam.Minus(Convex{low, high, left, right, PlaneAt(V(0, 53, 0), V(0, -1, 0))})
		wall = wall.Minus(Convex{low, high, left, right, PlaneAt(V(0, 2912, 0), V(0, 1, 0))})
	}
	return append(bodies, Body{ID: n, Solid: wall}, Body{ID: n + 1, Solid: beam})
}

func BenchmarkBuild(b *testing.B) {
	for _, n := range []int{100, 1000, 2000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				lean(n)
			}
		})
	}
}

func BenchmarkStrokes(b *testing.B) {
	views := []struct {
		name string
		v    View
	}{{"plan", Plan()}, {"front", Front()}, {"end", LeftEnd()}, {"pictorial", Axonometric(0.6, 0.5)}}
	for _, n := range []int{100, 1000, 2000} {
		bodies := lean(n)
		for _, v := range views {
			b.Run(fmt.Sprintf("%s/%d", v.name, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					Strokes(v.v, bodies, Options{})
				}
			})
		}
	}
}

func BenchmarkEdges(b *testing.B) {
	for _, n := range []int{100, 1000, 2000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				b.StopTimer()
				bodies := lean(n)
				b.StartTimer()
				for _, x := range bodies {
					x.Solid.Edges()
				}
			}
		})
	}
}
