package template_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
)

// Tiles: only where no page holds the template, and such that they can be joined.

// TestTilesJoin: every tile has its map; the tile that is trimmed lies with its
// trim line on the thin line of the one that it is glued to, whose paper goes on
// below it by the whole overlap; and at least two crosses lie on each other.
func TestTilesJoin(t *testing.T) {
	tiles := 0
	each(t, func(t *testing.T, m made) {
		byNumber := map[string][]sheetOfPaper{}
		k := geom.P(150/m.frame.Job.Printer.X, 150/m.frame.Job.Printer.Y)
		for _, s := range m.pages {
			if _, n := s.tileOf(); n > 0 {
				s = s.undo(k.X, k.Y)
				byNumber[s.titles()[0].number] = append(byNumber[s.titles()[0].number], s)
			}
		}
		for number, pages := range byNumber {
			if err := joinable(pages, m.frame.Job.Templates.Overlap); err != nil {
				t.Errorf("%s: %v", number, err)
			}
		}
	})
	all, _ := corpus()
	for _, m := range all {
		for _, s := range m.pages {
			if _, n := s.tileOf(); n > 0 {
				tiles++
			}
		}
	}
	if tiles == 0 {
		t.Error("no job has tiles")
	}
}

// tileOf is which tile of how many a page carries; 0 of 0 if none.
func (s sheetOfPaper) tileOf() (no, of int) {
	for _, w := range s.words {
		if tileWords.MatchString(w.text) {
			fmt.Sscanf(w.text, "tile %d of %d", &no, &of)
		}
	}
	return no, of
}

var (
	glueWords = regexp.MustCompile(`^glue: tile (\d+) lies over this, up to the thin line$`)
	layWords  = regexp.MustCompile(`^trim here, lay over tile (\d+)$`)
)

func joinable(pages []sheetOfPaper, overlap float64) error {
	for i, s := range pages {
		no, of := s.tileOf()
		if no != i+1 || of != len(pages) {
			return fmt.Errorf("page %d of its %d says tile %d of %d", i+1, len(pages), no, of)
		}
		if err := s.checkMap(no, of); err != nil {
			return err
		}
		joints := 0
		for _, w := range s.words {
			if m := layWords.FindStringSubmatch(w.text); m != nil {
				under := 0
				fmt.Sscan(m[1], &under)
				joints++
				if err := s.laysOn(w, pages[under-1], no, overlap); err != nil {
					return fmt.Errorf("tile %d on tile %d: %w", no, under, err)
				}
			}
		}
		if (joints == 0) != (no == 1) {
			return fmt.Errorf("tile %d is laid over %d others", no, joints)
		}
	}
	return nil
}

// checkMap sees that the map has a cell for each tile, and that of the page at hand
// is dark.
func (s sheetOfPaper) checkMap(no, of int) error {
	var at word
	for _, w := range s.words {
		if tileWords.MatchString(w.text) {
			at = w
		}
	}
	const deep, cell = 20, 7 // mm: the map's depth, and its cells at most
	right := at.at.X + draw.TextWidth(at.text, draw.NoteHeight, false)
	onMap := func(q geom.Pt) bool {
		return q.Y < at.at.Y && q.Y > at.at.Y-deep && q.X < right+1 && q.X > right-1-float64(cell*of)
	}
	var corners []geom.Pt
	for _, l := range s.lines {
		if l.edge() && l.level() && onMap(l.a) && onMap(l.b) {
			corners = append(corners, geom.P(min(l.a.X, l.b.X), l.a.Y))
		}
	}
	if len(corners) != 2*of {
		return fmt.Errorf("its map has %d level lines, want %d", len(corners), 2*of)
	}
	dark := 0
	for _, a := range s.areas {
		if !a.black || !onMap(a.pts[0]) {
			continue
		}
		mid := a.pts[0].Lerp(a.pts[2], 0.5)
		for i := 0; i < len(corners); i += 2 { // the foot and the head of each cell, in order
			lo, hi := min(corners[i].Y, corners[i+1].Y), max(corners[i].Y, corners[i+1].Y)
			if mid.X > corners[i].X && mid.Y > lo && mid.Y < hi && mid.X-corners[i].X < hi-lo {
				dark = i/2 + 1
			}
		}
	}
	if dark != no {
		return fmt.Errorf("the map of tile %d has cell %d dark", no, dark)
	}
	return nil
}

// laysOn compares the trim line of a tile with the thin line of the one below.
func (s sheetOfPaper) laysOn(trim word, under sheetOfPaper, no int, overlap float64) error {
	own, other := s.registers(), under.registers()
	var moves []geom.Pt
	for name, at := range own {
		if to, ok := other[name]; ok {
			moves = append(moves, to.Sub(at))
		}
	}
	if len(moves) < 2 || moves[0].Sub(moves[1]).Len() > near {
		return fmt.Errorf("%d crosses in common: %v", len(moves), moves)
	}
	for _, w := range under.words {
		m := glueWords.FindStringSubmatch(w.text)
		if m == nil || m[1] != fmt.Sprint(no) {
			continue
		}
		a, ok := s.thinLineBy(trim, 2)
		b, ok2 := under.thinLineBy(w, overlap+5)
		if !ok || !ok2 {
			return fmt.Errorf("no thin line by %q or %q", trim.text, w.text)
		}
		a.a, a.b = a.a.Add(moves[0]), a.b.Add(moves[0])
		if distance(a.a, b.a, b.b) > near || distance(a.b, b.a, b.b) > near {
			return fmt.Errorf("the trim line lies at %v, the thin line at %v", a, b)
		}
		end := under.inkBeyond(b, w) // of the paper that is glued
		if end < overlap-near {
			return fmt.Errorf("the paper goes on %.2f below it, want %.2f", end, overlap)
		}
		return nil
	}
	return fmt.Errorf("nothing says that it is glued")
}

func (s sheetOfPaper) registers() map[string]geom.Pt {
	p := pattern{discs: s.circles, words: s.words}
	return p.crossesOf()
}

// thinLineBy is the long thin line along some words that is farthest from them
// within reach, on either side.
func (s sheetOfPaper) thinLineBy(w word, reach float64) (line, bool) {
	best, found := 0.0, line{}
	for _, l := range s.lines {
		along := l.level() && !w.turned || l.plumb() && w.turned
		bar := math.Abs(l.b.Sub(l.a).Len()-6*25.4) < near
		if !l.trim() || !along || bar || l.b.Sub(l.a).Len() < 30 {
			continue
		}
		gap := w.gap(l)
		if gap < reach && gap > best {
			best, found = gap, l
		}
	}
	return found, best > 0
}

// gap is how far a line along some words is from them.
func (w word) gap(l line) float64 {
	t := draw.Text{At: w.at, Height: 2.5, String: w.text}
	if w.turned {
		t.Turn = math.Pi / 2
	}
	best := math.Inf(1)
	for _, q := range t.Quad() {
		if w.turned {
			best = min(best, math.Abs(q.X-l.a.X))
		} else {
			best = min(best, math.Abs(q.Y-l.a.Y))
		}
	}
	return best
}

// inkBeyond is how far the template goes on beyond the thin line, on the side of
// some words.
func (s sheetOfPaper) inkBeyond(thin line, w word) float64 {
	far := 0.0
	for _, l := range s.lines {
		if !l.fold() && !l.cut() && !l.edge() && !l.trim() {
			continue
		}
		for _, q := range []geom.Pt{l.a, l.b} {
			d, to := q.Y-thin.a.Y, w.at.Y-thin.a.Y
			inside := q.X > min(thin.a.X, thin.b.X)-near && q.X < max(thin.a.X, thin.b.X)+near
			if w.turned {
				d, to = q.X-thin.a.X, w.at.X-thin.a.X
				inside = q.Y > min(thin.a.Y, thin.b.Y)-near && q.Y < max(thin.a.Y, thin.b.Y)+near
			}
			if inside && d*to > 0 && math.Abs(d) < math.Abs(to) {
				far = max(far, math.Abs(d))
			}
		}
	}
	return far
}

// TestNothingIsTiledThatAPageHolds: with its words over or beside it, no template
// that is cut into tiles fits a page, lying or turned.
func TestNothingIsTiledThatAPageHolds(t *testing.T) {
	// Of a page, mm: what bars and head take beside the margins, and a little.
	const besideBars, headAndBars, slack = 16, 45, 1
	each(t, func(t *testing.T, m made) {
		for _, p := range m.patterns {
			if !p.tiled {
				continue
			}
			var bare draw.Rect
			for _, s := range m.whole.Whole.Sheets {
				if s.Number == p.number {
					bare = drawn(s)
				}
			}
			margin := m.frame.Job.Templates.Margin
			w, h := m.pages[0].w-2*margin-besideBars-slack, m.pages[0].h-2*margin-headAndBars-slack
			words := draw.TextWidth(strings.TrimSpace(p.head), draw.NoteHeight, false)
			for _, turned := range []bool{false, true} {
				bw, bh := bare.W(), bare.H()
				if turned {
					w, h = h, w
				}
				over := 14 + 4.5*math.Ceil(1.15*words/max(bw, 84)) // a title of two lines, then sentence after sentence
				beside := 45 + 5.0
				deep := 20 + 4.5*math.Ceil(1.3*words/45)
				if max(bw, 84) <= w && bh+over <= h || bw+beside <= w && max(bh, deep) <= h {
					t.Errorf("%s %s is %.0f × %.0f and is tiled: a page holds %.0f × %.0f", p.number, p.title, bw, bh, w, h)
				}
			}
		}
	})
}

// drawn is the rectangle round all lines of a sheet.
func drawn(s *draw.Sheet) draw.Rect {
	r := draw.EmptyRect()
	for _, it := range s.Items {
		if it.Path != nil {
			r = r.Union(it.Path.Bounds())
		}
	}
	return r
}
