package frame

import (
	"errors"
	"math"
	"strings"
	"testing"

	"plumbcut/geom"
)

// TestCheck: a check 40 wide and 15 deep across a stick 50 wide takes away
// 40 × 15 × 50; at the end of a stick, what lies on it.
func TestCheck(t *testing.T) {
	m := Member{Kind: KindRafter, Section: Section{Depth: 100, Width: 50}, Length: 1000}
	for _, c := range []struct {
		check Check
		want  float64
	}{
		{Check{FaceTop, 500, 40, 15}, 40 * 15 * 50},
		{Check{FaceBottom, 500, 40, 15}, 40 * 15 * 50},
		{Check{FaceTop, 10, 40, 15}, 30 * 15 * 50},
		{Check{"no face", 10, 40, 15}, 0},
	} {
		m.Features = []Feature{c.check}
		if got := 1000*100*50 - carved(m).Volume(); math.Abs(got-c.want) > 1e-6*c.want+1e-3 {
			t.Errorf("%+v takes away %g mm³, want %g", c.check, got, c.want)
		}
	}
}

// TestCheckedBattensSink: the bearing lies as deep as the check in the rafter,
// and the batten's top as high as is left of it.
func TestCheckedBattensSink(t *testing.T) {
	j := leanTo()
	checkedIn(j)
	j.Battens.Check = Checks{Rafter: 15, Batten: 10, Clearance: 0.5}
	f := mustBuild(t, j)
	r, b := f.Of(KindRafter)[0], f.Of(KindBatten)[0]
	top := r.Place.Plane(geom.Plane{N: geom.V(0, 0, 1), D: r.Section.Depth})
	for _, c := range []struct{ up, want float64 }{{0, -25}, {10, -15}, {45, 20}} {
		if got := top.Dist(b.Place.Point(geom.V(0, 0, c.up))); !near(got, c.want) {
			t.Errorf("%g up the batten is %g above the rafters, want %g", c.up, got, c.want)
		}
	}
	if !near(f.BattenTop(), 20) {
		t.Errorf("battens stand %g proud, want 20", f.BattenTop())
	}
}

// TestShade reckons the shares by hand: battens 45 wide at 90 centres and laths
// 40 wide at 160 cover a half, and a quarter of the half that is left.
func TestShade(t *testing.T) {
	s := Setout{Layers: []Layer{{At: []float64{0, 90, 180}, Wide: 45, Gap: 45}, {At: []float64{0, 160}, Wide: 40, Gap: 120}}}
	if got := s.Shade(); !near(got, 0.625) {
		t.Errorf("shade %g, want 0.625", got)
	}
	if got := (Layer{At: []float64{0}, Wide: 45}).Shade(); got != 0 {
		t.Errorf("a single stick covers %g, want 0", got)
	}
	j := leanTo()
	j.Battens.Gap, j.Battens.Shade = 0, 0.55
	f := mustBuild(t, j)
	l, _ := f.Setout.Layer(KindBatten)
	if l.Shade() < 0.55 || l.Shade() > 0.6 || l.Stated != 0.55 {
		t.Errorf("asked for 0.55, stated %g, reached %g", l.Stated, l.Shade())
	}
}

// TestLayersRefused names the rule that stands in the way.
func TestLayersRefused(t *testing.T) {
	for _, c := range []struct {
		name   string
		rule   Rule
		change func(j *Job)
		words  string
	}{
		{"no depth", RuleCheck, func(j *Job) { checkedIn(j); j.Battens.Check = Checks{} }, "checks of no depth"},
		{"rafters cut through", RuleCheck, func(j *Job) { checkedIn(j); j.Battens.Check.Rafter = 50 }, "make them at most 45"},
		{"battens cut through", RuleCheck, func(j *Job) { checkedIn(j); j.Battens.Check.Batten = 30 }, "make them at most 22.5"},
		{"no rafter between", RuleCheck, func(j *Job) { checkedIn(j); j.Battens.Gap = 5 }, "use fewer battens"},
		{"at the upper end", RuleCheck, func(j *Job) { checkedIn(j); j.Battens.First = 0 }, "make first at least"},
		{"at the lower end", RuleCheck, func(j *Job) { checkedIn(j); j.Battens.Last = -5 }, ""},
		{"over a birdsmouth", RuleCheck, func(j *Job) {
			checkedIn(j)
			overBoth(j)
			j.Rafters.Heel, j.Battens.First, j.Battens.Check.Rafter = 60, -40, 25
		}, "over the birdsmouth at the plate"},
		{"one batten", RuleBattenNumber, func(j *Job) { lathed(j); j.Battens.Gap, j.Battens.Number, j.Battens.Last = 0, 1, 2500 }, "at least two battens"},
		{"laths in the wall", RuleBattenClash, func(j *Job) { lathed(j); j.Plate.Drop = 0; j.Laths.Overhang = 300 }, "into the cladding"},
		{"laths overlap", RuleBattensOverlap, func(j *Job) { lathed(j); j.Laths.Shade, j.Laths.Number = 0, 400 }, "laths of 40 mm do not fit"},
	} {
		j := leanTo()
		c.change(j)
		_, err := Build(j)
		var errs Errors
		if !errors.As(err, &errs) {
			t.Errorf("%s: got %v, want errors", c.name, err)
			continue
		}
		found := false
		for _, e := range errs {
			found = found || (e.Rule == c.rule || c.words == "") && strings.Contains(e.Error(), c.words)
		}
		if !found {
			t.Errorf("%s: got %v, want %s: …%s…", c.name, err, c.rule, c.words)
		}
	}
}
