package keys

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"plumbcut/geom/measure"
)

// Given is what a file itself gives, and where.
type Given struct {
	where  map[string]Pos
	bad    map[string]bool
	habits []Habit
}

// Habit is a key that was left out and whose default is common practice
// without a source.
type Habit struct{ Path, Value string }

// Pos is the place of a path such as "beam.out" or "posts.at[2]": of a value,
// or of the key of a group. A path that the file does not give has the place
// of the nearest parent that it does.
func (g Given) Pos(path string) Pos {
	for ; path != ""; path = parent(path) {
		if pos, ok := g.where[path]; ok {
			return pos
		}
	}
	return Pos{1, 1}
}

// Has reports whether the file gives a path.
func (g Given) Has(path string) bool {
	_, ok := g.where[path]
	return ok
}

// Sound reports whether the file gives a value at a path and it is in order in
// itself.
func (g Given) Sound(path string) bool { return g.Has(path) && !g.bad[path] }

// Habits are the defaults of common practice that hold, in the table's order.
func (g Given) Habits() []Habit { return g.habits }

// mostErrors is how many errors are worth reading in one go.
const mostErrors = 100

// Decode holds the file against a table and puts every value and default in
// its place. Bare numbers are in the given units. Values with errors, and
// those whose group is wrong, are not to be relied on.
func (d *Doc) Decode(table Group, bare measure.Units) (Given, Errors) {
	dec := decoder{doc: d, table: table, bare: bare, given: Given{where: map[string]Pos{}, bad: map[string]bool{}}}
	if d.root == nil {
		dec.fail(RuleFile, Pos{1, 1}, "the file says nothing; it needs at least the keys %s", strings.Join(table.needs(), ", "))
	} else {
		dec.group("", table, d.root)
	}
	if len(dec.errs) > mostErrors {
		_ = dec.errs.Err() // sorts
		dec.errs = dec.errs[:mostErrors]
		dec.fail(RuleMany, Pos{len(d.lines), 1}, "there are more errors than the %d above; put those right first", mostErrors)
	}
	return dec.given, dec.errs
}

type decoder struct {
	doc   *Doc
	table Group
	bare  measure.Units
	given Given
	errs  Errors
}

func (d *decoder) fail(rule Rule, pos Pos, format string, args ...any) {
	d.errs = append(d.errs, Error{d.doc.file, pos, rule, fmt.Sprintf(format, args...)})
}

