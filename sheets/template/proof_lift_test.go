package template_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// A pattern folded round its timber.

// tolerance of the proof, mm.
const tolerance = 0.05

// faceOf is the face of a kind of timber that a builder knows by a name.
func faceOf(k frame.Kind, name string) frame.Face {
	switch name {
	case "LEFT END", "HOUSE END", "REAR END":
		return frame.FaceStart
	case "REAR SIDE", "INNER SIDE": // of a free-standing frame
		return frame.FaceHouse
	case "FRONT SIDE":
		return frame.FaceOuter
	case "RIGHT END", "FRONT END", "OUTER END":
		return frame.FaceEnd
	case "TOP":
		if k == frame.KindPost {
			return frame.FaceEnd
		}
	}
	return frame.Face(strings.ToLower(name))
}

// reach is how far a timber's prism goes in a direction, from its corner.
func reach(t frame.Member, d geom.Vec) float64 {
	return max(0, d.X*t.Length) + max(0, d.Y*t.Section.Width) + max(0, d.Z*t.Section.Depth)
}

func perpendicular(p geom.Pt) geom.Pt { return geom.P(-p.Y, p.X) }

// folded lays the pattern on a timber with its datum cross at u along it. The
// first face is laid by its arrow and the cross, printed side out; the others
// follow by folding, and must come to lie on the faces that they name.
func (p *pattern) folded(t frame.Member, u float64, from string) ([]*leafOf, error) {
	leaves := p.leaves()
	if len(leaves) == 0 {
		return nil, fmt.Errorf("no face is named")
	}
	// The first is one that the cross lies on, or one that hangs on an end.
	var first *leafOf
	var along geom.Pt
	for _, f := range leaves {
		dir, ok := p.arrowTo(f, "to the "+from)
		if !ok {
			dir, ok = p.arrowTo(f, from)
		}
		if ok && (first == nil || p.holdsCross(f)) {
			first, along = f, dir.Mul(-1)
		}
	}
	if first != nil {
		if err := p.lay1(first, t, u, along); err != nil {
			return nil, err
		}
	}
	if first == nil {
		return nil, fmt.Errorf("no face has an arrow to the %s", from)
	}
	for more := true; more; {
		more = false
		for _, a := range leaves {
			for _, b := range leaves {
				if a.known && !b.known {
					did, err := a.foldOn(b, t)
					if err != nil {
						return nil, err
					}
					more = more || did
				}
			}
		}
	}
	for _, f := range leaves {
		if !f.known {
			return nil, fmt.Errorf("the face %s hangs on no other", f.name)
		}
	}
	return leaves, nil
}

// holdsCross reports whether the datum cross lies on a face or on its edge.
func (p *pattern) holdsCross(f *leafOf) bool {
	c, ok := p.cross()
	return ok && c.X > f.box[0].X-near && c.X < f.box[1].X+near && c.Y > f.box[0].Y-near && c.Y < f.box[1].Y+near
}

// lay1 lays a face by itself: along is the way on the paper that runs away from
// the datum end.
func (p *pattern) lay1(f *leafOf, t frame.Member, u float64, along geom.Pt) error {
	plane, ok := t.FacePlane(faceOf(t.Kind, f.name))
	if !ok {
		return fmt.Errorf("the timber has no face %s", f.name)
	}
	cross, ok := p.cross()
	if !ok {
		return fmt.Errorf("no datum cross")
	}
	f.n = plane.N
	uDir := geom.V(1, 0, 0)
	e2, v2 := perpendicular(along), f.n.Cross(uDir) // seen from outside
	f.right = uDir.Mul(along.X).Add(v2.Mul(e2.X))
	f.up = uDir.Mul(along.Y).Add(v2.Mul(e2.Y))
	// Across: the arrises at the sides that run along the timber.
	found := false
	var across, paper float64
	for i, d := range []geom.Pt{geom.P(-1, 0), geom.P(0, -1), geom.P(1, 0), geom.P(0, 1)} {
		s := d.Dot(e2) // the side's place along e2 is s times that along d
		if math.Abs(s) < 0.5 || f.side[i] != "fold" && f.side[i] != "edge" {
			continue
		}
		at := f.bounds(i) * s
		v := reach(t, v2)
		if s < 0 {
			v = -reach(t, v2.Neg())
		}
		if found && math.Abs(v-at-(across-paper)) > tolerance {
			return fmt.Errorf("%s is not as wide as the timber: %.3f off", f.name, v-at-(across-paper))
		}
		found, across, paper = true, v, at
	}
	if !found {
		return fmt.Errorf("%s has no arris along the timber", f.name)
	}
	start := cross.Dot(along)
	if !p.holdsCross(f) { // its fold on the far end gives its place
		u, start = t.Length, 0
		for i, d := range []geom.Pt{geom.P(-1, 0), geom.P(0, -1), geom.P(1, 0), geom.P(0, 1)} {
			if d.Sub(along).Len() < near && f.side[i] == "fold" {
				start = f.bounds(i)
			}
		}
	}
	f.on = along.Mul(start).Add(e2.Mul(paper))
	f.at = uDir.Mul(u).Add(v2.Mul(across)).Add(plane.N.Mul(plane.D))
	f.known = true
	return nil
}

