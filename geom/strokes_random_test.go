package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// piled is a few carvings in one picture, with the judge of what hides what:
// it shoots rays at the bodies as they were asked for.
type piled struct {
	view   View
	bodies []Body
	shapes []carving // in the world
}

func randomPile(r *rand.Rand, lattice bool) piled {
	views := []View{Plan(), Front(), LeftEnd(), RightEnd(), Back(), Axonometric(math.Pi/4, 0.6), Axonometric(0.3+r.Float64(), 0.3+r.Float64()/2)}
	p := piled{view: views[r.IntN(len(views))]}
	for i := range 2 + r.IntN(3) {
		c := randomCarving(r, lattice)
		for c.fine() {
			c = randomCarving(r, lattice)
		}
		at := World()
		at.O = V(10*float64(r.IntN(12)-6), 10*float64(r.IntN(12)-6), 10*float64(r.IntN(12)-6))
		if !lattice {
			s, k := math.Sincos(r.Float64() * 6)
			at.U, at.V = V(k, s, 0), V(-s, k, 0)
			if i == 1 { // one leans like a rafter
				s, k := math.Sincos(r.Float64() / 2)
				at.U, at.W = at.U.Mul(k).Add(at.W.Mul(s)), at.W.Mul(k).Sub(at.U.Mul(s))
			}
			at.O = at.O.Add(V(47000, -9000, 2400)) // as far out as jobs reach
		}
		p.bodies = append(p.bodies, Body{ID: i, Solid: c.solid().Placed(at)})
		p.shapes = append(p.shapes, c.moved(at))
	}
	return p
}

// moved is the carving as it stands in the axes.
func (c carving) moved(at Axes) carving {
	move := func(from Convex) Convex {
		to := make(Convex, len(from))
		for i, h := range from {
			to[i] = at.Plane(h)
		}
		return to
	}
	out := carving{block: move(c.block)}
	for _, o := range c.outs {
		out.outs = append(out.outs, move(o))
	}
	return out
}

// leanPile is the real thing in small: three rafters at a fall, let into two
// long timbers with and without clearance.
func leanPile(v View) piled {
	sin, cos := math.Sincos(5 * math.Pi / 180)
	front, back := PlaneAt(V(0, 53, 0), V(0, -1, 0)), PlaneAt(V(0, 2912, 0), V(0, 1, 0))
	beam := carving{block: box(0, 0, 2150, 1000, 65, 2340)}
	wall := carving{block: box(0, 2900, 2400, 1000, 2945, 2590)}
	var all []carving
	for i := range 3 {
		x := float64(i)*400 + 100
		at := Axes{O: V(x, 20, 2200), U: V(0, cos, sin), V: V(-1, 0, 0), W: V(0, -sin, cos)}
		rafter := Convex{front, back}
		for _, p := range box(-100, -45, 0, 3200, 0, 120) {
			rafter = append(rafter, at.Plane(p))
		}
		all = append(all, carving{block: rafter})
		gap := 0.5 * float64(i)
		low, high := at.Plane(Plane{V(0, 0, -1), 0}), at.Plane(Plane{V(0, 0, 1), 120 + 200*float64(i)})
		left, right := Plane{V(-1, 0, 0), -x + gap}, Plane{V(1, 0, 0), x + 45 + gap}
		beam.outs = append(beam.outs, Convex{low, high, left, right, front})
		wall.outs = append(wall.outs, Convex{low, high, left, right, back})
	}
	p := piled{view: v, shapes: append(all, beam, wall)}
	for i, c := range p.shapes {
		p.bodies = append(p.bodies, Body{ID: i, Solid: c.solid()})
	}
	return p
}

// verdict of the judge.
type verdict int

const (
	unsure verdict = iota
	seen
	covered
)

// judge looks at the model point x of a line along d: it is covered if it is so
// just left and just right of the line, seen if on one side there is nothing
// before it, and unsure if the stuff before it is a mere wisp.
func (p piled) judge(x, d Vec) verdict {
	const off, wisp, solid = 1e-5, 1e-8, 0.01
	side := d.Cross(p.view.Toward).Unit()
	both := 0
	for _, k := range [2]float64{off, -off} {
		most := 0.0
		for _, c := range p.shapes {
			most = max(most, c.ahead(x.Add(side.Mul(k)), p.view.Toward))
		}
		if most < wisp {
			return seen
		}
		if most > solid {
			both++
		}
	}
	if both == 2 {
		return covered
	}
	return unsure
}

