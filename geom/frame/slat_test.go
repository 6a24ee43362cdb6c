package frame

import (
	"errors"
	"math"
	"strings"
	"testing"

	"plumbcut/geom"
)

// TestSlatsStandAsStated reckons a slat by hand, turned 30° out of the slope: 100
// wide and 20 thick it is seen 100 cos 30° + 20 sin 30° = 96.603 wide and stands
// 100 sin 30° + 20 cos 30° = 67.321 deep.
func TestSlatsStandAsStated(t *testing.T) {
	for _, outer := range []bool{false, true} {
		j := leanTo()
		slatted(j)
		j.Slats.Section, j.Slats.Angle, j.Slats.OuterUp = Section{Depth: 20, Width: 100}, math.Pi/6, outer
		j.Slats.Cleats.Section.Depth, j.Slats.Centres, j.Slats.Shade = 14, 0, 0.5
		f := mustBuild(t, j)
		if l := j.Slats; math.Abs(l.Seen()-96.6025) > 1e-4 || math.Abs(l.High()-67.3205) > 1e-4 {
			t.Errorf("seen %.4f, high %.4f", l.Seen(), l.High())
		}
		layer, _ := f.Setout.Layer(KindSlat)
		if got := layer.Shade(); got < 0.5 || got > 0.55 {
			t.Errorf("shade %.3f, asked for 0.5", got)
		}
		slope := f.Setout.onSlope()
		lo, hi := geom.V(math.Inf(1), 0, math.Inf(1)), geom.V(math.Inf(-1), 0, math.Inf(-1))
		for _, e := range f.Of(KindSlat)[0].Solid().Edges() {
			p := slope.Local(e.A)
			lo, hi = geom.V(min(lo.X, p.X), 0, min(lo.Z, p.Z)), geom.V(max(hi.X, p.X), 0, max(hi.Z, p.Z))
		}
		for _, c := range []struct{ got, want float64 }{
			{lo.X, 30}, {hi.X, 30 + 96.6025}, {hi.Z, -5}, {lo.Z, -5 - 67.3205},
		} {
			if math.Abs(c.got-c.want) > 1e-3 {
				t.Errorf("outer %t: an edge at %.4f, want %.4f", outer, c.got, c.want)
			}
		}
		if n, want := len(f.Of(KindSlat)), len(layer.At)*(len(f.Setout.Rafters)-1); n != want || len(f.Of(KindCleat)) != 2*want {
			t.Errorf("%d slats and %d cleats, want %d and %d", n, len(f.Of(KindCleat)), want, 2*want)
		}
	}
}

// TestSlatsRefused names what stands in the way.
func TestSlatsRefused(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(j *Job)
		words  string
	}{
		{"deeper than the rafters", func(j *Job) { j.Slats.Section.Width = 140 }, "of the rafters' depth of 90"},
		{"no room for cleats", func(j *Job) { j.Slats.Cleats.Section.Width = 300 }, "at each end of a slat"},
		{"too close", func(j *Job) { j.Slats.Centres = 50 }, "leave no room for a cleat"},
		{"none", func(j *Job) { j.Slats.First = 2900 }, "between first and last"},
		{"into the plate", func(j *Job) { j.Slats.First = 0 }, "runs into the plate"},
		{"into the beam", func(j *Job) { j.Slats.Last = -40 }, "make last more"},
	} {
		j := leanTo()
		slatted(j)
		c.change(j)
		_, err := Build(j)
		var errs Errors
		if !errors.As(err, &errs) || errs[0].Rule != RuleSlat || !strings.Contains(err.Error(), c.words) {
			t.Errorf("%s: got %v, want %s: …%s…", c.name, err, RuleSlat, c.words)
		}
	}
}
