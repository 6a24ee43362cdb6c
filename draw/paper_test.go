package draw

import (
	"math"
	"testing"

	"plumbcut/geom"
)

// Sizes: ISO 216 for the A series, as tabled at
// steelcalc.com/index.php/cs/ostatni/formaty-vykresu; Letter, Tabloid and ARCH
// in inches as listed at
// dev.blueprintsprinting.net/arch-and-ansi-drawings-printing-online.
func TestPaperSizes(t *testing.T) {
	for _, c := range []struct {
		name string
		w, h float64
	}{
		{"A4", 297, 210}, {"A3", 420, 297}, {"A2", 594, 420}, {"A1", 841, 594}, {"A0", 1189, 841},
		{"Letter", 279.4, 215.9}, {"Tabloid", 431.8, 279.4}, {"ansi b", 431.8, 279.4},
		{"ARCH B", 457.2, 304.8}, {"ARCH C", 609.6, 457.2}, {" arch d ", 914.4, 609.6},
	} {
		p, ok := PaperByName(c.name)
		if !ok || math.Abs(p.Width-c.w) > 1e-9 || math.Abs(p.Height-c.h) > 1e-9 {
			t.Errorf("PaperByName(%q) = %v %v, want %g × %g", c.name, p, ok, c.w, c.h)
		}
		if up := p.Portrait(); up.Width != p.Height || up.Height != p.Width || up.Landscape() != p {
			t.Errorf("%s: portrait %v, landscape of that %v", c.name, up, up.Landscape())
		}
	}
	for _, name := range PaperNames() {
		if p, ok := PaperByName(name); !ok || p.Name != name {
			t.Errorf("PaperByName(%q) = %v %v", name, p, ok)
		}
	}
	if p, ok := PaperByName("B5"); ok {
		t.Errorf("PaperByName(B5) = %v, want none", p)
	}
}

// Line groups: ISO 128-23 as quoted at
// cadsetterout.com/drawing-standards/line-weights.
func TestLineWidths(t *testing.T) {
	for name, want := range map[string][3]float64{
		"A4": {0.13, 0.25, 0.5}, "Letter": {0.13, 0.25, 0.5},
		"A3": {0.18, 0.35, 0.7}, "Tabloid": {0.18, 0.35, 0.7}, "A0": {0.18, 0.35, 0.7},
	} {
		p, _ := PaperByName(name)
		for _, p := range []Paper{p, p.Portrait()} {
			if got := [3]float64{p.LineWidth(Narrow), p.LineWidth(Middle), p.LineWidth(Wide)}; got != want {
				t.Errorf("%v: line widths %v, want %v", p, got, want)
			}
		}
	}
}

// Drawing space of A3: 277 × 390 mm, ISO 5457 table 1 as quoted at
// bimblog.house/2016/11/21/drawing-to-conclusions.
func TestInnerOfA3(t *testing.T) {
	p, _ := PaperByName("A3")
	r := p.Inner()
	if r.W() != 390 || r.H() != 277 || r.X0 != 20 || r.Y0 != 10 {
		t.Errorf("Inner = %v, want 390 × 277 from 20, 10", r)
	}
}

func TestRect(t *testing.T) {
	a, b := Rect{0, 0, 10, 5}, Rect{10, 1, 12, 2}
	if a.Overlaps(b) {
		t.Error("rectangles that share an edge overlap")
	}
	if !a.Overlaps(b.Move(geom.P(-0.1, 0))) {
		t.Error("rectangles that share a strip do not overlap")
	}
	if got := a.Union(b); got != (Rect{0, 0, 12, 5}) {
		t.Errorf("Union = %v", got)
	}
	if got := EmptyRect().Union(a); got != a || a.Union(EmptyRect()) != a {
		t.Errorf("Union with nothing = %v", got)
	}
	if !EmptyRect().Empty() || !a.Inset(3).Empty() || a.Inset(2).Empty() || Bounds(geom.P(1, 1)).Empty() {
		t.Error("Empty is wrong for nothing, an inset too far, a sliver or a point")
	}
	if !a.Encloses(a) || a.Encloses(b) || !a.Contains(geom.P(10, 5)) || a.Contains(geom.P(10, 5.1)) {
		t.Error("Encloses or Contains is wrong at the edge")
	}
	if got := a.Intersect(a.Move(geom.P(8, 1))); got != (Rect{8, 1, 10, 5}) {
		t.Errorf("Intersect = %v", got)
	}
}
