package gates

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// A logbook turns a go into a proof due: by pressurisations, by a hard landing, by damage; and one that
// cannot be read leaves the proof unjudged.
func TestLogbookMakesAProofDue(t *testing.T) {
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(t, err)
	judge := func(b *chamber.Booked) map[string]Check {
		r := f.Rocket()
		r.Power = rocket.WaterPower
		r.Chamber.Booked = b
		v, err := Judge(context.Background(), r, Options{})
		require.NoError(t, err)
		checks := map[string]Check{}
		for _, c := range v.Checks {
			checks[c.Key] = c
		}
		return checks
	}
	none := judge(nil)
	for _, key := range []string{LimitProofCycles, checkFell, checkDamage} {
		assert.NotContains(t, none, key)
	}
	good := judge(&chamber.Booked{Cycles: 7, Since: 6, Proved: true, Hardest: 5})
	cycles, landing := good[LimitProofCycles], good[checkFell]
	assert.True(t, cycles.Pass)
	assert.True(t, landing.Pass)
	assert.NotContains(t, good, checkDamage)
	due := judge(&chamber.Booked{Cycles: 60, Since: 51, Proved: true, Hardest: 6.5, Damage: []string{"2026-05-01: dent"}})
	for _, key := range []string{LimitProofCycles, checkFell, checkDamage} {
		c := due[key]
		assert.True(t, c.Fails(), key)
		require.NotEmpty(t, c.Remedies, key)
		assert.Equal(t, ProveAgain, c.Remedies[0].Kind)
	}
	unread := judge(&chamber.Booked{Missing: "no such file", Hardest: math.NaN()})
	proof := unread[LimitProof]
	assert.False(t, proof.Judged)
	assert.False(t, proof.Pass)
}
