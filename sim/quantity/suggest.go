package quantity

import (
	"strings"

	"ullage/sim/fault"
)

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
	if gauge, ok := absolute[strings.ToLower(name)]; ok && p.dimension == Pressure {
		return p.fault("is an absolute pressure", "pressures of a chamber are above the air's: take that off and write "+gauge)
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
	if len(names) == 0 || len(names) == 1 && p.dimension == Fraction {
		return p.byExample()
	}
	return "use " + fault.OneOf(names...)
}

// strange refuses a quantity of another dimension.
func (p *parser) strange(d Dimension) (Quantity, error) {
	return p.fault("is "+d.String()+" where "+p.dimension.String()+" is due", p.fitting())
}

// elsewhere finds the dimension that a unit belongs to.
func elsewhere(name string) (Dimension, bool) {
	for d := range Dimension(len(dimensions)) {
		if _, ok := byCase(name, Units(d)); ok {
			return d, true
		}
		if _, ok := Spelled(name, d); ok {
			return d, true
		}
	}
	return 0, false
}

// byCase finds the unit that a name spells in another case.
func byCase(name string, units []Unit) (Unit, bool) {
	for _, u := range units {
		if strings.EqualFold(u.Name, name) {
			return u, true
		}
	}
	return Unit{}, false
}

// absolute are units of pressure above vacuum, and what to write above the air's.
var absolute = map[string]string{
	"psia": "psi", "psi(a)": "psi", "bara": "bar", "bar(a)": "bar", "bar abs": "bar", "psi abs": "psi",
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
