package sheets

import (
	"math"
	"slices"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// TestSlipShows holds the tapes to a frame of 6.0 by 3.6 m, worked by hand:
// slipped 10, they are √(6010² + 3600²) = 7005.7 and √(5990² + 3600²) = 6988.6,
// which differ by 17.2.
func TestSlipShows(t *testing.T) {
	c := crossTapes{a: geom.V(0, 0, 0), p: geom.V(6000, -3600, 0), b: geom.V(6000, 0, 0), q: geom.V(0, -3600, 0)}
	for _, k := range []struct{ slip, want float64 }{{0, 0}, {10, 17.15}, {-10, -17.15}, {5, 8.58}, {20, 34.30}} {
		if got := c.differ(k.slip); math.Abs(got-k.want) > 0.01 {
			t.Errorf("slipped by %g the tapes differ by %.3f, want %.2f", k.slip, got, k.want)
		}
	}
}

func TestWhatTheTapesShow(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	table := m.slipTable()
	// By hand, with the posts at 57.5 and 5682.5 between L 0 and R 5740, 3362.5
	// out: √(5687.5² + 3362.5²) − √(5677.5² + 3362.5²) = 8.6 for 5; 17.2 for 10;
	// 34.4 for 20. The frame: 5740 by 3357 with a drop of 118: 8.6, 17.3, 34.5.
	// Each is printed to half a millimetre, as on the drawings of the members.
	for head, want := range map[string][]string{
		"Slip along the wall": {"none", "5", "10", "20"},
		"A and B differ by":   {"0", "8.5", "17", "34.5"},
		"C and D differ by":   {"0", "8.5", "17.5", "34.5"},
	} {
		if got := column(t, table, head); !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", head, got, want)
		}
	}
	notes := strings.ReplaceAll(strings.Join(m.squareNotes(), " "), "\u00a0", " ")
	for _, w := range []string{"post 3 is 6603", "post 1 is 6603", "right end of the beam is 6650.5", "right to left is 6650.5"} {
		if !strings.Contains(notes, w) {
			t.Errorf("the notes do not say %q: %s", w, notes)
		}
	}
}

// TestSlipEitherWay: where the true tapes differ, a slip to the right and one to
// the left show different figures, and the table says which tape is the longer.
func TestSlipEitherWay(t *testing.T) {
	m := detailMaker(t, courtyard(t), func(j *frame.Job) { j.Posts.At[2].Along -= 100 })
	table := m.slipTable()
	// By hand: A √(5582.5² + 3362.5²) = 6516.9, B 6602.8: −85.9; slipped 20 to
	// the right √(5602.5² + …) − √(5662.5² + …) = 6534.1 − 6585.6 = −51.6.
	got := column(t, table, "A and B differ by")
	if len(got) != 7 || got[0] != "86, B longer" || got[5] != "51.5, B longer" {
		t.Errorf("A and B: %v", got)
	}
	if slips := column(t, table, "Slip along the wall"); slips[1] != "5 to the right" || slips[2] != "5 to the left" {
		t.Errorf("the slips are %v", slips)
	}
	if got := column(t, table, "C and D differ by"); got[3] != "17.5" || got[4] != "17.5" {
		t.Errorf("C and D: %v", got)
	}
}

func TestPostHeights(t *testing.T) {
	table := detailMaker(t, courtyard(t), nil).postTable()
	// By hand: the seat is 118 of fall and 235 of beam below 2640; the ground is
	// at −260, −260 and −320; the feet stand 820 − 120 below it.
	for head, want := range map[string][]string{
		"Seat":             {"+2287", "+2287", "+2287"},
		"Below level line": {"353", "353", "353"},
		"Above ground":     {"2547", "2547", "2607"},
		"Foot":             {"−960", "−960", "−1020"},
		"Length":           {"3247", "3247", "3307"},
	} {
		if got := column(t, table, head); !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", head, got, want)
		}
	}
}

// TestWallIsFiguredAtBothEnds reads the level line's height at both ends, the
// studs and the screws off the sheet.
func TestWallIsFiguredAtBothEnds(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	s := m.drawAll(m.setoutWallSheets()).Sheets[0]
	var figures []string
	for _, d := range s.Dims {
		figures = append(figures, d.Figure)
	}
	for _, w := range []string{"2640", "+2640  plate's level line", "+2450  underside of plate", "±0  datum", "190", "5990", "5410", "620", "2420", "353", "2607"} {
		if !slices.Contains(figures, w) {
			t.Errorf("the sheet does not give %q: %v", w, figures)
		}
	}
}

func TestWideTableIsCut(t *testing.T) {
	m := detailMaker(t, courtyard(t), func(j *frame.Job) { j.Paper.Size = "A4" })
	wide := draw.Table{Title: "Wide", Columns: []draw.Column{{Head: "Post", Width: 20}}, Rows: []draw.TableRow{{Cells: []string{"1"}}}}
	for _, c := range []string{"a", "b", "c", "d"} {
		wide.Columns = append(wide.Columns, draw.Column{Head: c, Width: 60})
		wide.Rows[0].Cells = append(wide.Rows[0].Cells, c)
	}
	var got []string
	for _, b := range m.inWidth(wide) {
		table := b.(*tableBlock).table
		got = append(got, table.Title+": "+strings.Join(table.Rows[0].Cells, " "))
	}
	// 20 + 2 × 60 is within the 168 of the sheet, 20 + 3 × 60 is not.
	if want := []string{"Wide: 1 a b", "Wide (continued): 1 c d"}; !slices.Equal(got, want) {
		t.Errorf("cut into %q, want %q", got, want)
	}
}
