package measure

import (
	"math"
	"strconv"
	"strings"
)

// SyntaxError says why a text is not a measure. It is the error of every Parse
// function. The text itself is not repeated: who reports the error quotes it.
type SyntaxError struct {
	Wrong string // continues "<the text>", e.g. "is not a length"
	Right string // e.g. `write 2400, 2.4 m or 11' 4 3/8"`
}

// Error gives "what is wrong; what would be right".
func (e SyntaxError) Error() string { return e.Wrong + "; " + e.Right }

var (
	errLength = SyntaxError{"is not a length", `write it like 2400, 2.4 m or 11' 4 3/8"`}
	errInches = SyntaxError{"has 12 inches or more after its feet", `carry them into the feet, as in 12' 2"`}
	errPart   = SyntaxError{"has a fraction that no tape shows", "use halves, quarters, 8ths, 16ths, 32nds or 64ths, in lowest terms or not, below one inch"}
	errComma  = SyntaxError{"has a comma in a number", "write 2400, or 2.4 with a point"}
	errLong   = SyntaxError{"has too many digits", "write it to the millimetre or to 1/64 inch"}
	errAngle  = SyntaxError{"is not an angle", "write degrees, like 35° or 2.5 deg"}
	errSlope  = SyntaxError{"is not a slope", "write it like 1:20 or 1 in 20"}
	errNumber = SyntaxError{"is not a number", "write digits, like 12.50"}
	errVolume = SyntaxError{"is not a volume", "write it like 9 litres, 300 ml or 0.3 ft3"}
	errSize   = SyntaxError{"is not a section", `write depth x width, like 190x45 or 7 1/2" x 1 3/4"`}
)

// maxDigits bounds a number's text; it keeps every value finite and exact.
const maxDigits = 12

// ParseLength reads a length in millimetres. It takes 2400, "2400 mm",
// "240 cm", "2.4 m", `11' 4 3/8"`, `11'-4 3/8"`, `11'`, `4 3/8"`, `3/8"`,
// `4.375"`, and ft and in for the marks. A number without a unit is in bare:
// millimetres, or inches, which may carry a fraction. A sign may lead.
func ParseLength(s string, bare Units) (float64, error) {
	p := newParser(s)
	sign := p.sign()
	mm, err := p.length(bare)
	if err != nil {
		return 0, err
	}
	if !p.done() {
		return 0, p.fault(errLength)
	}
	return signed(sign, mm), nil
}

// ParseSize reads the two sides of a section: "190x45", "190 x 45",
// "190 × 45", `7 1/2" x 1 3/4"`. See ParseLength for bare.
func ParseSize(s string, bare Units) (a, b float64, err error) {
	p := newParser(s)
	if a, err = p.length(bare); err != nil {
		return 0, 0, sizeFault(err)
	}
	p.space()
	if !p.word("x") {
		return 0, 0, p.fault(errSize)
	}
	p.space()
	if b, err = p.length(bare); err != nil {
		return 0, 0, sizeFault(err)
	}
	if !p.done() {
		return 0, 0, p.fault(errSize)
	}
	return a, b, nil
}

func sizeFault(err error) error {
	if err == errLength {
		return errSize
	}
	return err
}

// ParseAngle reads an angle given in degrees as radians: "35°", "35 deg",
// "35 degrees" or "35". A sign may lead.
func ParseAngle(s string) (float64, error) {
	p := newParser(s)
	sign := p.sign()
	deg, ok, err := p.number()
	if err != nil {
		return 0, err
	}
	p.space()
	_ = p.word("degrees") || p.word("degree") || p.word("deg") || p.word("°")
	if !ok || !p.done() {
		return 0, p.fault(errAngle)
	}
	return signed(sign, deg*math.Pi/180), nil
}

// ParseSlope reads "1:20" or "1 in 20" as the n of 1:n. "3:12" is 1:4. Neither
// side may be 0.
func ParseSlope(s string) (float64, error) {
	p := newParser(s)
	rise, ok1, err := p.number()
	if err != nil {
		return 0, err
	}
	p.space()
	sep := p.word(":") || p.word("in")
	p.space()
	run, ok2, err := p.number()
	if err != nil {
		return 0, err
	}
	if !ok1 || !ok2 || !sep || !p.done() || rise == 0 || run == 0 {
		return 0, p.fault(errSlope)
	}
	return run / rise, nil
}

// ParseNumber reads a plain number, 0 or more, without a unit.
func ParseNumber(s string) (float64, error) {
	p := newParser(s)
	v, ok, err := p.number()
	if err != nil {
		return 0, err
	}
	if !ok || !p.done() {
		return 0, p.fault(errNumber)
	}
	return v, nil
}

// ParseVolume reads a volume in cubic millimetres: "9 litres", "9 l", "300 ml",
// "0.3 ft3" or "0.3 cu ft". A number without a unit is in litres.
func ParseVolume(s string) (float64, error) {
	p := newParser(s)
	v, ok, err := p.number()
	if err != nil {
		return 0, err
	}
	p.space()
	unit := float64(Litre)
	switch {
	case p.word("ml"):
		unit = Millilitre
	case p.word("cu ft"), p.word("ft3"), p.word("ft³"):
		unit = cubicFoot
	case p.word("litres"), p.word("litre"), p.word("liters"), p.word("liter"), p.word("l"):
	}
	if !ok || !p.done() {
		return 0, p.fault(errVolume)
	}
	return v * unit, nil
}

// parser walks over one measure. All marks have been brought to ASCII.
type parser struct{ rest string }

