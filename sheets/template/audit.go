package template

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
)

// What a builder would be misled by. A page that breaks one of these rules must
// not be printed.
const (
	RuleMargin   draw.Rule = "ink where the printer cannot print"
	RuleBar      draw.Rule = "a check bar is not as long as it says"
	RuleMirrored draw.Rule = "a face is mirrored"
	RuleOffEdge  draw.Rule = "a cut line lies on no edge of the timber"
	RuleNoLine   draw.Rule = "an edge of the timber has no cut line"
)

// What a builder must guess.
const (
	RuleUnnamed draw.Rule = "a face is not named"
	RuleNoArrow draw.Rule = "no arrow says which way it lies"
)

// What the audit allows, mm.
const (
	barTolerance  = 0.01  // of a check bar: a twentieth of its pen
	edgeTolerance = 0.05  // of a cut line: half of what a knife can follow
	inkTolerance  = 0.005 // into the margin: rounding, and no printer knows its own so well
)

// Audit looks over the templates as they would be printed. Faults make a page
// untrue: it would spoil timber. What is merely hard to read is the second
// answer.
func (t Templates) Audit(f draw.Figures) (faults, blemishes []draw.Finding) {
	for _, s := range t.Pages.Sheets {
		faults = append(append(faults, t.inMargin(s)...), t.bars(s)...)
	}
	for _, p := range t.pieces {
		faults = append(faults, p.audit()...)
		blemishes = append(blemishes, p.unnamed()...)
	}
	for _, s := range t.True.Sheets {
		tiled := strings.Contains(s.Title, "tile")
		for _, x := range s.Audit(f) {
			switch {
			case x.Rule == draw.RuleOutside: // of a frame, and these pages have none
			case tiled && strings.HasSuffix(x.What, "hatch"): // a tile may end within a white ground
			default:
				blemishes = append(blemishes, x)
			}
		}
	}
	return faults, blemishes
}

// inMargin finds ink where the printer cannot print.
func (t Templates) inMargin(s *draw.Sheet) []draw.Finding {
	var out []draw.Finding
	room := s.Paper.Sheet().Inset(t.margin - inkTolerance)
	look := func(box draw.Rect, what string) {
		if !room.Encloses(box) {
			out = append(out, draw.Finding{Rule: RuleMargin, Sheet: s.Number, At: box.Centre(), What: what})
		}
	}
	for _, it := range s.Items {
		switch {
		case it.Text != nil:
			look(it.Text.Box(), it.Text.String)
		case it.Path.Stroke:
			look(it.Path.Bounds().Expand(s.Paper.LineWidth(it.Path.Style.Pen)/2), "a line")
		default:
			look(it.Path.Bounds(), "a filled area")
		}
	}
	return out
}

// bars finds a page without two check bars that are true once it is printed.
func (t Templates) bars(s *draw.Sheet) []draw.Finding {
	inches := barInches * measure.Inch
	for _, level := range straight(s) {
		if !spanning(level, geom.P(inches*t.stretch.X, 0)) {
			continue
		}
		for _, plumb := range straight(s) {
			if plumb[0] == level[0] && spanning(plumb, geom.P(0, inches*t.stretch.Y)) &&
				ticked(s, level[0].Add(geom.P(frame.CheckBar*t.stretch.X, 0)), geom.P(0, -endTick*t.stretch.Y)) &&
				ticked(s, level[0].Add(geom.P(0, frame.CheckBar*t.stretch.Y)), geom.P(-endTick*t.stretch.X, 0)) {
				return nil
			}
		}
	}
	return []draw.Finding{{Rule: RuleBar, Sheet: s.Number, What: "no two true bars that start at one point"}}
}

// straight lists the lines of the check bars' layer.
func straight(s *draw.Sheet) [][2]geom.Pt {
	var out [][2]geom.Pt
	for _, it := range s.Items {
		if p := it.Path; p != nil && p.Style == barLine && len(p.Segs) == 2 {
			out = append(out, [2]geom.Pt{p.Segs[0].To, p.Segs[1].To})
		}
	}
	return out
}

// spanning reports whether a line runs as far as d.
func spanning(l [2]geom.Pt, d geom.Pt) bool { return l[1].Sub(l[0]).Sub(d).Len() < barTolerance }

// ticked reports whether a tick starts at a place.
func ticked(s *draw.Sheet, at, d geom.Pt) bool {
	return slices.ContainsFunc(straight(s), func(l [2]geom.Pt) bool { return l[0].Sub(at).Len() < barTolerance && spanning(l, d) })
}

