package sample

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"io"
	"os"
	"os/exec"
	"testing"
	"time"
)

// Tool is the path of a program that a test leans on. Where it is not
// installed the test is skipped, and says so; under CI=true it fails.
func Tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err == nil {
		return path
	}
	if os.Getenv("CI") == "true" {
		t.Fatalf("%s is not installed", name)
	}
	t.Skipf("NOT TESTED: %s is not installed", name)
	return ""
}

// Run is what the program prints. It fails the test when the program does.
func Run(t testing.TB, name string, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	cmd := exec.Command(Tool(t, name), args...)
	cmd.Stdout, cmd.Stderr = &out, &errs
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s %q: %v\n%s%s", name, args, err, out.Bytes(), errs.Bytes())
	}
	return out.String()
}

// Said is all that the program says, on both its streams: what many complain of
// they write on the second and end well all the same. It fails the test when the
// program fails.
func Said(t testing.TB, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(Tool(t, name), args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %q: %v\n%s", name, args, err, out)
	}
	return string(out)
}

// childVariable tells a test that it runs as the second process of SameBytes.
const childVariable = "PLUMBCUT_TEST_CHILD"

// overASecond is long enough for any clock in the output to show.
const overASecond = 1100 * time.Millisecond

// SameBytes checks that write gives the same bytes again in another process
// over a second later. It starts the test binary once more with the same test.
func SameBytes(t *testing.T, write func(io.Writer) error) {
	t.Helper()
	var buf bytes.Buffer
	if err := write(&buf); err != nil {
		t.Fatal(err)
	}
	digest := fmt.Sprintf("digest %x\n", sha256.Sum256(buf.Bytes()))
	if os.Getenv(childVariable) != "" {
		fmt.Print(digest)
		return
	}
	time.Sleep(overASecond)
	cmd := exec.Command(os.Args[0], "-test.run=^"+t.Name()+"$")
	cmd.Env = append(os.Environ(), childVariable+"=1")
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(out, []byte(digest)) {
		t.Errorf("another process a second later: %s, want %s", out, digest)
	}
}
