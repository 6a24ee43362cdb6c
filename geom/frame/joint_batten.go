package frame

import "plumbcut/geom"

// layBatten lays a batten across a rafter's top edge. Neither is cut.
func (b *builder) layBatten(batten, rafter int) {
	t, r := &b.members[batten], &b.members[rafter]
	at := t.Place.Point(geom.V(0, t.Section.Width/2, 0))
	at.X = r.Place.O.X + r.Section.Width/2
	b.joints = append(b.joints, Joint{
		Kind: JointBattenRafter, A: batten, B: rafter, At: at,
		Bearing: geom.PlaneAt(at, t.Place.W),
		Area:    t.Section.Width * r.Section.Width,
	})
}
