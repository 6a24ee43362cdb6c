package sheets

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"sync"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/measure"
)

// maker makes the sheets of one frame.
type maker struct {
	frame   *frame.Frame
	job     *frame.Job
	scene   *scene
	figures measure.Format
	hand    draw.Hand
	details []detail // numbered from 1 in this order
	batches []frame.Batch
}

// draft is a sheet that is laid out but not yet drawn: its number, and those
// of the sheets that it points at, are not known before all are laid out.
type draft struct {
	title  string // e.g. "Framing plan"
	topics []string
	lay    laid
}

// laid is what a sheet holds, each thing in its place.
type laid interface{ draw(p *page) }

// refs says on which sheet a topic is: "plan", "section A", "detail 3".
type refs map[string]string

const detailTopicPrefix = "detail "

// detailTopic and sectionTopic name the topics of marks.
func detailTopic(n int) string          { return "detail " + strconv.Itoa(n) }
func sectionTopic(letter string) string { return "section " + letter }

// Make draws the whole set of a frame.
func Make(f *frame.Frame) (*draw.Set, error) {
	m, err := newMaker(f)
	if err != nil {
		return nil, err
	}
	return m.drawAll(m.drafts()), nil
}

func newMaker(f *frame.Frame) (*maker, error) {
	paper, ok := draw.PaperByName(f.Job.Paper.Size)
	if !ok {
		return nil, fmt.Errorf("no paper is called %q; there are %v", f.Job.Paper.Size, draw.PaperNames())
	}
	if min(paper.Width, paper.Height) < uprightSide {
		paper = paper.Portrait()
	}
	figures := measure.Format{}
	if f.Job.Units == frame.FeetInches {
		figures.Units = measure.FeetInches
	}
	batches, err := f.Order()
	if err != nil {
		return nil, err
	}
	return &maker{
		frame: f, job: f.Job, scene: newScene(f), figures: figures, batches: batches,
		hand: draw.Hand{Paper: paper, Figures: figures, Feet: figures.Units == measure.FeetInches},
	}, nil
}

// uprightSide is the short side, mm, below which a sheet stands upright: on A4
// and Letter the title block takes the whole width (ISO 5457 has A4 only so).
const uprightSide = 250

// drafts lays out all sheets, in their order. A new kind of sheet is one file
// and one line here.
func (m *maker) drafts() []draft {
	m.details = m.findDetails()
	kinds := []func() []draft{
		m.planSheets,
		m.roofSheets,
		m.setoutSheets,
		m.setoutWallSheets,
		m.elevationSheets,
		m.sectionSheets,
		m.detailSheets,
		m.buildSheets,
		m.memberSheets,
		m.listSheets,
	}
	var picture *pictureBlock
	laid := make([][]draft, len(kinds))
	var wait sync.WaitGroup
	wait.Go(func() { picture = m.pictureBlock() })
	for i, sheets := range kinds { // none needs another
		wait.Go(func() { laid[i] = sheets() })
	}
	wait.Wait()
	all := slices.Concat(laid...)
	return append(m.coverSheets(picture, all), all...)
}

// lay arranges blocks on a sheet at the largest of the scales that fits, trying
// the grids in order at each. If none fits, every block of the first grid gets
// a sheet of its own, or as many as its words need.
func (m *maker) lay(title string, topics []string, scales []float64, grids ...grid) []draft {
	if a, ok := arrange(m.hand, m.room(title), scales, grids...); ok {
		return []draft{{title, topics, a}}
	}
	var out []draft
	for _, row := range grids[0] {
		for _, b := range row {
			if b == nil {
				continue
			}
			out = append(out, m.layAlone(title, topics, scales, b)...)
		}
	}
	return out
}

// layAlone puts a block on a sheet of its own: as it is, else closed up, else,
// if it is of words, on as many as it takes.
func (m *maker) layAlone(title string, topics []string, scales []float64, b block) []draft {
	room := m.room(title)
	a, ok := arrange(m.hand, room, scales, grid{{b}})
	if v, closes := b.(interface{ close() }); !ok && closes {
		v.close()
		a, ok = arrange(m.hand, room, scales, grid{{b}})
	}
	if !ok {
		if words := wordsOf(b); len(words) > 0 {
			return m.flowed(title, topics, words)
		}
		a = m.squeeze(b, room, scales)
	}
	return []draft{{title, topics, a}}
}

// flowed lets words and tables flow down columns, on as many sheets as that
// takes.
func (m *maker) flowed(title string, topics []string, words []block) []draft {
	fl := newFlow(m.hand, m.room(title))
	for _, b := range words {
		fl.add(b)
	}
	var out []draft
	for _, page := range fl.sheets {
		out = append(out, draft{title, topics, page})
	}
	return out
}

