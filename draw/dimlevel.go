package draw

import (
	"math"
	"sort"

	"plumbcut/geom"
)

// LevelStack is a column of level marks beside an elevation or a section: one
// line for each named surface, at its true height beside the view; where
// levels lie close, the labels move apart and their lines step to them.
//
//	──view──┐    ▽ +2450  top of plate at wall face
//	        │ ───┴────────
type LevelStack struct {
	View   *View
	Bounds Rect    // outline of the view, in the view plane, mm of the model
	Side   Side    // Left or Right
	Offset float64 // from the outline to the start of the lines, mm on paper
	Stub   float64 // of each line before it steps to its label, mm on paper; 0 is 4
	marks  []levelMark
}

type levelMark struct {
	name string
	at   geom.Vec
}

// NewLevelStack starts a stack of level marks at one side of a view.
func NewLevelStack(v *View, bounds Rect, side Side) *LevelStack {
	return &LevelStack{View: v, Bounds: bounds, Side: side}
}

// Add marks the level of the surface at a point. The name says which surface,
// e.g. "top of beam at inner arris".
func (l *LevelStack) Add(name string, at geom.Vec) *LevelStack {
	l.marks = append(l.marks, levelMark{name, at})
	return l
}

// Empty reports whether there is nothing to draw.
func (l *LevelStack) Empty() bool { return l == nil || len(l.marks) == 0 }

// The look of a level mark, mm on paper (own).
const (
	levelStub   = 4.0 // of the line beside the view
	levelOver   = 1.4 // from the line to the text, which may hang below its baseline
	levelStep   = 5.0 // over which it steps to its label
	levelSide   = 3.0 // of the triangle that stands on the line
	levelIndent = 2.0 // from the start of the label line to the tip of the triangle
	levelText   = 2.0 // from the middle of the triangle to the text, beyond half its side
	levelTail   = 1.0 // of the line beyond the text
)

// levelPlan is one mark laid out.
type levelPlan struct {
	text  string
	dim   Dim
	truth float64 // paper y of the surface
	y     float64 // paper y of the label's line
	width float64 // of the text
}

// levelDepth is from the line under a label to the next one above it.
func levelDepth(text string) float64 {
	return levelOver + NoteHeight + rise(text, NoteHeight) + nearLine
}

// labelRun is the length of the label's line.
func (p levelPlan) labelRun() float64 {
	return levelIndent + levelSide/2 + levelText + p.width + levelTail
}

func (l *LevelStack) plan(h Hand) []levelPlan {
	plans := make([]levelPlan, len(l.marks))
	for i, m := range l.marks {
		d := Dim{View: l.View, B: m.at, Along: geom.V(0, 0, 1), Suffix: "  " + m.name}
		if m.name == "" {
			d.Suffix = ""
		}
		text := d.figure(LevelDim, h.Figures)
		y := l.View.Pt(m.at).Y
		plans[i] = levelPlan{text: text, dim: d, truth: y, width: TextWidth(text, NoteHeight, false)}
	}
	sort.SliceStable(plans, func(i, j int) bool { return plans[i].truth < plans[j].truth })
	want, size := make([]float64, len(plans)), make([]float64, len(plans))
	for i, p := range plans {
		size[i] = levelDepth(p.text)
		want[i] = p.truth + size[i]/2
	}
	for i, y := range spread(want, size, 0, math.Inf(-1), math.Inf(1)) {
		plans[i].y = y - size[i]/2
	}
	return plans
}

func (l *LevelStack) stub() float64 {
	if l.Stub == 0 {
		return levelStub
	}
	return l.Stub
}

// Width is how far the stack reaches out from the outline, mm on paper; 0
// without marks.
func (l *LevelStack) Width(h Hand) float64 {
	if l.Empty() {
		return 0
	}
	run := 0.0
	for _, p := range l.plan(h) {
		run = max(run, p.labelRun())
	}
	return l.Offset + h.extension() + l.stub() + levelStep + run
}

// Extent is the rectangle of paper that the stack needs where the view now
// stands; empty without marks.
func (l *LevelStack) Extent(h Hand) Rect {
	r := EmptyRect()
	if l.Empty() {
		return r
	}
	plans := l.plan(h)
	out := l.View.Outline(l.Bounds)
	w := l.Width(h)
	r = Rect{out.X1, plans[0].y, out.X1 + w, plans[len(plans)-1].y + levelDepth(plans[len(plans)-1].text)}
	if l.Side == Left {
		r.X0, r.X1 = out.X0-w, out.X0
	}
	return r
}

// Draw puts the stack on the sheet where the view now stands.
func (l *LevelStack) Draw(s *Sheet, h Hand) {
	if l.Empty() {
		return
	}
	out := l.View.Outline(l.Bounds)
	edge, side := out.X1, 1.0
	if l.Side == Left {
		edge, side = out.X0, -1
	}
	x0 := edge + side*(l.Offset+h.extension())
	x1, x2 := x0+side*l.stub(), x0+side*(l.stub()+levelStep)
	before := math.Inf(-1)
	for _, p := range l.plan(h) {
		line := pts(x0, p.truth, x1, p.truth, x2, p.y, x2+side*p.labelRun(), p.y)
		if p.truth-before < sameSpot {
			line = line[1:] // the stub is there already
		}
		before = p.truth
		s.levelLine(h, line, side, p)
	}
}

// levelLine draws a level's line, the triangle standing on its last piece and
// the text over it.
func (s *Sheet) levelLine(h Hand, line []geom.Pt, side float64, p levelPlan) {
	s.Line(narrow(Dimension), line...)
	start := line[len(line)-2]
	tip := geom.P(start.X+side*levelIndent, start.Y)
	const rise = 0.8660254037844386 // of an equilateral triangle of side 1
	top := tip.Y + levelSide*rise
	s.Polygon(narrow(Dimension), pts(tip.X, tip.Y, tip.X+levelSide/2, top, tip.X-levelSide/2, top))
	t := Text{
		Layer: Dimension, At: geom.P(tip.X+side*(levelSide/2+levelText), start.Y+levelOver),
		Height: NoteHeight, String: p.text,
	}
	if side < 0 {
		t.Align = End
	}
	s.AddText(t)
	s.Dims = append(s.Dims, Placed{
		Dim: p.dim, Kind: LevelDim, Figure: p.text, P: line[0], Q: line[0], Box: t.Box(), Row: -1,
	})
}

// Level marks one level in a view: a line at the surface reaching from the
// point to the right (or to the left if only that is free) with the triangle
// and the name over it.
func (p *Placer) Level(v *View, at geom.Vec, name string) {
	l := NewLevelStack(v, Rect{}, Right).Add(name, at)
	plan := l.plan(p.Hand)[0]
	from := v.Pt(at)
	side := 1.0
	if !p.Free(levelBox(from, 1, plan), 0) && p.Free(levelBox(from, -1, plan), 0) {
		side = -1
	}
	line := []geom.Pt{from, from.Add(geom.P(side*plan.labelRun(), 0))}
	p.Sheet.levelLine(p.Hand, line, side, plan)
}

// levelBox is the room of a level mark over its line.
func levelBox(from geom.Pt, side float64, p levelPlan) Rect {
	return Bounds(geom.P(from.X, from.Y+figureGap/2), geom.P(from.X+side*p.labelRun(), from.Y+levelDepth(p.text)-nearLine))
}
