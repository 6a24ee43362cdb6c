package frame

import (
	"fmt"
	"math"

	"plumbcut/geom"
)

// The rules of a roof.
const (
	RuleRoof      Rule = "roof"
	RuleLeastFall Rule = "least fall"
)

// The names of the parts of a roof.
const (
	RoofSheet    = "roof sheet"
	RoofFlashing = "flashing"
	RoofGutter   = "gutter"
	RoofDownpipe = "downpipe"
)

// roofSkin is the thickness, mm, with which flashings and gutters are drawn:
// thin, and nobody measures it.
const roofSkin = 2

// Roofing is a roof as it is laid. It is no timber: its parts stand beside the
// members, and are drawn at the sizes that the job states.
type Roofing struct {
	Parts       []Solid   // sheets as they are seen, then what takes the water off
	Left, Right float64   // its sides, along
	Upper       float64   // world y of the sheets' upper ends
	Lower       float64   // and of their lower ends
	Edges       []float64 // along, of the sheets' sides that are seen, from the first sheet on; the last is the far side
	Last        float64   // width of the last sheet of a row
	Courses     []Course  // from the eave up
	Back        float64   // world y of the gutter's back: the frame's outermost timber
	Rim         float64   // level of the gutter's rim
	Highest     float64   // level of the sheets' highest edge
}

// Course is a row of sheets of one length.
type Course struct {
	From, To float64 // down the slope from where battens are counted
}

// Length is that of its sheets.
func (c Course) Length() float64 { return c.To - c.From }

// Rows is how many sheets lie side by side.
func (r Roofing) Rows() int { return len(r.Edges) - 1 }

// PlanArea is the area that the roof covers, seen from above, mm².
func (r Roofing) PlanArea() float64 { return (r.Right - r.Left) * (r.Upper - r.Lower) }

// levels names its heights.
func (r Roofing) levels(s Setout) []Level {
	if len(r.Parts) == 0 {
		return nil
	}
	mid := (s.From + s.To) / 2
	out := []Level{at("highest edge of the roof sheets", mid, r.Upper, r.Highest)}
	if r.Rim != 0 {
		out = append(out, at("rim of gutter", mid, r.Back, r.Rim))
	}
	return out
}

// hasRoof reports whether the job has one.
func (j *Job) hasRoof() bool { return j.Roof.Width > 0 }

// roof lays the roof on the finished frame; it is empty without one, and after
// an error.
func (b *builder) roof() Roofing {
	j, c := b.job, b.check
	if !j.hasRoof() {
		return Roofing{}
	}
	n := len(c.errs)
	c.checkRoof()
	if len(c.errs) > n {
		return Roofing{}
	}
	from, to := battenExtent(j, b.set, 0)
	r := Roofing{Left: from - j.Roof.OverLeft, Right: to + j.Roof.OverRight, Upper: -j.Roof.Gap, Back: math.Inf(1)}
	for _, m := range b.members {
		if !m.Kind.Stands() {
			r.Back = math.Min(r.Back, m.solid.Bounds().Min.Y)
		}
	}
	r.Lower = r.Back - j.Roof.Eave
	b.spread(&r)
	b.lay(&r)
	if len(c.errs) > n {
		return Roofing{}
	}
	b.drain(&r)
	c.checkRoofAround(r)
	return r
}

// checkRoof finds what cannot be built before anything is laid.
func (c *checker) checkRoof() {
	j, r := c.job, c.job.Roof
	if !c.set.Rear().OnWall {
		c.errorf(RuleRoof, "roof", "the roof runs up to a wall, and a free-standing frame has none; take the roof out")
		return
	}
	if len(c.set.Battens) == 0 || battenTop(j.Battens) <= 0 {
		c.errorf(RuleRoof, "roof", "roof sheets lie on battens that stand above the rafters, and the job has none; add battens, or take the roof out")
		return
	}
	if _, ok := c.set.Layer(KindLath); ok {
		c.errorf(RuleRoof, "roof", "roof sheets lie on battens, and here laths lie over them; take the laths or the roof out")
		return
	}
	if r.Lap >= r.Width/2 {
		c.errorf(RuleRoof, "roof.lap", "a lap of %s is half a sheet of %s or more; make it less", c.mm(r.Lap), c.mm(r.Width))
	}
	fall := c.slope.Angle
	switch {
	case r.LeastFall > 0 && fall < r.LeastFall-slack:
		c.errorf(RuleLeastFall, "roof.least_fall", "the fall is %s, less than the %s that the sheet's maker states; make the fall steeper or take another sheet", c.format.Angle(fall), c.format.Angle(r.LeastFall))
	case r.LeastFall == 0:
		c.warnf(RuleLeastFall, "roof", "the least fall of the roof sheet is not stated, and the fall is %s: ask the maker before the fall is settled", c.job.Format().Angle(fall))
	}
}

