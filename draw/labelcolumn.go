package draw

import (
	"math"
	"sort"

	"plumbcut/geom"
)

// NoteColumn is a column of notes at one side of a view, each with a leader to
// what it speaks of. The notes stand one under the other, as near to the
// height of their things as they come, in the order in which no two leaders
// cross.
type NoteColumn struct {
	View   *View
	Bounds Rect    // outline of the view, in the view plane, mm of the model
	Side   Side    // Left or Right
	Offset float64 // from the outline to the words, mm on paper; 0 is 18
	Width  float64 // of the words, mm on paper; 0 is 55
	notes  []ColumnNote
}

// ColumnNote is one note of a column.
type ColumnNote struct {
	Text   string     // as a builder says it; wrapped
	At     []geom.Vec // points of the thing, the best first: the leader takes the one that it reaches best
	Inside bool       // the points lie inside the thing (dot), not on its edge (arrow)
	ID     string     // of the member, as Path.ID
}

// NewNoteColumn starts a column of notes at one side of a view.
func NewNoteColumn(v *View, bounds Rect, side Side) *NoteColumn {
	return &NoteColumn{View: v, Bounds: bounds, Side: side}
}

// Add adds a note about a thing: an arrow to a point on its edge. With more
// points the leader takes the one that it reaches best.
func (c *NoteColumn) Add(text string, at ...geom.Vec) *NoteColumn {
	return c.AddNote(ColumnNote{Text: text, At: at})
}

// AddInside adds a note about a thing: a dot at a point inside it.
func (c *NoteColumn) AddInside(text string, at ...geom.Vec) *NoteColumn {
	return c.AddNote(ColumnNote{Text: text, At: at, Inside: true})
}

// AddNote adds a note; one without a point is left out.
func (c *NoteColumn) AddNote(n ColumnNote) *NoteColumn {
	if len(n.At) > 0 {
		c.notes = append(c.notes, n)
	}
	return c
}

// Empty reports whether there is nothing to draw.
func (c *NoteColumn) Empty() bool { return c == nil || len(c.notes) == 0 }

// The shape of a column of notes, mm on paper (own).
const (
	columnOffset = 18.0
	columnGap    = 3.5  // between two notes
	columnLift   = 0.35 // leaders rise (or fall) by this part of their run where free
	columnLiftTo = 12.0 // but by no more than this
)

func (c *NoteColumn) offset() float64 {
	if c.Offset == 0 {
		return columnOffset
	}
	return c.Offset
}

// columnPlan is one note laid out.
type columnPlan struct {
	note ColumnNote
	text block
	to   geom.Pt // the first target on the paper
	want float64 // y of the middle of the block that suits the leader
	mid  float64 // y of the middle that it gets
	bend geom.Pt // where the leader leaves the words' height
}

// plan lays the notes out, lowest first.
func (c *NoteColumn) plan() []columnPlan {
	out := c.View.Outline(c.Bounds)
	edge, side := out.X1, 1.0
	if c.Side == Left {
		edge, side = out.X0, -1
	}
	bendX := edge + side*(c.offset()-shoulder-shoulderGap)
	width := c.Width
	if width == 0 {
		width = labelWidth
	}
	plans := make([]columnPlan, len(c.notes))
	for i, n := range c.notes {
		p := columnPlan{note: n, to: c.View.Pt(n.At[0])}
		p.text = block{lines: Wrap(n.Text, NoteHeight, false, width), height: NoteHeight}
		lift := min(columnLift*math.Abs(bendX-p.to.X), columnLiftTo)
		if p.to.Y < out.Centre().Y {
			lift = -lift
		}
		p.want = p.to.Y + lift + NoteHeight/2 - p.text.depth()/2
		p.bend.X = bendX
		plans[i] = p
	}
	sort.SliceStable(plans, func(i, j int) bool { return plans[i].want < plans[j].want })
	stack(plans, out)
	uncross(plans, out)
	return plans
}

// stack spreads the notes, in their order, within the height of the view if
// they fit there and about its middle if not.
func stack(plans []columnPlan, out Rect) {
	want, size := make([]float64, len(plans)), make([]float64, len(plans))
	total := -columnGap
	for i, p := range plans {
		want[i], size[i] = p.want, p.text.depth()
		total += size[i] + columnGap
	}
	lo, hi := out.Y0, out.Y1
	if total > hi-lo {
		lo, hi = out.Centre().Y-total/2, out.Centre().Y+total/2
	}
	for i := 1; i < len(want); i++ {
		want[i] = max(want[i], want[i-1]) // after a swap: in the given order
	}
	for i, y := range spread(want, size, columnGap, lo, hi) {
		p := &plans[i]
		p.mid = y
		p.bend.Y = y + p.text.depth()/2 - NoteHeight/2
	}
}

// uncross swaps neighbours whose leaders cross until none do. Every swap
// shortens the leaders in sum, so it ends; the bound is for safety.
func uncross(plans []columnPlan, out Rect) {
	for range len(plans) * len(plans) {
		swapped := false
		for i := 0; i < len(plans); i++ {
			for j := i + 1; j < len(plans) && !swapped; j++ {
				a, b := plans[i], plans[j]
				if cross(a.bend, a.to, b.bend, b.to) {
					plans[i], plans[j] = b, a
					swapped = true
				}
			}
		}
		if !swapped {
			return
		}
		stack(plans, out)
	}
}

