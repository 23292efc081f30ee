package study

import (
	"context"
	"errors"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/thrust"
)

var (
	background = context.Background()
	errStop    = errors.New("stop")
)

// bottle is a light water rocket of one drink bottle, invented.
func bottle() *rocket.Rocket {
	return &rocket.Rocket{
		Name: "test bottle", Power: rocket.WaterPower,
		Body: rocket.Body{Diameter: 0.108, Mass: 0.15, Drag: []rocket.MachDrag{{Drag: 0.4}}, DragFactor: 1},
		Water: &rocket.Water{Volume: 0.002, Bore: 0.106, Throat: 0.0215, Discharge: 0.97, Fill: 0.3, Pressure: 5e5,
			Gas: thrust.Air, Density: 998.2, Flow: rocket.UnsteadyFlow},
		Rail: rocket.Rail{Length: 1},
		Canopies: []rocket.Canopy{{Name: "main", Diameter: 0.6, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7,
			Water: rocket.Rule{Trigger: rocket.AfterApogee, Value: 1}}},
	}
}

// motored is the starter on its motor.
func motored() *rocket.Rocket {
	r := rocketfile.Starter().Rocket()
	r.Power = rocket.MotorPower
	return r
}

// dud never lifts, so that a flight costs next to nothing.
func dud() *rocket.Rocket {
	r := bottle()
	r.Water.Pressure, r.Water.Fill, r.Body.Mass = 100, 0, 10
	return r
}

func input(t testing.TB, r *rocket.Rocket, name string) rocketfile.Input {
	t.Helper()
	in, err := rocketfile.Find(r, name)
	require.NoError(t, err)
	return in
}

func flown(t testing.TB, r *rocket.Rocket) *sim.Flight {
	t.Helper()
	fl, err := sim.Fly(background, r, sim.Options{})
	require.NoError(t, err)
	return fl
}

// with is a copy of a rocket with one input changed.
func with(t testing.TB, r *rocket.Rocket, name string, v float64) *rocket.Rocket {
	t.Helper()
	c := r.Clone()
	require.NoError(t, input(t, r, name).Set(c, v))
	return c
}

func spread(t testing.TB, r *rocket.Rocket, name string, sd float64) Spread {
	t.Helper()
	return Spread{Input: input(t, r, name), SD: sd}
}
