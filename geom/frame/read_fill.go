package frame

import (
	"fmt"
	"slices"
	"strings"
)

// filler sets the defaults that hang on other values and checks values against
// each other.
type filler struct {
	*draft
	errs Errors
}

// wallMargin is how much of the wall is drawn beyond the plate.
const wallMargin = 600

// The sizes of packers where the job gives only their thickness: a block that
// spans a stud, and as high on a post as a hand is long. Common practice, no
// source.
const (
	packerWidth  = 60
	packerHeight = 150
)

// mostStuds guards against a slip of the decimal point.
const mostStuds = 2000

// fill must find every key that is needed in its place.
func (f *filler) fill() {
	f.fillSite()
	f.fillTimber()
	f.fillPlateAndBeam()
	f.fillWall()
	f.fillPosts()
	f.fillRoof()
	f.fillBraces()
	f.fillTrim()
	f.fillOrder()
	f.fillTemplates()
	for _, h := range f.given.Habits() {
		if f.relevant(h.Path) {
			f.habits = append(f.habits, h)
		}
	}
}

// relevant reports whether the drawings show what a default says.
func (f *filler) relevant(path string) bool {
	any := func(is func(Post) bool) bool { return slices.ContainsFunc(f.Posts.At, is) }
	switch {
	case strings.HasPrefix(path, "posts.fixing."):
		return any(func(p Post) bool { return p.Wall != "" })
	case strings.HasPrefix(path, "posts.footing.") && !any(Post.Dug):
		return false
	case strings.HasPrefix(path, "posts.shoe."):
		return any(func(p Post) bool { return !p.Dug() })
	case path == "posts.footing.stand":
		return any(func(p Post) bool { return p.Base == OnStirrup })
	case strings.HasPrefix(path, "templates."):
		return false // the pages of templates tell it themselves
	case strings.HasPrefix(path, "adhesive."):
		return f.Posts.Rod.Diameter > 0 && f.Posts.Rod.IntoPost > 0
	case path == "wall.cladding":
		return f.Wall.Kind.of().studs() != "" && f.Wall.Kind != OnVeneer
	case path == "wall.cavity":
		return f.Wall.Kind == OnVeneer
	case strings.HasPrefix(path, "wall.cut_back."):
		return f.Wall.Kind == CutBack
	case path == "braces.housing" || path == "braces.clearance":
		return f.Braces.Joint == BraceHoused
	case strings.HasPrefix(path, "braces.screws."):
		return f.Braces.Joint != BraceLapped
	case strings.HasPrefix(path, "braces.bolt."):
		return f.Braces.Joint == BraceLapped
	case path == "plate.housing":
		return !f.Freestanding() && f.Plate.Hold.housed()
	case path == "rear_beam.housing":
		return f.Freestanding() && f.Rear.Hold.housed()
	case strings.HasPrefix(path, "plate."):
		return !f.Freestanding()
	case path == "wall.cladding":
		return !f.Freestanding()
	case path == "beam.housing":
		return f.Beam.Hold.housed()
	case path == "rafters.clearance":
		return f.rearHold().housed() || f.Beam.Hold.housed()
	case path == "battens.check.clearance":
		return f.Battens.Lie == LieChecked
	case strings.HasPrefix(path, "posts.bolts."):
		return f.Posts.Meet.RunsUp()
	case path == "posts.clearance":
		return f.Posts.Meet.closed()
	case strings.HasPrefix(path, "posts.bracket."):
		return f.Posts.Meet.Meeting == OnBracket
	case path == "posts.chamfer":
		return f.Posts.Meet.Meeting != OnBracket
	case path == "posts.footing.pad":
		return any(func(p Post) bool { return p.Base == InConcrete })
	}
	return true
}

// rearHold is how the rafters are held at their upper ends.
func (j *Job) rearHold() Hold {
	if j.Freestanding() {
		return j.Rear.Hold
	}
	return j.Plate.Hold
}

func (f *filler) fillSite() {
	if f.Paper.Size == ansiB {
		f.Paper.Size = "Tabloid"
	}
	f.Site.NorthGiven = f.Given("site.north")
	for i, s := range []Side{Left, Right, Out, Rear} {
		if f.Given("site.boundaries." + string(s)) {
			f.Site.Boundaries = append(f.Site.Boundaries, Boundary{s, f.boundaries[i]})
		}
	}
	f.Basis = append(f.basis[:], f.others...)
}

