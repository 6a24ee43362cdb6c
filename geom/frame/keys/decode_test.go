package keys

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"plumbcut/geom/measure"
)

// shed is what the table of these tests fills.
type shed struct {
	name   string
	height float64
	doors  []door
	width  float64
	lined  bool
}

type door struct {
	at     float64
	colour string
}

func (s *shed) table() Group {
	return Group{Fields: []Field{
		{Key: "name", Is: Text(&s.name, 20), Need: true, Doc: "What it is called."},
		{Key: "height", Is: Length(&s.height, Between(1000, 4000)), Def: "2.1 m", Habit: true, Doc: "Its height."},
		{Key: "walls", Is: Group{Fields: []Field{
			{Key: "width", Is: Length(&s.width, Between(0, 9000)), Def: "100", Also: []string{"breadth"}, Doc: "Their width."},
			{Key: "inside", Is: Either(&s.lined, "lined", "bare"), Def: "bare", Doc: "Their inside."},
		}}, Doc: "Its walls."},
		{Key: "doors", Is: ListOf(&s.doors, 0, func() door { return door{colour: "green"} }, func(d *door) Kind {
			return Group{Short: "at", Fields: []Field{
				{Key: "at", Is: Length(&d.at, Between(-9000, 9000)), Need: true, Doc: "Where."},
				{Key: "colour", Is: Text(&d.colour, 10), Doc: "Its colour."},
			}}
		}), Doc: "Its doors."},
	}}
}

func read(t *testing.T, text string, bare measure.Units) (shed, Given, Errors) {
	t.Helper()
	doc, err := Parse("shed", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	var s shed
	given, errs := doc.Decode(s.table(), bare)
	return s, given, errs
}

func TestDecode(t *testing.T) {
	s, given, errs := read(t, `name: North shed
walls:
  inside: lined
doors:
  - 50
  - {at: 2 m, colour: red}
`, measure.Millimetres)
	if errs != nil {
		t.Fatal(errs)
	}
	want := shed{"North shed", 2100, []door{{50, "green"}, {2000, "red"}}, 100, true}
	if fmt.Sprint(s) != fmt.Sprint(want) {
		t.Errorf("got %v, want %v", s, want)
	}
	for path, want := range map[string]Pos{
		"name": {1, 7}, "walls": {2, 1}, "walls.inside": {3, 11}, "doors[0]": {5, 5}, "doors[0].at": {5, 5},
		"doors[1].colour": {6, 23},
		"walls.width":     {2, 1}, // left out: where its group is
		"doors[0].colour": {5, 5}, "height": {1, 1}, "nothing.of[3].that": {1, 1},
	} {
		if got := given.Pos(path); got != want {
			t.Errorf("Pos(%q) = %v, want %v", path, got, want)
		}
	}
	if !given.Has("doors[1].colour") || given.Has("walls.width") {
		t.Error("Has takes a default for given, or the other way about")
	}
	if got, want := given.Habits(), []Habit{{"height", "2.1 m"}}; !slices.Equal(got, want) {
		t.Errorf("Habits() = %v, want %v", got, want)
	}
}

// TestDecodeInches: a bare number is in the file's unit, a default in its own.
func TestDecodeInches(t *testing.T) {
	s, _, errs := read(t, "name: n\nwalls: {width: 4 1/2}\ndoors: [11' 4 3/8\", {at: 20}]", measure.FeetInches)
	if errs != nil {
		t.Fatal(errs)
	}
	if !near(s.width, 4.5*25.4) || s.height != 2100 || !near(s.doors[0].at, 136.375*25.4) || s.doors[1].at != 20*25.4 {
		t.Errorf("got %v", s)
	}
	_, _, errs = read(t, "name: n\nheight: 12", measure.FeetInches)
	if got, want := errs.Error(), `shed:2:9: height "12" is too small; the least is 3' 3 3/8"`; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// TestDecodeAlias: an alias stands for its value; its faults are where it stands.
func TestDecodeAlias(t *testing.T) {
	s, _, errs := read(t, "name: n\nheight: &h 3000\nwalls: {width: *h}\ndoors: [*h, {at: *h}]", measure.Millimetres)
	if errs != nil || s.width != 3000 || s.doors[0].at != 3000 || s.doors[1].at != 3000 {
		t.Errorf("got %v, %v", s, errs)
	}
	_, _, errs = read(t, "name: &n North\nheight: *n", measure.Millimetres)
	if len(errs) != 1 || errs[0].Pos != (Pos{2, 9}) {
		t.Errorf("got %v", errs)
	}
}

func TestDecodeBlank(t *testing.T) {
	s, given, errs := read(t, "name: n\nheight:\nwalls: ~\ndoors:\n", measure.Millimetres)
	if errs != nil || s.height != 2100 || s.width != 100 || len(s.doors) != 0 || given.Has("height") {
		t.Errorf("got %v, %v", s, errs)
	}
}

func TestDecodeFindsAll(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"", `shed:1:1: the file says nothing; it needs at least the keys name`},
		{"- a", `shed:1:1: the file holds a list; it takes the keys name, height, walls, doors`},
		{"shed", `shed:1:1: the file holds one value; it takes the keys name, height, walls, doors`},
		{"nmae: [1]\nhieght: 5 km\nwalls: {breadth: -3, inside: tiled, at: 3}\ndoors: {}\ncolor: red", `shed:1:1: the file has no key "nmae"; did you mean name?
shed:1:7: name holds a list; it takes one value, like …
shed:2:1: the file has no key "hieght"; did you mean height?
shed:2:9: height "5 km" is not a length; write it like 2400, 2.4 m or 11' 4 3/8"
shed:3:9: walls has no key "breadth"; write width
shed:3:18: walls.width "-3" is negative; give it without the minus sign
shed:3:30: walls.inside "tiled" is not one of its words; write lined or bare
shed:3:37: walls has no key "at"; it belongs in doors
shed:4:1: doors holds keys; it takes a list, like [2400, …]
shed:5:1: the file has no key "color"; it takes name, height, walls, doors`},
	} {
		_, _, errs := read(t, tt.text, measure.Millimetres)
		if got := errs.Err().Error(); got != tt.want {
			t.Errorf("%q: got\n%s\nwant\n%s", tt.text, got, tt.want)
		}
	}
}

