package template_test

import (
	"fmt"
	"math"
	"regexp"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// What a template shows beside its cuts: arrows, ticks for timber that is a little
// under or over, places of straps, screws of battens. Each is folded back on to
// the timber and compared with the model.

// marks runs all these checks.
func (p *pattern) marks(f *frame.Frame, t frame.Member, leaves []*leafOf, u float64) error {
	if err := p.arrowsTrue(t, leaves); err != nil {
		return err
	}
	if err := p.ticksTrue(f, t, leaves); err != nil {
		return err
	}
	if err := p.crossTrue(t, leaves); err != nil {
		return err
	}
	if strapWords.MatchString(p.head) {
		if err := p.strapsTrue(f, t, leaves); err != nil {
			return err
		}
	}
	if p.title == "Screws of the battens" {
		return p.screwsTrue(f, t, leaves, u)
	}
	return nil
}

// arrowsTrue sees that every arrow on a face points where its words say.
func (p *pattern) arrowsTrue(t frame.Member, leaves []*leafOf) error {
	const nearest = 0.3 // battens lie aslope; to another face it would be 0 or less
	house := t.Place.LocalDir(geom.V(0, 1, 0))
	for words, want := range map[string]geom.Vec{
		"this side up": geom.V(0, 0, 1), "to the top": geom.V(0, 0, 1), "to the house": house,
		"to the left end": geom.V(-1, 0, 0), "to the house end": geom.V(-1, 0, 0), "to the bottom": geom.V(-1, 0, 0),
		"left end": geom.V(-1, 0, 0), "house end": geom.V(-1, 0, 0), "bottom": geom.V(-1, 0, 0),
	} {
		for _, f := range leaves {
			dir, ok := p.arrowTo(f, words)
			if got := f.right.Mul(dir.X).Add(f.up.Mul(dir.Y)); ok && got.Dot(want) < nearest {
				return fmt.Errorf("on %s the arrow %q points to %v of the timber, want %v", f.name, words, got, want)
			}
		}
	}
	return nil
}

var arrisWords = regexp.MustCompile(`The datum cross is [^.]*\b(top|bottom) (left|right) arris`)

// crossTrue sees that the datum cross lies on the arris that the words name.
func (p *pattern) crossTrue(t frame.Member, leaves []*leafOf) error {
	m := arrisWords.FindStringSubmatch(p.head)
	if m == nil {
		return nil
	}
	y := map[string]float64{"left": 0, "right": t.Section.Width}[m[2]]
	z := map[string]float64{"bottom": 0, "top": t.Section.Depth}[m[1]]
	c, _ := p.cross()
	for _, f := range leaves {
		if !p.holdsCross(f) {
			continue
		}
		if at := f.timber(c); math.Abs(at.Y-y) > tolerance || math.Abs(at.Z-z) > tolerance {
			return fmt.Errorf("the datum cross lies at %v, not on the %s %s arris", at, m[1], m[2])
		}
	}
	return nil
}

var tickWords = regexp.MustCompile(`Ticks beside the cut: for a (rafter|beam|batten) of (.+?), (.+?) and (.+?)\.(?: |$)`)

// tickLong is the length of a tick at another size than the stated one, mm.
const tickLong = 5.0

// ticksTrue finds each tick where the cut goes for the size beside it: the side of
// a housing or check that keeps its clearance, the edge of a post's seat.
func (p *pattern) ticksTrue(f *frame.Frame, t frame.Member, leaves []*leafOf) error {
	m := tickWords.FindStringSubmatch(p.head)
	if m == nil {
		return nil
	}
	found := map[string]bool{}
	for _, l := range p.lines {
		if !l.edge() || math.Abs(l.b.Sub(l.a).Len()-tickLong) > near {
			continue
		}
		for _, figure := range []string{m[2], m[4]} {
			if !p.wordAt(l.a.Lerp(l.b, 0.5), figure) {
				continue
			}
			size, err := millimetres(figure)
			if err != nil {
				return err
			}
			for _, face := range leaves {
				if !inBox(l.a.Lerp(l.b, 0.5), face.box) {
					continue
				}
				if off := tickOff(f, t, m[1], size, face.timber(l.a)); off > tolerance {
					return fmt.Errorf("the tick for a %s of %s stands %.3f off", m[1], figure, off)
				}
				found[figure] = true
			}
		}
	}
	if !found[m[2]] || !found[m[4]] {
		return fmt.Errorf("it speaks of ticks for %s and %s, and has %v", m[2], m[4], found)
	}
	return nil
}

// wordAt reports whether a word stands close beside a place.
func (p *pattern) wordAt(q geom.Pt, words string) bool {
	const gap = 1.6 // mm
	for _, w := range p.words {
		if w.text != words {
			continue
		}
		t := draw.Text{At: w.at, Height: 2.5, String: w.text}
		if w.turned {
			t.Turn = math.Pi / 2
		}
		quad := t.Quad()
		if draw.Bounds(quad[:]...).Expand(gap).Contains(q) {
			return true
		}
	}
	return false
}

// tickOff is how far from a place the cut lies for another timber of a size.
func tickOff(f *frame.Frame, t frame.Member, what string, size float64, at geom.Vec) float64 {
	if what == "beam" {
		return math.Abs(at.Z - size)
	}
	best := math.Inf(1)
	for _, x := range t.Features {
		var mid, clear float64
		switch x := x.(type) {
		case frame.Housing:
			mid, clear = x.At, f.Job.Rafters.Clearance
		case frame.Check:
			mid, clear = x.At, f.Job.Battens.Check.Clearance
		default:
			continue
		}
		best = min(best, math.Abs(math.Abs(at.X-mid)-(size+clear)/2))
	}
	return best
}

var strapWords = regexp.MustCompile(`where the strap lies`)

// strapsTrue finds each long dash on a side of a strap.
func (p *pattern) strapsTrue(f *frame.Frame, t frame.Member, leaves []*leafOf) error {
	outline := strapSides(f, t)
	n := 0
	for _, l := range p.lines {
		for _, face := range leaves {
			if !l.mark() || !inBox(l.a.Lerp(l.b, 0.5), face.box) {
				continue
			}
			n++
			a, b := face.timber(l.a), face.timber(l.b)
			best := math.Inf(1)
			for _, o := range outline {
				best = min(best, max(off(a, o), off(b, o)))
			}
			if best > tolerance {
				return fmt.Errorf("the mark from %v to %v on %s is %.3f off every strap", a, b, face.name, best)
			}
		}
	}
	if n == 0 {
		return fmt.Errorf("it speaks of a strap and marks none")
	}
	return nil
}

// strapSides are the sides of the straps on a stick: where it lies over what it is
// tied to, a strap is bent over its top edge; at its end, it lies along the
// middle of that; and on a carrier it lies across.
func strapSides(f *frame.Frame, t frame.Member) [][2]geom.Vec {
	var out [][2]geom.Vec
	for _, h := range f.Hardware() {
		for _, s := range h.Spots {
			on := f.Members[s.Member]
			if h.Kind != frame.StrapTie || stickOf(on) != stickOf(t) || s.Face != frame.FaceTop {
				continue
			}
			a, b, w, d := s.At-s.Span/2, s.At+s.Span/2, t.Section.Width, t.Section.Depth
			v0, v1 := 0.0, w
			if t.Kind == frame.KindRafter && s.Span > f.Job.Rafters.Strap.Width+tolerance {
				v0, v1 = (w-h.Size.Width)/2, (w+h.Size.Width)/2
				out = append(out, [2]geom.Vec{geom.V(a, v0, d), geom.V(b, v0, d)}, [2]geom.Vec{geom.V(a, v1, d), geom.V(b, v1, d)})
			} else if t.Kind == frame.KindRafter {
				for _, u := range []float64{a, b} {
					out = append(out, [2]geom.Vec{geom.V(u, 0, 0), geom.V(u, 0, d)}, [2]geom.Vec{geom.V(u, w, 0), geom.V(u, w, d)})
				}
			}
			out = append(out, [2]geom.Vec{geom.V(a, v0, d), geom.V(a, v1, d)}, [2]geom.Vec{geom.V(b, v0, d), geom.V(b, v1, d)})
		}
	}
	return out
}

// screwsTrue finds the screws of a batten on the rafter's middle, spread evenly
// over the width, and the rafter's sides.
func (p *pattern) screwsTrue(f *frame.Frame, t frame.Member, leaves []*leafOf, u float64) error {
	each, half := f.Job.Battens.Screws.Each, f.Job.Rafters.Section.Width/2
	found := make([]bool, each)
	for _, face := range leaves {
		for _, l := range p.lines {
			mid := face.timber(l.a.Lerp(l.b, 0.5))
			if l.mark() && inBox(l.a.Lerp(l.b, 0.5), face.box) && math.Abs(math.Abs(mid.X-u)-half) > tolerance {
				return fmt.Errorf("a side of the rafter is marked at %.3f, want %.3f or %.3f", mid.X, u-half, u+half)
			}
			for i := range found {
				v := t.Section.Width * (float64(i) + 0.5) / float64(each)
				short := l.dashes == 4 && l.b.Sub(l.a).Len() < 20 // of the cross of a screw
				if face.name == "TOP" && short && math.Abs(mid.X-u) < tolerance && math.Abs(mid.Y-v) < tolerance {
					found[i] = true
				}
			}
		}
	}
	for i, ok := range found {
		if !ok {
			return fmt.Errorf("screw %d of %d is not where it should be", i+1, each)
		}
	}
	return nil
}
