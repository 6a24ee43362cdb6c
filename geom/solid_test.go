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

func TestSmokeStrokes(t *testing.T) {
	beam := Box(V(0, 0, 0), V(1000, 50, 200)).WithBore(Bore{V(200, 0, 100), V(0, 1, 0), 6, 1000})
	post := Box(V(400, 50, -1000), V(490, 140, 200))
	for _, st := range Strokes(Front(), []Body{{1, beam, false}, {2, post, false}}, Options{}) {
		t.Log(st.Body, st.A, st.B, st.Hidden, st.Arc)
	}
	for _, st := range Strokes(Axonometric(0.5, 0.5), []Body{{1, beam, false}, {2, post, false}}, Options{VisibleOnly: true}) {
		t.Log(st.Body, st.A, st.B, st.Hidden, st.Arc)
	}
}
