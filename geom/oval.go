package geom

import (
	"math"
	"slices"
)

// oval is a rim as seen in a view: in the view's axes the points
// c + a·cos t + b·sin t, in the image an ellipse with the half-axis major.
type oval struct {
	rim
	major Pt
	ratio float64
	parts []span // where the rim lies in the material
}

// flatOval is the ratio of the half-axes below which an ellipse is drawn as
// the line that it is seen as.
const flatOval = 1e-4

// rims appends the rims and outlines of the bores of a solid.
func (s *scene) rims(items []item, body int32, sol Solid) []item {
	for _, b := range sol.d.bores {
		for _, r := range sol.runs(b) {
			for _, p := range [2]Plane{r.fromAt, r.toward} {
				if m, ok := b.rimOn(p); ok {
					items = s.rim(items, body, sol, m)
				}
			}
			items = s.barrel(items, body, sol, b, r)
		}
	}
	return items
}

// barrel appends the two lines along which the bore's wall turns away from
// the viewer.
func (s *scene) barrel(items []item, body int32, sol Solid, b Bore, r run) []item {
	side := b.Dir.Cross(s.view.Toward)
	if side.Len() < minSlope {
		return items
	}
	side = side.Unit().Mul(b.Radius)
	for range 2 {
		side = side.Neg()
		p := b.At.Add(side)
		lo, hi := b.reach(p, r.fromAt), b.reach(p, r.toward)
		from, to := p.Add(b.Dir.Mul(lo)), p.Add(b.Dir.Mul(hi))
		if lo < hi && sol.holds(from.Lerp(to, 0.5)) {
			items = s.line(items, body, from, to)
		}
	}
	return items
}

// reach returns how far from p along the bore the plane is.
func (b Bore) reach(p Vec, at Plane) float64 { return -at.Dist(p) / at.N.Dot(b.Dir) }

// holds reports whether p lies in the material or on its surface, bores left
// aside.
func (s Solid) holds(p Vec) bool {
	for _, c := range reaching(s.d.cells, Box3{p, p}, onTol) {
		if c.holds(s.d.planes, p) {
			return true
		}
	}
	return false
}

func (c *cell) holds(planes []Plane, p Vec) bool {
	for _, f := range c.f {
		if f.ref.of(planes).Dist(p) > onTol {
			return false
		}
	}
	return true
}

// rim appends a rim, as an ellipse or, seen from the side, as a line.
func (s *scene) rim(items []item, body int32, sol Solid, m rim) []item {
	parts := s.rimParts(sol, m)
	if len(parts) == 0 {
		return items
	}
	o := &oval{rim: rim{s.view.local(m.c), s.view.local(m.a), s.view.local(m.b)}, parts: parts}
	if !o.align() {
		whole := len(parts) == 1 && parts[0].hi-parts[0].lo > 2*math.Pi-1e-9
		if !whole {
			return items
		}
		d := o.major.Unit()
		t := math.Atan2(o.b.X*d.X+o.b.Y*d.Y, o.a.X*d.X+o.a.Y*d.Y)
		return append(items, item{body: body, order: len(items), p: o.at(t), q: o.at(t + math.Pi)})
	}
	return append(items, item{body: body, order: len(items), oval: o})
}

// align turns the parameter so that a is the greater half-axis in the image
// and b the lesser, a quarter turn to its left; circles start on the right. It
// reports false if the ellipse is flat, with major along it.
func (o *oval) align() bool {
	a, b := Pt{o.a.X, o.a.Y}, Pt{o.b.X, o.b.Y}
	t := math.Atan2(2*a.Dot(b), a.Dot(a)-b.Dot(b)) / 2
	at := func(t float64) Pt { return a.Mul(math.Cos(t)).Add(b.Mul(math.Sin(t))) }
	if at(t).Len() < at(t+math.Pi/2).Len() {
		t += math.Pi / 2
	}
	o.major = at(t)
	o.ratio = at(t+math.Pi/2).Len() / o.major.Len()
	if o.ratio < flatOval {
		return false
	}
	if o.ratio > 1-1e-9 { // a circle: any axis will do, so take a fixed one
		o.major, o.ratio = Pt{o.major.Len(), 0}, 1
		t = math.Atan2(b.X, a.X)
	} else if o.major.X*mix.X+o.major.Y*mix.Y < 0 {
		o.major, t = o.major.Mul(-1), t+math.Pi
	}
	sign := 1.0
	if a.Cross(b) < 0 {
		sign = -1
	}
	na := o.a.Mul(math.Cos(t)).Add(o.b.Mul(math.Sin(t)))
	nb := o.b.Mul(math.Cos(t)).Sub(o.a.Mul(math.Sin(t))).Mul(sign)
	o.a, o.b = na, nb
	for i, p := range o.parts {
		lo, hi := p.lo-t, p.hi-t
		if sign < 0 {
			lo, hi = -hi, -lo
		}
		o.parts[i] = span{lo, hi}
	}
	o.parts = wrap(o.parts)
	return true
}

