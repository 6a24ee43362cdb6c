package cutting

import (
	"cmp"
	"slices"
)

// A Plan says which sticks to buy and what to cut from each. Of every stick and
// of the whole, Cuts + Kerfs + Trims + Defects + Offcuts = Bought, exactly.
type Plan struct {
	Sticks    []Stick // alike ones side by side, those that cost most first
	Sums      Sums    // over all sticks
	Objective Objective
	Priced    bool  // whether every stick bought has a price
	Cost      int64 // of those that have
	Value     int64 // what the objective counts: Cost, or the length bought
	Bound     int64 // no plan has a smaller Value
	Proven    bool  // whether Value is known to be the least there is
}

// Sums says where the length of a stick, or of many, goes.
type Sums struct {
	Bought, Cuts, Kerfs, Trims, Defects, Offcuts Length
}

// A Stick is one stick bought.
type Stick struct {
	Stock int   // index in Job.Stocks
	Cuts  []Cut // in the order of cutting, longest first, from the end after the trim
	Sums  Sums
}

// A Cut is one piece from a stick.
type Cut struct {
	Piece  int    // index in Job.Pieces
	Start  Length // from the end of the stick as bought
	Length Length
}

// A Group is a run of sticks that are cut alike, labels included.
type Group struct {
	Stick Stick
	Count int
}

// Groups returns the sticks with alike ones counted.
func (p Plan) Groups() []Group {
	var groups []Group
	for _, s := range p.Sticks {
		if n := len(groups); n > 0 && compareSticks(groups[n-1].Stick, s) == 0 {
			groups[n-1].Count++
			continue
		}
		groups = append(groups, Group{s, 1})
	}
	return groups
}

// Bought returns how many sticks of each of the job's stocks the plan buys.
func (p Plan) Bought(j Job) []int {
	counts := make([]int, len(j.Stocks))
	for _, s := range p.Sticks {
		counts[s.Stock]++
	}
	return counts
}

// Solve returns the best plan it finds for the job. With the same job it finds
// the same plan on every machine.
//
// If the job makes no sense the error joins an *InputError for each fault, or
// a *TooLongError for each piece that fits on no stick. If the limits of
// the stocks leave no way to cut all pieces it is a *ShortError.
func Solve(j Job) (Plan, error) {
	if err := j.check(); err != nil {
		return Plan{}, err
	}
	p := newProblem(j)
	if len(p.sizes) == 0 {
		return Plan{Objective: j.objective(), Priced: true, Proven: true}, nil
	}
	effort := j.Effort
	if effort == 0 {
		effort = DefaultEffort
	}
	s := newSolver(p, effort)
	ended := s.run()
	if s.best == nil {
		return Plan{}, &ShortError{Piece: j.Pieces[s.sizes[s.short].pieces[0]], Proven: ended}
	}
	return s.plan(j), nil
}

// plan writes the best plan out stick by stick.
func (s *solver) plan(j Job) Plan {
	plan := Plan{Objective: j.objective(), Priced: true, Proven: s.proven()}
	plan.Value, plan.Bound = s.cost*s.coin, s.bound*s.coin
	if plan.Proven {
		plan.Bound = plan.Value // where the bound lies higher than any plan that costs less
	}
	queues := make([]queue, len(s.sizes))
	for i, z := range s.sizes {
		queues[i] = queue{pieces: z.pieces}
	}
	uses := slices.Clone(s.best)
	slices.SortStableFunc(uses, func(a, b use) int {
		return cmp.Or(cmp.Compare(b.bin, a.bin), comparePatterns(a.pattern, b.pattern))
	})
	for _, u := range uses {
		for range u.count {
			plan.Sticks = append(plan.Sticks, s.stick(j, u.pattern, queues))
		}
	}
	for _, stick := range plan.Sticks {
		stock := j.Stocks[stick.Stock]
		plan.Priced = plan.Priced && stock.Priced
		plan.Cost += stock.Price
		plan.Sums.add(stick.Sums)
	}
	return plan
}

func (t *Sums) add(s Sums) {
	t.Bought += s.Bought
	t.Cuts += s.Cuts
	t.Kerfs += s.Kerfs
	t.Trims += s.Trims
	t.Defects += s.Defects
	t.Offcuts += s.Offcuts
}

// A queue hands out the pieces of one size in the order of the job.
type queue struct {
	pieces []int
	gone   int // of the first
}

// next returns the next piece, or false if all are cut: a pattern may hold more
// pieces than are wanted.
func (q *queue) next(j Job) (int, bool) {
	if len(q.pieces) == 0 {
		return 0, false
	}
	piece := q.pieces[0]
	q.gone++
	if q.gone == j.Pieces[piece].Count {
		q.pieces, q.gone = q.pieces[1:], 0
	}
	return piece, true
}

// stick cuts one stick by the pattern.
func (s *solver) stick(j Job, p pattern, queues []queue) Stick {
	stock := s.bins[p.bin].stock
	length := j.Stocks[stock].Length
	stick := Stick{Stock: stock, Sums: Sums{Bought: length, Trims: 2 * j.Trim, Defects: j.Defects(length)}}
	room := j.Usable(length)
	at := j.Trim
	for _, t := range p.parts {
		for range t.count {
			piece, ok := queues[t.size].next(j)
			if !ok {
				break
			}
			cut := Cut{piece, at, j.Pieces[piece].Length}
			room -= cut.Length
			kerf := min(j.Kerf, room) // the last may run off the end
			room -= kerf
			at += cut.Length + kerf
			stick.Cuts = append(stick.Cuts, cut)
			stick.Sums.Cuts += cut.Length
			stick.Sums.Kerfs += kerf
		}
	}
	stick.Sums.Offcuts = room
	return stick
}

// compareSticks returns 0 for sticks that are cut alike.
func compareSticks(a, b Stick) int {
	return cmp.Or(cmp.Compare(a.Stock, b.Stock), slices.CompareFunc(a.Cuts, b.Cuts, func(c, d Cut) int {
		return cmp.Compare(c.Piece, d.Piece)
	}))
}
