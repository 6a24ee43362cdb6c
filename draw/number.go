package draw

import (
	"math"
	"strconv"
)

// AppendNumber writes v with at most so many decimals, 0 to 7, and without
// idle zeros, as all file formats take it: "12.5", "-0.35", "0". It is for
// values that have passed Check; rounding is half away from zero.
func AppendNumber(out []byte, v float64, places int) []byte {
	scale := [...]int64{1, 10, 100, 1000, 10_000, 100_000, 1_000_000, 10_000_000}[places]
	n := int64(math.Round(v * float64(scale)))
	if n < 0 {
		out = append(out, '-')
		n = -n
	}
	out = strconv.AppendInt(out, n/scale, 10)
	rest := n % scale
	if rest == 0 {
		return out
	}
	out = append(out, '.')
	for rest > 0 {
		scale /= 10
		out = append(out, '0'+byte(rest/scale))
		rest %= scale
	}
	return out
}
