package cutting

import (
	"fmt"
	"math/rand"
	"testing"
)

// typicalJob returns a job as a large building has: pieces of some lengths, each many
// times, from the lengths of a yard in steps of 600 mm. The prices by the metre
// differ by up to a tenth.
func typicalJob(r *rand.Rand, kinds, each int, priced bool) Job {
	j := Job{Kerf: mm(3), Trim: mm(10)}
	for length := 2400; length <= 5400; length += 600 {
		s := Stock{Length: mm(length), Priced: priced}
		if priced {
			s.Price = int64(float64(length) * (0.5 + 0.05*r.Float64()))
		}
		j.Stocks = append(j.Stocks, s)
	}
	for i := range kinds {
		j.Pieces = append(j.Pieces, Piece{fmt.Sprint(i), mm(200 + r.Intn(4800)), 1 + r.Intn(2*each-1)})
	}
	return j
}

// A unit of work is some twenty nanoseconds, so this holds typical jobs to about two
// hundredths of a second without asking the clock. Where the prices by the metre are
// uneven there are many plans within a few coins, and not all can be ruled out.
func TestTypicalWork(t *testing.T) {
	const most = 1_000_000
	const jobs = 20
	for _, c := range []struct {
		kinds, each int
		priced      bool
		proven      int     // at least, of the jobs
		gap         float64 // between value and bound at most, as a part of the bound
	}{
		{4, 6, false, jobs, 0},
		{8, 6, false, jobs, 0},
		{12, 10, false, jobs, 0},
		{20, 10, false, jobs - 1, 0.01},
		{4, 6, true, jobs, 0},
		{8, 6, true, jobs - 3, 0.01},
		{12, 10, true, jobs * 3 / 4, 0.002},
		{20, 10, true, jobs * 2 / 5, 0.001},
	} {
		r := rand.New(rand.NewSource(5))
		proven, gap := 0, 0.0
		for range jobs {
			j := typicalJob(r, c.kinds, c.each, c.priced)
			j.Effort = most
			p := solve(t, j)
			if p.Proven {
				proven++
			}
			gap = max(gap, float64(p.Value-p.Bound)/float64(p.Bound))
		}
		if proven < c.proven || gap > c.gap {
			t.Errorf("%d kinds, some %d of each, priced %v: %d of %d proven, gap %.5f; want %d, %.5f",
				c.kinds, c.each, c.priced, proven, jobs, gap, c.proven, c.gap)
		}
	}
}

func BenchmarkTypical(b *testing.B) {
	for _, size := range []struct{ kinds, each int }{{4, 6}, {12, 10}, {20, 10}} {
		for _, priced := range []bool{false, true} {
			b.Run(fmt.Sprintf("%d_kinds_priced_%v", size.kinds, priced), func(b *testing.B) {
				r := rand.New(rand.NewSource(5))
				var jobs []Job
				for range 20 {
					jobs = append(jobs, typicalJob(r, size.kinds, size.each, priced))
				}
				for n := 0; b.Loop(); n++ {
					if _, err := Solve(jobs[n%len(jobs)]); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