// Extent is the rectangle of paper that the words need where the view now
// stands, with their leaders' room; empty without notes.
func (c *NoteColumn) Extent() Rect {
	r := EmptyRect()
	if c.Empty() {
		return r
	}
	out := c.View.Outline(c.Bounds)
	for _, p := range c.plan() {
		r = r.Union(c.box(p, out))
	}
	if c.Side == Left {
		r.X1 = out.X0
	} else {
		r.X0 = out.X1
	}
	return r
}

// box is the place of the words of a note.
func (c *NoteColumn) box(p columnPlan, out Rect) Rect {
	x := out.X1 + c.offset()
	y0, y1 := p.mid-p.text.depth()/2, p.mid+p.text.depth()/2
	if c.Side == Left {
		x = out.X0 - c.offset()
		return Rect{x - p.text.width(), y0, x, y1}
	}
	return Rect{x, y0, x + p.text.width(), y1}
}

// Draw puts the notes on the sheet where the view now stands. Draw the
// dimension rows first: the leaders keep clear of their figures.
func (c *NoteColumn) Draw(p *Placer) {
	if c.Empty() {
		return
	}
	out := c.View.Outline(c.Bounds)
	plans := c.settle(p, c.plan(), out)
	for _, plan := range plans {
		box := c.box(plan, out)
		at, align := geom.P(box.X0, box.Y1), Start
		if c.Side == Left {
			at.X, align = box.X1, End
		}
		plan.text.draw(p.Sheet, Notes, at, align)
	}
	for i, line := range c.leaders(p, plans) {
		n := plans[i].note
		m := Mark{Kind: NoteMark, Label: n.Text, Box: c.box(plans[i], out), Leader: line, Inside: n.Inside, ID: n.ID}
		p.Sheet.drawLeader(m.Leader, m.Inside)
		p.Sheet.Marks = append(p.Sheet.Marks, m)
	}
}

// settle moves notes whose words would touch what is on the sheet up or down to
// the nearest free place, in their order.
func (c *NoteColumn) settle(p *Placer, plans []columnPlan, out Rect) []columnPlan {
	const step, most = 1.0, 60 // mm, and how many of them
	floor := math.Inf(-1)
	for i := range plans {
		for k := range 2 * most {
			try := plans[i]
			move := float64((k+1)/2) * step
			if k%2 == 1 {
				move = -move
			}
			try.mid += move
			try.bend.Y += move
			box := c.box(try, out)
			if box.Y0 >= floor-slack && p.Free(box, nearLine) {
				plans[i] = try
				break
			}
		}
		floor = c.box(plans[i], out).Y1 + columnGap
	}
	return plans
}

// leaders chooses for each note the target and the bend with which the leaders
// disturb the sheet and each other least. Where one cannot but touch something,
// it looks at more bends.
func (c *NoteColumn) leaders(p *Placer, plans []columnPlan) [][]geom.Pt {
	lines, cost := c.choose(p, plans, coarseBends())
	if cost >= costLeader {
		if fine, less := c.choose(p, plans, fineBends()); less < cost {
			return fine
		}
	}
	return lines
}

// coarseBends and fineBends are how much farther from the words than it must a
// leader may bend, mm on paper.
func coarseBends() []float64 { return []float64{0, 3, 6, 9, 12} }

func fineBends() []float64 { return steps(0, 30, 1) }

// choose is leaders with some bends to choose from. It starts with the best
// leader for each note by itself and changes one after the other as long as
// that takes crossings away.
func (c *NoteColumn) choose(p *Placer, plans []columnPlan, bends []float64) (lines [][]geom.Pt, worst float64) {
	const rounds = 4 // more change nothing
	tries := make([][]leadPlace, len(plans))
	chosen := make([]int, len(plans))
	for i, plan := range plans {
		tries[i] = c.tries(p, plan, bends)
	}
	total := func(i, k int) float64 {
		cost := tries[i][k].cost
		for j := range plans {
			if j != i && linesCross(tries[i][k].leader, tries[j][chosen[j]].leader) {
				cost += costLeader
			}
		}
		return cost
	}
	for range rounds {
		changed := false
		for i := range plans {
			for k := range tries[i] {
				if total(i, k) < total(i, chosen[i]) {
					chosen[i], changed = k, true
				}
			}
		}
		if !changed {
			break
		}
	}
	for i, k := range chosen {
		lines = append(lines, tries[i][k].leader)
		worst = max(worst, total(i, k))
	}
	return lines, worst
}

// tries are the leaders that a note may have, each with what it disturbs: back
// from the words to the thing or, if that stands over or under them, straight
// there.
func (c *NoteColumn) tries(p *Placer, plan columnPlan, bends []float64) []leadPlace {
	side := 1.0
	if c.Side == Left {
		side = -1
	}
	start := plan.bend.Add(geom.P(side*shoulder, 0))
	var back, across []leadPlace
	for rank, at := range plan.note.At {
		for _, longer := range bends {
			bend, to := plan.bend.Sub(geom.P(side*longer, 0)), c.View.Pt(at)
			try := leadPlace{leader: []geom.Pt{start, bend, to}}
			try.cost = p.leaderCost(try.leader, math.Inf(1)) + longer/3 + float64(rank)
			if (bend.X-to.X)*side >= shoulder {
				back = append(back, try)
			} else {
				across = append(across, try)
			}
		}
	}
	if len(back) == 0 {
		return across
	}
	return back
}

// linesCross reports whether two broken lines cross.
func linesCross(a, b []geom.Pt) bool { return Mark{Leader: a}.Crosses(Mark{Leader: b}) }
