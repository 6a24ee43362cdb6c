package frame

import (
	"errors"
	"math"
	"testing"
)

// TestMeetings reckons where posts and bolts come by hand: a beam 190 × 70 whose
// outer face is 3000 out, posts 115 × 115. The plate's top stands at 2600, the
// rafters 10 below it; they fall 1 in 20 to the beam's inner face, where its top is
// 15 above them.
func TestMeetings(t *testing.T) {
	const beamTop = 2600 - 10 - (3000-70-20-45)/20.0 + 15
	const twinTop = 2600 - 10 - (3000-70-115-70-20-45)/20.0 + 15
	const seat = beamTop - 190
	slope := 115 * math.Tan(15*math.Pi/180) // a weathered top drops so far over a whole post
	for _, c := range []struct {
		name         string
		change       func(j *Job)
		outer, top   float64 // of the posts
		bolts        []float64
		grip, length float64
	}{
		{"on top", func(*Job) {}, 3000, seat, nil, 0, 0},
		// Half of 115 is less than 70, so the beam stands 12.5 proud.
		{"checked out", func(j *Job) { meets(j, CheckedOut) }, 3000 - 12.5, beamTop - 15,
			[]float64{seat + 48, beamTop - 15 - slope/2 - 48}, 70 + 57.5, 170},
		{"checked out by 40", func(j *Job) { meets(j, CheckedOut); j.Posts.Meet.CheckOut = 40 }, 3000 - 30, beamTop - 15,
			[]float64{seat + 48, beamTop - 15 - slope*75/115 - 48}, 70 + 75, 190},
		{"level tops", func(j *Job) { meets(j, CheckedOut); j.Posts.Chamfer = 0 }, 3000 - 12.5, beamTop - 15,
			[]float64{seat + 48, beamTop - 15 - 48}, 70 + 57.5, 170},
		{"one bolt", func(j *Job) { meets(j, CheckedOut); j.Posts.Chamfer, j.Posts.Meet.Bolts.Number = 0, 1 }, 3000 - 12.5, beamTop - 15,
			[]float64{seat + 87.5}, 70 + 57.5, 170},
		{"face-fixed", func(j *Job) { meets(j, FaceFixed) }, 3000 - 70, beamTop - 15, []float64{seat + 48, beamTop - 15 - slope - 48}, 185, 230},
		{"edge of 30, stated length", func(j *Job) {
			meets(j, FaceFixed)
			j.Posts.Chamfer, j.Posts.Meet.Bolts.Edge, j.Posts.Meet.Bolts.Length = 0, 30, 220
		}, 3000 - 70, beamTop - 15, []float64{seat + 30, beamTop - 15 - 30}, 185, 220},
		{"tops stated", func(j *Job) {
			meets(j, FaceFixed)
			j.Posts.Chamfer, j.Posts.Meet.Top, j.Posts.Meet.TopSaid = 0, -50, true
		}, 3000 - 70, beamTop - 50, []float64{seat + 48, beamTop - 98}, 185, 230},
		// A rafter over the middle post: its top ends 10 below the rafter, whose
		// underside is 90 plumb below its top edge, 15 below the beam's top.
		{"under a rafter", func(j *Job) {
			meets(j, FaceFixed)
			j.Posts.Chamfer, j.Posts.Meet.Bolts.Number = 0, 1
			j.Posts.At[1].Along = 3000
			j.Posts.Meet.Bolts.Edge = 20
		},
			3000 - 70, beamTop - 15 - 90*math.Sqrt(401)/20 - 10, nil, 185, 230},
		{"twin", func(j *Job) { meets(j, TwinBolted) }, 3000 - 70, twinTop,
			[]float64{twinTop - 190 + 48, twinTop - slope - 48}, 255, 300},
		// A quarter of 115 is less than 35.
		{"twin checked out", func(j *Job) { meets(j, TwinChecked); j.Posts.Chamfer = 0 }, 3000 - 70 + 28.75, twinTop - 57.5/20,
			[]float64{twinTop - 57.5/20 - 190 + 48, twinTop - 57.5/20 - 48}, 255 - 57.5, 240},
		{"on brackets", func(j *Job) { meets(j, OnBracket) }, 3000, seat - 6, nil, 0, 0},
		{"on brackets, centred", func(j *Job) { meets(j, OnBracket); j.Posts.Meet.Bracket.Centred = true }, 3000 - 35 + 57.5, seat - 6, nil, 0, 0},
	} {
		j := leanTo()
		c.change(j)
		f := mustBuild(t, j)
		post := mustMember(t, f, KindPost)
		if got := -post.Place.O.Y; !near(got, c.outer) {
			t.Errorf("%s: posts %g out, want %g", c.name, got, c.outer)
		}
		if got := post.Place.O.Z + post.Length; !near(got, c.top) {
			t.Errorf("%s: posts end at %g, want %g", c.name, got, c.top)
		}
		var at []float64
		for _, h := range post.boltHoles() {
			at = append(at, post.Place.Point(h.Mouth).Z)
		}
		for i := range c.bolts {
			if len(at) != len(c.bolts) || math.Abs(at[i]-c.bolts[i]) > 1e-9 {
				t.Errorf("%s: bolts at %v, want %v", c.name, at, c.bolts)
				break
			}
		}
		if c.grip > 0 && (!near(f.BoltGrip(), c.grip) || !near(f.BoltLength(), c.length)) {
			t.Errorf("%s: bolts %g long through %g, want %g through %g", c.name, f.BoltLength(), f.BoltGrip(), c.length, c.grip)
		}
	}
}

