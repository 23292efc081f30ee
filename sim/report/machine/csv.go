package machine

import (
	"math"
	"strconv"
	"strings"
)

// AppendNumber appends the shortest text that reads back as the same number,
// with an exponent only far from 1; nothing for what is not finite.
func AppendNumber(b []byte, v float64) []byte {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return b
	}
	v += 0 // no minus zero
	if a := math.Abs(v); a != 0 && (a < 1e-6 || a >= 1e21) {
		return strconv.AppendFloat(b, v, 'e', -1, 64)
	}
	return strconv.AppendFloat(b, v, 'f', -1, 64)
}

// Cell is a text as a cell of CSV (RFC 4180).
func Cell(s string) string {
	if strings.ContainsAny(s, ",\"\r\n") {
		return `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
	}
	return s
}
