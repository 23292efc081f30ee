package gates

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/long"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// Every row that follows from a warning, on both sides of its limit: what can be worked out
// by hand is, and the rest is read off the flight.
func TestRowsBesideWarnings(t *testing.T) {
	long.Unraced(t)
	after := func(trigger rocket.Trigger, v float64) func(r *rocket.Rocket) {
		return func(r *rocket.Rocket) {
			r.Canopies[0].Water = rocket.Rule{Trigger: trigger, Value: v}
			r.Canopies[0].Motor = r.Canopies[0].Water
		}
	}
	// Of the heron, flown as it is.
	heron, err := sim.Fly(context.Background(), open(t, "heron"), sim.Options{})
	require.NoError(t, err)
	thrustEnds, top := heron.Burnout.Time, heron.Apogee.Height
	for _, test := range []struct {
		name, of, key string
		set           func(r *rocket.Rocket)
		value         float64 // NaN: whatever it comes to
		word          string
	}{
		// Depth of the liquid around the tube: 0.27 × 2.6 L over π/4 (88² − 21.4²) mm² are
		// 122.7 mm, 0.32283 of the tube's 380 mm.
		{"a dry tube", "tube", "tube-tip", func(*rocket.Rocket) {}, 0.27 * 2.6e-3 / (math.Pi / 4 * (0.088*0.088 - 0.0214*0.0214)) / 0.38, WordGood},
		{"a hand", "tube", "tube-tip", func(*rocket.Rocket) {}, 0.32283, WordGood},
		{"a wet tube", "tube", "tube-tip", func(r *rocket.Rocket) { r.Water.Tube.Length = 0.12 }, 0.12267 / 0.12, WordWet},
		{"wet to the tip", "tube", "tube-tip", func(r *rocket.Rocket) { r.Water.Fill = 0.9 }, 0.9 / 0.27 * 0.32283, WordWet},
		// (21.7 − 21.4)/2 = 0.15 mm a side; (22.4 − 21.4)/2 = 0.5 is the most.
		{"a piston", "tube", "tube-gap", func(*rocket.Rocket) {}, 0.15e-3, WordGood},
		{"just a piston", "tube", "tube-gap", func(r *rocket.Rocket) { r.Water.Throat = 22.4e-3 }, 0.5e-3, WordGood},
		{"no piston", "tube", "tube-gap", func(r *rocket.Rocket) { r.Water.Throat = 22.5e-3 }, 0.55e-3, WordLarge},
		{"a table that reaches", "tube", "drag-reach", func(*rocket.Rocket) {}, math.NaN(), WordGood},
		{"a table that ends", "tube", "drag-reach", func(r *rocket.Rocket) { r.Body.Drag[1].Mach, r.Body.Drag[2].Mach = 0.01, 0.02 }, math.NaN(), WordHigh},
		{"a constant", "heron", "drag-reach", func(*rocket.Rocket) {}, heron.Max.Mach, WordGood},
		{"due as the thrust ends", "heron", "opening-free.main", after(rocket.AfterBurnout, 0), 0, WordGood},
		{"due a moment later", "heron", "opening-free.main", after(rocket.AfterBurnout, 0.25), 0.25, WordGood},
		{"due under thrust", "heron", "opening-free.main", after(rocket.AfterLaunch, thrustEnds-0.1), -0.1, WordEarly},
		{"due on the rail", "heron", "opening-free.main", after(rocket.AfterLaunch, 0.01), 0.01 - thrustEnds, WordEarly},
		{"set under the top", "heron", "opening-place.main", after(rocket.Falling, 100), top - 100, WordGood},
		{"set over the top", "heron", "opening-place.main", after(rocket.Falling, top+50), -50, WordLow},
		{"fills in time", "heron", "opening-full.main", after(rocket.Falling, 100), math.NaN(), WordGood},
		{"fills too late", "heron", "opening-full.main", after(rocket.Falling, 3), math.NaN(), WordPartial},
		{"never opens", "heron", "opening.main", after(rocket.Never, 0), math.NaN(), WordNever},
		{"in its turn", "drogue-main", "opening-turn.main.drogue", func(*rocket.Rocket) {}, math.NaN(), WordGood},
		{"both at once", "drogue-main", "opening-turn.main.drogue", together(1, 1), 0, WordGood},
		{"the main first", "drogue-main", "opening-turn.main.drogue", together(3, 1), -2, WordEarly},
		{"after thrust", "heron", "landing-thrust", func(*rocket.Rocket) {}, heron.Landing.Time - thrustEnds, WordGood},
		{"under thrust", "heron", "landing-thrust", mischief[sim.LandedThrusting].set, math.NaN(), WordLeft},
		{"straight", "heron", "attack-most", func(*rocket.Rocket) {}, heron.Stability.MaxAngle, WordGood},
		{"just straight", "heron", "attack-most", func(r *rocket.Rocket) { r.Limits.AttackMost = heron.Stability.MaxAngle }, heron.Stability.MaxAngle, WordGood},
		{"not straight", "heron", "attack-most", func(r *rocket.Rocket) { r.Limits.AttackMost = heron.Stability.MaxAngle * 0.99 }, heron.Stability.MaxAngle, WordHigh},
		{"tumbling", "heron", "attack-most", mischief[sim.Tumbles].set, math.NaN(), WordHigh},
		{"a point mass", "heron", "attack-most", func(r *rocket.Rocket) { r.Model = rocket.PointModel }, math.NaN(), WordOpen},
	} {
		t.Run(test.name, func(t *testing.T) {
			r := open(t, test.of)
			test.set(r)
			v := judge(t, r, Options{})
			c := find(t, &v, test.key)
			assert.Equal(t, test.word, c.Word, "%v", c.Value)
			assert.Equal(t, test.word == WordGood, c.Pass)
			assert.Equal(t, test.word != WordGood && test.word != WordOpen, c.Fails())
			if !math.IsNaN(test.value) {
				assert.InDelta(t, test.value, c.Values[results.Day].V, 1e-3*math.Max(math.Abs(test.value), 0.1))
			}
		})
	}
}

