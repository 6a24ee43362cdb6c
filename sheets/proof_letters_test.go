package sheets_test

import (
	"math"
	"strings"
	"unicode/utf16"

	"plumbcut/geom"
)

// pdfFont is what a file says of a font: widths of letters and heights, in
// parts of its size.
type pdfFont struct {
	name        string
	bold        bool
	width       map[uint16]float64
	other       float64 // the width of letters that are not listed
	tall, below float64
}

// fonts reads the fonts of a page.
func (f *pdfFile) fonts(page pdfDict) map[pdfName]*pdfFont {
	const units = 1000 // of the widths and heights, to the size
	out := map[pdfName]*pdfFont{}
	for name, v := range f.dict(f.dict(page["Resources"])["Font"]) {
		under := f.array(f.dict(v)["DescendantFonts"])
		if len(under) == 0 {
			continue
		}
		d := f.dict(under[0])
		about := f.dict(d["FontDescriptor"])
		base, _ := f.get(d["BaseFont"]).(pdfName)
		flags, _ := f.get(about["Flags"]).(float64)
		const forceBold = 1 << 18
		font := &pdfFont{name: string(base), bold: int(flags)&forceBold != 0, width: map[uint16]float64{}}
		heights := numbers([]any{d["DW"], about["CapHeight"], about["Descent"]})
		font.other, font.tall, font.below = heights[0]/units, heights[1]/units, -heights[2]/units
		list := f.array(d["W"])
		for i := 0; i+1 < len(list); {
			first, _ := list[i].(float64)
			if each, ok := list[i+1].([]any); ok {
				for k, w := range numbers(each) {
					font.width[uint16(first)+uint16(k)] = w / units
				}
				i += 2
				continue
			}
			n := numbers(list[i : i+3])
			for c := n[0]; c <= n[1]; c++ {
				font.width[uint16(c)] = n[2] / units
			}
			i += 3
		}
		out[name] = font
	}
	return out
}

// lettering is a line of words as a file sets it, in mm from the bottom left
// corner of the paper.
type lettering struct {
	text   string
	at     geom.Pt // where its baseline begins
	dir    geom.Pt // which way it reads, of length 1
	long   float64 // along the baseline: the advances of its letters
	tall   float64 // of its capitals
	below  float64 // how far letters reach below the baseline
	bold   bool
	layer  string
	corner [4]geom.Pt // of its box, from where it begins, anticlockwise
}

// hanging are the letters of the font that reach below the baseline as far as
// its descent; slanting those that reach down a third of that.
const hanging, slanting = "gjpqyJQ,;()[]{}|", "/\\_$"

func (p *painter) letter(op string, args []any) {
	switch op {
	case "BT":
		p.text = geom.P(0, 0)
	case "Tf":
		name, _ := args[0].(pdfName)
		p.face, p.size = p.fonts[name], numbers(args)[1]
	case "Td":
		n := numbers(args)
		p.text = p.text.Add(geom.P(n[0], n[1]))
	case "Tj":
		code, _ := args[0].([]byte)
		if p.face == nil {
			return
		}
		var u []uint16
		long := 0.0
		for i := 0; i+1 < len(code); i += 2 {
			c := uint16(code[i])<<8 | uint16(code[i+1])
			u = append(u, c)
			w, ok := p.face.width[c]
			if !ok {
				w = p.face.other
			}
			long += w
		}
		w := lettering{text: string(utf16.Decode(u)), at: p.to(p.text.X, p.text.Y), bold: p.face.bold}
		if len(p.layers) > 0 {
			w.layer = p.layers[len(p.layers)-1]
		}
		scale := p.size * p.scale()
		w.dir = p.to(p.text.X+1, p.text.Y).Sub(w.at).Unit()
		w.long, w.tall = long*scale, p.face.tall*scale
		switch {
		case strings.ContainsAny(w.text, hanging):
			w.below = p.face.below * scale
		case strings.ContainsAny(w.text, slanting):
			w.below = p.face.below * scale / 3
		}
		up := w.dir.Left()
		a, b := w.at.Sub(up.Mul(w.below)), w.at.Add(up.Mul(w.tall))
		along := w.dir.Mul(w.long)
		w.corner = [4]geom.Pt{a, a.Add(along), b.Add(along), b}
		p.words = append(p.words, w)
	}
}

// way is the angle at which it reads, degrees from level.
func (w lettering) slope() float64 { return math.Atan2(w.dir.Y, w.dir.X) * 180 / math.Pi }

// gap is the distance between the boxes of two lines of words; 0 where they
// overlap.
func (w lettering) gap(v lettering) float64 {
	for _, a := range w.corner {
		if v.holds(a) {
			return 0
		}
	}
	least := math.Inf(1)
	for i := range 4 {
		least = min(least, v.toLine(w.corner[i], w.corner[(i+1)%4]))
	}
	return least
}

// holds reports whether a point lies in the box.
func (w lettering) holds(p geom.Pt) bool {
	for i, a := range w.corner {
		if w.corner[(i+1)%4].Sub(a).Cross(p.Sub(a)) < 0 {
			return false
		}
	}
	return true
}

// toLine is the distance of the box from a straight line; 0 where it meets it.
func (w lettering) toLine(a, b geom.Pt) float64 {
	if w.holds(a) || w.holds(b) {
		return 0
	}
	least := math.Inf(1)
	for i, c := range w.corner {
		d := w.corner[(i+1)%4]
		if crosses(a, b, c, d) {
			return 0
		}
		least = min(least, fromLine(a, c, d), fromLine(b, c, d), fromLine(c, a, b), fromLine(d, a, b))
	}
	return least
}

// crosses reports whether two straight lines cross.
func crosses(a, b, c, d geom.Pt) bool {
	side := func(p, q, r geom.Pt) float64 { return q.Sub(p).Cross(r.Sub(p)) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// fromLine is the distance of a point from a straight line between two others.
func fromLine(p, a, b geom.Pt) float64 {
	along := b.Sub(a)
	n := along.Dot(along)
	if n == 0 {
		return p.Sub(a).Len()
	}
	t := max(0, min(1, p.Sub(a).Dot(along)/n))
	return p.Sub(a.Add(along.Mul(t))).Len()
}
