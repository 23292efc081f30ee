package study

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

func openings(t *testing.T, r *rocket.Rocket) ([]Delay, int) {
	t.Helper()
	values, err := OpeningValues(background, r, 0, Options{})
	require.NoError(t, err)
	require.True(t, slices.IsSorted(values))
	delays, best, err := Opening(background, r, 0, values, Options{})
	require.NoError(t, err)
	require.Len(t, delays, len(values))
	for i, d := range delays {
		require.Equal(t, values[i], d.Value)
	}
	return delays, best
}

// A motor's delays: whole seconds and those that can be had, and the best of these by
// the least airspeed.
func TestDelaysOfMotor(t *testing.T) {
	r := motored()
	r.Motor.Delays = []float64{6, 9.5, 12}
	r.Motor.Delay = 7
	delays, best := openings(t, r)
	var whole, listed int
	for _, d := range delays {
		alone := flown(t, with(t, r, "motor.delay", d.Value))
		c := alone.Canopies[0]
		require.Equal(t, []float64{c.Airspeed, c.Height, c.Load, c.LoadBound}, []float64{d.Airspeed, d.Height, d.Load, d.LoadBound})
		require.InDelta(t, alone.Burnout.Time+d.Value, c.Time, 1e-9)
		if d.Value == math.Trunc(d.Value) {
			whole++
		}
		if d.Listed {
			listed++
			require.Contains(t, r.Motor.Delays, d.Value)
			require.GreaterOrEqual(t, d.Airspeed, delays[best].Airspeed)
		}
	}
	require.Equal(t, 3, listed)
	require.GreaterOrEqual(t, whole, 8)
	require.True(t, delays[best].Listed)

	r.Motor.Delays = nil
	delays, best = openings(t, r)
	for i, d := range delays {
		require.False(t, d.Listed)
		require.GreaterOrEqual(t, d.Airspeed, delays[best].Airspeed, "%d", i)
	}
}

// The least airspeed is near the top, and the time since the top is since the one that
// an early canopy does not cut short.
func TestTimers(t *testing.T) {
	for _, rule := range []rocket.Rule{{Trigger: rocket.AfterApogee, Value: 1}, {Trigger: rocket.AfterLaunch, Value: 5}, {Trigger: rocket.AfterBurnout, Value: 4}} {
		r := bottle()
		r.Canopies[0].Water = rule
		delays, best := openings(t, r)
		require.InDelta(t, 0, delays[best].SinceTop, 0.5)
		for i, d := range delays {
			require.Equal(t, d.Value == math.Trunc(2*d.Value)/2, true)
			if d.Early {
				continue // it may have waited for the rail's end
			}
			if i > 0 && !delays[i-1].Early {
				require.InDelta(t, 0.5, d.SinceTop-delays[i-1].SinceTop, 1e-6)
			}
			if rule.Trigger == rocket.AfterApogee {
				require.InDelta(t, d.Value, d.SinceTop, 1e-6)
			}
		}
	}
}

// What opens under thrust is never the best.
func TestEarlyIsNotBest(t *testing.T) {
	r := bottle()
	r.Canopies[0].Water = rocket.Rule{Trigger: rocket.AfterLaunch, Value: 3}
	delays, best, err := Opening(background, r, 0, []float64{0, 0.02, 1}, Options{})
	require.NoError(t, err)
	require.True(t, delays[1].Early)
	require.Equal(t, 2, best)
	_, best, err = Opening(background, r, 0, []float64{0, 0.02}, Options{})
	require.NoError(t, err)
	require.Equal(t, -1, best)
	delays, best, err = Opening(background, r, 0, []float64{500}, Options{})
	require.NoError(t, err)
	require.False(t, delays[0].Opened, "it has landed by then")
	require.Equal(t, -1, best)
	require.Greater(t, delays[0].Landing.Vertical, 15.0)
}

// By height, the lowest that leaves 5 s under the full canopy.
func TestHeights(t *testing.T) {
	r := motored()
	r.Canopies[0].Motor = rocket.Rule{Trigger: rocket.Falling, Value: 100}
	delays, best := openings(t, r)
	require.GreaterOrEqual(t, best, 0)
	at := delays[best].Flight
	require.GreaterOrEqual(t, at.Landing.Time-at.Canopies[0].FullTime, 5.0)
	for _, d := range delays[:best] {
		require.Less(t, d.Landing.Time-d.Flight.Canopies[0].FullTime, 5.0)
	}
	delays, best, err := Opening(background, r, 0, []float64{1, 2, 3}, Options{})
	require.NoError(t, err)
	require.Equal(t, -1, best)
	require.Len(t, delays, 3)
}

