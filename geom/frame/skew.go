package frame

import (
	"math"

	"plumbcut/geom"
)

// A beam need not be parallel with the wall. Its carrier then has axes of its
// own: those of the wall, turned by Turn about the beam's outer arris at its
// left end. Whatever the model says of a carrier, and of the posts under it, is
// said in them, so that beam, posts and footings are made as those of a beam that
// is parallel.
//
//	        wall ──────────────────────────────
//	              │rafters, square to the wall│
//	              │    │    │    │    │    │ ▁┤ right end
//	              │    │  ▁▁│▁▁▁▁│▔▔▔▔│▔▔▔▔   │
//	     left end ├▔▔▔▔▔▔▔
//
// The rafters stay square to the wall and their top edges in one plane, for
// whatever lies across them. The beam stays level. So the rafters have lengths of
// their own, their ends at the beam are cut in plan as well as plumb, and where
// the frame falls they lie lower along the beam the farther out they come to it.
// A beam that followed them would fall along its length, and level rafters from a
// level plate to a level beam would twist what lies on them.

// maxTurn is the most by which a beam may turn from the wall's line (own): beyond
// it the housings would be longer than the rafters are deep.
const maxTurn = 30 * math.Pi / 180

// Skewed reports whether the carrier is not parallel with the wall.
func (k Carrier) Skewed() bool { return k.Turn != 0 }

// Skewed reports whether any carrier is.
func (s Setout) Skewed() bool {
	for _, k := range s.Carriers {
		if k.Skewed() {
			return true
		}
	}
	return false
}

// turn is by how much the beam turns from the wall's line, anticlockwise seen
// from above: positive when its right end is the nearer.
func (b Beam) turn() float64 {
	if b.OutRight == 0 || b.OutRight == b.Out {
		return 0
	}
	return math.Asin((b.Out - b.OutRight) / (b.To - b.From))
}

// turned sets the carrier's axes.
func (k Carrier) turned(by float64) Carrier {
	k.Turn, k.Lies = by, geom.World()
	if by == 0 {
		return k
	}
	sin, cos := math.Sincos(by)
	k.Lies.U, k.Lies.V = geom.V(cos, sin, 0), geom.V(-sin, cos, 0)
	pivot := geom.V(k.From, k.Outer, 0)
	k.Lies.O = pivot.Sub(k.Lies.Dir(pivot))
	return k
}

// Point carries a point from the carrier's own axes to the world.
func (k Carrier) Point(x, y, z float64) geom.Vec { return k.Lies.Point(geom.V(x, y, z)) }

// place carries a place from the carrier's own axes to the world.
func (k Carrier) place(a geom.Axes) geom.Axes {
	return geom.Axes{O: k.Lies.Point(a.O), U: k.Lies.Dir(a.U), V: k.Lies.Dir(a.V), W: k.Lies.Dir(a.W)}
}

// Reach is the stretch along the wall that the carrier takes up. The ends of a
// skewed one are cut square to the wall.
func (k Carrier) Reach() (from, to float64) {
	if !k.Skewed() {
		return k.From, k.To
	}
	return k.From, k.From + (k.To-k.From)*k.Lies.U.X
}

// wholly is the stretch, in its own axes, over which the carrier has its whole
// width: the skew ends of one on the skew are left out.
func (k Carrier) wholly() (from, to float64) {
	lean := k.Section.Width * math.Tan(k.Turn)
	return k.From + max(0, lean), k.To + min(0, lean)
}

// Meets is how far along a carrier, in its own axes, the line square to the wall
// at x meets a face of it, given by its own y.
func (k Carrier) Meets(x, face float64) float64 {
	if !k.Skewed() {
		return x
	}
	return (x - k.Lies.O.X - face*k.Lies.V.X) / k.Lies.U.X
}

// Cut is the carrier as a plane square to the wall at x cuts it: what it says is
// then said in the world's axes. One that is parallel with the wall is the same
// everywhere.
func (k Carrier) Cut(x float64) Carrier {
	if !k.Skewed() {
		return k
	}
	at := func(face float64) float64 { return k.Point(k.Meets(x, face), face, 0).Y }
	out := k
	out.Inner, out.Outer, out.PostOuter = at(k.Inner), at(k.Outer), at(k.PostOuter)
	out.From, out.To = k.Reach()
	out.Turn, out.Lies = 0, geom.World()
	return out
}

