package frame

import (
	"math"
	"testing"

	"plumbcut/geom"
)

// TestFeatureVolumes takes each feature alone out of a stick 1000 × 100 × 50
// (depth 100, width 50) and compares the volume removed with hand arithmetic.
func TestFeatureVolumes(t *testing.T) {
	third := math.Atan(1.0 / 3)
	for _, c := range []struct {
		name string
		kind Kind
		f    Feature
		want float64
	}{
		// A plumb cut of slope 1:3 takes a triangle 100 high, 100/3 long.
		{"plumb cut, house end", KindRafter, EndCut{End: FaceStart, At: 0, Slope: third}, 100 * (100.0 / 3) / 2 * 50},
		{"plumb cut, outer end", KindRafter, EndCut{End: FaceEnd, At: 1000 - 100.0/3, Slope: third}, 100 * (100.0 / 3) / 2 * 50},
		// Plan 1:3 the other way round: 50 wide, 50/3 long.
		{"skew cut", KindRafter, EndCut{End: FaceStart, At: 0, Plan: third}, 50 * (50.0 / 3) / 2 * 100},
		// A housing 10 deep, 40 wide, floor 30 up: 70 high.
		{"level housing", KindPlate, Housing{Face: FaceOuter, At: 500, Width: 40, Depth: 10, Floor: 30}, 10 * 40 * 70},
		// Its floor rising 1:3 over 10: 10/3 at the back, so 5/3 less high.
		{"rising housing", KindPlate, Housing{Face: FaceOuter, At: 500, Width: 40, Depth: 10, Floor: 30, Slope: third}, 10 * 40 * (70 - 5.0/3)},
		{"falling housing", KindBeam, Housing{Face: FaceHouse, At: 500, Width: 40, Depth: 10, Floor: 30, Slope: -third}, 10 * 40 * (70 + 5.0/3)},
		// Half a housing at the very end.
		{"housing at the end", KindPlate, Housing{Face: FaceOuter, At: 0, Width: 40, Depth: 10, Floor: 30}, 10 * 20 * 70},
		// A seat 30 long under a slope 1:3: a triangle 30 by 10, 50 wide. The
		// shoulder's foot is 30·√10/3 from the end's lower corner, at 100.
		{"seat with shoulder", KindRafter, SeatCut{End: FaceStart, At: 30 * math.Sqrt(10) / 3, Run: 30, Angle: third}, 30 * 10 / 2 * 50},
		// A post's top 60 of 100 level, then 40 behind it falling 1:3.
		{"chamfer", KindPost, Chamfer{At: 1000, Seat: 60, Angle: third}, 40 * (40.0 / 3) / 2 * 50},
		{"blind hole", KindPost, Hole{Face: FaceEnd, Mouth: geom.V(1000, 25, 50), Diameter: 16, Depth: 200}, math.Pi * 64 * 200},
		{"through hole", KindPlate, Hole{Face: FaceOuter, Mouth: geom.V(300, 0, 50), Diameter: 13, Depth: 50, Through: true}, math.Pi * 42.25 * 50},
		{"hole from the right", KindPost, Hole{Face: FaceRight, Mouth: geom.V(300, 50, 40), Diameter: 13, Depth: 50, Through: true}, math.Pi * 42.25 * 50},
		// A check-out 30 deep from 800 up to the end, and one closed at both ends.
		{"check-out to the end", KindPost, CheckOut{Face: FaceOuter, Depth: 30, From: 800, To: 1000}, 30 * 200 * 50},
		{"closed check-out", KindPost, CheckOut{Face: FaceHouse, Depth: 30, From: 600, To: 800}, 30 * 200 * 50},
		{"check-out of a side", KindPost, CheckOut{Face: FaceRight, Depth: 10, From: 600, To: 800}, 10 * 200 * 100},
		{"check-out of a beam", KindBeam, CheckOut{Face: FaceTop, Depth: 10, From: 600, To: 800}, 10 * 200 * 50},
		{"socket", KindFooting, Socket{At: 900, Foot: Foot{10, 40, 20, 70}}, 100 * 30 * 50},
	} {
		m := Member{Kind: c.kind, Section: Section{Depth: 100, Width: 50}, Length: 1000, Features: []Feature{c.f}}
		s := carved(m)
		if got := 1000*100*50 - s.Volume(); math.Abs(got-c.want) > 1e-6*c.want {
			t.Errorf("%s takes away %.4f mm³, want %.4f", c.name, got, c.want)
		}
		// The mirror image takes away as much.
		m.Features[0] = c.f.Mirrored(m)
		if got := 1000*100*50 - carved(m).Volume(); math.Abs(got-c.want) > 1e-6*c.want {
			t.Errorf("%s, mirrored, takes away %.4f mm³, want %.4f", c.name, got, c.want)
		}
	}
}

