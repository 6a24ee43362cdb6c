package frame

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"plumbcut/geom"
)

// on gives the lean-to another wall.
func on(k Backing, more ...func(j *Job)) *Job {
	j := leanTo()
	j.Wall.Kind = k
	if k.of().studs() == "" {
		j.Wall.Studs = nil
	}
	for _, m := range more {
		m(j)
	}
	return j
}

func veneered(j *Job) { j.Wall.Cladding, j.Wall.Cavity = 90, 40 }

func cut(j *Job) { j.Wall.CutBack, j.Wall.Flashing = CutAway{40, 10, 15}, "folded metal" }

// eaves sets a fascia from 30 below the plate to 80 above, its gutter over it.
func eaves(j *Job) {
	j.Wall.Fascia = EavesBoard{Thickness: 25, Depth: 300, Underside: 2380, Eave: 600, Gutter: Eaves{2660, 90, 120}}
}

// TestBackings: where the plate stands, what holds it and which pieces of the
// house are there. The plate is 45 thick on packers of 20; the cladding is 20.
func TestBackings(t *testing.T) {
	for _, c := range []struct {
		job    *Job
		outer  float64 // of the plate's outer face, out
		grip   float64
		fixing HardwareKind
		house  string
		warns  string // part of the warning that is given
	}{
		{on(""), 65, 20, CoachScrew, "cladding, wall, ground", ""},
		{on(OnStuds), 65, 20, CoachScrew, "cladding, wall, ground", ""},
		{on(CutBack, cut), 45, 20, CoachScrew, "cladding, wall, ground", ""},
		{on(SolidMasonry), 65, 20, Anchor, "cladding, wall of brick, ground", ""},
		{on(SolidMasonry, func(j *Job) { j.Wall.Cladding = 0 }), 65, 0, Anchor, "wall of brick, ground", ""},
		{on(OnConcrete), 65, 20, Anchor, "cladding, wall of concrete, ground", ""},
		{on(OnUnfilled), 65, 20, Anchor, "cladding, wall of block, ground", "designer to confirm"},
		{on(OnVeneer, veneered), 65, 130, CoachScrew, "cladding of brick, wall, ground", "designer to confirm"},
		{on(OnFascia, eaves), 65, 25, CoachScrew, "cladding, wall, fascia, soffit, house gutter, ground", "designer to confirm"},
	} {
		f := mustBuild(t, c.job)
		var house []string
		for _, h := range f.House {
			name := h.Name
			if h.Of != "" {
				name += " of " + string(h.Of)
			}
			house = append(house, name)
		}
		kinds := map[HardwareKind]bool{}
		for _, h := range f.Hardware() {
			if h.Use == UsePlateWall {
				kinds[h.Kind] = true
			}
		}
		name := c.job.Wall.Kind
		if got := -f.Setout.Rear().Outer; math.Abs(got-c.outer) > slack {
			t.Errorf("%s: the plate's outer face is %g out, want %g", name, got, c.outer)
		}
		if got := c.job.Wall.Grip(); math.Abs(got-c.grip) > slack {
			t.Errorf("%s: what holds the screws begins at %g, want %g", name, got, c.grip)
		}
		if !kinds[c.fixing] || !kinds[Washer] || len(kinds) != 2 {
			t.Errorf("%s: the plate is held by %v, want %s and washer", name, kinds, c.fixing)
		}
		if got := strings.Join(house, ", "); got != c.house {
			t.Errorf("%s: the house is %s, want %s", name, got, c.house)
		}
		said := ""
		for _, w := range f.Warnings {
			said += w.Message
		}
		if (c.warns == "") != (said == "") || !strings.Contains(said, c.warns) {
			t.Errorf("%s: warns %q, want %q", name, said, c.warns)
		}
		for _, x := range f.Audit() {
			t.Errorf("%s: %s", name, x.What)
		}
	}
}

// TestCladdingCutBack: the cladding leaves plate and wall posts their room, to
// the stated distance and no farther.
func TestCladdingCutBack(t *testing.T) {
	j := walled(on(CutBack, cut))
	for i := range j.Posts.At {
		if p := &j.Posts.At[i]; p.Wall == Left {
			p.Along -= 20
		} else if p.Wall == Right {
			p.Along += 20
		}
	}
	f := mustBuild(t, j)
	for _, h := range f.House {
		if h.Name == HouseGround {
			continue
		}
		for _, m := range f.Members {
			if v := geom.Overlap(h.Shape, m.Solid()); v > clashLeast && m.Kind != KindFooting {
				t.Errorf("%s shares %g mm³ with %s %d", h.Name, v, m.Kind, m.No)
			}
		}
	}
	// 6 m of plate and 15 at either end, 190 high with 40 and 10, 20 thick; the
	// wall is drawn from -500 to 6500 and from -150 to 3000.
	want := (7000*3150.0 - 6030*240) * 20
	if got := f.House[0].Shape.Volume(); math.Abs(got-want) > 1 {
		t.Errorf("the cladding holds %g mm³, want %g", got, want)
	}
}

