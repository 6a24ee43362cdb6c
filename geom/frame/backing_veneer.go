package frame

// veneer is a leaf of masonry with a cavity and studs behind it. The leaf
// carries nothing: what holds the timber must reach the studs.
type veneer struct{ studWall }

func (veneer) check(c *checker) {
	c.warnf(RuleBacking, "wall.kind", "a masonry veneer carries nothing by itself: designer to confirm how the wall plate is fixed through it to the frame behind, or stood off it")
}

func (veneer) needs(c *checker) {
	if c.job.Wall.Cladding == 0 {
		c.errorf(RuleBacking, "wall.kind", "a masonry veneer needs the thickness of its leaf; add cladding: 90, or what it is")
	}
}

func (veneer) around(j *Job, e extent) []Solid {
	w := j.Wall
	return []Solid{
		{Name: HouseCladding, Shape: pierced(w, e.slab(0, w.Cladding)), Of: Brick},
		{Name: HouseWall, Shape: pierced(w, e.slab(w.Core(), w.Core()+wallThick))},
	}
}

func (veneer) ofReturn(j *Job, r Return, e extent) []Solid {
	w := j.Wall
	return []Solid{
		{Name: r.name(), Shape: r.layer(0, w.Cladding, e), Of: Brick},
		{Name: r.name(), Shape: r.layer(w.Core(), w.Core()+wallThick, e)},
	}
}
