package geom

import (
	"math"
	"slices"
)

// barrel is the cylinder that facets of one arc stand for.
type barrel struct {
	at, dir Vec // a point of the axis, and its unit direction
	radius  float64
}

func (b barrel) placed(a Axes) barrel { return barrel{a.Point(b.at), a.Dir(b.dir), b.radius} }

// rimOn returns the curve in which the barrel meets the plane; false if the
// plane runs along it.
func (b barrel) rimOn(p Plane) (rim, bool) {
	return Bore{At: b.at, Dir: b.dir, Radius: b.radius}.rimOn(p)
}

// angle is the parameter of the rim at which the point of it lies.
func (b barrel) angle(r rim, p Vec) float64 {
	u, v := square(b.dir)
	d := p.Sub(b.at)
	return math.Atan2(d.Dot(v), d.Dot(u))
}

// curving is what a solid knows of the curves that its planes are facets of.
type curving struct {
	run     []int32 // which smooth face a plane is a facet of; 0 for none
	of      []int32 // which barrel; 0 for none, else its number from 1
	barrels []barrel
}

// upTo is what is known of the first n planes.
func (c curving) upTo(n int) curving {
	return curving{c.run[:n:n], c.of[:n:n], c.barrels[:len(c.barrels):len(c.barrels)]}
}

func (c curving) clone() curving {
	return curving{slices.Clone(c.run), slices.Clone(c.of), slices.Clone(c.barrels)}
}

// runs is how many smooth faces there are before those of more; 0 if it has
// none, as then nobody asks.
func (c curving) runs(more curving) int32 {
	if len(more.run) == 0 || len(c.run) == 0 {
		return 0
	}
	return slices.Max(c.run)
}

// arcRim is a stretch of the rim of a barrel, along the edges of facets.
type arcRim struct {
	barrel int32
	face   int32 // index of the flat face beside it
	edges  []edge
}

// arcRims parts the edges that stand for arcs, those of one barrel and face
// together, from the others.
func arcRims(es []edge) (straight []edge, rims []arcRim) {
	if !slices.ContainsFunc(es, func(e edge) bool { return e.barrel != 0 }) {
		return es, nil
	}
	for _, e := range es {
		if e.barrel == 0 {
			straight = append(straight, e)
			continue
		}
		i := slices.IndexFunc(rims, func(r arcRim) bool { return r.barrel == e.barrel && r.face == e.g.index() })
		if i < 0 {
			i = len(rims)
			rims = append(rims, arcRim{barrel: e.barrel, face: e.g.index()})
		}
		rims[i].edges = append(rims[i].edges, e)
	}
	return straight, rims
}

// arcs appends the rim as a true arc or, seen edge on, as the edges that stand
// for it.
func (s *scene) arcs(items []item, body int32, sol Solid, r arcRim) []item {
	k := sol.boundary()
	b := sol.d.curve.barrels[r.barrel-1]
	m, ok := b.rimOn(sol.d.planes[r.face])
	if ok {
		var parts []span
		for _, e := range r.edges {
			from, to := b.angle(m, k.v[e.a]), b.angle(m, k.v[e.b])
			if turn := turnOf(to - from); turn > math.Pi {
				from, to = to, from
			}
			parts = append(parts, span{from, from + turnOf(to-from)})
		}
		o := &oval{rim: rim{s.view.local(m.c), s.view.local(m.a), s.view.local(m.b)}, parts: touching(wrap(parts))}
		if o.align() {
			o.parts = touching(o.parts)
			it := item{body: body, order: len(items), oval: o}
			if r.hollow(sol, b) {
				it.judged = o.shrunk(1 - 2*arcTol/b.radius)
			}
			return append(items, it)
		}
	}
	for _, e := range r.edges {
		items = s.line(items, body, k.v[e.a], k.v[e.b])
	}
	return items
}

// touching unites spans that rounding has parted.
func touching(parts []span) []span {
	const least = 1e-9 // radians
	return unite(parts, least)
}

// hollow reports whether the material lies outside the barrel.
func (r arcRim) hollow(sol Solid, b barrel) bool {
	p := r.edges[0].f.of(sol.d.planes) // of a facet, outward
	return p.Dist(b.at) > 0
}

// shrunk is the oval made smaller about its centre. The true arc of a hollow
// lies in the material between its facets' edges, where they would hide it; a
// little smaller it lies clear of them.
func (o *oval) shrunk(k float64) *oval {
	c := *o
	c.a, c.b, c.major = o.a.Mul(k), o.b.Mul(k), o.major.Mul(k)
	return &c
}
