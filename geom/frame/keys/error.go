package keys

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// Pos is a place in a file, counted from 1, the column in characters. The zero
// Pos is unknown.
type Pos struct{ Line, Column int }

func (p Pos) compare(q Pos) int {
	return cmp.Or(cmp.Compare(p.Line, q.Line), cmp.Compare(p.Column, q.Column))
}

// Error is one thing that is wrong with a file.
type Error struct {
	File string
	Pos  Pos
	Rule Rule
	Msg  string // "what is wrong; what would be right"
}

// Rule names what an Error found broken. Tests and other programs go by the
// rule, never by the wording.
type Rule string

// The rules of a file as a text.
const (
	RuleFile      Rule = "file"          // too large, not UTF-8, empty, several documents
	RuleSyntax    Rule = "syntax"        // not YAML
	RulePlain     Rule = "plain YAML"    // a corner of YAML that the file has no use for
	RuleNesting   Rule = "nesting"       // too deep, too many values, an anchor inside itself
	RuleUnknown   Rule = "unknown key"   // not in the table
	RuleDuplicate Rule = "duplicate key" // stands twice in one group
	RuleMissing   Rule = "missing"       // a key that has no sensible default
	RuleKind      Rule = "kind of value" // text for a length, one value for a list
	RuleRange     Rule = "range"         // too small, too large
	RuleWord      Rule = "word"          // not one of the words that the key takes
	RuleText      Rule = "text"          // too long, or characters that cannot be printed
	RuleChoice    Rule = "choice"        // keys that exclude or need each other
	RuleMany      Rule = "many errors"   // the rest is not listed
)

// Error gives "file:line:column: what is wrong; what would be right".
func (e Error) Error() string {
	return fmt.Sprintf("%s:%d:%d: %s", e.File, max(e.Pos.Line, 1), max(e.Pos.Column, 1), e.Msg)
}

// Errors are all the things that are wrong.
type Errors []Error

// Error gives one error a line.
func (l Errors) Error() string {
	lines := make([]string, len(l))
	for i, e := range l {
		lines[i] = e.Error()
	}
	return strings.Join(lines, "\n")
}

// Err sorts the errors by their place in the file, drops repeats, and is nil
// when there are none.
func (l Errors) Err() error {
	if len(l) == 0 {
		return nil
	}
	slices.SortStableFunc(l, func(a, b Error) int {
		return cmp.Or(a.Pos.compare(b.Pos), cmp.Compare(a.Msg, b.Msg))
	})
	return slices.Compact(l)
}

// longestQuote is how much of an offending value an error repeats, in
// characters: enough to find it, and still one line.
const longestQuote = 40

// Quote repeats a value from the file in an error: cut to a length that fits a
// line, and with nothing in it that could upset a terminal. A value with a
// double quote in it, as inches have, stands in curly ones.
func Quote(s string) string {
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

// Spoken is a path as a person would say it: "posts.at no. 3, ground" for
// "posts.at[2].ground". Lists are numbered from 1.
func Spoken(path string) string {
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

// parent is the path of what holds the value at a path; the root is "".
func parent(path string) string {
	if i := strings.LastIndexAny(path, ".["); i >= 0 {
		return path[:i]
	}
	return ""
}
