package draw

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"plumbcut/geom"
)

// randomAround fills the parts round a view with rows, levels, notes, a
// section mark and a title.
func randomAround(r *rand.Rand, v *View, b Rect) *Around {
	a := NewAround(v, b)
	noted := r.Intn(2) // the side of the notes: 0 Left, 1 Right
	for _, rows := range []*Rows{a.Bottom, a.Top, [2]*Rows{a.Right, a.Left}[noted]} {
		for range r.Intn(3) {
			addRandomRow(r, rows, min(b.W(), b.H()))
		}
	}
	at := func() geom.Vec { return geom.V(b.W()*r.Float64(), 0, b.H()*r.Float64()) }
	words := []string{"top of beam at inner arris", "finished ground", "underside of plate", "Ångström"}
	for range r.Intn(7) {
		a.Levels([2]Side{Right, Left}[noted]).Add(words[r.Intn(4)], at())
	}
	for range r.Intn(7) {
		a.Notes([2]Side{Left, Right}[noted]).Add("Rafter housed into the beam; the housing follows the fall"[:10+r.Intn(40)], at())
	}
	if r.Intn(2) == 0 {
		c := at()
		a.Cut(Section{A: c, B: c.Add(geom.V(0, 0, 1)), Look: geom.V(1, 0, 0), Letter: "A", Sheet: "T"})
	}
	a.Title = &Title{View: v, Name: "Front elevation", Note: "seen standing outside"}
	return a
}

// The parts round a view touch neither each other nor leave the room that they
// announce, whatever they are and whatever the scale.
func TestAroundNeverTouches(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	for k := range 300 {
		h := hand([]string{"A0", "A1"}[k%2])
		scale := []float64{0.02, 0.05, 0.1}[r.Intn(3)]
		size := min(300+5000*r.Float64(), 150/scale)
		v := front(scale, geom.P(330, 230))
		b := Rect{0, 0, size, size * (0.4 + 0.6*r.Float64())}
		a := randomAround(r, v, b)
		s := &Sheet{Number: "T", Paper: h.Paper}
		p := NewPlacer(s, h)
		a.Draw(p)
		for _, f := range s.Audit(h.Figures) {
			if f.Rule == RuleLeaderEnd || f.Rule == RuleOutside {
				continue // there is no picture, and the sheet is not laid out
			}
			t.Fatalf("job %d: %v", k, f)
		}
		room := a.Extent(h).Expand(1)
		for _, it := range s.Items {
			if it.Text != nil && !room.Encloses(it.Text.Box()) {
				t.Fatalf("job %d: %q at %v stands outside %v", k, it.Text.String, it.Text.Box(), room)
			}
		}
	}
}

// Margins do not depend on where the view stands, so a sheet can be laid out
// before anything is placed.
func TestMarginsStandStill(t *testing.T) {
	r := rand.New(rand.NewSource(6))
	h := hand("A1")
	for k := range 50 {
		v := front(0.05, geom.P(0, 0))
		a := randomAround(r, v, Rect{0, 0, 2000, 1500})
		before := a.Margins(h)
		v.At, v.Base = geom.P(123.4, 98.7), geom.P(10, 20)
		if after := a.Margins(h); !sameMargins(before, after) {
			t.Fatalf("job %d: margins %v, then %v", k, before, after)
		}
	}
}

func sameMargins(a, b Margins) bool {
	const same = 1e-9
	return math.Abs(a.Left-b.Left)+math.Abs(a.Right-b.Right)+math.Abs(a.Top-b.Top)+math.Abs(a.Bottom-b.Bottom) < same
}

// The parts are drawn where the view stands when they are drawn.
func ExampleAround() {
	paper, _ := PaperByName("A3")
	h := Hand{Paper: paper, Figures: wholeMillimetres{}}
	v := &View{Axes: geom.Front(), Scale: 1.0 / 50}
	bounds := Rect{0, 0, 4000, 2400} // in the view plane, mm of the model
	left, middle, right := geom.V(0, 0, 0), geom.V(1900, 0, 0), geom.V(4000, 0, 0)

	a := NewAround(v, bounds)
	a.Bottom.Chain("posts", left, middle, right).Overall("", left, right)
	a.Levels(Right).Add("top of beam", geom.V(4000, 0, 2400))
	a.Title = &Title{View: v, Name: "Front elevation"}

	m := a.Margins(h) // known before anything is placed
	v.At = geom.P(40+m.Left, 40+m.Bottom)

	s := &Sheet{Number: "A03", Paper: paper}
	s.Rect(Style{Layer: Outline, Pen: Middle}, v.Outline(bounds)) // the picture itself
	a.Draw(NewPlacer(s, h))
	for _, d := range s.Dims {
		fmt.Println(d.Row, d.Figure)
	}
	fmt.Println(len(s.Audit(h.Figures)), "findings")
	// Output:
	// 0 1900
	// 0 2100
	// 1 4000
	// -1 +2400  top of beam
	// 0 findings
}

// wholeMillimetres is the least that a Hand needs to write figures.
type wholeMillimetres struct{}

func (wholeMillimetres) Round(mm float64) float64 { return math.Round(mm) }
func (wholeMillimetres) Length(mm float64) string { return fmt.Sprintf("%.0f", mm) }
func (wholeMillimetres) Level(mm float64) string  { return fmt.Sprintf("%+.0f", mm) }
func (wholeMillimetres) Angle(rad float64) string { return fmt.Sprintf("%.1f°", rad*180/math.Pi) }
func (wholeMillimetres) Slope(rad float64) string { return fmt.Sprintf("1:%.1f", 1/math.Tan(rad)) }

// Closed up, a view whose words stand out takes less room: its title begins
// farther left, and the titles of its rows are folded, upper line first.
func TestCloseSavesRoom(t *testing.T) {
	h := hand("A4")
	v := front(0.01, geom.P(100, 150))
	b := Rect{0, 0, 1500, 3000}
	a := NewAround(v, b)
	a.Left.Overall("", geom.Vec{}, geom.V(0, 0, 3000))
	a.Right.Chain("packer, plate, clear, beam, post, beam", geom.Vec{}, geom.V(0, 0, 3000))
	a.Bottom.Chain("rafter spaces", geom.Vec{}, geom.V(1500, 0, 0))
	a.Title = &Title{View: v, Name: "Framing plan", Note: "seen from above, without battens", NoBar: true}
	open := a.Extent(h)
	a.Close = true
	shut := a.Extent(h)
	if shut.W() > open.W()-5 || shut.H() > open.H()-15 {
		t.Errorf("closed up it takes %.1f × %.1f, as it was %.1f × %.1f", shut.W(), shut.H(), open.W(), open.H())
	}
	s := &Sheet{Number: "T", Paper: h.Paper}
	a.Draw(NewPlacer(s, h))
	at := map[string]geom.Pt{}
	for _, it := range s.Items {
		if it.Text != nil {
			at[it.Text.String] = it.Text.At
			if !shut.Expand(slack).Encloses(it.Text.Box()) {
				t.Errorf("%q stands out of the room", it.Text.String)
			}
		}
	}
	for _, pair := range [][2]string{{"packer, plate, clear,", "beam, post, beam"}, {"rafter", "spaces"}} {
		upper, ok := at[pair[0]]
		lower, ok2 := at[pair[1]]
		if !ok || !ok2 || upper.X >= lower.X && upper.Y <= lower.Y {
			t.Errorf("%q stands at %v, %q at %v", pair[0], upper, pair[1], lower)
		}
	}
}
