package sheets

import (
	"fmt"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func postSlabDetail() detailSpec {
	return detailSpec{
		kind: frame.JointPostSlab, scale: 1. / 5, least: 1. / 10, same: shoeKey, views: shoeViews,
		ring: 250, on: []string{onSection, onElevations}, other: []string{onElevations},
	}
}

func postDeckDetail() detailSpec {
	s := postSlabDetail()
	s.kind = frame.JointPostDeck
	return s
}

// shoeKey tells apart shoes that are set or fixed differently.
func shoeKey(m *maker, j frame.Joint) string {
	b := m.job.Posts.At[m.frame.Members[j.A].No-1].Shoe
	return sizeKey(b.Stand, float64(b.Fixings), b.Diameter, b.Length, b.FromEdge) + b.Stated
}

// slabBasing is a shoe bolted down to a slab that is there already.
func slabBasing() basing {
	return basing{
		on: func(m *maker, p frame.Post) string {
			return "in post shoes on the slab, the ends " + m.said(p.Shoe.Stand) + " clear of it"
		},
		foot: func(m *maker, p frame.Post) string {
			return fmt.Sprintf("post shoe on the existing slab, no footing dug: the post's end is %s clear of it. %s", m.figures.Length(p.Shoe.Stand), m.shoeFixings(p, "anchor"))
		},
		fix: func(m *maker, p frame.Post) string {
			return fmt.Sprintf("Bolt a post shoe down to the slab at each centre: %s. Drill, clean and set as the anchor's maker states; a shoe that is out of level is packed with grout, not with timber.", lowerFirst(m.shoeFixings(p, "anchor")))
		},
		floor: "slab",
		care:  "Find pipes, cables and heating in the slab before drilling. The dust of concrete harms the lungs.",
		note:  "Posts on the existing slab stand on it as found: how thick it is, what is under it and how it is held down are for the designer to confirm before anything is drilled.",
		asks: []string{
			"How thick is the slab under each post, is it reinforced and cracked, and does the designer take its weight and edge distance for hold-down?",
			"Which post shoes and anchors, how deep and how far from the slab's edge and joints, and who states it?",
		},
	}
}

// deckBasing is a shoe on a deck, over its joists.
func deckBasing() basing {
	return basing{
		on: func(m *maker, p frame.Post) string {
			return "in post shoes on the deck, the ends " + m.said(p.Shoe.Stand) + " clear of it"
		},
		foot: func(m *maker, p frame.Post) string {
			return fmt.Sprintf("post shoe on the deck over a joist or bearer with blocking below: the post's end is %s clear of it. %s Designer to confirm the deck's frame and footings", m.figures.Length(p.Shoe.Stand), m.shoeFixings(p, "bolt")+".")
		},
		fix: func(m *maker, p frame.Post) string {
			return fmt.Sprintf("Lift the boards at each post. Fix solid blocking between joists under it, on the bearer or tight to it, as the designer details; lay the boards again and fix a post shoe through them: %s. Never into boards alone.", lowerFirst(m.shoeFixings(p, "bolt")))
		},
		floor: "deck",
		care:  "Nothing goes up before the designer has seen what the deck stands on. Work over an open deck is work at a height.",
		note:  "Posts on a deck: its boards carry nothing. Load and uplift go through blocking into joists, bearers and piles; all of these, and their footings, are for a designer to confirm.",
		asks: []string{
			"Designer to confirm: do the deck's joists, bearers, piles and footings carry the posts and hold them down?",
			"Which joist or bearer lies under each post, and what blocking, shoes and bolts are stated?",
		},
	}
}

// shoeFixings is what holds a shoe down, as far as it is stated.
func (m *maker) shoeFixings(p frame.Post, noun string) string {
	b := p.Shoe
	words := upperFirst(noun) + "s " + toBeStated
	if b.Fixings > 0 {
		words = count(b.Fixings, noun)
		switch {
		case b.Diameter > 0 && b.Length > 0:
			words += " Ø" + m.saidFine(b.Diameter) + ", " + m.said(b.Length) + " long"
		case b.Diameter > 0:
			words += " Ø" + m.saidFine(b.Diameter) + ", length " + toBeStated
		default:
			words += ", size " + toBeStated
		}
	}
	if b.Stated != "" {
		words += ", as stated: " + b.Stated
	}
	return words
}

// shod is a post on a slab or deck, and the points that its drawing needs.
type shod struct {
	*maker
	post         frame.Member
	spec         frame.Post
	x            float64
	outer, inner float64
	floor, end   float64
	edge         float64 // world y of the edge of the slab or deck
}

func shoeViews(m *maker, d detail) []*viewBlock {
	p := m.frame.Members[d.joint.A]
	b := shod{maker: m, post: p, spec: m.job.Posts.At[p.No-1], x: d.joint.At.X}
	box := p.Solid().Bounds() // a rear post is a front one turned round
	b.outer, b.inner = box.Min.Y, box.Max.Y
	b.floor, b.end = m.job.Floor(b.spec), p.Place.O.Z
	b.edge = -m.job.Levels.DeckOut
	return []*viewBlock{b.section()}
}

func (b shod) at(y, z float64) geom.Vec { return geom.V(b.x, y, z) }

// section is the post and what it stands on, cut through the middle of the
// post, as far as the edge if that is near.
func (b shod) section() *viewBlock {
	const (
		postShown = 1.6 // of the post, in its depths
		beside    = 1.0 // of the slab beside it, likewise
		below     = 200 // mm, more than the slab is drawn thick
		farEdge   = 350 // mm: an edge farther off is left out
	)
	depth := b.post.Section.Depth
	crop := everywhere()
	crop.Max.Z, crop.Min.Z = b.end+postShown*depth, b.floor-below
	crop.Max.Y, crop.Min.Y = b.inner+beside*depth, b.outer-beside*depth
	near := b.outer-b.edge < farEdge
	if near {
		crop.Min.Y = b.edge - 1
	}
	v := b.closeUp(closeUp{
		name: "section through the middle of the post", axes: geom.LeftEnd(), cut: true,
		at: b.at((b.outer+b.inner)/2, b.end), show: only(b.post), crop: crop, house: []string{frame.HouseDeck},
	})
	v.row(draw.Right).Chain("clear", b.at(b.outer, b.floor), b.at(b.outer, b.end))
	stops := []geom.Vec{b.at(b.inner, b.floor), b.at(b.outer, b.floor)}
	if near && b.outer-b.edge > sameStick {
		stops = append(stops, b.at(b.edge, b.floor))
	}
	v.row(draw.Bottom).Chain("", stops...)
	b.words(v.note(draw.Left), near)
	v.over = func(p *page, w *draw.View) { b.shoe(p, w) }
	return v
}

// words are the notes of the section.
func (b shod) words(n *draw.NoteColumn, near bool) {
	depth := b.post.Section.Depth
	n.Width = detailWords
	n.AddInside(b.stick("Post", b.post), b.at((b.outer+b.inner)/2, b.end+depth))
	noun, on := "anchor", "Existing slab: thickness, reinforcement and what is under it for the designer to confirm. No footing is dug."
	if b.spec.Base == frame.OnDeck {
		noun, on = "bolt", "Deck as found: over a joist or bearer, solid blocking below. Designer to confirm the deck's frame and its footings."
	}
	n.Add("Post shoe, its place only, and "+lowerFirst(b.shoeFixings(b.spec, noun))+". The post's end stands clear so that it dries. Treat the cut end.", b.at((b.outer+b.inner)/2, b.end))
	edge := "Distance from the edge and from joints: " + toBeStated
	if b.spec.Shoe.FromEdge > 0 {
		edge = "At least " + b.said(b.spec.Shoe.FromEdge) + " from the edge, as stated"
	}
	if near {
		edge += "; drawn " + b.said(b.outer-b.edge)
	} else {
		edge += "; the edge is " + b.said(b.outer-b.edge) + " away"
	}
	beside := b.inner + depth*0.6
	if beside > 0 { // behind a rear post there is nothing
		beside = b.outer - depth*0.6
	}
	n.AddInside(on+" "+edge+".", b.at(beside, b.floor-40))
}

// shoe draws where the shoe and its anchors are; their shape is their
// maker's.
func (b shod) shoe(p *page, v *draw.View) {
	const (
		plate = 6  // mm of the model over the floor
		deep  = 90 // of an anchor's line below it
		above = 14 // and above
	)
	d := b.inner - b.outer
	part := func(share, z float64) geom.Pt { return v.Pt(b.at(b.outer+share*d, z)) }
	pen := draw.Style{Layer: draw.Notes, Pen: draw.Narrow, Dash: draw.Dashed}
	p.sheet.Line(pen, part(0.1, b.floor+plate), part(0.9, b.floor+plate))
	if (b.end-b.floor)*v.Scale > 2*minGap {
		for _, share := range []float64{0.4, 0.6} {
			p.sheet.Line(pen, part(share, b.floor+plate), part(share, b.end))
		}
	}
	for _, share := range []float64{0.2, 0.8} {
		p.sheet.Line(draw.Style{Layer: draw.Centre, Pen: draw.Narrow, Dash: draw.Chain}, part(share, b.floor+above), part(share, b.floor-deep))
	}
}
