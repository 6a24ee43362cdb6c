package measure

import (
	"math"
	"testing"
)

func TestParseNumber(t *testing.T) {
	for s, want := range map[string]float64{"12.50": 12.5, " 3 ": 3, "0": 0, ".5": 0.5} {
		if got, err := ParseNumber(s); err != nil || got != want {
			t.Errorf("ParseNumber(%q) = %v, %v, want %v", s, got, err, want)
		}
	}
	for _, s := range []string{"", "-1", "1,5", "3 mm", "x", "1e3", "1234567890123"} {
		if got, err := ParseNumber(s); err == nil {
			t.Errorf("ParseNumber(%q) = %v, want an error", s, got)
		}
	}
}

// A cubic foot is (12 · 25.4)³ = 28 316 846.592 mm³, exact by definition.
func TestParseVolume(t *testing.T) {
	for s, want := range map[string]float64{
		"9": 9e6, "9 l": 9e6, "9.5 litres": 9.5e6, "1 litre": 1e6, "2 liters": 2e6, "300 ml": 300e3,
		"1 ft3": 28316846.592, "1 ft³": 28316846.592, "0.5 cu ft": 14158423.296,
	} {
		if got, err := ParseVolume(s); err != nil || math.Abs(got-want) > 1e-6 {
			t.Errorf("ParseVolume(%q) = %v, %v, want %v", s, got, err, want)
		}
	}
	for _, s := range []string{"", "20 kg", "-1 l", "1 mlx", "9 l 3"} {
		if got, err := ParseVolume(s); err == nil {
			t.Errorf("ParseVolume(%q) = %v, want an error", s, got)
		}
	}
}

func TestAmounts(t *testing.T) {
	feet := Format{Units: FeetInches}
	for _, c := range []struct{ got, want string }{
		{Format{}.FineVolume(0.33612e9), "0.336 m³"},
		{feet.FineVolume(28316846.592 * 4.516), "4.52 ft³"},
		{Format{}.SmallVolume(13194.689), "13.2 ml"},
		{Format{}.SmallVolume(300e3), "300 ml"},
		{feet.SmallVolume(250.4e3), "250 ml"},
		{Format{}.FineArea(0.1834e6), "0.18 m²"},
		{feet.FineArea(92903.04 * 1.94), "1.9 ft²"}, // a square foot is 92 903.04 mm², exact
		{Format{}.Run(37351), "37.4 m"},
		{feet.Run(304.8 * 122.84), "122.8 ft"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
	for _, f := range []Format{{}, feet} {
		const v = 0.123456e9
		if got, want := f.FineVolume(f.RoundFineVolume(v)), f.FineVolume(v); got != want {
			t.Errorf("rounded it prints %s, else %s", got, want)
		}
	}
}
