package keys

import "fmt"

// Texts calls a function with the path and the value of every free text of a
// table that is not empty, in the table's order.
func Texts(table Group, do func(path, value string)) { texts("", table, do) }

func texts(path string, k Kind, do func(path, value string)) {
	switch k := k.(type) {
	case text:
		if *k.to != "" {
			do(path, *k.to)
		}
	case Group:
		for _, f := range k.Fields {
			texts(join(path, f.Key), f.Is, do)
		}
	case List:
		for i := range k.count() {
			texts(fmt.Sprintf("%s[%d]", path, i), k.item(i), do)
		}
	}
}
