package geom

import (
	"math"
	"slices"
	"sync"
)

// A plane's number in its table, times two, plus one when the outward side is
// opposite to the table's. Two faces lie in one plane exactly when their
// references agree but for the last bit: coplanarity is known, never
// re-measured.
type ref int32

func (r ref) index() int32  { return int32(r >> 1) }
func (r ref) flipped() bool { return r&1 == 1 }
func (r ref) flip() ref     { return r ^ 1 }

// of returns the oriented plane of r in the list.
func (r ref) of(planes []Plane) Plane {
	p := planes[r.index()]
	if r.flipped() {
		return p.Flip()
	}
	return p
}

const (
	// planeTol is how far two planes may lie apart and still be one. It is
	// thousands of times the rounding error at 50 m (about 1e-10 mm), and so
	// far below any size that is ever stated (0.01 mm) that two planes which
	// are meant to differ will not fall within it by chance.
	planeTol = 1e-6

	// normalTol is how far their directions may differ: planeTol over 50 m.
	// Rounding is about 1e-15.
	normalTol = 2e-11

	// printNormal weighs direction against distance in a plane's fingerprint.
	printNormal = 1e3
)

// table holds the planes of a solid, each once. It only grows. A solid sees
// the first entries only, so solids made from one another may share a table:
// the first to extend it goes on with it, any other takes a copy. Numbers
// therefore never depend on which goroutine came first.
type table struct {
	mu     sync.Mutex
	planes []Plane
	curve  curving // of which the planes are facets
	index  near
}

func planePrint(p Plane) float64 { return p.D + printNormal*p.N.Dot(mix) }

// extend returns a table that begins with the n planes that the caller sees,
// goes on with those of ps that are new, and the reference of each of ps.
func (t *table) extend(n int, ps []Plane) (*table, []ref) {
	return t.extendCurved(n, ps, curving{})
}

// extendCurved is extend by planes that are facets as c says, which may be the
// zero value. A plane that was there before stays as it was.
func (t *table) extendCurved(n int, ps []Plane, c curving) (*table, []ref) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if len(t.planes) != n {
		t = &table{planes: slices.Clone(t.planes[:n]), curve: t.curve.upTo(n).clone()}
	}
	runs, barrels := t.curve.runs(c), int32(len(t.curve.barrels))
	t.curve.barrels = append(t.curve.barrels, c.barrels...)
	refs := make([]ref, len(ps))
	for i, p := range ps {
		refs[i] = t.ref(p)
		if k := int(refs[i].index()); k >= n && i < len(c.run) && c.run[i] != 0 {
			t.curve.run[k] = runs + c.run[i]
			if c.of[i] != 0 {
				t.curve.of[k] = barrels + c.of[i]
			}
		}
	}
	return t, refs
}

// ref finds p or adds it.
func (t *table) ref(p Plane) ref {
	for len(t.index.print) < len(t.planes) {
		t.index.add(planePrint(t.planes[len(t.index.print)]))
	}
	tol := planeTol + 2*printNormal*normalTol
	for flip := range 2 {
		q := p
		if flip == 1 {
			q = p.Flip()
		}
		i := t.index.find(planePrint(q), tol, func(i int32) bool { return samePlane(t.planes[i], q) })
		if i >= 0 {
			return ref(int(i)*2 + flip)
		}
	}
	t.planes = append(t.planes, p)
	t.curve.run, t.curve.of = append(t.curve.run, 0), append(t.curve.of, 0)
	t.index.add(planePrint(p))
	return ref(2 * (len(t.planes) - 1))
}

func samePlane(a, b Plane) bool {
	return math.Abs(a.D-b.D) <= planeTol &&
		math.Abs(a.N.X-b.N.X) <= normalTol &&
		math.Abs(a.N.Y-b.N.Y) <= normalTol &&
		math.Abs(a.N.Z-b.N.Z) <= normalTol
}

// tidy returns c with unit normals. A plane without a direction says nothing
// about where things are and is left out; one beyond all bounds is brought to
// where it still is beyond them.
func (c Convex) tidy() []Plane {
	out := make([]Plane, 0, len(c))
	for _, p := range c {
		l := p.N.Len()
		if l == 0 || math.IsNaN(l) || math.IsInf(l, 0) || math.IsNaN(p.D) {
			continue
		}
		if math.Abs(l-1) > 1e-15 {
			p = Plane{p.N.Mul(1 / l), p.D / l}
		}
		p.D = max(-4*Bound, min(4*Bound, p.D))
		out = append(out, p)
	}
	return out
}