// spread places the sheets side by side. Each lies over the one before it; what
// is seen of it ends where the next begins.
func (b *builder) spread(r *Roofing) {
	roof := b.job.Roof
	whole, cover := r.Right-r.Left, roof.Width-roof.Lap
	n := max(1, ceilCount((whole-roof.Lap)/cover))
	if n > maxSticks {
		b.check.errorf(RuleRoof, "roof.width", "%d sheets side by side; it can be at most %d", n, maxSticks)
		return
	}
	r.Last = whole - float64(n-1)*cover
	for i := range n + 1 {
		at := math.Min(float64(i)*cover, whole)
		if i == n {
			at = whole
		}
		if roof.From == Right {
			at = r.Right - at
		} else {
			at += r.Left
		}
		r.Edges = append(r.Edges, at)
	}
}

// lay lays the courses from the eave up, each lap over the middle of a batten,
// as few as the longest sheet allows.
func (b *builder) lay(r *Roofing) {
	j, s, roof := b.job, b.set, b.job.Roof
	top := battenTop(j.Battens)
	down := func(y, up float64) float64 { return (s.lineAt - y - up*s.sin) / s.cos }
	// The ends stand square to the slope: the undersides reach nearer to the wall
	// than the tops, which lean out over the gutter.
	upper, to := down(r.Upper, top), down(r.Lower, top+roof.Profile)
	for longest := roof.Longest; ; {
		c := Course{From: upper, To: to}
		if longest == 0 || to-upper <= longest+slack {
			r.Courses = append(r.Courses, c)
			break
		}
		if roof.EndLap == 0 {
			b.check.errorf(RuleRoof, "roof.longest", "the sheets are %s long and the longest that is sold is %s; state end_lap, or take a longer sheet", b.check.mm(to-upper), b.check.mm(longest))
			return
		}
		at, ok := math.Inf(1), false
		for _, u := range s.Battens {
			mid := u + j.Battens.Section.Width/2
			if from := mid - roof.EndLap/2; from >= to-longest-slack && from+roof.EndLap < to-slack && from < at {
				at, ok = from, true
			}
		}
		if !ok {
			b.check.errorf(RuleRoof, "roof.longest", "no batten stands where sheets of %s could lap; take longer sheets or closer battens", b.check.mm(longest))
			return
		}
		c.From = at
		r.Courses = append(r.Courses, c)
		to = at + roof.EndLap
	}
	b.sheets(r)
}

// sheets makes the solids of what is seen of each sheet: up to where the next one
// lies over it.
func (b *builder) sheets(r *Roofing) {
	slope, top := b.set.onSlope(), battenTop(b.job.Battens)
	over := r.Courses[len(r.Courses)-1].From
	for k := len(r.Courses) - 1; k >= 0; k-- {
		for i := range r.Rows() {
			x0, x1 := math.Min(r.Edges[i], r.Edges[i+1]), math.Max(r.Edges[i], r.Edges[i+1])
			box := geom.Box(geom.V(over, x0, top), geom.V(r.Courses[k].To, x1, top+b.job.Roof.Profile))
			r.Parts = append(r.Parts, Solid{Name: RoofSheet, Shape: box.Placed(slope)})
		}
		over = r.Courses[k].To
	}
	for _, p := range r.Parts {
		r.Highest = math.Max(r.Highest, p.Shape.Bounds().Max.Z)
	}
}

// drain makes flashing, gutter and downpipes.
func (b *builder) drain(r *Roofing) {
	j, s := b.job, b.set
	slope, top := s.onSlope(), battenTop(j.Battens)+j.Roof.Profile
	if f := j.Roof.Flashing; f.Up > 0 {
		// Where the plane of the sheets' tops meets the cladding.
		u := (s.lineAt - top*s.sin) / s.cos
		z := slope.Point(geom.V(u, 0, top)).Z
		lean := roofSkin * s.tan
		r.Parts = append(r.Parts,
			Solid{Name: RoofFlashing, Shape: geom.Box(geom.V(u+lean, r.Left, top), geom.V(u+f.Over, r.Right, top+roofSkin)).Placed(slope)},
			Solid{Name: RoofFlashing, Shape: geom.Box(geom.V(r.Left, -roofSkin, z), geom.V(r.Right, 0, z+f.Up))})
	}
	g := j.Roof.Gutter
	if g.Section.Width == 0 {
		return
	}
	end := slope.Point(geom.V(r.Courses[0].To, 0, battenTop(j.Battens)))
	r.Rim = end.Z - g.Under
	out := geom.V(r.Left, r.Back-g.Section.Width, r.Rim-g.Section.Depth)
	box := geom.Box(out, geom.V(r.Right, r.Back, r.Rim))
	in := geom.Convex{
		{N: geom.V(-1, 0, 0), D: -(r.Left + roofSkin)}, {N: geom.V(1, 0, 0), D: r.Right - roofSkin},
		{N: geom.V(0, -1, 0), D: -(out.Y + roofSkin)}, {N: geom.V(0, 1, 0), D: r.Back - roofSkin},
		{N: geom.V(0, 0, -1), D: -(out.Z + roofSkin)},
	}
	r.Parts = append(r.Parts, Solid{Name: RoofGutter, Shape: box.Minus(in)})
	for _, p := range j.Roof.Downpipes {
		m := Member{Round: true, Length: out.Z - p.To, Section: Section{Depth: p.Size, Width: p.Size}}
		place := upright(geom.V(p.Along-p.Size/2, r.Back-g.Section.Width/2-p.Size/2, p.To))
		r.Parts = append(r.Parts, Solid{Name: RoofDownpipe, Shape: roundPrism(m).Placed(place)})
	}
}

