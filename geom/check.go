package geom

import (
	"cmp"
	"fmt"
	"math"
	"slices"
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
		if a < onTol*onTol {
			return fmt.Errorf("the face at %v has area %g", f.Loops[0][0], a)
		}
		shell += a * f.Plane.Dist(o) * -1 / 3
	}
	if math.Abs(cells-shell) > volumeTol*cells+weldTol {
		return fmt.Errorf("cells hold %g, faces enclose %g", cells, shell)
	}
	return nil
}

// closed checks that along every stretch of every line the faces' rims run as
// often one way as the other.
func (k *skin) closed() error {
	type end struct{ at, sign float64 }
	for i := 0; i < len(k.segs); {
		l := k.line[k.segs[i].line]
		var ends []end
		j := i
		for ; j < len(k.segs) && k.segs[j].line == k.segs[i].line; j++ {
			ends = append(ends, end{l.pos(k.v[k.segs[j].a]), 1}, end{l.pos(k.v[k.segs[j].b]), -1})
		}
		slices.SortFunc(ends, func(a, b end) int { return cmp.Compare(a.at, b.at) })
		balance := 0.0
		for n, e := range ends[:len(ends)-1] {
			balance += e.sign
			if balance != 0 && ends[n+1].at-e.at > weldTol {
				return fmt.Errorf("the rims along the line at %v do not balance", k.v[k.segs[i].a])
			}
		}
		i = j
	}
	return nil
}
