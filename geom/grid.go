package geom

import "math"

// grid sorts occluders into squares of the image. Each square lists its
// occluders in the order in which they are given, nearest first.
type grid struct {
	x, y   float64 // lower left corner
	size   float64 // side of a square
	nx, ny int
	start  []int32 // where each square's list begins in items; one more at the end
	items  []int32
}

const (
	// entriesEach is how many squares list an occluder, on the average and
	// roughly. Where occluders lie in many layers there are fewer squares.
	entriesEach = 4

	// minSquares and maxSquares bound the number of squares.
	minSquares, maxSquares = 64, 1 << 18
)

func newGrid(occ []occluder) grid {
	all := noBox()
	var area float64 // of all layers
	for i := range occ {
		all.grow(&occ[i].box)
		s := occ[i].box.Size()
		area += s.X * s.Y
	}
	g := grid{nx: 1, ny: 1, size: 1}
	if !all.Empty() {
		s := all.Size()
		layers := max(1, area/max(1, s.X*s.Y))
		count := max(minSquares, min(maxSquares, entriesEach*float64(len(occ))/layers))
		g.x, g.y = all.Min.X, all.Min.Y
		g.size = max(math.Sqrt(s.X*s.Y/count), max(s.X, s.Y)/count, 1)
		g.nx, g.ny = int(s.X/g.size)+1, int(s.Y/g.size)+1
	}
	g.start = make([]int32, g.nx*g.ny+1)
	g.each(occ, func(square int, _ int32) { g.start[square+1]++ })
	for i := 1; i < len(g.start); i++ {
		g.start[i] += g.start[i-1]
	}
	g.items = make([]int32, g.start[len(g.start)-1])
	fill := append([]int32(nil), g.start...)
	g.each(occ, func(square int, i int32) {
		g.items[fill[square]] = i
		fill[square]++
	})
	return g
}

// each calls f for every occluder and every square that its box touches.
func (g *grid) each(occ []occluder, f func(square int, i int32)) {
	for i := range occ {
		b := &occ[i].box
		for y := g.row(b.Min.Y); y <= g.row(b.Max.Y); y++ {
			for x := g.col(b.Min.X); x <= g.col(b.Max.X); x++ {
				f(y*g.nx+x, int32(i))
			}
		}
	}
}

func (g *grid) col(x float64) int { return max(0, min(g.nx-1, int(math.Floor((x-g.x)/g.size)))) }
func (g *grid) row(y float64) int { return max(0, min(g.ny-1, int(math.Floor((y-g.y)/g.size)))) }

// walk calls f with the list of every square that the line p→q touches, give
// or take shift.
func (g *grid) walk(p, q Vec, f func(list []int32)) {
	if p.Y > q.Y {
		p, q = q, p
	}
	for y := g.row(p.Y - shift); y <= g.row(q.Y+shift); y++ {
		// The part of the line in this row.
		a, b := p.X, q.X
		if dy := q.Y - p.Y; dy > 0 {
			lo := g.y + float64(y)*g.size - shift
			a = p.X + (q.X-p.X)*max(0, min(1, (lo-p.Y)/dy))
			b = p.X + (q.X-p.X)*max(0, min(1, (lo+g.size+2*shift-p.Y)/dy))
		}
		for x := g.col(min(a, b) - shift); x <= g.col(max(a, b)+shift); x++ {
			k := y*g.nx + x
			f(g.items[g.start[k]:g.start[k+1]])
		}
	}
}
