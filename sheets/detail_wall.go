package sheets

import (
	"plumbcut/geom/frame"
)

func plateWallDetail() detailSpec {
	return detailSpec{
		kind: frame.JointPlateWall, scale: 1. / 5, ring: 150, on: []string{onPlan}, other: []string{onPlan},
	}
}

func postWallDetail() detailSpec {
	return detailSpec{
		kind: frame.JointPostWall, same: postWallKey, scale: 1. / 5, ring: 150, on: []string{onPlan}, other: []string{onPlan},
	}
}

// postWallKey tells apart posts that stand off their walls differently.
func postWallKey(m *maker, j frame.Joint) string {
	if j.B < 0 {
		return ""
	}
	k := m.frame.Members[j.B]
	return sizeKey(k.Section.Depth, k.Section.Width, k.Length)
}
