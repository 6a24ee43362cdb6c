package svg

import (
	"math"
	"strconv"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
)

// marks writes the layers in the order of painting.
func (p *page) marks() {
	for _, l := range draw.Layers() {
		p.ids[l.String()] = 1
	}
	layer := draw.Layer(-1)
	for _, g := range p.sheet.Groups() {
		if g.Layer != layer {
			if layer >= 0 {
				p.text("</g>\n")
			}
			p.text(`<g id="` + g.Layer.String() + `">` + "\n")
			layer = g.Layer
		}
		p.group(g)
	}
	if layer >= 0 {
		p.text("</g>\n")
	}
}

func (p *page) group(g draw.Group) {
	switch {
	case len(g.Texts) > 0:
		p.words(g.Texts)
	case g.Fills:
		p.text(`<g stroke="none" fill-rule="evenodd">` + "\n")
		for _, path := range g.Paths {
			p.fill(path)
		}
		p.text("</g>\n")
	default:
		p.text(`<g stroke-width="`)
		p.number(p.sheet.Paper.LineWidth(g.Paths[0].Style.Pen))
		p.text(`">` + "\n")
		for _, path := range g.Paths {
			p.stroke(path)
		}
		p.flush()
		p.text("</g>\n")
	}
}

// stroke writes a line. Solid ones without an id are gathered into one path.
func (p *page) stroke(path *draw.Path) {
	if !path.Stroke {
		return
	}
	for _, st := range path.Strokes(p.sheet.Paper) {
		if len(st.Segs) < 2 {
			continue
		}
		if path.ID == "" && st.Pattern == nil {
			p.path = p.segs(p.path, st.Segs, st.Closed)
			continue
		}
		p.flush()
		p.open("path", path.ID)
		p.pattern(st.Pattern)
		p.data(st.Segs, st.Closed)
	}
}

// flush writes the lines gathered so far.
func (p *page) flush() {
	if len(p.path) > 0 {
		p.text(`<path d="`)
		p.out = append(p.out, p.path...)
		p.text(`"/>` + "\n")
		p.path = p.path[:0]
	}
}

// fill writes an area, and its outline if that is stroked.
func (p *page) fill(path *draw.Path) {
	if len(path.Segs) < 2 {
		return
	}
	p.open("path", path.ID)
	p.text(` fill="`)
	grey := uint64(math.Round(255 * (1 - float64(*path.Fill))))
	hex := strconv.FormatUint(0x100|grey, 16)[1:]
	p.text("#" + hex + hex + hex + `"`)
	p.data(path.Segs, path.Closed)
	if !path.Stroke {
		return
	}
	for _, st := range path.Strokes(p.sheet.Paper) {
		p.text(`<path stroke="#000" stroke-width="`)
		p.number(p.sheet.Paper.LineWidth(path.Style.Pen))
		p.text(`"`)
		p.pattern(st.Pattern)
		p.data(st.Segs, st.Closed)
	}
}

func (p *page) pattern(pattern []float64) {
	if pattern == nil {
		return
	}
	p.text(` stroke-dasharray="`)
	for i, v := range pattern {
		if i > 0 {
			p.text(" ")
		}
		p.number(v)
	}
	p.text(`"`)
}

// data writes the course of a path and ends its element.
func (p *page) data(segs []draw.Seg, closed bool) {
	p.text(` d="`)
	p.out = p.segs(p.out, segs, closed)
	p.text(`"/>` + "\n")
}

func (p *page) segs(out []byte, segs []draw.Seg, closed bool) []byte {
	var at geom.Pt
	for i, seg := range segs {
		switch {
		case seg.Op == draw.Move:
			if closed && i > 0 {
				out = append(out, 'Z')
			}
			out = p.point(append(out, 'M'), seg.To)
		case seg.Op == draw.Curve:
			out = p.curve(out, seg)
		case seg.To.Y == at.Y:
			out = appendNumber(append(out, 'H'), seg.To.X)
		case seg.To.X == at.X:
			out = appendNumber(append(out, 'V'), p.tall-seg.To.Y)
		default:
			out = p.point(append(out, 'L'), seg.To)
		}
		at = seg.To
	}
	if closed {
		out = append(out, 'Z')
	}
	return out
}

// curve ends exactly on seg.To, so that the next piece joins it.
func (p *page) curve(out []byte, seg draw.Seg) []byte {
	curves := draw.Beziers(seg.Arc)
	curves[len(curves)-1][2] = seg.To
	for i, c := range curves {
		for j, q := range c {
			sep := byte(' ')
			if i == 0 && j == 0 {
				sep = 'C'
			}
			out = p.point(append(out, sep), q)
		}
	}
	return out
}

func (p *page) point(out []byte, at geom.Pt) []byte {
	out = append(appendNumber(out, at.X), ' ')
	return appendNumber(out, p.tall-at.Y)
}

// words writes texts of one face and height.
func (p *page) words(texts []*draw.Text) {
	first := texts[0]
	p.text(`<g font-family="` + fallback + `" font-size="`)
	p.number(draw.FontSize(first.Height, first.Bold))
	if first.Bold {
		p.text(`" font-weight="bold`)
	}
	p.text(`" fill="#000" stroke="none">` + "\n")
	for _, t := range texts {
		p.word(t)
	}
	p.text("</g>\n")
}

func (p *page) word(t *draw.Text) {
	at := t.Origin()
	p.open("text", t.ID)
	p.text(` x="`)
	p.number(at.X)
	p.text(`" y="`)
	p.number(p.tall - at.Y)
	p.text(`" textLength="`)
	p.number(t.Width())
	p.text(`" lengthAdjust="spacingAndGlyphs"`)
	if t.Turn != 0 {
		p.text(` transform="rotate(`)
		p.number(-t.Turn * 180 / math.Pi)
		p.text(" ")
		p.out = p.point(p.out, at)
		p.text(`)"`)
	}
	if strings.Contains(t.String, "  ") || strings.Trim(t.String, " ") != t.String {
		p.text(` xml:space="preserve"`)
	}
	p.text(">")
	p.escaped(t.String)
	p.text("</text>\n")
}

// open starts an element, with an id made of the given name if there is one.
func (p *page) open(element, name string) {
	p.text("<" + element)
	if name != "" {
		p.text(` id="` + p.id(name) + `"`)
	}
}

// id makes a name fit for XML and for once in the file: R1, R1-2, R1-3.
func (p *page) id(name string) string {
	base := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '_', r == '.', r == '-':
			return r
		}
		return '-'
	}, name)
	if c := base[0]; c == '-' || c == '.' || c >= '0' && c <= '9' {
		base = "_" + base
	}
	id, n := base, p.ids[base]
	for taken := n > 0; taken; taken = p.ids[id] > 0 {
		n++
		id = base + "-" + strconv.Itoa(n)
	}
	p.ids[base] = max(n, 1)
	p.ids[id] = max(p.ids[id], 1)
	return id
}
