package frame

import "plumbcut/geom"

// fascia is the board across the ends of the house's rafters, with the gutter
// on its upper part. The plate lies against it, below the gutter; the screws go
// through the board into those ends.
//
//	      ╲
//	┌────┐│▒│╲
//	│ gu-││▒│──  end of the house's rafter
//	└────┘│▒│
//	┌────┐│▒│
//	│plate│▒└──────┐ soffit
//	└────┘└────────┤ wall
type fascia struct{}

func (fascia) sunk(Wall) float64    { return 0 }
func (fascia) grip(w Wall) float64  { return w.Fascia.Thickness }
func (fascia) skin(w Wall) float64  { return w.Fascia.Thickness }
func (fascia) studs() string        { return "rafter end" }
func (fascia) fixing() HardwareKind { return CoachScrew }

func (fascia) needs(c *checker) {
	if c.job.Wall.Fascia.Depth == 0 {
		c.errorf(RuleBacking, "wall.kind", "a plate on a fascia needs to know where that is; add fascia: {depth: 190, underside: 2450, eave: 600}, or what it is")
	}
	for i, p := range c.job.Posts.At {
		if p.Wall != "" {
			c.errorf(RuleBacking, c.postPath(i), "post %d is fixed to a return, which is no fascia; let it stand free, or say of which kind the wall is", i+1)
		}
	}
}

func (fascia) check(c *checker) {
	j, s := c.job, c.set
	p, f := j.Plate, j.Wall.Fascia
	bottom := p.Top - p.Section.Depth
	c.warnf(RuleBacking, "wall.kind", "a fascia carries only what the ends of the house's rafters behind it do: designer to confirm board, rafters and fixings")
	switch top := f.Underside + f.Depth; {
	case p.Top > top+slack:
		c.errorf(RuleBacking, "plate", "the top of the plate is at %s, above that of the fascia at %s; lower the plate", c.mm(p.Top), c.mm(top))
	case bottom < f.Underside-slack:
		c.warnf(RuleBacking, "plate", "the wall plate hangs %s below the fascia: see what is behind it there", c.figure(f.Underside-bottom))
	}
	g := f.Gutter
	if g.Out == 0 {
		return
	}
	if p.Top > g.Underside+slack {
		c.errorf(RuleBacking, "plate", "the top of the plate is at %s and the gutter's underside at %s; lower the plate", c.mm(p.Top), c.mm(g.Underside))
		return
	}
	if up := s.RafterTop(s.RafterStart) - g.Underside; s.RafterStart > -g.Out && up > slack {
		c.errorf(RuleBacking, "plate", "the rafters run %s up into the gutter; lower the plate", c.mm(up))
		return
	}
	if len(s.Battens) > 0 {
		a := s.onSlope()
		if top := a.Point(geom.V(s.Battens[0], 0, j.Battens.Section.Depth)); top.Z > g.Underside+slack && -top.Y < g.Out {
			c.errorf(RuleBacking, "battens", "the first batten stands %s up into the gutter; lower the plate or begin the battens farther out", c.mm(top.Z-g.Underside))
		}
	}
}

func (fascia) around(j *Job, e extent) []Solid {
	w, f := j.Wall, j.Wall.Fascia
	e.top = f.Underside + soffitThick
	high := extent{e.from, e.to, f.Underside, f.Underside + f.Depth, 0}
	out := []Solid{
		{Name: HouseCladding, Shape: pierced(w, e.slab(f.Eave, f.Eave+w.Cladding))},
		{Name: HouseWall, Shape: pierced(w, e.slab(w.Core(), w.Core()+wallThick))},
		{Name: HouseFascia, Shape: high.slab(0, f.Thickness)},
		{Name: HouseSoffit, Shape: extent{e.from, e.to, f.Underside, f.Underside + f.Thickness, 0}.slab(f.Thickness, f.Eave)},
	}
	if g := f.Gutter; g.Out > 0 {
		out = append(out, Solid{Name: HouseGutter, Shape: extent{e.from, e.to, g.Underside, g.Underside + g.Height, 0}.slab(-g.Out, 0)})
	}
	return out
}

func (fascia) ofReturn(j *Job, r Return, e extent) []Solid { return studWall{}.ofReturn(j, r, e) }
