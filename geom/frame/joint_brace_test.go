package frame

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"plumbcut/geom"
)

// braceJob is a job file with braces that say something of their own.
func braceJob(braces string) string {
	return `plumbcut: 1
project: {title: Braces}
levels: {datum: paving, ground: 0}
plate: {section: 190x45, length: 6000, top: 2900}
beam: {section: 190x90, out: 3000}
posts: {section: 120x120, at: [200, 3000, 5800]}
rafters: {section: 120x45, centres: 700}
fall: {drop: 100}
braces: {section: 90x70, ` + braces + "}\n"
}

// TestBraceLengths compares braces with the table of braces on a carpenter's
// square, in inches: NAVEDTRA 14044, figure 2-11
// (constructionmanuals.tpub.com/14044/css/Brace-60.htm), and with 3-4-5
// (armyengineer.tpub.com/en0069a, page 41). A butted brace is that long from
// long point to long point.
func TestBraceLengths(t *testing.T) {
	const inch = 25.4
	for _, c := range []struct {
		given                     string
		down, along, length, foot float64 // foot: the post end off square, degrees
	}{
		{`down: 24", along: 24"`, 24, 24, 33.94, 45},
		{`down: 24"`, 24, 24, 33.94, 45},
		{`down: 27", angle: 45`, 27, 27, 38.18, 45},
		{`length: 42.43"`, 30, 30, 42.43, 45},
		{`down: 18", along: 24"`, 18, 24, 30, math.Atan2(18, 24) * 180 / math.Pi},
		{`length: 30", along: 24"`, 18, 24, 30, math.Atan2(18, 24) * 180 / math.Pi},
		{`down: 20", angle: 60`, 20, 20 / math.Sqrt(3), 40 / math.Sqrt(3), 60}, // half an equilateral triangle
	} {
		j, err := Read("braces.yaml", []byte(braceJob(c.given)))
		if err != nil {
			t.Fatal(err)
		}
		f := mustBuild(t, j)
		b := f.Of(KindBrace)
		if len(b) != 4 || b[0].Quantity != 4 || b[0].Hand != NoHand {
			t.Errorf("%s: %d braces, %d alike, hand %q; want 4 alike", c.given, len(b), b[0].Quantity, b[0].Hand)
		}
		m := b[0]
		const table = 0.006 // inches: the table has two places
		foot, head := m.EndCut(FaceStart), m.EndCut(FaceEnd)
		mitre, tilt := foot.Saw()
		level, _ := head.Saw()
		if math.Abs(m.Length/inch-c.length) > table || tilt != 0 ||
			math.Abs(degrees(mitre)-c.foot) > 1e-2 || math.Abs(degrees(level)-(90-c.foot)) > 1e-2 {
			t.Errorf("%s: %.3f in long, cuts %.3f° and %.3f° off square; want %.2f, %.2f°, %.2f°", c.given, m.Length/inch, degrees(mitre), degrees(level), c.length, c.foot, 90-c.foot)
		}
		if math.Abs(j.Braces.Down/inch-c.down) > table || math.Abs(j.Braces.Along/inch-c.along) > table {
			t.Errorf("%s: legs %.3f and %.3f in, want %.2f and %.2f", c.given, j.Braces.Down/inch, j.Braces.Along/inch, c.down, c.along)
		}
		// Its long points lie on the post's side and under the beam.
		p := f.Of(KindPost)[0]
		side, under := p.Place.O.X+p.Section.Width, p.Place.O.Z+p.Length
		for _, q := range []struct{ got, want geom.Vec }{
			{m.Place.O, geom.V(side, m.Place.O.Y, under-j.Braces.Down)},
			{m.Place.Point(geom.V(m.Length, 0, 0)), geom.V(side+j.Braces.Along, m.Place.O.Y, under)},
		} {
			if q.got.Sub(q.want).Len() > 1e-6 {
				t.Errorf("%s: a long point at %v, want %v", c.given, q.got, q.want)
			}
		}
	}
}

