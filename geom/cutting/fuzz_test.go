package cutting

import (
	"errors"
	"testing"
)

// fuzzJob makes a job of any bytes: eight for the allowances and the objective, then four
// for each stock up to three, then three for each piece.
func fuzzJob(data []byte) Job {
	next := func() int {
		if len(data) == 0 {
			return 0
		}
		b := data[0]
		data = data[1:]
		return int(b)
	}
	long := func() Length { return Length(next()<<8|next()) * 100 }
	j := Job{Kerf: Length(next()) * 50, Trim: Length(next()) * 100, Defect: Length(next()) * 200, DefectShare: float64(next()) / 255}
	j.Objective = Objective(next() % 3)
	j.Effort = 100_000
	for range next() % 4 {
		j.Stocks = append(j.Stocks, Stock{Length: long(), Priced: true, Price: int64(next()), Limit: next() % 8})
	}
	for len(data) > 0 && len(j.Pieces) < 30 {
		j.Pieces = append(j.Pieces, Piece{Length: long(), Count: next() % 6})
	}
	return j
}

func FuzzSolve(f *testing.F) {
	f.Add([]byte{60, 10, 0, 0, 0, 1, 0x5d, 0xc0, 9, 0, 0x27, 0x10, 3, 0x13, 0x88, 4})
	f.Add([]byte{0, 0, 5, 3, 1, 3, 0x5d, 0xc0, 9, 2, 0x8c, 0xa0, 0, 1, 0x40, 0, 7, 0, 0x27, 0x10, 3, 0x13, 0x88, 4, 0x12, 0x34, 5})
	f.Add([]byte{255, 255, 255, 255, 2, 1, 0, 1, 0, 0, 0, 0, 0})
	f.Fuzz(func(t *testing.T, data []byte) {
		j := fuzzJob(data)
		p, err := Solve(j)
		var short *ShortError
		if err != nil {
			if errors.As(err, &short) && short.Proven {
				for _, s := range j.Stocks {
					if firstFit(j, s, true) >= 0 {
						t.Errorf("%v; first fit has a plan", err)
					}
				}
			}
			return
		}
		checkPlan(t, j, p)
		for _, s := range j.Stocks {
			if v := firstFit(j, s, p.Objective == LeastCost); v >= 0 && v < p.Value {
				t.Errorf("value %d, by first fit %d", p.Value, v)
			}
		}
	})
}
