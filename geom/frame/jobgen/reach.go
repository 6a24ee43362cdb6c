package jobgen

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// settleReach decides, from random numbers of its own, how far the beam runs
// past its end posts and whether the tails have a curved or many-sided end.
func (g *gen) settleReach(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+51)), inches: g.inches}
	for i, wall := range []bool{g.wallLeft, g.wallRight} {
		if !wall && own.chance(0.3) {
			g.past[i] = own.size(0, g.length*0.12)
		}
	}
	if g.tail == "" || own.chance(0.5) {
		return
	}
	depth := g.rafter.depth
	nose := own.up(depth * (0.15 + 0.4*own.r.Float64()))
	high := depth - nose
	sin := math.Sin(math.Atan(g.tan))
	room := g.overhang - depth*sin - 5 // for what reaches back
	switch {
	case own.chance(0.3) && high <= room:
		g.tail = fmt.Sprintf("{overhang: %s, shape: quarter round, nose: %s}", own.s(g.overhang), own.s(nose))
	case own.chance(0.5) && 2*high <= room:
		g.tail = fmt.Sprintf("{overhang: %s, shape: ogee, nose: %s, curve: %s}", own.s(g.overhang), own.s(nose), own.s(own.up(high*(0.7+1.2*own.r.Float64()))))
	case depth <= room:
		g.tail = fmt.Sprintf("{overhang: %s, profile: [%s]}", own.s(g.overhang), own.outline(depth))
	}
}

// outline is a random outline of a tail, by its points. Every line of it runs
// downwards all the way, arcs too, so that it cannot meet itself, and none comes
// near the plumb line of its end or the edges of the rafter.
func (g *gen) outline(depth float64) string {
	n := 2 + g.r.IntN(3)
	step := depth / float64(n)
	var points []string
	back, down := 0.0, 0.0
	for i := range n {
		d := step * (0.7 + 0.3*g.r.Float64())
		if i == n-1 {
			d = depth - down
		}
		to := back + d*(g.r.Float64()*2.2-1)
		if least := 0.2 * depth; i > 0 || to < least {
			to = max(to, least)
		}
		to = min(to, back+1.2*d, depth)
		chord := math.Hypot(to-back, d)
		back, down = to, down+d
		keys := fmt.Sprintf("{back: %s", g.near(back))
		if i < n-1 {
			keys += ", down: " + g.near(down)
		}
		if rise := chord * (0.05 + 0.1*g.r.Float64()); i > 0 && g.chance(0.7) {
			r := (chord*chord/4 + rise*rise) / 2 / rise
			way := "round"
			if i == n-1 || g.chance(0.5) {
				way = "hollow" // at the underside a round one would swell out of the rafter
			}
			keys += fmt.Sprintf(", %s: %s", way, g.near(r))
		}
		points = append(points, keys+"}")
	}
	return strings.Join(points, ", ")
}

// near writes a length to a tenth of a millimetre, or as fine as a tape has it.
func (g *gen) near(v float64) string { return g.s(math.Round(v*10) / 10) }

// writeSite says where the site lies, and which places between the posts are
// kept clear.
func (g *gen) writeSite(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+52)), inches: g.inches}
	if own.chance(0.4) {
		g.site += own.keepOuts(g)
	}
	if g.site != "" {
		g.line("site:\n%s", strings.TrimRight(g.site, "\n"))
	}
}

// keepOuts are places that the posts of a job, or their holes, stay clear of.
func (g *gen) keepOuts(job *gen) string {
	const most = 3
	out, n := "", 0
	for i := 1; i < len(job.postAt) && n < most; i++ {
		what, half := "hole", job.hole/2
		if g.chance(0.4) {
			what, half = "post", job.post.width/2
		}
		from := job.postAt[i-1] + half + g.size(20, 300)
		to := job.postAt[i] - half - g.size(20, 300)
		if to-from < 80 || g.chance(0.4) {
			continue
		}
		n++
		near := g.size(0, job.out)
		if wide := g.up(45); what == "post" && to-from > 6*wide {
			many := 2 + g.r.IntN(3)
			step := min(4000, (to-from-2*wide)/float64(many-1))
			out += fmt.Sprintf("    - {name: joist, from: %s, to: %s, every: %s, number: %d, near: %s, of: post}\n",
				g.s(g.up(from)), g.s(g.up(from)+wide), g.near(step), many, g.s(near))
			continue
		}
		out += fmt.Sprintf("    - {name: %s, from: %s, to: %s, near: %s, far: %s, of: %s}\n",
			g.pick("drain", "garden step", "water pipe"), g.s(g.up(from)), g.s(g.up(to)-g.up(2)), g.s(near), g.s(g.up(near+g.size(200, 1500))), what)
	}
	if out != "" {
		out = "  keep_out:\n" + out
	}
	return out
}
