package sheets

import "plumbcut/geom/frame"

func battenRafterDetail() detailSpec {
	return detailSpec{kind: frame.JointBattenRafter, ring: 150, on: []string{onSection}}
}
