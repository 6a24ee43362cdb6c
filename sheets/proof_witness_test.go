package sheets_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// witnessFolder holds scripts round programs from elsewhere, which know nothing
// of this project: readers and painters of finished files, a modeller of solids.
const witnessFolder = "../.ci/witness"

// witness is a command that runs one of the scripts. Where they are not
// installed the proof is skipped, and says so; under CI=true it fails.
func witness(t testing.TB, script string, args ...string) *exec.Cmd {
	t.Helper()
	node := tool(t, "node")
	if _, err := os.Stat(filepath.Join(witnessFolder, "node_modules")); err != nil {
		const how = "npm ci --omit=optional --prefix .ci/witness"
		if os.Getenv("CI") == "true" {
			t.Fatalf("the witnesses are not installed: %s", how)
		}
		t.Skipf("NOT PROVED: the witnesses are not installed: %s", how)
	}
	return exec.Command(node, append([]string{filepath.Join(witnessFolder, script)}, args...)...)
}

// quiet runs a program that must have nothing to complain of: it ends well and
// writes nothing on its second stream. It returns what the first one says.
func quiet(cmd *exec.Cmd) ([]byte, error) {
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	err := cmd.Run()
	if err != nil || errs.Len() > 0 {
		return nil, fmt.Errorf("%s: %v: %s", filepath.Base(cmd.Path), err, bytes.TrimSpace(errs.Bytes()))
	}
	return out.Bytes(), nil
}
