package template_test

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"unicode/utf16"

	"plumbcut/geom"
)

// A reader of the templates' PDF that owes nothing to the program but the file
// format: pages as lines, circles, areas and words, in millimetres.

type sheetOfPaper struct {
	w, h    float64
	lines   []line
	circles []disc
	areas   []area
	words   []word
}

type line struct {
	a, b   geom.Pt
	width  float64
	dashes int // numbers in its pattern: 0 solid, 2 dashed, 4 chain
	dash   float64
}

type disc struct {
	c     geom.Pt
	r     geom.Pt // half-axes, across and up
	width float64
	whole bool
}

type area struct {
	pts   []geom.Pt
	black bool
}

type word struct {
	at     geom.Pt
	height float64 // of the em
	turned bool
	text   string
}

var (
	objectStart = regexp.MustCompile(`(?:^|\n)(\d+) 0 obj\n`)
	contentsRef = regexp.MustCompile(`/Contents (\d+) 0 R`)
	mediaBox    = regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`)
	kidsList    = regexp.MustCompile(`(?s)/Kids \[(.*?)\]`)
	reference   = regexp.MustCompile(`(\d+) 0 R`)
)

// readPages reads every page of a file.
func readPages(data []byte) ([]sheetOfPaper, error) {
	objects := map[string][]byte{}
	at := objectStart.FindAllSubmatchIndex(data, -1)
	for i, m := range at {
		end := len(data)
		if i+1 < len(at) {
			end = at[i+1][0]
		}
		objects[string(data[m[2]:m[3]])] = data[m[1]:end]
	}
	kids := kidsList.FindSubmatch(data)
	if kids == nil {
		return nil, fmt.Errorf("no list of pages")
	}
	var out []sheetOfPaper
	for _, ref := range reference.FindAllSubmatch(kids[1], -1) {
		page := objects[string(ref[1])]
		box, contents := mediaBox.FindSubmatch(page), contentsRef.FindSubmatch(page)
		if box == nil || contents == nil {
			return nil, fmt.Errorf("page %s has no box or no contents", ref[1])
		}
		content, err := inflated(objects[string(contents[1])])
		if err != nil {
			return nil, err
		}
		p := reader{sheet: sheetOfPaper{w: number(box[1]) * mmPerPoint, h: number(box[2]) * mmPerPoint}}
		p.m = [6]float64{mmPerPoint, 0, 0, mmPerPoint, 0, 0}
		p.read(content)
		out = append(out, p.sheet)
	}
	return out, nil
}

const mmPerPoint = 25.4 / 72

func number(b []byte) float64 {
	v, _ := strconv.ParseFloat(string(b), 64)
	return v
}

func inflated(object []byte) ([]byte, error) {
	_, packed, ok := bytes.Cut(object, []byte("stream\n"))
	if !ok {
		return nil, fmt.Errorf("contents without a stream")
	}
	z, err := zlib.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, err
	}
	return io.ReadAll(z)
}

// reader follows the operators of a page.
type reader struct {
	sheet sheetOfPaper
	m     [6]float64
	saved [][6]float64
	width float64
	tone  float64
	dash  []float64
	path  []geom.Pt // corners, and the ends of curves
	curve bool
	args  []float64
	text  []byte
	list  []float64
	open  bool
}

func (p *reader) to(x, y float64) geom.Pt {
	return geom.P(x*p.m[0]+y*p.m[2]+p.m[4], x*p.m[1]+y*p.m[3]+p.m[5])
}

func (p *reader) read(content []byte) {
	for i := 0; i < len(content); {
		switch c := content[i]; {
		case c == ' ' || c == '\n' || c == '\r':
			i++
		case c == '[':
			p.open, p.list = true, nil
			i++
		case c == ']':
			p.open = false
			i++
		case c == '(':
			i = p.string(content, i+1)
		default:
			j := i + 1
			for j < len(content) && !bytes.ContainsRune([]byte(" \n\r[]()"), rune(content[j])) {
				j++
			}
			p.token(string(content[i:j]))
			i = j
		}
	}
}

// string reads a literal up to its closing bracket and returns what follows.
func (p *reader) string(b []byte, i int) int {
	p.text = nil
	for depth := 1; ; i++ {
		switch b[i] {
		case '\\':
			i++
			if r, ok := map[byte]byte{'n': '\n', 'r': '\r', 't': '\t'}[b[i]]; ok {
				p.text = append(p.text, r)
				continue
			}
		case '(':
			depth++
		case ')':
			if depth--; depth == 0 {
				return i + 1
			}
		}
		p.text = append(p.text, b[i])
	}
}

func (p *reader) token(t string) {
	if v, err := strconv.ParseFloat(t, 64); err == nil {
		if p.open {
			p.list = append(p.list, v)
		} else {
			p.args = append(p.args, v)
		}
		return
	}
	a := p.args
	switch t {
	case "q":
		p.saved = append(p.saved, p.m)
	case "Q":
		p.m, p.saved = p.saved[len(p.saved)-1], p.saved[:len(p.saved)-1]
	case "cm":
		n := p.m
		p.m = [6]float64{
			a[0]*n[0] + a[1]*n[2], a[0]*n[1] + a[1]*n[3], a[2]*n[0] + a[3]*n[2], a[2]*n[1] + a[3]*n[3],
			a[4]*n[0] + a[5]*n[2] + n[4], a[4]*n[1] + a[5]*n[3] + n[5],
		}
	case "w":
		p.width = a[0]
	case "g":
		p.tone = a[0]
	case "d":
		p.dash = p.list
	case "m":
		p.path, p.curve = []geom.Pt{p.to(a[0], a[1])}, false
	case "l":
		p.path = append(p.path, p.to(a[0], a[1]))
	case "c":
		p.path, p.curve = append(p.path, p.to(a[4], a[5])), true
	case "h":
		p.path = append(p.path, p.path[0])
	case "S":
		p.stroke()
	case "f*":
		p.sheet.areas = append(p.sheet.areas, area{p.path, p.tone == 0})
		p.path = nil
	case "Tj":
		p.word()
	}
	p.args = nil
}

func (p *reader) stroke() {
	unit := geom.P(p.m[0], p.m[1]).Len()
	if p.curve {
		p.circle(p.width * unit)
		return
	}
	for i := 1; i < len(p.path); i++ {
		l := line{a: p.path[i-1], b: p.path[i], width: p.width * unit, dashes: len(p.dash)}
		if len(p.dash) > 0 {
			l.dash = p.dash[0] * unit
		}
		if l.a != l.b {
			p.sheet.lines = append(p.sheet.lines, l)
		}
	}
}

// circle reads a full circle, or ellipse along the page, off the ends of its
// curves.
func (p *reader) circle(width float64) {
	d := disc{width: width, whole: p.path[0] == p.path[len(p.path)-1]}
	lo, hi := p.path[0], p.path[0]
	for _, q := range p.path {
		lo, hi = geom.P(min(lo.X, q.X), min(lo.Y, q.Y)), geom.P(max(hi.X, q.X), max(hi.Y, q.Y))
	}
	d.c, d.r = lo.Lerp(hi, 0.5), hi.Sub(lo).Mul(0.5)
	p.sheet.circles = append(p.sheet.circles, d)
}

func (p *reader) word() {
	var u []uint16
	for i := 0; i+1 < len(p.text); i += 2 {
		u = append(u, uint16(p.text[i])<<8|uint16(p.text[i+1]))
	}
	up := geom.P(p.m[2], p.m[3])
	p.sheet.words = append(p.sheet.words, word{
		at: p.to(0, 0), height: up.Len(), turned: math.Abs(up.X) > math.Abs(up.Y), text: string(utf16.Decode(u)),
	})
}
