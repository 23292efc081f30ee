package report

import (
	"math"
	"strings"

	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/words"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// Column is an input that a study goes over, with the unit its file uses.
type Column struct {
	Input rocketfile.Input
	Unit  quantity.Unit
}

// text writes one value of the input with its unit, in a number of significant digits.
func (c Column) text(v float64, p words.Printer, digits int) string {
	return p.Value(v, c.Unit, digits)
}

// bare is text without the unit.
func (c Column) bare(v float64, p words.Printer, digits int) string {
	return strings.TrimSuffix(c.text(v, p, digits), " "+p.UnitOf(c.Unit))
}

// Digits that values of inputs are shown with: enough to set them again.
const (
	valueDigits     = 4
	mostValueDigits = 15
)

// digitsFor is how many digits tell the values of an axis apart.
func (c Column) digitsFor(values []study.Value, p words.Printer) int {
	for d := valueDigits; d < mostValueDigits; d++ {
		last, apart := "", true
		for _, v := range values {
			if v.Word != "" {
				continue
			}
			text := c.bare(v.Number, p, d)
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

// programValue is a value of an input as programs read it: SI, angles in degrees, without
// the noise of the arithmetic that made it.
func programValue(in rocketfile.Input, v float64) float64 {
	if d := in.Dimension; d == quantity.Angle || d == quantity.Bearing || d == quantity.AngularRate {
		v *= 180 / math.Pi
	}
	return machine.Tidy(v)
}
