package frame

import (
	"cmp"
	"math"
	"slices"
)

// Hardware is the metal at one place of the frame: what the drawings mark and
// the lists count.
type Hardware struct {
	Kind     HardwareKind
	Size     HardwareSize
	Use      string // what it does, e.g. "wall plate to wall"
	Quantity int    // at this place
	Spots    []Spot // where it is marked, on each member that it is fixed to
}

// HardwareKind names a piece of hardware as the lists do.
type HardwareKind string

// The kinds of hardware.
const (
	CoachScrew  HardwareKind = "coach screw"
	Anchor      HardwareKind = "anchor" // into masonry or concrete, of whatever kind
	Washer      HardwareKind = "washer"
	Nut         HardwareKind = "nut"
	ThreadedRod HardwareKind = "threaded rod"
	StrapTie    HardwareKind = "strap"
	StrapNail   HardwareKind = "strap nail"
	BattenScrew HardwareKind = "batten screw"
	LathScrew   HardwareKind = "lath screw"
	SlatScrew   HardwareKind = "slat screw"
	CleatScrew  HardwareKind = "cleat screw"
	Stirrup     HardwareKind = "post stirrup"
	Shoes       HardwareKind = "post shoe" // on a slab or deck
	Hanger      HardwareKind = "rafter hanger"
	Bolt        HardwareKind = "bolt"
	PostCap     HardwareKind = "post-cap bracket"
	TimberScrew HardwareKind = "screw"
)

// HardwareSize is a size in millimetres. What is 0 does not belong to the kind,
// or is to be stated.
type HardwareSize struct{ Diameter, Width, Thickness, Length float64 }

// Spot is a place on a member.
type Spot struct {
	Member int     // index of Frame.Members
	Face   Face    // that one works from
	At     float64 // of its middle, along the member from the datum end
	Span   float64 // how far it reaches along the member; 0: a point
}

// The uses of hardware.
const (
	UsePlateWall = "wall plate to wall"
	UsePostWall  = "post to wall"
	UseBeamPost  = "beam to post"
	UseRafter    = "rafter to " // and the name of its carrier
	UseBatten    = "batten to rafter"
	UseLath      = "lath to batten"
	UseSlat      = "slat to cleat"
	UseCleat     = "cleat to rafter"
	UsePostFoot  = "post to footing"
	UseBlock     = "block to rafter"
	UseFascia    = "fascia to rafter"
	UseValance   = "valance to post"
	UseBracePost = "knee brace to post"
	UseBraceBeam = "knee brace to beam"
	UsePostSlab  = "post to slab"
	UsePostDeck  = "post to deck"
)

// Hardware lists the frame's hardware, in the order of its joints.
func (f *Frame) Hardware() []Hardware {
	var out []Hardware
	for _, j := range f.Joints {
		if j.Hold != "" {
			out = append(out, f.holding(j)...)
		}
		switch j.Kind {
		case JointPlateWall:
			out = append(out, f.screwed(j, f.Job.Plate.Fixing, UsePlateWall)...)
		case JointPostWall:
			out = append(out, f.screwed(j, f.Job.Posts.At[f.Members[j.A].No-1].Fixing, UsePostWall)...)
		case JointBeamPost:
			out = append(out, f.rodded(j)...)
		case JointBeamChecked, JointBeamFace, JointBeamTwin, JointBeamTwinChecked:
			out = append(out, f.bolted(j)...)
		case JointBeamBracket:
			out = append(out, f.capped(j))
		case JointPostStirrup:
			out = append(out, Hardware{
				Kind: Stirrup, Size: HardwareSize{Width: f.Members[j.A].Section.Width}, Use: UsePostFoot, Quantity: 1,
				Spots: []Spot{{Member: j.A, Face: FaceStart}},
			})
		case JointPostSlab:
			out = append(out, f.shod(j, Anchor, UsePostSlab)...)
		case JointPostDeck:
			out = append(out, f.shod(j, CoachScrew, UsePostDeck)...)
		case JointBlockRafter:
			out = append(out, f.endScrewed(j, f.Job.Blocking.Screws, UseBlock))
		case JointFasciaRafter:
			out = append(out, f.endScrewed(j, f.Job.Fascia.Screws, UseFascia))
		case JointValancePost:
			out = append(out, f.endScrewed(j, f.Job.Valance.Screws, UseValance))
		case JointBracePost:
			out = append(out, f.braced(j, UseBracePost)...)
		case JointBraceBeam:
			out = append(out, f.braced(j, UseBraceBeam)...)
		case JointBattenRafter:
			out = append(out, f.crossed(j, BattenScrew, f.Job.Battens.Screws, UseBatten)...)
		case JointLathBatten:
			out = append(out, f.crossed(j, LathScrew, f.Job.Laths.Screws, UseLath)...)
		case JointSlatCleat:
			out = append(out, f.crossed(j, SlatScrew, f.Job.Slats.Screws, UseSlat)...)
		case JointCleatRafter:
			out = append(out, f.crossed(j, CleatScrew, f.Job.Slats.Cleats.Screws, UseCleat)...)
		}
	}
	return append(append(out, f.strapsAcross()...), f.roofed()...)
}

