package template

import (
	"math"
	"strings"

	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// share is a part of a work that has a template of its own, laid by itself, where
// the whole fits no page. It is as true as the whole, and nothing has to be glued.
type share struct {
	plan plan
	work work
}

// fitted are the templates that a piece comes to: itself, shown in the first way
// that fits a page; or, if none does, its shares; or itself, in as few tiles as may
// be.
func (m *maker) fitted(p *piece) []*piece {
	if len(p.plan.options) == 0 || p.fits(m) {
		return []*piece{p}
	}
	for _, split := range p.plan.splits {
		if out := m.shares(p, split); out != nil {
			return out
		}
	}
	best, fewest := 0, 0
	for i, parts := range p.plan.options {
		p.show(m, parts)
		p.head = m.words(p)
		if g, _, _ := m.grid(p); i == 0 || g.count() < fewest {
			best, fewest = i, g.count()
		}
	}
	p.show(m, p.plan.options[best])
	p.head = m.words(p)
	return []*piece{p}
}

// fits shows a work in the first way that fits a page. It reports false if none
// does.
func (p *piece) fits(m *maker) bool {
	for _, parts := range p.plan.options {
		p.show(m, parts)
		p.head = m.words(p)
		if _, ok := m.block(p); ok {
			return true
		}
	}
	return false
}

// shares are the templates of a split; none if one of them fits no page.
func (m *maker) shares(p *piece, split []share) []*piece {
	var out []*piece
	for _, s := range split {
		q := &piece{number: p.number, title: s.plan.title, plan: s.plan, work: s.work}
		for _, u := range p.uses {
			var at []float64
			for _, r := range u.readings {
				at = append(at, r+s.plan.cross.X-p.plan.cross.X)
			}
			u.readings = at
			q.uses = append(q.uses, u)
		}
		if !q.fits(m) {
			return nil
		}
		out = append(out, q)
	}
	return out
}

// bothSides are two templates, one for each side of a timber, with what is cut of
// the face that both meet.
func (m *maker) bothSides(p plan, w work, box geom.Box3, over frame.Face) []share {
	t := w.member
	f := t.Faces()
	var out []share
	for i, side := range f[:2] {
		q := p
		q.title += ", " + m.faceTitle(t.Kind, side)
		q.splits = nil
		q.all = []part{{side, base, box}, {f[3], 0, box}, {f[2], 0, box}}
		q.options = [][]part{{{side, base, box}, {over, 0, box}}, {{side, base, box}}}
		if i == 1 {
			q.cross.Y = t.Section.Width
			q.datum = onRight(q.datum)
		}
		q.notes = append([]string{"The other side has a template of its own."}, p.notes...)
		out = append(out, share{q, w})
	}
	return out
}

// low shows what is cut of a timber's bottom without the sides above it. Its cross
// lies on the bottom arris, to which the reading is squared down.
func low(p plan, w work, box geom.Box3, high float64) share {
	f := w.member.Faces()
	left, right, bottom := f[0], f[1], f[2]
	p.cross.Z = 0
	p.datum = "on the bottom left arris: mark the reading on the top edge and square it down"
	p.splits = nil
	option := func(plain float64) []part {
		box.Min.X = max(box.Min.X, min(w.a, p.cross.X)-plain)
		box.Max.X = min(box.Max.X, max(w.b, p.cross.X)+plain)
		side := lipOf(box, geom.V(0, 0, -1), high+lip)
		return []part{{left, base, side}, {bottom, 0, box}, {right, 1, side}}
	}
	p.options = [][]part{option(beside), option(lip), option(lip / 2)}
	return share{p, w}
}

// rowsOf parts holes on a deep timber: each template has those nearer to its own
// arris, from which it is laid. The two parts beside the face are the faces that
// it meets there.
func (m *maker) rowsOf(p plan, w work, h frame.Hole, parts []part) []share {
	t := w.member
	var planes [2]geom.Plane
	var rows [2]work
	for i := range planes {
		planes[i], _ = t.FacePlane(parts[1+i].face)
		rows[i] = w
		rows[i].features = nil
	}
	for _, f := range w.features {
		hole, ok := f.(frame.Hole)
		if !ok || hole.Face != h.Face {
			return nil
		}
		i := 0
		if planes[1].Dist(hole.Mouth) > planes[0].Dist(hole.Mouth) {
			i = 1
		}
		rows[i].features = append(rows[i].features, hole)
	}
	var out []share
	for i, row := range rows {
		if len(row.features) == 0 {
			continue
		}
		beside, q := parts[1+i], p
		arris := m.say().faceName(t.Kind, beside.face)
		q.title += ", from the " + arris
		q.cross = onArris(row.features[0].(frame.Hole).Mouth, planes[i])
		q.datum = "on the arris of the " + arris
		reach := min(row.reach(planes[i]), (row.farthest(planes[i])+rows[1-i].nearest(planes[i]))/2)
		q.options = [][]part{{{h.Face, base, lipOf(parts[0].box, planes[i].N, reach)}, {beside.face, 0, beside.box}}}
		out = append(out, share{q, row})
	}
	return out
}

// farthest is how far from a face beside them the edge of a work's holes goes;
// nearest, how near it comes.
func (w work) farthest(beside geom.Plane) float64 {
	far := 0.0
	for _, f := range w.features {
		if h, ok := f.(frame.Hole); ok {
			far = max(far, -beside.Dist(h.Mouth)+h.Diameter/2)
		}
	}
	return far
}

func (w work) nearest(beside geom.Plane) float64 {
	near := math.Inf(1)
	for _, f := range w.features {
		if h, ok := f.(frame.Hole); ok {
			near = min(near, -beside.Dist(h.Mouth)-h.Diameter/2)
		}
	}
	return near
}

// reach is how much of their face, from another beside it, shows a work's holes.
func (w work) reach(beside geom.Plane) float64 { return w.farthest(beside) + lip }

// onRight says of a place on a left arris the same of the right one.
func onRight(datum string) string { return strings.Replace(datum, "left", "right", 1) }

// faceTitle names a face in a title.
func (m *maker) faceTitle(k frame.Kind, f frame.Face) string {
	name := m.say().face(k, f)
	if strings.HasSuffix(name, "side") {
		return name
	}
	return name + " side"
}
