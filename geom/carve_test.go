package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sort"
	"testing"
)

// carving is a convex block with convex shapes taken out, kept as what was
// asked for. It answers the same questions as the solid made from it, by
// plain arithmetic on the planes and without any of the kernel's code, so it
// can be the judge of it.
type carving struct {
	block Convex
	outs  []Convex
}

func (c carving) solid() Solid {
	return FromConvex(c.block).Minus(c.outs...)
}

func within(c Convex, p Vec) bool {
	for _, h := range c {
		if h.Dist(p) >= 0 {
			return false
		}
	}
	return true
}

func (c carving) holds(p Vec) bool {
	if !within(c.block, p) {
		return false
	}
	for _, o := range c.outs {
		if within(o, p) {
			return false
		}
	}
	return true
}

func (c carving) planes() []Plane {
	out := append([]Plane(nil), c.block...)
	for _, o := range c.outs {
		out = append(out, o...)
	}
	return out
}

// ahead returns how much material lies on the ray from p towards d.
func (c carving) ahead(p, d Vec) float64 {
	lo, hi := chord(c.block, p, d)
	lo = max(lo, 0)
	if lo >= hi {
		return 0
	}
	var gaps []span
	for _, o := range c.outs {
		if a, b := chord(o, p, d); max(a, lo) < min(b, hi) {
			gaps = append(gaps, span{max(a, lo), min(b, hi)})
		}
	}
	sort.Slice(gaps, func(i, j int) bool { return gaps[i].lo < gaps[j].lo })
	at, sum := lo, 0.0
	for _, g := range gaps {
		if g.lo > at {
			sum += g.lo - at
		}
		at = max(at, g.hi)
	}
	return sum + max(0, hi-at)
}

func chord(c Convex, p, d Vec) (lo, hi float64) {
	lo, hi = math.Inf(-1), math.Inf(1)
	for _, h := range c {
		dist, step := h.Dist(p), h.N.Dot(d)
		switch {
		case math.Abs(step) < 1e-12:
			if dist >= 0 {
				return 0, 0
			}
		case step > 0:
			hi = min(hi, -dist/step)
		default:
			lo = max(lo, -dist/step)
		}
	}
	return lo, hi
}

// arris reports whether there is a real edge at x on a line along d: whether,
// going round it, material and air part otherwise than along one plane. It is
// unsure when another plane passes by too closely to tell.
func (c carving) arris(x, d Vec) (real, sure bool) {
	const r = 1e-4
	u, v := square(d.Unit())
	var cuts []float64
	for _, p := range c.planes() {
		dist := math.Abs(p.Dist(x))
		if dist > 2*r {
			continue
		}
		if dist > 1e-8 || math.Abs(p.N.Dot(d.Unit())) > 1e-9 {
			return false, false
		}
		t := math.Atan2(p.N.Dot(v), p.N.Dot(u)) + math.Pi/2
		cuts = append(cuts, turnOf(t), turnOf(t+math.Pi))
	}
	sort.Float64s(cuts)
	distinct := cuts[:0]
	for i, t := range cuts {
		if i == 0 || t-distinct[len(distinct)-1] > 1e-9 {
			distinct = append(distinct, t)
		}
	}
	if n := len(distinct); n > 1 && distinct[0]+2*math.Pi-distinct[n-1] < 1e-9 {
		distinct = distinct[:n-1]
	}
	in := func(t float64) bool {
		return c.holds(x.Add(u.Mul(r * math.Cos(t))).Add(v.Mul(r * math.Sin(t))))
	}
	var turns []float64
	for i, t := range distinct {
		n := len(distinct)
		prev, next := distinct[(i+n-1)%n], distinct[(i+1)%n]
		if i == 0 {
			prev -= 2 * math.Pi
		}
		if i == n-1 {
			next += 2 * math.Pi
		}
		if in((t+prev)/2) != in((t+next)/2) {
			turns = append(turns, t)
		}
	}
	if len(turns) == 0 {
		return false, true
	}
	straight := len(turns) == 2 && math.Abs(turns[1]-turns[0]-math.Pi) < 1e-6
	return !straight, true
}

// random carvings: lattice ones, where planes coincide and seams line up all
// the time, and free ones, where nothing does.
func randomCarving(r *rand.Rand, lattice bool) carving {
	num := func(lo, hi int) float64 {
		if lattice {
			return 10 * float64(lo+r.IntN(hi-lo+1))
		}
		return 10 * (float64(lo) + r.Float64()*float64(hi-lo))
	}
	size := V(num(3, 12), num(2, 6), num(2, 6))
	c := carving{block: Box3{Vec{}, size}.Convex()}
	for range 1 + r.IntN(5) {
		lo := V(num(-1, 10), num(-1, 5), num(-1, 5))
		b := Box3{lo, lo.Add(V(num(1, 4), num(1, 4), num(1, 4)))}.Convex()
		switch r.IntN(4) {
		case 0: // a sloping floor
			p := V(num(0, 10), num(0, 5), num(0, 5))
			n := V(num(-2, 2), num(-2, 2), num(1, 3))
			if !lattice {
				n = n.Add(V(1, 2, 3))
			}
			b = append(b, PlaneAt(p, n))
		case 1: // turned as a whole
			if !lattice {
				a := r.Float64()
				s, k := math.Sincos(a)
				at := Axes{O: lo, U: V(k, s, 0), V: V(-s, k, 0), W: V(0, 0, 1)}
				for i, p := range b {
					b[i] = at.Plane(p)
				}
			}
		}
		c.outs = append(c.outs, b)
	}
	return c
}

