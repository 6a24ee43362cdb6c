package geom

import "math"

// Region is a piece of cut material in the axes of the cutting plane: an
// outline, anticlockwise, and the holes in it, clockwise. Round[i] is the true
// curve of Holes[i] if that hole is a bore and nothing else, and nil if not.
type Region struct {
	Outer []Pt
	Holes [][]Pt
	Round []*Arc
}

// Area returns the region's area.
func (r Region) Area() float64 {
	sum := polyArea(r.Outer)
	for _, h := range r.Holes {
		sum += polyArea(h)
	}
	return sum
}

// polyArea returns the area of a polygon, negative if it runs clockwise.
func polyArea(l []Pt) float64 {
	var sum float64
	for i, p := range l {
		sum += p.Cross(l[(i+1)%len(l)])
	}
	return sum / 2
}

// chordTol is how far a round hole in a section may stray from its circle:
// invisible on paper even at full size.
const chordTol = 0.005

// Section cuts s by the plane of a's U and V and returns the cut regions in U
// and V. The viewer stands on W's side and what is kept lies behind the plane;
// so where a face lies in the plane, material just behind it (W below 0)
// is cut and material just before it is not. A bore along the plane gives its
// exact rectangle, one through it a polygon within chordTol of the true curve.
func (s Solid) Section(a Axes) []Region {
	if s.Empty() {
		return nil
	}
	p := PlaneAt(a.O, a.W)
	cells := make([]*cell, 0, 8)
	for _, c := range s.d.cells {
		if lo, hi := c.span(p); lo < -onTol && hi >= -onTol {
			cells = append(cells, c)
		}
	}
	if len(cells) == 0 {
		return nil
	}
	t := s.with(cells, nil)
	for _, b := range s.d.bores {
		for _, r := range s.runs(b) {
			t = t.Minus(b.tool(r, p))
		}
	}
	if t.Empty() {
		return nil
	}
	rs := t.slice(a, p)
	for _, b := range s.d.bores {
		markRound(rs, b, a, p)
	}
	return rs
}

// markRound notes which holes are the bore's curve in the plane p of a.
func markRound(rs []Region, b Bore, a Axes, p Plane) {
	m, ok := b.rimOn(p)
	if !ok {
		return
	}
	o := oval{rim: rim{a.Local(m.c), a.LocalDir(m.a), a.LocalDir(m.b)}}
	if !o.align() {
		return
	}
	arc := Arc{Pt{o.c.X, o.c.Y}, o.major, o.ratio, 0, 2 * math.Pi}
	for i := range rs {
		for j, h := range rs[i].Holes {
			if arc.through(h) {
				rs[i].Round[j] = &arc
			}
		}
	}
}

// through reports whether all points of the loop lie on the arc's ellipse.
func (a Arc) through(l []Pt) bool {
	r := a.Major.Len()
	u := a.Major.Mul(1 / r)
	for _, p := range l {
		d := p.Sub(a.Centre)
		if math.Abs(math.Hypot(d.Dot(u), d.Dot(u.Left())/a.Ratio)-r) > onTol {
			return false
		}
	}
	return true
}

// span returns the least and the greatest distance of the cell from p.
func (c *cell) span(p Plane) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, v := range c.v {
		d := p.Dist(v)
		lo, hi = min(lo, d), max(hi, d)
	}
	return lo, hi
}

// slice cuts a solid without bores.
func (s Solid) slice(a Axes, p Plane) []Region {
	t, refs := s.d.tab.extend(len(s.d.planes), []Plane{p})
	r := refs[0]
	p = r.of(t.planes)
	var cut []*cell // the parts behind the plane that reach it
	for _, c := range s.d.cells {
		if lo, hi := c.span(p); lo < -onTol && hi >= -onTol {
			in, _ := c.split(p, r)
			cut = append(cut, in)
		}
	}
	w := weld{}
	var frags []fragment
	for _, f := range fragments(cut, &w) {
		if f.face == r {
			frags = append(frags, f)
		}
	}
	k := newSkin(t.planes, frags, &w, s.d.box.Centre())
	loops, _ := k.loops(t.planes)
	var out []Region
	for _, nest := range k.nest(loops, p.N) {
		g := Region{Outer: k.flat(nest[0], a)}
		for _, h := range nest[1:] {
			g.Holes = append(g.Holes, k.flat(h, a))
			g.Round = append(g.Round, nil)
		}
		out = append(out, g)
	}
	return out
}

// flat returns the loop in the axes' U and V.
func (k *skin) flat(l rimLoop, a Axes) []Pt {
	out := make([]Pt, len(l.v))
	for i, v := range l.v {
		q := a.Local(k.v[v])
		out[i] = Pt{q.X, q.Y}
	}
	return out
}

// tool returns the convex shape that takes the stretch r of the bore out of a
// section by p.
func (b Bore) tool(r run, p Plane) Convex {
	c := Convex{
		PlaneAt(b.At.Add(b.Dir.Mul(r.from-b.slack(r.fromAt))), b.Dir.Neg()),
		PlaneAt(b.At.Add(b.Dir.Mul(r.to+b.slack(r.toward))), b.Dir),
	}
	if math.Abs(p.N.Dot(b.Dir)) < minSlope {
		side := b.Dir.Cross(p.N)
		h := p.Dist(b.At)
		half := b.Radius*b.Radius - h*h
		if half <= 0 {
			return append(c, PlaneAt(b.At, side), PlaneAt(b.At, side.Neg())) // holds nothing
		}
		w := side.Mul(math.Sqrt(half))
		return append(c, PlaneAt(b.At.Add(w), side), PlaneAt(b.At.Sub(w), side.Neg()))
	}
	n := int(math.Ceil(math.Pi/math.Acos(1-min(0.5, chordTol/b.Radius))/4)) * 4
	u, v := square(b.Dir)
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(n))
		side := u.Mul(cos).Add(v.Mul(sin))
		c = append(c, PlaneAt(b.At.Add(side.Mul(b.Radius*math.Cos(math.Pi/float64(n)))), side))
	}
	return c
}

// slack is how far beyond its middle a mouth in the plane p reaches along the
// axis, when the plane slopes to it. A flat bottom has none.
func (b Bore) slack(p Plane) float64 {
	cos := math.Abs(p.N.Dot(b.Dir))
	if cos > 1-1e-12 || cos < 0.05 {
		return 0
	}
	return b.Radius * math.Sqrt(1-cos*cos) / cos
}
