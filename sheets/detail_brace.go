package sheets

import (
	"fmt"
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// braceDetail shows a knee brace with both its ends.
func braceDetail() detailSpec {
	return detailSpec{
		kind: frame.JointBracePost, title: "Knee brace between post and beam", scale: 1. / 10, views: braceViews,
		same: func(m *maker, j frame.Joint) string {
			p := m.bracePlace(j)
			return sizeKey(p.Foot, p.Head)
		},
		ring: 200, on: []string{onElevations}, other: []string{onElevations},
	}
}

// bracePlace is how the brace of a joint is set out.
func (m *maker) bracePlace(j frame.Joint) frame.BracePlace {
	return m.frame.Setout.Braces[m.frame.Members[j.A].No-1]
}

// drawnBrace is a brace with the timbers that it stands between.
type drawnBrace struct {
	*maker
	frame.BracePlace
	brace, post, beam frame.Member
	spec              frame.Braces
	corner            geom.Vec // of post and beam, at their outer faces
}

func braceViews(m *maker, d detail) []*viewBlock {
	b := drawnBrace{
		maker: m, BracePlace: m.bracePlace(d.joint), spec: m.job.Braces,
		brace: m.frame.Members[d.joint.A], post: m.frame.Members[d.joint.B],
	}
	b.beam = m.frame.Members[m.frame.Setout.Under(b.BracePlace.Post).Members[0]]
	b.corner = b.Knee
	b.corner.Y = b.post.Place.O.Y
	return []*viewBlock{b.front(), b.edgeOn()}
}

// at is the point so far along the beam from the corner and so far down, at the
// outer face of post and beam.
func (b drawnBrace) at(along, down float64) geom.Vec {
	return b.corner.Add(geom.V(b.Way()*along, 0, -down))
}

// braceStub is how much of post and beam is shown past the brace, mm.
const braceStub = 120

// ends are how far along and down the brace reaches.
func (b drawnBrace) ends() (along, down float64) {
	tan := math.Tan(b.spec.Angle())
	return b.spec.Along + b.Head/tan, b.spec.Down + b.Foot*tan
}

// front is the brace seen from outside, with its legs.
func (b drawnBrace) front() *viewBlock {
	s := b.spec
	along, down := b.ends()
	crop := everywhere()
	from, to := b.at(-b.post.Section.Width-braceStub, 0).X, b.at(along+braceStub, 0).X
	crop.Min.X, crop.Max.X = min(from, to), max(from, to)
	crop.Min.Z = b.at(0, down+braceStub).Z
	v := b.closeUp(closeUp{
		name: "from outside", axes: geom.Front(), at: b.at(0, 0), show: only(b.brace, b.post, b.beam), crop: crop,
	})
	post, bay := draw.Left, draw.Right
	if b.Side == frame.Left {
		post, bay = bay, post
	}
	v.row(post).Chain("down the post", b.at(0, -b.Head), b.at(0, 0), b.at(0, s.Down-s.OnPost()), b.at(0, s.Down)).Overall("", b.at(0, 0), b.at(0, s.Down))
	v.row(draw.Top).Chain("along the beam", b.at(-b.Foot, 0), b.at(0, 0), b.at(s.Along-s.OnBeam(), 0), b.at(s.Along, 0)).Overall("", b.at(0, 0), b.at(s.Along, 0))
	n := v.note(bay)
	n.Width = detailWords
	length := s.Edge()
	n.AddInside(b.stick("Beam", b.beam), b.at(along+braceStub*0.6, -b.beam.Section.Depth*0.75))
	n.AddInside(b.stick("Knee brace", b.brace)+fmt.Sprintf(". At %s from level; its lower edge is %s between post and beam.", b.figures.Angle(s.Angle()), b.fine(length)),
		b.Point(length*0.6, s.Section.Depth/2))
	n.Add(b.endWords(), b.Point(length*0.2, 0))
	n.AddInside(b.stick("Post", b.post), b.at(-b.post.Section.Width/2, down+braceStub*0.55))
	v.over = func(p *page, view *draw.View) { b.boltCrosses(p, view) }
	return v
}

// Point is a point of the brace's outer face, along its lower edge and up from it.
func (b drawnBrace) Point(along, up float64) geom.Vec { return b.At(b.spec, along, up, 0) }

// endWords say how the ends are cut and held.
func (b drawnBrace) endWords() string {
	s := b.spec
	cuts := fmt.Sprintf("Post end cut plumb, saw %s off square; beam end level, %s off square. ", b.figures.Angle(s.Angle()), b.figures.Angle(math.Pi/2-s.Angle()))
	return cuts + b.braceJointWords() + " Treat the cut faces."
}

// braceJointWords say how the braces are held.
func (m *maker) braceJointWords() string {
	s := m.job.Braces
	screws := fmt.Sprintf("%s through the lower edge at each end, square to post and beam, sizes as the designer states.", count(s.Screws.Each, "screw"))
	if s.Screws.Diameter > 0 && s.Screws.Length > 0 {
		screws = fmt.Sprintf("%s Ø%s × %s through the lower edge at each end, square to post and beam.", count(s.Screws.Each, "screw"), m.fine(s.Screws.Diameter), m.figures.Length(s.Screws.Length))
	}
	switch s.Joint {
	case frame.BraceHoused:
		return fmt.Sprintf("Let in to post and beam by %s, flush with their outer faces: it slides in from outside. ", m.fine(s.Housing)) + screws
	case frame.BraceLapped:
		return fmt.Sprintf("Laps the outer faces of post and beam; one bolt Ø%s at each end in a hole Ø%s, a washer under head and nut.", m.fine(s.Bolt.Diameter), m.fine(s.Bolt.Hole))
	}
	return "Butts tight against both, in the middle of the beam's width. " + screws
}

// boltCrosses marks the middles of the bolts.
func (b drawnBrace) boltCrosses(p *page, v *draw.View) {
	for _, f := range b.brace.Features {
		if h, ok := f.(frame.Hole); ok {
			c, r := b.brace.Place.Point(h.Mouth), h.Diameter
			crossLine(p, v, c.Sub(geom.V(r, 0, 0)), c.Add(geom.V(r, 0, 0)))
			crossLine(p, v, c.Sub(geom.V(0, 0, r)), c.Add(geom.V(0, 0, r)))
		}
	}
}

// edgeOn is the brace seen along the beam, from the bay.
func (b drawnBrace) edgeOn() *viewBlock {
	_, down := b.ends()
	crop := everywhere()
	from, to := b.at(-b.post.Section.Width, 0).X, b.at(b.spec.Along+braceStub, 0).X
	crop.Min.X, crop.Max.X = min(from, to), max(from, to)
	crop.Min.Z = b.at(0, down+braceStub).Z
	axes := geom.RightEnd()
	if b.Side == frame.Left {
		axes = geom.LeftEnd()
	}
	v := b.closeUp(closeUp{name: "Along the beam", axes: axes, at: b.at(0, 0), show: only(b.brace, b.post), crop: crop})
	v.title.Note = "seen from the bay, beam left off"
	wide := b.brace.Section.Width
	at := func(in float64) geom.Vec { return b.at(0, b.spec.Down).Add(geom.V(0, in, 0)) }
	set := b.Knee.Y - b.corner.Y // of its outer face, in from the post's
	stops := []geom.Vec{at(min(0, set))}
	for _, in := range []float64{max(0, set), set + wide, b.post.Section.Depth} {
		if last := stops[len(stops)-1]; at(in).Y > last.Y+onTear {
			stops = append(stops, at(in))
		}
	}
	v.row(draw.Bottom).Chain("", stops...)
	if b.spec.Joint == frame.BraceHoused {
		v.title.Note = "seen from the bay, beam left off; its housing hidden behind it"
	}
	return v
}
