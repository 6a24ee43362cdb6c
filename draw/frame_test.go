package draw

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"plumbcut/geom"
)

func fullBlock() TitleBlock {
	return TitleBlock{
		Owner: "Example Owner", Identification: "2417-A02", Revision: "B", Date: "2025-03-14", Sheet: 2, Sheets: 9,
		Title: "Framing plan", Subtitle: "Attached pergola", Approved: "B. Approver", Creator: "A. Draughter",
		Type: "Construction drawing", Status: "For approval", Scale: "1:50", Units: "Millimetres",
		Job: "Garden pergola", Client: "C. Client", Site: "1 Sample Street",
		Revisions: []Revision{{"A", "2025-02-01", "First issue", "AD"}, {"B", "2025-03-14", "Beam raised by 40", "AD"}},
	}
}

// ISO 5457:1999 with amendment 1:2010: fields of 50 mm counted from the
// centring marks; along the long and the short side A0 24 × 16, A1 16 × 12,
// A2 12 × 8, A3 8 × 6, A4 6 × 4 (seen at
// cadsetterout.com/drawing-standards/grid-reference-frame).
func TestGridFields(t *testing.T) {
	want := map[string][2]int{"A0": {24, 16}, "A1": {16, 12}, "A2": {12, 8}, "A3": {8, 6}, "A4": {6, 4}}
	for name, fields := range want {
		p, _ := PaperByName(name)
		if got := [2]int{GridFields(p.Width), GridFields(p.Height)}; got != fields {
			t.Errorf("%s: %v fields, want %v", name, got, fields)
		}
		for _, edge := range []float64{p.Width, p.Height} {
			lines := gridLines(edge)
			if len(lines) != GridFields(edge)-1 {
				t.Errorf("%s: %d lines between the fields of %g mm", name, len(lines), edge)
			}
			for i := 1; i < len(lines); i++ {
				if lines[i]-lines[i-1] != 50 {
					t.Errorf("%s: field of %g mm, want 50", name, lines[i]-lines[i-1])
				}
			}
			if lines[len(lines)/2] != edge/2 {
				t.Errorf("%s: no line in the middle of %g mm", name, edge)
			}
		}
	}
}

// The same source: letters downward from the top left without I and O, figures
// rightward; A4 at the top and the left only.
func TestGridNames(t *testing.T) {
	for _, test := range []struct{ paper, want string }{
		{"A3", "1 1 2 2 3 3 4 4 5 5 6 6 7 7 8 8 F F E E D D C C B B A A"},
		{"A4", "1 2 3 4 5 6 D C B A"},
	} {
		h := hand(test.paper)
		s := &Sheet{Paper: h.Paper}
		s.grid(h.Paper.Inner())
		var got []string
		for _, it := range s.Items {
			if it.Text != nil {
				got = append(got, it.Text.String)
			}
		}
		if strings.Join(got, " ") != test.want {
			t.Errorf("%s: %s, want %s", test.paper, strings.Join(got, " "), test.want)
		}
	}
	var letters string
	for i := range 26 {
		letters += gridName(i)
	}
	if letters != "ABCDEFGHJKLMNPQRSTUVWXYZAABB" {
		t.Errorf("letters %s", letters)
	}
}

// ISO 5457: frame 20 mm left, 10 mm elsewhere (seen at
// bimblog.house/2016/11/21/drawing-to-conclusions), line of 0.7 mm (seen at
// cadsetterout.com/drawing-standards/line-weights); centring marks of 0.7 mm,
// 10 mm past the frame (from memory).
func TestFrame(t *testing.T) {
	h := hand("A3")
	s := &Sheet{Paper: h.Paper, Number: "A02"}
	sp := s.DrawFrame(fullBlock())
	if want := (Rect{20, 10, 410, 287}); sp.Frame != want {
		t.Errorf("frame %v, want %v", sp.Frame, want)
	}
	wide := map[Rect]bool{}
	for _, it := range s.Items {
		if it.Path != nil && it.Path.Style.Pen == Wide {
			wide[it.Path.Bounds()] = true
		}
	}
	for _, want := range []Rect{
		{20, 10, 410, 287},
		{210, 5, 210, 20}, {210, 277, 210, 292}, {15, 148.5, 30, 148.5}, {400, 148.5, 415, 148.5},
	} {
		if !wide[want] {
			t.Errorf("no wide line over %v", want)
		}
	}
	if w := h.Paper.LineWidth(Wide); w != 0.7 {
		t.Errorf("the frame is %g mm wide, want 0.7", w)
	}
}

