package frame

import (
	"math"
	"slices"

	"plumbcut/geom"
)

// Sizes of what stands around the frame. They are only drawn, light and cut
// short, and measured by nobody.
const (
	wallThick   = 110  // of the wall behind the cladding
	aboveTop    = 400  // how far the wall goes on above the plate
	aboveFrame  = 150  // the same above the highest timber, where that is over the plate
	soffitThick = 150  // of the eave above its soffit
	deckThick   = 140  // of deck or paving
	groundMore  = 1000 // how far the ground goes on beyond the frame
	groundThick = 200  // of ground below the deepest footing
)

// The names of the solids around the frame.
const (
	HouseCladding = "cladding"
	HouseWall     = "wall"
	HouseLeft     = "left return"
	HouseRight    = "right return"
	HouseSoffit   = "soffit"
	HouseFascia   = "fascia"
	HouseGutter   = "house gutter"
	HouseDeck     = "deck"
	HouseGround   = "ground"
)

// houseAround makes the solids around the frame: those that the job states.
func houseAround(c *checker, members []Member, roof Roofing) []Solid {
	j, s := c.job, c.set
	w := j.Wall
	rear := s.Rear()
	left, right := s.Front().Reach()
	from, to := min(w.From, rear.From, left), max(w.To, rear.To, right)
	ground := j.Levels.Ground
	low, high := ground, rear.Top
	for _, m := range members {
		low = min(low, m.Place.O.Z)
		high = max(high, m.solid.Bounds().Max.Z)
	}
	for _, p := range j.Levels.Line {
		low = min(low, p.Level)
	}
	for _, p := range roof.Parts {
		high = max(high, p.Shape.Bounds().Max.Z)
	}
	top := max(rear.Top+aboveTop, high+aboveFrame)
	if w.hasSoffit() {
		top = max(rear.Top, w.Soffit)
	}
	e := extent{from, to, ground, top, j.Plate.Top}
	var out []Solid
	add := func(of Material, name string, s geom.Solid) {
		if !s.Empty() {
			out = append(out, Solid{name, s, of})
		}
	}
	for _, m := range members {
		if m.Kind == KindBeam {
			e.seat = m.Place.O.Z
		}
	}
	if rear.OnWall {
		for _, s := range w.Kind.of().around(j, e) {
			add(s.Of, s.Name, s.Shape)
		}
	}
	for _, r := range w.Returns {
		for _, s := range w.Kind.of().ofReturn(j, r, e) {
			add(s.Of, s.Name, s.Shape)
		}
	}
	if w.hasSoffit() {
		add("", HouseSoffit, geom.Box(geom.V(from, -w.SoffitOut, w.Soffit), geom.V(to, 0, w.Soffit+soffitThick)))
	}
	if l := j.Levels; l.DeckOut > 0 {
		of := Material("")
		if j.FloorName() == string(OnSlab) {
			of = Cast
		}
		add(of, HouseDeck, geom.Box(geom.V(from, -l.DeckOut, j.deckUnder()), geom.V(to, 0, l.Deck)))
	}
	add("", HouseGround, terrain(j, s.Front(), from-groundMore, to+groundMore, low-groundThick))
	return out
}

// deckUnder is the level down to which deck or paving is drawn: to the ground,
// or as thick as it is taken to be where posts stand on it.
func (j *Job) deckUnder() float64 {
	low := j.Levels.Deck - deckThick
	if slices.ContainsFunc(j.Posts.At, func(p Post) bool { return !p.Dug() }) {
		return low
	}
	return max(j.Levels.Ground, low)
}

// terrain is the ground under the frame and round it.
func terrain(j *Job, beam Carrier, from, to, low float64) geom.Solid {
	profile := []geom.Pt{geom.P(from, low), geom.P(to, low)}
	line := GroundLine(j, from, to)
	slices.Reverse(line)
	profile = append(profile, line...)
	// The profile stands facing the viewer, so it sweeps out from the wall,
	// which stands back from a fascia.
	facing := geom.Axes{U: geom.V(1, 0, 0), V: geom.V(0, 0, 1), W: geom.V(0, -1, 0)}
	back := -j.Wall.Fascia.Eave
	if j.Freestanding() {
		back = -groundMore
	}
	back -= math.Abs(beam.Lies.U.Y) * (to - from) // a skewed one comes to the wall all along
	return geom.Prism(profile, nil, back, j.Beam.Out+groundMore).Placed(beam.place(facing))
}

// pierced cuts the openings out of the wall.
func pierced(w Wall, s geom.Solid) geom.Solid {
	for _, o := range w.Openings {
		s = s.Minus(geom.Convex{
			{N: geom.V(-1, 0, 0), D: -o.From}, {N: geom.V(1, 0, 0), D: o.To},
			{N: geom.V(0, 0, -1), D: -o.Sill}, {N: geom.V(0, 0, 1), D: o.Head},
		})
	}
	return s
}
