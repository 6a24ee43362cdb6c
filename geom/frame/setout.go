package frame

import (
	"math"
	"strings"

	"plumbcut/geom"
)

// Setout holds the positions that a builder marks before anything is cut, and
// the sizes that follow from them. Everything is in world coordinates unless a
// field says otherwise.
type Setout struct {
	From, To float64 // the stretch along that the carriers share

	Carriers               []Carrier // what holds the rafters, from the house outwards
	RafterStart, RafterEnd float64   // y of the ends of the rafters' top edges
	Heel                   float64   // plumb, from a seat that the rafters lie over to their top edges
	BattenEnd              float64   // y of the line of the rafters' top edges to which the last batten may come

	Rafters []float64 // centres, along
	Centres float64   // centre to centre

	Battens   []float64 // house-side edges, down the slope from the plate's outer face; before it, negative
	BattenGap float64   // clear, along the slope

	BattenRuns [][2]int // per batten, the first and the last rafter that it lies on
	Layers     []Layer  // what is spaced on the slope, from the rafters up

	PlateFixings []FixingPoint
	PostFixings  [][]float64 // per post, the levels of its screws; none: free-standing

	RoofStraps []StrapRun   // in pairs, of each the one that falls to the right first
	Braces     []BracePlace // per post, the left one first
	TrimOut    float64      // y of the outermost of fascia, valance and braces; 0: nothing stands before the beam
	BlockRows  []float64    // of blocks: their middles, down the slope from the plate's outer face

	HeadBeam  float64 // under the beam, above what one stands on there
	HeadPlate float64 // under the rafters at the plate's outer face, or under a rear beam

	Covered float64 // plan area from the wall, or what stands farthest to the rear, to the front, mm²

	tan, sin, cos float64 // of the slope
	line          float64 // z of the line of the rafters' top edges at lineAt
	lineAt        float64 // world y
}

// FixingPoint is a screw or anchor that holds the plate to the wall.
type FixingPoint struct {
	Along    float64
	Up       float64 // above the plate's underside
	Blocking bool    // no stud there: blocking must be added behind the lining
}

// RafterTop is the level of the line of the rafters' top edges at a world y.
func (s Setout) RafterTop(y float64) float64 { return s.line + (y-s.lineAt)*s.tan }

// RafterTop is the level of the line of the rafters' top edges at a world y.
func (f *Frame) RafterTop(y float64) float64 { return f.Setout.RafterTop(y) }

// Arris is the world y of a named arris.
func (s Setout) Arris(a Arris) float64 {
	switch a {
	case PlateInner, RearOuter:
		return s.Rear().Inner
	case BeamInner:
		return s.Front().Inner
	case BeamOuter:
		return s.Front().Outer
	case WallFace:
		return 0
	}
	return s.Rear().Outer
}

// rear reports whether only a free-standing frame has the arris, and house
// whether only one against a house has it.
func (a Arris) rear() bool  { return a == RearOuter || a == RearInner }
func (a Arris) house() bool { return a == WallFace || a == PlateInner || a == PlateOuter }

// Length is the distance between From and To measured down the slope.
func (s Slope) Length() float64 { return math.Hypot(s.Run, s.Drop) }

// plumb is the upright measure of a sloping timber of the given depth.
func (s Setout) plumb(depth float64) float64 { return depth / s.cos }

// onSlope returns the axes of the plane of the rafters' top edges: U down the
// slope, V to the right, W up from it; the origin is at lineAt, x = 0.
func (s Setout) onSlope() geom.Axes {
	return geom.Axes{
		O: geom.V(0, s.lineAt, s.line),
		U: geom.V(0, -s.cos, -s.sin),
		V: geom.V(1, 0, 0),
		W: geom.V(0, -s.sin, s.cos),
	}
}

// slack absorbs rounding where a count is worked out from a division or two
// stated figures are compared: far below any stated size, far above rounding.
const slack = 1e-6

// maxSticks is the greatest number of one kind of stick, a guard against a
// slip of the decimal point.
const maxSticks = 5000

// layOut works out every position. What it cannot place it reports to c.
func layOut(c *checker) {
	j, s := c.job, &c.set
	layOutCarriers(j, s)
	s.From, s.To = math.Inf(-1), math.Inf(1)
	for _, k := range s.Carriers {
		from, to := k.Reach()
		s.From, s.To = max(s.From, from), min(s.To, to)
	}
	layOutSlope(c)
	layOutRafters(c)
	if c.sloped {
		settlePostTops(c)
	}
	if len(c.errs) == 0 {
		layOutBattens(c)
		layOutSlats(c)
	}
	if len(c.errs) == 0 {
		layOutFixings(c)
	}
}

// minRun is the least clear distance between the carriers.
const minRun = 200

// maxSlope is the steepest fall, just beyond 20 in 12.
const maxSlope = 60 * math.Pi / 180

