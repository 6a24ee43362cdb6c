// Package draw is the drawing board: a Sheet of paper in millimetres on which
// lines, fills and words are recorded, and the draughtsman's parts made of
// them: dimensions, leaders, hatches, tables, the frame and the title block.
//
//	y ▲
//	  │  ┌───────────────────────┐
//	  │  │ Sheet     ┌─────────┐ │   origin: bottom left corner of the paper
//	  │  │           │ View    │ │   unit:   millimetre on paper
//	  │  │           └─────────┘ │   a View carries model millimetres there
//	  │  └───────────────────────┘
//	  └──────────────────────────▶ x
//
// A sheet is a list of Items in the order in which they were drawn. Nothing
// is written until it is whole; then the packages pdf, svg and png below this
// one turn the same list into a file. What they share is here, so that the
// three cannot differ: line widths (Paper.LineWidth), the fit of dashes
// (Path.Strokes), curves (Beziers), the size and the start of a text (FontSize,
// Text.Origin), the order of painting (Sheet.Groups), and the check that all
// of it can be written at all (Set.Check).
//
// Left out: colour, which carries no meaning on a site print; pictures;
// clipping, since the sheets clip their own geometry; any timber word.
package draw
