package sheets

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/geom"
	"plumbcut/geom/frame"
)

// pictureName is the name of the view that shows the frame as a picture.
const pictureName = "Pictorial view"

// coverSheets lays out the cover, and the sheets of notes that follow where
// not everything finds room: a picture, the list of drawings, what the design
// rests on and what everyone must read first. rest are the sheets after them.
func (m *maker) coverSheets(picture *pictureBlock, rest []draft) []draft {
	const title, notes = "Cover", "Notes"
	fronts := []draft{{title: title, topics: []string{"cover"}}}
	for {
		sheets := m.coverFlow(m.room(title), picture, append(fronts, rest...))
		if len(sheets) <= len(fronts) {
			for i := range sheets {
				fronts[i].lay = sheets[i]
			}
			return fronts[:len(sheets)]
		}
		// The list of drawings has to name the further sheet too.
		fronts = append(fronts, draft{title: notes})
	}
}

// coverFlow fills the cover, and further sheets as needed; all are the drafts
// of the set. The picture is as large as leaves everything on one sheet. If
// that cannot be, what a reviewer looks for is kept on the cover, with as few
// sheets after it as can be.
func (m *maker) coverFlow(sp draw.Space, picture *pictureBlock, all []draft) []flowed {
	var best []flowed
	onCover := false
	for part := pictureMost; part >= pictureLeast; part -= pictureStep {
		sheets, first := m.coverWith(sp, all, picture, part)
		if len(sheets) == 1 {
			return sheets
		}
		if part > pictureUsual {
			continue
		}
		if best == nil || first && !onCover || first == onCover && len(sheets) < len(best) {
			best, onCover = sheets, first
		}
	}
	return best
}

// coverWith fills the cover with the picture taking a part of its height. It
// reports whether all that belongs on the cover is on it.
func (m *maker) coverWith(sp draw.Space, all []draft, picture *pictureBlock, part float64) ([]flowed, bool) {
	fl := newFlow(m.hand, sp)
	fl.across(picture, part)
	if w := m.frame.Warnings; len(w) > 0 {
		fl.add(words("Look at these first", warnings(w)))
	}
	fl.add(words("General notes", m.generalNotes()))
	fl.add(words("Cautions", append(m.roofCautions(), m.cautions()...)))
	if q := m.questions(); len(q) > 0 {
		fl.add(words("Ask before work begins", q))
	}
	fl.add(drawingList(all))
	fl.add(m.keySizes())
	fl.add(m.designBasis())
	fl.add(m.reviewBox())
	first := len(fl.sheets) == 1
	fl.add(m.materials())
	fl.add(m.keyBlock())
	if h := m.job.Habits(); len(h) > 0 {
		fl.add(words("Taken where the job file is silent", habits(h)))
	}
	return fl.sheets, first
}

// The part of the sheet's height that the picture takes: where everything else
// finds room on the cover too, up to the most.
const (
	pictureMost  = 0.66
	pictureUsual = 0.5
	pictureLeast = 0.3
	pictureStep  = 0.04
)

// wordWidth is the width of a column of notes on the cover, mm on paper: some
// fifty characters, the longest line that reads easily.
const wordWidth = 78.0

// pictureBlock is the pictorial view of the finished frame.
func (m *maker) pictureBlock() *pictureBlock {
	ground := math.Inf(1)
	for _, p := range m.job.Posts.At {
		ground = min(ground, p.Ground)
	}
	far := math.Inf(1)
	pic := m.scene.see(look{
		axes: m.pictorial(),
		crop: &geom.Box3{Min: geom.V(-far, -far, ground), Max: geom.V(far, far, far)},
		show: func(s *scene, body int) bool {
			h, house := s.house(body)
			r, roof := s.roof(body)
			return (!house || h.Name != frame.HouseGround) && (!roof || r.Name != frame.RoofSheet)
		},
	})
	words := "The frame as built, seen from outside and above. " + m.setting().around + " drawn light."
	if m.hasRoof() {
		words += " The roof's sheets are left off."
	}
	return &pictureBlock{pic: pic, words: words}
}

// pictorial looks at the frame from outside and above, past a wall that comes
// out at its right.
func (m *maker) pictorial() geom.View {
	azimuth := pictureTurn
	for _, r := range m.job.Wall.Returns {
		if r.Side == frame.Right {
			azimuth = -pictureTurn
		}
	}
	return geom.Axonometric(azimuth, pictureRise)
}

// The direction of the pictorial view: turned enough to show the end, raised
// enough to see between the rafters.
const (
	pictureTurn = 32 * math.Pi / 180
	pictureRise = 24 * math.Pi / 180
)

// pictureBlock is a picture without a scale, fitted to a width.
type pictureBlock struct {
	pic   picture
	words string
}

// The size of the picture, mm on paper, before it is shrunk.
const (
	pictureWidth  = 150.0
	pictureHeight = 120.0
	wordGap       = 5.0
)

func (b *pictureBlock) scale(k float64) float64 {
	return k * min(pictureWidth/b.pic.all.W(), pictureHeight/b.pic.all.H())
}

func (b *pictureBlock) caption(k float64) draw.NoteBlock {
	return draw.NoteBlock{Notes: []string{b.words}, Width: max(wordWidth, b.pic.all.W()*b.scale(k))}
}

