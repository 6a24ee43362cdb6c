package draw

import (
	"math"
	"slices"
	"sort"

	"plumbcut/geom"
)

// Side is a side of a view.
type Side int

// The sides. Figures of Top and Bottom rows read from below, those of Left and
// Right rows from the right.
const (
	Bottom Side = iota
	Top
	Left
	Right
)

// lying reports whether the rows of the side run across the sheet.
func (s Side) lying() bool { return s == Bottom || s == Top }

// outward reports whether "above the dimension line" is away from the view.
func (s Side) outward() bool { return s == Top || s == Left }

// Rows are the dimension rows at one side of a view, the first nearest to it,
// overall dimensions furthest out whatever the order of the calls:
//
//	 |      view       |
//	 +-----------------+
//	 |    |       |    |
//	-/----/-------/----/-   Chain: figures close on the overall as printed
//	 |    |       |    |
//	-o---->------->---->-   Running: each figure is rounded from the datum
//	 |0   |900    |2700|3600
//	 |                 |
//	-/-----------------/-   Overall
//
// Give points of the model: the rows take what lies along them, sort it and
// leave out repeated places. Depth tells the room needed before anything is
// drawn; set the scale of the view first. A figure that does not fit goes
// outside or is led out; it never shrinks.
type Rows struct {
	View   *View
	Bounds Rect // outline of the view, in the view plane, mm of the model
	Side   Side
	First  float64 // from the outline to the first row, mm on paper; 0 is 10
	Reach  float64 // how deep in the outline an extension line may start, mm on paper
	Deep   float64 // how deep in it those of points beyond Reach start, mm on paper
	Within bool    // titles stand over their rows where a space is wide enough, so that none sticks out
	rows   []row
	swap   bool    // titles at the other end than usual
	folds  bool    // long titles stand in several lines
	shift  float64 // all rows stand further out by this, mm on paper

	// What was planned last, and for what: arranging the parts round a view asks
	// for the same plan a dozen times over.
	planned *rowsPlan
	as      footing
	broken  []Break
}

// footing is what a plan of rows depends on beside the rows themselves, of which
// there can only come more, and the breaks of the view.
type footing struct {
	axes                     geom.View
	scale                    float64
	base, at                 geom.Pt
	own                      Figures // of the view
	hand                     Hand
	bounds                   Rect
	side                     Side
	first, reach, deep, away float64
	within, swap, folds      bool
	rows                     int
}

func (r *Rows) footing(h Hand) footing {
	v := r.View
	return footing{
		v.Axes, v.Scale, v.Base, v.At, v.Figures, h, r.Bounds, r.Side,
		r.First, r.Reach, r.Deep, r.shift, r.Within, r.swap, r.folds, len(r.rows),
	}
}

// rowKind is how a row is dimensioned.
type rowKind int

const (
	chainRow rowKind = iota
	runningRow
	equalRow
	overallRow
)

type row struct {
	kind   rowKind
	title  string
	pts    []geom.Vec // runningRow: the datum first
	spaces int
}

// NewRows starts the rows at one side of a view whose outline, in the view
// plane and in millimetres of the model, is bounds.
func NewRows(v *View, bounds Rect, side Side) *Rows {
	return &Rows{View: v, Bounds: bounds, Side: side}
}

// Chain adds a row that dimensions each space between neighbouring points.
// The title, e.g. "post centres", stands at the end of the row; it may be
// empty. Fewer than two different places add no row.
func (r *Rows) Chain(title string, pts ...geom.Vec) *Rows {
	return r.add(row{kind: chainRow, title: title, pts: pts})
}

// Running adds a row of dimensions that all start from datum. Points at both
// sides of it are allowed; the figures carry no sign.
func (r *Rows) Running(title string, datum geom.Vec, pts ...geom.Vec) *Rows {
	return r.add(row{kind: runningRow, title: title, pts: append([]geom.Vec{datum}, pts...)})
}

// Equal adds one dimension from a to b divided into n equal spaces,
// "8 × 655 = 5240".
func (r *Rows) Equal(title string, n int, a, b geom.Vec) *Rows {
	return r.add(row{kind: equalRow, title: title, pts: []geom.Vec{a, b}, spaces: n})
}

// Overall adds a dimension from a to b that stands outside all other rows.
func (r *Rows) Overall(title string, a, b geom.Vec) *Rows {
	return r.add(row{kind: overallRow, title: title, pts: []geom.Vec{a, b}})
}