// wrap brings spans of angles into 0 to 2π, cutting those that pass it.
func wrap(parts []span) []span {
	var out []span
	for _, p := range parts {
		if p.hi-p.lo > 2*math.Pi-1e-9 {
			return []span{{0, 2 * math.Pi}}
		}
		k := math.Floor(p.lo/(2*math.Pi)) * 2 * math.Pi
		p.lo, p.hi = p.lo-k, p.hi-k
		if p.hi > 2*math.Pi {
			out = append(out, span{0, p.hi - 2*math.Pi})
			p.hi = 2 * math.Pi
		}
		out = append(out, p)
	}
	return unite(out, 0)
}

// along reports whether two ellipses fall together in the image.
func (o *oval) along(p *oval) bool {
	return math.Hypot(o.c.X-p.c.X, o.c.Y-p.c.Y) <= imageTol &&
		o.major.Sub(p.major).Len() <= imageTol &&
		math.Abs(o.ratio-p.ratio)*o.major.Len() <= imageTol
}

// crossings appends the parameters at which the rim passes through the plane.
func (r rim) crossings(ts []float64, p Plane) []float64 {
	k, a, b := p.Dist(r.c), p.N.Dot(r.a), p.N.Dot(r.b)
	size := math.Hypot(a, b)
	if size < onTol || math.Abs(k) >= size {
		return ts
	}
	mid, half := math.Atan2(b, a), math.Acos(-k/size)
	return append(ts, turnOf(mid+half), turnOf(mid-half))
}

// turnOf brings an angle into 0 to 2π.
func turnOf(t float64) float64 {
	t = math.Mod(t, 2*math.Pi)
	if t < 0 {
		t += 2 * math.Pi
	}
	return t
}

// where returns the spans between the crossings in whose middle ok holds.
func (r rim) where(ts []float64, ok func(p Vec) bool) []span {
	ts = append(ts, 0, 2*math.Pi)
	slices.Sort(ts)
	var out []span
	for i, t := range ts[1:] {
		if t-ts[i] > 1e-12 && ok(r.at((t+ts[i])/2)) {
			out = append(out, span{ts[i], t})
		}
	}
	return unite(out, 1e-9)
}

// rimParts returns where the rim, in the world, lies in the material. After a
// cut through a bore that is only part of it.
func (s *scene) rimParts(sol Solid, m rim) []span {
	half := Vec{math.Hypot(m.a.X, m.b.X), math.Hypot(m.a.Y, m.b.Y), math.Hypot(m.a.Z, m.b.Z)}
	cells := reaching(sol.d.cells, Box3{m.c.Sub(half), m.c.Add(half)}, onTol)
	var ts []float64
	for _, c := range cells {
		for _, f := range c.f {
			ts = m.crossings(ts, f.ref.of(sol.d.planes))
		}
	}
	return m.where(ts, func(p Vec) bool {
		return slices.ContainsFunc(cells, func(c *cell) bool { return c.holds(sol.d.planes, p) })
	})
}

// hiddenOval returns where a rim is hidden. Each condition for being hidden
// changes at computed parameters, so no chord is ever tried.
func (s *scene) hiddenOval(it *item) []span {
	o := it.oval
	if it.judged != nil {
		o = it.judged
	}
	half := Vec{math.Hypot(o.a.X, o.b.X), math.Hypot(o.a.Y, o.b.Y), 0}
	far := o.c.Z - math.Hypot(o.a.Z, o.b.Z)
	among := s.inBox(Box3{o.c.Sub(half), o.c.Add(half)}, far)
	var ts []float64
	for _, i := range among {
		for _, f := range s.occ[i].fronts {
			ts = o.crossings(ts, f)
		}
		for _, h := range s.occ[i].outline {
			ts = o.crossings(ts, Plane{V(h.x, h.y, 0), h.d})
		}
	}
	return o.where(ts, func(p Vec) bool { return s.hiddenPoint(p, it.body, among) })
}

// inBox returns the cells that may hide something within the box's outline
// down to the depth far.
func (s *scene) inBox(b Box3, far float64) []int32 {
	s.turn++
	s.hits = s.hits[:0]
	for y := s.grid.row(b.Min.Y); y <= s.grid.row(b.Max.Y); y++ {
		for x := s.grid.col(b.Min.X); x <= s.grid.col(b.Max.X); x++ {
			k := y*s.grid.nx + x
			for _, i := range s.grid.items[s.grid.start[k]:s.grid.start[k+1]] {
				o := &s.occ[i].box
				if o.Max.Z <= far {
					break
				}
				if s.seen[i] != s.turn && o.Min.X < b.Max.X && b.Min.X < o.Max.X && o.Min.Y < b.Max.Y && b.Min.Y < o.Max.Y {
					s.seen[i] = s.turn
					s.hits = append(s.hits, i)
				}
			}
		}
	}
	return s.hits
}
