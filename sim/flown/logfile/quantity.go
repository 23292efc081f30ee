package logfile

import "ullage/sim/quantity"

// Quantity is what a column tells of.
type Quantity string

// The quantities.
const (
	Time         Quantity = "time"
	Height       Quantity = "height"
	Pressure     Quantity = "pressure" // of the air
	Temperature  Quantity = "temperature"
	Speed        Quantity = "speed"
	Acceleration Quantity = "acceleration" // along the axis, as an accelerometer reads it
	Chamber      Quantity = "chamber"      // pressure
	Thrust       Quantity = "thrust"       // or a load
)

// traits are what there is to know of a quantity.
type traits struct {
	quantity  Quantity
	dimension quantity.Dimension
	unit      string   // taken for one that is not told
	words     []string // of a header that tell it
}

// quantities are in the order in which headers are searched for them: a chamber's
// pressure is one before it is a pressure, and "height by pressure" is a height.
func quantities() []traits {
	return []traits{
		{Thrust, quantity.Force, "N", []string{"thrust", "force", "load", "loadcell"}},
		{Chamber, quantity.Pressure, "bar", []string{"chamber", "tank", "vessel", "bottle"}},
		{Acceleration, quantity.Acceleration, "m/s2", []string{"acceleration", "accelerometer", "accel", "acc", "ax", "ay", "az"}},
		{Speed, quantity.Speed, "m/s", []string{"speed", "velocity", "veloc", "vel", "climb", "v"}},
		{Height, quantity.Length, "m", []string{"height", "altitude", "alt", "agl", "hgt", "h", "z"}},
		{Temperature, quantity.Temperature, "degC", []string{"temperature", "temp"}},
		{Pressure, quantity.Pressure, "Pa", []string{"pressure", "press", "pres", "baro", "barometer", "p"}},
		{Time, quantity.Time, "s", []string{"time", "timestamp", "elapsed", "clock", "t", "seconds", "secs", "sec", "millis", "micros"}},
	}
}

// traitsOf finds a quantity; nil when there is none of the name.
func traitsOf(q Quantity) *traits {
	all := quantities()
	for i := range all {
		if all[i].quantity == q {
			return &all[i]
		}
	}
	return nil
}

// Quantities names them all, in the order to offer them.
func Quantities() []string {
	return []string{string(Time), string(Height), string(Pressure), string(Speed), string(Acceleration),
		string(Chamber), string(Thrust), string(Temperature)}
}

// Dimension is what a quantity measures.
func (q Quantity) Dimension() quantity.Dimension {
	if t := traitsOf(q); t != nil {
		return t.dimension
	}
	return quantity.Number
}
