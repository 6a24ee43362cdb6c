package draw

import (
	"math"

	"plumbcut/geom"
)

// Fall shows which way and how steeply a line of the view falls: an arrow
// along it pointing down, with degrees and 1:n over it.
type Fall struct {
	View   *View
	A, B   geom.Vec // the line; the arrow stands at its middle
	Offset float64  // of the arrow over the line, mm on paper; negative is under it
	Prefix string   // e.g. "fall "
}

// fallPlan is a fall laid out on the paper.
type fallPlan struct {
	tail, tip geom.Pt
	text      Text
	dim       Dim
}

// plan lays the arrow out with its middle a part t of the way from A to B.
func (f Fall) plan(h Hand, t float64) fallPlan {
	high, low := f.A, f.B
	if low.Z > high.Z {
		high, low = low, high
	}
	d := Dim{View: f.View, A: high, B: low, Prefix: f.Prefix}
	p, q := f.View.Pt(high), f.View.Pt(low)
	read := readable(q.Sub(p))
	text := Text{Layer: Dimension, Align: Centred, Height: h.FigureHeight(), Turn: turnOf(read), String: d.figure(FallDim, h.Figures)}
	middle := f.View.Pt(f.A).Lerp(f.View.Pt(f.B), t).Add(read.Left().Mul(f.Offset))
	half := q.Sub(p).Unit().Mul(text.Width()/2 + arrowLength + figureGap)
	text.At = middle.Add(read.Left().Mul(overLine(text.String, text.Height)))
	return fallPlan{middle.Sub(half), middle.Add(half), text, d}
}

// Draw puts the fall on the sheet.
func (f Fall) Draw(s *Sheet, h Hand) { f.plan(h, 0.5).draw(s) }

func (l fallPlan) draw(s *Sheet) {
	s.Line(narrow(Dimension), l.tail, l.tip)
	s.arrowhead(Dimension, l.tip, l.tip.Sub(l.tail))
	s.AddText(l.text)
	s.Dims = append(s.Dims, Placed{Dim: l.dim, Kind: FallDim, Figure: l.text.String, P: l.tail, Q: l.tip, Box: l.text.Box(), Row: -1})
}

// Fall draws the fall at the first free place along its line, at its own
// offset or further off in steps. More falls are other ways to show the same,
// tried at each offset in their order. If no place is free, it takes the one
// that disturbs least.
func (p *Placer) Fall(tries ...Fall) { p.FallOr(tries) }

// FallOr is Fall with other ways that are tried where no place of the first is
// free.
func (p *Placer) FallOr(tries []Fall, others ...Fall) {
	const far, fine = 1.5 * rowPitch, 1.0
	var best fallPlan
	least := math.Inf(1)
	for _, falls := range [][]Fall{tries, others} {
		for _, sweep := range [][2][]float64{{steps(0, far, rowPitch/2), fallPlaces()}, {steps(-fine, far, fine), steps(0.1, 0.9, 0.02)}} {
			if l, cost := p.fall(falls, sweep[0], sweep[1]); cost < least {
				best, least = l, cost
			}
			if least == 0 {
				best.draw(p.Sheet)
				return
			}
		}
	}
	for _, falls := range [][]Fall{tries, others} {
		if p.ledFall(falls) {
			return
		}
	}
	best.draw(p.Sheet)
}

// ledFall draws the first of some falls with an arrow that is shorter than its
// figure, at the first free place along its line, and the figure led out to where
// it is free; false if either has no such place.
func (p *Placer) ledFall(tries []Fall) bool {
	const clear = costLeader // what a leader costs at least that disturbs words
	for _, f := range tries {
		for _, t := range steps(0.1, 0.9, 0.05) {
			l := f.plan(p.Hand, t)
			way, mid := l.tip.Sub(l.tail).Unit(), l.tail.Lerp(l.tip, 0.5)
			l.tail, l.tip = mid.Sub(way.Mul(shortArrow/2)), mid.Add(way.Mul(shortArrow/2))
			if p.textsUnder(l.tail, l.tip)+p.linesCrossed(l.tail, l.tip) > 0 {
				continue
			}
			at := p.search(leadSearch{target: l.tail, w: l.text.Width(), h: l.text.Height + hang(l.text.String, l.text.Height)})
			if at.cost >= clear {
				continue
			}
			l.text.Turn, l.text.Align = 0, Start
			l.text.At = geom.P(at.box.X0, at.box.Y1-l.text.Height)
			p.Sheet.Line(narrow(Dimension), at.leader...)
			l.draw(p.Sheet)
			return true
		}
	}
	return false
}

// shortArrow is the length of the arrow of a fall whose figure is led out, mm on
// paper: it still shows which way.
const shortArrow = 9.0

// fall is the first free place for a fall, so much further off than it would
// stand and at such parts of its line; if none is free, the place that disturbs
// least, with its cost.
func (p *Placer) fall(tries []Fall, further, parts []float64) (best fallPlan, least float64) {
	least = math.Inf(1)
	for _, more := range further {
		for _, f := range tries {
			f.Offset += math.Copysign(more, f.Offset*more)
			for _, t := range parts {
				l := f.plan(p.Hand, t)
				cost := p.textCost(l.text) + costText*float64(p.textsUnder(l.tail, l.tip)+p.linesCrossed(l.tail, l.tip))
				if cost < least {
					best, least = l, cost
				}
				if cost == 0 {
					return best, 0
				}
			}
		}
	}
	return best, least
}

// fallPlaces are where along its line an arrow is tried, coarsely first.
func fallPlaces() []float64 {
	return []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.45, 0.55, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85}
}
