package cutting

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// A problem is a job in the search's terms. A piece of length w becomes a size of
// weight w+kerf and a stick that gives C a bin of capacity C+kerf: n pieces then
// fit just when their lengths and the n-1 kerfs between them do.
type problem struct {
	sizes []size // heaviest first, no two alike
	bins  []bin  // none that another makes superfluous
	coin  int64  // objective value of one unit of bin.cost
}

type size struct {
	weight int64
	demand int
	pieces []int // of the job, in its order
}

type bin struct {
	capacity int64
	cost     int64
	length   Length // bought; decides between plans of equal cost
	stock    int    // of the job
	limit    int    // no more than this many can be of use
	limited  bool   // whether the limit is the stock's own, so that it may bind
}

// A part is count pieces of one size.
type part struct{ size, count int }

// A pattern is a way to cut a stick: its parts, heaviest first.
type pattern struct {
	bin   int
	parts []part
}

// A use is a pattern cut count times.
type use struct {
	pattern
	count int
}

// newProblem returns the job as a problem. The job must have passed its check.
func newProblem(j Job) problem {
	var p problem
	p.sizes = groupPieces(j)
	unit := int64(0)
	total := 0
	for _, s := range p.sizes {
		unit = gcd(unit, s.weight)
		total += s.demand
	}
	if total == 0 {
		return p
	}
	for i := range p.sizes {
		p.sizes[i].weight /= unit
	}
	p.bins = p.usefulBins(j, unit, total)
	for _, b := range p.bins {
		p.coin = gcd(p.coin, b.cost)
	}
	p.coin = max(p.coin, 1)
	for i := range p.bins {
		p.bins[i].cost /= p.coin
	}
	return p
}

func groupPieces(j Job) []size {
	var sizes []size
	at := map[Length]int{}
	for i, piece := range j.Pieces {
		if piece.Count == 0 {
			continue
		}
		k, known := at[piece.Length]
		if !known {
			k = len(sizes)
			at[piece.Length] = k
			sizes = append(sizes, size{weight: int64(piece.Length + j.Kerf)})
		}
		sizes[k].demand += piece.Count
		sizes[k].pieces = append(sizes[k].pieces, i)
	}
	slices.SortFunc(sizes, func(a, b size) int { return cmp.Compare(b.weight, a.weight) })
	return sizes
}

// usefulBins returns a bin for each stock that holds a piece and is not made
// superfluous by one that holds as much, costs no more and has no limit.
func (p *problem) usefulBins(j Job, unit int64, total int) []bin {
	var all, useful []bin
	byCost := j.objective() == LeastCost
	for i, s := range j.Stocks {
		b := bin{stock: i, cost: int64(s.Length), length: s.Length, limit: total}
		if byCost {
			b.cost = s.Price
		}
		if s.Limit > 0 && s.Limit < total {
			b.limit, b.limited = s.Limit, true
		}
		b.capacity = int64(j.Usable(s.Length)+j.Kerf) / unit
		if b.capacity >= p.sizes[len(p.sizes)-1].weight {
			all = append(all, b)
		}
	}
	slices.SortStableFunc(all, func(a, b bin) int {
		return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.length, b.length), cmp.Compare(b.limit, a.limit))
	})
	for i, b := range all {
		superfluous := slices.ContainsFunc(all[:i], func(o bin) bool {
			return !o.limited && o.capacity >= b.capacity
		})
		if !superfluous {
			useful = append(useful, b)
		}
	}
	return useful
}

// demand returns how many of each size are wanted.
func (p *problem) demand() []int {
	d := make([]int, len(p.sizes))
	for i, s := range p.sizes {
		d[i] = s.demand
	}
	return d
}

// limits returns how many of each bin can be had.
func (p *problem) limits() []int {
	l := make([]int, len(p.bins))
	for i, b := range p.bins {
		l[i] = b.limit
	}
	return l
}

func (p *problem) weight(parts []part) int64 {
	var w int64
	for _, t := range parts {
		w += p.sizes[t.size].weight * int64(t.count)
	}
	return w
}

// material returns what the pieces would cost if every stick were cut without an
// offcut: a bound at once, if a weak one.
func (p *problem) material() int64 {
	var total int64
	for _, z := range p.sizes {
		total += z.weight * int64(z.demand)
	}
	least := uint64(math.MaxUint64)
	for _, b := range p.bins {
		hi, lo := bits.Mul64(uint64(total), uint64(b.cost))
		if hi >= uint64(b.capacity) {
			continue // beyond 64 bits: not the least, which is that of a bin for the longest piece at most
		}
		cost, rest := bits.Div64(hi, lo, uint64(b.capacity))
		if rest > 0 {
			cost++
		}
		least = min(least, cost)
	}
	return int64(least)
}

// totals knows which sums of bin costs there are: a bound between two of them is
// as good as the upper one.
type totals []bool

// newTotals returns the totals up to most, or none where that are too many.
func newTotals(bins []bin, most int64) totals {
	const worthwhile = 1 << 16 // dearer plans leave few gaps, and the table grows long
	if most > worthwhile {
		return nil
	}
	t := make(totals, most+1)
	t[0] = true
	for v := range t {
		for _, b := range bins {
			if from := int64(v) - b.cost; from >= 0 && t[from] {
				t[v] = true
			}
		}
	}
	return t
}

// atLeast returns the least total that is not below v.
func (t totals) atLeast(v int64) int64 {
	for w := max(v, 0); w < int64(len(t)); w++ {
		if t[w] {
			return w
		}
	}
	return max(v, 0)
}

// below returns the largest total below v, or -1 if there is none.
func (t totals) below(v int64) int64 {
	for w := v - 1; w >= 0 && w < int64(len(t)); w-- {
		if t[w] {
			return w
		}
	}
	return v - 1
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
