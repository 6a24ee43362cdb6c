package draw

import (
	"math"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"plumbcut/fonts"
	"plumbcut/geom"
)

// The second reader is golang.org/x/image/font/opentype, which shares no code
// with the package fonts.
func TestTextWidthAgreesWithASecondReader(t *testing.T) {
	const s, height = "R1: 8 × 655 = 5 240 kōrero ½", 2.5
	for _, bold := range []bool{false, true} {
		ttf := fonts.Regular().TTF
		if bold {
			ttf = fonts.Bold().TTF
		}
		parsed, err := opentype.Parse(ttf)
		if err != nil {
			t.Fatal(err)
		}
		// One pixel for each of the 2048 font units: no rounding.
		face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: 2048, DPI: 72, Hinting: font.HintingNone})
		if err != nil {
			t.Fatal(err)
		}
		capital, _, _ := face.GlyphBounds('H')
		perUnit := height / (float64(-capital.Min.Y) / 64)
		want := float64(font.MeasureString(face, s)) / float64(fixed.I(1)) * perUnit
		if got := TextWidth(s, height, bold); math.Abs(got-want) > 1e-6 {
			t.Errorf("bold %v: TextWidth = %g, want %g", bold, got, want)
		}
	}
}

func TestMissingGlyph(t *testing.T) {
	for s, want := range map[string]rune{
		"": 0, "Ø12 – ½": 0, "⌀12": '⌀', "a\tb": '\t', "a\x00": 0x00, "\xff": 0xFFFD, "ok 🙂": '🙂', "\u009f": 0x9F,
	} {
		r, missing := MissingGlyph(s)
		if wantMissing := want != 0 || s == "a\x00"; missing != wantMissing || r != want {
			t.Errorf("MissingGlyph(%q) = %U %v, want %U %v", s, r, missing, want, wantMissing)
		}
	}
}

func TestTextBox(t *testing.T) {
	base := Text{At: geom.P(50, 20), Height: 2.5, String: "H"}
	w := base.Width()
	for _, c := range []struct {
		name string
		turn float64
		al   Align
		want Rect
	}{
		{"from below", 0, Start, Rect{50, 20, 50 + w, 22.5}},
		{"centred", 0, Centred, Rect{50 - w/2, 20, 50 + w/2, 22.5}},
		{"ends", 0, End, Rect{50 - w, 20, 50, 22.5}},
		{"from the right", math.Pi / 2, Start, Rect{47.5, 20, 50, 20 + w}},
		{"from the right, ends", math.Pi / 2, End, Rect{47.5, 20 - w, 50, 20}},
		{"upside down", math.Pi, Start, Rect{50 - w, 17.5, 50, 20}},
	} {
		text := base
		text.Turn, text.Align = c.turn, c.al
		if got := text.Box(); !closeTo(got, c.want) {
			t.Errorf("%s: Box = %v, want %v", c.name, got, c.want)
		}
	}
}

func closeTo(a, b Rect) bool {
	const eps = 1e-9
	return math.Abs(a.X0-b.X0) < eps && math.Abs(a.Y0-b.Y0) < eps && math.Abs(a.X1-b.X1) < eps && math.Abs(a.Y1-b.Y1) < eps
}

func TestBoxHoldsDescendersAndAccents(t *testing.T) {
	plain := Text{Height: 10, String: "Hx"}.Box()
	if low := (Text{Height: 10, String: "Hg"}).Box(); low.Y0 > -1.5 || plain.Y0 < -0.2 {
		t.Errorf("bottom of g at %g, of x at %g", low.Y0, plain.Y0)
	}
	if high := (Text{Height: 10, String: "Ā"}).Box(); high.Y1 < 11 || plain.Y1 != 10 {
		t.Errorf("top of Ā at %g, of H at %g", high.Y1, plain.Y1)
	}
}
