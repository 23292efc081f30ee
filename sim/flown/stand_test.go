package flown

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate"

	"ullage/sim"
	"ullage/sim/flown/logfile"
	"ullage/sim/long"
	"ullage/sim/report"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/thrust"
)

// cell writes what a load cell reads of a rocket that is held: kilograms of force, tared
// anywhere, drifting, and counting the other way round if it is so mounted.
func cell(t testing.TB, r *rocket.Rocket, values map[string]float64, mount Mount, flip bool, withChamber bool) []byte {
	t.Helper()
	r = r.Clone()
	for name, v := range values {
		in, err := rocketfile.Find(r, name)
		require.NoError(t, err)
		require.NoError(t, in.Set(r, v))
	}
	fl, err := sim.Fly(context.Background(), r, sim.Options{Keep: true, Held: true})
	require.NoError(t, err)
	rng := rand.New(rand.NewPCG(3, 4))
	gravity := newAir(r.Site).column.Gravity(0)
	full := fl.At(0).Mass
	var b bytes.Buffer
	b.WriteString("time_ms,load_kg,chamber_bar\n")
	const hertz, onset = 500, 2.003
	for i := range int((onset + fl.Duration() + 3) * hertz) {
		at := float64(i) / hertz
		since := at - onset
		s := fl.At(math.Max(since, 0))
		reading, pressure := 0.0, r.Site.Pressure
		if since >= 0 {
			reading = mount.weighs() * (s.Mass - full) * gravity
			if since <= fl.Duration() {
				reading += s.Thrust
			}
			pressure = math.Max(s.Chamber-s.Air, 0)
		} else if r.Water != nil {
			pressure = r.Water.Pressure
		}
		reading += 2.5 + 0.3*rng.NormFloat64() + 0.4*math.Min(math.Max(since/fl.Duration(), 0), 1)
		if flip {
			reading = -reading
		}
		if !withChamber {
			pressure = 0
		}
		fmt.Fprintf(&b, "%.3f,%.4f,%.3f\n", 1000*at, reading/9.80665, pressure/1e5+0.003*rng.NormFloat64())
	}
	return b.Bytes()
}

func stand(t testing.TB, text []byte, r *rocket.Rocket, mount Mount) *Stand {
	t.Helper()
	log, err := logfile.Read("stand.csv", text, logfile.Options{})
	require.NoError(t, err)
	s, err := ReadStand(context.Background(), log, r, mount, Options{})
	require.NoError(t, err)
	return s
}

func TestStandOnWater(t *testing.T) {
	long.Unraced(t)
	f := open(t, "wagtail")
	r := f.Rocket()
	truth := map[string]float64{"water.discharge": 0.955, "water.exponent": 1.22}
	for _, flip := range []bool{false, true} {
		s := stand(t, cell(t, r, truth, NozzleDown, flip, true), r, "")
		want, err := sim.Fly(context.Background(), withValues(t, r, truth), sim.Options{Keep: true, Held: true})
		require.NoError(t, err)
		assert.Equal(t, NozzleDown, s.Mount)
		assert.Equal(t, flip, s.Flipped)
		assert.InEpsilon(t, want.Drive.Impulse, s.Impulse, 0.01)
		assert.InEpsilon(t, want.Max.Thrust, s.Peak, 0.06)
		assert.InDelta(t, 0.4, s.Drift, 0.1)
		assert.InDelta(t, 900e3, s.Start, 2e3)
		assert.InDelta(t, 2.0, s.Onset, 0.01)
		assert.Empty(t, s.Class)
		spreads, err := Vary(r, study.Spreads(f), StandInputs())
		require.NoError(t, err)
		got, err := Fit(context.Background(), []Logged{*s.Logged}, spreads)
		require.NoError(t, err)
		for _, in := range got.Inputs {
			v := truth[in.Input.Name]
			assert.InDelta(t, v, in.Value, 0.004, in.Input.Name)
			assert.Less(t, math.Abs(in.Value-v), 4*in.SD, in.Input.Name)
			t.Logf("%s %v ± %v", in.Input.Name, in.Value, in.SD)
		}
		assert.InDelta(t, 2.003, got.Logs[0].Release, 0.001)
	}
	log, err := logfile.Read("stand.csv", cell(t, r, nil, NozzleDown, false, false), logfile.Options{})
	require.NoError(t, err)
	_, err = ReadStand(context.Background(), log, r, Lying, Options{})
	assert.ErrorContains(t, err, "nozzle down")
}

