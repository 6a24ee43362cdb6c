package frame

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"plumbcut/geom/cutting"
)

// Batch is all that is cut from sticks of one section and one timber, and the
// sticks to buy for it.
type Batch struct {
	Section Section
	Timber  Timber
	Cuts    []Cut
	Lengths []StockLength // that can be bought
	Plan    cutting.Plan  // its cuts are indices of Cuts, its stocks of Lengths
	Whole   int           // how many of the plan's sticks, the last ones, are taken whole: too short to trim
}

// Cut is one or more pieces that are alike.
type Cut struct {
	Piece          // the first of them
	Mark   string  // of the member, with a letter for each part: "B1a"
	Hand   Hand    // of the member
	Kind   Kind    // of the member
	Pieces []Piece // all of them
	Order  bool    // no stick is long enough: order it by its length
}

// Count is how many pieces there are.
func (c Cut) Count() int { return len(c.Pieces) }

// orderEffort bounds the search for the best plan of one batch: a tenth of a
// second at most. Nearly all are proven in a hundredth of it.
const orderEffort = 10_000_000

// Order says which sticks to buy and what to cut from each: a batch for each
// section and timber, in the order of the members. The same frame gives the
// same plan on every machine.
func (f *Frame) Order() ([]Batch, error) {
	batches := f.batches()
	var errs []error
	for i := range batches {
		if err := batches[i].plan(f.Job.Stock); err != nil {
			errs = append(errs, fmt.Errorf("the sticks of %v: %w", batches[i].Section, err))
		}
	}
	return batches, errors.Join(errs...)
}

// batches sorts the pieces by section and timber and counts those alike.
func (f *Frame) batches() []Batch {
	var out []Batch
	for _, p := range f.Pieces() {
		m := f.Members[p.Member]
		i := slices.IndexFunc(out, func(b Batch) bool { return b.Section.same(m.Section) && b.Timber.same(m.Timber) })
		if i < 0 {
			i = len(out)
			out = append(out, Batch{Section: m.Section, Timber: m.Timber, Lengths: f.Job.Stock.LengthsOf(m.Section)})
		}
		b := &out[i]
		b.Timber.Nominal = cmp.Or(b.Timber.Nominal, m.Timber.Nominal)
		mark := m.Mark + partLetter(p.Part)
		k := slices.IndexFunc(b.Cuts, func(c Cut) bool { return c.Mark == mark && c.Hand == m.Hand })
		if k < 0 {
			k = len(b.Cuts)
			b.Cuts = append(b.Cuts, Cut{Piece: p, Mark: mark, Hand: m.Hand, Kind: m.Kind, Order: f.TooLong(p)})
		}
		b.Cuts[k].Pieces = append(b.Cuts[k].Pieces, p)
	}
	return out
}

// partLetter tells the parts of a member apart: a, b … z, then aa.
func partLetter(part int) string {
	const letters = 26
	s := ""
	for ; part > 0; part = (part - 1) / letters {
		s = string(rune('a'+(part-1)%letters)) + s
	}
	return s
}

// same reports whether two timbers may be cut from one stick. What they are
// coated with, and what the trade calls their size, does not part them.
func (t Timber) same(u Timber) bool {
	return strings.EqualFold(t.Species, u.Species) && strings.EqualFold(t.Grade, u.Grade) && strings.EqualFold(t.Treatment, u.Treatment)
}

// plan finds the sticks to buy. Pieces that fit on a stick only if it is not
// trimmed get one each.
func (b *Batch) plan(s Stock) error {
	job := cutting.Job{
		Kerf: cutting.Millimetres(s.Kerf), Trim: cutting.Millimetres(s.EndTrim), DefectShare: s.Defects, Effort: orderEffort,
	}
	var reach cutting.Length
	for _, l := range b.Lengths {
		stock := cutting.Stock{Label: fmt.Sprint(l.Length), Length: cutting.Millimetres(l.Length), Priced: l.Priced, Price: Coins(l.Price)}
		job.Stocks = append(job.Stocks, stock)
		reach = max(reach, job.Usable(stock.Length))
	}
	var whole []int
	for i, c := range b.Cuts {
		piece := cutting.Piece{Label: c.Mark, Length: cutting.Millimetres(c.Cut()), Count: c.Count()}
		if c.Order || piece.Length > reach {
			piece.Count = 0
			if !c.Order {
				whole = append(whole, i)
			}
		}
		job.Pieces = append(job.Pieces, piece)
	}
	plan, err := cutting.Solve(job)
	if err != nil {
		return err
	}
	b.Plan = plan
	for _, i := range whole {
		b.takeWhole(job, i)
	}
	return nil
}

// Coins is a price in hundredths, so that sums are exact.
func Coins(price float64) int64 { return int64(math.Round(price * coinsPerPrice)) }

const coinsPerPrice = 100

// Money is a sum of prices as the job gives them.
func Money(coins int64) float64 { return float64(coins) / coinsPerPrice }

// takeWhole buys an untrimmed stick for each piece of a cut.
func (b *Batch) takeWhole(job cutting.Job, cut int) {
	piece := job.Pieces[cut].Length
	best := -1
	for i, s := range job.Stocks {
		if s.Length < piece {
			continue
		}
		if best < 0 || b.Plan.Objective == cutting.LeastCost && s.Price < job.Stocks[best].Price {
			best = i
		}
	}
	stock := job.Stocks[best]
	kerf := min(job.Kerf, stock.Length-piece)
	sums := cutting.Sums{Bought: stock.Length, Cuts: piece, Kerfs: kerf, Offcuts: stock.Length - piece - kerf}
	for range b.Cuts[cut].Count() {
		b.Whole++
		b.Plan.Sticks = append(b.Plan.Sticks, cutting.Stick{Stock: best, Cuts: []cutting.Cut{{Piece: cut, Length: piece}}, Sums: sums})
		b.Plan.Sums.Bought += sums.Bought
		b.Plan.Sums.Cuts += sums.Cuts
		b.Plan.Sums.Kerfs += sums.Kerfs
		b.Plan.Sums.Offcuts += sums.Offcuts
		b.Plan.Cost += stock.Price
		b.Plan.Priced = b.Plan.Priced && stock.Priced
		value := int64(stock.Length)
		if b.Plan.Objective == cutting.LeastCost {
			value = stock.Price
		}
		b.Plan.Value += value
		b.Plan.Bound += value
	}
}

// CutStick is a run of sticks of a batch that are cut alike.
type CutStick struct {
	Length StockLength
	Count  int
	Whole  bool // taken as it is, untrimmed
	Stick  int  // index of the first in Batch.Plan.Sticks
}

// Run is the length of timber that the batch takes, finished, and as bought.
func (b Batch) Run() (finished, bought float64) {
	for _, c := range b.Cuts {
		for _, p := range c.Pieces {
			finished += p.Length()
		}
	}
	return finished, b.Plan.Sums.Bought.Millimetres()
}

// Sticks are the sticks to buy with alike ones counted.
func (b Batch) Sticks() []CutStick {
	var out []CutStick
	at := 0
	trimmed := len(b.Plan.Sticks) - b.Whole
	for _, g := range b.Plan.Groups() {
		s := CutStick{Length: b.Lengths[g.Stick.Stock], Count: g.Count, Stick: at, Whole: at >= trimmed}
		out = append(out, s)
		at += g.Count
	}
	return out
}
