package sheets

import (
	"fmt"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// layerViews are the further views of a detail of battens: of the check in the
// rafter with the batten taken away, and of the laths across the slope.
func (b battened) layerViews() []*viewBlock {
	var out []*viewBlock
	for _, f := range b.rafter.Features {
		if c, ok := f.(frame.Check); ok {
			out = append(out, b.checkView(c))
			break
		}
	}
	for _, f := range b.battens[0].Features {
		if c, ok := f.(frame.Check); ok {
			out = append(out, b.underView(c))
			break
		}
	}
	if b.hasLaths() {
		out = append(out, b.lathAcross())
	}
	return out
}

// checkView is a rafter's first check with nothing in it, seen along its own
// axes so that it stands square on the paper.
func (b battened) checkView(c frame.Check) *viewBlock {
	r := b.rafter
	axes := geom.View{Right: r.Place.U, Up: r.Place.W, Toward: r.Place.V.Neg()}
	at := func(u, w float64) geom.Vec { return r.Place.Point(geom.V(u, 0, w)) }
	v := b.squareOn("Check in the rafter", axes, r, at(c.At, r.Section.Depth), c)
	d := r.Section.Depth
	from, to := c.At-c.Width/2, c.At+c.Width/2
	v.row(draw.Top).Chain("", at(from, d), at(to, d))
	v.row(draw.Right).Chain("", at(to, d-c.Depth), at(to, d))
	v.title.Note = "batten taken out, waste hatched"
	v.over = func(p *page, w *draw.View) {
		waste(p, w, at(from, d-c.Depth), at(to, d-c.Depth), at(to, d), at(from, d))
	}
	return v
}

// underView is a batten's first check.
func (b battened) underView(c frame.Check) *viewBlock {
	t := b.battens[0]
	axes := geom.View{Right: t.Place.U, Up: t.Place.W, Toward: t.Place.V.Neg()}
	at := func(u, w float64) geom.Vec { return t.Place.Point(geom.V(u, 0, w)) }
	v := b.squareOn("Check in the batten", axes, t, at(c.At, 0), c)
	from, to := max(0, c.At-c.Width/2), min(t.Length, c.At+c.Width/2)
	v.row(draw.Bottom).Chain("", at(from, 0), at(to, 0))
	v.row(draw.Right).Chain("", at(to, 0), at(to, c.Depth), at(to, t.Section.Depth))
	v.title.Note = "seen from outside, waste hatched"
	v.over = func(p *page, w *draw.View) {
		waste(p, w, at(from, 0), at(to, 0), at(to, c.Depth), at(from, c.Depth))
	}
	return v
}

// squareOn is a member near a check, square on to its side.
func (b battened) squareOn(name string, axes geom.View, m frame.Member, at geom.Vec, c frame.Check) *viewBlock {
	const beside = 0.8 // widths of the check, of timber shown at each side
	past := m.Place.U.Mul(c.Width * (0.5 + beside))
	near, far := at.Sub(past), at.Add(past) // on the edge that is checked: under a steep one lies another stretch
	crop := everywhere()
	if m.Place.U.X != 0 {
		crop.Min.X, crop.Max.X = near.X, far.X
	} else {
		crop.Min.Y, crop.Max.Y = far.Y, near.Y
	}
	return b.closeUp(closeUp{name: name, axes: axes, at: at, crop: crop, show: only(m)})
}

// lathAcross looks up the slope at a batten that is cut along its middle, with
// the first laths over it.
func (b battened) lathAcross() *viewBlock {
	laths, t := b.frame.Of(frame.KindLath), b.battens[0]
	axes := geom.View{Right: geom.V(1, 0, 0), Up: t.Place.W, Toward: t.Place.V.Neg()}
	shown := laths[:min(2, len(laths))]
	left := t.Place.O.X
	right := shown[len(shown)-1].Place.O.X + t.Section.Depth*2
	if right-left > widestAcross {
		shown, right = laths[:1], laths[0].Place.O.X+laths[0].Section.Width+t.Section.Depth*2
	}
	crop := everywhere()
	crop.Min.X, crop.Max.X = left-closeMargin, min(right, left+t.Length+closeMargin)
	box := t.Solid().Bounds() // the laths beyond it would only widen a steep view
	off := 2 * (t.Section.Depth + shown[0].Section.Depth)
	crop.Min.Y, crop.Max.Y = box.Min.Y-off, box.Max.Y+off
	middle := t.Place.Point(geom.V(0, t.Section.Width/2, t.Section.Depth))
	v := b.closeUp(closeUp{
		name: "Laths over it", axes: axes, cut: true, at: middle, crop: crop, show: only(append([]frame.Member{t}, shown...)...),
	})
	v.title.Note = "looking up the slope from the battens' left end"
	top := func(x float64) geom.Vec {
		q := middle.Add(t.Place.W.Mul(shown[0].Section.Depth))
		q.X = x
		return q
	}
	chain := []geom.Vec{top(left)}
	for _, l := range shown {
		if x := l.Place.O.X; x > left {
			chain = append(chain, top(x))
		}
		chain = append(chain, top(l.Place.O.X+l.Section.Width))
	}
	v.row(draw.Top).Chain("", chain...)
	n := v.note(draw.Right)
	n.Width = detailWords
	s := b.job.Laths.Screws
	n.AddInside(fmt.Sprintf("%s; %d %s at every batten", upperFirst(b.stick("lath", shown[0])), s.Each, b.screwName(s)),
		top(shown[len(shown)-1].Place.O.X+shown[0].Section.Width/2).Sub(t.Place.W.Mul(shown[0].Section.Depth/2)))
	return v
}

// widestAcross is the widest part of a batten that a detail shows, mm.
const widestAcross = 500

// screwName is a screw with its size, as far as that is stated.
func (m *maker) screwName(s frame.BattenScrews) string {
	words := "screw"
	if s.Each > 1 {
		words = "screws"
	}
	switch {
	case s.Diameter > 0 && s.Length > 0:
		return words + " Ø" + m.fine(s.Diameter) + " × " + m.figures.Length(s.Length)
	case s.Diameter > 0:
		return words + " Ø" + m.fine(s.Diameter) + ", length " + toBeStated
	}
	return words + ", size " + toBeStated
}