// TestHousedBrace reckons housings of 3-4-5 by hand: a brace 60 deep whose leg is
// 3 along for 4 down takes up 60 ÷ 3/5 = 100 of the post and 60 ÷ 4/5 = 75 of
// the beam. Let in by 15, each is a parallelogram of that length.
func TestHousedBrace(t *testing.T) {
	j := leanTo()
	braced(j, BraceHoused)
	j.Braces.Section = Section{Depth: 60, Width: 50}
	j.Braces.Down, j.Braces.Along, j.Braces.Clearance = 800, 600, 0
	f := mustBuild(t, j)
	plain := leanTo()
	bare := mustBuild(t, plain)
	for _, c := range []struct {
		kind  Kind
		times float64
		area  float64
	}{{KindPost, 1, 100 * 15}, {KindBeam, 4, 75 * 15}} {
		got := bare.Of(c.kind)[0].Solid().Volume() - f.Of(c.kind)[0].Solid().Volume()
		if want := c.times * c.area * 50; math.Abs(got-want) > 1e-6*want {
			t.Errorf("%s: %.3f mm³ are cut out for braces, want %.3f", c.kind, got, want)
		}
	}
	// The lower edge is 1000 between the faces, and longer by 15 ÷ 3/5 in the
	// post and 15 ÷ 4/5 in the beam.
	if got := f.Of(KindBrace)[0].Length; !near(got, 1000+25+18.75) {
		t.Errorf("the brace is %.4f long, want 1043.75", got)
	}
}

// TestLappedBrace: bolts stand in the middle of what the brace laps, in one line
// through brace and timber, and one bolt's length is that of its timbers and
// two diameters, to the next 10 mm.
func TestLappedBrace(t *testing.T) {
	j := leanTo()
	braced(j, BraceLapped)
	j.Posts.Rod = Rod{}
	j.Braces.At = []BraceAt{{Post: 1}, {Post: 3}}
	f := mustBuild(t, j)
	holes := map[geom.Vec]int{}
	for _, m := range f.Members {
		for _, w := range m.Features {
			if h, ok := w.(Hole); ok && h.Use == UseBolt {
				p := m.Place.Point(h.Mouth)
				holes[geom.V(math.Round(p.X*1000), 0, math.Round(p.Z*1000))]++
			}
		}
	}
	if len(holes) != 4 {
		t.Errorf("bolts in %d places, want 4", len(holes))
	}
	for at, n := range holes {
		if n != 2 {
			t.Errorf("%d timbers are bored at %v, want 2", n, at)
		}
	}
	lengths := map[string]int{}
	for _, h := range f.Hardware() {
		if h.Kind == Bolt {
			lengths[fmt.Sprintf("%s %g", h.Use, h.Size.Length)] += h.Quantity
		}
	}
	// 70 + 115 + 24 = 209 and 70 + 70 + 24 = 164.
	if lengths["knee brace to post 210"] != 2 || lengths["knee brace to beam 170"] != 2 {
		t.Errorf("bolts %v", lengths)
	}
}

// TestBracesThatCannotBe: every mixture that cannot be built is refused at its
// line, with what would be right.
func TestBracesThatCannotBe(t *testing.T) {
	for _, c := range []struct{ braces, says string }{
		{"angle: 45", "length"},
		{"down: 600, along: 600, angle: 45", "angle"},
		{"along: 600, length: 500", "is not longer than along"},
		{"down: 600, housing: 10", "braces.joint is housed"},
		{"down: 600, joint: lapped, screws: {each: 3}", "braces.joint is butted or housed"},
		{"down: 600, bolt: {diameter: 10}", "braces.joint is lapped"},
		{"down: 100", "make them at least 127.3 mm down"},
		{"down: 1500", "make along at most 1340 mm"},
		{"down: 700, at: [{post: 1, side: left}]", "past the end of the beam; make along at most 140 mm"},
		{"down: 700, at: [4]", "there is no post 4"},
		{"down: 700, at: [{post: 2, side: left}, 2]", "has its brace already"},
		{"down: 2600, along: 1000", "above the foot of its post"},
		{"down: 600, joint: housed, housing: 70", "leaves only"},
		{"down: 900, joint: lapped, at: [{post: 2, side: left}]", "comes out in the housing of rafter 4"},
	} {
		j, err := Read("braces.yaml", []byte(braceJob(c.braces)))
		if err == nil {
			_, err = Build(j)
		}
		var errs Errors
		if !errors.As(err, &errs) || !strings.Contains(errs.Error(), c.says) || !strings.Contains(errs.Error(), "braces.yaml:9:") {
			t.Errorf("%s: got %v, want %q at line 9", c.braces, err, c.says)
		}
	}
}

// TestBracesAreLow: what is lower than the head room is said with the distance
// from the posts: braces of 45° that come down 600 from a beam 100 over it are
// lower within 500.
func TestBracesAreLow(t *testing.T) {
	j := leanTo()
	braced(j, BraceButted)
	j.Levels.HeadRoom = mustBuild(t, leanTo()).Setout.HeadBeam - 100
	f := mustBuild(t, j)
	found := ""
	for _, w := range f.Warnings {
		if strings.Contains(w.Message, "knee braces") {
			found = w.Message
		}
	}
	if !strings.Contains(found, "within 500 mm of the posts") {
		t.Errorf("warned of %q", found)
	}
}
