package study

import (
	"context"

	"ullage/sim"
	"ullage/sim/rocket"
)

// Fleet flies rockets on all cores and gives their flights in the same order. One that
// is not valid has no flight: nil.
func Fleet(ctx context.Context, rockets []*rocket.Rocket, o Options) ([]*sim.Flight, error) {
	flights := make([]*sim.Flight, len(rockets))
	newDo := func() func(context.Context, int) (*sim.Flight, error) {
		return func(ctx context.Context, i int) (*sim.Flight, error) {
			fl, _, err := fly(ctx, rockets[i], o.flight())
			return fl, err
		}
	}
	err := inOrder(ctx, len(rockets), o, newDo, func(i int, fl *sim.Flight) error {
		flights[i] = fl
		return nil
	})
	return flights, err
}
