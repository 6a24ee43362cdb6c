package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

func TestBoreVolume(t *testing.T) {
	circle := math.Pi * 36
	for _, c := range []struct {
		name string
		b    Bore
		want float64
	}{
		{"blind", Bore{V(200, 0, 100), V(0, 1, 0), 6, 30}, circle * 30},
		{"through", Bore{V(200, 0, 100), V(0, 1, 0), 6, 1e4}, circle * 50},
		{"direction of any length", Bore{V(200, 0, 100), V(0, 7, 0), 6, 30}, circle * 30},
		{"skew", Bore{V(200, 0, 100), V(0.6, 0.8, 0), 6, 1e4}, circle * 50 / 0.8},
		{"across a slot", Bore{V(520, 0, 100), V(0, 1, 0), 6, 1e4}, circle * 40},
		{"outwards", Bore{V(200, 0, 100), V(0, -1, 0), 6, 30}, 0},
		{"no radius", Bore{V(200, 0, 100), V(0, 1, 0), 0, 30}, 0},
		{"no depth", Bore{V(200, 0, 100), V(0, 1, 0), 6, 0}, 0},
		{"no direction", Bore{V(200, 0, 100), Vec{}, 6, 30}, 0},
	} {
		s := beam().Minus(box(500, 20, -9, 540, 30, 999))
		if got := s.Volume() - s.WithBore(c.b).Volume(); !near64(got, c.want, 1e-6) {
			t.Errorf("%s: takes %g, want %g", c.name, got, c.want)
		}
	}
	if !(Solid{}).WithBore(Bore{V(0, 0, 0), V(0, 1, 0), 6, 30}).Empty() {
		t.Error("a bore makes something of nothing")
	}
}

// A bore that passes from cell to cell is one bore still; one that passes a
// slot is two.
func TestBoreAcrossSeams(t *testing.T) {
	s := beam().Minus(pocket(100), box(195, 20, 120, 215, 30, 999))
	for _, c := range []struct {
		at   Vec
		want int
	}{{V(120, 0, 100.5), 1}, {V(200, 0, 80), 1}, {V(200, 0, 120), 1}, {V(200, 0, 150), 2}} {
		b := Bore{c.at, V(0, 1, 0), 1, 1e4}
		if got := s.runs(b); len(got) != c.want {
			t.Errorf("at %v: runs %v, want %d", c.at, got, c.want)
		}
	}
	// A mouth a little off the surface, either way, is on it.
	for _, y := range []float64{-0.005, 0.005} {
		r := s.runs(Bore{V(50, y, 50), V(0, 1, 0), 1, 20 - y})
		if len(r) != 1 || !near64(r[0].from, -y, 1e-9) || r[0].fromAt.N != V(0, -1, 0) {
			t.Errorf("mouth at %g: runs %v", y, r)
		}
	}
	along := Bore{V(0, 45, 50), V(1, 0, 0), 1, 1e4}
	if got := s.runs(along); len(got) != 1 || !near64(got[0].to, 1000, 1e-9) {
		t.Errorf("along the beam: runs %v", got)
	}
	if len(s.d.cells) < 6 {
		t.Errorf("%d cells are too few to tell", len(s.d.cells))
	}
}

func TestBoreStrokes(t *testing.T) {
	bar := Box(V(0, 0, 0), V(100, 10, 20))
	outline := "1v 0,0 100,0; 1v 0,20 100,20; 1v 0,0 0,20; 1v 100,0 100,20; "
	plan := "1v 0,0 100,0; 1v 0,10 100,10; 1v 0,0 0,10; 1v 100,0 100,10; "
	through := bar.WithBore(Bore{V(50, 0, 10), V(0, 1, 0), 4, 99})
	blind := bar.WithBore(Bore{V(50, 0, 10), V(0, 1, 0), 4, 6})
	plate := Box(V(50, -5, -5), V(120, -1, 40))
	plateLines := "; 2v 50,-5 50,40; 2v 120,-5 120,40; 2v 50,-5 120,-5; 2v 50,40 120,40"
	for _, c := range []struct {
		name string
		v    View
		b    []Body
		want string
	}{
		{"through, from the front", Front(), bodies(through), outline + "1v arc 50,10 4,0 1.000 0..360"},
		{"through, from above", Plan(), bodies(through), plan + "1h 46,0 46,10; 1h 54,0 54,10"},
		{"blind, from behind", Back(), bodies(blind),
			"1v -100,0 0,0; 1v -100,20 0,20; 1v -100,0 -100,20; 1v 0,0 0,20; 1h arc -50,10 4,0 1.000 0..360"},
		{"blind, from above", Plan(), bodies(blind), plan + "1h 46,0 46,6; 1h 54,0 54,6; 1h 46,6 54,6"},
		{"half behind a plate", Front(), bodies(through, plate),
			"1v 0,0 50,0; 1v 0,20 50,20; 1v 0,0 0,20; 1h 50,0 100,0; 1h 50,20 100,20; 1h 100,0 100,20; " +
				"1v arc 50,10 4,0 1.000 90..270; 1h arc 50,10 4,0 1.000 270..450" + plateLines},
		// Cut along its axis a bore shows its half circles on the faces left.
		{"cut open, from the front", Front(), bodies(through.Cut(PlaneAt(V(50, 0, 0), V(1, 0, 0)))),
			"1v 0,0 50,0; 1v 0,20 50,20; 1v 0,0 0,20; 1v 50,0 50,20; 1v arc 50,10 4,0 1.000 90..270"},
		// A mouth in a sloping face is an ellipse there and a circle along the bore.
		{"in a slope, along the bore", Front(), bodies(bar.Cut(PlaneAt(V(0, 10, 10), V(0, -1, 1))).WithBore(Bore{V(50, 10, 10), V(0, 1, 0), 4, 99})),
			"1v 0,0 100,0; 1v 0,0 0,10; 1v 100,0 100,10; 1v 0,10 100,10"},
		{"in a slope, square to it", ViewOf(Axes{U: V(1, 0, 0), V: V(0, math.Sqrt2/2, math.Sqrt2/2), W: V(0, -math.Sqrt2/2, math.Sqrt2/2)}),
			bodies(Box(V(0, -50, -50), V(100, 50, 50)).Cut(PlaneAt(V(0, 0, 0), V(0, -1, 1))).WithBore(Bore{V(50, 0, 0), V(0, 1, 0), 4, 20})),
			"1v 0,-70.711 100,-70.711; 1v 0,-70.711 0,70.711; 1v 100,-70.711 100,70.711; 1v 0,70.711 100,70.711;" +
				fmt.Sprintf("1v arc 50,0 0,%g 0.707 0..360; 1h arc 50,%g 4,0 0.707 0..360; 1h 0,0 100,0; ", r2(4*math.Sqrt2), r2(20*math.Sqrt2/2)) +
				fmt.Sprintf("1h 46,0 46,%g; 1h 54,0 54,%g", r2(20*math.Sqrt2/2), r2(20*math.Sqrt2/2))},
	} {
		if got, want := list(Strokes(c.v, c.b, Options{})), lines(c.want); got != want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, want)
		}
	}
}

