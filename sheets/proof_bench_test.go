package sheets_test

import (
	"fmt"
	"io"
	"math"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"plumbcut/draw"
	"plumbcut/draw/pdf"
	"plumbcut/draw/svg"
	"plumbcut/geom"
	"plumbcut/geom/frame"
	"plumbcut/sheets"
)

// What drawing may cost. The targets are those of a machine with two cores
// that does nothing else; the tests guard bounds that a busy one keeps, and
// the benchmarks tell the true figures.
const (
	demoTarget   = 150 * time.Millisecond // whole set, PDF and SVG
	demoBound    = 10 * demoTarget
	manyRafters  = 1000
	manyBound    = 5 * time.Second // model, solids and hidden lines
	manyMemory   = 500e6           // bytes of live memory on the way
	nearLinear   = 2.5             // times the growth in rafters, at most
	fullSetMost  = 100             // rafters of a set that must stay near linear
	fullSetFew   = 25
	costAttempts = 3 // the least of so many runs counts
)

// centres are those of the rafters of a long row, mm.
const centres = 500

// rowOf is a lean-to with many rafters. Invented sizes.
func rowOf(rafters int) source {
	length := centres * rafters
	var posts []string
	for x := 200; x < length; x += 2700 {
		posts = append(posts, fmt.Sprint(x))
	}
	text := fmt.Sprintf(`plumbcut: 1
project: {title: A long row}
paper: {size: A1}
levels: {datum: floor, ground: -150}
wall: {cladding: 20, studs: {first: 0, spacing: 600}}
plate:
  section: 190x45
  length: %d
  top: 2700
  packers: {thickness: 20, width: 90}
beam: {section: 190x70, out: 3000, length: %d}
posts: {section: 115x115, at: [%s]}
rafters: {section: 90x45, number: %d}
battens: {section: 45x45, gap: 200}
fall: {drop: 150}
`, length, length, strings.Join(posts, ", "), rafters)
	return source{fmt.Sprintf("%d rafters", rafters), func() ([]byte, error) { return []byte(text), nil }}
}

// read reads a job.
func (s source) read(t testing.TB) *frame.Job {
	t.Helper()
	text, err := s.text()
	if err != nil {
		t.Fatal(err)
	}
	job, err := frame.Read(s.name, text)
	if err != nil {
		t.Fatal(err)
	}
	return job
}

// longer is a long row with more rafters than a job file may ask for.
func longer(t testing.TB, rafters int) *frame.Job {
	const base = 50
	job := rowOf(base).read(t)
	length := float64(centres * rafters)
	more := length - job.Plate.To
	job.Plate.To, job.Beam.To, job.Wall.To = length, job.Beam.To+more, job.Wall.To+more
	job.Rafters.Number = rafters
	first := job.Posts.At[0]
	job.Posts.At = nil
	for x := first.Along; x < length; x += 2700 {
		p := first
		p.Along = x
		job.Posts.At = append(job.Posts.At, p)
	}
	return job
}

func build(t testing.TB, job *frame.Job) *frame.Frame {
	t.Helper()
	f, err := frame.Build(job)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// wholeSet does all that the program does for a job: read, build, draw, and
// write one PDF and an SVG for each sheet, on all cores.
func (s source) wholeSet(t testing.TB) {
	t.Helper()
	set, err := sheets.Make(build(t, s.read(t)))
	if err != nil {
		t.Fatal(err)
	}
	var wait sync.WaitGroup
	files := make(chan func() error, len(set.Sheets)+1)
	files <- func() error { return pdf.Write(io.Discard, set, pdf.Options{}) }
	for _, sheet := range set.Sheets {
		files <- func() error { return svg.Write(io.Discard, set, sheet) }
	}
	close(files)
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for write := range files {
				if err := write(); err != nil {
					t.Error(err)
				}
			}
		})
	}
	wait.Wait()
}

// hiddenLines builds a model and looks at it from a corner, where members stand
// before each other.
func hiddenLines(t testing.TB, job *frame.Job) (strokes int) {
	t.Helper()
	var bodies []geom.Body
	for i, solid := range build(t, job).Solids() {
		bodies = append(bodies, geom.Body{ID: i, Solid: solid})
	}
	return len(geom.Strokes(geom.Axonometric(math.Pi/6, math.Pi/6), bodies, geom.Options{}))
}

func demoSource(t testing.TB) source {
	for _, s := range examples(t) {
		if s.name == demo {
			return s
		}
	}
	t.Fatal("there is no demo")
	return source{}
}

func BenchmarkDemo(b *testing.B) {
	s := demoSource(b)
	for b.Loop() {
		s.wholeSet(b)
	}
}

