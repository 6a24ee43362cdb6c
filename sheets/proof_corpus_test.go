package sheets_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom/frame"
	"plumbcut/geom/frame/jobgen"
	"plumbcut/geom/measure"
	"plumbcut/sheets"
)

// The proofs look at whole sets from outside, as who gets the drawings does:
// the examples, and many random jobs. The first few random jobs go through the
// proofs that read finished files, all of them through the audits.
const (
	auditedJobs = 500
	longJobs    = 2000
	writtenJobs = 20 // written to files, which takes longer than the drawing
)

var long = flag.Bool("long", false, "audit 2000 random jobs rather than 500, the gaps between lines too; have all examples read and painted by all witnesses")

// chosen has TestAudits look at a few jobs only, while one mends what it found.
var chosen = flag.String("seeds", "", "audit the random jobs of these `seeds` alone, as \"7 12 40-60\"")

// drawn is a job with everything that is made of it.
type drawn struct {
	name    string
	frame   *frame.Frame
	set     *draw.Set
	figures measure.Format
}

// source names a job and gives its text.
type source struct {
	name string
	text func() ([]byte, error)
}

// examples are the jobs that the project shows to visitors.
func examples(t testing.TB) []source {
	t.Helper()
	files, err := filepath.Glob("../examples/*/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("there are no examples", err)
	}
	var out []source
	for _, f := range files {
		out = append(out, source{filepath.Base(f), func() ([]byte, error) { return os.ReadFile(f) }})
	}
	return out
}

// random are the random jobs of the first n seeds.
func random(n int) []source {
	var out []source
	for seed := range uint64(n) {
		out = append(out, seeded(seed))
	}
	return out
}

// seeded is the random job of a seed.
func seeded(seed uint64) source {
	return source{fmt.Sprintf("seed %d", seed), func() ([]byte, error) { return jobgen.Job(seed), nil }}
}

// seeds are the random jobs of a list of seeds and of ranges of them.
func seeds(t testing.TB, list string) []source {
	t.Helper()
	var out []source
	for _, word := range strings.Fields(list) {
		from, to, isRange := strings.Cut(word, "-")
		if !isRange {
			to = from
		}
		first, err := strconv.ParseUint(from, 10, 64)
		last, err2 := strconv.ParseUint(to, 10, 64)
		if err != nil || err2 != nil {
			t.Fatalf("-seeds: %q is neither a number nor a range such as 40-60", word)
		}
		for ; first <= last; first++ {
			out = append(out, seeded(first))
		}
	}
	return out
}

// written are the jobs of the proofs that read finished files.
func written(t testing.TB) []source {
	t.Helper()
	return append(examples(t), random(writtenJobs)...)
}

// parallel are those of the jobs whose beam is parallel with the wall. What the
// proofs that take them read off the drawings is dimensioned in another way where it
// is not: TestSkewIsReadOffTheDrawings reads that.
func parallel(t testing.TB, jobs []source) []source {
	t.Helper()
	return slices.DeleteFunc(slices.Clone(jobs), func(s source) bool { return s.skewed(t) })
}

// skewed reports whether a job's beam is not.
func (s source) skewed(t testing.TB) bool {
	t.Helper()
	text, err := s.text()
	if err != nil {
		t.Fatal(err)
	}
	return bytes.Contains(text, []byte("out: {left"))
}

// make reads, builds and draws a job. Of a random job that breaks a rule of
// building it gives nothing: few do, and the generator's own test counts them.
func (s source) make() (*drawn, error) {
	text, err := s.text()
	if err != nil {
		return nil, err
	}
	job, err := frame.Read(s.name, text)
	if err != nil {
		return nil, err
	}
	f, err := frame.Build(job)
	if err != nil && strings.HasPrefix(s.name, "seed ") {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	set, err := sheets.Make(f)
	if err != nil {
		return nil, err
	}
	d := &drawn{name: s.name, frame: f, set: set}
	if job.Units == frame.FeetInches {
		d.figures.Units = measure.FeetInches
	}
	return d, nil
}

// each makes the jobs on all cores and gives them to check, which may run
// several at a time. What fails of a job is told with its name. It returns how
// many jobs were checked.
func each(t *testing.T, jobs []source, check func(*drawn)) int {
	t.Helper()
	todo := make(chan source)
	var mu sync.Mutex
	var wait sync.WaitGroup
	count := 0
	one := func(s source) {
		defer func() {
			if r := recover(); r != nil {
				t.Errorf("%s: panic: %v\n%s", s.name, r, debug.Stack())
			}
		}()
		d, err := s.make()
		if err != nil {
			t.Errorf("%s: %v", s.name, err)
			return
		}
		if d != nil {
			check(d)
			mu.Lock()
			count++
			mu.Unlock()
		}
	}
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for s := range todo {
				one(s)
			}
		})
	}
	for _, s := range jobs {
		todo <- s
	}
	close(todo)
	wait.Wait()
	return count
}

