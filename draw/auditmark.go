package draw

import (
	"math"

	"plumbcut/geom"
)

// leaders checks that leaders and part marks name something and that no two
// leaders cross.
func (a *auditor) leaders() {
	bounds := a.memberBounds()
	for i, m := range a.s.Marks {
		if m.Kind == NoteMark || m.Kind == PartMark {
			if !a.names(m, bounds) {
				a.found(RuleLeaderEnd, m.Target(), "%q", m.Label)
			}
		}
		for _, o := range a.s.Marks[i+1:] {
			if at, bad := leadersCross(m, o); bad {
				a.found(RuleLeaderCross, at, "%q and %q", m.Label, o.Label)
			}
		}
	}
}

// memberBounds are the rectangles round all that is drawn of each member.
func (a *auditor) memberBounds() map[string]Rect {
	bounds := map[string]Rect{}
	for _, it := range a.s.Items {
		if it.Path == nil || it.Path.ID == "" {
			continue
		}
		r, ok := bounds[it.Path.ID]
		if !ok {
			r = EmptyRect()
		}
		bounds[it.Path.ID] = r.Union(it.Path.Bounds())
	}
	return bounds
}

// names reports whether a mark points at something: an arrow at an edge, a dot
// or a mark without a leader at a place with edges on all sides of it. If the
// mark says which member it names, it must be that one.
func (a *auditor) names(m Mark, bounds map[string]Rect) bool {
	at := m.Target()
	if r, ok := bounds[m.ID]; ok && !r.Expand(leaderReach).Contains(at) {
		return false
	}
	if len(m.Leader) > 0 && !m.Inside {
		return a.edgeAt(at)
	}
	return a.grid.encloses(a.s.Paper.Sheet(), at)
}

// encloses reports whether edges of the picture are at the left and the right of
// a point, over and under it.
func (g *grid) encloses(sheet Rect, at geom.Pt) bool {
	for _, to := range pts(sheet.X0, at.Y, sheet.X1, at.Y, at.X, sheet.Y0, at.X, sheet.Y1) {
		if !g.edgeAlong(at, to) {
			return false
		}
	}
	return true
}

// drawn reports whether a segment belongs to the picture itself.
func (s *segment) drawn() bool { return s.layer <= Centre }

// edgeAt reports whether an edge of the picture passes within reach.
func (a *auditor) edgeAt(p geom.Pt) bool {
	hit := false
	a.grid.segsNear(around(p, leaderReach), func(s *segment) bool {
		hit = s.drawn() && segmentGap(p, s.a, s.b) <= leaderReach
		return !hit
	})
	return hit
}

// edgeAlong reports whether the line from p to q meets an edge.
func (g *grid) edgeAlong(p, q geom.Pt) bool {
	hit := false
	g.segsNear(Bounds(p, q), func(s *segment) bool {
		hit = s.drawn() && segmentsGap(p, q, s.a, s.b) == 0
		return !hit
	})
	return hit
}

// Crosses reports whether the leaders of two marks cross. Leaders to one point
// meet there, which is allowed.
func (m Mark) Crosses(o Mark) bool {
	_, bad := leadersCross(m, o)
	return bad
}

// leadersCross finds where the leaders of two marks cross. Leaders to one
// point meet there, which is allowed.
func leadersCross(m, o Mark) (geom.Pt, bool) {
	for i := 1; i < len(m.Leader); i++ {
		for k := 1; k < len(o.Leader); k++ {
			if cross(m.Leader[i-1], m.Leader[i], o.Leader[k-1], o.Leader[k]) {
				return m.Leader[i-1].Lerp(m.Leader[i], 0.5), true
			}
		}
	}
	return geom.Pt{}, false
}

