package study

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/long"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// Nothing is allocated a flight: a long sweep and a long scatter take no more than short ones
// do. Linear takes a few for the text of its numbers, which is done before.
func TestNothingIsAllocatedAFlight(t *testing.T) {
	long.Unraced(t)
	const short, more = 256, 512
	heron := rocketfile.Starter().Rocket()
	point := heron.Clone()
	point.Model = rocket.PointModel
	for name, r := range map[string]*rocket.Rocket{"bottle in layers": layered(), "rigid": heron, "point": point, "motor": motored()} {
		sweep := func(n int) func() {
			axes := []Axis{Linear(input(t, r, "body.mass"), r.Body.Mass, 1.1*r.Body.Mass, n)}
			return func() { _ = Sweep(background, r, axes, Options{Workers: 1}, func(Row) error { return nil }) }
		}
		scatter := func(n int) func() {
			draws := Draws{Spreads: DefaultSpread(r), Flights: n, Seed: 1}
			return func() { _, _ = Disperse(background, r, draws, Options{Workers: 1}, nil) }
		}
		for study, of := range map[string]func(n int) func(){"sweep": sweep, "scatter": scatter} {
			few, many := testing.AllocsPerRun(1, of(short)), testing.AllocsPerRun(1, of(short+more))
			require.Less(t, (many-few)/more, 0.02, "%s of a %s: %g for %d flights, %g for %d", study, name, few, short, many, short+more)
		}
	}
}
