package draw

import (
	"fmt"
	"math"
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"plumbcut/geom"
	"plumbcut/geom/measure"
)

// hand is the hand of the tests: whole millimetres on the paper named.
func hand(paper string) Hand {
	p, ok := PaperByName(paper)
	if !ok {
		panic("no paper " + paper)
	}
	return Hand{Paper: p, Figures: measure.Format{}}
}

// front is a front view at a scale whose model origin lies at a point of the
// paper.
func front(scale float64, at geom.Pt) *View {
	return &View{Name: "front", Axes: geom.Front(), Scale: scale, At: at}
}

// along makes points on the x axis of the model.
func along(xs ...float64) []geom.Vec {
	out := make([]geom.Vec, len(xs))
	for i, x := range xs {
		out[i] = geom.V(x, 0, 0)
	}
	return out
}

// figuresOf lists the figures of one kind in the order drawn.
func figuresOf(s *Sheet, kind DimKind) string {
	var out []string
	for _, d := range s.Dims {
		if d.Kind == kind {
			out = append(out, d.Figure)
		}
	}
	return strings.Join(out, " ")
}

func TestRowFigures(t *testing.T) {
	tests := []struct {
		xs             []float64
		chain, running string
	}{
		{[]float64{0, 900, 2700}, "900 1800", "0 900 2700"},
		{[]float64{2700, 0, 900, 900}, "900 1800", "0 900 2700"}, // sorted, once each
		{[]float64{0, 100.4, 200.8, 301.2}, "100 101 100", "0 100 201 301"},
		{[]float64{0, 0.5, 1, 1.5}, "1 0 1", "0 1 1 2"},
		{[]float64{-45, 45, 1000}, "90 955", "0 90 1045"},
	}
	h := hand("A3")
	for _, test := range tests {
		s := &Sheet{Paper: h.Paper}
		v := front(0.2, geom.P(100, 100))
		lowest := math.Inf(1)
		for _, x := range test.xs {
			lowest = min(lowest, x)
		}
		r := NewRows(v, Rect{0, 0, 3000, 500}, Bottom)
		r.Chain("", along(test.xs...)...).Running("", geom.V(lowest, 0, 0), along(test.xs...)...)
		r.Draw(s, h)
		if got := figuresOf(s, ChainDim); got != test.chain {
			t.Errorf("chain %v: %s, want %s", test.xs, got, test.chain)
		}
		if got := figuresOf(s, RunningDim); got != test.running {
			t.Errorf("running %v: %s, want %s", test.xs, got, test.running)
		}
	}
}

// Of a row that runs both ways from its datum the shorter part has minus signs.
func TestRunningRowBeforeItsDatum(t *testing.T) {
	for _, test := range []struct {
		datum float64
		xs    []float64
		want  string
	}{
		{100, []float64{0, 400, 900}, "\u2212100 0 300 800"},
		{800, []float64{0, 400, 900}, "800 400 0 \u2212100"},
		{900, []float64{0, 400, 900}, "900 500 0"},
	} {
		s := &Sheet{}
		r := NewRows(front(0.2, geom.P(100, 100)), Rect{0, 0, 3000, 500}, Bottom)
		r.Running("", geom.V(test.datum, 0, 0), along(test.xs...)...)
		r.Draw(s, hand("A3"))
		if got := figuresOf(s, RunningDim); got != test.want {
			t.Errorf("from %g, %v: %s, want %s", test.datum, test.xs, got, test.want)
		}
	}
}

