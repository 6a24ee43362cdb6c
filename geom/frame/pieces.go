package frame

import (
	"math"
	"slices"
	"strings"
)

// Piece is one length that is cut from a stick: a whole member, or one part of
// a member that is longer than any stick that can be bought.
type Piece struct {
	Member   int     // index of Frame.Members
	Part     int     // 0: the whole member; else from 1, counted from its datum end
	From, To float64 // the stretch of the member
	Extra    float64 // left on for a cut that waits until the site is measured
}

// Length is the finished length.
func (p Piece) Length() float64 { return p.To - p.From }

// Cut is the length to cut from the stick.
func (p Piece) Cut() float64 { return p.Length() + p.Extra }

// Pieces lists what is cut from sticks, in the order of the members. Every
// member but the footings is in it, whole or in parts that fill its length.
func (f *Frame) Pieces() []Piece {
	var out []Piece
	for i, m := range f.Members {
		if m.Kind == KindFooting {
			continue
		}
		from, extra := 0.0, f.Job.Stock.extraFor(m)
		joints := f.Splices(i)
		if len(joints) == 0 {
			out = append(out, Piece{Member: i, To: m.Length, Extra: extra})
			continue
		}
		for k, to := range append(joints, m.Length) {
			p := Piece{Member: i, Part: k + 1, From: from, To: to}
			if k == len(joints) { // the last cut of the member is at its far end
				p.Extra = min(extra, max(0, f.Job.Stock.reach(m.Section)-p.Length()))
			}
			out = append(out, p)
			from = to
		}
	}
	return out
}

// extraFor is the extra length of a member, as far as the sticks give it.
func (s Stock) extraFor(m Member) float64 {
	extra := s.Extra.of(m.Kind)
	if longest := s.longest(m.Section); m.Length <= longest {
		return min(extra, max(0, s.reach(m.Section)-m.Length))
	}
	return extra
}

// longest is the longest stick of a section; 0 where none is sold.
func (s Stock) longest(section Section) float64 {
	l := s.LengthsOf(section)
	if len(l) == 0 {
		return 0
	}
	return l[len(l)-1].Length
}

// reach is the longest piece that the longest stick of a section gives once it
// is trimmed.
func (s Stock) reach(section Section) float64 {
	l := s.longest(section)
	return l*(1-s.Defects) - 2*s.EndTrim
}

// TooLong reports whether no stick that is sold is long enough for the piece,
// so that it has to be ordered by its length.
func (f *Frame) TooLong(p Piece) bool {
	return p.Length() > f.Job.Stock.longest(f.Members[p.Member].Section)+slack
}

// Splices are the joints of a member that is longer than any stick of its
// section, as distances from its datum end: of the beam over the middle of a
// post, of a batten over the middle of a rafter, of a lath over that of a batten, of the plate between rafters
// and clear of its screws. It is empty for a member that needs none, for one
// that cannot be joined and where no lengths are stated.
func (f *Frame) Splices(member int) []float64 {
	m := f.Members[member]
	longest := f.Job.Stock.longest(m.Section)
	if longest == 0 || m.Length <= longest+slack {
		return nil
	}
	var places []float64
	switch m.Kind {
	case KindBeam:
		if f.Job.Posts.Meet.RunsUp() {
			return nil // over a post is where its bolts are
		}
		k, _ := f.Setout.CarrierOf(member)
		for _, i := range k.Posts {
			places = append(places, m.Place.Local(f.Setout.postMiddle(f.Job, i)).X)
		}
	case KindValance:
		if f.Job.Valance.Set == ValanceFace {
			for _, p := range f.Job.Posts.At {
				places = append(places, p.Along-m.Place.O.X)
			}
		}
	case KindBatten, KindFascia:
		for _, x := range f.Setout.Rafters {
			places = append(places, x-m.Place.O.X)
		}
	case KindLath:
		for _, u := range f.Setout.Battens {
			places = append(places, u-f.Setout.Battens[0]+f.Job.Laths.Overhang+f.Job.Battens.Section.Width/2)
		}
	case KindPlate:
		places = f.plateSplices(m)
	}
	return joinAt(places, m.Length, f.Job.Stock.reach(m.Section))
}

// joinAt chooses, of the places, as few joints as parts of the greatest length
// allow; nil where no choice does.
func joinAt(places []float64, length, reach float64) []float64 {
	var out []float64
	for from := 0.0; length-from > reach+slack; from = out[len(out)-1] {
		best := from
		for _, x := range places {
			if x > best && x < length-slack && x-from <= reach+slack {
				best = x
			}
		}
		if best == from {
			return nil
		}
		out = append(out, best)
	}
	return out
}

const (
	// spliceClear is the least distance of a joint in the plate from the side
	// of a housing, mm: what is left there must not split off (own).
	spliceClear = 50

	// spliceEnd is the least distance of a joint in the plate from a screw, in
	// diameters of the screw. From memory, as the end distance of bolts.
	spliceEnd = 7
)

// plateSplices are the places where the plate may be joined: on a stud or
// midway between two rafters, clear of housings and screws.
func (f *Frame) plateSplices(m Member) []float64 {
	j := f.Job
	var at []float64
	at = append(at, j.Wall.Studs...)
	for i := 1; i < len(f.Setout.Rafters); i++ {
		at = append(at, (f.Setout.Rafters[i-1]+f.Setout.Rafters[i])/2)
	}
	half := (j.Rafters.Section.Width+j.Rafters.Clearance)/2 + spliceClear
	near := func(x, y, d float64) bool { return math.Abs(x-y) < d-slack }
	var out []float64
	for _, x := range at {
		if slices.ContainsFunc(f.Setout.Rafters, func(r float64) bool { return near(x, r, half) }) {
			continue
		}
		if slices.ContainsFunc(f.Setout.PlateFixings, func(p FixingPoint) bool { return near(x, p.Along, spliceEnd*j.Plate.Fixing.Screw) }) {
			continue
		}
		out = append(out, x-m.Place.O.X)
	}
	slices.Sort(out)
	return out
}

// stockWarnings say which members are longer than the sticks that are sold.
// One of each kind stands for all.
func (f *Frame) stockWarnings(c *checker) {
	told := map[Kind]bool{}
	for i, m := range f.Members {
		longest := f.Job.Stock.longest(m.Section)
		if told[m.Kind] || m.Kind == KindFooting || longest == 0 || m.Length <= longest+slack {
			continue
		}
		told[m.Kind] = true
		what := "the " + string(m.Kind)
		if len(f.Of(m.Kind)) > 1 {
			what = "a " + string(m.Kind)
		}
		path := m.Kind.traits().key
		joints := f.Splices(i)
		if len(joints) == 0 {
			c.warnf(RuleStock, path, "%s is %s long and the longest stick of its section is %s: order it by its length",
				what, c.figure(m.Length), c.figure(longest))
			continue
		}
		var at []string
		for _, x := range joints {
			at = append(at, c.figure(x))
		}
		c.warnf(RuleStock, path, "%s is %s long and the longest stick of its section is %s: it is joined %s%s from its %s; the joint is for a licensed person to design",
			what, c.figure(m.Length), c.figure(longest), m.Kind.traits().joined, strings.Join(at, ", "), m.Kind.EndName(FaceStart))
	}
}
