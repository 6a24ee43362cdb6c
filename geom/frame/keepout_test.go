package frame

import (
	"errors"
	"strings"
	"testing"
)

// TestKeepOut stands the middle post of the lean-to, at 3000 with a hole 350
// across and its centre 57.5 behind the beam's outer face at 3000 out, where
// it may not stand.
func TestKeepOut(t *testing.T) {
	for _, c := range []struct {
		name  string
		zones []KeepOut
		want  string // of the message; empty: built
	}{
		{"clear of it by a hair", []KeepOut{{Name: "drain", From: 3175, To: 3400}}, ""},
		{"hole in a drain", []KeepOut{{Name: "drain", From: 3100, To: 3300}}, "the hole of post 2 is in the way of the drain; move its centre to 2925 mm or 3475 mm"},
		{"only the post keeps out", []KeepOut{{Name: "joist", From: 3100, To: 3145, Of: KeepPost}}, ""},
		{"post through a joist", []KeepOut{{Name: "joist", From: 2980, To: 3025, Of: KeepPost}}, "the foot of post 2 is in the way of the joist; move its centre to 2922.5 mm or 3082.5 mm"},
		{"one zone pushes it into the next", []KeepOut{{Name: "drain", From: 3100, To: 3300}, {Name: "step", From: 3500, To: 3700}}, "move its centre to 2925 mm or 3875 mm"},
		{"joists, one of them in the way", []KeepOut{{Name: "joist", From: 2080, To: 2125, Of: KeepPost, Every: 450, Number: 6}}, "the foot of post 2 is in the way of the joist; move its centre to 2922.5 mm or 3082.5 mm"},
		{"joists that end before it", []KeepOut{{Name: "joist", From: 2080, To: 2125, Of: KeepPost, Every: 450, Number: 2}}, ""},
		{"joists closer than the post is wide", []KeepOut{{Name: "joist", From: 2800, To: 2845, Of: KeepPost, Every: 150, Number: 4}}, "move its centre to 2742.5 mm or 3352.5 mm"},
		{"ends before the beam", []KeepOut{{Name: "step", From: 2500, To: 3500, Far: 2700}}, ""},
		{"begins beyond the holes", []KeepOut{{Name: "kerb", From: 0, To: 6000, Near: 3120}}, ""},
		{"drain along the whole beam", []KeepOut{{Name: "drain", From: -500, To: 6500, Near: 2900, Far: 3100}}, "no place beside it is free under the beam"},
	} {
		j := leanTo()
		j.Site.KeepOuts = c.zones
		_, err := Build(j)
		var errs Errors
		switch errors.As(err, &errs); {
		case c.want == "" && err != nil:
			t.Errorf("%s: %v", c.name, err)
		case c.want != "" && (len(errs) == 0 || errs[0].Rule != RuleKeepOut || !strings.Contains(err.Error(), c.want)):
			t.Errorf("%s: got %v, want %q", c.name, err, c.want)
		}
	}
}

// TestKeepOutMoveIsTrue: a post moved to where the message says is built.
func TestKeepOutMoveIsTrue(t *testing.T) {
	for _, x := range []float64{2925, 3475} {
		j := leanTo()
		j.Site.KeepOuts = []KeepOut{{Name: "drain", From: 3100, To: 3300}}
		j.Posts.At[1].Along = x
		if _, err := Build(j); err != nil {
			t.Errorf("at %g: %v", x, err)
		}
	}
}

// TestBeamEnds: the beam begins at 0 and the second post stands at 3000. A first
// post at 700 leaves a span of 2300, of which 700 is less than a third; one at
// 800 leaves 2200.
func TestBeamEnds(t *testing.T) {
	for at, want := range map[float64]int{700: 0, 800: 1} {
		j := leanTo()
		j.Posts.At[0].Along = at
		n := 0
		for _, w := range mustBuild(t, j).Warnings {
			if w.Rule == RuleBeamEnd {
				n++
			}
		}
		if n != want {
			t.Errorf("first post at %g: %d warnings, want %d", at, n, want)
		}
	}
}
