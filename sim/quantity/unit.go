// Package quantity reads and writes physical quantities with their units: one
// parser for the rocket file, the command line and the screen. Inside the
// program every value is SI; units are met only here, at the edges.
package quantity

import (
	"strings"
	"unicode/utf8"
)

// Unit is a unit of measurement: the SI value is (value + Offset)·Scale.
// The zero Unit is that of a plain number.
type Unit struct {
	Name      string    // as files and screens write it; empty for bare numbers
	Dimension Dimension // what it measures
	Scale     float64   // SI units in one of it
	Offset    float64   // added before scaling: not 0 for degC and degF only

	// Scale as a ratio of two short decimals. Dividing by 1000 rounds once and
	// makes 35 mm the very number 0.035; 0.001 is rounded itself, and 35·0.001
	// is not.
	mul, div float64
}

// ratio is the unit's scale as a product and a divisor.
func (u Unit) ratio() (mul, div float64) {
	switch {
	case u.mul != 0 && u.div != 0:
		return u.mul, u.div
	case u.Scale != 0:
		return u.Scale, 1
	}
	return 1, 1
}

// ToSI converts a value in the unit to SI.
func (u Unit) ToSI(v float64) float64 {
	mul, div := u.ratio()
	return (v + u.Offset) * mul / div
}

// FromSI converts an SI value to the unit.
func (u Unit) FromSI(v float64) float64 {
	mul, div := u.ratio()
	return v*div/mul - u.Offset
}

// Quantity is a value with the unit it was written in.
type Quantity struct {
	Value float64 // SI
	Unit  Unit
}

// Sizes that are exact by definition: the inch and the foot, the avoirdupois
// pound and the knot in NIST Special Publication 811 (2008), appendix B; the
// pound-force is the pound times standard gravity (ibid.).
const (
	poundForce = 0.45359237 * 9.80665 // N
	squareInch = 0.0254 * 0.0254      // m²

	// The conventional inch of mercury: a column 25.4 mm high of the
	// conventional density 13 595.1 kg/m³ in standard gravity (BS 350-1:1974;
	// SP 811 rounds it to 3386.389 Pa).
	inchOfMercury = 13595.1 * 9.80665 * 0.0254
)

// row is one line of the table of units.
type row struct {
	name       string
	dimension  Dimension
	mul, div   float64 // SI units in one of it, mul/div
	offset     float64
	metric, us string // the units each system shows instead; empty: this one
}

