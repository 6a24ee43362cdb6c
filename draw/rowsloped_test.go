package draw

import (
	"math"
	"testing"

	"plumbcut/geom"
)

// Rows over a slope say what a tape laid along it says, stand to scale at
// their points and lie as far from the line as level ones.
func TestSlopedRows(t *testing.T) {
	h := hand("A3")
	for _, deg := range []float64{-60, -30, -2, 0, 2, 45} {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		on := func(u float64) geom.Vec { return geom.V(u*cos, 0, u*sin) }
		v := front(1./20, geom.P(150, 150))
		v.Base = geom.P(300, -200) // the view's base is not its origin
		rows := NewSlopedRows(v, on(0), on(1500))
		rows.Running("", on(0), on(400), on(1100), on(1500))
		rows.Chain("", on(0), on(700), on(1500))
		s := &Sheet{Paper: h.Paper}
		rows.Draw(s, h)
		if got, want := figuresOf(s, RunningDim), "0 400 1100 1500"; got != want {
			t.Errorf("%g°: running %q, want %q", deg, got, want)
		}
		if got, want := figuresOf(s, ChainDim), "700 800"; got != want {
			t.Errorf("%g°: chain %q, want %q", deg, got, want)
		}
		for _, f := range s.Audit(h.Figures) {
			t.Errorf("%g°: %v", deg, f)
		}
		p, up := v.Pt(on(0)), geom.P(-sin, cos)
		for _, d := range s.Dims {
			if off := d.P.Sub(p).Dot(up); off < firstRow-1e-9 {
				t.Errorf("%g°: %q stands %.3f mm off the line", deg, d.Figure, off)
			}
			if d.View != v {
				t.Errorf("%g°: %q is recorded in another view", deg, d.Figure)
			}
		}
		const overshoot = 0.1 // mm: round figures reach a little past their height
		if box := rows.Extent(h); !box.Expand(overshoot).Encloses(inkOf(s)) {
			t.Errorf("%g°: extent %v does not hold %v", deg, box, inkOf(s))
		}
	}
}

// inkOf is the rectangle round the texts of a sheet.
func inkOf(s *Sheet) Rect {
	r := EmptyRect()
	for _, it := range s.Items {
		if it.Text != nil {
			r = r.Union(it.Text.Box())
		}
	}
	return r
}
