package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Numbers of this size are written out; others take an exponent.
const (
	writtenFrom = 1e-6
	writtenTo   = 1e15
)

// missing stands for a value that is no number.
const missing = "-"

// Format writes an SI value in a unit, with at least the number of significant
// digits asked for (1 to 17); the whole part is never rounded away. So 0.3 is
// "30 %" and 9e5 Pa "9.0 bar" with two digits, and 213.7 m is "214 m" with
// one to three. A value that is not finite, in SI or in the unit, is "-".
func Format(v float64, u Unit, digits int) string {
	x := u.FromSI(v)
	if !finite(x) {
		return missing
	}
	digits = min(max(digits, 1), 17)
	if x == 0 {
		x = 0 // drops the sign of -0
		return join(strconv.FormatFloat(x, 'f', digits-1, 64), u.Name)
	}
	text := strconv.FormatFloat(x, 'e', digits-1, 64)
	if size := math.Abs(x); size < writtenFrom || size >= writtenTo {
		return join(text, u.Name)
	}
	// The exponent after rounding: 9.96 with two digits is 10, not 10.0.
	exponent, _ := strconv.Atoi(text[strings.IndexByte(text, 'e')+1:])
	return join(strconv.FormatFloat(x, 'f', max(digits-1-exponent, 0), 64), u.Name)
}

// Exact writes an SI value in a unit with as few digits as will do: Parse gives
// the value back, or one within 1e-15 of it (of 273.15 K when degC or degF bring
// it nearer to 0). Floating-point noise is dropped on the way: 0.1 + 0.2 is
// "0.3 m", and 291.15 K is "18 degC". A value that is not finite, in SI or in
// the unit, is "-", which Parse refuses.
func Exact(v float64, u Unit) string {
	x := u.FromSI(v)
	if !finite(v) || !finite(x) {
		return missing
	}
	return join(shortest(nearest(v, x, u)), u.Name)
}

// nearest finds the number to write for the SI value v, which is about x in the
// unit u.
func nearest(v, x float64, u Unit) float64 {
	// A number of few digits within two units in the last place is what was
	// meant: arithmetic has brought the rest. By chance one value in a thousand
	// has such a neighbour.
	const few, most = 12, 17
	noise := 4.5e-16 * max(math.Abs(v), math.Abs(u.Offset*u.Scale))
	if math.Abs(u.ToSI(0)-v) <= noise {
		return 0 // no number of significant digits comes near it
	}
	for digits := 1; digits <= most; digits++ {
		y := Rounded(x, digits)
		miss := math.Abs(u.ToSI(y) - v)
		if miss == 0 || digits <= few && miss <= noise {
			return y
		}
	}
	return x
}

// Rounded is x to a number of significant decimal digits, at least 1; what is not finite stays.
func Rounded(x float64, digits int) float64 {
	y, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'e', digits-1, 64), 64)
	return y
}

// shortest writes a number with the fewest digits that read back as it.
func shortest(y float64) string {
	if y == 0 {
		return "0" // -0 too
	}
	if size := math.Abs(y); size < writtenFrom || size >= writtenTo {
		return strconv.FormatFloat(y, 'e', -1, 64)
	}
	return strconv.FormatFloat(y, 'f', -1, 64)
}

// join puts a number and a unit's name together.
func join(number, unit string) string {
	if unit == "" {
		return number
	}
	return number + " " + unit
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
