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

// A unit of work is about ten nanoseconds, so this holds typical jobs to some
// milliseconds without asking the clock.
func TestTypicalWork(t *testing.T) {
	const most = 1_000_000
	for _, size := range []struct{ kinds, each int }{{4, 6}, {8, 6}, {12, 10}, {20, 10}} {
		for _, priced := range []bool{false, true} {
			r := rand.New(rand.NewSource(5))
			proven := 0
			const jobs = 20
			for range jobs {
				j := typicalJob(r, size.kinds, size.each, priced)
				j.Effort = most
				if solve(t, j).Proven {
					proven++
				}
			}
			if proven < jobs*9/10 {
				t.Errorf("%d kinds, some %d of each, priced %v: %d of %d proven with %d units of work",
					size.kinds, size.each, priced, proven, jobs, most)
			}
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
