package sheets

import (
	"slices"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom/frame"
)

// column is the cells of the column with a head.
func column(t *testing.T, table draw.Table, head string) []string {
	t.Helper()
	at := slices.IndexFunc(table.Columns, func(c draw.Column) bool { return c.Head == head })
	if at < 0 {
		t.Fatalf("%q has no column %q", table.Title, head)
	}
	var out []string
	for _, r := range table.Rows {
		out = append(out, r.Cells[at])
	}
	return out
}

func TestTapesToThePosts(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	table := m.tapeTable(false)
	// By hand: the posts are 115 square, their outer faces 3420 out, so their
	// centres 3362.5 out and 57.5, 2870 and 5682.5 along; L is at 0, R at 5740.
	for head, want := range map[string][]string{
		"Along from L":      {"57.5", "2870", "5682.5"},
		"Out from cladding": {"3362.5", "3362.5", "3362.5"},
		"Tape from L":       {"3363", "4421", "6603"}, // √(57.5² + 3362.5²) = 3363.0, √(2870² + 3362.5²) = 4420.7, √(5682.5² + 3362.5²) = 6602.8: to half a millimetre
		"Tape from R":       {"6603", "4421", "3363"},
	} {
		if got := column(t, table, head); !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", head, got, want)
		}
	}
}

func TestHolesOfThePosts(t *testing.T) {
	table := detailMaker(t, courtyard(t), nil).holeTable(false)
	// By hand: 820 deep below ground at −260, −260 and −320; the posts' ends
	// stand on 120 of concrete.
	for head, want := range map[string][]string{
		"Size":      {"Ø 430", "Ø 430", "Ø 430"},
		"Bottom":    {"−1080", "−1080", "−1140"},
		"Post foot": {"−960", "−960", "−1020"},
	} {
		if got := column(t, table, head); !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", head, got, want)
		}
	}
}

func TestSetoutWarnsWhereItDigs(t *testing.T) {
	for _, c := range []struct {
		change      func(*frame.Job)
		deck, house string // what the notes must begin with; empty: no such note
	}{
		{nil, "The posts come up through the deck", "The hole of post 1 would reach under the house"},
		{func(j *frame.Job) { j.Levels.DeckOut = 0 }, "", "The hole of post 1 "},
		{func(j *frame.Job) {
			j.Wall.Returns[0].Length = 3000 // it ends before the posts
			j.Posts.At[0].Wall, j.Posts.At[0].Packer, j.Posts.At[0].Fixing = "", frame.Packer{}, frame.Fixing{}
		}, "The posts ", ""},
	} {
		m := detailMaker(t, courtyard(t), c.change)
		for _, n := range [][2]string{{m.inDeck(), c.deck}, {m.underHouse(), c.house}} {
			if !strings.HasPrefix(n[0], n[1]) || n[1] == "" && n[0] != "" {
				t.Errorf("the note is %q, want %q", n[0], n[1])
			}
		}
	}
}

func TestTapesLeaveOutWhatRunsStraightOut(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	if got := len(m.tapes()); got != 4 { // both to the middle post, and the two long ones
		t.Errorf("%d tapes are drawn, want 4", got)
	}
}
