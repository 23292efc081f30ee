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
		"warm":          {func(r *rocket.Rocket) { r.Chamber.Temperature, r.Chamber.HeatFactor = 273.15+31, 0.9 }, 9.6e5, true},
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
	lost, _, err := Loses(context.Background(), r, after, Options{Today: today})
	require.NoError(t, err)
	assert.Contains(t, lost, "rail exit speed")
	back, is, err := Loses(context.Background(), after, r, Options{Today: today})
	require.NoError(t, err)
	assert.Empty(t, back)
	assert.Same(t, r, is.Rocket)
}

// What fails worse is no loss of something that passed, and yet no mend may cost it; of a chamber built anew the rows
// of the chamber are to be proved anew.
func TestLostAndCosts(t *testing.T) {
	in := func(pass bool, value float64, about Subject) Check {
		return Check{Key: "x", Name: "x", Judged: true, Pass: pass, Value: value, About: about, Limit: Limit{Min: noMin, Max: 10}}
	}
	for _, test := range []struct {
		name           string
		was, is        Check
		lost, costs    bool
		rebuilt, other bool
	}{
		{name: "passes on", was: in(true, 5, Flight), is: in(true, 9, Flight)},
		{name: "lost", was: in(true, 5, Flight), is: in(false, 12, Flight), lost: true, costs: true, rebuilt: true},
		{name: "worse", was: in(false, 12, Flight), is: in(false, 15, Flight), costs: true, rebuilt: true},
		{name: "better", was: in(false, 15, Flight), is: in(false, 12, Flight)},
		{name: "the chamber", was: in(true, 5, Chamber), is: in(false, 12, Chamber), lost: true, costs: true},
		{name: "gone", was: in(true, 5, Flight), is: in(false, 12, Flight), other: true},
	} {
		if test.other {
			test.is.Key = "y"
		}
		was, is := Verdict{Checks: []Check{test.was}}, Verdict{Checks: []Check{test.is}}
		assert.Equal(t, test.lost, len(was.setBack(&is, lost)) == 1, test.name)
		assert.Equal(t, test.costs, len(was.setBack(&is, (&Remedy{}).costs)) == 1, test.name)
		assert.Equal(t, test.rebuilt, len(was.setBack(&is, (&Remedy{Kind: Rebuild}).costs)) == 1, test.name)
	}
}
