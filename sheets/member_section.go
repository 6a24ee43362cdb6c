package sheets

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// housingScale is that of sections through housings: their shape is small.
const housingScale = 1. / 5

// housingSections are sections through the housings, one for each kind of
// housing.
func (s *timber) housingSections() []block {
	var out []block
	for _, h := range s.shownHousings() {
		out = append(out, s.housingSection(h))
	}
	return out
}

// shownHousings are those that sections show: one of each kind. No two on the skew
// are alike: the table has them all, and of those clear of the ends the first and
// the last are shown.
func (s *timber) shownHousings() []frame.Housing {
	kinds := s.housingKinds()
	if len(kinds) == 0 || kinds[0].Skew == 0 {
		return kinds
	}
	kinds = slices.DeleteFunc(kinds, func(h frame.Housing) bool { return min(h.At, s.Length-h.At) < h.Width })
	if n := len(kinds); n > 2 {
		kinds = []frame.Housing{kinds[0], kinds[n-1]}
	}
	return kinds
}

// housingKinds are housings that differ in more than their place: of each kind
// the one that is clearest of ends and holes.
func (s *timber) housingKinds() []frame.Housing {
	var kinds []frame.Housing
	for _, f := range s.Features {
		h, ok := f.(frame.Housing)
		if !ok {
			continue
		}
		i := slices.IndexFunc(kinds, func(k frame.Housing) bool { return sameHousing(k, h) })
		if i < 0 {
			kinds = append(kinds, h)
			continue
		}
		if s.clearance(h.At) > s.clearance(kinds[i].At) {
			kinds[i] = h
		}
	}
	return kinds
}

// sameHousing reports whether two housings differ in their place alone.
func sameHousing(a, b frame.Housing) bool {
	near := func(x, y float64) bool { return math.Abs(x-y) < onTear }
	return a.Face == b.Face && near(a.Width, b.Width) && near(a.Depth, b.Depth) && near(a.Floor, b.Floor) && near(a.FloorInside(), b.FloorInside())
}

// clearance is the distance from a place to the nearer end or hole.
func (s *timber) clearance(u float64) float64 {
	d := min(u, s.Length-u)
	for _, b := range s.solid.Bores() {
		d = min(d, math.Abs(b.At.X-u))
	}
	return d
}

// housingSection is the section through a housing, with the house at the left
// as in the cross-section of the frame.
func (s *timber) housingSection(h frame.Housing) block {
	axes := geom.View{Right: geom.V(0, -1, 0), Up: geom.V(0, 0, 1), Toward: geom.V(-1, 0, 0)}
	cut := geom.V(h.At, 0, 0)
	b := newView("Section, "+s.maker.setting().behind+" left", s.scene().see(look{axes: axes, cut: &cut}), geom.Vec{})
	if h.Skew != 0 {
		b.title.Note = fmt.Sprintf("at housing %d", s.housingNumber(h))
	}
	b.fixed, b.view.Scale = housingScale, housingScale
	b.view.Figures = s.fine
	b.view.Name = s.Mark + ", section at a housing"
	b.Title = nil
	for _, r := range []*draw.Rows{b.row(draw.Top), b.row(draw.Left), b.row(draw.Right)} {
		r.First = housingRow
	}
	in := geom.Vec{}
	if p, ok := s.FacePlane(h.Face); ok {
		in = p.N.Neg()
	}
	d, v := s.Section.Depth, s.Section.Width
	at := func(across, up float64) geom.Vec { return s.OnFace(h.Face, h.At, up).Add(in.Mul(across)) }
	face, back := draw.Right, draw.Left
	if h.Face == s.Faces()[1] {
		face, back = back, face
	}
	b.row(draw.Top).Chain("", at(0, d), at(h.Depth, d), at(v, d))
	b.row(face).Running("", at(0, 0), at(0, h.Floor), at(0, d))
	b.row(back).Running("", at(h.Depth, 0), at(h.Depth, h.FloorInside()))
	b.under = func(p *page, view *draw.View) {
		waste(p, view, at(0, h.Floor), at(0, d), at(h.Depth, d), at(h.Depth, h.FloorInside()))
	}
	b.title.Under = true
	return &titledView{b}
}

