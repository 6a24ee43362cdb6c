package sheets

import (
	"fmt"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// scene is the frame and the house as things that can be looked at. A body's
// number is its index here: the members in the order of Frame.Members, then
// the house, then the parts of a roof.
type scene struct {
	frame  *frame.Frame
	solids []geom.Solid
	// watch, if set, is told of every picture's bodies and lines: a test looks
	// at the same bodies in another way.
	watch func(geom.View, []geom.Body, []geom.Stroke)
}

func newScene(f *frame.Frame) *scene {
	s := &scene{frame: f, solids: f.Solids()}
	for _, h := range f.House {
		s.solids = append(s.solids, h.Shape)
	}
	for _, p := range f.Roof.Parts {
		s.solids = append(s.solids, p.Shape)
	}
	return s
}

// member is the member that a body is; false for a body of the house.
func (s *scene) member(body int) (frame.Member, bool) {
	if body < len(s.frame.Members) {
		return s.frame.Members[body], true
	}
	return frame.Member{}, false
}

// house is the piece of the house that a body is.
func (s *scene) house(body int) (frame.Solid, bool) {
	if i := body - len(s.frame.Members); i >= 0 && i < len(s.frame.House) {
		return s.frame.House[i], true
	}
	return frame.Solid{}, false
}

// roof is the part of the roof that a body is.
func (s *scene) roof(body int) (frame.Solid, bool) {
	if i := body - len(s.frame.Members) - len(s.frame.House); i >= 0 && i < len(s.frame.Roof.Parts) {
		return s.frame.Roof.Parts[i], true
	}
	return frame.Solid{}, false
}

// id names a body in the files: "R1-3" is the third rafter, of mark R1.
func (s *scene) id(body int) string {
	if m, ok := s.member(body); ok {
		return fmt.Sprintf("%s-%d", m.Mark, m.No)
	}
	h, ok := s.house(body)
	if !ok {
		h, _ = s.roof(body)
	}
	return strings.ReplaceAll(h.Name, " ", "-")
}

// look is a way of looking at the scene.
type look struct {
	axes   geom.View
	cut    *geom.Vec                     // a point of the plane that cuts, square to the view; nil: nothing is cut
	show   func(s *scene, body int) bool // nil: everything
	hidden func(s *scene, body int) bool // whose hidden edges are drawn; nil: nobody's
	crop   *geom.Box3                    // only what lies in it; nil: all
	torn   bool                          // what the crop cuts goes on: it ends in a break line
}

// picture is what a look shows, in the view plane, in millimetres of the model.
type picture struct {
	scene   *scene
	axes    geom.View
	strokes []geom.Stroke
	cuts    []cutFace
	tears   []tear                    // where the picture is torn off
	bounds  draw.Rect                 // of the members shown and, where there are none, of all
	all     draw.Rect                 // of everything shown
	faint   func(b frame.Member) bool // members drawn light as the house is; nil: none
}

// cutFace is a face that the section plane makes.
type cutFace struct {
	body   int
	region geom.Region
}

// see looks at the scene.
func (s *scene) see(l look) picture {
	p := picture{scene: s, axes: l.axes, bounds: draw.EmptyRect(), all: draw.EmptyRect(), tears: l.tears()}
	var bodies []geom.Body
	for i, solid := range s.solids {
		if l.show != nil && !l.show(s, i) {
			continue
		}
		solid = l.trim(solid)
		if solid.Empty() {
			continue
		}
		if l.cut != nil {
			var faces []cutFace
			solid, faces = l.open(i, solid)
			p.cuts = append(p.cuts, faces...)
			p.tearCuts(faces)
		}
		if !solid.Empty() {
			bodies = append(bodies, geom.Body{ID: i, Solid: solid})
			p.grow(i, solid.Bounds())
		}
	}
	strokes := geom.Strokes(l.axes, bodies, geom.Options{VisibleOnly: l.hidden == nil})
	if s.watch != nil {
		s.watch(l.axes, bodies, strokes)
	}
	for _, st := range strokes {
		if st.Hidden && (l.hidden == nil || !l.hidden(s, st.Body)) {
			continue
		}
		if st.Arc == nil && p.tear(st.Body, st.A, st.B) {
			continue
		}
		p.strokes = append(p.strokes, st)
	}
	if p.bounds.Empty() {
		p.bounds = p.all
	}
	return p
}

// trim keeps of a solid what lies in the crop box.
func (l look) trim(s geom.Solid) geom.Solid {
	if l.crop == nil {
		return s
	}
	for _, pl := range planes(*l.crop) {
		s = s.Cut(pl)
	}
	return s
}

// open cuts a solid by the section plane and keeps what lies beyond it.
func (l look) open(body int, s geom.Solid) (geom.Solid, []cutFace) {
	var faces []cutFace
	// Of the points of the plane, the one that the view projects to its origin.
	middle := l.axes.Toward.Mul(l.axes.Depth(*l.cut))
	for _, r := range s.Section(l.axes.Axes(middle)) {
		faces = append(faces, cutFace{body, r})
	}
	return s.Cut(geom.PlaneAt(*l.cut, l.axes.Toward)), faces
}

// grow widens the bounds by a body.
func (p *picture) grow(body int, b geom.Box3) {
	r := projectBox(p.axes, b)
	p.all = p.all.Union(r)
	_, timber := p.scene.member(body)
	_, roof := p.scene.roof(body)
	if timber || roof {
		p.bounds = p.bounds.Union(r)
	}
}

// projectBox is the rectangle that a box covers in a view.
func projectBox(v geom.View, b geom.Box3) draw.Rect {
	pts := make([]geom.Pt, 0, 8)
	for i := range 8 {
		c := b.Min
		if i&1 != 0 {
			c.X = b.Max.X
		}
		if i&2 != 0 {
			c.Y = b.Max.Y
		}
		if i&4 != 0 {
			c.Z = b.Max.Z
		}
		pts = append(pts, v.Project(c))
	}
	return draw.Bounds(pts...)
}

// hasEdge reports whether a visible edge of the picture passes through a point.
func (p picture) hasEdge(at geom.Vec) bool {
	q := p.axes.Project(at)
	return slices.ContainsFunc(p.strokes, func(st geom.Stroke) bool {
		return !st.Hidden && st.Arc == nil && distance(q, st.A, st.B) < onTear
	})
}
