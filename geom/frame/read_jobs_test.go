package frame_test

import (
	"bytes"
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"plumbcut/geom/frame"
	"plumbcut/geom/frame/keys"
)

// TestReadFullJobs holds every field of a job against what was kept, so that
// each key is seen to go to its place and each default to hold.
func TestReadFullJobs(t *testing.T) {
	for _, file := range fullJobs(t) {
		j, err := frame.Read(file.name, file.text)
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		j.Text = nil
		got, err := json.MarshalIndent(j, "", " ")
		if err != nil {
			t.Fatal(err)
		}
		got = append(got, '\n')
		golden := "testdata/read/" + strings.TrimSuffix(file.name, ".yaml") + "_golden.json"
		if *update {
			if err := os.WriteFile(golden, got, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s reads as\n%s\nwhich is not what %s holds", file.name, got, golden)
		}
	}
}

func TestJobTexts(t *testing.T) {
	j := mustRead(t, bareJob("project: {title: Porch, client: A. Sample, revisions: [{rev: A, date: 2026-01-01, note: first}]}", `
timber: {species: oak}
wall: {openings: [{door: front door, from: 0, to: 900, head: 2000}]}
basis: {wind: high, other: [{what: Frost, value: deep}]}
`))
	var got []string
	j.Texts(func(path, text string) { got = append(got, path+" "+text) })
	want := []string{
		"project.title Porch", "project.client A. Sample", "project.revisions[0].rev A", "project.revisions[0].note first",
		"basis.wind.value high", "basis.other[0].what Frost", "basis.other[0].value deep", "levels.datum ground", "wall.openings[0].door front door", "timber.species oak",
	}
	// What a member takes over from the job's timber is not its own text.
	if !slices.Equal(got, want) {
		t.Errorf("got %q\nwant %q", got, want)
	}
	for _, s := range got {
		if path, _, _ := strings.Cut(s, " "); !j.Given(path) {
			t.Errorf("%s has no place in the file", path)
		}
	}
}

func TestJobErrorf(t *testing.T) {
	j := mustRead(t, bareJob("project: {title: Porch}", ""))
	err := j.Errorf("rule", "posts.at[1]", "post %d is wrong; move it", 2)
	if got, want := err.Error(), "job.yaml:6:39: post 2 is wrong; move it"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if got, want := j.Pos("beam.housing"), (frame.Pos{Line: 5, Column: 1}); got != want {
		t.Errorf("a key left out is at %v, want its group's place %v", got, want)
	}
}

// TestJobHabits: only defaults that the drawings of this job show ask for
// confirmation.
func TestJobHabits(t *testing.T) {
	has := func(j *frame.Job, path string) bool {
		return slices.ContainsFunc(j.Habits(), func(h keys.Habit) bool { return h.Path == path })
	}
	free := mustRead(t, bareJob("project: {title: Porch}", ""))
	fixed := mustRead(t, strings.Replace(bareJob("project: {title: Porch}", "wall: {returns: [{side: left, at: -20, length: 4000}]}"),
		"at: [60,", "base: stirrup, at: [{at: 60, wall: left},", 1))
	for path, want := range map[string][2]bool{
		"posts.footing.depth": {true, true}, "posts.footing.pad": {true, false}, "posts.footing.stand": {false, true},
		"posts.fixing.screw": {false, true}, "plate.fixing.screw": {true, true}, "plate.length": {false, false},
	} {
		if has(free, path) != want[0] || has(fixed, path) != want[1] {
			t.Errorf("%s: %v with free posts, %v with one fixed, want %v", path, has(free, path), has(fixed, path), want)
		}
	}
}

// bareJob is a job that says little, with more keys at its end.
func bareJob(project, more string) string {
	return `plumbcut: 1
` + project + `
levels: {datum: ground, ground: 0}
plate: {section: 190x45, length: 5400, top: 2600}
beam: {section: 240x65, out: 3300}
posts: {section: 120x120, at: [60,    2700, 5340]}
rafters: {section: 140x45, number: 9}
fall: {drop: 120}
` + more
}

func mustRead(t *testing.T, text string) *frame.Job {
	t.Helper()
	j, err := frame.Read("job.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// FuzzRead: whatever stands in a job file, the answer is a job whose figures
// can be reckoned with, or errors that have a place and say what would be
// right.
func FuzzRead(f *testing.F) {
	for _, file := range fullJobs(f) {
		f.Add(file.text)
	}
	f.Add([]byte(bareJob("project: {title: Porch}", "")))
	f.Fuzz(func(t *testing.T, text []byte) {
		j, err := frame.Read("job.yaml", text)
		if err != nil {
			checkErrors(t, text, err)
			return
		}
		if _, err := json.Marshal(j); err != nil { // it refuses what is no number
			t.Error(err)
		}
		again, err := frame.Read("job.yaml", text)
		if err != nil {
			t.Fatalf("the second reading fails: %v", err)
		}
		a, _ := json.Marshal(j)
		b, _ := json.Marshal(again)
		if !bytes.Equal(a, b) {
			t.Error("two readings differ")
		}
		j.Texts(func(path, text string) {
			if text == "" || !j.Given(path) {
				t.Errorf("text %q of %s is not in the file", text, path)
			}
		})
	})
}

func checkErrors(t *testing.T, text []byte, err error) {
	errs, ok := err.(frame.Errors)
	if !ok || len(errs) == 0 {
		t.Fatalf("%T: %v", err, err)
	}
	lines := 1 // by all the signs that YAML takes for the end of one
	for _, end := range []string{"\n", "\r", "\u0085", "\u2028", "\u2029"} {
		lines += bytes.Count(text, []byte(end))
	}
	for _, e := range errs {
		if e.Pos.Line > lines || e.Rule == "" || !strings.Contains(e.Msg, "; ") {
			t.Errorf("%s: %+v", e.Rule, e)
		}
		for _, foreign := range []string{"yaml:", "frame.", "keys.", "float64", "panic", "\n", "\x1b"} {
			if strings.Contains(e.Msg, foreign) && !bytes.Contains(text, []byte(foreign)) {
				t.Errorf("the error speaks of %q: %s", foreign, e.Msg)
			}
		}
	}
}
