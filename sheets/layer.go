package sheets

import (
	"fmt"
	"strconv"
	"strings"

	"plumbcut/geom/frame"
)

// laying is what the sheets say of one way in which battens lie to the rafters.
// Each way has one entry in layings; no sheet asks how they lie.
type laying struct {
	// how the battens lie, to follow the number of them: ", checked …".
	how func(m *maker) string
	// cut is what is done to rafters and battens before the battens go on, as
	// steps of work; empty: nothing.
	cut func(m *maker) string
	// note holds for all battens that lie so, for the general notes.
	note func(m *maker) []string
	// words are said of the first batten on the detail.
	words func(m *maker) string
}

func (m *maker) laying() laying {
	if m.job.Battens.Lie == frame.LieChecked {
		return checkedLaying()
	}
	return laying{
		how:   func(*maker) string { return "" },
		cut:   func(*maker) string { return "" },
		note:  func(*maker) []string { return nil },
		words: func(*maker) string { return ", laid flat; drill for the screws near the ends" },
	}
}

func checkedLaying() laying {
	return laying{
		how: func(m *maker) string { return ", " + m.checkedWords() },
		cut: func(m *maker) string {
			k, b := m.job.Battens.Check, m.job.Battens.Section
			words := ""
			if k.Rafter > 0 {
				words = fmt.Sprintf("Before the rafters go up, lay them side by side with their upper ends in line and their tops up, and square each check across all of them: %s wide, %s deep. Saw both sides on the waste side of the line, then pare the floor. Try the first check with a batten as delivered, and treat them all.",
					m.saidFine(b.Width+k.Clearance), m.saidFine(k.Rafter))
			}
			if k.Batten > 0 {
				if words != "" {
					words += " "
				}
				words += fmt.Sprintf("Check the battens' undersides over every rafter, %s wide and %s deep, all of them side by side.",
					m.saidFine(m.job.Rafters.Section.Width+k.Clearance), m.saidFine(k.Batten))
			}
			return words
		},
		note: func(m *maker) []string {
			k := m.job.Battens.Check
			words := fmt.Sprintf("Checks for the battens are wider than what lies in them by %s in all.", m.fine(k.Clearance))
			if k.Rafter > 0 {
				words += fmt.Sprintf(" They leave %s of the rafters' depth of %s: size the rafters for that.",
					m.fine(m.job.Rafters.Section.Depth-k.Rafter), m.fine(m.job.Rafters.Section.Depth))
			}
			return []string{words}
		},
		words: func(m *maker) string { return ", " + m.checkedWords() + "; drill for the screws near the ends" },
	}
}

// checkedWords say how deep battens and rafters are let into each other.
func (m *maker) checkedWords() string {
	k := m.job.Battens.Check
	switch {
	case k.Batten == 0:
		return "checked " + m.fine(k.Rafter) + " into the rafters"
	case k.Rafter == 0:
		return "checked " + m.fine(k.Batten) + " out of their undersides"
	}
	return fmt.Sprintf("checked %s into the rafters and %s out of their own undersides", m.fine(k.Rafter), m.fine(k.Batten))
}

// shareWords write a share as a percentage, finely enough to tell what was asked
// for from what is reached.
func shareWords(share float64) string {
	const fine = 1 // decimals
	return strconv.FormatFloat(100*share, 'f', fine, 64) + " %"
}

// shadeWords are the shade that a layer gives, and what was asked for.
func shadeWords(l frame.Layer) string {
	words := shareWords(l.Shade())
	if l.Stated > 0 {
		words += ", asked for " + shareWords(l.Stated)
	}
	return words
}

// layerSizes adds the layers to the key sizes.
func (m *maker) layerSizes(add func(what, figure string)) {
	s := m.frame.Setout
	for _, l := range s.Layers {
		name := upperFirst(string(l.Kind)) + "s"
		if l.Kind == frame.KindSlat {
			add("Slats in each bay", fmt.Sprintf("%d at %s centres", len(l.At), m.figures.Length(l.Centres())))
			continue
		}
		if len(l.At) == 1 {
			add(name, "1")
			continue
		}
		add(name, fmt.Sprintf("%d, gaps of %s", len(l.At), m.figures.Length(l.Gap)))
	}
	if s.Shade() > 0 {
		add("Shade, square to the slope", shareWords(s.Shade()))
	}
}

// shadeNote says what a figure of shade is.
func (m *maker) shadeNote() []string {
	s := m.frame.Setout
	if s.Shade() == 0 {
		return nil
	}
	words := "Shade is the share of the area that is covered, seen square to the slope: a stick's width as seen so over its distance from the next, centre to centre; it does not follow the sun. "
	for _, l := range s.Layers {
		if l.Shade() > 0 {
			words += fmt.Sprintf("The %ss: %s. ", l.Kind, shadeWords(l))
		}
	}
	if len(s.Layers) > 1 {
		words += "Both layers together: " + shareWords(s.Shade()) + "."
	}
	return []string{strings.TrimSpace(words)}
}

// lathRuns are where the laths begin, down the slope from the plate's outer
// face, and how far their ends run past the outer battens.
func (m *maker) lathWords() []string {
	l, ok := m.frame.Setout.Layer(frame.KindLath)
	if !ok {
		return nil
	}
	all := m.frame.Of(frame.KindLath)
	left := m.frame.Of(frame.KindBatten)[0].Place.O.X
	sec := all[0].Section
	n := len(all)
	where := fmt.Sprintf("On the first and the last batten mark the laths' left edges from the battens' left ends: the first at %s, the last at %s.", m.said(l.At[0]-left), m.said(l.At[n-1]-left))
	fix := fmt.Sprintf("Fix %d laths %s, %s long%s, clear gaps of %s, a screw driven at every batten.", n, m.saidSize(sec.Depth, sec.Width), m.said(all[0].Length), m.crossJoin(frame.KindLath, "batten"), m.said(l.Gap))
	if n == 1 {
		where = fmt.Sprintf("On the first and the last batten mark the lath's left edge, %s from the battens' left ends.", m.said(l.At[0]-left))
		fix = fmt.Sprintf("Fix the lath %s, %s long%s, a screw driven at every batten.", m.saidSize(sec.Depth, sec.Width), m.said(all[0].Length), m.crossJoin(frame.KindLath, "batten"))
	}
	return []string{where, fix,
		fmt.Sprintf("Their ends stand %s past the outer edges of the first and the last batten. Drill first, then fix.", m.said(m.job.Laths.Overhang))}
}

// crossJoin says that sticks are joined over what they cross, if they are.
func (m *maker) crossJoin(k frame.Kind, over string) string {
	if m.joinWords(k) == "" {
		return ""
	}
	return ", joined over a " + over + " as drawn"
}

func (m *maker) hasLaths() bool { return len(m.frame.Of(frame.KindLath)) > 0 }

func (m *maker) holdLaths() string {
	return "Before the last laths, measure what is left and share the difference among their gaps."
}
