package sheets

import (
	"fmt"
	"strconv"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
)

// listFlow fills columns in order: what comes later never stands before.
type listFlow struct {
	*flow
	column int     // that is being filled
	share  float64 // part of the height of each column that is used, 0 to 1
}

// newList starts a flow of columns of a width, of which only a share of the
// height is used: where that takes no more sheets the columns are of a height.
func (m *maker) newList(title string, width, share float64) *listFlow {
	f := &listFlow{flow: newWideFlow(m.hand, m.room(title), width), share: share}
	f.trim()
	return f
}

// shares are those to try, the whole height last.
func shares() []float64 { return []float64{0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1} }

// markClear keeps the tops of the columns off the centring mark, mm on paper.
const markClear = 1.5

// trim takes off the columns of a new sheet what is not used.
func (f *listFlow) trim() {
	for i := range f.columns {
		c := &f.columns[i]
		c.Y1 -= markClear
		c.Y0 = max(c.Y0, c.Y1-freeOf(f.space).H()*f.share)
	}
}

// across is the width of the columns.
func (f *listFlow) across() float64 { return f.columns[0].W() }

// room is the height left in the column.
func (f *listFlow) room() float64 { return f.columns[f.column].H() }

// next goes to the next column.
func (f *listFlow) next() {
	if f.column++; f.column == len(f.columns) {
		f.newSheet()
		f.trim()
		f.column = 0
	}
}

// nextBeside goes to the next column if the sheet has one.
func (f *listFlow) nextBeside() {
	if f.column+1 < len(f.columns) {
		f.column++
	}
}

// empty reports whether nothing stands in the column yet.
func (f *listFlow) empty() bool {
	full := freeOf(f.space)
	return f.columns[f.column].Y1 == full.Y1-markClear
}

// fits reports whether a block fits the column, or an empty one of the highest.
func (f *listFlow) fits(b block) bool {
	highest := 0.0
	for _, c := range rooms(f.space) { // where the title block takes the whole width, less than all
		highest = max(highest, c.H())
	}
	return b.extent(f.hand, 1).H() <= max(f.room(), min(freeOf(f.space).H()*f.share, highest)-markClear)
}

// add puts a block into the column, or into the next one that has room. One
// higher than any empty column stands in the highest: the audit reports it.
func (f *listFlow) add(b block) {
	e := b.extent(f.hand, 1)
	for range len(f.columns) {
		if e.H() <= f.room() {
			break
		}
		f.next()
	}
	f.put(b, f.column, e)
}

// fewRows is the least number of rows of a long table that stand together.
const fewRows = 3

// addTable puts a table under its heading, on from column to column where it
// is long.
func (f *listFlow) addTable(heading draw.NoteBlock, t draw.Table) {
	for {
		part, rest := cutTable(t, f.room()-under(heading, stackBlock{}).size.H())
		if len(part.Rows) < min(fewRows, len(t.Rows)) && !f.empty() {
			f.next()
			continue
		}
		if part.Rows == nil { // too high for any column
			part.Rows, rest.Rows = t.Rows[:1], t.Rows[1:]
		}
		f.add(under(heading, &tableBlock{part}))
		if len(rest.Rows) == 0 {
			return
		}
		t = rest
		heading.Notes = nil
		heading.Title = strings.TrimSuffix(heading.Title, continued) + continued
		f.next()
	}
}

const continued = " (continued)"

// cutTable parts a table after the rows that fit a height. Both parts keep the
// widths of the whole.
func cutTable(t draw.Table, height float64) (part, rest draw.Table) {
	part = t.Split(height)[0]
	if _, h := part.Size(); h > height {
		part.Rows = nil
	}
	rest = part
	rest.Rows = t.Rows[len(part.Rows):]
	return part, rest
}

// drafts makes a sheet of each page of the flow.
func (f *listFlow) drafts(title string, topics ...string) []draft {
	var out []draft
	for _, s := range f.sheets {
		if len(s) > 0 {
			out = append(out, draft{title, topics, s})
		}
	}
	return out
}

// tabled is a table under its heading, measured.
type tabled struct {
	head  draw.NoteBlock
	table draw.Table
	whole headed
}

func newTabled(head draw.NoteBlock, t draw.Table) tabled {
	return tabled{head, t, under(head, &tableBlock{t})}
}

// addTabled puts a table that is measured into the column, in parts where it
// must.
func (f *listFlow) addTabled(t tabled) {
	if t.whole.size.H() <= f.room() {
		f.add(t.whole)
		return
	}
	f.addTable(t.head, t.table)
}

// sized is a block that is measured once, at full scale, which is that of all
// lists.
type sized struct {
	block
	size draw.Rect
}

func measured(b block) block { return sized{b, b.extent(draw.Hand{}, 1)} }

func (b sized) extent(draw.Hand, float64) draw.Rect { return b.size }

// headed is a block close under its heading; its reference point is its top
// left. It is measured once.
type headed struct {
	head draw.NoteBlock
	body block
	top  float64   // height of the heading
	rest draw.Rect // extent of the body
	size draw.Rect
}

// headGap is the distance from a heading to what it stands over, mm on paper.
const headGap = 2.5