// crossed are the screws of a stick where it crosses another.
func (f *Frame) crossed(j Joint, kind HardwareKind, s BattenScrews, use string) []Hardware {
	if s.Each == 0 {
		return nil
	}
	return []Hardware{{
		Kind: kind, Size: HardwareSize{Diameter: s.Diameter, Length: s.Length}, Use: use, Quantity: s.Each,
		Spots: []Spot{{Member: j.A, Face: FaceTop, At: f.along(j.A, j)}, {Member: j.B, Face: FaceTop, At: f.along(j.B, j)}},
	}}
}

// along is where a joint lies along one of its members.
func (f *Frame) along(member int, j Joint) float64 { return f.Members[member].Place.Local(j.At).X }

// screwed is one coach screw or anchor with its washer.
func (f *Frame) screwed(j Joint, x Fixing, use string) []Hardware {
	face := FaceOuter
	if j.Kind == JointPostWall {
		face = FaceRight // the free side
		if f.Job.Posts.At[f.Members[j.A].No-1].Wall == Right {
			face = FaceLeft
		}
	}
	spots := []Spot{{Member: j.A, Face: face, At: f.along(j.A, j)}}
	return []Hardware{
		{f.Job.Wall.Fixing(), HardwareSize{Diameter: x.Screw, Length: x.Length}, use, 1, spots},
		{Washer, HardwareSize{Diameter: x.Screw}, use, 1, spots},
	}
}

// shod is a post's shoe and what holds it down, as far as that is
// stated.
func (f *Frame) shod(j Joint, kind HardwareKind, use string) []Hardware {
	post := f.Members[j.A]
	b := f.Job.Posts.At[post.No-1].Shoe
	spots := []Spot{{Member: j.A, Face: FaceStart}}
	out := []Hardware{{Shoes, HardwareSize{Width: post.Section.Width}, use, 1, spots}}
	if b.Fixings > 0 {
		size := HardwareSize{Diameter: b.Diameter, Length: b.Length}
		out = append(out, Hardware{kind, size, use, b.Fixings, spots}, Hardware{Washer, HardwareSize{Diameter: b.Diameter}, use, b.Fixings, spots})
	}
	return out
}

// rodded is the rod through the beam into a post, with a washer and a nut on
// top.
func (f *Frame) rodded(j Joint) []Hardware {
	rod := f.Job.Posts.Rod
	if rod.Diameter == 0 {
		return nil
	}
	spots := []Spot{
		{Member: j.A, Face: FaceTop, At: f.along(j.A, j)},
		{Member: j.B, Face: FaceEnd, At: f.Members[j.B].Length},
	}
	size := HardwareSize{Diameter: rod.Diameter}
	return []Hardware{
		{ThreadedRod, HardwareSize{Diameter: rod.Diameter, Length: f.rodLength(f.Members[j.A])}, UseBeamPost, 1, spots},
		{Washer, size, UseBeamPost, 1, spots[:1]},
		{Nut, size, UseBeamPost, 1, spots[:1]},
	}
}