// plainMarks brings the marks that keyboards and other programs put in to the
// plain ones.
var plainMarks = strings.NewReplacer(
	"\u2032", "'", "\u2033", `"`, "\u2019", "'", "\u201d", `"`, "''", `"`,
	"\u2212", "-", "\u00d7", "x", "X", "x", "\u00a0", " ", "\u202f", " ")

func newParser(s string) *parser {
	return &parser{strings.TrimSpace(plainMarks.Replace(s))}
}

func (p *parser) done() bool {
	p.space()
	return p.rest == ""
}

// fault is err, unless a comma shows what the trouble is.
func (p *parser) fault(err SyntaxError) error {
	if strings.HasPrefix(p.rest, ",") {
		return errComma
	}
	return err
}

func (p *parser) space() { p.rest = strings.TrimLeft(p.rest, " ") }

// word takes w off the front if it is there and no letter follows a letter.
func (p *parser) word(w string) bool {
	rest, ok := strings.CutPrefix(p.rest, w)
	if !ok {
		return false
	}
	if isLetter(w[len(w)-1]) && w != "x" && rest != "" && isLetter(rest[0]) {
		return false
	}
	p.rest = rest
	return true
}

func isLetter(b byte) bool { return 'a' <= b && b <= 'z' || 'A' <= b && b <= 'Z' }
func isDigit(b byte) bool  { return '0' <= b && b <= '9' }

func (p *parser) sign() float64 {
	switch {
	case p.word("-"):
		return -1
	case strings.HasPrefix(p.rest, "±0"): // as Format.Level writes it
		p.word("±")
	case p.word("+"):
	}
	return 1
}

// signed applies a sign without making a −0.
func signed(sign, v float64) float64 {
	if v == 0 {
		return 0
	}
	return sign * v
}

// number takes a decimal number off the front; ok is false if there is none.
func (p *parser) number() (v float64, ok bool, err error) {
	i, digits, points := 0, 0, 0
	for ; i < len(p.rest); i++ {
		switch b := p.rest[i]; {
		case isDigit(b):
			digits++
			continue
		case b == '.' && points == 0:
			points++
			continue
		}
		break
	}
	if digits == 0 {
		return 0, false, nil
	}
	if digits > maxDigits {
		return 0, false, errLong
	}
	v, perr := strconv.ParseFloat(p.rest[:i], 64)
	if perr != nil { // cannot be: only digits and one point were taken
		return 0, false, errLength
	}
	p.rest = p.rest[i:]
	return v, true, nil
}

// length takes an unsigned length off the front.
func (p *parser) length(bare Units) (float64, error) {
	before := p.rest
	v, ok, err := p.number()
	if err != nil {
		return 0, err
	}
	if !ok {
		return 0, p.fault(errLength)
	}
	p.space()
	switch {
	case p.word("mm"):
		return v, nil
	case p.word("cm"):
		return v * 10, nil
	case p.word("m"):
		return v * 1000, nil
	case p.word("'"), p.word("feet"), p.word("foot"), p.word("ft"):
		return p.inchesAfter(v)
	case bare == Millimetres && !p.inchesAhead():
		return v, nil
	}
	p.rest = before
	in, err := p.inches(bare == FeetInches)
	return in * Inch, err
}

// inchesAhead reports whether what follows a number makes it inches or part of
// them: a mark, or a fraction.
func (p *parser) inchesAhead() bool {
	ahead := *p
	if ahead.word(`"`) || ahead.word("in") || ahead.word("inch") || ahead.word("inches") {
		return true
	}
	ahead.joint()
	ahead.rest = strings.TrimLeft(ahead.rest, "0123456789")
	return strings.HasPrefix(ahead.rest, "/")
}

// joint passes over what may stand between feet and inches, or between inches
// and their fraction: a space or a hyphen.
func (p *parser) joint() {
	p.space()
	if p.word("-") {
		p.space()
	}
}

// inchesAfter takes the inches that may follow a number of feet.
func (p *parser) inchesAfter(feet float64) (float64, error) {
	whole := feet == math.Floor(feet)
	after := *p
	after.joint()
	if !whole || after.rest == "" || !isDigit(after.rest[0]) && after.rest[0] != '.' {
		return feet * inchesPerFoot * Inch, nil
	}
	*p = after
	in, err := p.inches(false)
	if err == nil && in >= inchesPerFoot {
		err = errInches
	}
	return (feet*inchesPerFoot + in) * Inch, err
}

// inches takes `4`, `4 3/8`, `4-3/8`, `3/8` or `4.375` and its mark, which may
// be missing only if bare.
func (p *parser) inches(bare bool) (float64, error) {
	v, _, err := p.number()
	if err != nil {
		return 0, err
	}
	if strings.HasPrefix(p.rest, "/") {
		v, err = p.part(v)
	} else if next := *p; v == math.Floor(v) {
		next.joint()
		if num, ok, nerr := next.number(); ok && nerr == nil && strings.HasPrefix(next.rest, "/") {
			*p = next
			var part float64
			part, err = p.part(num)
			v += part
		}
	}
	if err != nil {
		return 0, err
	}
	p.space()
	mark := p.word(`"`) || p.word("inches") || p.word("inch") || p.word("in")
	if !mark && !bare {
		return 0, p.fault(errLength)
	}
	return v, nil
}

// part takes "/den" off the front and gives num/den, which must be a fraction
// that a tape shows.
func (p *parser) part(num float64) (float64, error) {
	p.word("/")
	den, ok, err := p.number()
	if err != nil {
		return 0, err
	}
	if !ok {
		return 0, p.fault(errLength)
	}
	switch den {
	case 2, 4, 8, 16, 32, 64:
	default:
		return 0, errPart
	}
	if num >= den || num != math.Floor(num) {
		return 0, errPart
	}
	return num / den, nil
}
