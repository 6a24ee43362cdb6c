package sheets

import (
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func plateWallDetail() detailSpec {
	return detailSpec{
		kind: frame.JointPlateWall, scale: 1. / 5, plain: onStud, views: plateWallViews,
		ring: 150, on: []string{onPlan},
	}
}

// onStud reports whether a screw of the plate goes into a stud that is there.
func onStud(m *maker, j frame.Joint) bool {
	f, ok := m.fixingAt(j)
	return !ok || !f.Blocking
}

// fixingAt is the plate's fixing at a joint.
func (m *maker) fixingAt(j frame.Joint) (frame.FixingPoint, bool) {
	for _, f := range m.frame.Setout.PlateFixings {
		if math.Abs(f.Along-j.At.X) < sameStick {
			return f, true
		}
	}
	return frame.FixingPoint{}, false
}

// sameStick is the distance, mm, within which two places are one.
const sameStick = 1e-3

// plateFixed is the plate at a screw, and the points that its drawing needs.
type plateFixed struct {
	*maker
	plate, packer    frame.Member // the packer: only if packed
	packed           bool
	x                float64
	outer, inner     float64
	low, high, screw float64
}

func (m *maker) plateFixed(d detail) plateFixed {
	p := m.frame.Members[d.joint.A]
	f := plateFixed{maker: m, plate: p, x: d.joint.At.X, packed: d.joint.B >= 0}
	if f.packed {
		f.packer = m.frame.Members[d.joint.B]
	}
	f.outer, f.inner = p.Place.O.Y, p.Place.O.Y+p.Section.Width
	f.low, f.high = p.Place.O.Z, p.Place.O.Z+p.Section.Depth
	f.screw = d.joint.At.Z
	return f
}

func (f plateFixed) at(y, z float64) geom.Vec { return geom.V(f.x, y, z) }

// plateWallViews are a section at a screw and the plate from outside there.
func plateWallViews(m *maker, d detail) []*viewBlock {
	f := m.plateFixed(d)
	return []*viewBlock{f.section(), f.facing()}
}

// tip is the point of the screw; the back of the cladding if its length is not
// stated.
func (f plateFixed) tip() float64 {
	return max(f.outer+f.job.Plate.Fixing.Length, f.job.Wall.Cladding)
}

func (f plateFixed) section() *viewBlock {
	clad := f.job.Wall.Cladding
	crop := everywhere()
	crop.Min.Z, crop.Max.Z = f.low-2*closeMargin, f.high+2*closeMargin
	crop.Max.Y = max(f.tip(), clad+closeMargin) + 2*closeMargin
	crop.Min.Y = f.outer - 1
	v := f.closeUp(closeUp{
		name: "section at a screw", axes: geom.LeftEnd(), cut: true, at: f.at(f.outer, f.screw), crop: crop,
		show:  func(b frame.Member) bool { return only(f.plate)(b) || f.packed && only(f.packer)(b) },
		house: []string{frame.HouseCladding, frame.HouseWall},
	})
	v.row(draw.Bottom).Chain("", f.at(f.outer, f.low), f.at(f.inner, f.low), f.at(0, f.low), f.at(clad, f.low), f.at(f.tip(), f.low))
	v.row(draw.Right).Chain("screw", f.at(f.outer, f.low), f.at(f.outer, f.screw), f.at(f.outer, f.high)).
		Overall("", f.at(f.outer, f.low), f.at(f.outer, f.high))
	v.over = func(p *page, w *draw.View) { crossLine(p, w, f.at(f.outer, f.screw), f.at(f.tip(), f.screw)) }
	f.words(v.note(draw.Left))
	return v
}

// words are the notes of the section.
func (f plateFixed) words(n *draw.NoteColumn) {
	fix, clad := f.job.Plate.Fixing, f.job.Wall.Cladding
	tall := f.high - f.low
	n.Width = detailWords
	n.AddInside(f.stick("Wall plate", f.plate), f.at((f.outer+f.inner)/2, f.high-tall*0.12))
	wood := "plate"
	if f.packed {
		wood = "plate and packer"
		n.AddInside("Packer "+f.packer.Mark+" at each screw, "+f.figures.Size(f.packer.Section.Depth, f.packer.Section.Width)+
			": water drains between the packers, so seal no edge of the plate to the wall", f.at(f.inner/2, f.packer.Place.O.Z+f.packer.Length*0.8))
	}
	n.Add(f.screwWords(fix)+" through "+wood+": seal it at the cladding", f.at((f.inner+f.outer)/2, f.screw+fix.Hole/2))
	into := "Into confirmed studs only, never into cladding alone. Find cables and pipes before drilling."
	if len(f.job.Wall.Studs) == 0 {
		into = "Find and mark the studs first, and cables and pipes. Into studs only, never into cladding alone."
	}
	for _, p := range f.frame.Setout.PlateFixings {
		if p.Blocking && len(f.job.Wall.Studs) > 0 {
			into += " Where the plan says blocking, fix it between the studs first."
			break
		}
	}
	n.AddInside(into, f.at(clad+2*closeMargin, f.screw-tall*0.15))
	n.AddInside("Cladding as found: some authorities allow no fixing through it; ask first", f.at(clad/2, f.low+tall*0.08))
}

// front is the plate from outside at the screw, the packer behind it.
func (f plateFixed) facing() *viewBlock {
	half := max(f.packer.Section.Width, f.plate.Section.Depth*0.4)
	crop := everywhere()
	crop.Min.X, crop.Max.X = f.x-half, f.x+half
	v := f.closeUp(closeUp{
		name: "From outside", axes: geom.Front(), at: f.at(f.outer, f.screw), crop: crop, hidden: frame.KindPacker,
		show: func(b frame.Member) bool { return only(f.plate)(b) || f.packed && only(f.packer)(b) },
	})
	v.title.Note = "plate at a screw"
	pt := func(x, z float64) geom.Vec { return geom.V(x, f.outer, z) }
	if f.packed {
		v.title.Note = "the packer is behind the plate"
		p := f.packer
		left, right := p.Place.O.X, p.Place.O.X+p.Section.Width
		bottom, top := p.Place.O.Z, p.Place.O.Z+p.Length
		v.row(draw.Bottom).Chain("packer", pt(left, f.low), pt(f.x, f.low), pt(right, f.low)).Overall("", pt(left, f.low), pt(right, f.low))
		if bottom != f.low || top != f.high {
			v.row(draw.Right).Chain("packer", pt(f.x, f.low), pt(f.x, bottom), pt(f.x, top), pt(f.x, f.high))
		}
	}
	v.over = func(p *page, w *draw.View) { crossLine(p, w, pt(f.x, f.low), pt(f.x, f.high)) }
	return v
}
