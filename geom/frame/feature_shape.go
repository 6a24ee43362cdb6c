package frame

import (
	"fmt"
	"math"

	"plumbcut/geom"
)

// EndPoint is a point of the outline of a shaped end: Back from the end of the
// top edge and Down square to it. The line that leads to it from the point
// before is straight or, if Round or Hollow is not 0, the shorter arc of that
// radius: a round one swells outwards, a hollow one cuts into the timber.
type EndPoint struct{ Back, Down, Round, Hollow float64 }

// Radius is that of the arc that leads to the point; 0 if the line is straight.
func (q EndPoint) Radius() float64 { return max(q.Round, q.Hollow) }

// Shape is an end whose outline, seen from the side, runs from the end of the
// top edge through its points to the underside. What lies beyond it goes.
//
//	──────────┬ At
//	          │ 1     a nose, a hollow
//	        ╭─╯ 2     and a round
//	─────╮──╯ 3
//	     back ← → out
type Shape struct {
	End    Face   // FaceStart or FaceEnd
	Name   string // "quarter round", …
	At     float64
	Points []EndPoint // the last one on the underside
}

// turn is how far the line from p to the end point q turns, to the left where
// that is positive, seen with the timber on its right.
func (q EndPoint) turn(p EndPoint) float64 {
	if q.Radius() == 0 {
		return 0
	}
	turn := 2 * math.Asin(min(1, math.Hypot(q.Back-p.Back, q.Down-p.Down)/2/q.Radius()))
	if q.Hollow > 0 {
		return turn
	}
	return -turn
}

// before is the point before point i: at first the end of the top edge.
func (s Shape) before(i int) EndPoint {
	if i == 0 {
		return EndPoint{}
	}
	return s.Points[i-1]
}

// Centre is the centre of the arc that leads to point i, back and down as the
// points are; false if the line is straight.
func (s Shape) Centre(i int) (back, down float64, ok bool) {
	p, q := s.before(i), s.Points[i]
	a, ok := geom.ArcBetween(geom.P(-p.Back, -p.Down), geom.P(-q.Back, -q.Down), q.turn(p))
	return plain(-a.Centre.X), plain(-a.Centre.Y), ok
}

// Middle is the middle of the line that leads to point i.
func (s Shape) Middle(i int) (back, down float64) {
	p, q := s.before(i), s.Points[i]
	a, ok := geom.ArcBetween(geom.P(-p.Back, -p.Down), geom.P(-q.Back, -q.Down), q.turn(p))
	if !ok {
		return (p.Back + q.Back) / 2, (p.Down + q.Down) / 2
	}
	m := a.At((a.Start + a.End) / 2)
	return -m.X, -m.Y
}

// leg is the line to point i on the side of the timber, seen with the outline's
// end at the right: x along the timber from At, y up from the top edge.
func (s Shape) leg(i int) geom.Leg {
	q := s.Points[i]
	return geom.Leg{To: geom.P(-q.Back, -q.Down), Turn: q.turn(s.before(i))}
}

// Reach is how far back the outline comes, and how far past At it stands.
func (s Shape) Reach() (back, past float64) {
	o := geom.Outline{{}}
	for i := range s.Points {
		o = append(o, s.leg(i))
	}
	for _, p := range o.Flat() {
		back, past = max(back, -p.X), max(past, p.X)
	}
	return back, past
}

// Along is the place along the member of a point so far back from the end of
// the top edge.
func (s Shape) Along(back float64) float64 {
	if s.End == FaceStart {
		return s.At + back
	}
	return s.At - back
}

// pastEnd is how far beyond a member's end and sides its cutters go, mm: so far
// that rounding leaves no skin.
const pastEnd = 1

// Sweeps implements Sweeper.
func (s Shape) Sweeps(m Member) []geom.Sweep {
	depth := m.Section.Depth
	_, past := s.Reach()
	top := geom.P(past+pastEnd, 0)
	o := geom.Outline{{To: top}, {}}
	for i := range s.Points {
		o = append(o, s.leg(i))
	}
	o = append(o, geom.Leg{To: geom.P(top.X, -depth)})
	place := geom.Axes{O: geom.V(s.At, 0, depth), U: geom.V(1, 0, 0), V: geom.V(0, 0, 1), W: geom.V(0, -1, 0)}
	if s.End == FaceStart { // seen from the other side
		place.U, place.W = place.U.Neg(), place.W.Neg()
		return []geom.Sweep{{Outline: o, Place: place, From: -pastEnd, To: m.Section.Width + pastEnd}}
	}
	return []geom.Sweep{{Outline: o, Place: place, From: -m.Section.Width - pastEnd, To: pastEnd}}
}

// Cutters implements Feature: what it takes away is not convex.
func (Shape) Cutters(Member) []geom.Convex { return nil }

// Bores implements Feature.
func (Shape) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (s Shape) Mirrored(m Member) Feature {
	s.End = m.mirrorFace(s.End)
	if m.Kind.mirrorsAlong() {
		s.At = m.Length - s.At
	}
	return s
}

// Figures implements Feature.
func (s Shape) Figures() FeatureFigures {
	f := FeatureFigures{Kind: s.Name + " end", Face: s.End, At: s.At, Sizes: map[string]float64{}}
	for i, p := range s.Points {
		n := fmt.Sprint(i + 1)
		f.Sizes["back "+n], f.Sizes["down "+n] = p.Back, p.Down
		if p.Round > 0 {
			f.Sizes["round "+n] = p.Round
		}
		if p.Hollow > 0 {
			f.Sizes["hollow "+n] = p.Hollow
		}
	}
	return f
}

// Shape is the shape of an end; false if it has none.
func (m Member) Shape(end Face) (Shape, bool) {
	for _, f := range m.Features {
		if s, ok := f.(Shape); ok && s.End == end {
			return s, true
		}
	}
	return Shape{}, false
}
