package frame

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"plumbcut/geom"
)

// TestFigureKeys holds the figures to the documented keys: other programs read
// them by name.
func TestFigureKeys(t *testing.T) {
	text, err := mustBuild(t, walled(leanTo())).Figures().JSON()
	if err != nil {
		t.Fatal(err)
	}
	var top map[string]json.RawMessage
	if err := json.Unmarshal(text, &top); err != nil {
		t.Fatal(err)
	}
	has := func(what string, from json.RawMessage, keys ...string) map[string]json.RawMessage {
		t.Helper()
		var m map[string]json.RawMessage
		if err := json.Unmarshal(from, &m); err != nil {
			t.Fatalf("%s: %v", what, err)
		}
		for _, k := range keys {
			if _, ok := m[k]; !ok {
				t.Errorf("%s has no %q", what, k)
			}
		}
		return m
	}
	has("figures", text, "job", "units", "levels", "setout", "warnings", "members")
	var members []json.RawMessage
	if err := json.Unmarshal(top["members"], &members); err != nil || len(members) < 50 {
		t.Fatalf("%d members, %v", len(members), err)
	}
	for _, m := range members {
		keys := has("member", m, "mark", "kind", "quantity", "hand", "width", "depth", "faces", "length", "ends", "place", "features")
		has("place", keys["place"], "origin", "u", "v", "w")
		var features []json.RawMessage
		if err := json.Unmarshal(keys["features"], &features); err != nil || features == nil {
			t.Fatalf("features: %v, want a list, empty if need be", err)
		}
		for _, f := range features {
			has("feature", f, "kind", "face", "at")
		}
	}
	if bytes.Contains(text, []byte(": -0,")) || bytes.Contains(text, []byte("null")) {
		t.Error("the figures hold a negative zero or a null")
	}
}

// TestFiguresAreSteady: the same job gives the same bytes.
func TestFiguresAreSteady(t *testing.T) {
	a, err1 := mustBuild(t, walled(leanTo())).Figures().JSON()
	b, err2 := mustBuild(t, walled(leanTo())).Figures().JSON()
	if err1 != nil || err2 != nil || !bytes.Equal(a, b) {
		t.Errorf("two builds of one job gave different figures (%v, %v)", err1, err2)
	}
}

// TestRebuiltFromFigures makes every feature again from its printed numbers
// alone; the stick made of them must fill the same room.
func TestRebuiltFromFigures(t *testing.T) {
	eachLikeness(t, func(name string, m MemberFigures, a, b geom.Solid) {
		if math.Abs(a.Volume()-b.Volume()) > 1e-6*a.Volume() || math.Abs(geom.Overlap(a, b)-geom.Overlap(a, a)) > 1e-6*a.Volume() {
			t.Errorf("%s: %s %d is another stick when made from its figures", name, m.Kind, m.No)
		}
	})
}

// eachLikeness makes every member of every variant again from its figures as
// they are written, and gives the member's solid and that of its likeness.
func eachLikeness(t *testing.T, check func(name string, m MemberFigures, a, b geom.Solid)) {
	t.Helper()
	for _, v := range variants {
		j := leanTo()
		v.change(j)
		f := mustBuild(t, j)
		text, err := f.Figures().JSON()
		if err != nil {
			t.Fatal(err)
		}
		var fig Figures
		if err := json.Unmarshal(text, &fig); err != nil {
			t.Fatal(err)
		}
		for i, m := range fig.Members {
			again := rebuilt(t, m)
			a, b := f.Members[i].Solid(), carved(again).Placed(again.Place)
			check(v.name, m, a, b)
		}
	}
}

