package geom

import (
	"math"
	"sort"
	"sync"
)

// Convex is the set of points inside every one of its half-spaces. The empty
// list is all of space.
type Convex []Plane

// Bore is a round hole with a flat bottom, kept as a true cylinder. At is the
// middle of its mouth on the surface, Dir points into the material. Depth is
// measured along the axis; a bore deeper than the material goes through.
type Bore struct {
	At            Vec
	Dir           Vec
	Radius, Depth float64
}

// Solid is a closed body. It is a value: every operation returns a new solid
// and leaves the old one as it was, so solids may be shared and kept. The
// zero value is the empty solid.
type Solid struct{ d *data }

// data is what a solid holds. Nothing of it changes after making, but for the
// boundary, which is worked out when it is first asked for.
type data struct {
	tab    *table
	planes []Plane // the part of tab that this solid sees
	curve  curving
	cells  []*cell
	bores  []Bore
	box    Box3

	once sync.Once
	skin *skin

	parted   sync.Once
	straight []edge // of the skin
	rims     []arcRim
}

// Bound is half the side of the cube to which an unbounded shape is clipped,
// in millimetres: 1 km, twenty times the largest job.
const Bound = 1e6

// Box returns the solid box between two corners. It is empty if max does not
// exceed min on each axis, and clipped to the cube of Bound.
func Box(min, max Vec) Solid {
	b := Box3{min.clamp(), max.clamp()}
	s := b.Size()
	if !(s.X > onTol && s.Y > onTol && s.Z > onTol) {
		return Solid{}
	}
	t, refs := (&table{}).extend(0, b.Convex())
	return t.solid([]*cell{boxCell(b, refs)}, nil)
}

// clamp brings p into the cube of Bound. What is not a number stays so.
func (a Vec) clamp() Vec {
	in := func(x float64) float64 { return max(-Bound, min(Bound, x)) }
	return Vec{in(a.X), in(a.Y), in(a.Z)}
}

// FromConvex returns the solid of c: empty if c is void, clipped to the cube
// of Bound if it has no end.
func FromConvex(c Convex) Solid {
	s := Box(V(-Bound, -Bound, -Bound), V(Bound, Bound, Bound))
	for _, p := range c {
		s = s.Cut(p)
	}
	return s
}

// solid makes a solid of cells whose planes are in t.
func (t *table) solid(cells []*cell, bores []Bore) Solid {
	if len(cells) == 0 {
		return Solid{}
	}
	n := len(t.planes)
	d := &data{tab: t, planes: t.planes[:n:n], curve: t.curve.upTo(n), cells: cells, bores: bores, box: noBox()}
	for _, c := range cells {
		d.box.grow(&c.box)
	}
	return Solid{d}
}

// Cut returns the part of s inside the plane.
func (s Solid) Cut(p Plane) Solid {
	ps := Convex{p}.tidy()
	if s.Empty() || len(ps) == 0 || ps[0].holds(s.d.box) {
		return s
	}
	if ps[0].Flip().holds(s.d.box) {
		return Solid{}
	}
	t, refs := s.d.tab.extend(len(s.d.planes), ps)
	p = refs[0].of(t.planes)
	cells := make([]*cell, 0, len(s.d.cells))
	whole := true
	for _, c := range s.d.cells {
		in, out := c.split(p, refs[0])
		whole = whole && out == nil
		if in != nil {
			cells = append(cells, in)
		}
	}
	if whole {
		return s
	}
	return t.solid(cells, s.d.bores)
}

// Minus returns s without the convex shapes. Parts that a shape does not truly
// enter are left whole. Many shapes in one call cost less than many calls.
func (s Solid) Minus(cs ...Convex) Solid {
	for _, c := range cs {
		s = s.minus(c)
	}
	return s
}

func (s Solid) minus(c Convex) Solid {
	ps := c.tidy()
	if s.Empty() {
		return s
	}
	reach, ok := reachOf(ps, s.d.box)
	if !ok {
		return s
	}
	t, refs := s.d.tab.extend(len(s.d.planes), ps)
	for i, r := range refs {
		ps[i] = r.of(t.planes)
	}
	cells := make([]*cell, 0, len(s.d.cells)+len(ps))
	for _, c := range s.d.cells {
		if !c.box.meets(&reach, -onTol) {
			cells = append(cells, c)
			continue
		}
		cells = c.minus(cells, ps, refs)
	}
	return t.solid(cells, s.d.bores)
}

