package sheets

import (
	"fmt"
	"strings"

	"plumbcut/geom/frame"
)

// pegWords say where the fixed points of the set-out are, in a step's words.
func (m *maker) pegWords(apart string) string {
	if m.againstHouse() {
		return fmt.Sprintf("Mark L and R %s, plumb under the ends of the plate, %s apart.", m.onFace(), apart)
	}
	return fmt.Sprintf("Stretch the base line from peg L to peg R, %s apart, on profiles well clear of the holes.", apart)
}

// frontPosts are the posts along the string.
func (m *maker) frontPosts() string {
	if m.freestanding() {
		return "front posts"
	}
	return "posts"
}

// rearSetOut says how the posts of a rear row are marked.
func (m *maker) rearSetOut() string {
	l, _ := m.fixedPoints()
	rear := m.centresOf(m.rear())
	if len(rear) == 0 {
		return ""
	}
	var at []float64
	for _, c := range rear {
		at = append(at, c.X)
	}
	return fmt.Sprintf("Mark the rear posts along the base line from L: %s. Their centres lie %s in front of it.", m.saidList(l.X, at), m.saidTape(l.Y-rear[0].Y))
}

// sayPlace begins the work on a free-standing frame.
func (m *maker) sayPlace() []string {
	l, r := m.fixedPoints()
	s := m.job.Rafters.Section
	return append(m.placeWords(m.saidTape(r.X-l.X)),
		fmt.Sprintf("Mark the datum, %s = ±0, where it will last. All levels are measured from it.", stated(m.job.Levels.Datum)),
		fmt.Sprintf("Measure every timber as delivered. The drawings take the rafters as %s.", m.saidSize(s.Depth, s.Width)))
}

func (m *maker) holdPlace() string {
	return "Nobody digs before the owner has seen the pegs, and boundaries and services are known."
}

// lineWords say how the level line is carried to the posts.
func (m *maker) lineWords() string {
	if m.againstHouse() {
		return "Carry the plate's level line to every post with a laser or a water level. Check it a second time from the house."
	}
	return fmt.Sprintf("Carry the level line, %s, the top of the rear beam, to every post with a laser or a water level. Check it a second time from the datum.", m.saidLevel(m.rear().Top))
}

// seatWords say how far below it the posts are cut.
func (m *maker) seatWords() string {
	line := m.rear().Top
	if m.againstHouse() {
		return fmt.Sprintf("Measure down %s from it: that is the seat of the beam, at %s, the same at every post.", m.said(line-m.seatLevel()), m.saidLevel(m.seatLevel()))
	}
	var rows []string
	for _, k := range m.frame.Setout.Carriers {
		rows = append(rows, fmt.Sprintf("%s to the seats of the %s, at %s", m.said(line-k.Bottom), k.Short, m.saidLevel(k.Bottom)))
	}
	return "Measure down from it " + strings.Join(rows, "; ") + "."
}

// downTo is the way in which the tops of posts fall behind their seats.
func (m *maker) downTo() string {
	if m.freestanding() {
		return "inner side"
	}
	return "house"
}

// sayBeams is sayBeam of the two beams of a free-standing frame.
func (m *maker) sayBeams() []string {
	var out []string
	for _, k := range m.frame.Setout.Carriers {
		if rear, front := m.frame.Timber(m.rear()), m.frame.Timber(k); k.Back || rear.Mark != front.Mark {
			out = append(out, m.markBeam(k)...)
		}
	}
	return append([]string{strings.Join(out, " ")},
		fmt.Sprintf("Lift them on to the seats, the outer faces flush with the posts; the front beam's left end %s, the rear beam's %s.%s",
			m.leftEndWords(m.front()), m.leftEndWords(m.rear()), m.rodFix()),
		fmt.Sprintf("Check the undersides all along: front beam %s, rear beam %s. Brace both rows along and across before anything else.", m.saidLevel(m.front().Bottom), m.saidLevel(m.rear().Bottom)))
}

// markBeam says how a beam is cut and marked for the rafters.
func (m *maker) markBeam(k frame.Carrier) []string {
	beam, at := m.frame.Timber(k), m.frame.Setout.Rafters
	from := beam.Place.O.X
	marks := fmt.Sprintf("Cut %s to %s%s and mark the rafters from its left end with the %s's own figures.", beam.Mark, m.said(beam.Length), m.joinWords(frame.KindBeam), m.rear().Short)
	if from != m.rear().From || k.Back {
		marks = fmt.Sprintf("Cut %s to %s%s and mark the rafters from its left end: the first at %s, the last at %s.",
			beam.Mark, m.said(beam.Length), m.joinWords(frame.KindBeam), m.saidTape(at[0]-from), m.saidTape(at[len(at)-1]-from))
	}
	if front := m.frame.Timber(m.front()); k.Back && front.Mark == beam.Mark {
		marks = strings.Replace(marks, "Cut "+beam.Mark, "Cut both "+beam.Mark, 1)
		marks = strings.Replace(marks, "from its left end", "from their left ends", 1)
	}
	return []string{marks, ofCarrier(k).mark(m, k)}
}
