package machine

import (
	"math"
	"strconv"
)

// Number is a JSON number; null when it is not finite, for JSON has no word for that.
type Number float64

// MarshalJSON implements json.Marshaler.
func (n Number) MarshalJSON() ([]byte, error) { return n.append(nil), nil }

func (n Number) append(b []byte) []byte {
	v := float64(n)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return append(b, "null"...)
	}
	b = AppendNumber(b, v)
	// As encoding/json: an exponent of one digit has no zero before it.
	if n := len(b); n >= 4 && b[n-4] == 'e' && (b[n-3] == '-' || b[n-3] == '+') && b[n-2] == '0' {
		b = append(b[:n-2], b[n-1])
	}
	return b
}

// Pointer is a number where there may be none.
func Pointer(v float64) *Number {
	n := Number(v)
	return &n
}

// Degrees is an angle, rad, in degrees.
func Degrees(v float64) float64 { return v * 180 / math.Pi }

// Tidy is a number to fifteen significant digits, without the noise of the arithmetic
// that made it.
func Tidy(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return v
	}
	y, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'e', 14, 64), 64)
	return y + 0 // no minus zero
}
