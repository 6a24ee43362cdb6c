package jobgen

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// settleLayers decides, from random numbers of its own, how the battens lie and
// what lies over them, so that the other parts of a job stay what they were
// without it.
func (g *gen) settleLayers(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+7)), inches: g.inches}
	if own.chance(0.4) {
		g.layers = &layers{seed: own.r.Uint64()}
	}
}

// layers is what is decided of them before the battens are.
type layers struct{ seed uint64 }

// writeLie says how battens are checked in, where the rafters leave room.
// first and last are the stated distances of the end battens.
func (g *gen) writeLie(first, last float64) {
	if g.layers == nil {
		return
	}
	own := gen{r: rand.New(rand.NewPCG(g.layers.seed, 1)), inches: g.inches}
	deep := own.up(min(g.batten.depth*0.45, g.rafter.depth*0.24) * (0.5 + 0.5*own.r.Float64()))
	most := min(g.batten.depth, g.rafter.depth) * 0.49
	const clear = 13 // of timber beyond a check
	if own.chance(0.3) || deep > most || first < clear+deep*g.tan || last < clear || g.hold[0] == over || g.hold[1] == over && g.overhang < 50 {
		return
	}
	check := fmt.Sprintf("{rafters: %s, clearance: %g}", own.s(deep), float64(own.r.IntN(4))/2)
	switch own.r.IntN(3) {
	case 0:
		check = own.s(deep)
	case 1:
		if under := own.up(3 + own.r.Float64()*g.batten.depth*0.2); under < g.batten.depth*0.45 {
			check = fmt.Sprintf("{rafters: %s, battens: %s}", own.s(deep), own.s(under))
		}
	}
	g.line("  lie: checked\n  check: %s", check)
}

// writeLaths adds laths over the battens.
func (g *gen) writeLaths(first float64) {
	if g.layers == nil {
		return
	}
	own := gen{r: rand.New(rand.NewPCG(g.layers.seed, 2)), inches: g.inches}
	if own.chance(0.4) || g.few {
		return
	}
	lath := section{own.size(15, 40), own.size(25, 60)}
	g.line("laths:\n  section: %s", g.sec(lath))
	room := g.length * 0.7
	switch own.r.IntN(3) {
	case 0:
		g.line("  number: %d", 1+own.r.IntN(max(1, int(room/lath.width/2))))
	case 1:
		g.line("  gap: %s", g.s(own.size(60, 300)))
	default:
		g.line("  shade: %d%%", 10+own.r.IntN(40))
	}
	if own.chance(0.6) {
		g.line("  inset: %s", g.s(own.size(0, 60)))
	}
	if reach := min(first, g.packer+g.plate.width) - 20 - lath.depth - g.batten.depth; g.tan < 0.2 && reach > 0 && own.chance(0.5) {
		g.line("  overhang: %s", g.s(math.Floor(own.r.Float64()*reach/6.35)*6.35))
	}
}
