package measure

import (
	"math"
	"strconv"
)

// Units is a way of giving lengths.
type Units int

// The units.
const (
	Millimetres Units = iota // whole millimetres; a bare number is millimetres
	FeetInches               // feet, inches and fractions; a bare number is inches
)

// Inch is the length of an inch in millimetres, exact by definition.
const Inch = 25.4

const inchesPerFoot = 12

// defaultFraction is the smallest part of an inch on a common tape.
const defaultFraction = 16

// tieSlack, in units of the last place printed, makes a value that arithmetic
// left a hair below a tie round as the tie that it stands for. Rounding errors
// of the model are below 1e-9; no builder sees 1e-6.
const tieSlack = 1e-6

// minus is the true minus sign, as wide as the plus.
const minus = "\u2212"

// Format says how figures are written. The zero Format gives whole
// millimetres. Every method rounds to the nearest unit of the last place and
// ties away from zero, so that a frame and its mirror image carry the same
// figures.
type Format struct {
	Units      Units
	Step       float64 // Millimetres: last place, e.g. 0.5 or 0.1; 0 is 1
	Fraction   int     // FeetInches: last place is 1/Fraction of an inch; 0 is 16
	InchesOnly bool    // FeetInches: 18 1/2" rather than 1' 6 1/2", as timber sizes are given
}

// Round is the length in millimetres that Length prints for mm.
func (f Format) Round(mm float64) float64 {
	u := f.unit()
	return roundAway(mm/u) * u
}

// Length writes a length, e.g. "2385", "12.5" or `11' 4 3/8"`. A negative one
// has a true minus sign; one that rounds to nothing has none.
func (f Format) Length(mm float64) string {
	n := roundAway(mm / f.unit())
	if n < 0 {
		return minus + f.digits(-n)
	}
	return f.digits(n)
}

// Level writes a height against the datum, always signed: "+2385", "−180",
// "±0". Four digits stay unspaced.
func (f Format) Level(mm float64) string {
	n := roundAway(mm / f.unit())
	switch {
	case n > 0:
		return "+" + f.digits(n)
	case n < 0:
		return minus + f.digits(-n)
	}
	return "±" + f.digits(0)
}

// Size writes the two sides of a section, e.g. "190 × 45" or
// `7 1/2" × 1 3/4"`.
func (f Format) Size(a, b float64) string {
	f.InchesOnly = true
	return f.Length(a) + " × " + f.Length(b)
}

// Angle writes an angle given in radians in degrees to one decimal, e.g.
// "2.9°"; a whole number of degrees has no decimal.
func (f Format) Angle(rad float64) string {
	return signedDecimal(rad*180/math.Pi, 0.1) + "°"
}

// Slope writes a slope given in radians below level as "1:n", with n to one
// decimal. Flatter than 1:10000 is "level"; so steep that n would print as 0
// is "plumb".
func (f Format) Slope(rad float64) string {
	const flattest = 1.0 / 10000 // a hair's thickness over the length of any stick
	t := math.Tan(math.Abs(rad))
	if t < flattest {
		return "level"
	}
	n := decimal(1/t, 0.1)
	if n == "0" || math.Abs(rad) >= math.Pi/2 {
		return "plumb"
	}
	if rad < 0 {
		return minus + "1:" + n
	}
	return "1:" + n
}

// Area writes an area given in square millimetres in square metres to one
// decimal, e.g. "17.8 m²", or in whole square feet, "192 ft²".
func (f Format) Area(mm2 float64) string {
	if f.Units == FeetInches {
		return signedDecimal(mm2/squareFoot, 1) + " ft²"
	}
	return signedDecimal(mm2/squareMetre, 0.1) + " m²"
}

// unit is one of the last place printed, in millimetres.
func (f Format) unit() float64 {
	if f.Units == FeetInches {
		return Inch / float64(f.fraction())
	}
	if f.Step <= 0 {
		return 1
	}
	return f.Step
}

func (f Format) fraction() int {
	if f.Fraction <= 0 {
		return defaultFraction
	}
	return f.Fraction
}

// digits writes n units of the last place, n ≥ 0 and whole.
func (f Format) digits(n float64) string {
	if f.Units == FeetInches {
		return f.feetInches(n)
	}
	return decimal(n*f.unit(), f.unit())
}

func (f Format) feetInches(n float64) string {
	const mostExact = 1 << 53 // beyond it a float64 has no fractions to give
	if !(n < mostExact) {
		return strconv.FormatFloat(n/float64(f.fraction()), 'g', -1, 64) + `"`
	}
	den := int64(f.fraction())
	inches, num := int64(n)/den, int64(n)%den
	var s string
	if inches >= inchesPerFoot && !f.InchesOnly {
		s = strconv.FormatInt(inches/inchesPerFoot, 10) + "' "
		inches %= inchesPerFoot
	}
	if inches > 0 || num == 0 || s != "" {
		s += strconv.FormatInt(inches, 10)
		if num > 0 {
			s += " "
		}
	}
	if num > 0 {
		d := gcd(num, den)
		s += strconv.FormatInt(num/d, 10) + "/" + strconv.FormatInt(den/d, 10)
	}
	return s + `"`
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// roundAway rounds to a whole number, ties away from zero.
func roundAway(x float64) float64 {
	r := math.Floor(math.Abs(x) + 0.5 + tieSlack)
	if r == 0 {
		return 0 // never −0
	}
	return math.Copysign(r, x)
}

func signedDecimal(x, step float64) string {
	if roundAway(x/step) < 0 {
		return minus + decimal(-x, step)
	}
	return decimal(math.Abs(x), step)
}

// decimal writes x ≥ 0 rounded to a multiple of step, without needless zeros.
func decimal(x, step float64) string {
	places := 0
	const mostPlaces = 3 // a thousandth of a millimetre is beyond any tool here
	for s := step; places < mostPlaces && math.Abs(s-math.Round(s)) > tieSlack; places++ {
		s *= 10
	}
	scale := math.Pow10(places)
	v := roundAway(roundAway(x/step)*step*scale) / scale
	return strconv.FormatFloat(v, 'f', -1, 64)
}
