package sheets

import (
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom/frame"
)

// A beam without rods has no holes over its posts: their centres are marked
// instead.
func TestPostsAreMarkedOnABeamWithoutRods(t *testing.T) {
	with := func(rod float64) (posts int) {
		m := detailMaker(t, courtyard(t), func(j *frame.Job) { j.Posts.Rod.Diameter = rod })
		for _, row := range marks(stickOf(t, m, "B1")) {
			if strings.HasPrefix(row, "post ") {
				posts++
			}
		}
		return posts
	}
	if n := with(12); n != 0 {
		t.Errorf("%d posts are marked on a beam with rods", n)
	}
	if n := with(0); n != 3 { // the courtyard's
		t.Errorf("%d posts are marked on a beam without rods, want 3", n)
	}
}

func TestBattensAreGivenOnTheRafter(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	rafter := stickOf(t, m, "R1")
	words := strings.Join(rafter.battenEdges().Notes, " ")
	_, list, _ := strings.Cut(strings.TrimSuffix(words, "."), ": ")
	figures := strings.Split(strings.ReplaceAll(list, " and ", ", "), ", ")
	battens := m.frame.Of(frame.KindBatten)
	if len(figures) != len(battens) {
		t.Fatalf("%d figures for %d battens: %s", len(figures), len(battens), words)
	}
	// The first batten's edge lies so far down the slope from the plate's outer
	// face; the rafter starts 14 farther in, in its housing.
	down := m.frame.Setout.Battens[0] + 14/rafter.where.W.Z
	if want := rafter.fine.Length(down); figures[0] != want {
		t.Errorf("the first batten is at %s, want %s", figures[0], want)
	}
}

// Where two cards end at the same place, no place for a third may lie off the
// sheet.
func TestOpenPlacesLieOnTheSheet(t *testing.T) {
	m := detailMaker(t, courtyard(t), nil)
	b := &binder{hand: m.hand, space: m.room(memberTitle)}
	free := b.fresh().room
	card := func(y float64) draw.Rect {
		return draw.Rect{X0: free.X0, X1: free.X0 + 80, Y0: free.Y1 - y - 40, Y1: free.Y1 - y}
	}
	b.sheets = []bound{{taken: []draw.Rect{card(0), card(50), card(100)}}}
	places := b.open()
	if len(places) == 0 {
		t.Fatal("there is no place")
	}
	for _, p := range places {
		if p.room.X0 < free.X0 || p.room.Y1 > free.Y1 {
			t.Errorf("a place from %.0f, %.0f lies off the sheet", p.room.X0, p.room.Y1)
		}
	}
}
