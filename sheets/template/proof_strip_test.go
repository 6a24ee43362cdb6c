package template_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
	"plumbcut/sheets"
)

// Marking strips: what they mark, what they say, and that nothing is left out.

// strip reports whether a pattern is one.
func (p *pattern) strip() bool { return strings.HasPrefix(p.title, "Marking strip") }

// alongTimber is where the middle of a rafter at x meets a plate or beam: of one
// that is turned, on its house side.
func alongTimber(t frame.Member, x float64) float64 {
	house := 0.0
	if t.Place.U.Y != 0 {
		house = t.Section.Width
	}
	return (x - t.Place.O.X - t.Place.V.X*house) / t.Place.U.X
}

// place is one that a member's running dimensions give.
type place struct {
	at   float64
	hole bool
}

// runningPlaces are both sides and the middle of each rafter's place on a plate
// or beam, as wide as its housing if it has one, as far as they are on the timber;
// and holes.
// Bolts are left out: their patterns carry them.
func runningPlaces(f *frame.Frame, t frame.Member) []place {
	var out []place
	for _, x := range f.Setout.Rafters {
		if !holdsRafters(f, t) {
			break
		}
		u := alongTimber(t, x)
		half := f.Job.Rafters.Section.Width / 2 / t.Place.U.X
		for _, c := range t.Features {
			if h, ok := c.(frame.Housing); ok && math.Abs(h.At-u) < 1e-6 {
				half = h.Width / 2
			}
		}
		for _, v := range []float64{u - half, u, u + half} {
			if v > 1e-6 && v < t.Length-1e-6 {
				out = append(out, place{at: v})
			}
		}
	}
	for _, x := range t.Features {
		if h, ok := x.(frame.Hole); ok && h.Use != frame.UseBolt {
			out = append(out, place{h.Mouth.X, true})
		}
	}
	return out
}

// holdsRafters reports whether rafters come to a plate or beam: not to the outer
// one of twin beams of which the inner holds them.
func holdsRafters(f *frame.Frame, t frame.Member) bool {
	for _, j := range f.Joints {
		if j.B >= 0 && f.Members[j.B].Kind == t.Kind && f.Members[j.B].No == t.No && f.Members[j.A].Kind == frame.KindRafter {
			return true
		}
	}
	return false
}

func placeKey(mark string, u float64) string { return fmt.Sprintf("%s %.2f", mark, u) }

// TestStripsCarryTheRunningFigures: laid at any of its readings, a strip has its
// marks where the timber's running dimensions are, and the figures that it prints
// for that reading are theirs. Between them the strips carry both sides and the
// middle of every rafter's place; a hole that none carries has a template that is
// laid on it.
func TestStripsCarryTheRunningFigures(t *testing.T) {
	each(t, func(t *testing.T, m made) {
		carried := map[string]int{}
		for _, p := range m.patterns {
			runs := p.runs()
			for _, pl := range p.placings() {
				for _, r := range pl.readings {
					var err error
					switch {
					case p.strip() && len(runs) > 0:
						err = readStrip(m.frame, p, pl.at(r), runs[0], carried)
						runs = runs[1:]
					case p.strip():
						err = readStrip(m.frame, p, pl.at(r), "", carried)
					case strings.Contains(strings.ToLower(p.title), "hole"):
						err = noteHole(m.frame, pl.at(r), carried)
					}
					if err != nil {
						t.Errorf("%s on %s at %s: %v", p.number, pl.mark, r, err)
					}
				}
			}
			if len(runs) > 0 {
				t.Errorf("%s lists figures of places that it is not laid at: %v", p.number, runs)
			}
		}
		for _, kind := range []frame.Kind{frame.KindPlate, frame.KindBeam} {
			for _, stick := range m.frame.Of(kind) {
				for _, u := range runningPlaces(m.frame, stick) {
					if carried[placeKey(stick.Mark, u.at)] == 0 {
						t.Errorf("nothing carries the mark of %s at %.2f", stick.Mark, u.at)
					}
				}
			}
		}
	})
}

// at is the placing at one of its readings.
func (pl placing) at(reading string) placing {
	pl.readings = []string{reading}
	return pl
}

// runs are the running figures that a strip lists for each of its readings.
func (p *pattern) runs() []string {
	i := slices.IndexFunc(p.said, func(s string) bool { return strings.HasSuffix(s, "end to end.") })
	if i < 0 || !p.strip() {
		return nil
	}
	var out []string
	for _, s := range p.said[i+1:] {
		for _, run := range strings.Split(s, "   ·   ") {
			if _, after, ok := strings.Cut(run, ": "); ok {
				run = after
			}
			out = append(out, run)
		}
	}
	return out
}

// noteHole notes the hole that a template is laid on.
func noteHole(f *frame.Frame, pl placing, carried map[string]int) error {
	t, ok := memberOf(f, pl.mark)
	if !ok {
		return fmt.Errorf("there is no such stick")
	}
	u, err := millimetres(pl.readings[0])
	if err != nil {
		return err
	}
	carried[placeKey(t.Mark, exact(f, t, u))]++
	return nil
}

