package quantity

// Dimension is what a quantity measures.
type Dimension int

// The dimensions. A Number has no unit; a Fraction is a bare number or a
// percentage; a TemperatureDifference is a spread, so that 2 degC is 2 K; a
// Bearing is an angle clockwise from north, which has names such as SW too; a Wind is
// the speed of one, which the US tells in miles per hour where a rocket's is in feet per second.
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
	Wind
	Acceleration
	Angle
	Bearing
	AngularRate
	Temperature
	TemperatureDifference
	Density
	ArealDensity
	Inertia
)

// dimensions says how to speak of each dimension: its name with the article, and
// an example that a reader can copy, whose unit is the one to offer first.
var dimensions = [...]struct{ name, number, unit string }{
	Number:                {"a plain number", "0.48", ""},
	Fraction:              {"a fraction", "30", "%"},
	Length:                {"a length", "70", "mm"},
	Area:                  {"an area", "35", "cm2"},
	Volume:                {"a volume", "1.5", "L"},
	Mass:                  {"a mass", "350", "g"},
	Pressure:              {"a pressure", "6", "bar"},
	Force:                 {"a force", "20", "N"},
	Impulse:               {"an impulse", "120", "N*s"},
	Energy:                {"an energy", "50", "J"},
	Time:                  {"a time", "1.5", "s"},
	Speed:                 {"a speed", "4", "m/s"},
	Wind:                  {"a wind speed", "4", "m/s"},
	Acceleration:          {"an acceleration", "20", "m/s2"},
	Angle:                 {"an angle", "5", "deg"},
	Bearing:               {"a bearing", "225", "deg"},
	AngularRate:           {"an angular rate", "90", "deg/s"},
	Temperature:           {"a temperature", "18", "degC"},
	TemperatureDifference: {"a temperature difference", "2", "degC"},
	Density:               {"a density", "998.2", "kg/m3"},
	ArealDensity:          {"an areal density", "200", "g/m2"},
	Inertia:               {"a moment of inertia", "0.012", "kg*m2"},
}

// String is the dimension's name with its article, as in "a length".
func (d Dimension) String() string {
	if d < 0 || int(d) >= len(dimensions) {
		return "a quantity"
	}
	return dimensions[d].name
}

// Usual is the unit to offer first for a dimension, such as mm for a length.
// A Number's has no name.
func Usual(d Dimension) Unit {
	if d < 0 || int(d) >= len(dimensions) {
		return Unit{Dimension: d, Scale: 1}
	}
	u, _ := LookupIn(dimensions[d].unit, d)
	return u
}

// example is a quantity of the dimension as a user would write it.
func (d Dimension) example() string {
	if d < 0 || int(d) >= len(dimensions) {
		return "1"
	}
	return join(dimensions[d].number, dimensions[d].unit)
}
