package sheets

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/frame/jobgen"
)

// The plane cuts no post, rafter or packer, and stands in a bay.
func TestSectionPlane(t *testing.T) {
	for seed := range uint64(40) {
		job, err := frame.Read("job.yaml", jobgen.Job(seed))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := frame.Build(job); err != nil {
			continue // few are refused; the generator's own test counts them
		}
		m := detailMaker(t, jobgen.Job(seed), nil)
		x := m.sectionX()
		if posts := m.job.Posts.At; x > posts[len(posts)-1].Along {
			t.Errorf("seed %d: no post stands beyond the section at %.1f", seed, x)
		}
		at := m.frame.Setout.Rafters
		if x < at[0] || x > at[len(at)-1] {
			t.Errorf("seed %d: the section stands at %.1f, outside the rafters", seed, x)
		}
		for _, mb := range m.frame.Members {
			b := mb.Solid().Bounds()
			switch mb.Kind {
			case frame.KindPost, frame.KindRafter, frame.KindPacker:
				if x > b.Min.X && x < b.Max.X && m.frame.Setout.Centres > 4*mb.Section.Width {
					t.Errorf("seed %d: the section at %.1f cuts %s", seed, x, memberID(mb))
				}
			}
		}
	}
	// The demo has an even number of bays: the two in the middle lie equally
	// near, and the one at the left is taken.
	m := detailMaker(t, courtyard(t), nil)
	at := m.frame.Setout.Rafters
	n := len(at) / 2
	if want := (at[n-1] + at[n]) / 2; math.Abs(m.sectionX()-want) > 1e-9 {
		t.Errorf("the demo is cut at %.2f, want %.2f", m.sectionX(), want)
	}
}

// section draws the cross-section of the demo with a change.
func section(t *testing.T, change func(*frame.Job)) (*maker, *draw.Sheet) {
	t.Helper()
	m := detailMaker(t, courtyard(t), change)
	return m, m.drawn(m.sectionSheets())[0]
}

// dimOf finds the dimension whose figure starts with a prefix.
func dimOf(t *testing.T, s *draw.Sheet, prefix string) draw.Placed {
	t.Helper()
	for _, d := range s.Dims {
		if strings.HasPrefix(d.Figure, prefix) {
			return d
		}
	}
	t.Fatalf("no dimension begins with %q", prefix)
	return draw.Placed{}
}

// The drop is measured between the very arrises that the job names, whichever
// they are, and the levels beside it name them.
func TestSectionDropArrises(t *testing.T) {
	for _, c := range []struct{ from, to frame.Arris }{
		{frame.PlateOuter, frame.BeamInner}, {frame.WallFace, frame.BeamOuter},
		{frame.PlateInner, frame.BeamInner}, {frame.PlateOuter, frame.BeamOuter},
	} {
		m, s := section(t, func(j *frame.Job) { j.Fall.From, j.Fall.To = c.from, c.to })
		set := m.frame.Setout
		d := dimOf(t, s, "drop ")
		if want := "drop " + m.figures.Length(m.job.Fall.Value); d.Figure != want {
			t.Errorf("%s to %s: %q, want %q", c.from, c.to, d.Figure, want)
		}
		ys := []float64{max(d.A.Y, d.B.Y), min(d.A.Y, d.B.Y)}
		if ys[0] != set.Arris(c.from) || ys[1] != set.Arris(c.to) {
			t.Errorf("%s to %s: measured at y %v", c.from, c.to, ys)
		}
		run := dimOf(t, s, map[bool]string{true: "clear span, and the run of the fall, ", false: "run of the fall "}[c.from == frame.PlateOuter && c.to == frame.BeamInner])
		if math.Abs(run.Value()-m.frame.Slope.Run) > 1e-9 {
			t.Errorf("%s to %s: run %.3f, want %.3f", c.from, c.to, run.Value(), m.frame.Slope.Run)
		}
		for arris, words := range map[frame.Arris]string{c.from: ": drop from here", c.to: ": to here"} {
			name := "top of rafters over the " + string(arris) + words
			if !slices.ContainsFunc(s.Dims, func(d draw.Placed) bool { return d.Kind == draw.LevelDim && strings.HasSuffix(d.Figure, name) }) {
				t.Errorf("no level %q", name)
			}
		}
	}
}

// Head heights are those of the frame, between the surfaces that bound them.
func TestSectionHeadHeights(t *testing.T) {
	m, s := section(t, nil)
	set := m.frame.Setout
	var got []float64
	for _, d := range s.Dims {
		if strings.HasPrefix(d.Figure, "head height ") {
			got = append(got, d.Value())
		}
	}
	want := []float64{set.HeadBeam, set.HeadPlate}
	slices.Sort(got)
	slices.Sort(want)
	if len(got) != 2 || math.Abs(got[0]-want[0]) > 1e-9 || math.Abs(got[1]-want[1]) > 1e-9 {
		t.Errorf("head heights %.3f, want %.3f", got, want)
	}
}

