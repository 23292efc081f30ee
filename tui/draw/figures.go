package draw

import (
	"math"
	"strings"

	"ullage/sim/quantity"
)

// Bare is a unit without its name, for columns whose heading has it.
func Bare(u quantity.Unit) quantity.Unit {
	u.Name = ""
	return u
}

// Change is how far a number goes, with its sign; a dash where one is not known.
func Change(was, is float64, u quantity.Unit) string {
	if math.IsNaN(was) || math.IsNaN(is) {
		return "-"
	}
	return Signed(is-was, is, u)
}

// Unit is a unit that this package itself names; empty is no unit.
func Unit(name string) quantity.Unit {
	if u, ok := quantity.Lookup(name); ok {
		return u
	}
	return quantity.Usual(quantity.Number)
}

// Signed is a difference with its sign, to two digits. What is below the third
// digit of the numbers themselves is no difference.
func Signed(d, of float64, u quantity.Unit) string {
	if third := math.Pow(10, math.Floor(math.Log10(math.Abs(of)))-2); math.Abs(d) < third/2 {
		return "same"
	}
	sign := "+"
	if d < 0 {
		sign = "-"
	}
	return sign + strings.ReplaceAll(quantity.Format(math.Abs(d), u, 2), "*", "·")
}

// InUnit is a series in a unit; the same slice when the unit is SI.
func InUnit(ys []float64, u quantity.Unit) []float64 {
	if u.Scale == 1 && u.Offset == 0 || ys == nil {
		return ys
	}
	out := make([]float64, len(ys))
	for i, y := range ys {
		out[i] = u.FromSI(y)
	}
	return out
}

// Reading is an SI value to three digits, and no finer than a hundredth of its
// unit: at the top the upward speed is 0, not what rounding left of it.
func Reading(v float64, u quantity.Unit) string {
	if math.Abs(u.FromSI(v)) < 0.005 {
		v = u.ToSI(0)
	}
	return quantity.Format(v, u, 3)
}

// Exact is an SI value to the last digit when that is short, else to four
// digits: what follows from a default or another unit has more of them, and
// they are nobody's.
func Exact(v float64, u quantity.Unit, longest int) string {
	if text := quantity.Exact(v, u); len(Number(text, u)) <= longest {
		return text
	}
	return quantity.Format(v, u, 4)
}

// Number is a formatted quantity without its unit.
func Number(s string, u quantity.Unit) string {
	return strings.TrimSpace(strings.TrimSuffix(s, u.Name))
}

// Shortly is a value to the last digit where that takes four characters, else to
// three digits.
func Shortly(v float64, u quantity.Unit) string {
	const longest = 4
	if text := quantity.Exact(v, u); len(Number(text, u)) <= longest {
		return text
	}
	return quantity.Format(v, u, 3)
}
