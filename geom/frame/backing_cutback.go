package frame

import "plumbcut/geom"

// cutBack is cladding on studs that is cut away behind the timber, where local
// practice lets nothing be fixed through it. The timber or its packers lie on
// the frame of the wall; the cladding stops above and below, under a flashing.
//
//	     │▒│  cladding
//	─────┐▒│
//	     └─┤  flashing, over the plate's top
//	┌─────┐│  frame
//	│plate││
//	└─────┘│
//	     │▒│
type cutBack struct{ studWall }

func (cutBack) sunk(w Wall) float64 { return w.Cladding }

func (cutBack) check(c *checker) {
	j, s := c.job, c.set
	if s.Rear().Outer > -slack {
		c.errorf(RuleBacking, "plate", "with the cladding cut back the plate is sunk %s behind its face; use a thicker plate, or packers", c.mm(s.Rear().Outer))
	}
	if s.RafterStart > slack && j.Plate.Hold == Over {
		c.errorf(RuleBacking, "plate.rafters", "the rafters would run %s into the cladding over the plate; hold them housed or between, or give packers at least as thick as the cladding", c.mm(s.RafterStart))
	}
	if j.Wall.Flashing == "" {
		c.warnf(RuleBacking, "wall.kind", "the cladding is cut back for the wall plate: how it is flashed and sealed is to be stated")
	}
}

func (cutBack) around(j *Job, e extent) []Solid {
	out := studWall{}.around(j, e)
	p, b := j.Plate, j.Wall.CutBack
	out[0].Shape = out[0].Shape.Minus(geom.Convex{
		{N: geom.V(-1, 0, 0), D: -(p.From - b.Ends)}, {N: geom.V(1, 0, 0), D: p.To + b.Ends},
		{N: geom.V(0, 0, -1), D: -(p.Top - p.Section.Depth - b.Below)}, {N: geom.V(0, 0, 1), D: p.Top + b.Above},
	})
	return out
}

// ofReturn cuts the cladding back behind the posts on it, from the ground up to
// the beam and as far above it as above the plate.
func (cutBack) ofReturn(j *Job, r Return, e extent) []Solid {
	clad, depth := r.layer(0, j.Wall.Cladding, e), j.Posts.Section.Depth
	b := j.Wall.CutBack
	for _, p := range j.Posts.At {
		if p.Wall == r.Side {
			outer := -j.Beam.Out
			clad = clad.Minus(geom.Convex{
				{N: geom.V(0, -1, 0), D: -(outer - b.Ends)}, {N: geom.V(0, 1, 0), D: outer + depth + b.Ends},
				{N: geom.V(0, 0, 1), D: e.seat + b.Above},
			})
		}
	}
	return []Solid{
		{Name: r.name(), Shape: clad},
		{Name: r.name(), Shape: r.layer(j.Wall.Cladding, j.Wall.Cladding+wallThick, e)},
	}
}
