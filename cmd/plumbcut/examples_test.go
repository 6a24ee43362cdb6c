package main

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/sheets"
)

// picture is the example's sheet that the README shows.
const (
	pictureOf    = "courtyard"
	pictureTitle = "Cross-section"
	pictureFile  = "cross-section.png"
)

// demo is the example whose drawings are kept beside it, for visitors.
const demo = "courtyard"

// TestExamplesAreAsDrawn draws every example and compares the demo with the
// drawings kept beside it, so that what a visitor sees is what the program
// makes. With -update the kept drawings are drawn anew.
//
// Compressed files depend on the release of Go as well as on the job, so they
// are compared only in the continuous check.
func TestExamplesAreAsDrawn(t *testing.T) {
	jobs, err := filepath.Glob(filepath.Join(root, "examples", "*", "*.yaml"))
	if err != nil || len(jobs) == 0 {
		t.Fatal("no examples found", err)
	}
	for _, job := range jobs {
		r := request{job: job}
		t.Run(jobName(job), func(t *testing.T) {
			kept := r.folder()
			isDemo := jobName(job) == demo
			out := t.TempDir()
			if *update && isDemo {
				out = kept
			}
			var stderr bytes.Buffer
			if status := run([]string{"draw", job, "-o", out}, nil, io.Discard, &stderr); status != exitFine {
				t.Fatalf("drawing ended with status %d\n%s", status, &stderr)
			}
			if !isDemo {
				return
			}
			smallEnough(t, out)
			exact := os.Getenv("CI") == "true"
			fresh := drawings(t, out, exact)
			if old := drawings(t, kept, exact); !slices.Equal(old, fresh) {
				t.Errorf("the drawings in %s are not those that the job gives now%s; renew them with -update",
					kept, firstDifference(old, fresh))
			}
		})
	}
	t.Run("picture", examplePicture)
}

// The most that the demo's files may take, bytes: the set is sent by mail, and a
// sheet opens at once.
const (
	mostOfSet   = 400_000
	mostOfSheet = 120_000
)

// smallEnough holds the drawings in a folder to their greatest sizes.
func smallEnough(t *testing.T, dir string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	looked := 0
	for _, e := range entries {
		info, err := e.Info()
		if err != nil {
			t.Fatal(err)
		}
		most := map[string]int64{".pdf": mostOfSet, ".svg": mostOfSheet}[filepath.Ext(e.Name())]
		if most == 0 {
			continue
		}
		looked++
		if info.Size() > most {
			t.Errorf("%s has %d bytes, want %d at most", e.Name(), info.Size(), most)
		}
	}
	if looked == 0 {
		t.Errorf("no drawings in %s", dir)
	}
}

// drawings reads the drawings in a folder, without what is compressed unless
// exact.
func drawings(t *testing.T, dir string, exact bool) []string {
	t.Helper()
	if _, err := os.Stat(dir); err != nil {
		return nil
	}
	return slices.DeleteFunc(folder(t, dir), func(f string) bool {
		name, _, _ := strings.Cut(f, "=")
		ext := filepath.Ext(name)
		return !exact && ext != ".svg" && ext != ".csv"
	})
}

func firstDifference(a, b []string) string {
	for i := range max(len(a), len(b)) {
		if i >= len(a) || i >= len(b) {
			return ": there are " + count(len(a), "file", "files") + ", not " + count(len(b), "file", "files")
		}
		if a[i] != b[i] {
			name, _, _ := strings.Cut(b[i], "=")
			return ", first " + name
		}
	}
	return ""
}

// examplePicture compares the README's picture with the sheet that it shows.
func examplePicture(t *testing.T) {
	folder := filepath.Join(root, "examples", pictureOf)
	c := console{nil, io.Discard, io.Discard}
	f, err := c.makeFrame(request{job: filepath.Join(folder, pictureOf+".yaml")})
	if err != nil {
		t.Fatal(err)
	}
	set, err := sheets.Make(f)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(set.Sheets, func(s *draw.Sheet) bool { return s.Title == pictureTitle })
	if i < 0 {
		t.Fatalf("no sheet of the example is called %q", pictureTitle)
	}
	fresh, err := pngOf(pictureFile, set.Sheets[i]).bytes()
	if err != nil {
		t.Fatal(err)
	}
	kept := filepath.Join(folder, pictureFile)
	if *update {
		if err := os.WriteFile(kept, fresh, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	old, err := os.ReadFile(kept)
	if err != nil {
		t.Fatal(err)
	}
	if os.Getenv("CI") == "true" && !bytes.Equal(old, fresh) {
		t.Errorf("%s is not the sheet as drawn now; renew it with -update", kept)
	}
}
