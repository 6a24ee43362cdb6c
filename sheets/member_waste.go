package sheets

import (
	"math"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// endWaste hatches what is cut off the ends, as seen on a side face, and shows
// the outline of the timber before.
func (s *timber) endWaste(p *page, v *draw.View, face frame.Face) {
	if plane, _ := s.FacePlane(face); plane.N.Y == 0 && s.Kind != frame.KindPost || plane.N.Z != 0 {
		return
	}
	for _, f := range s.Features {
		switch f.(type) {
		case frame.EndCut, frame.Chamfer, frame.Shape, frame.CheckOut:
			s.wasteOf(p, v, f)
		}
	}
}

// wasteOf hatches what one cut takes off.
func (s *timber) wasteOf(p *page, v *draw.View, f frame.Feature) {
	const least = 1.5 // mm on paper: less is a blot
	middle := geom.V(0, s.Section.Width/2, 0)
	for _, c := range s.Taken(f) {
		for _, r := range c.Section(v.Axes.Axes(v.Axes.Toward.Mul(v.Axes.Depth(middle)))) {
			box := draw.Bounds(r.Outer...)
			if box.W()*v.Scale >= least && box.H()*v.Scale >= least {
				s.wasteOutline(p, v, r.Outer)
			}
		}
	}
}

// wasteOutline hatches a piece that is cut off and strokes those of its edges
// that were edges of the timber.
func (s *timber) wasteOutline(p *page, v *draw.View, outer []geom.Pt) {
	edge := func(q geom.Pt) (x, y bool) {
		u, w := math.Abs(q.X), math.Abs(q.Y)
		return u < onTear || math.Abs(u-s.Length) < onTear, w < onTear || math.Abs(w-s.Section.Depth) < onTear
	}
	var loop []geom.Pt
	for i, a := range outer {
		b := outer[(i+1)%len(outer)]
		loop = append(loop, v.Flat(a))
		ax, ay := edge(a)
		bx, by := edge(b)
		if ax && bx && a.X == b.X || ay && by && math.Abs(a.Y-b.Y) < onTear {
			p.sheet.Line(draw.Style{Layer: draw.Context, Pen: draw.Narrow}, v.Flat(a), v.Flat(b))
		}
	}
	wasteLoop(p, loop)
}
