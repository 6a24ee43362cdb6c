package sheets_test

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"slices"
	"sort"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/draw/pdf"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
)

// TestMembersRebuiltFromTheFile makes every timber again from the figures and
// words of the finished PDF alone, as pdftotext extracts them, and compares it
// with the model: every corner within half the last place printed, every hole
// too. A mark that is not in the lists fails, and so does one on the wrong face
// or of the wrong hand.
func TestMembersRebuiltFromTheFile(t *testing.T) {
	tool(t, "pdftotext")
	var found ledger
	n := each(t, written(t), func(d *drawn) {
		var b bytes.Buffer
		if err := pdf.Write(&b, d.set, pdf.Options{}); err != nil {
			found.add("writing", d.name, "%v", err)
			return
		}
		cards := readCards(wordsOf(t, b.Bytes()))
		for _, m := range d.frame.Members {
			if m.Kind != frame.KindFooting {
				d.rebuild(m, cards, &found)
			}
		}
	})
	if n == 0 {
		t.Error("no jobs")
	}
	found.report(t)
}

// cells are the cells of one row of a table by the heads of their columns.
type cells map[string]string

// cardText is what the file says of one mark: the rows of each of its tables.
type cardText map[string][]cells

// tableHeads are the heads of the tables of a member's drawing, by the words of
// their titles: of heads of two lines, the first. Columns marked > are set to
// the right.
func tableHeads() map[string][]string {
	return map[string][]string{
		"marking list": {"no.", "mark", ">from", ">centre", ">to", "work", "hold", "done"},
		"saw settings": {"cut", "off square", "mitre", "blade tilt"},
		"housings":     {"face", "wide", "deep", "floor up", "up at", "floor"},

		"housings on the skew": {"no.", "face", "wide", "deep", "floor up", "up at", "floor", "sides", "floor falls"},
		"holes":                {"holes", "drill from", "Ø", "deep", "centre across"},
		"outline":              {"point", ">back", ">down", "line to it", ">radius", ">centre back", ">and down"},
	}
}

var markTitle = regexp.MustCompile(`^([A-Z]+\d+):$`)

// readCards finds the tables of members' drawings on all pages.
func readCards(pages [][]word) map[string]cardText {
	out := map[string]cardText{}
	for _, page := range pages {
		for _, w := range page {
			m := markTitle.FindStringSubmatch(w.text)
			if m == nil || w.size != draw.TitleHeight {
				continue
			}
			title := strings.Join(texts(lineOf(page, w, 120)), " ")
			title = strings.TrimSpace(strings.TrimPrefix(title, m[0]))
			if out[m[1]] == nil {
				out[m[1]] = cardText{}
			}
			card := out[m[1]]
			for name, heads := range tableHeads() {
				if strings.HasPrefix(title, name) {
					rows := readTable(page, w, heads)
					for _, r := range rows {
						r["title"] = title
					}
					card[name] = append(card[name], rows...)
				}
			}
			if kind, ok := strings.CutPrefix(title, ""); ok && len(card["facts"]) == 0 && isKind(kind) {
				card["facts"] = []cells{readFacts(page, w)}
			}
		}
	}
	return out
}

func isKind(s string) bool {
	return slices.Contains(frame.Kinds(), frame.Kind(s))
}

func texts(ws []word) []string {
	out := make([]string, len(ws))
	for i, w := range ws {
		out[i] = w.text
	}
	return out
}

const sameBaseline = 0.2 // mm: baselines of one row

// lineOf are the words of the same height on the line of w, from w on for a
// reach of so many mm, up to a gap.
func lineOf(page []word, w word, reach float64) []word {
	var out []word
	for _, v := range page {
		if math.Abs(v.box.Y0-w.box.Y0) < sameBaseline && v.size == w.size && v.way == level && v.box.X0 >= w.box.X0-sameBaseline && v.box.X0 < w.box.X0+reach {
			out = append(out, v)
		}
	}
	sort.Slice(out, func(i, j int) bool { return out[i].box.X0 < out[j].box.X0 })
	const gap = 5 // mm: no space between words is so wide
	for i := 1; i < len(out); i++ {
		if out[i].box.X0-out[i-1].box.X1 > gap {
			return out[:i]
		}
	}
	return out
}

// linesUnder are the level words under a title, line by line from the top, within
// the width of its table.
func linesUnder(page []word, title word, left, right float64) [][]word {
	var ws []word
	for _, v := range page {
		if v.way == level && v.box.Y1 < title.box.Y0+sameBaseline && v.box.X0 > left && v.box.X1 < right {
			ws = append(ws, v)
		}
	}
	sort.SliceStable(ws, func(i, j int) bool {
		if math.Abs(ws[i].box.Y0-ws[j].box.Y0) > sameBaseline {
			return ws[i].box.Y0 > ws[j].box.Y0
		}
		return ws[i].box.X0 < ws[j].box.X0
	})
	var lines [][]word
	for i, w := range ws {
		if i == 0 || math.Abs(w.box.Y0-ws[i-1].box.Y0) > sameBaseline {
			lines = append(lines, nil)
		}
		lines[len(lines)-1] = append(lines[len(lines)-1], w)
	}
	return lines
}

