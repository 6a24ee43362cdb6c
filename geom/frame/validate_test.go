package frame

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
)

// TestCannotBeBuilt changes one thing of a sound job at a time. Every change
// must be refused under its rule, and under no other.
func TestCannotBeBuilt(t *testing.T) {
	for _, c := range []struct {
		name   string
		rule   Rule
		change func(j *Job)
	}{
		{"a section that is no size", RuleSize, func(j *Job) { j.Beam.Section.Depth = math.NaN() }},
		{"a beam that ends before it starts", RuleSize, func(j *Job) { j.Beam.To = -1 }},
		{"rising fall", RuleFall, func(j *Job) { j.Fall = Fall{FallDrop, -100, PlateOuter, BeamInner} }},
		{"rising ratio", RuleFall, func(j *Job) { j.Fall.Value = -20 }},
		{"fall of 70°", RuleFall, func(j *Job) { j.Fall = Fall{FallAngle, 1.22, PlateOuter, BeamInner} }},
		{"fall named backwards", RuleFallBetween, func(j *Job) { j.Fall.From, j.Fall.To = BeamInner, PlateOuter }},
		{"fall that leaves no head height", RuleHeadHeight, func(j *Job) { j.Fall = Fall{FallDrop, 900, PlateOuter, BeamInner} }},
		{"beam at the wall", RuleBeamOut, func(j *Job) { j.Beam.Out = 250 }},
		{"rafters that overlap", RuleRaftersOverlap, func(j *Job) { j.Rafters.Number = 140 }},
		{"no stretch in common", RuleRaftersOverlap, func(j *Job) { j.Plate.To = 50; j.Wall.Studs = nil }},
		{"one rafter", RuleRafterNumber, func(j *Job) { j.Rafters.Number = 1 }},
		{"a slip in the centres", RuleRafterNumber, func(j *Job) { j.Rafters.Centres = 0.6 }},
		{"housing over half the plate", RuleHousing, func(j *Job) { j.Plate.Housing = 23 }},
		{"plate too shallow", RuleBelowSeat, func(j *Job) { j.Plate.Section.Depth = 110 }},
		{"beam too shallow", RuleBelowSeat, func(j *Job) { j.Beam.Section.Depth = 110 }},
		{"battens that overlap", RuleBattensOverlap, func(j *Job) { j.Battens.Number = 62 }},
		{"no battens at all", RuleBattenNumber, func(j *Job) { j.Battens.Gap = 0 }},
		{"batten over the plate", RuleBattenClash, func(j *Job) { j.Battens.First = -20 }},
		{"batten through the beam", RuleBattenClash, func(j *Job) { j.Battens.Last = 0 }},
		{"packers wider than the spacing", RuleFixing, func(j *Job) { j.Plate.Fixing.Spacing = 150 }},
		{"post beyond the beam", RulePostOffBeam, func(j *Job) { j.Posts.At[2].Along = 5950 }},
		{"posts that overlap", RulePostsOverlap, func(j *Job) { j.Posts.At[1].Along = 350 }},
		{"beam wider than the posts", RulePostWidth, func(j *Job) { j.Posts.Section.Depth = 60 }},
		{"wall post without a wall", RulePostWall, func(j *Job) { walled(j); j.Wall.Returns = j.Wall.Returns[:1] }},
		{"wall post off its packers", RulePostWall, func(j *Job) { walled(j); j.Posts.At[0].Along += 5 }},
		{"wall post beyond its wall", RulePostWall, func(j *Job) { walled(j); j.Wall.Returns[1].Length = 2950 }},
		{"rod in a housing", RuleRod, func(j *Job) { j.Posts.At[1].Along = 3000; j.Beam.Housing = 30 }},
		{"rod hole as wide as the beam", RuleRod, func(j *Job) { j.Posts.Rod.Hole = 70 }},
		{"rod hole too small", RuleRod, func(j *Job) { j.Posts.Rod.Hole = 11 }},
		{"footing smaller than its post", RuleFooting, func(j *Job) { j.Posts.At[1].Footing.Size = 115 }},
		{"round footing smaller than its post", RuleFooting, func(j *Job) { f := &j.Posts.At[1].Footing; f.Size, f.Round = 160, true }},
		{"pad as deep as the hole", RuleFooting, func(j *Job) { j.Posts.At[1].Footing.Pad = 700 }},
		{"footings that overlap", RuleFooting, func(j *Job) { j.Posts.At[1].Along = 600 }},
		{"plate beyond the wall", RulePlateWall, func(j *Job) { j.Wall.To = 5900 }},
		{"plate across a window", RuleOpening, func(j *Job) { j.Wall.Openings = []Opening{{"window", "kitchen", 1000, 2000, 900, 2450}} }},
		{"plate above the soffit", RuleSoffit, func(j *Job) { j.Wall.Soffit, j.Wall.SoffitOut = 2550, 400 }},
		{"battens against the soffit", RuleSoffit, func(j *Job) { j.Wall.Soffit, j.Wall.SoffitOut = 2610, 400 }},
		{"plate in a return", RuleReturnClash, func(j *Job) { walled(j); j.Plate.From = -30 }},
		{"end rafters in a return", RuleReturnClash, func(j *Job) { walled(j); j.Rafters.Ends = EndsCentred }},
		{"battens in a return", RuleReturnClash, func(j *Job) { walled(j); j.Battens.OverRight = 10 }},
		{"free post in a return", RuleReturnClash, func(j *Job) { j.Wall.Returns = []Return{{Left, 0, 3500}}; j.Posts.At[0].Along = 40; j.Beam.From = -300 }},
	} {
		j := leanTo()
		c.change(j)
		_, err := Build(j)
		var errs Errors
		if !errors.As(err, &errs) {
			t.Errorf("%s: got %v, want an error of rule %q", c.name, err, c.rule)
			continue
		}
		for _, e := range errs {
			if e.Rule != c.rule {
				t.Errorf("%s: also refused under %q: %s", c.name, e.Rule, e.Msg)
			}
			if !strings.Contains(e.Msg, ";") && !strings.Contains(e.Msg, ":") {
				t.Errorf("%s: %q does not say what would be right", c.name, e.Msg)
			}
		}
		if !slices.ContainsFunc(errs, func(e Error) bool { return e.Rule == c.rule }) {
			t.Errorf("%s: got %v, want rule %q", c.name, errs, c.rule)
		}
	}
}

