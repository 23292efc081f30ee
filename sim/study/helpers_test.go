package study

import (
	"context"
	"errors"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/rocketfile"
	"ullage/thrust"
)

var (
	background = context.Background()
	errStop    = errors.New("stop")
)

// bottle is a light water rocket of one drink bottle, invented.
func bottle() *sim.Rocket {
	return &sim.Rocket{
		Name: "test bottle", Power: sim.WaterPower,
		Body: sim.Body{Diameter: 0.108, Mass: 0.15, Drag: []sim.MachDrag{{Drag: 0.4}}, DragFactor: 1},
		Water: &sim.Water{Volume: 0.002, Bore: 0.106, Throat: 0.0215, Discharge: 0.97, Fill: 0.3, Pressure: 5e5,
			Gas: thrust.Air, Density: 998.2, Flow: sim.UnsteadyFlow},
		Rail: sim.Rail{Length: 1},
		Canopies: []sim.Canopy{{Name: "main", Diameter: 0.6, Coefficient: 0.75, FillConstant: 8, Shock: 1.7,
			Water: sim.Rule{Trigger: sim.AfterApogee, Value: 1}}},
	}
}

// motored is the starter on its motor.
func motored() *sim.Rocket {
	r := rocketfile.Starter().Rocket()
	r.Power = sim.MotorPower
	return r
}

// dud never lifts, so that a flight costs next to nothing.
func dud() *sim.Rocket {
	r := bottle()
	r.Water.Pressure, r.Water.Fill, r.Body.Mass = 100, 0, 10
	return r
}

func input(t testing.TB, r *sim.Rocket, name string) rocketfile.Input {
	t.Helper()
	in, err := rocketfile.Find(r, name)
	require.NoError(t, err)
	return in
}

func flown(t testing.TB, r *sim.Rocket) *sim.Flight {
	t.Helper()
	fl, err := sim.Fly(background, r, sim.Options{Point: true})
	require.NoError(t, err)
	return fl
}

// with is a copy of a rocket with one input changed.
func with(t testing.TB, r *sim.Rocket, name string, v float64) *sim.Rocket {
	t.Helper()
	c := rocketfile.Clone(r)
	require.NoError(t, input(t, r, name).Set(c, v))
	return c
}

func spread(t testing.TB, r *sim.Rocket, name string, sd float64) Spread {
	t.Helper()
	return Spread{Input: input(t, r, name), SD: sd}
}
