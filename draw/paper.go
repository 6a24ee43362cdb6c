package draw

import (
	"math"
	"strings"

	"plumbcut/geom"
)

// Paper is a size of sheet as it is drawn: Width runs along the bottom edge.
type Paper struct {
	Name          string
	Width, Height float64 // mm
	Fine          bool    // takes the finer line group whatever its size
}

// mmPerInch is exact by definition.
const mmPerInch = 25.4

// papers lists the sizes, all lying on their long side.
func papers() []Paper {
	const in = mmPerInch
	size := func(name string, w, h float64) Paper { return Paper{Name: name, Width: w, Height: h} }
	return []Paper{
		size("A4", 297, 210),
		size("A3", 420, 297),
		size("A2", 594, 420),
		size("A1", 841, 594),
		size("A0", 1189, 841),
		size("Letter", 11*in, 8.5*in),
		size("Tabloid", 17*in, 11*in),
		size("ARCH B", 18*in, 12*in),
		size("ARCH C", 24*in, 18*in),
		size("ARCH D", 36*in, 24*in),
	}
}

// PaperByName finds a size by its name, in any case: A4 to A0, Letter,
// Tabloid (also called ANSI B), ARCH B, ARCH C, ARCH D. All are returned
// lying on their long side.
func PaperByName(name string) (Paper, bool) {
	name = strings.TrimSpace(name)
	if strings.EqualFold(name, "ANSI B") {
		name = "Tabloid"
	}
	for _, p := range papers() {
		if strings.EqualFold(p.Name, name) {
			return p, true
		}
	}
	return Paper{}, false
}

// PaperNames lists the names that PaperByName takes, smallest first within
// each family.
func PaperNames() []string {
	var names []string
	for _, p := range papers() {
		names = append(names, p.Name)
	}
	return names
}

// Portrait is the same paper standing on its short side.
func (p Paper) Portrait() Paper {
	p.Width, p.Height = min(p.Width, p.Height), max(p.Width, p.Height)
	return p
}

// Landscape is the same paper lying on its long side.
func (p Paper) Landscape() Paper {
	p.Width, p.Height = max(p.Width, p.Height), min(p.Width, p.Height)
	return p
}

// smallSheet is the short side, in mm, under which a sheet takes the finer
// line group. It lies between Letter (216) and Tabloid (279).
const smallSheet = 250

// LineWidth is the width of a pen in mm. Sheets of A3 and larger take the
// group 0.18, 0.35, 0.7; A4, Letter and Fine ones take 0.13, 0.25, 0.5.
func (p Paper) LineWidth(pen Pen) float64 {
	group := [...]float64{Narrow: 0.18, Middle: 0.35, Wide: 0.7}
	if p.Fine || min(p.Width, p.Height) < smallSheet {
		group = [...]float64{Narrow: 0.13, Middle: 0.25, Wide: 0.5}
	}
	return group[min(max(pen, Narrow), Wide)]
}

// The widths of the border round the drawing space, mm (ISO 5457): the left
// one is wider so that sheets can be filed.
const (
	BorderLeft = 20
	BorderElse = 10
)

// Inner is the drawing space within the frame.
func (p Paper) Inner() Rect {
	return Rect{BorderLeft, BorderElse, p.Width - BorderElse, p.Height - BorderElse}
}

// Sheet is the whole paper as a rectangle.
func (p Paper) Sheet() Rect { return Rect{0, 0, p.Width, p.Height} }

// Rect is an upright rectangle on the paper, mm. One with X1 < X0 or Y1 < Y0
// is empty; a rectangle without width or height is not, since a straight line
// has one as its bounds.
type Rect struct{ X0, Y0, X1, Y1 float64 }

// EmptyRect holds nothing and is the start of a union.
func EmptyRect() Rect {
	return Rect{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
}

// Bounds is the smallest rectangle round the points; empty for none.
func Bounds(pts ...geom.Pt) Rect {
	r := EmptyRect()
	for _, p := range pts {
		r = Rect{min(r.X0, p.X), min(r.Y0, p.Y), max(r.X1, p.X), max(r.Y1, p.Y)}
	}
	return r
}

// Empty reports whether r holds no point.
func (r Rect) Empty() bool { return r.X1 < r.X0 || r.Y1 < r.Y0 }

// W is the width.
func (r Rect) W() float64 { return r.X1 - r.X0 }

// H is the height.
func (r Rect) H() float64 { return r.Y1 - r.Y0 }

// Centre is the middle.
func (r Rect) Centre() geom.Pt { return geom.P((r.X0+r.X1)/2, (r.Y0+r.Y1)/2) }

// Corners runs anticlockwise from the bottom left.
func (r Rect) Corners() []geom.Pt {
	return []geom.Pt{{X: r.X0, Y: r.Y0}, {X: r.X1, Y: r.Y0}, {X: r.X1, Y: r.Y1}, {X: r.X0, Y: r.Y1}}
}

// Inset moves every side inwards by d; the result may be empty.
func (r Rect) Inset(d float64) Rect { return Rect{r.X0 + d, r.Y0 + d, r.X1 - d, r.Y1 - d} }

// Expand moves every side outwards by d.
func (r Rect) Expand(d float64) Rect { return r.Inset(-d) }

// Move shifts r by d.
func (r Rect) Move(d geom.Pt) Rect { return Rect{r.X0 + d.X, r.Y0 + d.Y, r.X1 + d.X, r.Y1 + d.Y} }

// Contains reports whether p lies in r or on its edge.
func (r Rect) Contains(p geom.Pt) bool {
	return p.X >= r.X0 && p.X <= r.X1 && p.Y >= r.Y0 && p.Y <= r.Y1
}

// Encloses reports whether all of s lies in r; an empty s does.
func (r Rect) Encloses(s Rect) bool {
	return s.Empty() || s.X0 >= r.X0 && s.X1 <= r.X1 && s.Y0 >= r.Y0 && s.Y1 <= r.Y1
}

// Overlaps reports whether r and s share more than an edge.
func (r Rect) Overlaps(s Rect) bool {
	return !r.Empty() && !s.Empty() && r.X0 < s.X1 && s.X0 < r.X1 && r.Y0 < s.Y1 && s.Y0 < r.Y1
}

// Union is the smallest rectangle round both.
func (r Rect) Union(s Rect) Rect {
	switch {
	case r.Empty():
		return s
	case s.Empty():
		return r
	}
	return Rect{min(r.X0, s.X0), min(r.Y0, s.Y0), max(r.X1, s.X1), max(r.Y1, s.Y1)}
}

// Intersect is what both share; it may be empty.
func (r Rect) Intersect(s Rect) Rect {
	return Rect{max(r.X0, s.X0), max(r.Y0, s.Y0), min(r.X1, s.X1), min(r.Y1, s.Y1)}
}
