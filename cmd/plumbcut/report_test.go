package main

import (
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom/frame"
)

// garden builds and draws the small job of the script tests.
func garden(t *testing.T) (*frame.Frame, drawn) {
	t.Helper()
	r := request{job: "testdata/garden.yaml"}
	f, err := console{}.makeFrame(r)
	if err != nil {
		t.Fatal(err)
	}
	d, err := makeAll(f, r)
	if err != nil {
		t.Fatal(err)
	}
	return f, d
}

// TestAuditFindsUntruth spoils a sound frame and set, each in one way.
func TestAuditFindsUntruth(t *testing.T) {
	for _, c := range []struct {
		name, says string
		spoil      func(*frame.Frame, drawn)
	}{
		{"sound", "", func(*frame.Frame, drawn) {}},
		{"two sticks in one place", "the model is not sound (clash)", func(f *frame.Frame, _ drawn) {
			f.Members = append(f.Members, f.Members[0])
		}},
		{"a figure typed by hand", "a dimension is not true", func(_ *frame.Frame, d drawn) {
			for _, s := range d.set.Sheets {
				for i := range s.Dims {
					s.Dims[i].Figure = "4711"
				}
			}
		}},
		{"ink in the margin of a template", "a template is not true", func(_ *frame.Frame, d drawn) {
			s := d.templates.Pages.Sheets[1]
			s.AddText(draw.Text{Layer: draw.Notes, Height: 2.5, String: "over"})
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, d := garden(t)
			c.spoil(f, d)
			faults, _ := audit(f, d)
			if all := strings.Join(faults, "\n"); (all == "") != (c.says == "") || !strings.Contains(all, c.says) {
				t.Errorf("faults %q, want %q", all, c.says)
			}
		})
	}
}

// TestAuditTellsBlemishes takes a sheet that is true but cannot be read.
func TestAuditTellsBlemishes(t *testing.T) {
	f, d := garden(t)
	_, before := audit(f, d)
	s := d.set.Sheets[0]
	word := draw.Text{Layer: draw.Notes, At: s.Paper.Inner().Centre(), Height: 2.5, String: "over"}
	s.AddText(word)
	s.AddText(word)
	faults, after := audit(f, d)
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
