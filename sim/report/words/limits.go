package words

import (
	"math"

	"ullage/sim/gates"
)

// LimitSentence says a limit and where it comes from: "At least 15 m/s: common practice."
func (p Printer) LimitSentence(l gates.Limit) string {
	return p.Bounded(l, "At least ", "At most ") + ": " + l.Source + "."
}

// Bounds is a limit: "at least 15 m/s", "1 to 3", "-" without one.
func (p Printer) Bounds(l gates.Limit) string { return p.Bounded(l, "at least ", "at most ") }

// Stated writes what is held to a limit as it was set.
func (p Printer) Stated(v float64, l *gates.Limit) string {
	if l.Unit == "" {
		return Ratio(v)
	}
	return p.Value(v, l.In(), digits)
}

// Bounded is a limit with what stands before either bound.
func (p Printer) Bounded(l gates.Limit, least, most string) string {
	low, high := !math.IsInf(l.Min, 0), !math.IsInf(l.Max, 0)
	shown := func(v float64) string { return p.Stated(v, &l) }
	switch {
	case low && high:
		return shown(l.Min) + " to " + shown(l.Max)
	case low:
		return least + shown(l.Min)
	case high:
		return most + shown(l.Max)
	}
	return "-"
}
