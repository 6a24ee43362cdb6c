package keys

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"plumbcut/geom/measure"
)

// Span is the least and the greatest value that a key takes.
type Span struct{ Least, Most float64 }

// Between is a span.
func Between(least, most float64) Span { return Span{least, most} }

// Length is a length or a level, in millimetres, as measure.ParseLength reads it.
func Length(to *float64, within Span) Kind { return length{to, within} }

// Size is the two sides of a section, in millimetres, as measure.ParseSize
// reads it; within holds for each.
func Size(a, b *float64, within Span) Kind { return size{a, b, within} }

// Angle is given in degrees, as within is, and kept in radians.
func Angle(to *float64, within Span) Kind { return angle{to, within} }

// Slope is the n of 1:n.
func Slope(to *float64, within Span) Kind { return slope{to, within} }

// Scale is the n of 1:n, or the word auto, kept as 0.
func Scale(to *float64, within Span) Kind { return scale{slope{to, within}} }

// Share is a part of the whole, given as 50% or 0.5.
func Share(to *float64, within Span) Kind { return share{to, within} }

// Count is a whole number.
func Count(to *int, least, most int) Kind { return count{to, least, most} }

// Word is one of a few words.
func Word[T ~string](to *T, words ...T) Kind {
	w := word{put: func(s string) { *to = T(s) }}
	for _, s := range words {
		w.words = append(w.words, string(s))
	}
	return w
}

// Either is one of two words, kept as whether it is the first.
func Either(to *bool, yes, no string) Kind {
	return word{[]string{yes, no}, func(s string) { *to = s == yes }}
}

// Date is a day, kept as it is written: year, month, day per ISO 8601.
func Date(to *string) Kind { return date{to} }

// Text is free text in one line, of so many characters at the most.
func Text(to *string, most int) Kind { return text{to, most} }

// Version is the version of the table itself, the only one that a file may
// name.
func Version(n int) Kind { return version(n) }

type (
	version int
	length  struct {
		to *float64
		Span
	}
	size struct {
		a, b *float64
		Span
	}
	angle struct {
		to *float64
		Span
	}
	slope struct {
		to *float64
		Span
	}
	scale struct{ slope }
	share struct {
		to *float64
		Span
	}
	count struct {
		to          *int
		least, most int
	}
	word struct {
		words []string
		put   func(string)
	}
	date struct{ to *string }
	text struct {
		to   *string
		most int
	}
)

func (v version) says() string { return fmt.Sprintf("`%d`", v) }
func (length) says() string    { return "length" }
func (size) says() string      { return "depth x width" }
func (angle) says() string     { return "angle" }
func (slope) says() string     { return "1:n" }
func (scale) says() string     { return "`auto` or 1:n" }
func (share) says() string     { return "share" }
func (count) says() string     { return "whole number" }
func (w word) says() string    { return "`" + strings.Join(w.words, "`, `") + "`" }
func (date) says() string      { return "date" }
func (text) says() string      { return "text" }

func (v version) example() string { return strconv.Itoa(int(v)) }
func (length) example() string    { return "2400" }
func (size) example() string      { return "190x45" }
func (angle) example() string     { return "3°" }
func (slope) example() string     { return "1:20" }
func (scale) example() string     { return "1:50" }
func (share) example() string     { return "50%" }
func (c count) example() string   { return strconv.Itoa(max(c.least, 9)) }
func (w word) example() string    { return w.words[0] }
func (date) example() string      { return "2030-01-31" }
func (text) example() string      { return "…" }

func (v version) set(s string, _ measure.Units) error {
	if s != v.example() {
		return fault{RuleWord, "is not a version that this program reads", "write " + v.example()}
	}
	return nil
}

func (k length) set(s string, bare measure.Units) error {
	mm, err := parse(s, bare, measure.ParseLength)
	if err != nil {
		return err
	}
	*k.to = mm
	return within(mm, k.Span, bare)
}

func (k size) set(s string, bare measure.Units) error {
	if err := leadingZero(s); err != nil {
		return err
	}
	a, b, err := measure.ParseSize(s, bare)
	if err != nil {
		return syntax(err)
	}
	*k.a, *k.b = a, b
	for _, mm := range []float64{a, b} {
		if err := within(mm, k.Span, bare); err != nil {
			return fault{RuleRange, "has a side that " + err.(fault).wrong, err.(fault).right}
		}
	}
	return nil
}

func (k angle) set(s string, bare measure.Units) error {
	rad, err := parse(s, bare, func(s string, _ measure.Units) (float64, error) { return measure.ParseAngle(s) })
	if err != nil {
		return err
	}
	*k.to = rad
	const slack = 1e-9 // of the way from degrees to radians and back
	deg := rad * 180 / math.Pi
	if deg < k.Least-slack || deg > k.Most+slack {
		return outside("%g° to %g°", k.Least, k.Most)
	}
	return nil
}

