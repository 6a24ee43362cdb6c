package sheets

import (
	"fmt"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// has reports whether the frame has members of a kind.
func has(k frame.Kind) func(*maker) bool {
	return func(m *maker) bool { return len(m.frame.Of(k)) > 0 }
}

// blockPlaces say where the rows of blocks stand.
func (m *maker) blockPlaces() string {
	var at []string
	for _, u := range m.frame.Setout.BlockRows {
		at = append(at, m.said(u))
	}
	return fmt.Sprintf("their middles %s down the slope from the %s's outer face", joined(at), m.rear().Short)
}

func (m *maker) sayBlocks() []string {
	all := m.frame.Of(frame.KindBlock)
	return []string{
		fmt.Sprintf("Strike lines over the rafters for the blocks: %s.", m.blockPlaces()),
		fmt.Sprintf("Cut %s, %s as drawn; each to the gap measured at its own place.", count(len(all), "block"), m.saidTape(all[0].Length)),
		upperFirst(m.trimWords(all[0])),
	}
}

func (m *maker) sayFascia() []string {
	f := m.frame.Of(frame.KindFascia)[0]
	return []string{
		"Cut the rafters' ends to a string first, so that the fascia runs straight.",
		fmt.Sprintf("Cut %s to %s%s. %s", f.Mark, m.said(f.Length), m.joinWords(frame.KindFascia), m.trimWords(f)),
	}
}

func (m *maker) sayValance() []string {
	all := m.frame.Of(frame.KindValance)
	var lengths []string
	for _, run := range alikeRuns(m.byMark(frame.KindValance)) {
		lengths = append(lengths, fmt.Sprintf("%s to %s", run[0].Mark, m.saidTape(run[0].Length)))
	}
	return []string{
		fmt.Sprintf("Cut %s%s. %s", joined(lengths), m.joinWords(frame.KindValance), m.trimWords(all[0])),
		"Sight along its lower edge before the last screw is driven.",
	}
}

var (
	holdBlocks = fixedWords("Measure every gap at top and bottom before its block is cut: a long block drives the rafters apart.")
	holdFascia = fixedWords("The rafters' ends are in one line, and all alike in height, before the fascia is cut.")
	careTrim   = fixedWords("Two people carry a long board, each on a platform of their own.")
)

func holdValance(m *maker) string {
	if m.job.Valance.Set == frame.ValanceFace {
		return "The beam's outer face is straight to a string before the board is cut."
	}
	return "Measure between the posts, at top and bottom, before a board is cut."
}

// blockNote says where the blocks stand, for the plan; none without blocks.
func (m *maker) blockNote() []string {
	if len(m.frame.Setout.BlockRows) == 0 {
		return nil
	}
	return []string{"Blocks stand between the rafters, " + m.blockPlaces() + "."}
}

// trimMarks marks fascia and valance on the front elevation.
func (m *maker) trimMarks(p *page, v *draw.View) []func() {
	var out []func()
	for _, k := range []frame.Kind{frame.KindFascia, frame.KindValance} {
		out = append(out, m.marksAlong(p, v, m.frame.Of(k), func(mb frame.Member) geom.Vec {
			return mb.Place.Point(geom.V(mb.Length*0.4, 0, mb.Section.Depth/2))
		})...)
	}
	return out
}

// fitsBetween reports whether a timber is cut to the gap between two others.
func (s *timber) fitsBetween() bool {
	return s.Kind == frame.KindBlock || s.Kind == frame.KindValance && s.job.Valance.Set != frame.ValanceFace
}

// blockMarks marks the blocks of each row once for those alike.
func (m *maker) blockMarks(p *page, v *draw.View) []func() {
	var out []func()
	all := m.frame.Of(frame.KindBlock)
	bays := len(m.frame.Setout.Rafters) - 1
	for ; len(all) >= bays && bays > 0; all = all[bays:] {
		for _, run := range alikeRuns(all[:bays]) {
			words := run[0].Mark
			if len(run) > 1 {
				words = fmt.Sprintf("%s × %d", run[0].Mark, len(run))
			}
			mb := run[(len(run)-1)*2/3]
			out = append(out, func() { m.partMark(p, v, mb, words, m.markPoint(mb)) })
		}
	}
	return out
}
