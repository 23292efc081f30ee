package plan

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

func TestDay(t *testing.T) {
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(t, err)
	r := f.Rocket()
	last := 0
	d, err := DayOf(context.Background(), r, Options{Spreads: study.Spreads(f), Flights: 30, Seed: 5,
		Progress: func(done, total int) { last = max(last, done) }})
	require.NoError(t, err)
	assert.Same(t, r, d.Rocket)
	assert.Equal(t, uint64(5), d.Seed)
	assert.Equal(t, 30, d.Scatter.Drawn)
	assert.LessOrEqual(t, last, 30)
	assert.True(t, d.Verdict.Cornered, "what is uncertain has a corner")
	assert.True(t, d.Verdict.Day.Rocket.Rigid(), "the rocket's own model flies")
	require.Len(t, d.Tilts, len(winds))
	assert.InDelta(t, 10*math.Pi/180, MostTilt(r), 1e-12, "half of NFPA 1127's 20°")
	for i, l := range d.Tilts {
		assert.Equal(t, winds[i], l.Wind)
		assert.LessOrEqual(t, l.Tilt, MostTilt(r)+1e-12)
	}
	// 30 % of 4.2 L are water, the rest gas at 10 bar over the 977 hPa of the site; p V/(γ−1)
	// [1 − (p_a/p)^((γ−1)/γ)].
	p, gas := 1e6+97700., 0.7*4.2e-3
	assert.InEpsilon(t, p*gas/0.4*(1-math.Pow(97700/p, 0.4/1.4)), d.Chamber.Gas.Isentropic, 1e-6)
	assert.Positive(t, d.Chamber.Burst)
}

// A chamber that is not described stores its gas all the same, and bursts at no known
// pressure.
func TestDayOfABareChamber(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	r.Chamber, r.Shape, r.Parts = nil, nil, nil
	d, err := DayOf(context.Background(), r, Options{Flights: 1})
	require.NoError(t, err)
	assert.Positive(t, d.Chamber.Gas.Isentropic)
	assert.False(t, d.Chamber.Burst > 0)
}

func TestDayRefuses(t *testing.T) {
	_, err := DayOf(context.Background(), &rocket.Rocket{Power: rocket.WaterPower}, Options{Flights: 20})
	var faults fault.List
	assert.ErrorAs(t, err, &faults)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err = DayOf(ctx, rocketfile.Starter().Rocket(), Options{Flights: 20})
	assert.ErrorIs(t, err, context.Canceled)
}
