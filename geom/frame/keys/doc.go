// Package keys reads a YAML file whose every key stands in a table. The table
// says what each key is for, what its value may be, what holds when it is left
// out, and where the value goes; from it come the reading, the errors, the
// JSON Schema and the list of keys for people, so that they cannot differ.
//
//	text ──Parse──▶ Doc ──Decode(table)──▶ values in their places, Given, Errors
//	                          table ──Schema──▶ JSON Schema
//	                          table ──Reference──▶ Markdown
//
// Reading is strict. Every error is found in one run, has a line and a column,
// quotes the value and says what would be right; no error names a type or a
// notion of the program.
//
// A key with nothing after it counts as left out, so that a form may be filled
// in bit by bit.
//
// Left out: writing files; the corners of YAML that such a file has no use for
// (tags, merge keys, several documents, keys that are not words), which are
// refused; checks between values, which belong to who knows what they mean.
package keys
