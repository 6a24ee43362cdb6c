package sheets_test

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/draw/pdf"
	"plumbcut/sheets/template"
)

// reader takes a PDF and complains of what is wrong with it.
type reader struct {
	name string
	read func(name string) error
}

// readers are five that share no code with each other. What they complain of
// on their second stream counts, even where they end well.
func readers(t testing.TB) []reader {
	t.Helper()
	run := func(path string, args ...string) func(string) error {
		return func(name string) error {
			_, err := quiet(exec.Command(path, append(args, name)...))
			return err
		}
	}
	// Asked for here, where a test that lacks one can still be skipped.
	ghostscript, pdfium := tool(t, "gs"), witness(t, "pdfium-read.mjs")
	return []reader{
		{"qpdf", run(tool(t, "qpdf"), "--check")},
		{"MuPDF", run(tool(t, "mutool"), "draw", "-q", "-N", "-F", "trace", "-o", os.DevNull)},
		{"Poppler", run(tool(t, "pdftoppm"), "-r", "20", "-gray")},
		{"Ghostscript", func(name string) error {
			// It complains on its first stream, and with -q not at all.
			out, err := quiet(exec.Command(ghostscript, "-dNOPAUSE", "-dBATCH", "-sDEVICE=nullpage", name))
			if err == nil && complaint.Match(out) {
				err = fmt.Errorf("%s", out)
			}
			return err
		}},
		{"PDFium", run(pdfium.Path, pdfium.Args[1:]...)},
	}
}

// complaint is in what Ghostscript says of a faulty file, not in its greeting.
var complaint = regexp.MustCompile(`(?i)warning|error|substitut`)

// papers are the PDF files of a job by name: the sheets, the templates, and
// both in one file, turn and turn about, so that pages of two sizes follow each
// other.
func (d *drawn) papers() (map[string]*draw.Set, error) {
	templates, err := template.Make(d.frame)
	if err != nil {
		return nil, err
	}
	mixed := &draw.Set{Meta: d.set.Meta}
	a, b := d.set.Sheets, templates.Pages.Sheets
	for i := range max(len(a), len(b)) {
		if i < len(b) {
			s := *b[i]
			s.Number = "T" + s.Number
			mixed.Sheets = append(mixed.Sheets, &s)
		}
		if i < len(a) {
			mixed.Sheets = append(mixed.Sheets, a[i])
		}
	}
	return map[string]*draw.Set{"sheets": d.set, "templates": templates.Pages, "mixed": mixed}, nil
}

// TestFiveReadersTakeTheFiles has the files read by all readers, without a word
// of complaint, and clicks through them.
func TestFiveReadersTakeTheFiles(t *testing.T) {
	all := readers(t)
	for _, s := range examples(t) {
		if s.name != demo && !*long {
			continue
		}
		d, err := s.make()
		if err != nil {
			t.Fatal(err)
		}
		papers, err := d.papers()
		if err != nil {
			t.Fatal(err)
		}
		for name, set := range papers {
			t.Run(s.name+" "+name, func(t *testing.T) {
				t.Parallel()
				file := pdfFileOf(t, set)
				for _, r := range all {
					if err := r.read(file); err != nil {
						t.Errorf("%s: %v", r.name, err)
					}
				}
				clickThrough(t, set, file)
			})
		}
	}
}

