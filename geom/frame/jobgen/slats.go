package jobgen

import (
	"math"
	"math/rand/v2"
)

// writeSlats puts slats between the rafters instead of the battens that were just
// written from the given place on. Jobs that would have
// very many of them keep their battens.
func (g *gen) writeSlats(from int) {
	if g.layers == nil {
		return
	}
	own := gen{r: rand.New(rand.NewPCG(g.layers.seed, 9)), inches: g.inches}
	if own.chance(0.7) || g.length > 5000 || g.tan > 0.3 {
		return
	}
	turn := (15 + 55*own.r.Float64()) * math.Pi / 180
	sin, cos := math.Sincos(turn)
	thick, cleat := own.size(12, 22), section{own.size(12, 25), own.size(18, 28)}
	down := own.size(0, 10)
	wide := math.Floor((0.95*g.rafter.depth - down - (thick+cleat.depth)*cos - 1) / sin)
	if wide = min(wide, 120); g.inches {
		wide = math.Floor(wide/6.35) * 6.35
	}
	if wide < 30 {
		return
	}
	text := g.b.String()[:from]
	g.b.Reset()
	g.b.WriteString(text)
	seen := wide*cos + thick*sin
	pitch := max(200, seen+10)
	g.line("slats:\n  section: %s\n  angle: %.1f\n  down: %s", g.sec(section{thick, wide}), turn*180/math.Pi, own.s(down))
	if own.chance(0.5) {
		g.line("  raised: outer side")
	}
	// The rafters' sides lean, and a cleat stands out under its slat.
	clear := own.up(g.rafter.depth*g.tan + cleat.depth*sin + 5)
	g.line("  first: %s\n  last: %s", own.s(clear+own.size(0, 100)), own.s(clear+own.size(0, 100)))
	if own.chance(0.5) {
		g.line("  centres: %s", own.s(own.up(pitch+200*own.r.Float64())))
	} else {
		g.line("  shade: %.1f%%", 100*seen/(pitch+100*own.r.Float64())*0.9)
	}
	g.line("  cleats: {section: %s}", g.sec(cleat))
}
