package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestScripts runs the command line as a user would: each file of
// testdata/script is a list of steps, carried out in a fresh folder that holds
// the job file testdata/garden.yaml. The steps:
//
//	$ plumbcut ARGS          run it; must be followed by exit
//	stdin FILE               … the next one with this standard input
//	exit N                   the exit status was N
//	stdout TEXT              what was printed contains TEXT
//	stderr TEXT              what was complained contains TEXT
//	no stdout, no stderr     nothing at all was printed, complained
//	no stdout TEXT           TEXT was not printed (or no stderr TEXT)
//	exists FILE, gone FILE   a file is there, is not there
//	same FILE FILE           two files have the same bytes
//	copy FILE FILE           copy a file; folders are made
//	write FILE TEXT          write a file
//	replace FILE OLD NEW     edit a file; OLD must be in it once
//	link FILE TARGET         make FILE a symbolic link
//	protect FILE             take away the right to write
//
// Words are split at spaces; 'single quotes' hold them together.
func TestScripts(t *testing.T) {
	garden, err := os.ReadFile("testdata/garden.yaml")
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("testdata/script/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatal("no scripts found", err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txt"), func(t *testing.T) {
			t.Chdir(t.TempDir())
			if err := os.WriteFile("garden.yaml", garden, 0o666); err != nil {
				t.Fatal(err)
			}
			s := script{status: -1}
			for i, line := range strings.Split(string(text), "\n") {
				if err := s.step(words(line)); err != nil {
					t.Fatalf("%s:%d: %s\n%v\n--- stdout\n%s--- stderr\n%s", name, i+1, line, err, &s.stdout, &s.stderr)
				}
			}
			if s.unchecked {
				t.Fatalf("%s: the last run's exit status is not checked", name)
			}
		})
	}
}

// script is the state between two steps.
type script struct {
	stdin          []byte
	stdout, stderr bytes.Buffer
	status         int
	unchecked      bool // the last run's status has not been looked at
}

func (s *script) step(w []string) error {
	if len(w) == 0 || strings.HasPrefix(w[0], "#") {
		return nil
	}
	if s.unchecked && w[0] != "exit" {
		return errors.New("exit must follow a run")
	}
	arg := func(i int) string {
		if i < len(w) {
			return w[i]
		}
		return ""
	}
	switch w[0] {
	case "$":
		s.stdout.Reset()
		s.stderr.Reset()
		s.status = run(w[2:], bytes.NewReader(s.stdin), &s.stdout, &s.stderr)
		s.stdin, s.unchecked = nil, true
		return nil
	case "exit":
		s.unchecked = false
		if got := fmt.Sprint(s.status); got != arg(1) {
			return fmt.Errorf("exit status %s, want %s", got, arg(1))
		}
		return nil
	case "stdout", "stderr":
		if text := s.stream(w[0]); !strings.Contains(text, arg(1)) {
			return fmt.Errorf("%s does not contain %q", w[0], arg(1))
		}
		return nil
	case "no":
		text := s.stream(arg(1))
		if len(w) == 2 && text != "" || len(w) > 2 && strings.Contains(text, w[2]) {
			return fmt.Errorf("%s has what it should not", arg(1))
		}
		return nil
	case "stdin":
		var err error
		s.stdin, err = os.ReadFile(arg(1))
		return err
	}
	return fileStep(w[0], arg)
}

func (s *script) stream(name string) string {
	if name == "stdout" {
		return s.stdout.String()
	}
	return s.stderr.String()
}

// fileStep carries out the steps that look at or change files.
func fileStep(verb string, arg func(int) string) error {
	a, b := arg(1), arg(2)
	switch verb {
	case "exists":
		_, err := os.Lstat(a)
		return err
	case "gone":
		if _, err := os.Lstat(a); !errors.Is(err, os.ErrNotExist) {
			return fmt.Errorf("%s is there (%v)", a, err)
		}
		return nil
	case "same":
		x, err := os.ReadFile(a)
		if err != nil {
			return err
		}
		y, err := os.ReadFile(b)
		if err == nil && !bytes.Equal(x, y) {
			err = fmt.Errorf("%s and %s differ", a, b)
		}
		return err
	case "copy":
		data, err := os.ReadFile(a)
		return errors.Join(err, os.MkdirAll(filepath.Dir(b), 0o777), os.WriteFile(b, data, 0o666))
	case "write":
		return errors.Join(os.MkdirAll(filepath.Dir(a), 0o777), os.WriteFile(a, []byte(b+"\n"), 0o666))
	case "replace":
		data, err := os.ReadFile(a)
		if n := strings.Count(string(data), b); err == nil && n != 1 {
			err = fmt.Errorf("%q is in %s %d times, want once", b, a, n)
		}
		edited := strings.Replace(string(data), b, arg(3), 1)
		return errors.Join(err, os.WriteFile(a, []byte(edited), 0o666))
	case "link":
		return os.Symlink(b, a)
	case "protect":
		return os.Chmod(a, 0o444)
	}
	return fmt.Errorf("no step is called %q", verb)
}

// words splits a step. An empty pair of quotes is an empty word.
func words(line string) (list []string) {
	inQuotes, word, has := false, strings.Builder{}, false
	flush := func() {
		if has {
			list = append(list, word.String())
		}
		word.Reset()
		has = false
	}
	for _, r := range line {
		switch {
		case r == '\'':
			inQuotes, has = !inQuotes, true
		case r == ' ' && !inQuotes:
			flush()
		default:
			word.WriteRune(r)
			has = true
		}
	}
	flush()
	return list
}

func TestWords(t *testing.T) {
	got := words(`$ plumbcut  draw 'my garden.yaml' '' -o=x`)
	want := []string{"$", "plumbcut", "draw", "my garden.yaml", "", "-o=x"}
	if !slices.Equal(got, want) {
		t.Errorf("words = %q, want %q", got, want)
	}
}