func pdfFileOf(t *testing.T, set *draw.Set) (name string) {
	t.Helper()
	var b bytes.Buffer
	if err := pdf.Write(&b, set, pdf.Options{}); err != nil {
		t.Fatal(err)
	}
	name = filepath.Join(t.TempDir(), "set.pdf")
	if err := os.WriteFile(name, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

// TestReadersComplain spoils a file in ways that viewers forgive: those readers
// must complain that can see it, or else their silence says nothing.
func TestReadersComplain(t *testing.T) {
	s := demoSource(t)
	d, err := s.make()
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	set := &draw.Set{Meta: d.set.Meta, Sheets: d.set.Sheets[3:4]}
	if err := pdf.Write(&b, set, pdf.Options{}); err != nil {
		t.Fatal(err)
	}
	content := bytes.Index(b.Bytes(), []byte("stream\n")) + 60
	for _, c := range []struct {
		what  string
		spoil func(pdf []byte) []byte
		by    string
	}{
		{"the place of the table", swap("startxref\n", "startxref\n1"), "qpdf MuPDF Ghostscript PDFium"},
		{"the end is cut off", func(p []byte) []byte { return p[:len(p)-1500] }, "qpdf MuPDF Poppler Ghostscript PDFium"},
		{"the content is garbled", func(p []byte) []byte { copy(p[content:], "\xff\xff\xff\xff"); return p }, "qpdf MuPDF Poppler Ghostscript"},
		{"a font is not in the file", swap("/FontFile2 ", "/FontFileX "), "MuPDF Ghostscript"},
	} {
		name := filepath.Join(t.TempDir(), "spoilt.pdf")
		if err := os.WriteFile(name, c.spoil(bytes.Clone(b.Bytes())), 0o600); err != nil {
			t.Fatal(err)
		}
		for _, r := range readers(t) {
			if !strings.Contains(c.by, r.name) {
				continue
			}
			if err := r.read(name); err == nil {
				t.Errorf("%s: %s says nothing", c.what, r.name)
			}
		}
	}
}

// swap puts words in the place of others.
func swap(before, after string) func([]byte) []byte {
	return func(p []byte) []byte { return bytes.ReplaceAll(p, []byte(before), []byte(after)) }
}

// clicked is what PDFium finds in a file, see pdfium-read.mjs: places in points
// from the bottom left.
type clicked struct {
	Pages []struct {
		Label      string
		Wide, Tall float64
		Links      int // places that can be clicked
		Words      []struct {
			Text string
			X, Y float64
			Link int // in which of them its middle lies; 0 for none
			To   *landing
		}
	}
	Bookmarks []struct {
		Title string
		To    *landing
	}
	Files []struct{ Name, Content string }
}

// landing is where a click leads.
type landing struct {
	Page int
	X, Y *float64
}

// clickThrough opens a file with PDFium and clicks on every bookmark and every
// word: each number of a sheet leads to the page of that name, at its top, and
// whatever else can be clicked to one of the pages.
func clickThrough(t *testing.T, set *draw.Set, file string) {
	t.Helper()
	out, err := quiet(witness(t, "pdfium-read.mjs", file))
	if err != nil {
		t.Error(err)
		return
	}
	var c clicked
	if err := json.Unmarshal(out, &c); err != nil {
		t.Error(err)
		return
	}
	if len(c.Pages) != len(set.Sheets) || len(c.Bookmarks) != len(set.Sheets) {
		t.Errorf("%d pages and %d bookmarks, want %d of each", len(c.Pages), len(c.Bookmarks), len(set.Sheets))
		return
	}
	for i, s := range set.Sheets {
		p, b := c.Pages[i], c.Bookmarks[i]
		if p.Label != s.Number {
			t.Errorf("page %d is called %q, want %q", i+1, p.Label, s.Number)
		}
		const near = 0.01 / mmPerPoint
		if math.Abs(p.Wide*mmPerPoint-s.Paper.Width) > near || math.Abs(p.Tall*mmPerPoint-s.Paper.Height) > near {
			t.Errorf("page %s is %.1f by %.1f points", p.Label, p.Wide, p.Tall)
		}
		if want := s.Number + " " + s.Title; b.Title != want || c.lands(b.To) != s.Number {
			t.Errorf("bookmark %q leads to %q, want %q to %q", b.Title, c.lands(b.To), want, s.Number)
		}
		c.clicks(t, i)
	}
	c.attached(t, set)
}

// has reports whether a page has a name.
func (c clicked) has(name string) bool {
	for _, p := range c.Pages {
		if p.Label == name {
			return true
		}
	}
	return false
}

// lands is the name of the page where a click leads, if it leads to its top.
func (c clicked) lands(to *landing) string {
	if to == nil || to.Page < 0 || to.Page >= len(c.Pages) {
		return ""
	}
	p := c.Pages[to.Page]
	if to.Y != nil && math.Abs(*to.Y-p.Tall) > 0.5 { // points
		return fmt.Sprintf("the middle of %s", p.Label)
	}
	return p.Label
}

// clicks clicks on the words of a page.
func (c clicked) clicks(t *testing.T, page int) {
	t.Helper()
	p := c.Pages[page]
	hit := map[int]bool{}
	for _, w := range p.Words {
		name := strings.Trim(w.Text, ".,;:()")
		lands := c.lands(w.To)
		if w.Link > 0 {
			hit[w.Link] = true
			if !c.has(lands) {
				t.Errorf("page %s: %s leads to %q", p.Label, name, lands)
			}
		}
		switch {
		case !sheetNumber.MatchString(name):
		case w.Link > 0 && lands != name:
			t.Errorf("page %s: %s leads to %q", p.Label, name, lands)
		case w.Link == 0 && name != p.Label && c.has(name):
			t.Errorf("page %s: %s at %.0f, %.0f mm cannot be clicked", p.Label, name, w.X*mmPerPoint, w.Y*mmPerPoint)
		}
	}
	if len(hit) != p.Links {
		t.Errorf("page %s: %d of %d links lie under a word", p.Label, len(hit), p.Links)
	}
}

// attached checks that the job comes out of the file as it went in.
func (c clicked) attached(t *testing.T, set *draw.Set) {
	t.Helper()
	if len(c.Files) != 1 || c.Files[0].Name != set.Meta.JobFile {
		t.Errorf("attached are %d files, want %q alone", len(c.Files), set.Meta.JobFile)
		return
	}
	got, err := base64.StdEncoding.DecodeString(c.Files[0].Content)
	if err != nil || !bytes.Equal(got, set.Meta.JobText) {
		t.Errorf("%s comes out with %d bytes, want %d (%v)", set.Meta.JobFile, len(got), len(set.Meta.JobText), err)
	}
}