// TestStaggeredRows: fixings stand high and low by turns, from the left end, at
// the stated distance from the plate's edges, and so do their holes.
func TestStaggeredRows(t *testing.T) {
	j := on(SolidMasonry, func(j *Job) { j.Plate.Fixing.Rows, j.Plate.Fixing.RowEdge = Staggered, 45 })
	f := mustBuild(t, j)
	var ups, holes []float64
	for _, p := range f.Setout.PlateFixings {
		ups = append(ups, p.Up)
	}
	for _, x := range f.Members[0].Features {
		if h, ok := x.(Hole); ok && h.Use == UseAnchor {
			holes = append(holes, h.Mouth.Z)
		}
	}
	want := []float64{145, 45, 145, 45, 145, 45, 145, 45}[:len(ups)]
	if len(ups) < 4 || !slices.Equal(ups, want) || !slices.Equal(holes, want) {
		t.Errorf("rows at %v, holes at %v, want %v", ups, holes, want)
	}
}

// TestAnchorsKeepOffOpenings: where a window's head is nearer under an anchor
// than stated, the anchors beside it stand clear of it. A spacing that
// leaves no such place is warned of.
func TestAnchorsKeepOffOpenings(t *testing.T) {
	window := func(j *Job) {
		j.Wall.Openings = []Opening{{"window", "", 2500, 3100, 900, 2400}}
		j.Plate.Fixing.FromEdge = 150
	}
	f := mustBuild(t, on(SolidMasonry, window))
	for _, p := range f.Setout.PlateFixings {
		if p.Along > 2350+slack && p.Along < 3250-slack {
			t.Errorf("an anchor stands at %g, over a window from 2500 to 3100", p.Along)
		}
	}
	if len(f.Warnings) != 0 {
		t.Errorf("warnings %v", f.Warnings)
	}
	f = mustBuild(t, on(SolidMasonry, window, func(j *Job) { j.Plate.Fixing.Spacing = 500 }))
	if len(f.Warnings) != 1 || !strings.Contains(f.Warnings[0].Message, "nearer to an opening than the 150 mm stated") {
		t.Errorf("warnings %v, want one of the anchors over the window", f.Warnings)
	}
}

// TestBackingsRefused: mixtures that cannot be built.
func TestBackingsRefused(t *testing.T) {
	for _, c := range []struct {
		job  *Job
		want string
	}{
		{on(OnVeneer, func(j *Job) { j.Wall.Cladding = 0 }), "a masonry veneer needs the thickness of its leaf; add cladding: 90, or what it is"},
		{on(OnFascia), "a plate on a fascia needs to know where that is; add fascia: {depth: 190, underside: 2450, eave: 600}, or what it is"},
		{walled(on(OnFascia, eaves)), "post 1 is fixed to a return, which is no fascia; let it stand free, or say of which kind the wall is"},
		{on(OnFascia, eaves, func(j *Job) { j.Wall.Fascia.Depth = 200 }), "the top of the plate is at 2600 mm, above that of the fascia at 2580 mm; lower the plate"},
		{on(OnFascia, eaves, func(j *Job) { j.Wall.Fascia.Gutter.Underside = 2590 }), "the top of the plate is at 2600 mm and the gutter's underside at 2590 mm; lower the plate"},
		{on(OnFascia, eaves, func(j *Job) { j.Wall.Fascia.Gutter.Underside, j.Battens.First = 2620, 10 }), "the first batten stands 14.4 mm up into the gutter; lower the plate or begin the battens farther out"},
		{on(CutBack, cut, func(j *Job) { j.Wall.Cladding = 70 }), "with the cladding cut back the plate is sunk 5 mm behind its face; use a thicker plate, or packers"},
		{on(CutBack, cut, func(j *Job) { j.Plate.Hold, j.Wall.Cladding = Over, 30 }), "the rafters would run 10 mm into the cladding"},
		{on(OnConcrete, func(j *Job) { j.Plate.Fixing.Rows, j.Plate.Fixing.RowEdge = Staggered, 90 }), "two rows 90 mm from the edges of a plate 190 mm deep are one"},
		{on(OnConcrete, func(j *Job) { j.Plate.Fixing.Rows, j.Plate.Fixing.RowEdge = Staggered, 10 }), "leaves too little beside a hole of 13 mm"},
		{on(OnConcrete, func(j *Job) { j.Plate.Fixing.Rows, j.Plate.Fixing.RowEdge, j.Plate.Packer.Height = Staggered, 30, 150 }), "packers 150 mm high do not reach behind both rows; make them at least 156 mm"},
	} {
		_, err := Build(c.job)
		var errs Errors
		if !errors.As(err, &errs) || !strings.Contains(errs[0].Msg, c.want) {
			t.Errorf("got %v, want %q", err, c.want)
		}
	}
}

// TestIdleWallKeys: a key that another kind of wall would obey is refused.
func TestIdleWallKeys(t *testing.T) {
	for _, c := range [][2]string{
		{"wall: {kind: concrete, studs: {first: 0}}", "wall.studs has no effect here"},
		{"wall: {cavity: 40}", "wall.cavity has no effect here: it counts only where wall.kind is masonry veneer"},
		{"wall: {flashing: metal}", "wall.flashing has no effect here"},
		{"wall: {fascia: {depth: 190, underside: 2400, eave: 600}}", "wall.fascia has no effect here"},
		{"wall: {kind: fascia, fascia: {depth: 190, underside: 2400, eave: 600}, soffit: {level: 2500, out: 400}}", "wall.soffit has no effect here"},
	} {
		_, err := Read("job.yaml", []byte(strings.Replace(smallJob, "levels:", c[0]+"\nlevels:", 1)))
		if err == nil || !strings.Contains(err.Error(), c[1]) {
			t.Errorf("%s: got %v, want %q", c[0], err, c[1])
		}
	}
}
