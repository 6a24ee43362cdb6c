package frame

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
)

// decked lays a deck or slab out to 3200, over ground at −150, and stands the
// posts on it; the beam's outer face is 3000 out.
func decked(base Base, more ...func(j *Job)) *Job {
	j := leanTo()
	j.Levels.Deck, j.Levels.DeckOut = 0, 3200
	for i := range j.Posts.At {
		p := &j.Posts.At[i]
		p.Base, p.Footing, p.Shoe = base, Footing{}, Shoe{Stand: 75, Fixings: 2, Diameter: 12, Length: 110}
	}
	for _, m := range more {
		m(j)
	}
	return j
}

// TestBases: where a post ends, what it rises from, and what holds its foot. The
// footing is 700 deep with a pad of 100 and a collar of 30.
func TestBases(t *testing.T) {
	for _, c := range []struct {
		job         *Job
		foot, floor float64
		kind        JointKind
		hardware    []HardwareKind
		footings    int
	}{
		{leanTo(), -750, -150, JointPostConcrete, nil, 3},
		{func() *Job { j := leanTo(); j.Posts.At[0].Base, j.Posts.At[0].Footing.Stand = OnStirrup, 80; return j }(), -40, -150, JointPostStirrup, []HardwareKind{Stirrup}, 3},
		{decked(OnSlab), 75, 0, JointPostSlab, []HardwareKind{Shoes, Anchor, Washer}, 0},
		{decked(OnDeck), 75, 0, JointPostDeck, []HardwareKind{Shoes, CoachScrew, Washer}, 0},
		{decked(OnSlab, func(j *Job) { j.Levels.Deck = 40; j.Posts.At[0].Shoe = Shoe{Stand: 90} }), 130, 40, JointPostSlab, []HardwareKind{Shoes}, 0},
		{decked(OnSlab, func(j *Job) { j.Posts.At[2] = post(5700) }), 75, 0, JointPostSlab, []HardwareKind{Shoes, Anchor, Washer}, 1},
	} {
		f := mustBuild(t, c.job)
		first, name := f.Of(KindPost)[0], c.kind
		if math.Abs(first.Place.O.Z-c.foot) > slack || math.Abs(c.job.Floor(c.job.Posts.At[0])-c.floor) > slack {
			t.Errorf("%s: foot at %g over %g, want %g over %g", name, first.Place.O.Z, c.job.Floor(c.job.Posts.At[0]), c.foot, c.floor)
		}
		var kinds []HardwareKind
		for _, h := range f.Hardware() {
			if len(h.Spots) > 0 && f.Members[h.Spots[0].Member].Kind == KindPost && f.Members[h.Spots[0].Member].No == 1 && h.Spots[0].Face == FaceStart {
				kinds = append(kinds, h.Kind)
			}
		}
		if !slices.Equal(kinds, c.hardware) {
			t.Errorf("%s: held by %v, want %v", name, kinds, c.hardware)
		}
		if !slices.ContainsFunc(f.Joints, func(j Joint) bool { return j.Kind == c.kind }) || len(f.Of(KindFooting)) != c.footings {
			t.Errorf("%s: %d footings, want %d, and its joint", name, len(f.Of(KindFooting)), c.footings)
		}
		if _, ok := f.FootingOf(0); ok != (c.footings == 3) {
			t.Errorf("%s: post 1 has a footing: %t", name, ok)
		}
		for _, x := range f.Audit() {
			t.Errorf("%s: %s", name, x.What)
		}
	}
}

// TestBasesRefused: mixtures that cannot be built.
func TestBasesRefused(t *testing.T) {
	for _, c := range []struct {
		job  *Job
		want string
	}{
		{decked(OnSlab, func(j *Job) { j.Levels.DeckOut = 0 }), "post 1 stands on a slab, but levels gives no deck or paving; add deck: {level: 0, out: 3400}, or what it is"},
		{decked(OnDeck, func(j *Job) { j.Levels.DeckOut = 2950 }), "post 1 stands on a deck that ends 2950 mm out, and its outer face is at 3000 mm; bring it in, or give it a footing"},
		{decked(OnSlab, func(j *Job) { j.Posts.At[1].Base = OnDeck }), "post 2 stands on a deck and post 1 on a slab, and levels gives one for both; let them stand on the same"},
	} {
		_, err := Build(c.job)
		var errs Errors
		if !errors.As(err, &errs) || errs[0].Msg != c.want || errs[0].Rule != RuleBase {
			t.Errorf("got %v, want %q", err, c.want)
		}
	}
}

// TestBasesDoubtful: what somebody has to confirm is said once.
func TestBasesDoubtful(t *testing.T) {
	for _, c := range []struct {
		job  *Job
		want []string
	}{
		{decked(OnSlab), nil},
		{decked(OnDeck), []string{"designer to confirm its joists, bearers, piles and their footings"}},
		{decked(OnSlab, func(j *Job) { j.Posts.At[1].Shoe.FromEdge = 250 }), []string{"post 2 is 200 mm from the edge of the slab, less than the 250 mm stated"}},
		{decked(OnSlab, func(j *Job) { j.Posts.At[2].Shoe.Stand = 40 }), []string{"post 3 ends only 40 mm above the slab"}},
	} {
		ws := mustBuild(t, c.job).Warnings
		ok := len(ws) == len(c.want)
		for i, w := range ws {
			ok = ok && strings.Contains(w.Message, c.want[i])
		}
		if !ok {
			t.Errorf("warnings %v, want %q", ws, c.want)
		}
	}
}

// TestIdleBaseKeys: keys of a way in which no post stands are refused.
func TestIdleBaseKeys(t *testing.T) {
	for _, c := range [][2]string{
		{"  shoe: {stand: 60}", "posts.shoe has no effect here: it counts only where a post's base is slab or deck"},
		{"  base: slab\n  footing: {size: 400}", "posts.footing has no effect here: it counts only where a post's base is concrete or stirrup"},
	} {
		_, err := Read("job.yaml", []byte(strings.Replace(smallJob, "  at: [60", c[0]+"\n  at: [60", 1)))
		if err == nil || !strings.Contains(err.Error(), c[1]) {
			t.Errorf("got %v, want %q", err, c[1])
		}
	}
	_, err := Read("job.yaml", []byte(strings.Replace(smallJob, "[60, 2700", "[60, {at: 2700, shoe: {stand: 60}}", 1)))
	if err == nil || !strings.Contains(err.Error(), "posts.at no. 2, shoe has no effect here: the post's base is concrete") {
		t.Errorf("got %v, want a shoe refused", err)
	}
}
