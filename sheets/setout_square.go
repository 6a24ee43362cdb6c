package sheets

import (
	"fmt"
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
)

// crossTapes are two tapes stretched crosswise from a base that stays where it
// is to things that may slip along it.
//
//	a ────────── b   base: L and R on the wall, or the ends of the plate
//	 ╲ A      B ╱
//	   ╲    ╱
//	     ╳
//	   ╱    ╲
//	 q ────────── p  the outer posts, or the ends of the beam
type crossTapes struct {
	a, p geom.Vec // the ends of tape A, which starts at the left
	b, q geom.Vec // the ends of tape B
}

// lengths are those of both tapes when p and q have slipped to the right.
func (c crossTapes) lengths(slip float64) (a, b float64) {
	s := geom.V(slip, 0, 0)
	return c.p.Add(s).Sub(c.a).Len(), c.q.Add(s).Sub(c.b).Len()
}

// differ is by how much tape A is longer than tape B after a slip to the
// right; negative where B is the longer.
func (c crossTapes) differ(slip float64) float64 {
	a, b := c.lengths(slip)
	return a - b
}

// postTapes go from the fixed points on the wall to the outer posts' centres.
func (m *maker) postTapes() crossTapes {
	l, r := m.fixedPoints()
	posts := m.centresOf(m.front())
	return crossTapes{a: l, p: posts[len(posts)-1], b: r, q: posts[0]}
}

// frameTapes go from the top outer arris of the plate to that of the beam, end
// to end.
func (m *maker) frameTapes() crossTapes {
	k := m.front()
	top := m.frame.Timber(m.front()).Solid().Bounds().Max.Z
	plate := func(x float64) geom.Vec { return geom.V(x, m.tapeFace(), m.rear().Top) }
	beam := func(x float64) geom.Vec { return k.Point(x, k.Outer, top) }
	return crossTapes{a: plate(m.rear().From), p: beam(m.front().To), b: plate(m.rear().To), q: beam(m.front().From)}
}

// tapeFace is the world y of the face of the rear carrier along whose top arris
// tapes are held: of a plate that which one can reach, of a beam the outer one.
func (m *maker) tapeFace() float64 {
	if k := m.rear(); k.Back {
		return k.Inner
	}
	return m.rear().Outer
}

// slips are the slips along the wall that the table gives.
func (m *maker) slips() []float64 {
	if m.job.Units == frame.FeetInches {
		return []float64{measure.Inch / 4, measure.Inch / 2, measure.Inch}
	}
	return []float64{5, 10, 20}
}

// even reports whether both tapes are alike as printed while nothing has
// slipped: a slip either way then shows the same difference.
func (m *maker) even(c crossTapes) bool { return m.tapeFigures().Round(c.differ(0)) == 0 }

// slipTable says what the two pairs of tapes show: when all is true, and after
// a slip along the wall.
func (m *maker) slipTable() draw.Table {
	t := draw.Table{Title: "What the tapes show", Columns: []draw.Column{{Head: m.setting().slip}}}
	pairs := []struct {
		name  string
		tapes crossTapes
	}{{"A and B", m.postTapes()}, {"C and D", m.frameTapes()}}
	t.Rows = append(t.Rows, draw.TableRow{Cells: []string{"none"}})
	for _, s := range m.slips() {
		if m.even(pairs[0].tapes) && m.even(pairs[1].tapes) {
			t.Rows = append(t.Rows, draw.TableRow{Cells: []string{m.tape(s)}})
			continue
		}
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{m.tape(s) + " to the right"}}, draw.TableRow{Cells: []string{m.tape(s) + " to the left"}})
	}
	slips := m.signedSlips(len(t.Rows))
	for _, p := range pairs {
		t.Columns = append(t.Columns, draw.Column{Head: p.name + " differ by", Align: draw.End})
		for i, s := range slips {
			t.Rows[i].Cells = append(t.Rows[i].Cells, m.longer(p.name, p.tapes.differ(s), m.even(p.tapes)))
		}
	}
	return t
}

// signedSlips are the slips of the n rows of the table, to the right positive.
func (m *maker) signedSlips(n int) []float64 {
	out := []float64{0}
	for _, s := range m.slips() {
		out = append(out, s)
		if n > 1+len(m.slips()) {
			out = append(out, -s)
		}
	}
	return out
}

// longer says by how much the first of two named tapes is longer, or the
// second. Where a slip either way shows the same the figure alone does.
func (m *maker) longer(names string, by float64, even bool) string {
	f := m.tape(math.Abs(by))
	if even || m.tapeFigures().Round(by) == 0 {
		return f
	}
	which := names[:1]
	if by < 0 {
		which = names[len(names)-1:]
	}
	return f + ", " + which + " longer"
}

// squareNotes say how the tapes are held and what they measure.
func (m *maker) squareNotes() []string {
	posts := len(m.front().Posts)
	f := m.saidTape
	pa, pb := m.postTapes().lengths(0)
	fa, fb := m.frameTapes().lengths(0)
	return []string{
		fmt.Sprintf("Before %s: A from L to the centre of post %d is %s, B from R to the centre of post 1 is %s. Hold both tapes level.", m.digging(), posts, f(pa), f(pb)),
		fmt.Sprintf("With the beam up: C from the left end of the %s to the right end of the %s is %s, D from right to left is %s, both along the top outer arrises.", m.rear().Short, m.front().Short, f(fa), f(fb)),
		"Where A or C is longer than it should be, the posts or the beam have slipped to the right; where B or D is, to the left. The table says how far.",
	}
}
