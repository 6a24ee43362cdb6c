package frame

import (
	"math"

	"plumbcut/geom"
)

// Meeting is how a beam meets its posts. The zero value is OnTop.
type Meeting string

// The meetings.
const (
	OnTop      Meeting = "on top"      // the posts end under it
	CheckedOut Meeting = "checked out" // seated in a notch of each post, which runs up behind it, and bolted
	FaceFixed  Meeting = "face-fixed"  // against the posts' outer faces, on bolts alone
	OnBracket  Meeting = "on bracket"  // on a post-cap bracket

	TwinBolted  Meeting = "twin"             // two beams against the posts' faces, on bolts alone
	TwinChecked Meeting = "twin checked out" // two beams, each seated in a notch of each post, and bolted
)

// Meetings lists them.
func Meetings() []Meeting {
	return []Meeting{OnTop, CheckedOut, FaceFixed, OnBracket, TwinBolted, TwinChecked}
}

// Meet is what the job says of how the beam meets its posts.
type Meet struct {
	Meeting   Meeting
	CheckOut  float64 // depth of the posts' notches; 0: chosen by the meeting's way
	Clearance float64 // of a notch that is closed at its top, over the beam's depth
	Top       float64 // of the posts above the beam's top, where TopSaid
	TopSaid   bool    // else as high as the beam and clear of rafters and battens
	Bolts     Bolts
	Bracket   Bracket
}

// Bracket is the post cap that a beam stands on. It is hardware and no solid.
type Bracket struct {
	Name      string
	Thickness float64 // of its plate, which lifts the beam
	Centred   bool    // beam and post share their middle; else their outer faces are flush
}

// meetWay is what the model has to know of one way in which a beam meets its
// posts. Each way is one file, joint_beam_*.go, and one line in Meeting.way;
// nothing else of the model asks how they meet.
type meetWay interface {
	// deep is the depth of the check-outs in the posts; 0: there are none.
	deep(j *Job) float64
	// plies is how many beams there are, and wide what they take up in all, from
	// the inner face of the one to the outer face of the other.
	plies() int
	wide(j *Job) float64
	// outer is the world y of the posts' outer faces.
	outer(j *Job, k Carrier) float64
	// top is the level of the posts' tops.
	top(c *checker, k Carrier) float64
	// under names the level of the beam's underside.
	under() string
	// runsUp reports whether the posts run up beside the beam and are bolted to it.
	runsUp() bool
	// check finds what cannot be built.
	check(c *checker, k Carrier)
	// join cuts beams and post and records their joints, the first with all the
	// hardware.
	join(b *builder, k Carrier, post int)
}

// oneBeam is what all ways with a single beam have in common.
type oneBeam struct{}

func (oneBeam) plies() int { return 1 }

func (oneBeam) wide(j *Job) float64 { return j.Beam.Section.Width }

// way is the meeting's own.
func (m Meeting) way() meetWay {
	switch m {
	case CheckedOut:
		return checkedWay{}
	case FaceFixed:
		return faceWay{}
	case OnBracket:
		return bracketWay{}
	case TwinBolted, TwinChecked:
		return twinWay{checked: m == TwinChecked}
	}
	return onTopWay{}
}

// onTop reports whether it is OnTop, said or unsaid.
func (m Meet) onTop() bool { return m.Meeting == OnTop || m.Meeting == "" }

// deep is the depth of the posts' check-outs; 0 where there are none.
func (m Meet) deep(j *Job) float64 { return m.Meeting.way().deep(j) }

// checks reports whether the posts are checked out.
func (m Meet) checks() bool { return m.Meeting == CheckedOut || m.Meeting == TwinChecked }

// closed reports whether the notches of the posts end over the beam.
func (m Meet) closed() bool { return m.checks() && m.TopSaid && m.Top > 0 }

// RunsUp reports whether the posts run up beside the beam and are bolted to it.
func (m Meet) RunsUp() bool { return m.Meeting.way().runsUp() }

const (
	// underRafters is kept clear between a post that runs up behind its beam
	// and a rafter over it (own): room for a hanger and for timber that is not
	// straight.
	underRafters = 10

	// checkOutMost and checkOutDoubt are shares of a post's depth: deeper check-outs
	// are refused, or warned of. Own limits, not a code's.
	checkOutMost  = 2.0 / 3
	checkOutDoubt = 1.0 / 2

	// overNotch is the least height of what stands over a closed check-out (own):
	// less splits off.
	overNotch = 25
)

// placePosts places the posts under their beam in plan.
func placePosts(j *Job, s *Setout) {
	for i := range s.Carriers {
		if k := &s.Carriers[i]; len(k.Posts) > 0 {
			k.PostOuter = j.Posts.Meet.Meeting.way().outer(j, *k)
			if k.Back { // flush with it on the other side
				k.PostOuter = k.Inner - j.Posts.Section.Depth
			}
		}
	}
}

// settlePostTops works out the levels of the posts' tops, once those of beam and
// rafters are known.
func settlePostTops(c *checker) {
	for i := range c.set.Carriers {
		if k := &c.set.Carriers[i]; len(k.Posts) > 0 {
			k.PostTop = c.job.Posts.Meet.Meeting.way().top(c, *k)
		}
	}
}

// tongue is the world y of the outermost timber of the posts above the seat of
// their beam.
func (c *checker) tongue(k Carrier) float64 { return k.PostOuter + c.job.Posts.Meet.deep(c.job) }

