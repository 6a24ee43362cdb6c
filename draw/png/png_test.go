package png

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"io"
	"math"
	"os"
	"path/filepath"
	"testing"

	"plumbcut/draw"
	"plumbcut/draw/internal/sample"
	"plumbcut/draw/pdf"
	"plumbcut/draw/svg"
	"plumbcut/geom"
)

func TestSameBytes(t *testing.T) {
	sample.SameBytes(t, func(w io.Writer) error { return Write(w, sample.Set().Sheets[0], 50) })
}

func TestFaultySheetsAndSizes(t *testing.T) {
	bad := sample.Set().Sheets[0]
	bad.Line(draw.Style{}, geom.P(0, 0), geom.P(math.Inf(1), 0))
	for _, c := range []struct {
		sheet *draw.Sheet
		dpi   float64
	}{{bad, 50}, {sample.Set().Sheets[0], 0}, {sample.Set().Sheets[0], -3}, {sample.Set().Sheets[0], math.NaN()}, {sample.Set().Sheets[0], 1e5}} {
		var buf bytes.Buffer
		if err := Write(&buf, c.sheet, c.dpi); err == nil || buf.Len() > 0 {
			t.Errorf("Write at %g dpi = %v with %d bytes, want an error and none", c.dpi, err, buf.Len())
		}
	}
}

// The three writers must put their ink in the same places: PDF as painted by
// pdftoppm, SVG as painted by rsvg-convert, and our own PNG. Wherever one has
// ink the others must have some within 0.2 mm.
func TestWritersAgree(t *testing.T) {
	const dpi = 200
	dir, set := t.TempDir(), sample.Set()
	set.Sheets = set.Sheets[:1]
	for i := range set.Sheets[0].Items {
		if text := set.Sheets[0].Items[i].Text; text != nil {
			text.Link = "" // it leads to a sheet that is left out here
		}
	}
	save := func(name string, write func(io.Writer) error) string {
		var buf bytes.Buffer
		if err := write(&buf); err != nil {
			t.Fatal(err)
		}
		name = filepath.Join(dir, name)
		if err := os.WriteFile(name, buf.Bytes(), 0o600); err != nil {
			t.Fatal(err)
		}
		return name
	}
	ours := save("ours.png", func(w io.Writer) error { return Write(w, set.Sheets[0], dpi) })
	inPDF := save("a.pdf", func(w io.Writer) error { return pdf.Write(w, set, pdf.Options{}) })
	inSVG := save("a.svg", func(w io.Writer) error { return svg.Write(w, set, set.Sheets[0]) })
	fromPDF, fromSVG := filepath.Join(dir, "pdf"), filepath.Join(dir, "svg.png")
	sample.Run(t, "pdftoppm", "-r", fmt.Sprint(dpi), "-gray", "-png", "-singlefile", inPDF, fromPDF)
	useOurFonts(t, dir)
	sample.Run(t, "rsvg-convert", "-d", fmt.Sprint(dpi), "-p", fmt.Sprint(dpi), inSVG, "-o", fromSVG)

	pictures := map[string]picture{"PDF": load(t, fromPDF+".png"), "SVG": load(t, fromSVG), "PNG": load(t, ours)}
	for a, pa := range pictures {
		for b, pb := range pictures {
			if at, n := pa.without(pb); n > 0 {
				t.Errorf("%d dots of ink in %s have none near in %s; the first at %.1f mm from the left, %.1f from the top",
					n, a, b, float64(at.X)/dpi*mmPerInch, float64(at.Y)/dpi*mmPerInch)
			}
		}
	}
}

// useOurFonts lets rsvg-convert, which does not read the font in the file,
// find the same font in the folder fonts of the project.
func useOurFonts(t *testing.T, dir string) {
	t.Helper()
	folder, err := filepath.Abs("../../fonts")
	if err != nil {
		t.Fatal(err)
	}
	conf := filepath.Join(dir, "fonts.conf")
	text := `<?xml version="1.0"?><fontconfig><dir>` + folder + `</dir><cachedir>` + dir + `</cachedir></fontconfig>`
	if err := os.WriteFile(conf, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	t.Setenv("FONTCONFIG_FILE", conf)
}

// picture is the darkness of each dot, 0 for white.
type picture struct {
	dark       []uint8
	wide, tall int
}

func load(t *testing.T, name string) picture {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	b := img.Bounds()
	p := picture{make([]uint8, b.Dx()*b.Dy()), b.Dx(), b.Dy()}
	for y := range p.tall {
		for x := range p.wide {
			r, _, _, a := img.At(x, y).RGBA()
			p.dark[y*p.wide+x] = uint8((a - r) >> 8) // on white paper
		}
	}
	return p
}

const (
	surelyInk = 110 // of 255: a thin line may be spread over two dots
	someInk   = 25
	reach     = 1 // dots: at 200 to the inch one and its spread is 0.2 mm
)

// without counts the dots of ink for which other has none near.
func (p picture) without(other picture) (first image.Point, n int) {
	for y := range p.tall {
		for x := range p.wide {
			if p.dark[y*p.wide+x] >= surelyInk && !other.near(x, y) {
				if n == 0 {
					first = image.Pt(x, y)
				}
				n++
			}
		}
	}
	return first, n
}

func (p picture) near(x, y int) bool {
	for v := max(y-reach, 0); v <= min(y+reach, p.tall-1); v++ {
		for u := max(x-reach, 0); u <= min(x+reach, p.wide-1); u++ {
			if p.dark[v*p.wide+u] >= someInk {
				return true
			}
		}
	}
	return false
}

func TestHoleIsWhite(t *testing.T) {
	paper, _ := draw.PaperByName("A4")
	s := &draw.Sheet{Number: "A01", Paper: paper}
	// Both loops turn the same way; even-odd makes the inner one a hole.
	s.FillPolygon(draw.Hatch, 1, draw.Rect{X0: 10, Y0: 10, X1: 50, Y1: 50}.Corners(), draw.Rect{X0: 20, Y0: 20, X1: 40, Y1: 40}.Corners())
	var buf bytes.Buffer
	if err := Write(&buf, s, mmPerInch); err != nil { // one dot for each mm
		t.Fatal(err)
	}
	img, err := png.Decode(&buf)
	if err != nil {
		t.Fatal(err)
	}
	for at, black := range map[image.Point]bool{{X: 15, Y: 30}: true, {X: 30, Y: 30}: false, {X: 60, Y: 30}: false} {
		r, _, _, _ := img.At(at.X, int(paper.Height)-at.Y).RGBA()
		if (r == 0) != black {
			t.Errorf("%v: brightness %d, black should be %v", at, r>>8, black)
		}
	}
}

func BenchmarkBusy(b *testing.B) {
	sheet := sample.Busy().Sheets[0]
	for b.Loop() {
		if err := Write(io.Discard, sheet, 100); err != nil {
			b.Fatal(err)
		}
	}
}
