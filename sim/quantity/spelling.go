package quantity

import (
	"strings"
	"sync"
)

// words are the other ways in which people write a unit of the table, in lower
// case. Each is the very same unit; what could be another, such as gr, which is
// the grain's sign too, is left out. A gauge pressure is what a chamber's pressures
// are.
var words = sync.OnceValue(func() map[string]string {
	return map[string]string{
		"micron": "um", "microns": "um", "micrometre": "um", "micrometer": "um",
		"millimetre": "mm", "millimeter": "mm", "millimetres": "mm", "millimeters": "mm",
		"centimetre": "cm", "centimeter": "cm", "centimetres": "cm", "centimeters": "cm",
		"metre": "m", "meter": "m", "metres": "m", "meters": "m", "mtr": "m",
		"inch": "in", "inches": "in", `"`: "in", "”": "in", "″": "in", "''": "in",
		"foot": "ft", "feet": "ft", "'": "ft", "’": "ft", "′": "ft",
		"mm^2": "mm2", "sqmm": "mm2", "cm^2": "cm2", "sqcm": "cm2", "m^2": "m2", "sqm": "m2",
		"in^2": "in2", "sqin": "in2", "sq in": "in2",
		"litre": "L", "liter": "L", "litres": "L", "liters": "L", "ltr": "L", "ltrs": "L", "dm3": "L",
		"mls": "mL", "millilitre": "mL", "milliliter": "mL", "millilitres": "mL", "milliliters": "mL",
		"floz": "fl oz", "fl.oz": "fl oz", "fl. oz": "fl oz", "fl. oz.": "fl oz", "fluid ounce": "fl oz", "fluid ounces": "fl oz",
		"gals": "gal", "gallon": "gal", "gallons": "gal", "us gal": "gal", "us gallons": "gal",
		"cc": "cm3", "ccm": "cm3", "cm^3": "cm3", "m^3": "m3", "in^3": "in3", "cuin": "in3", "cu in": "in3",
		"gram": "g", "grams": "g", "gramme": "g", "grammes": "g",
		"kilogram": "kg", "kilograms": "kg", "kilo": "kg", "kilos": "kg", "kgs": "kg",
		"ounce": "oz", "ounces": "oz", "pound": "lb", "pounds": "lb", "lbs": "lb", "lbm": "lb",
		"bars": "bar", "barg": "bar", "bar(g)": "bar", "psig": "psi", "psi(g)": "psi", "lbf/in2": "psi",
		"mbar": "hPa", "mb": "hPa", "millibar": "hPa", "millibars": "hPa", "n/m2": "Pa", "pascal": "Pa",
		"n/mm2": "MPa", "n/mm^2": "MPa", "in hg": "inHg",
		"newton": "N", "newtons": "N", "lb-f": "lbf", "ns": "N*s", "n s": "N*s", "n-s": "N*s", "n.s": "N*s",
		"joule": "J", "joules": "J", "nm": "J", "n*m": "J", "ft-lbf": "ft*lbf", "ft lbf": "ft*lbf", "ftlbf": "ft*lbf",
		"sec": "s", "secs": "s", "second": "s", "seconds": "s", "msec": "ms", "millisecond": "ms", "milliseconds": "ms", "minute": "min", "minutes": "min", "mins": "min",
		"mps": "m/s", "m/sec": "m/s", "kph": "km/h", "kmh": "km/h", "km/hr": "km/h", "mi/h": "mph", "mph": "mph", "miles per hour": "mph",
		"kt": "kn", "kts": "kn", "knot": "kn", "knots": "kn", "fps": "ft/s", "ft/sec": "ft/s",
		"degree": "deg", "degrees": "deg", "radian": "rad", "radians": "rad",
		"dps": "deg/s", "deg/sec": "deg/s", "degrees/s": "deg/s",
		"c": "degC", "celsius": "degC", "deg c": "degC", "f": "degF", "fahrenheit": "degF", "deg f": "degF",
		"kelvin": "K", "degk": "K",
		"kg/m^3": "kg/m3", "g/l": "kg/m3", "g/cm^3": "g/cm3", "g/cc": "g/cm3", "kg/l": "g/cm3", "g/ml": "g/cm3",
		"g/m^2": "g/m2", "gsm": "g/m2", "kgm2": "kg*m2", "kg m2": "kg*m2", "kg*m^2": "kg*m2", "kg.m2": "kg*m2",
		"percent": "%", "per cent": "%", "pct": "%",
	}
})

// Spelled finds a unit of a dimension that is written as people do: by another word
// for it, or in another case. The prefixes m and M differ by a factor of 1e9, so
// there the case counts.
func Spelled(name string, d Dimension) (Unit, bool) {
	if word, ok := words()[strings.ToLower(name)]; ok {
		if u, ok := LookupIn(word, d); ok {
			return u, true
		}
	}
	for _, u := range Units(d) {
		if strings.EqualFold(u.Name, name) && !otherPrefix(u.Name, name) {
			return u, true
		}
	}
	return Unit{}, false
}

// otherPrefix says whether one of two names that differ by case starts with m and
// the other with M, and either could be a prefix.
func otherPrefix(a, b string) bool {
	return len(a) > 1 && a[0] != b[0] && (a[0] == 'm' || a[0] == 'M')
}
