package sheets

import (
	"cmp"
	"fmt"
	"math"
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
	c.deep = draw.NewLevelStack(c.view, projectBox(c.view.Axes, c.footOf(c.post)), draw.Left)
	c.deep.Offset = 2*footOff + rowEnd
	c.roof = draw.NewLevelStack(c.view, c.Bounds, draw.Right)
	c.base = draw.NewLevelStack(c.view, c.Bounds, draw.Right)
	for i, l := range slices.Backward(c.surfaces()) { // of equal ones the later stands higher
		if l.Z > c.eye().Z {
			c.roof.Add(l.Name, l.At)
		} else if l.Z >= c.ground() {
			c.base.Add(l.Name, l.At)
		}
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
		{Name: "top of rafters over the " + string(sl.From), Z: from.Z, At: from},
		{Name: "top of rafters over the " + string(sl.To), Z: to.Z, At: to},
	}
	if c.falls() {
		out[0].Name += ": drop from here"
		out[1].Name += ": to here"
	}
	for _, l := range c.namedLevels(c.shows) {
		if !strings.HasPrefix(l.Name, "top of rafters") || l.At.Y != from.Y && l.At.Y != to.Y {
			out = append(out, l)
		}
	}
	slices.SortStableFunc(out, func(a, b frame.Level) int { return cmp.Compare(b.Z, a.Z) })
	return out
}

// falls reports whether the rafters fall by anything that can be printed.
func (c *cross) falls() bool { return c.figures.Round(c.frame.Slope.Drop) != 0 }

// shows reports whether a level is of a thing that the section shows: of the
// ground and the footings, those at its post.
func (c *cross) shows(l frame.Level) bool {
	highest := c.spec.Ground
	for _, p := range c.job.Posts.At {
		highest = max(highest, p.Ground)
	}
	if l.At.Y != c.front().Outer && l.At.Y != c.postFace(c.rear()) || l.Z > highest {
		return true
	}
	return l.Z == c.spec.Ground || l.Z == c.footOf(c.post).Min.Z
}

// notes names every member that the section shows and says what it is.
func (c *cross) notes() {
	c.inner = draw.NewNoteColumn(c.view, c.Bounds, draw.Left)
	if c.form == tight {
		c.inner = draw.NewNoteColumn(c.view, c.Bounds, draw.Right)
	}
	c.middle = draw.NewNoteColumn(c.view, c.Bounds, draw.Right)
	c.below = draw.NewNoteColumn(c.view, projectBox(c.view.Axes, c.footOf(c.post)), draw.Left)
	c.below.Offset, c.below.Width = 2*footOff+frontOff, deepNotes
	if c.form != wide && c.spec.Dug() {
		c.say(c.below, c.footing, c.footingNote())
	}
	c.battenNote()
	c.slatNote()
	c.rafterNote()
	c.plateNote()
	c.outerWide = c.outerNotes(false)
	once := len(c.list)
	c.outerNarrow = c.outerNotes(true)
	c.outer = c.outerWide
	c.list = c.list[:once] // keyed, they are in it once
}

// outerNotes are those about what is near the beam; the line of sight with its
// angle or without.
func (c *cross) outerNotes(angle bool) *draw.NoteColumn {
	out := draw.NewNoteColumn(c.view, c.Bounds, draw.Right)
	c.roofNote(out)
	beam := c.frame.Timber(c.front())
	c.say(out, beam, draw.ColumnNote{Text: c.stick(lowerFirst(c.beamNames(c.front())), beam), At: c.onFront(beam, 0.3)})
	if c.form != keyed {
		arris := c.sightArris()
		way := arris.Sub(c.eye()).Unit()
		past := func(mm float64) geom.Vec { return arris.Add(way.Mul(mm)) }
		c.say(out, frame.Member{}, draw.ColumnNote{Text: c.sightWords(angle), At: []geom.Vec{past(sightPast), past(sightPast / 2)}})
	}
	words := c.stick("post", c.post)
	if c.form != wide && !c.spec.Dug() {
		words += ". " + upperFirst(c.standWords())
	}
	c.say(out, c.post, draw.ColumnNote{Text: words, At: c.onFront(c.post, 0.75, 0.65, 0.55, 0.85, 0.45, 0.35, 0.25)})
	return out
}

// sightWords say what the line of sight is, with its angle or without.
func (c *cross) sightWords(angle bool) string {
	words := "line of sight under the " + c.front().Short + ", from the eye at " + c.setting().eye
	if !angle {
		return words
	}
	way, turn := c.sightArris().Sub(c.eye()), "up"
	if way.Z < 0 {
		turn = "down"
	}
	return fmt.Sprintf("%s: %s %s from level", words, c.figures.Angle(math.Atan2(math.Abs(way.Z), -way.Y)), turn)
}

