package study

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// Without the body's drag the canopy is that of ½ρv²·C_D·S = m·g.
func TestCanopyFor(t *testing.T) {
	for _, v := range []float64{2.5, 4, 6, 9} {
		r := bottle()
		r.Body.Drag = []rocket.MachDrag{{}}
		s, err := CanopyFor(background, r, 0, v, Options{})
		require.NoError(t, err)
		air := atmosphere.Standard(0)
		// With the cold air left in the chamber, which weighs little in air.
		mass := 2*s.Flight.Landing.Energy/math.Pow(s.Flight.Landing.Speed, 2) - air.Density*r.Water.Volume
		area := mass * 9.80665 / (0.5 * air.Density * v * v * r.Canopies[0].Coefficient)
		require.InEpsilon(t, math.Sqrt(4*area/math.Pi), s.Diameter, 2e-3)
		require.InEpsilon(t, v, s.Vertical, 1e-3)
		require.InEpsilon(t, math.Pi/4*s.Diameter*s.Diameter, s.Area, 1e-12)
		require.LessOrEqual(t, s.Flights, 12)

		again := flown(t, with(t, r, "canopy.main.diameter", s.Diameter))
		require.Equal(t, again.Landing.Vertical, s.Vertical)
	}
}

func TestCanopyForDrift(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	slow, err := CanopyFor(background, r, 0, 3, Options{Keep: true})
	require.NoError(t, err)
	fast, err := CanopyFor(background, r, 0, 6, Options{})
	require.NoError(t, err)
	require.Greater(t, slow.Drift, fast.Drift)
	require.Greater(t, slow.Time, fast.Time)
	require.NotEmpty(t, slow.Flight.Trace())
	require.InDelta(t, math.Hypot(slow.Flight.Landing.East, slow.Flight.Landing.North), slow.Drift, 1e-9)

	r.Canopies[0].Diameter, r.Canopies[0].Area = 0, 0.8 // given as an area
	area, err := CanopyFor(background, r, 0, 6, Options{})
	require.NoError(t, err)
	require.InEpsilon(t, fast.Diameter, area.Diameter, 1e-3)
}

func TestCanopyForFaults(t *testing.T) {
	drogue := rocketfile.Starter().Rocket()
	drogue.Canopies = append(drogue.Canopies, rocket.Canopy{Name: "drogue", Diameter: 0.3, Coefficient: 0.75, FillConstant: 8,
		Water: rocket.Rule{Trigger: rocket.AfterApogee, Value: 1}})
	shut := bottle()
	shut.Canopies[0].Water = rocket.Rule{Trigger: rocket.AfterLaunch, Value: 500}
	heavy := bottle()
	heavy.Body.Mass = 100
	wrong := bottle()
	wrong.Body.Mass = -1
	for _, c := range []struct {
		r      *rocket.Rocket
		canopy int
		v      float64
		want   string
	}{
		{bottle(), 1, 5, "no such canopy"},
		{bottle(), -1, 5, "no such canopy"},
		{bottle(), 0, 0, "no landing speed"},
		{bottle(), 0, math.NaN(), "no landing speed"},
		{bottle(), 0, math.Inf(1), "no landing speed"},
		{drogue, 1, 20, "slower than that without it"},
		{bottle(), 0, 1e-4, "large enough"},
		{shut, 0, 5, "does not open"},
		{heavy, 0, 5, "not"},
		{wrong, 0, 5, "body.mass"},
	} {
		_, err := CanopyFor(background, c.r, c.canopy, c.v, Options{})
		require.ErrorContains(t, err, c.want)
		require.IsType(t, fault.List{}, err)
	}
}