// column is a column of a table, found by its head.
type column struct {
	name   string
	x0, x1 float64 // of the head
	right  bool
}

const pad = 1.5 // mm, from a rule to the words: from the look of tables

// readTable reads the table under a title. What stands beside it on the sheet is
// passed over: it is not under any of the heads.
func readTable(page []word, title word, heads []string) []cells {
	const headGap, rowGap, wide = 9, 8, 200 // mm: heads and rows follow each other closer
	var cols []column
	var rows []cells
	last := title.box.Y0
	for _, line := range linesUnder(page, title, title.box.X0, title.box.X0+wide) {
		y := line[0].box.Y0
		if cols == nil {
			if last-y > headGap {
				return nil
			}
			if cols = readHeads(line, title.box.X0+pad, heads); cols != nil {
				last = y
			}
			continue
		}
		r, starts := readRow(line, cols)
		switch {
		case last-y > rowGap:
			return rows
		case starts:
			rows = append(rows, r)
		case r != nil && len(rows) > 0: // a cell of more than one line
			for k, v := range r {
				rows[len(rows)-1][k] += " " + v
			}
		}
		if r != nil {
			last = y
		}
	}
	return rows
}

// readHeads finds the columns of a table whose first head stands at x0; nil if
// the line is not that of its heads.
func readHeads(line []word, x0 float64, heads []string) []column {
	var cols []column
	cellsOfLine := inCells(line)
	at := slices.IndexFunc(cellsOfLine, func(w word) bool { return math.Abs(w.box.X0-x0) < edgeSlack })
	if at < 0 || cellsOfLine[at].text != heads[0] {
		return nil
	}
	for _, h := range heads {
		name, right := strings.CutPrefix(h, ">")
		for at < len(cellsOfLine) && cellsOfLine[at].text != name {
			at++
		}
		if at == len(cellsOfLine) {
			return nil
		}
		cols = append(cols, column{name, cellsOfLine[at].box.X0, cellsOfLine[at].box.X1, right})
	}
	return cols
}

// inCells joins the words of a line that stand in one cell: between two cells
// there is the pad of both.
func inCells(line []word) []word {
	var out []word
	for _, w := range line {
		if n := len(out); n > 0 && w.box.X0-out[n-1].box.X1 < 2*pad-edgeSlack {
			out[n-1].text += " " + w.text
			out[n-1].box = out[n-1].box.Union(w.box)
			continue
		}
		out = append(out, w)
	}
	return out
}

const edgeSlack = 0.4 // mm: letters do not fill the width that they are given

// readRow sorts the cells of a line into columns, and tells whether there is
// one in the first column; nil for a line that is not of this table.
func readRow(line []word, cols []column) (cells, bool) {
	r, starts := cells{}, false
	for _, w := range inCells(line) {
		i := slices.IndexFunc(cols, func(c column) bool {
			if c.right {
				return math.Abs(w.box.X1-c.x1) < edgeSlack
			}
			return math.Abs(w.box.X0-c.x0) < edgeSlack
		})
		if i < 0 || w.size != draw.NoteHeight {
			continue
		}
		starts = starts || i == 0
		r[cols[i].name] = strings.TrimSpace(r[cols[i].name] + " " + w.text)
	}
	if len(r) == 0 {
		return nil, false
	}
	return r, starts
}

// readFacts reads the two columns of the table that says what a stick is.
func readFacts(page []word, title word) cells {
	const second, end = 32, 76 // mm from the left: of the column, of the table
	out := cells{}
	for _, line := range linesUnder(page, title, title.box.X0, title.box.X0+end) {
		var label, value []string
		for _, w := range line {
			if w.box.X0 < title.box.X0+second {
				label = append(label, w.text)
			} else {
				value = append(value, w.text)
			}
		}
		if k := strings.Join(label, " "); k != "" && out[k] == "" {
			out[k] = strings.Join(value, " ")
		}
		if out["Treatment"] != "" {
			break
		}
	}
	return out
}

// rebuild makes a member from what the file says and compares.
func (d *drawn) rebuild(m frame.Member, cards map[string]cardText, found *ledger) {
	who := fmt.Sprintf("%s, %s %d", d.name, m.Mark, m.No)
	card, ok := cards[m.Mark]
	if !ok {
		found.add("member without a drawing", who, "no card")
		return
	}
	r := &rebuilder{card: card, kind: m.Kind, units: d.figures.Units}
	again := r.member()
	for _, e := range r.errs {
		found.add("unreadable", who, "%s", e)
	}
	if len(r.errs) > 0 {
		return
	}
	if d.drawnHand(m) != m.Hand {
		fs := again.Features
		again.Features = nil
		for _, f := range fs {
			again.Features = append(again.Features, f.Mirrored(again))
		}
	}
	model := m.Solid().Placed(home(m.Place))
	made := again.Carved()
	d.sameCorners(who, model, made, d.tapeHalf()+again.Section.Depth*angleHalf, found)
	d.sameBores(who, model, made, found)
}

