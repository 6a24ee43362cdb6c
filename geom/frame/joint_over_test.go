package frame

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// TestBirdsmouth reckons the notch by hand: fall 3 in 4, so that all lengths
// come out even. A rafter 80 deep is 80 ÷ 0.8 = 100 plumb; over 60 a seat rises
// 45.
func TestBirdsmouth(t *testing.T) {
	angle := math.Atan(0.75)
	for _, c := range []struct {
		name                 string
		heel, over           float64
		deep, seat, shoulder float64
		volume               float64 // of a rafter 50 wide
	}{
		{"seat runs out at the underside", 70, 60, 30, 40, 0, 40 * 30 / 2 * 50},
		{"seat as wide as the timber", 55, 60, 45, 60, 0, 60 * 45 / 2 * 50},
		{"with a shoulder", 50, 60, 50, 60, 5, (60*45/2 + 60*5) * 50},
	} {
		n := Birdsmouth{At: 500, Heel: c.heel, Over: c.over, Angle: angle}
		m := Member{Kind: KindRafter, Section: Section{Depth: 80, Width: 50}, Length: 1000, Features: []Feature{n}}
		if got := n.Deep(80); !near(got, c.deep) {
			t.Errorf("%s: %g deep, want %g", c.name, got, c.deep)
		}
		if got := n.Seat(80); !near(got, c.seat) {
			t.Errorf("%s: seat %g, want %g", c.name, got, c.seat)
		}
		if got := n.Shoulder(80); math.Abs(got-c.shoulder) > 1e-9 {
			t.Errorf("%s: shoulder %g, want %g", c.name, got, c.shoulder)
		}
		if got := 1000*80*50 - carved(m).Volume(); math.Abs(got-c.volume) > 1e-6*c.volume {
			t.Errorf("%s: takes away %.4f mm³, want %.4f", c.name, got, c.volume)
		}
	}
}

// TestBevelledTail: level rafter 100 deep, 50 wide; a nose of 40 and a splay of
// 45° take off a triangle 60 by 60.
func TestBevelledTail(t *testing.T) {
	m := Member{Kind: KindRafter, Section: Section{Depth: 100, Width: 50}, Length: 1000}
	m.Features = []Feature{TailBevel{At: 1000, Nose: 40, Splay: math.Pi / 4}}
	want := 60.0 * 60 / 2 * 50
	if got := 1000*100*50 - carved(m).Volume(); math.Abs(got-want) > 1e-6*want {
		t.Errorf("takes away %.4f mm³, want %.4f", got, want)
	}
}

// TestHeelIsEqual: whatever lies under the rafters, the top edge stands the heel
// height over its top at the plumb line of its outer face.
func TestHeelIsEqual(t *testing.T) {
	for _, heel := range []float64{0, 70} {
		j := leanTo()
		overBoth(j)
		j.Rafters.Heel = heel
		f := mustBuild(t, j)
		want := heel
		if heel == 0 { // the wider timber, the beam of 70, is seated whole
			want = 90*math.Sqrt(401)/20 - 70.0/20
		}
		for _, k := range f.Setout.Carriers {
			if got := f.RafterTop(k.Outer) - k.Top; !near(got, want) {
				t.Errorf("heel %g over the %s, want %g", got, k.Key, want)
			}
		}
		if plate := mustMember(t, f, KindPlate); len(housings(plate)) > 0 {
			t.Error("the plate under the rafters has housings")
		}
	}
}

// TestOverRefuses tries what cannot be built with rafters over plate and beam,
// or hung between them.
func TestOverRefuses(t *testing.T) {
	for _, c := range []struct {
		name   string
		rule   Rule
		change func(j *Job)
	}{
		{"heel as high as the rafter", RuleSeat, func(j *Job) { j.Rafters.Heel = 90.1 }},
		{"heel above the rafter", RuleSeat, func(j *Job) { j.Rafters.Heel = 120 }},
		{"deep birdsmouth", RuleNotch, func(j *Job) { j.Rafters.Heel = 40 }},
		{"into the cladding", RuleHead, func(j *Job) { j.Rafters.Head = 21 }},
		{"into the soffit", RuleSoffit, func(j *Job) { j.Wall.Soffit, j.Wall.SoffitOut = 2640, 400 }},
		{"square tail into its seat", RuleTail, func(j *Job) { j.Rafters.Tail = Tail{Overhang: 4, Shape: TailSquare} }},
		{"bevel into its seat", RuleTail, func(j *Job) { j.Rafters.Tail = Tail{Overhang: 30, Shape: TailBevelled, Splay: math.Pi / 4} }},
		{"all nose", RuleTail, func(j *Job) { j.Rafters.Tail = Tail{Overhang: 300, Shape: TailBevelled, Nose: 95, Splay: math.Pi / 4} }},
		{"rod under a rafter", RuleRod, func(j *Job) { j.Posts.At[0].Along = 60 }},
		{"hanger below the beam", RuleHanger, func(j *Job) { j.Beam.Hold, j.Rafters.Tail = Between, Tail{}; j.Beam.Section.Depth = 100 }},
		{"battens past the tails", RuleBattenClash, func(j *Job) { j.Battens.Last = -10 }},
		{"battens past the upper ends", RuleBattenClash, func(j *Job) { j.Battens.First = -70 }},
	} {
		j := leanTo()
		overBoth(j)
		c.change(j)
		var errs Errors
		if _, err := Build(j); !errors.As(err, &errs) {
			t.Errorf("%s: built, want an error of the rule %q", c.name, c.rule)
		}
		for _, e := range errs {
			if e.Rule != c.rule {
				t.Errorf("%s: %q by the rule %q, want %q", c.name, e.Msg, e.Rule, c.rule)
			}
		}
	}
}

// idleJob is a job whose rafters lie over the beam and are housed in the plate.
const idleJob = `plumbcut: 1
project: {title: Idle keys}
levels: {datum: ground, ground: 0}
plate: {section: 190x45, length: 4000, top: 2600}
beam: {section: 190x70, out: 3000, rafters: over}
posts: {section: 100x100, at: [300, 3700]}
rafters: {section: 90x45, number: 7}
fall: {angle: 3}
`

// TestIdleKeys: a key that means nothing in a job of its form is refused where
// it stands, with what would make it mean something.
func TestIdleKeys(t *testing.T) {
	for _, c := range []struct{ old, new, want string }{
		{"rafters: over", "rafters: over, housing: 10", "job.yaml:5:60: beam.housing has no effect here: it counts only where beam.rafters is housed; take it out, or say that"},
		{"rafters: over", "rafters: over, rafter_drop: 5", "job.yaml:5:64: beam.rafter_drop has no effect here"},
		{"rafters: over", "rafters: between", ""},
		{"number: 7", "number: 7, head: 10", "job.yaml:7:44: rafters.head has no effect here"},
		{"number: 7", "number: 7, heel: 80", ""},
		{"number: 7", "number: 7, tail: {overhang: 300, nose: 30}", "job.yaml:7:66: rafters.tail.nose has no effect here"},
		{"number: 7", "number: 7, tail: {overhang: 300, shape: bevelled, nose: 30}", ""},
	} {
		_, err := Read("job.yaml", []byte(strings.Replace(idleJob, c.old, c.new, 1)))
		switch {
		case c.want == "" && err != nil:
			t.Errorf("%s: %v", c.new, err)
		case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)):
			t.Errorf("%s: got %v, want %q", c.new, err, c.want)
		}
	}
}
