package geom

import (
	"math"
	"testing"
)

// FuzzCarve reads a block and cuts from bytes: three for the block, then for
// each cut eight, for a kind and its sizes. Sizes are multiples of 5 mm and
// slopes of 1 in 8, so that planes fall together often.
func FuzzCarve(f *testing.F) {
	f.Add([]byte{40, 10, 20})
	f.Add([]byte{40, 10, 20, 0, 4, 4, 10, 6, 8, 20, 0})
	f.Add([]byte{40, 10, 20, 1, 4, 4, 10, 6, 8, 20, 99, 0, 9, 4, 9, 6, 8, 20, 3})
	f.Add([]byte{20, 20, 20, 0, 0, 0, 0, 10, 10, 20, 0, 0, 10, 10, 0, 10, 10, 20, 0})
	f.Add([]byte{60, 12, 24, 2, 30, 3, 12, 1, 0, 8, 0, 3, 10, 2, 12, 4, 9, 9, 77})
	f.Fuzz(func(t *testing.T, in []byte) {
		if len(in) < 3 || len(in) > 3+8*8 {
			return
		}
		c, planes := readCarving(in)
		if c.fine() {
			return
		}
		s := c.solid()
		cut := FromConvex(c.block)
		for _, p := range planes {
			cut = cut.Cut(p)
		}
		if v := cut.Volume(); s.Volume() > v+1e-3 {
			t.Errorf("volume %g exceeds the %g left by the plane cuts alone", s.Volume(), v)
		}
		soundly(t, c, s)
	})
}

// readCarving returns the carving, and the planes of those cuts that are made
// by one plane alone.
func readCarving(in []byte) (carving, []Plane) {
	at := func(b byte) float64 { return 5 * float64(b%64) }
	block := box(0, 0, 0, 5+at(in[0]), 5+at(in[1]), 5+at(in[2]))
	c := carving{block: block}
	var planes []Plane
	for in = in[3:]; len(in) >= 8; in = in[8:] {
		x, y, z := at(in[1])-20, at(in[2])-20, at(in[3])-20
		shape := box(x, y, z, x+5+at(in[4]), y+5+at(in[5]), z+5+at(in[6]))
		slope := PlaneAt(V(x, y, z), V(float64(in[4]%17)-8, float64(in[5]%17)-8, 8))
		switch in[0] % 4 {
		case 1:
			shape = append(shape, slope, PlaneAt(V(x+10, y, z+5), V(float64(in[7]%17)-8, 8, float64(in[7]/17)-8)))
		case 2:
			planes = append(planes, slope.Flip())
			c.outs = append(c.outs, Convex{slope})
			continue
		case 3: // turned about the upright through its corner
			sin, cos := math.Sincos(float64(in[7]) * math.Pi / 64)
			a := Axes{O: V(x, y, 0), U: V(cos, sin, 0), V: V(-sin, cos, 0), W: V(0, 0, 1)}
			shape = box(0, 0, z, 5+at(in[4]), 5+at(in[5]), z+5+at(in[6]))
			for i := range shape {
				shape[i] = a.Plane(shape[i])
			}
		}
		c.outs = append(c.outs, shape)
	}
	return c, planes
}

// soundly checks what must hold of every solid.
func soundly(t *testing.T, c carving, s Solid) {
	t.Helper()
	if err := s.Check(); err != nil {
		t.Error(err)
	}
	if s.Empty() {
		return
	}
	b := s.Bounds()
	for i := range 60 { // a fixed scatter of points
		k := V(0.5545*float64(i), 0.3083*float64(i), 0.8191*float64(i))
		k = V(k.X-math.Floor(k.X), k.Y-math.Floor(k.Y), k.Z-math.Floor(k.Z))
		p := b.Min.Add(V(k.X*b.Size().X, k.Y*b.Size().Y, k.Z*b.Size().Z))
		if got, want := s.holds(p), c.holds(p); got != want && !c.close(p, 0.01) {
			t.Errorf("holds(%v) = %v, want %v", p, got, want)
		}
	}
	for _, v := range []View{Plan(), Axonometric(0.7, 0.5)} {
		for _, st := range Strokes(v, []Body{{1, s, false}}, Options{}) {
			if l := st.B.Sub(st.A).Len(); !(l > minStroke/2) {
				t.Errorf("stroke %v–%v has length %g", st.A, st.B, l)
			}
		}
	}
}

// FuzzHidden reads two carvings as FuzzCarve reads one, from the halves of the
// bytes after the first four, which choose the view and how the second stands to
// the first. What the picture hides must be what rays through the bodies meet.
func FuzzHidden(f *testing.F) {
	f.Add([]byte{0, 2, 3, 4, 40, 10, 20, 40, 10, 20})
	f.Add([]byte{5, 9, 1, 30, 40, 10, 20, 0, 4, 4, 10, 6, 8, 20, 0, 40, 10, 20, 1, 4, 4, 10, 6, 8, 20, 99})
	f.Add([]byte{4, 0, 0, 12, 60, 12, 24, 2, 30, 3, 12, 1, 0, 8, 0, 20, 20, 20, 3, 10, 2, 12, 4, 9, 9, 77})
	views := []View{Plan(), Front(), LeftEnd(), Back(), Axonometric(math.Pi/4, 0.6), Axonometric(0.4, 0.35)}
	f.Fuzz(func(t *testing.T, in []byte) {
		const head, most = 4, 4 + 2*(3+4*8)
		if len(in) < head+2*3 || len(in) > most {
			return
		}
		p := piled{view: views[int(in[0])%len(views)]}
		half := head + (len(in)-head)/2
		for i, part := range [][]byte{in[head:half], in[half:]} {
			c, _ := readCarving(part)
			if c.fine() {
				return
			}
			at := World()
			if i > 0 {
				at.O = V(5*float64(int8(in[1])), 5*float64(int8(in[2])), 5*float64(int8(in[3])))
			}
			p.bodies = append(p.bodies, Body{ID: i, Solid: c.solid().Placed(at)})
			p.shapes = append(p.shapes, c.moved(at))
		}
		strokes := Strokes(p.view, p.bodies, Options{})
		for _, s := range strokes {
			if s.B.Sub(s.A).Len() < 0.2 {
				continue // too short to stay clear of both ends
			}
			for _, k := range [3]float64{0.11, 0.47, 0.83} {
				at := s.A.Lerp(s.B, k)
				if best := p.bestAt(s.Body, at, s.B.Sub(s.A)); best == covered && !s.Hidden || best == seen && s.Hidden {
					t.Errorf("body %d at %v on %v–%v: hidden is %v", s.Body, at, s.A, s.B, s.Hidden)
				}
			}
		}
	})
}
