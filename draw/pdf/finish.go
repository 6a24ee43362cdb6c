package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"unicode/utf16"

	"plumbcut/draw"
)

// finisher adds to a finished file what the library cannot write: bookmarks
// that land right when the sheets differ in size, page labels, the job file,
// the wish to be printed at true size, and an identifier.
//
// It also packs what is drawn on the pages, which the library is told to leave
// plain: one packer for all pages takes a fraction of the memory and time of the
// library's one for each.
//
// It relies on how the library lays a file out, and checks it: one plain
// cross-reference table at the end, the catalog as the last object before it,
// and page n (from 0) as object 3+2n with what is drawn on it as the next.
type finisher struct {
	out     []byte
	offsets []int // of the objects from 1 on
	press   press
}

var errLayout = errors.New("the library's file is not laid out as expected")

// version is written over that of the library: the viewer preferences used
// here are of PDF 1.7.
const version = "%PDF-1.7"

func finish(raw []byte, set *draw.Set, opt Options) ([]byte, error) {
	f, catalog, err := open(raw, len(set.Sheets))
	if err != nil {
		return nil, err
	}
	root := len(f.offsets) + 1 // the catalog, rewritten behind what it names
	f.offsets = append(f.offsets, 0)

	outlines := f.bookmarks(set)
	embedded := ""
	if !opt.Flat && set.Meta.JobText != nil {
		spec, err := f.attach(set.Meta)
		if err != nil {
			return nil, err
		}
		embedded = fmt.Sprintf("/Names <</EmbeddedFiles <</Names [%s %d 0 R]>>>>\n", textString(jobName(set.Meta)), spec)
	}
	f.offsets[root-1] = len(f.out)
	f.printf("%d 0 obj\n%s", root, catalog)
	f.printf("/Outlines %d 0 R\n/PageMode /UseOutlines\n", outlines)
	f.printf("/PageLabels <</Nums [%s]>>\n%s", labels(set), embedded)
	f.printf("/ViewerPreferences <</PrintScaling /None /PickTrayByPDFSize true%s>>\n>>\nendobj\n",
		map[bool]string{true: " /DisplayDocTitle true"}[set.Meta.Title != ""])
	f.close(root)
	return f.out, nil
}

// open reads the file up to its catalog and packs its pages. The catalog is
// returned as text that lacks its names, which are empty, and its end.
func open(raw []byte, pages int) (*finisher, string, error) {
	at := bytes.LastIndex(raw, []byte("startxref\n"))
	if at < 0 || !bytes.HasPrefix(raw, []byte(version[:7])) {
		return nil, "", errLayout
	}
	number, _, _ := bytes.Cut(raw[at+len("startxref\n"):], []byte("\n"))
	xref, err := strconv.Atoi(string(number))
	if err != nil || xref < 0 || xref > at {
		return nil, "", errLayout
	}
	lines := bytes.Split(raw[xref:at], []byte("\n"))
	f := &finisher{}
	// xref, the range, the free entry, then one line for each object
	for _, line := range lines[min(3, len(lines)):] {
		if len(line) < 18 || line[17] != 'n' {
			break
		}
		offset, err := strconv.Atoi(string(line[:10]))
		if err != nil || offset > xref {
			return nil, "", errLayout
		}
		f.offsets = append(f.offsets, offset)
	}
	if len(f.offsets) < 2 {
		return nil, "", errLayout
	}
	last := f.offsets[len(f.offsets)-1]
	catalog, names, ok := bytes.Cut(raw[last:xref], []byte("/Names <<"))
	_, body, isObject := bytes.Cut(catalog, []byte(" 0 obj\n"))
	if !ok || !isObject || !bytes.HasPrefix(body, []byte("<<\n/Type /Catalog\n")) || bytes.Contains(names, []byte(" R")) {
		return nil, "", errLayout
	}
	f.offsets = f.offsets[:len(f.offsets)-1]
	if err := f.pack(raw[:last], pages); err != nil {
		return nil, "", err
	}
	return f, string(body), nil
}

