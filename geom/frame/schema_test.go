package frame_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"plumbcut/geom/frame"
	"plumbcut/geom/frame/keys"
)

var update = flag.Bool("update", false, "write the kept files anew")

const keptSchema = "../../examples/plumbcut.schema.json"

func TestSchemaIsKept(t *testing.T) {
	if *update {
		if err := os.WriteFile(keptSchema, frame.Schema(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	kept, err := os.ReadFile(keptSchema)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(kept, frame.Schema()) {
		t.Errorf("%s is not what the table of keys says; run go test ./geom/frame -update", keptSchema)
	}
}

// TestSchemaAgrees changes sound jobs in one place at a time, at every place
// and in every way that is easy to think of, and holds what the reader says
// against what the schema says. The schema may be looser only in what it does
// not see: order, a window's sill, the range of a measure in words.
func TestSchemaAgrees(t *testing.T) {
	t.Parallel()
	schema := parseSchema(t)
	for _, file := range fullJobs(t) {
		var doc yaml.Node
		if err := yaml.Unmarshal(file.text, &doc); err != nil {
			t.Fatal(err)
		}
		root := flatten(doc.Content[0])
		compare(t, schema, file.name, "as it is", root)
		mutate(root, "", func(what string) { compare(t, schema, file.name, what, root) })
	}
}

func compare(t *testing.T, schema *checked, file, what string, root *yaml.Node) {
	t.Helper()
	text, err := yaml.Marshal(root)
	if err != nil {
		t.Fatal(err)
	}
	_, err = frame.Read(file, text)
	says := schema.check(plain(root))
	switch {
	case err == nil && says != "":
		t.Errorf("%s, %s: the reader takes it, the schema says %s", file, what, says)
	case strings.Contains(what, ".units"): // the schema does not know what a bare number is
	case err != nil && says == "" && seenBySchema(err.(frame.Errors)):
		t.Errorf("%s, %s: the schema takes it, the reader says\n%v", file, what, err)
	}
}

// seenBySchema reports whether any of the errors is one that a schema can see.
func seenBySchema(errs frame.Errors) bool {
	return slices.ContainsFunc(errs, func(e frame.Error) bool {
		switch e.Rule {
		case keys.RuleUnknown, keys.RuleKind, keys.RuleWord, keys.RuleChoice:
			return true
		case keys.RuleMissing:
			return !strings.Contains(e.Msg, "has no sill")
		case keys.RuleRange:
			return !strings.Contains(e.Msg, "make the hole at least as wide") &&
				!strings.Contains(e.Msg, `"1.5" is too small`) // it would do in inches
		}
		return false
	})
}

// mutate changes a tree in one place at a time and calls do for each.
func mutate(n *yaml.Node, path string, do func(what string)) {
	switch n.Kind {
	case yaml.MappingNode:
		mutateKeys(n, path, do)
	case yaml.SequenceNode:
		kept := n.Content
		n.Content = nil
		do("no items in " + path)
		n.Content = kept
		for i, c := range n.Content {
			mutate(c, fmt.Sprintf("%s[%d]", path, i), do)
		}
	}
	kept := *n
	for _, other := range []string{"?", "-1000000000", "1000000000", "1.5", "''", "true", "[[1]]", "{}"} {
		var doc yaml.Node
		if err := yaml.Unmarshal([]byte(other), &doc); err != nil {
			panic(err)
		}
		*n = *doc.Content[0]
		do(other + " for " + path)
	}
	*n = kept
}

func mutateKeys(n *yaml.Node, path string, do func(what string)) {
	kept := n.Content
	n.Content = append(slices.Clone(kept), &yaml.Node{Kind: yaml.ScalarNode, Value: "zz"}, &yaml.Node{Kind: yaml.ScalarNode, Value: "1"})
	do("another key in " + path)
	n.Content = kept
	for i := 0; i < len(kept); i += 2 {
		at := path + "." + kept[i].Value
		n.Content = slices.Delete(slices.Clone(kept), i, i+2)
		do("without " + at)
		n.Content = kept
		v := *kept[i+1]
		*kept[i+1] = yaml.Node{Kind: yaml.ScalarNode, Tag: "!!null", Value: "null"}
		do("nothing after " + at)
		*kept[i+1] = v
		mutate(kept[i+1], at, do)
	}
}

// TestFullJobsGiveEveryKey: what TestSchemaAgrees leaves out would go
// unchecked.
func TestFullJobsGiveEveryKey(t *testing.T) {
	given := map[string]bool{}
	for _, file := range fullJobs(t) {
		j, err := frame.Read(file.name, file.text)
		if err != nil {
			t.Fatal(err)
		}
		number := regexp.MustCompile(`\[\d+\]`)
		for _, path := range paths(t) {
			for i := range 4 {
				if j.Given(number.ReplaceAllString(path, fmt.Sprintf("[%d]", i))) {
					given[path] = true
				}
			}
		}
	}
	for _, path := range paths(t) {
		if !given[path] {
			t.Errorf("no full job in testdata gives %s", path)
		}
	}
}

// paths are those of every key, from the schema, with the first of each list.
func paths(t *testing.T) []string {
	var all []string
	var walk func(path string, s map[string]any)
	walk = func(path string, s map[string]any) {
		for key, sub := range asMap(s["properties"]) {
			all = append(all, strings.TrimPrefix(path+"."+key, "."))
			walk(path+"."+key, asMap(sub))
		}
		if items := asMap(s["items"]); items != nil {
			walk(path+"[0]", items)
		}
		for _, sub := range asList(s["anyOf"]) {
			walk(path, asMap(sub))
		}
	}
	walk("", parseSchema(t).root)
	return all
}

type fullJob struct {
	name string
	text []byte
}

func fullJobs(t testing.TB) []fullJob {
	names, err := filepath.Glob("testdata/read/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no jobs in testdata: %v", err)
	}
	var jobs []fullJob
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		jobs = append(jobs, fullJob{filepath.Base(name), text})
	}
	return jobs
}

// flatten puts what aliases stand for in their place.
func flatten(n *yaml.Node) *yaml.Node {
	if n.Kind == yaml.AliasNode {
		return flatten(n.Alias)
	}
	c := *n
	c.Anchor, c.HeadComment, c.LineComment, c.FootComment = "", "", "", ""
	c.Content = nil
	if c.ShortTag() == "!!null" {
		c.Value = "null" // or it would be written as an empty text
	}
	for _, sub := range n.Content {
		c.Content = append(c.Content, flatten(sub))
	}
	return &c
}

// plain is a tree as another program sees it, by YAML 1.2's core schema.
func plain(n *yaml.Node) any {
	switch n.Kind {
	case yaml.MappingNode:
		m := map[string]any{}
		for i := 0; i < len(n.Content); i += 2 {
			m[n.Content[i].Value] = plain(n.Content[i+1])
		}
		return m
	case yaml.SequenceNode:
		l := []any{}
		for _, c := range n.Content {
			l = append(l, plain(c))
		}
		return l
	}
	switch n.ShortTag() {
	case "!!null":
		return nil
	case "!!bool":
		return n.Value == "true"
	case "!!int", "!!float":
		var f float64
		if n.Decode(&f) == nil {
			return f
		}
	}
	return n.Value
}

// checked is a JSON Schema of the few words that ours has. A word that it does
// not know is a fault, so that no part of the schema goes untested.
type checked struct {
	root     map[string]any
	patterns map[string]*regexp.Regexp
}

func parseSchema(t *testing.T) *checked {
	t.Helper()
	c := checked{patterns: map[string]*regexp.Regexp{}}
	if err := json.Unmarshal(frame.Schema(), &c.root); err != nil {
		t.Fatal(err)
	}
	return &c
}

func asMap(v any) map[string]any { m, _ := v.(map[string]any); return m }
func asList(v any) []any         { l, _ := v.([]any); return l }

// check says what is wrong with a value; nothing if it is in order.
func (c *checked) check(v any) string { return c.at("", c.root, v) }

func (c *checked) at(path string, s map[string]any, v any) string {
	for word, arg := range s {
		if fault := c.word(path, s, word, arg, v); fault != "" {
			return fault
		}
	}
	return ""
}

func (c *checked) word(path string, s map[string]any, word string, arg, v any) string {
	switch word {
	case "$schema", "title", "description", "default", "definitions":
		return ""
	case "$ref":
		name := strings.TrimPrefix(arg.(string), "#/definitions/")
		return c.at(path, asMap(asMap(c.root["definitions"])[name]), v)
	case "anyOf", "oneOf", "allOf", "not":
		return c.combine(path, word, arg, v)
	case "type", "enum":
		return kindFault(path, word, arg, v)
	}
	switch v := v.(type) {
	case map[string]any:
		return c.object(path, s, word, arg, v)
	case []any:
		return c.list(path, word, arg, v)
	case string:
		return c.text(path, word, arg, v)
	case float64:
		if word == "minimum" && v < arg.(float64) || word == "maximum" && v > arg.(float64) {
			return path + " is out of range"
		}
	}
	return unless(path, word, "minimum", "maximum", "pattern", "maxLength", "required", "properties", "additionalProperties", "dependencies", "items", "minItems")
}

func unless(path, word string, known ...string) string {
	if slices.Contains(known, word) {
		return ""
	}
	return path + ": the test does not know " + word
}

func (c *checked) combine(path, word string, arg, v any) string {
	if word == "not" {
		if c.at(path, asMap(arg), v) == "" {
			return path + " is what it must not be"
		}
		return ""
	}
	var faults []string
	good := 0
	for _, s := range asList(arg) {
		if f := c.at(path, asMap(s), v); f == "" {
			good++
		} else {
			faults = append(faults, f)
		}
	}
	n := len(asList(arg))
	if word == "anyOf" && good > 0 || word == "oneOf" && good == 1 || word == "allOf" && good == n {
		return ""
	}
	return fmt.Sprintf("%s fits %d of %d: %v", path, good, n, faults)
}

func kindFault(path, word string, arg, v any) string {
	if word == "enum" {
		if slices.Contains(asList(arg), v) {
			return ""
		}
		return path + " is not one of the words"
	}
	names := asList(arg)
	if name, ok := arg.(string); ok {
		names = []any{name}
	}
	for _, name := range names {
		ok := false
		switch v := v.(type) {
		case nil:
			ok = name == "null"
		case bool:
			ok = name == "boolean"
		case string:
			ok = name == "string"
		case float64:
			ok = name == "number" || name == "integer" && v == math.Trunc(v)
		case []any:
			ok = name == "array"
		case map[string]any:
			ok = name == "object"
		}
		if ok {
			return ""
		}
	}
	return fmt.Sprintf("%s is not %v", path, names)
}

func (c *checked) text(path, word string, arg any, v string) string {
	if re, ok := arg.(string); word == "pattern" && ok {
		if c.patterns[re] == nil {
			c.patterns[re] = regexp.MustCompile(re)
		}
		if !c.patterns[re].MatchString(v) {
			return fmt.Sprintf("%s %q does not match", path, v)
		}
	}
	if word == "maxLength" && utf8.RuneCountInString(v) > int(arg.(float64)) {
		return path + " is too long"
	}
	return ""
}

func (c *checked) list(path, word string, arg any, v []any) string {
	if word == "minItems" && len(v) < int(arg.(float64)) {
		return path + " is too short"
	}
	if word == "items" {
		for i, e := range v {
			if f := c.at(fmt.Sprintf("%s[%d]", path, i), asMap(arg), e); f != "" {
				return f
			}
		}
	}
	return ""
}

func (c *checked) object(path string, s map[string]any, word string, arg any, v map[string]any) string {
	switch word {
	case "required":
		for _, key := range asList(arg) {
			if _, ok := v[key.(string)]; !ok {
				return path + " lacks " + key.(string)
			}
		}
	case "additionalProperties":
		for key := range v {
			if asMap(s["properties"])[key] == nil {
				return path + " must not have " + key
			}
		}
	case "properties":
		for key, sub := range asMap(arg) {
			if e, ok := v[key]; ok {
				if f := c.at(path+"."+key, asMap(sub), e); f != "" {
					return f
				}
			}
		}
	case "dependencies":
		for key, needs := range asMap(arg) {
			if _, ok := v[key]; ok {
				if f := c.object(path, s, "required", needs, v); f != "" {
					return f
				}
			}
		}
	}
	return ""
}
