package template_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// That nothing is cut, drilled or strapped that no template marks.

// mouth is where a hole is drilled, in the timber's axes.
type mouth struct {
	at, n geom.Vec
	r     float64
}

// laid is what all templates together mark on a stick, in its axes.
type laid struct {
	cuts   [][2]geom.Vec
	marks  [][2]geom.Vec // that are not cut
	mouths []mouth
}

// coverage is what templates mark, by stick.
type coverage map[string]*laid

func stickOf(t frame.Member) string { return t.Mark + string(t.Hand) }

func (s coverage) note(c *comparison) {
	l := s[stickOf(c.t)]
	if l == nil {
		l = &laid{}
		s[stickOf(c.t)] = l
	}
	l.cuts, l.mouths = append(l.cuts, c.cuts...), append(l.mouths, c.mouths...)
	for _, x := range c.p.lines {
		if f := c.leafAt(x.a.Lerp(x.b, 0.5)); x.mark() && f != nil {
			l.marks = append(l.marks, [2]geom.Vec{f.timber(x.a), f.timber(x.b)})
		}
	}
}

// noTemplate says why a kind of member needs none.
var noTemplate = map[frame.Kind]string{frame.KindFooting: "it is poured, not cut"}

// missing lists the features of the frame, and the straps, that no template marks.
func (s coverage) missing(f *frame.Frame) []string {
	var out []string
	done := map[string]bool{}
	for i, t := range f.Members {
		if noTemplate[t.Kind] != "" || done[stickOf(t)] {
			continue
		}
		done[stickOf(t)] = true
		l := s[stickOf(t)]
		if l == nil {
			l = &laid{}
		}
		for _, x := range t.Features {
			if !l.marksFeature(t, x) {
				out = append(out, fmt.Sprintf("%s: no template marks the %s at %.1f", t.Mark, x.Figures().Kind, x.Figures().At))
			}
		}
		for _, h := range f.Hardware() {
			for _, spot := range h.Spots {
				if h.Kind == frame.StrapTie && spot.Member == i && spot.Face == frame.FaceTop && !l.marksStrap(spot) {
					out = append(out, fmt.Sprintf("%s: no template marks where the strap lies at %.1f", t.Mark, spot.At))
				}
			}
		}
	}
	return out
}

// marksFeature reports whether the mouth of each of a feature's holes is drawn,
// and a line along what else it takes off.
func (l *laid) marksFeature(t frame.Member, x frame.Feature) bool {
	for _, b := range x.Bores(t) {
		if !slices.ContainsFunc(l.mouths, func(m mouth) bool {
			aside := m.at.Sub(b.At)
			aside = aside.Sub(b.Dir.Mul(aside.Dot(b.Dir)))
			return aside.Len() < tolerance && math.Abs(math.Abs(m.n.Dot(b.Dir))-1) < 1e-9 && math.Abs(m.r-b.Radius) < tolerance
		}) {
			return false
		}
	}
	taken := t.Taken(x)
	return len(taken) == 0 || slices.ContainsFunc(taken, func(s geom.Solid) bool {
		for _, f := range s.Faces() {
			for _, loop := range f.Loops {
				for i, a := range loop {
					edge := [2]geom.Vec{a, loop[(i+1)%len(loop)]}
					if slices.ContainsFunc(l.cuts, func(c [2]geom.Vec) bool {
						return off(c[0], edge) < tolerance && off(c[1], edge) < tolerance && c[1].Sub(c[0]).Len() > 2*tolerance
					}) {
						return true
					}
				}
			}
		}
		return false
	})
}

// marksStrap reports whether a line is drawn across the timber at an end of a
// strap, as far as it lies on it.
func (l *laid) marksStrap(s frame.Spot) bool {
	return slices.ContainsFunc(l.marks, func(m [2]geom.Vec) bool {
		return math.Abs(m[0].X-m[1].X) < tolerance &&
			(math.Abs(m[0].X-s.At-s.Span/2) < tolerance || math.Abs(m[0].X-s.At+s.Span/2) < tolerance)
	})
}

// TestEveryKindOfCutIsProven: the jobs that the proofs go through have every kind
// of cut and of hole that there is, so that none is proven by being absent.
func TestEveryKindOfCutIsProven(t *testing.T) {
	all, err := corpus()
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]int{}
	for _, m := range all {
		for _, stick := range m.frame.Members {
			for _, x := range stick.Features {
				found[strings.TrimSuffix(x.Figures().Kind, " through")]++
			}
		}
		for _, h := range m.frame.Hardware() {
			if h.Kind == frame.StrapTie {
				found["strap"] += len(h.Spots)
			}
		}
	}
	for _, kind := range []string{
		"housing", "birdsmouth", "level seat", "level seat with shoulder", "plumb cut", "level cut", "skew cut", "compound cut", "bevelled tail",
		"ogee end", "quarter round end", "profile end", "chamfer", "check-out", "check", "brace housing",
		"bolt hole", "rod hole", "screw hole", "anchor hole", "strap",
	} {
		if found[kind] == 0 {
			t.Errorf("no job has a %s", kind)
		}
		delete(found, kind)
	}
	for kind := range found {
		if kind != "socket" && kind != "weathering" { // of the footings
			t.Errorf("%s is a kind that this test does not know", kind)
		}
	}
}

