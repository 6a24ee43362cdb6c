package sheets_test

import (
	"bufio"
	"bytes"
	"fmt"
	"image"
	_ "image/png" // decodes what rsvg-convert paints
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"plumbcut/draw"
	"plumbcut/draw/pdf"
	"plumbcut/draw/svg"
	"plumbcut/sheets/template"
)

// The PDF and the SVG of a sheet, painted by programs that know nothing of
// each other, must show the same drawing.
const (
	// A dot is 0.1 mm wide, so that two lie within 0.2 mm.
	rasterDPI   = 254
	rasterReach = 2
	// inkDark is how dark a dot of 255 is that surely is ink, inkTrace one
	// that a line at the limit leaves.
	inkDark, inkTrace = 110, 25
	// agreement is the part of the ink of each that must have ink of the other
	// near.
	agreement = 0.995
	// leastInk is in dots, on an A4 sheet: an empty sheet agrees with anything.
	leastInk = 5000
)

// demo is the example whose sheets are compared without -long.
const demo = "courtyard.yaml"

// TestPaintersAgree has the sheets and the templates painted from the PDF by
// Poppler, MuPDF and PDFium, from the SVG by librsvg and resvg, and compares
// each picture with every other.
func TestPaintersAgree(t *testing.T) {
	for _, s := range examples(t) {
		if s.name != demo && !*long {
			continue
		}
		d, err := s.make()
		if err != nil {
			t.Fatal(err)
		}
		templates, err := template.Make(d.frame)
		if err != nil {
			t.Fatal(err)
		}
		t.Run(s.name, func(t *testing.T) {
			f := filesOf(t, d.set)
			compare(t, d.set, append(f.fromPDF(t), f.fromSVG(t)...))
		})
		t.Run(s.name+" templates", func(t *testing.T) {
			compare(t, templates.Pages, filesOf(t, templates.Pages).fromPDF(t))
			compare(t, templates.Whole, filesOf(t, templates.Whole).fromSVG(t))
		})
	}
}

// onDisk is a set as files: one PDF, and an SVG of each sheet.
type onDisk struct {
	folder, pdf string
	svgs        []string
}

func filesOf(t *testing.T, set *draw.Set) onDisk {
	t.Helper()
	f := onDisk{folder: t.TempDir()}
	f.pdf = filepath.Join(f.folder, "set.pdf")
	writeFile(t, f.pdf, func(w io.Writer) error { return pdf.Write(w, set, pdf.Options{}) })
	for _, s := range set.Sheets {
		name := filepath.Join(f.folder, s.Number+".svg")
		writeFile(t, name, func(w io.Writer) error { return svg.Write(w, set, s) })
		f.svgs = append(f.svgs, name)
	}
	return f
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

// artist gives the pictures of the sheets one after the other.
type artist struct {
	name  string
	next  func(*raster) error
	end   func() error
	every int // it paints one sheet of so many
}

func (f onDisk) fromPDF(t *testing.T) []artist {
	t.Helper()
	dpi := fmt.Sprint(rasterDPI)
	return []artist{
		pipe(t, "Poppler", exec.Command(tool(t, "pdftoppm"), "-r", dpi, "-gray", f.pdf)),
		pipe(t, "MuPDF", exec.Command(tool(t, "mutool"), "draw", "-q", "-N", "-r", dpi, "-c", "gray", "-F", "pgm", "-o", "-", f.pdf)),
		pipe(t, "PDFium", witness(t, "pdfium-paint.mjs", dpi, f.pdf)),
	}
}

func (f onDisk) fromSVG(t *testing.T) []artist {
	t.Helper()
	return []artist{
		f.rsvg(t),
		pipe(t, "resvg", witness(t, "resvg-paint.mjs", append([]string{fmt.Sprint(rasterDPI), "../fonts"}, f.svgs...)...)),
	}
}

// pipe is an artist that is one command, which writes all pictures in turn.
func pipe(t *testing.T, name string, cmd *exec.Cmd) artist {
	t.Helper()
	var errs bytes.Buffer
	cmd.Stderr = &errs
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { cmd.Process.Kill() })
	in := bufio.NewReader(out)
	return artist{
		name: name, every: 1,
		next: func(r *raster) error { return r.readPGM(in) },
		end: func() error {
			rest, _ := io.Copy(io.Discard, in)
			if err := cmd.Wait(); err != nil || errs.Len() > 0 || rest > 0 {
				return fmt.Errorf("%v, %d bytes too many, complaint: %s", err, rest, &errs)
			}
			return nil
		},
	}
}

// rsvgEvery is how many sheets there are to one that librsvg paints without
// -long: it takes longest.
const rsvgEvery = 4

