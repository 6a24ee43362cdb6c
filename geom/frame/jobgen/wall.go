package jobgen

import (
	"fmt"
	"math/rand/v2"
)

// wall is what the plate is fixed to.
type wall struct {
	kind     string
	studless bool    // nothing is said of studs
	clad     float64 // thickness of the cladding; 0: as in a plain job
	sunk     float64 // how far timbers lie behind its face
	more     string  // further keys of the wall
	fixing   string  // further keys of the plate's fixing
	stagger  float64 // where two rows of fixings stand between their limits, 0 to 1; 0: one row
}

// settleWall decides, from random numbers of its own, what the plate is fixed
// to, so that jobs of cladding on studs stay what they were without it.
func (g *gen) settleWall(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+11)), inches: g.inches}
	if own.chance(0.3) {
		g.wall.stagger = 0.05 + 0.9*own.r.Float64()
	}
	if own.chance(0.55) {
		return
	}
	w := &g.wall
	w.kind = own.pick("solid masonry", "concrete", "unfilled masonry", "masonry veneer", "cladding cut back", "fascia")
	switch w.kind {
	case "masonry veneer":
		w.clad = own.size(50, 120)
		if own.chance(0.6) {
			w.more = fmt.Sprintf("\n  cavity: %s", own.s(own.size(0, 60)))
		}
	case "cladding cut back":
		if g.hold[0] == over { // its rafters would stand in the cladding
			w.kind = ""
			return
		}
		w.clad = own.size(8, 10)
		w.sunk = w.clad
		if own.chance(0.6) {
			w.more = fmt.Sprintf("\n  cut_back: {above: %s, below: %s, ends: %s}\n  flashing: folded metal", own.s(own.size(10, 60)), own.s(own.size(0, 20)), own.s(own.size(0, 30)))
		}
	case "fascia":
		g.settleFascia(&own)
	default:
		w.studless = true
		if own.chance(0.6) {
			w.fixing = fmt.Sprintf(", from_edge: %s, stated: anchors as the designer says", own.s(own.size(50, 250)))
		}
	}
}

// settleFascia sets a fascia behind the plate, its gutter above all timber.
func (g *gen) settleFascia(own *gen) {
	if g.wallLeft || g.wallRight {
		g.wall.kind = ""
		return
	}
	underside := g.top - g.plate.depth - own.size(0, 40)
	depth := g.top - underside + own.size(200, 260) + g.up(g.rise)
	gutter := ""
	if own.chance(0.6) {
		g.soffit = true // no roof runs up into it
		gutter = fmt.Sprintf(", gutter: {underside: %s, height: %s, out: %s}", own.s(own.up(g.top+g.up(g.rise)+130)), own.s(own.size(70, 120)), own.s(own.size(100, 150)))
	}
	g.wall.more = fmt.Sprintf("\n  fascia: {thickness: %s, depth: %s, underside: %s, eave: %s%s}",
		own.s(own.size(18, 40)), own.s(own.up(depth)), own.s(own.up(underside)), own.s(own.size(300, 700)), gutter)
}

// rows are the keys of two rows of fixings, where plate and packers have room
// for them.
func (g *gen) rows(hole, packer float64) string {
	half := g.plate.depth / 2
	low, high := max(hole, half+hole-packer/2), half-hole
	if g.packer == 0 {
		low = hole
	}
	at := g.up(low + (high-low)*g.wall.stagger)
	if g.wall.stagger == 0 || at > high {
		return ""
	}
	return fmt.Sprintf(", rows: staggered, row_edge: %s", g.s(at))
}
