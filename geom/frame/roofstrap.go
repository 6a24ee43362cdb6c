package frame

import (
	"fmt"
	"math"

	"plumbcut/geom"
	"plumbcut/geom/frame/keys"
)

// RuleRoofStrap is of diagonal straps that cannot lie as stated.
const RuleRoofStrap Rule = "diagonal straps"

// RoofStraps are flat steel straps across the rafters, in pairs that cross each
// other, which keep the frame square in the plane of its slope. Width 0: there
// are none.
//
//	plate ════════════════════════
//	       │ ╲   │     │     │  ╱│   ↕ Inset
//	       │   ╲ │     │    ╱│   │
//	       │     ╲     │ ╱   │   │   the middle lines of a pair, over
//	       │     │   ╲ ╱     │   │   the bays from one rafter to another
//	       │     │  ╱  │ ╲   │   │
//	beam  ════════════════════════
type RoofStraps struct {
	Width, Thickness float64 // Thickness 0: to be stated
	Under            bool    // on the rafters' undersides, not on their top edges
	Inset            float64 // of a middle line's ends on the end rafters from the faces of plate and beam, along the slope
	Past             float64 // how far a strap goes on at each end, to be bent down the end rafter's side
	Nails, EndNails  int     // into each rafter that it crosses, and into each end one
	Tension          string  // what it is drawn tight by, as stated; empty: to be stated
	At               []StrapBays
}

// StrapBays are the bays that a pair of straps crosses, from one rafter to
// another, numbered from 1.
type StrapBays struct{ From, To int }

// There reports whether there are any.
func (r RoofStraps) There() bool { return r.Width > 0 }

// StrapRun is the middle line of one diagonal strap, in the world, with the
// rafters that it crosses, its end ones first and last.
type StrapRun struct {
	From, To geom.Vec
	Crosses  []StrapCross
	Length   float64 // of the strap itself, with what is bent down
}

// StrapCross is where a strap crosses a rafter, numbered from 1, on the
// rafter's middle, and how far its width reaches there, along the rafter.
type StrapCross struct {
	Rafter int
	At     geom.Vec
	Span   float64
}

func (d *draft) roofStrapFields() keys.Group {
	r := &d.RoofStraps
	return keys.Group{Opt: true, Fields: []keys.Field{
		{Key: "width", Is: keys.Length(&r.Width, keys.Between(5, 200)), Need: true, Doc: "Width of each strap."},
		{Key: "thickness", Is: keys.Length(&r.Thickness, keys.Between(0.3, 10)), Else: "to be stated", Doc: "Its thickness."},
		{Key: "on", Is: keys.Either(&r.Under, "undersides", "top edges"), Def: "top edges", Also: []string{"edge"}, Doc: "Which edges of the rafters they lie on."},
		{Key: "inset", Is: keys.Length(&r.Inset, keys.Between(10, 3000)), Def: "150 mm", Habit: true,
			Doc: "How far from the faces of plate and beam, along the slope, a strap's middle line meets the middles of its end rafters."},
		{Key: "past", Is: keys.Length(&r.Past, keys.Between(0, 1000)), Def: "100 mm", Habit: true, Doc: "How far each goes on there, to be bent down the end rafter's side and nailed."},
		{Key: "nails", Is: keys.Count(&r.Nails, 1, 20), Def: "2", Habit: true, Doc: "How many nails hold it to each rafter that it crosses."},
		{Key: "end_nails", Is: keys.Count(&r.EndNails, 1, 60), Def: "5", Habit: true, Doc: "How many hold it to each of its end rafters."},
		{Key: "tension", Is: keys.Text(&r.Tension, lineText), Else: "to be stated", Also: []string{"tensioner"}, Doc: "What each is drawn tight by, as the designer states it."},
		{Key: "at", Is: keys.ListOf(&r.At, 1, keys.Zero, strapBayFields), Also: []string{"bays"},
			Doc: "The pairs of straps, one on each diagonal of the bays that it crosses; left out, one pair crosses all bays."},
	}}
}

func strapBayFields(b *StrapBays) keys.Kind {
	return keys.Group{Fields: []keys.Field{
		{Key: "from", Is: keys.Count(&b.From, 1, maxSticks), Need: true, Doc: "Number of the rafter that it begins at, from 1 at the left."},
		{Key: "to", Is: keys.Count(&b.To, 2, maxSticks), Need: true, Doc: "Number of the rafter that it ends at."},
	}}
}

// layOutRoofStraps places the straps, two to each pair.
func (c *checker) layOutRoofStraps() {
	r, s := c.job.RoofStraps, &c.set
	if !r.There() {
		return
	}
	if !r.Under && c.job.Battens.Lie == LieChecked && c.job.Battens.Section.Depth > 0 {
		c.errorf(RuleRoofStrap, "roof_straps", "the battens are checked into the rafters, so nothing lies flat on their top edges; say on: undersides")
		return
	}
	pairs := r.At
	if len(pairs) == 0 {
		pairs = []StrapBays{{1, len(s.Rafters)}}
	}
	for i, p := range pairs {
		path := "roof_straps"
		if len(r.At) > 0 {
			path = fmt.Sprintf("roof_straps.at[%d]", i)
		}
		if p.To > len(s.Rafters) || p.From >= p.To {
			c.errorf(RuleRoofStrap, path, "a pair of straps runs from rafter %d to rafter %d, and there are rafters 1 to %d; name two of them, the left one first", p.From, p.To, len(s.Rafters))
			continue
		}
		for _, falls := range []bool{true, false} {
			if run, ok := c.strapRun(p, falls); ok {
				s.RoofStraps = append(s.RoofStraps, run)
			} else {
				return
			}
		}
	}
}

