package cutting

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// valueScale is the most that a piece is worth in whole numbers. A product of a
// value and a weight must stay within 63 bits.
const valueScale = 1 << 31

// forbidding is the price of a piece that no stick is left for, in dearest bins. It
// must exceed what one piece more can cost, but for jobs made to be odd; a
// relaxation that leaves out such a piece all the same only bounds too low.
const forbidding = 16

// A relaxation is the answer to a problem in which a pattern may be cut a
// fraction of a time: the patterns used, and a bound for whole ones.
//
// The bound is proven in whole numbers. Let each piece of size i have the value
// v(i), rounded from the duals that the simplex found, and let each filling of
// bin b be worth at most scale·cost(b)+over(b); the knapsacks search that, and
// over(b) is 0 for bins without a limit. Then
// the sticks of any plan cost, times scale, at least
//
//	Σ v(i)·demand(i) − Σ limit(b)·over(b)
//
// whatever errors the duals carry: they can only make the bound weak.
type relaxation struct {
	used   []fraction
	values []int64 // of a piece of each size
	over   []int64 // of each bin
	scaled int64   // the bound times scale
	bound  int64   // in units of bin cost, rounded up to a whole one
}

// A fraction is a pattern and how often it is cut.
type fraction struct {
	pattern
	times float64
}

// A relaxer solves relaxations of what is left of one problem. It keeps the
// patterns that it found: they are a good start for the next.
type relaxer struct {
	problem *problem
	work    *work
	scale   int64 // values per unit of bin cost
	dearest int64
	pool    []pattern // those found last
	oldest  int       // where the next one goes once the pool is full
	master  master    // of the last relaxation: its room is used again
}

func newRelaxer(p *problem, w *work) *relaxer {
	r := &relaxer{problem: p, work: w, dearest: 1}
	for _, b := range p.bins {
		r.dearest = max(r.dearest, b.cost)
	}
	r.scale = max(1, valueScale/(forbidding*r.dearest))
	return r
}

// A master is one relaxation under way: rows for the sizes left, then rows for
// the bins that may run out.
type master struct {
	*relaxer
	left, limits []int
	rowOfSize    []int
	rowOfBin     []int
	simplex      simplex
	patterns     []pattern // of each simplex column; no parts where it is none
	entries      []entry   // of all columns, one after another
	best         relaxation
}

// relax returns the relaxation for the pieces and sticks left. It stops early
// where the bound reaches enough: the caller then has no use for the rest.
func (r *relaxer) relax(left, limits []int, enough int64) relaxation {
	m := &r.master
	m.relaxer, m.left, m.limits, m.best = r, left, limits, relaxation{scaled: math.MinInt64}
	m.start()
	m.addPool()
	m.work.spend(int64(60 + 4*len(m.patterns)))
	const rounds = 1000 // far more than are ever needed; rounding errors must not loop
	for range rounds {
		pivots := m.simplex.optimise(m.tolerance(), 50*m.simplex.rows)
		m.work.spend(int64(pivots+1) * int64(m.simplex.rows*m.simplex.rows+4*len(m.patterns)) / pivotsPerWork)
		if !m.price() || m.best.bound >= enough || m.best.bound >= m.ceiling() || m.work.done() {
			break
		}
	}
	m.collect()
	return m.best
}

func (m *master) tolerance() float64 { return costTolerance * float64(m.dearest) }

// ceiling returns the most that the bound can become.
func (m *master) ceiling() int64 {
	const slack = 1e-6 // of the dearest bin, for the rounding errors of the cost
	return int64(math.Ceil(m.simplex.cost() - float64(slack*float64(m.dearest))))
}

// start sets up the rows with a basis that meets every demand: each size alone
// on an unlimited stick, or short of pieces at a forbidding price.
func (m *master) start() {
	rhs := make([]float64, 0, len(m.left)+len(m.limits))
	basis := make([]column, 0, cap(rhs))
	m.patterns, m.entries = m.patterns[:0], m.entries[:0]
	m.rowOfSize, m.rowOfBin = zeroed(m.rowOfSize, len(m.left)), zeroed(m.rowOfBin, len(m.limits))
	for i, n := range m.left {
		m.rowOfSize[i] = -1
		if n > 0 {
			m.rowOfSize[i] = len(basis)
			c, p := m.alone(i, len(basis))
			basis, rhs = append(basis, c), append(rhs, float64(n))
			m.patterns = append(m.patterns, p)
		}
	}
	for b, n := range m.limits {
		m.rowOfBin[b] = -1
		if m.problem.bins[b].limited {
			m.rowOfBin[b] = len(basis)
			basis, rhs = append(basis, m.single(0, len(basis), 1)), append(rhs, float64(n))
			m.patterns = append(m.patterns, pattern{})
		}
	}
	m.simplex.start(basis, rhs)
	for _, row := range m.rowOfSize {
		if row >= 0 { // more pieces than wanted cost nothing
			m.simplex.add(m.single(0, row, -1))
			m.patterns = append(m.patterns, pattern{})
		}
	}
}

// single returns a column of one entry.
func (m *master) single(cost float64, row int, value float64) column {
	from := len(m.entries)
	m.entries = append(m.entries, entry{row, value})
	return column{cost, m.entries[from : from+1 : from+1]}
}

// alone returns the first column of a size.
func (m *master) alone(size, row int) (column, pattern) {
	var p pattern
	cost, pieces := float64(forbidding*m.dearest), 1.0
	for b, bin := range m.problem.bins {
		n := min(int64(m.left[size]), bin.capacity/m.problem.sizes[size].weight)
		if bin.limited || n == 0 {
			continue
		}
		if float64(bin.cost)/float64(n) < cost/pieces {
			cost, pieces = float64(bin.cost), float64(n)
			p = pattern{b, []part{{size, int(n)}}}
		}
	}
	return m.single(cost, row, pieces), p
}

