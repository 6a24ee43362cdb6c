package sheets

import (
	"math"
	"slices"
	"strconv"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// groundReach is how far the ground line goes on beyond the frame, mm on
// paper.
const groundReach = 6.0

// groundLine draws the finished ground as one wide line: from post to post in
// the front elevation, level at the given post in an end elevation.
func (m *maker) groundLine(p *page, v *draw.View, post *frame.Post) {
	out := v.Outline(m.elevationBounds(picture{scene: m.scene, axes: v.Axes, bounds: draw.EmptyRect()}))
	st := draw.Style{Layer: draw.Context, Pen: draw.Wide}
	x0, x1 := out.X0-groundReach, out.X1+groundReach
	if post != nil {
		y := v.Pt(geom.V(post.Along, 0, post.Ground)).Y
		p.sheet.Line(st, geom.P(x0, y), geom.P(x1, y))
		return
	}
	posts := m.job.Posts.At
	first, last := posts[0], posts[len(posts)-1]
	line := []geom.Pt{geom.P(x0, v.Pt(geom.V(0, 0, first.Ground)).Y)}
	for _, q := range posts {
		line = append(line, v.Pt(geom.V(q.Along, 0, q.Ground)))
	}
	line = append(line, geom.P(x1, v.Pt(geom.V(0, 0, last.Ground)).Y))
	p.sheet.Line(st, line...)
}

// namedLevels are the levels of the frame that want says, with the datum.
func (m *maker) namedLevels(want func(frame.Level) bool) []frame.Level {
	const same = 0.5 // mm: levels that print alike
	datum := frame.Level{Name: "datum: " + stated(m.job.Levels.Datum), At: geom.V(m.job.Plate.From, 0, 0)}
	out := []frame.Level{datum}
	for _, l := range m.frame.Levels {
		switch {
		case !want(l):
		case math.Abs(l.Z) < same && l.Z == m.job.Levels.Deck:
		default:
			out = append(out, l)
		}
	}
	return out
}

// nameOpenings letters doors and windows where there is room in them.
func (m *maker) nameOpenings(p *page, v *draw.View) {
	for _, o := range m.job.Wall.Openings {
		name := o.Name
		if name == "" {
			name = o.Kind
		}
		w := draw.TextWidth(name, draw.NoteHeight, false)
		var tries []draw.Rect
		for _, part := range []float64{0.5, 0.4, 0.6, 0.3, 0.7} {
			c := v.Pt(geom.V((o.From+o.To)/2, 0, o.Sill+part*(o.Head-o.Sill)))
			tries = append(tries, draw.Rect{X0: c.X - w/2, Y0: c.Y - draw.NoteHeight/2, X1: c.X + w/2, Y1: c.Y + draw.NoteHeight/2})
		}
		if r, ok := p.placer.FreeBox(tries, 1); ok {
			p.sheet.AddText(draw.Text{Layer: draw.Context, Align: draw.Centred, At: geom.P(r.Centre().X, r.Y0), Height: draw.NoteHeight, String: name})
		}
	}
}

// markMember puts the part mark on a member as the view shows it.
func (m *maker) markMember(p *page, v *draw.View, mb frame.Member) {
	i := slices.IndexFunc(m.frame.Members, func(o frame.Member) bool { return o.Kind == mb.Kind && o.No == mb.No })
	p.placer.Part(draw.Part{View: v, At: mb.Solid().Bounds().Centre(), Mark: mb.Mark, ID: m.scene.id(i)})
}

// markDetails puts the marks of the details on a view that carries them.
func (m *maker) markDetails(p *page, v *draw.View, topic string) {
	for _, d := range m.details {
		if slices.Contains(d.on, topic) {
			p.placer.Detail(draw.Detail{
				View: v, At: d.at, Radius: d.radius, Number: strconv.Itoa(d.number), Sheet: p.refs[detailTopic(d.number)],
			})
		}
	}
}
