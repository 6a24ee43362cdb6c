package sheets_test

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf16"

	"plumbcut/geom"
)

// A reader of PDF that owes nothing to the writer: it knows the file format
// and no more. It reads the plain cross-reference tables of PDF 1.4 and the
// operators that draw lines.

// The values of PDF. Numbers are float64, strings and streams []byte.
type (
	pdfName string
	pdfRef  int
	pdfDict map[pdfName]any
	pdfFile struct {
		data    []byte
		offsets map[int]int
		trailer pdfDict
	}
	pdfStream struct {
		dict pdfDict
		data []byte
	}
	pdfOperator string
)

// openPDF reads the tables of a file, newest first.
func openPDF(data []byte) (*pdfFile, error) {
	f := &pdfFile{data: data, offsets: map[int]int{}, trailer: pdfDict{}}
	i := bytes.LastIndex(data, []byte("startxref"))
	if i < 0 {
		return nil, fmt.Errorf("no startxref")
	}
	at, ok := (&pdfLexer{in: data, at: i + len("startxref")}).next().(float64)
	for ok {
		lex := &pdfLexer{in: data, at: int(at)}
		if op, _ := lex.next().(pdfOperator); op != "xref" {
			return nil, fmt.Errorf("no table at %d", int(at))
		}
		lex.table(f.offsets)
		trailer, isDict := lex.next().(pdfDict)
		if !isDict {
			return nil, fmt.Errorf("no trailer after the table at %d", int(at))
		}
		for k, v := range trailer {
			if _, newer := f.trailer[k]; !newer {
				f.trailer[k] = v
			}
		}
		at, ok = trailer["Prev"].(float64)
	}
	return f, nil
}

// table reads the lines of a cross-reference table, up to the trailer.
func (l *pdfLexer) table(offsets map[int]int) {
	for {
		first, ok := l.next().(float64)
		if !ok {
			return // the word trailer
		}
		n, _ := l.next().(float64)
		for i := range int(n) {
			offset, _ := l.next().(float64)
			l.next()
			if used, _ := l.next().(pdfOperator); used == "n" {
				if _, newer := offsets[int(first)+i]; !newer {
					offsets[int(first)+i] = int(offset)
				}
			}
		}
	}
}

// get follows references to a value.
func (f *pdfFile) get(v any) any {
	ref, ok := v.(pdfRef)
	if !ok {
		return v
	}
	at, ok := f.offsets[int(ref)]
	if !ok {
		return nil
	}
	lex := &pdfLexer{in: f.data, at: at}
	no, _ := lex.next().(float64)
	lex.next()
	if op, _ := lex.next().(pdfOperator); int(no) != int(ref) || op != "obj" {
		return nil
	}
	v = lex.next()
	dict, ok := v.(pdfDict)
	if !ok {
		return f.get(v)
	}
	if op, _ := lex.next().(pdfOperator); op != "stream" {
		return dict
	}
	return f.stream(dict, lex.at)
}

func (f *pdfFile) stream(dict pdfDict, at int) any {
	for f.data[at] != '\n' {
		at++
	}
	n, _ := f.get(dict["Length"]).(float64)
	raw := f.data[at+1 : at+1+int(n)]
	if dict["Filter"] == nil {
		return pdfStream{dict, raw}
	}
	r, err := zlib.NewReader(bytes.NewReader(raw))
	if err != nil {
		return nil
	}
	data, err := io.ReadAll(r)
	if err != nil {
		return nil
	}
	return pdfStream{dict, data}
}

func (f *pdfFile) dict(v any) pdfDict {
	switch d := f.get(v).(type) {
	case pdfDict:
		return d
	case pdfStream:
		return d.dict
	}
	return nil
}

func (f *pdfFile) array(v any) []any {
	a, _ := f.get(v).([]any)
	return a
}

func (f *pdfFile) root() pdfDict { return f.dict(f.trailer["Root"]) }

// pages lists the pages, as references, in order.
func (f *pdfFile) pages() []pdfRef {
	var out []pdfRef
	var walk func(v any)
	walk = func(v any) {
		d := f.dict(v)
		if kids := f.array(d["Kids"]); kids != nil {
			for _, k := range kids {
				walk(k)
			}
			return
		}
		if ref, ok := v.(pdfRef); ok {
			out = append(out, ref)
		}
	}
	walk(f.root()["Pages"])
	return out
}

// text decodes a text string: UTF-16 with its mark, or bytes.
func (f *pdfFile) text(v any) string {
	b, _ := f.get(v).([]byte)
	if !bytes.HasPrefix(b, []byte{0xfe, 0xff}) {
		return string(b)
	}
	var u []uint16
	for i := 2; i+1 < len(b); i += 2 {
		u = append(u, uint16(b[i])<<8|uint16(b[i+1]))
	}
	return string(utf16.Decode(u))
}

