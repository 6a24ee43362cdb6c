package keys

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"
	"strings"

	"plumbcut/geom/measure"
)

// Schema describes a table as a JSON Schema, draft 7, which editors understand
// best. It is as strict as a schema can be about keys, kinds and choices. It
// does not know the unit of a bare number, so it takes every number that is in
// range in one of them, and it does not see the range of a measure in words.
func Schema(table Group, title, doc string) []byte {
	root := object{
		{"$schema", "http://json-schema.org/draft-07/schema#"},
		{"title", title},
		{"description", doc},
		{"definitions", object{
			{"length", pattern(sign + long + `\s*$`)},
			{"section", pattern(`^\s*` + long + ` *[xX×] *` + long + `\s*$`)},
			{"angle", pattern(sign + num + ` *(°|deg|degrees?)?\s*$`)},
			{"slope", pattern(`^\s*` + num + ` *(:|in) *` + num + `\s*$`)},
			{"share", pattern(`^\s*` + num + ` *%?\s*$`)},
			{"volume", pattern(`^\s*` + num + ` *(ml|l|litres?|liters?|ft3|ft³|cu ft)?\s*$`)},
			{"date", pattern(`^\s*[0-9]{4}-[0-1][0-9]-[0-3][0-9]\s*$`)},
		}},
	}
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(append(root, table.schema()...)); err != nil {
		// Only strings, numbers and lists of them go in; they always encode.
		return nil
	}
	return b.Bytes()
}

// object is a JSON object whose members keep their order.
type object []member

type member struct {
	key string
	val any
}

// MarshalJSON writes the members in order.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		if err := enc.Encode(m.key); err != nil {
			return nil, err
		}
		b.WriteByte(':')
		if err := enc.Encode(m.val); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

func anyOf(of ...object) object { return object{{"anyOf", of}} }

func typed(name string, more ...member) object {
	return append(object{{"type", name}}, more...)
}

func pattern(re string) object { return typed("string", member{"pattern", re}) }

// The forms of a measure in words, as package measure reads them.
const (
	num    = `[0-9]*\.?[0-9]+\.?`
	sign   = `^\s*[-+−±]?`
	feet   = `(['′’]|ft|foot|feet)`
	mark   = `(["″”]|''|in|inch|inches)`
	inches = `(([0-9]+[ -]+)?[0-9]+/[0-9]+|` + num + `)`
	long   = `(` + num + ` *(mm|cm|m)?|` + inches + ` *` + mark + `?|` + num + ` *` + feet + ` *-? *(` + inches + ` *` + mark + `)?)`
)

func (v version) schema() object { return object{{"enum", []int{int(v)}}} }

func (k length) schema() object {
	least := k.Least
	if least > 0 {
		least = math.Floor(least / measure.Inch) // were it in inches
	}
	return anyOf(number(Between(least, k.Most)), defined("length"))
}

func (size) schema() object    { return defined("section") }
func (k angle) schema() object { return anyOf(number(k.Span), defined("angle")) }
func (slope) schema() object   { return defined("slope") }
func (scale) schema() object   { return anyOf(object{{"enum", []string{"auto"}}}, defined("slope")) }
func (k share) schema() object { return anyOf(number(k.Span), defined("share")) }
func (date) schema() object    { return defined("date") }

func number(s Span) object {
	return typed("number", member{"minimum", s.Least}, member{"maximum", s.Most})
}

func defined(name string) object { return object{{"$ref", "#/definitions/" + name}} }

func (k count) schema() object {
	return typed("integer", member{"minimum", k.least}, member{"maximum", k.most})
}

func (w word) schema() object { return object{{"enum", w.words}} }

func (k text) schema() object {
	return object{{"type", []string{"string", "number", "boolean"}}, {"maxLength", k.most}}
}

func (l List) schema() object {
	return typed("array", member{"minItems", l.least}, member{"items", l.item(-1).schema()})
}

func (g Group) schema() object {
	var properties, with object
	for _, f := range g.Fields {
		properties = append(properties, member{f.Key, g.property(f)})
		if f.With != "" {
			with = append(with, member{f.Key, []string{f.With}})
		}
	}
	o := typed("object", member{"additionalProperties", false})
	if needs := g.needs(); needs != nil {
		o = append(o, member{"required", needs})
	}
	o = append(o, member{"properties", properties})
	if with != nil {
		o = append(o, member{"dependencies", with})
	}
	if g.Choices != nil {
		var all []object
		for _, c := range g.Choices {
			all = append(all, c.schema())
		}
		o = append(o, member{"allOf", all})
	}
	if f, ok := g.find(g.Short); ok {
		return anyOf(f.Is.schema(), o)
	}
	return o
}

// property describes one key. A key that may be left out may also stand there
// with nothing after it.
func (g Group) property(f Field) object {
	about := object{{"description", strings.TrimSpace(f.Doc + " " + f.leftOut())}}
	if v, err := strconv.ParseFloat(f.Def, 64); err == nil {
		about = append(about, member{"default", v})
	} else if f.Def != "" {
		about = append(about, member{"default", f.Def})
	}
	if _, ok := f.Is.(text); ok && (f.Need || g.chosen(f.Key)) {
		about = append(about, member{"pattern", `\S`})
	}
	is := f.Is.schema()
	switch {
	case !f.Need && !g.chosen(f.Key):
		return append(about, anyOf(is, typed("null"))...)
	case is[0].key == "$ref": // would hide what stands beside it
		return append(about, anyOf(is)...)
	}
	return append(about, is...)
}

func (c Choice) schema() object {
	var one []object
	for _, k := range c.Keys {
		one = append(one, object{{"required", []string{k}}})
	}
	if c.Need {
		return object{{"oneOf", one}}
	}
	none := object{{"not", anyOf(one...)}}
	return object{{"oneOf", append(one, none)}}
}

// leftOut says in words what holds when a key is left out.
func (f Field) leftOut() string {
	switch {
	case f.Need:
		return "Must be given."
	case f.Habit:
		return "If left out: " + f.Def + " (common practice, no source: confirm)."
	case f.Def != "":
		return "If left out: " + f.Def + "."
	case f.Else != "":
		return "If left out: " + f.Else + "."
	}
	return ""
}
