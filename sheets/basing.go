package sheets

import (
	"fmt"
	"slices"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// basing is what the sheets say of one way in which a post stands. Each has one
// entry in basings; no sheet asks what a post stands on, but whether a hole is
// dug for it.
type basing struct {
	// on says what it stands on, to follow "Stand the posts".
	on func(m *maker, p frame.Post) string
	// foot is said of its foot on the section, in a sentence.
	foot func(m *maker, p frame.Post) string
	// fix is how its foot is fixed, as a step of work; nil: by the concrete.
	fix func(m *maker, p frame.Post) string
	// floor names what it rises from.
	floor string
	care  string
	// note holds for all posts that stand so, for the general notes; empty: none.
	note string
	asks []string
}

// basings lists what is said of each.
func basings(k frame.Base) basing {
	switch k {
	case frame.OnStirrup:
		return stirrupBasing()
	case frame.OnSlab:
		return slabBasing()
	case frame.OnDeck:
		return deckBasing()
	}
	return concreteBasing()
}

// bases lists the ways in which posts stand.
func bases() []frame.Base {
	return []frame.Base{frame.InConcrete, frame.OnStirrup, frame.OnSlab, frame.OnDeck}
}

// basings are those that the job has, once each.
func (m *maker) basings() []basing {
	var out []basing
	for _, k := range bases() {
		if slices.ContainsFunc(m.job.Posts.At, func(p frame.Post) bool { return p.Base == k }) {
			out = append(out, basings(k))
		}
	}
	return out
}

// dug reports whether any post has a hole.
func (m *maker) dug() bool { return len(m.frame.Of(frame.KindFooting)) > 0 }

// digging is what the holes, or those of the shoes, are made by.
func (m *maker) digging() string {
	if m.dug() {
		return "digging"
	}
	return "drilling"
}

// digs names what profiles stand clear of.
func (m *maker) digs() string {
	if m.dug() {
		return "holes"
	}
	return "posts"
}

// careServices is the caution beside the setting out of the posts.
func (m *maker) careServices() string {
	if m.dug() {
		return "Ask for the plans of buried services days before a spade goes in."
	}
	return "Ask what lies in and under the " + m.job.FloorName() + " before a hole is drilled in it."
}

// foundAt names what is measured at a post, and its level as drawn.
func (m *maker) foundAt(i int) (what, drawn string) {
	p := m.job.Posts.At[i]
	what = "Finished ground"
	if !p.Dug() {
		what = "Top of " + m.job.FloorName()
	}
	return fmt.Sprintf("%s at post %d", what, i+1), m.figures.Level(m.job.Floor(p))
}

// footOf is the box of a post's footing or, where none is dug, of the room under
// its foot down to the ground.
func (m *maker) footOf(post frame.Member) geom.Box3 {
	if f, ok := m.frame.FootingOf(post.No - 1); ok {
		return f.Solid().Bounds()
	}
	b, p := post.Solid().Bounds(), m.job.Posts.At[post.No-1]
	b.Min.Z, b.Max.Z = min(p.Ground, m.job.Floor(p)), m.job.Floor(p)
	return b
}

// floorWords names what the posts rise from: "ground", "ground or slab".
func (m *maker) floorWords() string {
	words := ""
	var seen []string
	for _, b := range m.basings() {
		if slices.Contains(seen, b.floor) {
			continue
		}
		seen = append(seen, b.floor)
		if words != "" {
			words += " or "
		}
		words += b.floor
	}
	return words
}

// baseNotes are the notes on every way in which the posts stand, once each.
func (m *maker) baseNotes() []string {
	var out []string
	for _, b := range m.basings() {
		if b.note != "" {
			out = append(out, b.note)
		}
	}
	return out
}

// fixWords say how shoes are fixed, once for each way.
func (m *maker) fixWords() string {
	words := ""
	for _, k := range bases() {
		i := slices.IndexFunc(m.job.Posts.At, func(p frame.Post) bool { return p.Base == k })
		if i < 0 || basings(k).fix == nil {
			continue
		}
		if words != "" {
			words += " "
		}
		words += basings(k).fix(m, m.job.Posts.At[i])
	}
	return words
}

// careOfPosts is the caution beside the posts: of the concrete, or of what they
// are fixed to.
func careOfPosts(m *maker) string {
	words := ""
	for _, b := range m.basings() {
		if b.care != "" && words != b.care {
			if words != "" {
				words += " "
			}
			words += b.care
		}
	}
	return words
}

// holdPosts is what waits for the posts' feet.
func holdPosts(m *maker) string {
	if m.dug() {
		return holdConcrete(m)
	}
	return "Nothing is lifted on to the posts before every post shoe is fixed down as stated and seen."
}

func concreteBasing() basing {
	return basing{
		on: func(m *maker, p frame.Post) string {
			if p.Footing.Pad > 0 {
				return "on a pad of concrete " + m.said(p.Footing.Pad) + " thick, factory end down"
			}
			return "on the bottom of the hole, factory end down"
		},
		foot: func(m *maker, p frame.Post) string {
			if p.Footing.Pad > 0 {
				return ". The post stands on " + m.figures.Length(p.Footing.Pad) + " of it"
			}
			return ""
		},
		floor: "ground", care: wetConcrete,
		note: "Keep the factory end of a post in the ground.",
	}
}

func stirrupBasing() basing {
	return basing{
		on: func(*maker, frame.Post) string { return "on stirrups" },
		foot: func(m *maker, p frame.Post) string {
			return ". The post stands on a stirrup, its end " + m.figures.Length(p.Footing.Stand) + " clear of the concrete"
		},
		floor: "ground", care: wetConcrete,
	}
}

const wetConcrete = "Wet concrete burns skin and eyes: gloves, boots, goggles."
