package template_test

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
)

// What every page must have before anybody trusts it.

// paperSizes are those of ISO 216 and of the ANSI series, upright, mm.
var paperSizes = map[string]geom.Pt{
	"A4": geom.P(210, 297), "A3": geom.P(297, 420), "A2": geom.P(420, 594), "A1": geom.P(594, 841),
	"Letter": geom.P(8.5*25.4, 11*25.4), "Tabloid": geom.P(11*25.4, 17*25.4),
}

// barTolerance is how true a check bar must be in the file, mm; boxTolerance,
// that of a page: two decimals of a point.
const (
	barTolerance = 0.01
	boxTolerance = 0.004
)

func TestPagesCanBeTrusted(t *testing.T) {
	each(t, func(t *testing.T, m made) {
		job := m.frame.Job
		k := geom.P(150/job.Printer.X, 150/job.Printer.Y)
		for i, s := range m.pages {
			fail := func(format string, args ...any) {
				t.Errorf("page %d: %s", i+1, fmt.Sprintf(format, args...))
			}
			if size, ok := paperSizes[job.Templates.Paper]; ok && (math.Abs(s.w-size.X) > boxTolerance || math.Abs(s.h-size.Y) > boxTolerance) {
				fail("%.3f × %.3f, want %s", s.w, s.h, job.Templates.Paper)
			}
			if job.Templates.Paper == "" && math.Abs(s.w-job.Templates.Roll) > boxTolerance {
				fail("%.3f wide, the roll is %.1f", s.w, job.Templates.Roll)
			}
			checkBars(s, k, fail)
			checkMargin(s, job.Templates.Margin, fail)
			all := ""
			for _, w := range s.words {
				all += w.text + "\n"
			}
			words := []string{
				"Print at 100 %, then measure", "pass", "warn", "reject", job.Project.Status,
				fmt.Sprintf("page %d of %d", i+1, len(m.pages)), "150 mm", "6 in",
			}
			if job.Printer.Corrects() {
				words = append(words, "FOR ONE PRINTER ONLY", fmt.Sprintf("%g mm", job.Printer.X), fmt.Sprintf("%g mm", job.Printer.Y))
			}
			for _, w := range words {
				if !strings.Contains(all, w) {
					fail("it does not say %q", w)
				}
			}
		}
	})
}

// checkBars measures the bars, their bands and the diagonals. k is what the
// printer's correction draws larger by, across and up.
func checkBars(s sheetOfPaper, k geom.Pt, fail func(string, ...any)) {
	var level *line
	for i := range s.lines {
		for j := range s.lines {
			a, b := &s.lines[i], &s.lines[j]
			if a.trim() && b.trim() && a.level() && b.plumb() && a.a.Sub(b.a).Len() < 1e-9 &&
				math.Abs(a.b.Sub(a.a).Len()-152.4*k.X) < barTolerance && math.Abs(b.b.Sub(b.a).Len()-152.4*k.Y) < barTolerance {
				level = a
			}
		}
	}
	if level == nil {
		fail("no two bars of 6 inches that start at one point")
		return
	}
	o := level.a
	// The ticks at 150 mm, which stand out beyond the bands.
	for _, dir := range []geom.Pt{geom.P(1, 0), geom.P(0, 1)} {
		long := 150 * (dir.X*k.X + dir.Y*k.Y)
		found := false
		for _, l := range s.lines {
			foot := o.Add(dir.Mul(long))
			if l.trim() && l.a.Sub(foot).Len() < barTolerance && l.b.Sub(l.a).Len() > 3.5 && math.Abs(l.b.Sub(l.a).Dot(dir)) < 1e-9 {
				found = true
			}
		}
		if !found {
			fail("no tick %.3f from the zero towards %v", long, dir)
		}
		for _, w := range []struct {
			part  float64
			black bool
		}{{0.0025, true}, {0.005, false}} {
			lo, hi := long*(1-w.part), long*(1+w.part)
			if !hasBand(s, o, dir, lo, hi, w.black) {
				fail("no band from %.3f to %.3f towards %v, black %v", lo, hi, dir, w.black)
			}
		}
	}
	checkDiagonals(s, o, k, fail)
}

