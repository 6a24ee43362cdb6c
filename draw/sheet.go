package draw

import (
	"plumbcut/geom"
)

// Layer says what kind of information a mark carries. A viewer can switch each
// one on and off; the SVG has one group for each.
type Layer int

// The layers, in the order in which they are painted.
const (
	Hatch     Layer = iota // hatching and light fills
	Context                // house, openings, ground: what is there already
	Outline                // visible edges and cut outlines
	Hidden                 // hidden edges
	Centre                 // centre lines, grid lines, section and detail marks
	Dimension              // dimension lines and their figures
	Notes                  // words, part marks, leaders, tables
	Border                 // sheet frame and title block
	layerCount
)

// Pen is one of the three line widths of a sheet, in the ratio 1:2:4.
type Pen int

// The pens. Their widths in millimetres depend on the paper: see Paper.LineWidth.
const (
	Narrow Pen = iota // dimensions, hatch, centre lines, hidden edges, context
	Middle            // visible edges, terminators
	Wide              // what the section plane cuts, the ground line, the frame
)

// Dash is the pattern of a line.
type Dash int

// The line patterns of ISO 128-2.
const (
	Solid  Dash = iota
	Dashed      // hidden edges: dash 12d, gap 3d, fitted to end on ink
	Chain       // centre lines: dash 24d, gap 3d, dot, gap 3d
	dashCount
)

// Style is how a stroke is drawn.
type Style struct {
	Layer Layer
	Pen   Pen
	Dash  Dash
}

// Grey is the tone of a fill: 0 is white, 1 is black. Colour carries no
// meaning, so there is none.
type Grey float64

// Path is a stroked or filled line on the paper, in millimetres from the
// bottom left corner of the sheet, y upwards. The zero Path draws nothing.
type Path struct {
	Style  Style
	Segs   []Seg  // starts with a Move
	Closed bool   // joined back to the start of each Move
	Fill   *Grey  // nil: not filled; even-odd rule
	Stroke bool   // false: fill only
	ID     string // the member or thing that it belongs to; may be empty
}

// Seg is one piece of a path.
type Seg struct {
	Op SegOp
	To geom.Pt
	// Arc is set for Curve: an elliptical arc from the point before to To.
	Arc geom.Arc
}

// SegOp is the kind of a Seg.
type SegOp int

// The kinds of path piece.
const (
	Move SegOp = iota
	Line
	Curve
)

// Align places a text on its anchor point.
type Align int

// The horizontal anchors of a text, along its own direction.
const (
	Start Align = iota
	Centred
	End
)

// Text is one line of lettering.
type Text struct {
	Layer  Layer
	At     geom.Pt // on the baseline
	Align  Align
	Height float64 // of a capital letter, mm: 2.5, 3.5, 5 or 7
	Turn   float64 // radians anticlockwise; 0 reads from below, π/2 from the right
	Bold   bool
	String string
	ID     string // as Path.ID
	Link   string // number of the sheet that a click leads to; may be empty
}

// Item is a Path or a Text; exactly one is set.
type Item struct {
	Path *Path
	Text *Text
}