// pack copies the objects of a file, in their order, and packs those that are
// drawn on its pages.
func (f *finisher) pack(raw []byte, pages int) error {
	order := make([]int, len(f.offsets))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return f.offsets[a] - f.offsets[b] })
	f.out = make([]byte, 0, len(raw))
	f.out = append(f.out, version...)
	f.out = append(f.out, raw[len(version):f.offsets[order[0]]]...)
	for k, i := range order {
		end := len(raw)
		if k+1 < len(order) {
			end = f.offsets[order[k+1]]
		}
		object := raw[f.offsets[i]:end]
		f.offsets[i] = len(f.out)
		page, odd := (i+1-pageObject(0))/2, (i+1-pageObject(0))%2 == 1
		if page < 0 || page >= pages || !odd {
			f.out = append(f.out, object...)
			continue
		}
		head, rest, found := bytes.Cut(object, []byte(">>\nstream\n"))
		drawn, _, closed := bytes.Cut(rest, []byte("\nendstream\n"))
		if !found || !closed || bytes.Contains(head, []byte("/Filter")) {
			return errLayout
		}
		packed, err := f.press.pack(drawn)
		if err != nil {
			return err
		}
		f.printf("%d 0 obj\n<</Filter /FlateDecode /Length %d>>\nstream\n%s\nendstream\nendobj\n", i+1, len(packed), packed)
	}
	return nil
}

// press packs one thing after another. Its zero value is ready.
type press struct {
	out bytes.Buffer
	z   *zlib.Writer
}

// pack returns the packed bytes, which the next call overwrites. It is quick
// rather than thorough: the figures of a drawing hardly pack better with more effort.
func (p *press) pack(plain []byte) ([]byte, error) {
	p.out.Reset()
	if p.z == nil {
		z, err := zlib.NewWriterLevel(&p.out, zlib.BestSpeed)
		if err != nil {
			return nil, err
		}
		p.z = z
	}
	p.z.Reset(&p.out)
	_, err := p.z.Write(plain)
	err = errors.Join(err, p.z.Close())
	return p.out.Bytes(), err
}

func (f *finisher) printf(format string, args ...any) {
	f.out = fmt.Appendf(f.out, format, args...)
}

// object writes the next object and returns its number.
func (f *finisher) object(format string, args ...any) int {
	f.offsets = append(f.offsets, len(f.out))
	f.printf("%d 0 obj\n", len(f.offsets))
	f.printf(format, args...)
	f.printf("\nendobj\n")
	return len(f.offsets)
}

// bookmarks writes one for each sheet and returns the number of their root.
func (f *finisher) bookmarks(set *draw.Set) int {
	first := len(f.offsets) + 1
	n := len(set.Sheets)
	root := first + n
	for i, s := range set.Sheets {
		chain := ""
		if i > 0 {
			chain = fmt.Sprintf(" /Prev %d 0 R", first+i-1)
		}
		if i < n-1 {
			chain += fmt.Sprintf(" /Next %d 0 R", first+i+1)
		}
		f.object("<</Title %s /Parent %d 0 R%s /Dest [%d 0 R /Fit]>>", textString(s.Number+" "+s.Title), root, chain, pageObject(i))
	}
	return f.object("<</Type /Outlines /First %d 0 R /Last %d 0 R /Count %d>>", first, root-1, n)
}

func pageObject(i int) int { return 3 + 2*i }

func labels(set *draw.Set) string {
	var nums []byte
	for i, s := range set.Sheets {
		nums = fmt.Appendf(nums, "%d <</P %s>> ", i, textString(s.Number))
	}
	return string(bytes.TrimSpace(nums))
}

// attach writes the job file and returns the number of its description.
func (f *finisher) attach(m draw.Meta) (int, error) {
	packed, err := f.press.pack(m.JobText)
	if err != nil {
		return 0, err
	}
	stream := f.object("<</Type /EmbeddedFile /Filter /FlateDecode /Length %d /Params <</Size %d>>>>\nstream\n%s\nendstream",
		len(packed), len(m.JobText), packed)
	name := textString(jobName(m))
	return f.object("<</Type /Filespec /F %s /UF %s /EF <</F %d 0 R>>>>", name, name, stream), nil
}

func jobName(m draw.Meta) string {
	if m.JobFile == "" {
		return "job.yaml"
	}
	return m.JobFile
}

// textString is UTF-16 in hexadecimal, which needs no escaping.
func textString(s string) string {
	out := []byte("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		out = fmt.Appendf(out, "%04X", u)
	}
	return string(append(out, '>'))
}

// close writes the table of objects and the trailer. The identifier is a
// digest of all that stands before it.
func (f *finisher) close(root int) {
	id := sha256.Sum256(f.out)
	xref := len(f.out)
	f.printf("xref\n0 %d\n0000000000 65535 f \n", len(f.offsets)+1)
	for _, offset := range f.offsets {
		f.printf("%010d 00000 n \n", offset)
	}
	// The library writes its information dictionary just before its catalog.
	f.printf("trailer\n<</Size %d /Root %d 0 R /Info %d 0 R /ID [<%X> <%X>]>>\n", len(f.offsets)+1, root, root-1, id[:16], id[:16])
	f.printf("startxref\n%d\n%%%%EOF\n", xref)
}