// name is a group or key as errors call it.
func name(path string) string {
	if path == "" {
		return "the file"
	}
	return Spoken(path)
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// kind reads a value that is there.
func (d *decoder) kind(path string, k Kind, n *yaml.Node) {
	pos := Pos{n.Line, n.Column}
	if _, ok := d.given.where[path]; !ok {
		d.given.where[path] = pos
	}
	n = resolve(n)
	switch k := k.(type) {
	case Group:
		d.group(path, k, n)
	case List:
		d.list(path, k, n)
	case value:
		d.value(path, k, n, pos)
	}
}

func (d *decoder) value(path string, k value, n *yaml.Node, pos Pos) {
	if n.Kind != yaml.ScalarNode {
		d.given.bad[path] = true
		d.fail(RuleKind, pos, "%s holds %s; it takes one value, like %s", name(path), holds(n), k.example())
		return
	}
	written := strings.TrimSpace(n.Value)
	if _, free := k.(text); free && d.cutByComment(n) {
		d.fail(RuleText, pos, "%s is cut off after %s by a #, which starts a remark; put the text in quotes, or a space after the #",
			name(path), Quote(written))
		return
	}
	if err := k.set(written, d.bare); err != nil {
		f := err.(fault)
		d.given.bad[path] = true
		d.fail(f.rule, pos, "%s %s %s; %s", name(path), Quote(written), f.wrong, f.right)
	}
}

// holds names what a node is.
func holds(n *yaml.Node) string {
	switch n.Kind {
	case yaml.SequenceNode:
		return "a list"
	case yaml.MappingNode:
		return "keys"
	}
	return "one value"
}

// cutByComment reports whether a plain text is followed by a # that looks like
// a part of it, as in "title: Pergola #3": YAML drops what follows.
func (d *decoder) cutByComment(n *yaml.Node) bool {
	if n.Style != 0 || n.Line > len(d.doc.lines) {
		return false
	}
	runes := []rune(d.doc.lines[n.Line-1])
	if n.Column-1 > len(runes) {
		return false
	}
	rest, ok := strings.CutPrefix(string(runes[n.Column-1:]), n.Value)
	rest, remark := strings.CutPrefix(strings.TrimLeft(rest, " "), "#")
	return ok && remark && strings.TrimRight(rest, "#\r") != "" && !strings.HasPrefix(strings.TrimLeft(rest, "#"), " ")
}

func (d *decoder) list(path string, k List, n *yaml.Node) {
	pos := d.given.Pos(path)
	if n.Kind != yaml.SequenceNode {
		d.fail(RuleKind, pos, "%s holds %s; it takes a list, like %s", name(path), holds(n), k.example())
		return
	}
	if len(n.Content) < k.least {
		d.fail(RuleRange, pos, "%s has %d items; it needs at least %d, like %s", name(path), len(n.Content), k.least, k.example())
	}
	k.size(len(n.Content))
	for i, c := range n.Content {
		item := fmt.Sprintf("%s[%d]", path, i)
		if blank(c) {
			d.fail(RuleMissing, Pos{c.Line, c.Column}, "%s has no value; give one, or take it out", name(item))
			continue
		}
		d.kind(item, k.item(i), c)
	}
}

// group reads a group, or sets its defaults if n is nil.
func (d *decoder) group(path string, g Group, n *yaml.Node) {
	entries := map[string]*yaml.Node{}
	switch {
	case n == nil:
	case n.Kind == yaml.MappingNode:
		entries = d.entries(path, g, n)
	case n.Kind == yaml.ScalarNode && g.Short != "":
		entries[g.Short] = n
	default:
		d.fail(RuleKind, d.given.Pos(path), "%s holds %s; it takes the keys %s", name(path), holds(n), strings.Join(g.names(), ", "))
		return
	}
	for _, f := range g.Fields {
		at := join(path, f.Key)
		v := entries[f.Key]
		switch {
		case v != nil && !f.blank(v):
			d.kind(at, f.Is, v)
			continue
		case v != nil && g.chosen(f.Key):
			d.given.bad[at] = true
			d.fail(RuleMissing, Pos{v.Line, v.Column}, "%s has no value; give one, or take the key out", name(at))
		}
		d.absent(at, f)
	}
	for _, c := range g.Choices {
		d.choice(path, g, c)
	}
	for _, f := range g.Fields {
		if f.With != "" && d.given.Has(join(path, f.Key)) && !d.given.Has(join(path, f.With)) {
			d.fail(RuleChoice, d.given.Pos(join(path, f.Key)), "%s makes sense only beside %s; add %s or take it out", name(join(path, f.Key)), f.With, f.With)
		}
	}
}

// blank reports whether the value of a key counts as left out: so does an empty
// text in quotes.
func (f Field) blank(n *yaml.Node) bool {
	_, free := f.Is.(text)
	n = resolve(n)
	return blank(n) || free && n.Kind == yaml.ScalarNode && strings.TrimSpace(n.Value) == ""
}

// entries pairs the keys of a group with their values and notes where the
// groups among them start. What stands under a misspelt key is read as that of
// the key that was meant, so that its own errors show too.
func (d *decoder) entries(path string, g Group, n *yaml.Node) map[string]*yaml.Node {
	entries := map[string]*yaml.Node{}
	first := map[string]int{}
	put := func(f Field, pos Pos, v *yaml.Node) {
		entries[f.Key] = v
		if _, values := f.Is.(value); !values && !blank(v) {
			d.given.where[join(path, f.Key)] = pos
		}
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, v := n.Content[i], n.Content[i+1]
		pos := Pos{key.Line, key.Column}
		f, known := g.find(key.Value)
		switch {
		case key.Kind != yaml.ScalarNode:
			d.fail(RulePlain, pos, "a key of %s is not a word; write key: value", name(path))
			continue
		case key.ShortTag() == "!!merge":
			d.fail(RulePlain, pos, "the key << is not taken; write the keys out")
			continue
		case first[key.Value] > 0:
			d.fail(RuleDuplicate, pos, "%s stands twice, first in line %d; keep one", Quote(key.Value), first[key.Value])
		case known:
			put(f, pos, v)
		default:
			say, meant := d.instead(g, key.Value)
			d.fail(RuleUnknown, pos, "%s has no key %s; %s", name(path), Quote(key.Value), say)
			if f, ok := g.find(meant); ok && entries[meant] == nil {
				put(f, pos, v)
			}
		}
		first[key.Value] = key.Line
	}
	return entries
}

// absent sets what holds when a key is left out.
func (d *decoder) absent(path string, f Field) {
	if f.Need {
		d.fail(RuleMissing, d.given.Pos(path), "%s has no %s; add %s: %s", name(parent(path)), f.Key, f.Key, f.Is.example())
		return
	}
	if f.Habit {
		d.given.habits = append(d.given.habits, Habit{path, f.Def})
	}
	switch k := f.Is.(type) {
	case Group:
		if !k.Opt {
			d.group(path, k, nil)
		}
	case value:
		if f.Def == "" {
			return
		}
		if err := k.set(f.Def, d.bare); err != nil { // the table is wrong, not the file
			d.fail(RuleKind, Pos{}, "the default %s of %s %v", f.Def, path, err)
		}
	}
}

// choice sees that no more than one of a set of keys is given, and one if it
// must be.
func (d *decoder) choice(path string, g Group, c Choice) {
	var given []string
	blank := false
	for _, key := range c.Keys {
		at := join(path, key)
		if d.given.Has(at) {
			given = append(given, key)
		}
		blank = blank || d.given.bad[at]
	}
	if len(given) == 0 && c.Need && !blank {
		f, _ := g.find(c.Keys[0])
		d.fail(RuleMissing, d.given.Pos(path), "%s has no %s; add one of them, like %s: %s", name(path), enumerate(c.Keys), f.Key, f.Is.example())
	}
	if len(given) > 1 {
		slices.SortFunc(given, func(a, b string) int {
			return d.given.Pos(join(path, a)).compare(d.given.Pos(join(path, b)))
		})
		last := given[len(given)-1]
		d.fail(RuleChoice, d.given.Pos(join(path, last)), "%s has %s as well as %s in line %d; keep one",
			name(path), last, given[0], d.given.Pos(join(path, given[0])).Line)
	}
}
