package study

import (
	"context"

	"ullage/sim"
)

// Row is one flight of a sweep.
type Row struct {
	Index   int     // from 0, in the order of the input
	Values  []Value // one an axis
	Flight  *sim.Flight
	Invalid error // why the values make no valid rocket; Flight is nil then
}

// Sweep flies every combination of the axes' values, the first axis slowest, and
// hands the rows to emit in that order, one at a time, as they come: memory is
// bounded by the workers, not by the flights. It stops at emit's first error and
// returns it, or the context's.
func Sweep(ctx context.Context, base *sim.Rocket, axes []Axis, o Options, emit func(Row) error) error {
	return errLater
}
