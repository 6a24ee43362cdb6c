package measure

import (
	"math"
	"math/rand/v2"
	"testing"
)

var (
	metric = Format{}
	half   = Format{Step: 0.5}
	tenth  = Format{Step: 0.1}
	feet   = Format{Units: FeetInches}
	inches = Format{Units: FeetInches, InchesOnly: true}
	eighth = Format{Units: FeetInches, Fraction: 8}
)

func TestLength(t *testing.T) {
	tests := []struct {
		f    Format
		mm   float64
		want string
	}{
		{metric, 2385, "2385"},
		{metric, 12000, "12000"},
		{metric, 2384.5, "2385"},
		{metric, -2384.5, "−2385"}, // a tie goes away from zero on both sides
		{metric, 2384.49, "2384"},
		{metric, 2384.5 - 1e-9, "2385"}, // the tie that arithmetic missed
		{metric, 0.4, "0"},
		{metric, -0.4, "0"}, // no minus on nothing
		{half, 12.24, "12"},
		{half, 12.25, "12.5"},
		{half, 12.5, "12.5"},
		{tenth, 0.05, "0.1"},
		{tenth, 0.3, "0.3"},
		{tenth, 1e6 + 0.1, "1000000.1"},
		{feet, 0, `0"`},
		{feet, 3.0 / 8 * Inch, `3/8"`},
		{feet, 4.375 * Inch, `4 3/8"`},
		{feet, 12 * Inch, `1' 0"`},
		{feet, 12.375 * Inch, `1' 0 3/8"`},
		{feet, 136.375 * Inch, `11' 4 3/8"`},
		{feet, -136.375 * Inch, `−11' 4 3/8"`},
		{feet, 11.98 * Inch, `1' 0"`}, // the rounding carries into the feet
		{inches, 18.5 * Inch, `18 1/2"`},
		{eighth, 4.4375 * Inch, `4 1/2"`},
		{eighth, -4.4375 * Inch, `−4 1/2"`},
		// Source: US Navy NAVEDTRA 14044, figure 2-17: decimal of an inch × 16,
		// a half or more rounds up, reduce: .12 in → 1.92 → 2/16 → 1/8.
		{feet, 0.12 * Inch, `1/8"`},
		// Source: the same figure: 13.89 in a foot of run × 8 = 111.12 in = 9 ft 3 1/8 in.
		{feet, 111.12 * Inch, `9' 3 1/8"`},
	}
	for _, tt := range tests {
		if got := tt.f.Length(tt.mm); got != tt.want {
			t.Errorf("%+v.Length(%v) = %s, want %s", tt.f, tt.mm, got, tt.want)
		}
	}
}

func TestLevel(t *testing.T) {
	tests := []struct {
		f    Format
		mm   float64
		want string
	}{
		{metric, 2385, "+2385"},
		{metric, 0, "±0"},
		{metric, -0.2, "±0"},
		{metric, -180, "\u2212180"},
		{feet, 94 * Inch, `+7' 10"`},
		{feet, 0, `±0"`},
		{feet, -7.0625 * Inch, "\u2212" + `7 1/16"`},
	}
	for _, tt := range tests {
		if got := tt.f.Level(tt.mm); got != tt.want {
			t.Errorf("%+v.Level(%v) = %s, want %s", tt.f, tt.mm, got, tt.want)
		}
	}
}

func TestAngleAndSlope(t *testing.T) {
	tests := []struct {
		rad          float64
		angle, slope string
	}{
		{0, "0°", "level"},
		{math.Atan(1.0 / 20), "2.9°", "1:20"},
		{-math.Atan(1.0 / 20), "−2.9°", "−1:20"},
		{math.Atan(1.0 / 40), "1.4°", "1:40"},
		{math.Atan(1 / 22.46), "2.5°", "1:22.5"},
		{math.Pi / 180 * 3, "3°", "1:19.1"},
		{math.Pi / 4, "45°", "1:1"},
		{math.Atan2(3, 4), "36.9°", "1:1.3"},
		{math.Pi / 2, "90°", "plumb"},
		{1e-5, "0°", "level"},
	}
	for _, tt := range tests {
		if got := metric.Angle(tt.rad); got != tt.angle {
			t.Errorf("Angle(%v) = %s, want %s", tt.rad, got, tt.angle)
		}
		if got := metric.Slope(tt.rad); got != tt.slope {
			t.Errorf("Slope(%v) = %s, want %s", tt.rad, got, tt.slope)
		}
	}
}

func TestAreaAndSize(t *testing.T) {
	tests := []struct{ got, want string }{
		{metric.Area(5400 * 3300), "17.8 m²"},
		{feet.Area(5400 * 3300), "192 ft²"},
		{metric.Size(190, 45), "190 × 45"},
		{feet.Size(18.5*Inch, 1.5*Inch), `18 1/2" × 1 1/2"`},
	}
	for _, tt := range tests {
		if tt.got != tt.want {
			t.Errorf("got %s, want %s", tt.got, tt.want)
		}
	}
}

func TestNotANumberIsNoPanic(t *testing.T) {
	for _, f := range []Format{metric, half, feet} {
		for _, mm := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300} {
			if s := f.Length(mm) + f.Level(mm) + f.Area(mm) + f.Slope(mm); s == "" {
				t.Errorf("%+v writes nothing for %v", f, mm)
			}
		}
	}
}

// TestRoundTrip: what is printed reads back as the rounded value, is within
// half a unit of the true one, and is the mirror image of what the negative
// prints.
func TestRoundTrip(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 20_000 {
		f := []Format{metric, half, tenth, feet, inches, eighth}[rng.IntN(6)]
		mm := (rng.Float64() - 0.5) * math.Pow(10, rng.Float64()*5)
		text, round := f.Length(mm), f.Round(mm)
		back, err := ParseLength(text, f.Units)
		if err != nil || math.Abs(back-round) > 1e-9 {
			t.Fatalf("%v prints as %s, which reads as %v (%v), want %v", mm, text, back, err, round)
		}
		if math.Abs(round-mm) > f.unit()*(0.5+2*tieSlack) {
			t.Fatalf("Round(%v) = %v, too far", mm, round)
		}
		if f.Round(-mm) != -round {
			t.Fatalf("Round(%v) = %v, but Round(%v) = %v", mm, round, -mm, f.Round(-mm))
		}
		if up, err := ParseLength(f.Level(mm), f.Units); err != nil || math.Abs(up-round) > 1e-9 {
			t.Fatalf("level %s reads as %v (%v), want %v", f.Level(mm), up, err, round)
		}
	}
}