// besideTop is the level of the tops of posts that run up beside their beam: as
// the job says, or as high as the beam but, behind it, no higher than where
// battens may lie, and clear under every rafter that passes over a post.
func besideTop(c *checker, k Carrier) float64 {
	m := c.job.Posts.Meet
	if m.TopSaid {
		return k.Top + m.Top
	}
	top := k.Top
	if k.PostOuter+c.job.Posts.Section.Depth > k.Inner+slack {
		top = min(top, c.job.battenLow(c.set, c.tongue(k)))
	}
	for _, i := range k.Posts {
		if len(c.raftersOver(k, i)) > 0 {
			top = min(top, c.underRafters(c.tongue(k))-underRafters)
		}
	}
	return top
}

// underRafters is the level of the rafters' undersides at a world y.
func (c *checker) underRafters(y float64) float64 {
	return c.set.RafterTop(y) - c.set.plumb(c.job.Rafters.Section.Depth)
}

// raftersOver lists the rafters that pass over a post of a carrier, by index:
// none where they end before they come to it.
func (c *checker) raftersOver(k Carrier, post int) []int {
	if c.set.RafterEnd > k.PostOuter+c.job.Posts.Section.Depth-slack {
		return nil
	}
	var out []int
	reach := (c.job.Posts.Section.Width + c.job.Rafters.Section.Width) / 2
	for r, x := range c.set.Rafters {
		if math.Abs(x-c.job.Posts.At[post].Along) < reach-slack {
			out = append(out, r)
		}
	}
	return out
}

// checkBeside checks posts that run up beside their beam: their tops against
// the rafters, what is left of them beside their check-outs, and their bolts.
// checked is how much of a post's depth those take in all.
func (c *checker) checkBeside(k Carrier, checked float64) {
	j := c.job
	depth, y := j.Posts.Section.Depth, c.tongue(k)
	switch {
	case checked > depth*checkOutMost+slack:
		c.errorf(RuleCheckOut, "posts.check_out", "check-outs of %s leave %s of posts %s deep; leave at least %s: make them shallower or the posts deeper",
			c.mm(checked), c.mm(depth-checked), c.mm(depth), c.mm(depth*(1-checkOutMost)))
	case checked > depth*checkOutDoubt+slack:
		c.warnf(RuleCheckOut, "posts.check_out", "check-outs take %s of posts %s deep, more than half; a designer confirms what is left", c.figure(checked), c.figure(depth))
	}
	for _, i := range k.Posts {
		for _, r := range c.raftersOver(k, i) {
			if most := c.underRafters(y); k.PostTop > most+slack {
				c.errorf(RulePostTop, "posts.top", "rafter %d runs into post %d, whose top stands at %s beside the beam; make posts.top at most %s, or move the post by %s",
					r+1, i+1, c.mm(k.PostTop), c.mm(most-k.Top), c.mm((j.Posts.Section.Width+j.Rafters.Section.Width)/2-math.Abs(c.set.Rafters[r]-j.Posts.At[i].Along)))
			}
		}
	}
	if m := j.Posts.Meet; m.checks() && k.PostTop > k.Top+m.Clearance+slack {
		drop := 0.0
		if m.Meeting == TwinChecked { // the notch at the house side lies under the weathering
			drop = (depth - m.deep(j)) * math.Tan(j.Posts.Chamfer)
		}
		if left := k.PostTop - k.Top - m.Clearance - drop; left < overNotch-slack {
			c.warnf(RulePostTop, "posts.top", "only %s of the posts stand over their check-outs, which may split off; make posts.top at least %s, or 0", c.figure(max(0, left)), c.figure(overNotch+m.Clearance+drop))
		}
	}
	c.checkBolts(k)
}

// battenLow is the level at a world y below which no batten comes.
func (j *Job) battenLow(s Setout, y float64) float64 {
	return s.RafterTop(y) - s.plumb(j.Battens.Lie.lay().sunk(j.Battens))
}

// checkPostsUnderBattens makes sure, on the finished solids, that no post runs up
// into a batten.
func (b *builder) checkPostsUnderBattens() {
	for i := range b.job.Posts.At {
		if k := b.set.Under(i); k.PostTop <= b.job.battenLow(b.set, k.PostOuter) {
			continue
		}
		for _, m := range b.members {
			if (m.Kind == KindBatten || m.Kind == KindLath) && geom.Overlap(m.solid, b.members[b.posts+i].solid) > clashLeast {
				b.check.errorf(RulePostTop, "posts.top", "post %d runs up into %s %d; make posts.top lower, or lay the battens clear of it", i+1, m.Kind, m.No)
			}
		}
	}
}

// chamferFrom weathers a post's top from a distance behind its outer face on.
func (b *builder) chamferFrom(post int, seat float64) {
	p := &b.members[post]
	if p.Section.Depth-seat > slack && b.job.Posts.Chamfer > 0 {
		p.Features = append(p.Features, Chamfer{At: p.Length, Seat: seat, Angle: b.job.Posts.Chamfer})
	}
}

// beside records the joint of a beam's face that lies against a post's: no
// timber carries there, but the faces must meet.
func (b *builder) beside(kind JointKind, beam, post int, at geom.Vec, n geom.Vec) {
	bm, p := b.members[beam], b.members[post]
	low := max(bm.Place.O.Z, p.Place.O.Z)
	top := p.Place.O.Z + p.Length
	if n.Y > 0 { // there its top is weathered
		top -= p.Section.Depth * math.Tan(b.job.Posts.Chamfer)
	}
	high := min(bm.Place.O.Z+bm.Section.Depth, top)
	b.joints = append(b.joints, Joint{
		Kind: kind, A: beam, B: post, At: at, Bearing: geom.PlaneAt(at, n),
		Area: (high - low) * p.Section.Width,
	})
}
