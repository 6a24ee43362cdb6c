package frame

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// skewText is a small frame whose beam is farther out at its left end.
func skewText(left, right, slope string) string {
	return fmt.Sprintf(`plumbcut: 1
project: {title: On the skew}
levels: {datum: floor, ground: 0}
wall: {cladding: 18}
plate: {section: 240x45, length: 4000, top: 2600}
beam: {section: 240x70, out: {left: %s, right: %s}}
posts: {section: 100x100, at: [300, 3700]}
rafters: {section: 120x45, number: 7}
fall: {slope: %s}
`, left, right, slope)
}

func skewFrame(t *testing.T, left, right, slope string) *Frame {
	t.Helper()
	j, err := Read("skew.yaml", []byte(skewText(left, right, slope)))
	if err != nil {
		t.Fatal(err)
	}
	f, err := Build(j)
	if err != nil {
		t.Fatal(err)
	}
	if found := f.Audit(); len(found) > 0 {
		t.Fatal(found)
	}
	return f
}

// TestSkewAngles compares the rafters' cut at the beam with the published formulas
// for a cheek cut: laid flat on its side, the mitre is the plumb angle and the tilt
// the angle in plan; laid on its edge, the mitre is atan(tan plan ÷ … cos fall) as
// the framing square has it: run × tan(plan) against the length of the rafter for
// that run, 12 and √(144+r²) for a rise of r in 12 (side cut of jacks, rise 8:
// 12 and 14.42, US Navy NAVEDTRA 14044, Ridge-Layout-85).
func TestSkewAngles(t *testing.T) {
	for _, c := range []struct {
		left, right, slope string
		rise               float64 // in 12
	}{
		{"3000", "2400", "1:30", 12. / 30}, {"2400", "3000", "1:30", 12. / 30}, {"2600", "2500", "1:20", 12. / 20},
	} {
		f := skewFrame(t, c.left, c.right, c.slope)
		var left, right float64
		fmt.Sscan(c.left, &left)
		fmt.Sscan(c.right, &right)
		turn := math.Atan(math.Abs(left-right) / 4000)
		for _, r := range f.Of(KindRafter) {
			cut := r.EndCut(FaceEnd)
			mitre, tilt := cut.Saw()
			if math.Abs(mitre-math.Atan(c.rise/12)) > 1e-9 || math.Abs(tilt-turn) > 1e-9 || cut.Cut != CutCompound {
				t.Errorf("%v: saw at %g and %g, want %g and %g", c, mitre, tilt, math.Atan(c.rise/12), turn)
			}
			// On the top edge: √(144+r²) of rafter for 12 of run.
			if want := math.Tan(turn) * math.Sqrt(144+c.rise*c.rise) / 12; math.Abs(math.Abs(math.Tan(cut.Plan))-want) > 1e-9 {
				t.Errorf("%v: side cut %g, want %g", c, math.Tan(cut.Plan), want)
			}
		}
	}
}

// TestSkewLengths: rafters of a frame on the skew differ by a constant, which is
// the centres × tan of the turn, up the slope: the common difference of jacks
// (framing square, the same source: centres in run × unit length). The first one's
// length is worked out by hand: with the beam's face at 45 of the rafter's sides.
func TestSkewLengths(t *testing.T) {
	f := skewFrame(t, "3000", "2400", "1:30")
	all := f.Of(KindRafter)
	want := f.Setout.Centres * 600 / 4000 * math.Hypot(1, 1./30)
	for i := 1; i < len(all); i++ {
		if got := all[i-1].Length - all[i].Length; math.Abs(got-want) > 1e-6 {
			t.Errorf("rafters %d and %d differ by %g, want %g", i, i+1, got, want)
		}
	}
	// The house end is let in by 12 into a plate 45 thick: 33 out. At its left
	// side, x = 0, the beam's outer face is 3000 out; its inner face, less the
	// housing, is (70 − 12) ÷ cos nearer.
	cos := math.Cos(math.Atan(600. / 4000))
	top := (3000 - 58/cos - 33) * math.Hypot(1, 1./30)
	if got := all[0].EndCut(FaceEnd).At; math.Abs(got-top) > 1e-6 {
		t.Errorf("top left arris of the first rafter is %g, want %g", got, top)
	}
}

