package view

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
)

// Nudged is v, SI, moved by so many steps and freed of the dust of binary
// arithmetic. In another unit than the input's own the step is the nearest
// round one.
func Nudged(v, step float64, by int, shown, usual quantity.Unit) float64 {
	at := shown.FromSI(v)
	size := math.Abs(shown.FromSI(v+step) - at)
	if shown.Name != usual.Name {
		size = Round125(size)
	}
	if !(size > 0) || math.IsInf(size, 0) {
		return v
	}
	return shown.ToSI(dusted(at+float64(by)*size, size))
}

// dusted frees a number of the dust of binary arithmetic. Three places below the
// step keep what the user had typed.
func dusted(v, step float64) float64 {
	places := 3 - int(math.Floor(math.Log10(step)))
	if clean, err := strconv.ParseFloat(strconv.FormatFloat(v, 'f', min(max(places, 0), 15), 64), 64); err == nil {
		return clean
	}
	return v
}

// Round125 is the nearest of 1, 2 and 5 times a power of ten, nearest by ratio.
func Round125(x float64) float64 {
	if !(x > 0) || math.IsInf(x, 0) {
		return x
	}
	scale := math.Pow(10, math.Floor(math.Log10(x)))
	switch m := x / scale; {
	case m < math.Sqrt(2):
		return scale
	case m < math.Sqrt(10):
		return 2 * scale
	case m < math.Sqrt(50):
		return 5 * scale
	}
	return 10 * scale
}

// Around is a value of an input with one a good step below it and one above,
// inside the range, in rising order. The step is a round number of the unit shown,
// about a fifth of the value.
func Around(v float64, in rocketfile.Input, unit quantity.Unit) []float64 {
	at := unit.FromSI(v)
	step := Round125(math.Abs(at) / 5)
	out := []float64{v}
	if !(step > 0) {
		return out
	}
	for _, by := range []float64{-step, step} {
		if to := unit.ToSI(dusted(at+by, step)); to > 0 && to >= in.Min && to <= in.Max {
			out = append(out, to)
		}
	}
	slices.Sort(out)
	return out
}

// CanopyOf is the name of the canopy that an input belongs to, by the input's dotted name;
// empty when it is another input.
func CanopyOf(input string) string {
	parts := strings.Split(input, ".")
	if len(parts) < 3 || parts[0] != "canopy" {
		return ""
	}
	return parts[1]
}
