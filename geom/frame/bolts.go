package frame

import (
	"math"

	"plumbcut/geom"
)

// Bolts are those of one beam to one post.
type Bolts struct {
	Diameter float64
	Hole     float64
	Length   float64 // 0: see Frame.BoltLength
	Number   int
	Pattern  BoltPattern
	Edge     float64 // of the outermost from the edges of beam and post top; 0: edgeUsual diameters
}

// BoltPattern is how the bolts of one joint stand to each other, seen from
// outside. The zero value is BoltsInLine.
type BoltPattern string

// The patterns.
const (
	BoltsInLine    BoltPattern = "in line"   // one above the other, in the middle of the post
	BoltsStaggered BoltPattern = "staggered" // by turns left and right of it
	BoltsInPairs   BoltPattern = "in pairs"  // two at each height
)

const (
	// edgeUsual is the usual least distance of a bolt from a timber's edge that
	// the load presses against, and between bolts in a row, in diameters. From
	// memory, as the timber codes have it: 4 diameters.
	edgeUsual = 4

	// sideUsual is the same from an edge that the load runs along. From memory:
	// 1.5 diameters.
	sideUsual = 1.5

	// boltMore is what a bolt is longer than what it holds together, in
	// diameters, for two washers, the nut and a little thread. Common practice,
	// no source.
	boltMore = 3

	// boltStep is that in which bolts are sold. Common practice, no source.
	boltStep = 10
)

// edge is the distance of the outermost bolts from the edges.
func (x Bolts) edge() float64 {
	if x.Edge > 0 {
		return x.Edge
	}
	return edgeUsual * x.Diameter
}

// heights is how many heights the bolts stand at.
func (x Bolts) heights() int {
	if x.Pattern == BoltsInPairs {
		return (x.Number + 1) / 2
	}
	return x.Number
}

// side is how far the bolts stand from the middle of a post.
func (x Bolts) side(width float64) float64 {
	if x.Pattern == BoltsInLine || x.Pattern == "" {
		return 0
	}
	return width / 4
}

// boltPlace is a bolt's axis: along from the middle of the post, and its level.
type boltPlace struct{ along, z float64 }

// places sets the bolts out between two levels, from below, on a post of a
// width.
func (x Bolts) places(low, high, width float64) []boltPlace {
	n := x.heights()
	levels := []float64{(low + high) / 2}
	if n > 1 {
		levels = spaced(low, high, n)
	}
	side := x.side(width)
	var out []boltPlace
	for i, z := range levels {
		switch {
		case x.Pattern == BoltsInPairs && len(out)+1 < x.Number:
			out = append(out, boltPlace{-side, z}, boltPlace{side, z})
		case x.Pattern == BoltsInPairs:
			out = append(out, boltPlace{0, z})
		case i%2 == 0:
			out = append(out, boltPlace{-side, z})
		default:
			out = append(out, boltPlace{side, z})
		}
	}
	return out
}

// boltRoom is the stretch of height in which beam and post lie beside each
// other: down from the lower of the beam's top and the lowest of the post's.
func (c *checker) boltRoom(k Carrier) (low, high float64) {
	j := c.job
	behind := j.Posts.Section.Depth - j.Posts.Meet.deep(j)
	drop := behind * math.Tan(j.Posts.Chamfer)
	return k.Bottom, min(k.Top, k.PostTop-drop)
}

// boltPlaces are the bolts of the beam at each post.
func (c *checker) boltPlaces(k Carrier) []boltPlace {
	x := c.job.Posts.Meet.Bolts
	low, high := c.boltRoom(k)
	return x.places(low+x.edge(), high-x.edge(), c.job.Posts.Section.Width)
}

// checkBolts checks that the bolts have room, and that they keep their usual
// distances.
func (c *checker) checkBolts(k Carrier) {
	j := c.job
	x, width := j.Posts.Meet.Bolts, j.Posts.Section.Width
	d, path := x.Diameter, "posts.bolts"
	low, high := c.boltRoom(k)
	n := float64(x.heights())
	least := 2*x.edge() + (n-1)*x.Hole
	if x.Number < 1 || !(d > 0) || x.Hole < d-slack {
		c.errorf(RuleBolts, path, "%d bolts of %s in holes of %s cannot be; state their number, diameter and hole", x.Number, c.mm(d), c.mm(x.Hole))
		return
	}
	if x.side(width)+x.Hole/2 > width/2-slack {
		c.errorf(RuleBolts, path+".diameter", "a bolt in a hole of %s breaks out of a post %s wide; make it thinner", c.mm(x.Hole), c.mm(width))
		return
	}
	if high-low < least+slack || x.edge() < x.Hole/2 {
		c.errorf(RuleBolts, path, "beam and post lie beside each other over %s, and bolts at %d heights, %s from the edges, need %s; raise posts.top, take fewer or thinner bolts or a smaller edge, or move the posts clear of the rafters",
			c.mm(max(0, high-low)), int(n), c.mm(x.edge()), c.mm(least))
		return
	}
	if x.edge() < edgeUsual*d-slack {
		c.warnf(RuleBolts, path, "the bolts stand %s from the edges of beam and post; common practice is at least %s, 4 diameters", c.figure(x.edge()), c.figure(edgeUsual*d))
	}
	if apart := (high - low - 2*x.edge()) / max(1, n-1); n > 1 && math.Hypot(apart, x.across(width)) < edgeUsual*d-slack {
		c.warnf(RuleBolts, path, "the bolts stand %s apart; common practice is at least %s, 4 diameters", c.figure(math.Hypot(apart, x.across(width))), c.figure(edgeUsual*d))
	}
	if side := width/2 - x.side(width); side < sideUsual*d-slack {
		c.warnf(RuleBolts, path, "the bolts stand %s from the sides of the posts; common practice is at least %s, 1.5 diameters", c.figure(side), c.figure(sideUsual*d))
	}
}

// across is how far one bolt stands beside the next one up.
func (x Bolts) across(width float64) float64 {
	if x.Pattern == BoltsStaggered {
		return 2 * x.side(width)
	}
	return 0
}

// bolt bores the holes of every bolt through a post and the beams beside it.
func (b *builder) bolt(k Carrier, post int) {
	x := b.job.Posts.Meet.Bolts
	middle := b.members[post].Place.O.X + b.members[post].Section.Width/2
	for _, at := range b.check.boltPlaces(k) {
		p := geom.V(middle+at.along, 0, at.z)
		hole := func(i int, face Face, through float64) {
			m := &b.members[i]
			plane, _ := m.FacePlane(face)
			mouth := m.Place.Local(p)
			mouth = mouth.Sub(plane.N.Mul(plane.Dist(mouth)))
			m.Features = append(m.Features, Hole{Face: face, Mouth: mouth, Diameter: x.Hole, Depth: through, Through: true, Use: UseBolt})
		}
		hole(post, FaceOuter, b.members[post].Section.Depth)
		for _, beam := range k.Members { // marked where the rafters' housings are
			hole(beam, FaceHouse, b.members[beam].Section.Width)
		}
	}
}
