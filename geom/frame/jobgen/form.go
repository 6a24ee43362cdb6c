package jobgen

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// The words of the job file for how plate and beam hold the rafters.
const (
	over    = "over"
	between = "between"
)

// settleForm decides, from random numbers of its own, how plate and beam hold
// the rafters, so that jobs of the plain form stay what they were without it.
func (g *gen) settleForm(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+2)), inches: g.inches}
	if own.chance(0.5) {
		return
	}
	for i := range g.hold {
		g.hold[i] = own.pick("", over, over, between)
	}
	if plumb := g.rafter.depth * math.Hypot(1, g.tan); g.meet.twin() && g.wide*g.tan > plumb/3 && g.hold[1] == over {
		g.hold[1] = between // too steep for one birdsmouth over both
	}
	if g.hold[1] == over || g.free && g.hold[0] == over {
		g.rod = 0 // its nut would stand in the way of a rafter, wherever that lies
	}
	if g.hold[1] == over {
		g.writeTail(&own)
	}
	if g.hold[0] == over && g.free && own.chance(0.5) {
		g.head = own.size(0, 400)
	}
	if g.hold[0] == over && g.packer > 0 && own.chance(0.5) {
		g.head = own.up(own.r.Float64() * (g.packer - 1))
	}
	g.settleHeel(&own)
}

// seatLeast is the least seat of a rafter on one timber.
const seatLeast = 38.1

// settleHeel takes the heel height that the program takes, or states one.
func (g *gen) settleHeel(own *gen) {
	if g.hold[0] != over && g.hold[1] != over {
		return
	}
	wide, least := 0.0, 0.0
	for i, w := range [][2]float64{{g.plate.width, g.plate.width}, {g.wide, g.beam.width}} {
		if g.hold[i] == over {
			wide, least = max(wide, w[0]), max(least, w[0]-w[1]+min(seatLeast, w[1]))
		}
	}
	plumb := g.rafter.depth * math.Hypot(1, g.tan)
	g.heel = min(max(plumb-wide*g.tan, plumb*2/3), plumb-least*g.tan)
	if said := own.up(plumb * (0.6 + 0.4*own.r.Float64())); own.chance(0.6) && said <= g.heel {
		g.heel, g.heelSaid = said, true
	}
}

// writeTail decides on the tails; a square or bevelled one must not reach back
// into its seat.
func (g *gen) writeTail(own *gen) {
	if own.chance(0.2) {
		return
	}
	g.overhang = own.size(0, 500)
	shape := own.pick("plumb", "square", "bevelled")
	plumb := g.rafter.depth * math.Hypot(1, g.tan)
	switch {
	case shape == "square" && g.overhang < g.rafter.depth:
		shape = "plumb"
	case shape == "bevelled" && g.overhang < plumb:
		shape = "plumb"
	}
	g.tail = fmt.Sprintf("{overhang: %s, shape: %s}", own.s(g.overhang), shape)
	if shape == "bevelled" {
		g.tail = fmt.Sprintf("{overhang: %s, shape: bevelled, nose: %s, bevel: %d°}", own.s(g.overhang), own.s(own.up(plumb*(0.3+0.4*own.r.Float64()))), 45+own.r.IntN(30))
	}
}

// writeHold says how the plate (0) or the beam (1) holds the rafters.
func (g *gen) writeHold(i int) {
	switch g.hold[i] {
	case over:
		g.line("  rafters: over")
	case between:
		g.line("  rafters: between\n  rafter_drop: %s", g.s(g.drop[i]))
	default:
		g.line("  housing: %s\n  rafter_drop: %s", g.s(g.housing[i]), g.s(g.drop[i]))
	}
}

// writeOver says what only rafters that lie over something have.
func (g *gen) writeOver() {
	if g.heelSaid {
		g.line("  heel: %s", g.s(g.heel))
	}
	if g.head > 0 {
		g.line("  head: %s", g.s(g.head))
	}
	if g.tail != "" {
		g.line("  tail: %s", g.tail)
	}
}
