package keys

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"
)

// TestParseRefuses looks at every error of a text word for word.
func TestParseRefuses(t *testing.T) {
	for _, tt := range []struct {
		name, text string
		rule       Rule
		want       string
	}{
		{"quote", "a: 1\nb: \"unclosed\nc: 3\nd: 4\n", RuleSyntax, `f:2:1: a quote that is opened and not closed; close it, or put a value that holds a quote in quotes of the other kind`},
		{"quote in quotes", "a: 1\nb: 'it's'\n", RuleSyntax, `f:2:1: this is out of line with the lines above, or goes on after a closing quote or bracket; indent the keys of one group alike, put a value that holds a quote in quotes of the other kind`},
		{"inches in quotes", "a: 1\nb: \"4 3/8\"\"\n", RuleSyntax, `f:2:1: a quote that is opened and not closed; close it, or put a value that holds a quote in quotes of the other kind`},
		{"out of line", "a: 1\nb:\n  c: 1\n d: 2\n", RuleSyntax, `f:4:2: this is out of line with the lines above, or goes on after a closing quote or bracket; indent the keys of one group alike, put a value that holds a quote in quotes of the other kind`},
		{"too far in", "a: 1\nb:\n  c: 1\n   d: 2\n", RuleSyntax, `f:4:4: a colon that YAML does not expect here; put the value in quotes, or start the key on its own line, in line with its neighbours`},
		{"second colon", "a: 1\nnote: Beam: 240\nc: 2\n", RuleSyntax, `f:2:1: a colon that YAML does not expect here; put the value in quotes, or start the key on its own line, in line with its neighbours`},
		{"no colon", "a: 1\nb\nc: 2\n", RuleSyntax, `f:2:1: a key without its colon; write it as key: value`},
		{"tab", "a: 1\n\tb: 2\n", RuleSyntax, `f:2:1: a tab in the indentation; indent with spaces`},
		{"tab before a dash", "a: 1\nb:\n\t- 2\n", RuleSyntax, `f:3:1: a value that starts with a sign that YAML keeps for itself, or a tab; put the value in quotes, indent with spaces`},
		{"sign", "a: 1\nb: @x\n", RuleSyntax, `f:2:1: a value that starts with a sign that YAML keeps for itself, or a tab; put the value in quotes, indent with spaces`},
		{"backslash", `a: "x\q"`, RuleSyntax, `f:1:1: a backslash that YAML does not know in double quotes; write it twice, or use single quotes`},
		{"bracket", "a: 1\nb: [1, 2\nc: 3\n", RuleSyntax, `f:2:1: a bracket that is opened and not closed, or a comma that is missing before this; close it, or add the comma`},
		{"brace", "a: 1\nb: {x: 1\nc: 3\n", RuleSyntax, `f:2:1: a bracket that is opened and not closed, or a comma that is missing before this; close it, or add the comma`},
		{"closing bracket", "a: 1\nb: ]\n", RuleSyntax, `f:2:1: a bracket, comma or sign with no value before it; write the value, or put it in quotes`},
		{"after a bracket", "a: 1\nb: [1 2] 3\n", RuleSyntax, `f:2:1: this is out of line with the lines above, or goes on after a closing quote or bracket; indent the keys of one group alike, put a value that holds a quote in quotes of the other kind`},
		{"dash", "a: 1\nb: - 3\n", RuleSyntax, `f:2:1: a dash that starts a list inside a line; start the list under its key`},
		{"dash and key", "a:\n  - 1\n b: 2\n", RuleSyntax, `f:3:2: this is out of line with the lines above, or goes on after a closing quote or bracket; indent the keys of one group alike, put a value that holds a quote in quotes of the other kind`},
		{"no such anchor", "a: 1\nb: *nobody\n", RuleSyntax, `f:2:1: the alias *nobody has no anchor before it; write &nobody before the value that it repeats`},
		{"directive", "%FOO\na: 1\n", RuleSyntax, `f:1:1: this is not YAML: found unknown directive name; see that quotes and brackets are closed and that keys are in line`},
		{"two documents", "a: 1\n---\nb: 2\n", RuleFile, `f:2:1: a second document starts here; keep one in a file, without a line ---`},
		{"not UTF-8", "a: 1\nb: \xff\n", RuleFile, `f:2:4: the file is not in UTF-8, by the byte 0xff here; save it as UTF-8`},
		{"UTF-16", "\xff\xfea\x00", RuleFile, `f:1:1: the file is not in UTF-8 but seems to be in UTF-16; save it as UTF-8`},
		{"control character", "a: b\x00\n", RuleFile, `f:1:5: the file holds the control character U+0000; delete it`},
		{"byte order mark inside", "a: b\ufeff\n", RuleFile, `f:1:5: the file holds the control character U+FEFF; delete it`},
		{"alias in its anchor", "a: &x\n  b: *x\n", RuleNesting, `f:2:6: the alias *x stands inside its own anchor; write the value out`},
		{"alias in its list", "a: &x [*x]\n", RuleNesting, `f:1:8: the alias *x stands inside its own anchor; write the value out`},
		{"deep", strings.Repeat("[", 30) + strings.Repeat("]", 30), RuleNesting, `f:1:22: values are nested more than 20 deep here; no key needs that`},
		{"very deep", strings.Repeat("[", 20000), RuleSyntax, `f:1:1: values are nested too deep; no key needs that`},
		{"tag", "a: !foo 1\n", RulePlain, `f:1:4: the tag "!foo" is not taken; write the value alone`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Parse("f", []byte(tt.text))
			var errs Errors
			if !errors.As(err, &errs) || err.Error() != tt.want {
				t.Fatalf("got\n%v\nwant\n%s", err, tt.want)
			}
			if errs[0].Rule != tt.rule {
				t.Errorf("rule %q, want %q", errs[0].Rule, tt.rule)
			}
		})
	}
}

