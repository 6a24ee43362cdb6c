package draw

import (
	"math"
	"slices"

	"plumbcut/geom"
)

// Material is what a hatch stands for.
type Material int

// The materials, and how each is shown.
//
//	EndGrain   ╱╱╱╱   timber cut across: lines at 45° to the section
//	LongGrain  ═══    timber cut along: lines with the grain
//	Concrete   ·▵ ·   sparse dots and triangles
//	Earth      ⟋⟋⟋    short strokes along the edge of the ground
//	Brickwork  ╱╱ ╱╱  solid masonry: pairs of lines at 45°
//	Blockwork  ╳╳╳    hollow masonry: lines at 45° both ways
const (
	EndGrain Material = iota
	LongGrain
	Concrete
	Earth
	Brickwork
	Blockwork
)

// Measures of the hatches on paper, mm; this project's own choice, but lines
// keep more than the 0.7 mm apart that ISO 128 asks for.
const (
	finestPitch  = 1.0 // between lines, in the smallest sections
	widestPitch  = 2.5 // between lines, in the largest
	pitchShare   = 8   // a section between the two holds about so many lines
	stoneSpacing = 3.5 // between the marks of concrete
	stoneRadius  = 0.7 // of a triangle's corners
	sandRadius   = 0.15
	earthStroke  = 2.5 // length of a stroke
	earthStep    = 1.2 // between the strokes of a group
	earthGroup   = 3   // strokes in a group
	earthGap     = 5.0 // between groups
	brickPitch   = 4.0 // between pairs of lines
	brickPair    = 1.0 // between the lines of a pair
	blockPitch   = 3.5 // between lines, either way
)

// Limits that keep a hatch from filling the memory when a shape is far larger
// than any sheet.
const (
	maxHatchLines = 20_000
	maxStones     = 600
)

// Hatch shows what the area within the loops is made of; a loop within a loop
// is a hole. Turn, in radians, is the direction of the grain for LongGrain and
// that of one side of the section for EndGrain; the others take no notice.
// For Earth each of the loops is an open line with the ground on its right.
func (s *Sheet) Hatch(m Material, loops [][]geom.Pt, turn float64) {
	st := Style{Layer: Hatch, Pen: Narrow}
	switch m {
	case EndGrain:
		s.hatchLines(st, HatchLines(loops, turn+math.Pi/4, hatchPitch(loops)))
	case LongGrain:
		s.hatchLines(st, HatchLines(loops, turn, hatchPitch(loops)))
	case Concrete:
		s.stones(st, loops)
	case Brickwork:
		for _, shift := range []float64{-brickPair / 2, brickPair / 2} {
			s.hatchLines(st, hatchFrom(loops, math.Pi/4, brickPitch, shift))
		}
	case Blockwork:
		for _, angle := range []float64{math.Pi / 4, -math.Pi / 4} {
			s.hatchLines(st, HatchLines(loops, angle, blockPitch))
		}
	case Earth:
		for _, line := range loops {
			s.hatchLines(st, earthStrokes(line))
		}
	}
}

func (s *Sheet) hatchLines(st Style, lines [][2]geom.Pt) {
	p := Path{Style: st, Stroke: true}
	for _, l := range lines {
		p.Segs = append(p.Segs, Seg{Op: Move, To: l[0]}, Seg{Op: Line, To: l[1]})
	}
	if len(p.Segs) > 0 {
		s.Add(p)
	}
}

// hatchPitch suits the pitch to the size of the section.
func hatchPitch(loops [][]geom.Pt) float64 {
	b := loopBounds(loops)
	return min(max(min(b.W(), b.H())/pitchShare, finestPitch), widestPitch)
}

func loopBounds(loops [][]geom.Pt) Rect {
	b := EmptyRect()
	for _, loop := range loops {
		b = b.Union(Bounds(loop...))
	}
	return b
}

// HatchLines fills the area within the loops, under the even-odd rule, with
// parallel lines in the direction of angle, pitch mm apart. They are cut
// exactly at the edges, and lie evenly between the two sides of the area, so
// that none falls on an edge.
func HatchLines(loops [][]geom.Pt, angle, pitch float64) [][2]geom.Pt {
	return hatchFrom(loops, angle, pitch, 0)
}

// hatchFrom is HatchLines with every line shifted across its direction.
func hatchFrom(loops [][]geom.Pt, angle, pitch, shift float64) [][2]geom.Pt {
	sin, cos := math.Sincos(angle)
	along, across := geom.P(cos, sin), geom.P(-sin, cos)
	low, high := math.Inf(1), math.Inf(-1)
	for _, loop := range loops {
		for _, p := range loop {
			low, high = min(low, p.Dot(across)), max(high, p.Dot(across))
		}
	}
	n := math.Floor((high - low) / pitch)
	if !(n >= 0 && n < maxHatchLines && pitch > 0) { // nor when it is not a number
		return nil
	}
	n = max(n, 1)
	first := (low+high-(n-1)*pitch)/2 + shift
	var lines [][2]geom.Pt
	var cuts []float64
	for i := range int(n) {
		level := first + float64(i)*pitch
		cuts = crossings(cuts[:0], loops, along, across, level)
		for j := 0; j+1 < len(cuts); j += 2 {
			if cuts[j] < cuts[j+1] {
				base := across.Mul(level)
				lines = append(lines, [2]geom.Pt{base.Add(along.Mul(cuts[j])), base.Add(along.Mul(cuts[j+1]))})
			}
		}
	}
	return lines
}

