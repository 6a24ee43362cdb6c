package sheets

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/frame/jobgen"
)

// stickOf is the timber of a mark.
func stickOf(t *testing.T, m *maker, mark string) *timber {
	t.Helper()
	for _, s := range m.timbers() {
		if s.Mark == mark {
			return s
		}
	}
	t.Fatalf("there is no %s", mark)
	return nil
}

// marks are the rows of a marking list: mark, from, centre, to, work.
func marks(s *timber) []string {
	var out []string
	for _, r := range s.markTable(s.works()).Rows {
		out = append(out, strings.Join(r.Cells[1:6], " | "))
	}
	return out
}

// TestWorkedMarking marks one plate, one beam and one rafter of the courtyard
// by hand, from its job file. Figures are to half a millimetre, ties away from
// zero.
//
// Rafters: 45 thick, flush in 5740, at most 620 apart: 5695 ÷ 620 = 9.19, so 10
// spaces of 569.5, the first centre at 22.5. Housings are 45 + 0.5 = 45.5 wide,
// 22.75 to each side: the second, at 22.5 + 569.5 = 592, runs from 569.25 to
// 614.75, printed 569.5 and 615. The first would start at −0.25, beyond the
// end, and the last, at 5717.5, ends beyond 5740.
//
// The fall: 118 on the run from the plate's outer face (18 + 45 = 63 out) to
// the beam's inner face (3420 − 70 = 3350 out), 3287. tan = 118 ÷ 3287 =
// 0.035899, so 2.056°, printed 2.1°, and 3.59 on 100, printed 3.5. cos =
// 0.999356.
//
// A rafter's top edge runs 3287 + 14 + 14 = 3315 level, 3315 ÷ 0.999356 =
// 3317.14 along it. The plumb cuts run 120 × 0.035899 = 4.31 along. So the house
// end goes from 0 at the top to 4.31 (4.5) at the bottom, the outer end from
// 3317.14 (3317) to 3321.44 (3321.5).
//
// Upright, a rafter measures 120 ÷ 0.999356 = 120.08. Its top is flush with
// plate and beam at their faces, so the floor of a housing stands 190 − 120.08 =
// 69.92 (70) up in the plate and 235 − 120.08 = 114.92 (115) in the beam. Over
// 14 it changes by 0.50: to 70.43 (70.5) in the plate, where it rises inwards,
// and to 114.42 (114.5) in the beam, where it falls.
//
// A strap of 260 lies with half of it, 130, on the rafter's top, from the
// plate's face, 14 ÷ 0.999356 = 14.01 (14) from the rafter's end; at the outer
// end from the beam's face inwards, 3317.14 − 14.01 = 3303.13 (3303).
//
// Screws stand on studs at 190 + 580k, at most 1160 apart. Rods stand at the
// posts' centres.
func TestWorkedMarking(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	housings := func(from int) []string {
		out := []string{"housing 1 | end | 22.5 | 45.5 | 14 deep"}
		for k, e := range [][3]string{
			{"569.5", "592", "615"}, {"1139", "1161.5", "1184.5"}, {"1708.5", "1731", "1754"},
			{"2278", "2300.5", "2323.5"}, {"2847.5", "2870", "2893"}, {"3417", "3439.5", "3462.5"},
			{"3986.5", "4009", "4032"}, {"4556", "4578.5", "4601.5"}, {"5125.5", "5148", "5171"},
		} {
			out = append(out, fmt.Sprintf("housing %d | %s | %s | %s | 14 deep", k+2, e[0], e[1], e[2]))
		}
		return append(out, "housing 11 | 5695 | 5717.5 | end | 14 deep")
	}
	ends := []string{"left end | 0 |  |  | square", "right end | 5740 |  |  | square"}
	for _, c := range []struct {
		mark  string
		want  []string
		floor []string
	}{
		{"WP1", slices.Concat(ends, housings(0), []string{
			"screw 1 |  | 190 |  | Ø11 through", "screw 2 |  | 1350 |  | Ø11 through", "screw 3 |  | 2510 |  | Ø11 through",
			"screw 4 |  | 3670 |  | Ø11 through", "screw 5 |  | 4830 |  | Ø11 through", "screw 6 |  | 5410 |  | Ø11 through",
		}), []string{"outer side", "45.5", "14", "70", "70.5", "2.1°"}},
		{"B1", slices.Concat(ends, housings(0), []string{
			"rod 1, top |  | 57.5 |  | Ø14 through", "rod 2, top |  | 2870 |  | Ø14 through", "rod 3, top |  | 5682.5 |  | Ø14 through",
		}), []string{"house side", "45.5", "14", "115", "114.5", "2.1°"}},
		{"R1", []string{
			"house end | 0 |  | 4.5 | plumb, long point top", "outer end | 3317 |  | 3321.5 | plumb, long point bottom",
			"strap 1, top | 14 |  | 144 | 30 wide, on the centre", "strap 2, top | 3173 |  | 3303 | 30 wide, on the centre",
		}, nil},
	} {
		s := stickOf(t, m, c.mark)
		if got := marks(s); !slices.Equal(got, c.want) {
			t.Errorf("%s is marked\n%s\nwant\n%s", c.mark, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
		if c.floor != nil {
			if got := s.housingTable().Rows[0].Cells; !slices.Equal(got, c.floor) {
				t.Errorf("%s: housings %v, want %v", c.mark, got, c.floor)
			}
		}
	}
	saw := stickOf(t, m, "R1").cutTable().Rows
	for i, want := range [][]string{{"house end", "2.1°", "3.5", "2.1°", "square"}, {"outer end", "2.1°", "3.5", "2.1°", "square"}} {
		if !slices.Equal(saw[i].Cells, want) {
			t.Errorf("saw setting %v, want %v", saw[i].Cells, want)
		}
	}
}

// TestHandedPair: two wall posts alike but for their hand share a drawing. It
// shows the left one, drilled from its right side, and counts the other as of
// opposite hand. What must not happen is that both are drilled from one side.
func TestHandedPair(t *testing.T) {
	m := detailMaker(t, courtyard(t), func(j *frame.Job) {
		j.Battens.OverRight = j.Battens.OverLeft
		right := j.Posts.At[0]
		right.Along, right.Wall = 5740-right.Along, frame.Right
		j.Posts.At[2] = right
		j.Wall.Returns = append(j.Wall.Returns, frame.Return{Side: frame.Right, At: 5760, Length: 4300})
	})
	s := stickOf(t, m, "P1")
	if len(s.alike) != 1 || len(s.other) != 1 || s.alike[0].No != 1 || s.other[0].No != 3 {
		t.Fatalf("%d as drawn, %d opposite; want post 1 and post 3", len(s.alike), len(s.other))
	}
	if s.mainFace() != frame.FaceRight {
		t.Errorf("the main face is the %s; post 1 stands at a wall on its left and is drilled from the right", s.mainFace())
	}
	if want := "1 as drawn: number 1, 1 opposite hand: number 3"; !strings.HasPrefix(s.titleNote(), want) {
		t.Errorf("the title says %q, want %q", s.titleNote(), want)
	}
	for _, f := range s.other[0].Features {
		if h, ok := f.(frame.Hole); ok && h.ToWall() && h.Face != frame.FaceLeft {
			t.Errorf("post 3 is drilled from the %s, want left", h.Face)
		}
	}
	// On the paper: seen from the right side, with the bottom at the left, the
	// outer side is up. From the left side it would be down.
	v := s.facing(frame.FaceRight)
	if v.Right != geom.V(1, 0, 0) || s.towards(v.Up) != frame.FaceOuter || s.towards(s.facing(frame.FaceLeft).Up) != frame.FaceHouse {
		t.Errorf("the right side is drawn with the %s up, the left with the %s up", s.towards(v.Up), s.towards(s.facing(frame.FaceLeft).Up))
	}
}

// TestFacesUnfold: the face drawn over another shares with it the edge between
// them, and each is seen from outside.
func TestFacesUnfold(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	for _, s := range m.timbers() {
		for _, f := range s.Faces() {
			v := s.facing(f)
			p, _ := s.FacePlane(f)
			if d := v.Right.Cross(v.Up).Sub(v.Toward).Len(); d > 1e-12 || v.Toward != p.N {
				t.Errorf("%s: the %s is seen from inside or mirrored", s.Mark, f)
			}
			over := s.facing(s.towards(v.Up))
			if over.Up != v.Toward.Neg() || over.Right != v.Right {
				t.Errorf("%s: over the %s the %s does not fold on", s.Mark, f, s.towards(v.Up))
			}
		}
	}
	// Plates and beams stand on their paper as in the frame: top up. The beam's
	// house side then has its left end at the right.
	for mark, right := range map[string]float64{"WP1": 1, "B1": -1} {
		s := stickOf(t, m, mark)
		if v := s.facing(s.mainFace()); v.Up != geom.V(0, 0, 1) || v.Right.X != right {
			t.Errorf("%s is drawn with %v up and %v to the right", mark, v.Up, v.Right)
		}
	}
}

// TestBreaksClearOfFeatures: no break runs through anything, whatever the job
// and the length of paper; and every piece of work is in one part of a drawing
// at least.
func TestBreaksClearOfFeatures(t *testing.T) {
	texts := [][]byte{courtyard(t)}
	for seed := range uint64(12) {
		texts = append(texts, jobgen.Job(seed))
	}
	count := 0
	for _, text := range texts {
		j, err := frame.Read("job", text)
		if err != nil {
			t.Fatal(err)
		}
		f, err := frame.Build(j)
		if err != nil {
			continue
		}
		m, err := newMaker(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range m.timbers() {
			for n := 1; n <= 3; n++ {
				count += checkBreaks(t, s, n)
			}
		}
	}
	if count < 100 {
		t.Errorf("only %d breaks were checked", count)
	}
}

func checkBreaks(t *testing.T, s *timber, n int) (count int) {
	t.Helper()
	ws := s.works()
	shown := make([]bool, len(ws))
	for _, u := range s.unfold(ws, n) {
		for i, w := range ws {
			shown[i] = shown[i] || u.shown.shows(w.spot.X)
		}
		for _, scale := range []float64{1. / 5, 1. / 20} {
			ks, ok := u.shown.breaks(scale, 150)
			if !ok {
				continue
			}
			for _, k := range ks {
				count++
				if k.To-k.From <= 0 {
					t.Errorf("%s: a break from %g to %g", s.Mark, k.From, k.To)
				}
				if n == 1 {
					clearOf(t, s, k.From, k.To)
				}
			}
		}
	}
	for i, w := range ws {
		if n <= len(s.busy())/2 && !shown[i] {
			t.Errorf("%s in %d parts: %s is in none", s.Mark, n, w.name)
		}
	}
	return count
}

// clearOf checks that there is nothing between two places along a member: no
// corner, no hole, no housing.
func clearOf(t *testing.T, s *timber, from, to float64) {
	t.Helper()
	in := func(lo, hi float64) bool { return lo < to && hi > from }
	for _, e := range s.solid.Edges() {
		if in(e.A.X, e.A.X) || in(e.B.X, e.B.X) {
			t.Errorf("%s: there is a corner in the break from %g to %g: %v or %v", s.Mark, from, to, e.A, e.B)
		}
	}
	for _, f := range s.Features {
		if h, ok := f.(frame.Housing); ok && in(h.At-h.Width/2, h.At+h.Width/2) {
			t.Errorf("%s: the break from %g to %g cuts the housing at %g", s.Mark, from, to, h.At)
		}
	}
	for _, b := range s.solid.Bores() {
		end := b.At.Add(b.Dir.Mul(b.Depth))
		if in(min(b.At.X, end.X)-b.Radius*math.Abs(1-math.Abs(b.Dir.X)), max(b.At.X, end.X)+b.Radius*math.Abs(1-math.Abs(b.Dir.X))) {
			t.Errorf("%s: the break from %g to %g cuts a hole at %v", s.Mark, from, to, b.At)
		}
	}
	for _, l := range s.lines() {
		if in(l.at, l.at) {
			t.Errorf("%s: the break from %g to %g cuts the line at %g", s.Mark, from, to, l.at)
		}
	}
}

// TestShorten reckons by hand which stretches are broken.
func TestShorten(t *testing.T) {
	for _, c := range []struct {
		plain      []float64
		room       float64
		from, keep float64
		ok         bool
	}{
		{[]float64{20, 30}, 50, math.Inf(1), 0, true},     // all fit
		{[]float64{100, 30}, 80, 100, 50, true},           // the longest alone
		{[]float64{100, 99, 30}, 80, 99, 25, true},        // two of about one length alike
		{[]float64{100, 60, 60}, 115, 60, 115. / 3, true}, // the longest to less than 10 would not do
		{[]float64{100, 100}, 19, 0, 0, false},            // each must keep 10
	} {
		from, keep, ok := shorten(c.plain, c.room)
		if from != c.from || math.Abs(keep-c.keep) > 1e-9 || ok != c.ok {
			t.Errorf("%v in %g: from %g to %g, %t; want %g to %g, %t", c.plain, c.room, from, keep, ok, c.from, c.keep, c.ok)
		}
	}
}

// TestMemberSheetsSurvive draws hard jobs and audits the sheets.
func TestMemberSheetsSurvive(t *testing.T) {
	for name, change := range planJobs() {
		t.Run(name, func(t *testing.T) {
			m := detailMaker(t, courtyard(t), change)
			drafts := m.memberSheets()
			topics := map[string]int{}
			for _, d := range drafts {
				for _, topic := range d.topics {
					topics[topic]++
				}
			}
			for _, s := range m.timbers() {
				if topics[memberTopic(s.Mark)] != 1 {
					t.Errorf("%s is on %d sheets", s.Mark, topics[memberTopic(s.Mark)])
				}
			}
			for _, s := range m.drawAll(drafts).Sheets {
				for _, f := range s.Audit(m.figures) {
					t.Error(f)
				}
			}
		})
	}
}

// TestBreakLeavesOutHoles: in a part of a plate's drawing, the circles of the
// screw holes that another part shows are not pressed into the breaks.
func TestBreakLeavesOutHoles(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	s := stickOf(t, m, "WP1")
	const parts = 4
	shown := 0
	for _, u := range s.unfold(s.works(), parts) {
		if !u.rescale(1./10, u.shown.wanted(1./10)) {
			t.Fatal("a part of the plate finds no room")
		}
		b := u.faces[u.main]
		sheet := &draw.Sheet{}
		b.pic.paint(sheet, b.view)
		want := 0
		for _, hole := range s.solid.Bores() {
			if u.shown.shows(hole.At.X) {
				want++
			}
		}
		got := 0
		for _, it := range sheet.Items {
			if it.Path != nil && slices.ContainsFunc(it.Path.Segs, func(g draw.Seg) bool { return g.Op == draw.Curve }) {
				got++
			}
		}
		if got != want {
			t.Errorf("%s: %d circles, want %d", u.title.Name, got, want)
		}
		shown += got
	}
	if holes := len(s.solid.Bores()); shown != holes {
		t.Errorf("the parts show %d holes of %d", shown, holes)
	}
}
