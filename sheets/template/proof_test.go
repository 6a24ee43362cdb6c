package template_test

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"sync"
	"testing"

	"plumbcut/draw/pdf"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/frame/jobgen"
	"plumbcut/sheets/template"
)

const (
	randomJobs = 60
	longJobs   = 200
)

var long = flag.Bool("long", false, "prove the templates of 200 random jobs rather than 60")

// made is a job and its templates, as a file.
type made struct {
	name     string
	frame    *frame.Frame
	pages    []sheetOfPaper
	patterns []*pattern // read off the pages, the printer's correction undone
	whole    template.Templates
}

func make1(name string, text []byte) (made, error) {
	m := made{name: name}
	job, err := frame.Read(name, text)
	if err != nil {
		return m, err
	}
	if m.frame, err = frame.Build(job); err != nil {
		return m, err
	}
	if m.whole, err = template.Make(m.frame); err != nil {
		return m, err
	}
	var b bytes.Buffer
	if err := pdf.Write(&b, m.whole.Pages, pdf.Options{Flat: true}); err != nil {
		return m, err
	}
	if m.pages, err = readPages(b.Bytes()); err != nil {
		return m, err
	}
	var pages []sheetOfPaper
	for _, s := range m.pages {
		pages = append(pages, s.undo(150/job.Printer.X, 150/job.Printer.Y))
	}
	m.patterns, err = patterns(pages)
	return m, err
}

// job is the text of a job to prove things on.
type job struct {
	name string
	text []byte
}

// jobs lists every example, on sheets and on a roll, and random jobs on all
// sorts of paper, some for a printer that is off.
func jobs() ([]job, error) {
	files, err := filepath.Glob("../../examples/*/*.yaml")
	if err != nil || len(files) == 0 {
		return nil, fmt.Errorf("there are no examples: %v", err)
	}
	var out []job
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			return nil, err
		}
		out = append(out, job{filepath.Base(f), text},
			job{"roll " + filepath.Base(f), append(slices.Clone(text), "\ntemplates: {roll: 610 mm}\n"...)})
		if round := bytes.Replace(text, []byte("shape: ogee"), []byte("shape: quarter round"), 1); !bytes.Equal(round, text) {
			out = append(out, job{"quarter-round " + filepath.Base(f), round}) // few random jobs have one
		}
	}
	own := len(out)
	n := randomJobs
	if *long {
		n = longJobs
	}
	for seed := 0; len(out) < n+own; seed++ {
		text := jobgen.Job(uint64(seed))
		if _, err := make0(text); err == nil { // nearly all jobs can be built
			out = append(out, job{fmt.Sprint("seed ", seed), append(text, otherPaper(seed)...)})
		}
	}
	return out, nil
}

// corpus makes every job once for all proofs.
var corpus = sync.OnceValues(func() ([]made, error) {
	list, err := jobs()
	if err != nil {
		return nil, err
	}
	all, errs := make([]made, len(list)), make([]error, len(list))
	var wait sync.WaitGroup
	free := make(chan bool, runtime.GOMAXPROCS(0))
	for i, j := range list {
		wait.Go(func() {
			free <- true
			defer func() { <-free }()
			if all[i], errs[i] = make1(j.name, j.text); errs[i] != nil {
				errs[i] = fmt.Errorf("%s: %w", j.name, errs[i])
			}
		})
	}
	wait.Wait()
	return all, errors.Join(errs...)
})

// each runs a proof on every job of the corpus.
func each(t *testing.T, prove func(t *testing.T, m made)) {
	t.Helper()
	all, err := corpus()
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range all {
		t.Run(m.name, func(t *testing.T) {
			t.Parallel()
			prove(t, m)
		})
	}
}

func make0(text []byte) (*frame.Frame, error) {
	job, err := frame.Read("job.yaml", text)
	if err != nil {
		return nil, err
	}
	return frame.Build(job)
}

// otherPaper lets some jobs print on other paper, with other margins, and on a
// printer that is off.
func otherPaper(seed int) string {
	paper := []string{"A4", "A3", "Letter", "Tabloid", "A2"}[seed%5]
	out := fmt.Sprintf("\ntemplates: {paper: %s, margin: %d mm, overlap: %d mm}\n", paper, 3+seed%9, 10+seed%7)
	if seed%3 == 0 {
		out += fmt.Sprintf("printer: {x: %.1f mm, y: %.1f mm}\n", 148.5+float64(seed%20)/10, 151.2-float64(seed%13)/10)
	}
	return out
}

