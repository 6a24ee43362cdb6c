package frame

import (
	"math"
	"strings"
	"testing"
)

// TestFreestanding reckons a free-standing frame by hand: 1:20, beams 70 wide,
// 3000 over all.
//
//	run between the beams   3000 − 70 − 70           2860
//	drop over it            2860 ÷ 20                143
//	rafters' tops, rear     2500 − 10                2490
//	            , front     2490 − 143               2347
//	top of front beam       2347 + 15                2362
//	seats                   2500 − 190, 2362 − 190   2310, 2172
func TestFreestanding(t *testing.T) {
	j := leanTo()
	free(j)
	f := mustBuild(t, j)
	s := f.Setout
	rear, front := s.Rear(), s.Front()
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"run", f.Slope.Run, 2860},
		{"drop", f.Slope.Drop, 143},
		{"rafters at the rear beam", s.RafterTop(rear.Outer), 2490},
		{"rafters at the front beam", s.RafterTop(front.Inner), 2347},
		{"top of the front beam", front.Top, 2362},
		{"rear seat", rear.Bottom, 2310},
		{"front seat", front.Bottom, 2172},
		{"rear face of the rear beam", rear.Inner, 0},
		{"outer face of a rear post", f.Of(KindPost)[3].Solid().Bounds().Max.Y, 0},
		{"outer face of a front post", f.Of(KindPost)[0].Solid().Bounds().Min.Y, -3000},
		{"length of a rear post", f.Of(KindPost)[3].Length, 2310 + 150 + 700 - 100},
		{"head under the rear beam", s.HeadPlate, 2310 + 150},
		{"covered", s.Covered, 6000 * 3000},
	} {
		if math.Abs(c.got-c.want) > slack {
			t.Errorf("%s is %g, want %g", c.what, c.got, c.want)
		}
	}
	if len(s.PlateFixings) > 0 || len(f.Of(KindPlate)) > 0 || len(f.Of(KindPacker)) > 0 {
		t.Error("a free-standing frame has something on a wall")
	}
	for _, h := range f.House {
		if h.Name != HouseGround {
			t.Errorf("a free-standing frame stands beside a %s", h.Name)
		}
	}
}

// TestLevelFrameIsTwoAlikeHalves: without a fall and with the rafters over both
// beams, the rows and the beams differ in nothing.
func TestLevelFrameIsTwoAlikeHalves(t *testing.T) {
	j := leanTo()
	free(j)
	overBoth(j)
	j.Rear.Hold, j.Rafters.Head, j.Fall = Over, 350, Fall{Kind: FallDrop}
	for i, x := range []float64{400, 3270, 5600} {
		j.Posts.At[i].Along, j.Posts.At[i+3].Along = x, x
	}
	f := mustBuild(t, j)
	for _, k := range []Kind{KindBeam, KindPost, KindFooting} {
		for _, m := range f.Of(k) {
			if m.Mark != letters(k)+"1" {
				t.Errorf("%s %d is %s, want %s1", k, m.No, m.Mark, letters(k))
			}
		}
	}
}

func letters(k Kind) string { return k.traits().letters }

func TestFreestandingRefused(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(j *Job)
		rule   Rule
		words  string
	}{
		{"an arris of a plate", func(j *Job) { j.Fall.From = PlateOuter }, RuleFallBetween, "the frame has no plate"},
		{"a wall's face", func(j *Job) { j.Fall.From = WallFace }, RuleFallBetween, "the frame has no wall face"},
		{"a rear post off its beam", func(j *Job) { j.Posts.At[5].Along = 6100 }, RulePostOffBeam, "post 6 stands at 6100 mm, not wholly under the rear beam"},
		{"two rear posts in one", func(j *Job) { j.Posts.At[4].Along = 450 }, RulePostsOverlap, "posts 4 and 5"},
		{"a rear beam wider than its posts", func(j *Job) { j.Rear.Section.Width = 140 }, RulePostWidth, "the rear beam is 140 mm wide"},
		{"a low rear beam", func(j *Job) { j.Rear.Section.Depth = 900 }, RuleHeadHeight, "under the rear beam there is"},
		{"a keep-out under a rear post", func(j *Job) {
			j.Site.KeepOuts = []KeepOut{{Name: "drain", From: 300, To: 500, Far: 400}}
		}, RuleKeepOut, "the hole of post 4"},
	} {
		j := leanTo()
		free(j)
		c.change(j)
		_, err := Build(j)
		errs, _ := err.(Errors)
		found := false
		for _, e := range errs {
			found = found || e.Rule == c.rule && strings.Contains(e.Error(), c.words)
		}
		if !found {
			t.Errorf("%s: %v; want %q: %s", c.name, err, c.rule, c.words)
		}
	}
}
