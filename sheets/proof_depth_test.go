package sheets

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"

	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/geom/frame/jobgen"
)

// Every picture of every sheet is looked at a second time through a depth
// buffer: the faces of its bodies are painted into pixels that keep the nearest
// depth, as graphics hardware does. What that sees and what it does not is then
// compared with the lines that the picture shows as visible and as hidden.
const (
	depthJobs     = 4    // random ones, besides the examples; 100 with -long
	depthJobsLong = 100  //
	pixelsAcross  = 900  // along the longer side of a picture
	sampleEvery   = 7.3  // pixels; no multiple of one
	depthSlack    = 0.05 // mm; less than any two faces of a model lie apart
	edgeOn        = 1e-6 // cosine
	finePixel     = 0.02 // mm
	mostUnsure    = 0.02 // of the samples, those within a pixel of a jump in depth
	shortLine     = 3.0  // pixels; a shorter line has no point clear of its ends
)

// depths is a depth buffer.
type depths struct {
	view   geom.View
	origin geom.Pt
	pixel  float64 // mm
	w, h   int
	z      []float32
	face   []int32 // whose depth that is, an index of seen; -1: nobody's
	seen   []facing
}

// facing is a face that is turned to the viewer.
type facing struct {
	geom.Face
	lo, hi geom.Pt // the rectangle of the view plane that holds it
}

// facingOf lists the faces of the bodies that are turned to the viewer.
func facingOf(v geom.View, bodies []geom.Body) []facing {
	var out []facing
	for _, b := range bodies {
		for _, f := range b.Solid.Faces() {
			if f.Plane.N.Dot(v.Toward) < edgeOn {
				continue
			}
			x := facing{f, geom.P(math.Inf(1), math.Inf(1)), geom.P(math.Inf(-1), math.Inf(-1))}
			for _, p := range f.Loops[0] {
				q := v.Project(p)
				x.lo = geom.P(min(x.lo.X, q.X), min(x.lo.Y, q.Y))
				x.hi = geom.P(max(x.hi.X, q.X), max(x.hi.Y, q.Y))
			}
			out = append(out, x)
		}
	}
	return out
}

// newDepths paints the faces that show in a rectangle.
func newDepths(v geom.View, all []facing, lo, hi geom.Pt, pixel float64) *depths {
	d := &depths{view: v, pixel: pixel, origin: lo}
	d.w, d.h = int((hi.X-lo.X)/pixel)+1, int((hi.Y-lo.Y)/pixel)+1
	d.z, d.face = make([]float32, d.w*d.h), make([]int32, d.w*d.h)
	for i := range d.z {
		d.z[i], d.face[i] = float32(math.Inf(-1)), -1
	}
	for _, f := range all {
		if f.lo.X <= hi.X && f.hi.X >= lo.X && f.lo.Y <= hi.Y && f.hi.Y >= lo.Y {
			d.seen = append(d.seen, f)
			d.paint(int32(len(d.seen) - 1))
		}
	}
	return d
}

// paint keeps the depth of a face wherever the middle of a pixel lies in it.
func (d *depths) paint(face int32) {
	f := d.seen[face]
	var ring [][2]geom.Pt
	for _, loop := range f.Loops {
		for i, p := range loop {
			a, b := d.pixelAt(d.view.Project(p)), d.pixelAt(d.view.Project(loop[(i+1)%len(loop)]))
			ring = append(ring, [2]geom.Pt{a, b})
		}
	}
	bottom, top := d.pixelAt(f.lo).Y, d.pixelAt(f.hi).Y
	var cross []float64
	for y := int(max(0, bottom)); y < d.h && float64(y) <= top; y++ {
		middle := float64(y) + 0.5
		cross = cross[:0]
		for _, e := range ring {
			if (e[0].Y <= middle) != (e[1].Y <= middle) {
				t := (middle - e[0].Y) / (e[1].Y - e[0].Y)
				cross = append(cross, e[0].X+t*(e[1].X-e[0].X))
			}
		}
		slices.Sort(cross)
		for i := 0; i+1 < len(cross); i += 2 {
			for x := int(math.Ceil(max(0, cross[i]-0.5))); x < d.w && float64(x)+0.5 <= cross[i+1]; x++ {
				q := geom.P(d.origin.X+(float64(x)+0.5)*d.pixel, d.origin.Y+middle*d.pixel)
				z := float32(d.depthOf(face, q))
				if at := y*d.w + x; z > d.z[at] {
					d.z[at], d.face[at] = z, face
				}
			}
		}
	}
}

// pixelAt is where a point of the view plane lies, in pixels.
func (d *depths) pixelAt(p geom.Pt) geom.Pt { return p.Sub(d.origin).Mul(1 / d.pixel) }

// depthOf is the depth of a face's plane at a point of the view plane.
func (d *depths) depthOf(face int32, q geom.Pt) float64 {
	pl := d.seen[face].Plane
	return (pl.D - pl.N.Dot(d.view.Right)*q.X - pl.N.Dot(d.view.Up)*q.Y) / pl.N.Dot(d.view.Toward)
}

// sees reports whether a point is seen past the faces that the pixels round it
// hold, and false for sure when it is seen past some of them and not past others.
func (d *depths) sees(p geom.Vec) (seen, sure bool) {
	q := d.view.Project(p)
	at, z := d.pixelAt(q), d.view.Depth(p)
	before, behind := 0, 0
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			x, y := int(at.X)+dx, int(at.Y)+dy
			if x < 0 || x >= d.w || y < 0 || y >= d.h || d.face[y*d.w+x] < 0 {
				before++
			} else if z >= d.depthOf(d.face[y*d.w+x], q)-depthSlack {
				before++
			} else {
				behind++
			}
		}
	}
	return behind == 0, before == 0 || behind == 0
}