// A printed chain adds up to its printed overall, in millimetres.
func TestChainClosesOnOverall(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	h := hand("A1")
	for range 200 {
		n := 2 + r.Intn(10)
		xs := []float64{1000 * r.Float64()}
		for i := 1; i < n; i++ {
			xs = append(xs, xs[i-1]+1+700*r.Float64())
		}
		s := &Sheet{Paper: h.Paper}
		rows := NewRows(front(0.05, geom.P(100, 300)), Rect{xs[0], 0, xs[n-1], 500}, Top)
		rows.Overall("", along(xs[0])[0], along(xs[n-1])[0])
		rows.Chain("", along(xs...)...)
		rows.Draw(s, h)
		total := 0
		for _, f := range strings.Fields(figuresOf(s, ChainDim)) {
			k, err := strconv.Atoi(f)
			if err != nil {
				t.Fatal(err)
			}
			total += k
		}
		if got := figuresOf(s, SingleDim); got != strconv.Itoa(total) {
			t.Fatalf("chain %s adds up to %d, the overall is %s", figuresOf(s, ChainDim), total, got)
		}
	}
}

func TestEqualFigure(t *testing.T) {
	tests := []struct {
		n     int
		total float64
		f     Figures
		want  string
	}{
		{8, 5240, measure.Format{}, "8 × 655 = 5240"},
		{8, 5155, measure.Format{}, "5155 in 8 equal spaces"}, // 8 × 644 is 5152
		{8, 5155, measure.Format{Step: 0.1}, "5155 in 8 equal spaces"},
		{8, 5156, measure.Format{Step: 0.5}, "8 × 644.5 = 5156"},
		{1, 700, measure.Format{}, "700"},
		{4, 4 * 16 * measure.Inch, measure.Format{Units: measure.FeetInches}, `4 × 1' 4" = 5' 4"`},
	}
	for _, test := range tests {
		if got := equalFigure(test.n, test.total, test.f); got != test.want {
			t.Errorf("equalFigure(%d, %g) = %s, want %s", test.n, test.total, got, test.want)
		}
	}
}

// The first row stands 10 mm from the outline, the next 8 mm apart, the overall
// furthest out (the project's own choice).
func TestRowPlaces(t *testing.T) {
	h := hand("A3")
	for _, side := range []Side{Bottom, Top, Left, Right} {
		v := front(0.1, geom.P(150, 120))
		r := NewRows(v, Rect{0, 0, 1000, 1000}, side)
		a, b, c := geom.V(0, 0, 0), geom.V(500, 0, 500), geom.V(1000, 0, 1000)
		r.Overall("", a, c).Chain("", a, b, c).Chain("", b, c)
		s := &Sheet{Paper: h.Paper}
		r.Draw(s, h)
		out := v.Outline(r.Bounds)
		off := func(p geom.Pt) float64 {
			return max(out.Y0-p.Y, p.Y-out.Y1, out.X0-p.X, p.X-out.X1)
		}
		for _, d := range s.Dims {
			want := 10 + 8*float64(d.Row)
			if got := off(d.P); math.Abs(got-want) > 1e-9 {
				t.Errorf("side %d: row %d stands %g mm off, want %g", side, d.Row, got, want)
			}
			if d.Kind == SingleDim && d.Row != 2 {
				t.Errorf("side %d: the overall is row %d, want 2", side, d.Row)
			}
		}
		if depth := r.Depth(h); depth < 26 || depth > 31 {
			t.Errorf("side %d: depth %g, want 26 and what stands beyond", side, depth)
		}
	}
}

// Extension lines start 8 line widths off the outline and pass the dimension
// line by as much (ISO 129-1, from memory).
func TestExtensionLines(t *testing.T) {
	h := hand("A3")
	s := &Sheet{Paper: h.Paper}
	r := NewRows(front(0.1, geom.P(100, 100)), Rect{0, 0, 1000, 500}, Bottom)
	r.Chain("", along(0, 1000)...).Draw(s, h)
	got := s.Items[0].Path.Bounds()
	if want := (Rect{100, 100 - 10 - 1.44, 100, 100 - 1.44}); fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("extension line %v, want %v", got, want)
	}
}

