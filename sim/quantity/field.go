package quantity

import (
	"math"
	"strings"

	"ullage/sim/fault"
)

// Field is one number that describes a T: what it is called, what it may be and where it
// is. Whoever describes a T lists its fields once; checks, files and screens go by that
// list, so that a range stands in one place.
//
// A number that has to be there and is not yet is NaN, or 0 where that can be no value of
// it.
type Field[T any] struct {
	Key   string // as a rocket file has it
	Range Range
	At    func(*T) *float64 // nil for a count
	Count func(*T) *int     // of things; nil for a measure
	// Optional says that the T may hold Absent, 0 or NaN, for a number that is not given.
	Optional bool
	Absent   float64
	// Only tells for which T the number means anything; nil: for all.
	Only func(*T) bool
}

// value is the number that a T holds.
func (f *Field[T]) value(t *T) float64 {
	if f.Count != nil {
		return float64(*f.Count(t))
	}
	return *f.At(t)
}

// Check adds every field of a T that is missing or out of its range to a list, under its
// key with what stands before it. It tells whether none is.
func Check[T any](to *fault.List, t *T, fields []Field[T], prefix ...string) bool {
	sound := true
	for i := range fields {
		f := &fields[i]
		v := f.value(t)
		if v >= f.Range.Min && v <= f.Range.Max || f.Optional && same(v, f.Absent) || f.Only != nil && !f.Only(t) {
			continue
		}
		sound = false
		key := strings.Join(prefix, "") + f.Key
		if !f.Optional && (math.IsNaN(v) || v == 0) {
			to.Need(key, f.Range.remedy())
		} else {
			*to = append(*to, f.Range.Check(v).Of(key, ""))
		}
	}
	return sound
}

// same compares numbers, NaN being the same as itself.
func same(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }
