package keys

import (
	"slices"

	"plumbcut/geom/measure"
)

// Field is one key of a file.
type Field struct {
	Key   string
	Is    Kind
	Doc   string   // one sentence
	Need  bool     // nothing can be done without it
	Def   string   // what holds when it is left out, as a file would give it
	Else  string   // or the same in words, where it hangs on other keys
	Habit bool     // Def is common practice without a source: to be confirmed
	With  string   // it makes sense only beside this key
	Also  []string // other words that people look for it under
}

// Kind is what a key's value may be and where it goes: a Group, a List, or one
// of the values that Length, Text and their like make.
type Kind interface {
	example() string // a value, as a file would give it
	says() string    // how people name such a value
	schema() object  // the same for other programs
}

// value is a kind that is written as one word, number or text.
type value interface {
	Kind
	// set reads a value and puts it where it goes. Its error is a fault.
	set(text string, bare measure.Units) error
}

// fault says what is wrong with a value and what would be right.
type fault struct {
	rule         Rule
	wrong, right string
}

func (f fault) Error() string { return f.wrong + "; " + f.right }

// Group is a value with keys of its own.
type Group struct {
	Fields  []Field
	Choices []Choice
	Short   string // the key that a bare value stands for; empty: none
	Opt     bool   // left out, there is none of it; otherwise its defaults hold
}

// Choice is a set of keys that exclude each other.
type Choice struct {
	Keys []string
	Need bool // one of them must be there
}

// List is a value with items. Make it with ListOf.
type List struct {
	least int
	size  func(n int)
	count func() int
	item  func(i int) Kind // bound to the i-th; −1: for its description only
}

// ListOf makes a list whose items go to the elements of a slice. Each element
// starts as first gives it.
func ListOf[T any](to *[]T, least int, first func() T, item func(*T) Kind) List {
	return List{
		least: least,
		count: func() int { return len(*to) },
		size: func(n int) {
			*to = make([]T, n)
			for i := range *to {
				(*to)[i] = first()
			}
		},
		item: func(i int) Kind {
			if i < 0 {
				return item(new(T))
			}
			return item(&(*to)[i])
		},
	}
}

// Zero is the first of a list whose elements start empty.
func Zero[T any]() (t T) { return t }

func (g Group) find(key string) (Field, bool) {
	for _, f := range g.Fields {
		if f.Key == key {
			return f, true
		}
	}
	return Field{}, false
}

func (g Group) names() []string {
	names := make([]string, len(g.Fields))
	for i, f := range g.Fields {
		names[i] = f.Key
	}
	return names
}

// needs are the keys that must be there.
func (g Group) needs() []string {
	var keys []string
	for _, f := range g.Fields {
		if f.Need {
			keys = append(keys, f.Key)
		}
	}
	return keys
}

// chosen reports whether other keys may be given or not by whether this one is:
// then nothing may be left after it.
func (g Group) chosen(key string) bool {
	for _, c := range g.Choices {
		if slices.Contains(c.Keys, key) {
			return true
		}
	}
	return slices.ContainsFunc(g.Fields, func(f Field) bool { return f.With == key })
}

func (g Group) example() string {
	if f, ok := g.find(g.Short); ok {
		return f.Is.example()
	}
	for _, f := range g.Fields {
		if f.Need || g.chosen(f.Key) || len(g.Fields) == 1 {
			return "{" + f.Key + ": " + f.Is.example() + ", …}"
		}
	}
	return "{…}"
}

func (g Group) says() string { return "keys" }

func (l List) example() string { return "[" + l.item(-1).example() + ", …]" }
func (l List) says() string    { return "list of " + plural(l.item(-1)) }

func plural(k Kind) string {
	if g, ok := k.(Group); ok {
		if f, ok := g.find(g.Short); ok {
			return plural(f.Is) + " or of keys"
		}
		return "keys"
	}
	return k.says() + "s"
}
