package sheets

import (
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// keyBlock explains the lines and hatches of the set.
type keyBlock struct{ entries []keyEntry }

func (m *maker) keyBlock() *keyBlock { return &keyBlock{keyEntries(m.frame)} }

// The look of the key, mm on paper (own).
const (
	keyPitch  = 6.0
	keySample = 12.0
	keyTitle  = 7.0
	keyDeep   = 4.2
)

// keyEntry is a line of the key: a sample drawn in a rectangle, and words.
type keyEntry struct {
	words string
	draw  func(s *draw.Sheet, r draw.Rect)
}

// keyEntries are those that every set has, and the hatches of its own wall.
func keyEntries(f *frame.Frame) []keyEntry {
	line := func(layer draw.Layer, pen draw.Pen, dash draw.Dash) func(*draw.Sheet, draw.Rect) {
		return func(s *draw.Sheet, r draw.Rect) {
			y := r.Centre().Y
			s.Line(draw.Style{Layer: layer, Pen: pen, Dash: dash}, geom.P(r.X0, y), geom.P(r.X1, y))
		}
	}
	hatch := func(mat draw.Material, turn float64) func(*draw.Sheet, draw.Rect) {
		return func(s *draw.Sheet, r draw.Rect) {
			s.Hatch(mat, [][]geom.Pt{r.Corners()}, turn)
			s.Rect(draw.Style{Layer: draw.Outline, Pen: draw.Wide}, r)
		}
	}
	out := []keyEntry{
		{"timber cut across", hatch(draw.EndGrain, 0)},
		{"timber cut along", hatch(draw.LongGrain, 0)},
		{"concrete, cut", hatch(draw.Concrete, 0)},
		{"edge that is seen", line(draw.Outline, draw.Middle, draw.Solid)},
		{"edge that is hidden", line(draw.Hidden, draw.Narrow, draw.Dashed)},
		{"centre line, sight line, line of a cut", line(draw.Centre, draw.Narrow, draw.Chain)},
		{"house, deck and ground, as found", line(draw.Context, draw.Narrow, draw.Solid)},
	}
	names := map[draw.Material]string{draw.Brickwork: "masonry, cut", draw.Blockwork: "unfilled masonry, cut"}
	for _, h := range f.House {
		mat, ok := wallHatch(h.Of)
		if name := names[mat]; ok && name != "" && !slices.ContainsFunc(out, func(e keyEntry) bool { return e.words == name }) {
			out = append(out, keyEntry{name, hatch(mat, 0)})
		}
	}
	return out
}

func (b *keyBlock) extent(draw.Hand, float64) draw.Rect {
	return draw.Rect{X0: 0, Y0: -keyTitle - keyPitch*float64(len(b.entries)), X1: wordWidth, Y1: 0}
}

func (b *keyBlock) draw(p *page, at geom.Pt, _ float64) {
	s := p.sheet
	s.AddText(draw.Text{Layer: draw.Notes, At: geom.P(at.X, at.Y-draw.TitleHeight), Height: draw.TitleHeight, Bold: true, String: "Key"})
	for i, e := range b.entries {
		y := at.Y - keyTitle - keyPitch*float64(i)
		r := draw.Rect{X0: at.X, Y0: y - keyDeep, X1: at.X + keySample, Y1: y}
		e.draw(s, r)
		s.AddText(draw.Text{Layer: draw.Notes, At: geom.P(r.X1+2, r.Centre().Y-draw.NoteHeight/2), Height: draw.NoteHeight, String: e.words})
	}
}

func (b *keyBlock) finish(*page) {}
