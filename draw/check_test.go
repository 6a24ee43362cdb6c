package draw

import (
	"math"
	"strings"
	"testing"

	"plumbcut/geom"
)

// Each case spoils a sound set in one way; the error must name the fault.
func TestCheckNamesTheFault(t *testing.T) {
	st := Style{Layer: Outline}
	text := func(t Text) func(*Set) {
		t.At = geom.P(30, 30)
		return func(set *Set) { set.Sheets[0].AddText(t) }
	}
	line := func(st Style, pts ...geom.Pt) func(*Set) {
		return func(set *Set) { set.Sheets[0].Line(st, pts...) }
	}
	for _, c := range []struct {
		name  string
		spoil func(*Set)
		want  string
	}{
		{"no sheets", func(s *Set) { s.Sheets = nil }, "no sheets"},
		{"number twice", func(s *Set) { s.Sheets = append(s.Sheets, s.Sheets[0]) }, "used twice"},
		{"date", func(s *Set) { s.Meta.Date = "14/3/2025" }, "14/3/2025"},
		{"title", func(s *Set) { s.Meta.Title = "a\x01b" }, "U+0001"},
		{"author", func(s *Set) { s.Meta.Author = "\xff" }, "author"},
		{"sheet title", func(s *Set) { s.Sheets[0].Title = "🙂" }, "U+1F642"},
		{"paper", func(s *Set) { s.Sheets[0].Paper.Width = 0 }, "paper"},
		{"NaN", line(st, geom.P(0, 0), geom.P(math.NaN(), 1)), "off every paper"},
		{"infinite", line(st, geom.P(0, 0), geom.P(0, math.Inf(-1))), "off every paper"},
		{"far off", line(st, geom.P(0, 0), geom.P(1e6, 0)), "off every paper"},
		{"layer", line(Style{Layer: 99}, geom.P(0, 0), geom.P(1, 0)), "no such layer"},
		{"pen", line(Style{Pen: -1}, geom.P(0, 0), geom.P(1, 0)), "pen"},
		{"arc", func(s *Set) { s.Sheets[0].Circle(st, geom.P(0, 0), math.NaN()) }, "off every paper"},
		{"arc's angle", func(s *Set) {
			p := ArcPath(st, geom.Arc{Major: geom.P(1, 0), Ratio: 1, End: 1})
			p.Segs[1].Arc.End = math.Inf(1)
			s.Sheets[0].Add(p)
		}, "arc"},
		{"tone", func(s *Set) { s.Sheets[0].FillPolygon(Hatch, 1.5, Rect{0, 0, 1, 1}.Corners()) }, "tone"},
		{"no move", func(s *Set) { s.Sheets[0].Add(Path{Segs: []Seg{{Op: Line}}}) }, "starts with a move"},
		{"empty item", func(s *Set) { s.Sheets[0].Items = append(s.Sheets[0].Items, Item{}) }, "path or a text"},
		{"missing letter", text(Text{Height: 3, String: "⌀12"}), "U+2300"},
		{"new line", text(Text{Height: 3, String: "a\nb"}), "U+000A"},
		{"height", text(Text{String: "a"}), "height 0"},
		{"turn", text(Text{Height: 3, String: "a", Turn: math.NaN()}), "off every paper"},
		{"link", text(Text{Height: 3, String: "a", Link: "A09"}), "A09"},
	} {
		set := soundSet()
		if err := set.Check(); err != nil {
			t.Fatal(err)
		}
		c.spoil(set)
		if err := set.Check(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: Check = %v, want it to say %q", c.name, err, c.want)
		}
	}
}

func soundSet() *Set {
	s := &Sheet{Number: "A01", Title: "100% plan", Paper: a3()}
	s.Line(Style{}, geom.P(0, 0), geom.P(1, 1))
	s.AddText(Text{At: geom.P(1, 1), Height: 2.5, String: "plan", Link: "A01"})
	return &Set{Sheets: []*Sheet{s}}
}

func TestDay(t *testing.T) {
	for date, want := range map[string]string{"": "2000-01-01", "2025-03-14": "2025-03-14"} {
		day, err := Meta{Date: date}.Day()
		if got := day.Format("2006-01-02"); err != nil || got != want {
			t.Errorf("Day of %q = %s, %v, want %s", date, got, err, want)
		}
	}
}
