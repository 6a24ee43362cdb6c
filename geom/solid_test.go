package geom

import (
	"math"
	"sync"
	"testing"
)

func near64(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

// box is short for the half-spaces of a box.
func box(x0, y0, z0, x1, y1, z1 float64) Convex {
	return Box3{V(x0, y0, z0), V(x1, y1, z1)}.Convex()
}

// beam is 1000 long, 50 thick and 200 deep.
func beam() Solid { return Box(V(0, 0, 0), V(1000, 50, 200)) }

// pocket is a blind pocket in the beam's back, 45 wide and 12 deep, open at
// the top; its floor falls 1 in 10 towards the beam's back.
func pocket(x float64) Convex {
	floor := PlaneAt(V(0, 50, 100), V(0, -1, -10))
	return append(Convex{{V(-1, 0, 0), -x}, {V(1, 0, 0), x + 45}, {V(0, -1, 0), -38}}, floor)
}

// shapes with figures worked out by hand.
var shapes = []struct {
	name         string
	s            Solid
	volume       float64
	faces, edges int
}{
	{"box", beam(), 1000 * 50 * 200, 6, 12},
	{"empty", Solid{}, 0, 0, 0},
	{"flat box", Box(V(0, 0, 0), V(10, 10, 0)), 0, 0, 0},
	{"cut square", beam().Cut(PlaneAt(V(900, 0, 0), V(1, 0, 0))), 900 * 50 * 200, 6, 12},
	{"cut skew", beam().Cut(PlaneAt(V(900, 0, 0), V(1, 0, 0.5))), 850 * 50 * 200, 6, 12},
	{"corner off", beam().Cut(PlaneAt(V(990, 0, 200), V(1, -1, 1))), 1e7 - 1000./6, 7, 15},
	{"cut away", beam().Cut(PlaneAt(V(-1, 0, 0), V(1, 0, 0))), 0, 0, 0},
	{"cut beside", beam().Cut(PlaneAt(V(1000, 0, 0), V(1, 0, 0))), 1e7, 6, 12},
	// Two walls, a back and a floor more; of the beam's top back arris the
	// pocket takes a piece out.
	{"pocket", beam().Minus(pocket(100)), 1e7 - 45*12*99.4, 10, 24},
	{"two pockets", beam().Minus(pocket(100)).Minus(pocket(500)), 1e7 - 2*45*12*99.4, 14, 36},
	{"pockets at once", beam().Minus(pocket(100), pocket(500)), 1e7 - 2*45*12*99.4, 14, 36},
	{"same pocket twice", beam().Minus(pocket(100), pocket(100)), 1e7 - 45*12*99.4, 10, 24},
	{"pockets side by side", beam().Minus(pocket(100), pocket(145)), 1e7 - 90*12*99.4, 10, 24},
	{"through notch", beam().Minus(box(300, -9, 150, 350, 99, 999)), 1e7 - 50*50*50, 10, 24},
	{"cut in two", beam().Minus(box(300, -9, -9, 350, 99, 999)), 1e7 - 50*50*200, 12, 24},
	{"square hole", beam().Minus(box(300, -9, 50, 350, 99, 100)), 1e7 - 50*50*50, 10, 24},
	{"cave", beam().Minus(box(300, 10, 50, 350, 40, 100)), 1e7 - 50*30*50, 12, 24},
	{"slab off the end", beam().Minus(box(900, -9, -9, 1001, 99, 999)), 9e6, 6, 12},
	{"touching only", beam().Minus(box(1000, 0, 0, 1100, 50, 200)), 1e7, 6, 12},
	{"half lap", beam().Minus(box(950, -9, 100, 1001, 99, 999)), 1e7 - 50*50*100, 8, 18},
	// Two bars that meet in one line: it is an edge once, and so is each line
	// that runs on from one bar to the other.
	{"quarters", Box(V(0, 0, 0), V(20, 20, 20)).Minus(box(-1, -1, -1, 10, 10, 21), box(10, 10, -1, 21, 21, 21)), 4000, 12, 19},
	{"whole", FromConvex(nil).Minus(box(-2e6, -2e6, -2e6, 2e6, 2e6, 1e6-1)), 4e12, 6, 12},
	{"void", FromConvex(append(box(0, 0, 0, 1, 1, 1), Plane{V(0, 0, 1), -1})), 0, 0, 0},
}

func TestShapes(t *testing.T) {
	at := Axes{O: V(48000, -3000, 2400), U: V(0, 0.8, 0.6), V: V(-1, 0, 0), W: V(0, -0.6, 0.8)}
	for _, c := range shapes {
		for _, s := range []Solid{c.s, c.s.Placed(at)} {
			if v := s.Volume(); !near64(v, c.volume, 1e-6*max(c.volume, 1)) {
				t.Errorf("%s: volume %.6f, want %.6f", c.name, v, c.volume)
			}
			if n := len(s.Faces()); n != c.faces {
				t.Errorf("%s: %d faces, want %d", c.name, n, c.faces)
			}
			if n := len(s.Edges()); n != c.edges {
				t.Errorf("%s: %d edges, want %d", c.name, n, c.edges)
			}
			if err := s.Check(); err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			if s.Empty() != (c.volume == 0) {
				t.Errorf("%s: Empty() = %v", c.name, s.Empty())
			}
		}
	}
}

// An operation must leave the solid that it starts from as it was, also when
// two grow out of the same one.
func TestSolidsAreValues(t *testing.T) {
	a := beam()
	b := a.Minus(pocket(100))
	c := a.Cut(PlaneAt(V(500, 0, 0), V(1, 0, 0.1)))
	d := b.Minus(pocket(300))
	e := b.Minus(pocket(600)).WithBore(Bore{V(50, 0, 50), V(0, 1, 0), 5, 50})
	one := 45 * 12 * 99.4
	for i, x := range []struct {
		s     Solid
		want  float64
		faces int
	}{
		{a, 1e7, 6}, {b, 1e7 - one, 10}, {c, 490 * 50 * 200, 6},
		{d, 1e7 - 2*one, 14}, {e, 1e7 - 2*one - math.Pi*25*50, 14},
	} {
		if v := x.s.Volume(); !near64(v, x.want, 1e-3) {
			t.Errorf("solid %d: volume %.4f, want %.4f", i, v, x.want)
		}
		if n := len(x.s.Faces()); n != x.faces {
			t.Errorf("solid %d: %d faces, want %d", i, n, x.faces)
		}
		if err := x.s.Check(); err != nil {
			t.Errorf("solid %d: %v", i, err)
		}
	}
	if len(b.Bores()) != 0 || len(e.Bores()) != 1 {
		t.Errorf("bores: %d and %d, want 0 and 1", len(b.Bores()), len(e.Bores()))
	}
}

// Solids that grow out of one share its planes but do not see each other's.
func TestTablesDoNotMix(t *testing.T) {
	a := beam()
	b, c := a.Minus(pocket(100)), a.Minus(pocket(300))
	if n, m := len(b.d.planes), len(c.d.planes); n != 10 || m != 10 {
		t.Errorf("%d and %d planes, want 10 each", n, m)
	}
	if b.d.tab != a.d.tab || c.d.tab == a.d.tab {
		t.Error("the first to grow goes on with the table, the next takes a copy")
	}
}

// A pocket far from a cell must leave the cell itself in place, or a long
// timber would be copied again for every pocket.
func TestCutsStayLocal(t *testing.T) {
	s := beam()
	for x := 50.0; x < 950; x += 100 {
		s = s.Minus(pocket(x))
	}
	if n := len(s.d.cells); n > 4*9+1 {
		t.Errorf("nine pockets made %d cells", n)
	}
	if got := s.Minus(box(0, 60, 0, 1000, 70, 200), box(200, 49, 300, 300, 60, 400)); got.d != s.d {
		t.Error("a shape that is not entered made a new solid")
	}
}

func TestFacesAndTheirLoops(t *testing.T) {
	s := beam().Minus(box(300, -9, 50, 350, 99, 100), box(500, -9, 50, 600, 99, 100))
	holes := 0
	for _, f := range s.Faces() {
		for i, l := range f.Loops {
			if a := loopArea(l, f.Plane.N); (a > 0) != (i == 0) {
				t.Errorf("loop %d of the face %v has area %g", i, f.Plane.N, a)
			}
			for _, p := range l {
				if d := f.Plane.Dist(p); !near64(d, 0, 1e-9) {
					t.Errorf("%v lies %g off its plane", p, d)
				}
			}
		}
		holes += len(f.Loops) - 1
		if f.Plane.N == V(0, -1, 0) && !near64(f.Area(), 1000*200-50*50-100*50, 1e-6) {
			t.Errorf("front has area %g", f.Area())
		}
	}
	if holes != 4 {
		t.Errorf("%d holes, want 4", holes)
	}
}

// A plane is the same whatever the length of its normal.
func TestPlanesOfAnyLength(t *testing.T) {
	slope := PlaneAt(V(500, 0, 0), V(1, 0, 0.5).Unit())
	want := beam().Cut(slope).Volume()
	for _, k := range []float64{1e-3, 0.5, 3, 1e4} {
		long := Plane{slope.N.Mul(k), slope.D * k}
		if got := beam().Cut(long).Volume(); !near64(got, want, 1e-6*want) {
			t.Errorf("cut by a plane with a normal of length %g: %g, want %g", k, got, want)
		}
		if got := beam().Minus(Convex{long}).Volume(); !near64(got, beam().Volume()-want, 1e-6*want) {
			t.Errorf("less what is behind a plane with a normal of length %g: %g, want %g", k, got, beam().Volume()-want)
		}
	}
}

// An island in a groove is a face of its own, and a hole in it is its hole.
func TestHolesGoToTheirFace(t *testing.T) {
	groove := []Convex{
		box(20, 20, 40, 80, 30, 60), box(20, 70, 40, 80, 80, 60),
		box(20, 20, 40, 30, 80, 60), box(70, 20, 40, 80, 80, 60),
	}
	s := Box(V(0, 0, 0), V(100, 100, 50)).Minus(append(groove, box(45, 45, 30, 55, 55, 60))...)
	want := map[float64]bool{100*100 - 60*60: true, 40*40 - 10*10: true}
	for _, f := range s.Faces() {
		if f.Plane.N != V(0, 0, 1) || !near64(f.Plane.D, 50, 1e-9) {
			continue
		}
		a := math.Round(f.Area())
		if !want[a] || len(f.Loops) != 2 {
			t.Errorf("a face on top has an area of %g and %d loops", a, len(f.Loops))
		}
		delete(want, a)
	}
	for a := range want {
		t.Errorf("no face on top has an area of %g", a)
	}
}

func TestBounds(t *testing.T) {
	if b := (Solid{}).Bounds(); !b.Empty() || b.Size() != (Vec{}) || b.Centre() != (Vec{}) {
		t.Errorf("the empty solid has bounds %v", b)
	}
	at := Axes{O: V(10, 20, 30), U: V(0, 1, 0), V: V(-1, 0, 0), W: V(0, 0, 1)}
	if b, want := beam().Placed(at).Bounds(), (Box3{V(-40, 20, 30), V(10, 1020, 230)}); b != want {
		t.Errorf("Bounds() = %v, want %v", b, want)
	}
}

func TestPrism(t *testing.T) {
	ell := []Pt{{0, 0}, {100, 0}, {100, 20}, {20, 20}, {20, 100}, {0, 100}}
	cw := []Pt{{0, 100}, {20, 100}, {20, 20}, {100, 20}, {100, 0}, {0, 0}}
	extra := []Pt{{0, 0}, {50, 0}, {50, 0}, {100, 0}, {100, 20}, {20, 20}, {20, 100}, {0, 100}, {0, 50}}
	comb := []Pt{{0, 0}, {90, 0}, {90, 50}, {80, 50}, {80, 10}, {50, 10}, {50, 50}, {40, 50}, {40, 10}, {10, 10}, {10, 50}, {0, 50}}
	for _, c := range []struct {
		name         string
		p            []Pt
		volume       float64
		faces, edges int
	}{
		{"L", ell, 180000, 8, 18},
		{"L clockwise", cw, 180000, 8, 18},
		{"L with points to spare", extra, 180000, 8, 18},
		{"comb", comb, 50 * (900 + 3*400), 14, 36},
		{"bow tie", []Pt{{0, 0}, {10, 10}, {10, 0}, {0, 10}}, 0, 0, 0},
		{"line", []Pt{{0, 0}, {10, 0}, {20, 0}}, 0, 0, 0},
		{"point", []Pt{{0, 0}}, 0, 0, 0},
		{"nothing", nil, 0, 0, 0},
	} {
		s := Prism(c.p, nil, 10, 60)
		if v := s.Volume(); !near64(v, c.volume, 1e-6) {
			t.Errorf("%s: volume %g, want %g", c.name, v, c.volume)
		}
		if f, e := len(s.Faces()), len(s.Edges()); f != c.faces || e != c.edges {
			t.Errorf("%s: %d faces and %d edges, want %d and %d", c.name, f, e, c.faces, c.edges)
		}
		if err := s.Check(); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// round is a bar with a half-round end: a flat profile with n facets.
func round(n int) ([]Pt, []bool) {
	pts, soft := []Pt{{0, 0}, {100, 0}}, []bool{false}
	for i := range n {
		a := -math.Pi/2 + math.Pi*float64(i+1)/float64(n)
		pts = append(pts, Pt{100 + 20*math.Cos(a), 20 + 20*math.Sin(a)})
		soft = append(soft, true)
	}
	return append(pts, Pt{0, 40}), append(soft, false, false)
}

func TestSmoothEdges(t *testing.T) {
	pts, soft := round(16)
	s := Prism(pts, soft, 0, 50).Minus(box(90, -1, 20, 200, 10, 60))
	if err := s.Check(); err != nil {
		t.Fatal(err)
	}
	for _, e := range s.Edges() {
		onCurve := e.A.X > 100+1e-6 && e.A.X == e.B.X && e.A.Y == e.B.Y
		if onCurve && e.A.Y > 10+1e-6 && !e.Smooth {
			t.Errorf("%v–%v between facets is sharp", e.A, e.B)
		}
		if !onCurve && e.Smooth {
			t.Errorf("%v–%v is smooth", e.A, e.B)
		}
	}
	// A hollow curve, along which the profile is parted into convex pieces.
	cove := []Pt{{0, 0}, {100, 0}, {100, 20}}
	hollow := []bool{false, false}
	const facets = 8
	for i := range facets {
		sin, cos := math.Sincos(-math.Pi / 2 * (1 + float64(i+1)/facets))
		cove, hollow = append(cove, Pt{100 + 40*cos, 60 + 40*sin}), append(hollow, true)
	}
	smooth := 0
	for _, e := range Prism(append(cove, Pt{0, 60}), append(hollow, false, false), 0, 10).Edges() {
		if e.Smooth {
			smooth++
		}
	}
	if smooth != facets-1 {
		t.Errorf("the hollow has %d smooth edges, want %d", smooth, facets-1)
	}
	// Two curves that meet in a sharp point are two.
	leaf := []Pt{{0, 0}, {10, -4}, {20, -5}, {30, -4}, {40, 0}, {30, 4}, {20, 5}, {10, 4}}
	all := []bool{true, true, true, true, true, true, true, true}
	sharp := 0
	for _, e := range Prism(leaf, all, 0, 10).Edges() {
		if e.A.X == e.B.X && e.A.Y == e.B.Y && !e.Smooth {
			sharp++
		}
	}
	if sharp != 2 {
		t.Errorf("the leaf has %d sharp long edges, want 2", sharp)
	}
}

// Nonsense in gives an empty or an unchanged solid, never one with nonsense in
// it.
func TestNonsense(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for i, s := range []Solid{
		Box(V(nan, 0, 0), V(1, 1, 1)),
		Box(V(0, 0, 0), V(1, nan, 1)),
		Prism([]Pt{{0, 0}, {nan, 0}, {0, 1}}, nil, 0, 1),
		Prism([]Pt{{0, 0}, {inf, 0}, {0, 1}}, nil, 0, 1),
		Prism([]Pt{{0, 0}, {1, 0}, {0, 1}}, nil, 0, nan),
		beam().Cut(Plane{V(1, 0, 0), -inf}),
	} {
		if !s.Empty() {
			t.Errorf("case %d is not empty: %v", i, s.Bounds())
		}
	}
	for i, s := range []Solid{
		beam().Cut(Plane{V(nan, 0, 0), 0}),
		beam().Cut(Plane{V(0, 0, 0), 0}),
		beam().Cut(Plane{V(1, 0, 0), nan}),
		beam().Cut(Plane{V(1, 0, 0), inf}),
		beam().Cut(Plane{V(2, 0, 0), 2000}),
		beam().WithBore(Bore{V(nan, 0, 0), V(0, 1, 0), 5, 5}),
		beam().WithBore(Bore{V(0, 0, 0), V(nan, 1, 0), 5, 5}),
	} {
		if v := s.Volume(); !near64(v, 1e7, 1e-6) {
			t.Errorf("case %d changed the beam: %g", i, v)
		}
	}
	if b := Box(V(-inf, -inf, -inf), V(inf, inf, inf)).Bounds(); b.Size() != V(2*Bound, 2*Bound, 2*Bound) {
		t.Errorf("all of space has bounds %v", b)
	}
}

// Solids may be shared between goroutines, and what comes out does not depend
// on which was first.
func TestSharedBetweenGoroutines(t *testing.T) {
	base := beam().Minus(pocket(500))
	want := list(Strokes(Axonometric(0.6, 0.4), bodies(base.Minus(pocket(100), pocket(200))), Options{}))
	got := make([]string, 8)
	var wg sync.WaitGroup
	for i := range got {
		wg.Go(func() {
			s := base.Minus(pocket(100), pocket(200))
			got[i] = list(Strokes(Axonometric(0.6, 0.4), bodies(s), Options{}))
			_ = base.Edges()
		})
	}
	wg.Wait()
	for i, g := range got {
		if g != want {
			t.Errorf("goroutine %d drew\n%s\nwant\n%s", i, g, want)
		}
	}
}
