package draw

import (
	"maps"
	"math"
	"slices"
	"unicode/utf8"

	"plumbcut/fonts"
	"plumbcut/geom"
)

func face(bold bool) *fonts.Face {
	if bold {
		return fonts.Bold()
	}
	return fonts.Regular()
}

// FontSize is the size of the em, in mm, at which a capital letter stands
// height mm high.
func FontSize(height float64, bold bool) float64 {
	f := face(bold)
	return height * float64(f.UnitsPerEm) / float64(f.CapHeight)
}

// TextWidth is how far s runs, in mm, when a capital letter is height mm high.
// A character that the font lacks counts nothing: see MissingGlyph.
func TextWidth(s string, height float64, bold bool) float64 {
	f := face(bold)
	return float64(f.Run(s)) * height / float64(f.CapHeight)
}

// MissingGlyph returns the first character of s that one of the faces lacks;
// false if all are there. Control characters and broken UTF-8 are missing.
func MissingGlyph(s string) (rune, bool) {
	regular, bold := fonts.Regular(), fonts.Bold()
	for _, r := range s {
		_, inRegular := regular.Glyph(r)
		_, inBold := bold.Glyph(r)
		if r == utf8.RuneError || r < ' ' || r == 0x7F || !inRegular || !inBold {
			return r, true
		}
	}
	return 0, false
}

// Width is how far the text runs along its own direction, mm.
func (t Text) Width() float64 { return TextWidth(t.String, t.Height, t.Bold) }

// Dir is the direction in which the text runs. It is exact for the two ways
// of reading that a drawing uses, from below and from the right.
func (t Text) Dir() geom.Pt {
	switch t.Turn {
	case 0:
		return geom.P(1, 0)
	case math.Pi / 2:
		return geom.P(0, 1)
	}
	sin, cos := math.Sincos(t.Turn)
	return geom.P(cos, sin)
}

// Origin is the start of the text on its baseline.
func (t Text) Origin() geom.Pt {
	switch t.Align {
	case Centred:
		return t.At.Sub(t.Dir().Mul(t.Width() / 2))
	case End:
		return t.At.Sub(t.Dir().Mul(t.Width()))
	}
	return t.At
}

// Quad is the turned rectangle that holds the ink, anticlockwise from the
// start of the baseline. It reaches down to the deepest descender that is in
// the text and up to the height of a capital, or higher under an accent.
func (t Text) Quad() [4]geom.Pt {
	f := face(t.Bold)
	low, high := 0, f.CapHeight
	for _, r := range t.String {
		g, _ := f.Glyph(r)
		low, high = min(low, g.YMin), max(high, g.YMax)
	}
	unit := t.Height / float64(f.CapHeight)
	along, up := t.Dir().Mul(t.Width()), t.Dir().Left()
	bottom := t.Origin().Add(up.Mul(float64(low) * unit))
	top := t.Origin().Add(up.Mul(float64(high) * unit))
	return [4]geom.Pt{bottom, bottom.Add(along), top.Add(along), top}
}

// Box is the upright rectangle round the ink: see Quad.
func (t Text) Box() Rect {
	q := t.Quad()
	return Bounds(q[:]...)
}

// Characters are those that the texts of the sheet are made of, in each of the
// two faces, in order and each once.
func (s *Sheet) Characters() (regular, bold []rune) {
	var used [2]map[rune]bool
	for i := range used {
		used[i] = map[rune]bool{}
	}
	for _, it := range s.Items {
		if it.Text == nil {
			continue
		}
		of := used[0]
		if it.Text.Bold {
			of = used[1]
		}
		for _, r := range it.Text.String {
			of[r] = true
		}
	}
	return slices.Sorted(maps.Keys(used[0])), slices.Sorted(maps.Keys(used[1]))
}
