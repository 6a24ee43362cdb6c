package frame

import (
	"slices"

	"plumbcut/geom"
)

// Hold is how a carrier holds the rafters. The zero value is Housed.
type Hold string

// The holds.
const (
	Housed  Hold = "housed"  // let into its face
	Over    Hold = "over"    // lying over it, on a birdsmouth where there is a fall
	Between Hold = "between" // butted against its face, in hangers
)

// housed reports whether it is Housed, said or unsaid.
func (h Hold) housed() bool { return h == Housed || h == "" }

// Carrier is a level timber that the rafters lie in, on or against: its line
// along the wall, its two faces and its top. Sheets ask the carriers what holds
// the rafters, and never a plate or a beam of the job.
//
// One that is not parallel with the wall says all this in axes of its own: see
// Turn, Point and Cut.
type Carrier struct {
	Key          string // under which the job file describes it
	Name         string // in full, e.g. "wall plate"
	Short        string // as sentences have it, e.g. "plate"
	Kind         Kind
	Members      []int // of Frame.Members, from the house outwards: its plies
	Posts        []int // under it, places in Job.Posts.At and in Of(KindPost)
	OnWall       bool  // fixed to a wall rather than standing on posts
	Back         bool  // its outer face looks to the rear: of a rear beam
	Hold         Hold
	From, To     float64 // its ends, along
	Inner, Outer float64 // world y of its faces, towards the house and away
	Top, Bottom  float64 // levels
	Section      Section // of each ply
	Timber       Timber
	Housing      float64 // depth of its housings, where there are any
	Drop         float64 // of the rafters' tops below its own at Face, as stated; where they are highest
	End          Face    // the end of a rafter that it holds
	PostOuter    float64 // world y of the outer faces of the posts under it
	PostTop      float64 // level of their tops

	Turn float64   // of its line from the wall's, radians, anticlockwise seen from above
	Lies geom.Axes // its own axes in the world
}

// Wide is what it takes up level, from face to face: of twin beams, both and
// what is between them.
func (k Carrier) Wide() float64 { return k.Inner - k.Outer }

// plies is how many timbers it is made of.
func (k Carrier) plies() int {
	if k.Wide() > k.Section.Width+slack {
		return 2
	}
	return 1
}

// seatLeast is the least level seat of a rafter that lies over it: on each of its
// timbers.
func (k Carrier) seatLeast() float64 {
	return k.Wide() - k.Section.Width + min(seatLeast, k.Section.Width)
}

// FaceWord is what one of its faces is called, given its world y: inner or
// outer. The outer one of a plate looks away from its wall, that of a beam away
// from the frame.
func (k Carrier) FaceWord(y float64) string {
	if (y == k.Inner) == k.Back {
		return "outer"
	}
	return "inner"
}

// Face is the world y of the face that the rafters come to.
func (k Carrier) Face() float64 {
	if k.End == FaceStart {
		return k.Outer
	}
	return k.Inner
}

// free is the world y of its face away from the frame, or away from its wall.
func (k Carrier) free() float64 {
	if k.Back {
		return k.Inner
	}
	return k.Outer
}

// way is what the model has to know of one way of holding rafters. Each way is
// one file, joint_*.go, and one line in ways; nothing else of the model asks
// how a carrier holds them.
type way interface {
	// above is how far the carrier's top stands above the line of the
	// rafters' top edges at its Face.
	above(j *Job, s Setout, k Carrier) float64
	// reach is the world y at which the rafters' top edges end.
	reach(j *Job, s Setout, k Carrier) float64
	// past is how far a rafter's long point lies beyond the end of its top
	// edge at the outer end, along the stick.
	past(j *Job, s Setout) float64
	// fouls reports whether a rafter is in the way of screws in the carrier.
	fouls() bool
	// check finds what cannot be built.
	check(c *checker, k Carrier)
	// join cuts rafter and carrier and records their joint.
	join(b *builder, k Carrier, rafter, timber int)
}

// way is the hold's own.
func (h Hold) way() way {
	switch h {
	case Over:
		return overWay{}
	case Between:
		return betweenWay{}
	}
	return housedWay{}
}

// layOutCarriers places what carries the rafters, from the house outwards. The
// levels follow with the fall.
func layOutCarriers(j *Job, s *Setout) {
	rear, front := plateCarrier(j), beamCarrier(j, j.Beam)
	if j.Freestanding() {
		rear = beamCarrier(j, j.Rear.Beam)
		rear.Key, rear.Name, rear.Short = "rear_beam", "rear beam", "rear beam"
		rear.Inner, rear.Outer = 0, -j.Rear.Section.Width
		rear.Top, rear.End, rear.Back = j.Rear.Top, FaceStart, true
		front.Name, front.Short = "front beam", "front beam"
	}
	n := len(j.Posts.At) - j.Posts.Rear
	for i := range j.Posts.At {
		if i < n {
			front.Posts = append(front.Posts, i)
		} else {
			rear.Posts = append(rear.Posts, i)
		}
	}
	s.Carriers = []Carrier{rear.turned(0), front.turned(j.Beam.turn())}
	s.lineAt = rear.Outer
	placePosts(j, s)
}

