package jobgen

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// writeGround gives some jobs whose posts say nothing of the ground a line of it,
// with a step between two posts or with a bank, from random numbers of its own.
func (g *gen) writeGround(seed uint64) {
	own := gen{r: rand.New(rand.NewPCG(seed, stream+61)), inches: g.inches}
	text := g.b.String()
	posts := text[strings.Index(text, "\nposts:"):]
	if !own.chance(0.25) || strings.Contains(posts, "ground:") {
		return
	}
	k := 1 + own.r.IntN(len(g.postAt)-1)
	from, to := g.postAt[k-1]+g.post.width/2, g.postAt[k]-g.post.width/2
	const clear = 20 // of a post's face
	if to-from < 4*clear {
		return
	}
	at := own.size(from+clear, (from+to)/2)
	low := g.ground - own.size(50, 300)
	points := []string{own.point(g.postAt[0], g.ground-own.size(0, 50)), own.point(at, g.ground)}
	if own.chance(0.7) {
		points = append(points, own.point(at, low))
	} else {
		points = append(points, own.point(own.size(at+clear, to), low))
	}
	said := fmt.Sprintf("  ground: %s\n", g.s(g.ground))
	g.b.Reset()
	g.b.WriteString(strings.Replace(text, said, said+fmt.Sprintf("  ground_line: [%s]\n", strings.Join(points, ", ")), 1))
}

// point writes a point of the ground.
func (g *gen) point(at, level float64) string {
	return fmt.Sprintf("{at: %s, level: %s}", g.s(at), g.s(level))
}
