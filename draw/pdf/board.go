package pdf

import (
	"bytes"

	"github.com/go-pdf/fpdf"

	"plumbcut/draw"
	"plumbcut/fonts"
	"plumbcut/geom"
)

// pointsPerMM turns paper millimetres into the unit of a PDF page.
const pointsPerMM = 72 / 25.4

// decimals of a millimetre that are written: a micrometre is far under what
// any printer places.
const decimals = 3

const family = "go"

// board writes pages. The library keeps the pages, fonts and layers in order;
// lines are written by the board itself, in millimetres, so that they keep
// their precision and change the state of the pen only when they must.
type board struct {
	lib   *fpdf.Fpdf
	set   *draw.Set
	flat  bool
	links map[string]int // sheet number → link of the library
	out   []byte         // operators not yet handed to the library

	paper draw.Paper
	tall  float64 // height of the page in points
	pen   pen
}

// pen is the state of the page as last written.
type pen struct {
	width, tone float64
	dashed      bool
	bold        bool
}

func newBoard(set *draw.Set, opt Options) (*board, error) {
	day, err := set.Meta.Day()
	if err != nil {
		return nil, err
	}
	lib := fpdf.New("P", "pt", "A4", "")
	lib.SetCatalogSort(true)
	lib.SetCompression(false) // finish packs the pages
	lib.SetCreationDate(day)
	lib.SetModificationDate(day)
	lib.SetAutoPageBreak(false, 0)
	lib.SetProducer("Plumbcut", false)
	describe(lib, set.Meta)
	lib.SetDisplayMode("fullpage", "single")
	lettering(lib, set)

	b := &board{lib: lib, set: set, flat: opt.Flat, links: map[string]int{}}
	if !b.flat {
		for _, l := range draw.Layers() {
			lib.AddLayer(l.String(), true)
		}
	}
	for _, s := range set.Sheets {
		b.links[s.Number] = lib.AddLink()
	}
	return b, lib.Error()
}

// lettering adds the faces with the characters of the set alone: the library
// reads a whole face four times over, and would carry along the instructions
// for coarse screens.
func lettering(lib *fpdf.Fpdf, set *draw.Set) {
	var regular, bold []rune
	for _, s := range set.Sheets {
		r, b := s.Characters()
		regular, bold = append(regular, r...), append(bold, b...)
	}
	lib.AddUTF8FontFromBytes(family, "", fonts.Regular().Subset(regular))
	lib.AddUTF8FontFromBytes(family, "B", fonts.Bold().Subset(bold))
}

// describe sets the properties that the job gives.
func describe(lib *fpdf.Fpdf, m draw.Meta) {
	for _, p := range [...]struct {
		value string
		set   func(string, bool)
	}{{m.Title, lib.SetTitle}, {m.Subject, lib.SetSubject}, {m.Author, lib.SetAuthor}} {
		if p.value != "" {
			p.set(p.value, true)
		}
	}
}

// page draws one sheet.
func (b *board) page(s *draw.Sheet) {
	b.paper, b.tall = s.Paper, s.Paper.Height*pointsPerMM
	b.lib.AddPageFormat("P", fpdf.SizeType{Wd: s.Paper.Width * pointsPerMM, Ht: b.tall})
	b.lib.SetLink(b.links[s.Number], 0, -1)
	// A size of 1 for the letters: each text scales them by its own matrix.
	b.lib.SetFont(family, "", 1)
	// From here on the page is in millimetres. Caps are butt, joins mitre.
	b.out = append(b.out, "q 0 J 0 j 10 M "...)
	b.matrix(pointsPerMM, geom.P(pointsPerMM, 0), geom.P(0, 0))
	b.pen = pen{width: -1}

	layer := draw.Layer(-1)
	for _, g := range s.Groups() {
		if g.Layer != layer {
			b.layer(g.Layer)
			layer = g.Layer
		}
		for _, p := range g.Paths {
			b.path(p)
		}
		for _, t := range g.Texts {
			b.text(t)
		}
	}
	b.flush()
	b.lib.EndLayer()
	b.lib.RawWriteStr("Q")
}

