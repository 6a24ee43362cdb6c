package sheets

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// planJobs are the example with changes that make its plans hard to lay out.
func planJobs() map[string]func(*frame.Job) {
	free := func(j *frame.Job) { // no returns, no post on a wall
		j.Wall.Returns = nil
		for i := range j.Posts.At {
			p := &j.Posts.At[i]
			p.Wall, p.Packer, p.Fixing = "", frame.Packer{}, frame.Fixing{}
		}
	}
	posts := func(j *frame.Job, along ...float64) {
		free(j)
		p := j.Posts.At[1]
		j.Posts.At = nil
		for _, x := range along {
			p.Along = x
			j.Posts.At = append(j.Posts.At, p)
		}
	}
	paper := func(size string) func(*frame.Job) {
		return func(j *frame.Job) { j.Paper.Size = size }
	}
	return map[string]func(*frame.Job){
		"as it is": nil,
		"A4":       paper("A4"), "Letter": paper("Letter"), "A2": paper("A2"),
		"two posts": func(j *frame.Job) { posts(j, 300, 5440) },
		"long": func(j *frame.Job) {
			j.Plate.To, j.Beam.To, j.Wall.To = 12000, 12000, 13000
			posts(j, 100, 2060, 4020, 5980, 7940, 9900, 11880)
		},
		"small": func(j *frame.Job) {
			j.Plate.To, j.Beam.To, j.Beam.Out, j.Levels.DeckOut = 2400, 2400, 1800, 2000
			posts(j, 100, 2300)
		},
		"no deck, no studs, no north": func(j *frame.Job) {
			j.Levels.DeckOut, j.Wall.Studs, j.Site = 0, nil, frame.Site{}
		},
		"no battens": func(j *frame.Job) { j.Battens = frame.Battens{} },
		"ends that differ": func(j *frame.Job) {
			posts(j, 100, 2870, 5600)
			j.Beam.From, j.Beam.To = -150, 5850
			j.Battens.OverLeft, j.Battens.OverRight = 0, 0
		},
		"feet and inches": func(j *frame.Job) { j.Units = frame.FeetInches },
	}
}

func TestPlansSurvive(t *testing.T) {
	for name, change := range planJobs() {
		t.Run(name, func(t *testing.T) {
			m := detailMaker(t, courtyard(t), change)
			set := m.drawAll(append(m.planSheets(), m.setoutSheets()...))
			for _, s := range set.Sheets {
				for _, f := range s.Audit(m.figures) {
					t.Error(s.Title+":", f)
				}
			}
		})
	}
}

// runningFigures are the printed figures of all running rows of a sheet that
// measure along the wall.
func runningFigures(s *draw.Sheet) []string {
	var out []string
	for _, d := range s.Dims {
		if d.Kind == draw.RunningDim && d.Along == geom.V(1, 0, 0) {
			out = append(out, d.Figure)
		}
	}
	return out
}

func TestFramingPlanGivesEveryPlace(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	got := runningFigures(m.drawAll(m.planSheets()).Sheets[0])
	// By hand from the job file: 11 rafters of 45, flush in 5740, stand
	// (5740 − 45) ÷ 10 = 569.5 apart; studs at 190 and every 580 after.
	want := []string{"0", "22.5", "592", "1161.5", "1731", "2300.5", "2870", "3439.5", "4009", "4578.5", "5148", "5717.5", "5740"}
	for i := range 10 {
		want = append(want, fmt.Sprint(190+580*i))
	}
	want = append(want, "57.5", "5682.5") // the posts
	for _, w := range want {
		if !slices.Contains(got, w) {
			t.Errorf("no running dimension along the wall says %s; there are %v", w, got)
		}
	}
}

func TestDiagonals(t *testing.T) {
	m := detailMaker(t, courtyard(t), func(j *frame.Job) { j.Beam.To, j.Posts.At[2].Along = 5800, 5700 })
	left, right := m.diagonals()
	// By hand: the plate is 5740 long, its outer face 63 out; the beam 5800, its
	// outer face 3420 out; its top is lower by some 130, which adds 1.3.
	for _, c := range []struct{ got, along float64 }{{left, 5800}, {right, 5740}} {
		if want := math.Hypot(c.along, 3420-63) + 1.3; math.Abs(c.got-want) > 0.5 {
			t.Errorf("a diagonal is %.1f, want %.1f", c.got, want)
		}
	}
}

func TestManyBattensGetATable(t *testing.T) {
	m := detailMaker(t, courtyard(t), func(j *frame.Job) { j.Battens.Section.Width, j.Battens.Shade = 26, 0.7 })
	if n := len(m.battenPlan()); n != 2 {
		t.Fatalf("%d blocks for many battens, want the view and the table", n)
	}
	rows := m.placeTable("Battens", "Batten", m.frame.Setout.Battens).Rows
	if got, want := len(rows), len(m.frame.Of(frame.KindBatten)); got != want {
		t.Errorf("the table has %d battens of %d", got, want)
	}
	if got := rows[0].Cells[1]; got != "90" { // the job's own first
		t.Errorf("the first batten is at %s, want 90", got)
	}
	if few := detailMaker(t, courtyard(t), nil); len(few.battenPlan()) != 1 {
		t.Error("few battens are to stand in a row of dimensions")
	}
}

// TestCleanestOrder places three words of which the last finds a clear place only
// if it comes before the others.
func TestCleanestOrder(t *testing.T) {
	paper, _ := draw.PaperByName("A4")
	s := &draw.Sheet{Paper: paper}
	p := &page{sheet: s, placer: draw.NewPlacer(s, draw.Hand{Paper: paper})}
	var order string
	word := func(name string, x0, y0, x1, y1 float64) func() {
		return func() {
			order += name
			end := geom.P(x1, y1)
			if name == "c" && len(s.Marks) > 0 {
				end.X = 130 // across the others
			}
			s.Marks = append(s.Marks, draw.Mark{Kind: draw.DetailMark, Leader: []geom.Pt{geom.P(x0, y0), end}})
		}
	}
	p.cleanestOrder(word("a", 100, 100, 100, 120), word("b", 110, 100, 110, 120), word("c", 90, 110, 80, 110))
	if order != "abccab" {
		t.Errorf("the words were placed in the order %s", order)
	}
	if n := len(blamed(s.Marks, nil)); n != 0 || len(s.Marks) != 3 {
		t.Errorf("of %d marks %d are blamed at last", len(s.Marks), n)
	}
}
