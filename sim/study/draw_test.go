package study

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// A wind drawn below nothing blows the other way: no bias, and half of each.
func TestDrawTurnsWind(t *testing.T) {
	const n = 2000
	r := bottle()
	r.Wind.From = 3 * math.Pi / 2
	d := newDrawer(r, uncertain(t, r, map[string]float64{"wind.speed": 2}, "wind.speed"), 9)
	deviates := make([]float64, 1)
	turned, sum := 0, 0.0
	for i := range n {
		got, err := d.draw(i, deviates)
		require.NoError(t, err)
		require.InDelta(t, math.Abs(2*deviates[0]), got.Wind.Speed, 1e-12)
		want := 3 * math.Pi / 2
		if deviates[0] < 0 {
			turned++
			want = math.Pi / 2
		}
		require.InDelta(t, want, got.Wind.From, 1e-9)
		sum += deviates[0]
	}
	require.InDelta(t, n/2, turned, 4*math.Sqrt(n)/2)
	require.InDelta(t, 0, sum/n, 4/math.Sqrt(n))
	require.Zero(t, r.Wind.Speed, "the base stays as it is")
}

// A direction goes round the compass instead of off its end.
func TestDrawTurnsRound(t *testing.T) {
	r := bottle()
	d := newDrawer(r, uncertain(t, r, map[string]float64{"wind.from": 0.3}, "wind.from"), 9)
	deviates := make([]float64, 1)
	for i := range 100 {
		got, err := d.draw(i, deviates)
		require.NoError(t, err)
		require.InDelta(t, math.Sin(0.3*deviates[0]), math.Sin(got.Wind.From), 1e-9)
		require.InDelta(t, math.Cos(0.3*deviates[0]), math.Cos(got.Wind.From), 1e-9)
		require.GreaterOrEqual(t, got.Wind.From, 0.0)
	}
}

// Every draw takes as many numbers, valid or not, and has its own.
func TestDrawIsItsOwn(t *testing.T) {
	r := dud()
	spreads := uncertain(t, r, map[string]float64{"water.fill": 1, "body.mass": 1}, "water.fill", "body.mass")
	d, e := newDrawer(r, spreads, 4), newDrawer(r, spreads, 4)
	var forward, backward [50][2]float64
	for i := range forward {
		_, _ = d.draw(i, forward[i][:])
		j := len(backward) - 1 - i
		_, _ = e.draw(j, backward[j][:])
	}
	require.Equal(t, forward, backward)
	require.NotEqual(t, forward[0], forward[1])
	require.NotZero(t, forward[7][1])
}

func TestDefaultSpread(t *testing.T) {
	names := func(spreads []Spread) map[string]float64 {
		m := map[string]float64{}
		for _, s := range spreads {
			m[s.Input.Name] = s.SD
		}
		return m
	}
	water := names(DefaultSpread(rocketfile.Starter().Rocket()))
	require.InDelta(t, 0.0085, water["body.mass"], 1e-12)
	require.InDelta(t, 0.01, water["water.fill"], 1e-12)
	require.InDelta(t, math.Pi/12, water["wind.from"], 1e-12)
	require.InDelta(t, 0.1, water["canopy.main.deploy.water"], 1e-12)
	require.NotContains(t, water, "motor.delay")
	motor := names(DefaultSpread(motored()))
	require.InDelta(t, 0.8, motor["motor.delay"], 1e-12)
	require.NotContains(t, motor, "water.fill")

	falling := bottle()
	falling.Canopies[0].Water = rocket.Rule{Trigger: rocket.Falling, Value: 30}
	require.InDelta(t, 5, names(DefaultSpread(falling))["canopy.main.deploy.water"], 1e-12)
}

func TestSpreadsOfFile(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, rocketfile.WriteStarter(dir+"/starter.toml")) // and its curve
	stated := "\n[spread]\n\"body.mass\" = \"20 g\"\n\"wind.from\" = \"0 deg\"\n\"rail.length\" = \"1 cm\"\n"
	f, err := rocketfile.Read("starter.toml", dir, append(rocketfile.Starter().Text(), stated...))
	require.NoError(t, err)
	byName := map[string]float64{}
	for _, s := range Spreads(f) {
		byName[s.Input.Name] = s.SD
	}
	require.InDelta(t, 0.02, byName["body.mass"], 1e-12)
	require.InDelta(t, 0.01, byName["rail.length"], 1e-12)
	require.NotContains(t, byName, "wind.from")
	require.Contains(t, byName, "water.fill")
}
