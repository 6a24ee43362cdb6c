package sheets

import (
	"fmt"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func (m *maker) hasBraces() bool { return len(m.frame.Of(frame.KindBrace)) > 0 }

// sayBraces say how the knee braces go in.
func (m *maker) sayBraces() []string {
	s := m.job.Braces
	var lengths []string
	hands := ""
	for _, run := range alikeRuns(m.byMark(frame.KindBrace)) {
		lengths = append(lengths, fmt.Sprintf("%s to %s", run[0].Mark, m.saidTape(run[0].Length)))
		if len(run) > 1 {
			hands = " Left and right are the same stick, turned round."
		}
	}
	return sentences(
		fmt.Sprintf("From each corner of post and beam mark %s down the post and %s along the beam: the lower edge of the brace comes there.", m.saidTape(s.Down), m.saidTape(s.Along)),
		fmt.Sprintf("Cut %s from long point to long point, one of each at first, and try it in every corner before the others are cut.%s", joined(lengths), hands),
		m.braceJointWords(),
	)
}

// byMark lists the members of a kind, those of one mark together.
func (m *maker) byMark(k frame.Kind) []frame.Member {
	return slices.SortedStableFunc(slices.Values(m.frame.Of(k)), func(a, b frame.Member) int { return strings.Compare(a.Mark, b.Mark) })
}

func holdBraces(*maker) string {
	return "The posts stand plumb and the rafters are fixed before a brace is cut; temporary braces stay until all are in."
}

func careBraces(m *maker) string {
	for _, w := range m.frame.Warnings {
		if w.Rule == frame.RuleHeadHeight && m.job.Pos("braces") == w.Pos {
			return upperFirst(w.Message) + "."
		}
	}
	return "Hold or prop each brace until its screws or bolt are in."
}

// braceMarks marks the braces where the front elevation shows them; many alike
// once, in the middle, where no end post's mark is in the way.
func (m *maker) braceMarks(p *page, v *draw.View) []func() {
	const many = 3
	var out []func()
	mark := func(mb frame.Member, words string) {
		out = append(out, func() {
			m.partMark(p, v, mb, words, mb.Place.Point(geom.V(mb.Length/2, mb.Section.Width/2, mb.Section.Depth/2)))
		})
	}
	for _, run := range alikeRuns(m.byMark(frame.KindBrace)) {
		if len(run) >= many {
			mb := run[len(run)/2]
			mark(mb, fmt.Sprintf("%s × %d", mb.Mark, len(run)))
			continue
		}
		for _, mb := range run {
			mark(mb, mb.Mark)
		}
	}
	return out
}

// braceCutWords say what is cut into a post or the beam for the braces, before
// the beam goes up.
func (m *maker) braceCutWords(k frame.Kind) string {
	if !m.hasBraces() || m.job.Braces.Joint != frame.BraceHoused {
		return ""
	}
	if k == frame.KindPost {
		return fmt.Sprintf("Mark the housings of the knee braces down from the seat and cut them %s deep, open to the outer face.", m.saidFine(m.job.Braces.Housing))
	}
	return fmt.Sprintf("Mark the housings of the knee braces in its underside from the posts as they stand, and cut them %s deep before it goes up.", m.saidFine(m.job.Braces.Housing))
}
