package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
	"time"

	"gopkg.in/yaml.v3"
)

var long = flag.Bool("long", false, "spoil every value of every example in every way, rather than a sample")

const (
	spoiledJobs = 150             // of the sample
	spoilSeed   = 20261019        // which sample
	patience    = 2 * time.Second // a job may take, drawn or refused
	memoryBound = 1 << 30         // bytes that the heap may have grown to after all of them
)

// A spoiler changes one value of a job file. It returns false when the change
// does not suit the value. Values are spoiled as text a person might type, not as
// what the reader makes of it.
type spoiler struct {
	name  string
	spoil func(parent *yaml.Node, at int) bool
}

// spoilers are the ways in which a value is spoiled.
func spoilers() []spoiler {
	all := []spoiler{
		{"dropped", drop},
		{"negated", onNumbers(func(n string) string { return "-" + n })},
		{"times 1000", onNumbers(func(n string) string { return n + "000" })},
		{"by 1000", onNumbers(func(n string) string { return "0.00" + strings.ReplaceAll(n, ".", "") })},
		{"made a list", onScalars(func(v *yaml.Node) { wrap(v, yaml.SequenceNode) })},
		{"made a mapping", onScalars(func(v *yaml.Node) { wrap(v, yaml.MappingNode) })},
		{"named as an alias of all", onScalars(func(v *yaml.Node) { v.SetString("*all") })},
	}
	return append(all, strangeTexts()...)
}

// strangeTexts are the texts that take a value's place.
func strangeTexts() []spoiler {
	texts := []struct{ name, text string }{
		{"not a number", ".nan"},
		{"without end", ".inf"},
		{"empty", ""},
		{"ten thousand letters", strings.Repeat("long ", 2000)},
		{"one long word", strings.Repeat("w", 3000)},
		{"markup", `</text></svg><script>alert(1)</script><!-- ]]> &amp; %PDF (a) \)`},
		{"a formula", "=HYPERLINK(\"file:///\",\"x\")"},
		{"control characters", "bell \a, back\b, escape \x1b[31m, null \x00"},
		{"an emoji", "beam 🪵 and 🔨"},
		{"from right to left", "\u202eקורה\u202c"},
		{"macrons", "Ōtāhuhu whare tūturu"},
		{"a line break", "one\ntwo"},
	}
	var all []spoiler
	for _, x := range texts {
		all = append(all, spoiler{x.name, onScalars(func(v *yaml.Node) {
			v.Style, v.Tag, v.Value = yaml.DoubleQuotedStyle, "!!str", x.text
			if strings.HasPrefix(x.text, ".") {
				v.Style, v.Tag = 0, ""
			}
		})})
	}
	return all
}

// drop takes a key with its value, or an entry of a list, away.
func drop(parent *yaml.Node, at int) bool {
	from := at
	if parent.Kind == yaml.MappingNode {
		from--
	}
	parent.Content = append(parent.Content[:from:from], parent.Content[at+1:]...)
	return true
}

func onScalars(change func(v *yaml.Node)) func(*yaml.Node, int) bool {
	return func(parent *yaml.Node, at int) bool {
		v := parent.Content[at]
		if v.Kind != yaml.ScalarNode {
			return false
		}
		change(v)
		return true
	}
}

// firstNumber finds the first number of a value such as 190x45 or 15°.
var firstNumber = regexp.MustCompile(`[0-9]+(\.[0-9]+)?`)

func onNumbers(change func(string) string) func(*yaml.Node, int) bool {
	return func(parent *yaml.Node, at int) bool {
		v := parent.Content[at]
		where := firstNumber.FindStringIndex(v.Value)
		if v.Kind != yaml.ScalarNode || where == nil {
			return false
		}
		v.Value = v.Value[:where[0]] + change(v.Value[where[0]:where[1]]) + v.Value[where[1]:]
		v.Tag = ""
		return true
	}
}

// wrap puts a scalar into a list or a mapping.
func wrap(v *yaml.Node, kind yaml.Kind) {
	inner := *v
	*v = yaml.Node{Kind: kind, Content: []*yaml.Node{&inner}}
	if kind == yaml.MappingNode {
		v.Content = []*yaml.Node{{Kind: yaml.ScalarNode, Value: "value"}, &inner}
	}
}

