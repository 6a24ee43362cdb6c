package draw

import (
	"fmt"
	"strings"
	"testing"

	"plumbcut/geom"
)

// The marks carry their own names; Groups is shown as the order of the names,
// with a bar between groups.
func TestGroups(t *testing.T) {
	var s Sheet
	line := func(id string, st Style) {
		p := LinePath(st, geom.P(0, 0), geom.P(1, 1))
		p.ID = id
		s.Add(p)
	}
	fill := func(id string, tone Grey) {
		p := FillPath(Outline, tone, Rect{0, 0, 1, 1}.Corners())
		p.ID = id
		s.Add(p)
	}
	line("note", Style{Layer: Notes})
	line("wide", Style{Layer: Outline, Pen: Wide})
	line("thin1", Style{Layer: Outline})
	fill("arrow", 1)
	line("thin2", Style{Layer: Outline})
	s.AddText(Text{Layer: Outline, Height: 5, String: "x", ID: "big"})
	s.AddText(Text{Layer: Outline, Height: 2.5, String: "x", ID: "small"})
	s.AddText(Text{Layer: Outline, Height: 2.5, Bold: true, String: "x", ID: "bold"})
	fill("white", 0)
	line("over", Style{Layer: Outline})
	line("hatch", Style{Layer: Hatch})

	var got []string
	for _, g := range s.Groups() {
		var names []string
		for _, p := range g.Paths {
			names = append(names, p.ID)
		}
		for _, text := range g.Texts {
			names = append(names, text.ID)
		}
		got = append(got, fmt.Sprint(g.Layer, ": ", strings.Join(names, " ")))
	}
	want := []string{
		"hatch: hatch", "outline: arrow", "outline: thin1 thin2", "outline: wide",
		"outline: small", "outline: big", "outline: bold", "outline: white", "outline: over", "notes: note",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("Groups:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestLayerNames(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range Layers() {
		if name := l.String(); name == "" || seen[name] {
			t.Errorf("layer %d is called %q", int(l), name)
		} else {
			seen[name] = true
		}
	}
	if Layer(99).String() != "no layer" {
		t.Error("a layer that is not there has a name")
	}
}

func TestAppendNumber(t *testing.T) {
	for _, c := range []struct {
		v      float64
		places int
		want   string
	}{
		{0, 3, "0"}, {-0.0001, 3, "0"}, {12.5, 3, "12.5"}, {-0.35, 3, "-0.35"}, {1.0009, 3, "1.001"},
		{0.001, 3, "0.001"}, {99999.9999, 3, "100000"}, {2.83464567, 7, "2.8346457"}, {10, 3, "10"}, {7.5, 0, "8"},
	} {
		if got := string(AppendNumber(nil, c.v, c.places)); got != c.want {
			t.Errorf("AppendNumber(%g, %d) = %s, want %s", c.v, c.places, got, c.want)
		}
	}
}
