package sheets

import (
	"math"

	"plumbcut/geom"
)

// minGap is the least distance between two parallel lines on the paper, mm
// (ISO 128: 0.7).
const minGap = 0.7

// sameWay is the angle, in radians, below which two lines count as parallel:
// over the width of a sheet they then part by less than half a millimetre.
const sameWay = 1e-3

// shortest is the shortest piece of a line worth drawing, mm on paper: less
// is a blot.
const shortest = 0.25

// thinner remembers the lines drawn, to leave out what would run closer to
// one of them than gap.
type thinner struct {
	gap  float64
	kept map[int][]keptLine // by direction
}

// keptLine is a line that is drawn.
type keptLine struct {
	a, b geom.Pt
	dir  geom.Pt
}

func newThinner(gap float64) *thinner {
	return &thinner{gap: gap, kept: map[int][]keptLine{}}
}

// heading is the direction of a line without its sense, and its class. Classes
// are sameWay wide, so lines that are parallel stand in neighbouring ones.
func heading(a, b geom.Pt) (geom.Pt, int) {
	d := b.Sub(a).Unit()
	if d.X < 0 || d.X == 0 && d.Y < 0 {
		d = d.Mul(-1)
	}
	return d, int(math.Round(math.Atan2(d.Y, d.X) / sameWay))
}

// halfTurn is the number of classes in half a turn: the upright lines at its
// two ends are neighbours.
const halfTurn = 3142 // π ÷ sameWay

// keep remembers a line.
func (t *thinner) keep(a, b geom.Pt) {
	if a == b {
		return
	}
	d, class := heading(a, b)
	t.kept[class] = append(t.kept[class], keptLine{a, b, d})
}

// take returns what is left of a line after leaving out the parts that run
// alongside a kept one, and remembers it.
func (t *thinner) take(l inkLine) []inkLine {
	out := t.rest(l)
	for _, piece := range out {
		t.keep(piece.a, piece.b)
	}
	return out
}

// rest is take without remembering.
func (t *thinner) rest(l inkLine) []inkLine {
	length := l.length()
	if length < shortest {
		return nil
	}
	d, class := heading(l.a, l.b)
	free := []span{{0, length}}
	along := l.b.Sub(l.a).Unit()
	for dc := -1; dc <= 1; dc++ {
		for _, c := range []int{class + dc, class + dc - halfTurn, class + dc + halfTurn} {
			for _, k := range t.kept[c] {
				if math.Abs(d.Left().Dot(k.a.Sub(l.a))) < t.gap && math.Abs(d.Left().Dot(k.b.Sub(l.a))) < t.gap {
					free = without(free, along.Dot(k.a.Sub(l.a)), along.Dot(k.b.Sub(l.a)))
				}
			}
		}
	}
	var out []inkLine
	for _, f := range free {
		if f.hi-f.lo < shortest {
			continue
		}
		piece := l
		piece.a, piece.b = l.a.Add(along.Mul(f.lo)), l.a.Add(along.Mul(f.hi))
		if f.hi == length {
			piece.b = l.b
		}
		out = append(out, piece)
	}
	return out
}

// span is a stretch of a line, mm from its start.
type span struct{ lo, hi float64 }

// without takes the stretch between a and b out of the spans.
func without(spans []span, a, b float64) []span {
	lo, hi := min(a, b), max(a, b)
	var out []span
	for _, s := range spans {
		if hi <= s.lo || lo >= s.hi {
			out = append(out, s)
			continue
		}
		if lo > s.lo {
			out = append(out, span{s.lo, lo})
		}
		if hi < s.hi {
			out = append(out, span{hi, s.hi})
		}
	}
	return out
}
