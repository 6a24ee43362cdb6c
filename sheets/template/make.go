package template

import (
	"fmt"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// Templates is what a job's templates are drawn on: the pages to print, and
// each template whole.
type Templates struct {
	Pages *draw.Set // the first page says how to check the others
	Whole *draw.Set // a sheet for each template, numbered T01 on, as large as it is
	True  *draw.Set // the pages as they come out of the printer: Pages, unless they are corrected for one

	pieces  []*piece
	margin  float64 // that the printer needs, mm
	stretch geom.Pt // what the pages are drawn larger by
}

// Make draws the templates of a frame.
func Make(f *frame.Frame) (Templates, error) {
	figures, fine := f.Job.Format(), f.Job.Format()
	figures.Step, figures.Fraction = 0.5, 32
	fine.Step, fine.Fraction = 0.1, 64
	m := &maker{frame: f, job: f.Job, figures: figures, fine: fine, hardware: f.Hardware()}
	var err error
	if m.page, err = newLayout(f.Job, 0); err != nil {
		return Templates{}, err
	}
	if f.Job.Templates.Paper == "" {
		m.page.free.Y0 -= rollMost // any template fits the length of a roll
	}
	m.collect()
	whole := m.whole()
	if f.Job.Templates.Paper == "" {
		if m.page, err = newLayout(f.Job, m.longest()); err != nil {
			return Templates{}, err
		}
	}
	leaves := m.pack()
	out := Templates{
		Pages: m.pages(leaves, m.page.stretch), Whole: whole,
		pieces: m.pieces, margin: m.job.Templates.Margin, stretch: m.page.stretch,
	}
	if out.True = out.Pages; m.job.Printer.Corrects() {
		out.True = m.pages(leaves, geom.P(1, 1))
	}
	return out, nil
}

// rollMost is the longest template that a roll is asked for, mm.
const rollMost = 3000

// collect makes all templates, in the order in which they are numbered.
func (m *maker) collect() {
	known := map[string]*piece{}
	seen := map[string]bool{}
	for _, t := range m.frame.Members {
		key := t.Mark + "/" + string(t.Hand)
		if seen[key] || t.Kind == frame.KindFooting {
			continue
		}
		seen[key] = true
		for _, w := range worksOf(t) {
			p := m.workPiece(w)
			if old := known[p.key]; old != nil {
				old.join(p.uses[0])
				continue
			}
			known[p.key] = p
			m.pieces = append(m.pieces, p)
		}
	}
	for _, x := range m.crossings() {
		m.pieces = append(m.pieces, m.crossingPieces(x)...)
	}
	clear(seen)
	for _, t := range m.frame.Members {
		if key := t.Mark + "/" + string(t.Hand); !seen[key] {
			seen[key] = true
			m.pieces = append(m.pieces, m.strapPieces(t)...)
		}
	}
	m.pieces = append(m.pieces, m.bevelCard()...)
	clear(seen)
	for i, t := range m.frame.Members {
		if key := t.Mark + "/" + string(t.Hand); !seen[key] {
			seen[key] = true
			m.pieces = append(m.pieces, m.strips(i)...)
		}
	}
	var all []*piece
	for _, p := range m.pieces {
		p.number = pieceNumber(len(m.pieces)) // as wide as its own
		all = append(all, m.fitted(p)...)
	}
	m.pieces = all
	for i, p := range m.pieces {
		p.number = pieceNumber(i + 1)
		p.letter(nil)
	}
}

func pieceNumber(n int) string { return fmt.Sprintf("T%02d", n) }

// join notes another place of a template.
func (p *piece) join(u use) {
	for i := range p.uses {
		if p.uses[i].mark == u.mark {
			p.uses[i].readings = append(p.uses[i].readings, u.readings...)
			return
		}
	}
	p.uses = append(p.uses, u)
}

// words are what stands over a template: where it goes, and what to do.
func (m *maker) words(p *piece) []string {
	out := m.readings(p)
	if p.plan.datum != "" {
		out = append(out, "The datum cross is "+p.plan.datum+".")
	}
	out = append(out, p.plan.notes...)
	if note := p.unseen(); note != "" {
		out = append(out, note)
	}
	if p.ticked {
		out = append(out, m.bandNote(p.plan.bands[0]))
	}
	return out
}

// unseen says how the faces are marked that the cut crosses and that the template
// does not show.
func (p *piece) unseen() string {
	all := p.plan.all
	if all == nil && len(p.plan.options) > 0 {
		all = p.plan.options[0]
	}
	var names []string
	side, bottom := "", false
	for _, f := range unfold(p.work.member, all, p.plan.cross) {
		shown := slices.ContainsFunc(p.flaps, func(g flap) bool { return g.face == f.face })
		if shown || len(p.work.on(f).lines) == 0 {
			continue
		}
		name := p.say.faceName(p.work.member.Kind, f.face)
		names = append(names, name)
		if bottom = bottom || f.face == frame.FaceBottom; f.plane.N.Y != 0 {
			side = name
		}
	}
	what := strings.Join(names, " and the ")
	switch {
	case len(names) == 0:
		return ""
	case side != "" && bottom: // as wraps leaves out only where that is true
		return fmt.Sprintf("Not on the paper: the %s. Square the cut across the bottom, then rule it on the %s between the ends of its lines.", what, side)
	}
	return fmt.Sprintf("Not on the paper: the %s. Rule the cut there between the lines on the faces beside it.", what)
}

// readings say where the datum cross goes, for every stick.
func (m *maker) readings(p *piece) []string {
	var out []string
	for _, u := range p.uses {
		var at []string
		for _, r := range u.readings {
			at = append(at, m.figures.Length(r))
		}
		out = append(out, fmt.Sprintf("%s, %d off: datum cross at %s from the %s.", u.mark, u.quantity, strings.Join(at, ", "), u.from))
	}
	return out
}

// unletter takes the words off again that letter set, with their arrows.
func (p *piece) unletter() {
	p.ink.words = p.ink.words[:p.bare[0]]
	p.ink.lines = p.ink.lines[:p.bare[1]]
	p.ink.fills = p.ink.fills[:p.bare[2]]
}

// longest is the length of page that the longest template needs on a roll.
func (m *maker) longest() float64 {
	long := 0.0
	for _, p := range m.pieces {
		k, _ := m.block(p)
		box := k.bounds()
		w, h := box.W(), box.H()
		if w > m.page.free.W() || h > w && h <= m.page.free.W() {
			w, h = h, w
		}
		long = max(long, h)
	}
	return long + barBelow + barRoom + headDepth + 2*(m.job.Templates.Margin+penRoom) + 1
}

// wholeMargin is the paper round a whole template, mm.
const wholeMargin = 5

// whole draws each template on a sheet of its own size.
func (m *maker) whole() *draw.Set {
	set := &draw.Set{Meta: m.meta()}
	for _, p := range m.pieces {
		k := p.under(p.headWidth(), p.head)
		box := k.bounds().Expand(wholeMargin)
		s := &draw.Sheet{Number: p.number, Title: p.title, Paper: draw.Paper{Name: "full size", Width: box.W(), Height: box.H(), Fine: true}}
		board{sheet: s, stretch: geom.P(1, 1)}.put(k, lie{move: geom.P(-box.X0, -box.Y0)}, s.Paper.Sheet(), false)
		set.Sheets = append(set.Sheets, s)
	}
	return set
}

// pages draws the leaves, larger by stretch across and up.
func (m *maker) pages(leaves []*leaf, stretch geom.Pt) *draw.Set {
	set := &draw.Set{Meta: m.meta()}
	leaves = append([]*leaf{m.firstLeaf(leaves)}, leaves...)
	for i, l := range leaves {
		s := &draw.Sheet{Number: fmt.Sprint(i + 1), Title: l.title(), Paper: m.page.paper}
		b := board{sheet: s, middle: m.page.middle(), stretch: stretch}
		for _, p := range l.placed {
			b.put(p.ink, p.lie, p.clip, p.tile)
		}
		b.put(m.page.bars(), lie{}, m.page.print, false)
		b.put(m.pageHead(i+1, len(leaves)), lie{}, m.page.print, false)
		set.Sheets = append(set.Sheets, s)
	}
	return set
}

func (m *maker) meta() draw.Meta {
	p := m.job.Project
	return draw.Meta{
		Title: p.Title, Subject: "Full-size templates of a timber frame", Author: p.DrawnBy,
		Date: p.Date, JobFile: m.job.File, JobText: m.job.Text,
	}
}

// say is what the frame calls ends and faces.
func (m *maker) say() naming { return naming{m.frame} }

// rearName is what the rafters' lengths are measured from.
func (m *maker) rearName() string {
	if k := m.frame.Setout.Rear(); !k.OnWall {
		return k.Short
	}
	return "wall"
}
