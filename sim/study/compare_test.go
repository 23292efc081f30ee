package study

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/thrust"
)

func TestThroats(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	sizes := []float64{0.013, 0.2, 0.009, 0.015}
	got, err := Compare(background, Throats(r, sizes), CompareOptions{Options: Options{Workers: 3, Keep: true}, Fill: true})
	require.NoError(t, err)
	require.Len(t, got, 4)
	for i, c := range got {
		require.Equal(t, sizes[i], c.Rocket.Water.Throat)
		require.Equal(t, -1, c.Delay)
		if i == 1 {
			require.ErrorContains(t, c.Invalid, "water.throat")
			require.Nil(t, c.Flight)
			require.Nil(t, c.Best)
			continue
		}
		at := with(t, r, "water.throat", sizes[i])
		require.Equal(t, flown(t, at).Results, c.Flight.Results)
		require.NotEmpty(t, c.Flight.Trace())
		require.Equal(t, best(t, at, false, "water.fill").Values, c.Best.Values)
	}
	require.Equal(t, "13 mm", got[0].Name)
	require.Equal(t, rocketfile.Starter().Rocket(), r)
}

func TestMotors(t *testing.T) {
	curve, err := thrust.NewCurve([]thrust.Point{{Time: 0, Thrust: 60}, {Time: 3, Thrust: 50}, {Time: 3.2, Thrust: 0}})
	require.NoError(t, err)
	motor := func(diameter, length, delay float64) *rocket.Motor {
		return &rocket.Motor{Curve: curve, Case: 0.1, Propellant: 0.08, Diameter: diameter, Length: length, Delay: delay, Delays: []float64{5, 7, 9}}
	}
	r := rocketfile.Starter().Rocket() // flies on water, with a 29 mm mount
	var motors []Variant
	put := func(name string, m *rocket.Motor) {
		with := r.Clone()
		with.Motor = m
		motors = append(motors, Variant{Name: name, Rocket: with})
	}
	put("strong", r.Motor)
	put("fits", motor(0.029, 0.2, 7))
	put("slim", motor(0.024, 0.2, 7))
	put("fat", motor(0.038, 0.2, 7))
	put("long", motor(0.029, 0.3, 7))
	put("plugged", motor(0.029, 0.2, math.NaN()))
	got, err := Compare(background, Motors(motors, curve.Impulse()), CompareOptions{Delays: true})
	require.NoError(t, err)
	for i, want := range []string{"above the impulse limit", "", "", "wider than the mount", "longer than the mount", ""} {
		require.Equal(t, motors[i].Name, got[i].Name)
		require.Equal(t, want, got[i].Problem, motors[i].Name)
		require.NotNil(t, got[i].Flight, "flown all the same")
		require.False(t, got[i].Flight.WaterFlew)
	}
	fits := got[1]
	require.GreaterOrEqual(t, fits.Delay, 0)
	require.True(t, fits.Delays[fits.Delay].Listed)
	require.Empty(t, got[5].Delays, "no charge")
	require.Equal(t, -1, got[5].Delay)
	require.Empty(t, unfit(got[1].Rocket, 0))
	require.Equal(t, rocket.WaterPower, r.Power)
}

func TestCompareEndsEarly(t *testing.T) {
	ctx, cancel := context.WithCancel(background)
	sizes := make([]float64, 300)
	for i := range sizes {
		sizes[i] = 0.015
	}
	cancel()
	got, err := Compare(ctx, Throats(bottle(), sizes), CompareOptions{})
	require.ErrorIs(t, err, context.Canceled)
	require.Len(t, got, 300)
	require.Nil(t, got[299].Flight)
	require.Equal(t, "15 mm", got[299].Name)
}
