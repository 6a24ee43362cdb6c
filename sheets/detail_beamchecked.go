package sheets

import (
	"fmt"

	"plumbcut/geom/frame"
)

func beamCheckedDetail() detailSpec { return boltedDetail(frame.JointBeamChecked) }

// checkedMeeting is what the sheets say of a beam that is let into its posts.
func checkedMeeting() meeting {
	return meeting{
		marks: "the seat of the beam",
		tops: func(m *maker, k frame.Carrier) []string {
			return []string{m.topUp(k), m.checkOutWords(k, "the outer side")}
		},
		up: func(m *maker, k frame.Carrier) string {
			return fmt.Sprintf("Lift it into the check-outs, hard back against the posts, its left end %s, and clamp it.", m.leftEndWords(m.front()))
		},
		fix: (*maker).boltUp,
		bears: func(m *maker, k frame.Carrier) string {
			c := checkOuts(m.frame.Of(frame.KindPost)[k.Posts[0]])[0]
			words := fmt.Sprintf("Bearing: a level seat, %s of the beam's %s", m.fine(c.Depth), m.fine(k.Section.Width))
			if proud := k.Section.Width - c.Depth; proud > onTear {
				words += fmt.Sprintf("; the beam stands %s proud of the post", m.fine(proud))
			}
			return words
		},
		top: topOfTongue,
		note: func(m *maker) []string {
			return []string{"Check the posts out for the beam by saw and chisel to a dry, tight fit: it bears on the seat, the bolts only hold it there. Coat every cut face before assembly."}
		},
	}
}

// topUp says how the post's top is marked and cut above the line of the seat.
func (m *maker) topUp(k frame.Carrier) string {
	words := fmt.Sprintf("From that line measure %s up to the top of the post. Square both lines round it and cut the top level.", m.said(k.PostTop-k.Bottom))
	if c, ok := chamferOf(m.frame.Of(frame.KindPost)[k.Posts[0]]); ok {
		words = fmt.Sprintf("From that line measure %s up to the top of the post. Square both lines round it and cut the top, from there sloping %s down to the house.",
			m.said(k.PostTop-k.Bottom), m.figures.Angle(c.Angle))
	}
	return words
}

// checkOutWords say how the posts are checked out.
func (m *maker) checkOutWords(k frame.Carrier, sides string) string {
	post := m.frame.Of(frame.KindPost)[k.Posts[0]]
	c := checkOuts(post)[0]
	up := "to its top"
	if !c.Open(post) {
		up = fmt.Sprintf("%s up", m.saidTape(c.To-c.From))
	}
	return fmt.Sprintf("Check it out from %s, %s deep, from the seat %s: saw the seat level, then cut down the line.", sides, m.saidTape(c.Depth), up)
}

// boltUp says how the bolts of one post are put in.
func (m *maker) boltUp(k frame.Carrier) string {
	x := m.job.Posts.Meet.Bolts
	through := "beam and post"
	if len(k.Members) > 1 {
		through = "beams and post"
	}
	return fmt.Sprintf("Drill Ø%s square through %s together and put in %s Ø%s × %s at each, a washer under head and nut.",
		m.saidFine(x.Hole), through, count(x.Number, "bolt"), m.saidFine(x.Diameter), m.said(m.frame.BoltLength()))
}

// topOfTongue is what the top of a post that runs up beside its beam waits for.
func topOfTongue(s *timber) string {
	return fmt.Sprintf("Hold the top until the post stands, plumb and braced: transfer the level of the underside of the beam, %s, to the post and mark from there. Leave the stick long till then.",
		s.figures.Level(s.frame.Setout.Under(s.No-1).Bottom))
}