// table lists every unit, by dimension, in the order to offer them. The
// temperatures come before the temperature differences of the same names, and
// angles before bearings and speeds before winds, so that Lookup finds them first.
var table = []row{
	{name: "", dimension: Number, mul: 1, div: 1},

	{name: "%", dimension: Fraction, mul: 1, div: 100},
	{name: "", dimension: Fraction, mul: 1, div: 1},

	{name: "um", dimension: Length, mul: 1, div: 1e6},
	{name: "mm", dimension: Length, mul: 1, div: 1e3, us: "in"},
	{name: "cm", dimension: Length, mul: 1, div: 100, us: "in"},
	{name: "m", dimension: Length, mul: 1, div: 1, us: "ft"},
	{name: "in", dimension: Length, mul: 254, div: 1e4, metric: "mm"},
	{name: "ft", dimension: Length, mul: 3048, div: 1e4, metric: "m"},

	{name: "mm2", dimension: Area, mul: 1, div: 1e6, us: "in2"},
	{name: "cm2", dimension: Area, mul: 1, div: 1e4, us: "in2"},
	{name: "m2", dimension: Area, mul: 1, div: 1, us: "ft2"},
	{name: "in2", dimension: Area, mul: 64516, div: 1e8, metric: "cm2"},
	{name: "ft2", dimension: Area, mul: 9290304, div: 1e8, metric: "m2"},

	// Liquids are poured by the fluid ounce in the US. Its gallon is 231 in³ and the fluid
	// ounce 1/128 of it, exact (NIST SP 811).
	{name: "mL", dimension: Volume, mul: 1, div: 1e6, us: "fl oz"},
	{name: "L", dimension: Volume, mul: 1, div: 1e3, us: "fl oz"},
	{name: "cm3", dimension: Volume, mul: 1, div: 1e6, us: "in3"},
	{name: "m3", dimension: Volume, mul: 1, div: 1, us: "in3"},
	{name: "in3", dimension: Volume, mul: 16387064, div: 1e12, metric: "mL"},
	{name: "fl oz", dimension: Volume, mul: 295735295625, div: 1e16, metric: "mL"},
	{name: "gal", dimension: Volume, mul: 3785411784, div: 1e12, metric: "L"},

	{name: "mg", dimension: Mass, mul: 1, div: 1e6, us: "oz"},
	{name: "g", dimension: Mass, mul: 1, div: 1e3, us: "oz"},
	{name: "kg", dimension: Mass, mul: 1, div: 1, us: "lb"},
	{name: "oz", dimension: Mass, mul: 28349523125, div: 1e12, metric: "g"},
	{name: "lb", dimension: Mass, mul: 45359237, div: 1e8, metric: "kg"},

	{name: "Pa", dimension: Pressure, mul: 1, div: 1, us: "psi"},
	{name: "hPa", dimension: Pressure, mul: 100, div: 1, us: "inHg"},
	{name: "kPa", dimension: Pressure, mul: 1e3, div: 1, us: "psi"},
	{name: "MPa", dimension: Pressure, mul: 1e6, div: 1, us: "psi"},
	{name: "GPa", dimension: Pressure, mul: 1e9, div: 1, us: "psi"},
	{name: "bar", dimension: Pressure, mul: 1e5, div: 1, us: "psi"},
	{name: "psi", dimension: Pressure, mul: poundForce / squareInch, div: 1, metric: "bar"},
	{name: "inHg", dimension: Pressure, mul: inchOfMercury, div: 1, metric: "hPa"},

	{name: "N", dimension: Force, mul: 1, div: 1, us: "lbf"},
	{name: "lbf", dimension: Force, mul: poundForce, div: 1, metric: "N"},

	// Motor classes count newton-seconds in the US too.
	{name: "N*s", dimension: Impulse, mul: 1, div: 1},

	{name: "J", dimension: Energy, mul: 1, div: 1, us: "ft*lbf"},
	{name: "ft*lbf", dimension: Energy, mul: 0.3048 * poundForce, div: 1, metric: "J"},

	{name: "ms", dimension: Time, mul: 1, div: 1e3},
	{name: "s", dimension: Time, mul: 1, div: 1},
	{name: "min", dimension: Time, mul: 60, div: 1},

	{name: "m/s", dimension: Speed, mul: 1, div: 1, us: "ft/s"},
	{name: "km/h", dimension: Speed, mul: 10, div: 36, us: "mph"},
	{name: "mph", dimension: Speed, mul: 44704, div: 1e5, metric: "km/h"},
	{name: "kn", dimension: Speed, mul: 1852, div: 3600},
	{name: "ft/s", dimension: Speed, mul: 3048, div: 1e4, metric: "m/s"},

	{name: "m/s", dimension: Wind, mul: 1, div: 1, us: "mph"},
	{name: "km/h", dimension: Wind, mul: 10, div: 36, us: "mph"},
	{name: "mph", dimension: Wind, mul: 44704, div: 1e5, metric: "m/s"},
	{name: "kn", dimension: Wind, mul: 1852, div: 3600},
	{name: "ft/s", dimension: Wind, mul: 3048, div: 1e4, metric: "m/s", us: "mph"},

	{name: "m/s2", dimension: Acceleration, mul: 1, div: 1, us: "ft/s2"},
	{name: "ft/s2", dimension: Acceleration, mul: 3048, div: 1e4, metric: "m/s2"},

	{name: "deg", dimension: Angle, mul: pi, div: 180},
	{name: "rad", dimension: Angle, mul: 1, div: 1},

	{name: "deg", dimension: Bearing, mul: pi, div: 180},
	{name: "rad", dimension: Bearing, mul: 1, div: 1},

	{name: "deg/s", dimension: AngularRate, mul: pi, div: 180},

	{name: "K", dimension: Temperature, mul: 1, div: 1, us: "degF"},
	{name: "degC", dimension: Temperature, mul: 1, div: 1, offset: 273.15, us: "degF"},
	{name: "degF", dimension: Temperature, mul: 5, div: 9, offset: 459.67, metric: "degC"},

	{name: "K", dimension: TemperatureDifference, mul: 1, div: 1, us: "degF"},
	{name: "degC", dimension: TemperatureDifference, mul: 1, div: 1, us: "degF"},
	{name: "degF", dimension: TemperatureDifference, mul: 5, div: 9, metric: "degC"},

	{name: "kg/m3", dimension: Density, mul: 1, div: 1},
	{name: "g/cm3", dimension: Density, mul: 1e3, div: 1},

	{name: "g/m2", dimension: ArealDensity, mul: 1, div: 1e3, us: "oz/yd2"},
	{name: "kg/m2", dimension: ArealDensity, mul: 1, div: 1, us: "oz/yd2"},
	{name: "oz/yd2", dimension: ArealDensity, mul: 28349523125, div: 83612736e4, metric: "g/m2"},

	{name: "kg*m2", dimension: Inertia, mul: 1, div: 1},
}

const pi = 3.14159265358979323846264338327950288

func (r *row) unit() Unit {
	return Unit{
		Name:      r.name,
		Dimension: r.dimension,
		Scale:     r.mul / r.div,
		Offset:    r.offset,
		mul:       r.mul,
		div:       r.div,
	}
}

// aliases turns the signs of print into the plain letters of the names: m³,
// N·s, °C, µm (with either micro sign), and ° for deg.
var aliases = strings.NewReplacer(
	"²", "2", "³", "3",
	"·", "*", "⋅", "*",
	"µ", "u", "μ", "u",
	"℃", "degC", "℉", "degF", "°", "deg",
)

// unaliased is a name in plain letters. Most are, and this is asked at every figure told.
func unaliased(name string) string {
	for i := range len(name) {
		if name[i] >= utf8.RuneSelf {
			return aliases.Replace(name)
		}
	}
	return name
}

// Lookup finds a unit by its name or an alias of it. "K", "degC" and "degF"
// are temperatures here and "deg" is an angle; LookupIn finds them as differences
// and as a bearing too.
func Lookup(name string) (Unit, bool) {
	name = unaliased(name)
	for i := range table {
		if name != "" && table[i].name == name {
			return table[i].unit(), true
		}
	}
	return Unit{}, false
}

// LookupIn finds a unit of a dimension by its name or an alias of it. The empty
// name is the unit of a Number and of a bare Fraction.
func LookupIn(name string, d Dimension) (Unit, bool) {
	name = unaliased(name)
	for i := range table {
		if table[i].dimension == d && table[i].name == name {
			return table[i].unit(), true
		}
	}
	return Unit{}, false
}

// Units lists the units of a dimension, smallest first and metric before US
// ones. A Number's and a bare Fraction's have no name.
func Units(d Dimension) []Unit {
	var units []Unit
	for i := range table {
		if table[i].dimension == d {
			units = append(units, table[i].unit())
		}
	}
	return units
}