// verdict counts what the buffer says of the lines of a job.
type verdict struct {
	mu           sync.Mutex
	agree, wrong int
	unsure       int
	first        string
}

// compare looks at the lines of one picture.
func (c *verdict) compare(v geom.View, bodies []geom.Body, strokes []geom.Stroke) {
	all := facingOf(v, bodies)
	if len(strokes) == 0 || len(all) == 0 {
		return
	}
	lo, hi := all[0].lo, all[0].hi
	for _, f := range all {
		lo = geom.P(min(lo.X, f.lo.X), min(lo.Y, f.lo.Y))
		hi = geom.P(max(hi.X, f.hi.X), max(hi.Y, f.hi.Y))
	}
	whole := newDepths(v, all, lo, hi, max(hi.X-lo.X, hi.Y-lo.Y)/pixelsAcross)
	agree, wrong, unsure, first := 0, 0, 0, ""
	for _, s := range strokes {
		length := s.B.Sub(s.A).Len() / whole.pixel
		if s.Arc != nil || length < shortLine {
			continue
		}
		n := max(1, int(length/sampleEvery))
		for i := range n {
			p := s.From.Lerp(s.To, (float64(i)+0.5)/float64(n))
			seen, sure := whole.sees(p)
			if !sure || seen == s.Hidden {
				seen, sure = closer(v, all, p)
			}
			if sure && seen == s.Hidden { // the line may go on at another depth
				seen, sure = closer(v, all, nearestOn(v, bodies, s, p))
			}
			switch {
			case !sure:
				unsure++
			case seen == !s.Hidden:
				agree++
			default:
				wrong++
				first = fmt.Sprintf("looking against %v, body %d at %v: hidden is %v", v.Toward, s.Body, p, s.Hidden)
			}
		}
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	c.agree, c.wrong, c.unsure = c.agree+agree, c.wrong+wrong, c.unsure+unsure
	if first != "" {
		c.first = first
	}
}

// nearestOn is the point of the body's edges that appears where p does and is
// nearest to the viewer. A line of a picture that goes straight on from one edge
// to another, at another depth, is one line; its own ends do not tell where.
func nearestOn(v geom.View, bodies []geom.Body, s geom.Stroke, p geom.Vec) geom.Vec {
	const same = 0.01 // mm; of points of the image
	best, at := math.Inf(-1), v.Project(p)
	for _, b := range bodies {
		if b.ID != s.Body {
			continue
		}
		for _, e := range b.Solid.Edges() {
			a, d := v.Project(e.A), v.Project(e.B).Sub(v.Project(e.A))
			if d.Len() < same {
				continue
			}
			t := at.Sub(a).Dot(d) / d.Dot(d)
			if t < 0 || t > 1 || a.Add(d.Mul(t)).Sub(at).Len() > same {
				continue
			}
			if q := e.A.Lerp(e.B, t); v.Depth(q) > best {
				best, p = v.Depth(q), q
			}
		}
	}
	return p
}

// closer looks at a point in pixels so fine that a joint's clearance is many of
// them, where those of a whole picture cannot tell, or hide such a gap.
func closer(v geom.View, all []facing, p geom.Vec) (seen, sure bool) {
	reach := geom.P(3*finePixel, 3*finePixel)
	q := v.Project(p)
	return newDepths(v, all, q.Sub(reach), q.Add(reach), finePixel).sees(p)
}

// TestHiddenLinesAgainstDepths compares every picture of the examples and of
// some random jobs with a depth buffer.
func TestHiddenLinesAgainstDepths(t *testing.T) {
	jobs := map[string][]byte{}
	files, err := filepath.Glob("../examples/*/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no examples", err)
	}
	for _, f := range files {
		if jobs[filepath.Base(f)], err = os.ReadFile(f); err != nil {
			t.Fatal(err)
		}
	}
	n := uint64(depthJobs)
	if flag.Lookup("long").Value.String() == "true" {
		n = depthJobsLong
	}
	for seed := range n {
		jobs[fmt.Sprint("seed ", seed)] = jobgen.Job(seed)
	}
	all := verdict{}
	for name, text := range jobs {
		job, err := frame.Read(name, text)
		if err != nil {
			t.Fatal(err)
		}
		f, err := frame.Build(job)
		if err != nil {
			continue // jobgen's own test counts them
		}
		c := verdict{}
		m, err := newMaker(f)
		if err != nil {
			t.Fatal(err)
		}
		m.scene.watch = c.compare
		m.drafts()
		if c.agree == 0 {
			t.Errorf("%s: no line was compared", name)
		}
		if c.wrong > 0 {
			t.Errorf("%s: %d of %d samples are seen otherwise, such as %s", name, c.wrong, c.wrong+c.agree, c.first)
		}
		all.agree, all.unsure = all.agree+c.agree, all.unsure+c.unsure
	}
	share := float64(all.unsure) / float64(all.unsure+all.agree)
	t.Logf("%d samples agree; of %.2f %% one cannot tell, within a pixel of a jump in depth", all.agree, 100*share)
	if share > mostUnsure {
		t.Errorf("of %.1f %% of the samples one cannot tell, want %.1f %% at most", 100*share, 100*mostUnsure)
	}
}
