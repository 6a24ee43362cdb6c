package sheets

import (
	"slices"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// crossForm is how the words stand round the cross-section.
//
//	wide:  notes ┃ view ┃ levels      tight:  view, notes in it ┃ levels
//	                                          ▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔▔┌─────────────┐
//	                                                   footing  │ title block │
//
// A high one is wide above the ground and tight below it: only the footing
// goes down beside the title block. Keyed, marks and letters stand in the view
// and the words in lists, which may go on another sheet.
type crossForm int

const (
	wide crossForm = iota
	high
	tight
	keyed
)

// round reports whether the section reaches round the title block.
func (f crossForm) round() bool { return f == high || f == tight }

// cross is the cross-section: the frame cut across and seen along the wall to
// the right, the house at the left.
type cross struct {
	*viewBlock
	*maker
	form    crossForm
	aside   bool         // if tight: the figures of the span stand clear of the leaders
	nudge   float64      // the row of the battens and the drop stand so much farther out than usual, mm on paper
	bare    bool         // without the row of the battens, which their plan has too
	x       float64      // of the plane
	rafter  frame.Member // the nearest beyond the plane, as post and footing are
	post    frame.Member
	footing frame.Member     // none where the post stands on what is there already
	spec    frame.Post       // of the post
	behind  []frame.Member   // the nearest post of a rear row, with its footing
	inner   *draw.NoteColumn // about what is near the house
	middle  *draw.NoteColumn // about the rafter, if tight
	outer   *draw.NoteColumn // about what is near the beam
	deep    *draw.LevelStack // of what is below ground, if the form is round
	below   *draw.NoteColumn // about the post in the ground, likewise
	list    []keyNote        // if keyed
	roof    *draw.LevelStack // the marks above the eye and
	base    *draw.LevelStack // those below it by themselves, to measure between
	dropOff float64          // of the drop, in front of the beam, mm on paper

	fullRow, shortRow  *draw.SlopedRows // of the battens
	wideRow, narrowRow *draw.Rows       // under the section

	outerWide, outerNarrow *draw.NoteColumn // the angle of sight in the view, or in words
}

func (m *maker) newCross() cross {
	x := m.sectionX()
	c := cross{maker: m.cutAt(x), x: x}
	post := c.nearestPost(m.front())
	c.post, c.spec = m.frame.Of(frame.KindPost)[post], m.job.Posts.At[post]
	c.footing, _ = m.frame.FootingOf(post)
	if len(m.rear().Posts) > 0 {
		post = c.nearestPost(m.rear())
		c.behind = []frame.Member{m.frame.Of(frame.KindPost)[post]}
		if f, ok := m.frame.FootingOf(post); ok {
			c.behind = append(c.behind, f)
		}
	}
	for _, mb := range m.frame.Of(frame.KindRafter) {
		c.rafter = mb
		if mb.Place.O.X > c.x {
			break
		}
	}
	return c
}

// nearestPost is the post under a carrier that is nearest beyond the plane.
func (c *cross) nearestPost(k frame.Carrier) int {
	for _, i := range k.Posts {
		if c.centre(i).X > c.x {
			return i
		}
	}
	return k.Posts[len(k.Posts)-1]
}

// laidOut hangs everything on the picture.
func (c cross) laidOut(pic picture, form crossForm) *cross {
	c.form = form
	b := newViewIn("Cross-section", pic, c.at(0, 0), c.outline(pic))
	c.viewBlock = b
	b.title.Label = "A"
	b.title.Note = c.setting().alongside
	if c.maker.scene.frame.Setout.Skewed() {
		b.title.Note = "beside rafter " + c.rafter.Mark + ", " + b.title.Note
	}
	b.title.NoBar = form == high // it stands before the title: beside it is the title block
	b.over = c.over
	c.rows()
	c.levels()
	c.notes()
	return &c
}

// at is the point of the plane at a world y and z.
func (c *cross) at(y, z float64) geom.Vec { return geom.V(c.x, y, z) }

// top is the point of the line of the rafters' top edges at a world y.
func (c *cross) top(y float64) geom.Vec { return c.at(y, c.frame.RafterTop(y)) }

// Where the house is cut short, mm.
const (
	wallBehind = 110 // behind the cladding
	groundPast = 200 // in front of what stands farthest out
	groundBack = 100 // behind what stands farthest to the rear
)

// see looks at the section: everything that the plane cuts, and beyond it the
// nearest of each kind. The walls that come out at the ends are left off.
func (c *cross) see() picture {
	plane := c.at(0, 0)
	crop := geom.Box3{
		Min: geom.V(c.job.Wall.From-far, c.foremost()-groundPast, -far),
		Max: geom.V(c.job.Wall.To+far, c.rearmost(), c.houseTop()),
	}
	pic := c.scene.see(look{
		axes: geom.LeftEnd(),
		cut:  &plane,
		crop: &crop, torn: true,
		show: func(s *scene, body int) bool {
			if h, ok := s.house(body); ok {
				return h.Name != frame.HouseLeft && h.Name != frame.HouseRight
			}
			mb, _ := s.member(body)
			return c.nearest(mb)
		},
		hidden: func(s *scene, body int) bool {
			mb, _ := s.member(body)
			return mb.Kind == frame.KindRafter || mb.Kind == frame.KindPost || mb.Kind == frame.KindFooting
		},
	})
	ground := func(body int) bool {
		h, ok := c.scene.house(body)
		return ok && h.Name == frame.HouseGround
	}
	floor := c.highestFloor()
	pic.cuts = slices.DeleteFunc(pic.cuts, func(f cutFace) bool { return ground(f.body) })
	pic.strokes = slices.DeleteFunc(pic.strokes, func(st geom.Stroke) bool {
		mb, _ := c.scene.member(st.Body)
		rod := st.Hidden && mb.Kind == frame.KindPost && max(st.A.Y, st.B.Y) > floor // the details show it
		return rod || ground(st.Body)
	})
	pic.all = c.outline(pic)
	return pic
}

// far is beyond everything in a job, mm.
const far = 1e6

// nearest reports whether a member is shown: of rafters, posts and footings
// only the nearest beyond the plane.
func (c *cross) nearest(mb frame.Member) bool {
	switch mb.Kind {
	case frame.KindRafter:
		return mb.No == c.rafter.No
	case frame.KindPost, frame.KindFooting:
		return mb.No == c.post.No || len(c.behind) > 0 && mb.No == c.behind[0].No
	}
	return true
}

// foremost is the world y of what stands farthest out.
func (c *cross) foremost() float64 {
	y := min(c.frame.Setout.FrontOut(), c.footOf(c.post).Min.Y)
	for _, p := range c.frame.Roof.Parts {
		y = min(y, p.Shape.Bounds().Min.Y)
	}
	if l := c.job.Levels; l.DeckOut > 0 {
		y = min(y, -l.DeckOut)
	}
	return y
}

// rearmost is the world y where the section ends behind: in the wall, or past
// what stands farthest to the rear.
func (c *cross) rearmost() float64 {
	if c.rear().OnWall {
		return c.job.Wall.Cladding + wallBehind
	}
	y := c.frame.Setout.BackIn()
	for _, mb := range c.behind {
		y = max(y, mb.Solid().Bounds().Max.Y)
	}
	return y + groundBack
}

// ground is the finished ground at the post that the section shows.
func (c *cross) ground() float64 { return c.spec.Ground }

// outline is what the rows stand off from.
func (c *cross) outline(pic picture) draw.Rect {
	r := pic.bounds
	r.Y0 = min(r.Y0, c.footOf(c.post).Min.Z)
	r.Y0 = min(r.Y0, c.deck().Y0) // a slab may go down farther than what stands on it
	r.X0 = min(r.X0, -c.rearmost())
	r.X1 = max(r.X1, groundPast-c.foremost())
	return r
}

// deck is the outline of the deck, the paving or the slab, in the view plane; empty
// without one.
func (c *cross) deck() draw.Rect {
	for _, h := range c.frame.House {
		if h.Name == frame.HouseDeck {
			return projectBox(geom.LeftEnd(), h.Shape.Bounds())
		}
	}
	return draw.EmptyRect()
}

// rowEnd is the room of the last figure of the row below, mm on paper.
const rowEnd = 4.0

// earthDepth is the room of the earth below the ground line, mm on paper.
const earthDepth = 5.0

// pieces are the two parts of a tight section: all down to the ground, and
// below it the footing with the rows and the title.
func (c *cross) pieces(h draw.Hand, scale float64) []draw.Rect {
	e := c.extent(h, scale)
	if !c.form.round() {
		return []draw.Rect{e}
	}
	was := *c.view
	defer func() { *c.view = was }()
	c.set(geom.Pt{}, scale)
	upper, lower := e, e
	split := c.view.Pt(c.at(0, c.ground())).Y - earthDepth
	split = min(split, c.level(draw.Right).Extent(h).Y0)
	if !c.inner.Empty() {
		split = min(split, c.inner.Extent().Y0)
	}
	foot := c.view.Outline(projectBox(c.view.Axes, c.footOf(c.post)))
	w, _ := c.title.Size(h)
	lower.X1 = max(foot.X1+rowEnd, c.view.Outline(c.Bounds).X0+w)
	if deck := c.deck(); !deck.Empty() && c.view.Outline(deck).Y0 < split {
		lower.X1 = max(lower.X1, c.view.Outline(deck).X1)
	}
	upper.Y0, lower.Y1 = split, split
	return []draw.Rect{upper, lower}
}

// extent is the room of the section with its notes.
func (c *cross) extent(h draw.Hand, scale float64) draw.Rect {
	was := *c.view
	defer func() { *c.view = was }()
	c.set(geom.Pt{}, scale)
	c.placeWords(h)
	if c.crowded(h) {
		return draw.Rect{X0: -far, Y0: -far, X1: far, Y1: far} // fits no sheet
	}
	return c.viewBlock.extent(h, scale).Union(c.inner.Extent()).Union(c.outer.Extent()).Union(c.deep.Extent(h)).Union(c.below.Extent())
}

func (c *cross) draw(p *page, at geom.Pt, scale float64) {
	c.set(at, scale)
	c.placeWords(p.hand)
	c.viewBlock.draw(p, at, scale)
	if c.form == high {
		c.barBefore(p)
	}
}

func (c *cross) finish(p *page) {
	words := []func(){
		func() { c.inner.Draw(p.placer) },
		func() { c.middle.Draw(p.placer) },
		func() { c.outer.Draw(p.placer) },
		func() { c.footingWords(p, c.view) },
	}
	words = append(words, c.keyMarks(p, c.view)...)
	p.cleanestOrder(append(words, c.detailBubbles(p, c.view, onSection)...)...)
}

// barBefore draws the scale bar to the left of the title.
func (c *cross) barBefore(p *page) {
	const gap = 8 // mm on paper
	size := (&draw.Sheet{Paper: p.hand.Paper}).ScaleBar(c.view.Scale, p.hand, geom.Pt{})
	e := c.viewBlock.Extent(p.hand)
	_, title := c.title.Size(p.hand)
	x := c.view.Outline(c.Bounds).X0 - gap - size.X1
	p.sheet.ScaleBar(c.view.Scale, p.hand, geom.P(x, e.Y0+title-size.Y1))
}
