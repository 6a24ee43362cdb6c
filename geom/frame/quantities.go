package frame

import (
	"math"

	"plumbcut/geom"
	"plumbcut/geom/measure"
)

// ConcreteVolume is the concrete of a footing, mm³: its hole and collar less
// the post that stands in it. The model's round footing has flat sides; what
// the round hole holds beyond them is added.
func (f *Frame) ConcreteVolume(footing Member) float64 {
	v := footing.Solid().Volume()
	if footing.Round {
		v += (math.Pi*math.Pow(footing.Section.Width/2, 2) - facetArea(footing.Section.Width)) * f.Job.Posts.At[footing.No-1].Footing.Depth
	}
	return v
}

// facetArea is the area of the polygon that stands for a circle.
func facetArea(diameter float64) float64 {
	return roundFacets / 2 * math.Pow(diameter/2, 2) * math.Sin(2*math.Pi/roundFacets)
}

// Supply is an amount of something that is bought in whole packs.
type Supply struct {
	Net   float64 // what the frame takes, mm³
	Waste float64 // share added
	Pack  float64 // in one bag or cartridge, mm³
}

// Gross is the amount with what is added.
func (s Supply) Gross() float64 { return s.Net * (1 + s.Waste) }

// Packs is how many bags or cartridges that takes; 0 where a pack is not
// stated.
func (s Supply) Packs() int {
	if !(s.Pack > 0) {
		return 0
	}
	return roundUp(s.Gross() / s.Pack)
}

// Concrete is that of all footings together.
func (f *Frame) Concrete() Supply {
	s := Supply{Waste: f.Job.Supplies.ConcreteWaste, Pack: f.Job.Supplies.BagYield}
	for _, m := range f.Of(KindFooting) {
		s.Net += f.ConcreteVolume(m)
	}
	return s
}

// Adhesive is what fills the holes in the posts round their rods.
func (f *Frame) Adhesive() Supply {
	s := Supply{Waste: f.Job.Supplies.AdhesiveWaste, Pack: f.Job.Supplies.Cartridge}
	d := f.Job.Posts.Rod.Diameter
	if d == 0 {
		return s
	}
	for _, m := range f.Of(KindPost) {
		for _, feature := range m.Features {
			if h, ok := feature.(Hole); ok && h.Use == UseRod {
				s.Net += ringVolume(h.Diameter, d, h.Depth)
			}
		}
	}
	return s
}

// ringVolume is a round hole less the rod that stands in it to its bottom.
func ringVolume(hole, rod, depth float64) float64 {
	return math.Pi / 4 * (hole*hole - rod*rod) * depth
}

// RodBars is how many bars the rods are cut from, each from one length only; 0 where none is long enough
// or there are no rods.
func (f *Frame) RodBars() int {
	n, left := 0, map[float64]int{} // of each length, how many the last bar still gives
	for _, l := range f.RodLengths() {
		each := int((f.Job.Posts.Rod.Bar + slack) / l)
		if each == 0 {
			return 0
		}
		if left[l] == 0 {
			n, left[l] = n+1, each
		}
		left[l]--
	}
	return n
}

// CutFaces is the area of timber that cutting lays bare, mm²: what has lost its
// treatment. Bores are not counted, nor their mouths deducted.
type CutFaces struct {
	Ends   float64 // both ends of every piece, joints of long members included
	Joints float64 // housings, seats and chamfers
}

// Total is both together.
func (c CutFaces) Total() float64 { return c.Ends + c.Joints }

// CutFaces adds up the cut faces of all timber, from the faces of the solids.
func (f *Frame) CutFaces() CutFaces {
	var out CutFaces
	done := map[string]CutFaces{}
	for i, m := range f.Members {
		if m.Kind == KindFooting {
			continue
		}
		key := m.Mark + "/" + string(m.Hand)
		c, ok := done[key]
		if !ok {
			c = m.cutFaces()
			c.Ends += 2 * m.Section.Depth * m.Section.Width * float64(len(f.Splices(i)))
			done[key] = c
		}
		out.Ends += c.Ends
		out.Joints += c.Joints
	}
	return out
}

// Primer is what an area of cut faces takes, mm³.
func (f *Frame) Primer(area float64) float64 {
	const perLitre = 1e6 // square millimetres in a square metre, and cubic ones in a litre
	s := f.Job.Supplies
	if s.Spread <= 0 {
		return 0
	}
	return area / perLitre / s.Spread * s.Coats * measure.Litre
}

// cutFaces are those of one member: every face of its solid that is not on a
// long face of the stick. Those across both ends are ends, the rest joints.
func (m Member) cutFaces() CutFaces {
	var out CutFaces
	for _, face := range m.solid.Faces() {
		local := m.Place.LocalPlane(face.Plane)
		switch {
		case m.onStick(local):
		case m.isEnd(local):
			out.Ends += face.Area()
		default:
			out.Joints += face.Area()
		}
	}
	return out
}

// samePlaneTol is how far two planes may differ and be one: a micrometre, and
// as much again over a metre. Cuts differ by far more.
const samePlaneTol = 1e-6

func onePlane(a, b geom.Plane) bool {
	return a.N.Sub(b.N).Len() < samePlaneTol && math.Abs(a.D-b.D) < 1000*samePlaneTol
}

func (m Member) onStick(p geom.Plane) bool {
	for _, name := range m.Faces() {
		if face, ok := m.FacePlane(name); ok && onePlane(p, face) {
			return true
		}
	}
	return false
}

func (m Member) isEnd(p geom.Plane) bool {
	for _, end := range []Face{FaceStart, FaceEnd} {
		if onePlane(p, m.EndCut(end).unit(m)) {
			return true
		}
	}
	return false
}

// unit is the cut's plane with a normal of length 1.
func (c EndCut) unit(m Member) geom.Plane {
	p := c.plane(m)
	l := p.N.Len()
	return geom.Plane{N: p.N.Mul(1 / l), D: p.D / l}
}