// rodLength is the length of a threaded rod: down to the bottom of its hole in
// the post, through the beam, and what stands above.
func (f *Frame) rodLength(beam Member) float64 {
	rod := f.Job.Posts.Rod
	return rod.IntoPost + beam.Section.Depth + rod.Above
}

// RodLengths are the lengths of the threaded rods, one for each post.
func (f *Frame) RodLengths() []float64 {
	var out []float64
	for _, j := range f.Joints {
		if j.Kind == JointBeamPost && f.Job.Posts.Rod.Diameter > 0 {
			out = append(out, f.rodLength(f.Members[j.A]))
		}
	}
	return out
}

// strapped is the strap over one end of a rafter, and its nails.
func (f *Frame) strapped(j Joint, use string) []Hardware {
	strap := f.Job.Rafters.Strap
	if strap.Width == 0 {
		return nil
	}
	rafter, half := f.Members[j.A], strap.Length/2
	k, _ := f.Setout.CarrierOf(j.B)
	mouth := k.Housing / f.Setout.cos // along the rafter's top edge
	at := mouth + half/2
	if k.End == FaceEnd {
		at = rafter.EndCut(FaceEnd).At - mouth - half/2
	}
	spots := []Spot{
		{Member: j.A, Face: FaceTop, At: at, Span: half},
		{Member: j.B, Face: FaceTop, At: f.along(j.B, j), Span: strap.Width},
	}
	return []Hardware{
		{StrapTie, HardwareSize{Width: strap.Width, Thickness: strap.Thickness, Length: strap.Length}, use, 1, spots},
		{StrapNail, HardwareSize{}, use, strap.Nails, spots},
	}
}

// HardwareTotal is how much of one kind and size there is, and how much to
// order.
type HardwareTotal struct {
	Kind   HardwareKind
	Size   HardwareSize
	Uses   []HardwareUse
	Count  int     // in the frame
	Spares float64 // share bought beyond it
	Order  int     // Count and the spares, rounded up
}

// HardwareUse is how much of it does one thing.
type HardwareUse struct {
	Use   string
	Count int
}

// HardwareKinds lists the kinds in the order in which lists give them.
func HardwareKinds() []HardwareKind {
	return append([]HardwareKind{ThreadedRod, Bolt, CoachScrew, Anchor, Washer, Nut, Stirrup, Shoes, PostCap, Hanger, StrapTie, DiagonalStrap, Tensioner, StrapNail, BattenScrew, LathScrew, SlatScrew, CleatScrew, TimberScrew}, roofKinds()...)
}

// HardwareTotals adds the hardware up by kind and size, in the order of the
// kinds and within each of the joints.
func (f *Frame) HardwareTotals() []HardwareTotal {
	var out []HardwareTotal
	for _, h := range f.Hardware() {
		i := slices.IndexFunc(out, func(t HardwareTotal) bool { return t.Kind == h.Kind && t.Size == h.Size })
		if i < 0 {
			i = len(out)
			out = append(out, HardwareTotal{Kind: h.Kind, Size: h.Size})
			if h.Kind != ThreadedRod && h.Kind != Stirrup && h.Kind != Shoes && h.Kind != PostCap && h.Kind != Hanger && h.Kind != DiagonalStrap && h.Kind != Tensioner && h.Use != UseRoof {
				out[i].Spares = f.Job.Supplies.HardwareSpares
			}
		}
		t := &out[i]
		t.Count += h.Quantity
		k := slices.IndexFunc(t.Uses, func(u HardwareUse) bool { return u.Use == h.Use })
		if k < 0 {
			k = len(t.Uses)
			t.Uses = append(t.Uses, HardwareUse{Use: h.Use})
		}
		t.Uses[k].Count += h.Quantity
	}
	for i, t := range out {
		out[i].Order = roundUp(float64(t.Count) * (1 + t.Spares))
	}
	kinds := HardwareKinds()
	slices.SortStableFunc(out, func(a, b HardwareTotal) int {
		return cmp.Compare(slices.Index(kinds, a.Kind), slices.Index(kinds, b.Kind))
	})
	return out
}

// roundUp is the least whole number that is not less, but for mere rounding.
func roundUp(x float64) int { return int(math.Ceil(x - slack)) }
