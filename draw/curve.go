package draw

import (
	"math"

	"plumbcut/geom"
)

const (
	// flatness is the furthest that a flattened curve may lie from the true
	// one, mm: a fifth of what a sharp pencil can show, and cheap.
	flatness = 0.01

	// bezierError is the furthest that a Bézier curve may lie from the true
	// arc, mm: well under the 0.1 mm of a 1:1 template.
	bezierError = 0.005

	// quarterError is how far the usual cubic curve for a quarter of a circle
	// of radius 1 lies from it. It falls with the sixth power of the angle.
	quarterError = 2.73e-4
)

// arcTangent is the derivative of Arc.At.
func arcTangent(a geom.Arc, t float64) geom.Pt {
	sin, cos := math.Sincos(t)
	return a.Major.Mul(-sin).Add(a.Major.Left().Mul(a.Ratio * cos))
}

// largest is the greatest radius of the ellipse.
func largest(a geom.Arc) float64 { return a.Major.Len() * max(1, math.Abs(a.Ratio)) }

// Bezier is a cubic curve from the point before: two control points and the
// end.
type Bezier [3]geom.Pt

// Beziers is an elliptical arc as cubic curves, within 0.005 mm of it. All
// writers use it, so that a curve is the same in each of them.
func Beziers(a geom.Arc) []Bezier {
	sweep := a.End - a.Start
	step := math.Pi / 2
	if r := largest(a); r*quarterError > bezierError {
		step *= math.Pow(bezierError/(r*quarterError), 1.0/6)
	}
	n := pieces(sweep, step)
	out := make([]Bezier, n)
	dt := sweep / float64(n)
	k := 4.0 / 3 * math.Tan(dt/4)
	for i := range out {
		t0, t1 := a.Start+dt*float64(i), a.Start+dt*float64(i+1)
		p0, p1 := a.At(t0), a.At(t1)
		out[i] = Bezier{p0.Add(arcTangent(a, t0).Mul(k)), p1.Sub(arcTangent(a, t1).Mul(k)), p1}
	}
	return out
}

// appendArc adds the points of a flattened arc after its start.
func appendArc(line []geom.Pt, a geom.Arc) []geom.Pt {
	sweep := a.End - a.Start
	step := math.Pi / 4
	if r := largest(a); r > flatness {
		step = min(step, 2*math.Acos(1-flatness/r))
	}
	n := pieces(sweep, step)
	for i := 1; i <= n; i++ {
		line = append(line, a.At(a.Start+sweep*float64(i)/float64(n)))
	}
	return line
}

// maxPieces bounds the work for an arc that no sheet of paper could hold.
const maxPieces = 10_000

func pieces(sweep, step float64) int {
	n := math.Ceil(math.Abs(sweep) / step)
	if !(n > 1) { // also when the sweep is not a number
		return 1
	}
	return int(min(n, maxPieces))
}