// hasBand finds a filled rectangle that reaches from one distance to another.
func hasBand(s sheetOfPaper, o, dir geom.Pt, lo, hi float64, black bool) bool {
	for _, a := range s.areas {
		from, to := math.Inf(1), math.Inf(-1)
		for _, p := range a.pts {
			d := p.Sub(o).Dot(dir)
			from, to = min(from, d), max(to, d)
		}
		if a.black == black && math.Abs(from-lo) < barTolerance && math.Abs(to-hi) < barTolerance {
			return true
		}
	}
	return false
}

var diagonalWords = regexp.MustCompile(`between the crosses, (.+) each\.`)

// checkDiagonals finds the four crosses of a rectangle and compares what the
// page says of its diagonals.
func checkDiagonals(s sheetOfPaper, o, k geom.Pt, fail func(string, ...any)) {
	var crosses []geom.Pt
	for _, a := range s.lines {
		for _, b := range s.lines {
			if a.trim() && b.trim() && a.level() && b.plumb() && math.Abs(a.b.Sub(a.a).Len()-4*k.X) < barTolerance &&
				math.Abs(b.b.Sub(b.a).Len()-4*k.Y) < barTolerance && a.a.Lerp(a.b, 0.5).Sub(b.a.Lerp(b.b, 0.5)).Len() < barTolerance {
				crosses = append(crosses, a.a.Lerp(a.b, 0.5))
			}
		}
	}
	if len(crosses) != 4 {
		fail("%d check crosses, want 4", len(crosses))
		return
	}
	far := o
	for _, c := range crosses {
		if c.Sub(o).Len() > far.Sub(o).Len() {
			far = c
		}
		if math.Abs(c.X-o.X) > barTolerance && math.Abs(c.Y-o.Y) > barTolerance && (c.X < o.X+150*k.X || c.Y < o.Y+150*k.Y) {
			fail("the check crosses are nearer than a bar is long")
		}
	}
	d := far.Sub(o)
	true1 := math.Hypot(d.X/k.X, d.Y/k.Y) // as printed
	for _, w := range s.words {
		if m := diagonalWords.FindStringSubmatch(w.text); m != nil {
			said, err := millimetres(m[1])
			if err != nil || math.Abs(said-true1) > 0.5 {
				fail("it says that a diagonal is %s, it is %.2f", m[1], true1)
			}
			return
		}
	}
	fail("it does not say how long a diagonal is")
}

// checkMargin sees that nothing lies where the printer cannot print.
func checkMargin(s sheetOfPaper, margin float64, fail func(string, ...any)) {
	in := func(p geom.Pt, r float64, what string) {
		if p.X-r < margin-0.005 || p.Y-r < margin-0.005 || p.X+r > s.w-margin+0.005 || p.Y+r > s.h-margin+0.005 {
			fail("%s at %v lies within %.1f of the edge", what, p, margin)
		}
	}
	for _, l := range s.lines {
		in(l.a, l.width/2, "a line")
		in(l.b, l.width/2, "a line")
	}
	for _, c := range s.circles {
		in(c.c, max(c.r.X, c.r.Y)+c.width/2, "a circle")
	}
	for _, a := range s.areas {
		for _, p := range a.pts {
			in(p, 0, "an area")
		}
	}
	em := 0.0 // of words 2.5 mm high
	for _, w := range s.words {
		if strings.HasPrefix(w.text, "Print at 100 %, then") {
			em = w.height
		}
	}
	for _, w := range s.words {
		t := draw.Text{At: w.at, Height: 2.5 * w.height / em, String: w.text, Bold: w.height > em*1.1}
		if w.turned {
			t.Turn = math.Pi / 2
		}
		for _, q := range t.Quad() {
			in(q, 0, "the word "+w.text)
		}
	}
}

