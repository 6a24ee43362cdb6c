package geom

import "math"

// line is an unbounded line: a unit direction and the foot of the square from
// the point of reference that all lines of one table share.
type line struct{ foot, dir Vec }

// pos returns how far along the line p lies.
func (l line) pos(p Vec) float64 { return p.Dot(l.dir) }

const (
	// lineTol is how far two lines may lie apart and still be one. It is below
	// onTol, so that the two sides of the thinnest face stay two, and far above
	// the rounding, which planes that meet at half a degree magnify to 1e-8.
	lineTol = 1e-7

	// dirTol is how far their directions may differ: lineTol over 10 m.
	dirTol = 1e-11

	// minCross is the least sine between two planes for which their line is
	// worked out from them; flatter pairs take it from the edge's own ends.
	minCross = 1e-3

	// printDir weighs direction against distance in a line's fingerprint.
	printDir = 1e4
)

// lineTable holds lines, each once.
type lineTable struct {
	o     Vec // point of reference, in the middle of things, to keep numbers small
	lines []line
	index near
}

// of returns the number of the line in which the planes p and q meet; a and b
// are two points on it, used when the planes are too flat to each other.
func (t *lineTable) of(p, q Plane, a, b Vec) int32 {
	d := p.N.Cross(q.N)
	l := d.Len()
	var at Vec
	if l < minCross {
		d, at = b.Sub(a), a.Sub(t.o)
		l = d.Len()
	} else {
		// The point of both planes nearest to the point of reference.
		dp, dq, c := p.D-p.N.Dot(t.o), q.D-q.N.Dot(t.o), p.N.Dot(q.N)
		k := 1 / (1 - c*c)
		at = p.N.Mul((dp - c*dq) * k).Add(q.N.Mul((dq - c*dp) * k))
	}
	d = d.Mul(1 / l)
	return t.add(line{at.Sub(d.Mul(at.Dot(d))), d})
}

func (t *lineTable) add(l line) int32 {
	if !leads(l.dir) {
		l.dir = l.dir.Neg()
	}
	print := l.foot.Dot(mix) + printDir*l.dir.Dot(mix)
	i := t.index.find(print, 2*(lineTol+printDir*dirTol), func(i int32) bool {
		m := t.lines[i]
		return dist1(m.foot, l.foot) <= 2*lineTol && dist1(m.dir, l.dir) <= 2*dirTol
	})
	if i >= 0 {
		return i
	}
	t.lines = append(t.lines, l)
	t.index.add(print)
	return int32(len(t.lines) - 1)
}

// dist1 is the sum of the differences along the axes.
func dist1(a, b Vec) float64 {
	return math.Abs(a.X-b.X) + math.Abs(a.Y-b.Y) + math.Abs(a.Z-b.Z)
}

// leads reports whether d is the one of d and −d by which a line is named.
// The odd weights keep the choice clear for directions along the axes and in
// the planes between them.
func leads(d Vec) bool { return d.Dot(mix) >= 0 }

// weldTol is how close two corners are taken for one; it is chosen like
// lineTol.
const weldTol = 1e-7

// weld numbers points so that those within weldTol of each other share one.
type weld struct {
	v     []Vec
	index near
}

func (w *weld) id(p Vec) int32 {
	print := p.Dot(mix)
	i := w.index.find(print, 2*weldTol, func(i int32) bool { return dist1(w.v[i], p) <= 2*weldTol })
	if i >= 0 {
		return i
	}
	w.v = append(w.v, p)
	w.index.add(print)
	return int32(len(w.v) - 1)
}
