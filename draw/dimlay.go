package draw

import "math"

// Sizes of a figure that is led out of a row where its space is too narrow,
// mm on paper.
const (
	leadRise = 2.0 // from the dimension line straight out
	leadJog  = 2.4 // then across, over this height, to under the figure
	leadGap  = 0.7 // from the end of the leader to the figure
)

// layChain places the figures of a chain, an equal or an overall row: in its
// space where it fits, else outside at the free end, else led out in order.
func (p *rowsPlan) layChain(w *rowPlan) {
	height := p.h.FigureHeight()
	first, last := w.stops[0], w.stops[len(w.stops)-1]
	w.line = [2]float64{first.u, last.u}
	w.far = w.v + p.h.extension()
	if p.r.Side.outward() {
		for i := 1; i < len(w.stops); i++ {
			text := p.chainFigure(w, i).text
			w.far = max(w.far, w.v+overLine(text, height)+height+rise(text, height))
		}
	}
	outer := p.outerStops(w.index)
	var led []figPlan
	for i := 1; i < len(w.stops); i++ {
		f := p.chainFigure(w, i)
		width := TextWidth(f.text, height, false)
		mid, fits := fitSpace(f.u[0], f.u[1], width, outer)
		switch {
		case fits:
			f.box = p.figureBox(f.text, w.v, mid)
			w.figs = append(w.figs, f)
		case !p.titleHigh() && i == 1:
			f.box = p.figureBox(f.text, w.v, f.u[0]-nearStroke-width/2)
			w.line[0] = f.box.X0
			w.figs = append(w.figs, f)
		case p.titleHigh() && i == len(w.stops)-1:
			f.box = p.figureBox(f.text, w.v, f.u[1]+nearStroke+width/2)
			w.line[1] = f.box.X1
			w.figs = append(w.figs, f)
		default:
			led = append(led, f)
		}
	}
	p.leadOut(w, led)
	for _, s := range w.stops {
		p.addExt(s, w.v, w.v+p.h.extension())
	}
}

// chainFigure is the figure of the space that ends at stop i.
func (p *rowsPlan) chainFigure(w *rowPlan, i int) figPlan {
	a, b := w.stops[i-1], w.stops[i]
	d := Dim{View: p.r.View, A: a.p, B: b.p, Along: p.along(), From: w.stops[0].p, Spaces: w.spaces}
	kind := w.dimKind()
	return figPlan{text: d.figure(kind, p.h.Figures), along: true, kind: kind, dim: d, u: [2]float64{a.u, b.u}}
}

// figureBox is the place of a figure above the dimension line at v, its middle
// at u.
func (p *rowsPlan) figureBox(text string, v, u float64) Rect {
	height := p.h.FigureHeight()
	half := TextWidth(text, height, false) / 2
	gap := overLine(text, height)
	if p.r.Side.outward() {
		return Rect{u - half, v + gap, u + half, v + gap + height}
	}
	return Rect{u - half, v - gap - height, u + half, v - gap}
}

// fitSpace finds the middle of a figure between two terminators: as near to
// the middle as it comes without touching them or one of the extension lines
// that pass through. If only those are in the way it stays in the middle, and
// they are broken for it.
func fitSpace(a, b, width float64, outer []float64) (mid float64, fits bool) {
	lo, hi := a+nearStroke+width/2, b-nearLine-width/2
	if lo > hi {
		return 0, false
	}
	centre := min(max((a+b)/2, lo), hi)
	best, found := 0.0, math.Inf(1)
	try := func(u float64) {
		if u < lo || u > hi {
			return
		}
		for _, o := range outer {
			const slack = 1e-9 // a candidate stands exactly at the limit
			if o > a+sameSpot && o < b-sameSpot && math.Abs(o-u) < width/2+nearLine-slack {
				return
			}
		}
		if d := math.Abs(u - centre); d < found {
			best, found = u, d
		}
	}
	try(centre)
	for _, o := range outer {
		try(o - width/2 - nearLine)
		try(o + width/2 + nearLine)
	}
	if math.IsInf(found, 1) {
		return centre, true
	}
	return best, true
}

