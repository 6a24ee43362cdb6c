package frame

import "plumbcut/geom"

// Face names a side of a member; the name stays when the stick is turned over.
type Face string

// The faces.
const (
	FaceTop    Face = "top"
	FaceBottom Face = "bottom"
	FaceHouse  Face = "house side"
	FaceOuter  Face = "outer side"
	FaceLeft   Face = "left"
	FaceRight  Face = "right"
	FaceStart  Face = "datum end"
	FaceEnd    Face = "far end"
)

// Faces lists the member's long faces, at V=0, V=Width, W=0 and W=Depth.
func (m Member) Faces() [4]Face { return m.Kind.traits().faces }

// FacePlane returns the plane of a face of the uncut prism in the member's own
// axes, pointing out of the timber. It reports false for a face that the kind
// does not have.
func (m Member) FacePlane(f Face) (geom.Plane, bool) {
	long := m.Faces()
	switch f {
	case FaceStart:
		return geom.Plane{N: geom.V(-1, 0, 0)}, true
	case FaceEnd:
		return geom.Plane{N: geom.V(1, 0, 0), D: m.Length}, true
	case long[0]:
		return geom.Plane{N: geom.V(0, -1, 0)}, true
	case long[1]:
		return geom.Plane{N: geom.V(0, 1, 0), D: m.Section.Width}, true
	case long[2]:
		return geom.Plane{N: geom.V(0, 0, -1)}, true
	case long[3]:
		return geom.Plane{N: geom.V(0, 0, 1), D: m.Section.Depth}, true
	}
	return geom.Plane{}, false
}

// OnFace returns the point of a face that lies at along the member and across
// it: W for faces whose normal is ±V, V for the others. On an end, at is V and
// across is W.
func (m Member) OnFace(f Face, at, across float64) geom.Vec {
	p, ok := m.FacePlane(f)
	switch {
	case !ok:
		return geom.Vec{}
	case p.N.X != 0:
		return geom.V(p.N.X*p.D, at, across)
	case p.N.Y != 0:
		return geom.V(at, p.N.Y*p.D, across)
	}
	return geom.V(at, across, p.N.Z*p.D)
}

// mirrorsAlong reports whether the mirror image of a member of this kind, in a
// mirror that swaps left and right, has its datum end at the other end. The
// others have their left and right faces exchanged.
func (k Kind) mirrorsAlong() bool { return k.traits().along }

// mirrorFace is the face that takes the place of f in the mirror.
func (m Member) mirrorFace(f Face) Face {
	swap := map[Face]Face{FaceLeft: FaceRight, FaceRight: FaceLeft}
	if m.Kind.mirrorsAlong() {
		swap = map[Face]Face{FaceStart: FaceEnd, FaceEnd: FaceStart}
	}
	if g, ok := swap[f]; ok {
		return g
	}
	return f
}

// mirrorAt carries a distance along the member into the mirror.
func (m Member) mirrorAt(at float64) float64 {
	if m.Kind.mirrorsAlong() {
		return m.Length - at
	}
	return at
}

// mirrorV carries a distance across the width into the mirror.
func (m Member) mirrorV(v float64) float64 {
	if m.Kind.mirrorsAlong() {
		return v
	}
	return m.Section.Width - v
}

// facing is the long face of a member whose outward normal is nearest to a
// direction in the world.
func (m Member) facing(n geom.Vec) Face {
	best, most := Face(""), -1.0
	for _, name := range m.Faces() {
		if p, ok := m.FacePlane(name); ok {
			if d := m.Place.Dir(p.N).Dot(n); d > most {
				best, most = name, d
			}
		}
	}
	return best
}
