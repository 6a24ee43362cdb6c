package sheets_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"plumbcut/draw"
)

// A reader of finished drawings: words are joined to lines, lines to tables
// and rows of figures, by where they stand on the paper alone.

// phrase is a line of words that were set together.
type phrase word

// spaceWidth is the width of the space between two words over the height of
// the capitals: a property of the font.
const spaceWidth = 0.3847

// phrasesOf joins words to lines: those that follow each other at one space or
// two, and read the same way on the same line.
func phrasesOf(words []word) []phrase {
	var out []phrase
	for _, w := range words {
		if n := len(out); n > 0 && out[n-1].goesOn(w) {
			p := &out[n-1]
			p.text += " " + w.text
			p.box = p.box.Union(w.box)
			continue
		}
		out = append(out, phrase(w))
	}
	return out
}

// goesOn reports whether a word follows a line at a space.
func (p phrase) goesOn(w word) bool {
	const near = 0.03 // mm: pdftotext rounds to a fraction of a point
	if p.way != w.way || p.size != w.size {
		return false
	}
	gap, off := w.box.X0-p.box.X1, w.box.Y0-p.box.Y0
	if p.way == upright {
		gap, off = w.box.Y0-p.box.Y1, w.box.X0-p.box.X0
	}
	space := spaceWidth * p.size
	return math.Abs(off) < near && (math.Abs(gap-space) < near || math.Abs(gap-2*space) < near)
}

// printed is what is read of a whole set.
type printed struct {
	pages [][]phrase
	text  []string // of each page, in one line
}

func readPrinted(pages [][]word) printed {
	var out printed
	for _, words := range pages {
		ps := phrasesOf(words)
		for i := range ps {
			ps[i].text = onCladding(ps[i].text)
		}
		all := make([]string, len(ps))
		for i, p := range ps {
			all[i] = p.text
		}
		out.pages = append(out.pages, ps)
		out.text = append(out.text, strings.Join(all, " "))
	}
	return out
}

// otherWall are the words of walls that are not cladding on studs.
var otherWall = regexp.MustCompile(`\b(from|From|Out from) (?:the )?(wall|veneer|fascia)$`)

// onCladding words a phrase as on the drawings of a plate on cladding, so that
// one reader reads them all.
func onCladding(s string) string {
	if m := otherWall.FindStringSubmatch(s); m != nil {
		s = strings.TrimSuffix(s, m[2]) + "cladding"
	}
	s = strings.ReplaceAll(s, "anchors, packers", "screws, packers")
	return strings.ReplaceAll(s, "at each anchor,", "at each screw,")
}

var (
	metricFigure = regexp.MustCompile(`^([+±−]?)(\d+(?:\.\d+)?)$`)
	feetFigure   = regexp.MustCompile(`^([+±−]?)(?:(\d+)' ?)?(?:(\d+) ?)?(?:(\d+)/(\d+))?"$`)
)

// figure reads a length or a level, in mm.
func figure(s string) (float64, bool) {
	sign := map[string]float64{"−": -1}
	if m := metricFigure.FindStringSubmatch(s); m != nil {
		v, _ := strconv.ParseFloat(m[2], 64)
		if sign[m[1]] < 0 {
			v = -v
		}
		return v, true
	}
	m := feetFigure.FindStringSubmatch(s)
	if m == nil || m[2]+m[3]+m[4] == "" {
		return 0, false
	}
	var n [4]float64
	for i := range n {
		n[i], _ = strconv.ParseFloat(m[i+2], 64)
	}
	v := n[0]*12 + n[1]
	if n[3] > 0 {
		v += n[2] / n[3]
	}
	if sign[m[1]] < 0 {
		v = -v
	}
	return v * 25.4, true
}

// figures are the lengths in a text, in order.
func figuresIn(words ...string) []float64 {
	var out []float64
	for _, w := range words {
		if v, ok := figure(strings.TrimSpace(w)); ok {
			out = append(out, v)
		}
	}
	return out
}

// row is how a row of running dimensions is found: by its title and the side
// of its view on which it hangs, beyond whose line the figures stand.
type row struct {
	title string
	side  draw.Side
	view  string // title of its view; empty: the title is the only one
}

// How far the near end of a figure of a running row may be from the line of its
// row, mm on paper: where figures crowd, leaders take them further out.
const (
	rowReach  = 9.0
	sideReach = 20.0 // of a row at the left or right, beyond which no other stands
)

