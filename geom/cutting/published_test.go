package cutting

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// published are instances with known optima, from the list BPPLIB_Bounds.txt,
// whose lower and upper bounds agree for all of them. The headers of the files are
// older and wrong for some; they are not used.
var published = []struct {
	file   string
	optima []int64
}{
	{"binpack1.txt", []int64{48, 49, 46, 49, 50, 48, 48, 49, 50, 46, 52, 49, 48, 49, 50, 48, 52, 52, 49, 49}},
	{"binpack2.txt", []int64{99, 100, 102, 100, 101, 101, 102, 103, 105, 101, 105, 101, 105, 103, 100, 105, 97, 100, 100, 102}},
}

type instance struct {
	name    string
	job     Job
	optimum int64
}

func readPublished(t testing.TB) []instance {
	var all []instance
	for _, set := range published {
		text, err := os.ReadFile("testdata/" + set.file)
		if err != nil {
			t.Fatal(err)
		}
		words := strings.Fields(string(text))
		number := func() int {
			n, err := strconv.Atoi(words[0])
			if err != nil {
				t.Fatal(err)
			}
			words = words[1:]
			return n
		}
		for i := range number() {
			name := words[0]
			words = words[1:]
			capacity, count := number(), number()
			number() // the best known when the file was made
			job := Job{Stocks: []Stock{{Length: Length(capacity) * Millimetre, Priced: true, Price: 1}}}
			for k := range count {
				job.Pieces = append(job.Pieces, Piece{fmt.Sprint(k), Length(number()) * Millimetre, 1})
			}
			all = append(all, instance{name, job, set.optima[i]})
		}
	}
	return all
}

func TestPublished(t *testing.T) {
	for _, in := range readPublished(t) {
		plan := solve(t, in.job)
		if plan.Value != in.optimum || !plan.Proven {
			t.Errorf("%s: %d sticks, bound %d; want %d, proven", in.name, plan.Value, plan.Bound, in.optimum)
		}
	}
}

// The roll of 5600 mm: 73 rolls, a waste of 0.401 % of what is bought
// (encyclopaedia text on the cutting stock problem, wikisum.wiki). By hand: the pieces add up to
// 407160 mm, 73 rolls to 408800 mm; the difference is 0.4012 %.
func TestRoll(t *testing.T) {
	plan := solve(t, readRoll(t))
	waste := 100 * float64(plan.Sums.Offcuts) / float64(plan.Sums.Bought)
	if len(plan.Sticks) != 73 || !plan.Proven || math.Abs(waste-0.401) > 0.0005 {
		t.Errorf("%d rolls, proven %v, waste %.4f %%; want 73, proven, 0.401 %%", len(plan.Sticks), plan.Proven, waste)
	}
	if plan.Sums.Cuts != mm(407160) {
		t.Errorf("cuts add up to %v, want 407160 mm", plan.Sums.Cuts)
	}
}

func readRoll(t testing.TB) Job {
	text, err := os.ReadFile("testdata/roll5600.csv")
	if err != nil {
		t.Fatal(err)
	}
	j := Job{Stocks: []Stock{{Length: mm(5600)}}}
	for _, line := range strings.Fields(string(text))[1:] {
		var p Piece
		var width int
		if _, err := fmt.Sscanf(line, "%d,%d", &width, &p.Count); err != nil {
			t.Fatal(err)
		}
		p.Length = mm(width)
		j.Pieces = append(j.Pieces, p)
	}
	return j
}

func BenchmarkPublished(b *testing.B) {
	all := readPublished(b)
	for b.Loop() {
		for _, in := range all {
			if _, err := Solve(in.job); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkRoll(b *testing.B) {
	j := readRoll(b)
	for b.Loop() {
		if _, err := Solve(j); err != nil {
			b.Fatal(err)
		}
	}
}
