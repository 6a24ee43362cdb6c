package frame

import (
	"math"
	"slices"
	"testing"
)

// mirrored is the job seen in a mirror that swaps left and right.
func mirrored(j *Job) *Job {
	m := *j
	m.Wall.From, m.Wall.To = -j.Wall.To, -j.Wall.From
	m.Wall.Studs = flipped(j.Wall.Studs)
	m.Wall.Returns = nil
	for _, r := range j.Wall.Returns {
		m.Wall.Returns = append(m.Wall.Returns, Return{other(r.Side), -r.At, r.Length})
	}
	m.Plate.From, m.Plate.To = -j.Plate.To, -j.Plate.From
	m.Beam.From, m.Beam.To = -j.Beam.To, -j.Beam.From
	m.Rear.From, m.Rear.To = -j.Rear.To, -j.Rear.From
	m.Battens.OverLeft, m.Battens.OverRight = j.Battens.OverRight, j.Battens.OverLeft
	m.Roof.From, m.Roof.OverLeft, m.Roof.OverRight = other(j.Roof.From), j.Roof.OverRight, j.Roof.OverLeft
	m.Roof.Downpipes = slices.Clone(j.Roof.Downpipes)
	for i := range m.Roof.Downpipes {
		m.Roof.Downpipes[i].Along *= -1
	}
	m.Posts.At = slices.Clone(j.Posts.At)
	row := len(m.Posts.At) - m.Posts.Rear
	slices.Reverse(m.Posts.At[:row])
	slices.Reverse(m.Posts.At[row:])
	for i := range m.Posts.At {
		p := &m.Posts.At[i]
		p.Along, p.Wall = -p.Along, other(p.Wall)
	}
	m.Braces.At = slices.Clone(j.Braces.At)
	for i := range m.Braces.At {
		a := &m.Braces.At[i]
		a.Post, a.Side = len(j.Posts.At)+1-a.Post, other(a.Side)
	}
	return &m
}

func other(s Side) Side {
	switch s {
	case Left:
		return Right
	case Right:
		return Left
	}
	return s
}

func flipped(xs []float64) []float64 {
	out := make([]float64, len(xs))
	for i, x := range xs {
		out[len(xs)-1-i] = -x
	}
	return out
}

// TestMirror builds jobs and their mirror images: every stick must have its
// mirror image in the mirrored place. Screws are chosen from the left, so the
// studs here leave them no choice.
func TestMirror(t *testing.T) {
	for _, v := range variants {
		if v.name == "no packers, no rods, no studs" {
			continue
		}
		t.Run(v.name, func(t *testing.T) {
			j := leanTo()
			v.change(j)
			j.Wall.Studs = spaced(320.25, 5679.75, 10) // one in each bay
			j.Rafters.Number = 11
			j.Battens.OverLeft = j.Battens.OverLeft / 2
			f, g := mustBuild(t, j), mustBuild(t, mirrored(j))
			if len(f.Members) != len(g.Members) {
				t.Fatalf("%d members, mirrored %d", len(f.Members), len(g.Members))
			}
			for _, m := range f.Members {
				if !slices.ContainsFunc(g.Of(m.Kind), func(n Member) bool { return mirrors(m, n) }) {
					t.Errorf("%s %d at %v has no mirror image", m.Kind, m.No, m.Place.O)
				}
			}
		})
	}
}

// mirrors reports whether n is m in the mirror, in work and in place.
func mirrors(m, n Member) bool {
	a, b := m.Solid().Bounds(), n.Solid().Bounds()
	for _, d := range []float64{
		a.Min.X + b.Max.X, a.Max.X + b.Min.X, a.Min.Y - b.Min.Y, a.Max.Y - b.Max.Y, a.Min.Z - b.Min.Z, a.Max.Z - b.Max.Z,
		(m.Solid().Volume() - n.Solid().Volume()) / 1e6,
	} {
		if math.Abs(d) > 1e-6 {
			return false
		}
	}
	return alike(m, true) == alike(n, false)
}

// TestMirroredTwice: the mirror image of a member's mirror image is the member.
func TestMirroredTwice(t *testing.T) {
	j := walled(leanTo())
	j.Rafters.Seat = SeatLevel
	lapped := leanTo()
	braced(lapped, BraceLapped)
	lapped.Posts.Rod = Rod{}
	braced(j, BraceHoused)
	for _, j := range []*Job{j, lapped} {
		for _, m := range mustBuild(t, j).Members {
			for _, f := range m.Features {
				if got := figureKey(f.Mirrored(m).Mirrored(m).Figures()); got != figureKey(f.Figures()) {
					t.Errorf("%s: %s became %s", m.Mark, figureKey(f.Figures()), got)
				}
			}
		}
	}
}
