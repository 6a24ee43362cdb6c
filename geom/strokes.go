package geom

import (
	"cmp"
	"math"
	"slices"
)

// Body is a solid in a picture. ID comes back in its strokes.
type Body struct {
	ID         int
	Solid      Solid
	SeeThrough bool // hides only itself, not what is behind it
}

// Options says how a picture is wanted. The zero value draws every line once,
// the hidden ones too.
type Options struct {
	PerBody     bool // keep lines of different bodies apart even where they fall together
	VisibleOnly bool // leave hidden lines out
}

// Stroke is a line of a picture: straight from A to B or, if Arc is set, along
// that arc. From and To are the points of the model at its ends.
type Stroke struct {
	Body     int
	A, B     Pt
	Hidden   bool
	Arc      *Arc
	From, To Vec
}

// Arc is a stretch of an ellipse: Centre + Major·cos t + Minor·sin t for t
// from Start to End, where Minor is Major turned a quarter anticlockwise and
// shortened by Ratio. Start < End; a full turn is 2π. A circle has Ratio 1.
type Arc struct {
	Centre, Major     Pt
	Ratio, Start, End float64
}

// At returns the point at parameter t.
func (a Arc) At(t float64) Pt {
	sin, cos := math.Sincos(t)
	return a.Centre.Add(a.Major.Mul(cos)).Add(a.Major.Left().Mul(a.Ratio * sin))
}

// Strokes draws the bodies as seen in v: their real edges and the rims and
// outlines of their bores, split exactly where they pass behind something.
// Where lines fall on each other the visible one stays, and of several the
// nearest (unless opt.PerBody). Where a body's line goes straight on in the
// image it is one stroke, even if it goes on at another depth. Bores hide and
// reveal nothing. The order is by body as given, visible before hidden, and
// always the same.
func Strokes(v View, bodies []Body, opt Options) []Stroke {
	s := newScene(v, bodies)
	most := 0
	for _, b := range bodies {
		if !b.Solid.Empty() {
			straight, rims := b.Solid.arrises()
			most += len(straight) + len(rims)
		}
	}
	items := make([]item, 0, most)
	for i, b := range bodies {
		if !b.Solid.Empty() {
			items = s.lines(items, int32(i), b.Solid)
			items = s.rims(items, int32(i), b.Solid)
		}
	}
	sorted := tracks(items, opt.PerBody)
	var out []piece
	for i := 0; i < len(sorted); {
		j := i + 1
		for j < len(sorted) && sorted[j].track == sorted[i].track {
			j++
		}
		out = s.drawTrack(out, sorted[i:j], opt)
		i = j
	}
	strokes := make([]Stroke, len(out))
	for i, k := range inOrder(out) {
		strokes[i] = out[k].stroke(v, bodies[out[k].item.body].ID)
	}
	return strokes
}

// inOrder is the order of pieces in a picture: by body, the visible before the
// hidden, and then as the edges come. The pieces themselves stay where they are,
// being large.
func inOrder(out []piece) []int32 {
	order := make([]int32, len(out))
	for i := range order {
		order[i] = int32(i)
	}
	slices.SortFunc(order, func(i, j int32) int {
		a, b := &out[i], &out[j]
		if a.item.body == b.item.body && a.hidden != b.hidden {
			if b.hidden {
				return -1
			}
			return 1
		}
		return cmp.Or(cmp.Compare(a.item.body, b.item.body), cmp.Compare(a.item.order, b.item.order), cmp.Compare(i, j))
	})
	return order
}

// item is a line or curve before it is judged.
type item struct {
	body   int32
	order  int
	p, q   Vec     // ends of a straight line, in the view
	oval   *oval   // set for a curve
	judged *oval   // in its place for what hides it; nil: itself
	parts  []span  // where it exists, in its own parameter
	whole  [1]span // room for the parts of a straight line
	near   float64 // its depths, once it is on a track
	far    float64
	track  int32    // which line or ellipse of the image it lies on
	base   baseline // that line, if straight
}

// depths returns how near the item comes and how far it goes.
func (it *item) depths() (near, far float64) {
	if o := it.oval; o != nil {
		r := math.Hypot(o.a.Z, o.b.Z)
		return o.c.Z + r, o.c.Z - r
	}
	return max(it.p.Z, it.q.Z), min(it.p.Z, it.q.Z)
}

// scale is the length of one unit of the parameter in the image.
func (it *item) scale() float64 {
	if it.oval != nil {
		return it.oval.major.Len()
	}
	return 1
}

// point returns the place, in the view, at the parameter.
func (it *item) point(at float64) Vec {
	if it.oval != nil {
		return it.oval.at(at)
	}
	a, b := it.base.pos(it.p), it.base.pos(it.q)
	return it.p.Lerp(it.q, (at-a)/(b-a))
}

// piece is a judged part of an item.
type piece struct {
	item *item
	span
	from, to Vec
	hidden   bool
}

func (p piece) stroke(v View, id int) Stroke {
	model := func(q Vec) Vec {
		return v.Right.Mul(q.X).Add(v.Up.Mul(q.Y)).Add(v.Toward.Mul(q.Z))
	}
	s := Stroke{Body: id, Hidden: p.hidden, A: Pt{p.from.X, p.from.Y}, B: Pt{p.to.X, p.to.Y}, From: model(p.from), To: model(p.to)}
	if o := p.item.oval; o != nil {
		s.Arc = &Arc{Pt{o.c.X, o.c.Y}, o.major, o.ratio, p.lo, p.hi}
	}
	return s
}

// lines appends the edges of a solid that are to be drawn.
func (s *scene) lines(items []item, body int32, sol Solid) []item {
	k := sol.boundary()
	straight, rims := sol.arrises()
	for _, e := range straight {
		if e.smooth && !s.outlines(sol, e) {
			continue
		}
		items = s.line(items, body, k.v[e.a], k.v[e.b])
	}
	for _, r := range rims {
		items = s.arcs(items, body, sol, r)
	}
	return items
}

// outlines reports whether a smooth edge parts a face that is seen from one
// that is not.
func (s *scene) outlines(sol Solid, e edge) bool {
	f := e.f.of(sol.d.planes).N.Dot(s.view.Toward)
	g := e.g.of(sol.d.planes).N.Dot(s.view.Toward)
	return (f > edgeOn) != (g > edgeOn)
}

// line appends one straight line, unless it is seen end on.
func (s *scene) line(items []item, body int32, a, b Vec) []item {
	p, q := s.view.local(a), s.view.local(b)
	if (Pt{q.X - p.X, q.Y - p.Y}).Len() <= minStroke {
		return items
	}
	return append(items, item{body: body, order: len(items), p: p, q: q})
}
