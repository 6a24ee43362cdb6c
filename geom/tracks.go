package geom

import (
	"cmp"
	"math"
	"slices"
)

// imageTol is how far apart two lines of the image may run and still be drawn
// as one: a tenth of a thousandth of a millimetre on paper even at 1:10.
const imageTol = 1e-3

// baseline is the unbounded line of the image on which a straight item lies:
// the points p with p·dir.Left() = off.
type baseline struct {
	dir Pt
	off float64
}

func (b baseline) pos(p Vec) float64  { return b.dir.X*p.X + b.dir.Y*p.Y }
func (b baseline) dist(p Vec) float64 { return -b.dir.Y*p.X + b.dir.X*p.Y - b.off }

// tracks finds which items lie on one line or ellipse of the image, numbers
// those and returns the items by track and, within one, the nearest first.
func tracks(items []item, perBody bool) []*item {
	type ranked struct {
		length float64
		at     int32
	}
	byLength := make([]ranked, len(items))
	for i := range items {
		it := &items[i]
		byLength[i] = ranked{math.Hypot(it.q.X-it.p.X, it.q.Y-it.p.Y), int32(i)}
	}
	slices.SortFunc(byLength, func(a, b ranked) int { // long lines know best where they run
		return cmp.Or(cmp.Compare(b.length, a.length), cmp.Compare(a.at, b.at))
	})
	var t trackTable
	sorted := make([]*item, len(items))
	for k, r := range byLength {
		it := &items[r.at]
		t.assign(it, perBody)
		it.near, it.far = it.depths()
		sorted[k] = it
	}
	slices.SortFunc(sorted, func(a, b *item) int {
		return cmp.Or(cmp.Compare(a.track, b.track), cmp.Compare(b.near, a.near), cmp.Compare(a.order, b.order))
	})
	return sorted
}

// trackTable numbers the tracks.
type trackTable struct {
	of    []*item // the first item on each
	index near
}

func (t *trackTable) assign(it *item, perBody bool) {
	var print float64
	if it.oval != nil {
		it.parts = append([]span(nil), it.oval.parts...)
		print = it.oval.c.X*mix.X + it.oval.c.Y*mix.Y
	} else {
		d := Pt{it.q.X - it.p.X, it.q.Y - it.p.Y}.Unit()
		if d.X*mix.X+d.Y*mix.Y < 0 {
			it.p, it.q, d = it.q, it.p, d.Mul(-1)
		}
		it.base = baseline{dir: d}
		it.base.off = it.base.dist(it.p.Lerp(it.q, 0.5))
		print = it.base.off + printDir*(d.X*mix.X+d.Y*mix.Y)
	}
	i := t.index.find(print, 2*imageTol, func(i int32) bool {
		o := t.of[i]
		return (!perBody || o.body == it.body) && it.along(o)
	})
	if i < 0 {
		i = int32(len(t.of))
		t.of = append(t.of, it)
		t.index.add(print)
	}
	it.track = i
	if it.oval == nil {
		it.base = t.of[i].base
		a, b := it.base.pos(it.p), it.base.pos(it.q)
		it.whole[0] = span{min(a, b), max(a, b)}
		it.parts = it.whole[:]
	}
}

// along reports whether the item runs along the track of o.
func (it *item) along(o *item) bool {
	if (it.oval == nil) != (o.oval == nil) {
		return false
	}
	if it.oval != nil {
		return it.oval.along(o.oval)
	}
	return math.Abs(o.base.dist(it.p)) <= imageTol && math.Abs(o.base.dist(it.q)) <= imageTol
}

// layer collects what a track already carries.
type layer struct {
	seen   []span // a visible line is there
	dark   []span // a line is hidden there and all that are still to come lie behind it
	wait   []span // hidden, but something nearer may still come
	waitAt []float64
}

// settle moves hidden stretches to dark once nothing nearer can come. What
// lies behind a hidden line is hidden by the same cells.
func (l *layer) settle(near float64) {
	keep := 0
	for i, s := range l.wait {
		if l.waitAt[i] >= near-depthTol {
			l.dark = insert(l.dark, s, 0)
			continue
		}
		l.wait[keep], l.waitAt[keep] = s, l.waitAt[i]
		keep++
	}
	l.wait, l.waitAt = l.wait[:keep], l.waitAt[:keep]
}

// drawTrack judges the items of one track, nearest first, and appends the
// pieces to draw.
func (s *scene) drawTrack(out []piece, items []*item, opt Options) []piece {
	var l layer
	first := len(out)
	var dark []piece
	for _, it := range items {
		l.settle(it.near)
		least := minStroke / it.scale()
		rest := longer(without(without(it.parts, l.seen), l.dark), least)
		if len(rest) == 0 {
			continue
		}
		hidden := s.hiddenOf(it, span{rest[0].lo, rest[len(rest)-1].hi})
		for _, x := range longer(without(rest, hidden), least) {
			l.seen = insert(l.seen, x, least)
			out = join(out, first, newPiece(it, x, false))
		}
		for _, x := range longer(meet(rest, hidden), least) {
			if !s.own[it.body] { // what hides it may hide nothing else
				l.wait, l.waitAt = append(l.wait, x), append(l.waitAt, it.far)
			}
			dark = append(dark, newPiece(it, x, true))
		}
	}
	if opt.VisibleOnly {
		return out
	}
	first = len(out)
	for _, p := range dark {
		least := minStroke / p.item.scale()
		for _, x := range longer(without([]span{p.span}, l.seen), least) {
			l.seen = insert(l.seen, x, least)
			out = join(out, first, newPiece(p.item, x, true))
		}
	}
	return out
}

func newPiece(it *item, x span, hidden bool) piece {
	return piece{it, x, it.point(x.lo), it.point(x.hi), hidden}
}

// join appends a piece, or lengthens one of the same body that it touches. Of a
// curve these are the two that end where its parameter begins anew.
func join(out []piece, first int, p piece) []piece {
	if p.item.oval != nil {
		for i := first; i < len(out) && p.hi == 2*math.Pi && p.lo > 0; i++ {
			if o := out[i]; o.item == p.item && o.lo == 0 {
				p.hi, p.to = p.hi+o.hi, o.to
				return append(append(out[:i], out[i+1:]...), p)
			}
		}
		return append(out, p)
	}
	for i := first; i < len(out); i++ {
		o := &out[i]
		if o.item.body != p.item.body {
			continue
		}
		if math.Abs(o.hi-p.lo) <= minStroke {
			p.lo, p.from, p.item = o.lo, o.from, o.item
		} else if math.Abs(o.lo-p.hi) <= minStroke {
			p.hi, p.to, p.item = o.hi, o.to, o.item
		} else {
			continue
		}
		out = append(out[:i], out[i+1:]...)
		i = first - 1
	}
	return append(out, p)
}

// hiddenOf returns where the item is hidden, in its own parameter, at least
// within the given span.
func (s *scene) hiddenOf(it *item, within span) []span {
	if it.oval != nil {
		return s.hiddenOval(it)
	}
	hidden := s.hidden(it.point(within.lo), it.point(within.hi), it.body)
	k := within.hi - within.lo
	for i, h := range hidden {
		hidden[i] = span{within.lo + k*h.lo, within.lo + k*h.hi}
	}
	return hidden
}
