package frame

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// strapped is the lean-to with one pair of straps, falling 3 in 4 so that all
// lengths come out even.
func strapped() *Job {
	j := leanTo()
	j.Battens = Battens{}
	j.Plate.Top = 4900
	j.Plate.Section.Depth, j.Beam.Section.Depth = 240, 240
	j.Fall = Fall{Kind: FallAngle, Value: math.Atan(0.75), From: PlateOuter, To: BeamInner}
	j.RoofStraps = RoofStraps{Width: 30, Inset: 150, Past: 100, Nails: 2, EndNails: 5}
	return j
}

// TestStrapLength: plate's outer face 65 out, beam's inner face 2930 out, so
// 2865 level are 3581.25 along the slope; 150 less at both ends leave 3281.25.
// The end rafters' middles stand 5955 apart. √(3281.25² + 5955²) = 6799.164 by
// hand, and 100 more at each end.
func TestStrapLength(t *testing.T) {
	f := mustBuild(t, strapped())
	runs := f.Setout.RoofStraps
	if len(runs) != 2 {
		t.Fatalf("%d straps, want a pair", len(runs))
	}
	want := math.Hypot(3281.25, 5955) + 200
	for i, run := range runs {
		if !near(run.Length, want) || math.Abs(want-6999.164) > 1e-3 {
			t.Errorf("strap %d is %.3f long, want %.3f", i, run.Length, want)
		}
		if got := run.From.Sub(run.To).Len() + 200; !near(got, want) {
			t.Errorf("strap %d runs over %.3f in the model, want %.3f", i, got, want)
		}
		if len(run.Crosses) != len(f.Setout.Rafters) {
			t.Errorf("strap %d crosses %d rafters of %d", i, len(run.Crosses), len(f.Setout.Rafters))
		}
		if falls := run.From.Z > run.To.Z; falls != (i == 0) {
			t.Errorf("strap %d falls to the right: %v", i, falls)
		}
	}
}

// TestStrapsLieOnRafters: every crossing lies on the rafter's own edge, above or
// below, within its ends.
func TestStrapsLieOnRafters(t *testing.T) {
	for _, under := range []bool{false, true} {
		j := strapped()
		j.RoofStraps.Under = under
		f := mustBuild(t, j)
		want := j.Rafters.Section.Depth
		if under {
			want = 0
		}
		for _, run := range f.Setout.RoofStraps {
			for _, x := range run.Crosses {
				m := f.Of(KindRafter)[x.Rafter-1]
				at := m.Place.Local(x.At)
				if math.Abs(at.Z-want) > 1e-6 || math.Abs(at.Y-m.Section.Width/2) > 1e-6 {
					t.Errorf("under %v: on rafter %d at %.3f across and %.3f up, want its middle and %g", under, x.Rafter, at.Y, at.Z, want)
				}
				if at.X-x.Span/2 < 0 || at.X+x.Span/2 > m.Length {
					t.Errorf("under %v: runs off rafter %d at %.3f", under, x.Rafter, at.X)
				}
			}
		}
	}
}

// TestStrapHardware counts the metal of two pairs over the eleven rafters' first
// five and last six.
func TestStrapHardware(t *testing.T) {
	j := strapped()
	j.RoofStraps.At = []StrapBays{{1, 5}, {6, 11}}
	f := mustBuild(t, j)
	if n := len(f.Setout.Rafters); n != 11 {
		t.Fatalf("%d rafters, want 11", n)
	}
	got := map[HardwareKind]int{}
	for _, h := range f.HardwareTotals() {
		for _, u := range h.Uses {
			if u.Use == UseRoofStrap {
				got[h.Kind] += u.Count
			}
		}
	}
	// Between the ends of the first pair lie three rafters, of the second four.
	for kind, want := range map[HardwareKind]int{DiagonalStrap: 4, Tensioner: 4, StrapNail: 4*2*5 + 2*3*2 + 2*4*2} {
		if got[kind] != want {
			t.Errorf("%d of %s, want %d", got[kind], kind, want)
		}
	}
}

// TestStrapsRefused tries straps that cannot lie as stated.
func TestStrapsRefused(t *testing.T) {
	for _, c := range []struct {
		name, want string
		change     func(j *Job)
	}{
		{"as they are", "", func(*Job) {}},
		{"on checked rafters", "say on: undersides", func(j *Job) {
			j.Battens = Battens{Section: Section{Depth: 45, Width: 45}, Gap: 120, First: 60, Last: 60, Lie: LieChecked, Check: Checks{Rafter: 20}}
		}},
		{"to a rafter that is not there", "there are rafters 1 to 11", func(j *Job) { j.RoofStraps.At = []StrapBays{{2, 12}} }},
		{"backwards", "the left one first", func(j *Job) { j.RoofStraps.At = []StrapBays{{5, 2}} }},
		{"over the plate", "make inset at least", func(j *Job) { j.RoofStraps.Inset = 20 }},
		{"over the rafters' own straps", "make inset at least", func(j *Job) { j.Rafters.Strap = Strap{Width: 30, Length: 300, Nails: 8} }},
		{"longer than the rafters", "make inset less", func(j *Job) { j.RoofStraps.Inset = 1800 }},
	} {
		j := strapped()
		c.change(j)
		_, err := Build(j)
		var errs Errors
		if c.want == "" && err != nil || c.want != "" && (!errors.As(err, &errs) || errs[0].Rule != RuleRoofStrap || !strings.Contains(err.Error(), c.want)) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}
