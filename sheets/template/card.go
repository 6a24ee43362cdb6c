package template

import (
	"fmt"
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/measure"
)

// Measures of the bevel card, mm (own).
const (
	cardPlumb = 72.0  // width of the half with the plumb cut
	cardLevel = 104.0 // width of the half with the level cut
	cardHigh  = 80.0
	cardStart = 12.0 // from the left of a half to where its line meets the edge
)

// bevelCard is the card that a sliding bevel is set by for the job's fall; none
// where the rafters lie level.
func (m *maker) bevelCard() []*piece {
	angle := m.frame.Slope.Angle
	if angle == 0 {
		return nil
	}
	p := &piece{title: "Bevel card for the fall"}
	sin, cos := math.Sincos(angle)
	k := &p.ink
	long := cardPlumb + cardLevel
	k.line(cutLine, geom.P(0, 0), geom.P(long, 0))
	for _, s := range [][2]geom.Pt{{geom.P(0, 0), geom.P(0, cardHigh)}, {geom.P(long, 0), geom.P(long, cardHigh)}, {geom.P(0, cardHigh), geom.P(long, cardHigh)}} {
		k.line(trimLine, s[0], s[1])
	}
	ray := func(from, dir geom.Pt, x0, x1 float64) {
		if a, b, ok := within(from, from.Add(dir.Mul(long)), draw.Rect{X0: x0, Y0: 0, X1: x1 - 2, Y1: cardHigh - 2}); ok {
			k.line(cutLine, a, b)
		}
	}
	ray(geom.P(cardStart, 0), geom.P(sin, cos), 0, cardPlumb)
	ray(geom.P(cardPlumb+cardStart, 0), geom.P(cos, sin), cardPlumb, long)
	m.cardWords(k, angle)
	p.head = []string{
		fmt.Sprintf("Fall %s, %s: rise %s on %s level.", m.exactAngle(angle), m.figures.Slope(angle), m.riseOn(angle), m.riseBase()),
		"Cut the paper along its thick lower edge, or lay a straight edge on it. Stock of the bevel on that edge, blade on the line.",
		"The edge is the rafter's edge. One line is the plumb cut, the other the level cut: turn the bevel over for the other side of the rafter.",
	}
	return []*piece{p}
}

func (m *maker) cardWords(k *ink, angle float64) {
	l := newLetterer(k, nil)
	l.set(label{words: "PLUMB CUT", height: draw.NoteHeight, bold: true}, draw.Rect{X0: cardPlumb / 2, Y0: cardHigh / 2, X1: cardPlumb, Y1: cardHigh})
	l.set(label{words: m.exactAngle(math.Pi/2 - angle), height: draw.NoteHeight}, draw.Rect{X0: cardPlumb / 2, Y0: 0, X1: cardPlumb, Y1: cardHigh / 2})
	l.set(label{words: "LEVEL CUT", height: draw.NoteHeight, bold: true}, draw.Rect{X0: cardPlumb + cardStart, Y0: 0, X1: cardPlumb + cardLevel, Y1: cardHigh})
	l.set(label{words: m.exactAngle(angle), height: draw.NoteHeight}, draw.Rect{X0: cardPlumb + cardStart, Y0: 0, X1: cardPlumb + cardLevel, Y1: cardHigh})
	l.set(label{words: "rafter's edge", height: draw.NoteHeight}, draw.Rect{X0: 0, Y0: 0, X1: cardPlumb, Y1: 8})
}

// exactAngle writes an angle to a hundredth of a degree.
func (m *maker) exactAngle(rad float64) string {
	return measure.Format{Step: 0.01}.Length(rad*180/math.Pi) + "°"
}

// riseBase is the level length that the rise is given on.
func (m *maker) riseBase() string {
	if m.job.Units == measure.FeetInches {
		return m.fine.Length(12 * measure.Inch)
	}
	return "100"
}

func (m *maker) riseOn(angle float64) string {
	if m.job.Units == measure.FeetInches {
		return m.fine.Length(12 * measure.Inch * math.Tan(angle))
	}
	return m.fine.Length(100 * math.Tan(angle))
}