// under puts a block under a heading.
func under(head draw.NoteBlock, body block) headed {
	w, top := head.Size()
	e := body.extent(draw.Hand{}, 1)
	return headed{head, body, top, e, draw.Rect{X0: 0, Y0: -top - headGap - e.H(), X1: max(w, e.W()), Y1: 0}}
}

func (b headed) extent(draw.Hand, float64) draw.Rect { return b.size }

func (b headed) draw(p *page, at geom.Pt, scale float64) {
	b.head.Draw(p.sheet, at)
	b.body.draw(p, geom.P(at.X-b.rest.X0, at.Y-b.top-headGap-b.rest.Y1), scale)
}

func (b headed) finish(p *page) { b.body.finish(p) }

// barStack is blocks close one under the other, measured once.
type barStack struct {
	blocks []block
	size   draw.Rect
}

// barStackGap is the distance between two of them, mm on paper.
const barStackGap = 3.0

func newBarStack(blocks []block) barStack {
	e := stackBlock(blocks).extent(draw.Hand{}, 1)
	e.Y0 += (stackGap - barStackGap) * float64(len(blocks)-1)
	return barStack{blocks, e}
}

func (b barStack) extent(draw.Hand, float64) draw.Rect { return b.size }

func (b barStack) draw(p *page, at geom.Pt, scale float64) {
	for _, part := range b.blocks {
		e := part.extent(p.hand, scale)
		part.draw(p, geom.P(at.X-e.X0, at.Y-e.Y1), scale)
		at.Y -= e.H() + barStackGap
	}
}

func (b barStack) finish(p *page) { stackBlock(b.blocks).finish(p) }

// figureColumn is a column of figures, as wide as the longest.
func figureColumn(head string) draw.Column { return draw.Column{Head: head, Align: draw.End} }

// handed is a mark with the hand of its member, as a builder says it.
func handed(c frame.Cut) string {
	if c.Hand == frame.NoHand {
		return c.Mark
	}
	return c.Mark + " " + string(c.Hand)
}

// section is a section as the lists give it.
func (m *maker) section(s frame.Section) string { return m.figures.Size(s.Depth, s.Width) }

// percent is a share in words.
func percent(share float64) string {
	return strconv.FormatFloat(share*100, 'f', -1, 64) + " %"
}

// whereUsed says which members a cut becomes.
func (m *maker) whereUsed(c frame.Cut) string {
	if c.Kind == frame.KindPacker {
		return m.behind(c)
	}
	var nos []int
	for _, p := range c.Pieces {
		nos = append(nos, m.frame.Members[p.Member].No)
	}
	words := string(c.Kind)
	if len(m.frame.Of(c.Kind)) > 1 {
		words = plural(words, len(nos)) + " " + ranges(nos)
	}
	if c.Part > 0 {
		words += fmt.Sprintf(", %s to %s from the left end", m.figures.Length(c.From), m.figures.Length(c.To))
	}
	return words
}

// behind says which timbers packers stand behind.
func (m *maker) behind(c frame.Cut) string {
	mine := map[int]bool{}
	for _, p := range c.Pieces {
		mine[p.Member] = true
	}
	var posts []int
	plate := false
	for _, j := range m.frame.Joints {
		switch {
		case !mine[j.B]:
		case j.Kind == frame.JointPlateWall:
			plate = true
		case j.Kind == frame.JointPostWall:
			if no := m.frame.Members[j.A].No; len(posts) == 0 || posts[len(posts)-1] != no {
				posts = append(posts, no)
			}
		}
	}
	var words []string
	if plate {
		words = append(words, "behind the wall plate")
	}
	if len(posts) > 0 {
		words = append(words, "behind "+plural("post", len(posts))+" "+ranges(posts))
	}
	return strings.Join(words, ", ")
}

func plural(noun string, n int) string {
	if n == 1 {
		return noun
	}
	return noun + "s"
}

// ranges lists ascending numbers: "1, 3 to 6, 9".
func ranges(nos []int) string {
	var parts []string
	for i := 0; i < len(nos); {
		k := i
		for k+1 < len(nos) && nos[k+1] == nos[k]+1 {
			k++
		}
		part := strconv.Itoa(nos[i])
		switch {
		case k == i+1:
			part += ", " + strconv.Itoa(nos[k])
		case k > i:
			part += " to " + strconv.Itoa(nos[k])
		}
		parts = append(parts, part)
		i = k + 1
	}
	return strings.Join(parts, ", ")
}

// batchWords say what timber a batch is of; what nobody has said is asked for.
func batchWords(b frame.Batch) []string {
	t := b.Timber
	or := func(value, name string) string {
		if value == "" {
			return name + " " + toBeStated
		}
		return value
	}
	words := strings.Join([]string{or(t.Species, "species"), "grade " + stated(t.Grade), or(t.Treatment, "treatment")}, "; ")
	if t.Nominal != "" {
		words = "nominal " + t.Nominal + "; " + words
	}
	return []string{sentence(words)}
}

// litres is a volume given in cubic millimetres, as liquids are sold.
func litres(mm3 float64) string {
	l := measure.Format{Step: 0.01}.Length(mm3 / measure.Litre)
	if l == "1" {
		return "1 litre"
	}
	return l + " litres"
}
