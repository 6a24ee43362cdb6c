package frame

import (
	"math"

	"plumbcut/geom"
)

// joinBrace cuts the ends of a brace, plumb at its post and level at the beam,
// and lets it into both or bores all three for its bolts.
func (b *builder) joinBrace(brace, post, beam int, at BracePlace) {
	j := b.job.Braces
	m := &b.members[brace]
	angle, depth := j.Angle(), j.Section.Depth
	m.Features = append(m.Features,
		EndCut{End: FaceStart, Cut: CutPlumb, At: depth * math.Tan(angle), Slope: -angle},
		EndCut{End: FaceEnd, Cut: CutLevel, At: m.Length - depth/math.Tan(angle), Slope: math.Pi/2 - angle})
	switch j.Joint {
	case BraceHoused:
		b.houseBrace(post, beam, at)
	case BraceLapped:
		b.boltBrace(brace, post, at.OnPost(j, at.Foot/2))
		b.boltBrace(brace, beam, at.OnBeam(j, at.Head/2))
		out := geom.V(0, -1, 0)
		foot, head := at.OnPost(j, at.Foot/2), at.OnBeam(j, at.Head/2)
		foot.Y += j.Section.Width
		head.Y += j.Section.Width
		b.joints = append(b.joints,
			Joint{Kind: JointBracePost, A: brace, B: post, At: foot, Bearing: geom.PlaneAt(foot, out), Area: at.Foot * j.OnPost()},
			Joint{Kind: JointBraceBeam, A: brace, B: beam, At: head, Bearing: geom.PlaneAt(head, out), Area: at.Head * j.OnBeam()})
		return
	}
	half := geom.V(0, j.Section.Width/2, 0)
	foot, head := at.OnPost(j, at.Foot).Add(half), at.OnBeam(j, at.Head).Add(half)
	b.joints = append(b.joints,
		Joint{Kind: JointBracePost, A: brace, B: post, At: foot, Bearing: geom.PlaneAt(foot, geom.V(at.Way(), 0, 0)), Area: j.OnPost() * j.Section.Width},
		Joint{Kind: JointBraceBeam, A: brace, B: beam, At: head, Bearing: geom.PlaneAt(head, geom.V(0, 0, -1)), Area: j.OnBeam() * j.Section.Width})
}

// houseBrace lets a brace into post and beam. The housings are open to the
// outer faces, so that it slides in from there.
func (b *builder) houseBrace(post, beam int, at BracePlace) {
	j := b.job.Braces
	p, t := &b.members[post], &b.members[beam]
	angle := j.Angle()
	face := FaceRight
	if at.Side == Left {
		face = FaceLeft
	}
	foot, head := p.Place.Local(at.OnPost(j, 0)), t.Place.Local(at.OnBeam(j, 0))
	wide := j.Section.Width + j.Clearance
	p.Features = append(p.Features, BraceHousing{
		Face: face, At: foot.X, Width: j.OnPost(), Depth: at.Foot, Lean: -angle, From: foot.Z, To: min(foot.Z+wide, p.Section.Depth),
	})
	t.Features = append(t.Features, BraceHousing{
		Face: FaceBottom, At: head.X, Width: j.OnBeam(), Depth: at.Head, Lean: at.Way() * (math.Pi/2 - angle), From: head.Y, To: min(head.Y+wide, t.Section.Width),
	})
}

// boltBrace bores a brace and the timber behind it for a bolt, at a point of
// its outer face. The hole goes right through, so it may be drilled from
// either side: all braces are then alike.
func (b *builder) boltBrace(brace, timber int, at geom.Vec) {
	hole := b.job.Braces.Bolt.Hole
	m, t := &b.members[brace], &b.members[timber]
	mouth := m.Place.Local(at)
	mouth.Y = 0
	m.Features = append(m.Features, Hole{Face: FaceLeft, Mouth: mouth, Diameter: hole, Depth: m.Section.Width, Through: true, Use: UseBolt})
	at.Y += m.Section.Width
	h := Hole{Face: FaceOuter, Mouth: t.Place.Local(at), Diameter: hole, Depth: t.Section.Width, Through: true, Use: UseBolt}
	if t.Kind.Stands() {
		h.Depth = t.Section.Depth
	}
	t.Features = append(t.Features, h)
}
