package plan

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// The first flight is on H or I, 160.01 to 640.00 N·s, the second on J to L, up to 5120.00 (US practice, from memory; bounds of
// NFPA 1125).
func TestCertifyingFlightOn(t *testing.T) {
	for impulse, want := range map[float64]string{0: "", 1.2: "", 160: "", 160.004: "", 160.01: "first", 320: "first", 640: "first", 640.01: "second", 1280.5: "second", 5120: "second", 5120.01: "", 2e8: ""} {
		f, ok := CertifyingFlightOn(impulse)
		assert.Equal(t, want, f.Name, impulse)
		assert.Equal(t, want != "", ok)
	}
	for _, f := range CertifyingFlights() {
		assert.Equal(t, f.Classes[:1], thrust.Class(f.Above+0.01), "the bounds are those of the letters")
		assert.Equal(t, f.Classes[len(f.Classes)-1:], thrust.Class(f.Most))
	}
}

// A motor counts that is for a flight by its impulse, is known to fit, and on which every check passes.
func TestCertify(t *testing.T) {
	base := heron(t).Rocket()
	with := func(change func(m *rocket.Motor)) Candidate {
		r := base.Clone()
		change(r.Motor)
		return Candidate{Rocket: r}
	}
	times := func(by float64) func(m *rocket.Motor) {
		return func(m *rocket.Motor) {
			points := m.Curve.Points()
			for i := range points {
				points[i].Thrust *= by
			}
			var err error
			m.Curve, err = thrust.NewCurve(points)
			require.NoError(t, err)
		}
	}
	got, err := Certify(context.Background(), []Candidate{
		with(func(*rocket.Motor) {}),
		with(func(m *rocket.Motor) { m.Diameter = 38e-3 }),
		with(func(m *rocket.Motor) { m.Length = 0 }),
		with(times(0.5)),
		with(times(4)),
		with(func(m *rocket.Motor) { m.Case = -1 }),
	}, Options{Today: time.Date(2026, 10, 1, 0, 0, 0, 0, time.UTC)})
	require.NoError(t, err)
	own, wide, unsized, small, large, bad := &got[0], &got[1], &got[2], &got[3], &got[4], &got[5]
	assert.True(t, own.Qualifies())
	assert.Equal(t, "first", own.Flight.Name)
	assert.Equal(t, rocket.MotorPower, own.Verdict.Day.Rocket.Power, "on the motor, though its file flies on water")
	assert.Equal(t, rocket.WaterPower, base.Power, "which stays as it is")
	assert.False(t, wide.Qualifies())
	assert.Equal(t, gates.WordNoGo, wide.Verdict.Word())
	assert.False(t, unsized.Qualifies(), "nobody knows whether it fits")
	assert.Empty(t, small.Flight.Name)
	assert.False(t, small.Qualifies())
	assert.Equal(t, "second", large.Flight.Name)
	assert.False(t, large.Qualifies(), "above the ceiling, and the limit is the first flight's")
	require.Error(t, bad.Invalid)
	assert.False(t, bad.Qualifies(), "no checks are no pass")
	ended, end := context.WithCancel(context.Background())
	end()
	_, err = Certify(ended, []Candidate{{Rocket: base}}, Options{})
	require.ErrorIs(t, err, context.Canceled)
}
