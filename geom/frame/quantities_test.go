package frame

import (
	"math"
	"testing"
)

// handJob is leanTo with round figures for arithmetic by hand.
func handJob() *Job {
	j := stocked(leanTo())
	j.Posts.Rod = Rod{Diameter: 12, Hole: 16, IntoPost: 150, Above: 30, Bar: 1000}
	j.Rafters.Strap = Strap{Width: 30, Thickness: 1, Length: 240, Nails: 6}
	j.Battens.Screws = BattenScrews{Each: 2, Diameter: 5, Length: 100}
	for i := range j.Posts.At {
		j.Posts.At[i].Footing = Footing{Round: true, Size: 400, Depth: 700, Pad: 100}
	}
	j.Supplies = Supplies{BagYield: 9e6, ConcreteWaste: 0.1, Cartridge: 300e3, AdhesiveWaste: 0.2, Spread: 8, Coats: 2, HardwareSpares: 0.1}
	return j
}

func holds(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.Abs(got-want) > tol {
		t.Errorf("%s: %.6f, want %.6f", what, got, want)
	}
}

// TestAdhesive: a 16 mm hole 150 deep less a 12 mm rod is π/4·(256 − 144)·150 =
// 13 194.7 mm³, 13.2 ml; three posts take 39.6 ml, with 20 % more 47.5 ml: one
// cartridge of 300 ml.
func TestAdhesive(t *testing.T) {
	a := mustBuild(t, handJob()).Adhesive()
	holds(t, "adhesive", a.Net, 3*13194.689, 0.01)
	holds(t, "with waste", a.Gross(), 47500.9, 0.1)
	if a.Packs() != 1 {
		t.Errorf("%d cartridges, want 1", a.Packs())
	}
}

// TestConcrete: a round hole 400 wide and 700 deep is π/4·400²·700 =
// 87 964 594.3 mm³; a post 115 square stands 600 deep in it, 7 935 000 mm³. Three
// such take 240 088 783 mm³; with 10 % more 264 097 661, 29.3 bags of 9 litres.
// A square hole is 400²·700 = 112 000 000.
func TestConcrete(t *testing.T) {
	j := handJob()
	f := mustBuild(t, j)
	holds(t, "a round footing", f.ConcreteVolume(f.Of(KindFooting)[0]), 87964594.3-7935000, 0.1)
	c := f.Concrete()
	holds(t, "all", c.Net, 240088782.9, 0.3)
	if c.Packs() != 30 {
		t.Errorf("%d bags, want 30", c.Packs())
	}
	j.Posts.At[1].Footing.Round = false
	f = mustBuild(t, j)
	holds(t, "a square footing", f.ConcreteVolume(f.Of(KindFooting)[1]), 112e6-7935000, 0.1)
	// On a stirrup nothing stands in it.
	j.Posts.At[2].Base = OnStirrup
	j.Posts.At[2].Footing.Stand = 80
	f = mustBuild(t, j)
	holds(t, "a footing with a stirrup", f.ConcreteVolume(f.Of(KindFooting)[2]), 87964594.3, 0.1)
}

// TestCollar: a collar of 30 round a post 115 square in a square footing of 400
// is a frustum, 30/3·(400² + 115² + 400·115) = 2 192 250 mm³, less the post in
// it, 115²·30 = 396 750.
func TestCollar(t *testing.T) {
	j := handJob()
	j.Posts.At[0].Footing = Footing{Size: 400, Depth: 700, Pad: 100, Collar: 30}
	f := mustBuild(t, j)
	holds(t, "with a collar", f.ConcreteVolume(f.Of(KindFooting)[0]), 112e6-7935000+2192250-396750, 1)
}

// TestHardwareTotals counts by hand: three posts take a rod, a nut and a washer
// each; every rafter two straps of six nails; every crossing of batten and
// rafter two screws. The rod is 150 + 190 + 30 = 370 long: two from a bar of
// 1000, so two bars.
func TestHardwareTotals(t *testing.T) {
	f := mustBuild(t, handJob())
	rafters, battens, screws := len(f.Setout.Rafters), len(f.Setout.Battens), len(f.Setout.PlateFixings)
	want := map[HardwareKind]int{
		ThreadedRod: 3, Nut: 3, CoachScrew: screws, Washer: 3 + screws,
		StrapTie: 2 * rafters, StrapNail: 12 * rafters, BattenScrew: 2 * rafters * battens,
	}
	got := map[HardwareKind]int{}
	for _, h := range f.HardwareTotals() {
		got[h.Kind] += h.Count
		spares := int(math.Ceil(float64(h.Count)*1.1 - 1e-9))
		if h.Kind == ThreadedRod {
			spares = h.Count
		}
		if h.Order != spares {
			t.Errorf("%s: %d to order of %d, want %d", h.Kind, h.Order, h.Count, spares)
		}
		sum := 0
		for _, u := range h.Uses {
			sum += u.Count
		}
		if sum != h.Count {
			t.Errorf("%s: its uses are %d, not %d", h.Kind, sum, h.Count)
		}
	}
	for kind, n := range want {
		if got[kind] != n {
			t.Errorf("%d of %s, want %d", got[kind], kind, n)
		}
	}
	holds(t, "rod", f.RodLengths()[0], 370, 0)
	if f.RodBars() != 2 {
		t.Errorf("%d bars, want 2", f.RodBars())
	}
}

