package jobgen

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// writeTrim adds blocks, a fascia and a valance to some jobs, from random
// numbers of their own.
func (g *gen) writeTrim(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+41)), inches: g.inches}
	if own.chance(0.15) && !strings.Contains(g.b.String(), "lie: checked") && !strings.Contains(g.b.String(), "slats:") {
		own.blocks(g)
	}
	if own.chance(0.5) && g.hold[1] == over && g.overhang >= 300 && g.flatTail() && !g.wallLeft && !g.wallRight {
		own.line("fascia:\n  section: %s\n  overhang: %s", own.sec(section{own.size(120, 240), own.size(19, 32)}), own.s(own.size(0, 60)))
	}
	if own.chance(0.12) && g.bracing == "" && g.meet.way == "" {
		own.valance(g)
	}
	g.b.WriteString(own.b.String())
}

// blocks writes one or two rows of blocks, clear between plate and beam.
func (g *gen) blocks(of *gen) {
	const clear = 250 // from plate and beam
	span := (of.out - of.beam.width - of.packer - of.plate.width) * math.Hypot(1, of.tan)
	if span < 3*clear {
		return
	}
	size := section{g.size(40, of.rafter.depth*0.7), g.size(30, 50)}
	g.line("blocking:\n  section: %s\n  set: %s", g.sec(size), g.pick("square", "plumb"))
	at := g.size(clear, span-clear)
	rows := g.s(at)
	if of.hold[1] == over && of.rod == 0 && of.tan < 0.2 && size.depth < 0.5*of.rafter.depth {
		rows += ", {over: beam}"
	}
	g.line("  at: [%s]", rows)
	if g.chance(0.5) {
		g.line("  screws: {each: %d, diameter: %s, length: %s}", 1+g.r.IntN(3), g.s(g.size(4, 8)), g.s(g.size(80, 140)))
	}
}

// valance writes a valance under the beam.
func (g *gen) valance(of *gen) {
	thick := g.size(19, 32)
	if of.hold[1] == over || g.chance(0.5) {
		g.line("valance:\n  section: %s\n  set: between posts", g.sec(section{g.size(80, 140), thick}))
		if g.chance(0.5) {
			g.line("  set_back: %s", g.s(g.size(0, 10)))
		}
		return
	}
	below := g.size(20, 100)
	g.line("valance:\n  section: %s\n  set: on the face\n  below: %s", g.sec(section{below + g.up(of.beam.depth/2), thick}), g.s(below))
	g.line("  screws: {each: %s}", fmt.Sprint(1+g.r.IntN(3)))
}

// writeRoofStraps lays diagonal straps over all bays of some jobs, from random
// numbers of their own.
func (g *gen) writeRoofStraps(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+62)), inches: g.inches}
	if !own.chance(0.15) {
		return
	}
	on := own.pick("undersides", "top edges")
	if strings.Contains(g.b.String(), "lie: checked") {
		on = "undersides"
	}
	own.line("roof_straps:\n  width: %s\n  on: %s\n  inset: %s", own.s(own.size(20, 32)), on, own.s(own.size(380, 480)))
	if own.chance(0.5) {
		own.line("  thickness: %s\n  past: %s\n  nails: %d\n  tension: a turnbuckle", own.s(own.size(0.8, 1.5)), own.s(own.size(0, 150)), 1+own.r.IntN(4))
	}
	g.b.WriteString(own.b.String())
}

// flatTail reports whether the rafters' tails end flat.
func (g *gen) flatTail() bool {
	for _, shape := range []string{"shape: plumb", "shape: square", "shape: bevelled"} {
		if strings.Contains(g.tail, shape) {
			return true
		}
	}
	return false
}
