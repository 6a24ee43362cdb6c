package geom

import (
	"math"
	"testing"
)

func near64(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

func TestSmoke(t *testing.T) {
	s := Box(V(0, 0, 0), V(1000, 100, 200))
	s2 := s.Minus(Box3{V(300, -10, 150), V(350, 50, 210)}.convex()).Minus(Box3{V(500, -10, -1), V(550, 110, 50)}.convex())
	for _, x := range []Solid{s, s2} {
		t.Log(x.Volume(), len(x.Faces()), len(x.Edges()), x.Check(), len(x.d.cells))
	}
	for _, r := range s2.Section(Axes{O: V(0, 25, 0), U: V(1, 0, 0), V: V(0, 0, 1), W: V(0, -1, 0)}) {
		t.Log(r)
	}
	p := Prism([]Pt{{0, 0}, {100, 0}, {100, 20}, {20, 20}, {20, 100}, {0, 100}}, nil, 0, 50)
	t.Log(p.Volume(), len(p.Faces()), len(p.Edges()), p.Check(), len(p.d.cells))
}
