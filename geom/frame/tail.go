package frame

import (
	"fmt"
	"math"

	"plumbcut/geom"
)

// The shapes of tails. A plumb and a bevelled tail are cut plumb first; all
// others begin with the square end of the stick.

// tailDoubt is the share of the span beyond which a tail is warned of. Common
// practice, no source.
const tailDoubt = 1.0 / 3

// noseShare is the share of a rafter's depth that a rounded end keeps square if
// nothing is said. Own choice.
const noseShare = 1.0 / 4

// past is how far the tail's long point lies beyond the end of its top edge.
func (overWay) past(j *Job, s Setout) float64 {
	depth := j.Rafters.Section.Depth
	switch j.Rafters.Tail.Shape {
	case TailSquare:
		return 0
	case TailBevelled:
		b := s.bevel(j, 0)
		return max(b.Nose*s.sin, b.Foot(depth)) // steep, the splay runs on down the rafter
	case TailQuarter, TailOgee, TailProfile:
		_, past := tailShape(j, 0).Reach()
		return past
	}
	return depth * s.tan
}

// bevel is the bevel of the rafters' tails.
func (s Setout) bevel(j *Job, line float64) TailBevel {
	return TailBevel{At: line, Nose: s.nose(j), Splay: j.Rafters.Tail.Splay, Angle: math.Atan(s.tan)}
}

// nose is the plumb height of a bevelled tail's end.
func (s Setout) nose(j *Job) float64 {
	if n := j.Rafters.Tail.Nose; n > 0 {
		return n
	}
	return s.plumb(j.Rafters.Section.Depth) / 2
}

// tailShape is the outline of the rafters' tails, their top edges line long.
func tailShape(j *Job, line float64) Shape {
	t, depth := j.Rafters.Tail, j.Rafters.Section.Depth
	s := Shape{End: FaceEnd, Name: string(t.Shape), At: line}
	nose := t.Nose
	if nose == 0 {
		nose = depth * noseShare
	}
	high := depth - nose
	switch t.Shape {
	case TailQuarter:
		s.Points = []EndPoint{{Down: nose}, {Back: high, Down: depth, Round: high}}
	case TailOgee:
		long := t.Curve
		if long == 0 {
			long = high
		}
		// Two equal arcs that start and end along the rafter turn by an angle
		// whose half has the tangent high ÷ long.
		r := long / 2 / math.Sin(2*math.Atan(high/long))
		s.Points = []EndPoint{{Down: nose},
			{Back: long / 2, Down: nose + high/2, Hollow: r}, {Back: long, Down: depth, Round: r}}
	default:
		s.Points = append(s.Points, t.Profile...)
		if n := len(s.Points) - 1; n >= 0 && s.Points[n].Down == 0 {
			s.Points[n].Down = depth
		}
	}
	return s
}

// cutTail shapes the outer end of a rafter.
func (b *builder) cutTail(r int) {
	s, line := b.set, rafterLine(b.set)
	add := func(f Feature) { b.members[r].Features = append(b.members[r].Features, f) }
	switch b.job.Rafters.Tail.Shape {
	case TailSquare: // as the prism ends
	case TailQuarter, TailOgee, TailProfile:
		add(tailShape(b.job, line))
	case TailBevelled:
		b.endPlumb(r, b.set.Front())
		add(s.bevel(b.job, line))
	default:
		b.endPlumb(r, b.set.Front())
	}
}

// checkTail checks the rafters' tails: their shape must leave the seat whole.
func (c *checker) checkTail() {
	j, s := c.job, c.set
	tail, depth := j.Rafters.Tail, j.Rafters.Section.Depth
	need := 0.0
	switch tail.Shape {
	case TailSquare:
		need = depth * s.sin
	case TailBevelled:
		nose := s.nose(j)
		if nose >= s.plumb(depth)-slack {
			c.errorf(RuleTail, "rafters.tail.nose", "a nose of %s leaves nothing to bevel: the rafter is %s high at its end", c.mm(nose), c.mm(s.plumb(depth)))
			return
		}
		need = (s.plumb(depth) - nose) / (s.tan + math.Tan(tail.Splay))
	case TailQuarter, TailOgee:
		if tail.Nose >= depth-slack {
			c.errorf(RuleTail, "rafters.tail.nose", "a nose of %s leaves nothing to round: the rafter is %s deep", c.mm(tail.Nose), c.mm(depth))
			return
		}
		need = c.levelReach(tailShape(j, 0))
	case TailProfile:
		if !c.checkProfile(tailShape(j, 0)) {
			return
		}
		need = c.levelReach(tailShape(j, 0))
	}
	if tail.Overhang < need-slack {
		c.errorf(RuleTail, c.tailPath(), "the %s tail reaches %s back, into the rafter's seat on the beam; make the overhang at least %s or the tail plumb",
			tail.Shape, c.mm(need), c.mm(need))
	}
	if span := s.Rear().Outer - s.Front().Inner; tail.Overhang > span*tailDoubt {
		c.warnf(RuleTail, "rafters.tail", "the tails run %s past the beam, more than a third of the clear span of %s", c.figure(tail.Overhang), c.figure(span))
	}
}