// ISO 7200:2004: the block is at most 180 mm wide; it names the legal owner,
// the identification number, the date of issue, the number of the sheet, the
// title, the approval person, the creator and the document type; optional are
// the revision and the number of sheets (from memory).
func TestTitleBlock(t *testing.T) {
	for _, name := range PaperNames() {
		h := hand(name)
		b := fullBlock()
		s := &Sheet{Paper: h.Paper, Number: "A02"}
		sp := s.DrawFrame(b)
		if sp.Block.W() > 180 || sp.Block.X1 != sp.Frame.X1 || sp.Block.Y0 != sp.Frame.Y0 {
			t.Errorf("%s: block %v in frame %v", name, sp.Block, sp.Frame)
		}
		if sp != FrameSpace(h.Paper, b) {
			t.Errorf("%s: measured %v, drawn %v", name, FrameSpace(h.Paper, b), sp)
		}
		var all []string
		for _, it := range s.Items {
			if it.Text != nil {
				all = append(all, it.Text.String)
				if !sp.Block.Encloses(it.Text.Box()) && it.Text.Height != gridLetter {
					t.Errorf("%s: %q stands outside the block", name, it.Text.String)
				}
			}
		}
		words := " " + strings.Join(all, " ") + " "
		for _, field := range []string{
			b.Owner, b.Identification, b.Date, "A02", "2 of 9", b.Title, b.Approved, b.Creator, "Construction drawing",
			b.Revision, b.Subtitle, b.Status, b.Scale, h.Paper.Name, "Figured dimensions govern.", b.Job, b.Client, b.Site,
			"Beam raised by 40",
		} {
			if !strings.Contains(words, " "+field+" ") {
				t.Errorf("%s: the block does not say %q", name, field)
			}
		}
		if strings.Contains(words, "scale this drawing") || strings.Contains(words, "do not scale") {
			t.Errorf("%s: the block forbids scaling", name)
		}
		for _, f := range append(s.Audit(h.Figures), s.LineGaps()...) {
			t.Errorf("%s: %v", name, f)
		}
	}
}

// Letter heights: 5 mm for the title, 7 mm for the number of the sheet, nothing
// under 2.5 mm (the project's own choice from the ISO 3098 series).
func TestTitleBlockHeights(t *testing.T) {
	h := hand("A3")
	s := &Sheet{Paper: h.Paper, Number: "A02"}
	s.DrawFrame(fullBlock())
	want := map[string]float64{"A02": 7, "Framing plan": 5, "A. Draughter": 2.5, "A": 3.5}
	for _, it := range s.Items {
		if it.Text == nil {
			continue
		}
		if height, ok := want[it.Text.String]; ok && it.Text.String != "A" && it.Text.Height != height {
			t.Errorf("%q is %g mm high, want %g", it.Text.String, it.Text.Height, height)
		}
		if it.Text.Height < 2.5 {
			t.Errorf("%q is %g mm high", it.Text.String, it.Text.Height)
		}
	}
}