// TestHardwareSpots: what is marked on a member lies on it, screws and rods where
// their holes are, straps beside the housing.
func TestHardwareSpots(t *testing.T) {
	f := mustBuild(t, walled(handJob()))
	for _, h := range f.Hardware() {
		for _, s := range h.Spots {
			m := f.Members[s.Member]
			if _, ok := m.FacePlane(s.Face); !ok || s.At-s.Span/2 < -1e-6 || s.At+s.Span/2 > m.Length+1e-6 {
				t.Errorf("%s at %v, %v long, is not on the %s of %s %d", h.Kind, s.At, s.Span, s.Face, m.Kind, m.No)
			}
			if h.Kind != CoachScrew && h.Kind != ThreadedRod {
				continue
			}
			found := false
			for _, x := range m.Features {
				hole, ok := x.(Hole)
				found = found || ok && hole.Face == s.Face && math.Abs(hole.Mouth.X-s.At) < 1e-6
			}
			if !found {
				t.Errorf("no hole for the %s at %v on the %s of %s %d", h.Kind, s.At, s.Face, m.Kind, m.No)
			}
		}
	}
}

// TestStrapPlace: with a slope of 1:20 the housing, 10 deep, takes 10·√(1+1/400)
// = 10.0125 of the rafter's top edge; half the strap, 120, follows, so its middle
// is at 70.0125.
func TestStrapPlace(t *testing.T) {
	f := mustBuild(t, handJob())
	for _, h := range f.Hardware() {
		if h.Kind == StrapTie && h.Use == UseRafter+"wall plate" {
			holds(t, "strap", h.Spots[0].At, 70.0125, 1e-4)
			holds(t, "strap over the plate", h.Spots[1].At, f.Setout.Rafters[0], 1e-9)
			return
		}
	}
	t.Error("there is no strap")
}

// TestCutFaces by hand, on a level frame: a stick has two ends of depth × width;
// a housing has a back, two sides and a floor; a chamfer is its slope. Bores do
// not count.
func TestCutFaces(t *testing.T) {
	j := handJob()
	j.Fall = Fall{Kind: FallDrop, From: PlateOuter, To: BeamInner}
	f := mustBuild(t, j)
	plate, _ := f.Member(KindPlate, 1)
	beam, _ := f.Member(KindBeam, 1)
	post, _ := f.Member(KindPost, 1)
	rafter, _ := f.Member(KindRafter, 1)
	if c := rafter.cutFaces(); math.Abs(c.Ends-2*90*45) > 1e-6 || c.Joints != 0 {
		t.Errorf("a square rafter 90 × 45 has cut faces %+v", c)
	}
	// The housings at the ends of the plate are cut by its ends: they have one
	// side, are 45 + 0.25 wide, and take 10 × their height off the end.
	n := float64(len(f.Setout.Rafters))
	high := 190 - plate.housing(t).Floor
	back := (n-2)*45.5*high + 2*45.25*high
	sides := (2*n - 2) * 10 * high
	floor := (n-2)*45.5*10 + 2*45.25*10
	holds(t, "housings of the plate", plate.cutFaces().Joints, back+sides+floor, 1e-3)
	holds(t, "ends of the plate", plate.cutFaces().Ends, 2*(190*45-10*high), 1e-3)
	if beam.cutFaces().Joints <= 0 {
		t.Error("the beam has housings")
	}
	// A seat 70 wide, then 45 sloping at 15°.
	holds(t, "the chamfer of a post", post.cutFaces().Joints, 115*45/math.Cos(15*math.Pi/180), 1e-3)
	holds(t, "the ends of a post", post.cutFaces().Ends, 115*115+115*70, 1e-3)
}

// housing is the first housing of a member.
func (m Member) housing(t *testing.T) Housing {
	for _, f := range m.Features {
		if h, ok := f.(Housing); ok {
			return h
		}
	}
	t.Fatal("no housing")
	return Housing{}
}

// TestPrimer: 1 m² twice at 8 m² a litre is a quarter of a litre.
func TestPrimer(t *testing.T) {
	f := mustBuild(t, handJob())
	holds(t, "primer", f.Primer(1e6), 0.25e6, 1e-6)
	f.Job.Supplies.Spread = 0
	holds(t, "primer that covers nothing", f.Primer(1e6), 0, 0)
}

// TestStrapWarnings: few nails and wide straps are told.
func TestStrapWarnings(t *testing.T) {
	j := handJob()
	j.Rafters.Strap.Nails, j.Rafters.Strap.Width = 4, 60
	n := 0
	for _, w := range mustBuild(t, j).Warnings {
		if w.Rule == RuleStraps {
			n++
		}
	}
	if n != 2 {
		t.Errorf("%d warnings of straps, want 2", n)
	}
}
