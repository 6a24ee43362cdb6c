// Package svg writes a sheet as one SVG file at its true size in millimetres:
// a group for each layer, an id for each member, and words that stay words,
// with the part of the lettering that they need carried inside.
//
// Lines carry no style of their own: the group of a layer holds one group for
// each pen. That keeps files small and lets a reader see in the text of the
// file what is what.
//
//	<g id="outline">
//	  <g stroke-width="0.35">
//	    <path id="R1" d="M20 30H140V35H20Z"/>
//
// Left out: colour, scripts, links (a file does not know the names of the
// others).
package svg

import (
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"io"

	"plumbcut/draw"
	"plumbcut/fonts"
)

// Write writes one sheet of the set. It returns an error, and writes nothing,
// when the sheet or the set's properties do not pass their Check.
func Write(w io.Writer, set *draw.Set, sheet *draw.Sheet) error {
	for _, err := range []error{set.Meta.Check(), sheet.Check()} {
		if err != nil {
			return fmt.Errorf("svg: %w", err)
		}
	}
	p := page{sheet: sheet, tall: sheet.Paper.Height, ids: map[string]int{}}
	p.head(set.Meta)
	p.marks()
	p.out = append(p.out, "</svg>\n"...)
	_, err := w.Write(p.out)
	return err
}

// page is a file in the making.
type page struct {
	sheet *draw.Sheet
	tall  float64 // SVG counts y downwards from the top edge
	out   []byte
	ids   map[string]int // taken, and the last number given to such a name
	path  []byte         // lines without an id, not yet written
}

// fallback is for viewers that ignore the lettering inside the file; each text
// then keeps its true length by its textLength.
const fallback = "Go,sans-serif"

func (p *page) head(m draw.Meta) {
	p.text(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	p.text(`<svg xmlns="http://www.w3.org/2000/svg" width="`)
	p.number(p.sheet.Paper.Width)
	p.text(`mm" height="`)
	p.number(p.sheet.Paper.Height)
	p.text(`mm" viewBox="0 0 `)
	p.number(p.sheet.Paper.Width)
	p.text(" ")
	p.number(p.sheet.Paper.Height)
	p.text(`" fill="none" stroke="#000" stroke-miterlimit="10">` + "\n<title>")
	p.escaped(p.sheet.Number + " " + p.sheet.Title)
	p.text("</title>\n")
	if m.Title != "" || m.Subject != "" {
		p.text("<desc>")
		p.escaped(m.Title)
		if m.Title != "" && m.Subject != "" {
			p.text(": ")
		}
		p.escaped(m.Subject)
		p.text("</desc>\n")
	}
	p.lettering()
	p.text(`<rect width="100%" height="100%" fill="#fff" stroke="none"/>` + "\n")
}

// lettering embeds the characters that the sheet uses.
func (p *page) lettering() {
	regular, bold := p.sheet.Characters()
	if len(regular)+len(bold) == 0 {
		return
	}
	p.text("<style>\n")
	p.face(fonts.Regular(), regular, "normal")
	p.face(fonts.Bold(), bold, "bold")
	p.text("</style>\n")
}

func (p *page) face(f *fonts.Face, chars []rune, weight string) {
	if len(chars) == 0 {
		return
	}
	p.text(`@font-face{font-family:Go;font-weight:` + weight + `;src:url(data:font/ttf;base64,`)
	p.out = base64.StdEncoding.AppendEncode(p.out, f.Subset(chars))
	p.text(")}\n")
}

func (p *page) text(s string)    { p.out = append(p.out, s...) }
func (p *page) number(v float64) { p.out = appendNumber(p.out, v) }

// decimals of a millimetre that are written.
const decimals = 3

func appendNumber(out []byte, v float64) []byte { return draw.AppendNumber(out, v, decimals) }

// escaped writes words so that no character of theirs is taken for markup.
func (p *page) escaped(s string) {
	// EscapeText fails only when its writer does, and this one cannot.
	_ = xml.EscapeText((*appender)(&p.out), []byte(s))
}

type appender []byte

func (a *appender) Write(b []byte) (int, error) {
	*a = append(*a, b...)
	return len(b), nil
}
