package frame

import (
	"math"

	"plumbcut/geom"
)

// Laths are a second layer, over the battens and parallel with the rafters.
type Laths struct {
	Section  Section
	Timber   Timber
	Number   int     // 0: from Gap or Shade
	Gap      float64 // greatest clear gap
	Shade    float64 // part of the area that they cover by themselves, 0 to 1
	Inset    float64 // of the outer faces of the end laths from the ends of the battens
	Overhang float64 // beyond the outer edges of the first and last batten, along the slope
	Screws   BattenScrews
}

// layOutLaths spaces the laths between the battens' ends.
func layOutLaths(c *checker) {
	j, s := c.job, &c.set
	l := j.Laths
	if l.Section.Depth == 0 {
		return
	}
	from, to := battenExtent(j, *s, 0)
	room := to - from - 2*l.Inset
	n, gap, ok := spacing{
		key: "laths", what: "laths", room: room, wide: l.Section.Width, number: l.Number, gap: l.Gap, shade: l.Shade,
		number0: RuleBattenNumber, over: RuleBattensOverlap,
	}.count(c)
	if !ok {
		return
	}
	if len(s.Battens) < 2 {
		c.errorf(RuleBattenNumber, "laths", "laths need at least two battens under them; there is %d", len(s.Battens))
		return
	}
	w := l.Section.Width
	s.Layers = append(s.Layers, Layer{
		Kind: KindLath, Key: "laths", At: spaced(from+l.Inset, to-l.Inset-w, n), Wide: w, Gap: gap, Stated: l.Shade, Rests: true,
	})
}

// lathLine is where the laths begin and end, down the slope from the plate's
// outer face.
func lathLine(j *Job, s Setout) (from, to float64) {
	return s.Battens[0] - j.Laths.Overhang, s.Battens[len(s.Battens)-1] + j.Battens.Section.Width + j.Laths.Overhang
}

func (b *builder) lathPrisms() {
	j, s := b.job, b.set
	b.laths = len(b.members)
	layer, ok := s.Layer(KindLath)
	if !ok {
		return
	}
	slope := s.onSlope()
	from, to := lathLine(j, s)
	for i, x := range layer.At {
		place := slope
		place.O = slope.Point(geom.V(from, x, battenTop(j.Battens)))
		b.add(Member{
			Kind: KindLath, No: i + 1, Section: j.Laths.Section, Timber: j.Laths.Timber, Length: to - from, Place: place,
		})
	}
}

// layLath lays a lath across a batten. Neither is cut.
func (b *builder) layLath(lath, batten int) {
	l, t := &b.members[lath], &b.members[batten]
	at := t.Place.Point(geom.V(0, t.Section.Width/2, t.Section.Depth))
	at.X = l.Place.O.X + l.Section.Width/2
	b.joints = append(b.joints, Joint{
		Kind: JointLathBatten, A: lath, B: batten, At: at,
		Bearing: geom.PlaneAt(at, t.Place.W), Area: l.Section.Width * t.Section.Width,
	})
}

// lathClashes reports a lath that runs into plate, beam, cladding or soffit.
func (b *builder) lathClashes(lath int) bool {
	c, l := b.check, b.members[lath]
	box := l.solid.Bounds()
	if k, ok := b.meets(lath); ok {
		c.errorf(RuleBattenClash, "laths.overhang", "the laths run into the %s, which stands above the battens; make the overhang less", k.Short)
		return true
	}
	if b.set.Rear().OnWall && box.Max.Y > slack {
		c.errorf(RuleBattenClash, "laths.overhang", "the laths run %s into the cladding; make the overhang at most %s", c.mm(box.Max.Y), c.mm(math.Max(0, b.job.Laths.Overhang-box.Max.Y/b.set.cos)))
		return true
	}
	if w := b.job.Wall; w.hasSoffit() && box.Max.Z > w.Soffit+slack && -box.Max.Y < w.SoffitOut {
		c.errorf(RuleSoffit, "laths", "the laths stand %s above the soffit; lower the plate or begin the battens farther out", c.mm(box.Max.Z-w.Soffit))
		return true
	}
	return false
}
