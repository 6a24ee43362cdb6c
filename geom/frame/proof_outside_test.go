package frame_test

import (
	"encoding/json"
	"fmt"
	"math"
	"testing"

	"plumbcut/geom/frame"
)

// These tests run whole jobs, from the words of the file to the figures that
// the program prints, and hold the figures against the outside world.

// figuresOf reads a job, builds it and reads back its figures as printed.
func figuresOf(t *testing.T, text string) frame.Figures {
	t.Helper()
	job, err := frame.Read("job.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	f, err := frame.Build(job)
	if err != nil {
		t.Fatal(err)
	}
	printed, err := f.Figures().JSON()
	if err != nil {
		t.Fatal(err)
	}
	var out frame.Figures
	if err := json.Unmarshal(printed, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// framingSquare is the length of a common rafter for each foot of run, in
// inches, by the rise in inches in 12 from 1 on: the first line of the table on
// the blade of a framing square. From 2 on as printed at instructables.com,
// "How To Make A Common Rafter", step 4; that for 1 is √145, reckoned by hand.
var framingSquare = [...]float64{
	12.04, 12.17, 12.37, 12.65, 13.00, 13.42, 13.89, 14.42, 15.00,
	15.62, 16.28, 16.97, 17.69, 18.44, 19.21, 20.00, 20.81, 21.63,
}

// squareTol is the last place of the table: some squares cut off, others
// round.
const squareTol = 0.01

// slopedJob has a run of exactly 10 ft between the plate's outer and the
// beam's inner arris: 120" + 3/4" + 1 1/2" + 3" = 125 1/4" from the cladding.
// Invented sizes.
const slopedJob = `plumbcut: 1
units: feet-inches
project: {title: Framing square}
levels: {datum: floor, ground: -6"}
wall: {cladding: 3/4"}
plate:
  section: 16" x 1 1/2"
  length: 10'
  top: %s"
  packers: {thickness: 3/4", width: 3"}
  housing: 1/2"
beam:
  section: 16" x 3"
  out: 125 1/4"
  length: 10'
  housing: 1/2"
posts:
  section: 4" x 4"
  at: [12", 108"]
rafters: {section: 3 1/2" x 1 1/2", number: 5}
fall: {drop: %s", from: plate outer arris, to: beam inner arris}
`

// TestFramingSquareFromFile runs a job for each slope of the table.
func TestFramingSquareFromFile(t *testing.T) {
	const feet = 10 // of run
	for i, want := range framingSquare {
		rise := i + 1
		t.Run(fmt.Sprintf("%d in 12", rise), func(t *testing.T) {
			drop := fmt.Sprint(rise * feet)
			f := figuresOf(t, fmt.Sprintf(slopedJob, fmt.Sprint(120+rise*feet), drop))
			const inch = 25.4
			if got := f.Setout.Slope.Length / inch / feet; math.Abs(got-want) > squareTol {
				t.Errorf("slope: %.4f in a foot of run, want %.2f", got, want)
			}
			// The rafter itself goes on into both housings, half an inch each.
			const run = feet + 2*0.5/12
			rafters := 0
			for _, m := range f.Members {
				if m.Kind != frame.KindRafter {
					continue
				}
				rafters++
				if got := m.Line / inch / run; math.Abs(got-want) > squareTol {
					t.Errorf("rafter %d: %.4f in a foot of run, want %.2f", m.No, got, want)
				}
				if m.Length < m.Line {
					t.Errorf("rafter %d: %.1f from long point to long point, less than its line of %.1f", m.No, m.Length, m.Line)
				}
			}
			if rafters != 5 {
				t.Errorf("%d rafters, want 5", rafters)
			}
		})
	}
}

// TestThreeFourFiveFromFile is the mason's triangle: a run of 4000 and a drop of 3000
// give 5000 along the slope (armyengineer.tpub.com/en0069a …-41.htm). The run
// is 4130 less 20, 45 and 65.
func TestThreeFourFiveFromFile(t *testing.T) {
	f := figuresOf(t, `plumbcut: 1
project: {title: Mason's triangle}
levels: {datum: floor, ground: -150}
wall: {cladding: 20}
plate:
  section: 400x45
  length: 3000
  top: 6000
  packers: {thickness: 20, width: 70}
beam:
  section: 400x65
  out: 4130
  length: 3000
posts:
  section: 90x90
  at: [200, 2800]
rafters: {section: 90x45, number: 5}
fall: {drop: 3000, from: plate outer arris, to: beam inner arris}
`)
	s := f.Setout.Slope
	const near = 1e-9
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"run", s.Run, 4000}, {"drop", s.Drop, 3000}, {"length", s.Length, 5000},
		{"ratio", s.Ratio, 4. / 3}, {"angle", s.Angle, math.Atan2(3, 4) * 180 / math.Pi},
	} {
		if math.Abs(c.got-c.want) > near*c.want {
			t.Errorf("%s %v, want %v", c.what, c.got, c.want)
		}
	}
	for _, m := range f.Members {
		if m.Kind != frame.KindRafter {
			continue
		}
		a, b := m.Ends[0].At, m.Ends[1].At
		if run := m.Place.U[1] * (a - b); math.Abs(run/(b-a)-0.8) > near || math.Abs(-m.Place.U[2]-0.6) > near {
			t.Errorf("rafter %d runs along %v, want 4 out and 3 down in 5", m.No, m.Place.U)
		}
	}
}

// overJob lays rafters over plate and beam. The beam's outer face is a run of
// so much from the plate's, the tails overhang by a foot. Invented sizes.
const overJob = `plumbcut: 1
units: feet-inches
project: {title: Birdsmouths}
levels: {datum: floor, ground: -6"}
plate: {section: 5 1/2 x 3 1/2, length: 10', top: %g, rafters: over}
beam: {section: 9 1/4 x 3 1/2, out: %g, rafters: over}
posts: {section: 6x6, at: [24, 96]}
rafters: {section: 7 1/4 x 1 1/2, number: 5, tail: {overhang: 12"}}
fall: {angle: %.5f}
`

// TestRafterLengthFromHeelToHeel holds the length that a carpenter marks, from
// the plumb line of one birdsmouth to that of the next, against worked
// examples: rise 7 in a foot with a run of 8 ft is 111.12", and each foot of
// overhang 13.89" more (US Navy, NAVEDTRA 14044, figures 2-17 and 2-19:
// constructionmanuals.tpub.com/14044); rise 13 with a run of 10' 4" is 182.79"
// (US Army carpentry subcourse, armyengineer.tpub.com/en0069a). Both multiply up
// from lengths to two decimals. Rise 12 with a run of 10 ft is 169.70562", to the
// plumb line of the birdsmouth (diychatroom.com, thread 83020).
func TestRafterLengthFromHeelToHeel(t *testing.T) {
	const inch = 25.4
	for _, c := range []struct{ rise, run, want, foot float64 }{
		{7, 8 * 12, 111.12, 13.89},
		{13, 10*12 + 4, 182.79, 17.69},
		{12, 10 * 12, 169.70562, 16.97},
	} {
		const plate = 3.5 // the plate lies on the cladding: its outer face is so far out
		f := figuresOf(t, fmt.Sprintf(overJob, 120+math.Ceil(c.run*c.rise/12), plate+c.run, math.Atan(c.rise/12)*180/math.Pi))
		for _, m := range f.Members {
			if m.Kind != frame.KindRafter {
				continue
			}
			var at []float64
			for _, w := range m.Features {
				if w.Kind == "birdsmouth" {
					at = append(at, w.At/inch)
				}
			}
			if len(at) != 2 {
				t.Fatalf("%d birdsmouths, want 2", len(at))
			}
			feet := c.run / 12
			if got := at[1] - at[0]; math.Abs(got-c.want) > squareTol*feet {
				t.Errorf("rise %g: %.3f in from heel to heel, want %g", c.rise, got, c.want)
			}
			if got := m.Ends[1].At/inch - at[1]; math.Abs(got-c.foot) > squareTol {
				t.Errorf("rise %g: tail %.3f in, want %g", c.rise, got, c.foot)
			}
		}
	}
}

// TestShedRoofRafter holds a rafter that lies over two walls and overhangs both
// against a worked example: rise 500 in a run of 2500 gives a line length of
// 2549.5 between the walls' faces, and 510 of overhang for 500 of projection
// (basiccarpentrytechniques.com, "Framing Shed Roofs"). Only the lower overhang
// can be built here: the house stands at the upper wall.
func TestShedRoofRafter(t *testing.T) {
	f := figuresOf(t, `plumbcut: 1
project: {title: Shed roof}
levels: {datum: floor, ground: -150}
plate: {section: 140x90, length: 3000, top: 2500, rafters: over}
beam: {section: 190x90, out: 2590, rafters: over}
posts: {section: 140x140, at: [300, 2700]}
rafters: {section: 140x45, number: 5, tail: {overhang: 500}}
fall: {drop: 500, from: plate outer arris, to: beam outer arris}
`)
	const line, tail, shown = 2549.5, 510, 0.5 // to the last figure that is printed there
	for _, m := range f.Members {
		if m.Kind != frame.KindRafter {
			continue
		}
		var heels []float64
		for _, w := range m.Features {
			if w.Kind == "birdsmouth" {
				heels = append(heels, w.At)
			}
		}
		if len(heels) != 2 {
			t.Fatalf("%d birdsmouths, want 2", len(heels))
		}
		if got := heels[1] - heels[0]; math.Abs(got-line) > shown {
			t.Errorf("rafter %d: %.2f from heel to heel, want %g", m.No, got, line)
		}
		if got := m.Ends[1].At - heels[1]; math.Abs(got-tail) > shown {
			t.Errorf("rafter %d: tail %.2f, want %d", m.No, got, tail)
		}
	}
}

// TestBirdsmouthKeepsTwoThirds holds heel and seat against a worked example: a
// rafter cut from a 2x6 (5 1/2" deep) at 7 in 12 is 82 3/4" long to its
// birdsmouth, which leaves two thirds of the rafter whole over a carrying beam
// 3 1/2" wide; its seat comes out close to that width (jlconline.com, "Cutting
// Common Rafters"). The run, 71 1/2", is worked back from the length.
func TestBirdsmouthKeepsTwoThirds(t *testing.T) {
	const inch, run, wide = 25.4, 71.5, 3.5
	const long, near = 82.75, 3.0 / 16 // printed to an eighth; "close to"
	slope := math.Atan(7.0 / 12)
	heel := 2.0 / 3 * 5.5 / math.Cos(slope) // plumb
	text := fmt.Sprintf(`plumbcut: 1
units: feet-inches
project: {title: Two thirds}
levels: {datum: floor, ground: -6"}
plate: {section: 5 1/2 x 3 1/2, length: 10', top: 150, rafters: over}
beam: {section: 9 1/4 x 3 1/2, out: 75, rafters: over}
posts: {section: 6x6, at: [24, 96]}
rafters: {section: 5 1/2 x 1 1/2, number: 5, heel: %.6f, tail: {overhang: 12"}}
fall: {angle: %.6f}
`, heel, slope*180/math.Pi)
	job, err := frame.Read("job.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	f, err := frame.Build(job)
	if err != nil {
		t.Fatal(err)
	}
	m := f.Of(frame.KindRafter)[0]
	var cuts []frame.Birdsmouth
	for _, w := range m.Features {
		if n, ok := w.(frame.Birdsmouth); ok {
			cuts = append(cuts, n)
		}
	}
	if len(cuts) != 2 {
		t.Fatalf("%d birdsmouths, want 2", len(cuts))
	}
	if got := (cuts[1].At - cuts[0].At) / inch; math.Abs(got-long) > 1.0/16 {
		t.Errorf("%.3f in for a run of %g, want %g", got, run, long)
	}
	for _, n := range cuts {
		if got := n.Deep(m.Section.Depth) * math.Cos(n.Angle) / m.Section.Depth; math.Abs(got-1.0/3) > 1e-6 {
			t.Errorf("the birdsmouth takes %.4f of the rafter's depth, want a third", got)
		}
		if got := n.Seat(m.Section.Depth) / inch; math.Abs(got-wide) > near {
			t.Errorf("seat %.3f in, want close to %g", got, wide)
		}
	}
}

// TestHeelHeight holds the heel height against the carpenter's rule for a seat
// as wide as the plate: the plumb depth less what the slope rises over the seat.
// For 7 1/4" at 4 in 12 over 3 1/2": 7.25·√160/12 − 3.5·4/12 = 6.4755" (own
// arithmetic from the rule; the rule from memory).
func TestHeelHeight(t *testing.T) {
	f := figuresOf(t, fmt.Sprintf(overJob, 150.0, 100.0, math.Atan(4.0/12)*180/math.Pi))
	if got := f.Setout.Heel / 25.4; math.Abs(got-6.4755) > 1e-4 {
		t.Errorf("heel %.4f in, want 6.4755", got)
	}
}
