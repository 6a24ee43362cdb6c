package cutting

import "testing"

// mm returns whole millimetres.
func mm(n int) Length { return Length(n) * Millimetre }

// checkPlan holds a plan to the job with a tape in hand: it shares nothing with
// the code that made the plan but the meaning of the job.
func checkPlan(t *testing.T, j Job, p Plan) {
	t.Helper()
	cut := make([]int, len(j.Pieces))
	bought := make([]int, len(j.Stocks))
	var sums Sums
	for n, s := range p.Sticks {
		bought[s.Stock]++
		checkStick(t, j, n, s)
		for _, c := range s.Cuts {
			cut[c.Piece]++
		}
		sums.add(s.Sums)
	}
	for i, piece := range j.Pieces {
		if cut[i] != piece.Count {
			t.Errorf("piece %d is cut %d times, want %d", i, cut[i], piece.Count)
		}
	}
	var cost int64
	var length Length
	for i, s := range j.Stocks {
		if s.Limit > 0 && bought[i] > s.Limit {
			t.Errorf("buys %d of stock %d, of which there are %d", bought[i], i, s.Limit)
		}
		cost += int64(bought[i]) * s.Price
		length += Length(bought[i]) * s.Length
	}
	if sums != p.Sums || p.Sums.Bought != length || p.Sums.total() != length {
		t.Errorf("sums are %+v, the sticks' %+v, bought %v", p.Sums, sums, length)
	}
	value := int64(length)
	if p.Objective == LeastCost {
		value = cost
	}
	if p.Cost != cost || p.Value != value {
		t.Errorf("cost %d, value %d; want %d, %d", p.Cost, p.Value, cost, value)
	}
	if p.Bound > p.Value || p.Proven != (p.Bound == p.Value) {
		t.Errorf("value %d, bound %d, proven %v", p.Value, p.Bound, p.Proven)
	}
}

func (s Sums) total() Length { return s.Cuts + s.Kerfs + s.Trims + s.Defects + s.Offcuts }

// checkStick walks along a stick.
func checkStick(t *testing.T, j Job, n int, s Stick) {
	t.Helper()
	length := j.Stocks[s.Stock].Length
	end := length - j.Trim - j.Defects(length)
	at := j.Trim
	var kerfs Length
	for i, c := range s.Cuts {
		if c.Start != at || c.Length != j.Pieces[c.Piece].Length {
			t.Errorf("stick %d, cut %d: %v from %v; want %v from %v", n, i, c.Length, c.Start, j.Pieces[c.Piece].Length, at)
		}
		if i > 0 && c.Length > s.Cuts[i-1].Length {
			t.Errorf("stick %d, cut %d is longer than the one before", n, i)
		}
		at += c.Length
		if at > end {
			t.Errorf("stick %d, cut %d ends at %v, beyond %v", n, i, at, end)
		}
		kerf := min(j.Kerf, end-at)
		if i < len(s.Cuts)-1 {
			kerf = j.Kerf
		}
		at += kerf
		kerfs += kerf
	}
	if s.Sums.Kerfs != kerfs || s.Sums.Offcuts != end-at || s.Sums.Bought != length || s.Sums.total() != length {
		t.Errorf("stick %d: sums %+v; want kerfs %v, offcut %v, bought %v", n, s.Sums, kerfs, end-at, length)
	}
	if len(s.Cuts) == 0 {
		t.Errorf("stick %d is bought for nothing", n)
	}
}

// solve returns the plan for a job, checked.
func solve(t *testing.T, j Job) Plan {
	t.Helper()
	p, err := Solve(j)
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, j, p)
	return p
}
