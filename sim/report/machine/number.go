package machine

import (
	"encoding/json"
	"math"
	"strconv"
)

// Number is a JSON number; null when it is not finite, for JSON has no word for that.
type Number float64

// MarshalJSON implements json.Marshaler.
func (n Number) MarshalJSON() ([]byte, error) {
	v := float64(n)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return []byte("null"), nil
	}
	return json.Marshal(v + 0) // no minus zero
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
