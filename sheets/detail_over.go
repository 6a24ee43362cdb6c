package sheets

import (
	"fmt"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

func overDetail() detailSpec {
	return detailSpec{
		scale: 1. / 5, plain: awayFromEnds, views: overViews,
		ring: 150, on: []string{onSection},
	}
}

// awayFromEnds reports whether a rafter lies on its carrier away from the ends
// of that, so that a section through its middle cuts both.
func awayFromEnds(m *maker, j frame.Joint) bool {
	left, right := m.beside(j)
	return min(left, right) >= openEnd
}

// overHolding is what the sheets say of rafters that lie over their carrier.
func overHolding() holding {
	return holding{
		detail: overDetail(),
		land:   "mark only: it lies over",
		ties:   "The birdsmouth holds it in place, the tie holds it down.",
		how: func(m *maker, k frame.Carrier) string {
			words := fmt.Sprintf("over the %s with a heel height of %s", k.Short, m.figures.Length(m.frame.Setout.Heel))
			past, from := overPast(m.frame.Setout, k)
			return words + fmt.Sprintf(", its end %s past the %s's %s face", m.figures.Length(past), k.Short, from)
		},
		mark: func(m *maker, k frame.Carrier) string {
			return fmt.Sprintf("Square the marks over its top and put a cross where each rafter lies, %s wide. Nothing is cut into it.", m.said(m.job.Rafters.Section.Width))
		},
		hold: func(*maker, frame.Carrier) string {
			return "Measure the rafters before the crosses are put on: each is as wide as its own rafter."
		},
		cut: func(m *maker, k frame.Carrier) string {
			words := "over the " + k.Short + " no notch"
			if n, ok := m.notchOver(m.frame.Of(frame.KindRafter)[0], k); ok {
				words = fmt.Sprintf("over the %s a birdsmouth with its heel's plumb line %s down the top edge and %s left above the seat",
					k.Short, m.said(n.At), m.saidTape(n.Heel))
			}
			if k.End == frame.FaceEnd {
				return words + ", the tail " + m.tailWords()
			}
			return words + ", the upper end " + m.plumbOrSquare()
		},
		end: func(m *maker, k frame.Carrier) string {
			past, from := overPast(m.frame.Setout, k)
			if m.figures.Round(past) == 0 {
				return fmt.Sprintf("the %s face of the %s", from, k.Short)
			}
			return fmt.Sprintf("%s past the %s face of the %s", m.figures.Length(past), from, k.Short)
		},
		note: func(m *maker) []string {
			return []string{fmt.Sprintf("Rafters lie over what carries them on a level seat with a plumb heel. The heel height, plumb from the seat to the top edge, is %s on each: gauge it from the top edge, so that all tops lie in one plane whatever the timber measures.",
				m.tape(m.frame.Setout.Heel))}
		},
	}
}

// overPast is how far the rafters run past a carrier at their end, and past
// which of its faces.
func overPast(s frame.Setout, k frame.Carrier) (past float64, face string) {
	if k.End == frame.FaceEnd {
		return k.Outer - s.RafterEnd, "outer"
	}
	return s.RafterStart - k.Inner, k.FaceWord(k.Inner)
}

// notchOver is a rafter's birdsmouth over a carrier; false where it simply lies
// on it.
func (m *maker) notchOver(rafter frame.Member, k frame.Carrier) (frame.Birdsmouth, bool) {
	at := (m.frame.Setout.RafterStart - k.Outer) / rafter.Place.W.Z
	for _, f := range rafter.Features {
		if n, ok := f.(frame.Birdsmouth); ok && sizeKey(n.At) == sizeKey(at) {
			return n, true
		}
	}
	return frame.Birdsmouth{}, false
}

// tailWords say how the tail is cut.
func (m *maker) tailWords() string {
	t := m.job.Rafters.Tail
	switch t.Shape {
	case frame.TailSquare:
		return "cut square"
	case frame.TailBevelled:
		b, _ := m.bevelOf(m.frame.Of(frame.KindRafter)[0])
		return fmt.Sprintf("plumb for %s and then splayed back at %s from level", m.said(b.Nose), m.figures.Angle(b.Splay))
	case frame.TailQuarter, frame.TailOgee, frame.TailProfile:
		return map[frame.TailShape]string{
			frame.TailQuarter: "cut square and rounded below to a quarter circle, as its member drawing shows",
			frame.TailOgee:    "cut square and below to an ogee, hollow and then round, as its member drawing shows",
			frame.TailProfile: "cut to the outline on its member drawing",
		}[t.Shape]
	}
	return "cut " + m.plumbOrSquare()
}

// bevelOf is the bevel of a rafter's tail; false if it has none.
func (m *maker) bevelOf(rafter frame.Member) (frame.TailBevel, bool) {
	for _, f := range rafter.Features {
		if b, ok := f.(frame.TailBevel); ok {
			return b, true
		}
	}
	return frame.TailBevel{}, false
}

// laidOver is a rafter over a carrier, with the points that its drawing needs.
type laidOver struct {
	*maker
	carrier        frame.Carrier
	rafter, timber frame.Member
	notch          frame.Birdsmouth
	notched        bool
	x              float64 // middle of the rafter
}

func (m *maker) laidOver(j frame.Joint) laidOver {
	o := laidOver{maker: m, rafter: m.frame.Members[j.A], timber: m.frame.Members[j.B]}
	o.carrier, _ = m.frame.Setout.CarrierOf(j.B)
	o.x = o.rafter.Place.O.X + o.rafter.Section.Width/2
	o.notch, o.notched = m.notchOver(o.rafter, o.carrier)
	return o
}

// shown are the rafter and all timbers of the carrier.
func (o laidOver) shown() func(frame.Member) bool {
	members := []frame.Member{o.rafter}
	for _, i := range o.carrier.Members {
		members = append(members, o.frame.Members[i])
	}
	return only(members...)
}

func (o laidOver) at(y, z float64) geom.Vec { return geom.V(o.x, y, z) }

// top is the point of the rafter's top edge at a world y.
func (o laidOver) top(y float64) geom.Vec { return o.at(y, o.frame.RafterTop(y)) }

// plumb is the rafter's upright measure.
func (o laidOver) plumb() float64 { return o.rafter.Section.Depth / o.rafter.Place.W.Z }

// overViews are a section along the rafter and, where it ends beyond the
// carrier, its end.
func overViews(m *maker, d detail) []*viewBlock {
	o := m.laidOver(d.joint)
	views := []*viewBlock{o.section()}
	if o.carrier.End == frame.FaceEnd && m.job.Rafters.Tail.Overhang > 0 {
		views = append(views, o.tail())
	}
	return views
}

// overStub is how much of the rafter is shown on each side of the carrier, in
// depths of the rafter.
const overStub = 0.9

func (o laidOver) section() *viewBlock {
	k, s := o.carrier, o.frame.Setout
	depth := o.rafter.Section.Depth
	crop := everywhere()
	crop.Min.Y = max(k.Outer-overStub*depth, s.RafterEnd-closeMargin)
	crop.Max.Y = k.Inner + overStub*depth
	crop.Min.Z = k.Bottom - closeMargin
	c := closeUp{
		name: "section through the middle of the rafter", axes: geom.LeftEnd(), cut: true,
		at: o.at(k.Outer, k.Top), show: o.shown(),
	}
	switch {
	case k.OnWall:
		crop.Max.Y = o.job.Wall.Grip() + 2*closeMargin
		crop.Max.Z = o.frame.RafterTop(s.RafterStart) + closeMargin
		c.house = wallPieces()
		c.show = func(b frame.Member) bool {
			return only(o.rafter, o.timber)(b) || b.Kind == frame.KindPacker && b.Place.V.X > 0
		}
	case k.End == frame.FaceStart:
		crop.Min.Y = k.Outer - overStub*depth
		crop.Max.Y = min(k.Inner+overStub*depth, s.RafterStart+closeMargin)
	}
	c.crop = crop
	b := o.closeUp(c)
	heel := o.top(k.Outer)
	b.row(draw.Left).Chain("at the heel", o.at(k.Outer, k.Bottom), o.at(k.Outer, k.Top), heel)
	seat := []geom.Vec{o.at(k.Outer, k.Top), o.at(k.Outer+o.seat(), k.Top), o.at(k.Inner, k.Top)}
	if len(k.Members) > 1 {
		w := k.Section.Width
		seat = []geom.Vec{seat[0], o.at(k.Outer+w, k.Top), o.at(k.Inner-w, k.Top), seat[1], seat[2]}
	}
	b.row(draw.Bottom).Chain("seat", seat...)
	if k.OnWall && (s.RafterStart != k.Inner || k.Inner < 0) {
		b.row(draw.Bottom).Chain("from the "+o.setting().from, o.at(0, k.Bottom), o.at(s.RafterStart, k.Bottom), o.at(k.Inner, k.Bottom), o.at(k.Outer, k.Bottom))
	}
	o.words(b.note(draw.Right))
	return b
}

// seat is the level length that bears.
func (o laidOver) seat() float64 {
	if !o.notched {
		return o.carrier.Wide()
	}
	return min(o.carrier.Wide(), o.notch.Seat(o.rafter.Section.Depth))
}

// words are the notes of the section.
func (o laidOver) words(n *draw.NoteColumn) {
	k, depth := o.carrier, o.rafter.Section.Depth
	n.Width = detailWords
	out := max(k.Outer-0.35*depth, o.frame.Setout.RafterEnd+closeMargin/2)
	inside := o.top(out)
	inside.Z -= o.plumb() * 0.3
	n.AddInside(o.stick("Rafter", o.rafter)+". "+o.tieDown(), inside)
	middle := k.Outer + k.Section.Width/2
	words, what := fmt.Sprintf("Bearing: a level seat, %s of the %s's %s", o.tape(o.seat()), k.Short, o.tape(k.Wide())), upperFirst(string(o.timber.Kind))
	if len(k.Members) > 1 {
		words, what = fmt.Sprintf("Bearing: a level seat over both beams, %s of the %s from face to face", o.tape(o.seat()), o.tape(k.Wide())), "Twin beams"
	}
	n.Add(words, o.at(k.Outer+k.Section.Width*0.3, k.Top), o.at(middle, k.Top))
	if o.notched {
		words = fmt.Sprintf("Birdsmouth %s deep at its heel, measured plumb; the heel height of %s is the same at every carrier. Saw set %s off square for the heel. Treat the cut faces.",
			o.tape(o.notch.Deep(depth)), o.tape(o.notch.Heel), o.figures.Angle(o.frame.Slope.Angle))
		n.Add(words, o.at(k.Outer, k.Top-o.notch.Deep(depth)*0.5))
	}
	n.AddInside(o.stick(what, o.timber)+", nothing cut into it for the rafters", o.at(middle, k.Bottom+(k.Top-k.Bottom)*0.25))
}

// tail is the rafter's outer end seen from the left.
func (o laidOver) tail() *viewBlock {
	k, s := o.carrier, o.frame.Setout
	crop := everywhere()
	crop.Max.Y = k.Inner
	b := o.closeUp(closeUp{name: "The tail", axes: geom.LeftEnd(), at: o.at(k.Outer, k.Top), show: only(o.rafter), crop: crop})
	b.title.Note = "the rafter alone, seen from its left"
	end := o.top(s.RafterEnd)
	b.row(draw.Top).Chain("overhang", o.top(k.Outer), end)
	low := end
	shape, shaped := o.rafter.Shape(frame.FaceEnd)
	side, cut := draw.Left, "cut all tails to a string"
	if shaped { // no row stands at its end
		side, cut = draw.Right, "cut all tails to a string, by one pattern"
	}
	n := b.note(side)
	n.Width = detailWords
	switch bevel, ok := o.bevelOf(o.rafter); {
	case ok:
		tip := end
		tip.Z -= bevel.Nose
		back := o.rafter.Place.Point(geom.V(bevel.Foot(o.rafter.Section.Depth), o.rafter.Section.Width/2, 0))
		b.row(draw.Right).Chain("nose", end, tip, back)
		b.row(draw.Bottom).Chain("splay", back, tip)
		low = tip.Lerp(back, 0.4)
	case shaped:
		back, down := shape.Middle(len(shape.Points) - 1)
		low = o.rafter.Place.Point(geom.V(shape.Along(back), o.rafter.Section.Width/2, o.rafter.Section.Depth-down))
	case o.job.Rafters.Tail.Shape == frame.TailSquare:
		low = end.Sub(o.rafter.Place.W.Mul(o.rafter.Section.Depth * 0.6))
	default:
		low.Z -= o.plumb()
		b.row(draw.Right).Chain("", end, low)
		low.Z += o.plumb() * 0.4
	}
	n.Add("Tail "+o.tailWords()+". Leave it long and "+cut+", once the rafters are fixed. Treat the cut ends.", low)
	return b
}