func rebuilt(t *testing.T, f MemberFigures) Member {
	vec := func(a [3]float64) geom.Vec { return geom.V(a[0], a[1], a[2]) }
	m := Member{
		Kind: f.Kind, Section: Section{Depth: f.Depth, Width: f.Width}, Length: f.Length, Round: f.Round,
		Place: geom.Axes{O: vec(f.Place.Origin), U: vec(f.Place.U), V: vec(f.Place.V), W: vec(f.Place.W)},
	}
	rad := func(x float64) float64 { return x * math.Pi / 180 }
	for _, k := range f.Features {
		foot := Foot{k.Sizes["left"], k.Sizes["right"], k.Sizes["outer"], k.Sizes["house"]}
		var w Feature
		switch k.Kind {
		case "plumb cut":
			w = EndCut{k.Face, CutPlumb, k.At, rad(k.Angles["plan"]), rad(k.Angles["slope"])}
		case "skew cut":
			w = EndCut{k.Face, CutSkew, k.At, rad(k.Angles["plan"]), rad(k.Angles["slope"])}
		case "compound cut":
			w = EndCut{k.Face, CutCompound, k.At, rad(k.Angles["plan"]), rad(k.Angles["slope"])}
		case "level cut":
			w = EndCut{k.Face, CutLevel, k.At, rad(k.Angles["plan"]), rad(k.Angles["slope"])}
		case "brace housing":
			w = BraceHousing{k.Face, k.At, k.Sizes["width"], k.Sizes["depth"], rad(k.Angles["lean"]), k.Sizes["from"], k.Sizes["to"]}
		case "housing":
			w = Housing{k.Face, k.At, k.Sizes["width"], k.Sizes["depth"], k.Sizes["floor"], rad(k.Angles["floor"]), rad(k.Angles["skew"]), rad(k.Angles["floor along"])}
		case "level seat":
			w = SeatCut{FaceEnd, k.At, k.Sizes["run"], rad(k.Angles["to member"])}
		case "level seat with shoulder":
			w = SeatCut{FaceStart, k.At, k.Sizes["run"], rad(k.Angles["to member"])}
		case "birdsmouth":
			w = Birdsmouth{k.At, k.Sizes["heel"], k.Sizes["over"], rad(k.Angles["to member"])}
		case "bevelled tail":
			w = TailBevel{k.At, k.Sizes["nose"], rad(k.Angles["splay"]), rad(k.Angles["to member"])}
		case "check":
			w = Check{k.Face, k.At, k.Sizes["width"], k.Sizes["depth"]}
		case "quarter round end", "ogee end", "profile end":
			w = shapeOf(k)
		case "chamfer":
			w = Chamfer{k.At, k.Sizes["seat"], rad(k.Angles["slope"])}
		case "check-out":
			w = CheckOut{k.Face, k.Sizes["depth"], k.At, k.Sizes["to"]}
		case "socket":
			w = Socket{k.At, foot}
		case "weathering":
			w = Weathering{k.At, k.Sizes["collar"], foot}
		case "screw hole through", "anchor hole through", "bolt hole through", "rod hole through", "rod hole":
			w = Hole{Face: k.Face, Mouth: geom.V(k.At, k.Sizes["v"], k.Sizes["w"]),
				Diameter: k.Sizes["diameter"], Depth: k.Sizes["depth"], Through: k.Kind != "rod hole"}
		default:
			t.Fatalf("no way to make a %q", k.Kind)
		}
		m.Features = append(m.Features, w)
	}
	return m
}

func shapeOf(k FeatureFigures) Shape {
	s := Shape{End: k.Face, Name: strings.TrimSuffix(k.Kind, " end"), At: k.At}
	for i := 1; ; i++ {
		n := strconv.Itoa(i)
		if _, ok := k.Sizes["back "+n]; !ok {
			return s
		}
		s.Points = append(s.Points, EndPoint{k.Sizes["back "+n], k.Sizes["down "+n], k.Sizes["round "+n], k.Sizes["hollow "+n]})
	}
}

// TestFiguresOfOnePlate compares a plate's features with hand arithmetic.
func TestFiguresOfOnePlate(t *testing.T) {
	fig := mustBuild(t, leanTo()).Figures()
	plate := fig.Members[0]
	var at []float64
	for _, f := range plate.Features {
		if f.Kind == "housing" {
			at = append(at, f.At)
		}
	}
	// Running from the left end: 22.5 and ten times 595.5.
	want := []float64{22.5, 618, 1213.5, 1809, 2404.5, 3000, 3595.5, 4191, 4786.5, 5382, 5977.5}
	if !slices.EqualFunc(at, want, near) {
		t.Errorf("housings at %v, want %v", at, want)
	}
	if plate.Mark != "WP1" || plate.Length != 6000 || plate.Depth != 190 || plate.Width != 45 || plate.Ends[0].Cut != CutSquare {
		t.Errorf("plate %+v", plate)
	}
}
