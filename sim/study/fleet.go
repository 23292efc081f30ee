package study

import (
	"context"

	"ullage/sim"
	"ullage/sim/rocket"
)

// Craft is a rocket and its flight in memory that a worker uses again for the next: what is read of them is read
// before that. The zero value is fit for use.
type Craft struct {
	Rocket rocket.Rocket
	Flight sim.Flight
}

// Fleet does jobs 0 to n−1 on the workers, each of which has a craft to itself, and gives what they read of their flights in
// order: as many as there are, when it ends early. Nothing else of the flights stays.
func Fleet[T any](ctx context.Context, n int, o Options, read func(ctx context.Context, i int, c *Craft) (T, error)) ([]T, error) {
	newDo := func() func(context.Context, int, *T) error {
		c := new(Craft)
		return func(ctx context.Context, i int, result *T) (err error) {
			*result, err = read(ctx, i, c)
			return err
		}
	}
	results := make([]T, 0, n)
	err := inPlace(ctx, n, o, newDo, func(_ int, result *T) error {
		results = append(results, *result)
		return nil
	})
	return results, err
}