// drawnHand is the hand of the drawing: that of the first of the mark.
func (d *drawn) drawnHand(m frame.Member) frame.Hand {
	for _, o := range d.frame.Members {
		if o.Mark == m.Mark {
			return o.Hand
		}
	}
	return m.Hand
}

// home carries a member from its place back to its own axes.
func home(a geom.Axes) geom.Axes {
	return geom.Axes{
		O: a.Local(geom.Vec{}), U: a.LocalDir(geom.V(1, 0, 0)),
		V: a.LocalDir(geom.V(0, 1, 0)), W: a.LocalDir(geom.V(0, 0, 1)),
	}
}

// tapeHalf is half the last place that member drawings print, mm, and a hair
// for sums of float64.
func (d *drawn) tapeHalf() float64 {
	const hair = 1e-6
	if d.figures.Units == measure.FeetInches {
		return 25.4/32/2 + hair
	}
	return 0.5/2 + hair
}

func corners(s geom.Solid) []geom.Vec {
	_, on := curves(s)
	var out []geom.Vec
	for _, e := range s.Edges() {
		for _, p := range []geom.Vec{e.A, e.B} {
			if !on[p] {
				out = append(out, p)
			}
		}
	}
	return out
}

// curves are the corners of the facets that stand for the curves of a solid,
// as a list and as a set. How many facets a curve has is nobody's business.
func curves(s geom.Solid) (list []geom.Vec, set map[geom.Vec]bool) {
	set = map[geom.Vec]bool{}
	for _, e := range s.Edges() {
		for _, p := range []geom.Vec{e.A, e.B} {
			if e.Smooth && !set[p] {
				set[p] = true
				list = append(list, p)
			}
		}
	}
	return list, set
}

// sameCurves finds every corner of a curve's facets on an edge of the other
// solid, each way.
func (d *drawn) sameCurves(who string, model, made geom.Solid, tol float64, found *ledger) {
	const facets = 0.05 // mm: two rows of facets for one arc
	off := func(a, b geom.Solid) (geom.Vec, float64) {
		worst, at := 0.0, geom.Vec{}
		points, _ := curves(a)
		edges := b.Edges()
		for _, p := range points {
			best := math.Inf(1)
			for _, e := range edges {
				dir := e.B.Sub(e.A)
				t := min(1, max(0, p.Sub(e.A).Dot(dir)/dir.Dot(dir)))
				best = min(best, e.A.Add(dir.Mul(t)).Sub(p).Len())
			}
			if best > worst {
				worst, at = best, p
			}
		}
		return at, worst
	}
	for _, pair := range [][2]geom.Solid{{model, made}, {made, model}} {
		if at, w := off(pair[0], pair[1]); w > tol+facets {
			found.add("curve", who, "at %v the model and what the file gives are %.3f mm apart", at, w)
		}
	}
}

// angleHalf is half the last place of a printed angle, radians.
const angleHalf = 0.05 * math.Pi / 180

// sameCorners compares the corners of two solids, each way, to a tolerance in
// each coordinate.
func (d *drawn) sameCorners(who string, model, made geom.Solid, tol float64, found *ledger) {
	far := func(a, b []geom.Vec) (geom.Vec, float64) {
		worst, at := 0.0, geom.Vec{}
		for _, p := range a {
			best := math.Inf(1)
			for _, q := range b {
				v := p.Sub(q)
				best = min(best, max(math.Abs(v.X), math.Abs(v.Y), math.Abs(v.Z)))
			}
			if best > worst {
				worst, at = best, p
			}
		}
		return at, worst
	}
	d.sameCurves(who, model, made, tol, found)
	a, b := corners(model), corners(made)
	if at, w := far(a, b); w > tol {
		found.add("corner is missing", who, "%v is %.3f mm from any that the file gives", at, w)
	}
	if at, w := far(b, a); w > tol {
		found.add("corner too many", who, "the file gives %v, %.3f mm from any of the model", at, w)
	}
}

// sameBores compares the holes of two solids.
func (d *drawn) sameBores(who string, model, made geom.Solid, found *ledger) {
	tol := d.tapeHalf()
	want, got := model.Bores(), made.Bores()
	if len(want) != len(got) {
		found.add("holes", who, "%d in the model, %d in the file", len(want), len(got))
	}
	for _, w := range want {
		near := func(g geom.Bore) bool {
			v := g.At.Sub(w.At)
			return max(math.Abs(v.X), math.Abs(v.Y), math.Abs(v.Z)) <= tol && math.Abs(2*(g.Radius-w.Radius)) <= tol &&
				g.Dir.Sub(w.Dir).Len() < 1e-9 && math.Abs(g.Depth-w.Depth) <= tol
		}
		if !slices.ContainsFunc(got, near) {
			found.add("hole is missing", who, "%+v", w)
		}
	}
}
