package frame

import (
	"math"
	"slices"

	"plumbcut/geom"
)

// hangOnFace lays a valance against the beam's outer face and the posts'.
func (b *builder) hangOnFace(valance, beam int) {
	m := b.members[valance]
	out := geom.V(0, -1, 0)
	below := b.job.Valance.Below
	at := m.Place.Point(geom.V(m.Length/2, m.Section.Width, (below+m.Section.Depth)/2))
	b.joints = append(b.joints, Joint{
		Kind: JointValanceBeam, A: valance, B: beam, At: at,
		Bearing: geom.PlaneAt(at, out), Area: m.Length*(m.Section.Depth-below) - b.openToFront(m.Section.Depth-below),
	})
	for _, i := range b.set.Front().Posts {
		at := geom.V(b.job.Posts.At[i].Along, at.Y, m.Place.O.Z+below/2)
		b.joints = append(b.joints, Joint{
			Kind: JointValancePost, A: valance, B: b.posts + i, At: at,
			Bearing: geom.PlaneAt(at, out), Area: b.job.Posts.Section.Width * below,
		})
	}
}

// openToFront is the area of the housings of braces in the beam's outer face, as
// far as they reach up it.
func (b *builder) openToFront(up float64) float64 {
	area := 0.0
	for _, p := range b.set.Braces {
		if b.job.Braces.Joint == BraceHoused && slices.Contains(b.set.Front().Posts, p.Post) {
			area += b.job.Braces.OnBeam() * min(p.Head, up)
		}
	}
	return area
}

// layOutValance checks the valance against what else is under the beam.
func (c *checker) layOutValance() {
	j, s := c.job, c.set
	v := j.Valance
	if v.Section.Depth == 0 {
		return
	}
	if !c.beamOnTop() {
		c.errorf(RuleValance, "valance", "a valance hangs under a beam that lies on its posts; say posts.beam: on top, or take the valance out")
		return
	}
	hangs := v.Section.Depth
	if v.Set == ValanceFace {
		hangs = v.Below
		c.checkFaceValance()
	} else {
		c.checkBetweenValance()
	}
	head := s.HeadBeam - hangs
	switch {
	case head < headLeast:
		c.errorf(RuleHeadHeight, "valance", "the valance leaves %s under it; at least %s must be left: make it shallower", c.mm(head), c.mm(headLeast))
	case c.job.Format().Round(head) < j.Levels.HeadRoom:
		c.warnf(RuleHeadHeight, "valance", "only %s under the valance, less than the head room of %s", c.figure(head), c.figure(j.Levels.HeadRoom))
	}
}

// checkBetweenValance checks a valance between posts.
func (c *checker) checkBetweenValance() {
	j, s := c.job, c.set
	v, k := j.Valance, s.Front()
	if len(k.Posts) < 2 {
		c.errorf(RuleValance, "valance", "there is one post under the beam, so nothing for a valance to hang between; set it on the face")
	}
	if most := k.Section.Width; v.Back+v.Section.Width > most+slack {
		c.errorf(RuleValance, "valance", "a valance %s thick, %s behind the beam's face, comes out behind the beam; set it back at most %s", c.mm(v.Section.Width), c.mm(v.Back), c.mm(most-v.Section.Width))
	}
	outer := k.Outer + v.Back
	for _, p := range s.Braces {
		if b := j.Braces; p.Knee.Y < outer+v.Section.Width-slack && p.Knee.Y+b.Section.Width > outer+slack && b.Joint != BraceLapped {
			c.errorf(RuleValance, "valance", "the valance between the posts meets the knee braces; set it on the face, or lap the braces outside")
			return
		}
	}
}

// checkFaceValance checks a valance on the beam's outer face.
func (c *checker) checkFaceValance() {
	j, s := c.job, c.set
	v, k := j.Valance, s.Front()
	if v.Below > v.Section.Depth-slack {
		c.errorf(RuleValance, "valance.below", "a valance %s deep cannot hang %s below the beam and still lie on its face; let it hang less", c.mm(v.Section.Depth), c.mm(v.Below))
		return
	}
	if top := v.Section.Depth - v.Below; top > k.Section.Depth+slack {
		c.errorf(RuleValance, "valance.below", "the valance would stand %s above the beam; let it hang at least %s below", c.mm(top-k.Section.Depth), c.mm(v.Section.Depth-k.Section.Depth))
	}
	if s.RafterEnd < k.Outer-slack {
		y := math.Max(s.RafterEnd, k.Outer-v.Section.Width)
		room := s.RafterTop(y) - s.plumb(j.Rafters.Section.Depth) - k.Bottom
		if up := v.Section.Depth - v.Below; up > room-slack {
			c.errorf(RuleValance, "valance.below", "the valance runs into the rafters' tails; let it hang at least %s below the beam", c.mm(v.Section.Depth-room))
		}
	}
	if len(s.Braces) > 0 && j.Braces.Joint == BraceLapped {
		c.errorf(RuleValance, "valance", "the valance on the beam's face meets the knee braces that lap it; let the braces in, or set the valance between the posts")
	}
	if b := j.Braces; len(s.Braces) > 0 && b.Joint == BraceHoused && v.Below > b.Down-b.OnPost()+slack {
		c.errorf(RuleValance, "valance.below", "the valance hangs over the housings of the knee braces in the posts; let it hang at most %s", c.mm(b.Down-b.OnPost()))
	}
	for _, r := range j.Wall.Returns {
		if r.Length > -k.Outer && (r.Side == Left && k.From < r.At+slack || r.Side == Right && k.To > r.At-slack) {
			c.warnf(RuleValance, "valance", "the valance ends against the %s return: cut it to what is measured there", r.Side)
		}
	}
}
