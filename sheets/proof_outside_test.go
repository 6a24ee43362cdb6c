package sheets_test

import (
	"bytes"
	"math"
	"os"
	"regexp"
	"slices"
	"testing"

	"plumbcut/draw"
	"plumbcut/draw/pdf"
)

// Standards, looked for in finished files of the demo on every size of paper.

// trimmed are the sizes of ISO 216, as tabled at
// steelcalc.com/index.php/cs/ostatni/formaty-vykresu, and of ANSI and ARCH
// sheets, as listed at
// dev.blueprintsprinting.net/arch-and-ansi-drawings-printing-online, mm, the
// long side first.
var trimmed = map[string][2]float64{
	"A4": {297, 210}, "A3": {420, 297}, "A2": {594, 420}, "A1": {841, 594},
	"Letter": {11 * 25.4, 8.5 * 25.4}, "Tabloid": {17 * 25.4, 11 * 25.4},
	"ARCH B": {18 * 25.4, 12 * 25.4}, "ARCH C": {24 * 25.4, 18 * 25.4},
}

// lineGroups are the widths of lines of ISO 128-23, narrow, wide and extra
// wide, as quoted at cadsetterout.com/drawing-standards/line-weights: for A4
// and Letter, and for what is larger.
var lineGroups = map[bool][]float64{true: {0.13, 0.25, 0.5}, false: {0.18, 0.35, 0.7}}

// TestStandardsInTheFile draws the demo on every size of paper that a job may
// ask for.
func TestStandardsInTheFile(t *testing.T) {
	text, err := os.ReadFile("../examples/courtyard/courtyard.yaml")
	if err != nil {
		t.Fatal(err)
	}
	size := regexp.MustCompile(`paper: \{size: A3`)
	if !size.Match(text) {
		t.Fatal("the demo does not say its paper as this test expects")
	}
	for name := range trimmed {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			on := size.ReplaceAll(text, []byte("paper: {size: "+name))
			d, err := source{demo, func() ([]byte, error) { return on, nil }}.make()
			if err != nil {
				t.Fatal(err)
			}
			var b bytes.Buffer
			if err := pdf.Write(&b, d.set, pdf.Options{}); err != nil {
				t.Fatal(err)
			}
			f, err := openPDF(b.Bytes())
			if err != nil {
				t.Fatal(err)
			}
			broken := 0
			for i, page := range f.pages() {
				lines := f.inkOf(page)
				w, h := paperSize(t, name, numbers(f.array(f.dict(page)["MediaBox"])))
				checkFrame(t, d.set.Sheets[i].Number, lines, w, h)
				checkWidths(t, d.set.Sheets[i].Number, lines, name == "A4" || name == "Letter")
				broken += checkDashes(t, d.set.Sheets[i].Number, lines)
			}
			if broken == 0 {
				t.Error("there is no broken line in the set")
			}
			for _, check := range []func(*draw.Set) []string{shownScales, namedFields} {
				for _, f := range check(d.set) {
					t.Error(f)
				}
			}
		})
	}
}

// paperSize checks the size of a page, in either direction, and returns it in
// mm. PDF rounds it to a hundredth of a point.
func paperSize(t *testing.T, name string, box []float64) (w, h float64) {
	t.Helper()
	const near = 0.006 * 25.4 / 72
	if len(box) != 4 || box[0] != 0 || box[1] != 0 {
		t.Fatalf("MediaBox %v", box)
	}
	want := trimmed[name]
	w, h = box[2]*mmPerPoint, box[3]*mmPerPoint
	if math.Abs(max(w, h)-want[0]) > near || math.Abs(min(w, h)-want[1]) > near {
		t.Errorf("%s is %.3f × %.3f mm, want %v", name, w, h, want)
	}
	return w, h
}