// running reads a running row: the figures in order along it, those on the far
// side of its 0 with their minus signs. It reports false if there is no such row.
func (p printed) running(r row) ([]float64, bool) {
	across := r.side == draw.Top || r.side == draw.Bottom
	for _, page := range p.pages {
		if r.view != "" && !slices.ContainsFunc(page, func(q phrase) bool { return isTitle(q, r.view) }) {
			continue
		}
		for _, q := range page {
			if q.text == r.title && (q.way == level) == across {
				if out := rowFigures(page, q, r.side); len(out) > 1 {
					return out, true
				}
			}
		}
	}
	return nil, false
}

// isTitle reports whether a line is the title of a view, with its scale.
func isTitle(q phrase, view string) bool {
	rest, ok := strings.CutPrefix(q.text, view+" 1:")
	_, err := strconv.Atoi(rest)
	return ok && err == nil && q.size == draw.TitleHeight
}

// stop is a figure of a row and its place along it.
type stop struct{ at, value float64 }

// rowFigures gathers the figures beyond the line of a row whose title is q.
func rowFigures(page []phrase, q phrase, side draw.Side) []float64 {
	line := q.box.Centre()
	var stops []stop
	for _, f := range page {
		v, ok := figure(f.text)
		if !ok || f.size > draw.TitleHeight { // larger: the sheet's own number
			continue
		}
		c := f.box.Centre()
		s, gap, reads, reach := stop{c.X, v}, 0.0, upright, rowReach
		switch side {
		case draw.Top:
			gap = f.box.Y0 - line.Y
		case draw.Bottom:
			gap = line.Y - f.box.Y1
		case draw.Left:
			s.at, gap, reads, reach = -c.Y, line.X-f.box.X1, level, sideReach
		case draw.Right:
			s.at, gap, reads, reach = -c.Y, f.box.X0-line.X, level, sideReach
		}
		if f.way == reads && gap > -0.1 && gap < reach {
			stops = append(stops, s)
		}
	}
	return increasing(stops)
}

// increasing is the longest run of stops from the 0 of a row on whose figures
// rise, and those before the 0, whose minus figures fall backwards.
func increasing(stops []stop) []float64 {
	slices.SortFunc(stops, func(a, b stop) int { return compareFloats(a.at, b.at) })
	zero := slices.IndexFunc(stops, func(s stop) bool { return s.value == 0 })
	if zero < 0 {
		return nil
	}
	var before []float64
	for i := zero - 1; i >= 0; i-- {
		before = append(before, -stops[i].value)
	}
	var after []float64
	for _, s := range stops[zero+1:] {
		after = append(after, s.value)
	}
	out := longestRise(before)
	slices.Reverse(out)
	for i := range out {
		out[i] = -out[i]
	}
	return append(append(out, 0), longestRise(after)...)
}

