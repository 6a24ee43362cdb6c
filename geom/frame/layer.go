package frame

import (
	"math"

	"plumbcut/geom"
)

// Lie is how battens lie to the rafters. The zero value is LieOver.
type Lie string

// The ways of lying.
const (
	LieOver    Lie = "over"    // on the rafters' top edges; neither is cut
	LieChecked Lie = "checked" // in checks across the rafters' top edges
)

// lay is what the model has to know of one way in which battens lie. Each is
// one file, joint_*.go, and one line in Lie.lay; nothing else of the model asks
// how they lie.
type lay interface {
	// sunk is how far their undersides lie below the rafters' top edges,
	// square to the slope.
	sunk(b Battens) float64
	// check finds what cannot be built. The battens are set out already.
	check(c *checker)
	// join cuts a batten and a rafter for each other and records their joint.
	join(b *builder, batten, rafter int)
}

// lay is the lie's own.
func (l Lie) lay() lay {
	if l == LieChecked {
		return checkedLay{}
	}
	return overLay{}
}

// Layer is a row of alike sticks on the slope: the battens, or the laths over
// them. What of it is measured is seen square to the slope.
type Layer struct {
	Kind   Kind
	Key    string    // under which the job file describes it
	At     []float64 // of the edges nearest to where they are counted from: see Setout
	Wide   float64   // of one stick
	Gap    float64   // clear, between two; 0 of a single one
	Stated float64   // share to be covered at least; 0: not stated
	Rests  bool      // its sticks run down the slope
}

// Centres is the distance from the middle of one stick to that of the next; 0 of
// a single one.
func (l Layer) Centres() float64 {
	if len(l.At) < 2 {
		return 0
	}
	return l.Gap + l.Wide
}

// Shade is the share of the area that the layer covers: a stick's width over its
// distance from the next, centre to centre. It is 0 of a single stick, which
// repeats nothing.
func (l Layer) Shade() float64 {
	if c := l.Centres(); c > 0 {
		return math.Min(1, l.Wide/c) // slats may cover each other
	}
	return 0
}

// Layer returns the layer of a kind, and false when there is none.
func (s Setout) Layer(k Kind) (Layer, bool) {
	for _, l := range s.Layers {
		if l.Kind == k {
			return l, true
		}
	}
	return Layer{}, false
}

// Shade is the share of the area that all layers together cover, seen square to
// the slope: what one lets through, the next covers by its own share.
func (s Setout) Shade() float64 {
	open := 1.0
	for _, l := range s.Layers {
		open *= 1 - l.Shade()
	}
	return 1 - open
}

// BattenTop is how far the battens' tops stand above the rafters' top edges,
// square to the slope.
func (f *Frame) BattenTop() float64 { return battenTop(f.Job.Battens) }

func battenTop(b Battens) float64 { return b.Section.Depth - b.Lie.lay().sunk(b) }

// spacing is how a row of alike sticks is to be spaced.
type spacing struct {
	key           string
	what          string  // they are called, in the plural
	room, wide    float64 // from the first near edge to the last far edge; of one
	number        int
	gap, shade    float64
	number0, over Rule // of too many or too few, of too little room
}

// count is how many fit as asked for, and the clear gap; false after an error.
func (p spacing) count(c *checker) (n int, gap float64, ok bool) {
	n = p.number
	switch {
	case n > 0:
	case p.gap > 0:
		n = ceilCount((p.room + p.gap) / (p.wide + p.gap))
	case p.shade > 0:
		n = 1 + ceilCount((p.room-p.wide)*p.shade/p.wide)
	}
	if n < 1 || n > maxSticks {
		c.errorf(p.number0, p.key, "%d %s; it must be 1 to %d", n, p.what, maxSticks)
		return 0, 0, false
	}
	if n > 1 {
		gap = (p.room - float64(n)*p.wide) / float64(n-1)
	}
	if gap < 0 || p.room < p.wide-slack {
		c.errorf(p.over, p.key, "%d %s of %s do not fit in the %s between first and last; use at most %d",
			n, p.what, c.mm(p.wide), c.mm(p.room), max(0, int((p.room+slack)/p.wide)))
		return 0, 0, false
	}
	return n, gap, true
}

// layOutBattens spaces the battens down the slope between the first and last.
func layOutBattens(c *checker) {
	j, s := c.job, &c.set
	b := j.Battens
	if b.Section.Depth == 0 {
		return
	}
	total := s.battensTo(j)
	w := b.Section.Width
	room := total - b.First - b.Last // first near edge to last far edge
	n, gap, ok := spacing{
		key: "battens", what: "battens", room: room, wide: w, number: b.Number, gap: b.Gap, shade: b.Shade,
		number0: RuleBattenNumber, over: RuleBattensOverlap,
	}.count(c)
	if !ok {
		return
	}
	if b.First < (s.Rear().Outer-s.RafterStart)/s.cos-slack || b.Last < (s.RafterEnd-s.BattenEnd)/s.cos-slack {
		c.errorf(RuleBattenClash, "battens", "the end battens hang beyond the ends of the rafters; give a first and last of 0 or more")
		return
	}
	s.Battens, s.BattenGap = spaced(b.First, b.First+room-w, n), gap
	s.layOutRuns(j)
	s.Layers = append(s.Layers, Layer{Kind: KindBatten, Key: "battens", At: s.Battens, Wide: w, Gap: gap, Stated: b.Shade})
	b.Lie.lay().check(c)
	layOutLaths(c)
}

func (b *builder) battenPrisms() {
	j, s := b.job, b.set
	b.battens = len(b.members)
	if len(s.Battens) == 0 {
		return
	}
	slope := s.onSlope()
	for i, u := range s.Battens {
		from, to := battenExtent(j, s, i)
		b.add(Member{
			Kind: KindBatten, No: i + 1, Section: j.Battens.Section, Timber: j.Battens.Timber,
			Length: to - from,
			Place: geom.Axes{
				O: slope.Point(geom.V(u+j.Battens.Section.Width, from, -j.Battens.Lie.lay().sunk(j.Battens))),
				U: geom.V(1, 0, 0), V: slope.U.Neg(), W: slope.W,
			},
		})
	}
}

// checkLayers makes sure, on the finished solids, that the end battens and the
// laths do not run into plate, beam or cladding.
func (b *builder) checkLayers() {
	n := len(b.set.Battens)
	if n == 0 {
		return
	}
	c := b.check
	b.checkPostsUnderBattens()
	if k, ok := b.meets(b.battens); ok {
		c.errorf(RuleBattenClash, "battens.first", "the first batten runs into the %s; make first at least 0", k.Short)
	}
	if k, ok := b.meets(b.battens + n - 1); ok {
		// A batten stands square to the slope, so its top leans over the beam.
		lean := battenTop(b.job.Battens) * b.set.tan
		c.errorf(RuleBattenClash, "battens.last", "the last batten leans into the %s, which stands above the rafters; make last at least %s", k.Short, c.mm(lean))
	}
	if laths, ok := b.set.Layer(KindLath); ok {
		for i := range laths.At {
			if b.lathClashes(b.laths + i) {
				return
			}
		}
	}
}

// meets returns the carrier that a stick on the slope shares room with, and false
// if it is clear of all.
func (b *builder) meets(stick int) (Carrier, bool) {
	for _, k := range b.set.Carriers {
		for _, timber := range k.Members {
			if geom.Overlap(b.members[stick].solid, b.members[timber].solid) > clashLeast {
				return k, true
			}
		}
	}
	return Carrier{}, false
}