func withValues(t testing.TB, r *rocket.Rocket, values map[string]float64) *rocket.Rocket {
	r = r.Clone()
	for name, v := range values {
		in, err := rocketfile.Find(r, name)
		require.NoError(t, err)
		require.NoError(t, in.Set(r, v))
	}
	return r
}

// A motor's test gives its curve back, whichever way it stood, and the curve flies.
func TestStandOfAMotor(t *testing.T) {
	long.Unraced(t)
	r := open(t, "heron").Rocket()
	r.Power = rocket.MotorPower
	c := r.Motor.Curve
	for _, mount := range []Mount{Lying, NozzleUp, NozzleDown} {
		s := stand(t, cell(t, r, nil, mount, false, false), r, mount)
		assert.InEpsilon(t, c.Impulse(), s.Impulse, 0.01, mount)
		assert.InEpsilon(t, c.Peak(), s.Peak, 0.03, mount)
		assert.InEpsilon(t, c.BurnTime(), s.BurnTime, 0.02, mount)
		assert.InEpsilon(t, c.Average(), s.Average, 0.03, mount)
		assert.Equal(t, thrust.Class(c.Impulse()), s.Class)
		points := s.Curve()
		require.NotEmpty(t, points)
		assert.Less(t, len(points), 200)
		read, err := thrust.NewCurve(points)
		require.NoError(t, err)
		assert.InEpsilon(t, s.Impulse, read.Impulse(), 0.005)
		flies := r.Clone()
		flies.Motor.Curve = read
		fl, err := sim.Fly(context.Background(), flies, sim.Options{})
		require.NoError(t, err)
		want, err := sim.Fly(context.Background(), r, sim.Options{})
		require.NoError(t, err)
		assert.InEpsilon(t, want.Apogee.Height, fl.Apogee.Height, 0.02)
	}
}

func TestNoBurn(t *testing.T) {
	r := open(t, "wagtail").Rocket()
	rng := rand.New(rand.NewPCG(1, 1))
	var at, f []float64
	for i := range 300 {
		at, f = append(at, float64(i)/100), append(f, 0.2*rng.NormFloat64())
	}
	log, err := logfile.Read("stand.csv", csv("time_s,thrust_n", at, f), logfile.Options{})
	require.NoError(t, err)
	_, err = ReadStand(context.Background(), log, r, "", Options{})
	assert.ErrorContains(t, err, "shows no burn")
	log, err = logfile.Read("stand.csv", csv("time_s,height_m", at, f), logfile.Options{})
	require.NoError(t, err)
	_, err = ReadStand(context.Background(), log, r, "", Options{})
	assert.ErrorContains(t, err, "--column 'thrust=2 N'")
}

// What fly --held --csv writes reads back as what it was made from.
func TestStandOfOwnSamples(t *testing.T) {
	for _, power := range []rocket.Power{rocket.WaterPower, rocket.MotorPower} {
		name := map[rocket.Power]string{rocket.WaterPower: "wagtail", rocket.MotorPower: "heron"}[power]
		r := open(t, name).Rocket()
		r.Power = power
		fl, err := sim.Fly(context.Background(), r, sim.Options{Keep: true, Held: true})
		require.NoError(t, err)
		var b bytes.Buffer
		require.NoError(t, report.WriteCSV(&b, fl, results.Over(), 0.001))
		s := stand(t, b.Bytes(), r, "")
		assert.True(t, s.Own)
		assert.False(t, s.Begun)
		assert.Zero(t, s.Tare)
		assert.Zero(t, s.Drift)
		assert.Zero(t, s.Onset)
		assert.InEpsilon(t, s.Expected.Impulse, s.Impulse, 1e-6, name)
		assert.InEpsilon(t, fl.Drive.Impulse, s.Impulse, 0.06, name) // what the gas pushes below 5 % of the peak is left out
		assert.InEpsilon(t, s.Expected.Peak, s.Peak, 1e-6, name)
		assert.InEpsilon(t, s.Expected.BurnTime, s.BurnTime, 1e-6, name)
	}
}

