package sheets

import (
	"plumbcut/draw"
	"plumbcut/geom/frame"
)

// keyNote is a note of the list that goes with a keyed section.
type keyNote struct {
	member frame.Member // without a mark: of none
	note   draw.ColumnNote
}

// levelKey is the letter that stands for the i-th level from the top.
func levelKey(i int) string {
	const letters = "abcdefghjkmnpqrstuvwxyz" // i, l and o are too like figures
	if i < len(letters) {
		return letters[i : i+1]
	}
	return letters[i/len(letters)-1:i/len(letters)] + letters[i%len(letters):i%len(letters)+1]
}

// keyMarks puts the marks of the members on a keyed section, on a line of theirs
// where the scale has left out the one that the note speaks of.
func (c *cross) keyMarks(p *page, v *draw.View) []func() {
	var out []func()
	for _, n := range c.list {
		mb, at := n.member, n.note.At[0]
		if mb.Mark == "" {
			continue
		}
		edge := !n.note.Inside || !p.enclosed(v, mb, at)
		if edge {
			at = p.onLine(v, mb, at)
		}
		out = append(out, func() {
			p.placer.Part(draw.Part{View: v, At: at, Mark: mb.Mark, ID: n.note.ID, Edge: edge})
		})
	}
	return out
}

// The width of the lists of a keyed section and, in it, of the names of its
// levels, mm on paper.
const (
	listWidth    = wordWidth
	surfaceWidth = 56.0
)

// lists are the levels by their letters, the members by their marks, and how
// the fall is set.
func (c *cross) lists() stackBlock {
	levels := c.levelTable("Levels of section A", c.surfaces(), surfaceWidth)
	members := draw.NoteBlock{Title: "Members of section A", Width: listWidth}
	for _, n := range c.list {
		members.Notes = append(members.Notes, sentence(n.note.Text))
	}
	out := stackBlock{&tableBlock{levels}, &wordBlock{members}}
	if c.falls() {
		out = append(out, &wordBlock{c.fallWords(listWidth)})
	}
	return out
}

// levelTable lists levels by their letters, their names in a column of a width.
func (m *maker) levelTable(title string, levels []frame.Level, width float64) draw.Table {
	t := draw.Table{Title: title, Columns: []draw.Column{{Head: "Mark"}, {Head: "Level", Align: draw.End}, {Head: "Surface", Width: width}}}
	for i, l := range levels {
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{levelKey(i), m.figures.Level(l.Z), l.Name}})
	}
	return t
}

// listSheets puts the lists on sheets of their own.
func (c *cross) listSheets() []draft {
	const title = sectionTitle + ": lists"
	return c.flowed(title, nil, c.lists())
}
