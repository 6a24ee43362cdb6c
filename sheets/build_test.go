package sheets

import (
	"slices"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/frame/jobgen"
)

// buildJobs are changes of the courtyard that make its steps differ.
func buildJobs() map[string]func(*frame.Job) {
	return map[string]func(*frame.Job){
		"as it is":   nil,
		"no battens": func(j *frame.Job) { j.Battens.Section = frame.Section{} },
		"no packers": func(j *frame.Job) { j.Plate.Packer = frame.Packer{} },
		"no studs":   func(j *frame.Job) { j.Wall.Studs = nil },
		"no deck":    func(j *frame.Job) { j.Levels.DeckOut = 0 },
		"no rods":    func(j *frame.Job) { j.Posts.Rod = frame.Rod{} },
		"level":      func(j *frame.Job) { j.Fall = frame.Fall{Kind: frame.FallAngle} },
		"stirrups": func(j *frame.Job) {
			for i := range j.Posts.At {
				j.Posts.At[i].Base, j.Posts.At[i].Footing.Stand = frame.OnStirrup, 90
			}
		},
		"feet":  func(j *frame.Job) { j.Units = frame.FeetInches },
		"on A4": func(j *frame.Job) { j.Paper.Size = "A4" },
		"on A1": func(j *frame.Job) { j.Paper.Size = "A1" },
	}
}

func TestBuildSheetsSurvive(t *testing.T) {
	for name, change := range buildJobs() {
		m := detailMaker(t, courtyard(t), change)
		for _, s := range m.drawAll(append(m.setoutWallSheets(), m.buildSheets()...)).Sheets {
			for _, f := range s.Audit(m.figures) {
				t.Errorf("%s: %v", name, f)
			}
		}
	}
}

func TestStepsPutUpEveryMember(t *testing.T) {
	for name, change := range buildJobs() {
		m := detailMaker(t, courtyard(t), change)
		cells := m.buildCells()
		last := cells[len(cells)-1].stage
		for _, b := range m.frame.Members {
			if !last.stands(b) {
				t.Errorf("%s: no step puts up %s", name, memberID(b))
			}
		}
		if cells[0].stage.stands(m.frame.Members[0]) {
			t.Errorf("%s: the plate stands before it is cut", name)
		}
	}
}

func TestStepsSpeakInSentences(t *testing.T) {
	const fewest, most, jobs = 2, 5, 60
	check := func(name string, m *maker) {
		for _, c := range m.buildCells() {
			if n := len(c.says); n < fewest || n > most {
				t.Errorf("%s: step %q says %d things", name, c.step.title, n)
			}
			for _, s := range append([]string{c.hold}, c.says...) {
				if s == "" || !strings.HasSuffix(s, ".") || strings.ToUpper(s[:1]) != s[:1] || strings.Contains(s, "  ") || strings.Contains(s, "%!") {
					t.Errorf("%s: step %q says %q", name, c.step.title, s)
				}
			}
		}
	}
	for name, change := range buildJobs() {
		check(name, detailMaker(t, courtyard(t), change))
	}
	for seed := range uint64(jobs) {
		text := jobgen.Job(seed)
		job, err := frame.Read("job.yaml", text)
		if err != nil {
			continue
		}
		if _, err := frame.Build(job); err == nil {
			check("random", detailMaker(t, text, nil))
		}
	}
}

