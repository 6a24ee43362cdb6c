package frame

import (
	"math"

	"plumbcut/geom"
)

// BracePlace is one brace as it is set out: on a side of a post.
type BracePlace struct {
	Post int // index of Job.Posts.At
	Side Side
	Knee geom.Vec // where the post's side, the beam's underside and the brace's face away from the house meet
	Foot float64  // how far the brace goes on past the post's side
	Head float64  // and past the beam's underside
}

// Way is the world x of the way from the post along the beam, 1 or −1.
func (p BracePlace) Way() float64 {
	if p.Side == Left {
		return -1
	}
	return 1
}

// At is the point of a brace so far along its lower edge from the post's side,
// so far up from that edge, square to it, and so far in from its outer face.
func (p BracePlace) At(b Braces, along, up, in float64) geom.Vec {
	sin, cos := math.Sincos(b.Angle())
	x, z := along*cos-up*sin, along*sin+up*cos
	return p.Knee.Add(geom.V(p.Way()*x, in, z-b.Down))
}

// OnPost is a point on the middle line of a brace where it lies so far past the
// post's side, at its outer face.
func (p BracePlace) OnPost(b Braces, past float64) geom.Vec {
	mid, tan := b.Section.Depth/2, math.Tan(b.Angle())
	return p.At(b, mid*tan-past/math.Cos(b.Angle()), mid, 0)
}

// OnBeam is the same so far past the beam's underside.
func (p BracePlace) OnBeam(b Braces, past float64) geom.Vec {
	mid, sin := b.Section.Depth/2, math.Sin(b.Angle())
	return p.At(b, b.Edge()+past/sin-mid/math.Tan(b.Angle()), mid, 0)
}

// bracePrisms makes the braces. U runs up each from its post to the beam, so
// that left and right ones are the same stick.
func (b *builder) bracePrisms() {
	j := b.job.Braces
	b.braces = len(b.members)
	sin, cos := math.Sincos(j.Angle())
	for i, p := range b.set.Braces {
		a := geom.Axes{U: geom.V(p.Way()*cos, 0, sin), V: geom.V(0, p.Way(), 0), W: geom.V(-p.Way()*sin, 0, cos)}
		in := 0.0
		if p.Side == Left {
			in = j.Section.Width
		}
		a.O = p.At(j, -p.Foot/cos, 0, in)
		b.add(Member{
			Kind: KindBrace, No: i + 1, Section: j.Section, Timber: j.Timber, Place: a,
			Length: p.Foot/cos + j.Edge() + p.Head/sin,
		})
	}
}
