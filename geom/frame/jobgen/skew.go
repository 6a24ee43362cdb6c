package jobgen

import (
	"math"
	"math/rand/v2"
)

// settleSkew lets the beam of some jobs run on the skew, from random numbers of
// its own. What such a frame is not made with is left out of the job. It must be
// settled before the heights: the rafters lie lower along the beam at its outer
// end, and the beam must be as much deeper.
func (g *gen) settleSkew(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+61)), inches: g.inches}
	if own.chance(0.6) || g.wallLeft || g.wallRight || g.meet.runsUp() || g.hold[1] == over {
		return
	}
	const steps = 60 // mm, the most by which the rafters step down along the beam
	most := min(0.3*g.out, 0.2*(g.beamTo-g.beamFrom))
	if g.tan > 0 {
		most = min(most, steps/g.tan)
	}
	off := own.size(most*0.2, most)
	if off < 5 {
		return
	}
	g.skew = off
	if own.chance(0.5) {
		g.skew = -off
	}
	g.level = false
	g.beamTo = g.beamFrom + g.up(math.Hypot(g.beamTo-g.beamFrom, g.skew))     // as far along as before
	end := g.up(g.beam.width * math.Abs(off) / (g.beamTo - g.beamFrom) * 1.3) // of the beam, that is cut on the skew
	g.past[0], g.past[1] = g.past[0]+end, g.past[1]+end
	g.beam.depth = g.up(g.beam.depth + off*g.tan*1.5 + 10)
}

// writeOut says how far out the beam is: at its left end, or at both.
func (g *gen) writeOut() {
	if g.skew == 0 {
		g.line("  out: %s", g.s(g.out))
		return
	}
	g.line("  out: {left: %s, right: %s}", g.s(g.out), g.s(g.up(g.out+g.skew)))
}

// skewFall is the fall, which no drop says of a frame on the skew.
func (g *gen) skewFall() { g.line("fall:\n  angle: %.4f", math.Atan(g.tan)*180/math.Pi) }
