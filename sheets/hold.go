package sheets

import (
	"fmt"
	"strings"

	"plumbcut/geom/frame"
)

// holding is what the sheets say of one way in which a carrier holds the
// rafters. Each way has one entry in holdings, beside its detail in
// detail_*.go; no sheet asks how rafters are held.
type holding struct {
	detail detailSpec // but for its kind
	// how it holds a rafter, to follow "It is … long; "
	how func(m *maker, k frame.Carrier) string
	// mark is what is cut into the carrier for the rafters, as steps of work.
	mark func(m *maker, k frame.Carrier) string
	// hold is what is done only once something is measured.
	hold func(m *maker, k frame.Carrier) string
	// cut is what is cut at the rafter's end or middle there, to follow "Cut the
	// straightest rafter first".
	cut func(m *maker, k frame.Carrier) string
	// land is said of the carrier at each rafter, where no housing shows its place.
	land string
	// end is where the rafter's end comes to, to follow "from" and "to".
	end func(m *maker, k frame.Carrier) string
	// ties tells what the joint does from what the tie does, for the fitting.
	ties string
	// note holds for all rafters held so, for the general notes.
	note func(m *maker) []string
}

// holdings lists what is said of each way.
func holdings(h frame.Hold) holding {
	switch h {
	case frame.Over:
		return overHolding()
	case frame.Between:
		return hungHolding()
	}
	return housedHolding()
}

// holds lists the ways in which rafters are held.
func holds() []frame.Hold { return []frame.Hold{frame.Housed, frame.Over, frame.Between} }

// ofCarrier is what is said of how a carrier holds the rafters.
func ofCarrier(k frame.Carrier) holding { return holdings(k.Hold) }

// howHeld says how each carrier holds a rafter.
func (m *maker) howHeld() string {
	words := ""
	for _, k := range m.frame.Setout.Carriers {
		words += "; " + ofCarrier(k).how(m, k)
	}
	return words
}

// holdNotes are the notes on every way that the job has, once each.
func (m *maker) holdNotes() []string {
	var out []string
	for _, h := range holds() {
		if m.frame.Setout.Holds(h) {
			out = append(out, holdings(h).note(m)...)
		}
	}
	return out
}

// whereEnds says where the rafters end at a carrier.
func (m *maker) whereEnds(k frame.Carrier) string { return ofCarrier(k).end(m, k) }

// heldBy says what the joints do and what the ties do, once for each way.
func (m *maker) heldBy() string {
	words := ""
	for _, h := range holds() {
		if m.frame.Setout.Holds(h) {
			words += " " + holdings(h).ties
		}
	}
	return strings.TrimSpace(words)
}

// holdUntil is what waits until the rafters are measured, for a carrier.
func (m *maker) holdUntil(k frame.Carrier) string { return ofCarrier(k).hold(m, k) }

// plumbOrSquare names the rafters' end cuts.
func (m *maker) plumbOrSquare() string {
	if m.frame.Slope.Angle > 0 {
		return "plumb, with the saw at " + m.figures.Angle(m.frame.Slope.Angle)
	}
	return "square"
}

// atWhere is "at the plate" or "at the beam".
func atWhere(k frame.Carrier) string { return "at the " + k.Short }

func housedHolding() holding {
	return holding{
		detail: housedDetail(),
		ties:   "The housing holds it in place, the tie holds it down.",
		how: func(m *maker, k frame.Carrier) string {
			return fmt.Sprintf("let into the %s by %s", k.Short, m.figures.Length(k.Housing))
		},
		mark: func(m *maker, k frame.Carrier) string {
			if k.Skewed() {
				return m.skewHousings(k)
			}
			h := housingOf(m.carrier(k))
			where, lower := "", "the lower edge at the "+k.FaceWord(k.Outer)+" face"
			if k.End == frame.FaceEnd {
				where, lower = " in its "+m.frame.FaceWord(k.Kind, frame.FaceHouse), "the lower edge"
			}
			return fmt.Sprintf("Cut a housing at each%s: %s wide, %s deep, its floor %s above %s.%s",
				where, m.saidTape(h.Width), m.saidTape(h.Depth), m.saidTape(h.Floor), lower, floorWords(h))
		},
		hold: func(m *maker, _ frame.Carrier) string {
			if m.job.Rafters.Clearance == 0 {
				return "Measure the rafters before the housings are cut: each is as wide as its own rafter."
			}
			return fmt.Sprintf("Measure the rafters before the housings are cut: each is its own rafter's width and %s more.", m.saidFine(m.job.Rafters.Clearance))
		},
		cut: func(m *maker, k frame.Carrier) string {
			if m.job.Rafters.Seat == frame.SeatLevel && m.frame.Slope.Angle > 0 {
				return atWhere(k) + " cut " + m.plumbOrSquare() + ", a level seat under it"
			}
			return atWhere(k) + " cut " + m.endCut(k)
		},
		end: func(_ *maker, k frame.Carrier) string { return "the back of the housing in the " + k.Short },
		note: func(m *maker) []string {
			seat := "The seat of each housing follows the fall: its floor lies along the underside of the rafter."
			if m.job.Rafters.Seat == frame.SeatLevel {
				seat = "The seat of each housing is level: the rafter's end is cut level to sit on it."
			}
			return []string{
				seat,
				fmt.Sprintf("Housings are wider than the rafter by %s in all, so that it drops in. Cut each housing to the rafter that goes into it.", m.fine(m.job.Rafters.Clearance)),
			}
		},
	}
}

// carrier is the timber that a carrier is.
func (m *maker) carrier(k frame.Carrier) frame.Member { return m.frame.Timber(k) }

// rear is the carrier at the rafters' upper ends. Its left end is L, from which
// lengths along are measured, its right end R.
func (m *maker) rear() frame.Carrier { return m.frame.Setout.Rear() }

// front is the carrier at the rafters' lower ends.
func (m *maker) front() frame.Carrier { return m.frame.Setout.Front() }
