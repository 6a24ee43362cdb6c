package pdf

import (
	"bytes"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/draw/internal/sample"
	"plumbcut/geom"
)

// file writes a set and returns the path of the file.
func file(t *testing.T, set *draw.Set, opt Options) string {
	t.Helper()
	var buf bytes.Buffer
	if err := Write(&buf, set, opt); err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "set.pdf")
	if err := os.WriteFile(name, buf.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

// object is what mutool shows of a place in the file, on one line.
func object(t *testing.T, name, path string) string {
	t.Helper()
	return strings.Join(strings.Fields(sample.Run(t, "mutool", "show", name, path)), " ")
}

func contains(t *testing.T, what, text string, wants ...string) {
	t.Helper()
	for _, want := range wants {
		if !strings.Contains(text, want) {
			t.Errorf("%s lacks %q:\n%s", what, want, text)
		}
	}
}

func TestThreeReadersTakeIt(t *testing.T) {
	for _, opt := range []Options{{}, {Flat: true}} {
		name := file(t, sample.Set(), opt)
		contains(t, "qpdf", sample.Said(t, "qpdf", "--check", name), "No syntax or stream encoding errors")
		if out := sample.Said(t, "mutool", "draw", "-q", "-N", "-o", os.DevNull, "-F", "trace", name); out != "" {
			t.Errorf("mutool: %s", out)
		}
		// With -q it would not complain.
		out := sample.Said(t, "gs", "-dNOPAUSE", "-dBATCH", "-sDEVICE=nullpage", name)
		if regexp.MustCompile(`(?i)warning|error|substitut`).MatchString(out) {
			t.Errorf("gs: %s", out)
		}
	}
}

func TestSameBytes(t *testing.T) {
	sample.SameBytes(t, func(w io.Writer) error { return Write(w, sample.Set(), Options{}) })
}

func TestWordsCanBeFound(t *testing.T) {
	for _, opt := range []Options{{}, {Flat: true}} {
		// In the order of the file, since on a slope the program gives up
		// otherwise; it then sets each upright word on a line of its own.
		text := sample.Run(t, "pdftotext", "-raw", file(t, sample.Set(), opt), "-")
		contains(t, "pdftotext", strings.Join(strings.Fields(text), " "), append(sample.Words(), "see A02", "Details")...)
	}
}

func TestBookmarksLabelsAndLinks(t *testing.T) {
	name := file(t, sample.Set(), Options{})
	contains(t, "outline", sample.Run(t, "mutool", "show", name, "outline"),
		"\"A01 Plan & <notes>\"\t#page=1&view=Fit", "\"A02 Details\"\t#page=2&view=Fit")
	// 0041003000310000 is A01 in UTF-16.
	contains(t, "page labels", object(t, name, "trailer/Root/PageLabels"),
		"0 << /P <FEFF004100300031>", "1 << /P <FEFF004100300032>")
	// Pages are objects 3 and 5. The A4 sheet is 841.89 points high, and the
	// link of the A3 sheet must land at the top of it.
	contains(t, "link to A02", object(t, name, "pages/1/Annots/1"), "/Dest [ 5 0 R /XYZ 0 841.89 null ]")
	contains(t, "link to A01", object(t, name, "pages/2/Annots/1"), "/Dest [ 3 0 R /XYZ 0 841.89 null ]")
}

// Points are mm × 72 / 25.4: A4 is 595.28 × 841.89.
func TestPagesHaveTheirTrueSize(t *testing.T) {
	name := file(t, sample.Set(), Options{})
	contains(t, "page 1", object(t, name, "pages/1/MediaBox"), "[ 0 0 595.28 841.89 ]")
	contains(t, "page 2", object(t, name, "pages/2/MediaBox"), "[ 0 0 1190.55 841.89 ]")
}

func TestLayersAndJobFile(t *testing.T) {
	layered := file(t, sample.Set(), Options{})
	root := object(t, layered, "trailer/Root")
	contains(t, "catalog", root, "/PrintScaling /None", "/DisplayDocTitle true", "/OCProperties", "/PageMode /UseOutlines")
	for i, l := range draw.Layers() {
		// The layers are the objects after the two pages and their contents.
		contains(t, "layer", sample.Run(t, "qpdf", "--show-object="+[]string{"7", "8", "9", "10", "11", "12", "13", "14"}[i], layered), "/OCG")
		if l.String() == "" {
			t.Errorf("layer %d has no name", i)
		}
	}
	set := sample.Set()
	if got := sample.Run(t, "qpdf", "--show-attachment="+set.Meta.JobFile, layered); got != string(set.Meta.JobText) {
		t.Errorf("job file inside: %q, want %q", got, set.Meta.JobText)
	}

	flat := object(t, file(t, set, Options{Flat: true}), "trailer/Root")
	contains(t, "flat catalog", flat, "/PrintScaling /None", "/Outlines")
	for _, no := range []string{"/OCProperties", "/EmbeddedFiles"} {
		if strings.Contains(flat, no) {
			t.Errorf("a flat file has %s", no)
		}
	}
}

func TestProperties(t *testing.T) {
	out := sample.Run(t, "pdfinfo", file(t, sample.Set(), Options{}))
	contains(t, "pdfinfo", out, "Kōwhai <arbour> (1)", "Shop drawings & notes", "Invented Builders", "Mar 14 00:00:00 2025")
	out = sample.Run(t, "pdfinfo", file(t, sample.Busy(), Options{}))
	contains(t, "pdfinfo without a date", out, "Jan  1 00:00:00 2000")
}

func TestNothingIsWrittenOfAFaultySet(t *testing.T) {
	set := sample.Set()
	set.Sheets[1].Line(draw.Style{}, geom.P(0, 0), geom.P(math.NaN(), 0))
	var buf bytes.Buffer
	err := Write(&buf, set, Options{})
	if err == nil || !strings.Contains(err.Error(), "sheet A02") || buf.Len() > 0 {
		t.Errorf("Write = %v with %d bytes, want an error that names sheet A02 and no bytes", err, buf.Len())
	}
}

// The content of a page is plain enough to read: what was asked for must be
// there, and the pen must not be set twice to the same.
func TestStateChangesAreFew(t *testing.T) {
	name := file(t, sample.Busy(), Options{})
	content := sample.Run(t, "qpdf", "--show-object=4", "--filtered-stream-data", name)
	if n := len(regexp.MustCompile(`(?m) w$`).FindAllString(content, -1)); n > 3*len(draw.Layers()) {
		t.Errorf("the width is set %d times for 3 pens on %d layers", n, len(draw.Layers()))
	}
	if n := strings.Count(content, "\nS\n"); n != 5000 {
		t.Errorf("%d lines are stroked, want 5000", n)
	}
	if n := strings.Count(content, " Tj"); n != 500 {
		t.Errorf("%d texts are set, want 500", n)
	}
	for _, bad := range []string{"NaN", "Inf", "e+", "e-"} {
		if strings.Contains(content, bad) {
			t.Errorf("the content has %q", bad)
		}
	}
}

func TestFinishRefusesAnotherLayout(t *testing.T) {
	b, err := newBoard(sample.Set(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range sample.Set().Sheets {
		b.page(s)
	}
	raw, err := b.bytes()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := finish(raw, sample.Set(), Options{}); err != nil {
		t.Fatal(err)
	}
	for name, spoilt := range map[string][]byte{
		"nothing":       nil,
		"cut":           raw[:len(raw)/2],
		"no names":      bytes.ReplaceAll(raw, []byte("/Names <<"), []byte("/Namez <<")),
		"other catalog": bytes.ReplaceAll(raw, []byte("/Type /Catalog"), []byte("/Type /Katalog")),
		"xref beyond":   bytes.ReplaceAll(raw, []byte("startxref\n"), []byte("startxref\n9")),
	} {
		if _, err := finish(spoilt, sample.Set(), Options{}); err == nil {
			t.Errorf("%s: finish took it", name)
		}
	}
}

func BenchmarkBusy(b *testing.B) {
	set := sample.Busy()
	for b.Loop() {
		if err := Write(io.Discard, set, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
