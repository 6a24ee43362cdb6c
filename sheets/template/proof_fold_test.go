package template_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
)

// What a builder makes of the pages: he tells the templates apart, tapes tiles
// together by their crosses, reads the words, and folds.

// pattern is a template as it lies on the table, tiles joined.
type pattern struct {
	number string
	tiled  bool
	lines  []line
	discs  []disc
	areas  []area
	words  []word
	head   string   // what stands over or beside it
	said   []string // the same, line by line
	title  string
}

// The widths of lines, mm, of the finer group of ISO 128 as the drawings use it.
const (
	thin, middle, thick = 0.13, 0.25, 0.5
	near                = 0.02 // mm: two roundings of the file
)

func (l line) cut() bool   { return math.Abs(l.width-thick) < near && l.dashes == 0 }
func (l line) edge() bool  { return math.Abs(l.width-middle) < near && l.dashes == 0 }
func (l line) mark() bool  { return math.Abs(l.width-middle) < near && l.dashes == 2 }
func (l line) fold() bool  { return math.Abs(l.width-thin) < near && l.dashes == 2 }
func (l line) trim() bool  { return math.Abs(l.width-thin) < near && l.dashes == 0 }
func (l line) level() bool { return math.Abs(l.a.Y-l.b.Y) < near }
func (l line) plumb() bool { return math.Abs(l.a.X-l.b.X) < near }

// undo takes the printer's correction back out of a page.
func (s sheetOfPaper) undo(kx, ky float64) sheetOfPaper {
	mid := geom.P(s.w/2, s.h/2)
	at := func(p geom.Pt) geom.Pt {
		d := p.Sub(mid)
		return mid.Add(geom.P(d.X/kx, d.Y/ky))
	}
	out := sheetOfPaper{w: s.w, h: s.h}
	for _, l := range s.lines {
		l.a, l.b = at(l.a), at(l.b)
		out.lines = append(out.lines, l)
	}
	for _, c := range s.circles {
		c.c, c.r = at(c.c), geom.P(c.r.X/kx, c.r.Y/ky)
		out.circles = append(out.circles, c)
	}
	for _, a := range s.areas {
		b := area{black: a.black}
		for _, p := range a.pts {
			b.pts = append(b.pts, at(p))
		}
		out.areas = append(out.areas, b)
	}
	for _, w := range s.words {
		w.at = at(w.at)
		out.words = append(out.words, w)
	}
	return out
}

var (
	titleWords = regexp.MustCompile(`^(T\d\d+) (.+)$`)
	tileWords  = regexp.MustCompile(`^tile (\d+) of (\d+)$`)
	flapWords  = regexp.MustCompile(`^(?:(T\d\d+) )?(TOP|BOTTOM|LEFT|RIGHT|OUTER SIDE|HOUSE SIDE|FRONT SIDE|REAR SIDE|INNER SIDE|LEFT END|RIGHT END|HOUSE END|OUTER END|FRONT END|REAR END)$`)
)

// patterns reads the templates off the pages.
func patterns(pages []sheetOfPaper) ([]*pattern, error) {
	var out []*pattern
	open := map[string][]*pattern{} // tiles by number
	for _, s := range pages {
		titles := s.titles()
		tiled := slices.ContainsFunc(s.words, func(w word) bool { return tileWords.MatchString(w.text) })
		if tiled {
			if len(titles) != 1 {
				return nil, fmt.Errorf("%d titles on the page of a tile", len(titles))
			}
			p := &pattern{number: titles[0].number, title: titles[0].title, head: titles[0].head, said: titles[0].said, tiled: true,
				lines: s.lines, discs: s.circles, areas: s.areas, words: s.words}
			if open[p.number] == nil {
				out = append(out, p)
			}
			open[p.number] = append(open[p.number], p)
			continue
		}
		found, err := s.apart(titles)
		if err != nil {
			return nil, err
		}
		out = append(out, found...)
	}
	for _, tiles := range open {
		if err := join(tiles); err != nil {
			return nil, err
		}
	}
	return out, nil
}

type heading struct {
	number, title, head string
	said                []string
	at                  geom.Pt
	turned              bool
}

