package quantity

import "strings"

// unitOfWord is the unit of the table that people write in another way, in lower case;
// empty for what is none. Each is the very same unit; what could be another, such as gr,
// which is the grain's sign too, is left out. A gauge pressure is what a chamber's
// pressures are.
func unitOfWord(word string) string {
	switch word {
	case "micron", "microns", "micrometre", "micrometer":
		return "um"
	case "millimetre", "millimeter", "millimetres", "millimeters":
		return "mm"
	case "centimetre", "centimeter", "centimetres", "centimeters":
		return "cm"
	case "metre", "meter", "metres", "meters", "mtr":
		return "m"
	case "inch", "inches", `"`, "”", "″", "''":
		return "in"
	case "foot", "feet", "'", "’", "′":
		return "ft"
	case "mm^2", "sqmm":
		return "mm2"
	case "cm^2", "sqcm":
		return "cm2"
	case "m^2", "sqm":
		return "m2"
	case "in^2", "sqin", "sq in":
		return "in2"
	case "ft^2", "sqft", "sq ft":
		return "ft2"
	case "litre", "liter", "litres", "liters", "ltr", "ltrs", "dm3":
		return "L"
	case "mls", "millilitre", "milliliter", "millilitres", "milliliters":
		return "mL"
	case "floz", "fl.oz", "fl. oz", "fl. oz.", "fluid ounce", "fluid ounces":
		return "fl oz"
	case "gals", "gallon", "gallons", "us gal", "us gallons":
		return "gal"
	case "cc", "ccm", "cm^3":
		return "cm3"
	case "m^3":
		return "m3"
	case "in^3", "cuin", "cu in":
		return "in3"
	case "gram", "grams", "gramme", "grammes":
		return "g"
	case "kilogram", "kilograms", "kilo", "kilos", "kgs":
		return "kg"
	case "ounce", "ounces":
		return "oz"
	case "pound", "pounds", "lbs", "lbm":
		return "lb"
	case "bars", "barg", "bar(g)":
		return "bar"
	case "psig", "psi(g)", "lbf/in2":
		return "psi"
	case "mbar", "mb", "millibar", "millibars":
		return "hPa"
	case "n/m2", "pascal":
		return "Pa"
	case "n/mm2", "n/mm^2":
		return "MPa"
	case "in hg":
		return "inHg"
	case "newton", "newtons":
		return "N"
	case "lb-f":
		return "lbf"
	case "ns", "n s", "n-s", "n.s":
		return "N*s"
	case "joule", "joules", "nm", "n*m":
		return "J"
	case "ft-lbf", "ft lbf", "ftlbf":
		return "ft*lbf"
	case "sec", "secs", "second", "seconds":
		return "s"
	case "msec", "millisecond", "milliseconds":
		return "ms"
	case "minute", "minutes", "mins":
		return "min"
	case "mps", "m/sec":
		return "m/s"
	case "kph", "kmh", "km/hr":
		return "km/h"
	case "mi/h", "mph", "miles per hour":
		return "mph"
	case "kt", "kts", "knot", "knots":
		return "kn"
	case "fps", "ft/sec":
		return "ft/s"
	case "degree", "degrees":
		return "deg"
	case "radian", "radians":
		return "rad"
	case "dps", "deg/sec", "degrees/s":
		return "deg/s"
	case "c", "celsius", "deg c":
		return "degC"
	case "f", "fahrenheit", "deg f":
		return "degF"
	case "kelvin", "degk":
		return "K"
	case "kg/m^3", "g/l":
		return "kg/m3"
	case "g/cm^3", "g/cc", "kg/l", "g/ml":
		return "g/cm3"
	case "g/m^2", "gsm":
		return "g/m2"
	case "kgm2", "kg m2", "kg*m^2", "kg.m2":
		return "kg*m2"
	case "percent", "per cent", "pct":
		return "%"
	}
	return ""
}

// Spelled finds a unit of a dimension that is written as people do: by another word
// for it, or in another case. The prefixes m and M differ by a factor of 1e9, so
// there the case counts.
func Spelled(name string, d Dimension) (Unit, bool) {
	if word := unitOfWord(strings.ToLower(name)); word != "" {
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