// ledger gathers what audits find, by rule, so that one fault that shows in
// hundreds of jobs is told once.
type ledger struct {
	mu    sync.Mutex
	rules map[string][]entry
}

type entry struct{ job, what string }

func (l *ledger) add(rule, job, format string, args ...any) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.rules == nil {
		l.rules = map[string][]entry{}
	}
	l.rules[rule] = append(l.rules[rule], entry{job, fmt.Sprintf(format, args...)})
}

// told is how many findings of a rule are told in full, each of another job; of
// the others the jobs are named.
const told = 5

// report makes each rule that was broken a failing subtest.
func (l *ledger) report(t *testing.T) {
	t.Helper()
	for _, rule := range sorted(l.rules) {
		t.Run(rule, func(t *testing.T) { t.Error(l.summary(rule)) })
	}
}

// summary tells of a rule how often it was broken, and where first.
func (l *ledger) summary(rule string) string {
	all := l.rules[rule]
	slices.SortStableFunc(all, func(a, b entry) int { return compareNames(a.job, b.job) })
	jobs := map[string]bool{}
	var b strings.Builder
	for _, e := range all {
		switch {
		case jobs[e.job]:
		case len(jobs) < told:
			fmt.Fprintf(&b, "\n\t%s: %s", e.job, e.what)
		case len(jobs) == told:
			fmt.Fprintf(&b, "\n\tand in %s", e.job)
		default:
			fmt.Fprintf(&b, ", %s", e.job)
		}
		jobs[e.job] = true
	}
	return fmt.Sprintf("%d findings in %d jobs, first%s", len(all), len(jobs), &b)
}

// compareNames puts seed 9 before seed 10.
func compareNames(a, b string) int {
	if len(a) != len(b) {
		return len(a) - len(b)
	}
	return strings.Compare(a, b)
}

func sorted[V any](m map[string]V) []string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// TestAudits draws every example and the random jobs and lets every audit look
// at each: no two members share room, every bearing is met, every dimension is
// what the model measures and stands to scale, nothing overlaps, nothing is
// outside the frame, every mark leads somewhere, every sheet says what ISO 7200
// asks for and stands at a scale of ISO 5455. No job may break any rule, however
// small its paper is for it.
func TestAudits(t *testing.T) {
	n := auditedJobs
	if *long {
		n = longJobs
	}
	if testing.Short() {
		n = writtenJobs
	}
	var jobs []source
	if *chosen != "" {
		jobs = seeds(t, *chosen)
	} else {
		jobs = append(examples(t), random(n)...)
	}
	var found, gaps ledger
	count := each(t, jobs, func(d *drawn) {
		d.auditAll(&found)
		if *long {
			d.lineGaps(&gaps)
		}
	})
	if least := n - n/50; *chosen == "" && count < least {
		t.Errorf("only %d jobs were drawn, want %d at least", count, least)
	}
	found.report(t)
	// A small scale can force lines together, so these are told, not counted.
	for _, rule := range sorted(gaps.rules) {
		t.Log(rule, gaps.summary(rule))
	}
}

// auditAll puts down everything that any audit finds in one job.
func (d *drawn) auditAll(l *ledger) {
	for _, f := range d.frame.Audit() {
		l.add("model: "+f.Rule, d.name, "%s", f.What)
	}
	if err := d.set.Check(); err != nil {
		l.add("set cannot be written", d.name, "%v", err)
	}
	for _, f := range d.set.Audit(d.figures) {
		l.add(fmt.Sprintf("%s: %s", d.title(f.Sheet), f.Rule), d.name, "%s", f)
	}
	for _, check := range []func(*draw.Set) []string{shownScales, namedFields, shownLinks} {
		for _, what := range check(d.set) {
			rule, what, _ := strings.Cut(what, ": ")
			l.add(rule, d.name, "%s", what)
		}
	}
}

// lineGaps puts down where lines of one job run too close.
func (d *drawn) lineGaps(l *ledger) {
	for _, s := range d.set.Sheets {
		for _, f := range s.LineGaps() {
			l.add(fmt.Sprintf("%s: %s", s.Title, f.Rule), d.name, "%s", f)
		}
	}
}

func (d *drawn) title(number string) string {
	for _, s := range d.set.Sheets {
		if s.Number == number {
			return s.Title
		}
	}
	return number
}
