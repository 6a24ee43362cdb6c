// Package csv writes lists as files that a spreadsheet opens: comma separated
// values by RFC 4180, in UTF-8, a row of heads first, lines ended by CR LF.
//
// Words in a job file come from anybody, and a spreadsheet takes a cell that
// starts with = or its like for a formula. Such words get an apostrophe in
// front, which spreadsheets show as it is. Numbers are written as numbers,
// negative ones too.
package csv

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Table is a list to be written.
type Table struct {
	Name string // what the list is called in file names, such as "cutting"
	Head []string
	Rows [][]Cell // each as long as Head
}

// Cell is words or a number. The zero Cell is empty.
type Cell struct {
	words    string
	number   float64
	places   int
	isNumber bool
}

// Words is a cell of words.
func Words(s string) Cell { return Cell{words: s} }

// Number is a cell with a number, rounded to so many decimals at the most. One
// that is infinite or not a number leaves the cell empty.
func Number(v float64, places int) Cell {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return Cell{}
	}
	return Cell{number: v, places: places, isNumber: true}
}

// Count is a cell with a whole number.
func Count(n int) Cell { return Number(float64(n), 0) }

// String is the cell as it stands in the file, before quoting.
func (c Cell) String() string {
	if !c.isNumber {
		return guarded(c.words)
	}
	s := strconv.FormatFloat(c.number, 'f', c.places, 64)
	if strings.ContainsRune(s, '.') {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// formulaStarts are the characters that start a formula in one spreadsheet or
// another, the wide ones of East Asian keyboards among them, and those that some
// skip before one.
const formulaStarts = "=+-@\t\r\n|%＝＋－＠"

// guarded puts an apostrophe before words that a spreadsheet might run.
func guarded(s string) string {
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(s, " \u00a0"))
	if s != "" && strings.ContainsRune(formulaStarts, first) {
		return "'" + s
	}
	return s
}

// Write writes the table.
func (t Table) Write(w io.Writer) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	record := make([]string, len(t.Head))
	for i, h := range t.Head {
		record[i] = guarded(h)
	}
	if err := out.Write(record); err != nil {
		return err
	}
	for _, row := range t.Rows {
		for i := range record {
			record[i] = ""
			if i < len(row) {
				record[i] = row[i].String()
			}
		}
		if err := out.Write(record); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}
