package draw

import (
	"fmt"
	"math"
	"sort"

	"plumbcut/geom"
)

// Rule is something that a draughtsman checks before signing a sheet.
type Rule string

// The rules of an audit.
const (
	RuleTextOnText   Rule = "text nearer than 1 mm to text"
	RuleTextOnEdge   Rule = "text nearer than 0.5 mm to an edge"
	RuleTextOnLine   Rule = "text nearer than 0.5 mm to a narrow line"
	RuleOutside      Rule = "outside the frame"
	RuleSmallText    Rule = "text under 2.5 mm high"
	RuleDimFigure    Rule = "figure is not what the model measures"
	RuleDimLength    Rule = "dimension is not to scale"
	RuleDimPlace     Rule = "dimension does not stand at its points"
	RuleDimUnwritten Rule = "dimension without its figure"
	RuleLeaderEnd    Rule = "leader ends on nothing"
	RuleLeaderCross  Rule = "leaders cross"
	RuleMarkNowhere  Rule = "mark leads nowhere"
	RuleTitleUnused  Rule = "no mark leads to the view"
	RuleLinesClose   Rule = "parallel lines closer than 0.7 mm"
	RuleLinesDouble  Rule = "line drawn twice"
)

// Finding is one breach of a rule.
type Finding struct {
	Rule  Rule
	Sheet string  // number of the sheet
	At    geom.Pt // place on the paper, mm from the bottom left corner
	What  string  // the words concerned
}

// String is the finding in one line: where, what is wrong, and with what.
func (f Finding) String() string {
	return fmt.Sprintf("sheet %s at %.0f, %.0f: %s: %s", f.Sheet, f.At.X, f.At.Y, f.Rule, f.What)
}

// What the audit asks for, mm on paper.
const (
	textToText   = 1.0  // draughting rule: text to text
	textToLine   = 0.5  // from the ink of a text to that of a line
	borderToLine = 0.1  // the same within the grid border, which ISO 5457 makes 5 mm wide for letters of 3.5; an M fills it
	leastHeight  = 2.5  // smaller is lost on a site print
	lineToLine   = 0.7  // ISO 128: between parallel lines
	doubleLine   = 0.02 // under this two lines are one drawn twice
	leastOverlap = 0.5  // parallel lines side by side for less than this do not disturb
	dimTolerance = 0.01 // of a dimension on paper: a twentieth of the narrowest pen
	leaderReach  = 0.5  // from the tip of a leader to the edge that it names
)

// slack keeps what stands exactly at a limit from being found by the rounding
// of float64, mm.
const slack = 1e-6

// auditor holds what the rules ask about one sheet.
type auditor struct {
	s     *Sheet
	f     Figures
	texts []inkText
	grid  *grid
	masks []mask
	out   []Finding
}

// inkText is a text with its ink measured once.
type inkText struct {
	*Text
	quad [4]geom.Pt
	box  Rect
}

// mask is a white rectangle that hides what was painted under it.
type mask struct {
	box   Rect
	layer Layer
	item  int
}

// Audit checks one sheet against every rule but the gap between lines: nothing
// touches, everything is in the frame and large enough, every dimension says
// what the model measures and is to scale, every leader ends on something.
// The findings are ordered by place, so they are always the same.
func (s *Sheet) Audit(f Figures) []Finding { return s.audit(f, newGrid(s.Paper)) }

// audit is Audit with an empty grid to work in.
func (s *Sheet) audit(f Figures, g *grid) []Finding {
	a := newAuditor(s, f, g)
	a.textOnText()
	a.textOnLines()
	a.inFrame()
	a.dims()
	a.leaders()
	return a.sorted()
}

// LineGaps checks that no two parallel lines of the sheet run closer than
// 0.7 mm and none is drawn twice. It is apart from Audit since a small scale
// can force it; the sheets then show the place in a detail.
func (s *Sheet) LineGaps() []Finding {
	a := newAuditor(s, nil, newGrid(s.Paper))
	a.lineGaps()
	return a.sorted()
}

// Audit checks every sheet, and that every mark leads to a view that is there
// and every lettered or numbered view is led to.
func (set *Set) Audit(f Figures) []Finding {
	var out []Finding
	var g *grid // used again and again: it holds every line of a sheet
	for _, s := range set.Sheets {
		if g == nil || !g.covers(s.Paper) {
			g = newGrid(s.Paper)
		}
		out = append(out, s.audit(f, g)...)
		g.cut(0, 0)
	}
	return append(out, set.auditMarks()...)
}

func newAuditor(s *Sheet, f Figures, g *grid) *auditor {
	a := &auditor{s: s, f: f, grid: g}
	pieces := 0
	for _, it := range s.Items {
		if it.Path != nil {
			pieces += len(it.Path.Segs)
		}
	}
	a.grid.grow(pieces)
	for i, it := range s.Items {
		if it.Text != nil {
			q := it.Text.Quad()
			a.texts = append(a.texts, inkText{it.Text, q, Bounds(q[:]...)})
			continue
		}
		addPath(a.grid, it.Path, i, s.Paper)
		if it.Path.Fill != nil && *it.Path.Fill == 0 && len(it.Path.Segs) == 4 {
			a.masks = append(a.masks, mask{it.Path.Bounds(), it.Path.Style.Layer, i})
		}
	}
	return a
}

func (a *auditor) found(r Rule, at geom.Pt, format string, args ...any) {
	a.out = append(a.out, Finding{r, a.s.Number, at, fmt.Sprintf(format, args...)})
}

func (a *auditor) sorted() []Finding {
	sort.SliceStable(a.out, func(i, j int) bool {
		p, q := a.out[i], a.out[j]
		if p.At != q.At {
			return p.At.Y > q.At.Y || p.At.Y == q.At.Y && p.At.X < q.At.X
		}
		return p.Rule < q.Rule
	})
	return a.out
}