// TestStepsSayTheirFigures holds the figures of the courtyard's steps to hand
// arithmetic.
func TestStepsSayTheirFigures(t *testing.T) {
	want := map[string][]string{
		// The top of the plate is given, 2640.
		"Measure the house and the timber": {"+2640", "120 × 45"},
		// Rafter centres: half of 45 from each end of 5740. A housing is 45 + 0.5
		// wide. Its floor: the rafter's top is at the plate's top, 190 above its
		// lower edge; the rafter is 120 deep, upright 120 ÷ cos 2.06° = 120.08;
		// 190 − 120.08 = 69.92.
		"Mark and cut the wall plate": {"5740", "first at 22.5", "last at 5717.5", "45.5 wide", "14 deep", "70 above"},
		// 18 of packer and 45 of plate.
		"Fix the wall plate": {"190, 1350, 2510, 3670, 4830 and 5410", "63 from the cladding"},
		// The triangle: 1100 × 4, 3 and 5. The posts are 115 square.
		"Set out the posts": {"4400 along, 3300 out, and 5500", "57.5, 2870 and 5682.5", "57.5 inside"},
		// −260 − 820 and −320 − 820.
		"Dig the holes": {"3 holes", "−1080 at posts 1 and 2", "−1140 at post 3"},
		// Seat 2287, see below; feet 120 above the bottoms: −960 and −1020.
		"Stand the posts": {"3247 at posts 1 and 2", "3307 at post 3", "−960", "−1020"},
		// The rafters drop 118 from the plate to the beam, which is 235 deep:
		// 118 + 235 = 353 below the plate's top; 2640 − 353 = 2287. The rod stands
		// in the middle of the 70 wide beam.
		"Mark and cut the post tops": {"Measure down 353", "+2287", "70 wide", "170 deep", "35 from"},
		// Floor: 235 − 120.08 above the lower edge.
		"Set the beam": {"115 above", "+2287", "57.5 to the left"},
		// √(5740² + 3357² + 118²) = 6650.6; clear: 3420 − 70 − 63 = 3287; along the
		// slope with both housings: (3287 + 2 × 14) ÷ cos 2.06° = 3317.1. With 10
		// of slip: √(5750² + …) − √(5730² + …) = 6659.3 − 6642.0 = 17.3.
		"Square it, cut the pattern rafter": {"diagonals are 6650.5", "10 of slip shows as 17.5", "3287", "3317 along"},
		// (5740 − 45) ÷ 10 − 45 = 524.5.
		"Fit the rafters": {"525", "30 × 0.8, 260 long", "8 nails", "118 in 3287"},
		"Fix the battens": {"first at 90", "23 battens", "8 at the left and 40 at the right"},
	}
	for _, c := range detailMaker(t, courtyard(t), nil).buildCells() {
		said := strings.ReplaceAll(strings.Join(c.says, " "), "\u00a0", " ")
		for _, w := range want[c.step.title] {
			if !strings.Contains(said, w) {
				t.Errorf("step %q does not say %q: %s", c.step.title, w, said)
			}
		}
		delete(want, c.step.title)
	}
	for title := range want {
		t.Errorf("there is no step %q", title)
	}
}

// TestWhatAStepPutsUpIsHeavier looks at the beam's step: the beam in the middle
// pen, the posts that stand already in the narrow one.
func TestWhatAStepPutsUpIsHeavier(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	cells := m.buildCells()
	c := cells[slices.IndexFunc(cells, func(c *buildCell) bool { return c.step.title == "Set the beam" })]
	c.stand(draw.Rect{X0: 50, Y0: 50, X1: 230, Y1: 130})
	s := &draw.Sheet{Paper: m.hand.Paper}
	c.drawPicture(&page{sheet: s, hand: m.hand, placer: draw.NewPlacer(s, m.hand)})
	pens := map[string]draw.Pen{}
	for _, it := range s.Items {
		if it.Path != nil && it.Path.ID != "" {
			pens[it.Path.ID] = it.Path.Style.Pen
		}
	}
	for id, want := range map[string]draw.Pen{"B1-1": draw.Middle, "P2-2": draw.Narrow, frame.HouseCladding: draw.Narrow} {
		if pen, ok := pens[id]; !ok || pen != want {
			t.Errorf("%s is drawn with pen %d (%v), want %d", id, pen, ok, want)
		}
	}
	if _, ok := pens["R1-1"]; ok {
		t.Error("a rafter stands before the beam does")
	}
}

// TestCellsReadAcross holds the cells to their order, row by row, and to the
// room that the title block leaves.
func TestCellsReadAcross(t *testing.T) {
	for _, paper := range []string{"A4", "A3", "A2", "A1"} {
		m := detailMaker(t, courtyard(t), func(j *frame.Job) { j.Paper.Size = paper })
		sp := m.room(buildTitle)
		next := 1
		for _, d := range m.buildSheets() {
			var before draw.Rect
			for i, c := range d.lay.(cellSheet).cells {
				var box draw.Rect
				switch c := c.(type) {
				case *buildCell:
					if c.number != next {
						t.Errorf("%s: step %d stands where step %d should", paper, c.number, next)
					}
					next++
					box = c.box
				case *tableCell:
					box = c.box
				}
				if !freeOf(sp).Expand(1e-9).Encloses(box) || box.Overlaps(sp.Block) {
					t.Errorf("%s: a cell stands in the way, %v", paper, box)
				}
				if i > 0 && box.X0 <= before.X0 && box.Y1 > before.Y0 {
					t.Errorf("%s: cell %v follows %v", paper, box, before)
				}
				before = box
			}
		}
	}
}

func TestOnInk(t *testing.T) {
	s := &draw.Sheet{}
	path := draw.LinePath(draw.Style{}, geom.P(0, 0), geom.P(100, 0))
	path.ID = "P1-1"
	s.Add(path)
	v := &draw.View{Axes: geom.Plan(), Scale: 0.5}
	if at, ok := onInk(&page{sheet: s}, v, "P1-1", geom.V(60, 8, 5)); !ok || at.Sub(geom.V(60, 0, 5)).Len() > 1e-9 {
		t.Errorf("the point moved to %v, %v", at, ok)
	}
	if _, ok := onInk(&page{sheet: s}, v, "P2-2", geom.V(60, 8, 5)); ok {
		t.Error("found a line of what is not drawn")
	}
}
