package sheets

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"plumbcut/draw"
	"plumbcut/geom/frame"
	"plumbcut/geom/frame/jobgen"
)

// listJobs are the examples on several papers, random jobs and one with long
// words everywhere.
func listJobs(t *testing.T) map[string][]byte {
	jobs := map[string][]byte{}
	names, err := filepath.Glob("../examples/*/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatal("no examples", err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		jobs[name] = text
		for _, size := range []string{"A4", "Letter"} {
			for _, was := range []string{"A3", "A2", "Tabloid"} {
				if other := strings.Replace(string(text), "size: "+was, "size: "+size, 1); other != string(text) {
					jobs[name+" on "+size] = []byte(other)
				}
			}
		}
	}
	seeds := uint64(40)
	if testing.Short() {
		seeds = 8
	}
	for seed := range seeds {
		jobs[fmt.Sprint("seed ", seed)] = jobgen.Job(seed)
	}
	return jobs
}

// listMaker makes the lists of a job; nil if it cannot be built.
func listMaker(t *testing.T, text []byte) *maker {
	t.Helper()
	job, err := frame.Read("job.yaml", text)
	if err != nil {
		return nil
	}
	f, err := frame.Build(job)
	if err != nil {
		return nil
	}
	m, err := newMaker(f)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// TestListsAreClear: no words touch on any sheet of lists, nothing stands out of
// the frame, and every mark is there.
func TestListsAreClear(t *testing.T) {
	for name, text := range listJobs(t) {
		m := listMaker(t, text)
		if m == nil {
			continue
		}
		set := m.drawAll(m.listSheets())
		words := map[string]bool{}
		for _, s := range set.Sheets {
			for _, x := range s.Audit(m.figures) {
				t.Errorf("%s: %v", name, x)
			}
			for _, x := range s.LineGaps() {
				if !strings.Contains(fmt.Sprint(x), "border") { // the frame is drawn for every sheet
					t.Errorf("%s: %v", name, x)
				}
			}
			for _, it := range s.Items {
				if it.Text != nil && it.Text.Layer == draw.Notes {
					words[it.Text.String] = true
				}
			}
		}
		for _, b := range m.frame.Members {
			if !words[b.Mark] && !words[b.Mark+"a"] {
				t.Errorf("%s: no list has the mark %s", name, b.Mark)
			}
		}
	}
}

// TestListsAsCSV reads the lists back with a parser and holds them to the frame:
// every member once in the cutting list, every stick's length spent.
func TestListsAsCSV(t *testing.T) {
	for name, text := range listJobs(t) {
		m := listMaker(t, text)
		if m == nil {
			continue
		}
		lists, err := Lists(m.frame)
		if err != nil {
			t.Fatal(err)
		}
		tables := map[string]table{}
		for i, l := range lists {
			if l.Name != ListNames()[i] {
				t.Errorf("list %d is called %s", i, l.Name)
			}
			var b bytes.Buffer
			if err := l.Write(&b); err != nil {
				t.Fatal(err)
			}
			rows, err := csv.NewReader(&b).ReadAll()
			if err != nil {
				t.Fatalf("%s: %s: %v", name, l.Name, err)
			}
			tables[l.Name] = table{t, rows}
		}
		unit := " (mm)"
		tol := 0.0005 // of figures with three decimals, added
		if m.job.Units == frame.FeetInches {
			unit, tol = " (in)", 0.0005
		}
		pieces := 0.0
		cut := tables["cutting"]
		for i := range cut.rows[1:] {
			pieces += cut.number(i, "Count")
		}
		if want := len(m.frame.Pieces()); int(pieces) != want {
			t.Errorf("%s: %v pieces in the cutting list, want %d", name, pieces, want)
		}
		stock := tables["stock"]
		for i := range stock.rows[1:] {
			sum := 0.0
			for _, head := range []string{"Cuts", "Kerfs", "Trims", "Defects", "Left over"} {
				sum += stock.number(i, head+unit)
			}
			if stick := stock.number(i, "Stick"+unit); math.Abs(sum-stick) > tol {
				t.Errorf("%s: row %d of the stock list adds up to %v, the stick is %v", name, i, sum, stick)
			}
		}
	}
}

// table is a list read back.
type table struct {
	t    *testing.T
	rows [][]string
}

// number is the figure in a row under a head.
func (x table) number(row int, head string) float64 {
	x.t.Helper()
	for i, h := range x.rows[0] {
		if h == head {
			v, err := strconv.ParseFloat(x.rows[row+1][i], 64)
			if err != nil {
				x.t.Fatal(err)
			}
			return v
		}
	}
	x.t.Fatalf("no column is called %q, there are %q", head, x.rows[0])
	return 0
}

// TestRanges writes numbers of members as a builder says them.
func TestRanges(t *testing.T) {
	for _, c := range []struct {
		nos  []int
		want string
	}{
		{[]int{4}, "4"}, {[]int{1, 2}, "1, 2"}, {[]int{1, 2, 3}, "1 to 3"}, {[]int{1, 3, 4, 5, 6, 9}, "1, 3 to 6, 9"},
	} {
		if got := ranges(c.nos); got != c.want {
			t.Errorf("ranges(%v) = %q, want %q", c.nos, got, c.want)
		}
	}
}
