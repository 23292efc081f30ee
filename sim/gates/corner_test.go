package gates

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/long"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

func spreads(t *testing.T, r *rocket.Rocket, stated map[string]string) []study.Spread {
	t.Helper()
	var out []study.Spread
	for name, sd := range stated {
		s, err := rocketfile.ParseSpread(r, name, sd)
		require.NoError(t, err)
		out = append(out, s)
	}
	return out
}

// What is uncertain by itself is at its deviation in the corner.
func TestCornerOfOneInput(t *testing.T) {
	r := open(t, "heron")
	v := judge(t, r, Options{Spreads: spreads(t, r, map[string]string{"wind.speed": "0.7 m/s", "rail.tilt": "1.5 deg"})})
	wind, tilt := find(t, &v, "wind"), find(t, &v, "tilt")
	assert.InDelta(t, 3.7, wind.Value, 1e-12)
	assert.InDelta(t, 0.7, wind.SD, 1e-12)
	assert.Equal(t, results.Corner, wind.Case)
	assert.InDelta(t, 3.5*math.Pi/180, tilt.Value, 1e-12)
}

// The corner of the rail exit speed, set by hand: heavier, less pressure, a worse nozzle.
// What has no say stays as it is.
func TestCornerByHand(t *testing.T) {
	r := open(t, "heron")
	v := judge(t, r, Options{Spreads: spreads(t, r, map[string]string{
		"body.mass": "20 g", "water.pressure": "0.3 bar", "water.discharge": "0.01", "canopy.main.coefficient": "0.1"})})
	hand := r.Clone()
	hand.Body.Mass += 0.020
	hand.Water.Pressure -= 0.3e5
	hand.Water.Discharge -= 0.01
	fl, err := sim.Fly(context.Background(), hand, sim.Options{})
	require.NoError(t, err)
	assert.InDelta(t, fl.RailExit.Speed, find(t, &v, "rail-exit").Values[results.Corner].V, 1e-9)
	hand.Canopies[0].Coefficient -= 0.1
	for name, lighter := range map[string]bool{"heavy": false, "light": true} {
		t.Run(name, func(t *testing.T) {
			// Landing is harder with more mass; the ceiling is nearer with less.
			x := hand.Clone()
			if lighter {
				x.Body.Mass = r.Body.Mass - 0.020
				x.Water.Pressure, x.Water.Discharge = r.Water.Pressure+0.3e5, r.Water.Discharge+0.01
				fl, err := sim.Fly(context.Background(), x, sim.Options{})
				require.NoError(t, err)
				assert.InEpsilon(t, fl.Apogee.Height, find(t, &v, "ceiling").Values[results.Corner].V, 1e-3)
				return
			}
			fl, err := sim.Fly(context.Background(), x, sim.Options{})
			require.NoError(t, err)
			assert.InEpsilon(t, fl.Landing.Vertical, find(t, &v, "landing").Values[results.Corner].V, 1e-3)
		})
	}
}

// The corner is no better than the day, the calm or any single deviation.
func TestCornerIsWorst(t *testing.T) {
	long.Unraced(t)
	for _, name := range []string{"heron", "bottle", "mass-list", "drogue-main"} {
		t.Run(name, func(t *testing.T) {
			r := open(t, name)
			own := study.DefaultSpread(r)
			v := judge(t, r, Options{Spreads: own})
			var flights []*sim.Flight
			for i := range own {
				for _, sign := range []int8{1, -1} {
					fl, err := sim.Fly(context.Background(), single(own, i, sign).off(r), sim.Options{})
					require.NoError(t, err)
					flights = append(flights, fl)
				}
			}
			seen := 0
			for i, g := range criteriaOf(r, today) {
				c := &v.Checks[i]
				if g.still || g.value == nil {
					continue
				}
				day := c.Values[results.Day].V
				for _, fl := range flights {
					x := g.look(fl)
					// Slopes are not all there is: inputs may bear on each other by a little.
					slack := 0.05*math.Abs(x.V-day) + 1e-6*math.Abs(day) + 1e-9
					assert.LessOrEqual(t, g.limit.badness(x), g.limit.badness(c.Values[results.Corner])+slack, "%s %s", g.key, c.Name)
					seen++
				}
			}
			assert.Greater(t, seen, 100)
		})
	}
}

// The deviation by slopes against the closed form of a settled descent,
// v = √(2 m g/(ρ C_D S)): half of what mass and coefficient are uncertain by.
func TestDeviationOfTheLanding(t *testing.T) {
	r := open(t, "heron")
	r.Wind.Speed = 0
	v := judge(t, r, Options{Spreads: spreads(t, r, map[string]string{"body.mass": "6.2 g", "canopy.main.coefficient": "0.0375"})})
	c := find(t, &v, "landing")
	mass := v.Day.Landing.Energy * 2 / (v.Day.Landing.Speed * v.Day.Landing.Speed)
	want := 0.5 * math.Hypot(0.0062/mass, 0.05) * c.Values[results.Day].V
	assert.InEpsilon(t, want, c.SD, 2e-3)
	assert.InEpsilon(t, c.Values[results.Day].V*math.Sqrt((1+0.0062/mass)/0.95), c.Values[results.Corner].V, 1e-3)
}

// An input stays in its range.
func TestCornerStaysInRange(t *testing.T) {
	r := open(t, "heron")
	v := judge(t, r, Options{Spreads: spreads(t, r, map[string]string{"water.discharge": "0.2", "wind.speed": "50 m/s"})})
	assert.InDelta(t, 53, find(t, &v, "wind").Value, 1e-12)
	for _, c := range v.Checks {
		if c.Values[results.Corner].Flown && c.Key != "proof" {
			assert.True(t, c.Values[results.Corner].Known, c.Key)
		}
	}
}

// The same rocket is judged the same whatever the cores do, and an interrupt ends it.
func TestJudgeIsDeterministic(t *testing.T) {
	r := open(t, "heron")
	o := all(r)
	o.Workers = 1
	one := judge(t, r, o)
	o.Workers = 5
	five := judge(t, r, o)
	require.Len(t, five.Checks, len(one.Checks))
	for i := range one.Checks {
		a, b := one.Checks[i], five.Checks[i]
		assert.Equal(t, a.Values, b.Values)
		assert.Equal(t, a.SD, b.SD)
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	_, err := Judge(ctx, r, o)
	assert.ErrorIs(t, err, context.Canceled)
}

func TestJudgeInvalid(t *testing.T) {
	r := open(t, "heron")
	r.Body.Mass = -1
	_, err := Judge(context.Background(), r, Options{})
	var faults fault.List
	assert.ErrorAs(t, err, &faults)
}

func BenchmarkJudgeDay(b *testing.B)  { benchmark(b, Options{}) }
func BenchmarkJudgeFull(b *testing.B) { benchmark(b, Options{Remedies: true}) }

// benchmark judges an airframe whose ceiling and radius fail: as much work as there is.
func benchmark(b *testing.B, o Options) {
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(b, err)
	r := f.Rocket().Clone()
	r.Power, r.Field = rocket.MotorPower, rocket.Field{Ceiling: 600, Radius: 400}
	if o.Remedies {
		o.Spreads = study.DefaultSpread(r)
	}
	for b.Loop() {
		if _, err := Judge(context.Background(), r, o); err != nil {
			b.Fatal(err)
		}
	}
}