func TestOpeningFaults(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	for want, c := range map[string]struct {
		canopy int
		rule   rocket.Rule
		values []float64
	}{
		"no such canopy":     {1, rocket.Rule{Trigger: rocket.AfterApogee}, nil},
		"no such canopy ":    {-1, rocket.Rule{Trigger: rocket.AfterApogee}, nil},
		"never opens":        {0, rocket.Rule{}, nil},
		"waits for a charge": {0, rocket.Rule{Trigger: rocket.Ejection}, nil},
		"too large":          {0, rocket.Rule{Trigger: rocket.AfterApogee}, []float64{1, 1e6}},
		"not a finite":       {0, rocket.Rule{Trigger: rocket.AfterApogee}, []float64{math.NaN()}},
	} {
		r.Canopies[0].Water = c.rule
		_, best, err := Opening(background, r, c.canopy, c.values, Options{})
		require.ErrorContains(t, err, want[:len(want)-1])
		require.IsType(t, fault.List{}, err)
		require.Equal(t, -1, best)
	}
	r.Canopies[0].Water = rocket.Rule{Trigger: rocket.AfterApogee}
	r.Body.Mass = 200
	values, err := OpeningValues(background, r, 0, Options{})
	require.NoError(t, err)
	require.Empty(t, values, "it never leaves the rail")
	r.Body.Mass = -1
	_, err = OpeningValues(background, r, 0, Options{})
	require.ErrorContains(t, err, "body.mass")
}

// drogued is the starter on its motor with a drogue that the charge opens and a main lower down.
func drogued() *rocket.Rocket {
	r := motored()
	r.Canopies[0].Motor = rocket.Rule{Trigger: rocket.Falling, Value: 150}
	r.Canopies = append(r.Canopies, rocket.Canopy{Name: "drogue", Diameter: 0.4, Coefficient: 0.75, FillConstant: 8, OpeningForceCoefficient: 1.7,
		Motor: rocket.Rule{Trigger: rocket.Ejection}})
	return r
}

// The best of a drogue is before its main, and of a main after its drogue, whatever is slower.
func TestBestKeepsTheOrder(t *testing.T) {
	r := drogued()
	require.True(t, r.Precedes(1, 0))
	require.False(t, r.Precedes(0, 1))
	r.Motor.Delays = nil
	top := flown(t, with(t, r, "motor.delay", 60)).Apogee.Time
	r.Canopies[0].Motor = rocket.Rule{Trigger: rocket.AfterLaunch, Value: top - 4}
	delays, best, err := Opening(background, r, 1, []float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}, Options{})
	require.NoError(t, err)
	least, turned := math.Inf(1), 0
	for i, d := range delays {
		drogue, main := d.Flight.Canopies[1], d.Flight.Canopies[0]
		require.Equal(t, drogue.Opened && main.Opened && drogue.Time > main.Time, d.OutOfTurn, "%g s", d.Value)
		if d.OutOfTurn {
			turned++
			require.NotEqual(t, i, best)
			least = math.Min(least, d.Airspeed)
		}
	}
	require.Positive(t, turned)
	require.GreaterOrEqual(t, best, 0)
	require.Less(t, least, delays[best].Airspeed, "under the main it would open slower")

	main, best, err := Opening(background, r, 0, []float64{0.5, top - 4, top - 1, top, top + 1}, Options{})
	require.NoError(t, err)
	require.True(t, main[0].OutOfTurn)
	require.False(t, main[best].OutOfTurn)
}

