package cutting

// A simplex solves: least cost·x with A·x = rhs and x ≥ 0, by the revised primal
// method with a dense inverse of the basis. Its answers carry rounding errors,
// so nothing is proven by them; see relaxation.
//
// Each product is converted to float64 before it is added, which keeps the
// compiler from fusing the two on machines that can: all machines round alike.
type simplex struct {
	rows    int
	columns []column
	basis   []int     // the column that is basic in each row
	basic   []bool    // whether a column is
	inverse []float64 // of the basis, row after row
	x       []float64 // of the basic column of each row
	dual    []float64 // of each row
	enter   []float64 // scratch: the entering column in terms of the basis
}

// A column is one variable: its cost and its few entries in the rows.
type column struct {
	cost    float64
	entries []entry
}

type entry struct {
	row   int
	value float64
}

// Tolerances of the simplex, in parts of a typical coefficient, which is one.
const (
	pivotTolerance = 1e-9  // a smaller pivot would blow up the inverse
	costTolerance  = 1e-9  // of the dearest bin: a reduced cost this near 0 is 0
	ratioTolerance = 1e-11 // two ratios this close tie; the larger pivot is then safer
)

// start begins anew with a basis of one column per row, whose only entry is a
// positive one in that row. It uses the room of the last time again.
func (s *simplex) start(basis []column, rhs []float64) {
	m := len(basis)
	s.rows = m
	s.columns = append(s.columns[:0], basis...)
	s.basis, s.basic = zeroed(s.basis, m), zeroed(s.basic, m)
	s.inverse, s.x = zeroed(s.inverse, m*m), zeroed(s.x, m)
	s.dual, s.enter = zeroed(s.dual, m), zeroed(s.enter, m)
	for i, c := range basis {
		v := c.entries[0].value
		s.basis[i], s.basic[i] = i, true
		s.inverse[i*m+i] = 1 / v
		s.x[i] = rhs[i] / v
		s.dual[i] = c.cost / v
	}
}

// zeroed returns n zeros, in the room of s if they fit.
func zeroed[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n, n+n/2)
	}
	s = s[:n]
	clear(s)
	return s
}

// add makes a column known and returns its number.
func (s *simplex) add(c column) int {
	s.columns = append(s.columns, c)
	s.basic = append(s.basic, false)
	return len(s.columns) - 1
}

// reduced returns by how much one unit of a column changes the total cost.
func (s *simplex) reduced(c column) float64 {
	r := c.cost
	for _, e := range c.entries {
		r -= float64(s.dual[e.row] * e.value)
	}
	return r
}

// optimise pivots until no known column improves the cost by more than the
// tolerance, or the pivots are used up. It returns how many it made.
func (s *simplex) optimise(tolerance float64, most int) int {
	for n := range most {
		best, least := -1, -tolerance
		for j, c := range s.columns {
			if s.basic[j] {
				continue
			}
			if r := s.reduced(c); r < least {
				best, least = j, r
			}
		}
		if best < 0 || !s.pivot(best, least) {
			return n
		}
	}
	return most
}

// pivot brings a column of the given reduced cost into the basis. It reports
// false if no row limits the column, which only rounding can cause: costs are
// not negative.
func (s *simplex) pivot(col int, reduced float64) bool {
	m := s.rows
	clear(s.enter)
	for _, e := range s.columns[col].entries {
		for i := range m {
			s.enter[i] += float64(s.inverse[i*m+e.row] * e.value)
		}
	}
	out := s.leaving()
	if out < 0 {
		return false
	}
	pivotRow := s.inverse[out*m : out*m+m]
	scale := 1 / s.enter[out]
	for k := range pivotRow {
		pivotRow[k] *= scale
	}
	step := max(0, s.x[out]*scale)
	for i, d := range s.enter {
		if i == out || d == 0 {
			continue
		}
		row := s.inverse[i*m : i*m+m]
		for k, p := range pivotRow {
			row[k] -= float64(d * p)
		}
		s.x[i] = max(0, s.x[i]-float64(d*step))
	}
	for k, p := range pivotRow {
		s.dual[k] += float64(reduced * p)
	}
	s.x[out] = step
	s.basic[s.basis[out]], s.basic[col] = false, true
	s.basis[out] = col
	return true
}

// leaving returns the row whose basic variable reaches 0 first, or -1.
func (s *simplex) leaving() int {
	out, least := -1, 0.0
	for i, d := range s.enter {
		if d <= pivotTolerance {
			continue
		}
		ratio := s.x[i] / d
		if out < 0 || ratio < least-ratioTolerance || ratio <= least+ratioTolerance && d > s.enter[out] {
			out, least = i, ratio
		}
	}
	return out
}

// cost returns the total cost of the basic solution.
func (s *simplex) cost() float64 {
	total := 0.0
	for i, j := range s.basis {
		total += float64(s.columns[j].cost * s.x[i])
	}
	return total
}
