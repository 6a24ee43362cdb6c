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
	what  string // the other timber
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
	tickGap    = 1.1  // from a tick to its figure
)

// bandStep is how far under and over the ticks go: 2 mm, or a sixteenth of an
// inch.
func (m *maker) bandStep() float64 {
	if m.job.Units == measure.FeetInches {
		return measure.Inch / 16
	}
	return 2
}

func (m *maker) bandNote(b band) string {
	d, size := m.bandStep(), b.size
	return fmt.Sprintf("Ticks beside the cut: for a %s of %s, %s and %s.", b.what, m.small(size-d), m.small(size), m.small(size+d))
}

// small writes the size of a timber.
func (m *maker) small(mm float64) string {
	f := m.fine
	f.InchesOnly = true
	return f.Length(mm)
}

// ticks draws a band on the flap of its face. It reports false, and draws
// nothing, where there is no room for the ticks and their figures.
func (m *maker) ticks(k *ink, f flap, b band) bool {
	at, grow, run := f.paper(b.at), f.dir(b.grow), f.dir(b.run)
	if !f.area.Contains(at) || !f.area.Contains(at.Add(run.Mul(tickRoom))) {
		return false
	}
	var own ink
	taken := newLetterer(k, nil)
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
		own.line(edgeLine, p, p.Add(run.Mul(length)))
		t := draw.Text{Layer: draw.Notes, Align: draw.Centred, Height: draw.NoteHeight, String: m.small(b.size + over)}
		half := geom.P(t.Width()/2, t.Height/2)
		reach := tickGap + half.X*max(to.X, -to.X) + half.Y*max(to.Y, -to.Y)
		t.At = p.Add(side).Add(to.Mul(reach)).Sub(geom.P(0, half.Y))
		box := t.Box().Expand(tickGap - same)
		if taken.blocked(box, true) > box.X0 || !f.area.Encloses(box) {
			return false
		}
		own.fill(draw.Hatch, 0, box.Corners()...)
		own.words = append(own.words, t)
	}
	k.add(own, geom.Pt{})
	return true
}
