package draw

import "sort"

// extLine is the extension line at u from v0 out to v1. It serves the rows
// whose stretches of it are listed: each from a little before the row to its
// end beyond it.
type extLine struct {
	u, v0, v1 float64
	serves    [][2]float64
}

// extStub is what stays before each row of an extension line that is drawn in
// part because another runs too near it, mm on paper (own).
const extStub = 3.0

// addExt adds the extension line of a stop to the row at v, which it passes up
// to end.
func (p *rowsPlan) addExt(s stop, v, end float64) {
	from := s.v
	if s.v < -p.r.Reach {
		from = -p.r.Deep // too deep: start at the outline
	}
	from += p.h.extension()
	p.exts = append(p.exts, extLine{s.u, from, end, [][2]float64{{max(from, v-extStub), end}}})
}

// mergeExts makes one line of those at the same place, so that none is drawn
// twice and none starts on another dimension.
func (p *rowsPlan) mergeExts() {
	sort.SliceStable(p.exts, func(i, j int) bool { return p.exts[i].u < p.exts[j].u })
	var out []extLine
	for _, e := range p.exts {
		if n := len(out); n > 0 && e.u-out[n-1].u < sameSpot {
			last := &out[n-1]
			last.v0, last.v1 = min(last.v0, e.v0), max(last.v1, e.v1)
			last.serves = append(last.serves, e.serves...)
			continue
		}
		out = append(out, e)
	}
	p.exts = thinExts(out)
}

// thinExts keeps extension lines that lie too near each other from running
// side by side: the longest stays whole, of the others only what each row
// needs is drawn. Both stand for the same place to the eye; their figures tell
// them apart.
func thinExts(exts []extLine) []extLine {
	var out []extLine
	whole := -1 // the last whole line, as an index into out
	for _, e := range exts {
		if whole < 0 || e.u-out[whole].u >= lineToLine {
			out = append(out, e)
			whole = len(out) - 1
			continue
		}
		if e.v1 > out[whole].v1 {
			e, out[whole] = out[whole], e
		}
		out = append(out, e.stubs()...)
	}
	return out
}

// stubs are the stretches that the rows need.
func (e extLine) stubs() []extLine {
	sort.Slice(e.serves, func(i, j int) bool { return e.serves[i][0] < e.serves[j][0] })
	var out []extLine
	for _, s := range e.serves {
		if n := len(out); n > 0 && s[0] <= out[n-1].v1 {
			out[n-1].v1 = max(out[n-1].v1, s[1])
			continue
		}
		out = append(out, extLine{u: e.u, v0: s[0], v1: s[1]})
	}
	return out
}
