package sheets

import (
	"slices"
	"strconv"
	"sync"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// buildTitle is the title of the sheets that say how the frame is built.
const buildTitle = "Order of work"

// buildStep is one step of the order of work: which timbers it puts up, how it
// is pictured and what is said of it. The steps are the lines of buildSteps; a
// new one is one line there. A step without a when is in every job.
type buildStep struct {
	title string
	when  func(m *maker) bool
	adds  func(m *maker, b frame.Member) bool // what it puts up; nil: nothing
	view  stepView
	says  func(m *maker) []string   // two to five sentences, as said aloud
	hold  func(m *maker) string     // what waits for what; follows "Hold"
	care  func(m *maker) string     // a caution; may be nil
	table func(m *maker) draw.Table // to fill in on site, in a cell after the step; may be nil
}

// stepView is how a step is pictured.
type stepView struct {
	see   func(m *maker, s stage) picture
	over  func(c *buildCell, p *page) // drawn after the picture; may be nil
	marks func(c *buildCell, p *page) // words that look for a free place; may be nil
	pad   func(m *maker) draw.Rect    // more room at each side for marks, mm on paper; may be nil
	alike bool                        // the views that are alike share their bounds, so that the frame grows in its place
}

// stage is what stands after a step.
type stage struct {
	roof   bool                      // its parts show
	fresh  func(b frame.Member) bool // put up in this step
	stands func(b frame.Member) bool // put up in this step or before
}

// buildSheets lays out the order of work.
func (m *maker) buildSheets() []draft {
	var cells []sheetCell
	for _, c := range m.buildCells() {
		cells = append(cells, c)
		if c.step.table != nil {
			cells = append(cells, &tableCell{table: c.step.table(m)})
		}
	}
	var out []draft
	for _, s := range m.cellSheets(cells) {
		out = append(out, draft{buildTitle, []string{"build"}, s})
	}
	return out
}

// buildCells are the steps that this job has, numbered from 1, with their
// pictures.
func (m *maker) buildCells() []*buildCell {
	holes := *m
	holes.scene = m.withHoles()
	var done []buildStep
	var out []*buildCell
	for _, s := range buildSteps() {
		if s.when != nil && !s.when(m) {
			continue
		}
		done = append(done, s)
		c := &buildCell{maker: m, number: len(done), step: s, stage: m.stage(slices.Clone(done))}
		c.hold = s.hold(m)
		if s.care != nil {
			c.care = s.care(m)
		}
		c.says = s.says(m)
		out = append(out, c)
	}
	var wait sync.WaitGroup
	for _, c := range out { // the pictures take the time; none needs another
		wait.Go(func() {
			c.pic = c.step.view.see(&holes, c.stage)
			c.pic.faint = func(b frame.Member) bool { return !c.stage.fresh(b) }
		})
	}
	wait.Wait()
	shareBounds(out)
	return out
}

// stage is what stands after the last of the steps.
func (m *maker) stage(done []buildStep) stage {
	adds := func(s buildStep, b frame.Member) bool { return s.adds != nil && s.adds(m, b) }
	last := done[len(done)-1]
	return stage{
		fresh: func(b frame.Member) bool { return adds(last, b) },
		stands: func(b frame.Member) bool {
			for _, s := range done {
				if adds(s, b) {
					return true
				}
			}
			return false
		},
	}
}

// shareBounds gives the pictures that are to look alike one outline, so that
// the frame grows in its place from step to step.
func shareBounds(cells []*buildCell) {
	shared := draw.EmptyRect()
	for _, c := range cells {
		c.bounds = c.pic.all
		if c.step.view.alike {
			shared = shared.Union(c.pic.all)
		}
	}
	for _, c := range cells {
		if c.step.view.alike {
			c.bounds = shared
		}
	}
}

// buildCell is a step as it stands on the sheet: its picture at the left, its
// words at the right.
//
//	┌──────────────┬──────────────────┐
//	│              │ (3) Title        │
//	│   picture    │ sentences        │
//	│              │ ┌Hold┬─────────┐ │
//	│              │ └────┴─────────┘ │
//	│              │ Care  caution    │
//	└──────────────┴──────────────────┘
type buildCell struct {
	*maker
	number     int
	step       buildStep
	stage      stage
	pic        picture
	bounds     draw.Rect // of the picture, mm of the model
	says       []string
	hold, care string
	box        draw.Rect // where it stands
	view       *draw.View
}

// The look of a cell, mm on paper (own).
const (
	cellLeast    = 150.0 // width under which picture and words no longer stand side by side
	cellGap      = 7.0   // between two cells
	pictureShare = 0.43  // of the width, for the picture, at least
	wordsMost    = 115.0 // for the words: longer lines read badly
	pictureLow   = 46.0  // least height of a picture
	pictureRim   = 4.0   // kept free round a picture, for its marks
	tagWidth     = 12.0  // of "Hold" and "Care"
	holdPad      = 1.5   // from the box of a hold to its words
	wordsGap     = 2.4   // from one part of the words to the next
	numberRing   = 3.6   // radius of the ring round the number
)

// wordsWidth is the width of the words in a cell of the given width; the picture
// takes the rest.
func wordsWidth(cell float64) float64 { return min(cell*(1-pictureShare), wordsMost) - wordsGap }

// holdNotes and careNotes are the words beside their tags.
func (c *buildCell) holdNotes(w float64) draw.NoteBlock {
	return draw.NoteBlock{Notes: []string{c.hold}, Width: w - tagWidth - 2*holdPad}
}

func (c *buildCell) careNotes(w float64) draw.NoteBlock {
	return draw.NoteBlock{Notes: []string{c.care}, Width: w - tagWidth - 2*holdPad}
}

func (c *buildCell) saidNotes(w float64) draw.NoteBlock {
	return draw.NoteBlock{Notes: c.says, Width: w}
}

// height is the least height of the cell at a width.
func (c *buildCell) height(width float64) float64 {
	w := wordsWidth(width)
	_, said := c.saidNotes(w).Size()
	_, hold := c.holdNotes(w).Size()
	h := 2*numberRing + wordsGap + said + wordsGap + hold + 2*holdPad
	if c.care != "" {
		_, care := c.careNotes(w).Size()
		h += wordsGap + care
	}
	return max(h, pictureLow)
}

func (c *buildCell) stand(box draw.Rect) { c.box = box }

// pictureBox is where the picture may stand.
func (c *buildCell) pictureBox() draw.Rect {
	b := c.box
	b.X1 -= wordsWidth(b.W()) + wordsGap
	return b
}

// draw puts the cell in its box.
func (c *buildCell) draw(p *page) {
	c.drawPicture(p)
	c.drawWords(p)
}

// drawPicture draws the picture as large as its box allows.
func (c *buildCell) drawPicture(p *page) {
	box, b := c.pictureBox().Inset(pictureRim), c.bounds
	if c.step.view.pad != nil {
		pad := c.step.view.pad(c.maker)
		box = draw.Rect{X0: box.X0 + pad.X0, Y0: box.Y0 + pad.Y0, X1: box.X1 - pad.X1, Y1: box.Y1 - pad.Y1}
	}
	k := min(box.W()/b.W(), box.H()/b.H())
	at := geom.P(box.X0+(box.W()-b.W()*k)/2, box.Y0+(box.H()-b.H()*k)/2)
	c.view = &draw.View{Name: c.step.title, Axes: c.pic.axes, Scale: k, Base: geom.P(b.X0, b.Y0), At: at}
	c.pic.paint(p.sheet, c.view)
	if c.step.view.over != nil {
		c.step.view.over(c, p)
	}
}

// drawWords letters the step.
func (c *buildCell) drawWords(p *page) {
	s := p.sheet
	w := wordsWidth(c.box.W())
	x, y := c.box.X1-w, c.box.Y1
	ring := geom.P(x+numberRing, y-numberRing)
	s.Circle(draw.Style{Layer: draw.Notes, Pen: draw.Middle}, ring, numberRing)
	title := draw.Text{Layer: draw.Notes, Height: draw.TitleHeight, Bold: true}
	number := title
	number.String, number.Align, number.At = strconv.Itoa(c.number), draw.Centred, geom.P(ring.X, ring.Y-draw.TitleHeight/2)
	if c.number > 9 {
		number.Height, number.At.Y = draw.NoteHeight, ring.Y-draw.NoteHeight/2
	}
	title.String, title.At = c.step.title, geom.P(x+2*numberRing+wordsGap/2, ring.Y-draw.TitleHeight/2)
	s.AddText(number)
	s.AddText(title)
	y -= 2*numberRing + wordsGap
	y = c.saidNotes(w).Draw(s, geom.P(x, y)).Y0 - wordsGap
	y = c.drawHold(p, geom.P(x, y), w)
	if c.care != "" {
		y -= wordsGap
		tag(s, geom.P(x+holdPad, y), "Care")
		c.careNotes(w).Draw(s, geom.P(x+holdPad+tagWidth, y))
	}
}

// drawHold draws the hold point in its box and returns the lower edge.
func (c *buildCell) drawHold(p *page, at geom.Pt, w float64) float64 {
	s, n := p.sheet, c.holdNotes(w)
	_, h := n.Size()
	box := draw.Rect{X0: at.X, Y0: at.Y - h - 2*holdPad, X1: at.X + w, Y1: at.Y}
	s.Rect(draw.Style{Layer: draw.Notes, Pen: draw.Middle}, box)
	tag(s, at.Add(geom.P(holdPad, -holdPad)), "Hold")
	n.Draw(s, at.Add(geom.P(holdPad+tagWidth, -holdPad)))
	return box.Y0
}

// tag letters a word in bold with its top left at the point.
func tag(s *draw.Sheet, at geom.Pt, word string) {
	s.AddText(draw.Text{Layer: draw.Notes, At: at.Sub(geom.P(0, draw.NoteHeight)), Height: draw.NoteHeight, Bold: true, String: word})
}

// finish adds the marks in the picture.
func (c *buildCell) finish(p *page) {
	if c.step.view.marks != nil {
		c.step.view.marks(c, p)
	}
}
