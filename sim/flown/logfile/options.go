package logfile

import (
	"math"
	"strconv"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// Options are what a user tells of a log.
type Options struct {
	Columns []Told
	Rate    float64 // of the samples, Hz; 0 takes a column of time
}

// Told is what a column is, as the user says.
type Told struct {
	Quantity Quantity
	At       int    // from 1; 0 for none of this quantity, or when it goes by its head
	Head     string // as written in the header
	None     bool   // the log has none, whatever its header says
	Unit     quantity.Unit
	HasUnit  bool
}

// ParseColumn reads what --column takes: a quantity, =, and the number of a column or its
// head, with a unit if the header has none: "time=1 ms", "height=Low range (ft)", "speed=none".
func ParseColumn(text string) (Told, error) {
	bad := func(problem, remedy string) (Told, error) {
		return Told{}, fault.Fault{Key: "--column", Value: strconv.Quote(text), Problem: problem, Remedy: remedy}
	}
	const example = "write it as in --column 'time=1 ms'"
	name, rest, ok := strings.Cut(text, "=")
	name, rest = strings.TrimSpace(name), strings.TrimSpace(rest)
	if !ok || rest == "" {
		return bad("a quantity, =, and a column are needed", example)
	}
	t := traitsOf(Quantity(strings.ToLower(name)))
	if t == nil {
		remedy := "there are " + strings.Join(Quantities(), ", ")
		if word, like := quantity.Nearest(name, Quantities()); like {
			remedy = "perhaps " + word + " is meant"
		}
		return bad("no log has a quantity "+strconv.Quote(name), remedy)
	}
	told := Told{Quantity: t.quantity}
	if rest == "none" {
		told.None = true
		return told, nil
	}
	digits := 0
	for digits < len(rest) && '0' <= rest[digits] && rest[digits] <= '9' {
		digits++
	}
	if digits == 0 {
		told.Head = rest
		return told, nil
	}
	n, err := strconv.Atoi(rest[:digits])
	if err != nil || n < 1 || n > mostColumns {
		return bad("columns count from 1", example)
	}
	told.At = n
	if unit := strings.TrimSpace(rest[digits:]); unit != "" {
		s := newSpelled()
		if told.Unit, told.HasUnit = s.in(unit, t.dimension); !told.HasUnit {
			return bad(strconv.Quote(unit)+" is no unit of "+t.dimension.String(), "there are "+strings.Join(s.names(t.dimension), ", "))
		}
	}
	return told, nil
}

// mostColumns is more than any recorder has.
const mostColumns = 10_000

// ParseRate reads a rate, "20 Hz" or "0.5 kHz", or the time between two samples, "50 ms", in Hz.
func ParseRate(text string) (float64, error) {
	bad := func() (float64, error) {
		return 0, fault.Fault{Key: "--rate", Value: strconv.Quote(text), Problem: "is no rate", Remedy: "write one such as '20 Hz', from 0.01 Hz to 1 MHz"}
	}
	text = strings.TrimSpace(text)
	n := len(text)
	for n > 0 && !('0' <= text[n-1] && text[n-1] <= '9' || text[n-1] == '.') {
		n--
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(text[:n]), 64)
	if err != nil {
		return bad()
	}
	switch strings.ToLower(strings.TrimSpace(text[n:])) {
	case "hz", "/s", "1/s":
	case "khz":
		v *= 1000
	case "ms":
		v = 1000 / v
	case "s":
		v = 1 / v
	default:
		return bad()
	}
	if !(v >= 0.01 && v <= 1e6) || math.IsInf(v, 0) {
		return bad()
	}
	return v, nil
}

// ParseTime reads a time by a log's clock: seconds, or a number with a unit of time.
func ParseTime(text string) (float64, error) {
	bad := fault.Fault{Value: strconv.Quote(text), Problem: "is no time", Remedy: "write one such as '120 s'"}
	text = strings.TrimSpace(text)
	n := len(text)
	for n > 0 && !('0' <= text[n-1] && text[n-1] <= '9' || text[n-1] == '.') {
		n--
	}
	v, is := number([]byte(text[:n]), true)
	if is != isNumber {
		return 0, bad
	}
	unit := strings.TrimSpace(text[n:])
	if unit == "" {
		return v, nil
	}
	u, ok := newSpelled().in(unit, quantity.Time)
	if !ok {
		return 0, bad
	}
	return u.ToSI(v), nil
}
