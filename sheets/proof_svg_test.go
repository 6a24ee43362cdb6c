package sheets_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"strconv"
	"strings"

	"plumbcut/geom"
)

// A reader of SVG that owes nothing to the writer: XML, the size of the page,
// inherited widths of lines, and the path data that this project's files use.

// svgPage is what an SVG file holds of a sheet.
type svgPage struct {
	width, height float64 // of the page, mm
	ink           []ink
	words         []string
}

// svgGroup is what an element passes on to those within it.
type svgGroup struct {
	name, layer string
	width       float64
}

// readSVG reads a file. Lines outside every layer are left out: the white
// ground of the page.
func readSVG(data []byte) (svgPage, error) {
	var page svgPage
	groups := []svgGroup{{}}
	d := xml.NewDecoder(bytes.NewReader(data))
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return page, nil
		}
		if err != nil {
			return page, err
		}
		switch e := tok.(type) {
		case xml.StartElement:
			g := groups[len(groups)-1]
			g.name = e.Name.Local
			if err := page.element(e, &g); err != nil {
				return page, fmt.Errorf("<%s>: %w", g.name, err)
			}
			groups = append(groups, g)
		case xml.EndElement:
			groups = groups[:len(groups)-1]
		case xml.CharData:
			if groups[len(groups)-1].name == "text" {
				page.words = append(page.words, string(e))
			}
		}
	}
}

func (page *svgPage) element(e xml.StartElement, g *svgGroup) error {
	attr := map[string]string{}
	for _, a := range e.Attr {
		attr[a.Name.Local] = a.Value
	}
	if _, turned := attr["transform"]; turned && g.name != "text" {
		return fmt.Errorf("has a transform, which this reader does not follow")
	}
	if w, ok := attr["stroke-width"]; ok {
		v, err := strconv.ParseFloat(w, 64)
		if err != nil {
			return err
		}
		g.width = v
	}
	switch g.name {
	case "svg":
		return page.size(attr)
	case "g":
		if g.layer == "" {
			g.layer = attr["id"]
		}
	case "path":
		return page.path(attr, *g)
	}
	return nil
}

// size reads the page, which must be in true millimetres.
func (page *svgPage) size(attr map[string]string) error {
	if _, err := fmt.Sscanf(attr["width"]+" "+attr["height"], "%gmm %gmm", &page.width, &page.height); err != nil {
		return err
	}
	var box [4]float64
	if _, err := fmt.Sscanf(attr["viewBox"], "%g %g %g %g", &box[0], &box[1], &box[2], &box[3]); err != nil {
		return err
	}
	if want := [4]float64{0, 0, page.width, page.height}; box != want {
		return fmt.Errorf("viewBox %v, want %v: one unit must be one millimetre", box, want)
	}
	return nil
}

// path reads the data of a path.
func (page *svgPage) path(attr map[string]string, g svgGroup) error {
	width := g.width
	if attr["fill"] != "" {
		width = 0
	}
	if attr["stroke-width"] != "" {
		width = g.width
	}
	r := svgPath{in: attr["d"]}
	var start, at geom.Pt
	to := func(q geom.Pt, curved bool) {
		if q != at {
			page.ink = append(page.ink, ink{a: page.up(at), b: page.up(q), width: width, layer: g.layer, curved: curved})
		}
		at = q
	}
	for r.more() {
		switch r.command() {
		case 'M':
			at = geom.P(r.number(), r.number())
			start = at
			r.cmd = 'L'
		case 'L':
			to(geom.P(r.number(), r.number()), false)
		case 'H':
			to(geom.P(r.number(), at.Y), false)
		case 'V':
			to(geom.P(at.X, r.number()), false)
		case 'C':
			for range 4 {
				r.number()
			}
			to(geom.P(r.number(), r.number()), true)
		case 'Z':
			to(start, false)
		default:
			return fmt.Errorf("path command %q", r.cmd)
		}
	}
	return r.err
}

// up turns a point of the file, which counts downwards, to one of the paper.
func (page *svgPage) up(p geom.Pt) geom.Pt { return geom.P(p.X, page.height-p.Y) }

// svgPath reads path data.
type svgPath struct {
	in  string
	cmd byte
	err error
}

func (r *svgPath) more() bool {
	r.in = strings.TrimLeft(r.in, " ,\n")
	return r.in != "" && r.err == nil
}

// command is the next command: the one before goes on where numbers follow.
func (r *svgPath) command() byte {
	if c := r.in[0]; c >= 'A' && c <= 'z' {
		r.cmd, r.in = c, r.in[1:]
	}
	return r.cmd
}

func (r *svgPath) number() float64 {
	r.in = strings.TrimLeft(r.in, " ,\n")
	n := 0
	for n < len(r.in) && (r.in[n] >= '0' && r.in[n] <= '9' || r.in[n] == '.' || n == 0 && r.in[n] == '-') {
		n++
	}
	v, err := strconv.ParseFloat(r.in[:n], 64)
	if err != nil {
		r.err, r.in = err, ""
		return 0
	}
	r.in = r.in[n:]
	return v
}
