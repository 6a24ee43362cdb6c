package frame

import "plumbcut/geom"

// Sweeper is a Feature that takes away what outlines sweep across the member,
// beside or instead of what its cutters do.
type Sweeper interface {
	Sweeps(m Member) []geom.Sweep
}

// Prism is the member's timber before anything is cut, in its own axes.
func (m Member) Prism() geom.Solid {
	if m.Round {
		return roundPrism(m)
	}
	return geom.Box(geom.Vec{}, geom.V(m.Length, m.Section.Width, m.Section.Depth))
}

// Carved is the member's solid in its own axes, made anew from its prism and
// its features alone.
func (m Member) Carved() geom.Solid {
	s := m.Prism()
	var cutters []geom.Convex
	for _, f := range m.Features {
		cutters = append(cutters, f.Cutters(m)...)
	}
	s = s.Minus(cutters...)
	for _, f := range m.Features {
		if f, ok := f.(Sweeper); ok {
			for _, w := range f.Sweeps(m) {
				s = s.MinusSweep(w)
			}
		}
	}
	for _, f := range m.Features {
		for _, bore := range f.Bores(m) {
			s = s.WithBore(bore)
		}
	}
	return s
}

// Taken are the pieces, bores left aside, that a feature takes off the uncut
// timber, in the member's own axes.
func (m Member) Taken(f Feature) []geom.Solid {
	var out []geom.Solid
	for _, c := range f.Cutters(m) {
		s := m.Prism()
		for _, p := range c {
			s = s.Cut(p)
		}
		out = append(out, s)
	}
	if f, ok := f.(Sweeper); ok {
		box := geom.Box3{Max: geom.V(m.Length, m.Section.Width, m.Section.Depth)}
		for _, w := range f.Sweeps(m) {
			s := w.Solid()
			for _, p := range box.Convex() {
				s = s.Cut(p)
			}
			out = append(out, s)
		}
	}
	kept := out[:0]
	for _, s := range out {
		if !s.Empty() {
			kept = append(kept, s)
		}
	}
	return kept
}