// TestBoltPatterns: bolts between levels 100 and 200 on a post 80 wide.
func TestBoltPatterns(t *testing.T) {
	for _, c := range []struct {
		n    int
		p    BoltPattern
		want []boltPlace
	}{
		{1, BoltsInLine, []boltPlace{{0, 150}}},
		{3, "", []boltPlace{{0, 100}, {0, 150}, {0, 200}}},
		{2, BoltsStaggered, []boltPlace{{-20, 100}, {20, 200}}},
		{4, BoltsInPairs, []boltPlace{{-20, 100}, {20, 100}, {-20, 200}, {20, 200}}},
		{3, BoltsInPairs, []boltPlace{{-20, 100}, {20, 100}, {0, 200}}},
	} {
		got := Bolts{Number: c.n, Pattern: c.p}.places(100, 200, 80)
		if len(got) != len(c.want) {
			t.Errorf("%d %s: %v, want %v", c.n, c.p, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%d %s: %v, want %v", c.n, c.p, got, c.want)
			}
		}
	}
}

// TestMeetingRefuses tries what cannot be built of beam and posts.
func TestMeetingRefuses(t *testing.T) {
	for _, c := range []struct {
		name   string
		rule   Rule
		change func(j *Job)
	}{
		{"check-out deeper than the beam", RuleCheckOut, func(j *Job) { j.Posts.Meet.CheckOut = 71 }},
		{"check-out over two thirds", RuleCheckOut, func(j *Job) { j.Posts.Section.Depth, j.Posts.Meet.CheckOut = 100, 68 }},
		{"a post into a rafter", RulePostTop, func(j *Job) {
			j.Posts.At[1].Along = 3000
			j.Posts.Meet.Top, j.Posts.Meet.TopSaid = -50, true
		}},
		{"no room for bolts under the rafters", RuleBolts, func(j *Job) { j.Posts.At[1].Along = 3000 }},
		{"tops below the bolts", RuleBolts, func(j *Job) { j.Posts.Meet.Top, j.Posts.Meet.TopSaid = -150, true }},
		{"no bolts", RuleBolts, func(j *Job) { j.Posts.Meet.Bolts = Bolts{} }},
		{"bolts out of the sides", RuleBolts, func(j *Job) {
			j.Posts.Meet.Bolts = Bolts{Diameter: 50, Hole: 60, Number: 1, Pattern: BoltsStaggered}
		}},
		{"a post into the battens", RulePostTop, func(j *Job) {
			j.Posts.Meet.Top, j.Posts.Meet.TopSaid, j.Battens.Last = 30, true, 20
		}},
	} {
		j := leanTo()
		meets(j, CheckedOut)
		c.change(j)
		var errs Errors
		if _, err := Build(j); !errors.As(err, &errs) {
			t.Errorf("%s: built, want an error of the rule %q", c.name, c.rule)
		}
		for _, e := range errs {
			if e.Rule != c.rule {
				t.Errorf("%s: %q by the rule %q, want %q", c.name, e.Msg, e.Rule, c.rule)
			}
		}
	}
}

// TestMeetingDoubtful: what can be built but is said to be doubtful. The usual
// distances of bolts are from memory, as the timber codes have them.
func TestMeetingDoubtful(t *testing.T) {
	for _, c := range []struct {
		name   string
		rule   Rule
		change func(j *Job)
	}{
		{"over half of the post", RuleCheckOut, func(j *Job) { j.Posts.Meet.CheckOut = 65 }},
		{"near the edge", RuleBolts, func(j *Job) { j.Posts.Meet.Bolts.Edge = 40 }},
		{"near each other", RuleBolts, func(j *Job) { j.Posts.Meet.Bolts.Number = 3 }},
		{"near the sides", RuleBolts, func(j *Job) { j.Posts.Meet.Bolts.Pattern = BoltsStaggered; j.Posts.Section.Width = 70 }},
		{"no seat", RuleNoSeat, func(j *Job) { j.Posts.Meet.Meeting = FaceFixed }},
	} {
		j := leanTo()
		meets(j, CheckedOut)
		if ws := mustBuild(t, j).Warnings; len(ws) != 0 {
			t.Fatalf("the checked-out job warns: %v", ws)
		}
		c.change(j)
		if ws := mustBuild(t, j).Warnings; len(ws) != 1 || ws[0].Rule != c.rule {
			t.Errorf("%s: got %v, want one warning of rule %q", c.name, ws, c.rule)
		}
	}
}