// Each canopy alone and all of them together are early, late and never; who keeps to its rule
// opens by it, and never is a fall nose first.
func TestWhatIfsOfSeveral(t *testing.T) {
	r := drogued()
	cases, err := WhatIfs(background, r, 1, Options{})
	require.NoError(t, err)
	require.Len(t, cases, 1+3*len(failures))
	plan := cases[0].Flight
	require.True(t, plan.Canopies[0].Opened && plan.Canopies[1].Opened)
	find := func(canopy int, c WhatIfCase) *WhatIf {
		for i := range cases {
			if cases[i].Canopy == canopy && cases[i].Case == c {
				return &cases[i]
			}
		}
		t.Fatalf("no case %d %s", canopy, c)
		return nil
	}
	late := find(1, LateBy1s)
	require.InDelta(t, plan.Canopies[1].Time+1, late.Flight.Canopies[1].Time, 1e-6)
	require.InDelta(t, 150, late.Flight.Canopies[0].Height, 1e-3, "the main keeps to its height")
	require.Equal(t, "the rule counts no seconds", find(0, LateBy20).Problem)

	alone := find(1, NotAtAll)
	require.False(t, alone.Ballistic())
	require.Greater(t, alone.Flight.Canopies[0].Airspeed, 3*plan.Canopies[0].Airspeed, "the main opens at the speed of the fall")
	require.InDelta(t, plan.Apogee.Height, alone.Flight.Apogee.Height, 5, "the way up is its own model's")

	both := find(AllCanopies, LateBy1s).Flight
	require.InDelta(t, plan.Canopies[1].Time+1, both.Canopies[1].Time, 1e-6)
	through := find(1, LateBy1s).Flight.Canopies[0].Time
	require.InDelta(t, through+1, both.Canopies[0].Time, 1e-3, "a second later than it would have opened after a late drogue")
	require.NotNil(t, find(AllCanopies, LateBy20).Flight, "that of the drogue alone")

	drogue, undisturbed := plan.Canopies[1], find(0, NotAtAll).Flight.Canopies[1]
	require.Equal(t, [3]float64{drogue.Time, drogue.Height, drogue.Airspeed}, [3]float64{undisturbed.Time, undisturbed.Height, undisturbed.Airspeed},
		"the main's failure is none of the drogue's, which opens before it")

	fall := find(AllCanopies, NotAtAll)
	require.True(t, fall.Ballistic())
	point := r.Clone()
	point.Model = rocket.PointModel
	point.Canopies = nil
	require.InEpsilon(t, flown(t, point).Landing.Vertical, fall.Flight.Landing.Vertical, 0.02, "nose first")
	require.NotEqual(t, flown(t, point).Apogee, fall.Flight.Apogee)
}

func TestWhatIfs(t *testing.T) {
	r := motored()
	cases, err := WhatIfs(background, r, 0, Options{})
	require.NoError(t, err)
	plan := cases[0].Flight.Canopies[0]
	for i, want := range []struct {
		name  WhatIfCase
		shift float64
	}{{AsPlanned, 0}, {EarlyBy1s, -1}, {LateBy1s, 1}, {LateBy20, 0.2 * r.Motor.Delay}} {
		c := cases[i]
		require.Equal(t, want.name, c.Case)
		require.True(t, c.Opened)
		require.InDelta(t, want.shift, c.Shift, 1e-9)
		require.InDelta(t, plan.Time+want.shift, c.Opens, 1e-6)
		require.InDelta(t, cases[0].Flight.Landing.Vertical, c.Flight.Landing.Vertical, 0.01, "it lands as softly")
	}
	never := cases[4]
	require.Equal(t, NotAtAll, never.Case)
	require.False(t, never.Opened)
	require.Greater(t, never.Flight.Landing.Vertical, 30.0)

	r.Canopies[0].Motor = rocket.Rule{Trigger: rocket.Falling, Value: 150}
	cases, err = WhatIfs(background, r, 0, Options{})
	require.NoError(t, err)
	require.Equal(t, "the rule counts no seconds", cases[3].Problem)
	require.Nil(t, cases[3].Flight)
	require.InDelta(t, 1, cases[2].Opens-cases[0].Opens, 1e-6)

	r.Canopies[0].Motor = rocket.Rule{Trigger: rocket.AfterLaunch, Value: 500}
	cases, err = WhatIfs(background, r, 0, Options{Workers: 1})
	require.NoError(t, err)
	for _, c := range cases[1:4] {
		require.Equal(t, "it does not open as planned", c.Problem)
	}
	_, err = WhatIfs(background, r, 7, Options{})
	require.IsType(t, fault.List{}, err)
}