// BenchmarkDemoSteps tells where the time of the demo goes.
func BenchmarkDemoSteps(b *testing.B) {
	s := demoSource(b)
	f := build(b, s.read(b))
	set, err := sheets.Make(f)
	if err != nil {
		b.Fatal(err)
	}
	d := &drawn{frame: f, set: set}
	for _, step := range []struct {
		name string
		do   func() error
	}{
		{"read and build", func() error { build(b, s.read(b)); return nil }},
		{"draw", func() error { _, err := sheets.Make(f); return err }},
		{"audit", func() error { set.Audit(d.figures); return nil }},
		{"PDF", func() error { return pdf.Write(io.Discard, set, pdf.Options{}) }},
		{"SVG", func() error {
			return eachSheet(set, func(s *draw.Sheet) error { return svg.Write(io.Discard, set, s) })
		}},
	} {
		b.Run(step.name, func(b *testing.B) {
			for b.Loop() {
				if err := step.do(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func eachSheet(set *draw.Set, do func(*draw.Sheet) error) error {
	for _, s := range set.Sheets {
		if err := do(s); err != nil {
			return err
		}
	}
	return nil
}

func BenchmarkFullSet(b *testing.B) {
	for _, n := range []int{10, 25, 50, 100} {
		s := rowOf(n)
		b.Run(s.name, func(b *testing.B) {
			for b.Loop() {
				s.wholeSet(b)
			}
		})
	}
}

func BenchmarkHiddenLines(b *testing.B) {
	for _, n := range []int{10, 100, 500, 1000, 2000} {
		job := longer(b, n)
		b.Run(fmt.Sprintf("%d rafters", n), func(b *testing.B) {
			for b.Loop() {
				hiddenLines(b, job)
			}
		})
	}
}

// least is the shortest of a few runs.
func least(do func()) time.Duration {
	shortest := time.Duration(math.MaxInt64)
	for range costAttempts {
		start := time.Now()
		do()
		shortest = min(shortest, time.Since(start))
	}
	return shortest
}

// TestCost guards the bounds: the demo, the growth of a full set with its
// rafters, and the time and memory of a model of a thousand rafters.
func TestCost(t *testing.T) {
	s := demoSource(t)
	if took := least(func() { s.wholeSet(t) }); took > demoBound {
		t.Errorf("the demo took %v, want less than %v", took, demoBound)
	} else {
		t.Logf("the demo took %v; the target is %v", took, demoTarget)
	}
	few, most := rowOf(fullSetFew), rowOf(fullSetMost)
	short, long := least(func() { few.wholeSet(t) }), least(func() { most.wholeSet(t) })
	growth, bound := float64(long)/float64(short), nearLinear*fullSetMost/fullSetFew
	t.Logf("sets of %s took %v, of %s %v", few.name, short, most.name, long)
	if growth > bound {
		t.Errorf("a set of %s took %.1f times as long as one of %s, want %.0f at most", most.name, growth, few.name, bound)
	}
	many := longer(t, manyRafters)
	start := time.Now()
	strokes := 0
	memory := highest(func() { strokes = hiddenLines(t, many) })
	took := time.Since(start)
	t.Logf("model and hidden lines of %d rafters: %v, %.0f MB, %d strokes", manyRafters, took, memory/1e6, strokes)
	if took > manyBound {
		t.Errorf("model and hidden lines of %d rafters took %v, want less than %v", manyRafters, took, manyBound)
	}
	if memory > manyMemory {
		t.Errorf("model and hidden lines of %d rafters took %.0f MB, want less than %.0f", manyRafters, memory/1e6, manyMemory/1e6)
	}
	if strokes < 10*manyRafters {
		t.Errorf("%d rafters show only %d strokes", manyRafters, strokes)
	}
}

// growthMost is the exponent with which the cost of model, solids and hidden lines
// may grow with the rafters: 1 is in proportion.
const growthMost = 1.15

// TestGrowth holds the growth of what a model takes to nearly that of its
// rafters: the bytes that it asks for, which are the same on every machine, and
// with -long the time over the whole range too.
func TestGrowth(t *testing.T) {
	exponent := func(few, many int, cost func(rafters int) float64) float64 {
		return math.Log(cost(many)/cost(few)) / math.Log(float64(many)/float64(few))
	}
	asked := func(rafters int) float64 {
		job := longer(t, rafters)
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		hiddenLines(t, job)
		runtime.ReadMemStats(&after)
		return float64(after.TotalAlloc - before.TotalAlloc)
	}
	if e := exponent(100, 1000, asked); e > growthMost {
		t.Errorf("the memory asked for grows with the power %.2f of the rafters, want %.2f at most", e, growthMost)
	} else {
		t.Logf("memory asked for: power %.2f", e)
	}
	if !*long {
		return
	}
	taken := func(rafters int) float64 {
		job := longer(t, rafters)
		return float64(least(func() { hiddenLines(t, job) }))
	}
	if e := exponent(10, 2000, taken); e > growthMost {
		t.Errorf("the time grows with the power %.2f of the rafters, want %.2f at most", e, growthMost)
	} else {
		t.Logf("time: power %.2f", e)
	}
}

// highest is the most memory of the heap in use while something is done,
// garbage that waits to be collected included, over what was in use before.
func highest(do func()) float64 {
	var before, now runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	done, most := make(chan struct{}), make(chan float64)
	go func() {
		top := 0.0
		for {
			runtime.ReadMemStats(&now)
			top = max(top, float64(now.HeapAlloc)-float64(before.HeapAlloc))
			select {
			case <-done:
				most <- top
				return
			case <-time.After(20 * time.Millisecond):
			}
		}
	}()
	do()
	close(done)
	return <-most
}