// titles are the headings of the templates on a page, each with the lines under
// it joined.
func (s sheetOfPaper) titles() []heading {
	var out []heading
	for _, w := range s.words {
		m := titleWords.FindStringSubmatch(w.text)
		if m == nil || flapWords.MatchString(w.text) {
			continue
		}
		h := heading{number: m[1], title: m[2], at: w.at, turned: w.turned}
		base := w.at
		for {
			next, ok := s.under(base, w.turned)
			if !ok {
				break
			}
			if next.height > 4 { // the title goes on
				h.title += " " + next.text
			} else {
				h.head += " " + next.text
				h.said = append(h.said, next.text)
			}
			base = next.at
		}
		out = append(out, h)
	}
	return out
}

// under is the line of words that begins just below another.
func (s sheetOfPaper) under(at geom.Pt, turned bool) (word, bool) {
	for _, w := range s.words {
		d := at.Sub(w.at)
		if turned {
			d = geom.P(-d.Y, -d.X)
		}
		if w.turned == turned && math.Abs(d.X) < near && d.Y > 3 && d.Y < 6.5 {
			return w, true
		}
	}
	return word{}, false
}

// apart sorts a page's marks into templates: lines that touch belong together.
func (s sheetOfPaper) apart(titles []heading) ([]*pattern, error) {
	group := make([]int, len(s.lines))
	frame := func(l line) bool { return l.cut() || l.edge() || l.fold() || l.trim() }
	for i := range group {
		group[i] = i
	}
	var root func(int) int
	root = func(i int) int {
		if group[i] != i {
			group[i] = root(group[i])
		}
		return group[i]
	}
	for i, a := range s.lines {
		if !frame(a) {
			continue
		}
		for j, b := range s.lines[:i] {
			if frame(b) && boxesMeet(a, b) && touch(a, b) {
				group[root(i)] = root(j)
			}
		}
	}
	boxes := map[int][2]geom.Pt{}
	for i, l := range s.lines {
		if !frame(l) {
			continue
		}
		b, ok := boxes[root(i)]
		if !ok {
			b = [2]geom.Pt{l.a, l.a}
		}
		for _, p := range []geom.Pt{l.a, l.b} {
			b[0] = geom.P(min(b[0].X, p.X), min(b[0].Y, p.Y))
			b[1] = geom.P(max(b[1].X, p.X), max(b[1].Y, p.Y))
		}
		boxes[root(i)] = b
	}
	isBar := func(l line) bool { return l.trim() && math.Abs(l.b.Sub(l.a).Len()-6*25.4) < near }
	for i, a := range s.lines { // the check bars, which start at one point, are no template
		for _, b := range s.lines {
			if isBar(a) && isBar(b) && a.level() && b.plumb() && a.a.Sub(b.a).Len() < near {
				delete(boxes, root(i))
			}
		}
	}
	var out []*pattern
	for _, h := range titles {
		p := &pattern{number: h.number, title: h.title, head: h.head, said: h.said}
		var frame [2]geom.Pt // the greatest that holds a name of the template's faces
		for _, w := range s.words {
			if m := flapWords.FindStringSubmatch(w.text); m == nil || m[1] != h.number {
				continue
			}
			for _, b := range boxes {
				if inBox(w.at, b) && b[1].Sub(b[0]).Len() > frame[1].Sub(frame[0]).Len() {
					frame = b
				}
			}
		}
		frame = [2]geom.Pt{frame[0].Sub(geom.P(near, near)), frame[1].Add(geom.P(near, near))}
		in := func(q geom.Pt) bool { return inBox(q, frame) }
		for _, l := range s.lines {
			if in(l.a) && in(l.b) {
				p.lines = append(p.lines, l)
			}
		}
		for _, c := range s.circles {
			if in(c.c) {
				p.discs = append(p.discs, c)
			}
		}
		for _, a := range s.areas {
			if in(a.pts[0]) {
				p.areas = append(p.areas, a)
			}
		}
		for _, w := range s.words {
			if in(w.at) {
				p.words = append(p.words, w)
			}
		}
		out = append(out, p)
	}
	return out, nil
}