// However long or empty the fields, nothing touches and nothing leaves the
// block.
func TestTitleBlockLongAndEmpty(t *testing.T) {
	long := strings.Repeat("Quite a long name of something, ", 9) + strings.Repeat("W", 90)
	b := fullBlock()
	b.Owner, b.Site, b.Title, b.Subtitle, b.Status, b.Scale = long, long, long, long, long, long
	b.Revisions[0].Words, b.Revisions[1].By = long, long
	for _, name := range []string{"A4", "A3", "Letter"} {
		for i, block := range []TitleBlock{b, {}} {
			h := hand(name)
			s := &Sheet{Paper: h.Paper, Number: "A02"}
			sp := s.DrawFrame(block)
			for _, f := range s.Audit(h.Figures) {
				t.Errorf("%s, block %d: %v", name, i, f)
			}
			for _, it := range s.Items {
				if it.Text != nil && it.Text.Height != gridLetter && !sp.Block.Encloses(it.Text.Box()) {
					t.Errorf("%s, block %d: %q stands outside", name, i, it.Text.String)
				}
			}
			if sp.Above.H() < 45 {
				t.Errorf("%s, block %d: %.0f mm left above the block", name, i, sp.Above.H())
			}
		}
	}
}

// What is free overlaps neither the block nor a centring mark.
func TestFrameSpaceIsFree(t *testing.T) {
	for _, name := range PaperNames() {
		h := hand(name)
		s := &Sheet{Paper: h.Paper}
		sp := s.DrawFrame(fullBlock())
		p := NewPlacer(s, h)
		for _, r := range []Rect{sp.Above, sp.Beside} {
			if r.Overlaps(sp.Block) || !sp.Frame.Encloses(r) {
				t.Errorf("%s: %v is not free", name, r)
			}
			if r.W() > 0 && r.H() > 0 && !p.Free(r, 0) {
				t.Errorf("%s: something stands in %v", name, r)
			}
		}
	}
}

func TestNiceStep(t *testing.T) {
	for x, want := range map[float64]float64{0.9: 1, 1: 1, 1.3: 1, 1.5: 2, 3: 2, 3.3: 5, 6.9: 5, 7.2: 10, 40: 50, 0.012: 0.01} {
		if got := niceStep(x); math.Abs(got-want) > 1e-9 {
			t.Errorf("niceStep(%g) = %g, want %g", x, got, want)
		}
	}
}

// A scale bar is true: its length on paper is its figures times the scale.
func TestScaleBar(t *testing.T) {
	for _, test := range []struct {
		scale  float64
		feet   bool
		last   string
		length float64 // mm on paper
	}{
		{1.0 / 50, false, "2 m", 40},
		{1.0 / 20, false, "0.8 m", 40},
		{1.0 / 5, false, "200 mm", 40},
		{1, false, "40 mm", 40},
		{1.0 / 48, true, "8 ft", 50.8},
		{1.0 / 12, true, "20 in", 20 * 25.4 / 12},
	} {
		b := newBar(test.scale, test.feet)
		if got, length := b.label(b.cells), b.cell*float64(b.cells); got != test.last || math.Abs(length-test.length) > 1e-9 {
			t.Errorf("1:%g: %s over %g mm, want %s over %g mm", 1/test.scale, got, length, test.last, test.length)
		}
	}
}

func TestScaleName(t *testing.T) {
	for scale, want := range map[float64]string{0.02: "1:50", 1.0 / 3: "1:3", 1: "1:1", 2: "2:1", 0.4: "1:2.5", 1.0 / 48: "1:48"} {
		if got := ScaleName(scale); got != want {
			t.Errorf("ScaleName(%g) = %s, want %s", scale, got, want)
		}
	}
}

