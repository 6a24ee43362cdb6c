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
	if own.chance(0.4) && g.skew == 0 {
		g.layers = &layers{seed: own.r.Uint64()}
	}
}

// layers is what is decided of them before the battens are.
type layers struct{ seed uint64 }

// writeLie says how battens are checked in, where the rafters leave room.
// first and last are the stated distances of the end battens.
func (g *gen) writeLie(first, last float64) {
	g.proud = g.batten.depth
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
	under := 0.0
	check := fmt.Sprintf("{rafters: %s, clearance: %g mm}", own.s(deep), float64(own.r.IntN(4))/2)
	switch own.r.IntN(3) {
	case 0:
		check = own.s(deep)
	case 1:
		if u := own.up(3 + own.r.Float64()*g.batten.depth*0.2); u < g.batten.depth*0.45 {
			under = u
			check = fmt.Sprintf("{rafters: %s, battens: %s}", own.s(deep), own.s(under))
		}
	}
	g.line("  lie: checked\n  check: %s", check)
	g.proud -= deep + under
}

// writeLaths adds laths over the battens.
func (g *gen) writeLaths(first float64) {
	if g.layers == nil || g.writeRoof() {
		return
	}
	own := gen{r: rand.New(rand.NewPCG(g.layers.seed, 2)), inches: g.inches}
	if own.chance(0.4) {
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

// writeRoof lays a roof over the battens where nothing stands in its way, and
// reports whether it did.
func (g *gen) writeRoof() bool {
	own := gen{r: rand.New(rand.NewPCG(g.layers.seed, 4)), inches: g.inches}
	clear := g.proud - 2 - g.wide*g.tan
	const nut = 30 // a rod stands above its beam, unless the job says otherwise
	if g.free || g.soffit || g.meet.tall || own.chance(0.4) || g.hold[0] != over && g.drop[0] > clear || g.hold[1] != over && g.drop[1] > clear || g.rod > 0 && g.drop[1]+nut > clear {
		return false
	}
	width := own.size(600, 1200)
	g.line("roof:\n  sheet: sample sheet\n  profile: %s\n  width: %s\n  lap: %s", own.s(own.size(4, 60)), own.s(width), own.s(own.size(0, width*0.15)))
	if own.chance(0.5) {
		g.line("  look: clear\n  thickness: %s\n  from: right", own.s(own.size(1, 6)))
	}
	if fall := math.Atan(g.tan) * 180 / math.Pi; fall > 1 && own.chance(0.5) {
		g.line("  least_fall: %.2f\n  stated_by: a data sheet", fall*0.7*(0.4+0.6*own.r.Float64()))
	}
	if own.chance(0.7) {
		gutter := section{own.size(70, 130), own.size(90, 160)}
		g.line("  eave: %s\n  gutter: {section: %s}", own.s(own.size(20, 70)), g.sec(gutter))
		if own.chance(0.8) {
			g.line("  downpipes: [{at: %s, size: %s}]", own.s(own.up(g.from+g.length*(0.2+0.6*own.r.Float64()))), own.s(own.size(50, 85)))
		}
	}
	if own.chance(0.5) {
		g.line("  flashing: {up: %s, over: %s}", own.s(own.size(50, 150)), own.s(own.size(80, 200)))
	}
	return true
}
