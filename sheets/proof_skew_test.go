package sheets_test

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"plumbcut/draw/pdf"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// skewJobs is how many seeds are looked through for frames on the skew.
const skewJobs = 60

// TestSkewIsReadOffTheDrawings reads of finished files what is dimensioned in
// another way where the beam is not parallel with the wall: each rafter's length,
// each post's place by its coordinates and along the string, and both diagonals.
// All is compared with the solids, not with the set-out that made them.
func TestSkewIsReadOffTheDrawings(t *testing.T) {
	tool(t, "pdftotext")
	jobs := slices.DeleteFunc(append(examples(t), random(skewJobs)...), func(s source) bool { return !s.skewed(t) })
	if len(jobs) < 4 {
		t.Fatalf("only %d jobs are on the skew", len(jobs))
	}
	var found ledger
	each(t, jobs, func(d *drawn) {
		var b bytes.Buffer
		if err := pdf.Write(&b, d.set, pdf.Options{}); err != nil {
			found.add("writing", d.name, "%v", err)
			return
		}
		p := readPrinted(wordsOf(t, b.Bytes()))
		d.skewLengths(p, &found)
		d.skewPosts(p, &found)
		d.skewDiagonals(p, &found)
	})
	found.report(t)
}

// skewLengths compares the rafters' lengths in the list of members with the
// farthest corners of their solids.
func (d *drawn) skewLengths(p printed, found *ledger) {
	long := map[string]float64{}
	for _, m := range d.frame.Of(frame.KindRafter) {
		local := geom.Box3{Min: geom.V(math.Inf(1), 0, 0), Max: geom.V(math.Inf(-1), 0, 0)}
		for _, v := range edgeEnds(m.Solid()) {
			u := m.Place.Local(v).X
			local.Min.X, local.Max.X = min(local.Min.X, u), max(local.Max.X, u)
		}
		long[m.Mark] = local.Max.X - local.Min.X
	}
	read := 0
	for _, r := range p.table(memberHead...) {
		want, ok := long[r[0]]
		if v := figuresIn(r[4]); ok && len(v) == 1 {
			read++
			if math.Abs(v[0]-want) > d.halfUnit() {
				found.add("length of a rafter is read wrong", d.name, "%s: %.2f, is %.2f", r[0], v[0], want)
			}
		}
	}
	if read != len(long) {
		found.add("lengths of rafters", d.name, "%d of %d can be read", read, len(long))
	}
}

// skewPosts compares the table of posts with where their solids stand.
func (d *drawn) skewPosts(p printed, found *ledger) {
	from := "Out from cladding"
	if d.frame.Job.Freestanding() {
		from = "Out from base line"
	}
	left := d.frame.Members[d.frame.Setout.Rear().Members[0]].Place.O.X
	read := 0
	for _, r := range p.table("Post", "Mark", "Along the string", "Along from L", from, "Tape from L", "Tape from R") {
		v := figuresIn(r[2:]...)
		var no int
		if _, err := fmt.Sscan(r[0], &no); err != nil || len(v) != 5 {
			continue
		}
		post, ok := d.frame.Member(frame.KindPost, no)
		if !ok {
			continue
		}
		read++
		c := post.Solid().Bounds().Centre()
		for i, want := range []float64{c.X - left, -c.Y, math.Hypot(c.X-left, c.Y)} {
			if got := v[i+1]; math.Abs(got-want) > d.halfUnit() {
				found.add("place of a post is read wrong", d.name, "post %d, column %d: %.2f, is %.2f", no, i+4, got, want)
			}
		}
	}
	if n := len(d.frame.Of(frame.KindPost)); read != n {
		found.add("places of posts", d.name, "%d of %d can be read", read, n)
	}
}

// skewDiagonals looks for both diagonals, from corner to corner of the solids.
func (d *drawn) skewDiagonals(p printed, found *ledger) {
	s := d.frame.Setout
	beam, plate := d.frame.Timber(s.Front()), d.frame.Timber(s.Rear())
	y := s.Rear().Outer
	if s.Rear().Back {
		y = s.Rear().Inner
	}
	var ends []geom.Vec // of the beam's top outer arris
	for _, v := range edgeEnds(beam.Solid()) {
		if l := beam.Place.Local(v); math.Abs(l.Y) < 1e-6 && math.Abs(l.Z-beam.Section.Depth) < 1e-6 {
			ends = append(ends, v)
		}
	}
	slices.SortFunc(ends, func(a, b geom.Vec) int { return int(math.Copysign(1, a.X-b.X)) })
	l, r := geom.V(plate.Place.O.X, y, s.Rear().Top), geom.V(plate.Place.O.X+plate.Length, y, s.Rear().Top)
	var figures []float64
	for _, w := range strings.Fields(strings.ReplaceAll(strings.Join(p.text, " "), "\u00a0", " ")) {
		figures = append(figures, figuresIn(strings.Trim(w, ".,;:"))...)
	}
	text := strings.ReplaceAll(strings.Join(p.text, " "), "\u00a0", " ")
	for _, long := range []float64{ends[len(ends)-1].Sub(l).Len(), ends[0].Sub(r).Len()} {
		near := func(v float64) bool { return math.Abs(v-long) <= d.halfUnit() }
		if !slices.ContainsFunc(figures, near) && !strings.Contains(text, d.figures.Length(long)) {
			found.add("a diagonal cannot be read", d.name, "%s", d.figures.Length(long))
		}
	}
}

// edgeEnds are the ends of a solid's straight edges.
func edgeEnds(s geom.Solid) []geom.Vec {
	var out []geom.Vec
	for _, e := range s.Edges() {
		out = append(out, e.A, e.B)
	}
	return out
}