func compareFloats(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// longestRise is the longest rising part of a list, which leaves out figures
// of something else that stand in between.
func longestRise(v []float64) []float64 {
	best := make([][]float64, len(v))
	var out []float64
	for i := range v {
		for k := range i {
			if v[k] < v[i] && len(best[k]) > len(best[i]) {
				best[i] = best[k]
			}
		}
		best[i] = append(slices.Clone(best[i]), v[i])
		if len(best[i]) > len(out) {
			out = best[i]
		}
	}
	return out
}

// table reads a table by the heads of the columns that are wanted, from its
// first column on: their cells, row by row. A table that goes on elsewhere
// under the same heads is read on.
func (p printed) table(heads ...string) [][]string {
	var out [][]string
	for _, page := range p.pages {
		for _, first := range page {
			if first.text != heads[0] {
				continue
			}
			line := sameLine(page, first.box.Y0, first.box.X0, math.Inf(1))
			if columns, ok := pick(line, heads); ok {
				out = append(out, tableRows(page, columns)...)
			}
		}
	}
	return out
}

// pick finds the wanted heads in a line of heads, in order.
func pick(line []phrase, heads []string) ([]phrase, bool) {
	var out []phrase
	for _, q := range line {
		if len(out) < len(heads) && q.text == heads[len(out)] {
			out = append(out, q)
		}
	}
	return out, len(out) == len(heads)
}

// sameLine lists what stands on a line between two places, from the left.
func sameLine(page []phrase, y, x0, x1 float64) []phrase {
	const near = 0.1 // mm: bold letters stand on the line a hair otherwise
	var out []phrase
	for _, q := range page {
		if q.way == level && math.Abs(q.box.Y0-y) < near && q.box.X0 >= x0-near && q.box.X1 <= x1+near {
			out = append(out, q)
		}
	}
	slices.SortFunc(out, func(a, b phrase) int { return compareFloats(a.box.X0, b.box.X0) })
	return out
}

// tableRows reads the rows under the heads of a table, as far as each column
// has a cell. A cell stands under the head with which it shares its left or
// its right edge; it may go on on the lines below.
func tableRows(page []phrase, heads []phrase) [][]string {
	const pitch = 18.0 // mm: rows of three lines are closer
	var out [][]string
	y := heads[0].box.Y0
	for {
		next := math.Inf(-1)
		for _, q := range page {
			if q.way == level && q.box.Y0 < y-0.5 && math.Abs(q.box.X0-heads[0].box.X0) < 0.1 {
				next = max(next, q.box.Y0)
			}
		}
		if next < y-pitch {
			return out
		}
		y = next
		cells := make([]string, len(heads))
		for i, h := range heads {
			for _, q := range sameLine(page, y, math.Inf(-1), math.Inf(1)) {
				if math.Abs(q.box.X0-h.box.X0) < 0.1 || math.Abs(q.box.X1-h.box.X1) < 0.1 {
					cells[i] = goesOn(page, q)
				}
			}
		}
		if slices.Contains(cells, "") {
			return out
		}
		out = append(out, cells)
	}
}

// levelWords splits a level mark: its figure and the surface that it names.
var levelWords = regexp.MustCompile(`^([+±−]\S*(?: \d+(?:/\d+)?"| \d+ \d+/\d+")?) (\p{L}.*)$`)

// levels reads all level marks: by the surface, its levels as printed. The name
// of a surface may go on on the lines below.
func (p printed) levels() map[string][]float64 {
	out := map[string][]float64{}
	for _, page := range p.pages {
		for i, q := range page {
			m := levelWords.FindStringSubmatch(q.text)
			if m == nil {
				continue
			}
			v, ok := figure(m[1])
			if !ok {
				continue
			}
			name, last := m[2], q
			for _, next := range page[i+1:] {
				if !below(last, next) || levelWords.MatchString(next.text) {
					break
				}
				name, last = name+" "+next.text, next
			}
			out[name] = append(out[name], v)
		}
	}
	p.levelTable(out)
	return out
}

// levelTable reads the list of levels that stands in for level marks where a
// view has no room for them.
func (p printed) levelTable(out map[string][]float64) {
	for _, r := range p.table("Mark", "Level", "Surface") {
		if v, ok := figure(r[1]); ok {
			out[r[2]] = append(out[r[2]], v)
		}
	}
}

// goesOn is a text with the lines that stand right under it, each beginning
// where it begins.
func goesOn(page []phrase, first phrase) string {
	text, last := first.text, first
	for again := true; again; {
		again = false
		for _, q := range page {
			if below(last, q) && math.Abs(q.box.X0-first.box.X0) < 0.1 && last.box.Y0-q.box.Y0 < lineStep*q.size {
				text, last, again = text+" "+q.text, q, true
				break
			}
		}
	}
	return text
}

// lineStep is more than the lines of a text are apart, in heights of its
// letters, and less than the rows of a table.
const lineStep = 1.95

// below reports whether a line stands right under another, as in a text of
// several lines.
func below(a, b phrase) bool {
	step := a.box.Y0 - b.box.Y0
	return a.way == level && b.way == level && step > 1.2*a.size && step < 2.2*a.size && b.box.X0 < a.box.X1 && a.box.X0 < b.box.X1
}

// about is the text of all sheets that a title names.
func (p printed) about(title string) string {
	var out string
	for i, page := range p.pages {
		if slices.ContainsFunc(page, func(q phrase) bool { return q.size == draw.SheetHeight && strings.HasPrefix(q.text, title) }) {
			out += " " + p.text[i]
		}
	}
	return out
}

// said finds words with figures anywhere in the set.
func (p printed) said(pattern *regexp.Regexp) []string {
	for _, text := range p.text {
		if m := pattern.FindStringSubmatch(text); m != nil {
			return m[1:]
		}
	}
	return nil
}
