package frame

import (
	"math"
	"testing"
)

// TestCarriers checks what sheets ask of the carriers: which sticks they are,
// which posts are under them, and which footing belongs to a post.
func TestCarriers(t *testing.T) {
	f, err := Build(leanTo())
	if err != nil {
		t.Fatal(err)
	}
	near := func(a, b float64) bool { return math.Abs(a-b) < slack }
	s := f.Setout
	for _, k := range s.Carriers {
		m := f.Timber(k)
		if b := m.Solid().Bounds(); m.Kind != k.Kind || !near(b.Min.Y, k.Outer) || !near(b.Max.Y, k.Inner) || !near(b.Min.Z, k.Bottom) || !near(b.Max.Z, k.Top) {
			t.Errorf("%s is %s at %v, want y %g to %g, z %g to %g", k.Name, m.Mark, b, k.Outer, k.Inner, k.Bottom, k.Top)
		}
		for _, i := range k.Members {
			if got, ok := s.CarrierOf(i); !ok || got.Key != k.Key {
				t.Errorf("CarrierOf(%d) = %q, want %q", i, got.Key, k.Key)
			}
		}
		if k.OnWall == (len(k.Posts) > 0) {
			t.Errorf("%s: on the wall %t, with %d posts", k.Name, k.OnWall, len(k.Posts))
		}
	}
	if _, ok := s.CarrierOf(len(f.Members) - 1); ok {
		t.Error("a footing is part of a carrier")
	}
	for i, p := range f.Of(KindPost) {
		if k := s.Under(i); !near(k.Bottom, p.Place.O.Z+p.Length) {
			t.Errorf("post %d reaches %g, under the %s at %g", i+1, p.Place.O.Z+p.Length, k.Name, k.Bottom)
		}
		g, ok := f.FootingOf(i)
		if !ok || g.No != p.No || !near(g.Solid().Bounds().Centre().X, p.Solid().Bounds().Centre().X) {
			t.Errorf("the footing of post %d is %s, number %d", i+1, g.Mark, g.No)
		}
	}
	if _, ok := f.FootingOf(len(f.Of(KindPost))); ok {
		t.Error("a post that is not there has a footing")
	}
}
