package sheets

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// levels names the height of every surface. Laid out tight, the levels below
// ground stand beside the footing instead; keyed, letters stand for the names.
func (c *cross) levels() {
	stack := c.level(draw.Right)
	c.deep = draw.NewLevelStack(c.view, projectBox(c.view.Axes, c.footing.Solid().Bounds()), draw.Left)
	c.deep.Offset = 2*footOff + rowEnd
	for i, l := range slices.Backward(c.surfaces()) { // of equal ones the later stands higher
		switch {
		case c.form == keyed:
			stack.Add(levelKey(i), l.At)
		case l.Z >= c.ground() || !c.form.round():
			stack.Add(l.Name, l.At)
		default:
			c.deep.Add(l.Name, l.At)
		}
	}
}

// surfaces are the named levels of the section, from the top. Those between
// which the drop is measured say so.
func (c *cross) surfaces() []frame.Level {
	sl := c.frame.Slope
	from, to := c.top(c.frame.Setout.Arris(sl.From)), c.top(c.frame.Setout.Arris(sl.To))
	out := []frame.Level{
		{Name: "top of rafters over the " + string(sl.From) + ": drop from here", Z: from.Z, At: from},
		{Name: "top of rafters over the " + string(sl.To) + ": to here", Z: to.Z, At: to},
	}
	for _, l := range c.namedLevels(c.shows) {
		if !strings.HasPrefix(l.Name, "top of rafters") || l.At.Y != from.Y && l.At.Y != to.Y {
			out = append(out, l)
		}
	}
	slices.SortStableFunc(out, func(a, b frame.Level) int { return cmp.Compare(b.Z, a.Z) })
	return out
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
	if c.form == tight {
		c.inner = draw.NewNoteColumn(c.view, c.Bounds, draw.Right)
	}
	c.middle = draw.NewNoteColumn(c.view, c.Bounds, draw.Right)
	c.outer = draw.NewNoteColumn(c.view, c.Bounds, draw.Right)
	c.below = draw.NewNoteColumn(c.view, projectBox(c.view.Axes, c.footing.Solid().Bounds()), draw.Left)
	c.below.Offset, c.below.Width = 2*footOff+frontOff, deepNotes
	if c.form != wide {
		for i, n := range c.belowNotes() {
			c.say(c.below, []frame.Member{c.footing, {}}[i], n)
		}
	}
	c.battenNote()
	c.rafterNote()
	c.plateNote()
	beam := c.frame.Of(frame.KindBeam)[0]
	c.say(c.outer, beam, draw.ColumnNote{Text: c.stick("beam", beam), At: c.onFront(beam, 0.3, 0.6)})
	eye, arris := c.eye(), c.sightArris()
	way := arris.Sub(eye).Unit()
	past := func(mm float64) geom.Vec { return arris.Add(way.Mul(mm)) }
	c.say(c.outer, frame.Member{}, draw.ColumnNote{Text: "line of sight under the beam, from the eye at the wall", At: []geom.Vec{past(groundPast), past(groundPast / 2)}})
	c.say(c.outer, c.post, draw.ColumnNote{Text: c.stick("post", c.post), At: c.onFront(c.post, 0.75, 0.65, 0.55)})
}

// say adds a note about a member to a column; keyed, to the list.
func (c *cross) say(column *draw.NoteColumn, mb frame.Member, n draw.ColumnNote) {
	if mb.Mark != "" {
		n.ID = memberID(mb)
	}
	if c.form == keyed {
		c.list = append(c.list, keyNote{mb.Mark, n})
		return
	}
	column.AddNote(n)
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
	reach := 4 // so many near the plate the leader may name
	if c.form != tight {
		reach = 5
	}
	for _, mb := range bt[:min(len(bt), reach)] {
		q := mb.Place.Point(geom.V(0, mb.Section.Width/2, mb.Section.Depth/2))
		q.X = c.x
		at = append(at, q)
	}
	words := c.stick("batten", bt[0]) + ". "
	if n := len(bt); n > 1 {
		words += fmt.Sprintf("%d in all, clear gaps of %s. ", n, c.figures.Length(c.frame.Setout.BattenGap))
	}
	words += "The row over them runs down the slope from the plate, to the edge nearest the house"
	c.say(c.inner, bt[0], draw.ColumnNote{Text: words, At: at, Inside: true})
}