// TestSkewBeam: the beam comes to both ends of the plate, at the distances stated,
// level, and its rafters step down along it by the fall of the difference.
func TestSkewBeam(t *testing.T) {
	f := skewFrame(t, "3000", "2400", "1:30")
	k := f.Setout.Front()
	for _, c := range []struct{ along, x, out float64 }{{k.From, 0, 3000}, {k.To, 4000, 2400}} {
		if p := k.Point(c.along, k.Outer, 0); math.Abs(p.X-c.x) > 1e-9 || math.Abs(p.Y+c.out) > 1e-9 {
			t.Errorf("the beam's end is at %v, want %g along and %g out", p, c.x, c.out)
		}
	}
	if got, want := k.To-k.From, math.Hypot(4000, 600); math.Abs(got-want) > 1e-9 {
		t.Errorf("the beam is %g long on its outer face, want %g", got, want)
	}
	if got, want := f.Setout.Steps(k), (4000-45)*600./4000/30; math.Abs(got-want) > 1e-9 {
		t.Errorf("the rafters step down by %g, want %g", got, want)
	}
	if b := f.Timber(k).Solid().Bounds(); math.Abs(b.Max.X-4000) > 1e-9 || math.Abs(b.Min.X) > 1e-9 {
		t.Errorf("the beam reaches from %g to %g, want 0 to 4000", b.Min.X, b.Max.X)
	}
}

// TestSkewMirrored: the mirror image of a frame has the mirror images of its
// sticks.
func TestSkewMirrored(t *testing.T) {
	a, b := skewFrame(t, "3000", "2400", "1:30"), skewFrame(t, "2400", "3000", "1:30")
	ra, rb := a.Of(KindRafter), b.Of(KindRafter)
	for i, r := range ra {
		if o := rb[len(rb)-1-i]; alike(r, true) != alike(o, false) {
			t.Errorf("rafter %d is not the mirror image of %d:\n%s\n%s", r.No, o.No, alike(r, true), alike(o, false))
		}
	}
	if x, y := a.Of(KindBeam)[0], b.Of(KindBeam)[0]; alike(x, true) != alike(y, false) {
		t.Errorf("the beams are not mirror images:\n%s\n%s", alike(x, true), alike(y, false))
	}
}

// TestSkewRefusals: what is not made on the skew is refused where it is said.
func TestSkewRefusals(t *testing.T) {
	base := skewText("3000", "2400", "1:30")
	for _, c := range []struct{ from, to, want string }{
		{"right: 2400}}", "right: 2400}, rafters: over}", "skew.yaml:6"},
		{"slope: 1:30", "drop: 100", "the drop is another at every rafter"},
		{"number: 7}", "number: 7, seat: level}", "the seats follow the fall"},
		{"section: 100x100,", "section: 100x100, beam: checked out,", "on top of its posts"},
		{"number: 7}", "number: 7, straps: {width: 30, length: 200, nails: 8}}", "straps would have to be bent"},
		{"fall:", "blocking: {section: 90x45, at: [1000]}\nfall:", "no row of blocks"},
		{"fall:", "braces: {section: 70x45, down: 500, angle: 45}\nfall:", "knee braces are not drawn"},
		{"fall:", "valance: {section: 140x30}\nfall:", "a valance is not drawn"},
		{"section: 100x100,", "section: 100x100, base: slab,", "is there already"},
		{", right: 2400", "", "right"},
		{"right: 2400", "right: 200", "turn by more than 30"},
	} {
		text := strings.Replace(base, c.from, c.to, 1)
		j, err := Read("skew.yaml", []byte(text))
		if err == nil {
			_, err = Build(j)
		}
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("with %q: %v, want %q", c.to, err, c.want)
		}
	}
}
