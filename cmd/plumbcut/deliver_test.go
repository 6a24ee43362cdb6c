package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
)

// folder reads a folder as "name=contents" in the order of names.
func folder(t *testing.T, dir string) (list []string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			data = []byte("?")
		}
		list = append(list, e.Name()+"="+string(data))
	}
	return list
}

func fill(t *testing.T, dir string, files ...string) {
	t.Helper()
	for _, f := range files {
		name, data, _ := strings.Cut(f, "=")
		if err := os.WriteFile(filepath.Join(dir, name), []byte(data), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

func want(t *testing.T, dir string, files ...string) {
	t.Helper()
	if got := folder(t, dir); !slices.Equal(got, files) {
		t.Errorf("folder holds %v, want %v", got, files)
	}
}

func keepAll(string) bool { return false }

func approved() error { return nil }

// page is a document that holds the given text.
func page(name, data string) document {
	return document{name, func(w io.Writer) error {
		_, err := io.WriteString(w, data)
		return err
	}}
}

func set(data string) []document {
	return []document{page("a", data), page("b", data), page("c", data)}
}

func TestDeliverReplacesAndRemovesStale(t *testing.T) {
	dir := t.TempDir()
	fill(t, dir, "b=old", "old1=x", "other=y")
	removed, err := deliver(dir, set("new"), func(name string) bool { return name == "old1" }, approved)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(removed, []string{"old1"}) {
		t.Errorf("removed %v, want [old1]", removed)
	}
	want(t, dir, "a=new", "b=new", "c=new", "other=y")
}

func TestDeliverLeavesStaleLinksAlone(t *testing.T) {
	dir := t.TempDir()
	fill(t, dir, "other=y")
	if err := os.Symlink("other", filepath.Join(dir, "old1")); err != nil {
		t.Skip(err)
	}
	if _, err := deliver(dir, set("new"), func(name string) bool { return name == "old1" }, approved); err != nil {
		t.Fatal(err)
	}
	want(t, dir, "a=new", "b=new", "c=new", "old1=y", "other=y")
}

func TestDeliverClearsWhatAKilledRunLeft(t *testing.T) {
	if _, alone := lockFolder(t.TempDir()); !alone {
		t.Skip("folders cannot be locked here")
	}
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, stagePrefix+"123"), 0o777); err != nil {
		t.Fatal(err)
	}
	fill(t, dir, stagePrefix+"123/a=half")
	if _, err := deliver(dir, set("new"), keepAll, approved); err != nil {
		t.Fatal(err)
	}
	want(t, dir, "a=new", "b=new", "c=new")
}

func TestDeliverRefusesWhatIsInTheWay(t *testing.T) {
	for _, c := range []struct {
		name, says string
		put        func(path string) error
	}{
		{"link", "a link to another place", func(p string) error { return os.Symlink("elsewhere", p) }},
		{"folder", "not an ordinary file", func(p string) error { return os.Mkdir(p, 0o777) }},
		{"protected", "write-protected", func(p string) error { return os.WriteFile(p, nil, 0o444) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			fill(t, dir, "a=old")
			if err := c.put(filepath.Join(dir, "c")); err != nil {
				t.Skip(err)
			}
			before := folder(t, dir)
			_, err := deliver(dir, set("new"), keepAll, approved)
			if err == nil || !strings.Contains(err.Error(), c.says) {
				t.Errorf("error %v, want one that says %q", err, c.says)
			}
			want(t, dir, before...)
		})
	}
}

// TestDeliverPutsBack has the very last step fail: a stale file is gone by the
// time that it is to be moved away.
func TestDeliverPutsBack(t *testing.T) {
	dir := t.TempDir()
	fill(t, dir, "b=old", "old1=x", "old2=y")
	var between []string
	_, err := deliver(dir, set("new"), func(name string) bool {
		if name == "old2" {
			between = folder(t, dir)
			os.Remove(filepath.Join(dir, name))
		}
		return name == "old1" || name == "old2"
	}, approved)
	if err == nil || !strings.Contains(err.Error(), "as they were") {
		t.Errorf("error %v, want one that says that all is as it was", err)
	}
	for _, f := range []string{"a=new", "b=new", "c=new"} {
		if !slices.Contains(between, f) {
			t.Errorf("before the failure the folder held %v, want %s there", between, f)
		}
	}
	want(t, dir, "b=old", "old1=x")
}

// What is refused after it was rendered is not put in place.
func TestDeliverAsksFirst(t *testing.T) {
	dir := t.TempDir()
	fill(t, dir, "b=old", "old1=x")
	refused := errors.New("refused")
	_, err := deliver(dir, set("new"), func(string) bool { return true }, func() error { return refused })
	if !errors.Is(err, refused) {
		t.Errorf("error %v, want the refusal", err)
	}
	want(t, dir, "b=old", "old1=x")
}

func TestDeliverMakesNoFolderInVain(t *testing.T) {
	dir := t.TempDir()
	fill(t, dir, "a=file")
	deep := filepath.Join(dir, "a", "b")
	if _, err := deliver(deep, set("new"), keepAll, approved); err == nil || !strings.Contains(err.Error(), "not a folder") {
		t.Errorf("error %v, want one that says that a file is in the way", err)
	}
	// A name too long to stage fails after the folders were made.
	long := []document{page(strings.Repeat("n", 300), "")}
	if _, err := deliver(filepath.Join(dir, "new", "deep"), long, keepAll, approved); err == nil {
		t.Error("a name of 300 letters was written")
	}
	want(t, dir, "a=file")
}

// TestDeliverTwoAtOnce has many runs write into one folder: at every end the
// folder holds one run's files, all of them.
func TestDeliverTwoAtOnce(t *testing.T) {
	dir := t.TempDir()
	unlock, alone := lockFolder(dir)
	unlock()
	if !alone {
		t.Skip("folders cannot be locked here:", runtime.GOOS)
	}
	const runs = 16
	errs := make([]error, runs)
	var all sync.WaitGroup
	for i := range runs {
		all.Go(func() { _, errs[i] = deliver(dir, set(fmt.Sprint(i)), keepAll, approved) })
	}
	all.Wait()
	for _, err := range errs {
		if err != nil {
			t.Error(err)
		}
	}
	got := folder(t, dir)
	_, data, _ := strings.Cut(got[0], "=")
	want(t, dir, "a="+data, "b="+data, "c="+data)
}

func TestRenderAllHandsOverEach(t *testing.T) {
	var docs []document
	for i := range 20 {
		docs = append(docs, page(fmt.Sprint("n", i), fmt.Sprint(i)))
	}
	got := make([]string, len(docs))
	if err := renderAll(docs, func(i int, data []byte) { got[i] += string(data) }); err != nil {
		t.Fatal(err)
	}
	for i, data := range got {
		if data != fmt.Sprint(i) {
			t.Errorf("document %d came as %q", i, data)
		}
	}
}

// TestDeliverUndrawn holds that a document that cannot be drawn leaves the
// folder as it was, whatever was ready before it.
func TestDeliverUndrawn(t *testing.T) {
	dir := t.TempDir()
	fill(t, dir, "a=old", "old1=x")
	docs := append(set("new"), document{"d", func(io.Writer) error { return errors.New("no ink") }})
	_, err := deliver(dir, docs, func(name string) bool { return name == "old1" }, approved)
	if err == nil || !strings.Contains(err.Error(), "cannot draw d: no ink") {
		t.Errorf("error %v, want that d cannot be drawn", err)
	}
	want(t, dir, "a=old", "old1=x")
}

func TestJobName(t *testing.T) {
	for file, want := range map[string]string{
		"garden.yaml":     "garden",
		"a/b/garden.YML":  "garden",
		"my garden.yaml":  "my garden",
		"garden.pdf":      "garden.pdf", // its PDF is garden.pdf.pdf, never the job file
		"garden":          "garden",
		".yaml":           "job",
		"-":               "job",
		"garden.v2.yaml":  "garden.v2",
		"x/.hidden.yaml":  ".hidden",
		"./garden-A.yaml": "garden-A",
	} {
		if got := jobName(file); got != want {
			t.Errorf("jobName(%q) = %q, want %q", file, got, want)
		}
	}
}

func TestFolder(t *testing.T) {
	for _, c := range []struct {
		r    request
		want string
	}{
		{request{job: "garden.yaml"}, "garden-drawings"},
		{request{job: "jobs/garden.yaml"}, filepath.Join("jobs", "garden-drawings")},
		{request{job: "-"}, "job-drawings"},
		{request{job: "jobs/garden.yaml", dir: "out"}, "out"},
	} {
		if got := c.r.folder(); got != c.want {
			t.Errorf("folder of %v = %q, want %q", c.r, got, c.want)
		}
	}
}

func TestIsSheet(t *testing.T) {
	for file, want := range map[string]bool{
		"garden-A00.svg":    true,
		"garden-A12.png":    true,
		"garden-A100.svg":   true,
		"garden-A1.svg":     false,
		"garden-A.svg":      false,
		"garden-A01.pdf":    false,
		"garden-A01b.svg":   false,
		"garden-A01.svg.gz": false,
		"garden-flat.pdf":   false,
		"gardens-A01.svg":   false,
		"A01.svg":           false,
	} {
		if got := isSheet("garden", file); got != want {
			t.Errorf("isSheet(garden, %q) = %v, want %v", file, got, want)
		}
	}
}

func TestAttachedName(t *testing.T) {
	for file, want := range map[string]string{
		"-":                     "job.yaml",
		"/home/somebody/k.yaml": "k.yaml",
		"kōwhai.yaml":           "kōwhai.yaml",
		"a\U0001F600b.yaml":     "a_b.yaml",
		"a\xffb\n.yaml":         "a_b_.yaml",
	} {
		if got := attachedName(file); got != want {
			t.Errorf("attachedName(%q) = %q, want %q", file, got, want)
		}
	}
}