// Cut is the set-out as a plane square to the wall at x sees it.
func (s Setout) Cut(x float64) Setout {
	if !s.Skewed() {
		return s
	}
	front := s.Front()
	s.Carriers = append([]Carrier{}, s.Carriers...)
	for i, k := range s.Carriers {
		s.Carriers[i] = k.Cut(x)
	}
	cut := s.Front()
	s.BattenEnd, s.RafterEnd = cut.Inner, cut.Inner
	if front.Hold.housed() {
		s.RafterEnd = front.Point(front.Meets(x, front.Inner-front.Housing), front.Inner-front.Housing, 0).Y
	}
	return s
}

// middle is the middle of the stretch that the carriers share.
func (s Setout) middle() float64 { return (s.From + s.To) / 2 }

// nearest is the world y, within the stretch that the carriers share, of the
// front carrier's inner face where it comes nearest to the house; farthest is
// that of its outer face where it is farthest out.
func (s Setout) nearest() float64 {
	return max(s.Front().Cut(s.From).Inner, s.Front().Cut(s.To).Inner)
}

func (s Setout) farthest() float64 {
	from, to := s.Front().Reach()
	return min(s.Front().Cut(from).Outer, s.Front().Cut(to).Outer)
}

// endTurn gives a beam that is not parallel with the wall its ends, which are cut
// square to the wall.
func (b *builder) endTurn(m *Member, k Carrier) {
	if !k.Skewed() {
		return
	}
	lean := k.Section.Width * math.Tan(k.Turn)
	start := min(0, lean)
	m.Place.O = m.Place.Point(geom.V(start, 0, 0))
	m.Length += math.Abs(lean)
	m.Features = append(m.Features,
		EndCut{End: FaceStart, Cut: CutSkew, At: -start, Plan: k.Turn},
		EndCut{End: FaceEnd, Cut: CutSkew, At: k.To - k.From - start, Plan: k.Turn})
}

// plan is the plan angle, in a rafter's own axes, of an end that lies along a
// carrier's face.
func (k Carrier) plan(s Setout) float64 {
	if !k.Skewed() {
		return 0
	}
	return -math.Atan(math.Tan(k.Turn) / s.cos)
}

// checkTurn refuses a beam that turns too far, and what its turn leaves no room
// for.
func (c *checker) checkTurn() bool {
	j := c.job
	if turn := math.Abs(j.Beam.turn()); !(turn <= maxTurn) {
		c.errorf(RuleSkew, "beam.out", "the beam would turn by more than %s from the wall's line; bring its ends nearer to the same distance, or make it longer", c.format.Angle(maxTurn))
		return false
	}
	return true
}

// postMiddle is the middle of a post in the world.
func (s Setout) postMiddle(j *Job, post int) geom.Vec {
	k := s.Under(post)
	return k.Point(j.Posts.At[post].Along, k.PostOuter+j.Posts.Section.Depth/2, 0)
}

// Steps is how much lower the rafters lie along a carrier at one end than at the
// other; 0 along one that is parallel with the wall.
func (s Setout) Steps(k Carrier) float64 {
	from, to := s.From, s.To
	if n := len(s.Rafters); n > 0 {
		from, to = s.Rafters[0], s.Rafters[n-1]
	}
	return math.Abs(s.RafterTop(k.Cut(from).Face()) - s.RafterTop(k.Cut(to).Face()))
}

// layOutRuns works out over which rafters each batten runs: all, or those that
// carry it before a beam that is not parallel with the wall.
func (s *Setout) layOutRuns(j *Job) {
	s.BattenRuns = make([][2]int, len(s.Battens))
	for i, u := range s.Battens {
		run := [2]int{0, len(s.Rafters) - 1}
		far := u + j.Battens.Section.Width
		for run[0] < run[1] && !s.carries(j, run[0], far) {
			run[0]++
		}
		for run[1] > run[0] && !s.carries(j, run[1], far) {
			run[1]--
		}
		s.BattenRuns[i] = run
	}
}

