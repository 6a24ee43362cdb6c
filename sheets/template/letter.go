package template

import (
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
)

// label is words, with an arrow beside them or not, that go where there is
// room.
type label struct {
	words  string
	height float64
	bold   bool
	arrow  geom.Pt // where it points; zero: none
	over   bool    // stands on the hatch, on a white ground
	turned bool    // runs up the paper; without an arrow
}

// The look of labels, mm (own).
const (
	wordClear  = 1.0 // round words, from ink
	scanStep   = 2.0 // from one place that is tried to the next
	arrowLong  = 8.0
	arrowHead  = 2.5
	arrowThick = 0.9 // half of a head's width
	arrowRoom  = 2.0 // from an arrow to its words
)

// letterer sets labels on paper where nothing else is.
type letterer struct {
	*ink
	taken []draw.Rect
	lines []stroke    // all ink, hatch included
	tiles []draw.Rect // words lie within one of these; none: anywhere
	only  func(draw.Rect) bool
}

func newLetterer(k *ink, tiles []draw.Rect) *letterer {
	l := &letterer{ink: k, tiles: tiles, lines: slices.Clone(k.lines)}
	for _, c := range k.circles {
		l.taken = append(l.taken, c.box())
	}
	for _, t := range k.words {
		l.taken = append(l.taken, t.Box())
	}
	for _, t := range tiles { // nor may they stand where a page ends
		for _, s := range sides(t) {
			l.lines = append(l.lines, stroke{trimLine, s[0], s[1]})
		}
	}
	for _, f := range k.fills {
		l.taken = append(l.taken, draw.Bounds(f.pts...))
	}
	return l
}

// size is the room that a label takes.
func (b label) size() (w, h float64) {
	w, h = draw.TextWidth(b.words, b.height, b.bold), b.height*1.3
	if b.turned {
		return h, w
	}
	if b.arrow == (geom.Pt{}) {
		return w, h
	}
	if b.arrow.X != 0 {
		return w + arrowLong + arrowRoom, h
	}
	return w + 2*arrowThick + arrowRoom, max(h, arrowLong)
}

// set puts a label at the first free place of an area, from its top left on. It
// reports false, and puts nothing, where there is none.
func (l *letterer) set(b label, area draw.Rect) bool {
	w, h := b.size()
	area = area.Inset(wordClear)
	for y := area.Y1; y-h >= area.Y0; y -= scanStep {
		for x := area.X0; x+w <= area.X1; x += scanStep {
			box := draw.Rect{X0: x, Y0: y - h, X1: x + w, Y1: y}
			if next := l.blocked(box.Expand(wordClear), b.over); next > x {
				x = max(x, next+wordClear-scanStep) // the loop goes on beyond what is in the way
				continue
			}
			if !l.inTile(box) || l.only != nil && !l.only(box) {
				continue
			}
			l.draw(b, box)
			return true
		}
	}
	return false
}

// setAny puts the first of some labels that finds room.
func (l *letterer) setAny(area draw.Rect, labels ...label) bool {
	for _, b := range labels {
		if l.set(b, area) {
			return true
		}
	}
	return false
}

// blocked is how far to the right a thing in the way of a box reaches; less
// than the box if nothing is.
func (l *letterer) blocked(box draw.Rect, over bool) float64 {
	for _, t := range l.taken {
		if t.Overlaps(box) {
			return max(t.X1, box.X0+wordClear+same)
		}
	}
	for _, s := range l.lines {
		if over && s.style == waste {
			continue
		}
		if hits(s, box) {
			if s.a.X == s.b.X {
				return max(s.a.X, box.X0+wordClear+same)
			}
			return box.X0 + wordClear + same
		}
	}
	return box.X0 - 1
}

func (l *letterer) inTile(box draw.Rect) bool {
	for _, t := range l.tiles {
		if t.Encloses(box) {
			return true
		}
	}
	return len(l.tiles) == 0
}

// draw puts a label in its place.
func (l *letterer) draw(b label, box draw.Rect) {
	l.taken = append(l.taken, box.Expand(wordClear)) // so that an arrow is seen to belong to its own words
	if b.over {
		l.fill(draw.Hatch, 0, box.Expand(wordClear).Corners()...)
	}
	at := geom.P(box.X0, (box.Y0+box.Y1)/2-b.height/2)
	turn := 0.0
	if b.turned {
		at, turn = geom.P((box.X0+box.X1)/2+b.height/2, box.Y0), math.Pi/2
	}
	tip := geom.Pt{}
	switch {
	case b.arrow.X < 0:
		tip = geom.P(box.X0, (box.Y0+box.Y1)/2)
		at.X += arrowLong + arrowRoom
	case b.arrow.X > 0:
		tip = geom.P(box.X1, (box.Y0+box.Y1)/2)
	case b.arrow.Y != 0:
		tip = geom.P(box.X0+arrowThick, (box.Y0+box.Y1)/2+b.arrow.Y*arrowLong/2)
		at.X += 2*arrowThick + arrowRoom
	}
	if b.arrow != (geom.Pt{}) {
		back := tip.Sub(b.arrow.Mul(arrowHead))
		half := b.arrow.Left().Mul(arrowThick)
		l.line(edgeLine, tip.Sub(b.arrow.Mul(arrowLong)), back)
		l.fill(draw.Outline, 1, tip, back.Add(half), back.Sub(half))
	}
	l.words = append(l.words, draw.Text{Layer: draw.Notes, At: at, Height: b.height, Turn: turn, Bold: b.bold, String: b.words})
}
