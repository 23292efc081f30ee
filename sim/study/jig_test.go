package study

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

// The gap is that of the angle at the rod's end, what is held lands on the field's edge, and all that is straighter
// lands within.
func TestJig(t *testing.T) {
	r := finned(t)
	r.Bench.Jig = 0.3
	r.Wind.Speed, r.Wind.Stated = 3, true
	j, err := JigOf(background, r, Options{})
	require.NoError(t, err)
	assert.True(t, math.IsNaN(j.Field.Angle), "no field is given")
	require.Len(t, j.Rows, 4)
	for _, x := range j.Rows {
		assert.InDelta(t, 0.3*math.Tan(x.Angle), x.Gap, 1e-12)
	}
	assert.Greater(t, j.Rows[3].Drift, j.Rows[0].Drift)

	r.Field.Radius = (j.Rows[1].Drift + j.Rows[3].Drift) / 2
	j, err = JigOf(background, r, Options{})
	require.NoError(t, err)
	assert.InEpsilon(t, r.Field.Radius, j.Field.Drift, 1e-3)
	assert.True(t, j.Field.Angle > j.Rows[1].Angle && j.Field.Angle < j.Rows[3].Angle)
	assert.False(t, j.AllField)
	most := j.Most()
	assert.Equal(t, math.Min(j.Field.Angle, j.Attack.Angle), most.Angle)

	r.Field.Radius = j.Rows[0].Drift / 2
	j, err = JigOf(background, r, Options{})
	require.NoError(t, err)
	assert.True(t, math.IsNaN(j.Field.Angle), "not even a straight one lands within")
	r.Shape = nil
	_, err = JigOf(background, r, Options{})
	require.ErrorIs(t, err, errNoShape)
}

// Until the lock-out ends a canopy would open faster than its limit, and from then on it would not.
func TestSettings(t *testing.T) {
	r := heron(t)
	all, err := SettingsOf(background, r)
	require.NoError(t, err)
	require.Len(t, all, 2)
	for i := range all {
		s := &all[i]
		limit := r.Limits.InForce().Opening
		assert.Less(t, s.Flight.At(s.Slow).Airspeed, limit+0.2)
		assert.Greater(t, s.Flight.At(s.Slow-0.05).Airspeed, limit)
		assert.Less(t, s.Slow, s.Flight.Apogee.Time)
		assert.Zero(t, s.Sonic)
	}
	assert.Equal(t, rocket.WaterPower, all[0].Flight.Rocket.Power)
}

// A leak costs height below the best pressure, and the gas of the bench is what the engine has aboard, less the air
// that was there before.
func TestBenchOnWater(t *testing.T) {
	r := heron(t)
	b, err := BenchOf(background, r, Options{})
	require.NoError(t, err)
	assert.Positive(t, b.LeakCost)
	require.Len(t, b.Jigs, 2)
	assert.Equal(t, rocket.MotorPower, b.Jigs[1].Power)
	require.NotNil(t, b.Sealed)
	assert.InEpsilon(t, 10e5*4.2e-3*0.7/(287.05287*289.15), b.Gas.Mass(), 1e-3)
	none, err := LeakCost(background, r, 20e5)
	require.NoError(t, err)
	assert.True(t, math.IsNaN(none))
}
