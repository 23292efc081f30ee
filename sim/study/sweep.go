package study

import (
	"context"
	"errors"
	"slices"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/rocket"
)

// Row is one flight of a sweep. Its values and its flight are good until the next is emitted:
// who keeps them takes a Clone.
type Row struct {
	Index   int         // from 0, in the order of the rows
	Values  []Value     // one an axis
	Flight  *sim.Flight // with a rocket of its own
	Invalid error       // why the values make no valid rocket; Flight is nil then
}

// Clone is a row to keep. Of the dense record nothing is left.
func (r Row) Clone() Row {
	r.Values = slices.Clone(r.Values)
	if r.Flight != nil {
		r.Flight = r.Flight.Clone()
		r.Flight.Rocket = r.Flight.Rocket.Clone()
	}
	return r
}

// Sweep flies every combination of the axes' values, the first axis slowest, and
// hands the rows to emit in that order, one at a time, as they come: memory is
// bounded by the workers, not by the flights. It stops at emit's first error, or at
// the context's, and returns it.
func Sweep(ctx context.Context, base *rocket.Rocket, axes []Axis, o Options, emit func(Row) error) error {
	n := Count(axes)
	jobs, each := o.jobs(n)
	newDo := func() func(context.Context, int, *[]sweptRow) error {
		var flyer sim.Flyer
		return func(ctx context.Context, job int, rows *[]sweptRow) error {
			if *rows == nil {
				*rows = make([]sweptRow, each)
			}
			first := job * each
			for i := range min(each, n-first) {
				if err := (*rows)[i].fly(ctx, &flyer, base, axes, first+i, o.flight()); err != nil {
					return err
				}
			}
			return nil
		}
	}
	return inPlace(ctx, jobs, o.inFlights(n, each), newDo, func(job int, rows *[]sweptRow) error {
		for i := range min(each, n-job*each) {
			if err := emit((*rows)[i].row); err != nil {
				return err
			}
		}
		return nil
	})
}

// sweptRow is a row in memory that is used again.
type sweptRow struct {
	row    Row
	flight sim.Flight
	rocket rocket.Rocket
}

func (s *sweptRow) fly(ctx context.Context, flyer *sim.Flyer, base *rocket.Rocket, axes []Axis, i int, o sim.Options) error {
	s.row = Row{Index: i, Values: combination(s.row.Values[:0], axes, i)}
	base.CopyTo(&s.rocket)
	for k, a := range axes {
		if s.row.Invalid = s.row.Values[k].set(a.Input, &s.rocket); s.row.Invalid != nil {
			return nil
		}
	}
	if slices.ContainsFunc(axes, func(a Axis) bool { return bearsOnChamber(a.Input) }) {
		if s.row.Invalid = ofChamber(&s.rocket); s.row.Invalid != nil {
			return nil
		}
	}
	err := flyer.Into(ctx, &s.rocket, o, &s.flight)
	if s.row.Invalid, err = parted(err); err == nil && s.row.Invalid == nil {
		s.row.Flight = &s.flight
	}
	return err
}

// combination is the i-th combination of the axes' values, the first axis slowest.
func combination(values []Value, axes []Axis, i int) []Value {
	values = slices.Grow(values, len(axes))[:len(axes)]
	for k := len(axes) - 1; k >= 0; k-- {
		n := len(axes[k].Values)
		values[k] = axes[k].Values[i%n]
		i /= n
	}
	return values
}

// parted tells what is wrong with a rocket from what ended a flight.
func parted(flown error) (invalid, err error) {
	if flown == nil {
		return nil, nil
	}
	var faults fault.List
	if errors.As(flown, &faults) {
		return faults, nil
	}
	return nil, flown
}
