package frame

// masonry is a wall of one material from its face inwards, or from behind its
// render: anchors hold anywhere in it, clear of its edges and joints.
type masonry struct {
	of    Material
	doubt string // what a designer has to confirm; empty: nothing beyond the usual
}

func (masonry) sunk(Wall) float64    { return 0 }
func (masonry) grip(w Wall) float64  { return w.Core() }
func (masonry) skin(w Wall) float64  { return w.Cladding }
func (masonry) studs() string        { return "" }
func (masonry) fixing() HardwareKind { return Anchor }
func (masonry) needs(*checker)       {}

func (k masonry) check(c *checker) {
	if k.doubt != "" {
		c.warnf(RuleBacking, "wall.kind", "%s", k.doubt)
	}
}

func (k masonry) around(j *Job, e extent) []Solid {
	w := j.Wall
	return []Solid{
		{Name: HouseCladding, Shape: pierced(w, e.slab(0, w.Cladding))},
		{Name: HouseWall, Shape: pierced(w, e.slab(w.Cladding, w.Cladding+wallThick)), Of: k.of},
	}
}

func (k masonry) ofReturn(j *Job, r Return, e extent) []Solid {
	w := j.Wall
	return []Solid{
		{Name: r.name(), Shape: r.layer(0, w.Cladding, e)},
		{Name: r.name(), Shape: r.layer(w.Cladding, w.Cladding+wallThick, e), Of: k.of},
	}
}
