package frame

import (
	"math"

	"plumbcut/geom"
)

// betweenWay butts the rafters' ends against the face of their carrier, each in
// a hanger. The hanger is hardware and no solid.
type betweenWay struct{}

func (betweenWay) above(_ *Job, _ Setout, k Carrier) float64 { return k.Drop }

func (betweenWay) reach(_ *Job, _ Setout, k Carrier) float64 { return k.Face() }

func (betweenWay) past(j *Job, s Setout) float64 { return j.Rafters.Section.Depth * s.tan }

func (betweenWay) fouls() bool { return true }

func (betweenWay) check(c *checker, k Carrier) {
	low := min(c.set.RafterTop(k.Cut(c.set.From).Face()), c.set.RafterTop(k.Cut(c.set.To).Face()))
	if left := low - c.set.plumb(c.job.Rafters.Section.Depth) - k.Bottom; left < -slack {
		c.errorf(RuleHanger, k.Key+".section", "the rafters' hangers would hang %s below the %s; use a deeper %s or shallower rafters", c.mm(-left), k.Short, k.Short)
	}
}

// join cuts a rafter's end plumb against the carrier's face. The face that
// meets it counts as the bearing, for the audit: the hanger carries.
func (betweenWay) join(b *builder, k Carrier, r, t int) {
	s := b.set
	rafter, timber := &b.members[r], &b.members[t]
	b.endPlumb(r, k)
	centre := rafter.Place.O.X + rafter.Section.Width/2
	face := k.Cut(centre).Face()
	top := s.RafterTop(face)
	low := top - s.plumb(rafter.Section.Depth)
	out := k.Lies.V.Neg()
	if k.End == FaceEnd {
		out = out.Neg()
	}
	at := geom.V(centre, face, (top+low)/2)
	b.joints = append(b.joints, Joint{
		Kind: RafterJoint(k), Hold: Between, A: r, B: t, At: at, Bearing: geom.PlaneAt(at, out),
		Area: (min(top, k.Top) - max(low, k.Bottom)) * k.shares(*rafter, *timber) / math.Cos(k.Turn),
	})
}
