package sheets

import (
	"fmt"
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// elevationScale is the largest scale tried for the elevations.
const elevationScale = 1.0 / 20

// elevationSheets lays out the front and both end elevations. The right end
// stands to the right of the front, its levels in line with it.
func (m *maker) elevationSheets() []draft {
	front, left, right := m.frontElevation(), m.endElevation(frame.Left), m.endElevation(frame.Right)
	return m.lay("Elevations", []string{onElevations}, m.scales(elevationScale),
		grid{{left, front, right}},
		grid{{front, right}, {left, nil}},
		grid{{front, nil}, {left, right}},
		grid{{front}, {left}, {right}},
	)
}

// frontElevation is the frame seen from outside.
func (m *maker) frontElevation() *viewBlock {
	j, s := m.job, m.frame.Setout
	all := func(int) bool { return true }
	pic := m.elevation(geom.Front(), all, nil)
	b := newViewIn("Front elevation", pic, geom.V(j.Plate.From, 0, 0), m.elevationBounds(pic))
	b.title.Note = "seen standing outside, facing the house; dashed below ground and deck"

	at := func(x, z float64) geom.Vec { return geom.V(x, s.BeamOuter, z) }
	beam := m.frame.Of(frame.KindBeam)[0]
	top, under := beam.Place.O.Z+beam.Section.Depth, beam.Place.O.Z
	var posts []geom.Vec
	for _, p := range j.Posts.At {
		posts = append(posts, at(p.Along, p.Ground-p.Footing.Depth))
	}
	b.Bottom.Running("post centres from the left end of the plate", at(j.Plate.From, under), append(posts, at(j.Plate.To, under))...)
	b.Bottom.Overall("beam", at(j.Beam.From, under), at(j.Beam.To, under))
	if bt := m.frame.Of(frame.KindBatten); len(bt) > 0 {
		from, to := m.sticks(frame.KindRafter)
		z := bt[0].Place.O.Z + bt[0].Section.Depth
		b.Top.Chain("battens past the end rafters", at(bt[0].Place.O.X, z), at(from, z), at(to, z), at(bt[0].Place.O.X+bt[0].Length, z))
		b.Top.Overall("overall", at(bt[0].Place.O.X, z), at(bt[0].Place.O.X+bt[0].Length, z))
	}
	p := j.Posts.At[0]
	b.Left.Chain("at post 1", at(p.Along, p.Ground-p.Footing.Depth), at(p.Along, p.Ground), at(p.Along, under), at(p.Along, top))
	for _, l := range m.namedLevels(func(l frame.Level) bool { return l.At.Y <= s.BeamOuter || l.At.Y == s.PlateOuter && l.Z == j.Plate.Top }) {
		b.level(draw.Right).Add(l.Name, l.At)
	}
	b.over = func(p *page, v *draw.View) { m.groundLine(p, v, nil) }
	b.marks = func(p *page, v *draw.View) {
		m.nameOpenings(p, v)
		for _, k := range []frame.Kind{frame.KindPost, frame.KindBeam, frame.KindFooting} {
			for _, mb := range m.frame.Of(k) {
				m.markMember(p, v, mb)
			}
		}
		m.markDetails(p, v, onElevations)
	}
	return b
}

// endElevation is the frame seen along the wall from one end. The wall that
// comes out at that end stands in the way and is left off.
func (m *maker) endElevation(side frame.Side) *viewBlock {
	j, s := m.job, m.frame.Setout
	axes, name, inTheWay := geom.LeftEnd(), "Left end elevation", frame.HouseLeft
	end := 0
	if side == frame.Right {
		axes, name, inTheWay = geom.RightEnd(), "Right end elevation", frame.HouseRight
		end = len(j.Posts.At) - 1
	}
	show := func(body int) bool {
		h, ok := m.scene.house(body)
		return !ok || h.Name != inTheWay
	}
	near := end + 1
	pic := m.elevation(axes, show, &near)
	b := newViewIn(name, pic, geom.V(0, s.BeamOuter/2, 0), m.elevationBounds(pic))
	b.title.Note = fmt.Sprintf("seen along the wall from its %s end", side)
	for _, r := range j.Wall.Returns {
		if r.Side == side {
			b.title.Note += "; the wall that comes out there is left off"
		}
	}
	post := j.Posts.At[end]
	at := func(y, z float64) geom.Vec { return geom.V(post.Along, y, z) }
	low := post.Ground - post.Footing.Depth
	stops := []geom.Vec{at(s.PlateOuter, low), at(s.BeamInner, low), at(s.BeamOuter, low)}
	b.Bottom.Running("out from the cladding", at(0, low), stops...)
	outside := b.Right
	if side == frame.Right {
		outside = b.Left
	}
	beam := m.frame.Of(frame.KindBeam)[0]
	under := beam.Place.O.Z
	outside.Chain(fmt.Sprintf("at post %d", end+1), at(s.BeamOuter, low), at(s.BeamOuter, post.Ground), at(s.BeamOuter, under), at(s.BeamOuter, under+beam.Section.Depth))
	b.over = func(p *page, v *draw.View) {
		m.groundLine(p, v, &post)
		draw.Fall{View: v, A: at(s.PlateOuter, m.frame.RafterTop(s.PlateOuter)), B: at(s.BeamInner, m.frame.RafterTop(s.BeamInner)), Offset: 6, Prefix: "fall "}.Draw(p.sheet, p.hand)
	}
	return b
}

// elevation looks at the frame and the house from outside. Posts and footings
// are dashed where ground or deck hides them: all of them, or only the one
// numbered near.
func (m *maker) elevation(axes geom.View, show func(body int) bool, near *int) picture {
	pic := m.scene.see(look{
		axes: axes,
		show: func(_ *scene, body int) bool { return show(body) },
		hidden: func(s *scene, body int) bool {
			mb, _ := s.member(body)
			return (mb.Kind == frame.KindPost || mb.Kind == frame.KindFooting) && (near == nil || mb.No == *near)
		},
	})
	floor := m.highestFloor()
	pic.strokes = slices.DeleteFunc(pic.strokes, func(st geom.Stroke) bool {
		h, ok := m.scene.house(st.Body)
		ground := ok && h.Name == frame.HouseGround
		return ground || st.Hidden && max(st.A.Y, st.B.Y) > floor
	})
	return pic
}

// highestFloor is the level above which nothing is below ground or deck.
func (m *maker) highestFloor() float64 {
	const slack = 1e-6 // mm: rounding of the hidden line search
	floor := m.job.Levels.Ground
	for _, p := range m.job.Posts.At {
		floor = max(floor, p.Ground)
	}
	if m.job.Levels.DeckOut > 0 {
		floor = max(floor, m.job.Levels.Deck)
	}
	return floor + slack
}

// elevationBounds is the outline of frame and house in an elevation: the
// ground is left out of it, so that the rows stand near.
func (m *maker) elevationBounds(pic picture) draw.Rect {
	r := pic.bounds
	for _, h := range m.frame.House {
		if h.Name != frame.HouseGround {
			r = r.Union(projectBox(pic.axes, h.Shape.Bounds()))
		}
	}
	return r
}

// sticks is the stretch along the wall that the members of a kind take.
func (m *maker) sticks(k frame.Kind) (from, to float64) {
	ms := m.frame.Of(k)
	from, to = ms[0].Solid().Bounds().Min.X, ms[0].Solid().Bounds().Max.X
	for _, mb := range ms {
		b := mb.Solid().Bounds()
		from, to = min(from, b.Min.X), max(to, b.Max.X)
	}
	return from, to
}
