package frame

import (
	"math"
	"testing"

	"plumbcut/geom"
)

// rebuiltWithin is the greatest distance, mm, between a corner of a member and
// that of its likeness made from figures.
const rebuiltWithin = 0.01

// TestCornersFromFigures makes every member again from the figures at full
// precision; every corner and every hole must come out where it is in the
// model.
func TestCornersFromFigures(t *testing.T) {
	eachLikeness(t, func(name string, m MemberFigures, a, b geom.Solid) {
		for _, d := range []float64{apart(a, b), apart(b, a)} {
			if d > rebuiltWithin {
				t.Errorf("%s: a corner of %s %d is %.3f mm off", name, m.Kind, m.No, d)
			}
		}
		p, q := a.Bores(), b.Bores()
		for k := range p {
			if len(p) != len(q) || p[k].At.Sub(q[k].At).Len() > rebuiltWithin || math.Abs(p[k].Radius-q[k].Radius) > rebuiltWithin {
				t.Errorf("%s: the holes of %s %d are others", name, m.Kind, m.No)
				break
			}
		}
	})
}

// apart is the greatest distance from a corner of a to the nearest of b.
func apart(a, b geom.Solid) float64 {
	worst := 0.0
	for _, e := range a.Edges() {
		for _, p := range []geom.Vec{e.A, e.B} {
			best := math.Inf(1)
			for _, g := range b.Edges() {
				best = min(best, p.Sub(g.A).Len(), p.Sub(g.B).Len())
			}
			worst = max(worst, best)
		}
	}
	return worst
}

// TestSaw reckons by hand: a plumb cut of slope 1:3 alone is a mitre of
// 18.43° with the blade square; a skew of 45° alone a tilt of 45°. Both at
// once: the tilt's tangent is 1·cos(18.43°) = 0.9487, so 43.49°.
func TestSaw(t *testing.T) {
	third := math.Atan(1.0 / 3)
	for _, c := range []struct{ plan, slope, mitre, tilt float64 }{
		{0, 0, 0, 0}, {0, third, 18.4349, 0}, {math.Pi / 4, 0, 0, 45}, {-math.Pi / 4, -third, 18.4349, 43.4915},
	} {
		m, k := EndCut{Plan: c.plan, Slope: c.slope}.Saw()
		if math.Abs(degrees(m)-c.mitre) > 1e-4 || math.Abs(degrees(k)-c.tilt) > 1e-4 {
			t.Errorf("plan %g, slope %g: mitre %.4f, tilt %.4f; want %g, %g", c.plan, c.slope, degrees(m), degrees(k), c.mitre, c.tilt)
		}
	}
	// The cut meets the four edges of a stick 100 × 50 at 10 + 50 across and
	// 100/3 down.
	c, s := EndCut{At: 10, Plan: math.Pi / 4, Slope: third}, Member{Section: Section{Depth: 100, Width: 50}}
	if got := c.Meets(s, 50, 0); math.Abs(got-(60+100.0/3)) > 1e-9 {
		t.Errorf("meets the far lower edge at %g, want %g", got, 60+100.0/3)
	}
}
