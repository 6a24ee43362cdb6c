package jobgen

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// writeBraces adds knee braces to some jobs, from random numbers of their own.
// They fit the narrowest bay, and stay off posts that are screwed to a wall.
func (g *gen) writeBraces(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+40)), inches: g.inches}
	bay := math.Inf(1)
	for i := 1; i < len(g.postAt); i++ {
		bay = min(bay, g.postAt[i]-g.postAt[i-1]-g.post.width)
	}
	const least, most, tight = 260, 900, 0.42 // mm; share of a bay
	if room := min(most, bay*tight); own.chance(0.2) && room > least && g.meet.way == "" {
		own.braces(g, room)
	}
	g.bracing = own.b.String()
	g.b.WriteString(g.bracing)
}

// braces writes braces whose head comes no farther along than room.
func (g *gen) braces(of *gen, room float64) {
	at, ok := of.bracedPosts()
	if !ok {
		return
	}
	joint := g.pick("butted", "housed")
	if of.hold[1] != "" && of.rod == 0 && of.tan < 0.3 && g.chance(0.5) {
		joint = "lapped"
	}
	if of.free {
		joint = "butted" // as all under a rear beam are
	}
	angle := 40 + 15*g.r.Float64()
	sin, cos := math.Sincos(angle * math.Pi / 180)
	past := 14 * cos / sin // of its head, let in
	if joint == "lapped" {
		past = of.beam.depth * cos / sin
	}
	along := g.up(room - past - 30*g.r.Float64() - 10)
	depth := g.size(45, 95)
	if depth > 0.8*along*sin {
		return
	}
	g.line("braces:\n  section: %s\n  joint: %s%s", g.sec(section{depth, g.size(35, of.beam.width)}), joint, at)
	switch g.r.IntN(3) {
	case 0:
		g.line("  down: %s\n  angle: %.3f", g.s(g.up(along*sin/cos)-g.up(1)), angle)
	case 1:
		g.line("  down: %s\n  along: %s", g.s(g.up(along*sin/cos)), g.s(along))
	default:
		g.line("  length: %s\n  angle: %.3f", g.s(g.up(along/cos)-g.up(1)), angle)
	}
	switch joint {
	case "housed":
		g.line("  housing: %s", g.s(g.size(8, 13)))
	case "lapped":
		g.line("  bolt: {diameter: %s}", g.s(g.size(7, 12)))
	}
	if joint != "lapped" && g.chance(0.5) {
		g.line("  screws: {each: %d, diameter: %s, length: %s}", 1+g.r.IntN(3), g.s(g.size(6, 10)), g.s(g.size(120, 200)))
	}
}

// bracedPosts says which posts have braces, if not all; false: none can.
func (g *gen) bracedPosts() (at string, ok bool) {
	if !g.wallLeft && !g.wallRight {
		return "", true
	}
	var free []string
	for i := range g.postAt {
		if i == 0 && g.wallLeft || i == len(g.postAt)-1 && g.wallRight {
			continue
		}
		free = append(free, fmt.Sprint(i+1))
	}
	if len(free) == 0 {
		return "", false
	}
	return "\n  at: [" + strings.Join(free, ", ") + "]", true
}