// patternColumn returns the column of a pattern.
func (m *master) patternColumn(p pattern) column {
	from := len(m.entries)
	for _, t := range p.parts {
		m.entries = append(m.entries, entry{m.rowOfSize[t.size], float64(t.count)})
	}
	if row := m.rowOfBin[p.bin]; row >= 0 {
		m.entries = append(m.entries, entry{row, 1})
	}
	return column{float64(m.problem.bins[p.bin].cost), m.entries[from:len(m.entries):len(m.entries)]}
}

func (m *master) add(p pattern) {
	m.simplex.add(m.patternColumn(p))
	m.patterns = append(m.patterns, p)
}

// addPool adds what is left of the known patterns.
func (m *master) addPool() {
	for _, p := range m.pool {
		if m.limits[p.bin] == 0 {
			continue
		}
		if parts := clip(p.parts, m.left); len(parts) > 0 {
			m.add(pattern{p.bin, parts})
		}
	}
}

// keep puts a pattern into the pool, in place of the oldest if it is full.
func (r *relaxer) keep(p pattern) {
	const perSize, atLeast = 4, 50 // more would cost more time than they save
	if len(r.pool) < perSize*len(r.problem.sizes)+atLeast {
		r.pool = append(r.pool, p)
		return
	}
	r.pool[r.oldest] = p
	r.oldest = (r.oldest + 1) % len(r.pool)
}

// clip returns the parts less the pieces that are not left.
func clip(parts []part, left []int) []part {
	fits := true
	for _, t := range parts {
		fits = fits && t.count <= left[t.size]
	}
	if fits {
		return parts
	}
	var kept []part
	for _, t := range parts {
		if n := min(t.count, left[t.size]); n > 0 {
			kept = append(kept, part{t.size, n})
		}
	}
	return kept
}

// price looks for patterns that improve the relaxation, adds them, and reports
// whether there were any. It takes note of the bound that the search proves.
func (m *master) price() bool {
	values := m.wholeValues()
	over := make([]int64, len(m.problem.bins))
	k := newKnapsack(m.problem, m.left, values)
	improved := false
	for b, bin := range m.problem.bins {
		if m.limits[b] == 0 {
			continue
		}
		floor := bin.cost * m.scale
		if row := m.rowOfBin[b]; row >= 0 {
			floor += m.whole(-m.simplex.dual[row])
		}
		k.solve(bin.capacity, floor, knapsackNodes)
		m.work.spend(int64(knapsackNodes - k.nodes))
		over[b] = k.upper - bin.cost*m.scale
		if k.best == nil {
			continue
		}
		p := pattern{b, k.parts()}
		if m.simplex.reduced(m.patternColumn(p)) < -m.tolerance() {
			m.add(p)
			m.keep(p)
			improved = true
		}
	}
	m.note(values, over)
	return improved
}

// wholeValues returns the duals of the sizes in whole numbers.
func (m *master) wholeValues() []int64 {
	values := make([]int64, len(m.left))
	for i, row := range m.rowOfSize {
		if row >= 0 {
			values[i] = m.whole(m.simplex.dual[row])
		}
	}
	return values
}

// whole returns a dual in whole numbers, which lie between 0 and valueScale.
func (m *master) whole(dual float64) int64 {
	if v := dual * float64(m.scale); v > 0 {
		return int64(min(v, valueScale))
	}
	return 0
}

// note keeps the bound of the values if it is the best so far.
func (m *master) note(values, over []int64) {
	m.shrink(values, over)
	scaled := int64(0)
	for i, n := range m.left {
		scaled += int64(n) * values[i]
	}
	for b, n := range m.limits {
		scaled -= int64(n) * over[b]
	}
	if scaled > m.best.scaled {
		m.best.values, m.best.over, m.best.scaled = values, over, scaled
		m.best.bound = max(0, ceilDiv(scaled, m.scale))
	}
}

// shrink makes the values smaller in proportion until no filling of a bin without
// a limit is worth more than the bin costs. That loses less than a charge for
// every stick that might be bought.
func (m *master) shrink(values, over []int64) {
	worth := func(b int) int64 { return m.problem.bins[b].cost * m.scale }
	for b := range over {
		if m.problem.bins[b].limited || over[b] <= 0 {
			continue
		}
		num, den := worth(b), worth(b)+over[b]
		for i, v := range values {
			values[i], _ = mulDiv(v, num, den)
		}
		for o := range over {
			if m.limits[o] > 0 {
				_, most := mulDiv(worth(o)+over[o], num, den)
				over[o] = max(0, most-worth(o))
			}
		}
	}
}

// mulDiv returns a·num/den rounded down and rounded up, for numbers that are not
// negative and of which num is not above den.
func mulDiv(a, num, den int64) (down, up int64) {
	hi, lo := bits.Mul64(uint64(a), uint64(num))
	q, rest := bits.Div64(hi, lo, uint64(den))
	down = int64(q)
	if rest > 0 {
		return down, down + 1
	}
	return down, down
}

func ceilDiv(a, b int64) int64 {
	q := a / b
	if a%b > 0 {
		q++
	}
	return q
}

// collect notes the patterns of the basis, the most used first.
func (m *master) collect() {
	const none = 1e-7 // of a stick: less is a rounding error
	for i, j := range m.simplex.basis {
		if p := m.patterns[j]; len(p.parts) > 0 && m.simplex.x[i] > none {
			m.best.used = append(m.best.used, fraction{p, m.simplex.x[i]})
		}
	}
	slices.SortFunc(m.best.used, func(a, b fraction) int {
		return cmp.Or(cmp.Compare(b.times, a.times), comparePatterns(a.pattern, b.pattern))
	})
}
