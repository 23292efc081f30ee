package study

import (
	"math"
	"strings"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/results"
)

// Wish is what is wanted of a flight: the most of a result, the least, or one value of it.
type Wish struct {
	Row    results.Row // a number
	Least  bool
	Target float64 // NaN for none
}

// MostOf wishes for the most of a result.
func MostOf(row results.Row) Wish { return Wish{Row: row, Target: math.NaN()} }

// UsualWish is the result that the most is wanted of when nothing is said.
const UsualWish = "apogee.height"

// WishFor is a wish by the name of its result: the most of it, the least, or, where a target is given as people write it, that value.
// The error is a fault.Fault,
// that of the target without a key.
func WishFor(t results.Table, name string, least bool, target string) (Wish, error) {
	row, err := t.Number(name)
	if err != nil {
		return Wish{}, err
	}
	w := MostOf(*row)
	w.Least = least
	if target == "" {
		return w, nil
	}
	q, err := quantity.Parse(target, row.Dimension)
	if err != nil {
		return w, err
	}
	w.Target = q.Value
	return w, nil
}

// ReadWish reads a wish from one line: "landing.drift" for the most of it, "least landing.drift", "apogee.height = 300 m";
// nothing for the usual one. The error is a fault.Fault.
func ReadWish(t results.Table, text string) (Wish, error) {
	name, target, aimed := strings.Cut(text, "=")
	name, target = strings.TrimSpace(name), strings.TrimSpace(target)
	rest, least := strings.CutPrefix(name, "least ")
	if rest, most := strings.CutPrefix(rest, "most "); !least && most {
		name = strings.TrimSpace(rest)
	} else if least {
		name = strings.TrimSpace(rest)
	}
	switch {
	case name == "" && !aimed && !least:
		name = UsualWish
	case aimed && target == "":
		return Wish{}, fault.Fault{Key: name, Problem: "has no value behind the sign", Remedy: "write a value with its unit, as in apogee.height = 300 m"}
	case aimed && least:
		return Wish{}, fault.Fault{Key: name, Problem: "is wanted at a value and at its least", Remedy: "write one of them"}
	}
	return WishFor(t, name, least, target)
}

// Aimed tells whether a value is wished for.
func (w *Wish) Aimed() bool { return !math.IsNaN(w.Target) }

// Met tells whether a value is what was wished for, to within 1 %: that of a target.
func (w *Wish) Met(v float64) bool { return !w.Aimed() || math.Abs(v-w.Target) <= bandDrop*w.scale() }

// scale is what 1 % of a target is of; a target of 0 takes one of the result's own unit.
func (w *Wish) scale() float64 {
	if w.Target != 0 {
		return math.Abs(w.Target)
	}
	unit := w.Row.Metric()
	return unit.ToSI(1) - unit.ToSI(0)
}

// Aim refuses what [Highest] refuses, and flights that do not have the result.
func (w Wish) Aim(leftovers bool) Aim {
	a := Highest(leftovers)
	refuse := a.Refuse
	a.Refuse = func(fl *sim.Flight) (Refusal, float64) {
		why, far := refuse(fl)
		if why == Accepted && math.IsNaN(w.Row.Of(fl)) {
			return Undefined, 0
		}
		return why, far
	}
	a.Value = w.Row.Of
	switch {
	case w.Aimed(): // squared, it has the smooth top that a search likes
		scale := w.scale()
		a.Value = func(fl *sim.Flight) float64 {
			off := (w.Row.Of(fl) - w.Target) / scale
			return -off * off
		}
		a.Drop = func(float64) float64 { return bandDrop * bandDrop }
	case w.Least:
		a.Value = func(fl *sim.Flight) float64 { return -w.Row.Of(fl) }
	}
	return a
}