// Whatever the spacing, nothing in rows touches, and they keep within the
// extent that they announce.
func TestRowsNeverTouch(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	formats := []measure.Format{{}, {Step: 0.5}, {Units: measure.FeetInches}}
	for k := range 600 {
		h := hand([]string{"A0", "A1"}[k%2])
		h.Figures = formats[k%3]
		scale := []float64{0.01, 0.02, 0.05, 0.1}[r.Intn(4)]
		size := min(300+5000*r.Float64(), 220/scale) // so that everything fits the paper
		v := front(scale, geom.P(300, 250))
		b := Rect{0, 0, size, size / 2}
		rows := NewRows(v, b, Side(r.Intn(4)))
		for range 1 + r.Intn(4) {
			addRandomRow(r, rows, size/2)
		}
		s := &Sheet{Number: "T", Paper: h.Paper}
		rows.Draw(s, h)
		for _, f := range s.Audit(h.Figures) {
			t.Fatalf("job %d: %v", k, f)
		}
		room := rows.Extent(h).Expand(1)
		for _, it := range s.Items {
			if it.Text != nil && !room.Encloses(it.Text.Box()) {
				t.Fatalf("job %d: %q at %v stands outside %v", k, it.Text.String, it.Text.Box(), room)
			}
		}
	}
}

func addRandomRow(r *rand.Rand, rows *Rows, size float64) {
	var pts []geom.Vec
	n := 2 + r.Intn(9)
	for range n {
		x := size * r.Float64()
		if r.Intn(3) == 0 && len(pts) > 0 {
			x = min(size, pts[len(pts)-1].X+60*r.Float64()) // close to the one before
		}
		pts = append(pts, geom.V(x, 0, x))
	}
	title := []string{"", "posts", "rafter centres"}[r.Intn(3)]
	switch r.Intn(4) {
	case 0:
		rows.Chain(title, pts...)
	case 1:
		rows.Running(title, pts[r.Intn(n)], pts...)
	case 2:
		rows.Equal(title, n, pts[0], pts[1])
	case 3:
		rows.Overall(title, pts[0], pts[1])
	}
}

func TestRowsEmpty(t *testing.T) {
	h := hand("A4")
	r := NewRows(front(0.1, geom.Pt{}), Rect{0, 0, 10, 10}, Left)
	r.Chain("")
	r.Chain("x", geom.V(0, 0, 5))
	s := &Sheet{Paper: h.Paper}
	r.Draw(s, h)
	if len(s.Items) != 0 || r.Depth(h) != 0 {
		t.Errorf("rows without a dimension drew %d marks, depth %g", len(s.Items), r.Depth(h))
	}
}

// Two extension lines nearer than 0.7 mm do not run side by side: the one that
// goes further stays whole, the other is drawn at its rows.
func TestExtensionLinesKeepApart(t *testing.T) {
	tests := []struct {
		exts []extLine
		want string
	}{
		{[]extLine{{0, 1, 12, [][2]float64{{7, 12}}}, {5, 1, 12, [][2]float64{{7, 12}}}}, "0:1-12 5:1-12"},
		{[]extLine{{0, 1, 30, [][2]float64{{25, 30}}}, {0.5, 1, 12, [][2]float64{{7, 12}}}}, "0:1-30 0.5:7-12"},
		{[]extLine{{0, 1, 12, [][2]float64{{7, 12}}}, {0.5, 1, 30, [][2]float64{{25, 30}, {7, 20}}}}, "0.5:1-30 0:7-12"},
		{[]extLine{{0, 1, 30, nil}, {0.5, 1, 30, [][2]float64{{25, 30}, {7, 10}, {9, 12}}}}, "0:1-30 0.5:7-12 0.5:25-30"},
	}
	for _, test := range tests {
		var got []string
		for _, e := range thinExts(test.exts) {
			got = append(got, fmt.Sprintf("%g:%g-%g", e.u, e.v0, e.v1))
		}
		if strings.Join(got, " ") != test.want {
			t.Errorf("%v, want %s", got, test.want)
		}
	}
}
