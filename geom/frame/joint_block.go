package frame

import (
	"fmt"
	"math"

	"plumbcut/geom"
)

// standBetween stands a stick between two others, its square ends against their
// sides. Nothing is cut into those.
func (b *builder) standBetween(kind JointKind, stick, left, right int) {
	m := b.members[stick]
	for _, end := range []struct {
		other int
		u     float64
		n     geom.Vec
	}{{left, 0, geom.V(1, 0, 0)}, {right, m.Length, geom.V(-1, 0, 0)}} {
		at := m.Place.Point(geom.V(end.u, m.Section.Width/2, m.Section.Depth/2))
		b.joints = append(b.joints, Joint{
			Kind: kind, A: stick, B: end.other, At: at,
			Bearing: geom.PlaneAt(at, end.n), Area: m.Section.Depth * m.Section.Width,
		})
	}
}

// layOutBlocks places the rows of blocks, as distances of their middles down the
// slope from the plate's outer face, and checks them.
func (c *checker) layOutBlocks() {
	j, s := c.job, &c.set
	b := j.Blocking
	if b.Section.Depth == 0 {
		return
	}
	most := j.Rafters.Section.Depth
	if b.Set == BlockPlumb {
		most = s.plumb(most) - b.Section.Width*s.tan
	}
	if b.Section.Depth > most+slack {
		c.errorf(RuleBlock, "blocking.section", "blocks %s deep stand out below the rafters; make them at most %s", c.mm(b.Section.Depth), c.mm(most))
		return
	}
	for i, r := range b.Rows {
		path := fmt.Sprintf("blocking.at[%d]", i)
		down, ok := r.Down, true
		if r.Over != "" {
			down, ok = c.blocksOver(path, r.Over)
		} else {
			ok = c.blocksDown(path, r.Down)
		}
		if !ok {
			continue
		}
		if !c.blocksClearOfChecks(path, down) {
			continue
		}
		if n := len(s.BlockRows); n > 0 && down-s.BlockRows[n-1] < b.Section.Width-slack {
			c.errorf(RuleBlock, path, "this row of blocks runs into the one before it; list the rows from the house outwards, at least %s from middle to middle", c.mm(b.Section.Width))
			continue
		}
		s.BlockRows = append(s.BlockRows, down)
	}
}

// blocksOver is where blocks stand over a carrier; false if they cannot.
func (c *checker) blocksOver(path, key string) (down float64, ok bool) {
	j, s := c.job, c.set
	k := s.Rear()
	if key == "beam" {
		k = s.Front()
	}
	if k.Hold != Over {
		c.errorf(RuleBlock, path, "no blocks can stand over the %s: the rafters do not lie over it; say %s.rafters: over, or give the row's distance", key, key)
		return 0, false
	}
	down = (s.lineAt - (k.Inner+k.Outer)/2) / s.cos
	low := s.lowestOfBlock(j, down)
	if clear := low - k.Top; clear < -slack {
		c.errorf(RuleBlock, "blocking.section", "blocks %s deep would stand %s in the %s; make them at most %s", c.mm(j.Blocking.Section.Depth), c.mm(-clear), key, c.mm(j.Blocking.Section.Depth+clear/s.cos))
		return 0, false
	}
	if rod := j.Posts.Rod; len(k.Posts) > 0 && rod.Diameter > 0 && low < k.Top+rod.Above {
		c.errorf(RuleBlock, path, "the blocks over the beam leave %s for the rods' nuts, which stand %s above it; use shallower blocks or no rods", c.mm(low-k.Top), c.mm(rod.Above))
		return 0, false
	}
	return down, true
}

// lowestOfBlock is the level of the lowest arris of the blocks of a row.
func (s Setout) lowestOfBlock(j *Job, row float64) float64 {
	a := s.blockAxes(j, row)
	return min(a.O.Z, a.Point(geom.V(0, j.Blocking.Section.Width, 0)).Z)
}

// blocksDown checks that a row lies clear between plate and beam.
func (c *checker) blocksDown(path string, down float64) bool {
	j, s := c.job, c.set
	size := j.Blocking.Section
	a := s.blockAxes(j, down)
	near, far := a.O.Y, a.O.Y // the world y of its corners
	for _, q := range []geom.Vec{{Y: size.Width}, {Z: size.Depth}, {Y: size.Width, Z: size.Depth}} {
		y := a.Point(q).Y
		near, far = max(near, y), min(far, y)
	}
	if near > s.Rear().Outer+slack || far < s.Front().Inner-slack {
		c.errorf(RuleBlock, path, "blocks %s down the slope do not stand clear between plate and beam; their middle must be between about %s and %s",
			c.mm(down), c.mm(down+(near-s.Rear().Outer)/s.cos), c.mm(down+(far-s.Front().Inner)/s.cos))
		return false
	}
	return true
}

// blocksClearOfChecks checks that a row lies between battens that are let into
// the rafters: their checks would cut into the blocks' bearing.
func (c *checker) blocksClearOfChecks(path string, down float64) bool {
	j, s := c.job, c.set
	if j.Battens.Lie != LieChecked || len(s.Battens) == 0 {
		return true
	}
	wide := j.Battens.Section.Width
	half := j.Blocking.Section.Width/2 + j.Battens.Check.Clearance + j.Battens.Check.Rafter*s.tan
	best, far := 0.0, math.Inf(1)
	clear := true
	for i, at := range s.Battens {
		clear = clear && (down+half <= at || down-half >= at+wide)
		if i == 0 {
			continue
		}
		from, to := s.Battens[i-1]+wide+half, at-half
		if near := min(max(down, from), to); from <= to && math.Abs(near-down) < far {
			best, far = near, math.Abs(near-down)
		}
	}
	switch {
	case clear:
		return true
	case math.IsInf(far, 1):
		c.errorf(RuleBlock, path, "the battens are checked into the rafters with no room for a block between two; lay them over the rafters, or take the blocks out")
	default:
		c.errorf(RuleBlock, path, "a batten is checked into the rafters where these blocks stand; the nearest clear place is %s down the slope", c.mm(best))
	}
	return false
}
