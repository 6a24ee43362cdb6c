package sheets

import (
	"fmt"

	"plumbcut/geom/frame"
)

func beamFaceDetail() detailSpec { return boltedDetail(frame.JointBeamFace) }

// faceMeeting is what the sheets say of a beam that is bolted against its posts.
func faceMeeting() meeting {
	return meeting{
		marks: "the underside of the beam",
		tops:  func(m *maker, k frame.Carrier) []string { return []string{m.topUp(k)} },
		up: func(m *maker, k frame.Carrier) string {
			return fmt.Sprintf("Hold it against the outer faces of the posts, its underside on their lines and its left end %s. Clamp it and prop it from below.", m.leftEndWords(m.front()))
		},
		fix: func(m *maker, k frame.Carrier) string {
			return m.boltUp(k) + " Leave the props until every bolt is tight."
		},
		bears: func(*maker, frame.Carrier) string {
			return "No seat: the bolts alone carry the beam. A licensed person confirms their size, number and places."
		},
		top: topOfTongue,
		note: func(*maker) []string {
			return []string{"The beam is bolted to the faces of the posts and no timber seats it: a licensed person confirms the bolts before anything is cut."}
		},
	}
}
