package frame

import (
	"math"

	"plumbcut/geom"
)

// RuleSlat is of slats that cannot stand between the rafters as stated.
const RuleSlat Rule = "slats"

// Slats stand between the rafters, in every bay, each turned by an angle out of
// the slope and lying on a cleat at each end.
//
//	top edge of the rafter
//	─────────────────────────────────
//	   Down ↕  ╱╱          ╱╱
//	          ╱╱          ╱╱   slat, its house side raised by Angle
//	         ╱╱          ╱╱
//	         ╲cleat      ╲
type Slats struct {
	Section   Section // as if it lay flat in the slope
	Timber    Timber
	Angle     float64 // from the slope, radians
	OuterUp   bool    // the outer edge is raised, not the one towards the house
	Number    int     // 0: from Centres or Shade
	Centres   float64 // greatest, along the slope
	Shade     float64 // part of the area covered, seen square to the slope, 0 to 1
	First     float64 // near edge of the first, as seen square to the slope, from the plate's outer face
	Last      float64 // far edge of the last, from the beam's inner face
	Down      float64 // of their highest edges below the rafters' top edges, square to the slope
	Clearance float64 // of a slat between two rafters, in all
	Screws    BattenScrews
	Cleats    Cleats
}

// Cleats carry the slats: a block under each end, along the rafter's side.
type Cleats struct {
	Section Section // Depth square to the slat, Width off the rafter's side
	Timber  Timber
	Screws  BattenScrews // into the rafter
}

// turn is the angle by which a slat's house side is raised.
func (l Slats) turn() float64 {
	if l.OuterUp {
		return -l.Angle
	}
	return l.Angle
}

// Seen is how wide a slat is, and High how deep it stands, seen square to the
// slope and along it.
func (l Slats) Seen() float64 {
	sin, cos := math.Sincos(l.Angle)
	return l.Section.Width*cos + l.Section.Depth*sin
}

// High is how deep a slat stands below its highest edge, square to the slope.
func (l Slats) High() float64 {
	sin, cos := math.Sincos(l.Angle)
	return l.Section.Width*sin + l.Section.Depth*cos
}

// layOutSlats spaces the slats down the slope between plate and beam.
func layOutSlats(c *checker) {
	j, s := c.job, &c.set
	l := j.Slats
	if l.Section.Depth == 0 {
		return
	}
	room := (s.Rear().Outer-s.Front().Inner)/s.cos - l.First - l.Last
	wide := l.Seen()
	if room < wide-slack {
		c.errorf(RuleSlat, "slats", "a slat covers %s of the slope, and there are only %s between first and last", c.mm(wide), c.mm(math.Max(0, room)))
		return
	}
	n := l.Number
	switch {
	case n > 0:
	case l.Centres > 0:
		n = 1 + ceilCount((room-wide)/l.Centres)
	case l.Shade > 0:
		n = 1 + ceilCount((room-wide)*l.Shade/wide)
	}
	if n < 1 || n > maxSticks {
		c.errorf(RuleSlat, "slats", "%d slats in a bay; it must be 1 to %d", n, maxSticks)
		return
	}
	layer := Layer{Kind: KindSlat, Key: "slats", At: spaced(l.First, l.First+room-wide, n), Wide: wide, Stated: l.Shade}
	if n > 1 {
		layer.Gap = (room-wide)/float64(n-1) - wide
	}
	s.Layers = append(s.Layers, layer)
	c.checkSlats(layer)
}

// checkSlats finds what cannot be built.
func (c *checker) checkSlats(layer Layer) {
	j, s := c.job, c.set
	l := j.Slats
	sin, cos := math.Sincos(l.Angle)
	t, b := l.Cleats.Section.Depth, l.Cleats.Section.Width
	if need, have := l.Down+l.High()+t*cos, j.Rafters.Section.Depth; need > have+slack {
		c.errorf(RuleSlat, "slats", "slats and cleats take %s of the rafters' depth of %s; set them less far down, or take narrower slats or a flatter angle", c.mm(need), c.mm(have))
	}
	if bay := s.Centres - j.Rafters.Section.Width; bay < 2*b+l.Clearance+slack {
		c.errorf(RuleSlat, "slats.cleats", "the rafters stand %s apart in the clear, too little for a cleat of %s at each end of a slat", c.mm(bay), c.mm(b))
	}
	if p := layer.Centres(); p > 0 && p*sin < l.Section.Depth+t-slack && p*cos < l.Section.Width-slack {
		c.errorf(RuleSlat, "slats", "slats at centres of %s leave no room for a cleat of %s between them; space them wider or take thinner cleats", c.mm(p), c.mm(t))
	}
}

