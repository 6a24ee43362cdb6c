package frame

import (
	"math"
	"testing"
)

// near compares lengths to well within what can be stated, 1e-9 mm a metre.
func near(got, want float64) bool { return math.Abs(got-want) <= 1e-9*(1+math.Abs(want)) }

func mustBuild(t *testing.T, j *Job) *Frame {
	t.Helper()
	f, err := Build(j)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestCentres holds the tool to the trade's rule for each end rule. The
// classic mistake, overall length ÷ spaces, would give 600 in every row.
func TestCentres(t *testing.T) {
	for _, c := range []struct {
		ends           EndRule
		inset          float64
		first, centres float64
	}{
		// Flush: (6000 − 45) ÷ 10 = 595.5; the first centre is half a
		// thickness in, 22.5.
		{EndsFlush, 0, 22.5, 595.5},
		// Centred on the ends: 6000 ÷ 10 = 600, which is right only here.
		{EndsCentred, 0, 0, 600},
		// Inset 30: (6000 − 45 − 2·30) ÷ 10 = 589.5; first 22.5 + 30 = 52.5.
		{EndsInset, 30, 52.5, 589.5},
	} {
		j := leanTo()
		j.Rafters.Ends, j.Rafters.Inset, j.Rafters.Number = c.ends, c.inset, 11
		f := mustBuild(t, j)
		s := f.Setout
		if !near(s.Centres, c.centres) || !near(s.Rafters[0], c.first) || !near(s.Rafters[10], 6000-c.first) {
			t.Errorf("%s: first %g, centres %g, last %g, want %g, %g, %g", c.ends,
				s.Rafters[0], s.Centres, s.Rafters[10], c.first, c.centres, 6000-c.first)
		}
		// The housings stand at the same places.
		if h := housings(mustMember(t, f, KindPlate))[1]; !near(h.At, c.first+c.centres) {
			t.Errorf("%s: second housing at %g, want %g", c.ends, h.At, c.first+c.centres)
		}
	}
}

// TestNumberFromGreatestCentres checks that the greatest centres are kept:
// flush ends give 5955 between the end centres.
func TestNumberFromGreatestCentres(t *testing.T) {
	for _, c := range []struct {
		greatest float64
		number   int
	}{
		{600, 11},   // 5955 ÷ 600 = 9.925 → 10 spaces
		{595.5, 11}, // exactly 10 spaces, not 11 by rounding
		{595, 12},   // 5955 ÷ 595 = 10.008 → 11 spaces
		{9000, 2},   // never fewer than two rafters
	} {
		j := leanTo()
		j.Rafters.Centres = c.greatest
		s := mustBuild(t, j).Setout
		if len(s.Rafters) != c.number || s.Centres > c.greatest+1e-9 {
			t.Errorf("centres at most %g: %d rafters at %g, want %d", c.greatest, len(s.Rafters), s.Centres, c.number)
		}
	}
}

// TestRaftersKeepToTheCommonStretch: plate 0…6000, beam −300…5800, so the
// rafters stand flush within 0…5800: centres 22.5 and 5777.5.
func TestRaftersKeepToTheCommonStretch(t *testing.T) {
	j := leanTo()
	j.Beam.From, j.Beam.To = -300, 5800
	j.Posts.At[2].Along = 5700
	s := mustBuild(t, j).Setout
	if n := len(s.Rafters); !near(s.Rafters[0], 22.5) || !near(s.Rafters[n-1], 5777.5) {
		t.Errorf("rafters from %g to %g, want 22.5 to 5777.5", s.Rafters[0], s.Rafters[n-1])
	}
}

// TestFall solves one frame, given by each kind of fall and between other
// arrises. Plate 20 + 45 from the wall: its outer face at 65. Beam 70 wide,
// 3000 out: its inner face at 2930.
func TestFall(t *testing.T) {
	slope := func(drop, run float64) float64 { return math.Atan2(drop, run) }
	for _, c := range []struct {
		fall             Fall
		angle, drop, run float64
	}{
		{Fall{FallRatio, 20, PlateOuter, BeamInner}, slope(1, 20), 2865.0 / 20, 2865},
		{Fall{FallRatio, 20, WallFace, BeamOuter}, slope(1, 20), 150, 3000},
		{Fall{FallAngle, 0.1, PlateInner, BeamInner}, 0.1, 2910 * math.Tan(0.1), 2910},
		{Fall{FallDrop, 150, PlateOuter, BeamInner}, slope(150, 2865), 150, 2865},
		{Fall{FallDrop, 150, PlateOuter, BeamOuter}, slope(150, 2935), 150, 2935},
		{Fall{FallDrop, 0, PlateOuter, BeamInner}, 0, 0, 2865},
	} {
		j := leanTo()
		j.Fall = c.fall
		f := mustBuild(t, j)
		if s := f.Slope; !near(s.Angle, c.angle) || !near(s.Drop, c.drop) || !near(s.Run, c.run) {
			t.Errorf("%v: angle %g drop %g run %g, want %g %g %g", c.fall, s.Angle, s.Drop, s.Run, c.angle, c.drop, c.run)
		}
		// The drop is there in the finished levels too, measured at the arrises.
		from, to := f.Setout.Arris(c.fall.From), f.Setout.Arris(c.fall.To)
		if got := f.RafterTop(from) - f.RafterTop(to); !near(got, c.drop) {
			t.Errorf("%v: the line falls %g between its arrises, want %g", c.fall, got, c.drop)
		}
	}
}

// TestThreeFourFive: run 4000, drop 3000 → 5000 down the slope (3-4-5).
//
// The rafter goes 10 into plate and beam: 4020 level between plumb cuts, so
// 4020 ÷ 0.8 = 5025 along its top edge. Its plumb cuts add 90 · ¾ = 67.5 to the
// long points: 5092.5 in all. Its plumb depth is 90 ÷ 0.8 = 112.5.
func TestThreeFourFive(t *testing.T) {
	j := leanTo()
	steep(j, 0)
	j.Beam.Out = 65 + 4000 + 70
	j.Fall = Fall{FallDrop, 3000, PlateOuter, BeamInner}
	f := mustBuild(t, j)
	if got := f.Slope.Length(); !near(got, 5000) {
		t.Errorf("length down the slope %.12g, want 5000", got)
	}
	fig := f.Figures()
	if got := fig.Setout.Slope; !near(got.Length, 5000) || !near(got.Ratio, 4.0/3) {
		t.Errorf("figures: length %g ratio %g, want 5000, 1.3333", got.Length, got.Ratio)
	}
	r := rafterFigures(t, fig)
	if !near(r.Line, 5025) || !near(r.Length, 5092.5) {
		t.Errorf("rafter: line %.12g, length %.12g, want 5025, 5092.5", r.Line, r.Length)
	}
	under := level(t, f, "underside of rafters at the plate's outer face")
	if want := 7500 - 10 - 112.5; !near(under, want) {
		t.Errorf("underside of rafters %g, want %g", under, want)
	}
}

// squareTable is the first line of a framing square: inches of common rafter
// per foot of run, by inches of rise. Source: US Navy NAVEDTRA 14044 and
// √(144 + r²); squares round or truncate in the second decimal.
var squareTable = [18]float64{
	12.04, 12.17, 12.37, 12.65, 13.00, 13.42, 13.89, 14.42, 15.00,
	15.62, 16.28, 16.97, 17.69, 18.44, 19.21, 20.00, 20.81, 21.63,
}

// TestFramingSquare runs a whole job for each slope, 12 ft between plumb cuts,
// and reads the rafter from its figures.
func TestFramingSquare(t *testing.T) {
	const foot = 12 * 25.4
	for i, want := range squareTable {
		rise := float64(i + 1)
		j := leanTo()
		steep(j, 0)
		j.Plate.Top = 9000
		j.Beam.Out = 65 + (12*foot - 20) + 70 // 10 into each housing
		j.Fall = Fall{FallRatio, 12 / rise, PlateOuter, BeamInner}
		r := rafterFigures(t, mustBuild(t, j).Figures())
		if got := r.Line / 25.4 / 12; math.Abs(got-want) > 0.01 {
			t.Errorf("%g in 12: %.4f in a foot of run, want %.2f", rise, got, want)
		}
		if got, want := r.Ends[0].Slope, math.Atan(rise/12)*180/math.Pi; !near(got, want) {
			t.Errorf("%g in 12: plumb cut %.6f°, want %.6f°", rise, got, want)
		}
	}
}

// TestBattens: 2865 level between plate and beam; at no fall that is the
// slope too. First and last 60 in: 2745 from edge to edge.
func TestBattens(t *testing.T) {
	for _, c := range []struct {
		name               string
		number             int
		gap, shade         float64
		wantNumber         int
		wantGap, wantFirst float64
	}{
		{"number", 10, 0, 0, 10, (2745 - 450) / 9.0, 60},
		{"greatest gap", 0, 120, 0, 18, (2745 - 18*45) / 17.0, 60}, // (2745+120)/165 = 17.4
		{"greatest gap, exact", 0, 90, 0, 21, 90, 60},              // (2745+90)/135 = 21
		{"half shade", 0, 0, 0.5, 31, 45, 60},                      // pitch 90: 2700/90 = 30 spaces
	} {
		j := leanTo()
		j.Fall = Fall{Kind: FallDrop}
		j.Battens.Number, j.Battens.Gap, j.Battens.Shade = c.number, c.gap, c.shade
		s := mustBuild(t, j).Setout
		n := len(s.Battens)
		if n != c.wantNumber || !near(s.BattenGap, c.wantGap) || !near(s.Battens[0], 60) || !near(s.Battens[n-1], 2865-60-45) {
			t.Errorf("%s: %d, gap %g, %g…%g, want %d, gap %g", c.name, n, s.BattenGap, s.Battens[0], s.Battens[n-1], c.wantNumber, c.wantGap)
		}
	}
}

// TestLevels reckons the heights of the fixture by hand.
//
//	rafter line at plate 2600 − 10 = 2590; at beam 2590 − 2865/20 = 2446.75
//	top of beam 2446.75 + 15 = 2461.75; its underside −190 = 2271.75
func TestLevels(t *testing.T) {
	f := mustBuild(t, leanTo())
	for name, want := range map[string]float64{
		"top of plate at its outer arris":          2600,
		"underside of plate":                       2410,
		"top of rafters at the plate's outer face": 2590,
		"top of rafters at the beam's inner face":  2446.75,
		"top of beam":                      2461.75,
		"underside of beam, seat on posts": 2271.75,
		"finished ground":                  -150,
		"bottom of footings":               -850,
	} {
		if got := level(t, f, name); !near(got, want) {
			t.Errorf("%s = %g, want %g", name, got, want)
		}
	}
	if got := f.Setout.HeadBeam; !near(got, 2271.75+150) {
		t.Errorf("head height %g, want 2421.75", got)
	}
	// The post: from pad, 850 − 100 below datum, to the seat.
	p := mustMember(t, f, KindPost)
	if !near(p.Length, 2271.75+750) || !near(p.Place.O.Y, -3000) {
		t.Errorf("post: length %g, outer face at %g, want 3021.75, -3000", p.Length, p.Place.O.Y)
	}
}

func level(t *testing.T, f *Frame, name string) float64 {
	t.Helper()
	for _, l := range f.Levels {
		if l.Name == name {
			return l.Z
		}
	}
	t.Fatalf("no level %q", name)
	return 0
}

func mustMember(t *testing.T, f *Frame, kind Kind) Member {
	t.Helper()
	m, ok := f.Member(kind, 1)
	if !ok {
		t.Fatalf("no %s", kind)
	}
	return m
}

func rafterFigures(t *testing.T, f Figures) MemberFigures {
	t.Helper()
	for _, m := range f.Members {
		if m.Kind == KindRafter {
			return m
		}
	}
	t.Fatal("no rafter in the figures")
	return MemberFigures{}
}

func housings(m Member) []Housing {
	var out []Housing
	for _, f := range m.Features {
		if h, ok := f.(Housing); ok {
			out = append(out, h)
		}
	}
	return out
}
