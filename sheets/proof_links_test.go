package sheets_test

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/draw/pdf"
)

// ISO 5455:1979 clause 3: 1 : 1, 2, 5 and these times powers of ten for
// reductions.
var iso5455 = []float64{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}

// withoutScale are views that are pictures, not drawings to scale.
const withoutScale = "Pictorial view"

// shownScales checks that every view stands at a scale of the series and that
// the sheet says which.
func shownScales(set *draw.Set) (found []string) {
	for _, s := range set.Sheets {
		var words []string
		for _, it := range s.Items {
			if it.Text != nil {
				words = append(words, it.Text.String)
			}
		}
		for _, v := range s.Views {
			if v.Name == withoutScale {
				continue
			}
			n := 1 / v.Scale
			in := slices.ContainsFunc(iso5455, func(m float64) bool { return math.Abs(n-m) < 1e-9*m })
			if !in {
				found = append(found, fmt.Sprintf("scale outside ISO 5455: sheet %s: %s at 1:%g", s.Number, v.Name, n))
			}
			said := fmt.Sprintf("1:%.0f", n)
			if !slices.ContainsFunc(words, func(w string) bool { return strings.HasSuffix(w, said) }) {
				found = append(found, fmt.Sprintf("scale not stated: sheet %s: %s at %s", s.Number, v.Name, said))
			}
		}
	}
	return found
}

// iso7200 are the labels of the mandatory fields of ISO 7200:2004, in its own
// order: legal owner, identification number, date of issue, sheet number,
// title, approval person, creator, document type. From memory.
var iso7200 = []string{"Legal owner", "Identification number", "Date of issue", "Sheet", "Title", "Approved by", "Drawn by", "Document type"}

// namedFields checks that the title block of every sheet has the mandatory
// fields once each, says which sheet of how many it is, and its title.
func namedFields(set *draw.Set) (found []string) {
	for i, s := range set.Sheets {
		count := map[string]int{}
		for _, it := range s.Items {
			if t := it.Text; t != nil && t.Layer == draw.Border {
				count[t.String]++
			}
		}
		want := append([]string{fmt.Sprintf("%d of %d", i+1, len(set.Sheets)), s.Number}, iso7200...)
		for _, w := range want {
			// Without a number of the job the sheet's own is its identification too.
			if n := count[w]; n != 1 && !(w == s.Number && n == 2) {
				found = append(found, fmt.Sprintf("field of the title block: sheet %s: %q stands there %d times", s.Number, w, n))
			}
		}
	}
	return found
}

// shownLinks checks that the list of drawings has every sheet, each once, and
// leads there: a line with the number and the title, which may go on to say
// what the sheet holds and be broken over lines.
func shownLinks(set *draw.Set) (found []string) {
	listed := map[string]int{}
	titles := map[string]string{}
	for _, s := range set.Sheets {
		titles[s.Number] = s.Title
	}
	for _, s := range set.Sheets {
		for _, number := range s.Items {
			n := number.Text
			if n == nil || n.Link == "" || n.String != n.Link {
				continue
			}
			var beside *draw.Text // the list may go on in a column to the right
			for _, title := range s.Items {
				if t := title.Text; t != nil && t.At.Y == n.At.Y && t.At.X > n.At.X && (beside == nil || t.At.X < beside.At.X) {
					beside = t
				}
			}
			if beside != nil && strings.HasPrefix(beside.String, titles[n.Link]) {
				listed[n.Link]++
			}
		}
	}
	for _, s := range set.Sheets {
		if listed[s.Number] != 1 {
			found = append(found, fmt.Sprintf("list of drawings: sheet %s is listed %d times", s.Number, listed[s.Number]))
		}
	}
	return found
}

// sheetNumber is how a sheet is named on another.
var sheetNumber = regexp.MustCompile(`^A\d\d+$`)

// inFile writes the set as a PDF and opens it with a reader that shares no code
// with the writer; false, and a finding, if either fails.
func (d *drawn) inFile(found *ledger) (*pdfFile, bool) {
	var b bytes.Buffer
	if err := pdf.Write(&b, d.set, pdf.Options{}); err != nil {
		found.add("writing", d.name, "%v", err)
		return nil, false
	}
	f, err := openPDF(b.Bytes())
	if err != nil {
		found.add("reading", d.name, "%v", err)
		return nil, false
	}
	return f, true
}

// TestLinksInTheFile follows the bookmarks, page labels and links of finished
// files with a reader of its own: each leads to the page that it names, and
// every number of another sheet that is printed anywhere leads there.
func TestLinksInTheFile(t *testing.T) {
	var found ledger
	each(t, append(examples(t), random(4)...), func(d *drawn) {
		f, ok := d.inFile(&found)
		if !ok {
			return
		}
		l := linked{drawn: d, file: f, pages: f.pages(), found: &found}
		l.labels()
		l.bookmarks()
		l.clicks(wordsOf(t, f.data))
		d.attached(f, &found)
	})
	found.report(t)
}