func (b *board) layer(l draw.Layer) {
	if !b.flat {
		b.flush()
		b.lib.BeginLayer(int(l))
	}
}

// flush hands what was written so far to the library.
func (b *board) flush() {
	if len(b.out) > 0 {
		b.lib.RawWriteStr(string(b.out[:len(b.out)-1])) // it adds the last line end itself
		b.out = b.out[:0]
	}
}

// path paints one path: filled, stroked, or both.
func (b *board) path(p *draw.Path) {
	if len(p.Segs) == 0 {
		return
	}
	if p.Fill != nil {
		b.tone(1 - float64(*p.Fill))
		b.segs(p.Segs, p.Closed)
		b.op("f*")
	}
	if !p.Stroke {
		return
	}
	b.width(b.paper.LineWidth(p.Style.Pen))
	for _, st := range p.Strokes(b.paper) {
		b.dash(st.Pattern)
		b.segs(st.Segs, st.Closed)
		b.op("S")
	}
}

func (b *board) segs(segs []draw.Seg, closed bool) {
	for i, seg := range segs {
		switch seg.Op {
		case draw.Move:
			if closed && i > 0 {
				b.op("h")
			}
			b.point(seg.To)
			b.op("m")
		case draw.Line:
			b.point(seg.To)
			b.op("l")
		case draw.Curve:
			b.curve(seg)
		}
	}
	if closed {
		b.op("h")
	}
}

// curve ends exactly on seg.To, so that the next piece joins it.
func (b *board) curve(seg draw.Seg) {
	curves := draw.Beziers(seg.Arc)
	curves[len(curves)-1][2] = seg.To
	for _, c := range curves {
		for _, p := range c {
			b.point(p)
		}
		b.op("c")
	}
}

// text sets a line of words, and the link that lies on it.
func (b *board) text(t *draw.Text) {
	b.tone(0)
	if b.pen.bold != t.Bold {
		b.flush()
		b.lib.SetFont(family, map[bool]string{true: "B"}[t.Bold], 1)
		b.pen.bold = t.Bold
	}
	size := draw.FontSize(t.Height, t.Bold)
	b.out = append(b.out, "q "...)
	b.matrix(size, t.Dir().Mul(size), t.Origin())
	b.flush()
	b.lib.Text(0, b.tall, t.String) // at 0, 0 of the matrix
	b.out = append(b.out, "Q\n"...)
	if t.Link != "" {
		box := t.Box()
		b.lib.Link(box.X0*pointsPerMM, b.tall-box.Y1*pointsPerMM,
			box.W()*pointsPerMM, box.H()*pointsPerMM, b.links[t.Link])
	}
}

// matrix scales by size, turns x into the direction of along and moves to at.
func (b *board) matrix(size float64, along, at geom.Pt) {
	const exact = 7 // decimals: a scale is multiplied by whole sheets
	up := along.Left()
	for _, v := range [...]float64{along.X, along.Y, up.X, up.Y, at.X, at.Y} {
		b.number(v, exact)
	}
	b.op("cm")
}

func (b *board) width(w float64) {
	if b.pen.width != w {
		b.number(w, decimals)
		b.op("w")
		b.pen.width = w
	}
}

// tone sets the brightness of fills and letters: 0 is black.
func (b *board) tone(t float64) {
	if b.pen.tone != t {
		b.number(t, decimals)
		b.op("g")
		b.pen.tone = t
	}
}

func (b *board) dash(pattern []float64) {
	if pattern == nil && !b.pen.dashed {
		return
	}
	b.out = append(b.out, '[')
	for _, v := range pattern {
		b.number(v, decimals)
	}
	b.op("] 0 d")
	b.pen.dashed = pattern != nil
}

func (b *board) point(p geom.Pt) {
	b.number(p.X, decimals)
	b.number(p.Y, decimals)
}

func (b *board) number(v float64, places int) {
	b.out = append(draw.AppendNumber(b.out, v, places), ' ')
}

func (b *board) op(name string) {
	b.out = append(append(b.out, name...), '\n')
}

// bytes closes the file as the library writes it.
func (b *board) bytes() ([]byte, error) {
	var buf bytes.Buffer
	err := b.lib.Output(&buf)
	return buf.Bytes(), err
}
