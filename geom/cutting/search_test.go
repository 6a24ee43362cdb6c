package cutting

import (
	"math/rand"
	"testing"
)

// tightJob returns a job of small whole numbers, in which a unit more or less decides.
func tightJob(r *rand.Rand, pieces int) Job {
	j := Job{Objective: LeastCost, Kerf: Length(r.Intn(2))}
	for range 1 + r.Intn(3) {
		s := Stock{Length: Length(9 + r.Intn(12)), Priced: true, Limit: r.Intn(3)}
		s.Price = int64(s.Length)*3 + int64(r.Intn(12))
		j.Stocks = append(j.Stocks, s)
	}
	for range pieces {
		j.Pieces = append(j.Pieces, Piece{Length: Length(2 + r.Intn(7)), Count: 1})
	}
	return j
}

// The search alone, without a first plan or any dive, finds the best plan or none,
// however much work it is given, if it says that it ended.
func TestSearchAlone(t *testing.T) {
	r := rand.New(rand.NewSource(6))
	ended, cutShort := 0, 0
	for n := range 3000 {
		j := tightJob(r, 3+n%8)
		if j.check() != nil {
			continue
		}
		want := bruteForce(j)
		s := newSolver(newProblem(j), 1<<40)
		effort := int64(1_000_000)
		if n%2 == 0 {
			effort = int64(r.Intn(3000))
		}
		if !s.search(s.demand(), s.limits(), nil, effort) {
			cutShort++
			continue
		}
		ended++
		got := int64(-1)
		if s.best != nil {
			got = s.cost * s.coin
		}
		if got != want {
			t.Errorf("job %d %+v: search found %d, want %d", n, j, got, want)
		}
	}
	if ended < 1500 || cutShort < 150 {
		t.Errorf("%d searches ended, %d were cut short: the jobs test too little", ended, cutShort)
	}
}

// A knapsack out of nodes still knows what no filling exceeds, and with nodes enough
// finds what trying everything finds.
func TestKnapsack(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	weaker := 0
	for n := range 2000 {
		var p problem
		var left []int
		var values []int64
		for range 1 + r.Intn(6) {
			p.sizes = append(p.sizes, size{weight: int64(3 + r.Intn(15))})
			left, values = append(left, r.Intn(3)), append(values, int64(r.Intn(30)))
		}
		capacity := int64(10 + r.Intn(40))
		best := allFillings(p, left, values, capacity)
		k := newKnapsack(&p, left, values)
		k.solve(capacity, 0, 1_000_000)
		if k.value != best || k.upper != best {
			t.Errorf("knapsack %d is worth %d, at most %d; want %d", n, k.value, k.upper, best)
		}
		k.solve(capacity, 0, r.Intn(6))
		if k.value > best || k.upper < best {
			t.Errorf("knapsack %d, few nodes: worth %d, at most %d; want %d between them", n, k.value, k.upper, best)
		}
		if k.value < best {
			weaker++
		}
	}
	if weaker < 50 {
		t.Errorf("nodes ran out only %d times before the best was found", weaker)
	}
}

// allFillings returns the most that any filling is worth.
func allFillings(p problem, left []int, values []int64, room int64) int64 {
	if len(left) == 0 {
		return 0
	}
	best := int64(0)
	rest := problem{sizes: p.sizes[1:]}
	for n := int64(0); n <= int64(left[0]) && n*p.sizes[0].weight <= room; n++ {
		v := n*values[0] + allFillings(rest, left[1:], values[1:], room-n*p.sizes[0].weight)
		best = max(best, v)
	}
	return best
}

// Of plans that cost the same the one of less length is kept.
func TestOfferPrefersLessLength(t *testing.T) {
	s := newSolver(newProblem(parse(t, "cut 2x900 from 1000@50 2000@100")), 0)
	short, long := use{pattern{0, []part{{0, 1}}}, 2}, use{pattern{1, []part{{0, 2}}}, 1}
	s.bins[1].length = mm(2100) // as a yard might sell it
	s.offer([]use{long})
	s.offer([]use{short})
	if s.length != mm(2000) {
		t.Errorf("keeps a plan of %v, want 2000 mm", s.length)
	}
	s.offer([]use{long})
	if s.length != mm(2000) {
		t.Errorf("takes a plan of %v for one of 2000 mm", s.length)
	}
}
