package frame

import "plumbcut/geom"

// overLay lays the battens on the rafters' top edges. Neither is cut.
type overLay struct{}

func (overLay) sunk(Battens) float64 { return 0 }

func (overLay) check(*checker) {}

func (overLay) join(b *builder, batten, rafter int) { b.layBatten(batten, rafter, 0) }

// layBatten records where a batten bears on a rafter: on what is up by so much
// from its underside.
func (b *builder) layBatten(batten, rafter int, up float64) {
	t, r := &b.members[batten], &b.members[rafter]
	at := t.Place.Point(geom.V(0, t.Section.Width/2, up))
	at.X = r.Place.O.X + r.Section.Width/2
	b.joints = append(b.joints, Joint{
		Kind: JointBattenRafter, A: batten, B: rafter, At: at,
		Bearing: geom.PlaneAt(at, t.Place.W),
		Area:    t.Section.Width * r.Section.Width,
	})
}
