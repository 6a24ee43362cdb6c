package measure

import "testing"

func TestVolume(t *testing.T) {
	feet := Format{Units: FeetInches}
	for _, c := range []struct {
		f    Format
		mm3  float64
		want string
	}{
		{Format{}, 0.1189e9, "0.12 m³"},
		{Format{}, 0.005e9, "0.01 m³"}, // a tie goes away from zero
		{Format{}, 2e9, "2 m³"},
		{feet, 4.2 * 28316846.592, "4.2 ft³"}, // a cubic foot is 0.3048³ m³, exact by definition
	} {
		if got := c.f.Volume(c.mm3); got != c.want {
			t.Errorf("Volume(%g) = %q, want %q", c.mm3, got, c.want)
		}
	}
}