func (c *cross) rafterNote() {
	s := c.frame.Setout
	words := fmt.Sprintf("%s. It is %s long, from long point to long point%s", c.stick("rafter", c.rafter), c.figures.Length(c.rafter.Length), c.howHeld())
	if s.Holds(frame.Housed) {
		words += ". The seat of each housing " + seatWords(c.job.Rafters.Seat)
	}
	column, parts := c.inner, []float64{0.05, 0.08, 0.12, 0.2}
	if c.form == tight || c.form == keyed {
		column, parts = c.middle, []float64{0.55, 0.5, 0.6}
	}
	var at []geom.Vec
	for _, part := range parts {
		y := s.PlateOuter + part*(s.BeamInner-s.PlateOuter)
		at = append(at, c.at(y, c.frame.RafterTop(y)-c.plumbDepth()))
	}
	c.say(column, c.rafter, draw.ColumnNote{Text: words, At: at})
}

// seatWords say how the seats of housings lie.
func seatWords(s frame.Seat) string {
	if s == frame.SeatLevel {
		return "is level"
	}
	return "follows the fall"
}

func (c *cross) plateNote() {
	s := c.frame.Setout
	plate := c.frame.Of(frame.KindPlate)[0]
	low := plate.Place.O.Z
	middle := (s.PlateInner + s.PlateOuter) / 2
	c.say(c.inner, plate, draw.ColumnNote{Text: c.stick("wall plate", plate), Inside: true,
		At: []geom.Vec{c.at(middle, low+0.25*plate.Section.Depth), c.at(middle, low+0.4*plate.Section.Depth)}})
	if pk := c.frame.Of(frame.KindPacker); c.job.Plate.Packer.Thickness > 0 {
		words := fmt.Sprintf("packer %s: holds the plate %s off the cladding, so that water drains", pk[0].Mark, c.figures.Length(c.job.Plate.Packer.Thickness))
		c.say(c.inner, pk[0], draw.ColumnNote{Text: words, At: []geom.Vec{c.at(s.PlateInner/2, pk[0].Place.O.Z)}})
	}
}

// The columns of notes and the level marks, mm on paper.
const (
	leftNotes  = 62.0 // width of the words left of the house
	roomNotes  = 58.0 // the same under the rafters, near the plate
	spanNotes  = 46.0 // the same in the middle of the span
	spanGap    = 8.0  // between those two
	deepNotes  = 92.0 // the same beside the footing
	frontNotes = 84.0 // the same between the levels
	roomOff    = 33.0 // from the plate to the words under the rafters
	frontOff   = 13.0 // from the level marks' start to the words between them
	dropRoom   = 34.0 // from the beam to the level marks: the drop stands before them
	leastRow   = 10.0 // from the battens to their row
	overHouse  = 5.0  // from where the house is cut short to the row
	stackClear = 12.0 // the level marks of roof or floor reach about so far past their surfaces
)

// placeWords sets the columns of notes, the level marks and the row of the
// battens for the present scale.
func (c *cross) placeWords(h draw.Hand) {
	s, k := c.frame.Setout, c.view.Scale
	beam := c.frame.Of(frame.KindBeam)[0].Place.O.Z
	plate := c.frame.Of(frame.KindPlate)[0].Place.O.Z
	stack := c.level(draw.Right)
	stack.Bounds.X1 = max(c.Bounds.X1, -s.FrontOut()+(dropRoom-dropOff+c.dropAt())/k)
	for _, rows := range c.Sloped {
		first := c.frame.Of(frame.KindBatten)[0].Solid().Bounds()
		rows.First = max(leastRow, (c.houseTop()-first.Max.Z)*k+overHouse)
		stack.Bounds.X1 = max(stack.Bounds.X1, (rows.Extent(h).X1-c.view.At.X)/k+c.view.Base.X)
	}

	c.outer.Width, c.outer.Offset = frontNotes, frontOff
	c.outer.Bounds.X1 = stack.Bounds.X1
	c.outer.Bounds.Y0, c.outer.Bounds.Y1 = c.floorLevels()+stackClear/k, beam-stackClear/k

	foot := projectBox(c.view.Axes, c.footing.Solid().Bounds())
	c.below.Bounds.Y0, c.below.Bounds.Y1 = foot.Y0+deepClear/k, c.spec.Ground-earthDepth/k

	c.inner.Bounds.Y0, c.inner.Bounds.Y1 = c.floor(), c.houseTop()
	c.inner.Width, c.inner.Offset = leftNotes, 0
	if c.form == tight {
		c.inner.Width, c.inner.Offset = roomNotes, roomOff
		c.inner.Bounds.X1 = -s.PlateOuter
		c.inner.Bounds.Y1 = min(plate, c.eye().Z) - stackClear/k/2
		c.middle.Bounds = c.inner.Bounds
		c.middle.Width, c.middle.Offset = spanNotes, roomOff+roomNotes+spanGap
	}
}

