package sheets

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom/frame"
)

// planColumn is what stands beside the framing plan: the members with their
// sizes, and the notes.
func (m *maker) planColumn() block {
	return besideBlock{
		&tableBlock{m.planMembers()},
		&wordBlock{draw.NoteBlock{Title: "Notes", Numbered: true, Notes: m.planNotes()}},
	}
}

// planMembers lists the marks on the plans with their sizes.
func (m *maker) planMembers() draw.Table {
	t := draw.Table{Title: "Members", Columns: []draw.Column{
		{Head: "Mark"}, {Head: "No.", Align: draw.End}, {Head: "Member"}, {Head: "Actual size", Align: draw.End}, {Head: "Length", Align: draw.End},
	}}
	seen := map[string]bool{}
	for _, mb := range m.frame.Members {
		key := mb.Mark + string(mb.Hand)
		if mb.Kind == frame.KindFooting || mb.Kind == frame.KindPacker || seen[key] {
			continue
		}
		seen[key] = true
		name := string(mb.Kind)
		if mb.Hand != frame.NoHand {
			name += ", " + string(mb.Hand)
		}
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{
			mb.Mark, strconv.Itoa(mb.Quantity), name, m.figures.Size(mb.Section.Depth, mb.Section.Width), m.figures.Length(mb.Length),
		}})
	}
	return t
}

// diagonals are those of the frame as a tape measures them, from the plate's
// top outer arris to the beam's: from the left end of the plate and from its
// right end.
func (m *maker) diagonals() (fromLeft, fromRight float64) {
	return m.frameTapes().lengths(0)
}

// squareNote gives the diagonals and what they should differ by.
func (m *maker) squareNote() string {
	a, b := m.diagonals()
	f := m.saidTape
	how := fmt.Sprintf("Check for square before the rafters go in. Tape from %s to the %s's, end to end crosswise: ", m.tapeArris(), m.front().Short)
	round := m.tapeFigures().Round
	if round(a) == round(b) {
		return how + fmt.Sprintf("both diagonals measure %s.", f(a))
	}
	if m.front().Skewed() {
		return how + fmt.Sprintf("%s from the left end of the %s and %s from its right end. They differ by %s because the %s is not parallel with %s.",
			f(a), m.rear().Short, f(b), f(math.Abs(round(a)-round(b))), m.front().Short, m.setting().base)
	}
	return how + fmt.Sprintf("%s from the left end of the %s and %s from its right end. They differ by %s because the ends of %s and %s do not line up.",
		f(a), m.rear().Short, f(b), f(math.Abs(round(a)-round(b))), m.rear().Short, m.front().Short)
}

// planNotes are the notes of the framing plan.
func (m *maker) planNotes() []string {
	notes := append(m.skewNotes(), m.squareNote(),
		fmt.Sprintf("Measure the clear distance between %s and %s at every rafter before cutting it.", m.rear().Short, m.front().Short))
	if len(m.frame.Of(frame.KindBatten)) > 1 {
		notes = append(notes, fmt.Sprintf("The battens lie %s apart in the clear, measured down the slope.", m.said(m.frame.Setout.BattenGap)))
	}
	notes = append(notes, m.shadeNote()...)
	notes = append(notes, m.blockNote()...)
	notes = append(notes, m.strapNote()...)
	if !m.rear().OnWall {
		return notes
	}
	if m.studless() {
		return append(notes, fmt.Sprintf("The positions of the %s are to be found on site. Move each screw of the plate on to one, still clear of the rafters.", m.studs()))
	}
	if n := len(m.blocked()); n > 0 {
		notes = append(notes, fmt.Sprintf("No %s stands behind the screws of the plate at %s: add blocking there.", m.job.Wall.StudName(), joined(m.blocked())))
	}
	return append(notes, m.walling().plan)
}

// said is a length as it stands in a sentence, kept on one line.
func (m *maker) said(mm float64) string {
	const noBreak = "\u00a0"
	return strings.ReplaceAll(m.figures.Length(mm), " ", noBreak)
}

// blocked are the places of the plate's screws that need blocking, from the
// left end of the plate.
func (m *maker) blocked() []string {
	var out []string
	for _, f := range m.frame.Setout.PlateFixings {
		if f.Blocking {
			out = append(out, m.said(f.Along-m.rear().From))
		}
	}
	return out
}

// joined lists words as one says them: "a, b and c".
func joined(words []string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		s := words[0]
		for _, w := range words[1 : n-1] {
			s += ", " + w
		}
		return s + " and " + words[n-1]
	}
}
