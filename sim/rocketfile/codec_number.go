package rocketfile

import (
	"math"
	"strconv"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// numberCodec is a number with or without a unit, a measure or a count.
type numberCodec struct {
	step, coarse float64              // of a nudge, in the unit of the range
	also         func(place) *float64 // where the rocket holds it a second time; mostly nil
	in           cell                 // where the rocket holds it; nil: where its table of numbers says
	of           *rocket.Number       // the row of that table; nil: that of its name, once it is bound
}

// cell is where a rocket holds a number.
type cell interface {
	// get is the number; given is false when none is held, there when the rocket has no
	// such part.
	get(p place) (v float64, given, there bool)
	// set takes a number that is in its range; it is false where there is no such part.
	set(p place, v float64) bool
}

// bound is a codec that has to be told the dotted name of its key, with * for the name
// of an item.
type bound interface{ bind(name string) }

func (c *numberCodec) bind(name string) {
	if c.of == nil {
		c.of = numberNamed(name)
	}
	if c.in == nil {
		c.in = (*rowCell)(c)
	}
}

// is is what the number measures and may be.
func (c *numberCodec) is() scale {
	u := &c.of.Range.Unit
	return scale{c.of.Range, u.ToSI(c.step) - u.ToSI(0), u.ToSI(c.coarse) - u.ToSI(0)}
}

// numberNamed is a row of the rocket's table of numbers.
func numberNamed(name string) *rocket.Number {
	n := rocket.NumberNamed(name)
	if n == nil {
		panic("rocketfile: the rocket has no number " + name)
	}
	return n
}

func (c *numberCodec) kind(place) Kind           { return NumberKind }
func (c *numberCodec) scale(*field, place) scale { return c.is() }

func (c *numberCodec) read(f *field, p place, n *node) *fault.Fault {
	q, bad := readQuantity(n, c.is(), nil)
	if bad != nil {
		return bad
	}
	return c.setNumber(f, p, q.Value)
}

func (c *numberCodec) text(f *field, p place) string {
	v, given := c.number(f, p)
	if !given && v == 0 {
		return ""
	}
	return quantity.Exact(v, fileUnit(c.is()))
}

func (c *numberCodec) number(f *field, p place) (float64, bool) {
	v, given, there := c.in.get(p)
	switch {
	case given:
		return v, true
	case there && f.inForce != nil:
		return f.inForce(p), false
	}
	return 0, false
}

func (c *numberCodec) setNumber(_ *field, p place, v float64) *fault.Fault {
	if bad := c.check(v); bad != nil {
		return bad
	}
	if !c.in.set(p, v) {
		return notThere
	}
	return nil
}

// check holds a number to its range, and a count to whole ones.
func (c *numberCodec) check(v float64) *fault.Fault {
	bad := c.of.Range.Check(v)
	if bad == nil && c.of.Count != nil && v != math.Trunc(v) {
		return flaw("not a whole number", "give "+c.of.Range.String())
	}
	return bad
}

func (c *numberCodec) encode(_ *field, _ place, n *node, s style) (string, *fault.Fault) {
	q, bad := readQuantity(n, c.is(), s.bare)
	if bad == nil {
		bad = c.check(q.Value)
	}
	if bad != nil {
		return "", bad
	}
	unit := q.Unit
	if n.kind == numberNode { // no unit of its own: keep the one that is there
		if unit = fileUnit(c.is()); s.hasUnit {
			unit = s.unit
		}
	}
	return inTOML(quantity.Exact(q.Value, unit), unit, s.quote), nil
}

// rowCell is where the rocket's table of numbers says.
type rowCell numberCodec

func (c *rowCell) get(p place) (v float64, given, there bool) {
	if c.of.Count != nil {
		if at := c.of.Count(p.rocket, p.item); at != nil {
			v := float64(*at)
			return v, !c.of.Optional || v != c.of.Absent, true
		}
		return 0, false, false
	}
	at := c.of.At(p.rocket, p.item)
	if at == nil {
		return 0, false, false
	}
	return *at, !c.of.Optional || !same(*at, c.of.Absent), true
}

func (c *rowCell) set(p place, v float64) bool {
	if c.of.Count != nil {
		at := c.of.Count(p.rocket, p.item)
		if at != nil {
			*at = int(v)
		}
		return at != nil
	}
	at := c.of.At(p.rocket, p.item)
	if at == nil {
		return false
	}
	*at = v
	if c.also != nil {
		if twin := c.also(p); twin != nil {
			*twin = v
		}
	}
	return true
}

// clearNumber makes a rocket hold no such number.
func clearNumber(f *field, p place) {
	if c, ok := f.codec.(*numberCodec); ok && c.of.Optional {
		c.in.set(p, c.of.Absent)
	}
}

var notThere = flaw("the rocket has no such part", "add it to the file first")

// fileUnit is the unit to write where a file has none yet: fractions are plain
// numbers there, though the screen shows per cent.
func fileUnit(s scale) quantity.Unit {
	if s.Dimension == quantity.Fraction {
		u, _ := quantity.LookupIn("", quantity.Fraction)
		return u
	}
	return s.Unit
}

// inTOML writes a quantity: a plain number, or a string with its unit.
func inTOML(text string, u quantity.Unit, quote string) string {
	if u.Name == "" {
		return text
	}
	return quoted(text, quote)
}

// readQuantity reads a number or a string with a unit. A number without a unit
// takes the bare one, if there is any.
func readQuantity(n *node, s scale, bare *quantity.Unit) (quantity.Quantity, *fault.Fault) {
	plain := s.Dimension == quantity.Number || s.Dimension == quantity.Fraction
	var q quantity.Quantity
	var err error
	switch {
	case n.kind == stringNode && plain && isDecimal(n.text):
		return q, flaw("a plain number in quotes", "write "+strings.TrimSpace(n.text))
	case n.kind == stringNode:
		q, err = quantity.ParseAs(n.text, s.Dimension, s.Unit)
	case n.kind == numberNode && strings.Trim(n.text, "+-naif") == "":
		return q, flaw("not a finite number", "give "+s.Dimension.String()+" such as "+s.example())
	case n.kind != numberNode:
		return q, flaw("not "+s.Dimension.String(), "give "+s.Dimension.String()+" such as "+s.example())
	case bare != nil && bare.Dimension == s.Dimension:
		q, err = quantity.ParseIn(decimal(n.text), s.Dimension, *bare)
	default:
		q, err = quantity.ParseAs(decimal(n.text), s.Dimension, s.Unit)
	}
	return q, flawOf(err)
}

// decimal turns a TOML number into plain decimals, as quantities are written.
func decimal(text string) string {
	text = strings.ReplaceAll(text, "_", "")
	if i, err := strconv.ParseInt(text, 0, 64); err == nil {
		return strconv.FormatInt(i, 10)
	}
	return text
}

// isNumber says whether a text is a number without a unit.
func isNumber(text string) bool {
	text = strings.TrimSpace(text)
	if n := len(text); n == 0 || text[n-1] >= 'A' && text[n-1] <= 'z' {
		return false // as most that are asked about: what a reader would say of it need not be worked out
	}
	_, err := quantity.Parse(text, quantity.Number)
	return err == nil
}

// isDecimal says whether it is one that a file can hold without quotes.
func isDecimal(text string) bool {
	return isNumber(text) && !strings.ContainsAny(text, ",/")
}

// example is a value in the range, as a file has it.
func (s scale) example() string {
	u := fileUnit(s)
	return inTOML(quantity.Exact(s.Min, u), u, `"`)
}

// same compares numbers, NaN being the same as itself.
func same(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }
