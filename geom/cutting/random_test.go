package cutting

import (
	"errors"
	"math/rand"
	"reflect"
	"slices"
	"testing"
)

// randomJob returns a job of so many pieces at most, from a seeded source.
func randomJob(r *rand.Rand, most int) Job {
	j := Job{Kerf: Length(r.Intn(3)) * 1700, Trim: mm(r.Intn(3) * 7), Defect: mm(r.Intn(2) * 20), DefectShare: float64(r.Intn(3)) / 100}
	j.Objective = []Objective{CostElseLength, LeastCost, LeastLength}[r.Intn(3)]
	unpriced := j.Objective != LeastCost && r.Intn(2) == 0
	for range 1 + r.Intn(3) {
		s := Stock{Length: mm(1500 + 300*r.Intn(8)), Priced: !unpriced}
		if s.Priced {
			s.Price = int64(s.Length.Millimetres()*(0.4+0.2*r.Float64())) / 10
		}
		if r.Intn(3) == 0 {
			s.Limit = 1 + r.Intn(3)
		}
		j.Stocks = append(j.Stocks, s)
	}
	for most > 0 {
		n := 1 + r.Intn(min(most, 3))
		most -= n
		j.Pieces = append(j.Pieces, Piece{Length: mm(200 + r.Intn(1200)), Count: n})
	}
	return j
}

// bruteForce returns the least value of any plan, or -1 if there is none: it
// puts each piece on each stick begun, and on a new one of each stock.
func bruteForce(j Job) int64 {
	type stick struct{ room, next Length }
	var pieces []Length
	for _, p := range j.Pieces {
		for range p.Count {
			pieces = append(pieces, p.Length)
		}
	}
	slices.Sort(pieces)
	slices.Reverse(pieces)
	bought := make([]int, len(j.Stocks))
	best := int64(-1)
	var place func(i int, sticks []stick, value int64)
	place = func(i int, sticks []stick, value int64) {
		if best >= 0 && value >= best {
			return
		}
		if i == len(pieces) {
			best = value
			return
		}
		for k, s := range sticks {
			if need := s.next + pieces[i]; need <= s.room {
				sticks[k] = stick{s.room - need, j.Kerf}
				place(i+1, sticks, value)
				sticks[k] = s
			}
		}
		for k, s := range j.Stocks {
			room := j.Usable(s.Length) - pieces[i]
			if room < 0 || s.Limit > 0 && bought[k] == s.Limit {
				continue
			}
			v := int64(s.Length)
			if j.objective() == LeastCost {
				v = s.Price
			}
			bought[k]++
			place(i+1, append(sticks[:len(sticks):len(sticks)], stick{room, j.Kerf}), value+v)
			bought[k]--
		}
	}
	place(0, nil, 0)
	return best
}

func TestBruteForceAgrees(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	plans, short := 0, 0
	for n := range 1500 {
		j := randomJob(r, 1+n%8)
		want := bruteForce(j)
		p, err := Solve(j)
		var tooLong *TooLongError
		var none *ShortError
		switch {
		case errors.As(err, &tooLong):
			if want >= 0 {
				t.Errorf("job %d: %v; there is a plan of %d", n, err, want)
			}
		case errors.As(err, &none):
			short++
			if want >= 0 || !none.Proven {
				t.Errorf("job %d: %v; want a plan of %d", n, err, want)
			}
		case err != nil:
			t.Errorf("job %d: %v", n, err)
		default:
			plans++
			checkPlan(t, j, p)
			if p.Value != want || !p.Proven {
				t.Errorf("job %d %+v: value %d, proven %v; want %d", n, j, p.Value, p.Proven, want)
			}
		}
	}
	if plans < 1000 || short < 50 {
		t.Errorf("only %d plans and %d jobs short of sticks: the jobs test too little", plans, short)
	}
}

// firstFit returns the value of the plan that puts each piece, longest first, on
// the first stick of the stock on which it fits; or -1 if the stock does not do.
func firstFit(j Job, stock Stock, byCost bool) int64 {
	var lengths []Length
	for _, p := range j.Pieces {
		for range p.Count {
			lengths = append(lengths, p.Length)
		}
	}
	slices.Sort(lengths)
	slices.Reverse(lengths)
	var rooms []Length // with one kerf more, as each piece takes one
	for _, l := range lengths {
		k := slices.IndexFunc(rooms, func(room Length) bool { return room >= l+j.Kerf })
		if k < 0 {
			k = len(rooms)
			rooms = append(rooms, j.Usable(stock.Length)+j.Kerf)
		}
		rooms[k] -= l + j.Kerf
		if rooms[k] < 0 {
			return -1
		}
	}
	if stock.Limit > 0 && len(rooms) > stock.Limit {
		return -1
	}
	if byCost {
		return stock.Price * int64(len(rooms))
	}
	return int64(stock.Length) * int64(len(rooms))
}

func TestFirstFitNeverBetter(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	worse := 0
	for n := range 200 {
		j := randomJob(r, 20+n%50)
		j.Effort = 200_000 // whatever the search finds must do, proven or not
		p, err := Solve(j)
		if err != nil {
			continue
		}
		checkPlan(t, j, p)
		for _, s := range j.Stocks {
			v := firstFit(j, s, p.Objective == LeastCost)
			if v >= 0 && v < p.Value {
				t.Errorf("job %d: value %d, by first fit %d", n, p.Value, v)
			}
			if v >= 0 && v < p.Bound {
				t.Errorf("job %d: bound %d, by first fit %d", n, p.Bound, v)
			}
			if v > p.Value {
				worse++
			}
		}
	}
	if worse < 50 {
		t.Errorf("first fit was worse only %d times: the jobs test too little", worse)
	}
}

func TestSameJobSamePlan(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	for n := range 20 {
		j := randomJob(r, 40)
		j.Effort = 100_000
		a, errA := Solve(j)
		b, errB := Solve(j)
		if !reflect.DeepEqual(a, b) || (errA == nil) != (errB == nil) {
			t.Errorf("job %d: two plans", n)
		}
	}
}

// More work finds plans no worse and bounds no lower.
func TestLittleEffort(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	for n := range 100 {
		j := randomJob(r, 30)
		j.Effort = 1
		little, err := Solve(j)
		if err != nil {
			continue
		}
		checkPlan(t, j, little)
		j.Effort = 500_000
		much := solve(t, j)
		if much.Value > little.Value || much.Value < little.Bound || little.Proven && much.Value < little.Value {
			t.Errorf("job %d: little work %d (bound %d, proven %v), much %d", n, little.Value, little.Bound, little.Proven, much.Value)
		}
	}
}
