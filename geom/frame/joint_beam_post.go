package frame

import "plumbcut/geom"

// onTopWay sets the beam on its posts with their outer faces flush. Each post
// gets a level seat as wide as the beam, weathered behind it; a rod, if the job
// has one, goes down through the middle of the beam into the post.
type onTopWay struct{ oneBeam }

func (onTopWay) deep(*Job) float64 { return 0 }

func (onTopWay) outer(_ *Job, k Carrier) float64 { return k.Outer }

func (onTopWay) top(_ *checker, k Carrier) float64 { return k.Bottom }

func (onTopWay) under() string { return "underside of beam, seat on posts" }

func (onTopWay) runsUp() bool { return false }

func (onTopWay) check(c *checker, k Carrier) { c.beamFitsPost(k); c.checkRods(k) }

// beamFitsPost checks that posts are deep enough to seat the beam.
func (c *checker) beamFitsPost(k Carrier) {
	if post := c.job.Posts.Section; k.Section.Width > post.Depth+slack {
		c.errorf(RulePostWidth, "posts.section", "the %s is %s wide and the post %s deep, too little to seat it; use a deeper post or a narrower beam",
			k.Short, c.mm(k.Section.Width), c.mm(post.Depth))
	}
}

func (onTopWay) join(b *builder, k Carrier, post int) {
	bm, p := &b.members[k.Members[0]], &b.members[post]
	b.chamferFrom(post, bm.Section.Width)
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
		Kind: JointBeamPost, A: k.Members[0], B: post, At: at,
		Bearing: geom.PlaneAt(at, geom.V(0, 0, 1)),
		Area:    bm.Section.Width * p.Section.Width,
	})
}
