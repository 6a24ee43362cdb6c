// Package png paints a sheet as a picture for screens and web pages: black on
// white, with the same lines, dashes, curves and letters as the other writers.
// Letters are painted from their outlines, so no font needs to be installed.
//
// Left out: layers, links and everything else that a picture cannot hold.
package png

import (
	"fmt"
	"image/color"
	"image/png"
	"io"
	"math"
	"slices"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/rasterizer"

	"plumbcut/draw"
	"plumbcut/fonts"
	"plumbcut/geom"
)

// maxPixels bounds a picture: an A0 sheet at 300 dots per inch has 140 million,
// which takes half a gigabyte to paint.
const maxPixels = 150e6

const mmPerInch = 25.4

// Write paints the sheet at so many dots per inch. It returns an error, and
// writes nothing, when the sheet does not pass its Check or the picture would
// be empty or beyond 150 million dots.
func Write(w io.Writer, sheet *draw.Sheet, dpi float64) error {
	if err := sheet.Check(); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	perMM := dpi / mmPerInch
	wide, tall := sheet.Paper.Width*perMM, sheet.Paper.Height*perMM
	if !(wide >= 1 && tall >= 1 && wide*tall <= maxPixels) {
		return fmt.Errorf("png: %g dots per inch make a picture of %.0f × %.0f dots", dpi, wide, tall)
	}
	p, err := newPainter(sheet, perMM)
	if err != nil {
		return fmt.Errorf("png: %w", err)
	}
	for _, g := range sheet.Groups() {
		for _, path := range g.Paths {
			p.path(path)
		}
		for _, t := range g.Texts {
			if err := p.text(t); err != nil {
				return fmt.Errorf("png: sheet %s: text %q: %w", sheet.Number, t.String, err)
			}
		}
	}
	p.pixels.Close()
	return png.Encode(w, p.pixels.Image)
}

// painter holds the picture in the making.
type painter struct {
	paper         draw.Paper
	pixels        *rasterizer.Rasterizer
	regular, bold *canvas.Font
}

func newPainter(sheet *draw.Sheet, perMM float64) (*painter, error) {
	p := &painter{paper: sheet.Paper}
	var err error
	if p.regular, err = canvas.LoadFont(fonts.Regular().TTF, 0, canvas.FontRegular); err != nil {
		return nil, err
	}
	if p.bold, err = canvas.LoadFont(fonts.Bold().TTF, 0, canvas.FontBold); err != nil {
		return nil, err
	}
	p.pixels = rasterizer.New(sheet.Paper.Width, sheet.Paper.Height, canvas.DPMM(perMM), canvas.LinearColorSpace{})
	// The paper ends within the last dots, which must be all white.
	paper := canvas.Rectangle(sheet.Paper.Width+2/perMM, sheet.Paper.Height+2/perMM)
	p.fill(paper.Translate(-1/perMM, -1/perMM), color.White)
	return p, nil
}

func (p *painter) path(path *draw.Path) {
	if len(path.Segs) < 2 {
		return
	}
	if path.Fill != nil {
		p.fill(area(path), color.Gray{uint8(math.Round(255 * (1 - float64(*path.Fill))))})
	}
	if !path.Stroke {
		return
	}
	width := p.paper.LineWidth(path.Style.Pen)
	for _, st := range path.Strokes(p.paper) {
		line := outline(st.Segs, st.Closed)
		if st.Pattern != nil {
			// Cut here into true millimetres: the renderer would multiply the
			// pattern by the width of the line.
			line = line.Dash(0, st.Pattern...)
		}
		p.stroke(line, width)
	}
}

func (p *painter) fill(path *canvas.Path, tone color.Color) {
	style := canvas.DefaultStyle
	style.Fill = canvas.Paint{Color: color.RGBAModel.Convert(tone).(color.RGBA)}
	p.pixels.RenderPath(path, style, canvas.Identity)
}

// miterLimit is that of the other writers.
const miterLimit = 10

func (p *painter) stroke(path *canvas.Path, width float64) {
	style := canvas.DefaultStyle
	style.Fill = canvas.Paint{}
	style.Stroke = canvas.Paint{Color: canvas.Black}
	style.StrokeWidth = width
	style.StrokeCapper = canvas.ButtCap
	style.StrokeJoiner = canvas.MiterJoiner{GapJoiner: canvas.BevelJoin, Limit: miterLimit}
	p.pixels.RenderPath(path, style, canvas.Identity)
}

// area is a filled path. The renderer knows only the nonzero rule, so a loop
// that lies in an odd number of others, a hole, must turn the other way.
func area(path *draw.Path) *canvas.Path {
	out := &canvas.Path{}
	loops := path.Flatten()
	for i, loop := range loops {
		if len(loop) < 2 {
			continue
		}
		others := slices.Delete(slices.Clone(loops), i, i+1)
		if anticlockwise(loop) == draw.Inside(loop[0], others) {
			loop = slices.Clone(loop)
			slices.Reverse(loop)
		}
		out.MoveTo(loop[0].X, loop[0].Y)
		for _, at := range loop[1:] {
			out.LineTo(at.X, at.Y)
		}
		out.Close()
	}
	return out
}

func anticlockwise(loop []geom.Pt) bool {
	area := 0.0
	for i, at := range loop {
		area += at.Cross(loop[(i+1)%len(loop)])
	}
	return area > 0
}

// outline is the path in the library's form; both count y upwards.
func outline(segs []draw.Seg, closed bool) *canvas.Path {
	out := &canvas.Path{}
	for i, seg := range segs {
		switch seg.Op {
		case draw.Move:
			if closed && i > 0 {
				out.Close()
			}
			out.MoveTo(seg.To.X, seg.To.Y)
		case draw.Line:
			out.LineTo(seg.To.X, seg.To.Y)
		case draw.Curve:
			curves := draw.Beziers(seg.Arc)
			curves[len(curves)-1][2] = seg.To
			for _, c := range curves {
				out.CubeTo(c[0].X, c[0].Y, c[1].X, c[1].Y, c[2].X, c[2].Y)
			}
		}
	}
	if closed {
		out.Close()
	}
	return out
}

// text paints the letters one by one, each where the widths of those before
// it put it.
func (p *painter) text(t *draw.Text) error {
	font, face := p.regular, fonts.Regular()
	if t.Bold {
		font, face = p.bold, fonts.Bold()
	}
	size := draw.FontSize(t.Height, t.Bold)
	unit := size / float64(face.UnitsPerEm)
	words, x := &canvas.Path{}, 0.0
	for _, r := range t.String {
		g, _ := face.Glyph(r)
		if err := font.GlyphPath(words, g.ID, 0, x, 0, unit, 0); err != nil {
			return err
		}
		x += float64(g.Advance) * unit
	}
	at, dir := t.Origin(), t.Dir()
	turn := canvas.Matrix{{dir.X, -dir.Y, at.X}, {dir.Y, dir.X, at.Y}}
	style := canvas.DefaultStyle
	style.Fill = canvas.Paint{Color: canvas.Black}
	p.pixels.RenderPath(words, style, turn)
	return nil
}