// lineGaps compares each stroke of the picture with its neighbours.
func (a *auditor) lineGaps() {
	for i := range a.grid.segs {
		s := &a.grid.segs[i]
		dir := s.b.Sub(s.a)
		if s.half == 0 || dir.Len() < leastOverlap {
			continue // the edge of a fill is no line
		}
		dir = dir.Unit()
		a.grid.segsNear(Bounds(s.a, s.b).Expand(lineToLine), func(o *segment) bool {
			if o.half == 0 || !before(s, o) || math.Abs(dir.Cross(o.b.Sub(o.a).Unit())) > parallel {
				return true
			}
			gap := math.Abs(dir.Cross(o.a.Sub(s.a)))
			lo, hi := dir.Dot(o.a.Sub(s.a)), dir.Dot(o.b.Sub(s.a))
			shared := min(max(lo, hi), s.b.Sub(s.a).Len()) - max(min(lo, hi), 0)
			if gap >= lineToLine-slack || shared < leastOverlap {
				return true
			}
			rule := RuleLinesClose
			if gap < doubleLine {
				rule = RuleLinesDouble
			}
			at := s.a.Add(dir.Mul(max(min(lo, hi), 0) + shared/2))
			a.found(rule, at, "%s and %s, %.2f mm apart for %.1f mm", s.layer, o.layer, gap, shared)
			return true
		})
	}
}

// parallel is the sine under which two lines count as parallel: half a degree.
const parallel = 0.01

// before orders segments so that each pair is looked at once.
func before(s, o *segment) bool {
	if s.item != o.item {
		return s.item < o.item
	}
	return s.a != o.a && (s.a.X < o.a.X || s.a.X == o.a.X && s.a.Y < o.a.Y)
}

// auditMarks checks the marks that lead from sheet to sheet, both ways.
func (set *Set) auditMarks() []Finding {
	type view struct{ label, sheet string }
	titles, led := map[view]bool{}, map[view]bool{}
	each := func(f func(*Sheet, Mark)) {
		for _, s := range set.Sheets {
			for _, m := range s.Marks {
				f(s, m)
			}
		}
	}
	each(func(s *Sheet, m Mark) {
		switch m.Kind {
		case TitleMark:
			titles[view{m.Label, s.Number}] = true
		case SectionMark, DetailMark:
			led[view{m.Label, m.Sheet}] = true
		}
	})
	var out []Finding
	each(func(s *Sheet, m Mark) {
		switch v := (view{m.Label, m.Sheet}); m.Kind {
		case SectionMark, DetailMark:
			if !titles[v] {
				out = append(out, Finding{RuleMarkNowhere, s.Number, m.Target(), m.Kind.String() + " " + m.Label + " to sheet " + m.Sheet})
			}
		case TitleMark:
			if m.Label != "" && !led[view{m.Label, s.Number}] {
				out = append(out, Finding{RuleTitleUnused, s.Number, m.Target(), m.Kind.String() + " " + m.Label})
			}
		}
	})
	return out
}

// quadGap is the distance between two turned rectangles; 0 if they overlap.
func quadGap(a, b [4]geom.Pt) float64 {
	if inQuad(a, b[0]) || inQuad(b, a[0]) {
		return 0
	}
	gap := math.Inf(1)
	for i := range b {
		gap = min(gap, quadSegmentGap(a, b[i], b[(i+1)%4]))
	}
	return gap
}

// quadSegmentGap is the distance from a turned rectangle to a segment.
func quadSegmentGap(q [4]geom.Pt, a, b geom.Pt) float64 {
	if inQuad(q, a) {
		return 0
	}
	gap := math.Inf(1)
	for i := range q {
		gap = min(gap, segmentsGap(q[i], q[(i+1)%4], a, b))
	}
	return gap
}

// inQuad reports whether p lies in a rectangle given anticlockwise.
func inQuad(q [4]geom.Pt, p geom.Pt) bool {
	for i := range q {
		if q[(i+1)%4].Sub(q[i]).Cross(p.Sub(q[i])) < 0 {
			return false
		}
	}
	return true
}

// segmentsGap is the distance between two segments; 0 if they meet.
func segmentsGap(a, b, c, d geom.Pt) float64 {
	if cross(a, b, c, d) {
		return 0
	}
	return min(segmentGap(a, c, d), segmentGap(b, c, d), segmentGap(c, a, b), segmentGap(d, a, b))
}

// segmentGap is the distance from p to the segment ab.
func segmentGap(p, a, b geom.Pt) float64 { return p.Sub(nearest(p, a, b)).Len() }

// nearest is the point of the segment ab that is nearest to p.
func nearest(p, a, b geom.Pt) geom.Pt {
	d := b.Sub(a)
	l2 := d.Dot(d)
	if l2 == 0 {
		return a
	}
	return a.Add(d.Mul(min(max(p.Sub(a).Dot(d)/l2, 0), 1)))
}