// audit compares a template with its timber: the faces, and the cut lines both
// ways.
func (p *piece) audit() []draw.Finding {
	var out []draw.Finding
	found := func(r draw.Rule, f flap, at geom.Pt) {
		out = append(out, draw.Finding{Rule: r, Sheet: p.number, At: at, What: fmt.Sprintf("%s of %s", p.say.faceName(p.work.member.Kind, f.face), p.title)})
	}
	if len(p.work.faces) == 0 { // nothing is cut
		return nil
	}
	edges := edgesOf(p.work.member)
	for _, f := range p.flaps {
		if f.right.Cross(f.up).Sub(f.plane.N).Len() > same {
			found(RuleMirrored, f, f.area.Centre())
			continue
		}
		own := edges.on(f.plane)
		var drawn []edge
		for _, s := range p.ink.lines {
			if mid := s.a.Lerp(s.b, 0.5); s.style != cutLine || !f.area.Contains(mid) || p.flapAt(mid) != f.face {
				continue
			}
			line := edge{f.timber(s.a), f.timber(s.b)}
			drawn = append(drawn, line)
			if !line.liesOn(own) {
				found(RuleOffEdge, f, s.a.Lerp(s.b, 0.5))
			}
		}
		for _, e := range own {
			if mid := e[0].Lerp(e[1], 0.5); p.shows(f, mid) && !(edge{mid, mid}).liesOn(drawn) {
				found(RuleNoLine, f, f.paper(mid))
			}
		}
	}
	return out
}

// unnamed finds faces that have no name on them, and a template without an arrow
// along the timber.
func (p *piece) unnamed() []draw.Finding {
	var out []draw.Finding
	for _, f := range p.flaps {
		name := p.say.capitals(p.work.member.Kind, f.face)
		if !slices.ContainsFunc(p.ink.words, func(t draw.Text) bool {
			return strings.HasSuffix(t.String, name) && f.area.Encloses(t.Box())
		}) {
			out = append(out, draw.Finding{Rule: RuleUnnamed, Sheet: p.number, At: f.area.Centre(), What: name})
		}
	}
	if p.mute && len(out) == 0 {
		out = append(out, draw.Finding{Rule: RuleNoArrow, Sheet: p.number, At: p.flaps[0].area.Centre(), What: p.title})
	}
	return out
}

// flapAt is the face that a place of the paper is on.
func (p *piece) flapAt(q geom.Pt) frame.Face {
	for _, f := range p.flaps {
		if f.area.Contains(q) {
			return f.face
		}
	}
	return ""
}

// shows reports whether a template should have a cut line at a point of a face: it
// lies on the paper among the template's cuts, and on no arris of the uncut
// timber.
func (p *piece) shows(f flap, q geom.Vec) bool {
	w := p.work
	return f.area.Inset(same).Contains(f.paper(q)) && q.X > w.a-clip && q.X < w.b+clip && !onEdge(q, whole(w.member, 0, w.member.Length))
}

// edge is one of a solid's, in the axes of its member.
type edge [2]geom.Vec

// liesOn reports whether an edge lies on others, at its ends and in its middle.
func (e edge) liesOn(others []edge) bool {
	for _, q := range []geom.Vec{e[0], e[0].Lerp(e[1], 0.5), e[1]} {
		if !slices.ContainsFunc(others, func(o edge) bool { return o.distance(q) < edgeTolerance }) {
			return false
		}
	}
	return true
}

// distance is that of a point from the edge.
func (e edge) distance(q geom.Vec) float64 {
	d := e[1].Sub(e[0])
	s := 0.0
	if l := d.Dot(d); l > 0 {
		s = min(1, max(0, q.Sub(e[0]).Dot(d)/l))
	}
	return q.Sub(e[0].Add(d.Mul(s))).Len()
}

// faceEdges are the edges of a member's solid, by the face that they bound.
type faceEdges []struct {
	plane geom.Plane
	edges []edge
}

func edgesOf(m frame.Member) faceEdges {
	var out faceEdges
	for _, f := range m.Solid().Faces() {
		var es []edge
		for _, loop := range f.Loops {
			for i, q := range loop {
				es = append(es, edge{m.Place.Local(q), m.Place.Local(loop[(i+1)%len(loop)])})
			}
		}
		out = append(out, struct {
			plane geom.Plane
			edges []edge
		}{m.Place.LocalPlane(f.Plane), es})
	}
	return out
}

// on are the edges of the faces in a plane.
func (f faceEdges) on(p geom.Plane) []edge {
	var out []edge
	for _, x := range f {
		if x.plane.N.Sub(p.N).Len() < same && math.Abs(x.plane.D-p.D) < same {
			out = append(out, x.edges...)
		}
	}
	return out
}