// strapRun is one strap of a pair: the one that falls to the right or the other.
// It is false after an error.
func (c *checker) strapRun(p StrapBays, falls bool) (StrapRun, bool) {
	j, s := c.job, c.set
	r := j.RoofStraps
	left, right := s.Rafters[p.From-1], s.Rafters[p.To-1]
	upper, lower := left, right
	if !falls {
		upper, lower = right, left
	}
	start, _ := s.strapReach(j, upper)
	_, end := s.strapReach(j, lower)
	from, to := start+r.Inset, end-r.Inset
	if from >= to {
		c.errorf(RuleRoofStrap, "roof_straps.inset", "the rafters are %s long in the clear and the straps stand in %s at both ends; make inset less", c.mm(end-start), c.mm(r.Inset))
		return StrapRun{}, false
	}
	slope := s.onSlope()
	if r.Under {
		slope.O = slope.O.Sub(slope.W.Mul(j.Rafters.Section.Depth))
	}
	at := func(x float64) geom.Vec {
		return slope.Point(geom.V(from+(to-from)*(x-upper)/(lower-upper), x, 0))
	}
	run := StrapRun{From: at(left), To: at(right), Length: math.Hypot(to-from, lower-upper) + 2*r.Past}
	steep := (to - from) / math.Abs(lower-upper) // down the slope for each millimetre along
	span := r.Width*math.Hypot(1, steep) + j.Rafters.Section.Width*steep
	if need := math.Ceil(span/2 + s.tied(j)); r.Inset < need-slack {
		c.errorf(RuleRoofStrap, "roof_straps.inset", "where a strap crosses its end rafters it takes %s of their length, and would lie over plate, beam or the rafters' own straps; make inset at least %s", c.mm(span), c.mm(need))
		return StrapRun{}, false
	}
	for i := p.From; i <= p.To; i++ {
		run.Crosses = append(run.Crosses, StrapCross{i, at(s.Rafters[i-1]), span})
	}
	return run, true
}

// strapReach is the clear stretch of the edge that the straps lie on of a rafter
// at x, between the faces of what carries it, down the slope.
func (s Setout) strapReach(j *Job, x float64) (from, to float64) {
	cut := s.Cut(x)
	from, to = (s.lineAt-cut.Rear().Outer)/s.cos, (s.lineAt-cut.Front().Inner)/s.cos
	if j.RoofStraps.Under { // plumb below a point of the top edge lies farther down the slope
		from, to = from+j.Rafters.Section.Depth*s.tan, to+j.Rafters.Section.Depth*s.tan
	}
	return from, to
}

// tied is how far from the faces of plate and beam the straps of the rafters'
// ends reach along their top edges.
func (s Setout) tied(j *Job) float64 {
	reach := 0.0
	for _, k := range s.Carriers {
		if strap := j.Rafters.Strap; strap.Width > 0 && !j.RoofStraps.Under && k.Hold.housed() {
			reach = max(reach, strap.Length/2)
		}
	}
	return reach
}

// The hardware of diagonal straps.
const (
	DiagonalStrap HardwareKind = "diagonal strap"
	Tensioner     HardwareKind = "strap tensioner"

	UseRoofStrap = "across the rafters"
)

// strapsAcross is the metal of the diagonal straps.
func (f *Frame) strapsAcross() []Hardware {
	r := f.Job.RoofStraps
	face := FaceTop
	if r.Under {
		face = FaceBottom
	}
	rafters := f.Of(KindRafter)
	first := f.indexOf(KindRafter)
	var out []Hardware
	for _, run := range f.Setout.RoofStraps {
		var spots []Spot
		for _, x := range run.Crosses {
			at := rafters[x.Rafter-1].Place.Local(x.At).X
			spots = append(spots, Spot{Member: first + x.Rafter - 1, Face: face, At: at, Span: x.Span})
		}
		between := len(spots) - 2
		out = append(out,
			Hardware{DiagonalStrap, HardwareSize{Width: r.Width, Thickness: r.Thickness, Length: run.Length}, UseRoofStrap, 1, spots},
			Hardware{Tensioner, HardwareSize{}, UseRoofStrap, 1, spots[:1]},
			Hardware{StrapNail, HardwareSize{}, UseRoofStrap, 2*r.EndNails + between*r.Nails, spots},
		)
	}
	return out
}

// indexOf is the index of the first member of a kind.
func (f *Frame) indexOf(k Kind) int {
	for i, m := range f.Members {
		if m.Kind == k {
			return i
		}
	}
	return -1
}