func inBox(p geom.Pt, b [2]geom.Pt) bool {
	return p.X > b[0].X && p.X < b[1].X && p.Y > b[0].Y && p.Y < b[1].Y
}

// boxesMeet is a quick test before touch.
func boxesMeet(a, b line) bool {
	return max(a.a.X, a.b.X) > min(b.a.X, b.b.X)-near && max(b.a.X, b.b.X) > min(a.a.X, a.b.X)-near &&
		max(a.a.Y, a.b.Y) > min(b.a.Y, b.b.Y)-near && max(b.a.Y, b.b.Y) > min(a.a.Y, a.b.Y)-near
}

// touch reports whether an end of one line lies on the other.
func touch(a, b line) bool {
	return onLine(a.a, b) || onLine(a.b, b) || onLine(b.a, a) || onLine(b.b, a)
}

func onLine(p geom.Pt, l line) bool { return distance(p, l.a, l.b) < near }

// distance is that of a point from a stretch of a line.
func distance(p, a, b geom.Pt) float64 {
	d := b.Sub(a)
	t := 0.0
	if l := d.Dot(d); l > 0 {
		t = min(1, max(0, p.Sub(a).Dot(d)/l))
	}
	return p.Sub(a.Add(d.Mul(t))).Len()
}

// regRadius is that of a registration cross.
const regRadius = 1.5

// crossesOf are a tile's registration crosses by the letter beside each.
func (p *pattern) crossesOf() map[string]geom.Pt {
	out := map[string]geom.Pt{}
	for _, c := range p.discs {
		if !c.whole || math.Abs(c.r.X-regRadius) > near {
			continue
		}
		for _, w := range p.words {
			if len(w.text) == 1 && w.at.Sub(c.c).Len() < 6.5 {
				out[w.text] = c.c
			}
		}
	}
	return out
}

// join lays tiles over each other by their crosses, on to the first.
func join(tiles []*pattern) error {
	whole := tiles[0]
	known := whole.crossesOf()
	rest := tiles[1:]
	for len(rest) > 0 {
		var later []*pattern
		for _, t := range rest {
			own := t.crossesOf()
			var move *geom.Pt
			for name, at := range own {
				to, ok := known[name]
				if !ok {
					continue
				}
				d := to.Sub(at)
				if move != nil && d.Sub(*move).Len() > near {
					return fmt.Errorf("%s: the crosses of two tiles do not match: %v and %v", t.number, d, *move)
				}
				move = &d
			}
			if move == nil {
				later = append(later, t)
				continue
			}
			whole.lay(t, *move)
			for name, at := range own {
				known[name] = at.Add(*move)
			}
		}
		if len(later) == len(rest) {
			return fmt.Errorf("%s: %d tiles share no cross with the others", whole.number, len(later))
		}
		rest = later
	}
	return nil
}

func (p *pattern) lay(t *pattern, move geom.Pt) {
	for _, l := range t.lines {
		l.a, l.b = l.a.Add(move), l.b.Add(move)
		p.lines = append(p.lines, l)
	}
	for _, c := range t.discs {
		c.c = c.c.Add(move)
		p.discs = append(p.discs, c)
	}
	for _, a := range t.areas {
		var pts []geom.Pt
		for _, q := range a.pts {
			pts = append(pts, q.Add(move))
		}
		p.areas = append(p.areas, area{pts, a.black})
	}
	for _, w := range t.words {
		w.at = w.at.Add(move)
		p.words = append(p.words, w)
	}
}

// leafOf is a face of the timber on a pattern.
type leafOf struct {
	name string // as printed
	box  [2]geom.Pt
	side [4]string // "fold", "edge" or "" at the left, bottom, right, top
	// the map to the timber: at lies at on, and the two directions of the paper
	// are those of the timber
	known     bool
	n         geom.Vec
	right, up geom.Vec
	at        geom.Vec
	on        geom.Pt
}

func (f *leafOf) timber(q geom.Pt) geom.Vec {
	d := q.Sub(f.on)
	return f.at.Add(f.right.Mul(d.X)).Add(f.up.Mul(d.Y))
}