// carries reports whether a rafter carries a batten whose far edge lies so far
// down the slope.
func (s Setout) carries(j *Job, rafter int, far float64) bool {
	return far <= s.battenRoom(j, rafter)-j.Battens.Last+slack
}

// battenRoom is how far down the slope battens may come over a rafter, but for
// what is kept clear before the beam.
func (s Setout) battenRoom(j *Job, rafter int) float64 {
	half := j.Rafters.Section.Width / 2
	x := s.Rafters[rafter]
	end := max(s.Cut(x-half).BattenEnd, s.Cut(x+half).BattenEnd)
	return (s.Rear().Outer - end) / s.cos
}

// battensTo is how far down the slope the last batten may come: that over at least
// two rafters.
func (s Setout) battensTo(j *Job) float64 {
	if !s.Skewed() {
		return (s.Rear().Outer - s.BattenEnd) / s.cos
	}
	n := len(s.Rafters)
	return max(min(s.battenRoom(j, 0), s.battenRoom(j, 1)), min(s.battenRoom(j, n-2), s.battenRoom(j, n-1)))
}

// CutAt is the frame as a section square to the wall at x has it: the set-out, the
// fall and the levels are those of that plane. Members and joints are the same.
func (f *Frame) CutAt(x float64) *Frame {
	if !f.Setout.Skewed() {
		return f
	}
	g := *f
	g.Setout = f.Setout.Cut(x)
	g.Slope.Run = g.Setout.Arris(g.Slope.From) - g.Setout.Arris(g.Slope.To)
	g.Slope.Drop = g.Slope.Run * f.Setout.tan
	beam, cut := f.Setout.Front(), g.Setout.Front()
	g.Levels = nil
	here := false
	for _, l := range f.Levels {
		switch was := beam.Cut(l.At.X); l.At.Y {
		case was.Inner: // of one rafter, and here it is another
			if here {
				continue
			}
			here = true
			l = at("top of rafters here at the "+beam.Short+"'s inner face", x, cut.Inner, f.RafterTop(cut.Inner))
		case was.Outer:
			l.At = geom.V(x, cut.Outer, l.Z)
		case was.PostOuter:
			l.At = geom.V(x, cut.PostOuter, l.Z)
		}
		g.Levels = append(g.Levels, l)
	}
	return &g
}

// SquareTo is the frame with the axes of its front carrier for the world's: the
// beam lies along x, and the house is turned.
func (f *Frame) SquareTo() *Frame {
	front := f.Setout.Front()
	if !front.Skewed() {
		return f
	}
	l := front.Lies
	own := geom.Axes{O: l.Local(geom.Vec{}), U: l.LocalDir(geom.V(1, 0, 0)), V: l.LocalDir(geom.V(0, 1, 0)), W: l.LocalDir(geom.V(0, 0, 1))}
	set := func(a geom.Axes) geom.Axes {
		return geom.Axes{O: own.Point(a.O), U: own.Dir(a.U), V: own.Dir(a.V), W: own.Dir(a.W)}
	}
	g := *f
	g.Members = append([]Member{}, f.Members...)
	for i := range g.Members {
		m := &g.Members[i]
		m.Place, m.solid = set(m.Place), m.solid.Placed(own)
	}
	g.Joints = append([]Joint{}, f.Joints...)
	for i := range g.Joints {
		j := &g.Joints[i]
		if j.At = own.Point(j.At); j.Bears() {
			j.Bearing = own.Plane(j.Bearing)
		}
	}
	g.Levels = append([]Level{}, f.Levels...)
	for i := range g.Levels {
		g.Levels[i].At = own.Point(g.Levels[i].At)
	}
	g.House = append([]Solid{}, f.House...)
	for i := range g.House {
		g.House[i].Shape = g.House[i].Shape.Placed(own)
	}
	g.Setout.Carriers = append([]Carrier{}, f.Setout.Carriers...)
	for i := range g.Setout.Carriers {
		k := &g.Setout.Carriers[i]
		if k.Turn -= front.Turn; k.Turn == 0 {
			k.Lies = geom.World()
		} else {
			k.Lies = set(k.Lies)
		}
	}
	return &g
}
