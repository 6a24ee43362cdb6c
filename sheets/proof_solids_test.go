package sheets_test

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// remade is a timber as the other modeller made it, see solids.mjs.
type remade struct {
	Volume   float64
	Min, Max [3]float64
	Sections []struct{ At, Area float64 }
}

const (
	sameVolume  = 1e-6 // of the volume
	sameCorner  = 1e-6 // mm, of the box round it
	sameSection = 1e-6 // of the area
	// facetTol is how far the flat facets of a round face may be from it, in our
	// solids: see geom.Outline. The other modeller's are much finer.
	facetTol = 0.02
	// chordTol is the same of a hole that is cut through, see geom.Solid.Section.
	chordTol = 0.005
)

// TestSolidsMadeElsewhere makes every timber anew from the figures that the
// program prints, by a route that shares no code with ours: another language,
// meshes of triangles, and the words of the README. It must have the same
// volume, lie in the same place, and show the same when it is cut through.
func TestSolidsMadeElsewhere(t *testing.T) {
	cmd := witness(t, "solids.mjs")
	var jobs []*drawn
	var mu sync.Mutex
	todo := examples(t)
	if *long {
		todo = written(t)
	}
	each(t, todo, func(d *drawn) {
		mu.Lock()
		defer mu.Unlock()
		jobs = append(jobs, d)
	})
	slices.SortFunc(jobs, func(a, b *drawn) int { return cmp.Compare(a.name, b.name) })
	var in bytes.Buffer
	for _, d := range jobs {
		text, err := d.frame.Figures().JSON()
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Compact(&in, text); err != nil {
			t.Fatal(err)
		}
		in.WriteByte('\n')
	}
	cmd.Stdin = &in
	out, err := quiet(cmd)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	if len(lines) != len(jobs) {
		t.Fatalf("%d jobs were made, want %d", len(lines), len(jobs))
	}
	var found ledger
	for i, d := range jobs {
		var made []remade
		if err := json.Unmarshal([]byte(lines[i]), &made); err != nil || len(made) != len(d.frame.Members) {
			t.Fatalf("%s: %d of %d members: %v", d.name, len(made), len(d.frame.Members), err)
		}
		for k, m := range d.frame.Members {
			d.remade(m, made[k], &found)
		}
	}
	found.report(t)
}

// remade compares a member with its likeness.
func (d *drawn) remade(m frame.Member, made remade, found *ledger) {
	who := fmt.Sprintf("%s %d", m.Kind, m.No)
	volume, facets := m.Solid().Volume(), roundEnds(m)
	if off := math.Abs(volume - made.Volume); !(off <= sameVolume*volume+facets) {
		found.add("volume", d.name, "%s: %.3f mm³, made elsewhere %.3f", who, volume, made.Volume)
	}
	near := sameCorner
	if facets > 0 {
		near = facetTol
	}
	b := m.Solid().Bounds()
	for i, v := range [][2]float64{
		{b.Min.X, made.Min[0]}, {b.Min.Y, made.Min[1]}, {b.Min.Z, made.Min[2]},
		{b.Max.X, made.Max[0]}, {b.Max.Y, made.Max[1]}, {b.Max.Z, made.Max[2]},
	} {
		if math.Abs(v[0]-v[1]) > near {
			found.add("box", d.name, "%s: side %d at %.6f, made elsewhere %.6f", who, i, v[0], v[1])
		}
	}
	curves := chordTol * holeRims(m)
	if facets > 0 {
		curves += 2 * facetTol * m.Section.Width // where the outline comes and where it goes
	}
	for _, s := range made.Sections {
		// Seen from the far end: what is cut lies behind.
		plane := geom.Axes{O: m.Place.O.Add(m.Place.U.Mul(s.At)), U: m.Place.V, V: m.Place.W, W: m.Place.U}
		area := 0.0
		for _, r := range m.Solid().Section(plane) {
			area += r.Area()
		}
		if math.Abs(area-s.Area) > sameSection*area+curves {
			found.add("section", d.name, "%s at %.1f: %.4f mm², made elsewhere %.4f", who, s.At, area, s.Area)
		}
	}
}

// roundEnds is how much the facets of round ends may add to or take from the
// volume: two thirds of their height over the area of the
// faces.
func roundEnds(m frame.Member) float64 {
	const part = 2.0 / 3
	area := 0.0
	for _, f := range m.Features {
		s, ok := f.(frame.Shape)
		if !ok {
			continue
		}
		for i, q := range s.Points {
			if q.Radius() > 0 {
				var p frame.EndPoint
				if i > 0 {
					p = s.Points[i-1]
				}
				half := math.Hypot(q.Back-p.Back, q.Down-p.Down) / 2
				area += 2 * q.Radius() * math.Asin(min(1, half/q.Radius())) * m.Section.Width
			}
		}
	}
	return part * facetTol * area
}

// holeRims is how long the edges are that all holes of a member show at most
// where it is cut through.
func holeRims(m frame.Member) (length float64) {
	for _, b := range m.Solid().Bores() {
		length += 2 * math.Pi * b.Radius
	}
	return length
}
