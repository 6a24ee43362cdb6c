package draw

import (
	"math"

	"plumbcut/geom"
)

// The parts of a broken line in widths of its pen (ISO 128-2).
const (
	dashLength  = 12
	chainLength = 24
	gapLength   = 3
	dotLength   = 0.5
)

// Dashes is the pattern of a broken line that is length mm long: ink and gap
// in turn, in true mm, stretched so that the line starts and ends on ink. It
// is nil for a solid line, and for one too short to hold a gap.
//
//	━━━━  ━━━━  ━━━━    n gaps and n+1 dashes make up the length
func Dashes(st Style, paper Paper, length float64) []float64 {
	d := paper.LineWidth(st.Pen)
	ink, between := dashLength*d, gapLength*d
	switch st.Dash {
	case Solid:
		return nil
	case Chain:
		ink, between = chainLength*d, (2*gapLength+dotLength)*d
	}
	n := math.Round((length - ink) / (ink + between))
	if !(n >= 1) {
		return nil
	}
	ink = (length - n*between) / (n + 1)
	if st.Dash == Chain {
		return []float64{ink, gapLength * d, dotLength * d, gapLength * d}
	}
	return []float64{ink, between}
}

// Stroke is a part of a path that takes one pattern.
type Stroke struct {
	Segs    []Seg // as in Path
	Closed  bool
	Pattern []float64 // of Dashes
}

// cornerCosine is that of the turn, 20 degrees, from which a bend counts as a
// corner. Smaller ones are those of a flattened curve.
const cornerCosine = 0.9397

// Strokes is what a writer strokes for the path. A solid path is one Stroke;
// a broken one is cut at its corners, so that each of them is on ink.
func (p Path) Strokes(paper Paper) []Stroke {
	if p.Style.Dash == Solid {
		return []Stroke{{Segs: p.Segs, Closed: p.Closed}}
	}
	var out []Stroke
	for _, sub := range p.split() {
		if p.Closed && sub[0].To != sub[len(sub)-1].To {
			sub = append(sub[:len(sub):len(sub)], Seg{Op: Line, To: sub[0].To})
		}
		for _, run := range cutAtCorners(sub) {
			length := lineLength(Path{Segs: run}.Flatten()[0])
			out = append(out, Stroke{Segs: run, Pattern: Dashes(p.Style, paper, length)})
		}
	}
	return out
}

func lineLength(line []geom.Pt) float64 {
	length := 0.0
	for i := 1; i < len(line); i++ {
		length += line[i].Sub(line[i-1]).Len()
	}
	return length
}

// cutAtCorners cuts an open path where two straight pieces meet at an angle.
func cutAtCorners(sub []Seg) [][]Seg {
	var runs [][]Seg
	run := sub[:1:1]
	for i := 1; i < len(sub); i++ {
		run = append(run, sub[i])
		last := i == len(sub)-1
		if last || corner(sub[i-1].To, sub[i], sub[i+1]) {
			runs = append(runs, run)
			run = []Seg{{Op: Move, To: sub[i].To}}
		}
	}
	return runs
}

// corner reports whether the path turns sharply between two pieces. Where one
// is a curve it does not count: arcs mostly run on from their neighbours.
func corner(from geom.Pt, in, out Seg) bool {
	if in.Op == Curve || out.Op == Curve {
		return false
	}
	u, v := in.To.Sub(from), out.To.Sub(in.To)
	return u.Dot(v) < cornerCosine*u.Len()*v.Len()
}
