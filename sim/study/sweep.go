package study

import (
	"context"
	"errors"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/rocket"
)

// Row is one flight of a sweep.
type Row struct {
	Index   int         // from 0, in the order of the rows
	Values  []Value     // one an axis
	Flight  *sim.Flight // with a rocket of its own
	Invalid error       // why the values make no valid rocket; Flight is nil then
}

// Sweep flies every combination of the axes' values, the first axis slowest, and
// hands the rows to emit in that order, one at a time, as they come: memory is
// bounded by the workers, not by the flights. It stops at emit's first error, or at
// the context's, and returns it.
func Sweep(ctx context.Context, base *rocket.Rocket, axes []Axis, o Options, emit func(Row) error) error {
	do := func(ctx context.Context, i int) (Row, error) {
		row := Row{Index: i, Values: combination(axes, i)}
		rocket := base.Clone()
		for k, a := range axes {
			if row.Invalid = row.Values[k].set(a.Input, rocket); row.Invalid != nil {
				return row, nil
			}
		}
		var err error
		row.Flight, row.Invalid, err = fly(ctx, rocket, o.flight())
		return row, err
	}
	return inOrder(ctx, Count(axes), o, alike(do), func(_ int, row Row) error { return emit(row) })
}

// combination is the i-th combination of the axes' values, the first axis slowest.
func combination(axes []Axis, i int) []Value {
	values := make([]Value, len(axes))
	for k := len(axes) - 1; k >= 0; k-- {
		n := len(axes[k].Values)
		values[k] = axes[k].Values[i%n]
		i /= n
	}
	return values
}

// fly tells a rocket that is not valid from a flight that was interrupted.
func fly(ctx context.Context, r *rocket.Rocket, o sim.Options) (flight *sim.Flight, invalid, err error) {
	flight, err = sim.Fly(ctx, r, o)
	var faults fault.List
	if errors.As(err, &faults) {
		return nil, faults, nil
	}
	return flight, nil, err
}