func (k slope) set(s string, bare measure.Units) error {
	n, err := parse(s, bare, func(s string, _ measure.Units) (float64, error) { return measure.ParseSlope(s) })
	if err != nil {
		return err
	}
	*k.to = n
	if n < k.Least || n > k.Most {
		return outside("1:%g to 1:%g", k.Least, k.Most)
	}
	return nil
}

func (k scale) set(s string, bare measure.Units) error {
	if s == "auto" {
		*k.to = 0
		return nil
	}
	err := k.slope.set(s, bare)
	if f, ok := err.(fault); ok && f.rule == RuleKind {
		return fault{RuleKind, "is not a scale", "write auto, or one like 1:50"}
	}
	return err
}

func (k share) set(s string, _ measure.Units) error {
	number, percent := strings.CutSuffix(s, "%")
	number = strings.TrimSpace(number)
	v, err := strconv.ParseFloat(number, 64)
	if err != nil || strings.Trim(number, "0123456789.") != "" {
		return fault{RuleKind, "is not a share", "write it like 50% or 0.5"}
	}
	if percent {
		v /= 100
	}
	*k.to = v
	if v < k.Least || v > k.Most {
		return outside("%g%% to %g%%", k.Least*100, k.Most*100)
	}
	return nil
}

func (k count) set(s string, _ measure.Units) error {
	if err := leadingZero(s); err != nil {
		return err
	}
	n, err := strconv.Atoi(s)
	if err != nil || s[0] == '+' {
		return fault{RuleKind, "is not a whole number", "write it like " + k.example()}
	}
	*k.to = n
	if n < k.least || n > k.most {
		return outside("%d to %d", k.least, k.most)
	}
	return nil
}

func (w word) set(s string, _ measure.Units) error {
	if !slices.Contains(w.words, s) {
		return fault{RuleWord, "is not one of its words", "write " + meant(s, w.words)}
	}
	w.put(s)
	return nil
}

func (k date) set(s string, _ measure.Units) error {
	if _, err := time.Parse(time.DateOnly, s); err != nil {
		return fault{RuleKind, "is not a date", "write year-month-day, like " + k.example()}
	}
	*k.to = s
	return nil
}

func (k text) set(s string, _ measure.Units) error {
	if n := utf8.RuneCountInString(s); n > k.most {
		return fault{RuleText, fmt.Sprintf("has %d characters", n), fmt.Sprintf("the most is %d", k.most)}
	}
	for _, r := range s {
		switch {
		case r == '\n' || r == '\r' || unicode.In(r, unicode.Zl, unicode.Zp):
			return fault{RuleText, "runs over the end of a line", "give it in one line"}
		case unicode.In(r, unicode.Cc, unicode.Cf, unicode.Co):
			// Among them the marks that turn the direction of writing, with
			// which a printed text can be made to say what the file does not.
			return fault{RuleText, fmt.Sprintf("holds the invisible character U+%04X", r), "delete it"}
		}
	}
	*k.to = s
	return nil
}

// tiniest is the least length, mm, that is not nothing: no rule shows less, and
// what is smaller is a slip of the decimal point or of the unit.
const tiniest = 0.1

// within is the fault of a length outside its span, in the file's own units.
func within(mm float64, s Span, units measure.Units) error {
	f := measure.Format{Units: units, Step: 0.1}
	switch {
	case mm != 0 && math.Abs(mm) < tiniest:
		return fault{RuleRange, "is less than any rule can measure", "look at the decimal point and the unit, or write 0"}
	case mm < 0 && s.Least == 0:
		return fault{RuleRange, "is negative", "give it without the minus sign"}
	case mm < s.Least:
		return fault{RuleRange, "is too small", "the least is " + f.Length(s.Least)}
	case mm > s.Most:
		return fault{RuleRange, "is too large", "the most is " + f.Length(s.Most)}
	}
	return nil
}

func outside(format string, least, most any) error {
	return fault{RuleRange, "is out of range", fmt.Sprintf("it runs from "+format, least, most)}
}

// parse reads a measure and words its fault.
func parse(s string, bare measure.Units, read func(string, measure.Units) (float64, error)) (float64, error) {
	if err := leadingZero(s); err != nil {
		return 0, err
	}
	v, err := read(s, bare)
	if err != nil {
		return 0, syntax(err)
	}
	return v, nil
}

// syntax is the fault of a text that is not a measure.
func syntax(err error) error {
	if bad, ok := err.(measure.SyntaxError); ok {
		return fault{RuleKind, bad.Wrong, bad.Right}
	}
	return fault{RuleKind, "cannot be read", err.Error()}
}

// leadingZero refuses 010, which some programs read as 8.
func leadingZero(s string) error {
	digits := strings.TrimLeft(s, "+-\u2212")
	if len(digits) < 2 || digits[0] != '0' || digits[1] < '0' || digits[1] > '9' {
		return nil
	}
	plain := strings.TrimLeft(digits, "0")
	if plain == "" || plain[0] < '0' || plain[0] > '9' {
		plain = "0" + plain
	}
	return fault{RuleKind, "starts with a needless 0", "write " + plain}
}