// TestAllErrorsAtOnce: three slips give three errors in one go.
func TestAllErrorsAtOnce(t *testing.T) {
	j := leanTo()
	j.Posts.At[2].Along = 5950
	j.Plate.Housing = 23
	j.Wall.To = 5900
	_, err := Build(j)
	var errs Errors
	if !errors.As(err, &errs) || len(errs) != 3 {
		t.Errorf("got %v, want three errors", err)
	}
}

// TestDoubtful changes one thing at a time to something buildable but
// doubtful.
func TestDoubtful(t *testing.T) {
	for _, c := range []struct {
		name   string
		rule   Rule
		change func(j *Job)
	}{
		{"little head height", RuleHeadHeight, func(j *Job) { j.Levels.HeadRoom = 2450 }},
		{"housing over a third", RuleHousing, func(j *Job) { j.Beam.Housing = 25 }},
		{"little below the seats", RuleBelowSeat, func(j *Job) { j.Plate.Section.Depth = 140 }},
		{"studs unknown", RuleStudsUnknown, func(j *Job) { j.Wall.Studs = nil }},
		{"post before a door", RulePostDoor, func(j *Job) { j.Wall.Openings = []Opening{{"door", "", 2500, 3400, 0, 2100}} }},
		{"shallow footing", RuleFooting, func(j *Job) { j.Posts.At[0].Footing.Depth = 500 }},
		{"thin concrete", RuleFooting, func(j *Job) { j.Posts.At[0].Footing.Size = 250 }},
		{"footing under a return", RuleFooting, func(j *Job) { walled(j); j.Wall.Returns = j.Wall.Returns[:1]; j.Posts.At[2] = post(5700) }},
		{"low stirrup", RuleStand, func(j *Job) { p := &j.Posts.At[0]; p.Base, p.Footing.Stand = OnStirrup, 40 }},
	} {
		j := leanTo()
		if ws := mustBuild(t, j).Warnings; len(ws) != 0 {
			t.Fatalf("the plain job warns: %v", ws)
		}
		c.change(j)
		ws := mustBuild(t, j).Warnings
		if len(ws) != 1 || ws[0].Rule != c.rule {
			t.Errorf("%s: got %v, want one warning of rule %q", c.name, ws, c.rule)
		}
	}
}

// TestUnitsOfMessages: a job in feet and inches is spoken to in them. 1800 mm
// is 5' 10 7/8" to the nearest sixteenth.
func TestUnitsOfMessages(t *testing.T) {
	j := leanTo()
	j.Units = FeetInches
	j.Fall = Fall{FallDrop, 900, PlateOuter, BeamInner}
	_, err := Build(j)
	if err == nil || !strings.Contains(err.Error(), `5' 10 7/8"`) {
		t.Errorf("got %v, want the least height in feet and inches", err)
	}
}
