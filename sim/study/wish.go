package study

import (
	"math"

	"ullage/sim"
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
