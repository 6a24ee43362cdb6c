package frame

import "plumbcut/geom"

// Sizes of what stands around the frame. They are only drawn, light and cut
// short, and measured by nobody.
const (
	wallThick   = 110  // of the wall behind the cladding
	aboveTop    = 400  // how far the wall goes on above the plate
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
	HouseDeck     = "deck"
	HouseGround   = "ground"
)

// houseAround makes the solids around the frame: those that the job states.
func houseAround(j *Job, members []Member) []Solid {
	w := j.Wall
	from, to := min(w.From, j.Plate.From, j.Beam.From), max(w.To, j.Plate.To, j.Beam.To)
	ground := j.Levels.Ground
	low := ground
	for _, m := range members {
		low = min(low, m.Place.O.Z)
	}
	top := j.Plate.Top + aboveTop
	if w.hasSoffit() {
		top = max(j.Plate.Top, w.Soffit)
	}
	var out []Solid
	add := func(name string, s geom.Solid) {
		if !s.Empty() {
			out = append(out, Solid{name, s})
		}
	}
	add(HouseCladding, pierced(w, geom.Box(geom.V(from, 0, ground), geom.V(to, w.Cladding, top))))
	add(HouseWall, pierced(w, geom.Box(geom.V(from, w.Cladding, ground), geom.V(to, w.Cladding+wallThick, top))))
	for _, r := range w.Returns {
		thick := w.Cladding + wallThick
		name, x0, x1 := HouseLeft, r.At-thick, r.At
		if r.Side == Right {
			name, x0, x1 = HouseRight, r.At, r.At+thick
		}
		add(name, geom.Box(geom.V(x0, -r.Length, ground), geom.V(x1, 0, top)))
	}
	if w.hasSoffit() {
		add(HouseSoffit, geom.Box(geom.V(from, -w.SoffitOut, w.Soffit), geom.V(to, 0, w.Soffit+soffitThick)))
	}
	if l := j.Levels; l.DeckOut > 0 {
		add(HouseDeck, geom.Box(geom.V(from, -l.DeckOut, max(ground, l.Deck-deckThick)), geom.V(to, 0, l.Deck)))
	}
	add(HouseGround, geom.Box(
		geom.V(from-groundMore, -j.Beam.Out-groundMore, low-groundThick),
		geom.V(to+groundMore, 0, ground)))
	return out
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