// leadOut places the figures that do not fit outside the row, in order and
// apart, each with a leader from the middle of its space.
func (p *rowsPlan) leadOut(w *rowPlan, led []figPlan) {
	if len(led) == 0 {
		return
	}
	height := p.h.FigureHeight()
	straight := leadRise
	if p.r.Side.outward() {
		straight = w.far - w.v + leadGap // past the figures that have room
	}
	want, size := make([]float64, len(led)), make([]float64, len(led))
	for i, f := range led {
		want[i] = (f.u[0] + f.u[1]) / 2
		size[i] = TextWidth(f.text, height, false)
	}
	places := spread(want, size, 2*textGap, math.Inf(-1), math.Inf(1))
	top := w.v + straight + leadJog
	for i, f := range led {
		f.leader = pts(want[i], w.v, want[i], w.v+straight, places[i], top)
		foot := top + leadGap
		if p.r.Side.outward() { // the leader comes from below the letters
			foot += hang(f.text, height)
		} else {
			foot += rise(f.text, height)
		}
		f.box = Rect{places[i] - size[i]/2, foot, places[i] + size[i]/2, foot + height}
		w.figs = append(w.figs, f)
		w.far = max(w.far, f.box.Y1+f.reach(p.h))
	}
}

// The foot of the figures of a running row, mm out from the dimension line.
const runningFoot = originRadius + leadGap

// layRunning places the figures of a running row across it, each beside its
// extension line; where they are crowded the lines step aside.
func (p *rowsPlan) layRunning(w *rowPlan) {
	height := p.h.FigureHeight()
	n := len(w.stops)
	w.line = [2]float64{w.stops[0].u, w.stops[n-1].u}
	want, size := make([]float64, n), make([]float64, n)
	figs, gap, over := make([]figPlan, n), 0.0, 0.0
	for i, s := range w.stops {
		d := Dim{View: p.r.View, A: w.pts[0], B: s.p, Along: p.along()}
		if w.before(s) {
			d.Prefix = minusSign
		}
		figs[i] = figPlan{text: d.figure(RunningDim, p.h.Figures), kind: RunningDim, dim: d, u: [2]float64{w.datum, s.u}}
		gap = max(gap, overLine(figs[i].text, height))
		over = max(over, rise(figs[i].text, height))
	}
	for i, s := range w.stops {
		want[i], size[i] = s.u, gap+height+over
	}
	places := spread(want, size, nearLine, math.Inf(-1), math.Inf(1))
	shift := 0.0
	for i := range places {
		shift = max(shift, math.Abs(places[i]-want[i]))
	}
	foot := w.v + runningFoot
	jog := 0.0
	if shift >= sameSpot {
		jog = min(max(minJog, shift/2), maxJog)
		foot += jog + leadGap
	}
	for i, s := range w.stops {
		f := figs[i]
		end := foot + TextWidth(f.text, height, false)
		f.box = p.besideLine(places[i], gap, Rect{Y0: foot, Y1: end})
		w.far = max(w.far, end)
		if isFar(places[i], s.u) {
			turn := w.v + runningFoot
			f.leader = pts(s.u, turn, places[i], turn+jog, places[i], end)
			p.addExt(s, w.v, turn)
		} else {
			p.addExt(s, w.v, end)
		}
		w.figs = append(w.figs, f)
	}
}

// minusSign is the true minus sign, as wide as the plus.
const minusSign = "\u2212"

// before reports whether a stop of a running row lies on the other side of its
// datum than most of the row: its figure has a minus sign.
func (w *rowPlan) before(s stop) bool {
	under, over := w.datum-w.stops[0].u, w.stops[len(w.stops)-1].u-w.datum
	if under > over {
		return s.u > w.datum+sameSpot
	}
	return s.u < w.datum-sameSpot
}

// The step by which a crowded extension line moves aside, mm outwards: long
// enough to follow by eye, short enough to keep the row together.
const (
	minJog = 3.0
	maxJog = 15.0
)

// besideLine is the place of a figure that stands across the row, gap off the
// upper side, as it reads, of its own extension line at u; from tells how far
// out it reaches.
func (p *rowsPlan) besideLine(u, gap float64, from Rect) Rect {
	height := p.h.FigureHeight()
	if p.r.Side.lying() {
		return Rect{u - gap - height, from.Y0, u - gap, from.Y1}
	}
	return Rect{u + gap, from.Y0, u + gap + height, from.Y1}
}
