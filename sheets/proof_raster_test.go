package sheets_test

import (
	"bytes"
	"fmt"
	"image"
	_ "image/png" // decodes what rsvg-convert paints
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"plumbcut/draw/pdf"
	"plumbcut/draw/svg"
)

// The PDF and the SVG of a sheet, painted by two programs that know nothing of
// each other, must show the same drawing.
const (
	rasterDPI = 200
	// A dot is 0.127 mm wide: its neighbours, also across the corner, lie
	// within 0.2 mm.
	rasterReach = 1
	// inkDark is how dark a dot of 255 is that surely is ink, inkTrace one
	// that a line at the limit leaves.
	inkDark, inkTrace = 110, 25
	// agreement is the part of the ink of each that must have ink of the other
	// near.
	agreement = 0.995
)

// demo is the example whose sheets are compared.
const demo = "courtyard.yaml"

func TestPDFAndSVGShowTheSame(t *testing.T) {
	toPPM, toPNG := tool(t, "pdftoppm"), tool(t, "rsvg-convert")
	for _, s := range examples(t) {
		if s.name != demo && !*long {
			continue
		}
		d, err := s.make()
		if err != nil {
			t.Fatal(err)
		}
		dir := t.TempDir()
		inPDF := filepath.Join(dir, "set.pdf")
		writeFile(t, inPDF, func(w io.Writer) error { return pdf.Write(w, d.set, pdf.Options{}) })
		fonts := ourFonts(t, dir)
		t.Run(s.name, func(t *testing.T) {
			for i, sheet := range d.set.Sheets {
				t.Run(sheet.Number, func(t *testing.T) {
					t.Parallel()
					base := filepath.Join(dir, sheet.Number)
					writeFile(t, base+".svg", func(w io.Writer) error { return svg.Write(w, d.set, sheet) })
					page, dpi := fmt.Sprint(i+1), fmt.Sprint(rasterDPI)
					painted(t, exec.Command(toPPM, "-r", dpi, "-gray", "-singlefile", "-f", page, "-l", page, inPDF, base))
					rsvg := exec.Command(toPNG, "-d", dpi, "-p", dpi, base+".svg", "-o", base+".png")
					rsvg.Env = append(os.Environ(), fonts)
					painted(t, rsvg)
					a, b := loadPGM(t, base+".pgm"), loadPNG(t, base+".png")
					share(t, "PDF", "SVG", a, b)
					share(t, "SVG", "PDF", b, a)
				})
			}
		})
	}
}

// share checks how much ink of one picture has ink of the other near.
func share(t *testing.T, one, other string, a, b raster) {
	t.Helper()
	ink, near := a.near(b)
	const least = 10000 // dots: an empty sheet agrees with anything
	if ink < least {
		t.Errorf("the %s has only %d dots of ink", one, ink)
	}
	if part := float64(near) / float64(ink); part < agreement {
		t.Errorf("%.3f %% of the ink of the %s lies within 0.2 mm of ink of the %s, want %.1f %%", 100*part, one, other, 100*agreement)
	}
}

func writeFile(t *testing.T, name string, write func(io.Writer) error) {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
}

func painted(t *testing.T, cmd *exec.Cmd) {
	t.Helper()
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %v\n%s", cmd.Args, err, out)
	}
}

// ourFonts lets rsvg-convert, which does not read the lettering in the file,
// find it in the project.
func ourFonts(t *testing.T, dir string) (setting string) {
	t.Helper()
	folder, err := filepath.Abs("../fonts")
	if err != nil {
		t.Fatal(err)
	}
	conf := filepath.Join(dir, "fonts.conf")
	text := `<?xml version="1.0"?><fontconfig><dir>` + folder + `</dir><cachedir>` + dir + `</cachedir></fontconfig>`
	if err := os.WriteFile(conf, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return "FONTCONFIG_FILE=" + conf
}

// raster is the darkness of each dot of a picture, 0 for white.
type raster struct {
	dark       []uint8
	wide, tall int
}

// loadPGM reads a grey picture as pdftoppm writes it: a head of three lines
// and a byte for each dot.
func loadPGM(t *testing.T, name string) raster {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var r raster
	var most int
	if _, err := fmt.Sscanf(string(data[:min(len(data), 40)]), "P5\n%d %d\n%d\n", &r.wide, &r.tall, &most); err != nil || most != 255 {
		t.Fatalf("%s is no grey picture of 8 bits: %v", name, err)
	}
	r.dark = data[len(data)-r.wide*r.tall:]
	for i, v := range r.dark {
		r.dark[i] = 255 - v
	}
	return r
}

func loadPNG(t *testing.T, name string) raster {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	pix, ok := img.(*image.NRGBA)
	if !ok {
		t.Fatalf("%s is %T, want 8-bit colours", name, img)
	}
	r := raster{make([]uint8, pix.Rect.Dx()*pix.Rect.Dy()), pix.Rect.Dx(), pix.Rect.Dy()}
	for i := range r.dark {
		r.dark[i] = 255 - pix.Pix[4*i] // the sheet is white and opaque
	}
	return r
}

// near counts the dots that are ink, and those of them near which the other
// picture has some too.
func (r raster) near(other raster) (ink, near int) {
	for y := range r.tall {
		for x := range r.wide {
			if r.dark[y*r.wide+x] < inkDark {
				continue
			}
			ink++
			if other.traces(x, y) {
				near++
			}
		}
	}
	return ink, near
}

func (r raster) traces(x, y int) bool {
	for v := max(y-rasterReach, 0); v <= min(y+rasterReach, r.tall-1); v++ {
		for u := max(x-rasterReach, 0); u <= min(x+rasterReach, r.wide-1); u++ {
			if r.dark[v*r.wide+u] >= inkTrace {
				return true
			}
		}
	}
	return false
}
