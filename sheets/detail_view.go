package sheets

import (
	"math"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// closeUp is a view of a joint from near by.
type closeUp struct {
	name   string // under the view, e.g. "section through the middle of the rafter"
	axes   geom.View
	at     geom.Vec // stands at one height in all views of a detail; a cut goes through it
	cut    bool
	crop   geom.Box3
	show   func(b frame.Member) bool
	house  []string   // names of the pieces of the house that are shown
	hidden frame.Kind // whose hidden edges are drawn
	beside []geom.Vec // points that the rows stand off from too
}

// closeUp makes the view. Its rows stand off from all that is shown.
func (m *maker) closeUp(c closeUp) *viewBlock {
	l := look{axes: c.axes, crop: &c.crop, torn: true}
	if c.cut {
		l.cut = &c.at
	}
	l.show = func(s *scene, body int) bool {
		if b, ok := s.member(body); ok {
			return c.show(b)
		}
		h, _ := s.house(body)
		return slices.Contains(c.house, h.Name)
	}
	if c.hidden != "" {
		l.hidden = func(s *scene, body int) bool {
			b, ok := s.member(body)
			return ok && b.Kind == c.hidden
		}
	}
	pic := m.scene.see(l)
	bounds := pic.all
	for _, p := range c.beside {
		bounds = bounds.Union(draw.Bounds(c.axes.Project(p)))
	}
	return newViewIn(c.name, pic, c.at, bounds)
}

// only shows the given members.
func only(members ...frame.Member) func(frame.Member) bool {
	return func(b frame.Member) bool {
		for _, o := range members {
			if o.Kind == b.Kind && o.No == b.No {
				return true
			}
		}
		return false
	}
}

// everywhere is a crop that leaves all; narrow it where the view is to end.
func everywhere() geom.Box3 {
	far := math.Inf(1)
	return geom.Box3{Min: geom.V(-far, -far, -far), Max: geom.V(far, far, far)}
}

// stick names a member with its mark, its actual size and what it is made of;
// its grade is on the section.
func (m *maker) stick(name string, b frame.Member) string {
	words := name + " " + b.Mark + ": " + m.figures.Size(b.Section.Depth, b.Section.Width) + " actual"
	t := b.Timber
	for _, w := range []string{t.Species, t.Treatment} {
		if w != "" {
			words += ", " + w
		}
	}
	return words
}

// crossLine draws a chain line through two points of the model, a little
// beyond both.
func crossLine(p *page, v *draw.View, a, b geom.Vec) {
	const beyond = 1.2 // mm on paper: up to the extension line of a row
	pa, pb := v.Pt(a), v.Pt(b)
	d := pb.Sub(pa).Unit().Mul(beyond)
	p.chainLine(pa.Sub(d), pb.Add(d))
}

// chainLine draws a narrow chain line, unless the same one is there already: two
// bolts behind each other, or two marks at one place, have one line between them.
func (p *page) chainLine(a, b geom.Pt) {
	st := draw.Style{Layer: draw.Centre, Pen: draw.Narrow, Dash: draw.Chain}
	same := func(p, q geom.Pt) bool { return p.Sub(q).Len() < sameLine }
	for _, it := range p.sheet.Items {
		if l := it.Path; l != nil && l.Style == st && len(l.Segs) == 2 {
			from, to := l.Segs[0].To, l.Segs[1].To
			if same(from, a) && same(to, b) || same(from, b) && same(to, a) {
				return
			}
		}
	}
	p.sheet.Line(st, a, b)
}

// waste hatches what is to be cut away.
func waste(p *page, v *draw.View, corners ...geom.Vec) {
	var loop []geom.Pt
	for _, c := range corners {
		loop = append(loop, v.Pt(c))
	}
	wasteLoop(p, loop)
}

// wasteLoop hatches what is to be cut away within a loop on the paper.
func wasteLoop(p *page, loop []geom.Pt) {
	const pitch, slope = 3, -math.Pi / 4 // mm on paper; against the way of end grain
	for _, l := range draw.HatchLines([][]geom.Pt{loop}, slope, pitch) {
		p.sheet.Line(draw.Style{Layer: draw.Hatch, Pen: draw.Narrow}, l[0], l[1])
	}
}

// upperFirst starts words that are to stand alone.
func upperFirst(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// lowerFirst starts words that follow others.
func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }

// detailWords is the width of the notes of details, mm on paper: narrower than
// elsewhere, since they stand between views.
const detailWords = 44

// screwWords name a screw and its hole.
func (m *maker) screwWords(f frame.Fixing) string {
	long := m.figures.Length(f.Length) + " long"
	if f.Length == 0 {
		long = "length " + toBeStated
	}
	return m.Fixer() + " Ø" + m.fine(f.Screw) + ", " + long + ", in a hole Ø" + m.fine(f.Hole)
}