func (r *Rows) add(w row) *Rows {
	r.rows = append(r.rows, w)
	return r
}

// titled reports whether a row has a title.
func (r *Rows) titled() bool {
	for _, w := range r.rows {
		if w.title != "" {
			return true
		}
	}
	return false
}

// Empty reports whether there is nothing to draw.
func (r *Rows) Empty() bool { return r == nil || len(r.rows) == 0 }

// Depth is how far the rows reach out from the outline, mm on paper, at the
// present scale of the view; 0 without rows.
func (r *Rows) Depth(h Hand) float64 {
	if r.Empty() {
		return 0
	}
	return r.plan(h).depth
}

// Extent is the rectangle of paper that the rows need where the view now
// stands: from the outline outwards, with the titles and figures that pass its
// ends. It is empty without rows.
func (r *Rows) Extent(h Hand) Rect {
	if r.Empty() {
		return EmptyRect()
	}
	p := r.plan(h)
	box := EmptyRect()
	for _, w := range p.rows {
		for _, f := range w.figs {
			box = box.Union(p.rect(f.box))
		}
		box = box.Union(p.rect(Rect{w.line[0], w.v, w.line[1], w.v}))
	}
	return box.Union(p.rect(Rect{p.edgeU[0], 0, p.edgeU[1], p.depth}))
}

// ink lists where the words and the lines of the rows stand on the paper.
func (r *Rows) ink(h Hand) (words, lines []Rect) {
	if r.Empty() {
		return nil, nil
	}
	p := r.plan(h)
	for _, w := range p.rows {
		lines = append(lines, p.rect(Rect{w.line[0], w.v, w.line[1], w.v}))
		for _, f := range w.figs {
			words = append(words, p.rect(f.box).Expand(f.reach(h)))
			for i := 1; i < len(f.leader); i++ {
				lines = append(lines, Bounds(p.pts(f.leader[i-1:i+1])...))
			}
		}
	}
	for _, e := range p.exts {
		lines = append(lines, p.rect(Rect{e.u, e.v0, e.u, e.v1}))
	}
	return words, lines
}

// sorted returns the rows in their order from the view outwards.
func (r *Rows) sorted() []row {
	rows := append([]row(nil), r.rows...)
	sort.SliceStable(rows, func(i, j int) bool {
		return rows[i].kind != overallRow && rows[j].kind == overallRow
	})
	return rows
}

// rowsPlan is the whole layout of one side in row coordinates: u runs along
// the rows as the paper's x or y does, v outwards from the outline, both mm.
type rowsPlan struct {
	r     *Rows
	h     Hand
	edge  float64    // the paper's x or y at v = 0
	edgeU [2]float64 // the ends of the outline
	rows  []rowPlan
	exts  []extLine
	depth float64
}

// rowPlan is one row laid out.
type rowPlan struct {
	row
	index int
	v     float64
	stops []stop // in rising u; runningRow: includes the datum
	datum float64
	line  [2]float64 // the ends of the dimension line, u
	figs  []figPlan
	far   float64 // how far out the row reaches
}

// stop is a place on a row.
type stop struct {
	p geom.Vec
	u float64
	v float64 // of the point itself: negative inside the outline
}

// figPlan is a figure or title in its place.
type figPlan struct {
	text   string
	box    Rect // u and v
	along  bool // the text runs along the row, not across it
	title  bool
	leader []geom.Pt // u, v; broken line that leads to a figure led out
	kind   DimKind
	dim    Dim
	u      [2]float64 // of the terminators
}

// plan is the layout of the rows where the view now stands. It is not to be
// changed.
func (r *Rows) plan(h Hand) *rowsPlan {
	if as := r.footing(h); r.planned == nil || r.as != as || !slices.Equal(r.broken, r.View.Breaks) {
		r.planned, r.as = r.newPlan(h), as
		r.broken = slices.Clone(r.View.Breaks)
	}
	return r.planned
}