// say adds a note about a member to a column; keyed, to the list.
func (c *cross) say(column *draw.NoteColumn, mb frame.Member, n draw.ColumnNote) {
	if mb.Mark != "" {
		n.ID = memberID(mb)
	}
	if c.form == keyed {
		c.list = append(c.list, keyNote{mb, n})
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
	reach := 2 // so many near the plate the leader may name
	if c.form != tight {
		reach = 5
	}
	for _, mb := range bt[:min(len(bt), reach)] {
		q := mb.Place.Point(geom.V(0, mb.Section.Width/2, mb.Section.Depth/2))
		q.X = c.x
		at = append(at, q)
	}
	words := c.stick("batten", bt[0]) + c.laying().how(c.maker) + ". "
	if n := len(bt); n > 1 {
		words += fmt.Sprintf("%d in all, clear gaps of %s. ", n, c.figures.Length(c.frame.Setout.BattenGap))
	}
	if l := c.frame.Of(frame.KindLath); len(l) > 0 {
		words += fmt.Sprintf("Over them %d laths %s, %s. ", len(l), l[0].Mark, c.figures.Size(l[0].Section.Depth, l[0].Section.Width))
	}
	if c.bare {
		words += "Their places are on the batten plan"
	} else {
		words += "The row over them runs down the slope from the " + c.rear().Short + ", to the " + c.setting().nearEdge
	}
	named := bt[0]
	if c.form != keyed {
		named = frame.Member{} // the leader may end on any of them
	}
	c.say(c.inner, named, draw.ColumnNote{Text: words, At: at, Inside: true})
}

func (c *cross) rafterNote() {
	s := c.frame.Setout
	words := fmt.Sprintf("%s. It is %s long, from long point to long point%s", c.stick("rafter", c.rafter), c.figures.Length(c.rafter.Length), c.howHeld())
	if s.Holds(frame.Housed) {
		words += ". The seat of each housing " + seatWords(c.job.Rafters.Seat)
	}
	column, parts := c.inner, []float64{0.05, 0.08, 0.12, 0.2, 0.28, 0.35}
	if c.form == tight || c.form == keyed {
		column, parts = c.middle, []float64{0.55, 0.5, 0.6, 0.65, 0.7, 0.45, 0.75, 0.8}
	}
	var at []geom.Vec
	for _, part := range parts {
		y := s.Rear().Outer + part*(s.Front().Inner-s.Rear().Outer)
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
	plate := c.frame.Timber(c.rear())
	low := plate.Place.O.Z
	middle := (s.Rear().Inner + s.Rear().Outer) / 2
	note := draw.ColumnNote{Text: c.stick(c.rear().Name, plate), Inside: true,
		At: []geom.Vec{c.at(middle, low+0.25*plate.Section.Depth), c.at(middle, low+0.4*plate.Section.Depth)}}
	if k := c.rear(); k.Back && c.form != tight { // the words stand behind it
		note.Inside = false
		note.At = []geom.Vec{c.at(k.Inner, low+0.12*plate.Section.Depth), c.at(k.Inner, low+0.3*plate.Section.Depth)}
	}
	c.say(c.inner, plate, note)
	if pk := c.frame.Of(frame.KindPacker); c.job.Plate.Packer.Thickness > 0 {
		words := fmt.Sprintf("packer %s: holds the plate %s off the %s, so that water drains", pk[0].Mark, c.figures.Length(c.job.Plate.Packer.Thickness), c.offWhat())
		c.say(c.inner, pk[0], draw.ColumnNote{Text: words, At: []geom.Vec{c.at(pk[0].Place.O.Y+pk[0].Section.Depth/2, pk[0].Place.O.Z)}})
	}
}

// The columns of notes and the level marks, mm on paper.
const (
	leftNotes   = 62.0 // width of the words left of the house
	roomNotes   = 58.0 // the same under the rafters, near the plate
	spanNotes   = 46.0 // the same in the middle of the span
	spanGap     = 8.0  // between those two
	headFigure  = 5.5  // from the line of the head height at the beam to the words
	eyeClear    = 6.0  // from the eye down to those words
	deepNotes   = 92.0 // the same beside the footing
	frontNotes  = 84.0 // the same between the levels
	roomOff     = 33.0 // from the plate to the words under the rafters
	frontOff    = 13.0 // from the level marks' start to the words between them
	dropRoom    = 4.0  // from the drop to the level marks, besides its figure
	figurePitch = 4.0  // of the figures of a running row
	rowSpread   = 1.2  // a row of figures this much longer than what it measures is crowded
	titleRun    = 26.0 // of the title of the battens' row
	titleClear  = 5.0  // from it down to the drop
	leastRow    = 10.0 // from the battens to their row
	overHouse   = 5.0  // from where the house is cut short to the row
	stackClear  = 4.0  // from the level marks to the words between them
)

// placeWords sets the columns of notes, the level marks and the row of the
// battens for the present scale.
func (c *cross) placeWords(h draw.Hand) {
	s, k := c.frame.Setout, c.view.Scale
	plate := c.rear().Bottom
	c.Bottom, c.outer = c.wideRow, c.outerWide
	if c.narrow() {
		c.Bottom = c.narrowRow
	}
	if c.arc() == 0 {
		c.outer = c.outerNarrow
	}
	c.Bottom.First = c.underRings()
	c.placeBattenRow(h)
	c.placeDrop()
	c.pad.Y1 = 0
	if c.falls() && c.slopeAbove() {
		c.pad.Y1 = 2 * fallOff
	}
	stack := c.level(draw.Right)
	stack.Bounds.X1 = max(c.Bounds.X1, -s.FrontOut()+(c.dropOff+dropRoom+c.figureWidth("drop "+c.figures.Length(c.frame.Slope.Drop)))/k)
	for _, rows := range c.Sloped {
		stack.Bounds.X1 = max(stack.Bounds.X1, (rows.Extent(h).X1-c.view.At.X)/k+c.view.Base.X)
	}

	model := func(y float64) float64 { return (y-c.view.At.Y)/k + c.view.Base.Y }
	c.outer.Width, c.outer.Offset = frontNotes, frontOff
	c.outer.Bounds.X1 = stack.Bounds.X1
	c.outer.Bounds.Y0, c.outer.Bounds.Y1 = model(c.base.Extent(h).Y1+stackClear), model(c.roof.Extent(h).Y0-stackClear)

	foot := projectBox(c.view.Axes, c.footOf(c.post))
	c.below.Bounds.Y0, c.below.Bounds.Y1 = foot.Y0+deepClear/k, c.spec.Ground-earthDepth/k

	c.inner.Bounds.Y0, c.inner.Bounds.Y1 = c.floor(), c.houseTop()
	c.inner.Width, c.inner.Offset = leftNotes, c.nudge
	if c.form == tight {
		c.inner.Width, c.inner.Offset = roomNotes, roomOff+c.nudge
		c.inner.Bounds.X1 = -s.Rear().Outer
		c.inner.Bounds.Y1 = min(plate, c.eye().Z, c.spanLevel()) - eyeClear/k
		c.middle.Bounds = c.inner.Bounds
		c.middle.Width, c.middle.Offset = spanNotes, roomOff+roomNotes+spanGap
	}
}

// placeBattenRow sets the row of the battens clear of the house, and its title,
// which stands at its lower end, clear of the level line of the drop. A row that would be
// crowded gives the first and the last batten and their spaces: the plan has
// them all.
func (c *cross) placeBattenRow(h draw.Hand) {
	s, k := c.frame.Setout, c.view.Scale
	c.dropOff, c.Sloped = dropOff+c.nudge, nil
	r, ok := c.rowOnSlope()
	if !ok {
		return
	}
	rows := c.fullRow
	length := (s.Rear().Outer - r.end) / c.rafter.Place.W.Z * k
	if float64(len(r.stops))*figurePitch > rowSpread*length {
		rows = c.shortRow
	}
	rows.First = max(leastRow, (c.houseTop()-r.high)*k+overHouse)
	rows.Before = c.steep()
	if w := c.job.Wall; rows.Before && w.SoffitOut > 0 { // the title passes over the corner of the eave
		rows.First = max(rows.First, ((c.houseTop()-c.frame.RafterTop(-w.SoffitOut))*c.rafter.Place.W.Z-r.up.Len())*k+overHouse)
	}
	if sl := c.frame.Slope; c.falls() && !c.steep() {
		sin, cos := math.Sincos(sl.Angle)
		line := c.frame.RafterTop(s.Arris(sl.From)) - c.frame.RafterTop(r.end)
		rows.First = max(rows.First, (line*k+titleClear+titleRun*sin)/cos-r.up.Len()*k)
	}
	rows.First += c.nudge
	c.Sloped = []*draw.SlopedRows{rows}
}

// underRings is how far below the section the first row stands: its figures,
// which hang from it, below the rings of the details.
func (c *cross) underRings() float64 {
	const least, hang, clear = 10.0, 2.2, 1.0 // mm on paper: of any row; from the row to its figures; from a ring to those
	first := least
	for _, d := range c.details {
		if slices.Contains(d.on, onSection) {
			first = max(first, (c.Bounds.Y0-d.at.Z+d.radius)*c.view.Scale-hang+clear)
		}
	}
	return first
}

// placeDrop keeps the drop in front of the beam clear of the rings of the
// details.
func (c *cross) placeDrop() {
	s, k := c.frame.Setout, c.view.Scale
	front := c.view.Pt(c.at(s.FrontOut(), 0)).X
	for _, d := range c.details {
		if right := c.view.Pt(d.at).X + d.radius*k; slices.Contains(d.on, onSection) && d.at.Y < c.front().Outer/2 {
			c.dropOff = max(c.dropOff, right-front+titleClear)
		}
	}
}

// crowded reports whether the words that stand within the section lack room
// at the present scale.
func (c *cross) crowded(h draw.Hand) bool {
	if c.form == keyed {
		return false
	}
	s, k := c.frame.Setout, c.view.Scale
	room := (s.Rear().Outer - s.Front().Inner) * k
	if c.form == tight && room < roomOff+roomNotes+spanGap+spanNotes+headOff+headFigure {
		return true
	}
	return overfull(c.outer) || c.form.round() && c.spec.Dug() && overfull(c.below) || c.form == tight && overfull(c.inner)
}

// overfull reports whether a column of notes is higher than the band that it
// stands in.
func overfull(column *draw.NoteColumn) bool {
	const slack = 0.5 // mm on paper
	band, e := column.View.Outline(column.Bounds), column.Extent()
	return e.Y1 > band.Y1+slack || e.Y0 < band.Y0-slack || band.Y0 > band.Y1
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

// footingNote says what stands in the ground.
func (c *cross) footingNote() draw.ColumnNote {
	f, spec := c.spec.Footing, c.spec
	b := c.footing.Solid().Bounds()
	size := c.figures.Size(f.Size, f.Size)
	if f.Round {
		size = "Ø" + c.figures.Length(f.Size)
	}
	words := fmt.Sprintf("footing %s: concrete, %s, %s deep", c.footing.Mark, size, c.figures.Length(f.Depth))
	words += basings(spec.Base).foot(c.maker, spec)
	if f.Collar > 0 {
		words += fmt.Sprintf(". Its top is %s above ground at the post and falls away to shed water", c.figures.Length(f.Collar))
	}
	edge := func(part float64) geom.Vec { return c.at(b.Max.Y, b.Min.Z+part*f.Depth) }
	return draw.ColumnNote{Text: words, At: []geom.Vec{edge(0.85), edge(0.7), edge(0.93), edge(0.5), edge(0.3), edge(0.1)}, ID: memberID(c.footing)}
}

// standWords say how the post stands on what is there already.
func (c *cross) standWords() string { return basings(c.spec.Base).foot(c.maker, c.spec) }

// footingWords puts the note on the footing where the form has no column for
// it.
func (c *cross) footingWords(p *page, v *draw.View) {
	if c.form != wide {
		c.below.Draw(p.placer)
		return
	}
	n := draw.ColumnNote{Text: c.standWords(), At: c.onFront(c.post, 0.03), ID: memberID(c.post)}
	if c.spec.Dug() {
		n = c.footingNote()
	}
	p.placer.Label(draw.Label{View: v, At: n.At[0], Text: n.Text, ID: n.ID, Toward: geom.P(1, -0.5)})
}

// deepClear is kept free over the lowest level mark, mm on paper.
const deepClear = 7.0

// howToFall says how the fall is set, where there is room for it under the
// notes in front of the beam.
func (c *cross) howToFall(p *page, v *draw.View) {
	block := c.fallWords(frontNotes)
	_, h := block.Size()
	low := v.Outline(c.outer.Bounds).Y0
	x := v.Outline(c.outer.Bounds).X1 + frontOff
	if c.form != keyed && c.falls() && c.outer.Extent().Y0 > low+h+stackGap {
		block.Draw(p.sheet, geom.P(x, low+h))
	}
}

// fallWords are the words on setting the fall.
func (c *cross) fallWords(width float64) draw.NoteBlock {
	sl, f := c.frame.Slope, c.figures
	beam := c.frame.Timber(c.front())
	words := fmt.Sprintf("Carry the level of the rafters' top edge over the %s across to the %s and measure %s down from it: there lies the rafters' top edge.",
		sl.From, sl.To, f.Length(sl.Drop))
	switch up := beam.Place.O.Z + beam.Section.Depth - c.frame.RafterTop(c.front().Inner); {
	case f.Round(up) == 0:
		words += " The top of the beam is level with it at the beam inner arris."
	case up < 0:
		words += fmt.Sprintf(" The top of the beam lies %s below it at the beam inner arris.", f.Length(-up))
	default:
		words += fmt.Sprintf(" The top of the beam stands %s above it at the beam inner arris.", f.Length(up))
	}
	return draw.NoteBlock{Title: "To set the fall", Notes: []string{words}, Width: width}
}
