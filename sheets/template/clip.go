package template

import (
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
)

func sortFloats(x []float64) { slices.Sort(x) }

// within is what of a line lies in a rectangle or on its edge; false if that is
// no length.
func within(a, b geom.Pt, r draw.Rect) (geom.Pt, geom.Pt, bool) {
	lo, hi := 0.0, 1.0
	d := b.Sub(a)
	edge := func(speed, room float64) bool { // of one side: the line may go on while speed·t ≤ room
		switch {
		case speed > 0:
			hi = min(hi, room/speed)
		case speed < 0:
			lo = max(lo, room/speed)
		}
		return speed != 0 || room >= -same
	}
	ok := edge(-d.X, a.X-r.X0) && edge(d.X, r.X1-a.X) && edge(-d.Y, a.Y-r.Y0) && edge(d.Y, r.Y1-a.Y)
	if !ok || (hi-lo)*d.Len() < same {
		return a, b, false
	}
	p, q := a, b // the very ends where nothing is cut off
	if lo > 0 {
		p = a.Lerp(b, lo)
	}
	if hi < 1 {
		q = a.Lerp(b, hi)
	}
	return p, q, true
}

// cropped is what of a convex polygon lies in a rectangle.
func cropped(pts []geom.Pt, r draw.Rect) []geom.Pt {
	for _, inside := range []func(geom.Pt) float64{
		func(p geom.Pt) float64 { return p.X - r.X0 },
		func(p geom.Pt) float64 { return r.X1 - p.X },
		func(p geom.Pt) float64 { return p.Y - r.Y0 },
		func(p geom.Pt) float64 { return r.Y1 - p.Y },
	} {
		var out []geom.Pt
		for i, p := range pts {
			q := pts[(i+1)%len(pts)]
			dp, dq := inside(p), inside(q)
			if dp >= 0 {
				out = append(out, p)
			}
			if dp < 0 && dq > 0 || dp > 0 && dq < 0 {
				out = append(out, p.Lerp(q, dp/(dp-dq)))
			}
		}
		pts = out
	}
	return pts
}

// hits reports whether a line passes through a rectangle.
func hits(s stroke, r draw.Rect) bool {
	if max(s.a.X, s.b.X) < r.X0 || min(s.a.X, s.b.X) > r.X1 || max(s.a.Y, s.b.Y) < r.Y0 || min(s.a.Y, s.b.Y) > r.Y1 {
		return false
	}
	_, _, ok := within(s.a, s.b, r)
	return ok
}
