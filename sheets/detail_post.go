package sheets

import "plumbcut/geom/frame"

func beamPostDetail() detailSpec {
	return detailSpec{
		kind: frame.JointBeamPost, scale: 1. / 5, ring: 200, on: []string{onSection, onElevations}, other: []string{onElevations},
	}
}

func postConcreteDetail() detailSpec {
	return detailSpec{
		kind: frame.JointPostConcrete, same: footingKey, scale: 1. / 10, ring: 300, on: []string{onSection, onElevations}, other: []string{onElevations},
	}
}

func postStirrupDetail() detailSpec {
	s := postConcreteDetail()
	s.kind = frame.JointPostStirrup
	return s
}

// footingKey tells apart footings of different shape. The level of the ground
// is on the set-out plan.
func footingKey(m *maker, j frame.Joint) string {
	p := m.job.Posts.At[m.frame.Members[j.B].No-1].Footing
	round := 0.0
	if p.Round {
		round = 1
	}
	return sizeKey(round, p.Size, p.Depth, p.Pad, p.Collar, p.Stand)
}
