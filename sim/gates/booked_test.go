package gates

import (
	"context"
	"math"
	"testing"
	"time"

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
	for _, key := range []string{LimitProofCycles, checkFell, CheckDamage} {
		assert.NotContains(t, none, key)
	}
	good := judge(&chamber.Booked{Cycles: 7, Since: 6, Proof: 16e5, Most: math.NaN(), Hardest: 5})
	cycles, landing := good[LimitProofCycles], good[checkFell]
	assert.True(t, cycles.Pass)
	assert.True(t, landing.Pass)
	assert.NotContains(t, good, CheckDamage)
	due := judge(&chamber.Booked{Cycles: 60, Since: 51, Proof: 16e5, Most: math.NaN(), Hardest: 6.5, Damage: []string{"2026-05-01: dent"}})
	for _, key := range []string{LimitProofCycles, checkFell, CheckDamage} {
		c := due[key]
		assert.True(t, c.Fails(), key)
		require.NotEmpty(t, c.Remedies, key)
		assert.Equal(t, ProveAgain, c.Remedies[0].Kind)
	}
	burst := good[checkBurst]
	assert.True(t, burst.Pass)
	far := judge(&chamber.Booked{Cycles: 7, Since: 6, Proof: 16e5, Proved: 40e5, Most: math.NaN(), Hardest: 5})
	for _, key := range []string{checkBurst, checkWeepy} {
		c := far[key]
		assert.True(t, c.Fails(), "%s: the lower proof counts for the pressure, the higher one for what it did to the wall", key)
	}
	pressed := judge(&chamber.Booked{Cycles: 2, Since: 1, Proof: 16e5, Most: 12e5, Hardest: math.NaN()})[checkPressed]
	assert.True(t, pressed.Fails(), "its proof is not for the pressure it was at")
	assert.Less(t, pressed.Value, 16./12+1e-9)
	untold := judge(&chamber.Booked{Cycles: 2, Since: 1, Proof: 16e5, Most: 9e5, Untold: 1, Hardest: math.NaN()})[checkPressed]
	assert.False(t, untold.Judged, "another was to a pressure that is not known")
	assert.False(t, untold.Pass)
	unread := judge(&chamber.Booked{Missing: "no such file", Hardest: math.NaN()})
	unnamed := judge(&chamber.Booked{Missing: "not named", Unnamed: "heron.logbook.toml", Hardest: math.NaN()})
	for _, rows := range []map[string]Check{unread, unnamed} {
		assert.False(t, rows[LimitProof].Judged)
		assert.False(t, rows[LimitProof].Pass)
	}
	assert.Contains(t, unnamed[LimitProof].Remedies[0].Why, "heron.logbook.toml lies beside")
}

// By a book alone the same makes a proof due, whatever the file says of its proof; also on a motor, and
// for a file that describes no chamber.
func TestDue(t *testing.T) {
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(t, err)
	today := time.Date(2026, 10, 10, 0, 0, 0, 0, time.UTC)
	due := func(r *rocket.Rocket, b chamber.Booked) []string {
		keys := []string{}
		for _, c := range Due(r, &b, today) {
			assert.NotEmpty(t, c.Remedies, c.Key)
			keys = append(keys, c.Key)
		}
		return keys
	}
	r := f.Rocket()
	good := chamber.Booked{Cycles: 2, Since: 1, Proof: 16e5, ProofDate: "2026-09-12", Most: 9e5, Hardest: 5}
	assert.Empty(t, due(r, good))
	r.Power = rocket.MotorPower
	none := good
	none.Proof, none.ProofDate = 0, ""
	assert.Equal(t, []string{LimitProof}, due(r, none))
	low := good
	low.Proof = 12e5
	assert.Equal(t, []string{LimitProof, checkPressed}, due(r, low))
	old := good
	old.ProofDate, old.Since, old.Hardest, old.Damage = "2020-01-01", 51, 9, []string{"2026-05-01: dent"}
	assert.Equal(t, []string{LimitProofAge, LimitProofCycles, checkFell, CheckDamage}, due(r, old))
	untold := good
	untold.Untold = 1
	assert.Equal(t, []string{checkPressed}, due(r, untold))
	r.Chamber = nil
	assert.Contains(t, due(r, low), LimitProof)
	r.Water = nil
	assert.Empty(t, due(r, none))
}
