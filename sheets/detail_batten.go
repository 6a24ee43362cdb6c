package sheets

import "plumbcut/geom/frame"

func battenRafterDetail() detailSpec {
	return detailSpec{kind: frame.JointBattenRafter, scale: 1. / 5, ring: 150, on: []string{onSection}}
}