// rsvg is an artist that is one command for each sheet.
func (f onDisk) rsvg(t *testing.T) artist {
	t.Helper()
	path, fonts, dpi, todo := tool(t, "rsvg-convert"), ourFonts(t, f.folder), fmt.Sprint(rasterDPI), f.svgs
	every := rsvgEvery
	if *long {
		every = 1
	}
	return artist{
		name: "librsvg", every: every,
		next: func(r *raster) error {
			cmd := exec.Command(path, "-d", dpi, "-p", dpi, "-b", "white", todo[0])
			cmd.Env = append(os.Environ(), fonts)
			todo = todo[min(every, len(todo)):]
			data, err := quiet(cmd)
			if err != nil {
				return err
			}
			return r.readPNG(data)
		},
		end: func() error { return nil },
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

// compare has each sheet painted by all and compares their pictures, each with
// every other both ways.
func compare(t *testing.T, set *draw.Set, artists []artist) {
	t.Helper()
	pictures, errs := make([]raster, len(artists)), make([]error, len(artists))
	for n, sheet := range set.Sheets {
		var at []int // who paints this one
		var all sync.WaitGroup
		for i, p := range artists {
			if n%p.every == 0 {
				at = append(at, i)
				all.Go(func() { errs[i] = p.next(&pictures[i]) })
			}
		}
		all.Wait()
		for _, i := range at {
			if errs[i] != nil {
				t.Fatalf("sheet %s: %s: %v %v", sheet.Number, artists[i].name, errs[i], artists[i].end())
			}
		}
		for _, i := range at {
			for _, k := range at {
				if k == i {
					continue
				}
				if fault := pictures[i].share(&pictures[k]); fault != "" {
					t.Errorf("sheet %s, ink of %s that %s has near: %s", sheet.Number, artists[i].name, artists[k].name, fault)
				}
			}
		}
	}
	for _, p := range artists {
		if err := p.end(); err != nil {
			t.Errorf("%s: %v", p.name, err)
		}
	}
}

// raster is a picture: how light each dot is, 255 for white, and which dots
// surely are ink.
type raster struct {
	light      []uint8
	wide, tall int
	ink        []int
}

func (r *raster) size(wide, tall int) {
	r.wide, r.tall = wide, tall
	if n := wide * tall; cap(r.light) < n {
		r.light = make([]uint8, n)
	} else {
		r.light = r.light[:n]
	}
}

func (r *raster) findInk() {
	r.ink = r.ink[:0]
	for i, v := range r.light {
		if v <= 255-inkDark {
			r.ink = append(r.ink, i)
		}
	}
}

// readPGM reads a portable grey map: a head of three lines and a byte for
// each dot.
func (r *raster) readPGM(in *bufio.Reader) error {
	var head string
	for range 3 {
		line, err := in.ReadString('\n')
		if err != nil {
			return err
		}
		head += line
	}
	var wide, tall, most int
	if _, err := fmt.Sscanf(strings.Join(strings.Fields(head), " "), "P5 %d %d %d", &wide, &tall, &most); err != nil || most != 255 {
		return fmt.Errorf("%q is not the head of a grey picture of 8 bits: %v", head, err)
	}
	r.size(wide, tall)
	if _, err := io.ReadFull(in, r.light); err != nil {
		return err
	}
	r.findInk()
	return nil
}

func (r *raster) readPNG(data []byte) error {
	img, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return err
	}
	var dots []uint8
	switch img := img.(type) {
	case *image.NRGBA:
		dots = img.Pix
	case *image.RGBA:
		dots = img.Pix
	default:
		return fmt.Errorf("the picture is %T, want 8-bit colours", img)
	}
	r.size(img.Bounds().Dx(), img.Bounds().Dy())
	for i := range r.light {
		r.light[i] = dots[4*i] // black on white, opaque: each colour is as light
	}
	r.findInk()
	return nil
}

// share says what is wrong with how much ink of one picture has ink of the
// other near; nothing if it is enough.
func (r *raster) share(other *raster) string {
	if len(r.ink) < leastInk {
		return fmt.Sprintf("there are only %d dots", len(r.ink))
	}
	near, first := 0, -1
	for _, i := range r.ink {
		if other.traces(i%r.wide, i/r.wide) {
			near++
		} else if first < 0 {
			first = i
		}
	}
	part := float64(near) / float64(len(r.ink))
	if part >= agreement {
		return ""
	}
	const mm = 25.4 / rasterDPI
	return fmt.Sprintf("%.3f %%, want %.1f %%; the first without lies %.1f mm from the left, %.1f from the top",
		100*part, 100*agreement, float64(first%r.wide)*mm, float64(first/r.wide)*mm)
}

// traces reports whether there is a trace of ink within reach of a dot.
func (r *raster) traces(x, y int) bool {
	for v := max(y-rasterReach, 0); v <= min(y+rasterReach, r.tall-1); v++ {
		for u := max(x-rasterReach, 0); u <= min(x+rasterReach, r.wide-1); u++ {
			near := (u-x)*(u-x)+(v-y)*(v-y) <= rasterReach*rasterReach
			if near && r.light[v*r.wide+u] <= 255-inkTrace {
				return true
			}
		}
	}
	return false
}