func r2(x float64) float64 { return math.Round(x*1e3) / 1e3 }

// Arcs against rays: points of every arc in random piles are judged like those
// of straight lines.
func TestArcsAgainstRays(t *testing.T) {
	sure, arcs := 0, 0
	for i := range 150 {
		r := rand.New(rand.NewPCG(19, uint64(i)))
		p := randomPile(r, i%2 == 0)
		for j, b := range p.bodies {
			if b.Solid.Empty() {
				continue
			}
			f := b.Solid.Faces()[0]
			at := f.Loops[0][0].Lerp(f.Loops[0][2%len(f.Loops[0])], 0.4)
			p.bodies[j].Solid = b.Solid.WithBore(Bore{at, f.Plane.N.Neg(), 2 + 3*r.Float64(), 8 + 60*r.Float64()})
		}
		for _, s := range Strokes(p.view, p.bodies, Options{PerBody: true}) {
			if s.Arc == nil {
				continue
			}
			arcs++
			if d := s.Arc.At(s.Arc.Start).Sub(s.A).Len() + s.Arc.At(s.Arc.End).Sub(s.B).Len(); d > 1e-9 {
				t.Errorf("pile %d: the arc misses its ends by %g", i, d)
			}
			if !(s.Arc.Start < s.Arc.End && s.Arc.End-s.Arc.Start <= 2*math.Pi+1e-9 && s.Arc.Ratio > 0 && s.Arc.Ratio <= 1) {
				t.Errorf("pile %d: arc %+v", i, *s.Arc)
			}
			sure += p.judgeArc(t, i, s)
		}
	}
	if arcs < 300 || sure < 1000 {
		t.Errorf("%d arcs with %d sure points were too few to tell", arcs, sure)
	}
}

// judgeArc tries points along an arc. The rim's plane is not in the stroke, so
// every rim of the body is tried that has the point on it.
func (p piled) judgeArc(t *testing.T, pile int, s Stroke) int {
	sure := 0
	b := p.bodies[s.Body].Solid
	for k := range 6 {
		at := s.Arc.At(s.Arc.Start + (s.Arc.End-s.Arc.Start)*(0.07+0.86*float64(k)/5))
		states := map[verdict]int{}
		for _, o := range b.Bores() {
			for _, run := range b.runs(o) {
				for _, pl := range []Plane{run.fromAt, run.toward} {
					// The model point: on the rim's plane along the line of sight.
					x := p.view.Right.Mul(at.X).Add(p.view.Up.Mul(at.Y))
					slope := pl.N.Dot(p.view.Toward)
					if math.Abs(slope) < 1e-6 {
						continue
					}
					x = x.Sub(p.view.Toward.Mul(pl.Dist(x) / slope))
					w := x.Sub(o.At)
					if math.Abs(w.Sub(o.Dir.Mul(w.Dot(o.Dir))).Len()-o.Radius) < 1e-6 {
						states[p.judgeRing(x)]++
					}
				}
			}
		}
		if states[seen]+states[covered] == 0 {
			continue
		}
		sure++
		if s.Hidden && states[covered]+states[unsure] == 0 || !s.Hidden && states[seen]+states[unsure] == 0 {
			t.Errorf("pile %d: body %d, arc point %v: hidden is %v, verdicts %v", pile, s.Body, at, s.Hidden, states)
		}
	}
	return sure
}

// judgeRing judges a point with a little room all round.
func (p piled) judgeRing(x Vec) verdict {
	v := unsure
	for k := range 8 {
		sin, cos := math.Sincos(float64(k) * math.Pi / 4)
		y := x.Add(p.view.Right.Mul(0.01 * cos)).Add(p.view.Up.Mul(0.01 * sin))
		most := 0.0
		for _, c := range p.shapes {
			most = max(most, c.ahead(y.Add(p.view.Toward.Mul(0.05)), p.view.Toward))
		}
		now := covered
		if most == 0 {
			now = seen
		} else if most < 0.1 {
			return unsure
		}
		if k > 0 && now != v {
			return unsure
		}
		v = now
	}
	return v
}