func (r *Rows) newPlan(h Hand) *rowsPlan {
	p := &rowsPlan{r: r, h: h}
	out := r.View.Outline(r.Bounds)
	switch r.Side {
	case Bottom:
		p.edge, p.edgeU = out.Y0, [2]float64{out.X0, out.X1}
	case Top:
		p.edge, p.edgeU = out.Y1, [2]float64{out.X0, out.X1}
	case Left:
		p.edge, p.edgeU = out.X0, [2]float64{out.Y0, out.Y1}
	case Right:
		p.edge, p.edgeU = out.X1, [2]float64{out.Y0, out.Y1}
	}
	for _, w := range r.sorted() {
		if rp := p.newRow(w); len(rp.stops) > 1 {
			rp.index = len(p.rows)
			p.rows = append(p.rows, rp)
		}
	}
	for i := range p.rows {
		w := &p.rows[i]
		w.v = p.rowAt(i)
		if w.kind == runningRow {
			p.layRunning(w)
		} else {
			p.layChain(w)
		}
		p.layTitle(w)
		p.depth = max(p.depth, w.far)
	}
	p.mergeExts()
	return p
}

// newRow finds the stops of a row.
func (p *rowsPlan) newRow(w row) rowPlan {
	rp := rowPlan{row: w}
	for i, q := range w.pts {
		s := p.stop(q)
		if i == 0 {
			rp.datum = s.u
		}
		rp.stops = append(rp.stops, s)
	}
	sort.SliceStable(rp.stops, func(i, j int) bool { return rp.stops[i].u < rp.stops[j].u })
	kept := rp.stops[:0]
	for _, s := range rp.stops {
		if len(kept) > 0 && s.u-kept[len(kept)-1].u < sameSpot {
			last := &kept[len(kept)-1]
			last.v = max(last.v, s.v)
			continue
		}
		kept = append(kept, s)
	}
	rp.stops = kept
	return rp
}

func (p *rowsPlan) stop(q geom.Vec) stop {
	at := p.r.View.Pt(q)
	switch p.r.Side {
	case Bottom:
		return stop{q, at.X, p.edge - at.Y}
	case Top:
		return stop{q, at.X, at.Y - p.edge}
	case Left:
		return stop{q, at.Y, p.edge - at.X}
	}
	return stop{q, at.Y, at.X - p.edge}
}

// rowAt is how far out row i stands, given where the rows before it end.
func (p *rowsPlan) rowAt(i int) float64 {
	inward := strokeLength / 2 // what the row needs on its own inner side
	if w := &p.rows[i]; !p.r.Side.outward() && w.kind == runningRow && w.title != "" {
		if _, ok := p.titleWithin(w, TextWidth(w.title, NoteHeight, false)); ok {
			inward = figureGap + p.h.FigureHeight() + titleHalf
		}
	}
	if !p.r.Side.outward() && p.rows[i].kind != runningRow {
		height := p.h.FigureHeight()
		for k := 1; k < len(p.rows[i].stops); k++ {
			text := p.chainFigure(&p.rows[i], k).text
			inward = max(inward, overLine(text, height)+height+rise(text, height))
		}
	}
	if p.rows[i].title != "" {
		inward = max(inward, p.titleHalf(p.rows[i].title))
	}
	if i == 0 {
		first := p.r.First
		if first == 0 {
			first = firstRow
		}
		return max(first, inward+textGap) + p.r.shift
	}
	before := p.rows[i-1]
	return max(before.v+rowPitch, before.far+textGap+inward)
}

// outerStops are the places of the extension lines that pass row i on their
// way to a row further out.
func (p *rowsPlan) outerStops(i int) []float64 {
	var us []float64
	for _, w := range p.rows[i+1:] {
		for _, s := range w.stops {
			us = append(us, s.u)
		}
	}
	sort.Float64s(us)
	return us
}

// along is the world direction in which the rows measure.
func (p *rowsPlan) along() geom.Vec {
	if p.r.Side.lying() {
		return p.r.View.Axes.Right
	}
	return p.r.View.Axes.Up
}

// dimKind is the kind of the dimensions of a row.
func (w row) dimKind() DimKind {
	switch w.kind {
	case chainRow:
		return ChainDim
	case runningRow:
		return RunningDim
	case equalRow:
		return EqualDim
	}
	return SingleDim
}

