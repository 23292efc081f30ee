package quantity

import "strings"

// wrongUnit refuses a number whose unit is absent, unknown or of another
// dimension, and says what would fit.
func (p *parser) wrongUnit(number, name string) (Quantity, error) {
	if name == "" {
		unit := p.usual
		if unit.Dimension != p.dimension {
			unit = Usual(p.dimension)
		}
		return p.fault("has no unit", write(number, unit.Name))
	}
	if p.dimension == Number {
		return p.fault("has a unit where a plain number is due", p.plain(number, name))
	}
	name = aliases.Replace(name)
	if u, ok := Lookup(name); ok {
		return p.strange(u.Dimension)
	}
	units := Units(p.dimension)
	problem := "has the unknown unit " + quote(name)
	if u, ok := byCase(name, units); ok {
		return p.fault("has its unit in the wrong case", write(number, u.Name))
	}
	if u, ok := byWord(name, units); ok {
		return p.fault(problem, write(number, u.Name))
	}
	if d, ok := elsewhere(name); ok {
		return p.strange(d)
	}
	if u, ok := byLikeness(name, units); ok {
		return p.fault(problem, "perhaps "+quote(join(number, u.Name))+"; "+p.fitting())
	}
	return p.fault(problem, p.fitting())
}

// plain is the mend for a number that should have no unit.
func (p *parser) plain(number, unit string) string {
	if unit != "%" {
		return write(number, "")
	}
	q, err := Parse(join(number, unit), Fraction)
	if err != nil {
		return p.byExample()
	}
	return write(Exact(q.Value, Unit{}), "")
}

// fitting lists the units of the dimension.
func (p *parser) fitting() string {
	var names []string
	for _, u := range Units(p.dimension) {
		if u.Name != "" {
			names = append(names, u.Name)
		}
	}
	switch n := len(names); n {
	case 0:
		return p.byExample()
	case 1:
		if p.dimension == Fraction {
			return p.byExample()
		}
		return "use " + names[0]
	default:
		return "use " + strings.Join(names[:n-1], ", ") + " or " + names[n-1]
	}
}

// strange refuses a quantity of another dimension.
func (p *parser) strange(d Dimension) (Quantity, error) {
	return p.fault("is "+d.String()+" where "+p.dimension.String()+" is due", p.fitting())
}

// elsewhere finds the dimension that a wrongly written unit belongs to.
func elsewhere(name string) (Dimension, bool) {
	for d := range Dimension(len(dimensions)) {
		if _, ok := byCase(name, Units(d)); ok {
			return d, true
		}
		if _, ok := byWord(name, Units(d)); ok {
			return d, true
		}
	}
	return 0, false
}

// byCase finds the unit that a name spells in the wrong case.
func byCase(name string, units []Unit) (Unit, bool) {
	for _, u := range units {
		if strings.EqualFold(u.Name, name) {
			return u, true
		}
	}
	return Unit{}, false
}

