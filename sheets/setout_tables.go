package sheets

import (
	"fmt"
	"math"
	"strconv"

	"plumbcut/draw"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
)

// setoutTables are the tables of posts and holes. What is marked along the
// string goes into them where the paper is wide enough, else into a third.
func (m *maker) setoutTables() stackBlock {
	room := freeOf(m.room("")).W()
	if m.front().Skewed() { // holes and posts are turned: their edges lie otherwise
		out := stackBlock{&tableBlock{m.tapeTable(false)}}
		if m.dug() {
			out = append(out, &tableBlock{m.holeTable(false)})
		}
		if t := m.keepOutTable(); len(t.Rows) > 0 {
			out = append(out, &tableBlock{t})
		}
		return out
	}
	if !m.dug() {
		tape := m.tapeTable(true)
		if w, _ := tape.Size(); w > room {
			tape = m.tapeTable(false)
		}
		return stackBlock{&tableBlock{tape}}
	}
	tape, hole := m.tapeTable(true), m.holeTable(true)
	wide := func(t draw.Table) float64 { w, _ := t.Size(); return w }
	out := stackBlock{&tableBlock{m.tapeTable(false)}, &tableBlock{m.stringTable()}, &tableBlock{m.holeTable(false)}}
	if max(wide(tape), wide(hole)) <= room {
		out = stackBlock{&tableBlock{tape}, &tableBlock{hole}}
	}
	if t := m.keepOutTable(); len(t.Rows) > 0 {
		out = append(out, &tableBlock{t})
	}
	return out
}

// figureColumns are columns of figures.
func figureColumns(heads ...string) []draw.Column {
	var out []draw.Column
	for _, h := range heads {
		out = append(out, draw.Column{Head: h, Align: draw.End})
	}
	return out
}

// tapeTable gives for each post how to find its centre and, if wanted, its
// faces along the string.
func (m *maker) tapeTable(faces bool) draw.Table {
	heads := []string{"Along from L", "Out from " + m.setting().from, "Tape from L", "Tape from R"}
	k := m.front()
	if k.Skewed() {
		heads = append([]string{"Along the string"}, heads...)
	}
	if faces {
		heads = append([]string{"Left face", "Right face"}, heads...)
	}
	t := draw.Table{Title: "Post centres", Columns: append([]draw.Column{{Head: "Post"}, {Head: "Mark"}}, figureColumns(heads...)...)}
	left, right := m.fixedPoints()
	posts := m.frame.Of(frame.KindPost)
	for i, c := range m.postCentres() {
		f, half := m.tapeFigures().Length, posts[i].Section.Width/2
		row := []string{strconv.Itoa(posts[i].No), posts[i].Mark}
		if faces {
			row = append(row, f(c.X-half-left.X), f(c.X+half-left.X))
		}
		if under := m.frame.Setout.Under(i); k.Skewed() && under.Skewed() {
			row = append(row, f(m.job.Posts.At[i].Along-k.Meets(left.X, k.PostOuter)))
		} else if k.Skewed() {
			row = append(row, f(c.X-left.X))
		}
		row = append(row, f(c.X-left.X), f(left.Y-c.Y), f(c.Sub(left).Len()), f(c.Sub(right).Len()))
		t.Rows = append(t.Rows, draw.TableRow{Cells: row})
	}
	return t
}

// holeTable gives for each post its hole and, if wanted, its edges along the
// string, its levels and its concrete.
func (m *maker) holeTable(edges bool) draw.Table {
	heads := []string{"Depth", "Ground", "Bottom", "Post foot", "Concrete"}
	if edges {
		heads = append([]string{"Left edge", "Right edge"}, heads...)
	}
	t := draw.Table{Title: "Holes", Columns: append([]draw.Column{{Head: "Post"}, {Head: "Hole"}}, figureColumns(append([]string{"Size"}, heads...)...)...)}
	left, _ := m.fixedPoints()
	posts := m.frame.Of(frame.KindPost)
	for _, b := range m.frame.Of(frame.KindFooting) {
		p, f, hole := m.job.Posts.At[b.No-1], m.tapeFigures(), b.Solid().Bounds()
		row := []string{strconv.Itoa(b.No), b.Mark, holeSize(f, p.Footing)}
		if edges {
			row = append(row, f.Length(hole.Min.X-left.X), f.Length(hole.Max.X-left.X))
		}
		row = append(row, f.Length(p.Footing.Depth), f.Level(p.Ground), f.Level(p.Ground-p.Footing.Depth),
			f.Level(posts[b.No-1].Solid().Bounds().Min.Z), f.Volume(m.frame.ConcreteVolume(b)))
		t.Rows = append(t.Rows, draw.TableRow{Cells: row})
	}
	return t
}

// stringTable gives what is marked along the string at each post.
func (m *maker) stringTable() draw.Table {
	t := draw.Table{Title: "Along the string from L", Columns: append([]draw.Column{{Head: "Post"}},
		figureColumns("Left edge of hole", "Left face", "Right face", "Right edge of hole")...)}
	left, _ := m.fixedPoints()
	f := func(x float64) string { return m.tape(x - left.X) }
	for i, b := range m.frame.Of(frame.KindPost) {
		footing, ok := m.frame.FootingOf(i)
		if !ok {
			continue
		}
		hole := footing.Solid().Bounds()
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{
			strconv.Itoa(b.No), f(hole.Min.X), f(b.Solid().Bounds().Min.X), f(b.Solid().Bounds().Max.X), f(hole.Max.X),
		}})
	}
	return t
}