// TestWeathering: a footing 300 square with a post 100 square in its middle,
// collar 40. What stands above the edge is a frustum: 40/3·(300² + 100² +
// 300·100).
func TestWeathering(t *testing.T) {
	m := Member{Kind: KindFooting, Section: Section{Depth: 300, Width: 300}, Length: 540}
	m.Features = []Feature{Weathering{At: 540, Collar: 40, Foot: Foot{100, 200, 100, 200}}}
	want := 300*300*500 + 40.0/3*(300*300+100*100+300*100)
	if got := carved(m).Volume(); math.Abs(got-want) > 1 {
		t.Errorf("volume %.2f, want %.2f", got, want)
	}
}

// TestMemberAxes: every kind's axes are right-handed and run as the package
// comment says.
func TestMemberAxes(t *testing.T) {
	f := mustBuild(t, walled(leanTo()))
	for _, m := range f.Members {
		a := m.Place
		if d := a.U.Cross(a.V).Sub(a.W).Len(); d > 1e-12 {
			t.Errorf("%s %d: axes are not right-handed", m.Kind, m.No)
		}
	}
	for kind, want := range map[Kind][3]geom.Vec{
		KindPlate:   {geom.V(1, 0, 0), geom.V(0, 1, 0), geom.V(0, 0, 1)},
		KindBeam:    {geom.V(1, 0, 0), geom.V(0, 1, 0), geom.V(0, 0, 1)},
		KindPost:    {geom.V(0, 0, 1), geom.V(1, 0, 0), geom.V(0, 1, 0)},
		KindFooting: {geom.V(0, 0, 1), geom.V(1, 0, 0), geom.V(0, 1, 0)},
		KindPacker:  {geom.V(0, 0, 1), geom.V(1, 0, 0), geom.V(0, 1, 0)},
	} {
		m := mustMember(t, f, kind)
		if got := [3]geom.Vec{m.Place.U, m.Place.V, m.Place.W}; got != want {
			t.Errorf("%s: axes %v, want %v", kind, got, want)
		}
	}
	r, b := mustMember(t, f, KindRafter), mustMember(t, f, KindBatten)
	if r.Place.U.Y >= 0 || r.Place.U.Z >= 0 || r.Place.V != geom.V(1, 0, 0) || r.Place.W.Z <= 0 {
		t.Errorf("rafter: axes %v, want out and down, right, up", r.Place)
	}
	if b.Place.U != geom.V(1, 0, 0) || b.Place.V.Y <= 0 || b.Place.V.Z <= 0 {
		t.Errorf("batten: axes %v, want right, up the fall to the house", b.Place)
	}
}

// TestLevelSeat reckons the level seat by hand: fall 1:20, 10 in. The shoulder
// is 10 ÷ 20 = 0.5 high, and the plate's floor stands that much above the
// sloping one's mouth: 190 − 10 − 90·√(401)/20 = 89.88… + 0.5.
func TestLevelSeat(t *testing.T) {
	j := leanTo()
	j.Rafters.Seat = SeatLevel
	f := mustBuild(t, j)
	h := housings(mustMember(t, f, KindPlate))[0]
	want := 190 - 10 - 90*math.Sqrt(401)/20 + 0.5
	if h.Slope != 0 || !near(h.Floor, want) {
		t.Errorf("floor %g at slope %g, want %g level", h.Floor, h.Slope, want)
	}
	n := 0
	for _, w := range mustMember(t, f, KindRafter).Features {
		if s, ok := w.(SeatCut); ok {
			n++
			if !near(s.Shoulder(), 0.5) {
				t.Errorf("shoulder %g, want 0.5", s.Shoulder())
			}
		}
	}
	if n != 2 {
		t.Errorf("%d seat cuts, want one at each end", n)
	}
}
