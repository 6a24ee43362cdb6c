package keys

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// The most that a file may hold. A large job has some hundred values; the
// limits keep a file made to hurt from costing more than a moment.
const (
	MaxSize  = 1 << 20 // bytes
	maxDepth = 20      // values inside values
	maxNodes = 20_000  // values, those that aliases repeat counted each time
)

// Doc is a file that is sound YAML of the plain kind, not yet held against a
// table.
type Doc struct {
	file  string
	lines []string
	root  *yaml.Node // nil if the file says nothing
}

// Parse reads the text of a file. The name is for errors, which are Errors.
func Parse(file string, text []byte) (*Doc, error) {
	p := &parser{file: file}
	if !p.sound(text) {
		return nil, p.errs.Err()
	}
	p.text = string(bytes.TrimPrefix(text, []byte(byteOrderMark)))
	doc := &Doc{file: file, lines: strings.Split(p.text, "\n"), root: p.document()}
	if doc.root != nil && len(p.errs) == 0 {
		p.walk(doc.root, nil, map[*yaml.Node]bool{})
	}
	return doc, p.errs.Err()
}

// Value is the text of a value at the top of the file; empty if there is none.
func (d *Doc) Value(key string) string {
	if d.root == nil || d.root.Kind != yaml.MappingNode {
		return ""
	}
	for i := 0; i+1 < len(d.root.Content); i += 2 {
		if v := resolve(d.root.Content[i+1]); d.root.Content[i].Value == key && v.Kind == yaml.ScalarNode {
			return strings.TrimSpace(v.Value)
		}
	}
	return ""
}

// resolve follows an alias to what it stands for.
func resolve(n *yaml.Node) *yaml.Node {
	for n.Kind == yaml.AliasNode {
		n = n.Alias
	}
	return n
}

type parser struct {
	file  string
	text  string
	nodes int
	errs  Errors
}

func (p *parser) fail(rule Rule, pos Pos, format string, args ...any) {
	p.errs = append(p.errs, Error{p.file, pos, rule, fmt.Sprintf(format, args...)})
}

const byteOrderMark = "\ufeff"

// sound looks at the bytes alone.
func (p *parser) sound(text []byte) bool {
	const megabyte = 1 << 20
	switch {
	case len(text) > MaxSize:
		p.fail(RuleFile, Pos{}, "the file is %.1f MB long; the most is %d MB", float64(len(text))/megabyte, MaxSize/megabyte)
		return false
	case bytes.HasPrefix(text, []byte{0xff, 0xfe}), bytes.HasPrefix(text, []byte{0xfe, 0xff}):
		p.fail(RuleFile, Pos{}, "the file is not in UTF-8 but seems to be in UTF-16; save it as UTF-8")
		return false
	}
	pos := Pos{1, 1}
	for rest := bytes.TrimPrefix(text, []byte(byteOrderMark)); len(rest) > 0; {
		r, size := utf8.DecodeRune(rest)
		switch {
		case r == utf8.RuneError && size == 1:
			p.fail(RuleFile, pos, "the file is not in UTF-8, by the byte %#02x here; save it as UTF-8", rest[0])
			return false
		case !printable(r):
			p.fail(RuleFile, pos, "the file holds the control character U+%04X; delete it", r)
			return false
		}
		pos.Column++
		if r == '\n' {
			pos = Pos{pos.Line + 1, 1}
		}
		rest = rest[size:]
	}
	return true
}

// printable is what YAML 1.2, section 5.1, lets a file hold.
func printable(r rune) bool {
	switch {
	case r == '\t', r == '\n', r == '\r', r == 0x85:
		return true
	case r < ' ', r >= 0x7f && r < 0xa0, r == 0xfeff, r == 0xfffe, r == 0xffff:
		return false
	}
	return true
}

// document reads the one document of the file.
func (p *parser) document() *yaml.Node {
	dec := yaml.NewDecoder(strings.NewReader(p.text))
	var doc, next yaml.Node
	err := dec.Decode(&doc)
	if err == nil {
		err = dec.Decode(&next)
		if err == nil {
			p.fail(RuleFile, Pos{next.Line, next.Column}, "a second document starts here; keep one in a file, without a line ---")
		}
	}
	if err != nil && !errors.Is(err, io.EOF) {
		p.syntax(err)
	}
	if len(doc.Content) == 0 || blank(doc.Content[0]) {
		return nil
	}
	return doc.Content[0]
}

// blank reports whether there is nothing after a key, or the word null or ~.
func blank(n *yaml.Node) bool {
	n = resolve(n)
	return n.Kind == yaml.ScalarNode && n.ShortTag() == "!!null"
}

