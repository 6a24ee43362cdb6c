package template

import (
	"fmt"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
)

// band is a cut that follows the actual size of another timber: ticks beside
// it show where it goes if that is a little under or over.
type band struct {
	face  frame.Face
	at    geom.Vec // a point of the cut as drawn
	grow  geom.Vec // the way the cut goes when the other timber is larger
	run   geom.Vec // the way the ticks run from at
	size  float64  // of the other timber
	share float64  // how far the cut goes for each millimetre of it
	onCut bool     // the ticks run along the cut itself
}

// The look of the ticks, mm.
const (
	tickLength = 5.0
	tickLong   = 8.0  // of the tick at the cut as drawn
	tickStart  = 6.0  // of the ticks on a post's seat, from its left face
	tickRoom   = 16.0 // that they and their figures take
	tickGap    = 0.9  // from a tick to its figure
)

// bandStep is how far under and over the ticks go: 2 mm, or a sixteenth of an
// inch.
func (m *maker) bandStep() float64 {
	if m.job.Units == measure.FeetInches {
		return measure.Inch / 16
	}
	return 2
}

func (m *maker) bandNote(what string, size float64) string {
	d := m.bandStep()
	return fmt.Sprintf("Ticks beside the cut: for a %s of %s, %s and %s.", what, m.small(size-d), m.small(size), m.small(size+d))
}

// small writes the size of a timber.
func (m *maker) small(mm float64) string {
	f := m.fine
	f.InchesOnly = true
	return f.Length(mm)
}

// ticks draws a band on the flap of its face, if there is room.
func (m *maker) ticks(k *ink, f flap, b band) {
	at, grow, run := f.paper(b.at), f.dir(b.grow), f.dir(b.run)
	far := at.Add(run.Mul(tickRoom))
	if !f.area.Contains(at) || !f.area.Contains(far) {
		return
	}
	for _, d := range []float64{-1, 0, 1} {
		if d == 0 && b.onCut {
			continue
		}
		over := d * m.bandStep()
		p := at.Add(grow.Mul(over * b.share))
		length, to, side := tickLength, grow.Mul(d), run.Mul(tickLength/2)
		if d == 0 {
			length, to, side = tickLong, run, run.Mul(tickLong)
		}
		k.line(edgeLine, p, p.Add(run.Mul(length)))
		t := draw.Text{Layer: draw.Notes, Align: draw.Centred, Height: draw.NoteHeight, String: m.small(b.size + over)}
		half := geom.P(t.Width()/2, t.Height/2)
		reach := tickGap + half.X*max(to.X, -to.X) + half.Y*max(to.Y, -to.Y)
		t.At = p.Add(side).Add(to.Mul(reach)).Sub(geom.P(0, half.Y))
		k.fill(draw.Hatch, 0, t.Box().Expand(tickGap/2).Corners()...)
		k.words = append(k.words, t)
	}
}
