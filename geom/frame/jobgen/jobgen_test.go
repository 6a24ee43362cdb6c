package jobgen_test

import (
	"bytes"
	"strings"
	"testing"

	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/frame/jobgen"
)

// jobs is how many random jobs the default run audits.
const jobs = 500

// TestJobsAreSound builds random jobs and audits each: no two members clash,
// every bearing is met, every solid is closed. Few may be refused, and only by
// a rule.
func TestJobsAreSound(t *testing.T) {
	refused := 0
	for seed := range uint64(jobs) {
		text := jobgen.Job(seed)
		j, err := frame.Read("random.yaml", text)
		if err != nil {
			t.Fatalf("seed %d cannot be read: %v\n%s", seed, err, text)
		}
		f, err := frame.Build(j)
		if err != nil {
			refused++
			t.Logf("seed %d: %v", seed, err)
			continue
		}
		for _, x := range f.Audit() {
			t.Errorf("seed %d: %s", seed, x.What)
		}
		for _, p := range f.Roof.Parts {
			for _, m := range f.Members {
				if v := geom.Overlap(p.Shape, m.Solid()); v > 0.5 && m.Kind != frame.KindFooting {
					t.Errorf("seed %d: the %s and %s %d share %.1f mm³", seed, p.Name, m.Kind, m.No, v)
				}
			}
		}
		for _, m := range f.Members {
			if err := m.Solid().Check(); err != nil {
				t.Errorf("seed %d: %s %d: %v", seed, m.Kind, m.No, err)
			}
		}
	}
	if refused > jobs/50 {
		t.Errorf("%d of %d random jobs were refused, want at most %d", refused, jobs, jobs/50)
	}
}

// TestJobsAreSteady: a seed always gives the same job, another seed another.
func TestJobsAreSteady(t *testing.T) {
	if !bytes.Equal(jobgen.Job(7), jobgen.Job(7)) || bytes.Equal(jobgen.Job(7), jobgen.Job(8)) {
		t.Error("a seed must give one job, and its own")
	}
}

// TestEveryOptionIsUsed: between them the random jobs say every word that the
// model has a branch for.
func TestEveryOptionIsUsed(t *testing.T) {
	var all strings.Builder
	for seed := range uint64(jobs) {
		all.Write(jobgen.Job(seed))
	}
	text := all.String()
	for _, word := range []string{
		"feet-inches", "deck:", "studs: {first", "studs: {at", "side: left", "side: right", "door:", "window:", "soffit:",
		"top:", "underside:", "packers:", "base: concrete", "base: stirrup", "base: slab", "base: deck", "fixings:", "shape: round", "shape: square", "rod:", "wall: left",
		"wall: right", "ground:", "ground_line:", "centres:", "number:", "ends: flush", "ends: centred", "inset:", "seat: level", "clearance:",
		"gap:", "shade:", "overhang:", "overhang_left:", "drop: 0\n", "angle:", "slope:", "wall face", "plate inner arris", "beam outer arris",
		"rafters: over", "rafters: between", "heel:", "head:", "tail:", "shape: plumb", "shape: square", "shape: bevelled", "shape: quarter round", "shape: ogee", "profile:", "hollow:", "round:", "keep_out:", "of: post", "every:",
		"beam: checked out", "beam: face-fixed", "beam: on bracket", "beam: twin\n", "beam: twin checked out", "check_out:", "line: centred", "pattern: staggered", "pattern: in pairs", "  top: -", "edge:",
		"straps:", "stock:", "  lengths:", "price:", "sections:", "extra:", "spare:", "bag_yield:", "lie: checked", "battens: ", "laths:", "slats:", "raised: outer", "roof:", "gutter:", "flashing:",
		"kind: solid masonry", "kind: concrete", "kind: unfilled masonry", "kind: masonry veneer", "kind: cladding cut back", "kind: fascia",
		"gutter:", "cut_back:", "cavity:", "from_edge:", "rows: staggered",
		"roof_straps:", "on: undersides", "on: top edges", "past:", "blocking:", "over: beam", "set: plumb", "fascia:", "valance:", "set: on the face", "set: between posts", "set_back:",
		"braces:", "joint: housed", "joint: lapped", "bolt:", "down:", "along:", "length:",
		"rear_beam:", "  rear: [", "rear beam inner arris", "rear beam outer arris",
	} {
		if !strings.Contains(text, word) {
			t.Errorf("no random job says %q", word)
		}
	}
}