// values counts the values below a node and, at the wanted one, calls visit.
func values(n *yaml.Node, count *int, want int, visit func(parent *yaml.Node, at int)) {
	first, step := 0, 1
	if n.Kind == yaml.MappingNode {
		first, step = 1, 2
	}
	children := n.Content // visit may take one away
	for i := first; i < len(children); i += step {
		if n.Kind != yaml.DocumentNode {
			*count++
			if *count-1 == want {
				visit(n, i)
				return
			}
		}
		values(children[i], count, want, visit)
	}
}

// spoiled is a job file with one value changed; false when the change does not
// suit that value.
func spoiled(t *testing.T, text []byte, value int, s spoiler) ([]byte, bool) {
	t.Helper()
	var doc yaml.Node
	if err := yaml.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	done, count := false, 0
	values(&doc, &count, value, func(parent *yaml.Node, at int) { done = s.spoil(parent, at) })
	if !done {
		return nil, false
	}
	var out bytes.Buffer
	enc := yaml.NewEncoder(&out)
	if err := enc.Encode(&doc); err != nil {
		return nil, false // yaml itself cannot write it
	}
	return out.Bytes(), true
}

// located is how an error of a job file begins.
var located = regexp.MustCompile(`^stdin:[0-9]+:[0-9]+: `)

// TestSpoiledJobs changes the examples' values one at a time, in ways in which
// a slip, a stranger's file or an attack might, and checks each job. It must come
// out as a set that passes its audits, or as errors that each name a place, in
// little time and memory.
func TestSpoiledJobs(t *testing.T) {
	type trial struct {
		job   string
		text  []byte
		value int
		how   spoiler
	}
	files, err := filepath.Glob(filepath.Join(root, "examples", "*", "*.yaml"))
	if err != nil || len(files) == 0 {
		t.Fatal("no examples", err)
	}
	var all []trial
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		var doc yaml.Node
		if err := yaml.Unmarshal(text, &doc); err != nil {
			t.Fatal(err)
		}
		n := 0
		values(&doc, &n, -1, nil)
		for v := range n {
			for _, how := range spoilers() {
				all = append(all, trial{filepath.Base(f), text, v, how})
			}
		}
	}
	if !*long {
		r := rand.New(rand.NewPCG(spoilSeed, 0))
		r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
		all = all[:spoiledJobs]
	}
	drawn, refused := 0, 0
	for _, x := range all {
		text, ok := spoiled(t, x.text, x.value, x.how)
		if !ok {
			continue
		}
		if endsWell(t, fmt.Sprintf("%s, value %d %s", x.job, x.value, x.how.name), text) {
			drawn++
		} else {
			refused++
		}
	}
	t.Logf("%d spoiled jobs drawn, %d refused", drawn, refused)
	if drawn == 0 || refused == 0 {
		t.Error("both should have come to pass")
	}
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	if m.HeapSys > memoryBound {
		t.Errorf("the heap grew to %d MB", m.HeapSys>>20)
	}
}

// keepSpoiled puts a job that did not end well where it can be looked at.
func keepSpoiled(t *testing.T, text []byte) string {
	t.Helper()
	f, err := os.CreateTemp("", "spoiled-*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if _, err := f.Write(text); err != nil {
		t.Fatal(err)
	}
	return f.Name()
}

// endsWell checks one job and reports whether it was drawn rather than refused.
func endsWell(t *testing.T, name string, text []byte) (drawn bool) {
	t.Helper()
	defer func() {
		if r := recover(); r != nil {
			t.Errorf("%s: panic: %v; see %s", name, r, keepSpoiled(t, text))
		}
	}()
	var took time.Duration
	var told bytes.Buffer
	status := exitFine
	for range 3 { // a busy machine gets another chance
		told.Reset()
		start := time.Now()
		status = run([]string{"check", "-"}, bytes.NewReader(text), io.Discard, &told)
		if took = time.Since(start); took <= patience {
			break
		}
	}
	if took > patience {
		t.Errorf("%s: took %v; see %s", name, took, keepSpoiled(t, text))
	}
	if status == exitFine {
		return true
	}
	for line := range strings.Lines(told.String()) {
		if !located.MatchString(line) || strings.Contains(line, "fault of plumbcut") {
			t.Errorf("%s: %.300s; see %s", name, line, keepSpoiled(t, text))
		}
	}
	if told.Len() == 0 {
		t.Errorf("%s: refused without a word; see %s", name, keepSpoiled(t, text))
	}
	return false
}
