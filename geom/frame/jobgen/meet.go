package jobgen

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// The words of the job file for how the beam meets its posts.
const (
	checkedOut  = "checked out"
	faceFixed   = "face-fixed"
	onBracket   = "on bracket"
	twinBolted  = "twin"
	twinChecked = "twin checked out"
)

// meetChamfer is the steepest weathering, in degrees, of posts that run up
// beside their beam: it costs the bolts their room.
const meetChamfer = 10

// meet is how the beam meets its posts; the zero value is on top of them.
type meet struct {
	way           string
	deep          float64 // of the check-outs
	said          bool    // the file says how deep
	tall          bool    // the posts stand above the beam
	bolt, edge    float64
	number        int
	pattern, tops string
	bracket       string
}

func (m meet) twin() bool { return m.way == twinBolted || m.way == twinChecked }

func (m meet) runsUp() bool { return m.way != "" && m.way != onBracket }

// settleMeet decides, from random numbers of its own, how the beam meets its
// posts, so that jobs of the plain form stay what they were without it.
func (g *gen) settleMeet(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+45)), inches: g.inches}
	g.wide = g.beam.width
	if g.free || own.chance(0.5) {
		return
	}
	m := &g.meet
	m.way = own.pick(checkedOut, checkedOut, faceFixed, onBracket, twinBolted, twinChecked)
	g.rod = 0
	if m.way == onBracket {
		m.bracket = fmt.Sprintf("{thickness: %s, line: %s}", own.s(own.size(3, 10)), own.pick("flush", "centred"))
		return
	}
	switch m.way {
	case checkedOut:
		m.deep = min(g.beam.width, g.post.depth/2)
		if own.chance(0.4) {
			m.deep, m.said = own.size(15, min(g.beam.width, g.post.depth*0.6)-7), true
		}
	case twinChecked:
		m.deep = min(g.beam.width/2, g.post.depth/4)
		if own.chance(0.4) {
			m.deep, m.said = own.size(5, min(g.beam.width, g.post.depth*0.3)-7), true
		}
	}
	if m.twin() {
		g.wide = 2*(g.beam.width-m.deep) + g.post.depth
		g.fall = (g.out - g.wide - g.packer - g.plate.width) * g.tan
	}
	m.bolt, m.number, m.pattern = own.size(8, 12), 1+own.r.IntN(4), own.pick("in line", "staggered", "in pairs")
	m.edge = 4 * m.bolt
	if own.chance(0.3) {
		m.edge = own.up(m.bolt * (2 + 3*own.r.Float64()))
	}
}

// settleBolts makes the beam deep enough for its bolts, once it is known how it
// holds the rafters, and decides on the posts' tops.
func (g *gen) settleBolts(seed uint64) {
	m := &g.meet
	if !m.runsUp() {
		return
	}
	own := gen{r: rand.New(rand.NewPCG(seed, stream+46)), inches: g.inches}
	drop := (g.post.depth - m.deep) * math.Tan(meetChamfer*math.Pi/180)
	plumb := g.rafter.depth * math.Hypot(1, g.tan)
	const clear = 10 // under a rafter
	top := -g.drop[1] - plumb - clear
	switch {
	case g.hold[1] == over:
		top = min(0, g.heel-plumb-clear)
	case m.twin():
		top = 0
		if own.chance(0.4) {
			m.tops, m.tall = own.s(own.size(drop+30, 250)), true
		}
	}
	if m.tops == "" && own.chance(0.3) {
		top = -own.up(own.size(0, 10) - top)
		m.tops = own.s(top)
	}
	heights := m.number
	if m.pattern == "in pairs" {
		heights = (m.number + 1) / 2
	}
	apart := 4 * m.bolt
	if own.chance(0.2) {
		apart = 2 * m.bolt
	}
	g.beam.depth = max(g.beam.depth, g.up(2*m.edge+float64(heights-1)*apart+2+drop-top))
}

// writeMeet says how the beam meets the posts.
func (g *gen) writeMeet() {
	m := g.meet
	if m.way == "" {
		return
	}
	g.line("  beam: %s", m.way)
	if m.bracket != "" {
		g.line("  bracket: %s", m.bracket)
		return
	}
	if m.said {
		g.line("  check_out: %s", g.s(m.deep))
	}
	if m.tops != "" {
		g.line("  top: %s", m.tops)
	}
	edge := ""
	if m.edge != 4*m.bolt {
		edge = ", edge: " + g.s(m.edge)
	}
	g.line("  bolts: {diameter: %s, number: %d, pattern: %s%s}", g.s(m.bolt), m.number, m.pattern, edge)
}
