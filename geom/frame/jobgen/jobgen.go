// Package jobgen writes random job files for the audits. Each seed gives one
// job, always the same; nearly all of them can be built. Between them they use
// every option of the job file: both systems of units, every end rule, seat,
// base and kind of fall, every way of holding the rafters and every tail, every
// way in which a beam meets its posts, beams that run past these, places that are
// kept clear of them, frames that stand free, returns with posts fixed to them, openings, a soffit,
// a deck, ground in steps.
//
// A job is drawn from the frame outwards: first the slope and the sections
// that it needs, then the heights, then what stands around. So it is valid by
// construction rather than by trial.
package jobgen

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"

	"plumbcut/geom/measure"
)

// Job returns the text of a job file.
func Job(seed uint64) []byte {
	g := &gen{r: rand.New(rand.NewPCG(seed, stream))}
	g.inches = g.chance(0.2)
	g.shape()
	g.settleFree(seed)
	g.settleMeet(seed)
	g.settleForm(seed)
	g.settleBolts(seed)
	g.settleReach(seed)
	g.settleSkew(seed)
	g.heights()
	g.settleOrder(seed)
	g.settleLayers(seed)
	g.settleWall(seed)
	g.settleBase(seed)
	g.write(seed)
	return []byte(g.b.String())
}

// stream parts these random numbers from any others of the same seed.
const stream = 0x706c756d62

// gen holds one job in the making, in millimetres.
type gen struct {
	r      *rand.Rand
	b      strings.Builder
	inches bool

	from, length         float64 // of plate and, but for beamFrom and beamTo, beam
	beamFrom, beamTo     float64
	out                  float64
	tan                  float64
	plate, beam          section
	post, rafter, batten section
	packer               float64 // thickness; 0: none
	housing              [2]float64
	drop                 [2]float64
	rod                  float64
	wallLeft, wallRight  bool // a post on a return there
	wallGap              float64
	ends                 string
	inset                float64
	level                bool // seats
	ground, deck         float64
	deckOut, top         float64
	meet                 meet
	wide                 float64   // of the beam, or of twin beams and the post between
	free                 bool      // a rear beam for the plate
	rear                 bool      // with posts placed by themselves
	hold                 [2]string // of plate and beam: "" is housed and unsaid
	heel, head           float64
	heelSaid             bool
	tail                 string
	overhang, rise       float64 // of the tails; of rafters over the plate above its top
	straps, order        string  // what the file says of straps, and of buying
	layers               *layers
	past                 [2]float64 // how much farther the beam runs past its end posts
	site                 string     // keys of the site
	postAt               []float64
	hole                 float64 // across
	proud                float64 // of the battens, above the rafters
	soffit               bool
	wall                 wall
	stand                stand
	fall                 float64 // of the line, plate's outer to beam's inner face
	bracing              string  // what the file says of knee braces
	skew                 float64 // how much farther out the beam is at its right end than at its left
}

type section struct{ depth, width float64 }

func (g *gen) chance(p float64) bool { return g.r.Float64() < p }

func (g *gen) pick(ss ...string) string { return ss[g.r.IntN(len(ss))] }

// length between lo and hi, on the tape: whole millimetres or quarter inches.
func (g *gen) size(lo, hi float64) float64 {
	return g.up(lo + (hi-lo)*g.r.Float64())
}

// up rounds a length up to the tape.
func (g *gen) up(v float64) float64 {
	step := 1.0
	if g.inches {
		step = measure.Inch / 4
	}
	return math.Ceil(v/step-1e-9) * step
}

// shape chooses the slope, the plan and the sections.
func (g *gen) shape() {
	g.from = g.size(-600, 600)
	g.length = g.size(1800, 8500)
	g.out = g.size(1500, 4500)
	g.tan = 1 / (8 + 60*g.r.Float64())
	switch {
	case g.chance(0.1):
		g.tan = 0
	case g.chance(0.15):
		g.tan = math.Tan(g.r.Float64())
	}
	g.rafter = section{g.size(70, 190), g.size(32, 50)}
	g.level = g.chance(0.4)
	for i := range g.housing {
		g.housing[i] = g.size(8, 14)
		g.drop[i] = g.size(0, 25)
		if g.chance(0.4) {
			g.drop[i] = 0
		}
	}
	g.plate = section{g.holding(0), g.size(36, 60)}
	g.beam = section{g.holding(1), g.size(45, 90)}
	g.post = section{g.size(g.beam.width, 150), g.size(75, 150)}
	if g.chance(0.1) {
		g.post.depth = g.beam.width
	}
	if g.chance(0.8) {
		g.packer = g.size(10, 30)
	}
	if side := g.beam.width/2 - g.housing[1]; g.chance(0.6) && side > 10 {
		g.rod = g.up(8 + g.r.Float64()*min(8, side-10))
	}
	g.fall = (g.out - g.beam.width - g.packer - g.plate.width) * g.tan
	g.sides()
}

// holding is a depth of plate (0) or beam (1) that leaves a third below the
// housings, or in some jobs only a fifth.
func (g *gen) holding(i int) float64 {
	need := g.drop[i] + g.rafter.depth*math.Hypot(1, g.tan) + g.housing[i]*g.tan
	share := 2.0 / 3
	if g.chance(0.1) {
		share = 4.0 / 5
	}
	return g.up(max(90, need/share) + g.r.Float64()*60)
}

// sides chooses the returns, the ends of the beam and the end rule.
func (g *gen) sides() {
	g.wallLeft, g.wallRight = g.chance(0.2), g.chance(0.15)
	g.wallGap = g.size(10, 25)
	g.beamFrom, g.beamTo = g.from, g.from+g.length
	if !g.wallLeft && g.chance(0.25) {
		g.beamFrom += g.size(-200, 200)
	}
	if !g.wallRight && g.chance(0.25) {
		g.beamTo += g.size(-200, 200)
	}
	g.ends = g.pick("flush", "flush", "centred", "inset", "")
	if g.wallLeft || g.wallRight {
		g.ends = g.pick("flush", "inset", "")
	}
	g.inset = g.size(5, 120)
}

// heights chooses the levels, from what one stands on upwards.
func (g *gen) heights() {
	g.ground = -g.size(0, 500)
	stand := g.ground
	if g.chance(0.5) {
		g.deckOut = g.size(500, g.out+1000)
		g.deck = 0
		stand = 0
	}
	head := 1830 + 700*g.r.Float64()
	plate, beam := g.drop[0], g.drop[1] // of the rafters' line below their tops
	if g.hold[0] == over {
		plate = -g.heel
	}
	if g.hold[1] == over {
		beam = -g.heel - g.wide*g.tan
	}
	g.rise = max(0, -plate+g.head*g.tan)
	g.top = g.up(stand + head + g.beam.depth - beam + g.fall + plate)
	if g.free {
		g.top = max(g.top, g.up(stand+head+g.plate.depth))
	}
}

// s writes a length.
func (g *gen) s(v float64) string {
	if g.inches {
		return `"` + strings.ReplaceAll(g.format().Length(v), `"`, `\"`) + `"`
	}
	return fmt.Sprintf("%g", v)
}

func (g *gen) format() measure.Format {
	return measure.Format{Units: measure.FeetInches, Fraction: 64}
}

func (g *gen) sec(s section) string {
	if g.inches {
		return `"` + strings.ReplaceAll(g.format().Size(s.depth, s.width), `"`, `\"`) + `"`
	}
	return fmt.Sprintf("%gx%g", s.depth, s.width)
}

func (g *gen) line(format string, args ...any) { fmt.Fprintf(&g.b, format+"\n", args...) }
