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
	rear, beam := s.Rear(), s.Front()
	top, low := "top of plate at its outer arris", "underside of plate"
	if !rear.OnWall {
		top, low = "top of "+rear.Short, "underside of "+rear.Short+", seat on posts"
	}
	face := "rafters at the " + rear.Short + "'s " + rear.FaceWord(rear.Outer) + " face"
	out := []Level{
		at(top, mid, rear.Outer, rear.Top),
		at(low, mid, rear.Outer, rear.Bottom),
		at("top of "+face, rafter, rear.Outer, s.RafterTop(rear.Outer)),
		at("underside of "+face, rafter, rear.Outer, s.RafterTop(rear.Outer)-under),
	}
	inner := func(name string, x float64) Level {
		y := beam.Cut(x).Inner
		return at("top of "+name+" at the "+beam.Short+"'s inner face", x, y, s.RafterTop(y))
	}
	if n := len(s.Rafters); beam.Skewed() && n > 1 {
		out = append(out, inner("the left rafter", s.Rafters[0]), inner("the right rafter", s.Rafters[n-1]))
	} else {
		out = append(out, inner("rafters", rafter))
	}
	cut := beam.Cut(mid)
	out = append(out,
		at("top of "+beam.Short, mid, cut.Outer, beam.Top),
		at(b.underFront(), mid, cut.Outer, beam.Bottom))
	if z := beam.PostTop; math.Abs(z-beam.Bottom) > slack {
		out = append(out, at("top of posts", mid, cut.PostOuter, z))
	}
	if rear.Back && s.RafterStart > rear.Inner+slack {
		out = append(out, at("top of rafters at their upper ends", rafter, s.RafterStart, s.RafterTop(s.RafterStart)))
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

// underFront names the level of the front beam's underside.
func (b *builder) underFront() string {
	if b.job.Freestanding() {
		return "underside of " + b.set.Front().Short + ", seat on posts"
	}
	return b.job.Posts.Meet.Meeting.way().under()
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
		k := b.set.Under(i)
		out = append(out, Level{name, z, k.Point(p.Along, k.free(), z)})
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