// Every batten is in the row along the slope, at its place in the set-out.
func TestSectionBattenRow(t *testing.T) {
	m, s := section(t, nil)
	down := m.frame.Of(frame.KindRafter)[0].Place.U
	var got []string
	for _, d := range s.Dims {
		if d.Kind == draw.RunningDim && d.Along.Sub(down).Len() < 1e-9 && d.Figure != "0" {
			got = append(got, d.Figure)
		}
	}
	var want []string
	for _, u := range m.frame.Setout.Battens {
		want = append(want, m.figures.Length(u))
	}
	sl := m.frame.Setout
	want = append(want, m.figures.Length((sl.Rear().Outer-sl.Front().Inner)/math.Cos(m.frame.Slope.Angle)))
	if !slices.Equal(got, want) {
		t.Errorf("row along the slope %v\nwant %v", got, want)
	}
}

// The line of sight touches the beam and passes no part of it.
func TestSightLine(t *testing.T) {
	for _, eye := range []float64{1200, 1620, 2600} { // under the beam, and over its underside
		m := detailMaker(t, courtyard(t), func(j *frame.Job) { j.Levels.Eye = eye })
		c := m.newCross()
		from, arris := c.eye(), c.sightArris()
		beam := m.frame.Timber(m.front()).Solid().Bounds()
		for _, y := range []float64{beam.Min.Y, beam.Max.Y} {
			z := from.Z + (arris.Z-from.Z)*(y-from.Y)/(arris.Y-from.Y)
			if z > beam.Min.Z+1e-9 {
				t.Errorf("eye at %.0f: the line of sight meets the beam %.1f above its underside", eye, z-beam.Min.Z)
			}
		}
		if math.Abs(arris.Z-beam.Min.Z) > 1e-9 {
			t.Errorf("eye at %.0f: it ends at %.1f, not at the beam's underside", eye, arris.Z)
		}
	}
}

// Every level that the frame names is on the section, but for the ground and
// the footings of other posts.
func TestSectionLevels(t *testing.T) {
	m, s := section(t, nil)
	printed := map[string]bool{}
	for _, d := range s.Dims {
		if d.Kind == draw.LevelDim {
			printed[d.Figure] = true
		}
	}
	for _, l := range m.frame.Levels {
		figure := m.figures.Level(l.Z)
		if strings.HasSuffix(l.Name, "at post 3") {
			continue
		}
		if !slices.ContainsFunc(slices.Collect(maps.Keys(printed)), func(p string) bool { return strings.HasPrefix(p, figure+" ") }) {
			t.Errorf("no level %s (%s)", figure, l.Name)
		}
	}
}

// A keyed section, on a small sheet, has its words in lists: each letter and
// each mark in the view has its line.
func TestKeyedSectionLists(t *testing.T) {
	m := detailMaker(t, courtyard(t), func(j *frame.Job) { j.Paper.Size = "A4" })
	var texts []string
	marks := map[string]bool{}
	for _, s := range m.drawn(m.sectionSheets()) {
		for _, it := range s.Items {
			if it.Text != nil {
				texts = append(texts, it.Text.String)
			}
		}
		for _, k := range s.Marks {
			if k.Kind == draw.PartMark {
				marks[k.Label] = true
			}
		}
	}
	all := strings.Join(texts, "\n")
	for _, mark := range []string{"BT1", "R1", "WP1", "PK1", "B1", "P2", "F1"} {
		if !marks[mark] {
			t.Errorf("no mark %s in the section", mark)
		}
		if !strings.Contains(all, " "+mark+":") {
			t.Errorf("no line for %s in the lists", mark)
		}
	}
	c := m.newCross()
	for i, l := range c.surfaces() {
		if !slices.Contains(texts, levelKey(i)) || !strings.Contains(all, m.figures.Level(l.Z)+"  "+levelKey(i)) {
			t.Errorf("level %s (%s) is not keyed", levelKey(i), l.Name)
		}
	}
}

// The tight section leaves the corner of the title block free.
func TestTightSectionPieces(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	c := m.newCross()
	b := c.laidOut(c.see(), tight)
	e := b.extent(m.hand, 1./20)
	pieces := b.pieces(m.hand, 1./20)
	if len(pieces) != 2 || pieces[0].Union(pieces[1]) != e {
		t.Fatalf("pieces %v do not cover %v", pieces, e)
	}
	if pieces[0].Y0 > pieces[1].Y1 {
		t.Errorf("nothing covers the strip from %.1f to %.1f", pieces[1].Y1, pieces[0].Y0)
	}
	if pieces[1].X1 >= e.X1 {
		t.Errorf("the lower piece is as wide as the whole")
	}
	foot := b.view.Axes.Project(geom.V(0, m.front().Outer, 0)).X / 20
	if pieces[1].X1 < foot {
		t.Errorf("the lower piece ends at %.1f, before the post at %.1f", pieces[1].X1, foot)
	}
}