// layTitle sets the title of a row at the end where no other side's rows come:
// left of Bottom rows, over Left rows, right of Top rows, under Right rows.
func (p *rowsPlan) layTitle(w *rowPlan) {
	if w.title == "" {
		return
	}
	lo, hi := w.line[0], w.line[1]
	for _, f := range w.figs {
		lo, hi = min(lo, f.box.X0), max(hi, f.box.X1)
	}
	if !p.r.Side.lying() { // past the corner, out of the way of leaders
		lo, hi = min(lo, p.edgeU[0]), max(hi, p.edgeU[1])
	}
	width, half := TextWidth(w.title, NoteHeight, false), NoteHeight/2
	if box, ok := p.titleWithin(w, width); ok {
		w.figs = append(w.figs, figPlan{text: w.title, box: box, along: true, title: true})
		return
	}
	lines := p.titleLines(w.title)
	for i, line := range lines {
		width, v := TextWidth(line, NoteHeight, false), w.v+p.lineOff(i, len(lines))
		box := Rect{lo - 2*textGap - width, v - half, lo - 2*textGap, v + half}
		if p.titleHigh() {
			box.X0, box.X1 = hi+2*textGap, hi+2*textGap+width
		}
		w.figs = append(w.figs, figPlan{text: line, box: box, along: true, title: true})
	}
	w.far = max(w.far, w.v+p.titleHalf(w.title))
}

// The lengths at which a title is folded, mm on paper (own): of an upright row,
// and of a lying one, whose title stands beside the view.
const (
	uprightFold = 34.0
	lyingFold   = 16.0
)

// titleLines are the lines of a row's title.
func (p *rowsPlan) titleLines(title string) []string {
	switch {
	case !p.r.folds:
		return []string{title}
	case p.r.Side.lying():
		return Wrap(title, NoteHeight, false, lyingFold)
	}
	return Wrap(title, NoteHeight, false, uprightFold)
}

// lineOff is how far out of the row's line the middle of the i-th of n lines of
// its title stands. The first is uppermost as one reads it.
func (p *rowsPlan) lineOff(i, n int) float64 {
	down := (float64(i) - float64(n-1)/2) * lineSpacing * NoteHeight
	if p.r.Side.outward() {
		return -down
	}
	return down
}

// titleHalf is the reach of a row's title to both sides of the row.
func (p *rowsPlan) titleHalf(title string) float64 {
	n := len(p.titleLines(title))
	return math.Abs(p.lineOff(0, n)) + titleHalf
}

// titleWithin is the place of a title over its row, if it is wanted there and
// has room: of a running row over the widest space between two stops, of an
// overall one before the figure.
func (p *rowsPlan) titleWithin(w *rowPlan, width float64) (Rect, bool) {
	width += arrowLength
	switch {
	case p.r.Within && w.kind == overallRow && len(w.figs) == 1:
		mid, fits := fitSpace(w.stops[0].u, w.figs[0].box.X0, width, p.outerStops(w.index))
		return p.figureBox(w.title, w.v, mid), fits
	case !p.r.Within || w.kind != runningRow:
		return Rect{}, false
	}
	widest := 1
	for i := 2; i < len(w.stops); i++ {
		if w.stops[i].u-w.stops[i-1].u > w.stops[widest].u-w.stops[widest-1].u {
			widest = i
		}
	}
	// Clear of the arrowheads at both ends: words hang nearly down to the line.
	mid, fits := fitSpace(w.stops[widest-1].u, w.stops[widest].u, width+arrowLength+2*nearLine, p.outerStops(w.index))
	box := p.figureBox(w.title, w.v, mid)
	for _, f := range w.figs {
		fits = fits && !box.Expand(textGap).Overlaps(f.box)
	}
	return box, fits
}

// titleHalf is the reach of a title of one line to both sides of the row, with
// letters that hang below the baseline.
const titleHalf = NoteHeight * (0.5 + descent)

// titleHigh reports whether titles stand at the high end of u.
func (p *rowsPlan) titleHigh() bool { return p.r.Side.outward() != p.r.swap }

// pt carries row coordinates to the paper.
func (p *rowsPlan) pt(u, v float64) geom.Pt {
	switch p.r.Side {
	case Bottom:
		return geom.P(u, p.edge-v)
	case Top:
		return geom.P(u, p.edge+v)
	case Left:
		return geom.P(p.edge-v, u)
	}
	return geom.P(p.edge+v, u)
}

func (p *rowsPlan) rect(b Rect) Rect {
	return Bounds(p.pt(b.X0, b.Y0), p.pt(b.X1, b.Y1))
}

// isFar reports whether a and b are different places on the paper.
func isFar(a, b float64) bool { return math.Abs(a-b) >= sameSpot }