// fillTimber gives each kind of member what the job's timber says, but for
// what it says itself.
func (f *filler) fillTimber() {
	for _, m := range []struct {
		path string
		t    *Timber
	}{
		{"plate", &f.Plate.Timber}, {"rear_beam", &f.Rear.Timber}, {"beam", &f.Beam.Timber}, {"posts", &f.Posts.Timber},
		{"rafters", &f.Rafters.Timber}, {"battens", &f.Battens.Timber}, {"laths", &f.Laths.Timber},
		{"slats", &f.Slats.Timber}, {"slats.cleats", &f.Slats.Cleats.Timber},
		{"braces", &f.Braces.Timber}, {"blocking", &f.Blocking.Timber}, {"fascia", &f.Fascia.Timber}, {"valance", &f.Valance.Timber},
	} {
		t := m.t
		inherit := func(key string, to *string, from string) {
			if !f.Given(m.path + ".timber." + key) {
				*to = from
			}
		}
		inherit("species", &t.Species, f.timber.Species)
		inherit("grade", &t.Grade, f.timber.Grade)
		inherit("treatment", &t.Treatment, f.timber.Treatment)
		inherit("finish", &t.Finish, f.timber.Finish)
		t.DensityGiven = f.Given(m.path+".timber.density") || f.Given("timber.density")
		if !f.Given(m.path + ".timber.density") {
			t.Density = f.timber.Density
		}
		if t.Density == 0 {
			t.Density = softwood
		}
	}
}

// softwood is the density of softwood treated against decay, dry, kg/m³: from
// memory, no source. Wet from treatment it weighs up to half as much again.
const softwood = 550.0

func (f *filler) fillPlateAndBeam() {
	p, b := &f.Plate, &f.Beam
	p.To = p.From + f.plateLength
	f.Rear.To = f.Rear.From + f.rearLength
	if f.Given("rear_beam.underside") {
		f.Rear.Top = f.rearUnder + f.Rear.Section.Depth
	}
	from, length := p.From, f.plateLength
	if f.Freestanding() {
		from, length = f.Rear.From, f.rearLength
	}
	if f.Given("plate.underside") {
		p.Top = f.underside + p.Section.Depth
	}
	fillPacker(&p.Packer, packerWidth, p.Section.Depth)
	fillFixing(&p.Fixing)
	if p.Fixing.Rows == Staggered && p.Fixing.RowEdge == 0 {
		p.Fixing.RowEdge = p.Section.Depth / 4
	}
	if !f.Given("beam.from") {
		b.From = from
	}
	if out := f.fillTurn(length); !f.Given("beam.length") {
		f.beamLength = out
	}
	b.To = b.From + f.beamLength
}

func fillPacker(p *Packer, width, height float64) {
	if p.Thickness == 0 {
		*p = Packer{}
		return
	}
	if p.Width == 0 {
		p.Width = width
	}
	if p.Height == 0 {
		p.Height = height
	}
}

func fillFixing(x *Fixing) {
	if x.Hole == 0 {
		x.Hole = x.Screw
	}
}

func (f *filler) fillWall() {
	w := &f.Wall
	f.fillBacking()
	for i, o := range f.openings {
		o.Kind, o.Name = "window", o.window
		if f.Given(fmt.Sprintf("wall.openings[%d].door", i)) {
			o.Kind, o.Name = "door", o.door
			if !f.Given(fmt.Sprintf("wall.openings[%d].sill", i)) {
				o.Sill = f.Levels.Deck
			}
		}
		w.Openings = append(w.Openings, o.Opening)
	}
	f.fillExtent()
	if !f.Given("wall.studs.first") {
		return
	}
	for i := range mostStuds {
		at := f.studFirst + float64(i)*f.studSpacing
		if at > w.To {
			break
		}
		w.Studs = append(w.Studs, at)
	}
}

// fillBacking leaves only what a wall of its kind has.
func (f *filler) fillBacking() {
	w := &f.Wall
	switch {
	case f.Given("wall.cladding"):
	case w.Kind == OnVeneer || w.Kind.of().studs() == "":
		w.Cladding = 0
	}
	if w.Kind != OnVeneer {
		w.Cavity = 0
	}
	if w.Kind != CutBack {
		w.CutBack = CutAway{}
	}
	if w.Kind != OnFascia {
		w.Fascia = EavesBoard{}
	}
}