// checkRoofAround checks the roof against the frame and the house.
func (c *checker) checkRoofAround(r Roofing) {
	j := c.job
	for _, k := range c.set.Carriers {
		nut := 0.0
		if !k.OnWall && j.Posts.Rod.Diameter > 0 {
			nut = j.Posts.Rod.Above
		}
		// The sheets' undersides are lowest over its outer face.
		if under := c.roofUnder(math.Max(k.Outer, r.Lower)); k.Top+nut > under+slack && k.Outer > r.Lower-slack {
			c.errorf(RuleRoof, "roof", "the %s stands %s above the underside of the sheets; use deeper battens, lower the %s or lay the rafters over it", k.Short, c.mm(k.Top+nut-under), k.Short)
		}
	}
	for _, k := range c.set.Carriers {
		under := c.roofUnder(math.Max(k.PostOuter, r.Lower))
		if inside := k.PostOuter + j.Posts.Section.Depth; len(k.Posts) > 0 && k.PostTop > under+slack && inside > r.Lower+slack {
			c.errorf(RulePostTop, "posts.top", "the posts stand %s above the underside of the roof's sheets; make posts.top at most %s", c.mm(k.PostTop-under), c.mm(under-k.Top))
		}
	}
	if w := j.Wall; w.hasSoffit() && -r.Upper < w.SoffitOut && r.Highest+j.Roof.Flashing.Up > w.Soffit+slack {
		c.errorf(RuleSoffit, "roof", "the roof and its flashing stand %s above the soffit; lower the plate", c.mm(r.Highest+j.Roof.Flashing.Up-w.Soffit))
	}
	if g := j.Wall.Fascia.Gutter; g.Out > 0 && -r.Upper < g.Out && r.Highest+j.Roof.Flashing.Up > g.Underside+slack {
		c.errorf(RuleSoffit, "roof", "the roof and its flashing stand %s above the underside of the house's gutter; lower the plate", c.mm(r.Highest+j.Roof.Flashing.Up-g.Underside))
	}
	for _, w := range j.Wall.Returns {
		over := r.Right - w.At
		key := "roof.verge_right"
		if w.Side == Left {
			over, key = w.At-r.Left, "roof.verge_left"
		}
		if over > slack {
			c.errorf(RuleReturnClash, key, "the roof runs %s into the %s return; shorten its verge or the battens", c.mm(over), w.Side)
		}
	}
	c.checkGutter(r)
}

// roofUnder is the level of the sheets' underside at a world y.
func (c *checker) roofUnder(y float64) float64 {
	return c.set.RafterTop(y) + battenTop(c.job.Battens)/c.set.cos
}

func (c *checker) checkGutter(r Roofing) {
	roof := c.job.Roof
	g := roof.Gutter.Section
	if g.Width == 0 {
		if len(roof.Downpipes) > 0 {
			c.errorf(RuleRoof, "roof.downpipes", "a downpipe hangs on a gutter, and the job has none; add a gutter")
		}
		c.warnf(RuleRoof, "roof", "the roof has no gutter: state where its water goes")
		return
	}
	if roof.Eave > g.Width-slack {
		c.errorf(RuleRoof, "roof.eave", "the sheets run %s past the frame, beyond a gutter %s wide; make the eave less than that", c.mm(roof.Eave), c.mm(g.Width))
	}
	if len(roof.Downpipes) == 0 {
		c.warnf(RuleRoof, "roof.gutter", "the gutter has no downpipe: state where its water goes")
	}
	for i, p := range roof.Downpipes {
		path := fmt.Sprintf("roof.downpipes[%d]", i)
		if p.Along-p.Size/2 < r.Left-slack || p.Along+p.Size/2 > r.Right+slack {
			c.errorf(RuleRoof, path, "the downpipe at %s is not under the gutter, which runs from %s to %s", c.mm(p.Along), c.mm(r.Left), c.mm(r.Right))
		}
		if p.Size > g.Width+slack {
			c.errorf(RuleRoof, path, "a downpipe of %s is wider than the gutter, %s", c.mm(p.Size), c.mm(g.Width))
		}
		if p.To > r.Rim-g.Depth-slack {
			c.errorf(RuleRoof, path, "the downpipe's foot is at %s, above the bottom of the gutter at %s", c.mm(p.To), c.mm(r.Rim-g.Depth))
		}
	}
}
