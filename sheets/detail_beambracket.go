package sheets

import (
	"fmt"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func beamBracketDetail() detailSpec {
	s := beamPostDetail()
	s.kind, s.views = frame.JointBeamBracket, bracketViews
	return s
}

// bracketMeeting is what the sheets say of a beam on post-cap brackets.
func bracketMeeting() meeting {
	return meeting{
		marks: "the top of the post",
		tops: func(m *maker, k frame.Carrier) []string {
			return []string{fmt.Sprintf("It lies %s below the underside of the beam, for the bracket's plate. Square the line round the post and cut it level.", m.saidFine(k.Bottom-k.PostTop))}
		},
		up: func(m *maker, _ frame.Carrier) string {
			return fmt.Sprintf("Fix a bracket to the top of every post and lift the beam into them, %s and its left end %s.", m.bracketLine(), m.leftEndWords())
		},
		fix: func(*maker, frame.Carrier) string {
			return "Fix it through every hole that the brackets' maker says."
		},
		bears: func(m *maker, k frame.Carrier) string { return m.bracketWords(k) },
		top: func(s *timber) string {
			return fmt.Sprintf("Hold the top until the post stands, plumb and braced, and the bracket is in hand: transfer the level of the post's top, %s, and correct it by the bracket's measured plate. Leave the stick long till then.", s.figures.Level(s.topLevel()))
		},
		note: func(*maker) []string {
			return []string{"Post-cap brackets and their fixings as their maker states, for the sections, the treatment of the timber and the place; every hole filled that its maker says. Their uplift is for a licensed person to confirm."}
		},
	}
}

// bracketLine says how the beam stands to the posts.
func (m *maker) bracketLine() string {
	if m.job.Posts.Meet.Bracket.Centred {
		return "its middle over theirs"
	}
	return "its outer face flush with theirs"
}

// postLineWords say the same of the post.
func (m *maker) postLineWords() string {
	if m.job.Posts.Meet.Bracket.Centred {
		return "its middle under the beam's"
	}
	return "its outer face flush with the beam's"
}

// bracketWords name the bracket.
func (m *maker) bracketWords(k frame.Carrier) string {
	b := m.job.Posts.Meet.Bracket
	name := ""
	if b.Name != "" {
		name = " (" + b.Name + ")"
	}
	return fmt.Sprintf("Post-cap bracket%s for a beam %s wide, its plate %s thick; sides and fixings not drawn, as its maker and the designer state.",
		name, m.fine(k.Section.Width), m.fine(b.Thickness))
}

// bracketViews is a section through the middle of the post.
func bracketViews(m *maker, d detail) []*viewBlock {
	o := m.boltedJoint(d)
	return []*viewBlock{o.onBracket()}
}

// onBracket is the beam on its bracket, whose plate is drawn from its thickness.
func (o boltedJoint) onBracket() *viewBlock {
	k, beam := o.carrier, o.beams[0]
	crop := everywhere()
	crop.Min.Z = o.low()
	b := o.closeUp(closeUp{
		name: "section through the middle of the post", axes: geom.LeftEnd(), cut: true,
		at: o.at((o.outer+o.inner)/2, k.Bottom), show: o.shown(), crop: crop,
	})
	front := min(k.Outer, o.outer)
	b.row(draw.Right).Chain("from the post", o.at(front, o.top), o.at(front, k.Bottom), o.at(front, k.Top))
	b.row(draw.Bottom).Chain("", o.faces()...)
	if len(o.faces()) > 3 {
		b.row(draw.Bottom).Overall("post", o.at(o.inner, k.Bottom), o.at(o.outer, k.Bottom))
	}
	b.over = func(p *page, v *draw.View) {
		y0, y1 := min(k.Outer, o.outer), max(k.Inner, o.inner)
		loop := []geom.Pt{v.Pt(o.at(y0, o.top)), v.Pt(o.at(y1, o.top)), v.Pt(o.at(y1, k.Bottom)), v.Pt(o.at(y0, k.Bottom))}
		p.sheet.FillPolygon(draw.Outline, draw.Grey(1), loop)
	}
	n := b.note(draw.Left)
	n.Width = detailWords
	n.AddInside(o.stick("Beam", beam), o.at(k.Inner-beam.Section.Width*0.2, k.Bottom+beam.Section.Depth*0.75))
	n.AddInside(o.stick("Post", o.post)+", "+o.postLineWords(), o.at(o.inner-o.post.Section.Depth*0.25, o.low()+closeMargin))
	n.Add(o.bracketWords(k), o.at((k.Inner+k.Outer)/2, k.Bottom))
	return b
}