var stripFigure = regexp.MustCompile(`^([\d.' /"]+?)(?: screw| anchor| rod| bolt)*$`)

// readStrip lays a strip on its timber and reads its figures: from the list, if
// there is one, in the order of the marks; else those beside the marks.
func readStrip(f *frame.Frame, p *pattern, pl placing, run string, carried map[string]int) error {
	t, ok := memberOf(f, pl.mark)
	if !ok {
		return fmt.Errorf("there is no such stick")
	}
	u, err := millimetres(pl.readings[0])
	if err != nil {
		return err
	}
	leaves, err := p.folded(t, exact(f, t, u), pl.from)
	if err != nil {
		return err
	}
	marks := p.marksOn(leaves)
	if len(marks) == 0 {
		return fmt.Errorf("it has no marks")
	}
	said := make([]string, len(marks))
	if run != "" {
		if said = strings.Split(run, " – "); len(said) != len(marks) {
			return fmt.Errorf("%d marks, and the figures %v", len(marks), said)
		}
	}
	figures := measure.Format{Units: f.Job.Units, Step: 0.5, Fraction: 32} // as on the member drawings
	for i, k := range marks {
		exactly := math.Inf(1)
		for _, place := range runningPlaces(f, t) {
			if math.Abs(place.at-k.at) < math.Abs(exactly-k.at) {
				exactly = place.at
			}
		}
		if math.Abs(exactly-k.at) > tolerance {
			return fmt.Errorf("a mark stands at %.3f, the nearest place at %.3f", k.at, exactly)
		}
		if run == "" {
			said[i] = p.figureBeside(k)
		}
		figure := stripFigure.FindStringSubmatch(said[i])
		if want := figures.Length(exactly); figure == nil || strings.TrimSpace(figure[1]) != want {
			return fmt.Errorf("the mark at %.3f says %q, want %s", exactly, said[i], want)
		}
		carried[placeKey(t.Mark, exactly)]++
	}
	return nil
}

// markOn is a mark across the upright face of a strip.
type markOn struct {
	at    float64 // along the timber
	on    geom.Pt
	along geom.Pt // the timber's length on the paper
}

// marksOn are a strip's marks, in order along the timber.
func (p *pattern) marksOn(leaves []*leafOf) []markOn {
	const long = 30 // mm: shorter lines are those of crosses
	var out []markOn
	for _, l := range p.lines {
		for _, f := range leaves {
			along := geom.P(f.right.X, f.up.X)
			if !(l.mark() || l.dashes == 4) || l.b.Sub(l.a).Len() < long || math.Abs(l.b.Sub(l.a).Dot(along)) > near ||
				f.name == "TOP" || !inBox(l.a.Lerp(l.b, 0.5), f.box) {
				continue
			}
			out = append(out, markOn{f.timber(l.a).X, l.a, along})
		}
	}
	slices.SortFunc(out, func(a, b markOn) int { return int(math.Copysign(1, a.at-b.at)) })
	return out
}

// figureBeside is the figure nearest to a mark, running along it.
func (p *pattern) figureBeside(k markOn) string {
	best, words := 6.0, ""
	for _, w := range p.words {
		if stripFigure.MatchString(w.text) && w.turned == (k.along.X != 0) {
			if gap := w.beside(k.on, k.along); gap < best {
				best, words = gap, w.text
			}
		}
	}
	return words
}

// beside is how far the words are from a place along a direction across them.
func (w word) beside(q, along geom.Pt) float64 {
	t := draw.Text{At: w.at, Height: 2.5, String: w.text}
	if w.turned {
		t.Turn = math.Pi / 2
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range t.Quad() {
		d := c.Sub(q).Dot(along)
		lo, hi = min(lo, d), max(hi, d)
	}
	return max(lo, -hi)
}

// TestStripsSayWhatTheMemberDrawingsSay: each running figure on a strip of the
// examples stands on the drawing of that member, too.
func TestStripsSayWhatTheMemberDrawingsSay(t *testing.T) {
	each(t, func(t *testing.T, m made) {
		if strings.HasPrefix(m.name, "seed") {
			t.Skip("only the examples")
		}
		set, err := sheets.Make(m.frame)
		if err != nil {
			t.Fatal(err)
		}
		drawn := map[string]bool{}
		for _, s := range set.Sheets {
			if !strings.Contains(strings.ToLower(s.Title), "member") {
				continue
			}
			for _, d := range s.Dims {
				drawn[d.Figure] = true
			}
		}
		n := 0
		for _, p := range m.patterns {
			if !p.strip() {
				continue
			}
			var said []string
			for _, run := range p.runs() {
				said = append(said, strings.Split(run, " – ")...)
			}
			for _, w := range p.words {
				said = append(said, w.text)
			}
			for _, s := range said {
				if f := stripFigure.FindStringSubmatch(s); f != nil {
					n++
					if !drawn[strings.TrimSpace(f[1])] {
						t.Errorf("%s: the figure %s is on no member drawing", p.number, f[1])
					}
				}
			}
		}
		if n == 0 {
			t.Error("no strip carries a figure")
		}
	})
}
