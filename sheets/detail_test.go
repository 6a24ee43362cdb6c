package sheets

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/frame/jobgen"
)

// detailMaker is a maker of a job with its details found.
func detailMaker(t *testing.T, text []byte, change func(*frame.Job)) *maker {
	t.Helper()
	job, err := frame.Read("job.yaml", text)
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(job)
	}
	f, err := frame.Build(job)
	if err != nil {
		t.Fatal(err)
	}
	m, err := newMaker(f)
	if err != nil {
		t.Fatal(err)
	}
	m.details = m.findDetails()
	return m
}

func courtyard(t *testing.T) []byte {
	t.Helper()
	text, err := os.ReadFile("../examples/courtyard/courtyard.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// listed is a detail with the views that mark it.
func listed(ds []detail) []string {
	var out []string
	for _, d := range ds {
		out = append(out, d.title+": "+strings.Join(d.on, ", "))
	}
	return out
}

func TestFindDetails(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*frame.Job)
		want   []string
	}{
		{"the demo", nil, []string{
			"Batten on rafter: section A",
			"Rafter housed in wall plate: section A",
			"Wall plate on wall: plan",
			"Rafter housed in beam: section A",
			"Beam on post: section A, elevations",
			"Post on wall: plan",
			"Post in concrete: section A, elevations",
		}},
		{"bare: no battens, no wall post, a deeper footing and a stirrup", func(j *frame.Job) {
			j.Battens = frame.Battens{}
			j.Posts.At[0].Wall = ""
			j.Posts.At[0].Footing.Depth += 100
			j.Posts.At[2].Base = frame.OnStirrup
		}, []string{
			"Rafter housed in wall plate: section A",
			"Wall plate on wall: plan",
			"Rafter housed in beam: section A",
			"Beam on post: section A, elevations",
			"Post in concrete: section A, elevations",
			"Post in concrete: elevations",
			"Post on stirrup: section A, elevations",
		}},
	} {
		m := detailMaker(t, courtyard(t), c.change)
		if got := listed(m.details); !slices.Equal(got, c.want) {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
		x := m.sectionX()
		for i, d := range m.details {
			if d.number != i+1 {
				t.Errorf("%s: detail %q has number %d, want %d", c.name, d.title, d.number, i+1)
			}
			if slices.Contains(d.on, onSection) && !slices.ContainsFunc(d.alike, func(j frame.Joint) bool { return j.At.X > x }) {
				t.Errorf("%s: the section at %.0f cannot show detail %q", c.name, x, d.title)
			}
		}
	}
}

// Every detail of every job stands on a sheet, clear of all else there.
func TestDetailSheets(t *testing.T) {
	texts := [][]byte{courtyard(t)}
	for seed := range uint64(40) {
		texts = append(texts, jobgen.Job(seed))
	}
	for i, text := range texts {
		if job, err := frame.Read("job.yaml", text); err != nil {
			t.Fatal(err)
		} else if _, err := frame.Build(job); err != nil {
			continue // the generator's own test counts those that cannot be built
		}
		m := detailMaker(t, text, nil)
		drafts := m.detailSheets()
		on := map[string]bool{}
		for _, d := range drafts {
			for _, topic := range d.topics {
				on[topic] = true
			}
			apart(t, m, d.lay.(flowed))
		}
		for _, d := range m.details {
			if !on[detailTopic(d.number)] {
				t.Errorf("job %d: detail %d, %s, is on no sheet", i, d.number, d.title)
			}
		}
		for _, s := range m.drawAll(drafts).Sheets {
			for _, f := range s.Audit(m.figures) {
				t.Errorf("job %d: %v", i, f)
			}
		}
	}
}

// apart checks that no two blocks overlap and none leaves the room of the sheet.
func apart(t *testing.T, m *maker, blocks flowed) {
	t.Helper()
	const rounding = 1e-6 // mm
	sp := m.room(detailTitle)
	var rooms []draw.Rect
	for _, b := range blocks {
		r := b.block.extent(m.hand, b.scale).Move(b.at)
		if !freeOf(sp).Expand(rounding).Encloses(r) || r.Overlaps(sp.Block) {
			t.Errorf("%s: a detail at %v leaves the room of the sheet", m.job.Project.Title, r)
		}
		for _, o := range rooms {
			if o.Inset(rounding).Overlaps(r) {
				t.Errorf("%s: details at %v and %v overlap", m.job.Project.Title, o, r)
			}
		}
		rooms = append(rooms, r)
	}
}

// Where a close-up ends, what goes on in truth has no outline but one break line.
func TestTornView(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	beam, _ := m.frame.Member(frame.KindBeam, 1)
	for _, cut := range []bool{false, true} {
		crop := everywhere()
		crop.Min.X, crop.Max.X = 1000, 1300
		at := geom.V(1150, beam.Place.O.Y+beam.Section.Width/2, beam.Place.O.Z)
		v := m.closeUp(closeUp{name: "beam", axes: geom.Front(), at: at, cut: cut, crop: crop, show: only(beam)})
		s := &draw.Sheet{Paper: m.hand.Paper}
		v.set(geom.P(0, 0), 1)
		v.pic.paint(s, v.view)
		for _, x := range []float64{crop.Min.X - at.X, crop.Max.X - at.X} {
			if got := penAlong(s, x); !slices.Equal(got, []draw.Pen{draw.Narrow}) {
				t.Errorf("cut %v: lines at the end of the close-up are drawn with pens %v, want one narrow line", cut, got)
			}
		}
	}
}

// penAlong lists the pens of the paths that run along an upright line, hatching
// left out.
func penAlong(s *draw.Sheet, x float64) []draw.Pen {
	const near = 0.01 // mm
	var out []draw.Pen
	for _, it := range s.Items {
		p := it.Path
		if p == nil || p.Style.Layer == draw.Hatch {
			continue
		}
		for _, line := range p.Flatten() {
			for i := 1; i < len(line); i++ {
				if math.Abs(line[i].X-x) < near && math.Abs(line[i-1].X-x) < near {
					out = append(out, p.Style.Pen)
					break
				}
			}
		}
	}
	return out
}

// Two cut faces that share an edge draw it once.
func TestSharedEdgeDrawnOnce(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	for _, d := range m.details {
		if d.kind != frame.RafterJoint(m.rear()) {
			continue
		}
		v := m.housed(d.joint).section()
		s := &draw.Sheet{Paper: m.hand.Paper}
		v.set(geom.P(0, 0), 1)
		v.pic.paint(s, v.view)
		for _, f := range s.LineGaps() {
			if f.Rule == draw.RuleLinesDouble {
				t.Error(f)
			}
		}
		return
	}
	t.Fatal("the demo has no rafter in a plate")
}

// A plate on a fascia is not said to be on a wall.
func TestFasciaDetailTitled(t *testing.T) {
	const seed = 188 // a plate on a fascia
	m := detailMaker(t, jobgen.Job(seed), nil)
	if m.job.Wall.Kind != frame.OnFascia {
		t.Fatalf("seed %d has a %s", seed, m.job.Wall.Kind)
	}
	titles := listed(m.details)
	if !slices.Contains(titles, "Wall plate on fascia: plan") || strings.Contains(strings.Join(titles, "\n"), "Wall plate on wall") {
		t.Errorf("the details are %q", titles)
	}
}
