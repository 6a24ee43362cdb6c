package svg

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/image/font/sfnt"

	"plumbcut/draw"
	"plumbcut/draw/internal/sample"
	"plumbcut/geom"
)

func write(t testing.TB, set *draw.Set, sheet int) []byte {
	t.Helper()
	var buf bytes.Buffer
	if err := Write(&buf, set, set.Sheets[sheet]); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// element is one element of the file as a second reader sees it.
type element struct {
	xml.StartElement
	text  string
	group string // id of the outermost group round it
}

func (e element) attr(name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// parse reads the file with encoding/xml, strictly.
func parse(t *testing.T, file []byte) []element {
	t.Helper()
	dec := xml.NewDecoder(bytes.NewReader(file))
	var all []element
	var open []int
	for {
		token, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{StartElement: token.Copy()}
			if len(open) > 1 {
				e.group = all[open[1]].attr("id")
			}
			open = append(open, len(all))
			all = append(all, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				all[open[len(open)-1]].text += string(token)
			}
		}
	}
}

func TestSameBytes(t *testing.T) {
	sample.SameBytes(t, func(w io.Writer) error {
		set := sample.Set()
		return errors.Join(Write(w, set, set.Sheets[0]), Write(w, set, set.Sheets[1]))
	})
}

func TestTrueSize(t *testing.T) {
	root := parse(t, write(t, sample.Set(), 0))[0]
	if w, h, box := root.attr("width"), root.attr("height"), root.attr("viewBox"); w != "210mm" || h != "297mm" || box != "0 0 210 297" {
		t.Errorf("width %s, height %s, viewBox %s", w, h, box)
	}
}

func TestWordsStayWords(t *testing.T) {
	var got []string
	for _, e := range parse(t, write(t, sample.Set(), 0)) {
		switch e.Name.Local {
		case "text":
			got = append(got, e.text)
			length, err := strconv.ParseFloat(e.attr("textLength"), 64)
			if want := draw.TextWidth(e.text, 3.5, false); err != nil || e.text == sample.Words()[0] && math.Abs(length-want) > 0.001 {
				t.Errorf("text %q: textLength %g, want %g", e.text, length, want)
			}
		case "title":
			if e.text != "A01 Plan & <notes>" {
				t.Errorf("title %q", e.text)
			}
		case "desc":
			if e.text != "Kōwhai <arbour> (1): Shop drawings & notes" {
				t.Errorf("desc %q", e.text)
			}
		}
	}
	for _, want := range append(sample.Words(), "see A02") {
		if !strings.Contains("\n"+strings.Join(got, "\n")+"\n", "\n"+want+"\n") {
			t.Errorf("text %q is not among %q", want, got)
		}
	}
}

func TestSpacesAreKept(t *testing.T) {
	set := sample.Set()
	set.Sheets[0].AddText(draw.Text{Height: 2.5, String: "two  spaces"})
	if file := write(t, set, 0); !bytes.Contains(file, []byte(`xml:space="preserve">two  spaces<`)) {
		t.Error("a viewer would join the two spaces")
	}
}

func TestLayersAndIds(t *testing.T) {
	seen := map[string]bool{}
	name := regexp.MustCompile(`^[A-Za-z_][A-Za-z0-9_.-]*$`)
	groups := map[string]int{}
	for _, e := range parse(t, write(t, sample.Set(), 0)) {
		if id := e.attr("id"); id != "" {
			if seen[id] || !name.MatchString(id) {
				t.Errorf("id %q is taken or no XML name", id)
			}
			seen[id] = true
		}
		if l := e.Name.Local; l == "path" || l == "text" {
			groups[e.group]++
		}
	}
	for _, want := range []string{"R-1-a", "R-1-a-2", "words", "words-4"} {
		if !seen[want] {
			t.Errorf("no id %q in %v", want, seen)
		}
	}
	for _, l := range []draw.Layer{draw.Hatch, draw.Outline, draw.Hidden, draw.Centre, draw.Notes, draw.Border} {
		if groups[l.String()] == 0 {
			t.Errorf("nothing in group %q", l)
		}
	}
	if groups[""] > 0 {
		t.Errorf("%d marks are in no layer", groups[""])
	}
}

func TestIdsOfAllSorts(t *testing.T) {
	p := page{ids: map[string]int{"hatch": 1}}
	for _, c := range [][2]string{
		{"R1", "R1"}, {"R1", "R1-2"}, {"R1-2", "R1-2-2"}, {"R1", "R1-3"}, {"hatch", "hatch-2"},
		{"1", "_1"}, {"-", "_-"}, {"ā\"<", "_---"}, {"a b", "a-b"}, {"a\x00b", "a-b-2"},
	} {
		if got := p.id(c[0]); got != c[1] {
			t.Errorf("id(%q) = %q, want %q", c[0], got, c[1])
		}
	}
}

func TestNumbersAreShort(t *testing.T) {
	_, file, _ := bytes.Cut(write(t, sample.Set(), 0), []byte("</style>"))
	if long := regexp.MustCompile(`\d\.\d{4,}|\.\d*0[ "HVLMCZ]|NaN|Inf|[0-9]e[-+]`).Find(file); long != nil {
		t.Errorf("the file has the number %q", long)
	}
}

// The embedded fonts must hold every character that is set in them, and open
// in golang.org/x/image/font/sfnt, a reader that shares no code with ours.
func TestLetteringIsInside(t *testing.T) {
	file := write(t, sample.Set(), 0)
	found := regexp.MustCompile(`base64,([^)]*)`).FindAllSubmatch(file, -1)
	if len(found) != 2 {
		t.Fatalf("%d fonts, want 2", len(found))
	}
	texts := [2]string{sample.Words()[0] + sample.Words()[2] + sample.Words()[3], sample.Words()[1]}
	for i, m := range found {
		ttf, err := base64.StdEncoding.DecodeString(string(m[1]))
		if err != nil {
			t.Fatal(err)
		}
		font, err := sfnt.Parse(ttf)
		if err != nil {
			t.Fatal(err)
		}
		var buf sfnt.Buffer
		for _, r := range texts[i] {
			if id, err := font.GlyphIndex(&buf, r); id == 0 || err != nil {
				t.Errorf("font %d lacks %q", i, r)
			}
		}
	}
}

func TestNothingIsWrittenOfAFaultySheet(t *testing.T) {
	for name, spoil := range map[string]func(*draw.Set){
		"NaN":     func(s *draw.Set) { s.Sheets[0].Line(draw.Style{}, geom.P(0, 0), geom.P(0, math.NaN())) },
		"letter":  func(s *draw.Set) { s.Sheets[0].AddText(draw.Text{Height: 3, String: "⌀"}) },
		"control": func(s *draw.Set) { s.Sheets[0].AddText(draw.Text{Height: 3, String: "a\x0bb"}) },
		"title":   func(s *draw.Set) { s.Meta.Title = "\x02" },
	} {
		set := sample.Set()
		spoil(set)
		var buf bytes.Buffer
		if err := Write(&buf, set, set.Sheets[0]); err == nil || buf.Len() > 0 {
			t.Errorf("%s: Write = %v with %d bytes, want an error and none", name, err, buf.Len())
		}
	}
}

func BenchmarkBusy(b *testing.B) {
	set := sample.Busy()
	for b.Loop() {
		if err := Write(io.Discard, set, set.Sheets[0]); err != nil {
			b.Fatal(err)
		}
	}
}
