package frame

import (
	"math"
	"slices"
	"testing"
)

// TestPlateScrews checks, for many layouts, what a builder is promised: on a
// stud or said to need blocking, clear of every rafter, never over the
// spacing, near the ends.
func TestPlateScrews(t *testing.T) {
	for _, c := range []struct {
		name     string
		change   func(j *Job)
		blocking int // screws that need blocking
	}{
		{"studs at 600 from the left", func(*Job) {}, 0},
		{"studs at 400", func(j *Job) { j.Wall.Studs = spaced(-200, 6200, 17) }, 0},
		{"studs under every rafter", func(j *Job) { j.Wall.Studs = spaced(22.5, 5977.5, 11) }, 7},
		{"a wide opening without studs", func(j *Job) { j.Wall.Studs = []float64{300, 900, 1500, 4500, 5100, 5700} }, 3},
		{"studs unknown", func(j *Job) { j.Wall.Studs = nil }, 0},
		{"studs unknown, rafters close", func(j *Job) { j.Wall.Studs, j.Rafters.Centres = nil, 260 }, 0},
	} {
		j := leanTo()
		c.change(j)
		s := mustBuild(t, j).Setout
		blocking, last := 0, 0.0
		for i, p := range s.PlateFixings {
			if p.Blocking {
				blocking++
			} else if len(j.Wall.Studs) > 0 && offStud(j, p.Along) > j.Wall.StudWidth/2-studEdge*12+slack {
				t.Errorf("%s: screw at %g is on no stud", c.name, p.Along)
			}
			for _, r := range s.Rafters {
				// 45/2 + 0.25 to the housing's side, then 75.
				if d := math.Abs(p.Along - r); d < 97.75-slack {
					t.Errorf("%s: screw at %g is %g from the rafter at %g", c.name, p.Along, d, r)
				}
			}
			if i > 0 && p.Along-last > 1000+slack {
				t.Errorf("%s: %g between the screws at %g and %g", c.name, p.Along-last, last, p.Along)
			}
			last = p.Along
		}
		if first := s.PlateFixings[0].Along; first > 500+slack || last < 5500-slack {
			t.Errorf("%s: end screws at %g and %g, want within 500 of the ends", c.name, first, last)
		}
		if blocking != c.blocking {
			t.Errorf("%s: %d screws need blocking, want %d", c.name, blocking, c.blocking)
		}
	}
}

func offStud(j *Job, x float64) float64 {
	best := math.Inf(1)
	for _, s := range j.Wall.Studs {
		best = min(best, math.Abs(s-x))
	}
	return best
}

// TestBlockingIsSaid: where no stud fits, the warning names the places and the
// studs on either side. From 1500 the even third of the way to 4500 is 2500;
// there stands the rafter at 2404.5, whose clear sides are at 2404.5 ± 97.75,
// so 2306.75 is taken; on from there likewise.
func TestBlockingIsSaid(t *testing.T) {
	j := leanTo()
	j.Wall.Studs = []float64{300, 900, 1500, 4500, 5100, 5700}
	var got []string
	for _, w := range mustBuild(t, j).Warnings {
		if w.Rule == RuleBlocking {
			got = append(got, w.Message)
		}
	}
	want := []string{"no stud suits the wall plate's screws at 2307 mm, 3098 mm, 3799 mm: " +
		"add blocking there, between the studs at 1500 mm and 4500 mm"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}
