package sheets

import (
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func plateWallDetail(m *maker) detailSpec {
	return detailSpec{
		kind: frame.JointPlateWall, title: m.walling().titled, scale: 1. / 5, plain: onStud, views: plateWallViews,
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

// tip is the point of the screw; the face of what holds it if its length is not
// stated.
func (f plateFixed) tip() float64 {
	return max(f.outer+f.job.Plate.Fixing.Length, f.job.Wall.Grip())
}

// layers are the faces that the screw passes, from its head inwards.
func (f plateFixed) layers() []geom.Vec {
	w := f.job.Wall
	at := []float64{f.outer, f.inner, 0, w.Grip(), f.tip()}
	if f.clad() > 0 {
		at = append(at, f.clad())
	}
	slices.Sort(at)
	at = slices.CompactFunc(at, func(a, b float64) bool { return math.Abs(b-a) < sameStick })
	var out []geom.Vec
	for _, y := range at {
		out = append(out, f.at(y, f.low))
	}
	return out
}

// clad is the back of the first layer behind the plate; 0 where what holds the
// screw comes first.
func (f plateFixed) clad() float64 { return f.job.Wall.Skin() }

func (f plateFixed) section() *viewBlock {
	grip := f.job.Wall.Grip()
	crop := everywhere()
	crop.Min.Z, crop.Max.Z = f.low-2*closeMargin, f.high+2*closeMargin
	if beyond := f.walling().beyond; beyond != nil {
		below, above := beyond(f)
		crop.Min.Z, crop.Max.Z = crop.Min.Z-below, crop.Max.Z+above
	}
	crop.Max.Y = max(f.tip(), grip+closeMargin) + 2*closeMargin
	crop.Min.Y = f.outer - 1
	v := f.closeUp(closeUp{
		name: "section at a " + f.fixer(), axes: geom.LeftEnd(), cut: true, at: f.at(f.outer, f.screw), crop: crop,
		show:  func(b frame.Member) bool { return only(f.plate)(b) || f.packed && only(f.packer)(b) },
		house: wallPieces(),
	})
	v.row(draw.Bottom).Chain("", f.layers()...)
	v.row(draw.Right).Chain(f.fixer(), f.at(f.outer, f.low), f.at(f.outer, f.screw), f.at(f.outer, f.high)).
		Overall("", f.at(f.outer, f.low), f.at(f.outer, f.high))
	v.over = func(p *page, w *draw.View) {
		crossLine(p, w, f.at(f.outer, f.screw), f.at(f.tip(), f.screw))
		if over := f.walling().over; over != nil {
			over(f, p, w)
		}
	}
	f.words(v.note(draw.Left))
	return v
}

// words are the notes of the section.
func (f plateFixed) words(n *draw.NoteColumn) {
	fix, grip, w := f.job.Plate.Fixing, f.job.Wall.Grip(), f.walling()
	tall := f.high - f.low
	n.Width = detailWords
	if w.first != nil {
		w.first(f, n)
	}
	n.AddInside(f.stick("Wall plate", f.plate), f.at((f.outer+f.inner)/2, f.high-tall*0.12))
	wood := "plate"
	if f.packed {
		wood = "plate and packer"
		n.AddInside("Packer "+f.packer.Mark+" at each "+f.fixer()+", "+f.figures.Size(f.packer.Section.Depth, f.packer.Section.Width)+
			": water drains between the packers, so seal no edge of the plate to the wall", f.at(f.packer.Place.O.Y+f.packer.Section.Depth/2, f.packer.Place.O.Z+f.packer.Length*0.8))
	}
	n.Add(f.screwWords(fix)+" through "+wood+f.sealWords()+f.statedAfter(fix), f.at((f.inner+f.outer)/2, f.screw+fix.Hole/2))
	if grip < f.job.Wall.Core() { // what holds the screw is not drawn
		n.Add(w.into(f.maker), f.at(f.tip(), f.screw))
	} else {
		n.AddInside(w.into(f.maker), f.at(grip+2*closeMargin, f.screw-tall*0.15))
	}
	if f.clad() > 0 {
		low := f.low + tall*0.08
		if f.sunk() > 0 { // it shows beyond the plate only
			low = f.low - f.job.Wall.CutBack.Below - closeMargin
		}
		n.AddInside(w.clad, f.at(f.clad()/2, low))
	}
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
	v.title.Note = "plate at a " + f.fixer()
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