func TestWrap(t *testing.T) {
	w := TextWidth("one two", 2.5, false)
	tests := []struct {
		s     string
		width float64
		want  string
	}{
		{"", 10, `[""]`},
		{"one two three", 0, `["one two three"]`},
		{"one two three", w, `["one two" "three"]`},
		{"one\ntwo", 100, `["one" "two"]`},
		{"one two three", 0.1, `["o" "n" "e" "t" "w" "o" "t" "h" "r" "e" "e"]`},
		{"ÅÅÅ", TextWidth("ÅÅ", 2.5, false), `["ÅÅ" "Å"]`},
		{`at 5' 4 3/8", post 2`, TextWidth(`at 5' 4`, 2.5, false), `["at 5' 4" "3/8\"," "post" "2"]`},
		{`at 5' 4 3/8", post 2`, TextWidth(`5' 4 3/8",`, 2.5, false), `["at" "5' 4 3/8\"," "post 2"]`},
		{"at 105 mm: one", TextWidth("at 105", 2.5, false), `["at 105" "mm:" "one"]`},
		{"at 105 mm: one", TextWidth("105 mm:", 2.5, false), `["at" "105 mm:" "one"]`},
		{"post 1 2 3", TextWidth("post 1", 2.5, false), `["post 1" "2 3"]`},
		{"a\xffb", 0.1, `["a" "\xff" "b"]`}, // broken UTF-8 does not break the sheet
	}
	for _, test := range tests {
		if got := fmt.Sprintf("%q", Wrap(test.s, 2.5, false, test.width)); got != test.want {
			t.Errorf("Wrap(%q, %.1f) = %s, want %s", test.s, test.width, got, test.want)
		}
	}
}

func TestTable(t *testing.T) {
	h := hand("A3")
	table := Table{
		Title:   "Members",
		Columns: []Column{{Head: "Mark"}, {Head: "Member", Width: 40}, {Head: "Length", Align: End}},
		Rows: []TableRow{
			{Cells: []string{"R1", "Rafter, sanded on three faces and sealed", "3214"}, Link: "A06"},
			{Cells: []string{"B1", "Beam"}}, // a short row ends in empty cells
			{Cells: []string{"P1", "Post", "2510"}},
		},
	}
	s := &Sheet{Number: "A01", Paper: h.Paper}
	room := table.Draw(s, geom.P(50, 200))
	w, d := table.Size()
	if math.Abs(room.W()-w) > 1e-9 || math.Abs(room.H()-d) > 1e-9 {
		t.Errorf("drawn %g × %g, measured %g × %g", room.W(), room.H(), w, d)
	}
	for _, f := range append(s.Audit(h.Figures), s.LineGaps()...) {
		t.Error(f)
	}
	links := 0
	for _, it := range s.Items {
		if it.Text != nil && it.Text.Link == "A06" {
			links++
			if it.Text.String != "R1" {
				t.Errorf("%q links to A06", it.Text.String)
			}
		}
	}
	if links != 1 {
		t.Errorf("%d links, want 1", links)
	}
	parts := table.Split(d - 1)
	if len(parts) != 2 || len(parts[0].Rows) != 2 || parts[1].Title != "Members (continued)" {
		t.Fatalf("split into %d parts: %+v", len(parts), parts)
	}
	if w1, _ := parts[1].Size(); math.Abs(w1-w) > TextWidth("Members (continued)", TitleHeight, true) {
		t.Errorf("the second part is %g wide, the first %g", w1, w)
	}
	if len(table.Split(1)) != 3 {
		t.Error("rows that are too high by themselves must stand alone")
	}
}

func TestNoteBlock(t *testing.T) {
	h := hand("A3")
	n := NoteBlock{Title: "General notes", Numbered: true, Width: 60, Notes: []string{
		"Measure on site before cutting anything that is marked as held.",
		"Local code and licensed practice govern.", "Ångström.",
	}}
	s := &Sheet{Number: "A01", Paper: h.Paper}
	room := n.Draw(s, geom.P(50, 200))
	for _, f := range s.Audit(h.Figures) {
		t.Error(f)
	}
	for _, it := range s.Items {
		if !room.Expand(0.5).Encloses(it.Text.Box()) {
			t.Errorf("%q at %v stands outside %v", it.Text.String, it.Text.Box(), room)
		}
	}
	parts := n.Split(room.H() - 1)
	if len(parts) != 2 || parts[1].First != 3 || len(parts[1].Notes) != 1 {
		t.Errorf("split into %+v", parts)
	}
}
