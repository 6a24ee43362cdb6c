package sheets_test

import (
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"plumbcut/draw"
)

// shown is how much of a page is painted.
type shown struct{ words, lines int }

// layeredPages is how many pages are looked at.
const layeredPages = 8

// painted has MuPDF tell what it paints of each page, with one layer hidden:
// the first is 1, and 0 hides none.
func painted(t *testing.T, file string, hidden int) []shown {
	t.Helper()
	args := []string{"draw", "-q", "-N", "-F", "trace"}
	if hidden > 0 {
		args = append(args, "-z", strconv.Itoa(hidden))
	}
	out, err := quiet(exec.Command(tool(t, "mutool"), append(args, file, fmt.Sprintf("1-%d", layeredPages))...))
	if err != nil {
		t.Fatal(err)
	}
	var pages []shown
	for line := range strings.SplitSeq(string(out), "\n") {
		name, _, _ := strings.Cut(strings.TrimSpace(line), " ")
		switch name {
		case "<page":
			pages = append(pages, shown{})
		case "<fill_text":
			pages[len(pages)-1].words++
		case "<fill_path", "<stroke_path":
			pages[len(pages)-1].lines++
		}
	}
	return pages
}

// TestLayersHoldTheirMarks hides each layer in turn in a file of two sizes of
// paper: from every page the words and the lines must go that belong to it, and
// no mark may be on none.
func TestLayersHoldTheirMarks(t *testing.T) {
	s := demoSource(t)
	d, err := s.make()
	if err != nil {
		t.Fatal(err)
	}
	papers, err := d.papers()
	if err != nil {
		t.Fatal(err)
	}
	set := papers["mixed"]
	file := pdfFileOf(t, set)
	whole := painted(t, file, 0)
	if len(whole) != layeredPages {
		t.Fatalf("%d pages are painted, want %d", len(whole), layeredPages)
	}
	sum := make([]shown, len(whole))
	names := layerNames(t, file)
	if len(names) != len(draw.Layers()) {
		t.Fatalf("the layers are %q, want %v", names, draw.Layers())
	}
	for k, l := range draw.Layers() {
		if names[k] != l.String() {
			t.Errorf("layer %d is called %q, want %q", k+1, names[k], l)
		}
		rest := painted(t, file, k+1)
		for i, s := range set.Sheets[:layeredPages] {
			gone := shown{whole[i].words - rest[i].words, whole[i].lines - rest[i].lines}
			sum[i].words += gone.words
			sum[i].lines += gone.lines
			words, lines := onLayer(s, l)
			if gone.words != words || (gone.lines > 0) != (lines > 0) {
				t.Errorf("sheet %s: without the layer %q %d words and %d lines are gone, want %d and %d", s.Number, l, gone.words, gone.lines, words, lines)
			}
		}
	}
	for i, s := range set.Sheets[:layeredPages] {
		if sum[i] != whole[i] {
			t.Errorf("sheet %s: %v of %v are on a layer", s.Number, sum[i], whole[i])
		}
	}
}

// layerNames has MuPDF tell what the layers of a file are called.
func layerNames(t *testing.T, file string) (names []string) {
	t.Helper()
	cmd := exec.Command(tool(t, "mutool"), "draw", "-N", "-Y", "-F", "trace", "-o", os.DevNull, file, "1")
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	for line := range strings.SplitSeq(string(out), "\n") {
		if _, name, ok := strings.Cut(line, " (on): "); ok {
			names = append(names, name)
		}
	}
	return names
}

// onLayer counts the marks of a layer.
func onLayer(s *draw.Sheet, l draw.Layer) (words, lines int) {
	for _, it := range s.Items {
		switch {
		case it.Text != nil && it.Text.Layer == l:
			words++
		case it.Path != nil && it.Path.Style.Layer == l && len(it.Path.Segs) > 0:
			lines++
		}
	}
	return words, lines
}