// holeSize says how wide a hole is.
func holeSize(f interface{ Length(float64) string }, g frame.Footing) string {
	if g.Round {
		return "Ø " + f.Length(g.Size)
	}
	return f.Length(g.Size) + " square"
}

// profilesOff is how far outside the dig the profiles of the string stand, in a
// round figure of either kind: common practice, no source.
func (m *maker) profilesOff() float64 {
	if m.job.Units == frame.FeetInches {
		return 48 * measure.Inch
	}
	return 1200
}

// setoutNotes say how the posts are set out, in order.
func (m *maker) setoutNotes() []string {
	f := m.saidTape
	left, right := m.fixedPoints()
	posts := m.centresOf(m.front())
	line := fmt.Sprintf("Square off %s at L with the 3-4-5 triangle shown. Set the string line %s out from the %s, level, along the outer faces of the posts, %s outside their centres. Its profiles stand %s or more outside the "+m.digs()+", with a saw kerf for it, so that it can come down and go back.",
		m.setting().base, f(left.Y-m.postLine()), m.setting().from, f(posts[0].Y-m.postLine()), f(m.profilesOff()))
	if k := m.front(); k.Skewed() {
		l, r := m.stringMeets(k)
		line = fmt.Sprintf("Square off %s at L and at R with the 3-4-5 triangle shown. Set the string line, level, from %s out at L to %s out at R: it is not parallel with %s, and lies along the outer faces of the posts, %s outside their centres. The posts stand square to it. Its profiles stand %s or more outside the "+m.digs()+", with a saw kerf for it, so that it can come down and go back.",
			m.setting().base, f(left.Y-l.Y), f(left.Y-r.Y), m.setting().base, f(m.job.Posts.Section.Depth/2), f(m.profilesOff()))
	}
	notes := append(m.placeWords(f(right.X-left.X)), line,
		"Posts are numbered from the left"+m.rearNumbers()+". Hook the tape where the string meets the square line from L and mark every post centre along the string. Do not step from post to post.",
		"Prove each post centre with two tapes held level, one from L and one from R. Where a tape does not agree, begin again at L.",
		fmt.Sprintf("Levels are heights above the datum: %s = ±0. Carry them with a laser or a water level and check each once more %s.", stated(m.job.Levels.Datum), m.setting().again),
		m.beforeDigging(),
	)
	for _, n := range []string{m.inDeck(), m.underHouse()} {
		if n != "" {
			notes = append(notes, n)
		}
	}
	return notes
}

// beforeDigging says what is found before the ground or what lies on it is
// opened.
func (m *maker) beforeDigging() string {
	if m.dug() {
		return "Find buried pipes and cables before digging. A licensed person confirms the size of the holes."
	}
	return "No hole is dug: find pipes and cables in what the posts stand on before drilling. A licensed person confirms what carries them."
}

// rearNumbers says how the posts of a rear row are numbered and set out.
func (m *maker) rearNumbers() string {
	n := len(m.rear().Posts)
	if n == 0 {
		return ""
	}
	return ", those in front first, then those at the rear; the rear ones are marked along the base line from L"
}

// inDeck says which posts come up through the deck.
func (m *maker) inDeck() string {
	var in []string
	posts := m.postCentres()
	for i, c := range posts {
		if -c.Y < m.job.Levels.DeckOut && m.job.Posts.At[i].Dug() {
			in = append(in, strconv.Itoa(i+1))
		}
	}
	then := "up through the deck. Lift its boards first and find its joists and bearers."
	if m.job.FloorName() == string(frame.OnSlab) {
		then = "up through the slab. Have it sawn, not broken, and find first what is in it and under it."
	}
	switch len(in) {
	case 0:
		return ""
	case len(posts):
		return "The posts come " + then
	case 1:
		return fmt.Sprintf("Post %s comes %s", in[0], then)
	}
	return fmt.Sprintf("Posts %s come %s", joined(in), then)
}

// underHouse says which holes would reach under a wall of the house.
func (m *maker) underHouse() string {
	var in []string
	for _, f := range m.frame.Of(frame.KindFooting) {
		b := f.Solid().Bounds()
		under := b.Max.Y > 0 && m.rear().OnWall
		for _, r := range m.job.Wall.Returns {
			if b.Max.Y > -r.Length {
				under = under || r.Side == frame.Left && b.Min.X < r.At || r.Side == frame.Right && b.Max.X > r.At
			}
		}
		if under {
			in = append(in, strconv.Itoa(f.No))
		}
	}
	if len(in) == 0 {
		return ""
	}
	hole := "hole of post "
	if len(in) > 1 {
		hole = "holes of posts "
	}
	return "The " + hole + joined(in) + " would reach under the house. Ask a licensed person before digging beside its footing."
}

// triangle is the largest 3-4-5 triangle, in whole steps, that fits between
// the fixed points and the string: its sides along the wall and out from it.
func (m *maker) triangle() (along, out float64) {
	step := 100.0
	if m.job.Units == frame.FeetInches {
		step = 12 * measure.Inch
	}
	left, right := m.fixedPoints()
	wide, deep := right.X-left.X, left.Y-m.postLine()
	if k := m.front(); k.Skewed() {
		l, r := m.stringMeets(k)
		deep = left.Y - max(l.Y, r.Y)
	}
	units := func(x, y float64) float64 { return math.Floor(min(wide/x, deep/y)/step) * step }
	a, b := units(4, 3), units(3, 4)
	if a >= b {
		return 4 * a, 3 * a
	}
	return 3 * b, 4 * b
}