// fillExtent lets the wall run past everything on it, up to the returns.
func (f *filler) fillExtent() {
	w := &f.Wall
	from, to := f.Plate.From, f.Plate.To
	if f.Freestanding() {
		from, to = min(f.Rear.From, f.Beam.From), max(f.Rear.To, f.Beam.To)
	}
	for _, o := range w.Openings {
		from, to = min(from, o.From), max(to, o.To)
	}
	from, to = from-wallMargin, to+wallMargin
	for _, r := range w.Returns {
		if r.Side == Left {
			from = r.At
		} else {
			to = r.At
		}
	}
	if !f.Given("wall.from") {
		w.From = from
	}
	if !f.Given("wall.to") {
		w.To = to
	}
}

func (f *filler) fillPosts() {
	rod := &f.Posts.Rod
	if rod.Diameter > 0 && rod.Hole == 0 {
		rod.Hole = rod.Diameter + 2
	}
	if rod.Diameter > 0 && rod.IntoPost == 0 {
		rod.IntoPost = 10 * rod.Diameter
	}
	f.fillMeet()
	for i := range f.Posts.At {
		p := &f.Posts.At[i]
		if !f.Given(f.postPath(i) + ".ground") {
			p.Ground = f.Levels.Ground
			if len(f.Levels.Line) > 0 {
				p.Ground = GroundAt(f.Job, p.Along)
			}
		}
		if p.Dug() {
			p.Shoe = Shoe{}
		} else {
			p.Footing = Footing{}
		}
		if p.Wall == "" {
			p.Packer, p.Fixing = Packer{}, Fixing{}
		}
		fillPacker(&p.Packer, f.Posts.Section.Depth, packerHeight)
		fillFixing(&p.Fixing)
	}
	f.fillRearPosts()
}

// fillRearPosts sets the posts under a rear beam, opposite those under the front
// one unless the job places them.
func (f *filler) fillRearPosts() {
	if !f.Freestanding() {
		return
	}
	rear := f.rearPosts
	if !f.Given("posts.rear") {
		rear = slices.Clone(f.Posts.At)
	}
	for i, p := range rear {
		rear[i].Ground = GroundAt(f.Job, p.Along)
	}
	f.Posts.At, f.Posts.Rear = append(f.Posts.At, rear...), len(rear)
}

// fillMeet drops what the way in which the beam meets the posts has no use for.
func (f *filler) fillMeet() {
	m := &f.Posts.Meet
	m.TopSaid = f.Given("posts.top")
	if m.Bolts.Hole == 0 {
		m.Bolts.Hole = m.Bolts.Diameter + 1
	}
	if !m.RunsUp() {
		m.Bolts = Bolts{}
	}
	if !m.closed() {
		m.Clearance = 0
	}
	switch m.Meeting {
	case OnBracket:
		f.Posts.Chamfer = 0
	default:
		m.Bracket = Bracket{}
	}
}

func (f *filler) fillRoof() {
	switch {
	case f.Given("rafters.inset"):
		f.Rafters.Ends = EndsInset
	case !f.Given("rafters.ends"):
		f.Rafters.Ends = EndsFlush
	}
	if f.Given("rafters.tail.profile") {
		f.Rafters.Tail.Shape = TailProfile
	}
	b := &f.Battens
	if !f.Given("battens.overhang_left") {
		b.OverLeft = f.overhang
	}
	if !f.Given("battens.overhang_right") {
		b.OverRight = f.overhang
	}
	for i := range f.Roof.Downpipes {
		if p := &f.Roof.Downpipes[i]; !f.Given(fmt.Sprintf("roof.downpipes[%d].to", i)) {
			p.To = GroundAt(f.Job, p.Along)
		}
	}
	if b.Lie == LieChecked && !f.Given("battens.check.rafters") {
		b.Check.Rafter = max(0, b.Section.Depth/2-b.Check.Batten)
	}
	switch {
	case f.Given("fall.drop"):
		f.Fall.Kind, f.Fall.Value = FallDrop, f.drop
	case f.Given("fall.slope"):
		f.Fall.Kind, f.Fall.Value = FallRatio, f.oneIn
	default:
		f.Fall.Kind, f.Fall.Value = FallAngle, f.angle
	}
}

// fillTemplates chooses the paper of the templates: the small one of the
// family that the drawings are on.
func (f *filler) fillTemplates() {
	t := &f.Templates
	switch {
	case t.Paper == ansiB:
		t.Paper = "Tabloid"
	case t.Paper != "" || t.Roll > 0:
	case strings.HasPrefix(f.Paper.Size, "A") && !strings.HasPrefix(f.Paper.Size, "ARCH"):
		t.Paper = "A4"
	default:
		t.Paper = "Letter"
	}
}
