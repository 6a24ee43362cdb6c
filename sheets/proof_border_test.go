package sheets_test

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
)

// The frame of ISO 5457:1999 (second hand): 20 mm from the left edge, 10 mm from
// the others, in a line 0.7 wide; fields of 50 mm counted from the middle;
// centring marks that cross the frame. Title blocks of ISO 7200:2004 are 180 mm
// wide at most (from memory).
const (
	fieldSide  = 50.0
	widestTile = 180.0
)

// border checks the frame and what lies inside it.
func (p *board) border() {
	frame := draw.Rect{X0: 20, Y0: 10, X1: p.wide - 10, Y1: p.tall - 10}
	c := frame.Corners()
	for i := range c {
		if !p.drawn(c[i], c[(i+1)%len(c)], p.series()[2]) {
			p.find("20 frame", "no line from %.1f, %.1f to %.1f, %.1f", c[i].X, c[i].Y, c[(i+1)%4].X, c[(i+1)%4].Y)
		}
	}
	for _, m := range [][2]geom.Pt{
		{geom.P(p.wide/2, 5), geom.P(p.wide/2, 20)}, {geom.P(p.wide/2, p.tall-5), geom.P(p.wide/2, p.tall-20)},
		{geom.P(15, p.tall/2), geom.P(30, p.tall/2)}, {geom.P(p.wide-5, p.tall/2), geom.P(p.wide-20, p.tall/2)},
	} {
		if !p.drawn(m[0], m[1], p.series()[2]) {
			p.find("20 frame", "no centring mark at %.1f, %.1f", m[0].X, m[0].Y)
		}
	}
	for _, l := range p.out {
		if l.layer != draw.Border.String() && !(frame.Contains(l.a) && frame.Contains(l.b)) {
			p.find("20 frame", "ink of the layer %s outside it, from %.1f, %.1f", l.layer, l.a.X, l.a.Y)
		}
	}
	p.fields(frame)
}

// drawn reports whether a line of a width runs between two points.
func (p *board) drawn(a, b geom.Pt, width float64) bool {
	const near = 0.02 // mm: places of the paper's edge are given in hundredths of a point
	same := func(p, q geom.Pt) bool { return p.Sub(q).Len() < near }
	return slices.ContainsFunc(p.out, func(l ink) bool {
		return math.Abs(l.width-width) < hair && (same(l.a, a) && same(l.b, b) || same(l.a, b) && same(l.b, a))
	})
}

// fields checks the references outside the frame: figures along the top and
// bottom from the left, letters without I and O down both sides from the top,
// one in the middle of each field.
func (p *board) fields(frame draw.Rect) {
	letters := strings.Split("ABCDEFGHJKLMNPQRSTUVWXYZ", "")
	along := int(math.Round(p.wide/fieldSide/2)) * 2
	down := int(math.Round(p.tall/fieldSide/2)) * 2
	at := map[string]int{}
	for _, w := range p.words {
		c := w.at.Add(w.dir.Mul(w.long / 2)).Add(w.dir.Left().Mul(w.tall / 2))
		if frame.Contains(c) {
			continue
		}
		if w.layer != draw.Border.String() {
			p.find("20 frame", "%q stands outside it", w.text)
			continue
		}
		at[w.text]++
		n, err := strconv.Atoi(w.text)
		where, size, count := c.X, p.wide, along
		if err != nil {
			n, where, size, count = slices.Index(letters, w.text)+1, p.tall-c.Y, p.tall, down
		}
		field := int(math.Floor((where-size/2)/fieldSide)) + count/2 + 1
		if n < 1 || n > count || min(max(field, 1), count) != n {
			p.find("20 frame", "the reference %q stands in field %d of %d", w.text, field, count)
		}
	}
	for i := range along {
		if n := at[strconv.Itoa(i+1)]; n != 2 {
			p.find("20 frame", "the field %d is marked %d times", i+1, n)
		}
	}
	for _, l := range letters[:down] {
		if at[l] != 2 {
			p.find("20 frame", "the field %s is marked %d times", l, at[l])
		}
	}
}

// corner is the title block: from the vertical wide line that is farthest to
// the left on the frame's lower side, to the frame's lower right corner.
func (p *board) corner() draw.Rect {
	out := draw.Rect{X0: p.wide - 10, Y0: 10, X1: p.wide - 10, Y1: 10}
	for _, l := range p.out {
		upright := math.Abs(l.a.X-l.b.X) < hair && math.Abs(min(l.a.Y, l.b.Y)-10) < hair
		if l.layer == draw.Border.String() && upright && math.Abs(l.width-p.series()[2]) < hair && l.a.X > 20+hair && l.a.X < out.X0 {
			out.X0, out.Y1 = l.a.X, max(l.a.Y, l.b.Y)
		}
	}
	return out
}

// block checks the title block of page n of so many: the mandatory fields of
// ISO 7200 and what this project asks for, each once and within it.
func (p *board) block(n, of int) {
	box := p.corner()
	if box.W() < 100 || box.W() > widestTile+hair {
		p.find("29 title block", "it is %.1f mm wide", box.W())
	}
	count := map[string]int{}
	for _, w := range p.words {
		if box.Contains(w.corner[0]) && box.Contains(w.corner[2]) {
			count[w.text]++
		}
	}
	want := append([]string{fmt.Sprintf("%d of %d", n, of), "Revision", "Status", "Scale", "Paper", "Units"}, iso7200...)
	for _, field := range want {
		if count[field] != 1 {
			p.find("29 title block", "%q stands there %d times", field, count[field])
		}
	}
	paper := map[string][2]float64{"A4": {210, 297}, "A3": {420, 297}, "A2": {594, 420}, "A1": {841, 594}, "Letter": {215.9, 279.4}, "Tabloid": {431.8, 279.4}}
	known := 0
	for name, size := range paper {
		if count[name] == 1 {
			known++
			if math.Abs(size[0]-p.wide) > 0.01 || math.Abs(size[1]-p.tall) > 0.01 {
				p.find("29 title block", "it says %s on paper of %.1f by %.1f", name, p.wide, p.tall)
			}
		}
	}
	if known != 1 {
		p.find("29 title block", "it names %d sizes of paper", known)
	}
	units := 0
	for text := range count {
		if strings.Contains(text, "millimetres") || strings.Contains(text, "feet and inches") {
			units++
		}
	}
	if units != 1 {
		p.find("14 units", "the block says them %d times", units)
	}
}

// ways checks that the title of each view from a side says from where it is
// seen, and that a plan shows on which side the house is.
func (p *board) ways() {
	all := ""
	for _, w := range p.words {
		all += w.text + "\n"
	}
	for _, w := range p.words {
		if !titleScale.MatchString(w.text) {
			continue
		}
		if strings.Contains(w.text, "elevation") && !strings.Contains(all, "seen ") {
			p.find("24 way of looking", "%q, and nothing says from where", w.text)
		}
		if strings.Contains(w.text, "Framing plan") && !strings.Contains(all, "this side") && !strings.Contains(all, "front") {
			p.find("24 way of looking", "%q, and nothing says where the house is", w.text)
		}
	}
}
