package frame

import "plumbcut/geom"

// setPost sets a post in its concrete, or on a stirrup above it, and slopes
// the top of the footing away from it. The stirrup is hardware and no solid,
// so that joint has no bearing face.
func (b *builder) setPost(post, footing int, spec Post) {
	p, f := &b.members[post], &b.members[footing]
	o := f.Place.Local(p.Place.O)
	foot := Foot{V0: o.Y, V1: o.Y + p.Section.Width, W0: o.Z, W1: o.Z + p.Section.Depth}
	if c := spec.Footing.Collar; c > 0 {
		f.Features = append(f.Features, Weathering{At: f.Length, Collar: c, Foot: foot})
	}
	at := p.Place.Point(geom.V(0, p.Section.Width/2, p.Section.Depth/2))
	j := Joint{Kind: JointPostStirrup, A: post, B: footing, At: at}
	if spec.Base != OnStirrup {
		f.Features = append(f.Features, Socket{At: spec.Footing.Pad, Foot: foot})
		j.Kind = JointPostConcrete
		j.At.Z = spec.Ground
		if spec.Footing.Pad > 0 {
			j.Bearing = geom.PlaneAt(at, geom.V(0, 0, 1))
			j.Area = p.Section.Width * p.Section.Depth
		}
	}
	b.joints = append(b.joints, j)
}