// crossings is where a line crosses the edges, in order along it. An edge owns
// its lower end and not its upper one, so that a corner on the line counts
// once when the outline passes through it, and twice or never when it turns.
func crossings(cuts []float64, loops [][]geom.Pt, along, across geom.Pt, level float64) []float64 {
	for _, loop := range loops {
		for i, a := range loop {
			b := loop[(i+1)%len(loop)]
			ya, yb := a.Dot(across)-level, b.Dot(across)-level
			if (ya < 0) != (yb < 0) {
				cuts = append(cuts, a.Lerp(b, ya/(ya-yb)).Dot(along))
			}
		}
	}
	slices.Sort(cuts)
	return cuts
}

// Inside reports whether p lies within the loops under the even-odd rule.
func Inside(p geom.Pt, loops [][]geom.Pt) bool {
	inside := false
	for _, x := range crossings(nil, loops, geom.P(1, 0), geom.P(0, 1), p.Y) {
		if x > p.X {
			inside = !inside
		}
	}
	return inside
}

// stones strews dots and triangles over an area. They come from a sequence
// that fills a rectangle evenly without a grid (multiples of the powers of
// the root of x³ = x + 1), so they look strewn and yet are always the same.
func (s *Sheet) stones(st Style, loops [][]geom.Pt) {
	const stepX, stepY = 0.7548776662466927, 0.5698402909980532
	const everyStone, turn = 3, 2.4 // one mark in three is a triangle; radians
	b := loopBounds(loops)
	n := min(b.W()*b.H()/(stoneSpacing*stoneSpacing), maxStones)
	if !(n > 0) {
		return
	}
	var sand, stones Path
	for i := range int(n) + 1 {
		k := float64(i) + 0.5
		at := geom.P(b.X0+b.W()*frac(k*stepX), b.Y0+b.H()*frac(k*stepY))
		if !Inside(at, loops) || edgeDistance(at, loops) < stoneRadius+2*sandRadius {
			continue
		}
		if i%everyStone != 0 {
			sand.Segs = append(sand.Segs, CirclePath(st, at, sandRadius).Segs...)
			continue
		}
		var corners []geom.Pt
		for c := range 3 {
			sin, cos := math.Sincos(k*turn + float64(c)*2*math.Pi/3)
			corners = append(corners, at.Add(geom.P(cos, sin).Mul(stoneRadius)))
		}
		stones.Segs = appendLine(stones.Segs, corners)
	}
	black := Grey(1)
	sand.Style, sand.Closed, sand.Fill = st, true, &black
	stones.Style, stones.Closed, stones.Stroke = st, true, true
	for _, p := range []Path{sand, stones} {
		if len(p.Segs) > 0 {
			s.Add(p)
		}
	}
}

func frac(x float64) float64 { return x - math.Floor(x) }

// edgeDistance is how far p is from the nearest edge.
func edgeDistance(p geom.Pt, loops [][]geom.Pt) float64 {
	nearest := math.Inf(1)
	for _, loop := range loops {
		for i, a := range loop {
			ab := loop[(i+1)%len(loop)].Sub(a)
			t := 0.0
			if l := ab.Dot(ab); l > 0 {
				t = min(max(p.Sub(a).Dot(ab)/l, 0), 1)
			}
			nearest = min(nearest, p.Sub(a.Add(ab.Mul(t))).Len())
		}
	}
	return nearest
}

// earthStrokes are groups of short strokes on the right of an open line,
// leaning back at 45 degrees.
func earthStrokes(line []geom.Pt) [][2]geom.Pt {
	var strokes [][2]geom.Pt
	next, count := earthStep, 0
	for i := 1; i < len(line) && len(strokes) < maxHatchLines; i++ {
		a, ab := line[i-1], line[i].Sub(line[i-1])
		length, dir := ab.Len(), ab.Unit()
		lean := dir.Add(dir.Left()).Mul(-earthStroke / math.Sqrt2)
		for ; next <= length && len(strokes) < maxHatchLines; count++ {
			from := a.Add(dir.Mul(next))
			strokes = append(strokes, [2]geom.Pt{from, from.Add(lean)})
			next += earthStep
			if count%earthGroup == earthGroup-1 {
				next += earthGap - earthStep
			}
		}
		next -= length
	}
	return strokes
}