// words are other ways in which people write a unit of the table, in lower case.
// They are not read, since one thing should be written one way, but they are
// understood well enough to answer. Each is the very same unit.
var words = map[string]string{
	"micron": "um", "microns": "um", "micrometre": "um", "micrometer": "um",
	"millimetre": "mm", "millimeter": "mm", "millimetres": "mm", "millimeters": "mm",
	"centimetre": "cm", "centimeter": "cm", "centimetres": "cm", "centimeters": "cm",
	"metre": "m", "meter": "m", "metres": "m", "meters": "m", "mtr": "m",
	"inch": "in", "inches": "in", `"`: "in", "”": "in", "″": "in", "''": "in",
	"foot": "ft", "feet": "ft", "'": "ft", "’": "ft", "′": "ft",
	"mm^2": "mm2", "sqmm": "mm2", "cm^2": "cm2", "sqcm": "cm2", "m^2": "m2", "sqm": "m2",
	"in^2": "in2", "sqin": "in2", "sq in": "in2",
	"litre": "L", "liter": "L", "litres": "L", "liters": "L", "ltr": "L", "dm3": "L",
	"millilitre": "mL", "milliliter": "mL", "millilitres": "mL", "milliliters": "mL",
	"cc": "cm3", "ccm": "cm3", "cm^3": "cm3", "m^3": "m3", "in^3": "in3", "cuin": "in3", "cu in": "in3",
	"gram": "g", "grams": "g", "gramme": "g", "grammes": "g", "gr": "g",
	"kilogram": "kg", "kilograms": "kg", "kilo": "kg", "kilos": "kg", "kgs": "kg",
	"ounce": "oz", "ounces": "oz", "pound": "lb", "pounds": "lb", "lbs": "lb", "lbm": "lb",
	"bars": "bar", "barg": "bar", "bar(g)": "bar", "psig": "psi", "psi(g)": "psi", "lbf/in2": "psi",
	"mbar": "hPa", "mb": "hPa", "millibar": "hPa", "millibars": "hPa", "n/m2": "Pa", "pascal": "Pa",
	"n/mm2": "MPa", "n/mm^2": "MPa", "in hg": "inHg",
	"newton": "N", "newtons": "N", "lb-f": "lbf", "ns": "N*s", "n s": "N*s", "n-s": "N*s", "n.s": "N*s",
	"joule": "J", "joules": "J", "nm": "J", "n*m": "J", "ft-lbf": "ft*lbf", "ft lbf": "ft*lbf", "ftlbf": "ft*lbf",
	"sec": "s", "secs": "s", "second": "s", "seconds": "s", "msec": "ms", "millisecond": "ms", "milliseconds": "ms",
	"mps": "m/s", "m/sec": "m/s", "kph": "km/h", "kmh": "km/h", "km/hr": "km/h", "mi/h": "mph",
	"kt": "kn", "kts": "kn", "knot": "kn", "knots": "kn", "fps": "ft/s", "ft/sec": "ft/s",
	"degree": "deg", "degrees": "deg", "radian": "rad", "radians": "rad",
	"dps": "deg/s", "deg/sec": "deg/s", "degrees/s": "deg/s",
	"c": "degC", "celsius": "degC", "deg c": "degC", "f": "degF", "fahrenheit": "degF", "deg f": "degF",
	"kelvin": "K", "degk": "K",
	"kg/m^3": "kg/m3", "g/l": "kg/m3", "g/cm^3": "g/cm3", "g/cc": "g/cm3", "kg/l": "g/cm3", "g/ml": "g/cm3",
	"g/m^2": "g/m2", "gsm": "g/m2", "kgm2": "kg*m2", "kg m2": "kg*m2", "kg*m^2": "kg*m2", "kg.m2": "kg*m2",
	"percent": "%", "per cent": "%", "pct": "%",
}

// byWord finds the unit that is commonly written another way.
func byWord(name string, units []Unit) (Unit, bool) {
	unit, ok := words[strings.ToLower(name)]
	if !ok {
		return Unit{}, false
	}
	for _, u := range units {
		if u.Name == unit {
			return u, true
		}
	}
	return Unit{}, false
}

// byLikeness finds the one unit whose name differs least from a name of two
// letters or more, if that is by one letter, or by two of a long name.
func byLikeness(name string, units []Unit) (Unit, bool) {
	const longest = 16 // bytes; no unit's name is nearly so long
	name = strings.ToLower(name)
	if len(name) < 2 || len(name) > longest {
		return Unit{}, false
	}
	least := 2
	if len(name) > 3 {
		least = 3
	}
	var best Unit
	found := 0
	for _, u := range units {
		if u.Name == "" {
			continue
		}
		switch n := distance(name, strings.ToLower(u.Name)); {
		case n < least:
			best, found, least = u, 1, n
		case n == least && found > 0:
			found++
		}
	}
	return best, found == 1
}

// distance counts the bytes to insert, delete, replace or swap with the next to
// make one text of the other (optimal string alignment): how like a word is to
// one that was meant, for messages.
func distance(a, b string) int {
	older := make([]int, len(b)+1)
	old := make([]int, len(b)+1)
	row := make([]int, len(b)+1)
	for j := range old {
		old[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(old[j]+1, row[j-1]+1, old[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], older[j-2]+1)
			}
		}
		older, old, row = old, row, older
	}
	return old[len(b)]
}
