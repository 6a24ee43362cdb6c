package sheets_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"plumbcut/draw"
)

// tool is the path of a program that a proof leans on. Where it is not
// installed the proof is skipped, and says so; under CI=true it fails.
func tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil && os.Getenv("CI") == "true" {
		t.Fatalf("%s is not installed", name)
	}
	if err != nil {
		t.Skipf("NOT PROVED: %s is not installed", name)
	}
	return path
}

// runTool is what a program prints.
func runTool(path string, args ...string) ([]byte, error) {
	var out, errs bytes.Buffer
	cmd := exec.Command(path, args...)
	cmd.Stdout, cmd.Stderr = &out, &errs
	if err := cmd.Run(); err != nil {
		return nil, fmt.Errorf("%s: %v\n%s", filepath.Base(path), err, &errs)
	}
	return out.Bytes(), nil
}

// word is a word on a page, as pdftotext finds it, in mm from the bottom left
// corner of the paper.
type word struct {
	text string
	box  draw.Rect
	way  way
	size float64 // height of its capitals
}

// way is the way in which a word reads.
type way int

const (
	level   way = iota // from below
	upright            // from the right
	sloped
)

// wordsOf extracts the words within the frame of each page of a PDF file, in
// the order of the file. The grid references outside it are left out.
func wordsOf(t testing.TB, data []byte) [][]word {
	t.Helper()
	path := tool(t, "pdftotext")
	name := filepath.Join(t.TempDir(), "set.pdf")
	if err := os.WriteFile(name, data, 0o600); err != nil {
		t.Error(err)
		return nil
	}
	out, err := runTool(path, "-raw", "-bbox", name, "-")
	if err != nil {
		t.Error(err)
		return nil
	}
	pages, err := readWords(out)
	if err != nil {
		t.Error(err)
	}
	return pages
}

// readWords reads what pdftotext prints, XHTML.
func readWords(out []byte) ([][]word, error) {
	var pages [][]word
	var width, height float64
	var at *word
	d := xml.NewDecoder(bytes.NewReader(out))
	d.Strict, d.Entity = false, xml.HTMLEntity
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return pages, nil
		}
		if err != nil {
			return nil, err
		}
		switch e := tok.(type) {
		case xml.StartElement:
			n := map[string]float64{}
			for _, a := range e.Attr {
				n[a.Name.Local], _ = strconv.ParseFloat(a.Value, 64)
			}
			switch e.Name.Local {
			case "page":
				pages, width, height = append(pages, nil), n["width"], n["height"]
			case "word":
				at = &word{box: draw.Rect{
					X0: n["xMin"] * mmPerPoint, Y0: (height - n["yMax"]) * mmPerPoint,
					X1: n["xMax"] * mmPerPoint, Y1: (height - n["yMin"]) * mmPerPoint,
				}}
			}
		case xml.CharData:
			if at != nil {
				at.text += string(e)
			}
		case xml.EndElement:
			if e.Name.Local == "word" && at != nil {
				at.measure()
				if c := at.box.Centre(); drawingSpace(width, height).Contains(c) {
					pages[len(pages)-1] = append(pages[len(pages)-1], *at)
				}
				at = nil
			}
		}
	}
}

// drawingSpace is the space within the frame of ISO 5457 on a page of a size in
// points: 20 mm from the left edge of the paper, 10 mm from the others.
func drawingSpace(width, height float64) draw.Rect {
	const left, other = 20, 10
	return draw.Rect{X0: left, Y0: other, X1: width*mmPerPoint - other, Y1: height*mmPerPoint - other}
}

// lineHeight is the height of a line of the lettering over that of its
// capitals: a property of the font, as pdftotext sees it.
const lineHeight = 1.5969

// measure finds which way a word reads and how high its letters are: across
// its reading, its box is one line high.
func (w *word) measure() {
	w.way = sloped
	for _, h := range []float64{draw.NoteHeight, draw.TitleHeight, draw.SheetHeight, draw.NumberHeight} {
		const near = 0.01 // mm
		switch line := h * lineHeight; {
		case math.Abs(w.box.H()-line) < near:
			w.way, w.size = level, h
			return
		case math.Abs(w.box.W()-line) < near:
			w.way, w.size = upright, h
		}
	}
}
