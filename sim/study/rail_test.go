package study

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/thrust"
)

// Constant thrust without drag: v² = 2·a·s.
func TestRailExitClosedForm(t *testing.T) {
	curve, err := thrust.NewCurve([]thrust.Point{{Time: 0, Thrust: 100}, {Time: 4, Thrust: 100}, {Time: 4.01, Thrust: 0}})
	require.NoError(t, err)
	r := motored()
	r.Body.Mass, r.Body.Drag = 1.5, []rocket.MachDrag{{}}
	r.Motor = &rocket.Motor{Curve: curve, Case: 0.5, Propellant: 1e-5, Delay: math.NaN()}
	r.Canopies = nil
	r.Rail = rocket.Rail{Length: 2, Tilt: 10 * degree}
	r.Wind.Speed = 5
	g := 9.80665 * math.Pow(1-120/6356766.0, 2)
	a := 100/2.0 - g*math.Cos(r.Rail.Tilt)
	for _, v := range []float64{5, 12, 15, 20, 40} {
		e, err := RailExitFor(background, r, v, Options{})
		require.NoError(t, err)
		require.InEpsilon(t, math.Sqrt(2*a*2), e.Speed, 1e-4)
		require.InEpsilon(t, e.Speed/4, e.Wind, 1e-12)
		require.True(t, math.IsNaN(e.Pressure), "a motor has none")
		want := v * v / (2 * a)
		require.Equal(t, want <= 2, e.Reached)
		if want > LongestRail {
			require.True(t, math.IsNaN(e.Enough))
			continue
		}
		require.InEpsilon(t, want, e.Enough, 1e-4)
		require.Equal(t, !e.Reached, math.IsNaN(e.At))
		if e.Reached {
			require.Equal(t, e.Enough, e.At)
		}
	}
}

// The rail and the pressure that are enough are just so, in flights of their own.
func TestRailExitIsEnough(t *testing.T) {
	tube := rocketfile.Starter().Rocket()
	tube.Water.Tube = &rocket.LaunchTube{Length: 0.8, Outer: 0.0148, Inner: 0.012}
	proved := rocketfile.Starter().Rocket()
	proved.Chamber.Proof = 8e6
	for name, r := range map[string]*rocket.Rocket{"bottle": bottle(), "starter": rocketfile.Starter().Rocket(), "tube": tube, "motor": motored(), "proved": proved} {
		t.Run(name, func(t *testing.T) {
			now := flown(t, r).RailExit.Speed
			for _, share := range []float64{0.7, 0.99, 1.2} {
				limit := share * now
				e, err := RailExitFor(background, r, limit, Options{})
				require.NoError(t, err)
				require.Equal(t, now, e.Speed)
				require.Equal(t, share < 1, e.Reached)
				if !math.IsNaN(e.Enough) && e.Enough > 0.8 {
					require.InEpsilon(t, limit, flown(t, with(t, r, "rail.length", e.Enough)).RailExit.Speed, 1e-3)
				}
				if r.Power == rocket.WaterPower && share > 1 && TopPressure(r, r) <= r.Water.Pressure {
					require.True(t, math.IsNaN(e.Pressure), "no proof is for more than there is")
					require.NotEqual(t, "proved", name)
				} else if r.Power == rocket.WaterPower {
					require.LessOrEqual(t, e.Pressure, max(r.Water.Pressure, TopPressure(r, r)))
					enough := flown(t, with(t, r, "water.pressure", e.Pressure)).RailExit.Speed
					require.InEpsilon(t, limit, enough, 1e-3)
					require.GreaterOrEqual(t, enough, limit)
				}
			}
		})
	}
}

func TestRailExitNever(t *testing.T) {
	e, err := RailExitFor(background, dud(), 15, Options{})
	require.NoError(t, err)
	require.False(t, e.Exited)
	require.False(t, e.Reached)
	require.Zero(t, e.Speed)
	for _, v := range []float64{e.At, e.Enough, e.Pressure} {
		require.True(t, math.IsNaN(v))
	}
	r := bottle()
	r.Rail.Length = -1
	_, err = RailExitFor(background, r, 15, Options{})
	require.IsType(t, fault.List{}, err)
}