// reachOf returns the box of the part of the shape within b, and false if
// there is none.
func reachOf(ps []Plane, b Box3) (Box3, bool) {
	c := boxCell(b, make([]ref, 6))
	for _, p := range ps {
		if c, _ = c.split(p, 0); c == nil {
			return Box3{}, false
		}
	}
	return c.box, true
}

// minus appends to dst what is left of the cell after the convex shape is
// taken away. The plane that frees most goes first, so that of a long timber
// only a short piece around the pocket is cut up.
func (c *cell) minus(dst []*cell, ps []Plane, refs []ref) []*cell {
	order := make([]int, 0, len(ps))
	free := make([]float64, len(ps))
	for i, p := range ps {
		for _, v := range c.v {
			free[i] = max(free[i], p.Dist(v))
		}
		if free[i] > onTol {
			order = append(order, i)
		}
	}
	sort.SliceStable(order, func(a, b int) bool { return free[order[a]] > free[order[b]] })
	start, rest := len(dst), c
	for _, i := range order {
		in, out := rest.split(ps[i], refs[i])
		if in == nil {
			return append(dst[:start], c) // never entered: keep it whole
		}
		if out != nil {
			dst = append(dst, out)
		}
		rest = in
	}
	return dst
}

// WithBore returns s with a bore added. Bores take part in volume, sections
// and drawings, not in contact or clash. They must not meet each other; a
// bore without radius, depth or direction is left out.
func (s Solid) WithBore(b Bore) Solid {
	if s.Empty() || !(b.Radius > 0) || !(b.Depth > 0) || !(b.Dir.Len() > 0) || b.At != b.At.clamp() {
		return s
	}
	b.Dir, b.Depth = b.Dir.Unit(), min(b.Depth, 4*Bound)
	n := len(s.d.bores)
	return s.with(s.d.cells, append(s.d.bores[:n:n], b))
}

// with returns a solid that sees the same planes.
func (s Solid) with(cells []*cell, bores []Bore) Solid {
	d := s.d
	return Solid{&data{tab: d.tab, planes: d.planes, curve: d.curve, cells: cells, bores: bores, box: d.box}}
}

// Placed carries s from the axes a, in which it was made, to the world.
func (s Solid) Placed(a Axes) Solid {
	if s.Empty() {
		return s
	}
	d := s.d
	t := &table{planes: make([]Plane, len(d.planes)), curve: d.curve.clone()}
	for i, p := range d.planes {
		t.planes[i] = a.Plane(p)
	}
	for i, b := range t.curve.barrels {
		t.curve.barrels[i] = b.placed(a)
	}
	cells := make([]*cell, len(d.cells))
	for i, c := range d.cells {
		cells[i] = c.placed(a)
	}
	bores := make([]Bore, len(d.bores))
	for i, b := range d.bores {
		bores[i] = Bore{a.Point(b.At), a.Dir(b.Dir), b.Radius, b.Depth}
	}
	return t.solid(cells, bores)
}

// Volume returns the volume in cubic millimetres, bores deducted.
func (s Solid) Volume() float64 {
	if s.Empty() {
		return 0
	}
	var sum float64
	for _, c := range s.d.cells {
		sum += c.volume()
	}
	for _, b := range s.d.bores {
		for _, run := range s.runs(b) {
			sum -= math.Pi * b.Radius * b.Radius * (run.to - run.from)
		}
	}
	return sum
}

// Bounds returns the least box that holds s; an empty box for the empty solid.
func (s Solid) Bounds() Box3 {
	if s.Empty() {
		return noBox()
	}
	return s.d.box
}

// Empty reports whether s holds nothing.
func (s Solid) Empty() bool { return s.d == nil }

// Bores returns the bores in the order in which they were added.
func (s Solid) Bores() []Bore {
	if s.Empty() {
		return nil
	}
	return append([]Bore(nil), s.d.bores...)
}
