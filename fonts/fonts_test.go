package fonts

import (
	"bytes"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// wanted is what the sheets print: the letters of western and macron-bearing
// languages, fractions, and the signs of measuring.
const wanted = " !\"#%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[]_abcdefghijklmnopqrstuvwxyz" +
	"āēīōūĀĒĪŌŪäöüßéèçñåøæÄÖÜÉØÅ×±°½¼¾²³–—‘’“”…≤≥≈→←↑↓µΩ−"

func faces() []*Face { return []*Face{Regular(), Bold()} }

func TestWantedCharactersAreThere(t *testing.T) {
	for _, f := range faces() {
		for _, r := range wanted {
			if _, ok := f.Glyph(r); !ok {
				t.Errorf("%s lacks %q", f.Name, r)
			}
		}
	}
}

func TestMissingCharacters(t *testing.T) {
	for _, r := range "⌀∠⊥⅓漢\u0000\n" {
		if g, ok := Regular().Glyph(r); ok && g.Advance > 0 && g.YMax > 0 {
			t.Errorf("%U has glyph %+v, expected none", r, g)
		}
	}
}

func TestCapHeightIsThatOfH(t *testing.T) {
	for _, f := range faces() {
		h, ok := f.Glyph('H')
		if !ok || h.YMax != f.CapHeight {
			t.Errorf("%s: H stands %d high, CapHeight = %d", f.Name, h.YMax, f.CapHeight)
		}
	}
}

// The second reader is golang.org/x/image/font/sfnt, which shares no code with
// this package. At one pixel for each font unit it reports font units.
func TestMetricsAgreeWithASecondReader(t *testing.T) {
	for _, f := range faces() {
		second, err := sfnt.Parse(f.TTF)
		if err != nil {
			t.Fatal(err)
		}
		var buf sfnt.Buffer
		ppem := fixed.I(f.UnitsPerEm)
		if got := int(second.UnitsPerEm()); got != f.UnitsPerEm {
			t.Errorf("%s: UnitsPerEm = %d, want %d", f.Name, f.UnitsPerEm, got)
		}
		for r := rune(' '); r < 0x2600; r++ {
			id, err := second.GlyphIndex(&buf, r)
			if err != nil {
				t.Fatal(err)
			}
			g, ok := f.Glyph(r)
			if ok != (id != 0) || ok && g.ID != uint16(id) {
				t.Fatalf("%s %U: glyph %d %v, want %d", f.Name, r, g.ID, ok, id)
			}
			if !ok {
				continue
			}
			bounds, advance, err := second.GlyphBounds(&buf, id, ppem, font.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			if g.Advance != advance.Round() || g.YMax != -bounds.Min.Y.Round() || g.YMin != -bounds.Max.Y.Round() {
				t.Errorf("%s %q: %+v, want advance %v and bounds %v", f.Name, r, g, advance, bounds)
			}
		}
	}
}

// A subset must be a sound font in which every character looks as it did.
func TestSubsetKeepsOutlines(t *testing.T) {
	for _, f := range faces() {
		chars := []rune("Ā Rafter ½ R1é")
		whole, err := sfnt.Parse(f.TTF)
		if err != nil {
			t.Fatal(err)
		}
		small := f.Subset(chars)
		part, err := sfnt.Parse(small)
		if err != nil {
			t.Fatal(err)
		}
		if sum := checksum(small); sum != 0xB1B0AFBA {
			t.Errorf("%s: the sum of the file is %X", f.Name, sum)
		}
		for _, r := range chars {
			want, got := outlineOf(t, whole, r), outlineOf(t, part, r)
			if len(want) == 0 && r != ' ' || !equal(want, got) {
				t.Errorf("%s %q: outline %v, want %v", f.Name, r, got, want)
			}
		}
		var buf sfnt.Buffer
		if id, _ := part.GlyphIndex(&buf, 'z'); id != 0 {
			t.Errorf("%s: the subset has z, which was not asked for", f.Name)
		}
	}
}

// Without its instructions no glyph may claim to have some: a strict reader
// would look for them behind its end.
func TestSubsetHasNoInstructions(t *testing.T) {
	for _, f := range faces() {
		small, err := parse("", f.Subset([]rune(wanted)))
		if err != nil {
			t.Fatal(err)
		}
		for id := range u16(small.tables["maxp"], 4) {
			outline := small.outline(id)
			if len(outline) == 0 {
				continue
			}
			composed := eachComponent(outline, func(at int) {
				if u16(outline, at)&haveInstructions != 0 {
					t.Errorf("%s: glyph %d has instructions after its components", f.Name, id)
				}
			})
			if composed == 0 && u16(outline, 10+2*int(i16(outline, 0))) != 0 {
				t.Errorf("%s: glyph %d has instructions", f.Name, id)
			}
		}
	}
}

func outlineOf(t *testing.T, f *sfnt.Font, r rune) sfnt.Segments {
	t.Helper()
	var buf sfnt.Buffer
	id, err := f.GlyphIndex(&buf, r)
	if err != nil || id == 0 {
		t.Fatalf("%q: glyph %d, %v", r, id, err)
	}
	segments, err := f.LoadGlyph(&buf, id, fixed.I(2048), nil)
	if err != nil {
		t.Fatal(err)
	}
	return segments
}

func equal(a, b sfnt.Segments) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

func TestSubsetIsTheSameForAnyOrder(t *testing.T) {
	a, b := Regular().Subset([]rune("rafter")), Regular().Subset([]rune("farter漢rr"))
	if !bytes.Equal(a, b) {
		t.Error("two orders of the same characters gave two subsets")
	}
}

func TestSubsetIsSmall(t *testing.T) {
	// The limit keeps two faces under a third of the 120 kB that a sheet may have.
	if got := len(Regular().Subset([]rune(wanted))); got > 20_000 {
		t.Errorf("subset of all wanted characters is %d bytes, want under 20000", got)
	}
}

func TestDamagedFontIsRefused(t *testing.T) {
	for _, size := range []int{0, 11, 200, 5000} {
		if _, err := parse("", regularTTF[:size]); err == nil {
			t.Errorf("a font cut to %d bytes was taken", size)
		}
	}
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		if _, err := parse("", regularTTF); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSubset(b *testing.B) {
	for b.Loop() {
		Regular().Subset([]rune(wanted))
	}
}
