package template

import (
	"cmp"
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// work is the cuts of a member that lie together along it and so share a
// template.
type work struct {
	member     frame.Member
	features   []frame.Feature
	a, b       float64 // what they take up along the member
	start, end bool    // the member is cut to length here, so the stick runs on beyond
	faces      []geom.Face
	bores      []geom.Bore
}

// clip is how far beyond its cuts a work looks at the solid, mm; features
// nearer to each other than twice that share a work. What lies farther off is
// plain timber on the template, whatever else is cut there: so alike cuts have
// alike templates.
const clip = 1.5

// worksOf groups the features of a member, in order along it. Bolts have patterns
// of their own, but where they go through a check-out. The housings of braces go
// each by itself: they are cut into other faces than the rafters' work, and two of
// a post face away from each other, so that one template of both would be large
// and half empty.
func worksOf(m frame.Member) []work {
	var cuts, bolts, braces []work
	checked := slices.ContainsFunc(m.Features, func(f frame.Feature) bool { _, ok := f.(frame.CheckOut); return ok })
	for _, f := range m.Features {
		a, b, ok := extent(m, f)
		w := work{member: m, features: []frame.Feature{f}, a: a, b: b}
		_, brace := f.(frame.BraceHousing)
		switch {
		case !ok:
		case brace:
			braces = append(braces, w)
		case w.bolts() && !checked:
			bolts = append(bolts, w)
		default:
			cuts = append(cuts, w)
		}
	}
	out := slices.Concat(braces, grouped(cuts), grouped(bolts))
	for i := range out {
		out[i].look(m.Solid())
	}
	return out
}

// grouped joins works that lie together.
func grouped(all []work) []work {
	slices.SortStableFunc(all, func(x, y work) int { return cmp.Compare(x.a, y.a) })
	var out []work
	for _, w := range all {
		if n := len(out); n > 0 && (w.a < out[n-1].b+2*clip || onePattern(out[n-1], w)) {
			out[n-1].features = append(out[n-1].features, w.features...)
			out[n-1].b = max(out[n-1].b, w.b)
			continue
		}
		out = append(out, w)
	}
	return out
}

// extent is what a feature takes up along its member, on the faces; a hole
// along the member, only its mouth. It reports false if that is nothing.
func extent(m frame.Member, f frame.Feature) (a, b float64, ok bool) {
	a, b = math.Inf(1), math.Inf(-1)
	for _, c := range chips(m, f) {
		a, b = min(a, c.Min.X), max(b, c.Max.X)
	}
	for _, h := range f.Bores(m) {
		r := h.Radius * math.Sqrt(max(0, 1-h.Dir.X*h.Dir.X))
		a, b = min(a, h.At.X-r), max(b, h.At.X+r)
	}
	return a, b, a <= b
}

// chips are the boxes round what a feature takes off its member.
func chips(m frame.Member, f frame.Feature) []geom.Box3 {
	var out []geom.Box3
	for _, c := range m.Taken(f) {
		out = append(out, c.Bounds())
	}
	return out
}

// highest is how high over the bottom of its member a work is cut.
func (w work) highest() float64 {
	high := 0.0
	for _, f := range w.features {
		for _, c := range chips(w.member, f) {
			high = max(high, c.Max.Z)
		}
	}
	return high
}

// look reads the faces and bores of the member's solid, as it stands in the world,
// near the work.
func (w *work) look(solid geom.Solid) {
	m := w.member
	for _, f := range w.features {
		if c, ok := f.(frame.EndCut); ok {
			w.start = w.start || c.End == frame.FaceStart
			w.end = w.end || c.End == frame.FaceEnd
		}
		if c, ok := f.(frame.Shape); ok {
			w.start = w.start || c.End == frame.FaceStart
			w.end = w.end || c.End == frame.FaceEnd
		}
	}
	s := solid.
		Cut(m.Place.Plane(geom.Plane{N: geom.V(1, 0, 0), D: w.b + clip})).
		Cut(m.Place.Plane(geom.Plane{N: geom.V(-1, 0, 0), D: clip - w.a}))
	for _, f := range s.Faces() {
		g := geom.Face{Plane: m.Place.LocalPlane(f.Plane), Smooth: f.Smooth}
		for _, loop := range f.Loops {
			var l []geom.Vec
			for _, p := range loop {
				l = append(l, m.Place.Local(p))
			}
			g.Loops = append(g.Loops, l)
		}
		w.faces = append(w.faces, g)
	}
	for _, b := range solid.Bores() {
		b.At, b.Dir = m.Place.Local(b.At), m.Place.LocalDir(b.Dir)
		if b.At.X > w.a-clip && b.At.X < w.b+clip {
			w.bores = append(w.bores, b)
		}
	}
}

// cut is what a face of the timber shows of a work, on the paper.
type cut struct {
	lines [][2]geom.Pt
	rings []ring
	kept  [][]geom.Pt // loops round the timber that stays
	near  draw.Rect   // within it, all that is not kept is waste
}

// ring is the mouth of a round hole.
type ring struct {
	c geom.Pt
	r float64
}

// on reads the cut lines of a work off a face.
func (w work) on(f flap) cut {
	if len(w.faces) == 0 { // nothing is cut
		return cut{near: draw.EmptyRect()}
	}
	c := cut{near: w.near(f)}
	for _, face := range w.faces {
		if face.Plane.N.Sub(f.plane.N).Len() > same || math.Abs(face.Plane.D-f.plane.D) > same {
			continue
		}
		for _, loop := range face.Loops {
			kept := make([]geom.Pt, len(loop))
			for i, p := range loop {
				q := loop[(i+1)%len(loop)]
				kept[i] = f.paper(p)
				if !w.borders(p, q, f) {
					if a, b, ok := within(f.paper(p), f.paper(q), f.area); ok {
						c.lines = append(c.lines, [2]geom.Pt{a, b})
					}
				}
			}
			c.kept = append(c.kept, kept)
		}
	}
	for _, b := range w.bores {
		if p, ok := mouth(b, f.plane); ok && f.area.Contains(f.paper(p)) {
			c.rings = append(c.rings, ring{f.paper(p), b.Radius})
		}
	}
	return c
}

// borders reports whether an edge is no cut: it lies on an arris of the prism,
// on an end that is not cut here, or where the work stops looking.
func (w work) borders(p, q geom.Vec, f flap) bool {
	m := w.member
	at := func(x, y, limit float64) bool { return math.Abs(x-limit) < same && math.Abs(y-limit) < same }
	if !f.acrossMember {
		if at(p.X, q.X, w.a-clip) || at(p.X, q.X, w.b+clip) ||
			!w.start && at(p.X, q.X, 0) || !w.end && at(p.X, q.X, m.Length) {
			return true
		}
	}
	if f.plane.N.Y == 0 && (at(p.Y, q.Y, 0) || at(p.Y, q.Y, m.Section.Width)) {
		return true
	}
	return f.plane.N.Z == 0 && (at(p.Z, q.Z, 0) || at(p.Z, q.Z, m.Section.Depth))
}

// near is what of a flap the work looks at. Where the member is cut to length
// that goes on to the edge of the paper.
func (w work) near(f flap) draw.Rect {
	if f.acrossMember {
		return f.area
	}
	a, b := max(w.a-clip, f.u0), min(w.b+clip, f.u1)
	if w.start {
		a = f.u0
	}
	if w.end {
		b = f.u1
	}
	along := f.dir(geom.V(1, 0, 0))
	p := f.paper(geom.V(a, f.at.Y, f.at.Z))
	q := f.paper(geom.V(b, f.at.Y, f.at.Z))
	r := f.area
	if along.X != 0 {
		r.X0, r.X1 = min(p.X, q.X), max(p.X, q.X)
	} else {
		r.Y0, r.Y1 = min(p.Y, q.Y), max(p.Y, q.Y)
	}
	return r.Intersect(f.area)
}

// mouthReach is how far beyond its depth a bore still counts as reaching a face,
// mm: the least size that is ever stated.
const mouthReach = 0.01

// mouth is where a bore comes through a face that it is square to.
func mouth(b geom.Bore, face geom.Plane) (geom.Vec, bool) {
	slope := b.Dir.Dot(face.N)
	if math.Abs(slope) < 1-same {
		return geom.Vec{}, false
	}
	t := -face.Dist(b.At) / slope
	return b.At.Add(b.Dir.Mul(t)), t > -mouthReach && t < b.Depth+mouthReach
}