// housingRow is the distance of the first dimension row from a section, mm on
// paper: less than usual, since the section is small.
const housingRow = 6

// titledView is a narrow view over its title, their left edges in line.
type titledView struct{ *viewBlock }

func (b *titledView) extent(h draw.Hand, scale float64) draw.Rect {
	r := b.viewBlock.extent(h, scale)
	w, d := b.title.Size(h)
	return r.Union(draw.Rect{X0: r.X0, Y0: r.Y0 - titleAbove - d, X1: r.X0 + w, Y1: r.Y0})
}

func (b *titledView) draw(p *page, at geom.Pt, scale float64) {
	r := b.viewBlock.extent(p.hand, scale)
	b.viewBlock.draw(p, at, scale)
	b.title.Draw(p.sheet, p.hand, at.Add(geom.P(r.X0, r.Y0-titleAbove)))
}

// housingTable gives the shape of the housings in figures.
func (s *timber) housingTable() draw.Table {
	t := draw.Table{Title: s.Mark + ": housings", Columns: []draw.Column{
		{Head: "face"}, {Head: "wide"}, {Head: "deep"}, {Head: "floor up at face", Width: 17}, {Head: "up at back", Width: 14}, {Head: "floor slope", Width: 13},
	}}
	kinds := s.housingKinds()
	skew := len(kinds) > 0 && kinds[0].Skew != 0
	if skew {
		t.Title = s.Mark + ": housings on the skew"
		t.Columns = append(append([]draw.Column{{Head: "no."}}, t.Columns...), draw.Column{Head: "sides lean, going in", Width: 20}, draw.Column{Head: "floor falls along", Width: 20})
	}
	for _, h := range kinds {
		slope := "level"
		if h.Slope != 0 {
			slope = s.fine.Angle(math.Abs(h.Slope))
		}
		row := []string{s.sideName(h.Face), s.fine.Length(h.Width), s.fine.Length(h.Depth), s.fine.Length(h.Floor), s.fine.Length(h.FloorInside()), slope}
		if skew {
			no := "all"
			if len(kinds) > 1 {
				no = strconv.Itoa(s.housingNumber(h))
			}
			row = append(append([]string{no}, row...), s.skewSizes(h)...)
		}
		t.Rows = append(t.Rows, draw.TableRow{Cells: row})
	}
	return t
}

// holeTable gives the holes: which they are, where across the face, how large,
// how deep.
func (s *timber) holeTable() draw.Table {
	t := draw.Table{Title: s.Mark + ": holes", Columns: []draw.Column{
		{Head: "holes"}, {Head: "drill from"}, {Head: "Ø"}, {Head: "deep"}, {Head: "centre across", Width: 33},
	}}
	var seen []frame.Hole
	for _, f := range s.Features {
		h, ok := f.(frame.Hole)
		if !ok {
			continue
		}
		same := func(k frame.Hole) bool {
			a, b := k, h
			if h.Face != frame.FaceStart && h.Face != frame.FaceEnd {
				a.Mouth.X, b.Mouth.X = 0, 0
			}
			return a.Mouth.Sub(b.Mouth).Len() < onTear && a.Face == b.Face && a.Use == b.Use && a.Diameter == b.Diameter && a.Depth == b.Depth
		}
		if slices.ContainsFunc(seen, same) {
			continue
		}
		seen = append(seen, h)
		depth := "through"
		if !h.Through {
			depth = s.fine.Length(h.Depth)
		}
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{
			h.Use + " holes", s.faceName(h.Face), s.fine.Length(h.Diameter), depth, s.acrossOf(h),
		}})
	}
	return t
}

// faceName names a face, an end by what it is.
func (s *timber) faceName(f frame.Face) string {
	if f == frame.FaceStart || f == frame.FaceEnd {
		return s.endName(f) + " end"
	}
	return s.sideName(f)
}

// acrossOf says where a hole's centre is across its face.
func (s *timber) acrossOf(h frame.Hole) string {
	f := s.Faces()
	width := s.fine.Length(h.Mouth.Y) + " from " + s.sideName(f[0])
	height := s.fine.Length(h.Mouth.Z) + " from " + s.sideName(f[2])
	switch h.Face {
	case f[0], f[1]:
		return height
	case f[2], f[3]:
		return width
	}
	return width + ", " + height
}
