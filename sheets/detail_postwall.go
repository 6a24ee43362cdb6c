package sheets

import (
	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func postWallDetail() detailSpec {
	return detailSpec{
		kind: frame.JointPostWall, scale: 1. / 5, same: postWallKey, plain: overGround, views: postWallViews,
		ring: 150, on: []string{onPlan}, other: []string{onPlan},
	}
}

// postWallKey tells apart posts that stand off their walls differently.
func postWallKey(m *maker, j frame.Joint) string {
	if j.B < 0 {
		return ""
	}
	k := m.frame.Members[j.B]
	return sizeKey(k.Section.Depth, k.Section.Width, k.Length)
}

// overGround reports whether the wall behind a screw is drawn: the house stands
// on its own ground, which may be higher than that at the post.
func overGround(m *maker, j frame.Joint) bool {
	const clear = 100 // mm, more than is shown of the wall below the screw
	return j.At.Z > m.job.Levels.Ground+clear
}

// postWallViews is a section from above at one of the post's screws.
func postWallViews(m *maker, d detail) []*viewBlock {
	post := m.frame.Members[d.joint.A]
	spec := m.job.Posts.At[post.No-1]
	at := d.joint.At
	far := 1.0 // the way from the wall to the post
	wall := frame.HouseLeft
	if spec.Wall == frame.Right {
		far, wall = -1, frame.HouseRight
	}
	near, free := at.X, at.X+far*post.Section.Width
	face, packed := near, d.joint.B >= 0
	var packer frame.Member
	if packed {
		packer = m.frame.Members[d.joint.B]
		face -= far * packer.Section.Depth
	}
	y0, y1 := post.Place.O.Y, post.Place.O.Y+post.Section.Depth
	tip := face
	if spec.Fixing.Length > 0 {
		tip = free - far*spec.Fixing.Length
	}
	crop := everywhere()
	back := face - far*(m.job.Wall.Core()+2*closeMargin)
	if far*(tip-back) < 0 {
		back = tip - far*closeMargin
	}
	crop.Min.X, crop.Max.X = min(back, free+far), max(back, free+far)
	crop.Min.Y, crop.Max.Y = y0-2*closeMargin, y1+2*closeMargin
	v := m.closeUp(closeUp{
		name: "section from above, at a " + m.fixer(), axes: geom.Plan(), cut: true, at: at, crop: crop, house: []string{wall},
		show: func(b frame.Member) bool { return only(post)(b) || packed && only(packer)(b) },
	})
	pt := func(x, y float64) geom.Vec { return geom.V(x, y, at.Z) }
	side, notes := draw.Right, draw.Left
	if far < 0 {
		side, notes = draw.Left, draw.Right
	}
	v.row(draw.Bottom).Chain("", pt(tip, y0), pt(face, y0), pt(near, y0), pt(free, y0))
	v.row(side).Chain(m.fixer(), pt(free, y0), pt(free, at.Y), pt(free, y1)).Overall("", pt(free, y0), pt(free, y1))
	v.over = func(p *page, w *draw.View) { crossLine(p, w, pt(free, at.Y), pt(tip, at.Y)) }

	n := v.note(notes)
	n.Width = detailWords
	n.AddInside(m.stick("Post", post), pt((near+free)/2, y1-(y1-y0)*0.2))
	if packed {
		n.AddInside("Packer "+packer.Mark+" at each "+m.fixer()+", "+m.figures.Size(packer.Section.Depth, packer.Section.Width), pt((near+face)/2, at.Y+packer.Section.Width*0.3))
	}
	n.Add(m.screwWords(spec.Fixing)+m.statedAfter(spec.Fixing), pt(near+far*(post.Section.Width*0.4), at.Y+spec.Fixing.Hole/2))
	n.AddInside(m.walling().post, pt(face-far*(m.job.Wall.Core()-m.sunk()+closeMargin), at.Y-(y1-y0)*0.3))
	return []*viewBlock{v}
}
