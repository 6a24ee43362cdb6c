package frame

import "plumbcut/geom"

// Backing is what the plate, and a post beside a return, are fixed to. The zero
// value is OnStuds.
type Backing string

// The backings.
const (
	OnStuds      Backing = "cladding on studs"
	CutBack      Backing = "cladding cut back" // to the studs, behind the plate
	SolidMasonry Backing = "solid masonry"     // solid or filled
	OnConcrete   Backing = "concrete"
	OnVeneer     Backing = "masonry veneer" // through it into the studs behind
	OnUnfilled   Backing = "unfilled masonry"
	OnFascia     Backing = "fascia" // below the gutter
)

// Backings lists them.
func Backings() []Backing {
	return []Backing{OnStuds, CutBack, SolidMasonry, OnConcrete, OnVeneer, OnUnfilled, OnFascia}
}

// backing is what the model has to know of one of them. Each is one file,
// backing_*.go, and one line in Backing.of; nothing else of the model asks what
// the plate is fixed to.
type backing interface {
	// sunk is how far behind the wall's face a timber or its packer lies.
	sunk(w Wall) float64
	// grip is the world y of the face of what the fixings must hold in.
	grip(w Wall) float64
	// skin is the thickness of the first layer behind the timber, before what
	// holds; 0: none.
	skin(w Wall) float64
	// studs names what the fixings go into one by one; empty where they hold
	// anywhere in the wall.
	studs() string
	// fixing is the metal that holds the timber.
	fixing() HardwareKind
	// around makes the pieces of the house that the plate stands against.
	around(j *Job, e extent) []Solid
	// ofReturn makes a return from the box that it fills.
	ofReturn(j *Job, r Return, e extent) []Solid
	// check finds what cannot be built and what a designer has to confirm.
	check(c *checker)
	// needs finds what is missing beside it, before anything is laid out.
	needs(c *checker)
}

// of is the backing's own way.
func (k Backing) of() backing {
	switch k {
	case CutBack:
		return cutBack{}
	case SolidMasonry:
		return masonry{Brick, ""}
	case OnConcrete:
		return masonry{Cast, ""}
	case OnUnfilled:
		return masonry{Block, "unfilled masonry holds no usual anchor: designer to confirm which anchors and sleeves, or which cores are filled first"}
	case OnVeneer:
		return veneer{}
	case OnFascia:
		return fascia{}
	}
	return studWall{}
}

// extent is how far the house is drawn along and up; seat is the level of the
// beam on its posts.
type extent struct{ from, to, ground, top, seat float64 }

// slab is the piece of the house from one world y to another.
func (e extent) slab(y0, y1 float64) geom.Solid {
	return geom.Box(geom.V(e.from, y0, e.ground), geom.V(e.to, y1, e.top))
}

// Material is what a piece of the house is made of, as far as a section shows
// it; the zero value is shown by nothing.
type Material string

// The materials.
const (
	Brick Material = "brick"    // or any masonry that is solid
	Block Material = "block"    // masonry with hollow cores
	Cast  Material = "concrete" // cast in place
)

// Grip is the world y of the face of what the fixings must hold in: that of the
// studs behind the cladding, say.
func (w Wall) Grip() float64 { return w.Kind.of().grip(w) }

// Skin is the thickness of the first layer behind the plate that is not what
// holds it: cladding, a veneer's leaf, render, the fascia board; 0: none.
func (w Wall) Skin() float64 { return w.Kind.of().skin(w) }

// Core is the world y of the wall's own face behind cladding and cavity.
func (w Wall) Core() float64 { return w.Fascia.Eave + w.Cladding + w.Cavity }

// Fixing is the metal that holds plate and posts to the wall.
func (w Wall) Fixing() HardwareKind { return w.Kind.of().fixing() }

// StudName names what the fixings go into one by one, such as "stud"; empty
// where they hold anywhere in the wall.
func (w Wall) StudName() string { return w.Kind.of().studs() }

// layer is what lies in a return between two depths behind its face.
func (r Return) layer(d0, d1 float64, e extent) geom.Solid {
	x0, x1 := r.At-d1, r.At-d0
	if r.Side == Right {
		x0, x1 = r.At+d0, r.At+d1
	}
	return geom.Box(geom.V(x0, -r.Length, e.ground), geom.V(x1, 0, e.top))
}

// name is that of the return's solids.
func (r Return) name() string {
	if r.Side == Right {
		return HouseRight
	}
	return HouseLeft
}
