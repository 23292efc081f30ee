// Package quantity reads and writes physical quantities with their units: one
// parser for the rocket file, the command line and the screen.
package quantity

// Dimension is what a quantity measures.
type Dimension int

// The dimensions. A Number has no unit; a Fraction is a bare number or a
// percentage; a TemperatureDifference is a spread, so that 2 degC is 2 K.
const (
	Number Dimension = iota
	Fraction
	Length
	Area
	Volume
	Mass
	Pressure
	Force
	Impulse
	Energy
	Time
	Speed
	Angle
	AngularRate
	Temperature
	TemperatureDifference
	Density
	ArealDensity
	Inertia
)

// Unit is a unit of measurement: SI = (value + Offset)·Scale.
type Unit struct {
	Name      string
	Dimension Dimension
	Scale     float64
	Offset    float64
}

// ToSI converts a value in the unit to SI.
func (u Unit) ToSI(v float64) float64 { return (v + u.Offset) * u.Scale }

// FromSI converts an SI value to the unit.
func (u Unit) FromSI(v float64) float64 { return v/u.Scale - u.Offset }

// Quantity is a value with the unit it was written in.
type Quantity struct {
	Value float64 // SI
	Unit  Unit
}

// Lookup finds a unit by its name or an alias of it. "K", "degC" and "degF"
// are temperatures; LookupIn finds them as differences.
func Lookup(name string) (Unit, bool) { return Unit{}, false }

// LookupIn finds a unit of a dimension by its name or an alias of it.
func LookupIn(name string, d Dimension) (Unit, bool) { return Unit{}, false }

// Units lists the units of a dimension, in the order to offer them.
func Units(d Dimension) []Unit { return nil }

// Usual is the unit to offer first for a dimension.
func Usual(d Dimension) Unit { return Unit{} }

// Parse reads a quantity of a dimension; a unit is required except for a
// Number, which has none, and a Fraction. Errors are of type *Error.
func Parse(text string, d Dimension) (Quantity, error) { return ParseAs(text, d, Usual(d)) }

// ParseAs is Parse with the unit that a mend should show for a bare number.
func ParseAs(text string, d Dimension, usual Unit) (Quantity, error) {
	return Quantity{}, &Error{Text: text, Dimension: d}
}

// ParseIn is Parse, but a bare number takes the unit given.
func ParseIn(text string, d Dimension, bare Unit) (Quantity, error) {
	return Quantity{}, &Error{Text: text, Dimension: d}
}

// Format writes an SI value in a unit with a number of significant digits.
func Format(v float64, u Unit, digits int) string { return "" }

// Exact writes the shortest text that parses back to the SI value.
func Exact(v float64, u Unit) string { return "" }

// System is a system of units to show.
type System int

// The systems of units.
const (
	Metric System = iota
	US
)

// Unit is the unit the system shows instead of u.
func (s System) Unit(u Unit) Unit { return u }

// Error tells what is wrong with a text and how to mend it.
type Error struct {
	Text      string
	Dimension Dimension
	Problem   string
	Mend      string
}

func (e *Error) Error() string { return e.Text + ": " + e.Problem + "; " + e.Mend }
