package report

import (
	"math"
	"strconv"
	"strings"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// Column is an input that a study goes over, with the unit its file uses.
type Column struct {
	Input rocketfile.Input
	Unit  quantity.Unit
}

// shown is the unit the system shows a column in.
func (c Column) shown(sys quantity.System) quantity.Unit { return sys.Unit(c.Unit) }

// text writes one value of the input, in a number of significant digits and without
// blanks at the end.
func (c Column) text(v float64, sys quantity.System, digits int) string {
	return spelled(trimmed(quantity.Format(v, c.shown(sys), digits)))
}

// bare is text without the unit.
func (c Column) bare(v float64, sys quantity.System, digits int) string {
	u := c.shown(sys)
	return strings.TrimSuffix(trimmed(quantity.Format(v, u, digits)), " "+u.Name)
}

// trimmed drops the zeros behind the point: "9 bar" for "9.000 bar".
func trimmed(text string) string {
	figure, unit, _ := strings.Cut(text, " ")
	if strings.Contains(figure, ".") && !strings.Contains(figure, "e") {
		figure = strings.TrimRight(strings.TrimRight(figure, "0"), ".")
	}
	return strings.TrimSuffix(figure+" "+unit, " ")
}

// Digits that values of inputs are shown with: enough to set them again.
const (
	valueDigits     = 4
	mostValueDigits = 15
)

// digitsFor is how many digits tell the values of an axis apart.
func (c Column) digitsFor(values []study.Value, sys quantity.System) int {
	for d := valueDigits; d < mostValueDigits; d++ {
		last, apart := "", true
		for _, v := range values {
			if v.Word != "" {
				continue
			}
			text := c.bare(v.Number, sys, d)
			if apart = text != last; !apart {
				break
			}
			last = text
		}
		if apart {
			return d
		}
	}
	return mostValueDigits
}

// machine is a value of an input as programs read it: SI, angles in degrees, without
// the noise of the arithmetic that made it.
func machine(in rocketfile.Input, v float64) float64 {
	const radians = 180 / math.Pi
	if d := in.Dimension; d == quantity.Angle || d == quantity.AngularRate {
		v *= radians
	}
	return tidy(v)
}

// tidy is a number to fifteen significant digits.
func tidy(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return v
	}
	y, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'e', 14, 64), 64)
	return y + 0 // no minus zero
}
