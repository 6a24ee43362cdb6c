package frame

import "plumbcut/geom"

// Foot is the rectangle that a post covers on its footing, in the footing's V
// and W.
type Foot struct{ V0, V1, W0, W1 float64 }

func (f Foot) mirrored(m Member) Foot {
	f.V0, f.V1 = m.mirrorV(f.V1), m.mirrorV(f.V0)
	return f
}

func (f Foot) sizes() map[string]float64 {
	return map[string]float64{"left": f.V0, "right": f.V1, "outer": f.W0, "house": f.W1}
}

// Socket is the room that a post takes up in its concrete.
type Socket struct {
	At   float64 // of its floor above the hole's bottom: the pad
	Foot Foot
}

// Cutters implements Feature.
func (s Socket) Cutters(Member) []geom.Convex {
	return []geom.Convex{{
		{N: geom.V(-1, 0, 0), D: -s.At},
		{N: geom.V(0, -1, 0), D: -s.Foot.V0}, {N: geom.V(0, 1, 0), D: s.Foot.V1},
		{N: geom.V(0, 0, -1), D: -s.Foot.W0}, {N: geom.V(0, 0, 1), D: s.Foot.W1},
	}}
}

// Bores implements Feature.
func (Socket) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (s Socket) Mirrored(m Member) Feature { s.Foot = s.Foot.mirrored(m); return s }

// Figures implements Feature.
func (s Socket) Figures() FeatureFigures {
	return FeatureFigures{Kind: "socket", Face: FaceEnd, At: s.At, Sizes: s.Foot.sizes()}
}

// Weathering slopes the top of a footing away from the post's four faces, down
// to finished ground at the footing's edge.
type Weathering struct {
	At     float64 // of its highest line, at the post, above the hole's bottom
	Collar float64 // how much lower the edge is
	Foot   Foot
}

// Cutters implements Feature.
func (w Weathering) Cutters(m Member) []geom.Convex {
	var out []geom.Convex
	slope := func(foot, edge geom.Vec, along geom.Vec) {
		n := edge.Sub(foot).Cross(along)
		if n.X < 0 {
			n = n.Neg()
		}
		if n.X > 0 {
			out = append(out, geom.Convex{geom.PlaneAt(foot, n).Flip()})
		}
	}
	top, low, f, s := w.At, w.At-w.Collar, w.Foot, m.Section
	slope(geom.V(top, f.V0, 0), geom.V(low, 0, 0), geom.V(0, 0, 1))
	slope(geom.V(top, f.V1, 0), geom.V(low, s.Width, 0), geom.V(0, 0, 1))
	slope(geom.V(top, 0, f.W0), geom.V(low, 0, 0), geom.V(0, 1, 0))
	slope(geom.V(top, 0, f.W1), geom.V(low, 0, s.Depth), geom.V(0, 1, 0))
	return out
}

// Bores implements Feature.
func (Weathering) Bores(Member) []geom.Bore { return nil }

// Mirrored implements Feature.
func (w Weathering) Mirrored(m Member) Feature { w.Foot = w.Foot.mirrored(m); return w }

// Figures implements Feature.
func (w Weathering) Figures() FeatureFigures {
	sizes := w.Foot.sizes()
	sizes["collar"] = w.Collar
	return FeatureFigures{Kind: "weathering", Face: FaceEnd, At: w.At, Sizes: sizes}
}
