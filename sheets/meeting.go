package sheets

import "plumbcut/geom/frame"

// meeting is what the sheets say of one way in which a beam meets its posts.
// Each way has one entry in meetings, beside its detail in detail_beam*.go; no
// sheet asks how they meet.
type meeting struct {
	// marks is what the line is that is carried to every post, to follow
	// "Measure down … from it: that is".
	marks string
	// tops is what is marked and cut at a post from that line.
	tops func(m *maker, k frame.Carrier) []string
	// up says how the beam is put in its place.
	up func(m *maker, k frame.Carrier) string
	// fix says how it is fixed there.
	fix func(m *maker, k frame.Carrier) string
	// bears says what carries the beam, for the detail.
	bears func(m *maker, k frame.Carrier) string
	// top is what the top of a post waits for.
	top func(s *timber) string
	// note holds for all posts, for the general notes.
	note func(m *maker) []string
}

// meeting is what is said of how a carrier meets its posts.
func (m *maker) meeting(frame.Carrier) meeting {
	switch m.job.Posts.Meet.Meeting {
	case frame.CheckedOut:
		return checkedMeeting()
	case frame.FaceFixed:
		return faceMeeting()
	case frame.OnBracket:
		return bracketMeeting()
	case frame.TwinBolted:
		return twinMeeting()
	case frame.TwinChecked:
		return twinCheckedMeeting()
	}
	return onTopMeeting()
}

// postLine is the world y of the line of the posts' outer faces, where the string
// is stretched.
func (m *maker) postLine() float64 { return m.front().PostOuter }

// seatOf is the level that is carried to the posts: of the beam's underside,
// or of their tops where something lies between.
func (m *maker) seatOf(k frame.Carrier) float64 {
	if k.PostTop < k.Bottom {
		return k.PostTop
	}
	return k.Bottom
}
