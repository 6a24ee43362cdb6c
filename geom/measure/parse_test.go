package measure

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func TestParseLength(t *testing.T) {
	tests := []struct {
		text string
		bare Units
		want float64
	}{
		{"2400", Millimetres, 2400},
		{"  2400 mm ", Millimetres, 2400},
		{"2400mm", FeetInches, 2400},
		{"240 cm", Millimetres, 2400},
		{"2.4 m", Millimetres, 2400},
		{"2.4m", FeetInches, 2400},
		{".5", Millimetres, 0.5},
		{"-180", Millimetres, -180},
		{"−180", Millimetres, -180}, // the true minus
		{"+2385", Millimetres, 2385},
		{"±0", Millimetres, 0},
		{"12", FeetInches, 12 * Inch},
		{"4 3/8", FeetInches, 4.375 * Inch},
		{"3/8", FeetInches, 0.375 * Inch},
		{`11' 4 3/8"`, Millimetres, 136.375 * Inch},
		{`11'-4 3/8"`, Millimetres, 136.375 * Inch},
		{`11' 4-3/8"`, Millimetres, 136.375 * Inch},
		{`11'4"`, Millimetres, 136 * Inch},
		{`11′ 4 3/8″`, Millimetres, 136.375 * Inch}, // true primes
		{`11’ 4 3/8”`, Millimetres, 136.375 * Inch}, // what a word processor makes of them
		{`11' 4 3/8''`, Millimetres, 136.375 * Inch},
		{`11'`, Millimetres, 132 * Inch},
		{`11.5'`, Millimetres, 138 * Inch},
		{"11 ft 4 3/8 in", Millimetres, 136.375 * Inch},
		{"11ft 4in", Millimetres, 136 * Inch},
		{"11 feet 4 inches", Millimetres, 136 * Inch},
		{`4 3/8"`, Millimetres, 4.375 * Inch},
		{`3/8"`, Millimetres, 0.375 * Inch},
		{`4.375"`, Millimetres, 4.375 * Inch},
		{`-11' 4 3/8"`, Millimetres, -136.375 * Inch},
		{`6/16"`, Millimetres, 0.375 * Inch},
	}
	for _, tt := range tests {
		got, err := ParseLength(tt.text, tt.bare)
		if err != nil || math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("ParseLength(%q, %v) = %v, %v, want %v", tt.text, tt.bare, got, err, tt.want)
		}
	}
}

func TestParseLengthRefuses(t *testing.T) {
	tests := []struct {
		text string
		bare Units
		want SyntaxError
	}{
		{"", Millimetres, errLength},
		{"wide", Millimetres, errLength},
		{"mm", Millimetres, errLength},
		{"NaN", Millimetres, errLength},
		{"inf", Millimetres, errLength},
		{"0x10", Millimetres, errLength},
		{"1e3", Millimetres, errLength},
		{"1_000", Millimetres, errLength},
		{"1.2.3", Millimetres, errLength},
		{"--5", Millimetres, errLength},
		{"2 400", Millimetres, errLength},
		{"2400 mmm", Millimetres, errLength},
		{"2,400", Millimetres, errComma},
		{"2,4 m", Millimetres, errComma},
		{`11' 14"`, Millimetres, errInches},
		{`11' 4 3/8`, Millimetres, errLength}, // is the 3/8 of an inch or of a foot?
		{`4 9/8"`, Millimetres, errPart},
		{`4 1/3"`, Millimetres, errPart},
		{`4 1/0"`, Millimetres, errPart},
		{"2400/3", Millimetres, errPart},
		{"4 3/8", Millimetres, errLength},
		{"1234567890123", Millimetres, errLong},
		{"0.1234567890123", Millimetres, errLong},
	}
	for _, tt := range tests {
		got, err := ParseLength(tt.text, tt.bare)
		if !errors.Is(err, tt.want) {
			t.Errorf("ParseLength(%q) = %v, %v, want the error %v", tt.text, got, err, tt.want)
		}
	}
}

func TestParseSize(t *testing.T) {
	tests := []struct {
		text string
		bare Units
		a, b float64
	}{
		{"190x45", Millimetres, 190, 45},
		{"190 x 45", Millimetres, 190, 45},
		{"190 × 45", Millimetres, 190, 45},
		{"190X45 mm", Millimetres, 190, 45},
		{"190 mm x 45 mm", Millimetres, 190, 45},
		{`7 1/2" x 1 3/4"`, Millimetres, 7.5 * Inch, 1.75 * Inch},
		{`190 x 1 3/4"`, Millimetres, 190, 1.75 * Inch},
		{"7 1/2 x 1 3/4", FeetInches, 7.5 * Inch, 1.75 * Inch},
		{"7.5x1.75", FeetInches, 7.5 * Inch, 1.75 * Inch},
	}
	for _, tt := range tests {
		a, b, err := ParseSize(tt.text, tt.bare)
		if err != nil || math.Abs(a-tt.a) > 1e-9 || math.Abs(b-tt.b) > 1e-9 {
			t.Errorf("ParseSize(%q) = %v, %v, %v, want %v, %v", tt.text, a, b, err, tt.a, tt.b)
		}
	}
	for _, text := range []string{"", "190", "190x", "x45", "190x45x2", "190*45", "-190x45", "190x-45", "a x b"} {
		if a, b, err := ParseSize(text, Millimetres); !errors.Is(err, errSize) {
			t.Errorf("ParseSize(%q) = %v, %v, %v, want the error %v", text, a, b, err, errSize)
		}
	}
}

func TestParseAngleAndSlope(t *testing.T) {
	for text, want := range map[string]float64{"35°": 35, "35 deg": 35, "2.5 degrees": 2.5, "35": 35, "-90°": -90} {
		got, err := ParseAngle(text)
		if err != nil || math.Abs(got-want*math.Pi/180) > 1e-12 {
			t.Errorf("ParseAngle(%q) = %v, %v, want %v degrees", text, got, err, want)
		}
	}
	for text, want := range map[string]float64{"1:20": 20, "1 in 40": 40, "3:12": 4, "1 : 22.5": 22.5} {
		if got, err := ParseSlope(text); err != nil || got != want {
			t.Errorf("ParseSlope(%q) = %v, %v, want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "°", "35 rad", "35 degs", "3 5"} {
		if got, err := ParseAngle(text); !errors.Is(err, errAngle) {
			t.Errorf("ParseAngle(%q) = %v, %v, want the error %v", text, got, err, errAngle)
		}
	}
	for _, text := range []string{"", "20", "1:", ":20", "0:20", "1:0", "1:20:3", "1/20", "-1:20"} {
		if got, err := ParseSlope(text); !errors.Is(err, errSlope) {
			t.Errorf("ParseSlope(%q) = %v, %v, want the error %v", text, got, err, errSlope)
		}
	}
}

// FuzzParseLength: whatever is typed, the answer is finite or an error that
// says what would be right.
func FuzzParseLength(f *testing.F) {
	for _, s := range []string{`11' 4 3/8"`, "2400 mm", "±0", "−1/2\"", "2,4"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, bare := range []Units{Millimetres, FeetInches} {
			mm, err := ParseLength(s, bare)
			var syntax SyntaxError
			switch {
			case err == nil && (math.IsNaN(mm) || math.Abs(mm) > 1e18):
				t.Errorf("ParseLength(%q) = %v", s, mm)
			case err != nil && (!errors.As(err, &syntax) || !strings.Contains(err.Error(), "; ")):
				t.Errorf("ParseLength(%q) fails with %v", s, err)
			}
		}
	})
}
