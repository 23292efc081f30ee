package study

import (
	"context"

	"ullage/sim"
	"ullage/sim/rocket"
)

// Fleet flies rockets on all cores and gives their flights in the same order. One that
// is not valid has no flight: nil. When it ends early there are fewer.
func Fleet(ctx context.Context, rockets []*rocket.Rocket, o Options) ([]*sim.Flight, error) {
	return Collect(ctx, len(rockets), o, func(ctx context.Context, i int) (*sim.Flight, error) {
		fl, _, err := fly(ctx, rockets[i], o.flight())
		return fl, err
	})
}
