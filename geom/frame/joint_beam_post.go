package frame

import "plumbcut/geom"

// seatBeam sets the beam on a post with their outer faces flush. The post gets
// a level seat as wide as the beam, weathered behind it; a rod, if the job has
// one, goes down through the middle of the beam into the post.
func (b *builder) seatBeam(beam, post int) {
	bm, p := &b.members[beam], &b.members[post]
	behind := p.Section.Depth - bm.Section.Width
	if behind > slack && b.job.Posts.Chamfer > 0 {
		p.Features = append(p.Features, Chamfer{At: p.Length, Seat: bm.Section.Width, Angle: b.job.Posts.Chamfer})
	}
	at := p.Place.Point(geom.V(p.Length, p.Section.Width/2, bm.Section.Width/2))
	if rod := b.job.Posts.Rod; rod.Diameter > 0 {
		mouth := bm.Place.Local(at)
		mouth.Z = bm.Section.Depth
		bm.Features = append(bm.Features, Hole{
			Face: FaceTop, Mouth: mouth, Diameter: rod.Hole, Depth: bm.Section.Depth, Through: true, Use: UseRod,
		})
		if rod.IntoPost > 0 {
			p.Features = append(p.Features, Hole{
				Face: FaceEnd, Mouth: p.Place.Local(at), Diameter: rod.Hole, Depth: rod.IntoPost, Use: UseRod,
			})
		}
	}
	b.joints = append(b.joints, Joint{
		Kind: JointBeamPost, A: beam, B: post, At: at,
		Bearing: geom.PlaneAt(at, geom.V(0, 0, 1)),
		Area:    bm.Section.Width * p.Section.Width,
	})
}