// fine reports whether two planes lie so close together that they are meant
// to be neither one nor two.
func (c carving) fine() bool {
	ps := c.planes()
	for i, p := range ps {
		for _, q := range ps[:i] {
			if p.N.Dot(q.N) < 0 {
				q = q.Flip()
			}
			if d := math.Abs(p.D - q.D); p.N.Sub(q.N).Len() < 1e-3 && d > 1e-9 && d < 0.05 {
				return true
			}
		}
	}
	return false
}

// carvings calls f for a few hundred random carvings of either kind.
func carvings(t *testing.T, n int, f func(t *testing.T, r *rand.Rand, c carving, s Solid)) {
	for i := range n {
		r := rand.New(rand.NewPCG(7, uint64(i)))
		c := randomCarving(r, i%2 == 0)
		s := c.solid()
		if s.Empty() || c.fine() {
			continue
		}
		t.Run(fmt.Sprint(i), func(t *testing.T) { f(t, r, c, s) })
	}
}

func randomIn(r *rand.Rand, b Box3) Vec {
	s := b.Size()
	return b.Min.Add(V(s.X*r.Float64(), s.Y*r.Float64(), s.Z*r.Float64()))
}

func TestCarvingsAreSound(t *testing.T) {
	carvings(t, 300, func(t *testing.T, r *rand.Rand, c carving, s Solid) {
		if err := s.Check(); err != nil {
			t.Error(err)
		}
		if err := s.Placed(Axes{O: V(31000, -7000, 2400), U: V(0.6, 0.8, 0), V: V(-0.8, 0.6, 0), W: V(0, 0, 1)}).Check(); err != nil {
			t.Error("placed:", err)
		}
		for range 200 {
			p := randomIn(r, s.Bounds())
			if got, want := s.holds(p), c.holds(p); got != want && !c.close(p, 0.01) {
				t.Errorf("holds(%v) = %v, want %v", p, got, want)
			}
		}
	})
}

// close reports whether a plane passes within d of p.
func (c carving) close(p Vec, d float64) bool {
	for _, h := range c.planes() {
		if math.Abs(h.Dist(p)) <= d {
			return true
		}
	}
	return false
}

// The volume of what is left is the block's less each part taken out, plus
// what two had in common, less what three had, and so on.
func TestVolumeByInclusionExclusion(t *testing.T) {
	carvings(t, 100, func(t *testing.T, r *rand.Rand, c carving, s Solid) {
		var want float64
		for set := range 1 << len(c.outs) {
			all, sign := append(Convex(nil), c.block...), 1.0
			for i, o := range c.outs {
				if set>>i&1 == 1 {
					all, sign = append(all, o...), -sign
				}
			}
			want += sign * FromConvex(all).Volume()
		}
		if got := s.Volume(); !near64(got, want, 1e-3) {
			t.Errorf("Volume() = %.6f, want %.6f", got, want)
		}
	})
}

func TestEdgesAreTheRealOnes(t *testing.T) {
	carvings(t, 150, func(t *testing.T, r *rand.Rand, c carving, s Solid) {
		edges := s.Edges()
		for _, e := range edges {
			for range 5 {
				x := e.A.Lerp(e.B, r.Float64())
				if real, sure := c.arris(x, e.B.Sub(e.A)); sure && !real {
					t.Errorf("edge %v–%v is not real at %v", e.A, e.B, x)
				}
			}
			if e.Smooth {
				t.Errorf("edge %v–%v is smooth", e.A, e.B)
			}
		}
		for i, p := range c.planes() {
			for _, q := range c.planes()[:i] {
				d := p.N.Cross(q.N)
				if d.Len() < 1e-6 {
					continue
				}
				c.seekEdges(t, r, s, edges, p, q)
			}
		}
	})
}

// seekEdges tries points on the line of two planes: wherever there is an
// edge, the list must have it once.
func (c carving) seekEdges(t *testing.T, r *rand.Rand, s Solid, edges []Edge, p, q Plane) {
	d := p.N.Cross(q.N).Unit()
	k := p.N.Dot(q.N)
	foot := p.N.Mul((p.D - k*q.D) / (1 - k*k)).Add(q.N.Mul((q.D - k*p.D) / (1 - k*k)))
	mid := d.Dot(s.Bounds().Centre())
	reach := s.Bounds().Size().Len()
	for range 8 {
		x := foot.Add(d.Mul(mid + reach*(r.Float64()-0.5)))
		real, sure := c.arris(x, d)
		if !sure || !real {
			continue
		}
		n := 0
		for _, e := range edges {
			l := e.B.Sub(e.A)
			at := x.Sub(e.A).Dot(l) / l.Dot(l)
			if at > 0 && at < 1 && x.Sub(e.A.Lerp(e.B, at)).Len() < 1e-6 {
				n++
			}
		}
		if n != 1 {
			t.Errorf("%d edges at %v along %v, want 1", n, x, d)
		}
	}
}