// TestCrossingsAreMarked: wherever a batten crosses a rafter, or a lath a batten,
// the template of its screws is laid.
func TestCrossingsAreMarked(t *testing.T) {
	each(t, func(t *testing.T, m made) {
		for i, stick := range m.frame.Members {
			title := map[frame.Kind]string{frame.KindBatten: "Screws of the battens", frame.KindLath: "Screws of the laths"}[stick.Kind]
			if title == "" {
				continue
			}
			for _, j := range m.frame.Joints {
				if j.A != i || j.Kind != frame.JointBattenRafter && j.Kind != frame.JointLathBatten {
					continue
				}
				if at := stick.Place.Local(j.At).X; !m.laidAt(title, stick, at) {
					t.Errorf("no template of the screws of %s is laid at %.1f", stick.Mark, at)
				}
			}
		}
	})
}

// laidAt reports whether a template is laid on a stick with its cross at a place.
func (m made) laidAt(title string, stick frame.Member, at float64) bool {
	for _, p := range m.patterns {
		if p.title != title {
			continue
		}
		for _, pl := range p.placings() {
			if t, ok := memberOf(m.frame, pl.mark); !ok || stickOf(t) != stickOf(stick) {
				continue
			}
			for _, r := range pl.readings {
				if u, err := millimetres(r); err == nil && math.Abs(u-at) <= roundingOf(m.frame)+1e-6 {
					return true
				}
			}
		}
	}
	return false
}

// curveTolerance is how far from a true curve its template may run, mm.
const curveTolerance = 0.02

// TestTailsAreTrueCurves: every point of the arcs of a shaped end lies on its
// template's line, and every point of that on an arc or one of the straight lines
// between.
func TestTailsAreTrueCurves(t *testing.T) {
	each(t, func(t *testing.T, m made) {
		seen := coverage{}
		for _, p := range m.patterns {
			for _, pl := range p.placings() {
				if strings.Contains(p.title, "end of the rafters") {
					if err := lift(m.frame, p, pl, pl.readings[0], seen); err != nil {
						t.Fatal(err)
					}
				}
			}
		}
		for _, stick := range m.frame.Members {
			if stick.No > 1 {
				continue
			}
			for _, x := range stick.Features {
				if s, ok := x.(frame.Shape); ok {
					if err := seen.curve(stick, s); err != nil {
						t.Errorf("%s: the %s end: %v", stick.Mark, s.Name, err)
					}
				}
			}
		}
	})
}

// curve compares what is drawn on a side of a stick with the arcs of its end.
func (s coverage) curve(t frame.Member, end frame.Shape) error {
	l := s[stickOf(t)]
	if l == nil {
		return fmt.Errorf("no template of the end")
	}
	for _, v := range []float64{0, t.Section.Width} {
		for i, q := range end.Points {
			r := q.Radius()
			p := frame.EndPoint{}
			if i > 0 {
				p = end.Points[i-1]
			}
			for n := range 401 {
				back, down := onArc(p, q, r, float64(n)/400)
				at := geom.V(end.Along(back), v, t.Section.Depth-down)
				best := math.Inf(1)
				for _, c := range l.cuts {
					best = min(best, off(at, c))
				}
				if best > curveTolerance {
					return fmt.Errorf("%.4f off at %.2f back and %.2f down", best, back, down)
				}
			}
		}
	}
	return nil
}

// onArc is a part of the way from p to q, straight or along the shorter arc of a
// radius: by the chord and the height over it alone.
func onArc(p, q frame.EndPoint, r, part float64) (back, down float64) {
	dx, dy := q.Back-p.Back, q.Down-p.Down
	if r == 0 {
		return p.Back + part*dx, p.Down + part*dy
	}
	long := math.Hypot(dx, dy)
	half := math.Asin(min(1, long/2/r))
	turn := half * (2*part - 1) // from the middle of the arc
	along := long/2 + r*math.Sin(turn)
	rise := r*math.Cos(turn) - r*math.Cos(half)
	// To the outside of the timber: the waste lies left of the way from the top
	// edge down, back being counted into the timber.
	nx, ny := -dy/long, dx/long
	if q.Hollow > 0 {
		rise = -rise
	}
	return p.Back + along*dx/long + rise*nx, p.Down + along*dy/long + rise*ny
}
