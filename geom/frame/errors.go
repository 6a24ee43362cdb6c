package frame

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// Error is one thing that is wrong with a job file.
type Error struct {
	File string
	Pos  Pos
	Rule Rule
	Msg  string // "what is wrong; what would be right"
}

// Rule names what an Error or a Warning found broken. Tests and other programs
// go by the rule, never by the wording.
type Rule string

// The rules of the job file as a text. Those of the timber are beside the code
// that checks them.
const (
	RuleFile      Rule = "file"          // too large, not UTF-8, empty, several documents
	RuleSyntax    Rule = "syntax"        // not YAML
	RulePlain     Rule = "plain YAML"    // a corner of YAML that a job file has no use for
	RuleNesting   Rule = "nesting"       // too deep, too many values, an anchor inside itself
	RuleUnknown   Rule = "unknown key"   //
	RuleDuplicate Rule = "duplicate key" //
	RuleMissing   Rule = "missing"       // a key that has no sensible default
	RuleKind      Rule = "kind of value" // text for a length, one value for a list
	RuleRange     Rule = "range"         // too small, too large
	RuleWord      Rule = "word"          // not one of the words that the key takes
	RuleText      Rule = "text"          // too long, or characters that cannot be printed
	RuleChoice    Rule = "choice"        // keys that exclude or need each other
	RuleOrder     Rule = "order"         // ends before it starts, not from left to right
)

// Error gives "file:line:column: what is wrong; what would be right".
func (e Error) Error() string {
	return fmt.Sprintf("%s:%d:%d: %s", e.File, max(e.Pos.Line, 1), max(e.Pos.Column, 1), e.Msg)
}

// Errors are all the things that are wrong, one a line.
type Errors []Error

// Error gives one error a line, in the order of the file.
func (l Errors) Error() string {
	lines := make([]string, len(l))
	for i, e := range l {
		lines[i] = e.Error()
	}
	return strings.Join(lines, "\n")
}

// Err sorts the errors by their place in the file, drops repeats and is nil
// when there are none.
func (l Errors) Err() error {
	if len(l) == 0 {
		return nil
	}
	slices.SortStableFunc(l, func(a, b Error) int {
		return cmp.Or(
			cmp.Compare(a.Pos.Line, b.Pos.Line),
			cmp.Compare(a.Pos.Column, b.Pos.Column),
			cmp.Compare(a.Msg, b.Msg))
	})
	return slices.Compact(l)
}

// Errorf makes an error at the place of a path in the job file; see Job.Pos.
// The message says what is wrong and, after a semicolon, what would be right.
func (j *Job) Errorf(rule Rule, path, format string, args ...any) Error {
	return Error{File: j.File, Pos: j.Pos(path), Rule: rule, Msg: fmt.Sprintf(format, args...)}
}

// longestQuote is how much of an offending value an error repeats, in
// characters: enough to find it, and still one line.
const longestQuote = 40

// quote repeats a value from the file so that it cannot upset a terminal.
// A value with a double quote in it, as inches have, stands in curly ones.
func quote(s string) string {
	var b strings.Builder
	n := 0
	for _, r := range s {
		if n == longestQuote {
			b.WriteString("…")
			break
		}
		n++
		if unicode.IsPrint(r) {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(&b, `\u%04x`, r)
		}
	}
	if strings.Contains(s, `"`) {
		return "“" + b.String() + "”"
	}
	return `"` + b.String() + `"`
}

// spoken is a path as a builder would say it: "posts.at no. 3, ground" for
// "posts.at[2].ground". Lists are numbered from 1.
func spoken(path string) string {
	var b strings.Builder
	for path != "" {
		before, rest, ok := strings.Cut(path, "[")
		b.WriteString(before)
		if !ok {
			break
		}
		index, after, _ := strings.Cut(rest, "]")
		n := 0
		for _, d := range index {
			n = n*10 + int(d-'0')
		}
		fmt.Fprintf(&b, " no. %d", n+1)
		path = after
		if key, ok := strings.CutPrefix(after, "."); ok {
			b.WriteString(", ")
			path = key
		}
	}
	return b.String()
}
