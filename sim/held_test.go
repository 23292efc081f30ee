package sim_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

func held(t *testing.T, name string, change func(*rocket.Rocket)) *sim.Flight {
	t.Helper()
	f, err := rocketfile.Open("../testdata/" + name + ".toml")
	require.NoError(t, err)
	r := f.Rocket()
	if change != nil {
		change(r)
	}
	fl, err := sim.Fly(context.Background(), r, sim.Options{Keep: true, Held: true, Tolerance: 1e-9})
	require.NoError(t, err)
	return fl
}

// Liquid driven by gas and held still, by the closed form of its emptying without head and area
// term (computed by plain arithmetic): 2 L, 0.6 L of 1000 kg/m³, 801 325 Pa, 9 mm, n 1.4.
func TestHeldEmptying(t *testing.T) {
	fl := held(t, "bottle", func(r *rocket.Rocket) {
		w := r.Water
		w.Volume, w.Fill, w.Density, w.Throat, w.Bore, w.Discharge, w.Exponent = 0.002, 0.3, 1000, 0.009, 0.29, 1, 1.4
		w.Pressure, w.Flow, w.Temperature, w.Expansion = 700e3, rocket.SteadyFlow, 288.15, ""
		r.Body.Diameter = 0.3
		r.Site.Elevation, r.Site.Pressure, r.Site.Temperature = 0, 101325, 288.15
		r.Rail.Tilt = 0
	})
	assert.InEpsilon(t, 0.295668827, fl.LiquidOut.Time, 1e-3) // the head and β leave something
	s := fl.At(fl.LiquidOut.Time - 1e-9)
	assert.InEpsilon(t, 486346.672, s.Chamber, 1e-6)
	impulse := 0.0
	last := sim.Sample{}
	for i, s := range fl.Samples(1e-5) {
		if i > 0 && s.Time <= fl.LiquidOut.Time {
			impulse += (s.Thrust + last.Thrust) / 2 * (s.Time - last.Time)
		}
		last = s
	}
	assert.InEpsilon(t, 19.2811582, impulse, 2e-3)
	assert.Zero(t, fl.At(0.1).Height)
	assert.False(t, fl.Apogee.Happened && fl.Apogee.Height > 0)
	assert.Empty(t, fl.Warnings)
	assert.InDelta(t, fl.Burnout.Time, fl.Duration(), 1e-9, "the flight ends with the push")
}

// The gas alone, by the closed form of adiabatic blow-down: 2 L at 500 kPa, 288.15 K, 9 mm
// (computed): first thrust 33.8833843 N, choked to 0.117087776 s, 2.66455539 N·s in all.
func TestHeldBlowDown(t *testing.T) {
	fl := held(t, "bottle", func(r *rocket.Rocket) {
		w := r.Water
		w.Volume, w.Fill, w.Throat, w.Bore, w.Discharge, w.Exponent = 0.002, 0, 0.009, 0.1, 1, 1.4
		w.Pressure, w.Temperature, w.Expansion = 500e3-101325, 288.15, ""
		r.Site.Elevation, r.Site.Pressure, r.Site.Temperature = 0, 101325, 288.15
	})
	assert.InEpsilon(t, 33.8833843, fl.At(0).Thrust, 1e-7)
	assert.InEpsilon(t, 420471.174, fl.At(0.02).Chamber, 1e-6)
	assert.InEpsilon(t, 2.66455539, fl.Drive.Impulse, 1e-5)
	assert.InEpsilon(t, 0.241979, fl.Burnout.Time, 1e-4)
}

// A motor held pushes as its curve says; a launch tube is left away.
func TestHeldMotorAndTube(t *testing.T) {
	fl := held(t, "heron", func(r *rocket.Rocket) { r.Power = rocket.MotorPower })
	c := fl.Rocket.Motor.Curve
	assert.InEpsilon(t, c.Impulse(), fl.Drive.Impulse, 1e-12)
	for _, at := range []float64{0.1, 0.5, 1} {
		assert.InDelta(t, c.Thrust(at), fl.At(at).Thrust, 1e-9)
		assert.Zero(t, fl.At(at).Speed)
	}
	fl = held(t, "tube", nil)
	assert.Nil(t, fl.Rocket.Water.Tube)
	assert.True(t, fl.LiquidOut.Happened)
	assert.Greater(t, fl.Max.Thrust, 0.0)
	most := 0.0
	for _, s := range fl.Trace() {
		if s.Time >= fl.Max.ThrustTime {
			most = math.Max(most, s.Thrust)
		}
	}
	assert.InEpsilon(t, most, fl.Max.Thrust, 0.02)
}