func (b *pictureBlock) extent(_ draw.Hand, k float64) draw.Rect {
	s := b.scale(k)
	w, h := b.caption(k).Size()
	return draw.Rect{X0: 0, Y0: -b.pic.all.H()*s - wordGap - h, X1: max(w, b.pic.all.W()*s), Y1: 0}
}

func (b *pictureBlock) draw(p *page, at geom.Pt, k float64) {
	all := b.pic.all
	v := &draw.View{Name: pictureName, Axes: b.pic.axes, Scale: b.scale(k), Base: geom.P(all.X0, all.Y1), At: at}
	b.pic.paint(p.sheet, v)
	b.caption(k).Draw(p.sheet, geom.P(at.X, at.Y-all.H()*v.Scale-wordGap))
}

func (b *pictureBlock) finish(*page) {}

// drawingList names every sheet of the set.
func drawingList(all []draft) block {
	t := draw.Table{Title: "Drawings", Columns: []draw.Column{{Head: "Sheet"}, {Head: "Title", Width: 52}}}
	for i, d := range all {
		n := sheetNumber(i)
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{n, d.title + d.about()}, Link: n})
	}
	return &tableBlock{t}
}

// about tells sheets of one title apart: by the members or the details that
// each holds.
func (d draft) about() string {
	var held []string
	for _, t := range d.topics {
		for _, kind := range []string{memberTopic(""), detailTopicPrefix} {
			if what, ok := strings.CutPrefix(t, kind); ok && !slices.Contains(held, what) {
				held = append(held, what)
			}
		}
	}
	if len(held) == 0 {
		return ""
	}
	return ": " + strings.Join(held, ", ")
}

// keySizes are the figures that everyone asks for first.
func (m *maker) keySizes() block {
	f, s, j := m.figures, m.frame.Setout, m.job
	t := draw.Table{Title: "Key sizes", Columns: []draw.Column{{Head: "What", Width: 49}, {Head: "Figure", Align: draw.End}}}
	add := func(what, figure string) {
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{what, figure}})
	}
	rear, front := m.rear(), m.front()
	add(upperFirst(rear.Name)+", length", f.Length(rear.To-rear.From))
	add(upperFirst(front.Name)+", length", f.Length(front.To-front.From))
	from := upperFirst(m.walling().face)
	if rear.Back {
		from = "Outer face of " + rear.Short
	}
	if left, right := front.Reach(); front.Skewed() {
		add(from+" to outer face of "+front.Short+", left end", f.Length(-front.Cut(left).Outer))
		add(from+" to outer face of "+front.Short+", right end", f.Length(-front.Cut(right).Outer))
	} else {
		add(from+" to outer face of "+front.Short, f.Length(-front.Outer))
	}
	to := "outer face of " + front.Short
	if !front.Skewed() && s.FrontOut() < front.Outer {
		to = "ends of rafters"
	}
	add("Plan area, "+m.setting().area+" to "+to, f.Area(s.Covered))
	add("Top of "+rear.Short+", level", f.Level(rear.Top))
	add("Underside of "+front.Short+", level", f.Level(front.Bottom))
	add("Head height under the "+front.Short, f.Length(s.HeadBeam))
	add("Fall of the rafters", f.Angle(m.frame.Slope.Angle)+", "+f.Slope(m.frame.Slope.Angle))
	add("Posts", fmt.Sprint(len(j.Posts.At)))
	add("Rafters", fmt.Sprintf("%d at %s centres", len(s.Rafters), f.Length(s.Centres)))
	m.layerSizes(add)
	m.roofSizes(add)
	return &tableBlock{t}
}

// designBasis says what others have stated, and asks for the rest.
func (m *maker) designBasis() block {
	t := draw.Table{Title: "Design basis, as stated by others", Columns: []draw.Column{{Head: "What", Width: 22}, {Head: "Stated", Width: 28}, {Head: "By", Width: 28}}}
	for _, b := range m.job.Basis {
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{b.What, stated(b.Value), stated(b.By)}})
	}
	return &tableBlock{t}
}

// reviewBox leaves room for those who answer for the design.
func (m *maker) reviewBox() block {
	const handRoom = " " // an empty row keeps the height of a line of writing
	t := draw.Table{Title: "Reviewed by", Columns: []draw.Column{{Head: "For", Width: 31}, {Head: "Name, licence", Width: 24}, {Head: "Date, signed", Width: 23}}}
	for _, what := range []string{"Shape, by client", "Structure, tie-down", m.setting().fixedTo, "Consent or exempt"} {
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{what, handRoom, handRoom}})
	}
	return &tableBlock{t}
}

// materials says what the members are made of, those alike in one row.
func (m *maker) materials() block {
	t := draw.Table{Title: "Timber", Columns: []draw.Column{{Head: "Marks", Width: 20}, {Head: "Species, grade, treatment, finish", Width: 58}}}
	row := map[string]int{} // by the words
	seen := map[string]bool{}
	for _, b := range m.frame.Members {
		if seen[b.Mark] || b.Kind == frame.KindFooting {
			continue
		}
		seen[b.Mark] = true
		w := timberWords(b.Timber)
		if i, ok := row[w]; ok {
			t.Rows[i].Cells[0] += ", " + b.Mark
			continue
		}
		row[w] = len(t.Rows)
		t.Rows = append(t.Rows, draw.TableRow{Cells: []string{b.Mark, w}})
	}
	return &tableBlock{t}
}
