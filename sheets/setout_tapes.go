package sheets

import (
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
)

// mostTaped is the greatest number of posts whose tapes are all drawn; of more,
// only those of the two outer posts are, and the table gives the rest.
const mostTaped = 4

// tape is a tape drawn from a fixed point to a post.
type tape struct{ from, to geom.Vec }

// tapes are the tapes that the plan draws.
func (m *maker) tapes() []tape {
	left, right := m.fixedPoints()
	posts := m.postCentres()
	if n := len(posts); n > mostTaped {
		posts = []geom.Vec{posts[0], posts[n-1]}
	}
	var out []tape
	for _, p := range posts {
		out = append(out, tape{left, p}, tape{right, p})
	}
	return out
}

// drawTapes draws each tape as a dimension along it, its figure where no other
// tape runs through it.
func (m *maker) drawTapes(p *page, v *draw.View) {
	all := m.tapes()
	for i, t := range all {
		share := m.tapeShare(p, v, all, i)
		draw.Span{View: v, A: t.from, B: t.to, Share: share}.Draw(p.sheet, p.hand)
	}
}

// tapeShare is where along a tape its figure is farthest from the other tapes.
func (m *maker) tapeShare(p *page, v *draw.View, all []tape, i int) float64 {
	const first, last, steps = 0.2, 0.8, 25
	const enough = 4.0 // mm on paper: beyond it nearer to the middle is better
	a, b := v.Pt(all[i].from), v.Pt(all[i].to)
	width := draw.TextWidth(p.hand.Figures.Length(b.Sub(a).Len()/v.Scale), draw.NoteHeight, false)
	along := b.Sub(a).Unit()
	best, most := 0.5, math.Inf(-1)
	for k := range steps {
		t := first + (last-first)*float64(k)/(steps-1)
		mid := a.Lerp(b, t)
		clear := enough
		for j, o := range all {
			if j == i {
				continue
			}
			for _, q := range []geom.Pt{mid.Sub(along.Mul(width / 2)), mid, mid.Add(along.Mul(width / 2))} {
				clear = min(clear, distance(q, v.Pt(o.from), v.Pt(o.to)))
			}
		}
		if clear -= math.Abs(t - 0.5); clear > most {
			best, most = t, clear
		}
	}
	return best
}

// distance is how far q is from the line between a and b.
func distance(q, a, b geom.Pt) float64 {
	d := b.Sub(a)
	l2 := d.Dot(d)
	if l2 == 0 {
		return q.Sub(a).Len()
	}
	return q.Sub(a.Lerp(b, min(max(q.Sub(a).Dot(d)/l2, 0), 1))).Len()
}
