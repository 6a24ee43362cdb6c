package draw

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"plumbcut/geom"
)

// frameOf draws a row of n posts with a beam on top, as boxes of the front
// view, and returns the view: posts 90 wide and 2200 high, 1500 apart.
func frameOf(s *Sheet, n int) *View {
	v := front(1.0/50, geom.P(80, 120))
	box := func(id string, x0, z0, x1, z1 float64) {
		p := PolygonPath(Style{Layer: Outline, Pen: Middle}, []geom.Pt{
			v.Pt(geom.V(x0, 0, z0)), v.Pt(geom.V(x1, 0, z0)), v.Pt(geom.V(x1, 0, z1)), v.Pt(geom.V(x0, 0, z1)),
		})
		p.ID = id
		s.Add(p)
	}
	for i := range n {
		x := 1500 * float64(i)
		box(fmt.Sprint("P", i+1), x-45, 0, x+45, 2200)
	}
	box("B1", -300, 2200, 1500*float64(n-1)+300, 2390)
	return v
}

// Labels and part marks on a crowded elevation: nothing touches, no leaders
// cross, every one names its member.
func TestLabelsNeverTouch(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	h := hand("A3")
	for k := range 150 {
		s := &Sheet{Number: "T", Paper: h.Paper}
		n := 2 + r.Intn(6)
		v := frameOf(s, n)
		p := NewPlacer(s, h)
		for i := range n {
			p.Part(Part{View: v, At: geom.V(1500*float64(i), 0, 400+1500*r.Float64()), Mark: fmt.Sprint("P", i+1), ID: fmt.Sprint("P", i+1)})
		}
		p.Part(Part{View: v, At: geom.V(700, 0, 2300), Mark: "B1", ID: "B1"})
		for range r.Intn(5) {
			i := r.Intn(n)
			p.Label(Label{View: v, At: geom.V(1500*float64(i)+45, 0, 2000*r.Float64()), Text: "Post 90 × 90, set in concrete; top chamfered behind the beam", Width: 30 + 30*r.Float64()})
		}
		p.Detail(Detail{View: v, At: geom.V(0, 0, 2250), Radius: 300, Number: "1", Sheet: "T"})
		for _, f := range s.Audit(h.Figures) {
			t.Fatalf("job %d: %v", k, f)
		}
	}
}

// Part marks are all of one height, and of one width up to three characters.
func TestPartMarksAreAlike(t *testing.T) {
	for _, mark := range []string{"R1", "B1", "R12", "P1"} {
		if w, h := partSize(mark); w != partWidth || h != partHeight {
			t.Errorf("%s: %g × %g, want %g × %g", mark, w, h, partWidth, partHeight)
		}
	}
	if w, _ := partSize("R1 to R24"); w < TextWidth("R1 to R24", NoteHeight, false)+2 {
		t.Errorf("a long mark is only %g wide", w)
	}
}

// A part mark with room stands on its member without a leader.
func TestPartOnMember(t *testing.T) {
	h := hand("A3")
	s := &Sheet{Number: "T", Paper: h.Paper}
	v := front(0.1, geom.P(100, 100))
	s.Rect(Style{Layer: Outline, Pen: Middle}, Rect{100, 100, 130, 120})
	m := NewPlacer(s, h).Part(Part{View: v, At: geom.V(150, 0, 100), Mark: "P1"})
	if len(m.Leader) != 0 || m.Box.Centre() != geom.P(115, 110) {
		t.Errorf("mark %+v, want it on the member", m)
	}
}

// The leader of a part mark starts on the outline of its box, whatever the
// direction.
func TestRoundEnd(t *testing.T) {
	box := Rect{-4.5, -2.5, 4.5, 2.5}
	for deg := 0; deg < 360; deg += 7 {
		sin, cos := math.Sincos(float64(deg) * math.Pi / 180)
		p := roundEnd(box, geom.P(20*cos, 20*sin))
		onFlat := math.Abs(math.Abs(p.Y)-2.5) < 1e-9 && math.Abs(p.X) <= 2+1e-9
		onEnd := math.Abs(p.Sub(geom.P(math.Copysign(2, p.X), 0)).Len()-2.5) < 1e-9 && math.Abs(p.X) >= 2-1e-9
		if !onFlat && !onEnd {
			t.Errorf("%d°: %v is not on the outline", deg, p)
		}
		if math.Abs(p.Cross(geom.P(cos, sin))) > 1e-9 {
			t.Errorf("%d°: %v is not on the way to the target", deg, p)
		}
	}
}

