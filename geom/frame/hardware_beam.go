package frame

import (
	"math"
	"slices"
)

// bolted is the bolts of a beam through a post, each with a nut and a washer at
// either end.
func (f *Frame) bolted(j Joint) []Hardware {
	x := f.Job.Posts.Meet.Bolts
	var spots []Spot
	k := f.Setout.Under(f.Members[j.B].No - 1)
	for _, i := range append(slices.Clone(k.Members), j.B) {
		m := f.Members[i]
		for _, h := range m.boltHoles() {
			if math.Abs(m.Place.Point(h.Mouth).X-f.postMiddle(j.B)) < f.Job.Posts.Section.Width/2 {
				spots = append(spots, Spot{Member: i, Face: h.Face, At: h.Mouth.X})
			}
		}
	}
	size := HardwareSize{Diameter: x.Diameter}
	return []Hardware{
		{Bolt, HardwareSize{Diameter: x.Diameter, Length: f.BoltLength()}, UseBeamPost, x.Number, spots},
		{Washer, size, UseBeamPost, 2 * x.Number, spots},
		{Nut, size, UseBeamPost, x.Number, spots},
	}
}

// postMiddle is how far along the middle of a post stands.
func (f *Frame) postMiddle(post int) float64 {
	m := f.Members[post]
	return m.Place.O.X + m.Section.Width/2
}

// boltHoles are the member's holes for bolts.
func (m Member) boltHoles() []Hole {
	var out []Hole
	for _, w := range m.Features {
		if h, ok := w.(Hole); ok && h.Use == UseBolt {
			out = append(out, h)
		}
	}
	return out
}

// BoltGrip is what a bolt through beam and post holds together, from face to
// face.
func (f *Frame) BoltGrip() float64 {
	k := f.Setout.Front()
	return max(k.Inner, k.PostOuter+f.Job.Posts.Section.Depth) - min(k.Outer, k.PostOuter)
}

// BoltLength is the length under the head of the bolts through beam and post:
// as stated, or the timber and room for washers and nut, rounded up to a length
// that is sold.
func (f *Frame) BoltLength() float64 {
	x := f.Job.Posts.Meet.Bolts
	if x.Length > 0 {
		return x.Length
	}
	return boltStep * math.Ceil((f.BoltGrip()+boltMore*x.Diameter-slack)/boltStep)
}

// capped is the bracket of a beam on a post. Its own fixings are its maker's to
// state.
func (f *Frame) capped(j Joint) Hardware {
	b := f.Job.Posts.Meet.Bracket
	return Hardware{
		Kind: PostCap, Size: HardwareSize{Width: f.Members[j.A].Section.Width, Thickness: b.Thickness}, Use: UseBeamPost, Quantity: 1,
		Spots: []Spot{
			{Member: j.A, Face: FaceBottom, At: f.along(j.A, j), Span: f.Members[j.B].Section.Width},
			{Member: j.B, Face: FaceEnd, At: f.Members[j.B].Length},
		},
	}
}
