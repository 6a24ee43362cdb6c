package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// asProgram makes the test binary be plumbcut itself, so that a test can start
// it as a process of its own.
const asProgram = "PLUMBCUT_TEST_AS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
	}
	os.Exit(m.Run())
}

// program prepares plumbcut as a process in a folder that holds garden.yaml.
func program(t *testing.T, args ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	garden, err := os.ReadFile("testdata/garden.yaml")
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(self, args...)
	cmd.Dir = t.TempDir()
	cmd.Env = append(os.Environ(), asProgram+"=1")
	if err := os.WriteFile(filepath.Join(cmd.Dir, "garden.yaml"), garden, 0o666); err != nil {
		t.Fatal(err)
	}
	return cmd
}

// TestSameJobSameBytes draws one job in two processes, in different folders,
// time zones, languages, numbers of cores, and more than a second apart, which
// is the step of the clocks that file formats keep.
func TestSameJobSameBytes(t *testing.T) {
	settings := [][]string{
		{"TZ=Pacific/Auckland", "LC_ALL=C", "GOMAXPROCS=1"},
		{"TZ=America/Caracas", "LC_ALL=de_DE.UTF-8", "GOMAXPROCS=2"},
	}
	var drawn [2][]string
	var said [2]string
	for i, env := range settings {
		if i > 0 {
			time.Sleep(1100 * time.Millisecond)
		}
		cmd := program(t, "draw", "garden.yaml", "--flat", "--png")
		cmd.Env = append(cmd.Env, env...)
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		said[i] = string(out)
		drawn[i] = folder(t, filepath.Join(cmd.Dir, "garden-drawings"))
	}
	if said[0] != said[1] {
		t.Errorf("the two runs said\n%s\nand\n%s", said[0], said[1])
	}
	if len(drawn[0]) < 4 {
		t.Fatalf("only %d files were drawn", len(drawn[0]))
	}
	for i, a := range drawn[0] {
		name, _, _ := strings.Cut(a, "=")
		if i >= len(drawn[1]) || drawn[1][i] != a {
			t.Errorf("%s differs between two runs", name)
		}
	}
}

// TestFullDisk gives the process a limit on the size of a file, which fails a
// write half-way as a full disk does.
func TestFullDisk(t *testing.T) {
	shell, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("no shell to set the limit with:", err)
	}
	cmd := program(t, "draw", "garden.yaml", "-o", "out")
	out := filepath.Join(cmd.Dir, "out")
	if err := os.Mkdir(out, 0o777); err != nil {
		t.Fatal(err)
	}
	fill(t, out, "garden.pdf=earlier", "garden-A00.svg=earlier", "garden-A98.svg=earlier")
	before := folder(t, out)
	const limit = `ulimit -f 8; exec "$0" "$@"` // 8 blocks of 1 KiB
	cmd.Args = slices.Concat([]string{shell, "-c", limit, cmd.Path}, cmd.Args[1:])
	cmd.Path = shell
	var stdout, stderr bytes.Buffer
	cmd.Stdout, cmd.Stderr = &stdout, &stderr
	err = cmd.Run()
	var status *exec.ExitError
	if !errors.As(err, &status) || status.ExitCode() != exitJob {
		t.Fatalf("drawing on a full disk ended with %v, want exit status %d\n%s%s", err, exitJob, &stdout, &stderr)
	}
	if says := "the disk is full"; !strings.Contains(stderr.String(), says) {
		t.Errorf("stderr %q does not say %q", &stderr, says)
	}
	want(t, out, before...)
}

// TestKilled kills runs at different moments. Whatever lies in the folder
// afterwards is whole, of the earlier set or of the new one, and the next run
// clears away what was left.
func TestKilled(t *testing.T) {
	cmd := program(t, "draw", "garden.yaml", "-o", "out")
	job, out := filepath.Join(cmd.Dir, "garden.yaml"), filepath.Join(cmd.Dir, "out")
	again := func() *exec.Cmd {
		return &exec.Cmd{Path: cmd.Path, Args: cmd.Args, Dir: cmd.Dir, Env: cmd.Env}
	}
	draw := func() []string {
		t.Helper()
		if said, err := again().CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, said)
		}
		return folder(t, out)
	}
	earlier := draw()
	text, err := os.ReadFile(job)
	if err != nil {
		t.Fatal(err)
	}
	text = bytes.Replace(text, []byte("title: Garden"), []byte("title: Orchard"), 1)
	if err := os.WriteFile(job, text, 0o666); err != nil {
		t.Fatal(err)
	}
	start := time.Now()
	fresh := draw()
	whole := time.Since(start)
	const kills = 12
	for i := range kills {
		fill(t, out, earlier...)
		run := again()
		if err := run.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(whole * time.Duration(i+1) / kills)
		run.Process.Kill()
		run.Wait()
		for _, f := range folder(t, out) {
			name, _, _ := strings.Cut(f, "=")
			if !strings.HasPrefix(name, stagePrefix) && !slices.Contains(earlier, f) && !slices.Contains(fresh, f) {
				t.Errorf("%s is neither of the earlier set nor of the new one", name)
			}
		}
	}
	if got := draw(); !slices.Equal(got, fresh) {
		t.Error("after the kills the folder does not hold the new set alone")
	}
}