// textOnText sweeps over the texts from the left.
func (a *auditor) textOnText() {
	order := make([]int, len(a.texts))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool { return a.texts[order[i]].box.X0 < a.texts[order[j]].box.X0 })
	for i, k := range order {
		t := a.texts[k]
		for _, l := range order[i+1:] {
			u := a.texts[l]
			if u.box.X0 > t.box.X1+textToText {
				break
			}
			if t.box.Expand(textToText).Overlaps(u.box) && quadGap(t.quad, u.quad) < textToText-slack {
				a.found(RuleTextOnText, u.box.Centre(), "%q and %q", t.String, u.String)
			}
		}
	}
}

// textOnLines looks for lines near each text that are not hidden by a mask
// under it. Of several it tells the heaviest: words on an edge or on a dark
// fill are lost, those on a narrow line still read.
func (a *auditor) textOnLines() {
	for _, t := range a.texts {
		var worst *segment
		a.grid.segsNear(t.box.Expand(textToLine), func(s *segment) bool {
			if (worst == nil || s.heavy()) && a.nearText(t, s) && !a.masked(t, s) {
				worst = s
			}
			return worst == nil || !worst.heavy()
		})
		if worst != nil {
			rule := RuleTextOnLine
			if worst.heavy() {
				rule = RuleTextOnEdge
			}
			a.found(rule, nearest(t.box.Centre(), worst.a, worst.b), "%q and a line of the %s", t.String, worst.layer)
		}
		if t.Height < leastHeight-slack {
			a.found(RuleSmallText, t.box.Centre(), "%q is %.2g mm high", t.String, t.Height)
		}
	}
}

// heavy reports whether a segment drowns a text that it runs through: an edge,
// or that of a dark fill.
func (s *segment) heavy() bool { return s.pen > Narrow || s.half == 0 }

// nearText reports whether a line comes nearer to a text than it may.
func (a *auditor) nearText(t inkText, s *segment) bool {
	least := textToLine + s.half
	if t.Layer == Border && s.layer == Border {
		least = borderToLine + s.half
	}
	return t.box.Expand(least).Overlaps(Bounds(s.a, s.b).Expand(slack)) && quadSegmentGap(t.quad, s.a, s.b) < least-slack
}

// masked reports whether a line is painted over by a white ground under the
// text.
func (a *auditor) masked(t inkText, s *segment) bool {
	for _, m := range a.masks {
		over := m.layer > s.layer || m.layer == s.layer && m.item > s.item
		if over && m.layer <= t.Layer && m.box.Encloses(t.box.Expand(textToLine-slack)) {
			return true
		}
	}
	return false
}

// inFrame checks that everything but the frame itself lies in the drawing
// space, and the frame on the paper.
func (a *auditor) inFrame() {
	within := func(layer Layer) Rect {
		if layer == Border {
			return a.s.Paper.Sheet()
		}
		return a.s.Paper.Inner()
	}
	for _, t := range a.texts {
		if !within(t.Layer).Expand(slack).Encloses(t.box) {
			a.found(RuleOutside, t.box.Centre(), "%q", t.String)
		}
	}
	for _, s := range a.grid.segs {
		if box := Bounds(s.a, s.b); !within(s.layer).Expand(slack).Encloses(box) {
			a.found(RuleOutside, box.Centre(), "a line of the %s", s.layer)
		}
	}
}

// linear reports whether a dimension of the kind is a length on the paper.
func (k DimKind) linear() bool {
	switch k {
	case SingleDim, ChainDim, RunningDim, EqualDim:
		return true
	}
	return false
}

// dims checks every dimension against the model.
func (a *auditor) dims() {
	written := map[string][]Rect{}
	for _, t := range a.texts {
		written[t.String] = append(written[t.String], t.box)
	}
	for _, d := range a.s.Dims {
		at := d.Box.Centre()
		if want := d.figure(d.Kind, a.f); d.Figure != want {
			a.found(RuleDimFigure, at, "%q should be %q", d.Figure, want)
		}
		there := false
		for _, box := range written[d.Figure] {
			there = there || box.Overlaps(d.Box)
		}
		if !there {
			a.found(RuleDimUnwritten, at, "%q", d.Figure)
		}
		a.dimPlace(d, at)
	}
}

// dimPlace checks that a dimension stands where its points are drawn and is as
// long as they are apart.
func (a *auditor) dimPlace(d Placed, at geom.Pt) {
	pa, pb := d.View.Pt(d.A), d.View.Pt(d.B)
	length := d.Q.Sub(d.P).Len()
	switch {
	case d.Kind == RadiusDim || d.Kind == DiameterDim:
		if math.Abs(length-d.B.Sub(d.A).Len()*d.View.Scale) > dimTolerance {
			a.found(RuleDimLength, at, "%q is %.2f mm on paper", d.Figure, length)
		}
	case d.Kind == LevelDim:
		if math.Abs(d.P.Y-pb.Y) > dimTolerance {
			a.found(RuleDimPlace, at, "%q", d.Figure)
		}
	case d.Kind.linear():
		if !d.Broken() && math.Abs(length-d.Value()*d.View.Scale) > dimTolerance {
			a.found(RuleDimLength, at, "%q is %.2f mm on paper, should be %.2f", d.Figure, length, d.Value()*d.View.Scale)
			return
		}
		dir := d.View.Axes.Project(d.Along)
		if math.Abs(pa.Sub(d.P).Dot(dir)) > dimTolerance || math.Abs(pb.Sub(d.Q).Dot(dir)) > dimTolerance {
			a.found(RuleDimPlace, at, "%q", d.Figure)
		}
	}
}
