package quantity

import (
	"math"

	"ullage/sim/fault"
)

// Range is what a number may be. Both ends belong to it.
type Range struct {
	Dimension Dimension
	Unit      Unit    // to tell the ends in, and to show first
	Min, Max  float64 // SI
}

// Between is the range between two numbers of a unit. It panics when the dimension has
// no such unit.
func Between(d Dimension, unit string, min, max float64) Range {
	u, ok := LookupIn(unit, d)
	if !ok {
		panic("quantity: no unit " + unit + " of " + d.String())
	}
	return Range{Dimension: d, Unit: u, Min: u.ToSI(min), Max: u.ToSI(max)}
}

// Millimetres is the range between two lengths in mm.
func Millimetres(min, max float64) Range { return Between(Length, "mm", min, max) }

// Check tells what is wrong with an SI value: that it is not finite, or not in the range.
// It is nil when nothing is.
func (r *Range) Check(v float64) *fault.Fault {
	problem := ""
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		problem = "not a finite number"
	case v >= r.Min && v <= r.Max:
		return nil
	case v < 0 && r.Min >= 0 && r.Dimension != Temperature:
		problem = "negative"
	case v == 0 && r.Min > 0:
		problem = "zero"
	case v < r.Min:
		problem = "too small"
	default:
		problem = "too large"
	}
	return &fault.Fault{Problem: problem, Remedy: r.remedy()}
}

// String tells the range: "10 mm to 20000 mm".
func (r *Range) String() string { return Exact(r.Min, r.Unit) + " to " + Exact(r.Max, r.Unit) }

func (r *Range) remedy() string { return "give " + r.String() }

// Hold is the value itself, or the end of the range beyond which it lies; of what is no
// number the end next to 0.
func (r *Range) Hold(v float64) float64 {
	if math.IsNaN(v) {
		v = 0
	}
	return math.Min(math.Max(v, r.Min), r.Max)
}