// A log that begins in the burn has its zero from the rest after it, less the weight that has left by then.
func TestStandThatBeginsInTheBurn(t *testing.T) {
	long.Unraced(t)
	for _, at := range []float64{2.003, 2.02, 2.05} {
		for _, flip := range []bool{false, true} {
			r := open(t, "wagtail").Rocket()
			log, err := logfile.Read("stand.csv", cell(t, r, nil, NozzleDown, flip, true), logfile.Options{})
			require.NoError(t, err)
			whole, err := ReadStand(context.Background(), log, r, "", Options{})
			require.NoError(t, err)
			assert.False(t, whole.Begun)
			s, err := ReadStand(context.Background(), log, r, "", Options{From: at, To: math.Inf(1)})
			require.NoError(t, err)
			assert.True(t, s.Begun, at)
			assert.Equal(t, flip, s.Flipped)
			want := 2.5 + 0.4 // the cell's zero and what it drifts
			if flip {
				want = -want
			}
			assert.InDelta(t, want, s.Tare, 0.3, at)
			assert.Zero(t, s.Drift)
			assert.Contains(t, s.Notes.Error(), "begins in the burn")
			f := series{whole.T, whole.F}.between(at-whole.Onset, math.Inf(1))
			assert.InEpsilon(t, integrate.Trapezoidal(f.t, f.y), s.Impulse, 0.03, at)
		}
	}
}

// A log without any rest has no zero, which is said.
func TestStandWithoutRest(t *testing.T) {
	r := open(t, "wagtail").Rocket()
	log, err := logfile.Read("stand.csv", cell(t, r, nil, NozzleDown, false, true), logfile.Options{})
	require.NoError(t, err)
	s, err := ReadStand(context.Background(), log, r, "", Options{From: 2.01, To: 2.1})
	require.NoError(t, err)
	assert.True(t, s.Begun)
	assert.Zero(t, s.Tare)
	assert.Contains(t, s.Notes.Error(), "its zero is not known")
}

// A trace in closed form: adiabatic blow-down through a choked throat, 2 L at 500 kPa and 288.15 K, 9 mm (Shapiro 1953,
// chapter 4, from memory): p = p₀·s⁻⁷ with s = 1 + 0.2·t/τ and τ = V/(A·a₀·(5/6)³), and the thrust of a convergent
// nozzle A·(2.4·(5/6)^3.5·p − p_a), up to the end of choking at p_a/(5/6)^3.5, where a valve shuts.
func TestStandOfABlowDown(t *testing.T) {
	const (
		volume, p0, air, kelvin = 0.002, 500e3, 101325.0, 288.15
		area                    = math.Pi / 4 * 0.009 * 0.009
		hertz, onset            = 2000.0, 1.0
	)
	r := open(t, "bottle").Rocket()
	w := r.Water
	w.Volume, w.Fill, w.Throat, w.Bore, w.Discharge, w.Exponent, w.Expansion = volume, 0, 0.009, 0.1, 1, 1.4, ""
	w.Pressure, w.Temperature = p0-air, kelvin
	r.Site.Elevation, r.Site.Pressure, r.Site.Temperature = 0, air, kelvin
	critical := math.Pow(5.0/6, 3.5)
	tau := volume / (area * math.Sqrt(1.4*287.05287*kelvin) * math.Pow(5.0/6, 3))
	end := 5 * tau * (math.Pow(critical*p0/air, 1.0/7) - 1)
	impulse := area * (2.4*critical*p0*5*tau/6*(1-math.Pow(1+0.2*end/tau, -6)) - air*end)
	var at, f []float64
	for i := range int(3 * hertz) {
		since := float64(i)/hertz - onset
		reading := 1.7 // the tare
		if since >= 0 && since <= end {
			reading += area * (2.4*critical*p0*math.Pow(1+0.2*since/tau, -7) - air)
		}
		at, f = append(at, float64(i)/hertz), append(f, reading+0.001*float64(i%3-1))
	}
	s := stand(t, csv("time_s,thrust_n", at, f), r, "")
	assert.InDelta(t, 33.8833843, s.Peak, 0.4)    // smoothed over a few samples
	assert.InEpsilon(t, impulse, s.Impulse, 0.01) // what the gas weighs is taken off by the model
	assert.InDelta(t, end, s.BurnTime, 2/hertz)
	assert.InDelta(t, 1.7, s.Tare, 0.01)
	assert.InEpsilon(t, 33.8833843, s.Expected.Peak, 0.02)
	t.Log(end, impulse, s.Impulse, s.Peak, s.Expected.Peak)
}