// roomy reports whether the span has room for the words that a tight section
// puts in it.
func (c *cross) roomy(scale float64) bool {
	s := c.frame.Setout
	return (s.PlateOuter-s.BeamInner)*scale > roomOff+roomNotes+spanGap+spanNotes+2*headOff-spanGap
}

// floorLevels is the highest level marked below the eye.
func (c *cross) floorLevels() float64 {
	top := c.floor()
	for _, l := range c.surfaces() {
		if l.Z < c.eye().Z {
			top = max(top, l.Z)
		}
	}
	return top
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

// belowNotes says how the post stands in the ground. Laid out tight the words
// stand beside the footing, else they look for a place.
func (c *cross) belowNotes() []draw.ColumnNote {
	f, spec := c.spec.Footing, c.spec
	b, pb := c.footing.Solid().Bounds(), c.post.Solid().Bounds()
	size := c.figures.Size(f.Size, f.Size)
	if f.Round {
		size = "Ø" + c.figures.Length(f.Size)
	}
	top := "its top falls away from the post to shed water"
	if f.Collar > 0 {
		top = fmt.Sprintf("its top stands %s above ground at the post and falls away to shed water", c.figures.Length(f.Collar))
	}
	edge := func(part float64) geom.Vec { return c.at(b.Max.Y, b.Min.Z+part*f.Depth) }
	notes := []draw.ColumnNote{{
		Text: fmt.Sprintf("footing %s: concrete, %s, %s deep; %s", c.footing.Mark, size, c.figures.Length(f.Depth), top),
		At:   []geom.Vec{edge(0.85), edge(0.7), edge(0.1)}, ID: memberID(c.footing),
	}}
	end := draw.ColumnNote{At: []geom.Vec{c.at(pb.Max.Y, pb.Min.Z)}, ID: memberID(c.post)}
	switch {
	case spec.Base == frame.OnStirrup:
		end.Text = fmt.Sprintf("post on a stirrup, its end %s clear of the concrete", c.figures.Length(f.Stand))
	case f.Pad > 0:
		end.Text = fmt.Sprintf("the post's end stands on %s of concrete", c.figures.Length(f.Pad))
	default:
		return notes
	}
	return append(notes, end)
}

// footingWords puts the notes on the post in the ground where the form has no
// column for them.
func (c *cross) footingWords(p *page, v *draw.View) {
	if c.form != wide {
		c.below.Draw(p.placer)
		return
	}
	for _, n := range c.belowNotes() {
		p.placer.Label(draw.Label{View: v, At: n.At[0], Text: n.Text, ID: n.ID, Toward: geom.P(1, -0.5)})
	}
}

// deepClear is kept free over the lowest level mark, mm on paper.
const deepClear = 7.0

// howToFall says how the fall is set, where there is room for it under the
// notes in front of the beam.
func (c *cross) howToFall(p *page, v *draw.View) {
	block := c.fallWords(frontNotes)
	_, h := block.Size()
	low := v.Pt(c.at(0, c.floorLevels())).Y + stackClear
	x := v.Outline(c.outer.Bounds).X1 + frontOff
	if c.form != keyed && c.outer.Extent().Y0 > low+h+stackGap {
		block.Draw(p.sheet, geom.P(x, low+h))
	}
}

// fallWords are the words on setting the fall.
func (c *cross) fallWords(width float64) draw.NoteBlock {
	sl, f := c.frame.Slope, c.figures
	beam := c.frame.Of(frame.KindBeam)[0]
	words := fmt.Sprintf("Carry the level of the rafters' top edge over the %s across to the %s and measure %s down from it: there lies the rafters' top edge.",
		sl.From, sl.To, f.Length(sl.Drop))
	switch up := beam.Place.O.Z + beam.Section.Depth - c.frame.RafterTop(c.frame.Setout.BeamInner); {
	case f.Round(up) == 0:
		words += " The top of the beam is level with it at the beam inner arris."
	case up < 0:
		words += fmt.Sprintf(" The top of the beam lies %s below it at the beam inner arris.", f.Length(-up))
	default:
		words += fmt.Sprintf(" The top of the beam stands %s above it at the beam inner arris.", f.Length(up))
	}
	return draw.NoteBlock{Title: "To set the fall", Notes: []string{words}, Width: width}
}
