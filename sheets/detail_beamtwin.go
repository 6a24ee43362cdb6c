package sheets

import (
	"fmt"

	"plumbcut/geom/frame"
)

func beamTwinDetail() detailSpec { return boltedDetail(frame.JointBeamTwin) }

func beamTwinCheckedDetail() detailSpec { return boltedDetail(frame.JointBeamTwinChecked) }

// betweenTwins is a caution on water, for the general notes.
const betweenTwins = "Water lies on post tops between twin beams: cap them, or let the posts stand above the beams."

// twinMeeting is what the sheets say of two beams that are bolted to the faces of
// their posts.
func twinMeeting() meeting {
	t := faceMeeting()
	t.marks = "the underside of both beams"
	t.up = func(m *maker, _ frame.Carrier) string {
		return fmt.Sprintf("Hold one against either face of the posts, undersides on the lines and left ends %s. Clamp both and prop them from below.", m.leftEndWords())
	}
	t.bears = func(*maker, frame.Carrier) string {
		return "No seat: the bolts alone carry both beams. A licensed person confirms their size, number and places."
	}
	t.note = func(*maker) []string {
		return []string{"The twin beams are bolted to the faces of the posts and no timber seats them: a licensed person confirms the bolts before anything is cut.", betweenTwins}
	}
	return t
}

// twinCheckedMeeting is what they say where both are let into the posts.
func twinCheckedMeeting() meeting {
	t := checkedMeeting()
	t.marks = "the seat of both beams"
	t.tops = func(m *maker, k frame.Carrier) []string {
		return []string{m.topUp(k), m.checkOutWords(k, "the outer side and from the house side")}
	}
	t.bears = func(m *maker, k frame.Carrier) string {
		c := checkOuts(m.frame.Of(frame.KindPost)[k.Posts[0]])[0]
		return fmt.Sprintf("Bearing: a level seat on either side, %s of each beam's %s; each stands %s proud of the post",
			m.fine(c.Depth), m.fine(k.Section.Width), m.fine(k.Section.Width-c.Depth))
	}
	note := t.note
	t.note = func(m *maker) []string { return append(note(m), betweenTwins) }
	t.up = func(m *maker, _ frame.Carrier) string {
		return fmt.Sprintf("Lift one into the check-outs of either side, hard against the posts, left ends %s, and clamp both.", m.leftEndWords())
	}
	return t
}