// judgeNear wants the same verdict a little way along the line either side,
// so that the exact place of a change is not asked about.
func (p piled) judgeNear(x, d Vec) verdict {
	step := d.Mul(0.03 / (Pt{p.view.Right.Dot(d), p.view.Up.Dot(d)}).Len())
	v := p.judge(x, d)
	if p.judge(x.Add(step), d) != v || p.judge(x.Sub(step), d) != v {
		return unsure
	}
	return v
}

func TestHiddenLinesAgainstRays(t *testing.T) {
	sure, all := 0, 0
	for i := range 200 {
		r := rand.New(rand.NewPCG(11, uint64(i)))
		p := randomPile(r, i%2 == 0)
		if i < 5 {
			p = leanPile([]View{Plan(), Front(), Back(), RightEnd(), Axonometric(0.6, 0.5)}[i])
		}
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			strokes := Strokes(p.view, p.bodies, Options{})
			for _, s := range strokes {
				if s.B.Sub(s.A).Len() < 0.2 {
					continue // too short to stay clear of both ends
				}
				for range 4 {
					at := s.A.Lerp(s.B, 0.02+0.96*r.Float64())
					best := p.bestAt(s.Body, at, s.B.Sub(s.A))
					all++
					if best != unsure {
						sure++
					}
					if best == covered && !s.Hidden || best == seen && s.Hidden {
						t.Errorf("body %d at %v on %v–%v: hidden is %v", s.Body, at, s.A, s.B, s.Hidden)
					}
				}
			}
			p.allDrawn(t, r, strokes)
		})
	}
	if sure*10 < all*8 {
		t.Errorf("the judge was sure of %d points in %d only", sure, all)
	}
}

// bestAt returns the verdict on the body's edges that run through the image
// point along d: seen if one of them is, covered if all are.
func (p piled) bestAt(body int, at, d Pt) verdict {
	best := covered
	for _, e := range p.bodies[body].Solid.Edges() {
		s := Stroke{A: p.view.Project(e.A), B: p.view.Project(e.B)}
		along := s.B.Sub(s.A)
		if along.Len() < 0.01 || math.Abs(along.Unit().Cross(d.Unit())) > 1e-4 || !s.passes(at, 1e-4) {
			continue
		}
		k := at.Sub(s.A).Dot(along) / along.Dot(along)
		switch p.judgeNear(e.A.Lerp(e.B, k), e.B.Sub(e.A)) {
		case seen:
			return seen
		case unsure:
			best = unsure
		}
	}
	return best
}

// allDrawn checks that every edge is drawn, and drawn as visible where it is
// seen.
func (p piled) allDrawn(t *testing.T, r *rand.Rand, strokes []Stroke) {
	for i, b := range p.bodies {
		for _, e := range b.Solid.Edges() {
			d := e.B.Sub(e.A)
			if (Pt{p.view.Right.Dot(d), p.view.Up.Dot(d)}).Len() < 0.1 {
				continue
			}
			for range 3 {
				x := e.A.Lerp(e.B, 0.02+0.96*r.Float64())
				v := p.judgeNear(x, d)
				at := p.view.Project(x)
				dark, light := 0, 0
				for _, s := range strokes {
					if !s.passes(at, 2*imageTol) {
						continue
					}
					if s.Hidden {
						dark++
					} else {
						light++
					}
				}
				if v == seen && light == 0 || dark+light == 0 {
					t.Errorf("body %d: edge %v–%v missing at %v (verdict %d)", i, e.A, e.B, x, v)
				}
			}
		}
	}
}

// passes reports whether the straight stroke runs through the point.
func (s Stroke) passes(p Pt, tol float64) bool {
	d := s.B.Sub(s.A)
	k := p.Sub(s.A).Dot(d) / d.Dot(d)
	return k > -1e-4 && k < 1+1e-4 && p.Sub(s.A.Lerp(s.B, k)).Len() < tol
}

// No two strokes of a picture may lie on each other.
func TestNothingIsDrawnTwice(t *testing.T) {
	for i := range 60 {
		r := rand.New(rand.NewPCG(13, uint64(i)))
		p := randomPile(r, i%4 != 0)
		strokes := Strokes(p.view, p.bodies, Options{})
		for j, s := range strokes {
			for range 3 {
				at := s.A.Lerp(s.B, 0.05+0.9*r.Float64())
				for k, o := range strokes {
					along := math.Abs(o.B.Sub(o.A).Unit().Cross(s.B.Sub(s.A).Unit())) < 1e-6
					if k != j && along && o.passes(at, imageTol/2) && o.B.Sub(at).Len() > 0.02 && o.A.Sub(at).Len() > 0.02 {
						t.Errorf("pile %d: strokes %d and %d both run through %v", i, j, k, at)
					}
				}
			}
		}
	}
}