func plateCarrier(j *Job) Carrier {
	p, y := j.Plate, j.Wall.Kind.of().sunk(j.Wall)-j.Plate.Packer.Thickness
	return Carrier{Key: "plate", Name: "wall plate", Short: "plate", Kind: KindPlate, OnWall: true,
		Hold: p.Hold, From: p.From, To: p.To, Inner: y, Outer: y - p.Section.Width, Top: p.Top,
		Section: p.Section, Timber: p.Timber, Housing: p.Housing, Drop: p.Drop, End: FaceStart}
}

func beamCarrier(j *Job, b Beam) Carrier {
	return Carrier{Key: "beam", Name: "beam", Short: "beam", Kind: KindBeam,
		Hold: b.Hold, From: b.From, To: b.To, Inner: j.Posts.Meet.Meeting.way().wide(j) - b.Out, Outer: -b.Out,
		Section: b.Section, Timber: b.Timber, Housing: b.Housing, Drop: b.Drop, End: FaceEnd}
}

// settleCarriers works out their levels once the slope is known. The first one
// has its level from the job; the rafters' line and the others follow.
func settleCarriers(j *Job, s *Setout) {
	s.settleHeel(j)
	first := s.Carriers[0]
	s.line = first.Top - first.Hold.way().above(j, *s, first)
	for i := range s.Carriers {
		k := &s.Carriers[i]
		if i > 0 { // the first by way of the line would be rounded
			face := k.Face()
			if k.Skewed() { // the rafters are highest where it is nearest
				face = s.nearest()
			}
			k.Top = s.RafterTop(face) + k.Hold.way().above(j, *s, *k)
		}
		k.Bottom = k.Top - k.Section.Depth
	}
	s.RafterStart = s.Rear().Hold.way().reach(j, *s, s.Rear())
	s.RafterEnd = s.Front().Hold.way().reach(j, *s, s.Front())
	s.BattenEnd = s.Front().Inner
	if s.Front().Hold == Over { // nothing of the beam stands above the rafters
		s.BattenEnd = s.RafterEnd
	}
}

// Rear is the carrier nearest the house, at the rafters' upper ends. Lengths
// along are marked from its left end.
func (s Setout) Rear() Carrier { return s.Carriers[0] }

// Front is the carrier at their lower ends.
func (s Setout) Front() Carrier { return s.Carriers[len(s.Carriers)-1] }

// Under is the carrier that a post stands under.
func (s Setout) Under(post int) Carrier {
	for _, k := range s.Carriers {
		if slices.Contains(k.Posts, post) {
			return k
		}
	}
	return s.Front()
}

// CarrierOf is the carrier that a member is part of; false for what carries no
// rafters.
func (s Setout) CarrierOf(member int) (Carrier, bool) {
	for _, k := range s.Carriers {
		if slices.Contains(k.Members, member) {
			return k, true
		}
	}
	return Carrier{}, false
}

// Holds reports whether any carrier holds the rafters in a way.
func (s Setout) Holds(h Hold) bool {
	for _, k := range s.Carriers {
		if k.Hold == h || k.Hold.housed() && h.housed() {
			return true
		}
	}
	return false
}

// FrontOut is the world y of the frame's outermost timber above the posts.
func (s Setout) FrontOut() float64 {
	if s.Front().Skewed() {
		return min(s.farthest(), s.TrimOut)
	}
	return min(s.Front().Outer, s.RafterEnd, s.TrimOut)
}

// BackIn is the world y of the wall, or of the frame's rearmost timber above the
// posts.
func (s Setout) BackIn() float64 {
	if s.Rear().OnWall {
		return 0
	}
	return max(s.Rear().Inner, s.RafterStart)
}

// settleHeel fixes the heel height, which all carriers under the rafters share,
// so that a rafter lies on each alike. Unless the job states it, the widest of
// them is seated over its full width, as far as a third of the rafter allows, and
// none less than a seat must be.
func (s *Setout) settleHeel(j *Job) {
	s.Heel = j.Rafters.Heel
	if s.Heel > 0 {
		return
	}
	wide, least := 0.0, 0.0
	for _, k := range s.Carriers {
		if k.Hold == Over {
			wide, least = max(wide, k.Wide()), max(least, k.seatLeast())
		}
	}
	plumb := s.plumb(j.Rafters.Section.Depth)
	s.Heel = min(max(plumb-wide*s.tan, plumb*(1-notchDoubt)), plumb-least*s.tan)
}