// squeeze places a block that fits a sheet at no scale, so that the drawing is
// not withheld and the audit reports what stands out: at the largest scale at
// which hardly less of it does than at any other.
func (m *maker) squeeze(b block, sp draw.Space, scales []float64) arrangement {
	const hardly = 1.0 // mm on paper
	free := rooms(sp)[0]
	var all []placing
	least := math.Inf(1)
	over := func(p placing) float64 { return max(0, p.w-free.W()) + max(0, p.h-free.H()) }
	for _, scale := range scales {
		p := grid{{b}}.measure(m.hand, scale)
		all = append(all, p)
		least = min(least, over(p))
	}
	for _, p := range all {
		if over(p) <= least+hardly {
			return arrangement{p, p.places(geom.P(free.X0, free.Y1), geom.Pt{})}
		}
	}
	return arrangement{}
}

// scales are those to try for views of the whole frame: the job's own if it
// states one, else all from the largest given.
func (m *maker) scales(largest float64) []float64 {
	if n := m.job.Paper.Scale; n > 0 {
		return append([]float64{1 / n}, scalesFrom(1/n)...)
	}
	return scalesFrom(largest)
}

// room is what the frame and title block of a sheet leave free.
func (m *maker) room(title string) draw.Space {
	const manySheets = 99 // the block's size must not change with the count
	return draw.FrameSpace(m.hand.Paper, m.titleBlock(draft{title: title}, manySheets, manySheets))
}

// drawAll numbers the drafts and draws them.
func (m *maker) drawAll(drafts []draft) *draw.Set {
	set := &draw.Set{Meta: m.meta()}
	where := refs{}
	for i, d := range drafts {
		for _, t := range d.topics {
			if _, ok := where[t]; !ok {
				where[t] = sheetNumber(i)
			}
		}
	}
	set.Sheets = make([]*draw.Sheet, len(drafts))
	var wait sync.WaitGroup
	for i, d := range drafts {
		wait.Go(func() { set.Sheets[i] = m.drawSheet(d, i, len(drafts), where) })
	}
	wait.Wait()
	return set
}

// drawSheet draws the i-th of n sheets.
func (m *maker) drawSheet(d draft, i, n int, where refs) *draw.Sheet {
	s := &draw.Sheet{Number: sheetNumber(i), Title: d.title, Paper: m.hand.Paper}
	block := m.titleBlock(d, i, n)
	s.DrawFrame(block)
	framed := len(s.Items)
	d.lay.draw(&page{sheet: s, hand: m.hand, placer: draw.NewPlacer(s, m.hand), refs: where})
	if !toScale(s) { // which is known only now
		block.Scale = "not to scale"
		again := &draw.Sheet{Number: s.Number, Title: s.Title, Paper: s.Paper}
		again.DrawFrame(block)
		s.Items = append(again.Items, s.Items[framed:]...)
	}
	return s
}

// toScale reports whether a sheet has a view that can be measured.
func toScale(s *draw.Sheet) bool {
	return slices.ContainsFunc(s.Views, func(v *draw.View) bool { return v.Name != pictureName })
}

// meta is what the files say of themselves.
func (m *maker) meta() draw.Meta {
	p := m.job.Project
	return draw.Meta{
		Title: p.Title, Subject: "Dimensioned drawings of a timber frame", Author: p.DrawnBy,
		Date: p.Date, JobFile: m.job.File, JobText: m.job.Text,
	}
}

// sheetNumber is the number of the i-th sheet: A00 is the cover.
func sheetNumber(i int) string { return fmt.Sprintf("A%02d", i) }

// titleBlock fills the block of the i-th of n sheets.
func (m *maker) titleBlock(d draft, i, n int) draw.TitleBlock {
	p := m.job.Project
	b := draw.TitleBlock{
		Owner: p.Owner, Identification: identification(p.Number, sheetNumber(i)), Date: p.Date,
		Sheet: i + 1, Sheets: n, Title: d.title, Approved: p.ApprovedBy, Creator: p.DrawnBy,
		Type: "Construction drawing", Status: p.Status, Scale: "as shown", Units: m.unitName(),
		Job: p.Title, Client: p.Client, Site: p.Site,
	}
	for _, r := range p.Revisions {
		b.Revisions = append(b.Revisions, draw.Revision{Mark: r.Rev, Date: r.Date, Words: r.Note, By: r.By})
		b.Revision = r.Rev
	}
	return b
}

func identification(job, sheet string) string {
	if job == "" {
		return sheet
	}
	return job + "-" + sheet
}

func (m *maker) unitName() string {
	if m.job.Units == frame.FeetInches {
		return "feet and inches"
	}
	return "millimetres"
}