// linked follows the links of one file.
type linked struct {
	*drawn
	file  *pdfFile
	pages []pdfRef
	found *ledger
}

// page is the place of a page in the file, from 0; −1 for none.
func (l linked) page(dest any) int {
	to := l.file.array(dest)
	if len(to) == 0 {
		return -1
	}
	ref, _ := to[0].(pdfRef)
	return slices.Index(l.pages, ref)
}

// labels checks that each page is called by the number of its sheet.
func (l linked) labels() {
	nums := l.file.array(l.file.dict(l.file.root()["PageLabels"])["Nums"])
	if len(nums) != 2*len(l.set.Sheets) {
		l.found.add("page labels", l.name, "there are %d numbers, want %d pairs", len(nums), len(l.set.Sheets))
		return
	}
	for i, s := range l.set.Sheets {
		n, _ := nums[2*i].(float64)
		label := l.file.text(l.file.dict(nums[2*i+1])["P"])
		if int(n) != i || label != s.Number {
			l.found.add("page labels", l.name, "page %d is called %q, want %q", int(n), label, s.Number)
		}
	}
}

// bookmarks checks that there is one for each sheet, in order.
func (l linked) bookmarks() {
	item := l.file.dict(l.file.dict(l.file.root()["Outlines"])["First"])
	i := 0
	for ; item != nil; i++ {
		title := l.file.text(item["Title"])
		if page := l.page(item["Dest"]); page != i || page >= len(l.set.Sheets) || title != l.set.Sheets[page].Number+" "+l.set.Sheets[page].Title {
			l.found.add("bookmarks", l.name, "%q leads to page %d", title, page)
		}
		item = l.file.dict(item["Next"])
	}
	if i != len(l.set.Sheets) {
		l.found.add("bookmarks", l.name, "there are %d, want %d", i, len(l.set.Sheets))
	}
}

// clicks checks that each link leads to the sheet whose number lies in it, and
// that no printed number is without one.
func (l linked) clicks(pages [][]word) {
	for i, s := range l.set.Sheets {
		var areas []draw.Rect
		var to []int
		for _, a := range l.file.array(l.file.dict(l.pages[i])["Annots"]) {
			annot := l.file.dict(a)
			r := numbers(l.file.array(annot["Rect"]))
			if len(r) != 4 {
				l.found.add("links", l.name, "sheet %s: a link without a place", s.Number)
				continue
			}
			areas = append(areas, draw.Rect{X0: min(r[0], r[2]), Y0: min(r[1], r[3]), X1: max(r[0], r[2]), Y1: max(r[1], r[3])})
			to = append(to, l.page(annot["Dest"]))
		}
		for _, w := range pages[i] {
			if !sheetNumber.MatchString(w.text) {
				continue
			}
			c := w.box.Centre().Mul(1 / mmPerPoint)
			k := slices.IndexFunc(areas, func(r draw.Rect) bool { return r.Contains(c) })
			if k < 0 {
				if w.text != s.Number { // its own, in the title block
					l.found.add("links", l.name, "sheet %s: %s is printed at %.0f, %.0f and leads nowhere", s.Number, w.text, w.box.X0, w.box.Y0)
				}
				continue
			}
			if to[k] < 0 || l.set.Sheets[to[k]].Number != w.text {
				l.found.add("links", l.name, "sheet %s: %s leads to page %d", s.Number, w.text, to[k])
			}
		}
	}
}

// attached checks that the job can be taken out of the file again and draws
// the same set.
func (d *drawn) attached(f *pdfFile, found *ledger) {
	names := f.array(f.dict(f.dict(f.root()["Names"])["EmbeddedFiles"])["Names"])
	if len(names) != 2 {
		found.add("attached job", d.name, "there are %d entries, want one name and one file", len(names))
		return
	}
	content, _ := f.get(f.dict(f.dict(names[1])["EF"])["F"]).(pdfStream)
	if !bytes.Equal(content.data, d.frame.Job.Text) {
		found.add("attached job", d.name, "it has %d bytes, want the %d of the job file", len(content.data), len(d.frame.Job.Text))
		return
	}
	again, err := source{d.name, func() ([]byte, error) { return content.data, nil }}.make()
	if err != nil {
		found.add("attached job", d.name, "%v", err)
		return
	}
	var one, two bytes.Buffer
	if err := pdf.Write(&one, d.set, pdf.Options{}); err != nil {
		found.add("attached job", d.name, "%v", err)
	}
	if err := pdf.Write(&two, again.set, pdf.Options{}); err != nil {
		found.add("attached job", d.name, "%v", err)
	}
	if !bytes.Equal(one.Bytes(), two.Bytes()) {
		found.add("same job, same bytes", d.name, "a second making gives another file")
	}
}
