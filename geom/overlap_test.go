package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

func TestOverlap(t *testing.T) {
	b := beam()
	for _, c := range []struct {
		name string
		o    Solid
		want float64
	}{
		{"apart", Box(V(0, 60, 0), V(10, 70, 10)), 0},
		{"touching", Box(V(0, 50, 0), V(10, 70, 10)), 0},
		{"into it", Box(V(100, 40, 0), V(145, 70, 90)), 45 * 10 * 90},
		{"within", Box(V(100, 10, 10), V(110, 20, 20)), 1000},
		{"itself", b, 1e7},
		{"nothing", Solid{}, 0},
	} {
		if v := Overlap(b, c.o); !near64(v, c.want, 1e-6) {
			t.Errorf("%s: %g, want %g", c.name, v, c.want)
		}
		if v, w := Overlap(b, c.o), Overlap(c.o, b); !near64(v, w, 1e-6) {
			t.Errorf("%s: %g one way, %g the other", c.name, v, w)
		}
	}
	// A timber in its own housing does not clash.
	rafter := FromConvex(append(pocket(100), box(100, -9, 0, 145, 400, 180)...))
	if v := Overlap(b.Minus(pocket(100)), rafter); v != 0 {
		t.Errorf("in its housing: %g", v)
	}
	if v := Overlap(b, rafter); !near64(v, 45*12*79.4, 1e-6) {
		t.Errorf("without a housing: %g", v)
	}
}

func TestContact(t *testing.T) {
	b := beam()
	housed := b.Minus(pocket(100))
	rafter := FromConvex(append(pocket(100), box(100, -9, 0, 145, 400, 180)...))
	seat := PlaneAt(V(0, 50, 100), V(0, 1, 10))
	slope := math.Hypot(1, 0.1)
	for _, c := range []struct {
		name string
		a, o Solid
		want float64
	}{
		{"apart", b, Box(V(0, 50.1, 0), V(10, 70, 10)), 0},
		{"side by side", b, Box(V(900, 50, 100), V(1100, 70, 300)), 100 * 100},
		{"a hair apart", b, Box(V(900, 50.005, 100), V(1100, 70, 300)), 100 * 100},
		{"same face, same way", b, Box(V(900, 0, 100), V(1100, 50, 300)), 0},
		{"on a corner", b, Box(V(1000, 50, 0), V(1100, 70, 300)), 0},
		{"housed", housed, rafter, 45*12*slope + 2*12*79.4 + 45*(180-101.2)},
	} {
		if v, w := Contact(c.a, c.o), Contact(c.o, c.a); !near64(v, c.want, 1e-6) || !near64(w, c.want, 1e-6) {
			t.Errorf("%s: %g and %g, want %g", c.name, v, w, c.want)
		}
	}
	if v := ContactOn(housed, rafter, seat); !near64(v, 45*12*slope, 1e-6) {
		t.Errorf("on the seat: %g, want %g", v, 45*12*slope)
	}
	if v := ContactOn(rafter, housed, seat.Flip()); !near64(v, 45*12*slope, 1e-6) {
		t.Errorf("on the seat from below: %g, want %g", v, 45*12*slope)
	}
	if v := ContactOn(housed, rafter, PlaneAt(V(0, 38, 0), V(0, 1, 0))); !near64(v, 45*(180-101.2), 1e-6) {
		t.Errorf("at the back: %g", v)
	}
	// Faces inside the material, where cells meet, bear on nothing.
	if v := ContactOn(housed, rafter, PlaneAt(V(100, 0, 0), V(1, 0, 0))); !near64(v, 12*79.4, 1e-6) {
		t.Errorf("at the side: %g, want %g", v, 12*79.4)
	}
}

// What two solids have in common plus what one has without the other is the
// one.
func TestOverlapAgainstMinus(t *testing.T) {
	for i := range 100 {
		r := rand.New(rand.NewPCG(17, uint64(i)))
		c, o := randomCarving(r, i%2 == 0), randomCarving(r, i%2 == 0)
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			a, tool := c.solid(), FromConvex(o.block)
			if got, want := Overlap(a, tool), a.Volume()-a.Minus(o.block).Volume(); !near64(got, want, 1e-3) {
				t.Errorf("Overlap = %g, want %g", got, want)
			}
			// Each part taken out of the block takes its share of the overlap.
			b := o.solid()
			if got, want := Overlap(a, b), Overlap(a, tool)-inOuts(a, o); !near64(got, want, 1e-3) {
				t.Errorf("Overlap with the carved one = %g, want %g", got, want)
			}
			if x, y := Overlap(a, b), Overlap(b, a); !near64(x, y, 1e-3) {
				t.Errorf("Overlap is %g one way and %g the other", x, y)
			}
		})
	}
}

// inOuts returns the volume of a in the block's parts that are taken out.
func inOuts(a Solid, o carving) float64 {
	var sum float64
	left := a
	for _, c := range o.outs {
		sum += Overlap(left, FromConvex(append(append(Convex(nil), o.block...), c...)))
		left = left.Minus(c)
	}
	return sum
}
