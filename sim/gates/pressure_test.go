package gates

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

// What is proved for, by hand: 16 bar over 1.5 are 10.667; 0.9 of that, warm, 9.6.
func TestPressureBeyondItsProof(t *testing.T) {
	for name, test := range map[string]struct {
		set    func(r *rocket.Rocket)
		proved float64
		beyond bool
	}{
		"as it is":      {func(*rocket.Rocket) {}, 16e5 / 1.5, false},
		"on the limit":  {func(r *rocket.Rocket) { r.Water.Pressure = 16e5 / 1.5 }, 16e5 / 1.5, false},
		"over it":       {func(r *rocket.Rocket) { r.Water.Pressure = 10.7e5 }, 16e5 / 1.5, true},
		"warm":          {func(r *rocket.Rocket) { r.Chamber.HeatFactor = 0.9 }, 9.6e5, true},
		"never proved":  {func(r *rocket.Rocket) { r.Chamber.Proof, r.Chamber.ProofDate = 0, "" }, math.NaN(), true},
		"no chamber":    {func(r *rocket.Rocket) { r.Chamber = nil }, math.NaN(), true},
		"no pressure":   {func(r *rocket.Rocket) { r.Chamber, r.Water.Pressure = nil, 0 }, math.NaN(), false},
		"a factor of 2": {func(r *rocket.Rocket) { r.Limits.ProofFactor = 2 }, 8e5, true},
	} {
		t.Run(name, func(t *testing.T) {
			r := open(t, "heron")
			test.set(r)
			p, ok := PressureOf(r)
			require.True(t, ok)
			if math.IsNaN(test.proved) {
				assert.True(t, math.IsNaN(p.ProvedFor))
			} else {
				assert.InEpsilon(t, test.proved, p.ProvedFor, 1e-9)
			}
			assert.Equal(t, test.beyond, p.Beyond())
			if r.Water.Pressure == 0 {
				return
			}
			v := judge(t, r, Options{})
			assert.Equal(t, test.beyond, find(t, &v, "proof").Fails(), "as the check has it")
		})
	}
	r := open(t, "heron")
	r.Power = rocket.MotorPower
	_, ok := PressureOf(r)
	assert.False(t, ok, "a motor has none")
}

// A value loses a check that passes as the rocket is and does not then.
func TestLoses(t *testing.T) {
	r := open(t, "heron")
	after := r.Clone()
	after.Rail.Length = 0.3
	lost, err := Loses(context.Background(), r, after, Options{Today: today})
	require.NoError(t, err)
	assert.Contains(t, lost, "rail exit speed")
	back, err := Loses(context.Background(), after, r, Options{Today: today})
	require.NoError(t, err)
	assert.Empty(t, back)
}
