// Package sheets decides what each drawing of the set shows and says.
//
// A sheet is made in three steps: look at the model (scene, picture), lay the
// views out on the paper at a scale that fits (layout), and write the
// dimensions, marks and words round them. Nothing here computes a length, an
// angle or a level: figures are read from the frame, and the dimensions of
// package draw measure the model themselves.
//
//	frame ── scene ── picture ──┐
//	                            ├── view on a sheet ── rows, levels, labels ── draw.Sheet
//	paper ── scale, places ─────┘
//
// Left out: file formats (package draw writes them) and anything about the
// timber that the frame does not say.
package sheets