// together has a drogue and a main open so many seconds after the top.
func together(drogue, main float64) func(r *rocket.Rocket) {
	return func(r *rocket.Rocket) {
		for i, v := range []float64{drogue, main} {
			rule := rocket.Rule{Trigger: rocket.AfterApogee, Value: v}
			r.Canopies[i].Water, r.Canopies[i].Motor = rule, rule
		}
	}
}

// A wind that no day of the file has is looked at too: what is straight in calm air and
// turns broadside on the day is a no-go, whichever of the two is worse.
func TestAttackInEveryCase(t *testing.T) {
	long.Unraced(t)
	r := open(t, "heron")
	v := judge(t, r, all(r))
	c := find(t, &v, "attack-most")
	for _, k := range []results.Case{results.Calm, results.Day, results.Corner} {
		assert.True(t, c.Values[k].Flown && c.Values[k].Known, "%s", k)
	}
	assert.Greater(t, c.Values[results.Corner].V, c.Values[results.Day].V)
	r.Limits.AttackMost = (c.Values[results.Corner].V + c.Values[results.Day].V) / 2
	v = judge(t, r, all(r))
	c = find(t, &v, "attack-most")
	assert.True(t, c.Fails())
	assert.Equal(t, results.Corner, c.Case)
}

// Of a mount with a strength left out nothing is known: it may be the weakest. A stated 0
// says that there is no such part.
func TestMountUnstated(t *testing.T) {
	for _, key := range []string{"recovery.line", "recovery.pin", "recovery.bond_area"} {
		f, err := rocketfile.Open("../../testdata/heron.toml")
		require.NoError(t, err)
		r := f.Rocket().Clone()
		m := r.Recovery
		switch key {
		case "recovery.line":
			m.Line = 0
		case "recovery.pin":
			m.Pin = 0
		default:
			m.BondArea = 0
		}
		v := judge(t, r, Options{})
		c := find(t, &v, "opening-load.main")
		assert.False(t, c.Judged || c.Pass, key)
		assert.Equal(t, []string{key}, c.Remedies[0].Keys)
		assert.Equal(t, WordOpen, v.Word())

		m.Line = 1e-3 * c.Value // of what is known too weak: that fails whatever else holds
		if key != "recovery.line" {
			v = judge(t, r, Options{})
			assert.True(t, find(t, &v, "opening-load.main").Fails(), key)
		}

		f, err = f.Set(key, map[string]string{"recovery.line": "0 N", "recovery.pin": "0 mm", "recovery.bond_area": "0 cm2"}[key])
		require.NoError(t, err)
		v = judge(t, f.Rocket(), Options{})
		// A rocket without a pin or a bond there is; one without a line is not judged.
		assert.Equal(t, key != "recovery.line", find(t, &v, "opening-load.main").Pass, key)
	}
}
