package frame

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// TestShapesTakeAway: a timber 100 deep and 50 wide, its shape at either end;
// the areas by the circle's own formulas.
func TestShapesTakeAway(t *testing.T) {
	tail := func(tl Tail) []EndPoint {
		return tailShape(&Job{Rafters: Rafters{Section: Section{100, 50}, Tail: tl}}, 0).Points
	}
	segment := func(r, chord float64) float64 { // between an arc and its chord
		half := math.Asin(chord / 2 / r)
		return r * r * (half - math.Sin(half)*math.Cos(half))
	}
	for _, c := range []struct {
		name   string
		points []EndPoint
		area   float64
	}{
		{"quarter round", tail(Tail{Shape: TailQuarter, Nose: 40}), 60*60 - math.Pi*60*60/4},
		{"quarter round, nose unsaid", tail(Tail{Shape: TailQuarter}), 75*75 - math.Pi*75*75/4},
		// What the hollow takes the round leaves: half of the box below the nose.
		{"ogee", tail(Tail{Shape: TailOgee, Nose: 40}), 60 * 60 / 2},
		{"long ogee", tail(Tail{Shape: TailOgee, Nose: 40, Curve: 150}), 60 * 150 / 2},
		{"splay by one point", []EndPoint{{Back: 30, Down: 100}}, 30 * 100 / 2},
		{"step and hollow", []EndPoint{{Down: 50}, {Back: 10, Down: 50}, {Back: 60, Down: 100, Hollow: 60}},
			10*50 + 50*50/2 + segment(60, 50*math.Sqrt2)},
		{"round under the nose", []EndPoint{{Down: 40}, {Back: 80, Down: 100, Round: 90}}, 80*60/2 - segment(90, 100)},
	} {
		for _, end := range []Face{FaceStart, FaceEnd} {
			m := Member{Kind: KindBeam, Section: Section{Depth: 100, Width: 50}, Length: 1000}
			s := Shape{End: end, Name: "test", Points: c.points}
			if end == FaceEnd {
				s.At = m.Length
			}
			m.Features = []Feature{s}
			solid := carved(m)
			if err := solid.Check(); err != nil {
				t.Errorf("%s at the %s: %v", c.name, end, err)
			}
			const facets = 0.02 * 250 * 50 // of a face 250 long at most
			if got, want := 1000*100*50-solid.Volume(), c.area*50; math.Abs(got-want) > facets {
				t.Errorf("%s at the %s: takes away %.1f mm³, want %.1f", c.name, end, got, want)
			}
			if b := solid.Bounds(); end == FaceEnd && b.Min.X != 0 || end == FaceStart && b.Max.X != 1000 {
				t.Errorf("%s: the other end is cut as well", c.name)
			}
		}
	}
}

// TestShapeCentres: the figures that a builder sets his compasses by.
func TestShapeCentres(t *testing.T) {
	s := Shape{Points: []EndPoint{{Down: 40}, {Back: 60, Down: 100, Round: 60}}}
	if _, _, ok := s.Centre(0); ok {
		t.Error("a straight line has a centre")
	}
	if back, down, ok := s.Centre(1); !ok || !near(back, 60) || !near(down, 40) {
		t.Errorf("centre %g back, %g down, want 60 and 40", back, down)
	}
	s.Points[1].Round, s.Points[1].Hollow = 0, 60
	if back, down, _ := s.Centre(1); !near(back, 0) || !near(down, 100) {
		t.Errorf("centre of the hollow %g back, %g down, want 0 and 100", back, down)
	}
}

// profileJob has rafters 90 deep over the beam; the tail is on line 11.
const profileJob = `plumbcut: 1
project: {title: Profiles}
levels: {datum: floor, ground: -150}
plate: {section: 190x45, length: 4000, top: 2600, rafters: over}
beam: {section: 190x70, out: 3000, rafters: over}
posts: {section: 115x115, at: [200, 3800]}
fall: {slope: 1:20}
rafters:
  section: 90x45
  number: 6
  tail:
    overhang: 150
    profile:
`

// TestProfileRefused: what is wrong with a profile is said at its own point.
func TestProfileRefused(t *testing.T) {
	for _, c := range []struct {
		name, points string
		line         int
		want         string
	}{
		{"below the rafter", "- {back: 0, down: 20}\n- {back: 10, down: 95}\n- {back: 40}", 15, "point 2 is 95 mm down; only the last may be at the underside, the others must lie within the rafter's depth of 90 mm"},
		{"ends too early", "- {back: 0, down: 20}\n- {back: 40, down: 80}", 15, "the profile ends 80 mm down, but the rafter is 90 mm deep"},
		{"small radius", "- {back: 0, down: 20}\n- {back: 70, round: 40}", 15, "an arc of radius 40 mm cannot reach from point 1 to point 2, which are 99 mm apart; make the radius at least 49.5 mm"},
		{"swells below", "- {back: 0, down: 80}\n- {back: 80, round: 41}", 15, "the arc to point 2 leaves the rafter, 28.6 mm beyond its lower edge"},
		{"crosses", "- {back: 40, down: 30}\n- {back: 40, down: 60}\n- {back: 10, down: 20}\n- {back: 100}", 17, "the line to point 4 crosses the outline on its way to point 2"},
		{"twice", "- {back: 0, down: 20}\n- {back: 0, down: 20}\n- {back: 60}", 15, "point 2 is where the point before it is; take it out"},
		{"into the seat", "- {back: 0, down: 20}\n- {back: 150}", 13, "the profile tail reaches 154.3 mm back, into the rafter's seat on the beam; make the overhang at least 154.3 mm"},
		{"out past the end", "- {back: -30, down: 20}\n- {back: 50}", 14, "the outline stands 29 mm farther out than the end of the top edge on its way to point 1"},
		{"round and hollow", "- {back: 0, down: 20}\n- {back: 70, round: 80, hollow: 80}", 15, ""},
	} {
		text := profileJob
		for _, l := range strings.Split(strings.TrimSpace(c.points), "\n") {
			text += "      " + l + "\n"
		}
		job, err := Read("job.yaml", []byte(text))
		if err == nil {
			_, err = Build(job)
		}
		var errs Errors
		if !errors.As(err, &errs) {
			t.Errorf("%s: no error", c.name)
			continue
		}
		if e := errs[0]; e.Pos.Line != c.line || !strings.Contains(e.Msg, c.want) {
			t.Errorf("%s: line %d, %q; want line %d, %q", c.name, e.Pos.Line, e.Msg, c.line, c.want)
		}
	}
}