// checkFrame looks for the frame of ISO 5457: 20 mm from the left edge of the
// paper and 10 mm from the others, a line of 0.7 mm (on A4 0.5 mm, the widest
// of its group).
func checkFrame(t *testing.T, sheet string, lines []ink, w, h float64) {
	t.Helper()
	var wide []ink
	for _, l := range lines {
		if l.layer == draw.Border.String() && l.width > 0.45 {
			wide = append(wide, l)
		}
	}
	const near = 0.01 // mm
	corners := draw.Rect{X0: 20, Y0: 10, X1: w - 10, Y1: h - 10}.Corners()
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		if c := cover(wide, a, b, near); c < 1-near {
			t.Errorf("sheet %s: the frame from %v to %v is drawn over %.0f %% of its length", sheet, a, b, 100*c)
		}
	}
	inside := draw.Rect{X0: 20 - near, Y0: 10 - near, X1: w - 10 + near, Y1: h - 10 + near}
	for _, l := range lines {
		if l.layer != draw.Border.String() && !(inside.Contains(l.a) && inside.Contains(l.b)) {
			t.Errorf("sheet %s: a line of the %s from %v to %v leaves the frame", sheet, l.layer, l.a, l.b)
			return
		}
	}
}

// checkWidths checks that every line has one of the three widths of its group
// and that all three are used.
func checkWidths(t *testing.T, sheet string, lines []ink, small bool) {
	t.Helper()
	group := lineGroups[small]
	used := map[float64]bool{}
	for _, l := range lines {
		if l.width == 0 {
			continue
		}
		i := slices.IndexFunc(group, func(w float64) bool { return math.Abs(w-l.width) < 1e-6 })
		if i < 0 {
			t.Errorf("sheet %s: a line of the %s is %.3f mm wide, want one of %v", sheet, l.layer, l.width, group)
			return
		}
		used[group[i]] = true
	}
	if !used[group[0]] || !used[group[2]] {
		t.Errorf("sheet %s: of the widths %v only %v are used", sheet, group, used)
	}
}

// checkDashes checks broken lines against ISO 128-20 table 3 and the fitting
// formulas of ISO 128-21 (from memory; the proportions also stand as 12,−3 and
// 24,−3,0,−3 in public tables of line patterns). For a dashed line of length l
// and width d: n = round((l − 12d) ÷ 15d) gaps of 3d, and n + 1 equal dashes
// that fill the rest, so that it begins and ends on ink. It returns how many it
// checked.
func checkDashes(t *testing.T, sheet string, lines []ink) (checked int) {
	t.Helper()
	const near = 0.002 // mm: files round to a thousandth
	for _, l := range lines {
		length := l.b.Sub(l.a).Len()
		d := l.width
		if !l.alone || l.curved || len(l.dashes) == 0 {
			continue
		}
		checked++
		var whole float64
		switch p := l.dashes; len(p) {
		case 2:
			n := math.Round((length - 12*d) / (15 * d))
			whole = (n+1)*p[0] + n*p[1]
			if math.Abs(p[1]-3*d) > near || math.Abs(p[0]-(length-3*d*n)/(n+1)) > near {
				t.Errorf("sheet %s: a dashed line of %.2f mm has dashes of %.3f and gaps of %.3f", sheet, length, p[0], p[1])
			}
		case 4:
			if math.Abs(p[1]-3*d) > near || math.Abs(p[3]-3*d) > near || p[2] > d/2+near {
				t.Errorf("sheet %s: a chain line has the pattern %v at a width of %g", sheet, p, d)
			}
			n := math.Round((length - p[0]) / (p[0] + p[1] + p[2] + p[3]))
			whole = (n+1)*p[0] + n*(p[1]+p[2]+p[3])
		default:
			t.Errorf("sheet %s: pattern %v", sheet, p)
			continue
		}
		if slop := near * (2 + length/(15*d)); math.Abs(whole-length) > slop {
			t.Errorf("sheet %s: a broken line of %.2f mm with the pattern %.3v does not end on ink", sheet, length, l.dashes)
		}
	}
	return checked
}
