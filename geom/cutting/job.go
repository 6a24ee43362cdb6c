package cutting

import (
	"errors"
	"fmt"
	"math"
	"strconv"
)

// Length is a length in thousandths of a millimetre. It is whole, so that what
// is cut, sawn away and left over adds up to what was bought exactly.
type Length int64

// Millimetre is one millimetre as a Length.
const Millimetre Length = 1000

// Millimetres returns mm millimetres to the nearest thousandth. A length that is
// not a number, or longer than a kilometre, becomes one that Solve refuses.
func Millimetres(mm float64) Length {
	if !(math.Abs(mm) <= float64(maxLength/Millimetre)) {
		return -1
	}
	return Length(math.Round(mm * float64(Millimetre)))
}

// Millimetres returns the length as a number of millimetres.
func (l Length) Millimetres() float64 { return float64(l) / float64(Millimetre) }

// String returns the length in millimetres, with no more decimals than it has.
func (l Length) String() string {
	return strconv.FormatFloat(l.Millimetres(), 'f', -1, 64) + " mm"
}

// What Solve takes. The limits leave room for every product in 64 bits, and lie
// far beyond any job.
const (
	maxLength Length = 1_000_000 * Millimetre // of a stick or piece: one kilometre
	maxPieces        = 10_000                 // pieces in all
	maxPrice         = 1_000_000_000          // of one stick
)

// A Piece is a length to be cut, Count times.
type Piece struct {
	Label  string
	Length Length // finished, without the saw's kerf; more than 0
	Count  int    // 0 or more
}

// A Stock is a length that can be bought.
type Stock struct {
	Label  string
	Length Length // as bought; more than 0
	Priced bool   // whether Price is stated; a stick on hand has the price 0
	Price  int64  // of one stick, in the smallest coin that counts
	Limit  int    // how many can be had; 0 means any number
}

// An Objective is what a plan keeps as small as it can.
type Objective int

// The objectives. The zero value is LeastCost where every stock has a price, and
// LeastLength where one has none.
const (
	CostElseLength Objective = iota
	LeastCost                // needs a price for every stock
	LeastLength              // the length bought, whatever it costs
)

// A Job is all that Solve has to know.
//
// From each stick bought, Trim is cut off both ends (the saw cut that does so is
// part of it), and Defect and DefectShare of the stick's length are set aside for
// knots and splits. Between two pieces the saw takes Kerf. After the last piece it takes
// Kerf, or what is left if that is less; nothing where the piece ends with the
// usable length.
type Job struct {
	Pieces      []Piece
	Stocks      []Stock
	Kerf        Length
	Trim        Length  // off each end
	Defect      Length  // off each stick
	DefectShare float64 // of each stick's length, 0 or more and less than 1; to the nearest thousandth of a millimetre
	Objective   Objective
	Effort      int64 // how much work Solve may do; 0 means DefaultEffort
}

// Defects returns the length set aside for defects on a stick of the given length.
func (j Job) Defects(stick Length) Length {
	return j.Defect + Length(math.Round(j.DefectShare*float64(stick)))
}

// Usable returns how much of a stick of the given length can become pieces and
// kerfs between them. It is negative where the trims and defects exceed the stick.
func (j Job) Usable(stick Length) Length {
	return stick - 2*j.Trim - j.Defects(stick)
}

// objective returns the one that the job asks for.
func (j Job) objective() Objective {
	if j.Objective != CostElseLength {
		return j.Objective
	}
	for _, s := range j.Stocks {
		if !s.Priced {
			return LeastLength
		}
	}
	return LeastCost
}

// A TooLongError says that a piece fits on no stick.
type TooLongError struct {
	Piece   Piece
	Longest Length // the most that any one stick can give; 0 where there is no stock
}

func (e *TooLongError) Error() string {
	return fmt.Sprintf("piece %q of %v is longer than the %v that the longest stick can give",
		e.Piece.Label, e.Piece.Length, e.Longest)
}

// A ShortError says that the limited stock does not give all the pieces.
type ShortError struct {
	Piece  Piece // one for which there was no stick left
	Proven bool  // false: the search ended without a plan, though there may be one
}

func (e *ShortError) Error() string {
	if e.Proven {
		return fmt.Sprintf("the sticks to be had do not give all the pieces: none is left for %q of %v",
			e.Piece.Label, e.Piece.Length)
	}
	return fmt.Sprintf("found no way to cut all the pieces from the sticks to be had: none is left for %q of %v",
		e.Piece.Label, e.Piece.Length)
}

// An InputError says that a value of the job makes no sense.
type InputError struct {
	Name string // of the piece, stock or allowance
	What string // what is wrong
}

func (e *InputError) Error() string { return e.Name + " " + e.What }

// check returns every fault of the job, joined.
func (j Job) check() error {
	var faults []error
	fault := func(bad bool, name, what string) {
		if bad {
			faults = append(faults, &InputError{name, what})
		}
	}
	badAllowance := func(l Length) bool { return l < 0 || l > maxLength }
	fault(badAllowance(j.Kerf), "kerf", "must be 0 or more, and at most 1 km")
	fault(badAllowance(j.Trim), "end trim", "must be 0 or more, and at most 1 km")
	fault(badAllowance(j.Defect), "defect allowance", "must be 0 or more, and at most 1 km")
	fault(!(j.DefectShare >= 0 && j.DefectShare < 1), "defect share", "must be 0 or more and less than 1")
	fault(j.Objective < CostElseLength || j.Objective > LeastLength, "objective", "is not known")
	fault(j.Effort < 0, "effort", "must be 0 or more")
	for _, s := range j.Stocks {
		name := fmt.Sprintf("stock %q", s.Label)
		fault(s.Length <= 0 || s.Length > maxLength, name, "must be longer than 0, and at most 1 km")
		fault(s.Limit < 0, name, "cannot be had less than 0 times")
		fault(s.Priced && (s.Price < 0 || s.Price > maxPrice), name, "has a price below 0 or beyond reason")
		fault(!s.Priced && j.Objective == LeastCost, name, "has no price")
	}
	total := 0
	for _, p := range j.Pieces {
		name := fmt.Sprintf("piece %q", p.Label)
		fault(p.Length <= 0 || p.Length > maxLength, name, "must be longer than 0, and at most 1 km")
		fault(p.Count < 0 || p.Count > maxPieces, name, fmt.Sprintf("must be wanted 0 to %d times", maxPieces))
		total += min(max(p.Count, 0), maxPieces+1)
	}
	fault(total > maxPieces, "the job", fmt.Sprintf("has more than %d pieces", maxPieces))
	if len(faults) == 0 {
		faults = j.tooLong()
	}
	return errors.Join(faults...)
}

// tooLong returns an error for each piece that fits on no stick.
func (j Job) tooLong() []error {
	var longest Length
	for _, s := range j.Stocks {
		longest = max(longest, j.Usable(s.Length))
	}
	var faults []error
	for _, p := range j.Pieces {
		if p.Count > 0 && p.Length > longest {
			faults = append(faults, &TooLongError{p, longest})
		}
	}
	return faults
}
