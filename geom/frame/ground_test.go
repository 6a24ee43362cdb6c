package frame

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"plumbcut/geom"
)

// TestGroundLine reads the ground off a line that rises a little, steps down and
// banks up again, and off posts alone. By hand.
func TestGroundLine(t *testing.T) {
	stepped := leanTo()
	stepped.Levels.Line = []GroundPoint{{0, -200}, {2000, -100}, {2000, -400}, {3000, -300}}
	byPosts := leanTo()
	byPosts.Posts.At[1].Ground = -250
	for _, c := range []struct {
		name string
		job  *Job
		at   map[float64]float64
		line []geom.Pt // from −500 to 4000
	}{
		{"stepped", stepped, map[float64]float64{-900: -200, 0: -200, 1000: -150, 2000: -100, 2000.5: -399.95, 2500: -350, 3000: -300, 9000: -300},
			[]geom.Pt{{X: -500, Y: -200}, {X: 0, Y: -200}, {X: 2000, Y: -100}, {X: 2000, Y: -400}, {X: 3000, Y: -300}, {X: 4000, Y: -300}}},
		{"by posts", byPosts, map[float64]float64{0: -150, 300: -150, 1650: -200, 3000: -250, 4350: -200, 6000: -150},
			[]geom.Pt{{X: -500, Y: -150}, {X: 300, Y: -150}, {X: 3000, Y: -250}, {X: 4000, Y: -250 + 100.0*1000/2700}}},
	} {
		for x, want := range c.at {
			if got := GroundAt(c.job, x); !near(got, want) {
				t.Errorf("%s: ground at %g is %g, want %g", c.name, x, got, want)
			}
		}
		got := GroundLine(c.job, -500, 4000)
		if !slices.EqualFunc(got, c.line, func(a, b geom.Pt) bool { return near(a.X, b.X) && near(a.Y, b.Y) }) {
			t.Errorf("%s: line %v, want %v", c.name, got, c.line)
		}
	}
	if got := stepped.GroundSteps(); !slices.Equal(got, []GroundStep{{2000, -100, -400}}) {
		t.Errorf("steps %v", got)
	}
	if got := byPosts.GroundSteps(); got != nil {
		t.Errorf("ground from post to post has steps %v", got)
	}
}

// TestTerrainSteps: the solid of the ground loses what the step takes away, as
// far along and as far out as it is drawn.
func TestTerrainSteps(t *testing.T) {
	flat, stepped := leanTo(), leanTo()
	flat.Levels.Line = []GroundPoint{{0, -100}, {6000, -100}}
	stepped.Levels.Line = []GroundPoint{{0, -100}, {2000, -100}, {2000, -400}}
	volume := func(j *Job) float64 {
		f := mustBuild(t, j)
		return terrain(j, f.Setout.Front(), 0, 6000, -1000).Volume()
	}
	want := 4000 * 300 * (stepped.Beam.Out + groundMore)
	if got := volume(flat) - volume(stepped); !near(got/want, 1) {
		t.Errorf("the step takes %g mm³ away, want %g", got, want)
	}
}

// TestStepAtPost: the middle post of the lean-to stands from 2942.5 to 3057.5,
// its hole reaches from 2825 to 3175.
func TestStepAtPost(t *testing.T) {
	for _, c := range []struct {
		at         float64
		fails, say string
	}{
		{2500, "", ""},
		{2800, "", ""},
		{2900, "", "the hole of post 2 runs 75 mm past the step in the ground at 2900 mm"},
		{2942, "", "the hole of post 2"},
		{2943, "the step in the ground at 2943 mm runs through post 2, which stands from 2942.5 mm to 3057.5 mm", ""},
	} {
		j := leanTo()
		j.Levels.Line = []GroundPoint{{0, -150}, {c.at, -150}, {c.at, -350}}
		for i := range j.Posts.At {
			j.Posts.At[i].Ground = GroundAt(j, j.Posts.At[i].Along)
		}
		f, err := Build(j)
		var errs Errors
		if c.fails != "" {
			if !errors.As(err, &errs) || errs[0].Rule != RuleGround || !strings.Contains(errs[0].Msg, c.fails) {
				t.Errorf("step at %g: %v, want %q", c.at, err, c.fails)
			}
			continue
		}
		if err != nil {
			t.Errorf("step at %g: %v", c.at, err)
			continue
		}
		var said []string
		for _, w := range f.Warnings {
			if w.Rule == RuleGround {
				said = append(said, w.Message)
			}
		}
		if c.say == "" && len(said) > 0 || c.say != "" && (len(said) != 1 || !strings.Contains(said[0], c.say)) {
			t.Errorf("step at %g: warned %q, want %q", c.at, said, c.say)
		}
	}
}

// TestGroundLineRefused: a line that runs back, or that the posts contradict, is
// refused where it stands.
func TestGroundLineRefused(t *testing.T) {
	job := strings.Replace(idleJob, "ground: 0}", "ground: 0, ground_line: [LINE]}", 1)
	for _, c := range []struct{ line, posts, want string }{
		{"{at: 300, level: 0}, {at: 2000, level: 0}, {at: 2000, level: -300}", "300", ""},
		{"{at: 300, level: 0}, {at: 200, level: 0}", "300", "list them from left to right"},
		{"{at: 300, level: 0}, {at: 300, level: -9}, {at: 300, level: -20}", "300", "three points of the ground stand at 300; a step has two"},
		{"{at: 300, level: 0}", "300", "at least 2"},
		{"{at: 300, level: 0}, {at: 900, level: 0}", "{at: 300, ground: -20}", "the ground at the posts is read off levels.ground_line (line 3)"},
	} {
		text := strings.Replace(strings.Replace(job, "LINE", c.line, 1), "at: [300,", "at: ["+c.posts+",", 1)
		_, err := Read("job.yaml", []byte(text))
		if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)) {
			t.Errorf("%s: %v, want %q", c.line, err, c.want)
		}
	}
}
