package keys

import (
	"fmt"

	"plumbcut/geom/measure"
)

// Number is a plain number without a unit, such as a price.
func Number(to *float64, within Span) Kind { return amount{to, within} }

// Volume is given in litres, as within is, or with its unit, and kept in cubic
// millimetres. See measure.ParseVolume.
func Volume(to *float64, within Span) Kind { return volume{to, within} }

type (
	amount struct {
		to *float64
		Span
	}
	volume struct {
		to *float64
		Span
	}
)

func (amount) says() string { return "number" }
func (volume) says() string { return "volume" }

func (amount) example() string { return "12.50" }
func (volume) example() string { return "9 litres" }

func (k amount) set(s string, bare measure.Units) error {
	v, err := parse(s, bare, func(s string, _ measure.Units) (float64, error) { return measure.ParseNumber(s) })
	if err != nil {
		return err
	}
	*k.to = v
	return k.fits(v, "")
}

func (k volume) set(s string, bare measure.Units) error {
	mm3, err := parse(s, bare, func(s string, _ measure.Units) (float64, error) { return measure.ParseVolume(s) })
	if err != nil {
		return err
	}
	*k.to = mm3
	return k.fits(mm3/measure.Litre, " litres")
}

// fits is the fault of a value outside its span.
func (s Span) fits(v float64, unit string) error {
	const slack = 1e-9 // of the way to another unit and back
	if v < s.Least-slack || v > s.Most+slack {
		return outside("%g"+unit+" to %g"+unit, s.Least, s.Most)
	}
	return nil
}

func (k amount) schema() object { return number(k.Span) }
func (k volume) schema() object { return anyOf(number(k.Span), defined("volume")) }

// words is the range in words.
func (s Span) words(unit string) string { return fmt.Sprintf("%g to %g%s", s.Least, s.Most, unit) }
