package rocketfile

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/rocket"
)

// The starter flies well on both drives, by the trade's common practice.
func TestStarterFliesWell(t *testing.T) {
	for _, power := range []rocket.Power{rocket.WaterPower, rocket.MotorPower} {
		f, err := Starter().Set("power", string(power))
		require.NoError(t, err)
		flight, err := sim.Fly(context.Background(), f.Rocket(), sim.Options{})
		require.NoError(t, err)
		r := flight.Results
		require.Empty(t, flight.Warnings)
		require.GreaterOrEqual(t, r.RailExit.Speed, 15.0)
		require.GreaterOrEqual(t, r.RailExit.ThrustToWeight, 5.0)
		require.Len(t, r.Canopies, 1)
		require.LessOrEqual(t, r.Canopies[0].Airspeed, 20.0)
		require.InDelta(t, r.Apogee.Height, r.Canopies[0].Height, 5)
		require.LessOrEqual(t, r.Landing.Vertical, 6.0)
		s := r.Stability
		require.True(t, s.Known)
		moments := map[string]sim.StabilityAt{"rail exit": s.RailExit, "burnout": s.Burnout}
		if power == rocket.WaterPower {
			moments["liquid out"] = s.LiquidOut
		}
		for moment, at := range moments {
			require.True(t, at.Happened, moment)
			require.GreaterOrEqual(t, at.Margin, 1.0, "%s on %s", moment, power)
			require.LessOrEqual(t, at.Margin, 3.0, "%s on %s", moment, power)
		}
		require.GreaterOrEqual(t, s.Least, 1.0)
		require.LessOrEqual(t, s.RailExitAngle, 15*math.Pi/180)
		if power == rocket.WaterPower {
			require.InDelta(t, 200, r.Apogee.Height, 50)
			require.Zero(t, r.LiquidLeft)
		} else {
			require.Equal(t, "H", r.Drive.Class)
		}
	}
}

func TestStarter(t *testing.T) {
	f := Starter()
	require.Empty(t, f.Path())
	require.Equal(t, "starter", f.Name())
	require.False(t, f.Modified())
	require.Equal(t, rocket.WaterPower, f.Rocket().Power)
	g, err := f.Set("motor.delay", "6 s")
	require.NoError(t, err)
	require.True(t, g.Modified())
}