// TestEndsAreNotInterchangeable: the template of the housing at the left end of
// the example's plate does not lie on the right end, nor that of the rafters'
// house end on their outer end.
func TestEndsAreNotInterchangeable(t *testing.T) {
	text, err := os.ReadFile("../../examples/courtyard/courtyard.yaml")
	if err != nil {
		t.Fatal(err)
	}
	m, err := make1("courtyard.yaml", text)
	if err != nil {
		t.Fatal(err)
	}
	byTitle := map[string]*pattern{}
	for _, p := range m.patterns {
		byTitle[p.title] = p
	}
	for _, c := range [][2]string{
		{"Housing in the wall plate, at its left end", "Housing in the wall plate, at its right end"},
		{"Housing in the beam, at its right end", "Housing in the beam, at its left end"},
		{"House end of the rafters", "Outer end of the rafters"},
		{"Outer end of the rafters", "House end of the rafters"},
	} {
		p, other := byTitle[c[0]], byTitle[c[1]]
		if p == nil || other == nil {
			t.Errorf("%v are not both there", c)
			continue
		}
		own, wrong := p.placings()[0], other.placings()[0]
		if err := lift(m.frame, p, own, own.readings[0], coverage{}); err != nil {
			t.Errorf("%s does not lie on its own place: %v", c[0], err)
		}
		if err := lift(m.frame, p, wrong, wrong.readings[0], coverage{}); err == nil {
			t.Errorf("%s lies on the place of %s too", c[0], c[1])
		}
	}
}

// TestBevelCardIsTheFall measures the angles on the card.
func TestBevelCardIsTheFall(t *testing.T) {
	each(t, func(t *testing.T, m made) {
		angle := m.frame.Slope.Angle
		cards := 0
		for _, s := range m.whole.Whole.Sheets {
			if s.Title != "Bevel card for the fall" {
				continue
			}
			cards++
			var turns []float64
			for _, it := range s.Items {
				if p := it.Path; p != nil && p.Style.Pen == draw.Wide {
					d := p.Segs[1].To.Sub(p.Segs[0].To)
					turns = append(turns, math.Atan2(d.Y, d.X))
				}
			}
			want := []float64{0, math.Pi/2 - angle, angle}
			for i, w := range want {
				if len(turns) != 3 || math.Abs(turns[i]-w) > 1e-9 {
					t.Errorf("the lines of the card run at %v, want %v", turns, want)
					break
				}
			}
		}
		if want := map[bool]int{true: 1, false: 0}[angle > 0]; cards != want {
			t.Errorf("%d bevel cards for a fall of %.4f", cards, angle)
		}
	})
}

// mostBlemishes is how many words of a job may touch a line: where three marks of
// a strip fall together, or crosses of tiles crowd, no place is clear.
const mostBlemishes = 2

// TestNothingTouches audits the pages: they are true, no words are on words and
// hardly any on a line.
func TestNothingTouches(t *testing.T) {
	each(t, func(t *testing.T, m made) {
		faults, blemishes := m.whole.Audit(m.frame.Job.Format())
		for _, x := range faults {
			t.Error(x)
		}
		var touching []string
		for _, x := range blemishes {
			if x.Rule == draw.RuleTextOnLine || x.Rule == draw.RuleTextOnEdge {
				touching = append(touching, x.String())
				continue
			}
			t.Error(x)
		}
		if len(touching) > mostBlemishes {
			t.Errorf("%d words touch lines: %s", len(touching), strings.Join(touching, "\n"))
		}
	})
}

// TestTilesAreNeeded: every tile has something on it to cut, mark or fold by.
func TestTilesAreNeeded(t *testing.T) {
	each(t, func(t *testing.T, m made) {
		for i, s := range m.pages {
			tiled := false
			for _, w := range s.words {
				tiled = tiled || tileWords.MatchString(w.text)
			}
			if !tiled {
				continue
			}
			ink := 0
			for _, l := range s.lines {
				if l.cut() || l.fold() || l.edge() && l.b.Sub(l.a).Len() > 20 {
					ink++
				}
			}
			for _, c := range s.circles {
				if math.Abs(c.width-thick) < near {
					ink++
				}
			}
			if ink == 0 {
				t.Errorf("page %d: a tile with nothing on it", i+1)
			}
		}
	})
}
