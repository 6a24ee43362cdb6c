package main

import (
	"os"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom/frame"
	"plumbcut/sheets"
)

// garden builds and draws the small job of the script tests.
func garden(t *testing.T) (*frame.Frame, *draw.Set) {
	t.Helper()
	text, err := os.ReadFile("testdata/garden.yaml")
	if err != nil {
		t.Fatal(err)
	}
	job, err := frame.Read("garden.yaml", text)
	if err != nil {
		t.Fatal(err)
	}
	f, err := frame.Build(job)
	if err != nil {
		t.Fatal(err)
	}
	set, err := sheets.Make(f)
	if err != nil {
		t.Fatal(err)
	}
	return f, set
}

// TestAuditFindsUntruth spoils a sound frame and set, each in one way.
func TestAuditFindsUntruth(t *testing.T) {
	for _, c := range []struct {
		name, says string
		spoil      func(*frame.Frame, *draw.Set)
	}{
		{"sound", "", func(*frame.Frame, *draw.Set) {}},
		{"two sticks in one place", "the model is not sound (clash)", func(f *frame.Frame, _ *draw.Set) {
			f.Members = append(f.Members, f.Members[0])
		}},
		{"a figure typed by hand", "a dimension is not true", func(_ *frame.Frame, set *draw.Set) {
			for _, s := range set.Sheets {
				for i := range s.Dims {
					s.Dims[i].Figure = "4711"
				}
			}
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, set := garden(t)
			c.spoil(f, set)
			faults, _ := audit(f, set)
			if all := strings.Join(faults, "\n"); (all == "") != (c.says == "") || !strings.Contains(all, c.says) {
				t.Errorf("faults %q, want %q", all, c.says)
			}
		})
	}
}

// TestAuditTellsBlemishes takes a sheet that is true but cannot be read.
func TestAuditTellsBlemishes(t *testing.T) {
	f, set := garden(t)
	_, before := audit(f, set)
	s := set.Sheets[0]
	word := draw.Text{Layer: draw.Notes, At: s.Paper.Inner().Centre(), Height: 2.5, String: "over"}
	s.AddText(word)
	s.AddText(word)
	faults, after := audit(f, set)
	if len(faults) > 0 {
		t.Errorf("faults %q, want none", faults)
	}
	if len(after) <= len(before) {
		t.Errorf("%d blemishes after a word was written twice in one place, %d before", len(after), len(before))
	}
}

func TestCount(t *testing.T) {
	for n, want := range map[int]string{0: "no sheets", 1: "1 sheet", 2: "2 sheets"} {
		if got := count(n, "sheet", "sheets"); got != want {
			t.Errorf("count(%d) = %q, want %q", n, got, want)
		}
	}
}
