package frame

import (
	"math"
	"strconv"
	"strings"

	"plumbcut/geom"
)

// levels names the heights that the drawings give.
func (b *builder) levels() []Level {
	j, s := b.job, b.set
	mid := (s.From + s.To) / 2
	rafter := mid
	if n := len(s.Rafters); n > 0 {
		rafter = s.Rafters[n/2]
	}
	under := s.plumb(j.Rafters.Section.Depth)
	plate, beam := s.Rear(), s.Front()
	out := []Level{
		at("top of plate at its outer arris", mid, plate.Outer, plate.Top),
		at("underside of plate", mid, plate.Outer, plate.Bottom),
		at("top of rafters at the plate's outer face", rafter, s.Rear().Outer, s.RafterTop(s.Rear().Outer)),
		at("underside of rafters at the plate's outer face", rafter, s.Rear().Outer, s.RafterTop(s.Rear().Outer)-under),
		at("top of rafters at the beam's inner face", rafter, s.Front().Inner, s.RafterTop(s.Front().Inner)),
		at("top of beam", mid, beam.Outer, beam.Top),
		at(b.job.Posts.Meet.Meeting.way().under(), mid, beam.Outer, beam.Bottom),
	}
	if z := beam.PostTop; math.Abs(z-beam.Bottom) > slack {
		out = append(out, at("top of posts", mid, beam.PostOuter, z))
	}
	if s.RafterEnd < s.Front().Outer-slack {
		out = append(out, at("top of rafters at the end of their tails", rafter, s.RafterEnd, s.RafterTop(s.RafterEnd)))
	}
	if v := j.Valance; v.Section.Depth > 0 {
		hangs := v.Section.Depth
		if v.Set == ValanceFace {
			hangs = v.Below
		}
		out = append(out, at("underside of valance", mid, s.Front().Outer, s.Front().Bottom-hangs))
	}
	if j.Wall.hasSoffit() {
		out = append(out, at("underside of soffit", mid, -j.Wall.SoffitOut, j.Wall.Soffit))
	}
	if j.Levels.DeckOut > 0 {
		out = append(out, at("top of "+j.FloorName(), mid, -j.Levels.DeckOut, j.Levels.Deck))
	}
	return append(out, b.groundLevels()...)
}

// groundLevels gives finished ground and the bottom of the footings.
func (b *builder) groundLevels() []Level {
	ground := b.byPost("finished ground", "finished ground", func(p Post) (float64, bool) { return p.Ground, true })
	bottom := b.byPost("bottom of footing", "bottom of footings", func(p Post) (float64, bool) { return p.Ground - p.Footing.Depth, p.Dug() })
	return append(ground, bottom...)
}

// byPost names a surface at the posts that have it, once for all posts where it
// lies at the same level.
func (b *builder) byPost(one, many string, level func(Post) (float64, bool)) []Level {
	posts := b.job.Posts.At
	var out []Level
	for i, p := range posts {
		z, ok := level(p)
		if !ok {
			continue
		}
		var nos []string
		first := true
		for k, q := range posts {
			if y, ok := level(q); ok && math.Abs(y-z) < slack {
				first = first && k >= i
				nos = append(nos, strconv.Itoa(k+1))
			}
		}
		if !first {
			continue
		}
		name := many
		if len(nos) == 1 {
			name = one
		}
		if len(nos) < len(posts) {
			name += " at post" + numberList(nos)
		}
		out = append(out, at(name, p.Along, b.set.Front().Outer, z))
	}
	return out
}

// numberList is " 3" or "s 1, 2 and 4", to follow a noun.
func numberList(nos []string) string {
	last := len(nos) - 1
	if last == 0 {
		return " " + nos[0]
	}
	return "s " + strings.Join(nos[:last], ", ") + " and " + nos[last]
}

func at(name string, x, y, z float64) Level { return Level{name, z, geom.V(x, y, z)} }