// TestTemplatesLieOnTheModel folds every template round its timber and finds
// every cut line on an edge of the model, and every edge of the model that a
// template should show under a cut line.
func TestTemplatesLieOnTheModel(t *testing.T) {
	each(t, func(t *testing.T, m made) {
		ps := m.patterns
		if len(ps) != len(m.whole.Whole.Sheets) {
			t.Errorf("%d templates on the pages, %d whole", len(ps), len(m.whole.Whole.Sheets))
		}
		seen := coverage{}
		for _, p := range ps {
			for _, pl := range p.placings() {
				for _, r := range pl.readings {
					if err := lift(m.frame, p, pl, r, seen); err != nil {
						t.Errorf("%s (%s) on %s at %s: %v", p.number, p.title, pl.mark, r, err)
					}
				}
			}
		}
		for _, missed := range seen.missing(m.frame) {
			t.Error(missed)
		}
	})
}

// memberOf finds a stick by its mark and hand.
func memberOf(f *frame.Frame, mark string) (frame.Member, bool) {
	for _, t := range f.Members {
		name := t.Mark
		if t.Hand != frame.NoHand {
			name += " " + string(t.Hand) + "-hand"
		}
		if name == mark {
			return t, true
		}
	}
	return frame.Member{}, false
}

// exact is the true place along a timber that a reading was rounded from: that
// of a cut near it, or itself.
func exact(f *frame.Frame, t frame.Member, reading float64) float64 {
	best, off := reading, roundingOf(f)+1e-6
	try := func(u float64) {
		if d := math.Abs(u - reading); d < off {
			best, off = u, d
		}
	}
	for _, x := range t.Features {
		switch x := x.(type) {
		case frame.Housing:
			try(x.At)
		case frame.Check:
			try(x.At)
		case frame.Hole:
			try(x.Mouth.X)
		case frame.EndCut:
			try(x.At)
		case frame.Chamfer:
			try(x.At)
			try(x.At - (t.Section.Depth-x.Seat)*math.Tan(x.Angle))
		case frame.CheckOut:
			try(x.From)
		case frame.Birdsmouth:
			try(x.At)
		case frame.Shape:
			try(x.At)
		case frame.BraceHousing:
			try(x.At)
		case frame.TailBevel:
			try(x.Foot(t.Section.Depth))
		}
	}
	for _, x := range f.Setout.Rafters {
		if t.Kind == frame.KindPlate || t.Kind == frame.KindBeam {
			try(alongTimber(t, x))
		}
	}
	for _, h := range f.Hardware() {
		for _, s := range h.Spots {
			if on := f.Members[s.Member]; h.Kind == frame.StrapTie && stickOf(on) == stickOf(t) {
				try(s.At)
			}
		}
	}
	for _, j := range f.Joints {
		if (j.Kind == frame.JointBattenRafter || j.Kind == frame.JointLathBatten) && f.Members[j.A].Mark == t.Mark && f.Members[j.A].Hand == t.Hand {
			try(f.Members[j.A].Place.Local(j.At).X)
		}
	}
	return best
}

// roundingOf is how far off a reading may be: half a unit.
func roundingOf(f *frame.Frame) float64 {
	if f.Job.Units == frame.FeetInches {
		return 25.4 / 64
	}
	return 0.25
}

// lift folds a pattern round a stick and compares.
func lift(f *frame.Frame, p *pattern, pl placing, r string, seen coverage) error {
	t, ok := memberOf(f, pl.mark)
	if !ok {
		return fmt.Errorf("there is no such stick")
	}
	if fmt.Sprint(t.Quantity) != pl.off {
		return fmt.Errorf("%s off, there are %d", pl.off, t.Quantity)
	}
	reading, err := millimetres(r)
	if err != nil {
		return err
	}
	u := exact(f, t, reading)
	leaves, err := p.folded(t, u, pl.from)
	if err != nil {
		return err
	}
	c := compare(t, p, leaves)
	if err := c.run(); err != nil {
		return err
	}
	seen.note(c)
	return p.marks(f, t, leaves, u)
}

