package sheets

import (
	"fmt"
	"math"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// drawn draws sheets of a job by themselves.
func (m *maker) drawn(drafts []draft) []*draw.Sheet { return m.drawAll(drafts).Sheets }

// variant is the demo with a change.
type variant struct {
	name   string
	change func(*frame.Job)
}

// variants are jobs that the layouts must survive. The sizes are invented.
func viewVariants() []variant {
	return []variant{
		{"as it is", nil},
		{"A4", func(j *frame.Job) { j.Paper.Size = "A4" }},
		{"A2", func(j *frame.Job) { j.Paper.Size = "A2" }},
		{"A1", func(j *frame.Job) { j.Paper.Size = "A1" }},
		{"Letter, feet", func(j *frame.Job) { j.Paper.Size, j.Units = "Letter", frame.FeetInches }},
		{"small", func(j *frame.Job) {
			j.Plate.To, j.Beam.To, j.Beam.Out, j.Levels.DeckOut = 2400, 2400, 1800, 0
			j.Wall = frame.Wall{From: -300, To: 2800, Cladding: 21}
			a, b := j.Posts.At[1], j.Posts.At[1]
			a.Along, b.Along = 100, 2300
			j.Posts.At = []frame.Post{a, b}
			j.Fall.Value = 40
		}},
		{"long, seven posts", func(j *frame.Job) {
			j.Plate.To, j.Beam.To, j.Wall.To = 12000, 12000, 13000
			p := j.Posts.At[1]
			j.Posts.At = nil
			for i := range 7 {
				p.Along = 60 + 1980*float64(i)
				j.Posts.At = append(j.Posts.At, p)
			}
		}},
		{"steep, level seats", func(j *frame.Job) {
			j.Fall.Kind, j.Fall.Value = frame.FallAngle, math.Pi/6
			j.Plate.Top, j.Wall.Soffit = 4400, 4700
			j.Rafters.Seat = frame.SeatLevel
		}},
		{"stirrups, no battens, other arrises", func(j *frame.Job) {
			for i := range j.Posts.At {
				j.Posts.At[i].Base, j.Posts.At[i].Footing.Stand = frame.OnStirrup, 75
			}
			j.Battens = frame.Battens{}
			j.Fall.From, j.Fall.To = frame.WallFace, frame.BeamOuter
		}},
	}
}

// Whatever the paper and the frame, nothing touches and all is to scale.
func TestElevationsAndSectionStandClear(t *testing.T) {
	for _, v := range viewVariants() {
		m := detailMaker(t, courtyard(t), v.change)
		for _, s := range m.drawn(append(m.elevationSheets(), m.sectionSheets()...)) {
			for _, f := range s.Audit(m.figures) {
				t.Errorf("%s: %v", v.name, f)
			}
		}
	}
}

// The demo's elevations share a sheet, the levels of front and right end in
// line.
func TestElevationsLineUp(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	sheets := m.drawn(m.elevationSheets())
	if len(sheets) != 1 {
		t.Fatalf("%d sheets, want 1", len(sheets))
	}
	at := map[string]geom.Pt{}
	for _, v := range sheets[0].Views {
		at[v.Name] = v.Pt(geom.Vec{})
	}
	if at["Front elevation"].Y != at["Right end elevation"].Y {
		t.Errorf("level 0 at %.3f in front and %.3f at the right end", at["Front elevation"].Y, at["Right end elevation"].Y)
	}
	if len(at) != 3 {
		t.Errorf("views %v, want three", at)
	}
}

// What lies below ground or deck is dashed, and nothing else is hidden.
func TestElevationsHideBelowGroundOnly(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	for _, b := range []*viewBlock{m.frontElevation(m.frontPicture(), false), m.endElevation(frame.Left), m.endElevation(frame.Right)} {
		below := 0
		for _, st := range b.pic.strokes {
			if !st.Hidden {
				continue
			}
			below++
			// The demo's deck is its datum, above the ground everywhere.
			if top := max(st.A.Y, st.B.Y); top > 1e-3 {
				t.Errorf("%s: a hidden edge reaches up to %+.1f", b.title.Name, top)
			}
		}
		if below == 0 {
			t.Errorf("%s: no edge is dashed", b.title.Name)
		}
	}
}

// A wall that comes out at an end stands before that end's elevation and is
// left off there; from the other end it is seen behind the frame.
func TestEndElevationLeavesOffTheNearWall(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	for side, want := range map[frame.Side]bool{frame.Left: false, frame.Right: true} {
		seen := false
		for _, st := range m.endElevation(side).pic.strokes {
			h, ok := m.scene.house(st.Body)
			seen = seen || ok && h.Name == frame.HouseLeft
		}
		if seen != want {
			t.Errorf("from the %s end: the left wall is seen %t, want %t", side, seen, want)
		}
	}
}

// The heights at each end post add up to what the levels say.
func TestEndElevationFigures(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	beam := m.frame.Timber(m.front())
	for i, side := range []frame.Side{frame.Left, frame.Right} {
		post := m.job.Posts.At[0]
		if i == 1 {
			post = m.job.Posts.At[len(m.job.Posts.At)-1]
		}
		b := m.endElevation(side)
		s := m.drawn([]draft{{b.title.Name, nil, must(m.fitted("x", 1./50, grid{{b}})).lay}})[0]
		want := map[string]bool{
			m.figures.Length(post.Footing.Depth):           false,
			m.figures.Length(beam.Place.O.Z - post.Ground): false,
			m.figures.Length(beam.Section.Depth):           false,
			fmt.Sprintf("%s (%s)", "fall "+m.figures.Angle(m.frame.Slope.Angle), m.figures.Slope(m.frame.Slope.Angle)): false,
		}
		for _, d := range s.Dims {
			if _, ok := want[d.Figure]; ok {
				want[d.Figure] = true
			}
		}
		for figure, found := range want {
			if !found {
				t.Errorf("%s: no figure %q", b.title.Name, figure)
			}
		}
	}
}

func must(d draft, ok bool) draft {
	if !ok {
		panic("does not fit")
	}
	return d
}

// On an upright sheet the names of the levels would halve the scale, to 1:200: letters
// stand for them, and a table under the view says which is which.
func TestElevationOnSmallPaperIsKeyed(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	m.hand.Paper, _ = draw.PaperByName("A4")
	m.hand.Paper = m.hand.Paper.Portrait()
	sheet := m.drawAll(m.elevationSheets()).Sheets[0]
	if got, want := sheet.Views[0].Scale, 1.0/100; got < want {
		t.Errorf("the front elevation stands at %s, want 1:100 at least", draw.ScaleName(got))
	}
	words := map[string]bool{}
	for _, it := range sheet.Items {
		if it.Text != nil {
			words[it.Text.String] = true
		}
	}
	for i, l := range m.levelsInFront() {
		if mark := m.figures.Level(l.Z) + "  " + levelKey(i); !words[mark] {
			t.Errorf("no mark %q", mark)
		}
		if !words[l.Name] {
			t.Errorf("the table does not name %q", l.Name)
		}
	}
}