// slatPrisms makes the slats of each bay, and the cleats under them.
func (b *builder) slatPrisms() {
	j, s := b.job, b.set
	b.slats = len(b.members)
	layer, ok := s.Layer(KindSlat)
	if !ok {
		return
	}
	l := j.Slats
	half := (j.Rafters.Section.Width + l.Clearance) / 2
	for bay := range len(s.Rafters) - 1 {
		from, to := s.Rafters[bay]+half, s.Rafters[bay+1]-half
		for _, u := range layer.At {
			b.add(Member{
				Kind: KindSlat, No: len(b.members) - b.slats + 1, Section: l.Section, Timber: l.Timber, Length: to - from, Place: s.slatPlace(l, u, from),
			})
		}
	}
	b.cleats = len(b.members)
	c := l.Cleats
	for i := b.slats; i < b.cleats; i++ {
		slat := b.members[i]
		off := l.Clearance / 2
		for _, x := range []float64{-off, slat.Length + off - c.Section.Width} {
			place := slat.Place
			// Along the slat's width from its house side, below its underside.
			place.O = slat.Place.Point(geom.V(x, slat.Section.Width, -c.Section.Depth))
			place.U, place.V = slat.Place.V.Neg(), slat.Place.U
			b.add(Member{
				Kind: KindCleat, No: len(b.members) - b.cleats + 1, Section: c.Section, Timber: c.Timber, Length: slat.Section.Width, Place: place,
			})
		}
	}
}

// slatPlace are the axes of a slat that is seen from u on down the slope, and
// begins at x.
func (s Setout) slatPlace(l Slats, u, x float64) geom.Axes {
	slope := s.onSlope()
	sin, cos := math.Sincos(l.turn())
	low := -l.Down - l.High()
	o := geom.V(u+l.Section.Width*cos, x, low)
	if l.OuterUp {
		o = geom.V(u+l.Seen(), x, low-l.Section.Width*sin)
	}
	return geom.Axes{
		O: slope.Point(o), U: geom.V(1, 0, 0),
		V: slope.U.Mul(-cos).Add(slope.W.Mul(sin)), W: slope.U.Mul(sin).Add(slope.W.Mul(cos)),
	}
}

// joinSlats records where slats lie on their cleats and cleats on the rafters.
func (b *builder) joinSlats() {
	layer, ok := b.set.Layer(KindSlat)
	if !ok {
		return
	}
	l, each := b.job.Slats, len(layer.At)
	for i := b.slats; i < b.cleats; i++ {
		bay := (i - b.slats) / each
		slat := b.members[i]
		for side := range 2 {
			k := b.cleats + 2*(i-b.slats) + side
			cleat := b.members[k]
			at := cleat.Place.Point(geom.V(cleat.Length/2, cleat.Section.Width/2, cleat.Section.Depth))
			b.joints = append(b.joints, Joint{
				Kind: JointSlatCleat, A: i, B: k, At: at, Bearing: geom.PlaneAt(at, slat.Place.W),
				Area: (cleat.Section.Width - l.Clearance/2) * cleat.Length, Clearance: l.Clearance,
			})
			face, out := 0.0, geom.V(1, 0, 0)
			if side == 1 {
				face, out = cleat.Section.Width, geom.V(-1, 0, 0)
			}
			on := cleat.Place.Point(geom.V(cleat.Length/2, face, cleat.Section.Depth/2))
			b.joints = append(b.joints, Joint{
				Kind: JointCleatRafter, A: k, B: b.rafters + bay + side, At: on, Bearing: geom.PlaneAt(on, out), Area: cleat.Section.Depth * cleat.Length,
			})
		}
	}
}

// checkSlatEnds makes sure, on the finished solids, that slats and cleats do not
// run into plate or beam.
func (b *builder) checkSlatEnds() {
	layer, ok := b.set.Layer(KindSlat)
	if !ok {
		return
	}
	each := len(layer.At)
	for i := range each {
		for _, m := range []int{b.slats + i, b.cleats + 2*i} {
			if k, ok := b.meets(m); ok {
				key, word := "slats.first", "first"
				if i > each/2 || k.End == FaceEnd {
					key, word = "slats.last", "last"
				}
				b.check.errorf(RuleSlat, key, "slat %d or its cleat runs into the %s; make %s more", i+1, k.Short, word)
				return
			}
		}
	}
}
