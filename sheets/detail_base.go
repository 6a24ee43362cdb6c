package sheets

import (
	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func postConcreteDetail() detailSpec {
	return detailSpec{
		kind: frame.JointPostConcrete, scale: 1. / 10, same: footingKey, views: baseViews,
		ring: 300, on: []string{onSection, onElevations}, other: []string{onElevations},
	}
}

func postStirrupDetail() detailSpec {
	s := postConcreteDetail()
	s.kind = frame.JointPostStirrup
	return s
}

// footingKey tells apart footings of different shape. The level of the ground
// is on the set-out plan.
func footingKey(m *maker, j frame.Joint) string {
	p := m.job.Posts.At[m.frame.Members[j.B].No-1].Footing
	round := 0.0
	if p.Round {
		round = 1
	}
	return sizeKey(round, p.Size, p.Depth, p.Pad, p.Collar, p.Stand)
}

// base is a post with its footing, and the points that its drawing needs.
type base struct {
	*maker
	post, footing        frame.Member
	spec                 frame.Post
	x, outer, inner      float64
	edgeOuter, edgeInner float64 // of the footing
	bottom, ground, top  float64 // of the hole; finished; of the concrete at the post
}

func (m *maker) base(d detail) base {
	p, f := m.frame.Members[d.joint.A], m.frame.Members[d.joint.B]
	b := base{maker: m, post: p, footing: f, spec: m.job.Posts.At[f.No-1]}
	box := p.Solid().Bounds()
	b.x = box.Centre().X
	b.outer, b.inner = box.Min.Y, box.Max.Y
	b.edgeOuter, b.edgeInner = f.Solid().Bounds().Min.Y, f.Solid().Bounds().Max.Y
	b.bottom, b.ground, b.top = f.Place.O.Z, b.spec.Ground, f.Place.O.Z+f.Length
	return b
}

func (b base) at(y, z float64) geom.Vec { return geom.V(b.x, y, z) }

// baseViews is a section through the middle of the post and its footing, which
// is the same all round.
func baseViews(m *maker, d detail) []*viewBlock {
	return []*viewBlock{m.base(d).section()}
}

func (b base) section() *viewBlock {
	const postShown = 2.2 // of the post above ground, in its depths
	end := b.post.Place.O.Z
	crop := everywhere()
	crop.Max.Z = max(b.top, end) + postShown*b.post.Section.Depth
	v := b.closeUp(closeUp{
		name: "section through the middle of the post", axes: geom.LeftEnd(), cut: true,
		at: b.at((b.outer+b.inner)/2, b.bottom+(b.ground-b.bottom)/2), show: only(b.post, b.footing), crop: crop,
		beside: []geom.Vec{b.at(b.edgeInner+groundWide, b.ground), b.at(b.edgeOuter-groundWide, b.ground)},
	})
	ground := b.at(b.edgeOuter, b.ground)
	post := []geom.Vec{b.at(b.edgeOuter, b.bottom), b.at(b.outer, end), ground}
	if b.spec.Base == frame.OnStirrup {
		post = []geom.Vec{b.at(b.outer, b.top), b.at(b.outer, end)}
	}
	v.row(draw.Right).Chain("post", post...).
		Chain("concrete", b.at(b.edgeOuter, b.bottom), ground, b.at(b.outer, b.top))
	v.row(draw.Bottom).Chain("", b.at(b.edgeInner, b.bottom), b.at(b.inner, b.bottom), b.at(b.outer, b.bottom), b.at(b.edgeOuter, b.bottom)).
		Overall("", b.at(b.edgeInner, b.bottom), b.at(b.edgeOuter, b.bottom))
	n := v.note(draw.Left)
	n.Width = detailWords
	n.AddInside(b.stick("Post", b.post), b.at((b.outer+b.inner)/2, max(b.top, end)+1.4*b.post.Section.Depth))
	words := "Concrete, round, Ø" + b.figures.Length(b.spec.Footing.Size)
	if !b.spec.Footing.Round {
		words = "Concrete, square, sides " + b.figures.Length(b.spec.Footing.Size)
	}
	n.AddInside(words+". Mix, size and depth are for the designer to confirm.", b.at(b.edgeInner-(b.edgeInner-b.inner)/2, b.bottom+(b.ground-b.bottom)*0.45))
	if b.spec.Footing.Collar > 0 {
		n.Add("Collar: trowel the top to fall from the post to the ground all round", b.at((b.inner+b.edgeInner)/2, (b.top+b.ground)/2))
	}
	n.Add("Finished ground: its level at each post is on the set-out plan", b.at(b.edgeInner+groundWide/2, b.ground))
	if b.spec.Base == frame.OnStirrup {
		n.Add("Stirrup and its anchor as their designer states; the post's end stands clear so that it dries. Treat the cut end.", b.at((b.outer+b.inner)/2, end))
	} else {
		n.Add("Factory end of the post down: no cut end in the ground. Concrete under it as dimensioned.", b.at(b.inner-(b.inner-b.outer)*0.3, end))
	}
	v.under = func(p *page, w *draw.View) { b.groundLine(p, w) }
	return v
}

// groundWide is how far the ground is drawn beyond the footing, mm.
const groundWide = 80

// groundLine draws finished ground at both sides of the footing.
func (b base) groundLine(p *page, v *draw.View) {
	for _, l := range [][2]float64{{b.edgeInner + groundWide, b.edgeInner}, {b.edgeOuter, b.edgeOuter - groundWide}} {
		a, z := v.Pt(b.at(l[0], b.ground)), v.Pt(b.at(l[1], b.ground))
		p.sheet.Hatch(draw.Earth, [][]geom.Pt{{a, z}}, 0)
		p.sheet.Line(draw.Style{Layer: draw.Outline, Pen: draw.Wide}, a, z)
	}
}