// tailPath is where the file says what shape the tails have.
func (c *checker) tailPath() string {
	for _, key := range []string{"profile", "curve", "shape"} {
		if path := "rafters.tail." + key; c.job.Given(path) {
			return path
		}
	}
	return "rafters.tail"
}

// level is how far, level, a point of a tail's side lies behind the end of the
// top edge; negative: out beyond it.
func (s Setout) level(back, down float64) float64 { return back*s.cos + down*s.sin }

// levelReach is how far back, level, an outline comes.
func (c *checker) levelReach(sh Shape) float64 {
	reach := 0.0
	for i := range sh.Points {
		for _, p := range sh.stretch(i) {
			reach = max(reach, c.set.level(p.Back, p.Down))
		}
	}
	return reach
}

// checkProfile checks an outline given by points, each where the file gives it.
func (c *checker) checkProfile(sh Shape) bool {
	depth := c.job.Rafters.Section.Depth
	before := len(c.errs)
	last := len(sh.Points) - 1
	for i, q := range sh.Points {
		path := fmt.Sprintf("rafters.tail.profile[%d]", i)
		p := sh.before(i)
		chord := math.Hypot(q.Back-p.Back, q.Down-p.Down)
		switch {
		case chord < slack:
			c.errorf(RuleTail, path, "point %d is where the point before it is; take it out", i+1)
		case q.Radius() > 0 && q.Radius() < chord/2-slack:
			c.errorf(RuleTail, path, "an arc of radius %s cannot reach from point %d to point %d, which are %s apart; make the radius at least %s",
				c.mm(q.Radius()), i, i+1, c.mm(chord), c.mm(chord/2))
		case i < last && (q.Down <= slack || q.Down >= depth-slack):
			c.errorf(RuleTail, path, "point %d is %s down; only the last may be at the underside, the others must lie within the rafter's depth of %s", i+1, c.mm(q.Down), c.mm(depth))
		case i == last && math.Abs(q.Down-depth) > slack:
			c.errorf(RuleTail, path, "the profile ends %s down, but the rafter is %s deep; leave down out of its last point, which is at the underside", c.mm(q.Down), c.mm(depth))
		default:
			c.checkStretch(sh, i, path)
		}
	}
	if len(c.errs) > before {
		return false
	}
	o := sh.Sweeps(Member{Length: 1, Section: c.job.Rafters.Section})[0].Outline
	if a, b, crossed := o.Crossing(); crossed {
		// The first two legs and the last one close the outline round the waste.
		const closing = 2
		b = min(b-closing, last)
		c.errorf(RuleTail, fmt.Sprintf("rafters.tail.profile[%d]", b), "the line to point %d crosses the outline%s; a profile runs from the top edge to the underside without meeting itself",
			b+1, map[bool]string{true: fmt.Sprintf(" on its way to point %d", a-closing+1)}[a >= closing && a != b+closing])
		return false
	}
	return true
}

// checkStretch checks that the line to a point stays within the rafter and
// behind the plumb line of its end, from which the overhang is measured.
func (c *checker) checkStretch(sh Shape, i int, path string) {
	depth := c.job.Rafters.Section.Depth
	low, high, out := 0.0, 0.0, 0.0
	for _, p := range sh.stretch(i) {
		low, high = max(low, p.Down-depth), max(high, -p.Down)
		out = max(out, -c.set.level(p.Back, p.Down))
	}
	switch {
	case max(low, high) > profileSlack:
		c.errorf(RuleTail, path, "the arc to point %d leaves the rafter, %s beyond its %s edge; give it a larger radius, or more points",
			i+1, c.mm(max(low, high)), map[bool]string{true: "lower", false: "top"}[low > high])
	case out > profileSlack:
		c.errorf(RuleTail, path, "the outline stands %s farther out than the end of the top edge on its way to point %d; measure back from the outermost point, and add to the overhang",
			c.mm(out), i+1)
	}
}

// profileSlack is how far an outline may stand out of the timber before it is
// refused: an arc that is meant to touch an edge may pass it by the rounding of
// its radius.
const profileSlack = 0.01

// stretch are the point before point i and points of the line from there to it.
func (s Shape) stretch(i int) []EndPoint {
	p := s.before(i)
	o := geom.Outline{{To: geom.P(-p.Back, -p.Down)}, s.leg(i)}
	var out []EndPoint
	for _, q := range o.Flat() {
		out = append(out, EndPoint{Back: -q.X, Down: -q.Y})
	}
	return out
}