// bounds is how far a face reaches towards one of its sides: left, bottom, right
// or top.
func (f *leafOf) bounds(side int) float64 {
	return [4]float64{-f.box[0].X, -f.box[0].Y, f.box[1].X, f.box[1].Y}[side]
}

// crossRadius is that of the circle of a datum cross.
const crossRadius = 4.0

func (p *pattern) cross() (geom.Pt, bool) {
	for _, c := range p.discs {
		if math.Abs(c.r.X-crossRadius) < near && math.Abs(c.width-middle) < near {
			return c.c, true
		}
	}
	return geom.Pt{}, false
}

// foldOn lays the face b, if a fold parts it from a.
func (a *leafOf) foldOn(b *leafOf, t frame.Member) (bool, error) {
	for i, d := range []geom.Pt{geom.P(-1, 0), geom.P(0, -1), geom.P(1, 0), geom.P(0, 1)} {
		j := (i + 2) % 4
		if a.side[i] != "fold" || b.side[j] != "fold" {
			continue
		}
		if math.Abs(a.bounds(i)+b.bounds(j)) > near {
			continue
		}
		e := perpendicular(d)
		if over(a, b, e) <= 0 {
			continue
		}
		beyond := a.right.Mul(d.X).Add(a.up.Mul(d.Y)) // where the paper runs on before it is folded
		plane, ok := t.FacePlane(faceOf(t.Kind, b.name))
		if !ok || plane.N.Sub(beyond).Len() > 1e-9 {
			return false, fmt.Errorf("folded over from %s, %s comes to lie on another face: towards %v", a.name, b.name, beyond)
		}
		side := a.right.Mul(e.X).Add(a.up.Mul(e.Y))
		in := a.n.Neg()
		b.n = beyond
		b.right = in.Mul(d.X).Add(side.Mul(e.X))
		b.up = in.Mul(d.Y).Add(side.Mul(e.Y))
		b.on = a.on.Add(d.Mul(a.bounds(i) - a.on.Dot(d)))
		b.at = a.timber(b.on)
		b.known = true
		if off := plane.Dist(b.at); math.Abs(off) > tolerance {
			return false, fmt.Errorf("the fold between %s and %s is %.3f off the arris", a.name, b.name, off)
		}
		return true, nil
	}
	return false, nil
}

// over is how far two faces lie side by side along a direction.
func over(a, b *leafOf, e geom.Pt) float64 {
	span := func(f *leafOf) (lo, hi float64) {
		if math.Abs(e.X) > 0.5 {
			return f.box[0].X, f.box[1].X
		}
		return f.box[0].Y, f.box[1].Y
	}
	a0, a1 := span(a)
	b0, b1 := span(b)
	return min(a1, b1) - max(a0, b0)
}

// millimetres reads a printed length.
func millimetres(s string) (float64, error) {
	if v, err := strconv.ParseFloat(s, 64); err == nil {
		return v, nil
	}
	total := 0.0
	rest := s
	if feet, after, ok := strings.Cut(s, "'"); ok {
		v, err := strconv.ParseFloat(feet, 64)
		if err != nil {
			return 0, err
		}
		total, rest = 12*v, strings.TrimSpace(after)
	}
	for _, part := range strings.Fields(strings.TrimSuffix(rest, `"`)) {
		num, den, ok := strings.Cut(part, "/")
		v, err := strconv.ParseFloat(num, 64)
		if err != nil {
			return 0, fmt.Errorf("%q is no length", s)
		}
		if ok {
			d, err := strconv.ParseFloat(den, 64)
			if err != nil {
				return 0, err
			}
			v /= d
		}
		total += v
	}
	return total * 25.4, nil
}