// comparison of a folded pattern with its timber, in the timber's axes.
type comparison struct {
	t        frame.Member
	p        *pattern
	leaves   []*leafOf
	edges    [][2]geom.Vec // of the model, on the faces of the prism
	normals  []geom.Vec    // of the face that each lies on
	cuts     [][2]geom.Vec
	mouths   []mouth
	from, to float64 // what the template shows of cuts, along the timber
}

func compare(t frame.Member, p *pattern, leaves []*leafOf) *comparison {
	c := &comparison{t: t, p: p, leaves: leaves, from: math.Inf(1), to: math.Inf(-1)}
	for _, f := range t.Solid().Faces() {
		plane := t.Place.LocalPlane(f.Plane)
		for _, l := range f.Loops {
			for i := range l {
				a, b := t.Place.Local(l[i]), t.Place.Local(l[(i+1)%len(l)])
				c.edges, c.normals = append(c.edges, [2]geom.Vec{a, b}), append(c.normals, plane.N)
			}
		}
	}
	return c
}

// leafAt is the face that a place of the paper lies on.
func (c *comparison) leafAt(q geom.Pt) *leafOf {
	for _, f := range c.leaves {
		if inBox(q, [2]geom.Pt{f.box[0].Sub(geom.P(near, near)), f.box[1].Add(geom.P(near, near))}) {
			return f
		}
	}
	return nil
}

func (c *comparison) run() error {
	for _, l := range c.p.lines {
		if !l.cut() {
			continue
		}
		f := c.leafAt(l.a.Lerp(l.b, 0.5))
		if f == nil {
			return fmt.Errorf("a cut line at %v lies on no face", l.a)
		}
		a, b := f.timber(l.a), f.timber(l.b)
		for _, s := range []float64{0, 0.25, 0.5, 0.75, 1} {
			if d := c.offEdge(a.Lerp(b, s), f.n); d > tolerance {
				return fmt.Errorf("the cut line from %v to %v on %s is %.3f off every edge of the model", a, b, f.name, d)
			}
		}
		c.cuts = append(c.cuts, [2]geom.Vec{a, b})
		c.from, c.to = min(c.from, a.X, b.X), max(c.to, a.X, b.X)
	}
	if err := c.holes(); err != nil {
		return err
	}
	if err := c.waste(); err != nil {
		return err
	}
	return c.complete()
}

// waste sees that nothing is hatched that stays, and that each face with a cut
// across it has something hatched.
func (c *comparison) waste() error {
	for _, l := range c.p.lines {
		d := l.b.Sub(l.a)
		if !l.trim() || math.Abs(math.Abs(d.X)-math.Abs(d.Y)) > near || d.Len() < 1 {
			continue
		}
		f := c.leafAt(l.a.Lerp(l.b, 0.5))
		if f == nil {
			continue // the map of the tiles, say
		}
		if at := f.timber(l.a.Lerp(l.b, 0.5)); c.stays(at, f.n) {
			return fmt.Errorf("the timber at %v on %s is hatched, and stays", at, f.name)
		}
	}
	return nil
}

// stays reports whether a point of the prism's surface is on the model's.
func (c *comparison) stays(p, n geom.Vec) bool {
	across := geom.V(n.Z, n.X, n.Y) // any direction along the face
	up := n.Cross(across)
	in := false
	for i, e := range c.edges {
		if c.normals[i].Sub(n).Len() > 1e-6 || math.Abs(e[0].Sub(p).Dot(n)) > tolerance {
			continue
		}
		a, b := e[0].Sub(p), e[1].Sub(p)
		ay, by := a.Dot(up), b.Dot(up)
		if (ay <= 0) != (by <= 0) && a.Dot(across)+(b.Dot(across)-a.Dot(across))*(-ay)/(by-ay) > 0 {
			in = !in
		}
	}
	return in
}

// offEdge is how far a point is from the model's edges on a face.
func (c *comparison) offEdge(p, n geom.Vec) float64 {
	best := math.Inf(1)
	for i, e := range c.edges {
		if c.normals[i].Sub(n).Len() < 1e-6 {
			best = min(best, off(p, e))
		}
	}
	return best
}

