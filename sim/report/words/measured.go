package words

import (
	"math"
	"strconv"
	"strings"
)

// Measured writes a size of what is cut or turned, in the unit that files give it in: to a tenth of a millimetre, a hundredth of
// an inch, a tenth of a degree. What has no unit is a count; other units are as given.
func (p Printer) Measured(v float64, unit string) string {
	switch unit {
	case "":
		return strconv.FormatFloat(v, 'f', -1, 64)
	case "mm", "deg":
	default:
		return p.Given(v, unit)
	}
	text := p.fixed(v, unit, 0)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if unit == "deg" {
		return text + "°"
	}
	return text + " " + p.Unit(unit)
}

// Turned writes a length to turn or to mark by, a digit finer, without its unit; a dash for none.
func (p Printer) Turned(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	return p.fixed(v, "mm", 1)
}

// fixed is a value with the decimals that a builder can measure, and some more.
func (p Printer) fixed(v float64, unit string, finer int) string {
	decimals := 1 + finer
	if p.Unit(unit) == "in" {
		decimals++
	}
	x := p.shown(unit).FromSI(v)
	if math.Abs(x) < 0.5*math.Pow(10, -float64(decimals)) {
		x = 0 // not −0
	}
	return strconv.FormatFloat(x, 'f', decimals, 64)
}
