package keys

import (
	"fmt"
	"strings"

	"plumbcut/geom/measure"
)

// Reference lists every key of a table for people, in Markdown: a heading and
// a table for each group. Groups that are alike share theirs.
func Reference(table Group) string {
	var r reference
	r.add("", table)
	var b strings.Builder
	for _, c := range r {
		fmt.Fprintf(&b, "### %s\n\n%s\n", strings.Join(c.of, ", "), c.body)
	}
	return b.String()
}

type reference []chapter

// chapter is what there is to say of one or more groups.
type chapter struct {
	of   []string
	body string
}

func (r *reference) add(path string, g Group) {
	title := "`" + path + "`"
	if path == "" {
		title = "The top of the file"
	}
	r.put(title, g.body())
	for _, f := range g.Fields {
		k, at := f.Is, join(path, f.Key)
		if l, ok := k.(List); ok {
			k, at = l.item(-1), at+"[]"
		}
		if sub, ok := k.(Group); ok {
			r.add(at, sub)
		}
	}
}

func (r *reference) put(title, body string) {
	for i, c := range *r {
		if c.body == body {
			(*r)[i].of = append(c.of, title)
			return
		}
	}
	*r = append(*r, chapter{[]string{title}, body})
}

func (g Group) body() string {
	var b strings.Builder
	for _, c := range g.Choices {
		rule := "No more than one of `%s` may be given.\n\n"
		if c.Need {
			rule = "One of `%s` must be given, and only one.\n\n"
		}
		fmt.Fprintf(&b, rule, strings.Join(c.Keys, "`, `"))
	}
	b.WriteString("| key | value | what it is |\n|---|---|---|\n")
	for _, f := range g.Fields {
		fmt.Fprintf(&b, "| `%s` | %s | %s |\n", f.Key, worth(f.Is), strings.TrimSpace(f.Doc+" "+f.leftOut()))
	}
	return b.String()
}

// worth is what a key takes, with its range where that tells something.
func worth(k Kind) string {
	f := measure.Format{Step: 0.1}
	switch k := k.(type) {
	case length:
		const obvious = 10_000 // a greatest length that nobody comes near
		switch {
		case k.Most > obvious && k.Least <= 1:
			return k.says()
		case k.Most > obvious:
			return fmt.Sprintf("%s, from %s", k.says(), f.Length(k.Least))
		}
		return fmt.Sprintf("%s, %s to %s", k.says(), f.Length(k.Least), f.Length(k.Most))
	case size:
		return fmt.Sprintf("%s, each %s to %s", k.says(), f.Length(k.Least), f.Length(k.Most))
	case angle:
		return fmt.Sprintf("%s, %g° to %g°", k.says(), k.Least, k.Most)
	case slope:
		return fmt.Sprintf("%s, 1:%g to 1:%g", k.says(), k.Least, k.Most)
	case share:
		return fmt.Sprintf("%s, %g%% to %g%%", k.says(), k.Least*100, k.Most*100)
	case amount:
		return k.says() + ", " + k.words("")
	case volume:
		return k.says() + ", " + k.words(" litres")
	case count:
		return fmt.Sprintf("%s, %d to %d", k.says(), k.least, k.most)
	case Group:
		if short, ok := k.find(k.Short); ok {
			return worth(short.Is) + ", or keys"
		}
	}
	return k.says()
}
