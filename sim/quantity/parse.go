package quantity

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"ullage/sim/fault"
)

// Parse reads a quantity of a dimension, such as "70 mm": a decimal number, and
// the name of a unit or an alias of it. The space between is optional and case
// counts. The unit is required, except for a Number, which has none, and a
// Fraction, which is a bare number or a percentage. The value is finite, is 0
// or between 1e-30 and 1e30 in SI, and no temperature is below absolute zero.
// An error is a fault.Fault with the
// text in quotes as its value.
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
	case number == "":
		return p.fault("is not "+p.dimension.String(), p.byExample())
	}
	if broken(number, unit) {
		return p.brokenNumber(number, unit)
	}
	value, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return p.fault("is too large", p.byExample())
	}
	u, ok := p.unitOf(unit)
	if !ok {
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
	return LookupIn(name, p.dimension)
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

// minus is the minus sign of print.
const minus = "−"

// split parts a text into its leading decimal number, empty if there is none, and
// the rest.
func split(text string) (number, rest string) {
	text = strings.TrimSpace(text)
	if after, ok := strings.CutPrefix(text, minus); ok {
		text = "-" + after
	}
	n := numberLength(text)
	return text[:n], strings.TrimSpace(text[n:])
}

// numberLength is the length of the decimal number that a text starts with: a
// sign, digits with at most one point among them, and an exponent, where sign
// and exponent may be absent. Neither infinities nor hexadecimal are numbers.
func numberLength(s string) int {
	i := signLength(s)
	whole := digitsLength(s[i:])
	i += whole
	parts := 0
	if i < len(s) && s[i] == '.' {
		parts = digitsLength(s[i+1:])
		if whole+parts > 0 {
			i += 1 + parts
		}
	}
	if whole+parts == 0 {
		return 0
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		j += signLength(s[j:])
		if n := digitsLength(s[j:]); n > 0 {
			i = j + n
		}
	}
	return i
}

func signLength(s string) int {
	if s != "" && (s[0] == '+' || s[0] == '-') {
		return 1
	}
	return 0
}

func digitsLength(s string) int {
	n := 0
	for n < len(s) && '0' <= s[n] && s[n] <= '9' {
		n++
	}
	return n
}

// zero says whether a number is written with no digit but 0 before its exponent.
func zero(number string) bool {
	if i := strings.IndexAny(number, "eE"); i >= 0 {
		number = number[:i]
	}
	return !strings.ContainsAny(number, "123456789")
}

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
	return strings.ContainsRune(separators, r) && digitsLength(rest[size:]) > 0
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
	if len(remedies) == 0 {
		return p.fault("is not "+p.dimension.String(), p.byExample())
	}
	return p.fault("is not one plain number", "write "+strings.Join(remedies, " or "))
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