// layOutSlope solves the fall. The run depends on level distances alone, so a
// drop between named arrises gives the slope exactly.
func layOutSlope(c *checker) {
	j, s := c.job, &c.set
	sl := Slope{From: j.Fall.From, To: j.Fall.To}
	if sl.From == "" {
		sl.From = PlateOuter
		if j.Freestanding() {
			sl.From = RearInner
		}
	}
	if sl.To == "" {
		sl.To = BeamInner
	}
	at := s.Cut(s.middle())
	sl.Run = at.Arris(sl.From) - at.Arris(sl.To)
	if s.Rear().Outer-s.nearest() < minRun {
		c.errorf(RuleBeamOut, "beam.out", "the %s's inner face is %s from the %s's %s face; make beam.out at least %s", s.Front().Short,
			c.mm(s.Rear().Outer-s.nearest()), s.Rear().Short, s.Rear().FaceWord(s.Rear().Outer), c.mm(minRun+s.Front().Wide()-s.Rear().Outer))
		return
	}
	for _, a := range []struct {
		path string
		is   Arris
	}{{"fall.from", sl.From}, {"fall.to", sl.To}} {
		if a.is.rear() != j.Freestanding() && (a.is.rear() || a.is.house()) {
			c.errorf(RuleFallBetween, a.path, "the frame has no %s; name an arris of its own timbers", strings.TrimSuffix(strings.TrimSuffix(string(a.is), " inner arris"), " outer arris"))
			return
		}
	}
	if sl.Run <= 0 {
		c.errorf(RuleFallBetween, "fall", "the fall is measured from the %s to the %s, which is not farther out; name the one farther from the front first", sl.From, sl.To)
		return
	}
	switch j.Fall.Kind {
	case FallRatio:
		if j.Fall.Value > 0 {
			s.tan = 1 / j.Fall.Value
		} else {
			s.tan = -1
		}
	case FallDrop:
		s.tan = j.Fall.Value / sl.Run
	default:
		s.tan = math.Tan(j.Fall.Value)
	}
	sl.Angle = math.Atan(s.tan)
	switch {
	case !(s.tan >= 0):
		c.errorf(RuleFall, "fall", "the fall would lift the %s above the %s; the rafters must fall to the front, or lie level", s.Front().Short, s.Rear().Short)
		return
	case sl.Angle > maxSlope+slack:
		c.errorf(RuleFall, "fall", "the fall is %s; it can be at most %s", c.format.Angle(sl.Angle), c.format.Angle(maxSlope))
		return
	}
	s.cos = 1 / math.Hypot(1, s.tan)
	s.sin = s.tan * s.cos
	settleCarriers(j, s)
	front, out := s.Front(), s.FrontOut()
	if front.Skewed() {
		out = at.Front().Outer
	}
	from, to := front.Reach()
	s.Covered = (max(s.Rear().To, to) - min(s.Rear().From, from)) * (s.BackIn() - out)
	sl.Drop = sl.Run * s.tan
	c.slope, c.sloped = sl, true
}

// layOutRafters spaces the rafters over the stretch that plate and beam share.
// With flush ends the centres of the end rafters stand half a thickness in, so
// the centres are (length − thickness) ÷ spaces.
func layOutRafters(c *checker) {
	j, s := c.job, &c.set
	w := j.Rafters.Section.Width
	first, last := s.From+w/2, s.To-w/2
	switch j.Rafters.Ends {
	case EndsCentred:
		first, last = s.From, s.To
	case EndsInset:
		first, last = first+j.Rafters.Inset, last-j.Rafters.Inset
	}
	if last-first < w {
		c.errorf(RuleRaftersOverlap, "rafters", "%s and %s share only %s, too little for two rafters; lengthen the shorter one", s.Rear().Short, s.Front().Short, c.mm(s.To-s.From))
		return
	}
	n := j.Rafters.Number
	if n == 0 && j.Rafters.Centres > 0 {
		n = 1 + max(1, ceilCount((last-first)/j.Rafters.Centres))
	}
	if n < 2 || n > maxSticks {
		c.errorf(RuleRafterNumber, "rafters.number", "%d rafters; it must be 2 to %d", n, maxSticks)
		return
	}
	s.Centres = (last - first) / float64(n-1)
	if need := w + j.Rafters.Clearance; s.Centres < need {
		c.errorf(RuleRaftersOverlap, "rafters.number", "%d rafters in %s would overlap: their centres would be %s and a housing is %s wide; use at most %d",
			n, c.mm(last-first+w), c.mm(s.Centres), c.mm(need), 1+int((last-first)/need))
		return
	}
	s.Rafters = spaced(first, last, n)
}

// spaced returns n even positions, the ends exact.
func spaced(first, last float64, n int) []float64 {
	if n == 1 {
		return []float64{first}
	}
	out := make([]float64, n)
	for i := range out {
		// Reckoned from the nearer end, so that the mirror image of a job
		// gets the mirror image of every position.
		if 2*i < n-1 {
			out[i] = first + (last-first)*float64(i)/float64(n-1)
		} else {
			out[i] = last - (last-first)*float64(n-1-i)/float64(n-1)
		}
	}
	return out
}

// ceilCount rounds up, but not for an excess that is mere rounding. A count
// beyond maxSticks stays beyond it, whatever its size.
func ceilCount(x float64) int {
	if !(x < 2*maxSticks) {
		return 2 * maxSticks
	}
	return int(math.Ceil(x - slack))
}
