package words

import (
	"math"
	"strconv"
	"strings"

	"ullage/sim/quantity"
)

// digits is how many significant digits people are shown. Good published models
// meet measured heights within 6 to 10 %, so three are already generous.
const digits = 3

// Printer writes SI values for people, in one system of units. Where a unit is asked for
// by its name, it is one that rocket files know; another name panics.
type Printer struct{ System quantity.System }

// In is the printer of a system of units.
func In(sys quantity.System) Printer { return Printer{sys} }

// Text writes a value in the unit the system shows instead of the one named.
func (p Printer) Text(v float64, unit string) string { return figure(v, p.shown(unit)) }

// Number writes a ratio.
func (p Printer) Number(v float64) string { return figure(v, quantity.Usual(quantity.Number)) }

// Bare is Text without the unit, which the head of a column has.
func (p Printer) Bare(v float64, unit string) string { return p.bareIn(v, unitNamed(unit)) }

// bareIn is Bare with the unit itself in place of its name.
func (p Printer) bareIn(v float64, unit quantity.Unit) string {
	text := figure(v, p.System.Unit(unit))
	if i := strings.LastIndexByte(text, ' '); i > 0 {
		return text[:i]
	}
	return text
}

// Rough is Text with two digits, for what is said in passing.
func (p Printer) Rough(v float64, unit string) string {
	return spelled(quantity.Format(v, p.shown(unit), 2))
}

// Given is Text for what was set rather than computed, without trailing zeros: "9 bar",
// where a result would be "9.00 bar".
func (p Printer) Given(v float64, unit string) string {
	return p.Value(v, unitNamed(unit), digits)
}

// Value writes a value of an input in the unit the system shows instead of the one its
// file uses, in a number of significant digits and without trailing zeros.
func (p Printer) Value(v float64, unit quantity.Unit, digits int) string {
	return spelled(trimmed(quantity.Format(v, p.System.Unit(unit), digits)))
}

// Difference writes a difference of two values of an input: that of two temperatures
// counts from nowhere.
func (p Printer) Difference(v float64, unit quantity.Unit) string {
	u := p.System.Unit(unit)
	u.Offset = 0
	return spelled(trimmed(quantity.Format(v, u, digits)))
}

// beyond is Given for a bound: rounded up, or down, never to the wrong side of it.
func (p Printer) beyond(v float64, unit quantity.Unit, up bool) string {
	return p.beyondTo(v, unit, up, digits)
}

// beyondTo is that with so many digits.
func (p Printer) beyondTo(v float64, unit quantity.Unit, up bool, digits int) string {
	const noise = 1e-6
	u := p.System.Unit(unit)
	x := u.FromSI(v)
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return p.Value(v, unit, digits)
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(x)))-float64(digits-1))
	if up {
		x = math.Ceil(x/step-noise) * step
	} else {
		x = math.Floor(x/step+noise) * step
	}
	return p.Value(u.ToSI(x), unit, digits)
}

// Unit is the name of the unit that the system shows instead of the one named.
func (p Printer) Unit(name string) string { return p.UnitOf(unitNamed(name)) }

// UnitOf is the name of the unit that the system shows instead of another.
func (p Printer) UnitOf(u quantity.Unit) string { return spelled(p.System.Unit(u).Name) }

func (p Printer) shown(unit string) quantity.Unit { return p.System.Unit(unitNamed(unit)) }

// Ratio writes a ratio that was set rather than computed.
func Ratio(v float64) string {
	if v == math.Trunc(v) { // 36500 days, not 3.65e+04
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'g', digits, 64)
}

// figure writes a value with digits, but no more than four decimals: what is
// smaller is 0 to whoever reads a flight.
func figure(v float64, u quantity.Unit) string {
	const decimals, small = 4, 0.1 // from small on, digits alone keep within decimals
	if x := u.FromSI(v); math.Abs(x) < small {
		text := strconv.FormatFloat(x, 'f', decimals, 64)
		if strings.Trim(text, "-0.") == "" {
			text = "0"
		}
		return spelled(strings.TrimSuffix(text+" "+u.Name, " "))
	}
	return spelled(quantity.Format(v, u, digits))
}

// trimmed drops the zeros behind the point: "9 bar" for "9.000 bar".
func trimmed(text string) string {
	figure, unit, _ := strings.Cut(text, " ")
	if strings.Contains(figure, ".") && !strings.Contains(figure, "e") {
		figure = strings.TrimRight(strings.TrimRight(figure, "0"), ".")
	}
	return strings.TrimSuffix(figure+" "+unit, " ")
}

// spelled writes units as print does, where files have an asterisk for a product and a
// figure for squares and cubes.
func spelled(s string) string {
	var b strings.Builder
	letter := func(i int) bool { return i >= 0 && i < len(s) && (s[i]|0x20 >= 'a' && s[i]|0x20 <= 'z') }
	for i := range len(s) {
		switch ends := i+1 == len(s) || s[i+1] == '*' || s[i+1] == '/'; {
		case s[i] == '*':
			b.WriteString("·")
		case s[i] == '2' && letter(i-1) && ends:
			b.WriteString("²")
		case s[i] == '3' && letter(i-1) && ends:
			b.WriteString("³")
		default:
			b.WriteByte(s[i])
		}
	}
	return b.String()
}

// unitNamed finds a unit that the program itself names.
func unitNamed(name string) quantity.Unit {
	u, ok := quantity.Lookup(name)
	if !ok {
		panic("words: no unit of this name")
	}
	return u
}