// pdfLexer reads values. At the end of its input next gives nil.
type pdfLexer struct {
	in []byte
	at int
}

const (
	pdfSpace = " \t\r\n\f\x00"
	pdfDelim = "()<>[]{}/%" + pdfSpace
)

// next reads a value: a reference counts as one.
func (l *pdfLexer) next() any {
	v := l.token()
	if n, ok := v.(float64); ok && n >= 0 && n == float64(int(n)) {
		was := l.at
		if g, ok := l.token().(float64); ok && g == 0 {
			if op, _ := l.token().(pdfOperator); op == "R" {
				return pdfRef(n)
			}
		}
		l.at = was
	}
	return v
}

func (l *pdfLexer) token() any {
	for l.at < len(l.in) && strings.IndexByte(pdfSpace, l.in[l.at]) >= 0 {
		l.at++
	}
	if l.at >= len(l.in) {
		return nil
	}
	switch c := l.in[l.at]; {
	case c == '%':
		for l.at < len(l.in) && l.in[l.at] != '\n' {
			l.at++
		}
		return l.token()
	case c == '/':
		l.at++
		return pdfName(l.word())
	case c == '(':
		return l.literal()
	case c == '[':
		l.at++
		return l.values()
	case bytes.HasPrefix(l.in[l.at:], []byte("<<")):
		l.at += 2
		return pairs(l.values())
	case bytes.HasPrefix(l.in[l.at:], []byte(">>")):
		l.at += 2
		return pdfOperator(">>")
	case c == '<':
		return l.hex()
	case strings.IndexByte(pdfDelim, c) >= 0:
		l.at++
		return pdfOperator(string(c))
	}
	w := l.word()
	if n, err := strconv.ParseFloat(w, 64); err == nil {
		return n
	}
	return pdfOperator(w)
}

func (l *pdfLexer) word() string {
	from := l.at
	for l.at < len(l.in) && strings.IndexByte(pdfDelim, l.in[l.at]) < 0 {
		l.at++
	}
	return string(l.in[from:l.at])
}

// values reads up to the end of an array or a dictionary.
func (l *pdfLexer) values() []any {
	out := []any{}
	for {
		v := l.next()
		if op, ok := v.(pdfOperator); v == nil || ok && (op == "]" || op == ">>") {
			return out
		}
		out = append(out, v)
	}
}

func pairs(vs []any) pdfDict {
	d := pdfDict{}
	for i := 0; i+1 < len(vs); i += 2 {
		if k, ok := vs[i].(pdfName); ok {
			d[k] = vs[i+1]
		}
	}
	return d
}

func (l *pdfLexer) hex() []byte {
	end := l.at + bytes.IndexByte(l.in[l.at:], '>')
	digits := string(l.in[l.at+1 : end])
	l.at = end + 1
	var out []byte
	for i := 0; i+1 < len(digits); i += 2 {
		b, _ := strconv.ParseUint(digits[i:i+2], 16, 8)
		out = append(out, byte(b))
	}
	return out
}

func (l *pdfLexer) literal() []byte {
	var out []byte
	depth := 0
	for ; l.at < len(l.in); l.at++ {
		c := l.in[l.at]
		switch {
		case c == '\\':
			l.at++
			out = append(out, unescaped(l.in[l.at]))
			continue
		case c == '(':
			if depth++; depth == 1 {
				continue
			}
		case c == ')':
			if depth--; depth == 0 {
				l.at++
				return out
			}
		}
		out = append(out, c)
	}
	return out
}

func unescaped(c byte) byte {
	switch c {
	case 'n':
		return '\n'
	case 'r':
		return '\r'
	case 't':
		return '\t'
	}
	return c
}

// ink is a piece of a line as a file has it, in mm from the bottom left corner
// of the paper.
type ink struct {
	a, b   geom.Pt
	width  float64 // 0: it bounds a filled area
	layer  string
	dashes []float64 // the pattern of its line, mm; nil: solid
	alone  bool      // it is a path of its own
	curved bool      // it bends towards two points on its way
	bend   [2]geom.Pt
}

const mmPerPoint = 25.4 / 72 // of PDF: 72 to the inch

// inkOf reads the lines of a page.
func (f *pdfFile) inkOf(page pdfRef) []ink { return f.paint(page).out }