// walk bounds the nesting and the number of values, with those that aliases
// repeat, and refuses what only other programs have a use for. It stops at the
// first fault of the first kind.
func (p *parser) walk(n, alias *yaml.Node, open map[*yaml.Node]bool) bool {
	pos := Pos{n.Line, n.Column}
	p.nodes++
	switch {
	case n.Kind == yaml.AliasNode:
		if open[n.Alias] {
			p.fail(RuleNesting, pos, "the alias *%s stands inside its own anchor; write the value out", n.Value)
			return false
		}
		return p.walk(n.Alias, n, open)
	case p.nodes > maxNodes:
		if alias != nil {
			pos = Pos{alias.Line, alias.Column}
		}
		p.fail(RuleNesting, pos, "the file holds more than %d values; no job needs so many", maxNodes)
		return false
	case len(open) > maxDepth:
		p.fail(RuleNesting, pos, "values are nested more than %d deep here; no key needs that", maxDepth)
		return false
	case n.Style&yaml.TaggedStyle != 0:
		p.fail(RulePlain, pos, "the tag %s is not taken; write the value alone", Quote(n.Tag))
	}
	open[n] = true
	defer delete(open, n)
	for _, c := range n.Content {
		if !p.walk(c, alias, open) {
			return false
		}
	}
	return true
}

// yamlError takes the line off an error of package yaml.
var yamlError = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)`)

// trouble words the errors of package yaml for people.
var trouble = []struct{ yaml, plain string }{
	{"mapping values are not allowed", "a colon that YAML does not expect here; put the value in quotes, or start the key on its own line, in line with its neighbours"},
	{"did not find expected key", "this is out of line with the lines above, or goes on after a closing quote or bracket; indent the keys of one group alike, put a value that holds a quote in quotes of the other kind"},
	{"did not find expected '-' indicator", "this is out of line with the list above it; start each item with a dash, indented alike"},
	{"could not find expected ':'", "a key without its colon; write it as key: value"},
	{"found a tab character", "a tab in the indentation; indent with spaces"},
	{"cannot start any token", "a value that starts with a sign that YAML keeps for itself, or a tab; put the value in quotes, indent with spaces"},
	{"unknown escape character", "a backslash that YAML does not know in double quotes; write it twice, or use single quotes"},
	{"unexpected end of stream", "a quote that is opened and not closed; close it, or put a value that holds a quote in quotes of the other kind"},
	{"did not find expected ',' or", "a bracket that is opened and not closed, or a comma that is missing before this; close it, or add the comma"},
	{"did not find expected node content", "a bracket, comma or sign with no value before it; write the value, or put it in quotes"},
	{"block sequence entries are not allowed", "a dash that starts a list inside a line; start the list under its key"},
	{"exceeded max depth", "values are nested too deep; no key needs that"},
}

// syntax reports an error of package yaml.
func (p *parser) syntax(err error) {
	m := yamlError.FindStringSubmatch(err.Error())
	if m == nil {
		m = []string{"", "", err.Error()}
	}
	line := p.locate(m[1], m[2])
	if anchor, ok := strings.CutPrefix(m[2], "unknown anchor '"); ok {
		anchor = strings.TrimSuffix(anchor, "' referenced")
		p.fail(RuleSyntax, line, "the alias *%s has no anchor before it; write &%s before the value that it repeats", anchor, anchor)
		return
	}
	for _, t := range trouble {
		if strings.Contains(m[2], t.yaml) {
			p.fail(RuleSyntax, line, "%s", t.plain)
			return
		}
	}
	p.fail(RuleSyntax, line, "this is not YAML: %s; see that quotes and brackets are closed and that keys are in line", m[2])
}

// mostRetries is the size of text that is read again to find the line of an
// error. It bounds the time that a large broken file can take.
const mostRetries = 64 << 10

// locate finds the line of an error. Package yaml often names the start of
// what it was reading, or nothing; the true line is the last of the shortest
// beginning of the text that fails in the same way.
func (p *parser) locate(reported, message string) Pos {
	lines := strings.SplitAfter(p.text, "\n")
	at := 0
	fmt.Sscan(reported, &at)
	if len(p.text) <= mostRetries {
		good, bad := 0, len(lines)
		for bad-good > 1 {
			mid := (good + bad) / 2
			if fails(strings.Join(lines[:mid], ""), message) {
				bad = mid
			} else {
				good = mid
			}
		}
		at = bad
	}
	at = min(max(at, 1), len(lines))
	for at > 1 && strings.TrimSpace(lines[at-1]) == "" {
		at-- // an error at the end of the text belongs to its last words
	}
	indent := len(lines[at-1]) - len(strings.TrimLeft(lines[at-1], " "))
	return Pos{at, indent + 1}
}

func fails(text, message string) bool {
	var n yaml.Node
	dec := yaml.NewDecoder(strings.NewReader(text))
	err := dec.Decode(&n)
	if err == nil {
		err = dec.Decode(&n)
	}
	return err != nil && strings.HasSuffix(err.Error(), message)
}
