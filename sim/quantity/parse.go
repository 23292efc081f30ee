package quantity

import (
	"math"
	"strings"
	"unicode/utf8"

	"ullage/sim/fault"
)

// Parse reads a quantity of a dimension, such as "70 mm", "0,93 m", "9/16 in",
// "2 lb 10 oz" or, of a Bearing, "SW": a decimal number or a common fraction, and
// a unit by its name or as people write it, or several of both, from the
// largest unit to the smallest. A comma is a decimal mark, except before exactly
// three digits, where it could part thousands. The space between is optional. The
// unit is required, except for a Number, which has none, and a Fraction, which is
// a bare number or a percentage. The value is finite, is 0 or between 1e-30 and
// 1e30 in SI, and no temperature is below absolute zero. The unit of the result is
// the first that was written. An error is a fault.Fault with the text in quotes as
// its value.
func Parse(text string, d Dimension) (Quantity, error) {
	return ParseAs(text, d, Usual(d))
}

// ParseAs is Parse with the unit to show to someone who left it out, instead of
// the dimension's usual one.
func ParseAs(text string, d Dimension, usual Unit) (Quantity, error) {
	p := parser{text: text, dimension: d, usual: usual}
	return p.parse()
}

// ParseIn is Parse, except that a bare number takes the unit given, as in a
// field of the screen that shows it.
func ParseIn(text string, d Dimension, bare Unit) (Quantity, error) {
	p := parser{text: text, dimension: d, usual: bare, bare: bare.Dimension == d}
	return p.parse()
}

// parser holds one text while it is read.
type parser struct {
	text      string
	dimension Dimension
	usual     Unit // the unit to show, and to take when bare is set
	bare      bool // a bare number takes the usual unit
}

func (p *parser) parse() (Quantity, error) {
	number, unit := split(p.text)
	switch {
	case number == "" && unit == "":
		return p.fault("is empty", p.byExample())
	case number == "" && p.dimension == Bearing:
		return p.compassPoint(unit)
	case number == "":
		return p.fault("is not "+p.dimension.String(), p.byExample())
	}
	if broken(number, unit) {
		return p.brokenNumber(number, unit)
	}
	value, err := valueOf(number)
	if err != nil {
		return p.fault("is too large", p.byExample())
	}
	u, ok := p.unitOf(unit)
	if !ok {
		if first, more := together(unit); more != "" {
			return p.sum(number, first, more)
		}
		return p.wrongUnit(number, unit)
	}
	return p.accept(number, value, u)
}

// The sizes that the program reckons with, in SI; 0 is one too.
const (
	smallest = 1e-30
	largest  = 1e30
)

// accept checks the size of a value whose unit fits.
func (p *parser) accept(number string, value float64, u Unit) (Quantity, error) {
	si := u.ToSI(value)
	switch size := math.Abs(si); {
	case size > largest:
		return p.fault("is too large", p.byExample())
	case size < smallest && (size != 0 || value == 0 && !zero(number)):
		return p.fault("is too small", write("0", u.Name))
	case p.dimension == Temperature && si < 0:
		return p.fault("is below absolute zero", p.byExample())
	}
	return Quantity{Value: si, Unit: u}, nil
}

// unitOf finds the unit that a name, or its absence, stands for.
func (p *parser) unitOf(name string) (Unit, bool) {
	if name == "" && p.bare {
		return p.usual, true
	}
	if u, ok := LookupIn(name, p.dimension); ok {
		return u, true
	}
	return Spelled(unaliased(name), p.dimension)
}

func (p *parser) fault(problem, remedy string) (Quantity, error) {
	return Quantity{}, fault.Fault{Value: quote(p.text), Problem: problem, Remedy: remedy}
}

// byExample is the remedy for a text that has nothing to build on.
func (p *parser) byExample() string {
	example := p.dimension.example()
	if p.usual.Dimension == p.dimension && p.usual != Usual(p.dimension) {
		example = Exact(p.usual.ToSI(1), p.usual)
	}
	return "write " + p.dimension.String() + " such as " + quote(example)
}

// InParts is what is wrong with a number such as 1,500 m, whose comma could part thousands.
const InParts = "is not one plain number"

// separators part the groups of a number's digits in one country or another.
const separators = ",_'’"

// broken says whether what follows a number goes on with it rather than with a
// unit, as in "1,5 m", "1_000 m", "1 000 m", "1.2.3 m" and "0x10 m".
func broken(number, rest string) bool {
	if rest == "" {
		return false
	}
	if number == "0" && (rest[0] == 'x' || rest[0] == 'X') {
		return true
	}
	if strings.ContainsRune("0123456789.+-,_", rune(rest[0])) {
		return true
	}
	r, size := utf8.DecodeRuneInString(rest)
	digits := digitsLength(rest[size:])
	if r == '\'' || r == '’' { // feet, unless it parts thousands
		return digits == 3
	}
	return strings.ContainsRune(separators, r) && digits > 0
}

// brokenNumber refuses a number in parts, and shows it in one part if that makes
// sense.
func (p *parser) brokenNumber(number, rest string) (Quantity, error) {
	whole := strings.Map(func(r rune) rune {
		if r == ' ' || strings.ContainsRune(separators, r) {
			return -1
		}
		return r
	}, number+rest)
	var remedies []string
	if rest[0] == ',' {
		// A decimal comma, unless three digits follow: then who knows?
		remedies = p.readable(remedies, number+"."+rest[1:])
	}
	if rest[0] != ',' || digitsLength(rest[1:]) == 3 {
		remedies = p.readable(remedies, whole)
	}
	if p.several() {
		return p.fault(InParts, p.byExample())
	}
	if len(remedies) == 0 {
		return p.fault("is not "+p.dimension.String(), p.byExample())
	}
	return p.fault(InParts, "write "+strings.Join(remedies, " or "))
}

// several tells of numbers with blanks between them that part no thousands, such as lines
// that were pasted.
func (p *parser) several() bool {
	for i, f := range strings.Fields(p.text) {
		if n := digitsLength(f); i > 0 && n > 0 && n != 3 {
			return true
		}
	}
	return false
}

// readable adds a text to the list, quoted and tidy, if it can be read.
func (p *parser) readable(list []string, text string) []string {
	q := parser{text: text, dimension: p.dimension, usual: p.usual, bare: p.bare}
	number, unit := split(text)
	if broken(number, unit) {
		return list
	}
	if _, err := q.parse(); err != nil {
		return list
	}
	return append(list, quote(join(number, unit)))
}