// leaves finds the faces by their names: each reaches from its name to the
// nearest fold or edge in the four directions.
func (p *pattern) leaves() []*leafOf {
	var out []*leafOf
	for _, w := range p.words {
		m := flapWords.FindStringSubmatch(w.text)
		if m == nil || m[1] != "" && m[1] != p.number || w.height < 3 {
			continue
		}
		big := math.Inf(1)
		c := w.at // the start of its baseline lies on its flap
		f := &leafOf{name: m[2], box: [2]geom.Pt{geom.P(-big, -big), geom.P(big, big)}}
		for _, l := range p.lines {
			kind := ""
			switch {
			case l.fold():
				kind = "fold"
			case l.edge():
				kind = "edge"
			case l.trim() && !p.tiled:
				kind = "trim"
			default:
				continue
			}
			f.bound(l, c, kind)
		}
		out = append(out, f)
	}
	return out
}

// bound cuts a face off at a line that passes its name.
func (f *leafOf) bound(l line, c geom.Pt, kind string) {
	const least = 20 // mm: shorter ones are ticks, crosses and arrows
	if l.b.Sub(l.a).Len() < least {
		return
	}
	switch {
	case l.plumb() && min(l.a.Y, l.b.Y) < c.Y && max(l.a.Y, l.b.Y) > c.Y:
		if x := l.a.X; x < c.X && x > f.box[0].X {
			f.box[0].X, f.side[0] = x, kind
		} else if x > c.X && x < f.box[1].X {
			f.box[1].X, f.side[2] = x, kind
		}
	case l.level() && min(l.a.X, l.b.X) < c.X && max(l.a.X, l.b.X) > c.X:
		if y := l.a.Y; y < c.Y && y > f.box[0].Y {
			f.box[0].Y, f.side[1] = y, kind
		} else if y > c.Y && y < f.box[1].Y {
			f.box[1].Y, f.side[3] = y, kind
		}
	}
}

// arrowTo is the way in which the arrow beside some words on a face points: it
// stands at half the height of the words, just before or just after them.
func (p *pattern) arrowTo(f *leafOf, words string) (geom.Pt, bool) {
	read := func(q geom.Pt, turned bool) geom.Pt { // with the words level
		if turned {
			return geom.P(q.Y, -q.X)
		}
		return q
	}
	const high, long = 2.5, 8.0
	for _, w := range p.words {
		if w.text != words || !inBox(w.at, f.box) {
			continue
		}
		at, wide := read(w.at, w.turned), draw.TextWidth(words, high, false)
		for _, a := range p.areas {
			if !a.black || len(a.pts) < 3 || len(a.pts) > 4 {
				continue
			}
			tip, base := arrowHead(a.pts[:3])
			dir := tip.Sub(base).Unit()
			mid := read(tip.Sub(dir.Mul(long/2)), w.turned)
			gap := max(at.X-mid.X, mid.X-at.X-wide)
			if math.Abs(mid.Y-at.Y-high/2) < 0.1 && gap < long {
				return upright(dir), true
			}
		}
	}
	return geom.Pt{}, false
}

// upright is the nearest direction along the page.
func upright(d geom.Pt) geom.Pt { return geom.P(math.Round(d.X), math.Round(d.Y)) }

// arrowHead is the tip of a slim triangle and the middle of its base.
func arrowHead(t []geom.Pt) (tip, base geom.Pt) {
	long := 0.0
	for i := range 3 {
		m := t[(i+1)%3].Lerp(t[(i+2)%3], 0.5)
		if d := t[i].Sub(m).Len(); d > long {
			long, tip, base = d, t[i], m
		}
	}
	return tip, base
}

// readingWords takes the heads apart: marks, counts and readings.
var readingWords = regexp.MustCompile(`([A-Z]+\d+(?: left-hand| right-hand)?), (\d+) off: datum cross at (.*?) from the (left end|house end|rear end|post end|bottom)\.`)

type placing struct {
	mark     string
	off      string
	readings []string
	from     string
}

func (p *pattern) placings() []placing {
	var out []placing
	for _, m := range readingWords.FindAllStringSubmatch(p.head, -1) {
		out = append(out, placing{m[1], m[2], strings.Split(m[3], ", "), m[4]})
	}
	return out
}
