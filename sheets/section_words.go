package sheets

import (
	"fmt"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// levels names the height of every surface. Laid out tight, the levels below
// ground stand beside the footing instead.
func (c *cross) levels() {
	stack := c.level(draw.Right)
	c.deep = draw.NewLevelStack(c.view, projectBox(c.view.Axes, c.footing.Solid().Bounds()), draw.Left)
	c.deep.Offset = 2*footOff + rowEnd
	sl := c.frame.Slope
	from, to := c.top(c.frame.Setout.Arris(sl.From)), c.top(c.frame.Setout.Arris(sl.To))
	stack.Add("top of rafters over the "+string(sl.From)+": drop from here", from)
	stack.Add("top of rafters over the "+string(sl.To)+": to here", to)
	for _, l := range c.namedLevels(c.shows) {
		named := strings.HasPrefix(l.Name, "top of rafters") && (l.At.Y == from.Y || l.At.Y == to.Y)
		switch {
		case named:
		case l.Z >= c.ground() || !c.tight:
			stack.Add(l.Name, l.At)
		default:
			c.deep.Add(l.Name, l.At)
		}
	}
}

// shows reports whether a level is of a thing that the section shows: of the
// ground and the footings, those at its post.
func (c *cross) shows(l frame.Level) bool {
	highest := c.spec.Ground
	for _, p := range c.job.Posts.At {
		highest = max(highest, p.Ground)
	}
	if l.At.Y != c.frame.Setout.BeamOuter || l.Z > highest {
		return true
	}
	return l.Z == c.spec.Ground || l.Z == c.footing.Place.O.Z
}

// notes names every member that the section shows and says what it is.
func (c *cross) notes() {
	c.inner = draw.NewNoteColumn(c.view, c.Bounds, draw.Left)
	if c.tight {
		c.inner = draw.NewNoteColumn(c.view, c.Bounds, draw.Right)
	}
	c.outer = draw.NewNoteColumn(c.view, c.Bounds, draw.Right)
	c.battenNote()
	c.rafterNote()
	c.plateNote()
	beam := c.frame.Of(frame.KindBeam)[0]
	c.outer.AddNote(draw.ColumnNote{Text: c.stick("beam", beam), ID: memberID(beam), At: c.onFront(beam, 0.3, 0.6)})
	eye, arris := c.eye(), c.sightArris()
	way := arris.Sub(eye).Unit()
	past := func(mm float64) geom.Vec { return arris.Add(way.Mul(mm)) }
	c.outer.AddNote(draw.ColumnNote{Text: "line of sight under the beam, from the eye at the wall", At: []geom.Vec{past(groundPast), past(groundPast / 2)}})
	c.outer.AddNote(draw.ColumnNote{Text: c.stick("post", c.post), ID: memberID(c.post), At: c.onFront(c.post, 0.75, 0.65, 0.55)})
}

// onFront are points on a member's outer face, at parts of its height.
func (c *cross) onFront(mb frame.Member, parts ...float64) []geom.Vec {
	b := mb.Solid().Bounds()
	out := make([]geom.Vec, len(parts))
	for i, part := range parts {
		out[i] = c.at(b.Min.Y, b.Min.Z+part*(b.Max.Z-b.Min.Z))
	}
	return out
}

func (c *cross) battenNote() {
	bt := c.frame.Of(frame.KindBatten)
	if len(bt) == 0 {
		return
	}
	var at []geom.Vec
	for _, mb := range bt[:min(len(bt), 2)] {
		q := mb.Place.Point(geom.V(0, mb.Section.Width/2, mb.Section.Depth/2))
		q.X = c.x
		at = append(at, q)
	}
	words := c.stick("batten", bt[0]) + ". "
	if n := len(bt); n > 1 {
		words += fmt.Sprintf("%d in all, clear gaps of %s. ", n, c.figures.Length(c.frame.Setout.BattenGap))
	}
	words += "The row over them runs down the slope from the plate, to the edge nearest the house"
	c.inner.AddNote(draw.ColumnNote{Text: words, At: at, Inside: true})
}

func (c *cross) rafterNote() {
	s, j := c.frame.Setout, c.job
	seat := "The seat of each housing follows the fall"
	if j.Rafters.Seat == frame.SeatLevel {
		seat = "The seat of each housing is level"
	}
	words := fmt.Sprintf("%s. %s from long point to long point. Let into the plate by %s and into the beam by %s. %s",
		c.stick("rafter", c.rafter), c.figures.Length(c.rafter.Length), c.figures.Length(j.Plate.Housing), c.figures.Length(j.Beam.Housing), seat)
	var at []geom.Vec
	for _, part := range []float64{0.1, 0.12} {
		y := s.PlateOuter + part*(s.BeamInner-s.PlateOuter)
		at = append(at, c.at(y, c.frame.RafterTop(y)-c.plumbDepth()))
	}
	c.inner.AddNote(draw.ColumnNote{Text: words, At: at, ID: memberID(c.rafter)})
}

func (c *cross) plateNote() {
	s := c.frame.Setout
	plate := c.frame.Of(frame.KindPlate)[0]
	low := plate.Place.O.Z
	middle := (s.PlateInner + s.PlateOuter) / 2
	c.inner.AddNote(draw.ColumnNote{Text: c.stick("wall plate", plate), ID: memberID(plate), Inside: true,
		At: []geom.Vec{c.at(middle, low+0.25*plate.Section.Depth), c.at(middle, low+0.4*plate.Section.Depth)}})
	if pk := c.frame.Of(frame.KindPacker); c.job.Plate.Packer.Thickness > 0 {
		words := fmt.Sprintf("packer %s: holds the plate %s off the cladding, so that water drains", pk[0].Mark, c.figures.Length(c.job.Plate.Packer.Thickness))
		c.inner.AddNote(draw.ColumnNote{Text: words, ID: memberID(pk[0]), At: []geom.Vec{c.at(s.PlateInner/2, pk[0].Place.O.Z)}})
	}
}

// The columns of notes and the level marks, mm on paper.
const (
	leftNotes  = 62.0 // width of the words left of the house
	roomNotes  = 92.0 // the same under the rafters
	frontNotes = 84.0 // the same between the levels
	roomOff    = 27.0 // from the plate to the words under the rafters
	frontOff   = 13.0 // from the level marks' start to the words between them
	dropRoom   = 34.0 // from the beam to the level marks: the drop stands before them
	stackClear = 14.0 // the level marks of roof or floor reach about so far past their surfaces
)

// placeWords sets the columns of notes and the level marks for the present
// scale.
func (c *cross) placeWords() {
	s, k := c.frame.Setout, c.view.Scale
	beam := c.frame.Of(frame.KindBeam)[0].Place.O.Z
	plate := c.frame.Of(frame.KindPlate)[0].Place.O.Z
	stack := c.level(draw.Right)
	stack.Bounds.X1 = max(c.Bounds.X1, -s.BeamOuter+dropRoom/k)

	c.outer.Width, c.outer.Offset = frontNotes, frontOff
	c.outer.Bounds.X1 = stack.Bounds.X1
	c.outer.Bounds.Y0, c.outer.Bounds.Y1 = c.floor()+stackClear/k, beam-stackClear/k

	c.inner.Bounds.Y0, c.inner.Bounds.Y1 = c.floor(), c.ceiling()
	c.inner.Width, c.inner.Offset = leftNotes, 0
	if c.tight {
		c.inner.Width, c.inner.Offset = roomNotes, roomOff
		c.inner.Bounds.X1 = -s.PlateOuter
		c.inner.Bounds.Y1 = min(plate, c.eye().Z) - stackClear/k/2
	}
}

// floor is the level that one stands on in the plane.
func (c *cross) floor() float64 {
	if c.job.Levels.DeckOut > 0 {
		return c.job.Levels.Deck
	}
	return c.ground()
}

// eye is the eye at the wall.
func (c *cross) eye() geom.Vec { return c.at(0, c.floor()+c.job.Levels.Eye) }

// labels are the words that look for a place in the view itself.
func (c *cross) labels(p *page, v *draw.View) {
	c.footingWords(p, v)
	c.markDetails(p, v, onSection)
}

// footingWords says how the post stands.
func (c *cross) footingWords(p *page, v *draw.View) {
	f, spec := c.spec.Footing, c.spec
	b, pb := c.footing.Solid().Bounds(), c.post.Solid().Bounds()
	left := geom.P(-1, -0.3)
	size := c.figures.Size(f.Size, f.Size)
	if f.Round {
		size = "Ø" + c.figures.Length(f.Size)
	}
	say := func(text string, at geom.Vec, id string) {
		p.placer.Label(draw.Label{View: v, At: at, Text: text, ID: id, Toward: left})
	}
	top := "its top falls away from the post to shed water"
	if f.Collar > 0 {
		top = fmt.Sprintf("its top is %s above ground at the post and falls away to shed water", c.figures.Length(f.Collar))
	}
	say(fmt.Sprintf("footing %s: concrete, %s, %s deep; %s", c.footing.Mark, size, c.figures.Length(f.Depth), top),
		c.at(b.Max.Y, b.Min.Z+0.4*f.Depth), memberID(c.footing))
	switch {
	case spec.Base == frame.OnStirrup:
		say(fmt.Sprintf("post on a stirrup, its end %s clear of the concrete", c.figures.Length(f.Stand)), c.at(pb.Max.Y, pb.Min.Z), memberID(c.post))
	case f.Pad > 0:
		say(fmt.Sprintf("the post's end stands on %s of concrete", c.figures.Length(f.Pad)), c.at(pb.Max.Y, pb.Min.Z), memberID(c.post))
	}
}
