package frame

import (
	"errors"
	"strings"
	"testing"
)

// TestTrimLies reckons where the boards of a lean-to lie, by hand: fall 1 in 20,
// rafters 140 deep over both, tails of 400.
func TestTrimLies(t *testing.T) {
	j := leanTo()
	overBoth(j)
	trimmed(j)
	j.Rafters.Section.Depth = 140
	j.Blocking.Set = BlockPlumb
	f := mustBuild(t, j)
	s := f.Setout
	// Ten bays, three rows; each block as long as the gap, 595.5 less 45.
	blocks := f.Of(KindBlock)
	if len(blocks) != 30 || !near(blocks[0].Length, 550.5) {
		t.Errorf("%d blocks, the first %g long; want 30 of 550.5", len(blocks), blocks[0].Length)
	}
	// Plumb blocks have their outer top arris in the plane of the rafters'.
	for _, b := range blocks {
		if top := b.Place.O.Z + b.Section.Depth; !near(top, s.RafterTop(b.Place.O.Y)) {
			t.Errorf("block %d: top %g, the rafters' is %g", b.No, top, s.RafterTop(b.Place.O.Y))
		}
	}
	// The row over the beam has its middle over the beam's.
	last := blocks[len(blocks)-1]
	if got, want := last.Place.O.Y+last.Section.Width/2, -3000+70/2.0; !near(got, want) {
		t.Errorf("the blocks over the beam stand at %g, want %g", got, want)
	}
	// The fascia: against plumb tails, 400 past the beam's outer face at 3000.
	fa := f.Of(KindFascia)[0]
	if !near(fa.Place.O.Y, -3400-25) || !near(fa.Place.O.Z+140, s.RafterTop(-3400)) || !near(fa.Length, 6000) {
		t.Errorf("fascia at %v, %g long", fa.Place.O, fa.Length)
	}
	// The valance: between posts 115 wide at 300, 3270 and 5700, up under the beam.
	var lengths []float64
	for _, v := range f.Of(KindValance) {
		lengths = append(lengths, v.Length)
		if top := v.Place.O.Z + v.Section.Depth; !near(top, s.Front().Bottom) || !near(v.Place.O.Y, -3000+10) {
			t.Errorf("valance %d at %v, its top at %g", v.No, v.Place.O, top)
		}
	}
	if len(lengths) != 2 || !near(lengths[0], 2970-115) || !near(lengths[1], 2430-115) {
		t.Errorf("valances %v long, want 2855 and 2315", lengths)
	}
}

// TestTrimThatCannotBe: impossible mixtures are refused with what would be right.
func TestTrimThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		name, says string
		change     func(j *Job)
	}{
		{"blocks deeper than the rafters", "make them at most 90 mm", func(j *Job) { j.Blocking.Section.Depth = 95 }},
		{"blocks over a beam that holds them housed", "say beam.rafters: over", func(j *Job) { j.Beam.Hold, j.Rafters.Tail, j.Fascia = Housed, Tail{}, Fascia{} }},
		{"blocks in the beam", "mm in the beam; make them at most 70.7 mm", func(j *Job) { j.Rafters.Heel = 70; j.Blocking.Section.Depth = 73 }},
		{"blocks over rods", "rods' nuts", func(j *Job) { j.Posts.Rod = Rod{Diameter: 12, Hole: 14, IntoPost: 100, Above: 40} }},
		{"blocks in the plate", "do not stand clear", func(j *Job) { j.Blocking.Rows = []BlockRow{{Down: 10}} }},
		{"rows in each other", "runs into the one before", func(j *Job) { j.Blocking.Rows = []BlockRow{{Down: 900}, {Down: 930}} }},
		{"blocks under checked battens", "the nearest clear place is", func(j *Job) {
			j.Battens.Lie, j.Battens.Check = LieChecked, Checks{Rafter: 10, Clearance: 1}
			j.Blocking.Rows = []BlockRow{{Down: 900}, {Down: 980}}
		}},
		{"fascia without tails", "nothing to fix a fascia to", func(j *Job) {
			j.Beam.Hold, j.Rafters.Tail, j.Blocking = Housed, Tail{}, Blocking{}
		}},
		{"fascia in the braces", "where the braces lap", func(j *Job) { braced(j, BraceLapped); j.Rafters.Tail.Overhang = 50; j.Valance = Valance{} }},
		{"valance behind the beam", "set it back at most 45 mm", func(j *Job) { j.Valance.Back = 60 }},
		{"valance in the braces", "meets the knee braces", func(j *Job) { braced(j, BraceButted) }},
		{"valance on lapped braces", "meets the knee braces that lap", func(j *Job) {
			braced(j, BraceLapped)
			j.Valance.Set, j.Valance.Below = ValanceFace, 100
		}},
		{"valance that hangs off", "let it hang less", func(j *Job) { j.Valance.Set, j.Valance.Below = ValanceFace, 140 }},
		{"valance over the beam", "stand 10 mm above the beam", func(j *Job) { j.Valance.Section.Depth, j.Valance.Set, j.Valance.Below = 300, ValanceFace, 100 }},
		{"valance in the tails", "runs into the rafters' tails", func(j *Job) { j.Valance.Section.Depth, j.Valance.Set, j.Valance.Below = 289, ValanceFace, 100 }},
		{"valance too low", "at least 1800 mm must be left", func(j *Job) { j.Valance.Section.Depth = 700 }},
	} {
		j := leanTo()
		overBoth(j)
		trimmed(j)
		j.Posts.At[1].Along = 3270
		c.change(j)
		if j.Posts.Rod.Diameter > 0 {
			j.Beam.Hold = Over
		}
		_, err := Build(j)
		var errs Errors
		if !errors.As(err, &errs) || !strings.Contains(errs.Error(), c.says) {
			t.Errorf("%s: got %v, want %q", c.name, err, c.says)
		}
	}
}
