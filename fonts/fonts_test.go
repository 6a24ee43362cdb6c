package fonts

import "testing"

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		if _, err := parse("", regularTTF); err != nil {
			b.Fatal(err)
		}
	}
}

func TestCapHeightIsThatOfH(t *testing.T) {
	for _, f := range []*Face{Regular(), Bold()} {
		h, ok := f.Glyph('H')
		if !ok || h.YMax != f.CapHeight {
			t.Errorf("%s: H stands %d high, CapHeight = %d", f.Name, h.YMax, f.CapHeight)
		}
	}
}
