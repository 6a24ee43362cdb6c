package template

import (
	"fmt"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
)

// firstLeaf is the page that says how to check the others, and lists them.
func (m *maker) firstLeaf(leaves []*leaf) *leaf {
	free := m.page.free
	var k ink
	y := free.Y1
	title := func(s string) {
		y -= 2 * draw.TitleHeight
		k.words = append(k.words, draw.Text{Layer: draw.Notes, At: geom.P(free.X0, y), Height: draw.TitleHeight, Bold: true, String: s})
		y -= 1
	}
	para := func(n int, s string) {
		const indent = 6.0
		for i, line := range draw.Wrap(s, draw.NoteHeight, false, free.W()-indent) {
			y -= lineStep
			if i == 0 {
				k.text(geom.P(free.X0, y), draw.Start, draw.NoteHeight, fmt.Sprintf("%d.", n))
			}
			k.text(geom.P(free.X0+indent, y), draw.Start, draw.NoteHeight, line)
		}
	}
	y += draw.TitleHeight
	title("Check the print first")
	for i, s := range m.howTo() {
		para(i+1, s)
	}
	title("Lines")
	y = m.samples(&k, y)
	title("Templates")
	m.list(&k, y, leaves)
	return &leaf{placed: []placed{{k, lie{}, m.page.print, false}}}
}

// howTo is what to do with the pages, in order.
func (m *maker) howTo() []string {
	out := []string{
		"Print all pages at 100 %, 'actual size', never 'fit to page'. Every page carries two check bars and four crosses.",
		"Measure both bars with a steel rule from their zero. The rule's 150, or 6 inches, in the black band: pass. In the grey band: use it for short cuts only. Beyond it: reject the page.",
		"Measure from corner cross to corner cross, both ways. Both must be the length that the page says; if they differ, the printer pulls the paper askew: reject.",
		"If the bars miss, write what the 150 mm bars measured into the job file, like this: printer: {x: 149.1 mm, y: 149.6 mm}, x across the page and y up it. Draw again, print on the same printer, and measure again. The drawings are not changed by it.",
		"Cut the paper on its outer lines. Fold on the fine dashes, print outwards, and lay each fold on its arris. Each face is drawn as you see it looking at that face.",
		"Lay the datum cross on the tape's reading from the end that is named. The tape gives the place, the paper only the shape. Tape it down; measure a bar again if the paper has been damp.",
		"Prick the corners and centres through with an awl, rule between them with a knife, hatch the waste on the timber, and saw on its side of the line. Mark on the day of printing.",
	}
	if p := m.page.printer; p.Corrects() {
		out = append(out, fmt.Sprintf("These pages are for one printer only, whose bars measured %s across and %s up. Its bars must now measure 150 mm.", barWords(p.X), barWords(p.Y)))
	}
	return out
}

// sampleStep is from line to line of the samples, mm.
const sampleStep = 8.0

