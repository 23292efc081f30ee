package logfile

import (
	"strings"

	"ullage/atmosphere"
	"ullage/sim/quantity"
)

// spelling is a unit with what recorders write for it, beside what people do: lower case
// and without blanks.
type spelling struct {
	unit quantity.Unit
	as   []string
}

// known is a unit that rocket files have too, with what only recorders write for it.
func known(name string, d quantity.Dimension, as ...string) spelling {
	u, ok := quantity.LookupIn(name, d)
	if !ok {
		panic("logfile: no unit of this name")
	}
	return spelling{u, append(as, tidyUnit(name))}
}

// own is a unit that only recorders use.
func own(name string, d quantity.Dimension, scale float64, as ...string) spelling {
	return spelling{quantity.Unit{Name: name, Dimension: d, Scale: scale}, append(as, tidyUnit(name))}
}

// poundForce is the pound times standard gravity (NIST SP 811), N.
const poundForce = 0.45359237 * atmosphere.StandardGravity

// spellings are those of the units of all quantities. The standard atmosphere is exact, the
// millimetre of mercury the conventional one (NIST SP 811), from which the torr differs by 1.4e-7.
func spellings() []spelling {
	const g = atmosphere.StandardGravity
	return []spelling{
		known("s", quantity.Time),
		known("ms", quantity.Time, "msecs", "millis"),
		own("us", quantity.Time, 1e-6, "usec", "micros", "microsecond", "microseconds"),
		known("m", quantity.Length),
		known("ft", quantity.Length),
		known("cm", quantity.Length), known("mm", quantity.Length), known("in", quantity.Length),
		own("km", quantity.Length, 1000),
		known("Pa", quantity.Pressure, "pascals"),
		known("hPa", quantity.Pressure),
		known("kPa", quantity.Pressure, "kpaa", "kpag"), known("MPa", quantity.Pressure),
		known("bar", quantity.Pressure, "bara"), known("psi", quantity.Pressure, "psia"),
		known("inHg", quantity.Pressure), own("atm", quantity.Pressure, atmosphere.SeaLevelPressure), own("mmHg", quantity.Pressure, 13595.1*g/1000, "torr"),
		known("degC", quantity.Temperature, "deg"), known("K", quantity.Temperature), known("degF", quantity.Temperature),
		known("m/s", quantity.Speed, "ms-1", "ms1"), known("ft/s", quantity.Speed, "feet/s", "feet/sec"),
		known("km/h", quantity.Speed, "kmph"), known("mph", quantity.Speed), known("kn", quantity.Speed),
		known("m/s2", quantity.Acceleration, "m/s/s", "mps2", "m/sec2", "ms-2", "m/ss"),
		known("ft/s2", quantity.Acceleration, "ft/s/s", "fps2", "ft/sec2"),
		own("g", quantity.Acceleration, g, "gs", "g's", "gee", "gees"), own("mg", quantity.Acceleration, g/1000),
		known("N", quantity.Force), known("lbf", quantity.Force, "lb", "lbs", "pounds"),
		own("kN", quantity.Force, 1000), own("kgf", quantity.Force, g, "kg", "kp"), own("gf", quantity.Force, g/1000, "g", "gram", "grams"),
		own("ozf", quantity.Force, poundForce/16, "oz"),
	}
}

// spelled makes the table by which columns look their units up.
type spelled map[quantity.Dimension]map[string]quantity.Unit

func newSpelled() spelled {
	s := spelled{}
	for _, x := range spellings() {
		d := x.unit.Dimension
		if s[d] == nil {
			s[d] = map[string]quantity.Unit{}
		}
		for _, as := range x.as {
			s[d][as] = x.unit
		}
	}
	return s
}

// in finds a unit of a dimension.
func (s spelled) in(text string, d quantity.Dimension) (quantity.Unit, bool) {
	name := tidyUnit(text)
	if u, ok := s[d][name]; ok {
		return u, true
	}
	return quantity.Spelled(name, d)
}

// any tells whether a text is a unit of some quantity.
func (s spelled) any(text string) bool {
	for d := range s {
		if _, ok := s.in(text, d); ok {
			return true
		}
	}
	return false
}

// names are the units of a dimension as messages offer them.
func (s spelled) names(d quantity.Dimension) []string {
	var names []string
	for _, x := range spellings() {
		if x.unit.Dimension == d {
			names = append(names, x.unit.Name)
		}
	}
	return names
}

// tidyUnit is a unit's text without what does not tell units apart.
func tidyUnit(text string) string {
	return strings.NewReplacer("²", "2", "^", "", "·", "", "*", "", "µ", "u", "μ", "u", "°", "deg", "−", "-", " ", "", "**", "").
		Replace(strings.TrimSuffix(strings.ToLower(strings.TrimSpace(text)), "."))
}
