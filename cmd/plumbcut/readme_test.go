package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom/frame"
)

var update = flag.Bool("update", false, "write what is made from the code anew")

// readme reads the README.
func readme(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestReadmeKeys holds the README's list of keys to the table that the reader
// works by.
func TestReadmeKeys(t *testing.T) {
	const begin, end = "-update -->\n", "<!-- end -->"
	text := readme(t)
	before, rest, ok := strings.Cut(text, begin)
	got, after, ok2 := strings.Cut(rest, end)
	if !ok || !ok2 {
		t.Fatal("the README has lost the marks around its list of keys")
	}
	want := "\n" + frame.KeyReference()
	if got == want {
		return
	}
	if !*update {
		t.Fatal("the README's list of keys is not that of the reader; renew it with -update")
	}
	text = before + begin + want + end + after
	if err := os.WriteFile(filepath.Join(root, "README.md"), []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

// TestReadmeFigures finds every key of the figures in the README.
func TestReadmeFigures(t *testing.T) {
	_, section, _ := strings.Cut(readme(t), "## The figures")
	section, _, _ = strings.Cut(section, "\n## ")
	told := map[string]bool{}
	for _, m := range regexp.MustCompile("`([^`]+)`").FindAllStringSubmatch(section, -1) {
		told[m[1]] = true
	}
	keys := jsonKeys(reflect.TypeFor[frame.Figures](), map[string]bool{})
	if len(keys) < 20 {
		t.Fatalf("only %d keys found in the figures", len(keys))
	}
	for key := range keys {
		if !told[key] {
			t.Errorf("the README does not tell of %q in the figures", key)
		}
	}
}

// jsonKeys collects the names that a type has in JSON.
func jsonKeys(t reflect.Type, keys map[string]bool) map[string]bool {
	switch t.Kind() {
	case reflect.Slice, reflect.Array, reflect.Pointer:
		jsonKeys(t.Elem(), keys)
	case reflect.Struct:
		for i := range t.NumField() {
			name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
			keys[name] = true
			jsonKeys(t.Field(i).Type, keys)
		}
	}
	return keys
}

// TestReadmeCommands carries out the README's first command, into another
// folder, and finds the second in the continuous check.
func TestReadmeCommands(t *testing.T) {
	commands := regexp.MustCompile(`(?m)^    go (run|test) (.*)$`).FindAllStringSubmatch(readme(t), 2)
	if len(commands) != 2 || commands[0][1] != "run" || commands[1][1] != "test" {
		t.Fatalf("the README's first two commands are %q, want one to draw and one to test", commands)
	}
	args := strings.Fields(commands[0][2])
	if args[0] != "./cmd/plumbcut" {
		t.Fatalf("the README runs %s", args[0])
	}
	out := t.TempDir()
	t.Chdir(root)
	var stderr bytes.Buffer
	if status := run(append(args[1:], "-o", out), nil, io.Discard, &stderr); status != exitFine {
		t.Errorf("the README's command ended with status %d\n%s", status, &stderr)
	}
	if files, _ := filepath.Glob(filepath.Join(out, "*.svg")); len(files) == 0 {
		t.Error("the README's command drew no sheet")
	}
	ci, err := os.ReadFile(".ci/run")
	if err != nil {
		t.Fatal(err)
	}
	if want := "\ngo test " + commands[1][2] + "\n"; !strings.Contains(string(ci), want) {
		t.Errorf(".ci/run lacks the README's test command %q", want)
	}
}

// TestLinks finds what the documents lead to.
func TestLinks(t *testing.T) {
	for _, doc := range []string{"README.md", "DEVELOPERS.md"} {
		text, err := os.ReadFile(filepath.Join(root, doc))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`\]\(([^)]+)\)`).FindAllStringSubmatch(string(text), -1) {
			to := m[1]
			if strings.Contains(to, "://") || strings.HasPrefix(to, "#") {
				continue
			}
			if _, err := os.Stat(filepath.Join(root, to)); err != nil {
				t.Errorf("%s leads to %s, which is not there", doc, to)
			}
		}
	}
}

// TestPaperSizes finds every paper that a job may name among those that can be
// drawn on: the two lists live in rooms that do not know each other.
func TestPaperSizes(t *testing.T) {
	var sizes []string
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			for k, sub := range v {
				if list, ok := sub.([]any); ok && k == "enum" && slices.Contains(list, any("A3")) {
					for _, name := range list {
						sizes = append(sizes, fmt.Sprint(name))
					}
				}
				walk(sub)
			}
		case []any:
			for _, sub := range v {
				walk(sub)
			}
		}
	}
	var schema any
	if err := json.Unmarshal(frame.Schema(), &schema); err != nil {
		t.Fatal(err)
	}
	walk(schema)
	if len(sizes) < 5 {
		t.Fatalf("the schema names only the sizes %q", sizes)
	}
	for _, name := range sizes {
		if _, ok := draw.PaperByName(name); !ok {
			t.Errorf("a job may ask for paper %q, which cannot be drawn on", name)
		}
	}
}

// TestReadmeErrors makes the errors that the README shows.
func TestReadmeErrors(t *testing.T) {
	garden, err := os.ReadFile("testdata/garden.yaml")
	if err != nil {
		t.Fatal(err)
	}
	broken := strings.NewReplacer("cladding: 16", "cladding: -16",
		"section: 190x65", "sectoin: 190x65", "drop: 80", "drop: 8 hands").Replace(string(garden))
	_, err = frame.Read("garden.yaml", []byte(broken))
	if err == nil {
		t.Fatal("the broken job was read without error")
	}
	shown := "    " + strings.ReplaceAll(err.Error(), "\n", "\n    ")
	if !strings.Contains(readme(t), shown) {
		t.Errorf("the README does not show\n%s", shown)
	}
}