func off(p geom.Vec, e [2]geom.Vec) float64 {
	d := e[1].Sub(e[0])
	s := 0.0
	if l := d.Dot(d); l > 0 {
		s = min(1, max(0, p.Sub(e[0]).Dot(d)/l))
	}
	return p.Sub(e[0].Add(d.Mul(s))).Len()
}

// holes finds every thick circle at the mouth of a bore, as wide as it.
func (c *comparison) holes() error {
	for _, d := range c.p.discs {
		if math.Abs(d.width-thick) > near || !d.whole {
			continue
		}
		f := c.leafAt(d.c)
		if f == nil {
			return fmt.Errorf("a hole at %v lies on no face", d.c)
		}
		at := f.timber(d.c)
		best := math.Inf(1)
		for _, b := range c.t.Solid().Bores() {
			o, dir := c.t.Place.Local(b.At), c.t.Place.LocalDir(b.Dir)
			if math.Abs(math.Abs(dir.Dot(f.n))-1) > 1e-9 {
				continue
			}
			aside := at.Sub(o)
			aside = aside.Sub(dir.Mul(aside.Dot(dir)))
			best = min(best, max(aside.Len(), math.Abs(d.r.X-b.Radius), math.Abs(d.r.Y-b.Radius)))
		}
		if best > tolerance {
			return fmt.Errorf("the hole at %v on %s is %.3f off every bore", at, f.name, best)
		}
		c.mouths = append(c.mouths, mouth{at, f.n, d.r.X})
		c.from, c.to = min(c.from, at.X), max(c.to, at.X)
	}
	return nil
}

// complete finds every edge of the model that the template should show: on one
// of its faces, within what it shows of cuts, and no arris of the timber.
func (c *comparison) complete() error {
	t := c.t
	border := func(p, q geom.Vec, n geom.Vec) bool {
		at := func(x, y, v float64) bool { return math.Abs(x-v) < 1e-6 && math.Abs(y-v) < 1e-6 }
		return n.Y == 0 && (at(p.Y, q.Y, 0) || at(p.Y, q.Y, t.Section.Width)) ||
			n.Z == 0 && (at(p.Z, q.Z, 0) || at(p.Z, q.Z, t.Section.Depth)) ||
			math.Abs(n.X) < 0.5 && (at(p.X, q.X, 0) || at(p.X, q.X, t.Length))
	}
	for i, e := range c.edges {
		n := c.normals[i]
		for _, f := range c.leaves {
			plane, _ := t.FacePlane(faceOf(t.Kind, f.name))
			if n.Sub(f.n).Len() > 1e-6 || math.Abs(plane.Dist(e[0])) > 1e-6 || border(e[0], e[1], n) {
				continue
			}
			for _, s := range []float64{0.01, 0.5, 0.99} {
				p := e[0].Lerp(e[1], s)
				if p.X < c.from-tolerance || p.X > c.to+tolerance || !c.onPaper(f, p) {
					continue
				}
				best := math.Inf(1)
				for _, cut := range c.cuts {
					best = min(best, off(p, cut))
				}
				if best > tolerance {
					return fmt.Errorf("the model's edge at %v on %s is not on the template", p, f.name)
				}
			}
		}
	}
	return nil
}

// onPaper reports whether a point of a face lies where the pattern has paper.
func (c *comparison) onPaper(f *leafOf, p geom.Vec) bool {
	d := p.Sub(f.at)
	q := f.on.Add(geom.P(d.Dot(f.right), d.Dot(f.up)))
	lo, hi := geom.P(math.Inf(1), math.Inf(1)), geom.P(math.Inf(-1), math.Inf(-1))
	for _, l := range c.p.lines {
		for _, e := range []geom.Pt{l.a, l.b} {
			lo, hi = geom.P(min(lo.X, e.X), min(lo.Y, e.Y)), geom.P(max(hi.X, e.X), max(hi.Y, e.Y))
		}
	}
	return inBox(q, f.box) && inBox(q, [2]geom.Pt{lo.Add(geom.P(0.1, 0.1)), hi.Sub(geom.P(0.1, 0.1))})
}