func TestDecodeBoundsTheErrors(t *testing.T) {
	var text strings.Builder
	for i := range 5000 {
		fmt.Fprintf(&text, "k%d: 1\n", i)
	}
	_, _, errs := read(t, text.String(), measure.Millimetres)
	err := errs.Err().(Errors)
	if len(err) != mostErrors+1 || err[mostErrors].Rule != RuleMany || err[0].Pos.Line != 1 {
		t.Errorf("%d errors, the last %v", len(err), err[len(err)-1])
	}
}

func TestTexts(t *testing.T) {
	s := shed{name: "A", doors: []door{{1, ""}, {2, "red"}}}
	var got []string
	Texts(s.table(), func(path, text string) { got = append(got, path+"="+text) })
	if want := []string{"name=A", "doors[1].colour=red"}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

func TestQuoteAndSpoken(t *testing.T) {
	for _, tt := range []struct{ got, want string }{
		{Quote("plain"), `"plain"`},
		{Quote(`4 3/8"`), `“4 3/8"”`},
		{Quote("a\x1b[31mb"), `"a\u001b[31mb"`},
		{Quote(strings.Repeat("é", 41)), `"` + strings.Repeat("é", 40) + `…"`},
		{Spoken("a.b"), "a.b"},
		{Spoken("a.b[0]"), "a.b no. 1"},
		{Spoken("a.b[11].c.d"), "a.b no. 12, c.d"},
	} {
		if tt.got != tt.want {
			t.Errorf("got %s, want %s", tt.got, tt.want)
		}
	}
}

func TestSlips(t *testing.T) {
	for _, tt := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"beam", "beam", 0}, {"beam", "", 4}, {"baem", "beam", 1}, {"bem", "beam", 1},
		{"beaam", "beam", 1}, {"bean", "beam", 1}, {"rafter", "batten", 3},
	} {
		if got := slips(tt.a, tt.b); got != tt.want {
			t.Errorf("slips(%q, %q) = %d, want %d", tt.a, tt.b, got, tt.want)
		}
	}
}

func near(a, b float64) bool { return math.Abs(a-b) < 1e-9 }
