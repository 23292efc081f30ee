package quantity

import "strings"

// together parts the text behind a number, as in "lb 10 oz" or `'3"`, into a unit
// and what comes after it, which starts with a digit; more is empty where nothing
// does. The digit of a unit such as m2 is part of it.
func together(text string) (unit, more string) {
	for i := 1; i < len(text); i++ {
		if text[i] < '0' || text[i] > '9' {
			continue
		}
		if before := text[:i]; strings.TrimRight(before, " '’′\u00a0\u202f") != before {
			return strings.TrimSpace(before), text[i:]
		}
	}
	return text, ""
}

// sum reads a quantity in several units, such as "2 lb 10 oz" or "5 ft 3 in", of
// which each is smaller than the one before.
func (p *parser) sum(number, unit, more string) (Quantity, error) {
	u, ok := p.unitOf(unit)
	if !ok || unit == "" {
		return p.wrongUnit(number, unit+" "+more)
	}
	value, err := valueOf(number)
	if err != nil {
		return p.fault("is too large", p.byExample())
	}
	first, err := p.accept(number, value, u)
	if err != nil {
		return first, err
	}
	rest := parser{text: more, dimension: p.dimension, usual: p.usual}
	second, err := rest.parse()
	switch {
	case err != nil:
		return Quantity{}, err
	case u.Offset != 0 || second.Unit.Scale >= u.Scale:
		return p.fault("has units that do not go from large to small", "write it in one unit")
	}
	if strings.HasPrefix(number, "-") {
		second.Value = -second.Value
	}
	return Quantity{Value: first.Value + second.Value, Unit: u}, nil
}
