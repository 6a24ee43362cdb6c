package csv

import (
	"bytes"
	"encoding/csv"
	"errors"
	"math"
	"strings"
	"testing"
)

func TestWrite(t *testing.T) {
	table := Table{Head: []string{"Mark", "Length (mm)"}, Rows: [][]Cell{
		{Words(`R1 "left", short`), Number(-12.5, 3)},
		{Words("=1+1")},
	}}
	var b bytes.Buffer
	if err := table.Write(&b); err != nil {
		t.Fatal(err)
	}
	// RFC 4180: CR LF after every record, quotes doubled within quotes, as many
	// fields in each record.
	want := "Mark,Length (mm)\r\n\"R1 \"\"left\"\", short\",-12.5\r\n'=1+1,\r\n"
	if b.String() != want {
		t.Errorf("wrote %q, want %q", b.String(), want)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(rows) != 3 || rows[1][0] != `R1 "left", short` {
		t.Errorf("reads back as %q, %v", rows, err)
	}
}

func TestCells(t *testing.T) {
	for _, c := range []struct {
		cell Cell
		want string
	}{
		{Words("oak"), "oak"},
		{Words(""), ""},
		{Words("=HYPERLINK(0)"), "'=HYPERLINK(0)"},
		{Words("+44"), "'+44"},
		{Words("-x"), "'-x"},
		{Words("@sum"), "'@sum"},
		{Words("\t=1"), "'\t=1"},
		{Words("\r=1"), "'\r=1"},
		{Words("  =1"), "'  =1"},
		{Words("\uff1d1"), "'\uff1d1"},
		{Words("a=1"), "a=1"},
		{Words(`11' 4 3/8"`), `11' 4 3/8"`},
		{Number(-3, 1), "-3"},
		{Number(1200, 2), "1200"},
		{Number(0.1234, 3), "0.123"},
		{Number(-0.0001, 2), "0"},
		{Number(math.NaN(), 2), ""},
		{Number(math.Inf(-1), 2), ""},
		{Count(0), "0"},
		{Cell{}, ""},
	} {
		if got := c.cell.String(); got != c.want {
			t.Errorf("%+v is written %q, want %q", c.cell, got, c.want)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("full") }

func TestWriteFails(t *testing.T) {
	long := Table{Head: []string{"a"}, Rows: [][]Cell{{Words(strings.Repeat("x", 1<<17))}}}
	if long.Write(full{}) == nil || (Table{Head: []string{"a"}}).Write(full{}) == nil {
		t.Error("a full disk goes unnoticed")
	}
}
