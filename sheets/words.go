package sheets

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"plumbcut/draw"
	"plumbcut/geom/frame"
	"plumbcut/geom/frame/keys"
	"plumbcut/geom/measure"
)

// toBeStated stands wherever the job file is silent on something that others
// have to decide. It is never replaced by a guess.
const toBeStated = "to be stated"

// stated is a value, or the words that ask for it.
func stated(s string) string {
	if s == "" {
		return toBeStated
	}
	return s
}

// sentence makes a sentence of a message.
func sentence(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:] + "."
}

// words is a block of numbered notes of the usual width.
func words(title string, notes []string) block {
	return &wordBlock{draw.NoteBlock{Title: title, Notes: notes, Numbered: true, Width: wordWidth}}
}

// warnings words what is buildable but doubtful. What holds of several posts is
// said once.
func warnings(ws []frame.Warning) []string {
	post := regexp.MustCompile(`\bpost \d+\b`)
	var keys []string
	posts := map[string][]string{}
	for _, w := range ws {
		key := w.Message
		if at := post.FindStringIndex(key); at != nil {
			key = w.Message[:at[0]] + "post %" + w.Message[at[1]:]
		}
		if _, ok := posts[key]; !ok {
			keys = append(keys, key)
		}
		posts[key] = append(posts[key], strings.TrimPrefix(post.FindString(w.Message), "post "))
	}
	var out []string
	for _, key := range keys {
		first, others := posts[key][0], posts[key][1:]
		words := sentence(strings.Replace(key, "post %", "post "+first, 1))
		if len(others) > 0 && first != "" {
			words += " The same holds of " + plural("post", len(others)) + " " + joined(others) + "."
		}
		out = append(out, words)
	}
	return out
}

// habits lists what the program took by common practice, for someone to
// confirm.
func habits(hs []keys.Habit) []string {
	out := []string{"Nobody has stated these; they are common practice, without a source. Confirm each, then write it in the job file."}
	for _, h := range hs {
		out = append(out, h.Path+": "+h.Value)
	}
	return out
}

// timberWords says what a member is made of; what nobody has said is asked
// for.
func timberWords(t frame.Timber) string {
	return strings.Join([]string{stated(t.Species), "grade " + stated(t.Grade), stated(t.Treatment), "finish " + stated(t.Finish)}, "; ")
}

// generalNotes are the notes that hold for every sheet, in words that a
// builder says aloud.
func (m *maker) generalNotes() []string {
	s, f := m.frame.Slope, m.figures
	j := m.job
	notes := []string{
		fmt.Sprintf("All figures are in %s. Figured dimensions govern. Timber sizes are actual, dressed sizes; measure what is delivered before marking.", m.unitName()),
		fmt.Sprintf("Levels are heights above the datum: %s = ±0. %s", stated(j.Levels.Datum), m.setting().hands),
		fmt.Sprintf("The fall is %s, %s. It is a drop of %s over a level run of %s, measured on the line of the rafters' top edges, from the plumb line at the %s to the plumb line at the %s.",
			f.Angle(s.Angle), f.Slope(s.Angle), f.Length(s.Drop), f.Length(s.Run), s.From, s.To),
	}
	if m.front().Skewed() {
		notes = append(notes[:2], m.skewNotes()...)
	}
	notes = append(notes, m.holdNotes()...)
	notes = append(notes, m.laying().note(m)...)
	notes = append(notes, m.meeting(m.front()).note(m)...)
	notes = append(notes,
		"Running dimensions are all measured from the one end shown by a small circle. Hook the tape there once; do not step from mark to mark.",
		m.setting().measure,
		"Treat every cut end and every other cut face before assembly.",
	)
	return append(notes, m.baseNotes()...)
}

// fine writes the size of a thing that is bought or a gap, for which half a
// division of a tape is too coarse: a screw, a strap, a clearance.
func (m *maker) fine(mm float64) string { return m.fineFigures().Length(mm) }

// fineFigures writes such sizes, and the points of curved outlines.
func (m *maker) fineFigures() measure.Format {
	const tenth, small = 0.1, 32 // of a millimetre; 1/32 inch
	f := m.figures
	f.Step, f.Fraction = tenth, small
	return f
}

// tape writes a length that is marked, the same in words, lists and drawings of
// joints and members.
func (m *maker) tape(mm float64) string { return m.tapeFigures().Length(mm) }

// cautions are the usual ones. They defer to local rules and licensed people
// and claim nothing.
func (m *maker) cautions() []string {
	fixing := m.walling().caution
	if m.job.Freestanding() {
		fixing = "A frame that leans on no wall racks unless something holds it: knee braces, posts held fast in the ground or panels, both along the beams and across. What holds it is for a licensed designer; the drawings show none that the job does not state. Until it is there, temporary braces stay."
	}
	said := []string{
		"These drawings give shape and set-out only. Sizes of timber, footings, fixings and tie-down are for a licensed designer or engineer to confirm, and local rules decide what consent is needed. Work that needs no consent must still meet the building code.",
		"The pull of the wind on an open frame can be large. Tie-down from rafter to footing, and the mass of the footings, are to be designed.",
		fixing,
		m.setting().hazards,
		"Work from a proper platform. Brace posts and beam until the rafters are fixed. Nobody stands under a beam that is being lifted.",
		"Treated timber: gloves, goggles and mask when cutting; never burn the offcuts. Wet concrete burns skin.",
	}
	return append(append(said, m.stepCaution()...), m.strapCaution()...)
}

// stepCaution says where the ground steps, and that nothing here holds the step.
func (m *maker) stepCaution() []string {
	var at []string
	for _, s := range m.job.GroundSteps() {
		at = append(at, fmt.Sprintf("by %s at %s", m.said(math.Abs(s.Left-s.Right)), m.said(s.Along-m.rear().From)))
	}
	if len(at) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("The ground steps %s from the left end of the %s. What holds the step, and what footings near it bear on, is for a licensed designer: the drawings show the ground as stated and no wall.", joined(at), m.rear().Short)}
}
