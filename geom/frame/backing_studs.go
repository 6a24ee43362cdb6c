package frame

// studWall is cladding on studs: screws go through the cladding into the studs.
type studWall struct{}

func (studWall) sunk(Wall) float64    { return 0 }
func (studWall) grip(w Wall) float64  { return w.Core() }
func (studWall) skin(w Wall) float64  { return w.Cladding }
func (studWall) studs() string        { return "stud" }
func (studWall) fixing() HardwareKind { return CoachScrew }
func (studWall) check(*checker)       {}
func (studWall) needs(*checker)       {}

func (studWall) around(j *Job, e extent) []Solid {
	w := j.Wall
	return []Solid{
		{Name: HouseCladding, Shape: pierced(w, e.slab(0, w.Cladding))},
		{Name: HouseWall, Shape: pierced(w, e.slab(w.Cladding, w.Cladding+wallThick))},
	}
}

func (studWall) ofReturn(j *Job, r Return, e extent) []Solid {
	return []Solid{{Name: r.name(), Shape: r.layer(0, j.Wall.Cladding+wallThick, e)}}
}
