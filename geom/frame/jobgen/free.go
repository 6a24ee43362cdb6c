package jobgen

import (
	"math/rand/v2"
	"strings"
)

// settleFree decides, from random numbers of its own, whether the frame stands
// free: the plate is then a rear beam on posts of its own.
func (g *gen) settleFree(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+31)), inches: g.inches}
	if g.wallLeft || g.wallRight || own.chance(0.75) {
		return
	}
	g.free, g.rear = true, own.chance(0.5)
	g.packer = 0
	g.plate.width = min(g.up(g.plate.width+own.size(0, 30)), g.post.depth)
	if side := g.plate.width/2 - g.housing[0]; side < g.rod/2+1.5 {
		g.rod = 0
	}
	g.fall = (g.out - g.beam.width - g.plate.width) * g.tan
}

// writeRearBeam is writePlate of a frame that stands free.
func (g *gen) writeRearBeam() {
	g.line("rear_beam:\n  section: %s\n  from: %s\n  length: %s", g.sec(g.plate), g.s(g.from), g.s(g.length))
	if g.chance(0.5) {
		g.line("  top: %s", g.s(g.top))
	} else {
		g.line("  underside: %s", g.s(g.top-g.plate.depth))
	}
	g.writeHold(0)
}

// writeRearPosts places the posts under the rear beam. Without it they stand
// opposite those in front, which must then stand under it too.
func (g *gen) writeRearPosts() {
	if !g.rear && g.beamFrom >= g.from && g.beamTo <= g.from+g.length {
		return
	}
	half := g.post.width / 2
	first, last := g.up(g.from+half+g.size(0, 200)), g.from+g.length-half-g.size(0, 200)
	at := []string{g.s(first), g.s(last)}
	if last-first > 2400 {
		at = []string{g.s(first), g.s(g.up((first + last) / 2)), g.s(last)}
	}
	g.line("  rear: [%s]", strings.Join(at, ", "))
}

// arris is what an arris of the plate is called in the job's own form.
func (g *gen) arris(of string) string {
	switch {
	case !g.free:
		return of
	case of == "plate outer arris":
		return "rear beam inner arris"
	case of == "beam inner arris" || of == "beam outer arris":
		return of
	}
	return "rear beam outer arris"
}
