package cutting

import (
	"flag"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"
)

var long = flag.Bool("long", false, "solve all published instances, not only some")

// published are instances with known optima. The optima are the proven ones (lower bound =
// upper bound) of the BPPLIB list of bounds for u120 and u250. The
// best-known values in the headers of the files are older: five are above the optimum or
// one is below, and are not used.
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
	for i, in := range readPublished(t) {
		if !*long && i%5 != 3 {
			continue
		}
		start := time.Now()
		plan, err := Solve(in.job)
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%s: %d sticks, optimum %d, bound %d, proven %v, %v", in.name, plan.Value, in.optimum, plan.Bound, plan.Proven, time.Since(start))
		if plan.Value != in.optimum || !plan.Proven {
			t.Errorf("%s: %d sticks, proven %v; want %d, proven", in.name, plan.Value, plan.Proven, in.optimum)
		}
	}
}