// samples shows the kinds of line, in two columns, and returns where they end.
func (m *maker) samples(k *ink, y float64) float64 {
	free := m.page.free
	for i, s := range []struct {
		style draw.Style
		what  string
	}{
		{cutLine, "cut; saw or chisel to its middle"}, {markLine, "mark only; do not cut"},
		{foldLine, "fold, on the arris"}, {edgeLine, "arris or end of the timber"},
		{axisLine, "centre line"}, {trimLine, "edge of the paper; trim"},
		{waste, "hatch: waste"}, {crosses, "datum cross; lay it by the tape"},
		{barLine, "crossed out: a rafter comes here"}, {register, "lay it on that of the next tile"},
	} {
		at := geom.P(free.X0+float64(i%2)*free.W()/2, y-float64(i/2+1)*sampleStep)
		const long, sampleHigh = 22.0, 4.5
		mid := geom.P(0, draw.NoteHeight/2)
		switch s.style {
		case waste:
			box := draw.Rect{X0: at.X, Y0: at.Y - 0.5, X1: at.X + long, Y1: at.Y + draw.NoteHeight + 0.5}
			for _, h := range draw.HatchLines([][]geom.Pt{box.Corners()}, hatchAngle, hatchPitch) {
				k.line(waste, h[0], h[1])
			}
		case crosses:
			k.datum(at.Add(mid).Add(geom.P(long/2, 0)), sampleHigh)
		case barLine:
			a, b := at.Add(mid).Add(geom.P(long/4, -sampleHigh/2)), at.Add(mid).Add(geom.P(3*long/4, sampleHigh/2))
			k.line(barLine, a, b)
			k.line(barLine, geom.P(a.X, b.Y), geom.P(b.X, a.Y))
		case register:
			c := at.Add(mid).Add(geom.P(long/2, 0))
			k.ring(register, c, regRadius)
			k.line(register, c.Sub(geom.P(regReach, 0)), c.Add(geom.P(regReach, 0)))
			k.line(register, c.Sub(geom.P(0, regReach/2)), c.Add(geom.P(0, regReach/2)))
		default:
			k.line(s.style, at.Add(mid), at.Add(mid).Add(geom.P(long, 0)))
		}
		k.text(at.Add(geom.P(long+3, 0)), draw.Start, draw.NoteHeight, s.what)
	}
	return y - 5*sampleStep
}

// row is a line of the list of templates.
type row struct{ number, title, sticks, page string }

// list names the templates and where they are. When it is too long for the page,
// its tail is left to the pages.
func (m *maker) list(k *ink, y float64, leaves []*leaf) {
	free := m.page.free
	const number, page = 20.0, 22.0
	wide := (free.W() - number - page) * 0.6
	wrap := func(s string, w float64) []string { return draw.Wrap(s, draw.NoteHeight, false, w-2) }
	rows := m.rows(leaves)
	for i, r := range rows {
		titles, sticks := wrap(r.title, wide), wrap(r.sticks, free.W()-number-page-wide)
		deep := float64(max(len(titles), len(sticks))) * lineStep
		more := lineStep // for the line that says that there are more
		if i == len(rows)-1 {
			more = 0
		}
		if y-deep-more < free.Y0 {
			k.text(geom.P(free.X0+number, y-lineStep), draw.Start, draw.NoteHeight, fmt.Sprintf("and %d more, each with its title on its page", len(rows)-i))
			return
		}
		k.text(geom.P(free.X0, y-lineStep), draw.Start, draw.NoteHeight, r.number)
		k.text(geom.P(free.X1-1, y-lineStep), draw.End, draw.NoteHeight, r.page)
		for n, s := range titles {
			k.text(geom.P(free.X0+number, y-float64(n+1)*lineStep), draw.Start, draw.NoteHeight, s)
		}
		for n, s := range sticks {
			k.text(geom.P(free.X0+number+wide, y-float64(n+1)*lineStep), draw.Start, draw.NoteHeight, s)
		}
		y -= deep
	}
}

func (m *maker) rows(leaves []*leaf) []row {
	var out []row
	for _, p := range m.pieces {
		first, last := pagesOf(p, leaves)
		r := row{number: p.number, title: p.title, page: fmt.Sprintf("page %d", first)}
		if last > first {
			r.page = fmt.Sprintf("pages %d–%d", first, last)
		}
		var sticks []string
		for _, u := range p.uses {
			sticks = append(sticks, fmt.Sprintf("%s × %d", u.mark, u.quantity))
		}
		r.sticks = strings.Join(sticks, ", ")
		out = append(out, r)
	}
	return out
}

// pagesOf are the pages, from 1 and the first of all included, that a template
// is on.
func pagesOf(p *piece, leaves []*leaf) (first, last int) {
	for i, l := range leaves {
		for _, q := range l.pieces {
			if q == p {
				if first == 0 {
					first = i + 2
				}
				last = i + 2
			}
		}
	}
	return first, last
}
