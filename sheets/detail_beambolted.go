package sheets

import (
	"fmt"
	"math"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// boltedJoint is a post that runs up beside its beam, or between two, and the
// points that its drawing needs.
type boltedJoint struct {
	*maker
	carrier      frame.Carrier
	beams        []frame.Member // from the house outwards
	post         frame.Member
	x            float64 // middle of the post, along
	outer, inner float64 // of the post
	top          float64 // of the post
}

func (m *maker) boltedJoint(d detail) boltedJoint {
	post := m.frame.Members[d.joint.B]
	o := boltedJoint{maker: m, post: post, carrier: m.frame.Setout.Under(post.No - 1)}
	for _, i := range o.carrier.Members {
		o.beams = append(o.beams, m.frame.Members[i])
	}
	o.x = post.Place.O.X + post.Section.Width/2
	o.outer, o.inner = post.Place.O.Y, post.Place.O.Y+post.Section.Depth
	o.top = post.Place.O.Z + post.Length
	return o
}

func (o boltedJoint) at(y, z float64) geom.Vec { return geom.V(o.x, y, z) }

// holes are the post's bolt holes in the world, where they are drilled.
func (o boltedJoint) holes() []geom.Vec {
	var out []geom.Vec
	for _, f := range o.post.Features {
		if h, ok := f.(frame.Hole); ok && h.Use == frame.UseBolt {
			out = append(out, o.post.Place.Point(h.Mouth))
		}
	}
	return out
}

// checkOuts are those of the post.
func checkOuts(post frame.Member) []frame.CheckOut {
	var out []frame.CheckOut
	for _, f := range post.Features {
		if c, ok := f.(frame.CheckOut); ok {
			out = append(out, c)
		}
	}
	return out
}

// boltedDetail is the detail of a joint with bolts.
func boltedDetail(kind frame.JointKind) detailSpec {
	return detailSpec{
		kind: kind, scale: 1. / 5, views: boltedViews,
		ring: 220, on: []string{onSection, onElevations},
	}
}

// boltedViews are a section through the middle of the post, the bolts from
// outside and, where it is checked out, the post alone.
func boltedViews(m *maker, d detail) []*viewBlock {
	o := m.boltedJoint(d)
	out := []*viewBlock{o.section(), o.pattern()}
	if len(checkOuts(o.post)) > 0 {
		out = append(out, o.alone())
	}
	return out
}

// low is where the views of the joint end below.
func (o boltedJoint) low() float64 { return o.carrier.Bottom - o.post.Section.Depth }

func (o boltedJoint) shown() func(frame.Member) bool { return only(append(o.beams, o.post)...) }

func (o boltedJoint) section() *viewBlock {
	k := o.carrier
	crop := everywhere()
	crop.Min.Z = o.low()
	b := o.closeUp(closeUp{
		name: "section through the middle of the post", axes: geom.LeftEnd(), cut: true,
		at: o.at((o.outer+o.inner)/2, k.Bottom), show: o.shown(), crop: crop,
	})
	row := b.row(draw.Right)
	front := min(k.Outer, o.outer)
	row.Chain("beam", o.at(front, k.Bottom), o.at(front, k.Top))
	if math.Abs(o.top-k.Top) > onTear {
		row.Chain("post", o.at(front, k.Bottom), o.at(front, o.top))
	}
	b.row(draw.Bottom).Chain("", o.faces()...)
	if len(o.faces()) > 3 {
		b.row(draw.Bottom).Overall("post", o.at(o.inner, k.Bottom), o.at(o.outer, k.Bottom))
	}
	b.over = func(p *page, v *draw.View) {
		for _, h := range o.holes() {
			crossLine(p, v, geom.V(o.x, max(k.Inner, o.inner), h.Z), geom.V(o.x, min(k.Outer, o.outer), h.Z))
		}
	}
	o.words(b)
	return b
}

// faces are the faces of beams and post that the section shows, from the house
// outwards, at the level of the beam's underside.
func (o boltedJoint) faces() []geom.Vec {
	ys := []float64{o.inner, o.outer}
	for _, m := range o.beams {
		ys = append(ys, m.Place.O.Y, m.Place.O.Y+m.Section.Width)
	}
	slices.Sort(ys)
	slices.Reverse(ys)
	var out []geom.Vec
	for i, y := range ys {
		if i == 0 || ys[i-1]-y > onTear {
			out = append(out, o.at(y, o.carrier.Bottom))
		}
	}
	return out
}

// words name what the section shows.
func (o boltedJoint) words(b *viewBlock) {
	k := o.carrier
	n := b.note(draw.Left)
	n.Width = detailWords
	inner := o.beams[0]
	n.AddInside(o.stick(o.beamNames(k), inner), geom.V(o.x, inner.Place.O.Y+inner.Section.Width*0.4, o.clearOfBolts(0.85, 0.6, 0.72, 0.93, 0.5, 0.4)))
	n.AddInside(o.stick("Post", o.post), o.at(o.inner-o.post.Section.Depth*0.3, o.low()+closeMargin))
	at := o.meeting(k)
	y := o.outer // where a seat is, the nearer one
	for _, c := range checkOuts(o.post) {
		if y = o.outer + c.Depth/2; c.Face == frame.FaceHouse {
			y = o.inner - c.Depth/2
		}
	}
	n.Add(at.bears(o.maker, k), o.at(y, k.Bottom))
	if h := o.holes(); len(h) > 0 {
		n.Add(o.boltWords()+". A washer under head and nut.", geom.V(o.x, max(k.Inner, o.inner), h[len(h)-1].Z))
	}
	if c, ok := chamferOf(o.post); ok {
		run := (o.inner - o.outer - c.Seat) / 2 // to the middle of what is left of the top
		for _, notch := range checkOuts(o.post) {
			if notch.Face == frame.FaceHouse && notch.Open(o.post) {
				run -= notch.Depth / 2
			}
		}
		n.Add(fmt.Sprintf("Top of the post sloped %s to the house side, so that it sheds water. Treat the cut ends before assembly.", o.figures.Angle(c.Angle)),
			o.at(o.outer+c.Seat+run, o.top-run*math.Tan(c.Angle)))
	}
}

// clearOfBolts is the level at the first of these shares of the beam's depth that
// no bolt goes through.
func (o boltedJoint) clearOfBolts(shares ...float64) float64 {
	level := func(share float64) float64 { return o.carrier.Bottom + (o.carrier.Top-o.carrier.Bottom)*share }
	for _, share := range shares {
		if !slices.ContainsFunc(o.holes(), func(h geom.Vec) bool {
			return math.Abs(h.Z-level(share)) < o.job.Posts.Meet.Bolts.Hole
		}) {
			return level(share)
		}
	}
	return level(shares[0])
}

// beamNames is what the beams at a post are called, before the mark of the first.
func (m *maker) beamNames(k frame.Carrier) string {
	if len(k.Members) < 2 {
		return "Beam"
	}
	first, last := m.frame.Members[k.Members[0]], m.frame.Members[k.Members[1]]
	if first.Mark == last.Mark {
		return "Twin beams, both"
	}
	return "Outer beam " + last.Mark + ", inner beam"
}

// boltWords are the bolts of one post in words: "2 bolts Ø12 × 170, in holes Ø13".
func (m *maker) boltWords() string {
	x := m.job.Posts.Meet.Bolts
	return fmt.Sprintf("%s Ø%s × %s, in holes Ø%s", count(x.Number, "bolt"), m.fine(x.Diameter), m.figures.Length(m.frame.BoltLength()), m.fine(x.Hole))
}

// pattern is the beam from outside, with the holes that are drilled through it
// and the post behind.
func (o boltedJoint) pattern() *viewBlock {
	k, half := o.carrier, o.post.Section.Width/2
	const beside = 1.1 // of the beam, on either side of the post, in half widths
	crop := everywhere()
	crop.Min = geom.V(o.x-half*(1+beside), crop.Min.Y, o.low())
	crop.Max.X = o.x + half*(1+beside)
	b := o.closeUp(closeUp{
		name: "From outside", axes: geom.Front(), at: o.at(o.outer, k.Bottom), show: o.shown(), crop: crop, hidden: frame.KindPost,
	})
	b.title.Note = "where the bolts go"
	front := min(k.Outer, o.outer)
	at := func(x, z float64) geom.Vec { return geom.V(x, front, z) }
	across, up := []geom.Vec{at(o.x-half, k.Bottom)}, []geom.Vec{at(o.x+half, k.Bottom)}
	for _, h := range o.holes() {
		across, up = append(across, at(h.X, k.Bottom)), append(up, at(o.x+half, h.Z))
	}
	across, up = append(across, at(o.x+half, k.Bottom)), append(up, at(o.x+half, k.Top))
	across = apartBy(across, func(v geom.Vec) float64 { return v.X })
	up = apartBy(up, func(v geom.Vec) float64 { return v.Z })
	b.row(draw.Bottom).Chain("", across...).Overall("post", across[0], across[len(across)-1])
	b.row(draw.Right).Chain("bolts", up...).Overall("", up[0], up[len(up)-1])
	b.over = func(p *page, v *draw.View) {
		r := o.job.Posts.Meet.Bolts.Hole
		for _, h := range o.holes() {
			crossLine(p, v, at(h.X-r, h.Z), at(h.X+r, h.Z))
			crossLine(p, v, at(h.X, h.Z-r), at(h.X, h.Z+r))
		}
	}
	return b
}

// apartBy sorts points and leaves out those at the same place.
func apartBy(pts []geom.Vec, place func(geom.Vec) float64) []geom.Vec {
	slices.SortStableFunc(pts, func(a, b geom.Vec) int {
		if d := place(a) - place(b); math.Abs(d) > onTear {
			return int(math.Copysign(1, d))
		}
		return 0
	})
	return slices.CompactFunc(pts, func(a, b geom.Vec) bool { return math.Abs(place(a)-place(b)) <= onTear })
}

// alone is the top of the post from its left side, with what is cut away.
func (o boltedJoint) alone() *viewBlock {
	crop := everywhere()
	crop.Min.Z = o.low()
	b := o.closeUp(closeUp{
		name: "The post", axes: geom.LeftEnd(), at: o.at((o.outer+o.inner)/2, o.carrier.Bottom), show: only(o.post), crop: crop,
	})
	b.title.Note = "from its left side"
	x := o.post.Place.O.X
	at := func(y, z float64) geom.Vec { return geom.V(x, y, z) }
	b.under = func(p *page, v *draw.View) {
		for _, c := range checkOuts(o.post) {
			y0, y1 := o.outer, o.outer+c.Depth
			if c.Face == frame.FaceHouse {
				y0, y1 = o.inner, o.inner-c.Depth
			}
			z0, z1 := o.post.Place.O.Z+c.From, o.post.Place.O.Z+min(c.To, o.post.Length)
			waste(p, v, at(y0, z0), at(y1, z0), at(y1, z1), at(y0, z1))
			if c.Open(o.post) {
				lost := draw.Style{Layer: draw.Context, Pen: draw.Narrow}
				p.sheet.Line(lost, v.Pt(at(y0, z0)), v.Pt(at(y0, z1)))
				p.sheet.Line(lost, v.Pt(at(y0, z1)), v.Pt(at(y1, z1)))
			}
		}
	}
	ys := []geom.Vec{at(o.inner, o.low()), at(o.outer, o.low())}
	zs := []geom.Vec{at(o.outer, o.carrier.Bottom), at(o.outer, o.top)}
	for _, c := range checkOuts(o.post) {
		y := o.outer + c.Depth
		if c.Face == frame.FaceHouse {
			y = o.inner - c.Depth
		}
		ys = append(ys, at(y, o.low()))
		if !c.Open(o.post) {
			zs = append(zs, at(o.outer, o.post.Place.O.Z+c.To))
		}
	}
	if c, ok := chamferOf(o.post); ok {
		zs = append(zs, at(o.outer, o.top-(o.inner-o.outer-c.Seat)*math.Tan(c.Angle)))
	}
	b.row(draw.Bottom).Chain("", apartBy(ys, func(v geom.Vec) float64 { return -v.Y })...)
	b.row(draw.Right).Chain("from the seat", apartBy(zs, func(v geom.Vec) float64 { return v.Z })...)
	return b
}
