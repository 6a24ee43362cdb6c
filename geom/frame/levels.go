package frame

import (
	"fmt"

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
	bottom := b.check.beamBottom()
	out := []Level{
		at("top of plate at its outer arris", mid, s.PlateOuter, j.Plate.Top),
		at("underside of plate", mid, s.PlateOuter, j.Plate.Top-j.Plate.Section.Depth),
		at("top of rafters at the plate's outer face", rafter, s.PlateOuter, s.RafterTop(s.PlateOuter)),
		at("underside of rafters at the plate's outer face", rafter, s.PlateOuter, s.RafterTop(s.PlateOuter)-under),
		at("top of rafters at the beam's inner face", rafter, s.BeamInner, s.RafterTop(s.BeamInner)),
		at("top of beam", mid, s.BeamOuter, b.check.beamTop()),
		at("underside of beam, seat on posts", mid, s.BeamOuter, bottom),
	}
	if j.Wall.hasSoffit() {
		out = append(out, at("underside of soffit", mid, -j.Wall.SoffitOut, j.Wall.Soffit))
	}
	if j.Levels.DeckOut > 0 {
		out = append(out, at("top of deck", mid, -j.Levels.DeckOut, j.Levels.Deck))
	}
	return append(out, b.groundLevels()...)
}

// groundLevels gives finished ground and the bottom of the footings, post by
// post where they differ.
func (b *builder) groundLevels() []Level {
	posts := b.job.Posts.At
	same := true
	for _, p := range posts {
		same = same && p.Ground == posts[0].Ground && p.Footing.Depth == posts[0].Footing.Depth
	}
	var out []Level
	for i, p := range posts {
		whose, plural := fmt.Sprintf(" at post %d", i+1), "footing"
		if same {
			whose, plural = "", "footings"
		}
		out = append(out,
			at("finished ground"+whose, p.Along, b.set.BeamOuter, p.Ground),
			at("bottom of "+plural+whose, p.Along, b.set.BeamOuter, p.Ground-p.Footing.Depth))
		if same {
			break
		}
	}
	return out
}

func at(name string, x, y, z float64) Level { return Level{name, z, geom.V(x, y, z)} }
