package report

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"ullage/atmosphere"
	"ullage/sim/quantity"
)

// digits is how many significant digits people are shown. Good published models
// meet measured heights within 6 to 10 %, so three are already generous.
const digits = 3

// printer writes SI values for people, in one system of units.
type printer struct{ sys quantity.System }

// text writes a value in the unit the system shows instead of the one named.
func (p printer) text(v float64, unit string) string {
	return figure(v, p.sys.Unit(unitNamed(unit)))
}

// number writes a ratio.
func (p printer) number(v float64) string {
	return figure(v, quantity.Usual(quantity.Number))
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

// spelled writes a product of units as print does, where files have an asterisk.
func spelled(s string) string { return strings.ReplaceAll(s, "*", "·") }

// rough is text with two digits, for what is said in passing.
func (p printer) rough(v float64, unit string) string {
	return spelled(quantity.Format(v, p.sys.Unit(unitNamed(unit)), 2))
}

// given is text for what was set rather than computed, without trailing zeros:
// "9 bar", where a result would be "9.00 bar".
func (p printer) given(v float64, unit string) string {
	u := p.sys.Unit(unitNamed(unit))
	figure, name, _ := strings.Cut(quantity.Format(v, u, digits), " ")
	if strings.Contains(figure, ".") && !strings.Contains(figure, "e") {
		figure = strings.TrimRight(strings.TrimRight(figure, "0"), ".")
	}
	return spelled(figure + " " + name)
}

// beyond is given for a bound: rounded up, or down, never to the wrong side of it.
func (p printer) beyond(v float64, unit string, up bool) string {
	const noise = 1e-6
	u := p.sys.Unit(unitNamed(unit))
	x := u.FromSI(v)
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return p.given(v, unit)
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(x)))-(digits-1))
	if up {
		x = math.Ceil(x/step-noise) * step
	} else {
		x = math.Floor(x/step+noise) * step
	}
	return p.given(u.ToSI(x), unit)
}

func (p printer) time(v float64) string   { return p.text(v, "s") }
func (p printer) height(v float64) string { return p.text(v, "m") }
func (p printer) speed(v float64) string  { return p.text(v, "m/s") }
func (p printer) force(v float64) string  { return p.text(v, "N") }
func (p printer) angle(v float64) string  { return p.text(v, "deg") }
func (p printer) energy(v float64) string { return p.text(v, "J") }

// size writes a length of the rocket rather than of its flight.
func (p printer) size(v float64) string { return p.given(v, "mm") }

// mass turns to grams below a kilogram, as a field scale does.
func (p printer) mass(v float64) string {
	if math.Abs(v) < 1 {
		return p.text(v, "g")
	}
	return p.text(v, "kg")
}

// impulse stays in N·s whatever the system: motors are sold and classed by it.
func (p printer) impulse(v float64) string { return p.number(v) + " N·s" }

// acceleration has no unit in the rocket file, so its unit follows that of length.
func (p printer) acceleration(v float64) string {
	u := p.sys.Unit(unitNamed("m"))
	return p.number(u.FromSI(v)) + " " + u.Name + "/s²"
}

// gravities is an acceleration as a multiple of standard gravity.
func (p printer) gravities(v float64) string {
	return p.number(v/atmosphere.StandardGravity) + " g"
}

// bearing names the direction of a vector on the compass.
func bearing(east, north float64) string {
	names := [...]string{"north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"}
	eighth := int(math.Round(math.Atan2(east, north)/(math.Pi/4))) + len(names)
	return names[eighth%len(names)]
}

// unitNamed finds a unit that this package itself names.
func unitNamed(name string) quantity.Unit {
	u, ok := quantity.Lookup(name)
	if !ok {
		panic("report: no unit of this name")
	}
	return u
}

// printable makes a name from a file fit for a terminal: no control characters.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if r == unicode.ReplacementChar || !unicode.IsPrint(r) {
			return -1
		}
		return r
	}, s)
}
