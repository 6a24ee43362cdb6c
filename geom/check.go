package geom

import (
	"fmt"
	"math"
)

// volumeTol is the relative difference allowed between the volume summed over
// the cells and the one enclosed by the outer faces.
const volumeTol = 1e-6

// Check reports what is wrong with s as a closed body: a rim that does not
// close, an edge that is not run through once each way, a face that is a mere
// sliver, or faces that do not enclose the volume of the cells. Every
// operation keeps a sound solid sound; tests hold them to it.
func (s Solid) Check() error {
	if s.Empty() {
		return nil
	}
	k := s.boundary()
	if err := k.closed(); err != nil {
		return err
	}
	if _, open := k.loops(s.d.planes); open > 0 {
		return fmt.Errorf("%d rims do not close", open)
	}
	var cells, shell float64
	for i, c := range s.d.cells {
		v := c.volume()
		if v <= 0 {
			return fmt.Errorf("cell %d has volume %g", i, v)
		}
		cells += v
	}
	o := s.d.box.Centre()
	for _, f := range s.Faces() {
		a := f.Area()
		if a < weldTol*weldTol {
			return fmt.Errorf("the face at %v has area %g", f.Loops[0][0], a)
		}
		shell += a * f.Plane.Dist(o) * -1 / 3
	}
	if math.Abs(cells-shell) > volumeTol*cells+weldTol {
		return fmt.Errorf("cells hold %g, faces enclose %g", cells, shell)
	}
	return nil
}

// closed checks that along every line the faces' rims run as often one way as
// the other.
func (k *skin) closed() error {
	for i := 0; i < len(k.segs); {
		l := k.line[k.segs[i].line]
		j := i
		var sum float64
		for ; j < len(k.segs) && k.segs[j].line == k.segs[i].line; j++ {
			a, b := l.pos(k.v[k.segs[j].a]), l.pos(k.v[k.segs[j].b])
			sum += b - a
		}
		if math.Abs(sum) > weldTol*float64(j-i) {
			return fmt.Errorf("the rims along the line at %v do not balance: %g", k.v[k.segs[i].a], sum)
		}
		i = j
	}
	return nil
}
