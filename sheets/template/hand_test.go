package template

import (
	"math"
	"testing"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// skewed is a rafter with a plumb cut that is askew in plan as well, as at a
// hip: a left-hand one, or its mirror image.
func skewed(mirrored bool) (frame.Member, work) {
	cut := frame.EndCut{End: frame.FaceStart, Cut: frame.CutPlumb, At: 0, Plan: 0.3, Slope: 0.2}
	m := frame.Member{
		Mark: "R1", Kind: frame.KindRafter, Quantity: 1, Length: 1000, Place: geom.World(),
		Section: frame.Section{Depth: 120, Width: 45},
	}
	m.Features = []frame.Feature{cut}
	if mirrored {
		m.Features = []frame.Feature{cut.Mirrored(m)}
	}
	s := geom.Box(geom.Vec{}, geom.V(m.Length, 45, 120)).Minus(m.Features[0].Cutters(m)...)
	w := work{member: m, features: m.Features}
	w.a, w.b, _ = extent(m, m.Features[0])
	w.look(s)
	return m, w
}

// cutsOf lists the cut lines of a template in the axes of the timber, and on the
// paper.
func cutsOf(p *piece) (timber [][2]geom.Vec, paper [][2]geom.Pt) {
	for _, f := range p.flaps {
		for _, l := range p.work.on(f).lines {
			timber = append(timber, [2]geom.Vec{f.timber(l[0]), f.timber(l[1])})
			paper = append(paper, l)
		}
	}
	return timber, paper
}

// TestHandedEndsDiffer: a left-hand rafter end and its mirror image get
// templates that each lie on their own timber and cannot be taken for each
// other, however they are turned on the bench.
func TestHandedEndsDiffer(t *testing.T) {
	m := &maker{job: &frame.Job{}}
	left, right := &piece{}, &piece{}
	for _, side := range []struct {
		p        *piece
		mirrored bool
	}{{left, false}, {right, true}} {
		_, w := skewed(side.mirrored)
		*side.p = *m.workPiece(w)
		cut := w.features[0].(frame.EndCut)
		lines, _ := cutsOf(side.p)
		if len(lines) != 4 {
			t.Fatalf("%d cut lines, want one on each of four faces", len(lines))
		}
		for _, l := range lines {
			for _, v := range l {
				want := cut.At + v.Y*math.Tan(cut.Plan) + (120-v.Z)*math.Tan(cut.Slope)
				if math.Abs(v.X-want) > 1e-9 {
					t.Errorf("mirrored %v: the cut at %v should be at %.3f along", side.mirrored, v, want)
				}
			}
		}
	}
	if left.key == right.key {
		t.Error("the two hands share a template")
	}
	_, a := cutsOf(left)
	_, b := cutsOf(right)
	for quarter := range 4 {
		if congruent(a, b, quarter) {
			t.Errorf("turned by %d quarters one hand serves for the other", quarter)
		}
	}
}

// TestMirroredPaperIsCaught: what is printed on the wrong side of the paper is
// the other hand's template; so the test above would see a mirrored flap.
func TestMirroredPaperIsCaught(t *testing.T) {
	m := &maker{job: &frame.Job{}}
	_, w := skewed(false)
	_, v := skewed(true)
	_, a := cutsOf(m.workPiece(w))
	_, b := cutsOf(m.workPiece(v))
	a, b = a[:3], b[:3] // left, top, right: the bottom hangs on the last, not the first
	for i := range a {  // seen through the paper, turned about the timber's length
		for j := range a[i] {
			a[i][j].Y = -a[i][j].Y
		}
	}
	if !congruent(a, b, 0) {
		t.Error("one hand seen through the paper should be the other")
	}
}

// congruent reports whether one set of lines, turned by quarters and moved, is
// the other.
func congruent(a, b [][2]geom.Pt, quarters int) bool {
	turn := func(p geom.Pt) geom.Pt {
		for range quarters {
			p = p.Left()
		}
		return p
	}
	const close = 0.01
	for _, start := range b {
		for _, end := range start {
			move := end.Sub(turn(a[0][0]))
			all := true
			for _, l := range a {
				p, q := turn(l[0]).Add(move), turn(l[1]).Add(move)
				found := false
				for _, k := range b {
					found = found || p.Sub(k[0]).Len() < close && q.Sub(k[1]).Len() < close ||
						p.Sub(k[1]).Len() < close && q.Sub(k[0]).Len() < close
				}
				all = all && found
			}
			if all {
				return true
			}
		}
	}
	return false
}

// TestFlapsSeeFromOutside: whatever face is first and however far the paper is
// folded, right × up points out of the timber, and neighbours meet on the arris.
func TestFlapsSeeFromOutside(t *testing.T) {
	for _, k := range []frame.Kind{frame.KindPlate, frame.KindPost, frame.KindRafter} {
		m := frame.Member{Kind: k, Length: 500, Section: frame.Section{Depth: 120, Width: 45}}
		box := whole(m, 0, 500)
		f := m.Faces()
		for i := range f {
			parts := []part{
				{f[i], base, box}, {frame.FaceStart, 0, box}, {frame.FaceEnd, 0, box},
			}
			for j := range f {
				a, _ := m.FacePlane(f[i])
				b, _ := m.FacePlane(f[j])
				if math.Abs(a.N.Dot(b.N)) < same {
					parts = append(parts, part{f[j], 0, box}, part{frame.FaceEnd, len(parts), box})
				}
			}
			for _, flap := range unfold(m, parts, geom.V(100, 0, 120)) {
				if d := flap.right.Cross(flap.up).Sub(flap.plane.N).Len(); d > 1e-12 {
					t.Errorf("%s: %s over %s is mirrored", k, flap.face, f[i])
				}
				if flap.from == base {
					continue
				}
				from, _ := m.FacePlane(f[i])
				for _, q := range flap.fold {
					v := flap.timber(q)
					if off := flap.plane.Dist(v); math.Abs(off) > 1e-9 {
						t.Errorf("%s: the fold of %s is %.3f off its face", k, flap.face, off)
					}
					if off := from.Dist(v); parts[0].face == f[i] && flap.from == 0 && math.Abs(off) > 1e-9 {
						t.Errorf("%s: the fold of %s is %.3f off %s", k, flap.face, off, f[i])
					}
				}
			}
		}
	}
}
