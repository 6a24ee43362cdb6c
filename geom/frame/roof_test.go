package frame

import (
	"errors"
	"math"
	"strings"
	"testing"

	"plumbcut/geom"
)

// TestRoofCounts reckons a roof by hand. Battens run from -100 to 6100, so it is
// 6200 wide; sheets of 860 with laps of 90 cover 770 each and the first 860:
// eight of them reach 6250, and the last is cut to 6200 - 7 x 770 = 810.
func TestRoofCounts(t *testing.T) {
	j := leanTo()
	roofed(j)
	f := mustBuild(t, j)
	r := f.Roof
	if r.Rows() != 8 || !near(r.Last, 810) || !near(r.Left, -100) || !near(r.Right, 6100) {
		t.Errorf("%d sheets, the last %g, from %g to %g; want 8, 810, -100, 6100", r.Rows(), r.Last, r.Left, r.Right)
	}
	if len(r.Courses) != 1 {
		t.Fatalf("%d courses, want 1", len(r.Courses))
	}
	// Seen along the slope the sheets reach from the underside at the gap to the
	// top edge at the eave: level 3000 + 50 - 20, less what the upper end leans.
	s := f.Setout
	want := (3050-20)/s.cos - 18*s.tan
	if got := r.Courses[0].Length(); math.Abs(got-want) > 1e-6 {
		t.Errorf("sheets %.3f long, want %.3f", got, want)
	}
	if got := r.PlanArea(); !near(got, 6200*3030) {
		t.Errorf("covers %g mm², want %g", got, 6200.0*3030)
	}
}

// TestRoofIsClear: no part of a roof shares room with a member or with the wall,
// and the sheets' parts fill the whole roof.
func TestRoofIsClear(t *testing.T) {
	for _, v := range variants {
		if !strings.HasPrefix(v.name, "roofed") {
			continue
		}
		j := leanTo()
		v.change(j)
		f := mustBuild(t, j)
		area := 0.0
		for _, p := range f.Roof.Parts {
			for _, m := range f.Members {
				if got := geom.Overlap(p.Shape, m.Solid()); got > clashLeast {
					t.Errorf("%s: the %s and %s %d share %.2f mm³", v.name, p.Name, m.Kind, m.No, got)
				}
			}
			for _, h := range f.House {
				if got := geom.Overlap(p.Shape, h.Shape); got > clashLeast {
					t.Errorf("%s: the %s and the %s share %.2f mm³", v.name, p.Name, h.Name, got)
				}
			}
			if p.Name == RoofSheet {
				area += p.Shape.Volume() / j.Roof.Profile
			}
		}
		last := f.Roof.Courses[len(f.Roof.Courses)-1]
		want := (f.Roof.Right - f.Roof.Left) * (f.Roof.Courses[0].To - last.From)
		if math.Abs(area-want) > 1 {
			t.Errorf("%s: the sheets cover %.0f mm², want %.0f", v.name, area, want)
		}
		for _, c := range f.Roof.Courses {
			if j.Roof.Longest > 0 && c.Length() > j.Roof.Longest+slack {
				t.Errorf("%s: sheets %.1f long, the longest is %g", v.name, c.Length(), j.Roof.Longest)
			}
		}
	}
}

// TestRoofsRefused names the rule that stands in the way.
func TestRoofsRefused(t *testing.T) {
	for _, c := range []struct {
		name   string
		rule   Rule
		change func(j *Job)
		words  string
	}{
		{"no battens", RuleRoof, func(j *Job) { j.Battens = Battens{} }, "the job has none"},
		{"laths", RuleRoof, lathed, "laths lie over them"},
		{"half a lap", RuleRoof, func(j *Job) { j.Roof.Lap = 500 }, "half a sheet"},
		{"too flat", RuleLeastFall, func(j *Job) { j.Roof.LeastFall = 5 * math.Pi / 180 }, "less than the 5°"},
		{"into the beam", RuleRoof, func(j *Job) { j.Beam.Drop = 60; j.Battens.Last = 150 }, "above the underside of the sheets"},
		{"on the nuts", RuleRoof, func(j *Job) { j.Posts.Rod = Rod{Diameter: 12, Hole: 14, IntoPost: 200, Above: 50} }, "above the underside of the sheets"},
		{"too long", RuleRoof, func(j *Job) { j.Roof.Longest = 2400 }, "state end_lap"},
		{"no batten for a lap", RuleRoof, func(j *Job) { j.Roof.Longest, j.Roof.EndLap = 600, 500 }, "no batten stands"},
		{"beyond the gutter", RuleRoof, func(j *Job) { j.Roof.Eave = 130 }, "beyond a gutter"},
		{"downpipe beside", RuleRoof, func(j *Job) { j.Roof.Downpipes[0].Along = -200 }, "not under the gutter"},
		{"fat downpipe", RuleRoof, func(j *Job) { j.Roof.Downpipes[0].Size = 150 }, "wider than the gutter"},
		{"downpipe in the air", RuleRoof, func(j *Job) { j.Roof.Downpipes[0].To = 2600 }, "above the bottom"},
		{"no gutter", RuleRoof, func(j *Job) { j.Roof.Gutter = Gutter{} }, "add a gutter"},
		{"under the soffit", RuleSoffit, func(j *Job) { j.Wall.Soffit, j.Wall.SoffitOut = 2660, 400 }, "the roof and its flashing"},
		{"into a return", RuleReturnClash, func(j *Job) { walled(j); j.Roof.OverLeft = 10 }, "into the left return"},
	} {
		j := leanTo()
		roofed(j)
		c.change(j)
		_, err := Build(j)
		var errs Errors
		if !errors.As(err, &errs) {
			t.Errorf("%s: got %v, want errors", c.name, err)
			continue
		}
		found := false
		for _, e := range errs {
			found = found || e.Rule == c.rule && strings.Contains(e.Error(), c.words)
		}
		if !found {
			t.Errorf("%s: got %v, want %s: …%s…", c.name, err, c.rule, c.words)
		}
	}
}