func TestParseTakes(t *testing.T) {
	for text, want := range map[string]string{
		"a: 1":                        "1",
		"\ufeffa: 1\r\nb: 2\r\n":      "1", // as some editors begin a file, and end its lines
		"---\na: 1\n...\n":            "1",
		"%YAML 1.1\n---\na: 1\n":      "1",
		"a: &x 1\nb: *x\n":            "1",
		"b: &x 1\na: *x\n":            "1",
		"a: 11' 4 3/8\"\n":            `11' 4 3/8"`, // the marks of feet and inches are no quotes here
		"a: 11' 4 3/8\" # as found\n": `11' 4 3/8"`,
		"{a: 11' 4 3/8\", b: 5'}":     `11' 4 3/8"`,
		"a: 1:20":                     "1:20",
		"a: 50%":                      "50%",
		"a: 35°":                      "35°",
		"a: >-\n  one\n  two\n":       "one two",
		"# nothing\n":                 "",
		"":                            "",
		"~":                           "",
		"- a":                         "",
		"b: 1":                        "",
	} {
		doc, err := Parse("f", []byte(text))
		if err != nil {
			t.Errorf("Parse(%q) fails with %v", text, err)
			continue
		}
		if got := doc.Value("a"); got != want {
			t.Errorf("Parse(%q) gives a as %q, want %q", text, got, want)
		}
	}
}

// TestParseIsQuick gives it what is made to hurt.
func TestParseIsQuick(t *testing.T) {
	bomb := "a0: &a0 [x, x, x, x, x, x, x, x, x]\n"
	for i := range 30 {
		bomb += fmt.Sprintf("a%d: &a%d [%s*a%d]\n", i+1, i+1, strings.Repeat(fmt.Sprintf("*a%d, ", i), 8), i)
	}
	const enough = 2 * time.Second // a person waits no longer for an error
	for name, text := range map[string]string{
		"20 MB":           strings.Repeat("a: 1\n", 4<<20),
		"alias bomb":      bomb,
		"brackets":        strings.Repeat("[", MaxSize),
		"braces":          strings.Repeat("{a: ", MaxSize/4),
		"paired brackets": strings.Repeat("[", MaxSize/2) + strings.Repeat("]", MaxSize/2),
		"dashes":          strings.Repeat("- ", MaxSize/2),
		"keys":            strings.Repeat("a: 1\n", MaxSize/5),
		"values":          "[" + strings.Repeat("1,", MaxSize/2-2) + "1]",
		"questions":       strings.Repeat("? ", MaxSize/2),
		"anchors":         strings.Repeat("- &a 1\n- *a\n", MaxSize/12),
		"quote":           "a: \"" + strings.Repeat("x\n", MaxSize/2-4),
		"remarks":         strings.Repeat("#\n", MaxSize/2),
		"colons":          strings.Repeat("a:\n ", MaxSize/4),
	} {
		// The least of three, since another process may hold the machine up.
		took := time.Hour
		var err error
		for try := 0; try < 3 && took > enough; try++ {
			start := time.Now()
			_, err = Parse("f", []byte(text))
			took = min(took, time.Since(start))
		}
		if err == nil && name != "remarks" {
			t.Errorf("%s: no error", name)
		}
		if took > enough {
			t.Errorf("%s: took %v", name, took)
		}
	}
}
