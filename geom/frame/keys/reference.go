package keys

import (
	"fmt"
	"strings"

	"plumbcut/geom/measure"
)

// Reference lists every key of a table for people, in Markdown: a heading and
// a table for each group.
func Reference(table Group) string {
	var b strings.Builder
	reference(&b, "", table)
	return b.String()
}

func reference(b *strings.Builder, path string, g Group) {
	heading := "The top of the file"
	if path != "" {
		heading = "`" + path + "`"
	}
	fmt.Fprintf(b, "### %s\n\n", heading)
	for _, c := range g.Choices {
		if c.Need {
			fmt.Fprintf(b, "One of `%s` must be given, and only one.\n\n", strings.Join(c.Keys, "`, `"))
		} else {
			fmt.Fprintf(b, "No more than one of `%s` may be given.\n\n", strings.Join(c.Keys, "`, `"))
		}
	}
	b.WriteString("| key | value | what it is |\n|---|---|---|\n")
	for _, f := range g.Fields {
		fmt.Fprintf(b, "| `%s` | %s | %s |\n", f.Key, worth(f.Is), strings.TrimSpace(f.Doc+" "+f.leftOut()))
	}
	b.WriteString("\n")
	for _, f := range g.Fields {
		k, at := f.Is, join(path, f.Key)
		if l, ok := k.(List); ok {
			k, at = l.item(-1), at+"[]"
		}
		if sub, ok := k.(Group); ok {
			reference(b, at, sub)
		}
	}
}

// worth is what a key takes, with its range where that tells something.
func worth(k Kind) string {
	f := measure.Format{Step: 0.1}
	switch k := k.(type) {
	case length:
		if k.Least > 0 {
			return fmt.Sprintf("%s, %s to %s", k.says(), f.Length(k.Least), f.Length(k.Most))
		}
		return k.says() + ", up to " + f.Length(k.Most)
	case size:
		return fmt.Sprintf("%s, each %s to %s", k.says(), f.Length(k.Least), f.Length(k.Most))
	case angle:
		return fmt.Sprintf("%s, %g° to %g°", k.says(), k.Least, k.Most)
	case slope:
		return fmt.Sprintf("%s, 1:%g to 1:%g", k.says(), k.Least, k.Most)
	case share:
		return fmt.Sprintf("%s, %g%% to %g%%", k.says(), k.Least*100, k.Most*100)
	case count:
		return fmt.Sprintf("%s, %d to %d", k.says(), k.least, k.most)
	case text:
		return fmt.Sprintf("%s, up to %d characters", k.says(), k.most)
	case Group:
		if short, ok := k.find(k.Short); ok {
			return worth(short.Is) + ", or keys"
		}
	}
	return k.says()
}