// paint follows the operators of a page to its end.
func (f *pdfFile) paint(page pdfRef) *painter {
	d := f.dict(page)
	content, _ := f.get(d["Contents"]).(pdfStream)
	p := &painter{state: state{ctm: [6]float64{mmPerPoint, 0, 0, mmPerPoint, 0, 0}, width: 1}, fonts: f.fonts(d)}
	layers := f.dict(f.dict(d["Resources"])["Properties"])
	p.layerName = func(n pdfName) string { return f.text(f.dict(layers[n])["Name"]) }
	lex := &pdfLexer{in: content.data}
	var args []any
	for {
		switch v := lex.token().(type) {
		case nil:
			return p
		case pdfOperator:
			p.do(string(v), args)
			args = args[:0]
		default:
			args = append(args, v)
		}
	}
}

// state is the part of the graphics state that q saves.
type state struct {
	ctm       [6]float64
	width     float64
	dashes    []float64
	cap, join float64
	face      *pdfFont
	size      float64
}

// painter follows the operators of a page.
type painter struct {
	state
	saved     []state
	layerName func(pdfName) string
	layers    []string
	start, at geom.Pt
	path      []ink
	out       []ink
	fonts     map[pdfName]*pdfFont
	text      geom.Pt // where the next words begin, in their own units
	words     []lettering
	rounded   int // lines with other than butt ends and mitred corners
}

func numbers(args []any) []float64 {
	var n []float64
	for _, a := range args {
		v, _ := a.(float64)
		n = append(n, v)
	}
	return n
}

func (p *painter) do(op string, args []any) {
	n := numbers(args)
	switch op {
	case "q":
		p.saved = append(p.saved, p.state)
	case "Q":
		p.state, p.saved = p.saved[len(p.saved)-1], p.saved[:len(p.saved)-1]
	case "cm":
		p.ctm = times([6]float64(n), p.ctm)
	case "w":
		p.width = n[0]
	case "d":
		pattern, _ := args[0].([]any)
		p.dashes = numbers(pattern)
	case "J":
		p.cap = n[0]
	case "j":
		p.join = n[0]
	case "BT", "Tf", "Td", "Tj":
		p.letter(op, args)
	case "BDC", "BMC":
		name, _ := args[len(args)-1].(pdfName)
		p.layers = append(p.layers, p.layerName(name))
	case "EMC":
		p.layers = p.layers[:len(p.layers)-1]
	case "m":
		p.at = p.to(n[0], n[1])
		p.start = p.at
	case "l":
		p.line(p.to(n[0], n[1]), false)
	case "c":
		p.line(p.to(n[4], n[5]), true)
		if last := len(p.path) - 1; last >= 0 {
			p.path[last].bend = [2]geom.Pt{p.to(n[0], n[1]), p.to(n[2], n[3])}
		}
	case "h":
		p.line(p.start, false)
	case "re":
		p.rectangle(n)
	case "S", "s", "B", "B*", "b", "b*":
		p.paint(p.width * p.scale())
	case "f", "f*", "F":
		p.paint(0)
	case "n":
		p.path = nil
	}
}

func (p *painter) rectangle(n []float64) {
	p.start = p.to(n[0], n[1])
	p.at = p.start
	for _, q := range []geom.Pt{p.to(n[0]+n[2], n[1]), p.to(n[0]+n[2], n[1]+n[3]), p.to(n[0], n[1]+n[3]), p.start} {
		p.line(q, false)
	}
}

func (p *painter) line(to geom.Pt, curved bool) {
	if to != p.at {
		p.path = append(p.path, ink{a: p.at, b: to, curved: curved})
	}
	p.at = to
}

func (p *painter) paint(width float64) {
	layer := ""
	if len(p.layers) > 0 {
		layer = p.layers[len(p.layers)-1]
	}
	var dashes []float64
	for _, d := range p.dashes {
		dashes = append(dashes, d*p.scale())
	}
	if width > 0 && (p.cap != 0 || p.join != 0) {
		p.rounded++
	}
	for _, s := range p.path {
		s.width, s.layer, s.dashes, s.alone = width, layer, dashes, len(p.path) == 1
		p.out = append(p.out, s)
	}
	p.path = nil
}

// times is what m does, then n.
func times(m, n [6]float64) [6]float64 {
	return [6]float64{
		m[0]*n[0] + m[1]*n[2], m[0]*n[1] + m[1]*n[3],
		m[2]*n[0] + m[3]*n[2], m[2]*n[1] + m[3]*n[3],
		m[4]*n[0] + m[5]*n[2] + n[4], m[4]*n[1] + m[5]*n[3] + n[5],
	}
}

func (p *painter) to(x, y float64) geom.Pt {
	return geom.P(x*p.ctm[0]+y*p.ctm[2]+p.ctm[4], x*p.ctm[1]+y*p.ctm[3]+p.ctm[5])
}

// scale is how much longer a length gets.
func (p *painter) scale() float64 { return geom.P(p.ctm[0], p.ctm[1]).Len() }