// The leaders of a column of notes never cross, wherever they point.
func TestNoteColumnLeadersNeverCross(t *testing.T) {
	r := rand.New(rand.NewSource(8))
	h := hand("A2")
	for k := range 500 {
		v := front(0.2, geom.P(200, 120))
		c := NewNoteColumn(v, Rect{0, 0, 400, 800}, Side(2+r.Intn(2)))
		for range 2 + r.Intn(9) {
			c.Add("Bolt with washers, two a post"[:4+r.Intn(25)], geom.V(400*r.Float64(), 0, 800*r.Float64()))
		}
		s := &Sheet{Number: "T", Paper: h.Paper}
		c.Draw(NewPlacer(s, h))
		for _, f := range s.Audit(h.Figures) {
			if f.Rule != RuleLeaderEnd { // there is no picture
				t.Fatalf("job %d: %v", k, f)
			}
		}
		for _, m := range s.Marks {
			if !c.Extent().Expand(0.1).Encloses(m.Box) {
				t.Fatalf("job %d: %v stands outside %v", k, m.Box, c.Extent())
			}
		}
	}
}

// Of several points the leader takes the one that it reaches without crossing
// a text.
func TestNoteColumnChoosesTarget(t *testing.T) {
	h := hand("A3")
	s := &Sheet{Number: "T", Paper: h.Paper}
	v := front(0.1, geom.P(100, 100))
	bounds := Rect{0, 0, 400, 400}
	s.Rect(Style{Layer: Outline, Pen: Middle}, v.Outline(bounds))
	s.AddText(note("IN THE WAY", 118, 121))
	c := NewNoteColumn(v, bounds, Right)
	c.Add("Edge", geom.V(0, 0, 200), geom.V(200, 0, 400))
	c.Draw(NewPlacer(s, h))
	if got, want := s.Marks[0].Target(), geom.P(120, 140); got != want {
		t.Errorf("the leader ends at %v, want %v", got, want)
	}
}

func TestLevelStack(t *testing.T) {
	h := hand("A3")
	v := front(1.0/50, geom.P(80, 120))
	l := NewLevelStack(v, Rect{0, -300, 3000, 2500}, Right)
	for _, z := range []float64{2400, 0, 2385.4, 2400, -300} {
		l.Add("surface", geom.V(3000, 0, z))
	}
	s := &Sheet{Number: "T", Paper: h.Paper}
	l.Draw(s, h)
	if got, want := figuresOf(s, LevelDim), "−300  surface ±0  surface +2385  surface +2400  surface +2400  surface"; got != want {
		t.Errorf("levels %s, want %s", got, want)
	}
	for _, f := range append(s.Audit(h.Figures), s.LineGaps()...) {
		if f.Rule != RuleLinesClose { // 14.6 mm apart at 1:50
			t.Error(f)
		}
	}
	room := l.Extent(h)
	for _, d := range s.Dims {
		if !room.Expand(0.5).Encloses(d.Box) {
			t.Errorf("%q at %v stands outside %v", d.Figure, d.Box, room)
		}
	}
}

func BenchmarkMargins(b *testing.B) {
	r := rand.New(rand.NewSource(9))
	a := randomAround(r, front(0.05, geom.P(300, 300)), Rect{0, 0, 3000, 2000})
	h := hand("A1")
	b.ReportAllocs()
	for b.Loop() {
		a.Margins(h)
	}
}

func BenchmarkAudit(b *testing.B) {
	r := rand.New(rand.NewSource(9))
	h := hand("A1")
	s := &Sheet{Number: "T", Paper: h.Paper}
	randomAround(r, front(0.05, geom.P(300, 300)), Rect{0, 0, 3000, 2000}).Draw(NewPlacer(s, h))
	s.DrawFrame(fullBlock())
	b.ReportAllocs()
	for b.Loop() {
		s.Audit(h.Figures)
	}
}
